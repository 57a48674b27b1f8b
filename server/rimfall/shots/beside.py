"""Throws beside those that are aimed to the point: one that passes what is in the way, the nearest where none arrives, the nearest of the
curve that nothing is in the way of. All are flown as a scene flies them."""

from collections.abc import Callable

import numpy as np

from ..motions.flight import fly_to_ends
from .curve import Curve
from .fixed import ELEVATION, SPEED
from .question import MOST_M_S, Question, Throw, flown
from .shooting import ROUGH_M, Shooting

_RINGS, _ROUND = (0.4, 0.75, 0.97), 12  # places in the catcher's reach that are tried where something is in the way
_SHARES, _SHARES_BESIDE = np.linspace(0.0, 1.0, 18)[1:-1], np.linspace(0.0, 1.0, 34)[1:-1]
_LOOKS, _FINER = 33, 4  # at the curve between two flight times, and how often about the best
_SEARCHES, _SHRINKS = 14, 0.4
_TOLD, _TOLD_ENDED = (
    0.02,
    1e-3,
)  # of what the nearest misses by: a step so small changes that by its square; not where its flight ends
_EXACTLY = 6  # of the throws that seem free are flown to the last digit


def passing(question: Question, shooting: Shooting, throw: Throw) -> Throw:
    """A throw; where something is in its way, the nearest of those that pass that and still come within reach, if there is one."""
    if throw.catch.surface is None:
        return throw
    lasts = np.array([throw.flight_s])
    _, moving, effects = shooting.effects(throw.velocity[None], lasts)
    closing = moving[0] - question.target.at(question.thrower.hand.time_s + lasts)[1][0]
    turns = 2 * np.pi * np.arange(_ROUND) / _ROUND
    spots = np.concatenate([ring * np.stack([np.cos(turns), np.sin(turns)], -1) for ring in _RINGS]) * question.within_m
    changes = spots @ _per_spot(question, throw, effects[0], closing)
    tried = flown(question, question.fixed.kept(throw.velocity + changes), np.repeat(lasts, len(spots)))
    clear = [one for one in tried if one.catch.surface is None]
    if not clear:
        return throw
    best = min(clear, key=lambda one: one.catch.misses_m)
    between = throw.velocity + _SHARES[:, None] * (best.velocity - throw.velocity)
    tried = flown(question, question.fixed.kept(between), np.repeat(lasts, len(between)))
    return min([best, *(one for one in tried if one.catch.surface is None)], key=lambda one: one.catch.misses_m)


def _per_spot(question, throw, effects, closing):
    """What a throw changes by (2, 3), keeping to what is fixed, for it to pass the hands a metre off, in two directions square to how it
    comes in."""
    ways = np.linalg.svd(closing[None])[2]
    third = ways[0] @ effects
    if question.fixed.what in (SPEED, ELEVATION):
        third = question.fixed.off(throw.velocity[None])[1][0]
    return np.linalg.pinv(np.vstack([ways[1:] @ effects, third]))[:, :2].T


