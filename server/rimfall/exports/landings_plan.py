"""The net of landings over the unrolled deck: lines through the throws of one equal speed, heading or elevation, cut where the ceiling or
anything else stops them. Where all come down on one line along the deck, the first figure that varies goes up instead.

One drawing for the page and for print; millimetres, y downward.
"""

import numpy as np

from ..language import tr
from ..phrases import in_units
from ..scene.shot.landings_words import value_of
from ..shots import net
from .drawing import Stroke
from .labels import Label, LabelRoom, on_paper, spread
from .palette import INK, PATHS, SOFT
from .plot_frame import HAIR_MM, ROUND, TEXT_MM, Frame, axes

COLOURS = (PATHS[1].paper, PATHS[0].paper)  # of lines along rows and along columns
_DASHES = ((1.8, 0.8), ())
_LINE_MM, _WALL_MM, _ROUND_DASH_MM = 0.35, 0.5, (0.6, 0.8)
_CUT_MM, _RELEASE_MM = 0.8, 1.3
_BAR_COUNTS = 6  # millimetres of line that either end of a bar counts for
_LEAST_M, _ROOM = 0.5, 0.05
_MOST_POINTS = 400  # of one run
_TRIED = (0.92, 0.8, 0.65, 0.5, 0.3, 0.15)  # of a run: where its figure is tried


def chart(found, box, about, units="si"):
    """The net of a `scene.shot.landings.Found` in a rectangle of the page: its Frame, and items; about: so many figures across and up."""
    per_m, landings = in_units(1.0, "m", units)[0], found.landings
    right = per_m * (landings.place_m[:, 0] - found.motion.place.along_m)
    up = per_m * landings.place_m[:, 2] if found.up is None else _shown(landings.figures[found.up], found.up, units)
    runs = [(line, run, _along(landings, line, run)) for line in found.net for run in line.runs]
    drawn = np.concatenate([np.empty(0, dtype=int), *(numbers for *_, numbers in runs)])
    release = (0.0, per_m * found.motion.place.axial_m) if found.up is None else None
    frame = Frame(
        box,
        _span(np.append(right[drawn], 0.0)),
        _span(up[drawn] if release is None else np.append(up[drawn], release[1])),
    )
    items = [*_ground(frame, found, per_m), *axes(frame, *about, based=False)]
    traced = [(line, run, frame.at(right[numbers], up[numbers])) for line, run, numbers in runs]
    items += [
        Stroke(points, _LINE_MM, COLOURS[line.of], _DASHES[line.of], role="net")
        for line, _, points in traced
        if len(points) > 1
    ]
    bars = [mark for line, run, points in traced for mark in _cuts(line, run, points)]
    items += bars
    if release is not None:
        items.append(Stroke(frame.at(*release) + _RELEASE_MM * ROUND, 0.3, INK, closed=True, role="release"))
    return frame, [*items, *_labels(frame, found, traced, bars, units)]


def _shown(values, field, units):
    return in_units(values, "m/s", units)[0] if field == "speed_m_s" else values


def _along(landings, line, run):
    """Numbers of the throws of a run, no more than the paper shows."""
    count = run.last - run.first + 1
    picked = np.unique(np.linspace(run.first, run.last, min(count, _MOST_POINTS)).round().astype(int))
    return net.numbers(landings, line)[picked]


def _span(values):
    low, high = (float(values.min()), float(values.max())) if len(values) else (0.0, 0.0)
    room = max(_ROOM * (high - low), (_LEAST_M - (high - low)) / 2)
    return low - room, high + room


def _ground(frame, found, per_m):
    """What of the deck's edges, and of the places once round from the release, lies inside."""
    (x0, x1), (y0, y1) = frame.x_span, frame.y_span
    half_m = found.setting.habitat.walked_half_m()
    for side in () if half_m is None or found.up is not None else (-per_m * half_m, per_m * half_m):
        if y0 < side < y1:
            yield Stroke(frame.at(np.array([x0, x1]), np.array([side, side])), _WALL_MM, INK, role="wall")
    if found.winds:
        once = per_m * 2 * np.pi * found.setting.habitat.radius_m
        for turn in range(int(np.ceil(x0 / once)), int(np.floor(x1 / once)) + 1):
            if turn:
                ends = frame.at(np.array([turn * once] * 2), np.array([y0, y1]))
                yield Stroke(ends, HAIR_MM, SOFT, _ROUND_DASH_MM, role="once-round")


