"""Where the map of limits has room for its words: each label at the place along its line, or round its point, that covers least."""

from dataclasses import dataclass
from unicodedata import east_asian_width

import numpy as np

from .drawing import INK, PAPER, Stroke, Text
from .helvetica import width_mm

_STEPS = 61  # places tried along a line
_PAST = 0.04  # of a line's length, left free at its ends
_ROOM_MM = 0.5  # round a label
_CUT = "…"


@dataclass(frozen=True)
class Label:
    """Lines of text about a middle point on the page; size_mm and weight of all of them."""

    lines: tuple
    size_mm: float
    weight: int = 400
    italic: bool = False
    colour: str = INK

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


class Room:
    """A rectangle of the page that fills with labels: which rectangles are taken, and the ink (n, 2) that they keep off."""

    def __init__(self, box, ink):
        self.box, self.ink, self.taken = box, ink, []

    def take(self, rectangle):
        """Keep a rectangle (left, top, right, bottom) free of labels."""
        self.taken.append(rectangle)

    def along(self, label, ends, first=0.5):
        """The label's items on the line between two points of the page, nearest to `first` of its length where all else is equal."""
        parts = np.linspace(_PAST, 1.0 - _PAST, _STEPS)
        start, stop = np.asarray(ends, dtype=float)
        places = [start + part * (stop - start) for part in sorted(parts, key=lambda part: abs(part - first))]
        return self._put(label, places)

    def beside(self, label, point, away_mm):
        """The label's items to the right, the left, over or under a point of the page."""
        wide, high = label.room_mm
        ways = ((1, 0), (-1, 0), (1, -1), (-1, -1), (1, 1), (-1, 1), (0, -1), (0, 1))
        return self._put(label, [np.add(point, (x * (wide / 2 + away_mm), y * (high / 2 + away_mm))) for x, y in ways])

    def _put(self, label, places):
        wide, high = label.room_mm
        tried = [self._inside(x - wide / 2, y - high / 2, wide, high) for x, y in places]
        best = min(range(len(tried)), key=lambda k: self._covered(tried[k]) + 0.01 * k)
        self.take(tried[best])
        return _items(label, tried[best])

    def _inside(self, left, top, wide, high):
        box_left, box_top, box_right, box_bottom = self.box
        left = min(max(left, box_left), box_right - wide)
        top = min(max(top, box_top), box_bottom - high)
        return left, top, left + wide, top + high

    def _covered(self, place):
        """How much stands in a rectangle: millimetres of line, and labels, which count far more."""
        left, top, right, bottom = place
        x, y = self.ink.T
        under = np.count_nonzero((x > left) & (x < right) & (y > top) & (y < bottom))
        labels = sum(left < r and l < right and top < b and t < bottom for l, t, r, b in self.taken)  # noqa: E741
        return int(under) + 10_000 * labels


def _items(label, place):
    """Paper under the label, and its lines."""
    left, top, right, bottom = place
    paper = np.array([[left, top], [right, top], [right, bottom], [left, bottom]])
    texts = [
        Text(
            (left + right) / 2,
            top + _ROOM_MM / 2 + (0.95 + 1.15 * k) * label.size_mm,
            line,
            label.size_mm,
            "middle",
            label.weight,
            label.italic,
            label.colour,
        )
        for k, line in enumerate(label.lines)
    ]
    return [Stroke(paper, 0.0, closed=True, fill=PAPER), *texts]