def least_free(
    question: Question, curve: Curve, figure: Callable[[np.ndarray, np.ndarray], np.ndarray], most: int = 64
) -> Throw | None:
    """About that throw of the curve, of those that nothing is in the way of, of which a figure is least; figure: of throws (N, 3) and
    flight times (N,). So many are looked at, and as many about the best."""
    times = np.unique(curve.panels.times(8))
    times = times[:: max(1, -(-len(times) // most))]
    times = times[np.linalg.norm(curve.velocity(times), axis=1) <= MOST_M_S] if len(times) else times
    free = np.flatnonzero(_clear(question, curve, times))
    if not len(free):
        return None
    k = free[np.argmin(figure(curve.velocity(times[free]), times[free]))]
    ends = times[[max(k - 1, 0), min(k + 1, len(times) - 1)]]
    about = np.unique(times[k] + np.outer(ends - times[k], _SHARES_BESIDE))
    about = np.append(about[_clear(question, curve, about)], times[k])
    velocities = curve.velocity(about)
    best = np.argsort(figure(velocities, about))[:_EXACTLY]
    exact = flown(question, velocities[best], about[best])
    return next((one for one in exact if one.catch.surface is None), None)


def _clear(question, curve, flight_s):
    """Which of the throws of the curve of flight times (N,) meet nothing before they come within reach, at a glance."""
    if not len(flight_s):
        return np.zeros(0, dtype=bool)
    thrower = question.thrower
    until = thrower.hand.time_s + flight_s
    ends = fly_to_ends(thrower.setting.medium, thrower.releases(curve.velocity(flight_s), until), tolerance_m=ROUGH_M)
    short_m = (until - ends.time_s) * np.linalg.norm(ends.velocity_m_s, axis=1)
    return np.array([one is None for one in ends.surfaces]) | (short_m <= question.within_m)


def dip_s(question: Question, curve: Curve, low_s: float, high_s: float) -> float:
    """The flight time between two at which the curve comes nearest to what is fixed."""
    for _ in range(_FINER):
        times = np.linspace(low_s, high_s, _LOOKS)
        k = int(np.argmin(np.abs(question.fixed.off_m(times, curve.w(times)))))
        low_s, high_s = times[max(k - 1, 0)], times[min(k + 1, _LOOKS - 1)]
    return float(times[k])


def nearest(question: Question, curve: Curve) -> Throw | None:
    """Of the throws that keep to what is fixed, that which comes nearest to the hands."""
    if not len(curve.panels.low):
        return None
    times = curve.panels.times(8).ravel()
    w = curve.at_nodes(8)[0].reshape(-1, 3)
    if question.fixed.what in (SPEED, ELEVATION):
        off = np.abs(question.fixed.off_m(times, w))
        some = times[np.argsort(off)[:: max(1, len(off) // 40)][:24]]
        k = int(np.argmin(off))
        some = np.append(some, dip_s(question, curve, times[max(k - 2, 0)], times[min(k + 2, len(times) - 1)]))
    else:
        some = times[np.argsort(np.linalg.norm(w, axis=1) / times)[:4]]
    throws = flown(question, _slowed(question.fixed.kept(curve.velocity(some))), some)
    throws.sort(key=lambda one: one.catch.misses_m)
    best = throws[0]
    about_m = question.within_m + abs(
        float(question.fixed.off_m(np.array([best.meant_s]), curve.w(np.array([best.meant_s])))[0])
    )
    if question.fixed.what == SPEED and best.catch.misses_m <= about_m and Shooting(question.thrower).in_vacuum:
        return best  # it is that one: a straight line goes where it is aimed
    return searched(question, best, told=True)


def _slowed(velocities):
    """Throws no faster than a throw may be."""
    speed = np.linalg.norm(velocities, axis=1, keepdims=True)
    return velocities * np.minimum(1.0, MOST_M_S / np.maximum(speed, 1e-300))


def searched(question: Question, throw: Throw, rounds: int = _SEARCHES, told: bool = False) -> Throw:
    """A throw that keeps to what is fixed and comes nearer than those about it, as flown (a search that shrinks where nothing is nearer).
    told: whether what it misses by is only told, so that near enough will do."""
    begin_s = question.thrower.hand.time_s
    off_m_s = throw.catch.misses_m / max(throw.catch.time_s - begin_s, 1e-3)
    size = min(0.1 * max(float(np.linalg.norm(throw.velocity)), 1.0), off_m_s)
    for _ in range(rounds):
        lasts_s = throw.catch.time_s - begin_s
        enough = _TOLD if throw.catch.time_s < throw.catch.flight.path.end_s else _TOLD_ENDED
        if told and size * lasts_s < enough * throw.catch.misses_m:
            break
        tried = _slowed(question.fixed.kept(throw.velocity + size * _star(question, throw)))
        best = min(flown(question, tried, np.full(len(tried), lasts_s)), key=lambda one: one.catch.misses_m)
        if best.catch.misses_m < throw.catch.misses_m:
            throw = best
        else:
            size *= _SHRINKS
    return throw


def _star(question, throw):
    """Directions (8, 3) to look in about a throw, among those that keep to what is fixed; all about it where nothing is."""
    if question.fixed.what not in (SPEED, ELEVATION):
        return np.concatenate([np.eye(3), -np.eye(3), np.ones((1, 3)), -np.ones((1, 3))])
    one, other = np.linalg.svd(question.fixed.off(throw.velocity[None])[1])[2][1:]
    turns = 2 * np.pi * np.arange(8)[:, None] / 8
    return np.cos(turns) * one + np.sin(turns) * other
