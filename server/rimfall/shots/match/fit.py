"""Least squares of many vectors at once, and how far a quantity can be moved before the misfit has grown by so much.

`Problem.misfit` takes vectors (B, P) to residuals (B, M) in standard deviations; their squares' sum is chi squared. Slopes are
differences. Each round every vector takes the best of some Levenberg-Marquardt steps.
"""

from dataclasses import dataclass

import numpy as np

from .flight import Resistance, flown
from .unknowns import Unknowns

_SLOPE = 1e-6
_DAMPINGS = np.array([0.05, 1.0, 20.0, 1e3])
_IDLE_ROUNDS = 2
_SCALES = np.array([1.0, 0.5, 0.2, 0.05])
_HUGE = 1e200
_MOST_OFF = 1e9  # standard deviations


@dataclass(frozen=True)
class Problem:
    """A sight, what is sought, and how air holds the body, None in vacuum."""

    sight: object
    unknowns: Unknowns
    resistance: Resistance | None

    @property
    def count(self):
        """How many figures were seen."""
        return self.sight.seen.size

    @property
    def freedom(self):
        """Figures seen less figures sought."""
        return self.count - len(self.unknowns.names)

    def flown(self, theta, time_s=None):
        """The Flown of vectors (B, P), at the sight's times or others (N,)."""
        return flown(self.unknowns.state(theta), self.sight.time_s if time_s is None else time_s, self.resistance)

    def misfit(self, theta):
        """Residuals (B, M) of vectors (B, P), in standard deviations: seen less expected."""
        with np.errstate(over="ignore", invalid="ignore", divide="ignore"):
            off = (self.sight.seen - self.sight.expected(self.flown(theta))) / self.sight.sd
        return np.clip(np.nan_to_num(off, nan=_MOST_OFF), -_MOST_OFF, _MOST_OFF).reshape(len(theta), -1)


def least_squares(problem, theta, most_rounds=40, enough=2e-4, in_air=False):
    """Vectors (B, P) moved to where chi squared is least near each -> (vectors, chi squared (B,)). One that has come to rest, or that has
    found less than the best would find in all its rounds, is left where it is. in_air: as `Unknowns.within` has it."""
    theta = problem.unknowns.within(theta, in_air)
    r = problem.misfit(theta)
    chi2, damping = np.sum(r * r, axis=1), np.full(len(theta), 1e-3)
    live, idle = np.arange(len(theta)), np.zeros(len(theta), int)
    for _ in range(most_rounds if theta.shape[1] else 0):
        stepped, stepped_r, stepped_chi2, factor = _round(problem, theta[live], r[live], damping[live], in_air)
        better = stepped_chi2 < chi2[live]
        gained = np.where(better, chi2[live] - stepped_chi2, 0.0)
        moved = live[better]
        theta[moved], r[moved], chi2[moved] = stepped[better], stepped_r[better], stepped_chi2[better]
        damping[live] = np.clip(damping[live] * np.where(better, factor, _DAMPINGS[-1]), 1e-12, 1e12)
        idle[live] = np.where(gained <= enough * (1.0 + 1e-3 * chi2[live]), idle[live] + 1, 0)
        live = live[idle[live] < _IDLE_ROUNDS]
        if len(live) == 0:
            break
    return theta, chi2


def _round(problem, theta, r, damping, in_air):
    """The best of some damped steps of each vector (B, P): (vectors, residuals, chi squared, the factor of its damping)."""
    slopes = _slopes(problem.misfit, theta, r)
    a, b = slopes @ slopes.transpose(0, 2, 1), np.einsum("bpm,bm->bp", slopes, r)
    diagonal = np.einsum("bpp->bp", a)
    floor = np.maximum(diagonal, 1e-12 * np.max(diagonal, axis=1, keepdims=True) + 1e-30)
    tries = []
    for factor in _DAMPINGS:
        damped = a + (np.eye(a.shape[1]) * floor[:, None, :]) * (damping * factor + 1e-13)[:, None, None]
        tries.append(_stepped(problem.unknowns, theta, damped, b, in_air))
    all_r = problem.misfit(np.concatenate(tries)).reshape(len(tries), len(theta), -1)
    all_chi2 = np.sum(all_r * all_r, axis=2)
    best, rows = np.argmin(all_chi2, axis=0), np.arange(len(theta))
    return np.array(tries)[best, rows], all_r[best, rows], all_chi2[best, rows], _DAMPINGS[best]


def _stepped(unknowns, theta, a, b, in_air):
    """Vectors (B, P) moved by the step that solves a step = -b, within the ranges; where a range holds some members back, the others
    take the step that is best with those where they are held."""
    free = theta - np.linalg.solve(a, b[..., None])[..., 0]
    within = unknowns.within(free, in_air)
    held = within != free
    some = np.flatnonzero(held.any(axis=1))
    if len(some):
        fixed = held[some]
        rows = np.where(fixed[..., None], np.eye(a.shape[1]), a[some])
        right = np.where(fixed, within[some] - theta[some], -b[some])
        within[some] = unknowns.within(theta[some] + np.linalg.solve(rows, right[..., None])[..., 0], in_air)
    return within


