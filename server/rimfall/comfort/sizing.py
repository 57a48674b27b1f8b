"""A habitat to wish for: the least radius, and every radius and spin, with which all that is wished for is met.

Every wish is one or more half planes in (ln radius, ln spin), radius in metres and spin in rad/s, because each quantity is a power
of one times a power of the other. What meets them all is a convex polygon: its leftmost corner is the smallest habitat, its
spans are how far any quantity can go. The program's own limits close it, except toward no spin.
"""

import math
from dataclasses import dataclass
from itertools import combinations

from ..physics.constants import RPM_RAD_S
from ..shapes.part import GREATEST_RADIUS_M, GREATEST_RIM_SPEED_M_S, GREATEST_SPIN_RPM, LEAST_RADIUS_M
from .quantities import QUANTITIES

_NEAR = 1e-9  # in logarithms: nearer than this is met
_RADII = 61  # of a family, besides its corners


@dataclass(frozen=True)
class HalfPlane:
    """radius_power * ln R + spin_power * ln omega <= most. wish: number of the wish that says so, None for the program's own;
    part: which limit of a study it is, or ""; room: whether it is that somebody has room to stand, which gives way to wishes."""

    radius_power: int
    spin_power: int
    most: float
    wish: int | None = None
    part: str = ""
    room: bool = False


@dataclass(frozen=True)
class SpinSpan:
    """Spins, rad/s, that are free at one radius. None: nothing that was wished for bounds it there."""

    low_rad_s: float | None
    high_rad_s: float | None


@dataclass(frozen=True)
class Sized:
    """radius_m: the smallest with which all wishes are met. spin: what is free there. bound_by: numbers of the wishes that keep it
    from being smaller; by_program: whether a limit of the program's does, too; by_room: whether the person's height does; parts: those
    limits of studies that do.
    radii_m, spins: the family, from the smallest on."""

    radius_m: float
    spin: SpinSpan
    bound_by: tuple
    by_program: bool
    by_room: bool
    parts: tuple
    radii_m: tuple
    spins: tuple


def half_planes(person, quantity, bound, value, wish=None, part=""):
    """What a wish ("exactly", "at_least", "at_most") for a quantity, or for "radius", says; value > 0 in its unit.

    Raises ValueError where the quantity is 0 whatever the habitat (nobody walks, no head turns) and the wish is for more.
    """
    radius_power, spin_power, factor = line_of(person, quantity)
    if factor == 0.0:
        if bound == "at_most":
            return ()
        raise ValueError(f"{quantity} is 0 in every habitat")
    level = math.log(value) - math.log(factor)
    most = HalfPlane(radius_power, spin_power, level, wish, part)
    least = HalfPlane(-radius_power, -spin_power, -level, wish, part)
    return {"at_most": (most,), "at_least": (least,), "exactly": (most, least)}[bound]


def line_of(person, quantity):
    """(power of radius, power of spin, factor) of a quantity, or of "radius"."""
    if quantity == "radius":
        return 1, 0, 1.0
    one = QUANTITIES[quantity]
    return one.radius_power, one.spin_power, one.factor(person)


def room_for(person):
    """That somebody who stands on the deck reaches no farther than the axis: a HalfPlane."""
    return HalfPlane(-1, 0, -math.log(person.height_m), room=True)


PROGRAM = (
    HalfPlane(-1, 0, -math.log(LEAST_RADIUS_M)),
    HalfPlane(1, 0, math.log(GREATEST_RADIUS_M)),
    HalfPlane(0, 1, math.log(GREATEST_SPIN_RPM * RPM_RAD_S)),
    HalfPlane(1, 1, math.log(GREATEST_RIM_SPEED_M_S)),
)


def size(planes):
    """The Sized of half planes, or None where no habitat meets them all."""
    tight = _tightest(planes)
    corners = _corners(tight)
    if not corners:
        return None
    least = min(x for x, _ in corners)
    greatest = max(x for x, _ in corners)
    binding = _binding(tight, least)
    at = sorted({least, greatest, *(x for x, _ in corners), *_between(least, greatest)})
    radii = [x for k, x in enumerate(at) if k == 0 or x - at[k - 1] > _NEAR]
    return Sized(
        math.exp(least),
        _spin_at(tight, least),
        tuple(sorted({p.wish for p in _equals(planes, binding) if p.wish is not None})),
        any(p.wish is None and not p.room for p in binding),
        any(p.room for p in binding),
        tuple(dict.fromkeys(p.part for p in _equals(planes, binding) if p.part)),
        tuple(math.exp(x) for x in radii),
        tuple(_spin_at(tight, x) for x in radii),
    )


