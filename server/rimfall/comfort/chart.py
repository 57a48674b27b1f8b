"""The map of limits as data: on log axes of radius and spin, lines of equal gravity, and each limit's line with what it forbids.

Every quantity is a power of radius times a power of spin, so all of it is straight between two points. Axes, and what is drawn
on them, are radius in metres and spin in rpm; clipping is done in their logarithms.
"""

import math
from dataclasses import dataclass

from ..language import in_signs, tr, tr_later
from ..physics.constants import RPM_RAD_S
from .limits import no_name, own_id
from .published import LIMITS, ROWS, STUDIES
from .quantities import QUANTITIES

RADIUS_M = (1.0, 10_000.0)
SPIN_RPM = (0.1, 60.0)
_BOUNDS = {"at_least": tr_later("{figure} at least"), "at_most": tr_later("{figure} at most")}
GRAVITY_G = (0.1, 0.3, 1.0)  # few enough to tell apart; our own choice

_LEAST_SHOWN = 1e-6  # of a unit; four figures of a limit are shown, never with a power of ten
_SAME = 1e-9  # in the logarithm: a point this near a side lies on it


@dataclass(frozen=True)
class GravityLine:
    """Where gravity at the feet is g; line: its two ends [radius_m, spin_rpm] on the map."""

    g: float
    label: str
    line: list


@dataclass(frozen=True)
class LimitLine:
    """One limit, and all who say it: ids are those of `published.ROWS`, none where it is the user's own (mine).

    line: its two ends [radius_m, spin_rpm], None where it runs outside the map. forbids: corners of what it forbids of the
    map, or None. label, short: in words and at the line's end.
    """

    quantity: str
    bound: str
    limit: float
    unit: str
    ids: tuple
    label: str
    short: str
    line: list | None
    forbids: list | None
    mine: bool


@dataclass(frozen=True)
class LimitsMap:
    """The map: its two axes, lowest and highest, the lines of equal gravity and the limits, by quantity and then by value."""

    radius_m: tuple
    spin_rpm: tuple
    gravity: tuple
    limits: tuple


def chart(person, own_limits):
    """The LimitsMap of a person (scene.feel.person_part.PersonPart) and the limits of their own."""
    published_lines = [_line(key, rows, person) for key, rows in _SAID_ALIKE.items()]
    own_lines = [_own_line(number, one, person) for number, one in enumerate(own_limits, start=1)]
    order = list(QUANTITIES)
    lines = sorted(published_lines + own_lines, key=lambda line: (line.mine, order.index(line.quantity), line.limit))
    return LimitsMap(RADIUS_M, SPIN_RPM, tuple(_gravity_line(g, person) for g in GRAVITY_G), tuple(lines))


def says(quantity, bound, limit):
    """A limit in words: "6 rpm at most"."""
    return tr(_BOUNDS[bound], figure=_figure(quantity, limit))


def _figure(quantity, value):
    unit = QUANTITIES[quantity].unit
    shown = in_signs(f"{float(f'{max(value, _LEAST_SHOWN):.4g}'):,.9f}".rstrip("0").rstrip("."))
    figure = shown + (f"\u00a0{unit}" if unit else "")
    return figure if value >= _LEAST_SHOWN else tr("under {figure}", figure=figure)


def _grouped(rows):
    """(quantity, bound, limit) -> those rows that say it, by year."""
    groups = {}
    for row in sorted(rows, key=lambda row: (STUDIES[row.study].year or math.inf, row.study)):
        if row.bound in LIMITS:
            groups.setdefault((row.quantity, row.bound, row.limit), []).append(row)
    return groups


_SAID_ALIKE = _grouped(ROWS)


def _line(key, rows, person):
    named = ", ".join(dict.fromkeys(STUDIES[row.study].called for row in rows))
    return _limit_line(key, tuple(row.id for row in rows), named, person, mine=False)


def _own_line(number, own, person):
    """Its id is that of its row (`limits.compare`)."""
    key, named = (own.quantity, own.bound, own.value), own.name.strip() or no_name()
    return _limit_line(key, (own_id(number),), named, person, mine=True)


def _limit_line(key, ids, named, person, mine):
    quantity, bound, limit = key
    line, forbids = _drawn(person, quantity, bound, limit)
    unit, label = QUANTITIES[quantity].unit, f"{says(*key)}: {named}"
    return LimitLine(quantity, bound, limit, unit, ids, label, _figure(quantity, limit), line, forbids, mine)


def _gravity_line(g, person):
    line, _ = _drawn(person, "gravity", "at_most", g)
    return GravityLine(g, _figure("gravity", g), line)


def _drawn(person, quantity, bound, limit):
    """A limit's line and what it forbids, both clipped to the map, or None each.

    Where a person's pace makes the quantity 0 everywhere (nobody walks, no head turns) there is no line: at least any more than
    that forbids all of the map, at most forbids nothing of it.
    """
    one = QUANTITIES[quantity]
    factor = one.factor(person)
    if factor == 0.0:
        return None, (_plain(_CORNERS) if bound == "at_least" else None)
    level = math.log(limit) - math.log(factor) - one.spin_power * math.log(RPM_RAD_S)
    outward = 1.0 if bound == "at_most" else -1.0  # toward what is forbidden
    past = [outward * (one.radius_power * x + one.spin_power * y - level) for x, y in _CORNERS]
    return _clipped(past)


_CORNERS = [
    (math.log(RADIUS_M[0]), math.log(SPIN_RPM[0])),
    (math.log(RADIUS_M[1]), math.log(SPIN_RPM[0])),
    (math.log(RADIUS_M[1]), math.log(SPIN_RPM[1])),
    (math.log(RADIUS_M[0]), math.log(SPIN_RPM[1])),
]


def _clipped(past):
    """The line and the forbidden part of the map from how far (in logarithms) each corner lies past the limit.

    The clipping of a convex polygon by one half plane: Sutherland and Hodgman, Communications of the ACM 17 (1974).
    """
    kept, crossings = [], []
    for k in range(4):
        gap, next_gap = past[k], past[(k + 1) % 4]
        if gap > _SAME:
            kept.append(_CORNERS[k])
        if abs(gap) <= _SAME:
            kept.append(_CORNERS[k])
            crossings.append(_CORNERS[k])
        elif abs(next_gap) > _SAME and (gap > 0) != (next_gap > 0):
            part = gap / (gap - next_gap)
            (x0, y0), (x1, y1) = _CORNERS[k], _CORNERS[(k + 1) % 4]
            kept.append((x0 + part * (x1 - x0), y0 + part * (y1 - y0)))
            crossings.append(kept[-1])
    line = _plain(sorted(crossings)) if len(crossings) == 2 else None
    return line, (_plain(kept) if max(past) > _SAME else None)


def _plain(points):
    """Points of the logarithms as [radius_m, spin_rpm], without the last digits, which logarithms left."""
    return [[float(f"{math.exp(value):.12g}") for value in point] for point in points]
