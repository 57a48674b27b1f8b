"""Whole steps at Chebyshev's points as in `picard.py`, by Newton's rounds: for laws where a change of place or velocity changes the
acceleration much, so that Picard's rounds would be many.

How the accelerations change with place and velocity is taken from differences at every point of the step, in the same call of the law;
a round then solves for the accelerations at all points that their own path gives again (collocation: Hairer, Norsett & Wanner, Solving
Ordinary Differential Equations I, section II.7), and leaves about the square of what was amiss. Two to four calls of the law a step.
"""

from dataclasses import dataclass, fields

import numpy as np

from .integrate import Step
from .picard import Rule

_MOST_ROUNDS = 8
_ENOUGH = 1e-2  # of the error allowed: what a round still mends, when it is the last
_HOPELESS = (
    1e4,
    30.0,
)  # an error after the first round and after the second, of that allowed, with which a step is given up
_SLOW = 0.01  # a round that moves more than that share of what the one before moved: slopes are taken anew
_ROUNDING = 1e-14  # a term that is no more of the greatest does not count
_NONE = 1e-300
_SHRINK, _GROW, _CAUTION = 0.2, 10.0, 0.8
_TOLD = 1e-4  # an error that is less, of that allowed, may be rounding, and says nothing of the length
_GROW_AFTER_TOO_LONG, _SHRINK_AGAIN = 1.4, 0.3
_MOST = 1e16
_MANY = 100  # equations
_FAINT = 4e-15  # a coefficient that is less than this share of the greatest is none in a path


@dataclass(frozen=True)
class Solved:
    """Steps of N bodies. Of D coordinates: the Chebyshev series of the accelerations (D, K, N); at the points accelerations, positions and
    velocities (D, K, N), and what the law watches (W, K, N). error (N,), 1 is allowed; given_up (N,): after the first round."""

    series: np.ndarray
    acceleration: np.ndarray
    position: np.ndarray
    velocity: np.ndarray
    watched: np.ndarray
    error: np.ndarray
    given_up: np.ndarray


def solution(system, known):
    """(N, n, 1): what systems (N, n, n) make of it is what is known (N, n, 1).

    Linear algebra's libraries give systems of 100 and more to several threads, which wait for one another far longer than they work: such a
    one is taken in halves (by elimination of the first).
    """
    half = system.shape[1] // 2
    if system.shape[1] < _MANY:
        return np.linalg.solve(system, known)
    upper, lower = system[:, :half], system[:, half:]
    first = np.linalg.solve(upper[..., :half], np.concatenate([upper[..., half:], known[:, :half]], axis=2))
    left = lower[..., half:] - lower[..., :half] @ first[..., :-1]
    second = np.linalg.solve(left, known[:, half:] - lower[..., :half] @ first[..., -1:])
    return np.concatenate([first[..., -1:] - first[..., :-1] @ second, second], axis=1)


def straight(rule, length_s, acceleration, change_s):
    """Accelerations (D, K, N) at the points of steps that begin with some (D, N), which change steadily (D, N), a second."""
    return acceleration[:, None] + (rule.points[:, None] * length_s) * change_s[:, None]


def together(parts):
    """The Solved of the bodies of several, one after another."""
    return Solved(*(np.concatenate([getattr(p, f.name) for p in parts], axis=-1) for f in fields(Solved)))