def spin_at(planes, radius_m):
    """The SpinSpan of half planes at a radius that meets them."""
    return _spin_at(_tightest(planes), math.log(radius_m))


def fits(planes):
    """Whether a habitat meets them all."""
    return bool(_corners(_tightest(planes)))


def span(planes, radius_power, spin_power):
    """(least, greatest) of radius_power * ln R + spin_power * ln omega over all that meets the half planes, or None where nothing
    does; infinite toward no spin where nothing bounds that."""
    tight = _tightest(planes)
    corners = _corners(tight)
    if not corners:
        return None
    values = [radius_power * x + spin_power * y for x, y in corners]
    endless = not any(p.spin_power < 0 for p in tight)
    low = -math.inf if endless and spin_power > 0 else min(values)
    return low, math.inf if endless and spin_power < 0 else max(values)


def collision(wishes):
    """Numbers of the wishes of one smallest set that cannot be met together; wishes: a tuple of half planes each.

    By Helly's theorem three half planes of the plane are enough; with no wish and no pair of them at fault, leaving out whatever
    can be left out ends at three.
    """
    numbers = range(len(wishes))
    for few in (1, 2):
        for chosen in combinations(numbers, few):
            if not fits(_of(wishes, chosen)):
                return chosen
    return tuple(least_clash(numbers, lambda left: fits(_of(wishes, left))))


def least_clash(things, can_be_met):
    """Those of the things, in order, without any of which the others can be met; together they cannot."""
    left = list(things)
    for one in tuple(left):
        without = [other for other in left if other != one]
        if not can_be_met(without):
            left = without
    return left


def _of(wishes, numbers):
    return [plane for n in numbers for plane in wishes[n]]


def _tightest(planes):
    """Of parallel half planes the narrowest, the program's own among them; a wish before the program where they are equal."""
    narrowest = {}
    for plane in (*planes, *PROGRAM):
        key = plane.radius_power, plane.spin_power
        if key not in narrowest or plane.most < narrowest[key].most:
            narrowest[key] = plane
    return tuple(narrowest.values())


def _corners(tight):
    """Corners (ln R, ln omega) of what meets them all; none where nothing does, as the program's own leave no endless line."""
    corners = []
    for one, other in combinations(tight, 2):
        turn = one.radius_power * other.spin_power - other.radius_power * one.spin_power
        if turn:
            x = (one.most * other.spin_power - other.most * one.spin_power) / turn
            y = (one.radius_power * other.most - other.radius_power * one.most) / turn
            if all(p.radius_power * x + p.spin_power * y <= p.most + _NEAR for p in tight):
                corners.append((x, y))
    return corners


def _binding(tight, least):
    """The half plane, or the two, that let no radius be less than exp(least)."""
    for few in (1, 2):
        for chosen in combinations(tight, few):
            bound = _least_of(chosen)
            if bound is not None and abs(bound - least) <= 2 * _NEAR:
                return chosen
    raise ArithmeticError("a polygon without a left end")


def _least_of(chosen):
    """The least ln R that one or two half planes leave by themselves, None where they leave any."""
    if len(chosen) == 1:
        (one,) = chosen
        power, most = (one.radius_power, one.most) if one.spin_power == 0 else (0, 0.0)
    else:
        one, other = sorted(chosen, key=lambda p: -p.spin_power)
        if not one.spin_power > 0 > other.spin_power:
            return None
        power = one.radius_power * -other.spin_power + other.radius_power * one.spin_power
        most = one.most * -other.spin_power + other.most * one.spin_power
    return most / power if power < 0 else None


def _equals(planes, binding):
    """Those of the half planes that say the same as one that binds."""
    return [
        p
        for p in planes
        for b in binding
        if (p.radius_power, p.spin_power) == (b.radius_power, b.spin_power) and p.most - b.most <= _NEAR
    ]


def _between(least, greatest):
    return [least + (greatest - least) * k / (_RADII - 1) for k in range(_RADII)]


def _spin_at(tight, ln_radius):
    """The SpinSpan at a radius."""
    ends = {True: None, False: None}  # upper, lower: (ln omega, half plane)
    for plane in tight:
        if plane.spin_power:
            end = (plane.most - plane.radius_power * ln_radius) / plane.spin_power
            upper, before = plane.spin_power > 0, ends[plane.spin_power > 0]
            if before is None or (end < before[0] if upper else end > before[0]):
                ends[upper] = end, plane
    low, high = ends[False], ends[True]
    if low is not None and high[0] - low[0] <= 2 * _NEAR:
        high = low  # one spin alone is left, whoever leaves it
    return SpinSpan(_wished(low), _wished(high))


def _wished(end):
    return None if end is None or end[1].wish is None else math.exp(end[0])
