"""A craft from its side and from its end, both to one scale: its parts, its spin axis, its floor, and where its mass has its middle.

One drawing for the page and for print; millimetres, y downward.
"""

import math
from dataclasses import dataclass

import numpy as np

from ..phrases import in_units
from ..vessel.outline import END, SIDE, outlines
from .drawing import Stroke, Text
from .labels import Label, LabelRoom, fitted, spread, texts, wide_mm
from .palette import INK, PATHS, SOFT
from .plot_frame import HAIR_MM, ROUND, TEXT_MM

GROUP_COLOURS = {"turning": PATHS[1].paper, "still": SOFT, "counter": PATHS[5].paper}
_DASHES = {"turning": (), "still": (), "counter": (1.6, 0.8)}
_FILLS = {"turning": 0.16, "still": 0.3, "counter": 0.16}
_LINE_MM, _AXIS_DASH_MM, _FLOOR_DASH_MM = 0.35, (3.0, 1.0, 0.6, 1.0), (0.0, 1.6)
_POINT_MM, _CENTRE_MM = 0.9, 1.3
_EDGE_MM, _GAP_MM, _HEAD_MM, _FOOT_MM = 3.0, 6.0, 5.5, 7.0
_ROOM = 1.06  # of what is drawn: a little air round it
_LONGEST_NAME_MM = 30.0
_MOST_INK_MM = 5  # under a name: one line across it; where there is more, the list of parts has it
HEADS = ("From the side", "From the end")


@dataclass(frozen=True)
class View:
    """One of the two views: origin_mm (2,) of the craft's axes on the page, how many millimetres a metre is, the outlines of each part by
    its name, and from where to where all of it lies to the right, metres."""

    axes: np.ndarray
    origin_mm: np.ndarray
    mm_per_m: float
    shapes: dict[str, list[np.ndarray]]
    ends_m: tuple[float, float]

    def at(self, points):
        """Points (n, 2) of the view, metres, on the page."""
        return self.origin_mm + self.mm_per_m * np.asarray(points) * np.array([1.0, -1.0])

    def of(self, place_m):
        """A place (3,) of the craft on the page."""
        return self.at(self.axes @ np.asarray(place_m, dtype=float))


def views(asked, width_mm, most_mm):
    """The two Views of a craft (`scene.craft.asked.Asked`) side by side on a page so wide, and the height that they take, at most most_mm."""
    sides = {"side": SIDE, "end": END}
    shapes = {name: {part: outlines(one, axes) for part, one in asked.solids.items()} for name, axes in sides.items()}
    drawn = {name: _drawn(asked, axes, shapes[name]) for name, axes in sides.items()}
    low = {name: points.min(axis=0) for name, points in drawn.items()}
    high = {name: points.max(axis=0) for name, points in drawn.items()}
    wide = {name: max(high[name][0] - low[name][0], 1e-6) for name in drawn}
    tall = max(high[name][1] - low[name][1] for name in drawn) or 1e-6
    room_mm = width_mm - 2 * _EDGE_MM - _GAP_MM
    scale = min(room_mm / sum(wide.values()), (most_mm - _HEAD_MM - _FOOT_MM) / tall) / _ROOM
    high_mm = _HEAD_MM + _FOOT_MM + scale * tall * _ROOM
    left, out = _EDGE_MM, {}
    spare = (room_mm - _ROOM * scale * sum(wide.values())) / 2
    for name, axes in sides.items():
        share = _ROOM * scale * wide[name] + spare
        middle = (low[name] + high[name]) / 2
        centre = np.array([left + share / 2, _HEAD_MM + (high_mm - _HEAD_MM - _FOOT_MM) / 2])
        origin = centre - scale * middle * np.array([1.0, -1.0])
        out[name] = View(axes, origin, scale, shapes[name], (low[name][0], high[name][0]))
        left += share + _GAP_MM
    return out, high_mm


def _drawn(asked, axes, shapes):
    """Everything that a view must show (n, 2): the parts, and the floor where it is."""
    rim = asked.rim_m
    floor = np.array([[0.0, rim], [0.0, -rim]]) if axes is SIDE else rim * ROUND
    return np.concatenate([floor, *(one for some in shapes.values() for one in some)])


def chart(asked, width_mm, most_mm, units="si"):
    """The Views of a craft by name, its items, and the height of the drawing."""
    both, high_mm = views(asked, width_mm, most_mm)
    items, ink = [], []
    for view in both.values():
        items += [*_axis(view), *_floor(asked, view)]
        for part in sorted(asked.craft.parts, key=lambda part: -asked.solids[part.name].radius_m):
            shapes = _part(part, asked.solids[part.name], view)
            items += shapes
            ink += [spread(np.vstack([shape.points_mm, shape.points_mm[:1]])) for shape in shapes]
        items += _centres(asked, view)
    items += _names(asked, both, ink, width_mm, high_mm)
    items += [*_heads(both, width_mm), *_scale_bar(both["side"], high_mm, units)]
    return both, items, high_mm


