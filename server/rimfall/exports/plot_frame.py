"""One set of axes on paper: round figures on hairs, lines in their dashes, each name where it covers least. Millimetres, y downward."""

from dataclasses import dataclass
from math import ceil, floor, log10

import numpy as np

from .drawing import INK, Stroke, Text
from .helvetica import width_mm
from .path_styles import PLAIN_COLOUR, PLAIN_DASH, PathStyle, marker

SOFT = "#465157"
HAIR = "#C4C9C1"
LINE_MM = 0.55
TEXT_MM = 3.3
HAIR_MM = 0.15
BASE_MM = 0.3
_TICK_MM = 1.2
_MARK_MM = 1.1
_NEAR_MM = 1.0  # between a line and its name
_PLACES = (0.5, 0.3, 0.7, 0.15, 0.85, 0.0, 1.0)  # of a line's length: where its name is tried after its highest point
_WAYS = ((0, -1), (0, 1), (1, 0), (-1, 0), (1, -1), (-1, -1))  # over it, under it, beside it
_MARK_COUNTS = 12  # millimetres of line that a marker counts for


@dataclass(frozen=True)
class Line:
    """x and y (n,) in the axes' units; style: None for plain gravity's; name: stands on it, "" for none; spot: (x, y) of its
    marker, or None."""

    x: np.ndarray
    y: np.ndarray
    style: PathStyle | None
    name: str = ""
    spot: tuple | None = None

    @property
    def colour(self):
        """Of the line and its name."""
        return PLAIN_COLOUR if self.style is None else self.style.colour

    @property
    def weight(self):
        """Of its name."""
        return 400 if self.style is None else 600

    @property
    def dash_mm(self):
        """At the width of a line."""
        return tuple(p * LINE_MM for p in PLAIN_DASH) if self.style is None else self.style.dash_mm(LINE_MM)


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


def rounds(low, high, about):
    """Round values from low to high, about that many: steps of 1, 2 or 5 times a power of ten."""
    raw = (high - low) / about
    power = 10.0 ** floor(log10(raw))
    step = next(k * power for k in (1, 2, 5, 10) if k * power >= raw * (1 - 1e-9))
    return [k * step for k in range(ceil(low / step - 1e-9), floor(high / step + 1e-9) + 1)]


def figure_of(value):
    """A round value as it is written: 1,500, 0.25, −5."""
    return f"{value:,.10g}".replace("-", "−") if abs(value) > 1e-12 else "0"


def axes(frame, x_about, y_about, beside=None, figures_below=True):
    """The hairs and their figures; beside(value): what stands at the right of a hair, or nothing where beside is None;
    figures_below: whether the upright ticks have figures."""
    left, _, right, bottom = frame.box
    items = []
    for value in rounds(*frame.y_span, y_about):
        y = float(frame.at(0.0, value)[1])
        base = abs(value) < 1e-12
        hair = np.array([[left, y], [right, y]])
        items.append(Stroke(hair, BASE_MM if base else HAIR_MM, INK if base else HAIR))
        items.append(Text(left - 1.5, y + 0.35 * TEXT_MM, figure_of(value), TEXT_MM, "end"))
        if beside:
            items.append(Text(right + 1.5, y + 0.35 * TEXT_MM, beside(value), TEXT_MM))
    for value in rounds(*frame.x_span, x_about):
        x = float(frame.at(value, 0.0)[0])
        items.append(Stroke(np.array([[x, bottom], [x, bottom + _TICK_MM]]), BASE_MM))
        if figures_below:
            items.append(Text(x, bottom + _TICK_MM + TEXT_MM, figure_of(value), TEXT_MM, "middle"))
    return items


def lines(frame, drawn):
    """Strokes of Lines, their markers, and their names where they cover least."""
    traced = [frame.at(line.x, line.y) for line in drawn]
    items = [
        Stroke(points, LINE_MM, line.colour, line.dash_mm)
        for line, points in zip(drawn, traced, strict=True)
        if len(points) > 1
    ]
    for line in drawn:
        if line.spot is not None:
            items += marker(line.style, *frame.at(*line.spot), _MARK_MM)
    ink, taken = _ink(frame, drawn, traced), []
    for line, points in zip(drawn, traced, strict=True):
        if line.name:
            items.append(_named(frame, line, points, ink, taken))
    return items


def _ink(frame, drawn, traced):
    """Points (n, 2) that names keep off: the lines and, for more, their markers."""
    marks = [frame.at(*line.spot)[None].repeat(_MARK_COUNTS, axis=0) for line in drawn if line.spot is not None]
    return np.concatenate([np.empty((0, 2)), *map(_spread, traced), *marks])


def _spread(points):
    """The line as points at most a millimetre apart."""
    if len(points) < 2:
        return points
    gone = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))])
    at = np.linspace(0.0, gone[-1], int(gone[-1]) + 2)
    return np.stack([np.interp(at, gone, points[:, 0]), np.interp(at, gone, points[:, 1])], axis=1)


def _named(frame, line, points, ink, taken):
    """The name, beside the place of its line where the fewest lines run through it; taken gains its rectangle."""
    wide = width_mm(line.name, TEXT_MM, line.weight)
    along = _spread(points)
    spots = [along[np.argmin(along[:, 1])], *[along[int(part * (len(along) - 1))] for part in _PLACES]]
    tried = [_rectangle(frame, spot, way, wide) for spot in spots for way in _WAYS]
    best = min(range(len(tried)), key=lambda k: _covered(tried[k], ink, taken) + 0.3 * k)
    left, _, _, bottom = tried[best]
    taken.append(tried[best])
    return Text(left, bottom - 0.25 * TEXT_MM, line.name, TEXT_MM, weight=line.weight, colour=line.colour)


def _rectangle(frame, spot, way, wide):
    """(left, top, right, bottom) of a text beside a spot, kept inside the frame; way: to which side, and how far up."""
    left, top, right, bottom = frame.box
    start = spot[0] - wide / 2 + way[0] * (wide / 2 + 2 * _NEAR_MM)
    high = spot[1] - TEXT_MM / 2 + way[1] * (TEXT_MM / 2 + _NEAR_MM)
    start = min(max(start, left), max(right - wide, left))
    high = min(max(high, top - TEXT_MM), bottom - TEXT_MM)
    return start, high, start + wide, high + TEXT_MM


def _covered(place, ink, taken):
    """How much stands in a rectangle: millimetres of line, and names, which count far more."""
    left, top, right, bottom = place
    under = (ink[:, 0] > left) & (ink[:, 0] < right) & (ink[:, 1] > top - 0.3) & (ink[:, 1] < bottom + 0.3)
    names = sum(left < r and l < right and top < b and t < bottom for l, t, r, b in taken)  # noqa: E741
    return int(np.count_nonzero(under)) + 100 * names
