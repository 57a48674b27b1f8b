"""Which wishes for a habitat cannot be met together, and how near each could be so that the others are."""

import math
from dataclasses import dataclass

from ...comfort import sizing
from ...comfort.published import ROWS

_ROWS = {row.id: row for row in ROWS}


@dataclass(frozen=True)
class Change:
    """A figure that stands in the way: quantity, bound, what it was, the nearest and the furthest it could be, in the quantity's
    unit. furthest: infinite or 0 where it is a bound, which may leave as much room as it likes."""

    quantity: str
    bound: str
    was: float
    could_be: float
    furthest: float


@dataclass(frozen=True)
class Clash:
    """One wish, by number, of those that collide. changes: the one figure that it is, or those limits of a study that stand in the
    way, each by itself. all_others: whether every other wish is met then, or only those of the collision, others colliding too."""

    wish: int
    changes: tuple
    all_others: bool


def clashes(request, planes):
    """Clashes of wishes that no habitat meets; planes: the half planes of each wish."""
    chosen = sizing.collision(planes)
    needed = _needed(planes, chosen)
    return tuple(_clash(request, planes, chosen, number, needed) for number in chosen)


def _needed(planes, chosen):
    """Of the half planes of the chosen wishes those without any of which the rest can be met."""
    return sizing.least_clash([plane for n in chosen for plane in planes[n]], sizing.fits)


def _clash(request, planes, chosen, number, needed):
    wish = request.wishes[number]
    others = [plane for n, of_one in enumerate(planes) if n != number for plane in of_one]
    all_others = sizing.fits(others)
    if not all_others:
        others = [plane for n in chosen if n != number for plane in planes[n]]
    if wish.kind == "figure":
        changes = (_change(request.person, wish.quantity, wish.bound, wish.value, others),)
    else:
        parts = dict.fromkeys(plane.part for plane in needed if plane.wish == number)
        changes = tuple(_of_study(request.person, _ROWS[part], planes[number], others) for part in parts)
    return Clash(number, tuple(change for change in changes if change is not None), all_others)


def _of_study(person, row, of_study, others):
    """The Change of one limit of a study, the rest of which is kept; None where that alone would not do."""
    rest = [*others, *(plane for plane in of_study if plane.part != row.id)]
    return _change(person, row.quantity, row.bound, row.limit, rest) if sizing.fits(rest) else None


def _change(person, quantity, bound, was, others):
    """The Change of a figure to the nearest with which the others, which can be met, are."""
    radius_power, spin_power, factor = sizing.line_of(person, quantity)
    low, high = sizing.span(others, radius_power, spin_power)
    nearest, furthest = (low, high) if math.log(was) - math.log(factor) < low else (high, low)
    beyond = {"exactly": factor * math.exp(furthest), "at_most": math.inf, "at_least": 0.0}[bound]
    return Change(quantity, bound, was, clean(factor * math.exp(nearest)), beyond)


def clean(value):
    """A value without the last digits, which logarithms left: 0.8, not 0.8000000000000008."""
    return float(f"{value:.12g}")
