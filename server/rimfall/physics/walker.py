"""The stepper with a step of its own for every body, for what rolls and slides: order 8, dense output of order 7.

Friction ends in corners (a slip that dies out, a ball that comes to rest), where steps must be short; in lock step one such
body would hold up all others. So every body has its own length and its own time; their stages are worked out together. The
method, its tables and its error estimate are those of `integrate.py`. Arrays are (6, N).
"""

from dataclasses import dataclass

import numpy as np

from . import bernstein
from .aboard import dot
from .budget import spend
from .integrate import DENSE_POSITION, DENSE_VELOCITY, ERRORS, NODES, STAGES, TIMES_A, TIMES_AA, Step

MOST_TURNED_RAD = 2.0  # that the frame may turn within one step
MOST_BENT_RAD = 1.0  # that the surface's normal may turn within one
_SHORT_OF_CORNER = 0.999  # of the way to where friction's direction turns round
_LEAST_S = 1e-10  # a step as short is taken whatever its error
_FIRST_RAD, _FIRST_S = 0.5, 1.0
_SHRINK, _GROW = 0.2, 10.0
_SUMS = np.stack([TIMES_AA, TIMES_A])  # position's, velocity's


@dataclass(frozen=True)
class Taken:
    """The steps accepted at one try: numbers (M,) of their bodies, their Step, the frame's rate and its change (M,) at the
    start, and what the law watches at the stages, (16, W, M)."""

    who: np.ndarray
    step: Step
    rate_rad_s: np.ndarray
    change_rad_s2: np.ndarray
    watched: np.ndarray


