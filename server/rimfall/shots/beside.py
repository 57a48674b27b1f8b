"""Throws beside those that are aimed to the point: one that passes what is in the way, the nearest where none arrives, the nearest of the
curve that nothing is in the way of. All are flown as a scene flies them."""

from collections.abc import Callable

import numpy as np

from .curve import Curve
from .fixed import ELEVATION, SPEED
from .question import MOST_M_S, Question, Throw, flown
from .shooting import Shooting

_RINGS, _ROUND = (0.4, 0.75, 0.97), 12  # places in the catcher's reach that are tried where something is in the way
_SHARES, _SHARES_BESIDE = np.linspace(0.0, 1.0, 18)[1:-1], np.linspace(0.0, 1.0, 34)[1:-1]
_SEARCHES, _SHRINKS = 14, 0.4


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


def along(question: Question, curve: Curve, most: int = 64) -> list[Throw]:
    """Throws of the curve, so many at the most, flown."""
    times = np.unique(curve.panels.times(8))
    times = times[:: max(1, -(-len(times) // most))]
    velocities = curve.velocity(times) if len(times) else np.empty((0, 3))
    slow = np.linalg.norm(velocities, axis=1) <= MOST_M_S
    return flown(question, velocities[slow], times[slow])


def least_free(question: Question, curve: Curve, figure: Callable[[Throw], float]) -> Throw | None:
    """About that throw of the curve, of those that nothing is in the way of, of which a figure is least."""
    throws = along(question, curve)
    free = [k for k, one in enumerate(throws) if one.catch.surface is None]
    if not free:
        return None
    k = min(free, key=lambda one: figure(throws[one]))
    best = throws[k]
    for beside in (k - 1, k + 1):
        if 0 <= beside < len(throws):
            times = throws[k].flight_s + _SHARES_BESIDE * (throws[beside].flight_s - throws[k].flight_s)
            more = flown(question, curve.velocity(times), times)
            best = min([best, *(one for one in more if one.catch.surface is None)], key=figure)
    return best


def nearest(question: Question, curve: Curve) -> Throw | None:
    """Of the throws that keep to what is fixed, that which comes nearest to the hands."""
    if not len(curve.panels.low):
        return None
    times = curve.panels.times(8).ravel()
    w = curve.at_nodes(8)[0].reshape(-1, 3)
    if question.fixed.what in (SPEED, ELEVATION):
        off = np.abs(question.fixed.off_m(times, w))
        some = np.argsort(off)[:: max(1, len(off) // 40)][:24]
    else:
        some = np.argsort(np.linalg.norm(w, axis=1) / times)[:4]
    throws = flown(question, _slowed(question.fixed.kept(w[some] / times[some][:, None])), times[some])
    throws.sort(key=lambda one: one.catch.misses_m)
    best = throws[0]
    about_m = question.within_m + abs(
        float(question.fixed.off_m(np.array([best.meant_s]), curve.w(np.array([best.meant_s])))[0])
    )
    if question.fixed.what == SPEED and best.catch.misses_m <= about_m and Shooting(question.thrower).in_vacuum:
        return best  # it is that one: a straight line goes where it is aimed
    return searched(question, best)


def _slowed(velocities):
    """Throws no faster than a throw may be."""
    speed = np.linalg.norm(velocities, axis=1, keepdims=True)
    return velocities * np.minimum(1.0, MOST_M_S / np.maximum(speed, 1e-300))


def searched(question: Question, throw: Throw, rounds: int = _SEARCHES) -> Throw:
    """A throw that keeps to what is fixed and comes nearer than those about it, as flown (a search that shrinks where nothing is nearer)."""
    size = 0.1 * max(float(np.linalg.norm(throw.velocity)), 1.0)
    for _ in range(rounds):
        tried = _slowed(question.fixed.kept(throw.velocity + size * _star(question, throw)))
        lasts = np.full(len(tried), throw.catch.time_s - question.thrower.hand.time_s)
        best = min(flown(question, tried, lasts), key=lambda one: one.catch.misses_m)
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
