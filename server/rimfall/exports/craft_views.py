"""A craft from its side and from its end, both to one scale: its parts, its spin axis, its floor, and where its mass has its middle.

One drawing for the page and for print; millimetres, y downward.
"""

import math
from dataclasses import dataclass

import numpy as np

from ..language import tr, tr_later, written
from ..phrases import in_units
from ..vessel.outline import CIRCLE, END, SIDE, outlines
from .craft_names import Named, Sheet, names
from .drawing import Stroke, Text
from .labels import Label, fitted, wide_mm
from .palette import INK, PATHS, SOFT
from .plot_frame import HAIR_MM, ROUND, TEXT_MM

GROUP_COLOURS = {"turning": PATHS[1].paper, "still": SOFT, "counter": PATHS[5].paper}
_DASHES = {"turning": (), "still": (), "counter": (1.6, 0.8)}
_FILLS = {"turning": 0.16, "still": 0.3, "counter": 0.16}
_LINE_MM, _AXIS_DASH_MM, _FLOOR_MM, _FLOOR_DASH_MM = 0.35, (3.0, 1.0, 0.6, 1.0), 0.3, (0.0, 1.3)
_POINT_MM, _CENTRE_MM = 0.9, 1.3
_SMALL_MM, _ROUNDED = 15.0, 48  # below that size, an outline of more corners than these
_EDGE_MM, _GAP_MM, _HEAD_MM, _BAR_MM = 3.0, 6.0, 5.5, 7.0
_BAND_MM = 5.4  # over and under what is drawn: a line of names
_HANDLE_MM = 2.6  # that the page lays over the middle of a part
_KEY_MM, _SIGN_MM, _KEY_GAP_MM = 5.0, 5.5, 4.5  # a line of the key, a sign in it, between two of its words
_SPARE = 1.15  # of a text's width: the face that a reader of an SVG has in its place may be wider
_ROOM = 1.06  # of what is drawn: a little air round it
_LONGEST_NAME_MM = 30.0
_LEAST_SHARE = 0.2  # of the height, for the craft beside its key
HEADS = (tr_later("From the side"), tr_later("From the end"))
_GROUPS = {"turning": tr_later("turning"), "still": tr_later("still"), "counter": tr_later("counter")}


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


def _views(asked, width_mm, most_mm, foot_mm):
    """The two Views of a craft (`scene.craft.asked.Asked`) side by side on a page so wide, over a foot, and the height that they take
    with it, at most most_mm."""
    sides = {"side": SIDE, "end": END}
    shapes = {name: {part: outlines(one, axes) for part, one in asked.solids.items()} for name, axes in sides.items()}
    drawn = {name: _drawn(asked, axes, shapes[name]) for name, axes in sides.items()}
    low = {name: points.min(axis=0) for name, points in drawn.items()}
    high = {name: points.max(axis=0) for name, points in drawn.items()}
    wide = {name: max(high[name][0] - low[name][0], 1e-6) for name in drawn}
    tall = max(high[name][1] - low[name][1] for name in drawn) or 1e-6
    room_mm = width_mm - 2 * _EDGE_MM - _GAP_MM
    over_mm, under_mm = _HEAD_MM + _BAND_MM, _BAND_MM + foot_mm
    scale = min(room_mm / sum(wide.values()), (most_mm - over_mm - under_mm) / tall) / _ROOM
    high_mm = over_mm + under_mm + scale * tall * _ROOM
    left, out = _EDGE_MM, {}
    spare = (room_mm - _ROOM * scale * sum(wide.values())) / 2
    for name, axes in sides.items():
        share = _ROOM * scale * wide[name] + spare
        middle = (low[name] + high[name]) / 2
        centre = np.array([left + share / 2, (over_mm + high_mm - under_mm) / 2])
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
    key = _key_rows(asked, width_mm, most_mm)
    foot_mm = _BAR_MM + _KEY_MM * len(key)
    both, high_mm = _views(asked, width_mm, most_mm, foot_mm)
    down = high_mm - foot_mm
    items, sheet = [], Sheet((0.0, _HEAD_MM, width_mm, down))
    for view in both.values():
        items += [*_axis(view), *_floor(asked, view)]
    for line in items:
        sheet.draw(np.vstack([line.points_mm, line.points_mm[: line.closed]]))
    by_size = sorted(asked.craft.parts, key=lambda part: -asked.solids[part.name].radius_m)
    for view in both.values():
        items += [shape for part in by_size for shape in _part(part, asked.solids[part.name], view)]
        for mark in _centres(asked, view):
            items.append(mark)
            if mark.closed:
                sheet.draw(mark.points_mm, filled=True)
        for part in by_size:
            sheet.draw(view.of(part.place_m) + _HANDLE_MM * ROUND, filled=True)
    items += names(sheet, [_named(part, asked.solids[part.name], both) for part in by_size])
    items += [*_heads(both, width_mm), *_scale_bar(both["side"], down, units), *_key(key, down + _BAR_MM)]
    return both, items, high_mm


