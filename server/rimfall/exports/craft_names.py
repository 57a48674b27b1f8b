"""Where the names of a craft's parts stand in its drawing: beside the part, in the view that shows it best, on no line and on no other
part; where there is no such place, farther off at the end of a thin line. A name that has no room is left to the list of parts.

Millimetres, y downward.
"""

from dataclasses import dataclass

import numpy as np

from .drawing import Stroke
from .labels import Label, spread, texts
from .palette import SOFT
from .plot_frame import HAIR_MM, ROUND

_CELL_MM = 0.5
_MOST = 48  # names that are tried, of the largest parts
_GAP_MM, _APART_MM = 0.7, 0.8  # between a part and its name, between two names of a line
_WAYS = np.array(((0, -1), (1, 0), (-1, 0), (0, 1), (1, -1), (-1, -1), (1, 1), (-1, 1)))  # over, beside, under
_SPOTS = 24  # of an outline, where a name is tried
_REACHES_MM = (4.0, 6.0, 9.0, 12.0, 16.0)  # of the thin line
_ANGLES = np.radians((-60, -120, -45, -135, -75, -105, -30, -150, 60, 120, 45, 135, 75, 105, 30, 150))
_BEARINGS = np.stack([np.cos(_ANGLES), np.sin(_ANGLES)], axis=1)
_DOT_MM = 0.45
_ON_LINES = 0.25  # of a thin line's length, at most
_AWAY_MM = 0.5  # between a thin line and its name


@dataclass(frozen=True)
class Named:
    """A part's name and its shapes in each of the views: outlines (n, 2) on the page, the first its outer one; filled: all of it is covered."""

    label: Label
    outlines: tuple
    filled: tuple


class Sheet:
    """The room of a drawing (left, top, right, bottom) in cells, and which of them are taken."""

    def __init__(self, box):
        self.box = np.array(box)
        wide, high = np.ceil((self.box[2:] - self.box[:2]) / _CELL_MM).astype(int) + 1
        self.lines = np.zeros((high, wide), int)  # of how many parts a line runs through each
        self.full = np.zeros((high, wide), bool)
        self.words = np.zeros((high, wide), bool)
        self._sums = None

    def cells(self, points):
        """Rows and columns of the cells that a line through points (n, 2) runs through, each once."""
        fine = spread(np.asarray(points) / (0.8 * _CELL_MM)) * (0.8 * _CELL_MM)
        column, row = np.round((fine - self.box[:2]) / _CELL_MM).astype(int).T
        high, wide = self.full.shape
        here = (row >= 0) & (row < high) & (column >= 0) & (column < wide)
        return np.divmod(np.unique(row[here] * wide + column[here]), wide)

    def draw(self, points, filled=False):
        """Keep names off a line, and off what a convex one encloses."""
        row, column = self.cells(points)
        self.lines[row, column] += 1
        self.full[row, column] = True
        if filled and len(row):
            top, left, right = row[0], column.min(), column.max()  # rows are in order
            here = self.full[top : row[-1] + 1, left : right + 1]
            first, last = np.full(len(here), right), np.full(len(here), left - 1)
            np.minimum.at(first, row - top, column)
            np.maximum.at(last, row - top, column)
            across = np.arange(left, right + 1)
            here |= (across >= first[:, None]) & (across <= last[:, None])
        self._sums = None

    def write(self, rectangle):
        """Keep names off a name."""
        left, top, right, bottom = self._corners(np.array([rectangle]) + _APART_MM * np.array([-1, 0, 1, 0]))[0]
        self.words[top:bottom, left:right] = True
        self.full[top:bottom, left:right] = True
        self._sums = None

    def free(self, rectangles):
        """Which of rectangles (n, 4) lie in the room and cover nothing."""
        if self._sums is None:
            self._sums = np.pad(self.full.cumsum(0).cumsum(1), ((1, 0), (1, 0)))
        inside = (rectangles[:, :2] >= self.box[:2] - 1e-9).all(1) & (rectangles[:, 2:] <= self.box[2:] + 1e-9).all(1)
        left, top, right, bottom = self._corners(rectangles).T
        sums = self._sums
        return inside & (sums[bottom, right] - sums[top, right] - sums[bottom, left] + sums[top, left] == 0)

    def _corners(self, rectangles):
        cells = (rectangles - np.tile(self.box[:2], 2)) / _CELL_MM
        bounds = np.concatenate([np.floor(cells[:, :2]), np.ceil(cells[:, 2:]) + 1], axis=1).astype(int)
        high, wide = self.full.shape
        return np.clip(bounds, 0, [wide, high, wide, high])