@dataclass(frozen=True)
class Steps:
    """Steps of N bodies to be solved: length_s (N,), states (D, N) at the start.

    rule: the points. law(position, velocity) -> accelerations (D, ..., K, N) and what is watched (W, ..., K, N) at states (D, ..., K, N).
    free: so many of the coordinates, the first ones, have accelerations; these go by the first three positions and the free velocities.
    aside(position, velocity) -> how far aside of states (D, K, N) the law is asked, in m and m/s, (K, N) or less; at every point by what
    vanishes there, for what is small against that tells nothing. place_s2_m, speed_s2_m (N,): the length squared over the error that a place
    may have, and the length over that of a velocity.
    """

    rule: Rule
    law: object
    length_s: np.ndarray
    position: np.ndarray
    velocity: np.ndarray
    free: int
    aside: object
    place_s2_m: np.ndarray
    speed_s2_m: np.ndarray

    def solved(self, acceleration) -> Solved:
        """The Solved that begins with accelerations (D, K, N) at the points."""
        count, free = len(self.rule.points), self.free
        position, velocity = self._path(acceleration)
        watched, before, anew, left = None, None, True, np.zeros(len(self.length_s))
        going, given_up = np.ones(len(left), dtype=bool), np.zeros(len(left), dtype=bool)
        for round_ in range(_MOST_ROUNDS):
            felt, seen, slopes = self._slopes(position, velocity) if anew else (*self.law(position, velocity), None)
            if anew:
                system = self._system(slopes)
            watched = seen if before is None or going.all() else np.where(going, seen, watched)
            amiss = (felt - acceleration)[:free].transpose(2, 0, 1).reshape(len(system), -1, 1)
            change = solution(system, amiss).reshape(len(system), free, count).transpose(1, 2, 0)
            acceleration = acceleration.copy()
            acceleration[:free] += change if going.all() else np.where(going, change, 0.0)  # each is as if alone
            position, velocity = self._path(acceleration)
            moved = self._comes_to(np.abs(change).max(axis=1))
            less = moved if before is None else moved * np.minimum(moved / np.maximum(before, _NONE), 1.0)
            left = np.where(going, less, left)
            if round_ < len(_HOPELESS):
                given_up |= going & ~(self._tail(acceleration)[1] <= _HOPELESS[round_])
                going &= ~given_up
            going &= ~(left <= _ENOUGH)
            if not going.any():
                break
            anew, before = before is not None and bool(((moved > _SLOW * before) & going).any()), moved
        series, error = self._tail(acceleration)
        error = np.maximum(error, np.where((left > _ENOUGH) & ~given_up, left, 0.0))
        return Solved(series, acceleration, position, velocity, watched, error, given_up)

    def of(self, acceleration, few) -> Solved:
        """The Solved of accelerations (D, K, N) that follow from those of fewer coordinates, of the same steps."""
        position, velocity = self._path(acceleration)
        series, error = self._tail(acceleration)
        return Solved(series, acceleration, position, velocity, few.watched, np.maximum(error, few.error), few.given_up)

    def _path(self, acceleration):
        """Positions and velocities (D, K, N) at the points."""
        length = self.length_s
        position = self.position[:, None] + (self.rule.points[:, None] * length) * self.velocity[:, None]
        position += (length * length) * (self.rule.twice @ acceleration)
        return position, self.velocity[:, None] + length * (self.rule.once @ acceleration)

    def _slopes(self, position, velocity):
        """What the law gives and watches at the points, and how the free accelerations change (F, 3 + F, K, N) with places and velocities."""
        free = self.free
        aside_m, aside_m_s = self.aside(position, velocity)
        positions, velocities = (np.repeat(v[:, None], 4 + free, axis=1) for v in (position, velocity))
        for k in range(3):
            positions[k, 1 + k] += aside_m
        for k in range(free):
            velocities[k, 4 + k] += aside_m_s
        felt, watched = self.law(positions, velocities)
        slopes = felt[:free, 1:] - felt[:free, :1]
        slopes[:, :3] /= aside_m
        slopes[:, 3:] /= aside_m_s
        return felt[:, 0], watched[:, 0], np.where(np.isfinite(slopes), slopes, 0.0)

    def _system(self, slopes):
        """(N, F K, F K): what a change of the accelerations at all points leaves of them, less what it makes of them."""
        slopes = slopes.transpose(3, 0, 2, 1)[..., None]  # (N, F, K, 3 + F, 1)
        length = self.length_s[:, None, None, None, None]
        out = slopes[:, :, :, 3:] * (-length * self.rule.once[:, None])
        out[:, :, :, :3] -= slopes[:, :, :, :3] * (length * length * self.rule.twice[:, None])
        size = self.free * len(self.rule.points)
        out = out.reshape(-1, size * size)
        out[:, :: size + 1] += 1.0
        return out.reshape(-1, size, size)

    def _comes_to(self, change, of_place=1.0, of_speed=1.0):
        """What changes of the accelerations (D, ..., N) come to over the steps (..., N), of the error that is allowed."""
        changed = change.max(axis=0)
        place = of_place * self.place_s2_m * change[:3].max(axis=0)
        error = np.maximum(place, of_speed * self.speed_s2_m * changed)
        return np.where(np.isfinite(changed), error, np.inf)

    def _tail(self, acceleration):
        """The series (D, K, N), and what may be missing where they end, of the error allowed (N,)."""
        series = self.rule.series @ acceleration
        share = 2.0 / self.rule.degree  # of a last coefficient the integral has 1/2 n
        return series, self._comes_to(np.abs(series[:, -2:]).max(axis=1), share * share, share)

    def terms(self, series):
        """How many terms (N,) of series (D, K, N) count, and what the greatest of them comes to (N,), of the error that is allowed."""
        size = np.abs(series)
        comes_to = self._comes_to(size)
        counts = (comes_to > 1.0) & (size > _ROUNDING * size.max(axis=1, keepdims=True)).any(axis=0)
        terms = np.where(counts, np.arange(1, len(self.rule.points) + 1)[:, None], 0).max(axis=0)
        return terms, comes_to.max(axis=0)


def change_at_end(rule, length, series):
    """How accelerations of series (D, K, N) change at the end of their steps (D, N), a second; 0 of those of no length."""
    per_s = np.divide(2.0, length, out=np.zeros_like(length), where=length > 0)
    return per_s * (np.arange(len(rule.points)) ** 2 @ series)


def as_step(rule, begin_s, length, position, velocity, series):
    """The Step of N bodies that begins at begin_s (N,) and states (D, N) and has accelerations of series (D, K, N)."""
    size = np.abs(series)
    series = np.where(size < _FAINT * size.max(axis=1, keepdims=True), 0.0, series)
    straight = length * np.linspace(0.0, 1.0, len(rule.twice_control))[:, None]
    path_m = (length * length) * (rule.twice_control @ series) + straight * velocity[:, None]
    path_m_s = length * (rule.once_control @ series)
    path_m, path_m_s = (np.ascontiguousarray(p.transpose(1, 0, 2)) for p in (path_m, path_m_s))
    return Step(begin_s, length, position, velocity, path_m, path_m_s)


def next_length(rule, length, error, faded, too_long):
    """Lengths (N,) to try next: as the errors say, and no longer than the series say; too_long (N,): whether the step before was.

    faded: how many terms count, and what the greatest comes to (`Steps.terms`). They fade as rho^-k, so rho is known; with a singular point
    beside the middle of the step, rho - 1/rho goes as 1 over the length.
    """
    terms, greatest = faded
    size = np.log(np.clip(greatest, np.e, _MOST))
    longer = np.sinh(size / np.maximum(terms, 1)) / np.sinh(size / (rule.degree - 2))
    factor = np.where(error > _TOLD, _CAUTION * np.maximum(error, _TOLD) ** (-1.0 / rule.degree), _GROW)
    factor = np.clip(factor, _SHRINK, np.clip(_CAUTION * longer, 1.0, _GROW))
    factor = np.where(too_long, np.minimum(factor, np.where(error > 1.0, _SHRINK_AGAIN, _GROW_AFTER_TOO_LONG)), factor)
    return length * np.where(np.isfinite(error), factor, _SHRINK)