def _named(part, solid, both):
    label = Label((fitted(part.name, _LONGEST_NAME_MM, TEXT_MM),), TEXT_MM, colour=GROUP_COLOURS[part.group])
    shapes = [[view.at(outline) for outline in view.shapes[part.name]] for view in both.values()]
    shapes = [[one + _POINT_MM * ROUND if len(one) == 1 else one for one in outlines] for outlines in shapes]
    return Named(label, tuple(shapes), tuple(len(one) == 1 and solid.kind != "ring" for one in shapes))


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
        return [Stroke(view.at(asked.rim_m * CIRCLE), _FLOOR_MM, SOFT, _FLOOR_DASH_MM, closed=True)]
    return [
        Stroke(view.at([[end, height] for end in view.ends_m]), _FLOOR_MM, SOFT, _FLOOR_DASH_MM)
        for height in (asked.rim_m, -asked.rim_m)
    ]


def _part(part, solid, view):
    colour, dash = GROUP_COLOURS[part.group], _DASHES[part.group]
    shapes = view.shapes[part.name]
    out = []
    for number, outline in enumerate(shapes):
        points = _fine(view.at(outline))
        if len(points) == 1:
            points = points + _POINT_MM * ROUND
        hollow = len(shapes) > 1 or solid.kind == "ring"
        fill = None if hollow or len(points) < 3 else colour
        width = 2 * _LINE_MM if solid.kind in ("ring", "rod") else _LINE_MM
        says = part.name if number == 0 else ""
        out.append(Stroke(points, width, colour, dash, len(points) > 2, fill, _FILLS[part.group], "part", says))
    return out


def _fine(points):
    """An outline with no more corners than its size on the page needs."""
    size = float(np.ptp(points, axis=0).max())
    return points[:: 4 if size < _SMALL_MM / 3 else 2 if size < _SMALL_MM else 1] if len(points) > _ROUNDED else points


def _centres(asked, view):
    """A crossed circle at the middle of mass of what turns, and of the whole where that is elsewhere."""
    turning, whole = (asked.bodies[name].centre_m for name in ("turning", "whole"))
    marks = ((turning, GROUP_COLOURS["turning"]), (whole, INK))[0 if _apart(asked) else 1 :]
    for centre, colour in marks:
        yield from _crossed(view.of(centre), colour)


def _apart(asked):
    """Whether what turns has its middle of mass elsewhere than the whole."""
    turning, whole = (asked.bodies[name].centre_m for name in ("turning", "whole"))
    return np.linalg.norm(turning - whole) > 1e-3 * asked.rim_m


def _crossed(at, colour):
    yield Stroke(at + _CENTRE_MM * ROUND, HAIR_MM, colour, closed=True)
    for ends in ([[-1, 0], [1, 0]], [[0, -1], [0, 1]]):
        yield Stroke(at + _CENTRE_MM * np.array(ends), HAIR_MM, colour)


