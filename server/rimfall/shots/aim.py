"""Every throw that arrives: read off the curve of throws that arrive at all (`curve.py`), each then flown as a scene flies it.

Along the curve only one figure is free, the flight time; what is fixed makes it an equation, all of whose roots are found or ruled out
(`panels.py`). Where the curve comes near to what is fixed without meeting it, a throw that keeps to it still comes within the
catcher's reach if it is near enough; and where something is in the way of a throw, one that passes it may come within reach.
"""

from dataclasses import dataclass, field, replace
from functools import cached_property

import numpy as np

from ..physics.constants import TURN_RAD
from .beside import dip_s, least_free, nearest, passing, searched
from .curve import Curve, curve_of
from .fixed import ELEVATION, FLIGHT, LEAST, SPEED, Fixed
from .hangs import hangs_s, slab_of
from .panels import roots
from .question import MOST_M_S, Question, Throw, flown
from .shooting import FINE_M, ROUGH_M, Shooting
from .target import Moving

_DEGREE = 24  # of the polynomials whose roots are told
_LEAST_S = 1e-3
_POLISHED_M, _POLISHES = 1e-9, 6
_LOOKED_AT = 2.0  # times the reach: what seems to miss by so much may come within it
_ONE_DIP = 1.01  # times the higher of two: no higher lies between them, and they are one
_SAME_S = 1e-6


@dataclass(frozen=True)
class Aim:
    """The throws that arrive, those that nothing is in the way of first, then by flight time; curve: all throws that arrive."""

    question: Question
    curve: Curve
    ways: list[Throw] = field(default_factory=list)

    @property
    def free(self) -> list[Throw]:
        """The ways that nothing is in the way of."""
        return [way for way in self.ways if way.catch.surface is None]

    @cached_property
    def nearest(self) -> Throw | None:
        """Where there is no way, that throw which comes nearest."""
        return None if self.ways else nearest(self.question, self.curve)


def aim(question: Question, curve: Curve | None = None) -> Aim:
    """All throws that arrive -> Aim; curve: that of the same thrower, target and flights, if it is known."""
    shooting = Shooting(question.thrower)
    if curve is None and question.fixed.what == LEAST and not shooting.in_vacuum:
        soon = _soon(question)
        if soon is not None:
            return soon
    if curve is None:
        curve = curve_of(shooting, question.target, *_span_s(question, shooting))
    meets, near = _candidates(question, curve)
    throws = []
    if len(meets[0]):
        flight_s, velocities = _polished(question, shooting, *meets)
        throws += flown(question, velocities, flight_s)
    for throw in flown(question, question.fixed.kept(near[1]), near[0]):
        nearer = throw if throw.catch.misses_m <= question.within_m else searched(question, throw, rounds=12)
        if nearer.catch.misses_m <= question.within_m:
            throws.append(nearer)
    throws = [passing(question, shooting, throw) for throw in _apart(throws)]
    if question.fixed.what == LEAST:
        throws = _least(question, curve, throws)
    throws.sort(key=lambda throw: (throw.catch.surface is not None, throw.flight_s))
    return Aim(question, curve, throws)


def _soon(question):
    """The Aim at the slowest throw, where it is known from flights of one turn alone: no throw so slow is in the air for longer."""
    most_s = question.flight_max_s
    turn_s = min(_turn_s(question), most_s)
    if turn_s >= 0.7 * most_s:
        return None
    known = aim(replace(question, flight_max_s=turn_s))
    if known.free and hangs_s(question.thrower, Fixed(SPEED, known.free[0].aim[0]), most_s) <= turn_s:
        return replace(known, question=question)
    return None


def _turn_s(question):
    """How long a turn of the habitat takes, at its fastest."""
    fastest = float(np.max(np.abs(question.thrower.setting.habitat.spin.rates_rad_s)))
    return TURN_RAD / fastest if fastest else np.inf


def _least_s(question):
    """A flight time below which no throw that is meant can arrive."""
    thrower, setting = question.thrower, question.thrower.setting
    there = question.target.at(np.array([thrower.hand.time_s]))[0][0]
    far = max(float(np.linalg.norm(there - thrower.hand.position_m)) - question.within_m, 0.0)
    if isinstance(question.target, Moving):
        far *= 0.1
    fastest = question.fixed.value if question.fixed.what == SPEED else MOST_M_S
    rim = float(np.max(np.abs(setting.habitat.spin.rates_rad_s))) * setting.habitat.radius_m
    pull = float(np.linalg.norm(setting.habitat.pull_m_s2)) * question.flight_max_s
    hand = float(np.linalg.norm(thrower.hand.velocity_m_s))
    return float(
        np.clip(
            far / (fastest + hand + 2 * rim + pull),
            min(_LEAST_S, 0.01 * question.flight_max_s),
            0.5 * question.flight_max_s,
        )
    )


def _span_s(question, shooting):
    """The flight times between which throws are looked for."""
    least = _least_s(question)
    if shooting.in_vacuum or question.fixed.what not in (SPEED, ELEVATION):
        return least, question.flight_max_s
    thrower, longest_s = question.thrower, question.flight_max_s
    if question.fixed.what == SPEED:
        return least, max(min(hangs_s(thrower, question.fixed, longest_s), longest_s), 2 * least)
    hangs = hangs_s(thrower, question.fixed, longest_s, slab_of(thrower, question.target, question.within_m))
    return least, max(
        min(max(hangs, 0.5 * _turn_s(question)), longest_s), 2 * least
    )  # so that another elevation is found