def _cuts(line, run, points):
    """A bar at each end of a run that something cuts off."""
    for end, ending in ((0, run.before), (-1, run.after)):
        if ending is not None:
            yield Stroke(points[end] + _CUT_MM * _bar(points, end), 0.45, COLOURS[line.of], role="cut")


def _bar(points, end):
    """A bar (2, 2) across a line at one of its ends."""
    way = points[end] - points[1 if end == 0 else -2] if len(points) > 1 else np.array([0.0, 1.0])
    size = float(np.hypot(*way))
    across = np.array([-way[1], way[0]]) / size if size else np.array([1.0, 0.0])
    return np.stack([-across, across])


def _labels(frame, found, traced, bars, units):
    """The figure of each line, where it covers least; those that find no room are left out."""
    ink = np.concatenate(
        [
            np.empty((0, 2)),
            *(spread(points) for *_, points in traced),
            *(bar.points_mm.repeat(_BAR_COUNTS, axis=0) for bar in bars),
        ]
    )
    room, out, named = LabelRoom(frame.box, ink), [], set()
    for line, _, points in sorted(traced, key=lambda one: -len(one[2])):
        if (line.of, line.at) in named:
            continue
        named.add((line.of, line.at))
        label = Label(
            (value_of(found.landings.over[line.of], line.at, units),),
            0.8 * TEXT_MM,
            colour=COLOURS[line.of],
            role="net-words",
        )
        places = [points[int(part * (len(points) - 1))] for part in _TRIED]
        wide, high = label.room_mm
        rectangle = room.best([room.inside(x - wide / 2, y - high / 2, wide, high) for x, y in places])
        if room.is_free(rectangle):
            out += on_paper(label, rectangle)
        else:
            room.taken.pop()
    return out


def axes_said(found, units="si"):
    """What the axes and the lines of the net are, in a sentence or two."""
    unit, fields = "ft" if units == "us" else "m", [one.field for one in found.landings.over]
    first, second = (_equal(field) for field in fields)
    across = _from_release(found.ground, unit)
    if found.up is None:
        said = tr(
            "{plan} Dashed: {first}; full: {second}.",
            plan=_plan(found.ground, unit, across),
            first=first,
            second=second,
        )
    else:
        said = tr("{title} A line is of {second}.", title=_by_landing(fields[0], across), second=second)
    return f"{said} {tr('A bar ends a line where the throw beside it does not come down.')}"


def _equal(field):
    """What a line of the net has of one figure."""
    return {
        "speed_m_s": tr("equal speed"),
        "heading_deg": tr("equal heading"),
        "elevation_deg": tr("equal elevation"),
    }[field]


def _from_release(ground, unit):
    """What goes to the right."""
    return {
        "deck": tr("{unit} along the deck from the release, spinward to the right", unit=unit),
        "floor": tr("{unit} along the floor from the release, spinward to the right", unit=unit),
        "turntable": tr(
            "{unit} round the turntable, measured at its edge from the release, spinward to the right", unit=unit
        ),
    }[ground.name]


def _plan(ground, unit, across):
    """What a plan of the ground is."""
    told = {"across": across, "unit": unit}
    return {
        "deck": tr("Plan of the deck: {across}; along the spin vector, {unit}, upward.", **told),
        "floor": tr("Plan of the floor: {across}; along the spin vector, {unit}, upward.", **told),
        "turntable": tr("Plan of the turntable: {across}; outward, {unit}, upward.", **told),
    }[ground.name]


def _by_landing(field, across):
    """What the drawing of one figure by where it comes down is."""
    return {
        "speed_m_s": tr("Speed of the throw by where it comes down, {across}.", across=across),
        "heading_deg": tr("Heading of the throw by where it comes down, {across}.", across=across),
        "elevation_deg": tr("Elevation of the throw by where it comes down, {across}.", across=across),
    }[field]
