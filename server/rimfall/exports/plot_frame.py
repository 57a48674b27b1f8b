"""One set of axes on paper: round figures on hairs, lines in their dashes, each name where it covers least. Millimetres, y downward."""

from dataclasses import dataclass, replace

import numpy as np

from .drawing import Stroke, Text
from .helvetica import width_mm
from .labels import LabelRoom, spread
from .palette import HAIR, INK, PAPER, PLAIN, PathStyle
from .ticks import even, figures_of

LINE_MM = 0.55
TEXT_MM = 3.3
HAIR_MM = 0.15
BASE_MM = 0.3
_TICK_MM = 1.2
_MARK_MM = 1.1
_NEAR_MM = 1.0  # between a line and its name
_CLEAR_MM, _LATER = 0.3, 0.3  # of a name, as `labels.LabelRoom` takes them
_PLACES = (0.5, 0.3, 0.7, 0.15, 0.85, 0.0, 1.0)  # of a line's length: where its name is tried after its highest point
_WAYS = ((0, -1), (0, 1), (1, 0), (-1, 0), (1, -1), (-1, -1))  # over it, under it, beside it
_MARK_COUNTS = 12  # millimetres of line that a marker counts for
_THIN = 0.4  # of a marker's radius: the line of an open one
_SHAPES = {
    "square": np.array([[-0.88, -0.88], [0.88, -0.88], [0.88, 0.88], [-0.88, 0.88]]),
    "triangle": np.array([[0.0, -1.1], [1.05, 0.8], [-1.05, 0.8]]),
    "diamond": np.array([[0.0, -1.2], [1.2, 0.0], [0.0, 1.2], [-1.2, 0.0]]),
}
ROUND = np.stack([np.cos(np.arange(24) * np.pi / 12), np.sin(np.arange(24) * np.pi / 12)], axis=1)


@dataclass(frozen=True)
class Line:
    """x and y (n,) in the axes' units; style: PLAIN for plain gravity's; name: stands on it, "" for none; spot: (x, y) of its
    marker, or None."""

    x: np.ndarray
    y: np.ndarray
    style: PathStyle
    name: str = ""
    spot: tuple | None = None

    @property
    def weight(self):
        """Of its name."""
        return 400 if self.style is PLAIN else 600

    def scaled(self, per):
        """The same line in other units of both axes, so many to one."""
        spot = None if self.spot is None else (self.spot[0] * per, self.spot[1] * per)
        return replace(self, x=per * self.x, y=per * self.y, spot=spot)


@dataclass(frozen=True)
class Frame:
    """A rectangle of the page (left, top, right, bottom), and the values at its sides."""

    box: tuple
    x_span: tuple
    y_span: tuple

    def at(self, x, y):
        """Points (n, 2) of the page for values (n,), (n,)."""
        left, top, right, bottom = self.box
        (x0, x1), (y0, y1) = self.x_span, self.y_span
        across = left + (np.asarray(x) - x0) / (x1 - x0) * (right - left)
        down = bottom - (np.asarray(y) - y0) / (y1 - y0) * (bottom - top)
        return np.stack([across, down], axis=-1)


def axes(frame, x_about, y_about, beside=None, figures_below=True, based=True, x_ticks=None):
    """The hairs and their figures, that of 0 the ground where it is `based`; beside(value): what stands at the right of a hair, or
    nothing where beside is None; figures_below: whether the upright ticks have figures; x_ticks: theirs, where not round values."""
    left, _, right, bottom = frame.box
    items = []
    y_ticks, x_ticks = even(*frame.y_span, y_about), even(*frame.x_span, x_about) if x_ticks is None else x_ticks
    for value, figure in zip(y_ticks, figures_of(y_ticks), strict=True):
        y = float(frame.at(0.0, value)[1])
        base = based and abs(value) < 1e-12
        hair = np.array([[left, y], [right, y]])
        items.append(Stroke(hair, BASE_MM if base else HAIR_MM, INK if base else HAIR))
        items.append(Text(left - 1.5, y + 0.35 * TEXT_MM, figure, TEXT_MM, "end"))
        if beside:
            items.append(Text(right + 1.5, y + 0.35 * TEXT_MM, beside(value), TEXT_MM))
    for value, figure in zip(x_ticks, figures_of(x_ticks), strict=True):
        x = float(frame.at(value, 0.0)[0])
        items.append(Stroke(np.array([[x, bottom], [x, bottom + _TICK_MM]]), BASE_MM))
        if figures_below:
            items.append(Text(x, bottom + _TICK_MM + TEXT_MM, figure, TEXT_MM, "middle"))
    return items


def lines(frame, drawn):
    """Strokes of Lines, their markers, and their names where they cover least."""
    traced = [frame.at(line.x, line.y) for line in drawn]
    items = [
        Stroke(points, LINE_MM, line.style.paper, line.style.dash_mm(LINE_MM))
        for line, points in zip(drawn, traced, strict=True)
        if len(points) > 1
    ]
    for line in drawn:
        if line.spot is not None:
            items += marker(line.style, *frame.at(*line.spot), _MARK_MM)
    room = LabelRoom(frame.box, _ink(frame, drawn, traced), _CLEAR_MM, _LATER)
    return items + [_named(room, line, points) for line, points in zip(drawn, traced, strict=True) if line.name]


def _ink(frame, drawn, traced):
    """Points (n, 2) that names keep off: the lines and, for more, their markers."""
    marks = [frame.at(*line.spot)[None].repeat(_MARK_COUNTS, axis=0) for line in drawn if line.spot is not None]
    return np.concatenate([np.empty((0, 2)), *map(spread, traced), *marks])


def _named(room, line, points):
    """The name, beside the place of its line where the fewest lines run through it."""
    wide = width_mm(line.name, TEXT_MM, line.weight)
    along = spread(points)
    spots = [along[np.argmin(along[:, 1])], *[along[int(part * (len(along) - 1))] for part in _PLACES]]
    left, _, _, bottom = room.best([_rectangle(room.box, spot, way, wide) for spot in spots for way in _WAYS])
    return Text(left, bottom - 0.25 * TEXT_MM, line.name, TEXT_MM, weight=line.weight, colour=line.style.paper)


def _rectangle(box, spot, way, wide):
    """(left, top, right, bottom) of a text beside a spot, kept inside the box; way: to which side, and how far up."""
    left, top, right, bottom = box
    start = spot[0] - wide / 2 + way[0] * (wide / 2 + 2 * _NEAR_MM)
    high = spot[1] - TEXT_MM / 2 + way[1] * (TEXT_MM / 2 + _NEAR_MM)
    start = min(max(start, left), max(right - wide, left))
    high = min(max(high, top - TEXT_MM), bottom - TEXT_MM)
    return start, high, start + wide, high + TEXT_MM


def marker(style, x_mm, y_mm, radius_mm):
    """The marker of a path as Strokes, at a point of the page."""
    at, line = np.array([x_mm, y_mm]), _THIN * radius_mm
    if style.marker == "cross":
        arms = np.array([[[-1.0, -1.0], [1.0, 1.0]], [[-1.0, 1.0], [1.0, -1.0]]])
        return [Stroke(at + radius_mm * arm, line, style.paper) for arm in arms]
    hollow = style.open or style.marker == "ring"
    outline = at + radius_mm * _SHAPES.get(style.marker, ROUND)
    return [Stroke(outline, line, style.paper, closed=True, fill=PAPER if hollow else style.paper)]
