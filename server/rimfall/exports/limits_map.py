"""The map of limits: spin against radius on log axes, lines of equal gravity, and each limit's line with ticks to what it forbids.

What is printed (`limits_sheet`) and what the page shows (`page_drawings`) are both drawn here. Millimetres, y downward.
"""

from dataclasses import dataclass
from math import log10

import numpy as np

from ..comfort.chart import LimitLine
from ..language import tr
from ..phrases import in_units
from .drawing import Stroke, Text
from .helvetica import width_mm
from .labels import Label, LabelRoom, spread
from .palette import HAIR, INK, SOFT
from .plot_frame import BASE_MM, HAIR_MM, TEXT_MM, Frame
from .ticks import decades

GRAVITY_MM = 0.35
DOTS_MM = (0.0, 1.0)
_LINE_MM, _DASH_MM = 0.4, (2.2, 1.2)
_TICK_MM, _TICK_EVERY_MM = 1.5, 5.0
_DARKEST, _MANY = 0.6, 6  # of all tints on one another; fewer tints are no darker


@dataclass(frozen=True)
class ShownLimit:
    """A limit that is drawn: the words on its line and their weight; says: what a pointer that rests on it is told."""

    limit: LimitLine
    words: str
    weight: int = 400
    says: str = ""

    @property
    def role(self):
        """Its classes on the page."""
        return "limit mine" if self.limit.mine else "limit"


def frame_of(box, drawn):
    """The Frame of a Chart in a rectangle of the page: its values are the logarithms to 10 of metres and rpm."""
    return Frame(box, *((log10(low), log10(high)) for low, high in (drawn.radius_m, drawn.spin_rpm)))


def axes(frame, drawn, over_mm, units="si"):
    """Hairs and figures at round values, and what each axis is of; over_mm: room to the right of the rectangle; radius in feet where units
    is "us"."""
    left, top, right, bottom = frame.box
    per_m, unit = in_units(1.0, "m", units)
    items = [
        Text(0.0, top - 1.6, tr("spin, rpm"), TEXT_MM, italic=True, role="what"),
        Text(right, bottom + 5.2 + TEXT_MM, tr("radius, {unit}", unit=unit), TEXT_MM, "end", italic=True, role="what"),
    ]
    low, high = (end * per_m for end in drawn.radius_m)
    for value, figure in decades(low, high, right - left, lambda text: width_mm(text, TEXT_MM), over_mm):
        x = float(frame.at(log10(value / per_m), 0.0)[0])
        items.append(Stroke(np.array([[x, top], [x, bottom]]), HAIR_MM, HAIR))
        items.append(Text(x, bottom + 1.0 + TEXT_MM, figure, TEXT_MM, "middle", role="figure"))
    for value, figure in decades(*drawn.spin_rpm, bottom - top, lambda _: TEXT_MM):
        y = float(frame.at(0.0, log10(value))[1])
        items.append(Stroke(np.array([[left, y], [right, y]]), HAIR_MM, HAIR))
        items.append(Text(left - 1.5, y + 0.35 * TEXT_MM, figure, TEXT_MM, "end", role="figure"))
    outline = np.array([[left, top], [right, top], [right, bottom], [left, bottom]])
    return [*items, Stroke(outline, BASE_MM, INK, closed=True)]


def tints(frame, limits):
    """What each LimitLine forbids, the darker the more forbid it."""
    forbidden = [_on_page(frame, one.forbids) for one in limits if one.forbids]
    opacity = 1 - (1 - _DARKEST) ** (1 / max(_MANY, len(limits)))
    return [Stroke(area, 0.0, closed=True, fill=INK, opacity=opacity, role="forbids") for area in forbidden]


def lines(frame, gravity, limits):
    """Dotted lines of equal gravity, and the line and ticks of each ShownLimit, dashed where it is the user's own."""
    items = [Stroke(_on_page(frame, one.line), GRAVITY_MM, SOFT, DOTS_MM, role="equal") for one in gravity]
    for one in limits:
        items += _limit(frame, one, _on_page(frame, one.limit.line))
    return items


def room_of(frame, gravity, limits):
    """The LabelRoom for labels among all lines."""
    every = [*(one.line for one in gravity), *(one.limit.line for one in limits)]
    return LabelRoom(frame.box, np.concatenate([np.empty((0, 2)), *(spread(_on_page(frame, line)) for line in every)]))


def placed(room, frame, gravity, limits, size_mm, first=0.85):
    """(Label, its rectangle) of every line, one after the other, so that who takes them may tell which came to lie on another.
    first: where on its line a limit's words are tried first, a part of its length."""
    for one in gravity:
        label = Label((one.label,), size_mm, italic=True, colour=SOFT, role="equal")
        yield label, room.along(label, _on_page(frame, one.line), first=0.45)
    for one in limits:
        role = one.role.replace("limit", "limit-words")
        label = Label((one.words,), size_mm, one.weight, role=role, says=one.says)
        yield label, room.along(label, _on_page(frame, one.limit.line), first)


def _on_page(frame, line):
    radius, spin = np.array(line).T
    return frame.at(np.log10(radius), np.log10(spin))


def _limit(frame, one, ends):
    """A limit's line and its ticks."""
    way = ends[1] - ends[0]
    length = float(np.hypot(*way))
    across = np.array([-way[1], way[0]]) / length
    left, top, right, bottom = frame.box
    centre = np.array([left + right, top + bottom]) / 2
    forbids = one.limit.forbids
    middle = _on_page(frame, forbids).mean(axis=0) if forbids else 2 * ends.mean(axis=0) - centre
    across *= np.sign((middle - ends.mean(axis=0)) @ across)
    count = max(int(length / _TICK_EVERY_MM), 1)
    feet = [ends[0] + (k + 0.5) / count * way for k in range(count)]
    line = Stroke(ends, _LINE_MM, INK, _DASH_MM if one.limit.mine else (), role=one.role, says=one.says)
    return [line, *(Stroke(np.array([foot, foot + _TICK_MM * across]), BASE_MM, INK, role="feet") for foot in feet)]