class Walker:
    """Steps N bodies of one law (`rolling.py`) from start_s to end_s (N,); `step` gives the next accepted steps.

    spin: of the frame, None where it does not turn. position, velocity (6, N). absolute_m: the error allowed to a step; lasts_s
    (N,): the same over that time is allowed to a velocity. State: `time_s`, `position`, `velocity`, `acceleration`.
    """

    def __init__(self, law, spin, start_s, end_s, position, velocity, *, absolute_m, lasts_s):
        self.law, self._spin = law, spin
        self.time_s, self._end_s = start_s.astype(float), end_s
        self._gap = law.surface.gap(position[:3], law.many.radius_m)
        self.position, self.velocity = law.settled(position, velocity, self._gap)
        self._absolute_m, self._lasts_s = absolute_m, lasts_s
        self._fastest = 0.0 if spin is None else float(np.max(np.abs(spin.rates_rad_s)))
        first = min(_FIRST_RAD / self._fastest, _FIRST_S) if self._fastest else _FIRST_S
        self._length_s = np.full(len(start_s), first)
        self.refresh()

    @property
    def count(self):
        """How many bodies there are."""
        return len(self.time_s)

    def rates(self, time_s):
        """The frame's rate and its change at times (N,): numbers where they never change."""
        if self._spin is None:
            return 0.0, 0.0
        if self._spin.steady:
            return float(self._spin.rates_rad_s[0]), 0.0
        return self._spin.rate_rad_s(time_s), self._spin.change_rad_s2(time_s)

    def refresh(self):
        """Work out the accelerations of states that were set from outside."""
        self._rate, self._change = self.rates(self.time_s)
        rate = self._rate, self._change
        self.acceleration, self.watched = self.law.at(rate, self.position, self.velocity)

    def put(self, which, velocity, time_s=None):
        """Set velocities (6, M), and times (M,), of the bodies `which`; to be followed by `refresh`."""
        self.velocity[:, which] = velocity
        if time_s is not None:
            self.time_s[which] = time_s

    def keep(self, mask):
        """Go on with the bodies of the mask (N,) only."""
        if np.all(mask):
            return
        self.law = self.law.take(mask)
        for name in (
            "time_s",
            "_end_s",
            "_gap",
            "position",
            "velocity",
            "_lasts_s",
            "_length_s",
            "acceleration",
            "watched",
        ):
            setattr(self, name, getattr(self, name)[..., mask])
        if np.ndim(self._rate):
            self._rate, self._change = self._rate[mask], self._change[mask]

    def step(self):
        """Try one step of every body -> the Taken of those whose step was accepted, or None."""
        spend(1, STAGES * self.count)
        until = self._until_s()
        longest = np.minimum(until - self.time_s, self._longest_s())
        length = np.minimum(self._length_s, longest)
        stages, watched = np.empty((STAGES, *self.position.shape)), np.empty((STAGES, *self.watched.shape))
        stages[0], watched[0] = self.acceleration, self.watched
        with np.errstate(over="ignore", invalid="ignore"):  # a trial far too long runs away, and is taken back
            for i in range(1, 12):
                self._stage(i, length, stages, watched)
            position, velocity = self._state(12, length, stages)
            error = self._error(length, stages, position, velocity)
            fine = (error <= 1.0) | (length <= _LEAST_S)
            factor = np.clip(0.9 * np.maximum(error, 1e-30) ** -0.125, _SHRINK, _GROW)
            wanted = length * np.where(np.isfinite(error), factor, _SHRINK)
        # A step cut short says nothing against the length that was wanted before it.
        self._length_s = np.where(fine & (length == longest), np.maximum(wanted, self._length_s), wanted)
        if not np.any(fine):
            return None
        return self._take(fine, length, until, stages, watched, position, velocity)

    def _state(self, i, length, stages):
        sums = (_SUMS[:, i, :i] @ stages[:i].reshape(i, -1)).reshape(2, *self.position.shape)
        position = self.position + (NODES[i] * length) * self.velocity + (length * length) * sums[0]
        return position, self.velocity + length * sums[1]

    def _stage(self, i, length, stages, watched):
        position, velocity = self._state(i, length, stages)
        rate = self._rate + self._change * (NODES[i] * length) if np.ndim(self._rate) else self._rate
        stages[i], watched[i] = self.law.at((rate, self._change), position, velocity)

    def _error(self, length, stages, position, velocity):
        """Error (N,) of each body's step; 1 is allowed."""
        v5, v3, x5, x3 = (ERRORS[:, :12] @ stages[:12].reshape(12, -1)).reshape(4, *self.position.shape)
        size, speed = np.sqrt(_square(position[:3])), np.sqrt(_square(velocity))
        to_position = length / (self._absolute_m + 1e-14 * size)
        to_velocity = 1.0 / (self._absolute_m / self._lasts_s + 1e-14 * speed)
        five = _square(x5 * to_position) + _square(v5 * to_velocity)
        three = _square(x3 * to_position) + _square(v3 * to_velocity)
        bottom = np.sqrt(12.0 * (five + 0.01 * three))
        return length * five / np.where(bottom > 0, bottom, 1.0)

    def _until_s(self):
        """Time (N,) that no step may cross: the end, or the next knot of the spin."""
        if self._spin is None or self._spin.steady:
            return self._end_s
        knots = np.append(self._spin.times_s[1:], np.inf)
        return np.minimum(self._end_s, knots[np.searchsorted(knots, self.time_s, "right")])

    def _longest_s(self):
        """How long (N,) a step may be for the frame's turning, for the surface's bending, and for the corner of the friction."""
        normal_rate = self.law.surface.normal_rate(self.position[:3], self.velocity[:3])
        fastest = np.maximum(self._fastest / MOST_TURNED_RAD, np.sqrt(dot(normal_rate, normal_rate)) / MOST_BENT_RAD)
        closing = self.law.closing(self.position, self.velocity, self.acceleration)
        fastest = np.maximum(fastest, closing / _SHORT_OF_CORNER)
        return 1.0 / np.maximum(fastest, 1e-300)

    def _take(self, fine, length, until, stages, watched, position, velocity):
        """Go on with the bodies of the mask, whose steps are accepted; the Taken of them."""
        whole = bool(np.all(fine))
        law = self.law if whole else self.law.take(fine)

        def of(a):
            return a if whole or not np.ndim(a) else a[..., fine]

        begin, x, u, length, until = (of(a) for a in (self.time_s, self.position, self.velocity, length, until))
        stages, watched, rate, change = of(stages), of(watched), of(self._rate), of(self._change)
        end_s = np.where(until - begin <= length * (1.0 + 1e-14), until, begin + length)
        settled = law.settled(of(position), of(velocity), of(self._gap))
        inside = rate + change * length if np.ndim(rate) else rate  # before a knot that may lie at the end
        stages[12], watched[12] = law.at((inside, change), *settled)
        for i in range(13, STAGES):
            sums = (_SUMS[:, i, :i] @ stages[:i].reshape(i, -1)).reshape(2, *x.shape)
            place = x + (NODES[i] * length) * u + (length * length) * sums[0]
            turns = rate + change * (NODES[i] * length) if np.ndim(rate) else rate
            stages[i], watched[i] = law.at((turns, change), place, u + length * sums[1])
        flat, shape = stages.reshape(STAGES, -1), (8, *x.shape)
        path_m = (length * length) * (DENSE_POSITION @ flat).reshape(shape)
        path_m += bernstein.straight(7) * (length * u)
        path_m_s = length * (DENSE_VELOCITY @ flat).reshape(shape)
        step = Step(begin, length, x, u, path_m, path_m_s)
        who = np.flatnonzero(fine)
        self._advance(who, whole, end_s, settled, stages[12], watched[12])
        wide = np.broadcast_to(rate, begin.shape), np.broadcast_to(change, begin.shape)
        return Taken(who, step, *wide, watched)

    def _advance(self, who, whole, end_s, settled, acceleration, watched):
        """The new states of the bodies `who`."""
        if whole:
            self.time_s, (self.position, self.velocity) = end_s, settled
            self.acceleration, self.watched = acceleration.copy(), watched.copy()
        else:
            self.time_s, self.position, self.velocity, self.acceleration, self.watched = (
                a.copy() for a in (self.time_s, self.position, self.velocity, self.acceleration, self.watched)
            )
            self.time_s[who] = end_s
            self.position[:, who], self.velocity[:, who] = settled
            self.acceleration[:, who], self.watched[:, who] = acceleration, watched
        if np.ndim(self._rate):
            self._after_knots()

    def _after_knots(self):
        """Where a knot was reached the frame's rate changes otherwise from now on, and with it the accelerations."""
        before = self._change
        self._rate, self._change = self.rates(self.time_s)
        if np.any(self._change != before):
            self.refresh()


def _square(a):
    return dot(a, a)