def _axis(view):
    if view.axes is END:
        middle = view.of((0.0, 0.0, 0.0))
        return [
            Stroke(middle + _CENTRE_MM * np.array(ends), HAIR_MM, SOFT)
            for ends in ([[-1, 0], [1, 0]], [[0, -1], [0, 1]])
        ]
    ends = view.at([[end, 0.0] for end in view.ends_m])
    return [Stroke(ends + np.array([[-2.0, 0.0], [2.0, 0.0]]), HAIR_MM, SOFT, _AXIS_DASH_MM)]


def _floor(asked, view):
    if view.axes is END:
        return [Stroke(view.at(asked.rim_m * _fine_round()), HAIR_MM, SOFT, _FLOOR_DASH_MM, closed=True)]
    return [
        Stroke(view.at([[end, height] for end in view.ends_m]), HAIR_MM, SOFT, _FLOOR_DASH_MM)
        for height in (asked.rim_m, -asked.rim_m)
    ]


def _fine_round():
    turns = np.linspace(0.0, 2 * math.pi, 97)[:-1]
    return np.stack([np.cos(turns), np.sin(turns)], axis=1)


def _part(part, solid, view):
    colour, dash = GROUP_COLOURS[part.group], _DASHES[part.group]
    shapes = view.shapes[part.name]
    out = []
    for number, outline in enumerate(shapes):
        points = view.at(outline)
        if len(points) == 1:
            points = points + _POINT_MM * ROUND
        hollow = len(shapes) > 1 or solid.kind == "ring"
        fill = None if hollow or len(points) < 3 else colour
        width = 2 * _LINE_MM if solid.kind in ("ring", "rod") else _LINE_MM
        says = part.name if number == 0 else ""
        out.append(Stroke(points, width, colour, dash, len(points) > 2, fill, _FILLS[part.group], "part", says))
    return out


def _centres(asked, view):
    """A crossed circle at the middle of mass of what turns, and of the whole where that is elsewhere."""
    turning, whole = (asked.bodies[name].centre_m for name in ("turning", "whole"))
    far = np.linalg.norm(view.of(turning) - view.of(whole)) > 0.5
    for centre, colour in ((turning, GROUP_COLOURS["turning"]), (whole, INK))[0 if far else 1 :]:
        at = view.of(centre)
        yield Stroke(at + _CENTRE_MM * ROUND, HAIR_MM, colour, closed=True)
        for ends in ([[-1, 0], [1, 0]], [[0, -1], [0, 1]]):
            yield Stroke(at + _CENTRE_MM * np.array(ends), HAIR_MM, colour)


def _names(asked, both, ink, width_mm, high_mm):
    """Each part's name once, from the side."""
    room = LabelRoom((0.0, _HEAD_MM, width_mm, high_mm - _FOOT_MM), np.concatenate(ink), 0.3)
    for part in asked.craft.parts:
        colour = GROUP_COLOURS[part.group]
        label = Label((fitted(part.name, _LONGEST_NAME_MM, TEXT_MM),), TEXT_MM, colour=colour)
        shape = both["side"].at(both["side"].shapes[part.name][0])
        top = shape[:, 1].min()
        highest = (shape[shape[:, 1] < top + _LINE_MM, 0].mean(), top)  # the middle of a level edge
        rectangle = room.beside(label, highest, 1.0)
        if room.is_free(rectangle) and room.inked(rectangle) <= _MOST_INK_MM:
            yield from texts(label, rectangle)


def _heads(both, width_mm):
    for head, view in zip(HEADS, both.values(), strict=True):
        half_mm = wide_mm(head, TEXT_MM, 600) / 2
        middle = min(max(float(view.of((0.0, 0.0, 0.0))[0]), half_mm), width_mm - half_mm)
        yield Text(middle, 0.8 * _HEAD_MM, head, TEXT_MM, "middle", 600, colour=SOFT)


def _scale_bar(view, high_mm, units):
    """A bar of a round length, in the units shown."""
    per_m, unit = in_units(1.0, "m", units)
    length = _round_length(25.0 / view.mm_per_m * per_m)
    long_mm = length / per_m * view.mm_per_m
    left, down = _EDGE_MM, high_mm - 2.6
    ends = np.array([[left, down], [left + long_mm, down]])
    yield Stroke(ends, 0.4, INK)
    for x, _ in ends:
        yield Stroke(np.array([[x, down - 0.9], [x, down + 0.9]]), 0.4, INK)
    yield Text(left + long_mm + 1.5, down + 0.35 * TEXT_MM, f"{length:,g}\u00a0{unit}", TEXT_MM)


def _round_length(most):
    """The longest of 1, 2 or 5 times a power of ten that is not above it."""
    power = 10.0 ** math.floor(math.log10(most))
    return max(step * power for step in (1, 2, 5) if step * power <= most * (1 + 1e-9))
