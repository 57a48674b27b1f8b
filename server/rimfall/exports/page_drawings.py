"""The drawings that the page shows as they are, and lays its handles over: in its pixels, its colours and the units it shows, each
with the places that its values have.
"""

from ..comfort.chart import chart
from ..comfort.limits import no_name
from ..comfort.published import ROWS, STUDIES
from ..comfort.quantities import QUANTITIES
from ..language import tr, tr_later
from ..phrases import in_units
from ..scene.size.wish_words import in_unit
from . import craft_drawings, craft_views, landings_plan, limits_map
from .drawing import PX_A_MM, Drawing, page_svg
from .labels import texts
from .limits_map import ShownLimit
from .page_widths import MINE
from .plot_frame import TEXT_MM
from .plot_lines import flown
from .plots import path_chart

_MAP_SHAPE, _PLOT_SHAPE, _NET_SHAPE = 0.84, 0.56, 0.72  # height by width
_VIEWS_SHAPE = 0.66
_VIEWS_SMALL_SHAPE, _VIEWS_SMALL_MM = 1.05, 84.0  # a small one is taller, for its words take more of it
_MAP_SIDES_MM = (8.0, 6.0, 2.8, 9.5)  # left, over, right and under the rectangle of values
_PLOT_SIDES_MM = (8.5, 4.0, 1.5, 6.5)
_FIRST = 0.3  # of its length: where a limit's words are tried first
_PLOT_FIGURES, _NET_FIGURES = (5, 3), (5, 4)
_BOUNDS = {"at_least": tr_later("{quantity} at least {figure}"), "at_most": tr_later("{quantity} at most {figure}")}
_STUDY = {row.id: STUDIES[row.study].called for row in ROWS}


def map_of_limits(scene, width_px, quantities=(), units="si"):
    """The map for a Scene's person and limits of their own as data: `svg`; `box_px` (left, top, right, bottom) of the values
    `radius_m` and `spin_rpm` at its sides, both on log axes; `limits`: what each drawn one says, and who says so.

    quantities: which limits are drawn, by what they are on, or MINE; none names all. units: "si" or "us".
    """
    drawn = chart(scene.person, scene.own_limits)
    chosen = [
        one for one in drawn.limits if not quantities or one.quantity in quantities or (one.mine and MINE in quantities)
    ]
    limits = [
        ShownLimit(one, _on_line(one, units), 600 if one.mine else 400, f"{_in_full(one, units)}: {_who(one)}")
        for one in chosen
        if one.line
    ]
    levels = {one.limit for one in chosen if one.quantity == "gravity"}
    gravity = [
        one for one in drawn.gravity if one.g not in levels
    ]  # a limit on gravity is itself a line of equal gravity
    width_mm, height_mm, box = _sides(width_px, _MAP_SHAPE, _MAP_SIDES_MM)
    frame = limits_map.frame_of(box, drawn)
    room, labels = limits_map.room_of(frame, gravity, limits), []
    for label, rectangle in limits_map.placed(room, frame, gravity, limits, TEXT_MM, _FIRST):
        labels += texts(label, rectangle) if room.is_free(rectangle) else []
    items = [
        *limits_map.tints(frame, chosen),
        *limits_map.axes(frame, drawn, _MAP_SIDES_MM[2], units),
        *limits_map.lines(frame, gravity, limits),
        *labels,
    ]
    return _answer(width_mm, height_mm, box, items) | {
        "radius_m": drawn.radius_m,
        "spin_rpm": drawn.spin_rpm,
        "limits": [
            {
                "ids": one.ids,
                "short": _short(one, units),
                "says": _in_full(one, units),
                "who": _who(one),
                "on_map": one.line is not None,
            }
            for one in chosen
        ],
        "gravity": [one.label for one in drawn.gravity],
    }


def _short(one, units):
    """A limit short enough to stand on its line; a bare number says what it is of."""
    first = "" if one.unit else f"{tr(QUANTITIES[one.quantity].label).split(' ')[0]} "
    return first + _figure(one, units)


def _on_line(one, units):
    return tr("{name}, yours", name=_short(one, units)) if one.mine else _short(one, units)


def _in_full(one, units):
    """ "Spin at most 6 rpm"."""
    return tr(_BOUNDS[one.bound], quantity=tr(QUANTITIES[one.quantity].label), figure=_figure(one, units))


def _figure(one, units):
    """As it was published; in other units three figures of it."""
    return one.short if in_units(one.limit, one.unit, units)[1] == one.unit else in_unit(one.quantity, one.limit, units)


