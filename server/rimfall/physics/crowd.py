"""The stepper of `walker.py` for crowds: order 8, dense output of order 7.

Whole steps at Chebyshev's points ask the law at some three hundred states a step, in few calls: what counts for a few bodies. For hundreds
of them the states count, and a Runge-Kutta step of half the length asks at sixteen. Source of the method and of its error estimate: Hairer,
Norsett & Wanner, Solving Ordinary Differential Equations I, section II.10. Stages hold accelerations only: position is the integral of
velocity, so both come from the same sums (A and A^2 of the method).
"""

import numpy as np

from . import bernstein, dop853
from .budget import spend
from .integrate import Step
from .walker import LEAST_S, RULE, Taken, Walker, square

CROWD = 40  # bodies: of more this is the faster stepper
_SHRINK, _GROW = 0.2, 10.0
STAGES = 16  # 12 of the step itself; stage 12 is its end, 13 to 15 serve the dense output


def _method():
    """The whole tableau (16, 16) with the step's end as row 12."""
    a = np.zeros((STAGES, STAGES))
    rows = [(), *dop853.STAGES, dop853.WEIGHTS, *dop853.EXTRA_STAGES]
    for i, row in enumerate(rows):
        a[i, : len(row)] = row
    return a


def _dense_basis():
    """(8, 7) powers of s of the seven nested terms of the dense output, s(F0 + (1-s)(F1 + s(F2 + ...)))."""
    basis = np.zeros((8, 7))
    term = np.zeros(8)
    term[0] = 1.0
    for k in range(7):
        shifted = np.concatenate([[0.0], term[:-1]])
        term = shifted if k % 2 == 0 else term - shifted
        basis[:, k] = term
    return basis


def _dense_from(end, start, last, upper):
    """Rows of the seven dense terms, as combinations of accelerations, from those of the change over the step,
    its slope at the start and at the end, and the four upper terms."""
    return np.vstack([end, start - end, 2 * end - last - start, upper])


NODES = np.array(dop853.NODES)
TIMES_A = _method()
TIMES_AA = TIMES_A @ TIMES_A
_E3 = np.array(dop853.ERROR_3)
_E5 = np.array(dop853.ERROR_5)
ERRORS = np.stack([_E5, _E3, _E5 @ TIMES_A[:13, :13], _E3 @ TIMES_A[:13, :13]])
_UPPER = np.array(dop853.DENSE)
_UNIT = np.eye(STAGES)
_BASIS = _dense_basis()
DENSE_VELOCITY = bernstein.from_powers(_BASIS) @ _dense_from(TIMES_A[12], _UNIT[0], _UNIT[12], _UPPER)
DENSE_POSITION = bernstein.from_powers(_BASIS) @ _dense_from(
    TIMES_AA[12], np.zeros(STAGES), TIMES_A[12], _UPPER @ TIMES_A
)
_SUMS = np.stack([TIMES_AA, TIMES_A])  # position's, velocity's


class CrowdWalker(Walker):
    """A Walker of many bodies."""

    def at_points(self, taken, some, row):
        """What the law watches in a row at the points of the steps of bodies `some` of a Taken, (K, len(some))."""
        step, count = taken.step, len(RULE.points)
        flat = [
            (
                start[:, None, some]
                + np.einsum("kn,kai->ani", bernstein.weights(len(change) - 1, RULE.points), change[:, :, some])
            )
            for start, change in ((step.position_m, step.path_m), (step.velocity_m_s, step.path_m_s))
        ]
        since = (RULE.points[:, None] * step.length_s[some]).ravel()
        change = np.tile(taken.change_rad_s2[some], count)
        rate = np.tile(taken.rate_rad_s[some], count) + change * since
        law = self.law.take(np.tile(taken.who[some], count))
        return law.at((rate, change), *(a.reshape(6, -1) for a in flat))[1][row].reshape(count, -1)

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
            fine = (error <= 1.0) | (length <= LEAST_S)
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
        size, speed = np.sqrt(square(position[:3])), np.sqrt(square(velocity))
        to_position = length / (self._absolute_m + 1e-14 * size)
        to_velocity = 1.0 / (self._absolute_m / self._lasts_s + 1e-14 * speed)
        five = square(x5 * to_position) + square(v5 * to_velocity)
        three = square(x3 * to_position) + square(v3 * to_velocity)
        bottom = np.sqrt(12.0 * (five + 0.01 * three))
        return length * five / np.where(bottom > 0, bottom, 1.0)

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
        path_m += bernstein.straight(len(path_m) - 1) * (length * u)
        path_m_s = length * (DENSE_VELOCITY @ flat).reshape(shape)
        step = Step(begin, length, x, u, path_m, path_m_s)
        who = np.flatnonzero(fine)
        self._advance(who, whole, end_s, settled, stages[12], watched[12])
        wide = np.broadcast_to(rate, begin.shape), np.broadcast_to(change, begin.shape)
        return Taken(who, step, *wide, watched)