def _heads(both, width_mm):
    """Over the middle of each view; beside one another where both are narrow."""
    heads = [tr(head) for head in HEADS]
    halves = [_SPARE * wide_mm(head, TEXT_MM, 600) / 2 for head in heads]
    first, second = (float(view.at([[sum(view.ends_m) / 2, 0.0]])[0, 0]) for view in both.values())
    second = min(second, width_mm - halves[1])
    first = max(min(first, second - sum(halves) - _GAP_MM / 2), halves[0])
    second = max(second, first + sum(halves) + _GAP_MM / 2)
    for head, middle in zip(heads, (first, second), strict=True):
        yield Text(middle, 0.8 * _HEAD_MM, head, TEXT_MM, "middle", 600, colour=SOFT)


def _entries(asked):
    """What the key explains, (sign, word): groups where there are more than one, lines, and crossed circles."""
    groups = [name for name in GROUP_COLOURS if any(part.group == name for part in asked.craft.parts)]
    shown = [(name, tr(_GROUPS[name])) for name in groups] if len(groups) > 1 else []
    own = [("middle", tr("that of what turns"))] if _apart(asked) else []
    return [*shown, ("axis", tr("spin axis")), ("floor", tr("floor")), ("whole", tr("centre of mass")), *own]


def _key_rows(asked, width_mm, most_mm):
    """Lines of the key, each [(x_mm, sign, word)], as many as a page so wide needs; none where it would leave too little for the craft."""
    rows, x = [[]], _EDGE_MM
    for sign, word in _entries(asked):
        wide = _SIGN_MM + 1.2 + _SPARE * wide_mm(word, TEXT_MM)
        if rows[-1] and x + wide > width_mm:
            rows.append([])
            x = _EDGE_MM
        rows[-1].append((x, sign, word))
        x += wide + _KEY_GAP_MM
    left_mm = most_mm - (_HEAD_MM + 2 * _BAND_MM + _BAR_MM + _KEY_MM * len(rows))
    return rows if left_mm >= _LEAST_SHARE * most_mm else []


def _key(rows, top):
    for number, row in enumerate(rows):
        down = top + _KEY_MM * (number + 0.5)
        for x, sign, word in row:
            yield from _sign(sign, np.array([x, down]))
            yield Text(x + _SIGN_MM + 1.2, down + 0.35 * TEXT_MM, word, TEXT_MM, colour=SOFT)


def _sign(sign, at):
    """What stands before a word of the key; at: the middle of its left side."""
    middle, ends = at + np.array([_SIGN_MM / 2, 0.0]), at + np.array([[0.0, 0.0], [_SIGN_MM, 0.0]])
    if sign in GROUP_COLOURS:
        corners = at + np.array([[0.0, -1.3], [_SIGN_MM, -1.3], [_SIGN_MM, 1.3], [0.0, 1.3]])
        colour = GROUP_COLOURS[sign]
        return [Stroke(corners, _LINE_MM, colour, _DASHES[sign], True, colour, _FILLS[sign])]
    if sign == "axis":
        return [Stroke(ends, HAIR_MM, SOFT, _AXIS_DASH_MM)]
    if sign == "floor":
        return [Stroke(ends, _FLOOR_MM, SOFT, _FLOOR_DASH_MM)]
    return list(_crossed(middle, INK if sign == "whole" else GROUP_COLOURS["turning"]))


def _scale_bar(view, top, units):
    """A bar of a round length, in the units shown."""
    per_m, unit = in_units(1.0, "m", units)
    length = _round_length(25.0 / view.mm_per_m * per_m)
    long_mm = length / per_m * view.mm_per_m
    left, down = _EDGE_MM, top + _BAR_MM - 2.6
    ends = np.array([[left, down], [left + long_mm, down]])
    yield Stroke(ends, 0.4, INK)
    for x, _ in ends:
        yield Stroke(np.array([[x, down - 0.9], [x, down + 0.9]]), 0.4, INK)
    yield Text(left + long_mm + 1.5, down + 0.35 * TEXT_MM, f"{written(length, ',g')}\u00a0{unit}", TEXT_MM)


def _round_length(most):
    """The longest of 1, 2 or 5 times a power of ten that is not above it."""
    power = 10.0 ** math.floor(math.log10(most))
    return max(step * power for step in (1, 2, 5) if step * power <= most * (1 + 1e-9))