def _slopes(function, theta, value):
    """Slopes (B, P, M) of a function of vectors (B, P) whose values (B, M) there are known."""
    size, count = theta.shape
    h = _SLOPE * np.maximum(1.0, np.abs(theta))
    moved = theta[:, None, :] + h[..., None] * np.eye(count)
    return (function(moved.reshape(-1, count)).reshape(size, count, -1) - value[:, None]) / h[..., None]


@dataclass(frozen=True)
class Extremes:
    """Of Q quantities: the least and the greatest value (2, Q) that the track allows; open (2, Q): there the ranges end first."""

    value: np.ndarray
    open: np.ndarray


def extremes(problem, quantities, ranged, theta, chi2, most_rounds=30):
    """The Extremes of quantities(theta) (B, Q) over all vectors whose chi squared is at most chi2 (Q,), from the best vector (P,). ranged (Q,):
    whether a quantity is one of those whose ranges hold the vectors, so that where they do its end is theirs and not the track's."""
    count = quantities(theta[None]).shape[1]
    which, sign = np.tile(np.arange(count), 2), np.repeat([-1.0, 1.0], count)
    chi2, at = np.tile(chi2, 2), np.tile(theta, (2 * count, 1))
    rows = np.arange(len(at))
    opened, settled = np.zeros(len(at), bool), np.zeros(len(at), bool)

    def both(vectors):
        return np.concatenate([problem.misfit(vectors), quantities(vectors)], axis=1)

    first = quantities(theta[None])[0][which]
    now = both(at)
    for _ in range(most_rounds):
        live = np.flatnonzero(~(opened | settled))
        if len(live) == 0:
            break
        stepped, values, held = _outward(
            problem.unknowns, both, at[live], now[live], which[live], sign[live], chi2[live], count
        )
        moved = np.abs(values[np.arange(len(live)), which[live] - count] - now[live, which[live] - count])
        reached = np.abs(values[np.arange(len(live)), which[live] - count] - first[live])
        off = np.abs(np.sum(values[:, :-count] ** 2, axis=1) - chi2[live])
        at[live], now[live] = stepped, values
        opened[live] = (held & ranged[which[live]]) | ~np.isfinite(values[:, -count:]).all(axis=1)
        settled[live] = (off < 0.05) & (moved <= 0.01 * reached + 1e-12)
    # one that never came to rest is told by where it came to, where that is on the bound, else it is not told
    off = np.abs(np.sum(now[:, :-count] ** 2, axis=1) - chi2)
    opened |= ~settled & (off > 0.5)
    value = now[rows, which - count]
    return Extremes(value.reshape(2, count), opened.reshape(2, count))


def _outward(unknowns, both, theta, now, which, sign, chi2, count):
    """One step of each vector toward where its quantity is extreme on the ellipsoid that its slopes tell -> (vectors, values, whether
    the ranges held it back)."""
    rows = np.arange(len(theta))
    slopes = _slopes(both, theta, now)
    j, r = slopes[..., :-count], now[:, :-count]
    g = slopes[rows, :, which - count]
    a, b = j @ j.transpose(0, 2, 1), np.einsum("bpm,bm->bp", j, r)
    scale = np.sqrt(np.maximum(np.einsum("bpp->bp", a), 1e-30))
    a = a / (scale[:, :, None] * scale[:, None, :]) + 1e-11 * np.eye(a.shape[1])
    inverse = np.linalg.inv(a) / (scale[:, :, None] * scale[:, None, :])
    back, out = np.einsum("bpq,bq->bp", inverse, b), np.einsum("bpq,bq->bp", inverse, g)
    stretch = np.sqrt(np.maximum(np.sum(g * out, axis=1), 1e-300))
    least = np.sum(r * r, axis=1) - np.sum(b * back, axis=1)
    room = np.sqrt(np.maximum(chi2 - least, 0.0))
    whole = -back + (sign * room / stretch)[:, None] * out
    free = np.concatenate([theta + s * whole for s in _SCALES])
    tries = unknowns.within(np.nan_to_num(free), in_air=True)
    held = np.any(np.abs(tries - free) > 1e-9 * (1e-3 + np.abs(free)), axis=1).reshape(len(_SCALES), len(theta))
    values = both(tries).reshape(len(_SCALES), len(theta), -1)
    reached = np.minimum(np.nan_to_num(np.sum(values[..., :-count] ** 2, axis=2), nan=_HUGE), _HUGE)
    gain = np.nan_to_num(sign * values[:, rows, which - count], nan=-_HUGE)
    price = stretch / np.maximum(room, 0.05)  # twice what a unit of chi squared is worth there
    merit = gain - price * np.maximum(reached - chi2, 0.0)
    best = np.argmax(merit, axis=0)
    return tries.reshape(len(_SCALES), len(theta), -1)[best, rows], values[best, rows], held[best, rows]
