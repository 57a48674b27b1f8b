"""Where a drawing has room for its words: each label at the place along its line, or beside its point, where it covers least."""

from dataclasses import dataclass
from unicodedata import east_asian_width

import numpy as np

from .drawing import Stroke, Text
from .helvetica import width_mm
from .palette import INK, PAPER

_STEPS = 61  # places tried along a line
_PAST = 0.04  # of a line's length, left free at its ends
_ROOM_MM = 0.5  # round a label
_CUT = "…"


@dataclass(frozen=True)
class Label:
    """Lines of text about a middle point on the page; size_mm and weight of all of them; role and says as of a Text."""

    lines: tuple
    size_mm: float
    weight: int = 400
    italic: bool = False
    colour: str = INK
    role: str = ""
    says: str = ""

    @property
    def room_mm(self):
        """Width and height of the rectangle that it takes."""
        wide = max(wide_mm(line, self.size_mm, self.weight) for line in self.lines)
        return wide + 2 * _ROOM_MM, len(self.lines) * 1.15 * self.size_mm + _ROOM_MM


def wide_mm(text, size_mm, weight=400):
    """How long a line of text is; letters as wide as high, which Helvetica lacks, count as that."""
    broad = "" if text.isascii() else [letter for letter in text if east_asian_width(letter) in "WF"]
    rest = "".join(letter for letter in text if letter not in broad) if broad else text
    return width_mm(rest, size_mm, weight) + size_mm * len(broad)


def fitted(text, room_mm, size_mm, weight=400):
    """The text, cut where it is longer than the room."""
    if wide_mm(text, size_mm, weight) <= room_mm:
        return text
    while text and wide_mm(text + _CUT, size_mm, weight) > room_mm:
        text = text[:-1]
    return text.rstrip() + _CUT


def wrapped(text, room_mm, size_mm, weight=400):
    """The text as lines no longer than the room; a word longer than that is cut."""
    lines, left, gap = [], 0.0, width_mm(" ", size_mm, weight)
    for word in text.split(" "):
        wide = wide_mm(word, size_mm, weight)
        if lines and wide + gap <= left:
            lines[-1] += f" {word}"
            left -= wide + gap
        else:
            lines.append(fitted(word, room_mm, size_mm, weight))
            left = room_mm - wide
    return lines


class LabelRoom:
    """A rectangle of the page that fills with labels: which rectangles are taken, and the ink (n, 2) that they keep off.

    clear_mm: how near over and under a label ink counts, too; later: how much ink a place weighs for each that was tried before it.
    """

    def __init__(self, box, ink, clear_mm=0.0, later=0.01):
        self.box, self.clear_mm, self.later, self.taken = box, clear_mm, later, []
        self._ink_x, self._ink_y = ink[
            np.argsort(ink[:, 0])
        ].T.copy()  # so that what a rectangle's sides hold is one slice

    def take(self, rectangle):
        """Keep a rectangle (left, top, right, bottom) free of labels."""
        self.taken.append(rectangle)

    def along(self, label, ends, first=0.5):
        """The label's rectangle on the line between two points of the page, nearest to `first` of its length where all else is equal."""
        parts = np.linspace(_PAST, 1.0 - _PAST, _STEPS)
        start, stop = np.asarray(ends, dtype=float)
        places = [start + part * (stop - start) for part in sorted(parts, key=lambda part: abs(part - first))]
        return self.best(self._about(label, places))

    def beside(self, label, point, away_mm):
        """The label's rectangle to the right, the left, over or under a point of the page."""
        wide, high = label.room_mm
        ways = ((1, 0), (-1, 0), (1, -1), (-1, -1), (1, 1), (-1, 1), (0, -1), (0, 1))
        places = [np.add(point, (x * (wide / 2 + away_mm), y * (high / 2 + away_mm))) for x, y in ways]
        return self.best(self._about(label, places))

    def best(self, tried):
        """Of the rectangles tried the one that covers least, taken from now on."""
        covered = self._covered(np.array(tried)) + self.later * np.arange(len(tried))
        rectangle = tried[int(np.argmin(covered))]
        self.take(rectangle)
        return rectangle

    def is_free(self, rectangle):
        """Whether no other label stands where this one, the last taken, does."""
        return not any(_meet(rectangle, other) for other in self.taken[:-1])

    def _about(self, label, places):
        wide, high = label.room_mm
        return [self.inside(x - wide / 2, y - high / 2, wide, high) for x, y in places]

    def inside(self, left, top, wide, high):
        """A rectangle of the page, moved into the room."""
        box_left, box_top, box_right, box_bottom = self.box
        left = min(max(left, box_left), box_right - wide)
        top = min(max(top, box_top), box_bottom - high)
        return left, top, left + wide, top + high

    def _covered(self, tried):
        """How much stands in each rectangle (n, 4): millimetres of line, and labels, which count far more."""
        left, top, right, bottom = tried.T
        first, end = np.searchsorted(self._ink_x, left, "right"), np.searchsorted(self._ink_x, right, "left")
        over, under = top - self.clear_mm, bottom + self.clear_mm
        inked = np.empty(len(tried))
        for k in range(len(tried)):
            y = self._ink_y[first[k] : end[k]]
            inked[k] = np.count_nonzero((y > over[k]) & (y < under[k]))
        labels = _meet(tried.T[:, :, None], np.reshape(self.taken, (-1, 4)).T)
        return inked + 10_000 * np.count_nonzero(labels, axis=1)


def _meet(one, other):
    """Whether rectangles (4, …) share more than a side."""
    (left, top, right, bottom), (other_left, other_top, other_right, other_bottom) = one, other
    return (left < other_right) & (other_left < right) & (top < other_bottom) & (other_top < bottom)


def spread(points):
    """A line's points (n, 2) as points at most a millimetre apart: the ink that labels keep off."""
    if len(points) < 2:
        return points
    gone = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))])
    at = np.linspace(0.0, gone[-1], int(gone[-1]) + 2)
    return np.stack([np.interp(at, gone, points[:, 0]), np.interp(at, gone, points[:, 1])], axis=1)


def on_paper(label, rectangle):
    """Paper under a label, and its lines."""
    left, top, right, bottom = rectangle
    paper = np.array([[left, top], [right, top], [right, bottom], [left, bottom]])
    return [Stroke(paper, 0.0, closed=True, fill=PAPER), *texts(label, rectangle)]


def texts(label, rectangle):
    """A label's lines alone."""
    left, top, right, _ = rectangle
    size = label.size_mm
    downs = [top + _ROOM_MM / 2 + (0.95 + 1.15 * k) * size for k in range(len(label.lines))]
    style = ("middle", label.weight, label.italic, label.colour, label.role, label.says)
    return [Text((left + right) / 2, down, line, size, *style) for down, line in zip(downs, label.lines, strict=True)]