def _candidates(question, curve):
    """Flight times and throws that keep to what is fixed and arrive, ((N,), (N, 3)); and those that may come within reach."""
    fixed, none = question.fixed, (np.empty(0), np.empty((0, 3)))
    if not len(curve.panels.low):
        return none, none
    if fixed.what == FLIGHT:
        at = np.array([fixed.value])
        throw = curve.velocity(at)
        return ((at, throw), none) if np.linalg.norm(throw) <= MOST_M_S else (none, none)
    times = curve.panels.times(_DEGREE)
    w, slope = curve.at_nodes(_DEGREE)
    at = roots(curve.panels, fixed.vanishes(times, w, slope))
    at = at[fixed.keeps(curve.w(at))] if len(at) else at
    flat, places = times.ravel(), w.reshape(-1, 3)
    if fixed.what == LEAST:
        return _slowest(question, curve, at), none
    throws = curve.velocity(at) if len(at) else none[1]
    slow = np.linalg.norm(throws, axis=1) <= MOST_M_S
    near = _dips(question, curve, flat, places, at)
    return (at[slow], throws[slow]), (near, curve.velocity(near)) if len(near) else none


def _slowest(question, curve, at):
    """Of flight times at which the speed has no slope, those at which it is least among its like; and the longest, where it still falls."""
    last = curve.panels.high[-1]
    step = 1e-4 * np.minimum(at, 1.0)

    def speed(t):
        return np.linalg.norm(curve.velocity(np.clip(t, curve.panels.low[0], last)), axis=1) if len(t) else np.empty(0)

    at = at[(speed(at) <= speed(at - step)) & (speed(at) <= speed(at + step))]
    ends = np.array([0.999 * last, last])
    if np.diff(speed(ends))[0] < 0:
        at = np.append(at, last)
    return at, curve.velocity(at) if len(at) else np.empty((0, 3))


def _dips(question, curve, flight_s, w, at):
    """Flight times of the curve at which it comes nearest to what is fixed without meeting it, near enough to look at; not those that
    come within reach together with a throw that meets it (at), or with another that comes nearer."""
    off = question.fixed.off_m(flight_s, w)
    size, enough = np.abs(off), _LOOKED_AT * question.within_m
    left, right = np.concatenate([[np.inf], size[:-1]]), np.concatenate([size[1:], [np.inf]])
    dips = np.flatnonzero((size <= left) & (size < right) & (size <= enough))
    outside = np.linalg.norm(w, axis=1) > question.within_m
    begins = int(np.argmax(outside)) if outside.any() else len(w)
    out = []
    for k in sorted(dips[dips > begins], key=lambda k: size[k]):
        low = k
        while low > 0 and size[low] <= enough:
            low -= 1
        high = k
        while high < len(size) - 1 and size[high] <= enough:
            high += 1
        if np.any((at >= flight_s[low]) & (at <= flight_s[high])):
            continue
        level = max(question.within_m, _ONE_DIP * size[k])
        if not any(np.all(size[min(j, k) : max(j, k) + 1] <= level) for j in out):
            out.append(k)
    last = len(flight_s) - 1
    return np.array([dip_s(question, curve, flight_s[max(k - 2, 0)], flight_s[min(k + 2, last)]) for k in sorted(out)])


def _polished(question, shooting, flight_s, velocities):
    """Flight times (N,) and throws (N, 3) to the last digit: each comes to the hands, and keeps to what is fixed (Newton's method)."""
    fixed, begin_s = question.fixed, shooting.thrower.hand.time_s
    free = fixed.what in (SPEED, ELEVATION)
    count = len(flight_s)
    _, moving, effects = shooting.effects(velocities, flight_s, ROUGH_M)
    for _ in range(_POLISHES):
        place, moving = shooting.arrive(velocities, flight_s, FINE_M if not shooting.in_vacuum else 0.0)
        there, going = question.target.at(begin_s + flight_s)
        if shooting.in_vacuum:
            effects = shooting.effects(velocities, flight_s)[2]
        system, right = np.zeros((count, 4, 4)), np.zeros((count, 4))
        system[:, :3, :3], right[:, :3] = effects, there - place
        system[:, 3, 3] = 1.0
        if free:
            off, change = fixed.off(velocities)
            system[:, :3, 3] = moving - going
            system[:, 3, :3], system[:, 3, 3], right[:, 3] = change, 0.0, -off
        if np.max(np.linalg.norm(right[:, :3], axis=1)) <= _POLISHED_M and np.max(np.abs(right[:, 3])) <= 1e-12:
            break
        change = np.einsum("nab,nb->na", np.linalg.pinv(system), right)
        wild = np.abs(change[:, 3]) > 0.1 * flight_s
        change[wild] = 0.0
        velocities, flight_s = velocities + change[:, :3], flight_s + change[:, 3]
    return flight_s, fixed.kept(velocities)


def _apart(throws):
    """Throws without those that are another again."""
    out = []
    for throw in sorted(throws, key=lambda one: one.catch.misses_m):
        same = (
            abs(throw.catch.time_s - one.catch.time_s) < _SAME_S
            and np.allclose(throw.velocity, one.velocity, atol=1e-6)
            for one in out
        )
        if not any(same):
            out.append(throw)
    return out


def _least(question, curve, throws):
    """The slowest of throws that nothing is in the way of, and those that are slower still; where something is in the way of the slowest
    of all, the slowest that it is not in the way of may lie elsewhere on the curve."""
    by_speed = sorted(throws, key=lambda one: one.aim[0])
    if by_speed and by_speed[0].catch.surface is not None:
        free = least_free(question, curve, lambda velocities, _: np.linalg.norm(velocities, axis=1))
        by_speed = sorted([*by_speed, *([] if free is None else [free])], key=lambda one: one.aim[0])
    first = next((k for k, one in enumerate(by_speed) if one.catch.surface is None), len(by_speed))
    return by_speed[: first + 1]