def names(sheet, parts):
    """Texts, and thin lines, of the Named of a drawing, the largest first; what else is drawn is on the Sheet already."""
    for part in parts:
        for outlines, filled in zip(part.outlines, part.filled, strict=True):
            for outline in outlines:
                sheet.draw(np.vstack([outline, outline[:1]]), filled)
    far = []
    for part in parts[:_MOST]:
        rectangle = _beside(sheet, part)
        if rectangle is None:
            far.append(part)
            continue
        sheet.write(rectangle)
        yield from texts(part.label, rectangle)
    for part in far:
        yield from _at_a_line(sheet, part)


def _beside(sheet, part):
    """The first free rectangle beside the part, in the view in which least of it lies under other parts."""
    half = np.array(part.label.room_mm) / 2
    for outlines in sorted(part.outlines, key=lambda outlines: _hidden(sheet, outlines)):
        middles = (_spots(outlines[0])[:, None] + _WAYS * (half + _GAP_MM)).reshape(-1, 2)
        tried = np.concatenate([middles - half, middles + half], axis=1)
        free = np.flatnonzero(sheet.free(tried))
        if len(free):
            return tried[free[0]]
    return None


def _hidden(sheet, outlines):
    """How much of a part's outline runs on those of others, to a tenth."""
    row, column = sheet.cells(np.vstack([outlines[0], outlines[0][:1]]))
    return round(float(np.mean(sheet.lines[row, column] > len(outlines))), 1) if len(row) else 1.0


def _spots(outline):
    """Places (n, 2) of an outline where a name may stand: the middles of its uppermost, right, left and lowest edges, then all round."""
    middles = [
        outline[np.isclose(outline[:, axis], edge(outline[:, axis]), atol=0.05)].mean(axis=0)
        for axis, edge in ((1, np.min), (0, np.max), (0, np.min), (1, np.max))
    ]
    closed = spread(np.vstack([outline, outline[:1]]))
    every = closed[np.linspace(0, len(closed) - 1, min(_SPOTS, len(closed))).astype(int)]
    return np.vstack([middles, every])


def _at_a_line(sheet, part):
    """The nearest free rectangle from which a thin line reaches the part over no name and along few lines, with that line."""
    wide, high = part.label.room_mm
    for reach in _REACHES_MM:
        for outlines, filled in zip(part.outlines, part.filled, strict=True):
            foot = (outlines[0].min(axis=0) + outlines[0].max(axis=0)) / 2 if filled else outlines[0][0]
            heads = foot + reach * _BEARINGS
            left = heads[:, 0] + np.where(_BEARINGS[:, 0] > 0, _AWAY_MM, -_AWAY_MM - wide)
            tried = np.stack([left, heads[:, 1] - high / 2, left + wide, heads[:, 1] + high / 2], axis=1)
            for number in np.flatnonzero(sheet.free(tried)):
                line = np.array([foot, heads[number]])
                if _is_clear(sheet, line):
                    sheet.write(tried[number])
                    sheet.draw(line)
                    dot = foot + _DOT_MM * ROUND
                    return [
                        Stroke(line, HAIR_MM, SOFT),
                        Stroke(dot, 0.0, SOFT, closed=True, fill=SOFT),
                        *texts(part.label, tried[number]),
                    ]
    return []


def _is_clear(sheet, line):
    cells = sheet.cells(line)
    return len(cells[0]) > 0 and not sheet.words[cells].any() and np.mean(sheet.lines[cells] > 0) <= _ON_LINES