def _who(one):
    """Who says so: studies, or the user under the name they gave."""
    if not one.mine:
        return "; ".join(dict.fromkeys(_STUDY[i] for i in one.ids))
    named = one.label.partition(": ")[2]
    return named if named == no_name() else tr("{name}, yours", name=named)


def plot_of_paths(trace, options, width_px, plain=True, units="si"):
    """Height by place along the ground of a Trace's motions as data: `svg`; `box_px` of the values `along_m` and `height_m` at its sides.
    plain: whether the companions under plain gravity are drawn."""
    width_mm, height_mm, box = _sides(width_px, _PLOT_SHAPE, _PLOT_SIDES_MM)
    per_m, _ = in_units(1.0, "m", units)
    frame, items = path_chart(flown(trace, options), box, _PLOT_FIGURES, per_m, plain)
    return _answer(width_mm, height_mm, box, items) | {
        "along_m": [value / per_m for value in frame.x_span],
        "height_m": [value / per_m for value in frame.y_span],
    }


def plan_of_landings(found, width_px, units="si"):
    """The net of a `scene.shot.landings.Found` as data: `svg`; `box_px` of the values at its sides: `along_m` beyond the release's, and
    `up`, metres across the deck or the values of the figure that goes up; `says`: what the axes are."""
    width_mm, height_mm, box = _sides(width_px, _NET_SHAPE, _PLOT_SIDES_MM)
    frame, items = landings_plan.chart(found, box, _NET_FIGURES, units)
    per_m, _ = in_units(1.0, "m", units)
    per_up = per_m if found.up is None else in_units(1.0, "m/s", units)[0] if found.up == "speed_m_s" else 1.0
    return _answer(width_mm, height_mm, box, items) | {
        "along_m": [value / per_m for value in frame.x_span],
        "up": [value / per_up for value in frame.y_span],
        "says": landings_plan.axes_said(found, units),
    }


def views_of_craft(asked, width_px, units="si"):
    """A craft (`scene.craft.asked.Asked`) from its side and its end as data: `svg`, `size_px`; `side` and `end`: where the craft's middle
    is in that view, `origin_px`, and `px_per_m`; `parts`: of each where the middle of its solid is in both, `side_px` and `end_px`."""
    width_mm = width_px / PX_A_MM
    most_mm = min(_VIEWS_SMALL_SHAPE * width_mm, max(_VIEWS_SMALL_MM, _VIEWS_SHAPE * width_mm))
    both, items, height_mm = craft_views.chart(asked, width_mm, most_mm, units)

    def px(millimetres):
        return [PX_A_MM * float(one) for one in millimetres]

    return {
        "svg": page_svg(Drawing(width_mm, height_mm, "", tuple(items))),
        "size_px": px((width_mm, height_mm)),
        **{name: {"origin_px": px(view.origin_mm), "px_per_m": PX_A_MM * view.mm_per_m} for name, view in both.items()},
        "parts": [
            {
                "name": part.name,
                "group": part.group,
                **{f"{name}_px": px(view.of(part.place_m)) for name, view in both.items()},
            }
            for part in asked.craft.parts
        ],
    }


def with_drawings(answer, asked, width_px, drawing_px, units="si"):
    """A craft's answer with what a page so wide draws: each finding's `chart` where it has one; and `drawing`, drawing_px wide."""
    width_mm = width_px / PX_A_MM
    drawn = {
        name: {
            "svg": page_svg(Drawing(width_mm, one.height_mm, "", one.items)),
            "size_px": [width_px, PX_A_MM * one.height_mm],
            "says": one.says,
        }
        for name, one in craft_drawings.charts(answer, width_mm, units).items()
    }
    parts = {name: answer[name] | {"chart": chart} for name, chart in drawn.items()}
    return answer | parts | {"drawing": views_of_craft(asked, drawing_px, units)}


def _answer(width_mm, height_mm, box, items):
    """What the page is told of any drawing: the SVG, its size, and the rectangle its values have (left, top, right, bottom)."""
    return {
        "svg": page_svg(Drawing(width_mm, height_mm, "", tuple(items))),
        "size_px": [PX_A_MM * width_mm, PX_A_MM * height_mm],
        "box_px": [PX_A_MM * side for side in box],
    }


def _sides(width_px, shape, sides_mm):
    """Width and height of a drawing, millimetres, and the rectangle its values have."""
    left, over, right, under = sides_mm
    width_mm = width_px / PX_A_MM
    height_mm = shape * width_mm
    return width_mm, height_mm, (left, over, width_mm - right, height_mm - under)
