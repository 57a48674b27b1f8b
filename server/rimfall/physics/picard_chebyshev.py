"""A stepper for one body whose path is smooth for long: whole windows of it at once, by Picard's iteration at Chebyshev's points.

Each window's acceleration is a polynomial through its values at those points; integrated twice it gives the path, whose points give
the acceleration anew, until it stays. All points are worked out together, so a window costs as many calls as it takes rounds, about
a dozen for a third of a swing, where a Runge-Kutta step costs as many for a twentieth. The path inside is as exact as its ends.
Source: Clenshaw & Norton, The Computer Journal 6 (1963) 88.
"""

from dataclasses import dataclass
from math import comb

import numpy as np
from numpy.polynomial import chebyshev

from . import bernstein
from .aboard import dot
from .budget import spend
from .integrate import Step

_DEGREE = 15  # of the acceleration
_MOST_ROUNDS = 24
_STAYS = 1e-15  # a change, over the size of what changes, that is rounding
_LONGEST_RAD = 2.0  # of a swing, of the line's turning and of the frame's, within one window
_LEAST_S = 1e-9  # a window as short is taken whatever its error
_SHRINK, _GROW, _CAUTION = 0.3, 3.0, 0.8


def _points():
    """Chebyshev's points of [0, 1] (n + 1,), and values there -> Chebyshev coefficients (n + 1, n + 1)."""
    points = 0.5 - 0.5 * np.cos(np.pi * np.arange(_DEGREE + 1) / _DEGREE)
    return points, np.linalg.inv(chebyshev.chebvander(2 * points - 1, _DEGREE))


def _integrals():
    """Chebyshev coefficients (n + 1,) -> those of the first and of the second integral from 0, (n + 3, n + 1) each."""
    unit = np.eye(_DEGREE + 1)
    whole = [[chebyshev.chebint(c, m, lbnd=-1, scl=0.5) for c in unit] for m in (1, 2)]
    return [np.array([np.pad(c, (0, _DEGREE + 3 - len(c))) for c in columns]).T for columns in whole]


def _shifted():
    """(n + 3, n + 3): Chebyshev coefficients in 2 s - 1 -> powers of s, lowest first. Whole numbers, and so exact: with coefficients
    that fade the sums then lose nothing, which values taken straight to powers would."""
    out = np.zeros((_DEGREE + 3, _DEGREE + 3))
    out[0, 0], out[0, 1], out[1, 1] = 1.0, -1.0, 2.0
    for k in range(2, _DEGREE + 3):
        out[:, k] = -2.0 * out[:, k - 1] - out[:, k - 2]
        out[1:, k] += 4.0 * out[:-1, k - 1]
    return out


def _to_control():
    """(n + 1, n + 1): values at the points -> Bernstein coefficients."""
    k = np.arange(_DEGREE + 1)
    ways = np.array([comb(_DEGREE, i) for i in k], dtype=float)
    return np.linalg.inv(ways * POINTS[:, None] ** k * (1.0 - POINTS[:, None]) ** (_DEGREE - k))


POINTS, _TO_SERIES = _points()
TO_CONTROL = _to_control()
_INTO_ONCE, _INTO_TWICE = _integrals()
_TO_POWERS = _shifted()
_AT_POINTS = chebyshev.chebvander(2 * POINTS - 1, _DEGREE + 2)
_ONCE, _TWICE = (_AT_POINTS @ into @ _TO_SERIES for into in (_INTO_ONCE, _INTO_TWICE))


@dataclass(frozen=True)
class Window:
    """One window as a Step of one body; the frame's rates (n + 1,) and its change (n + 1,), states (3, n + 1) and what the law watches
    (n + 1,) at the POINTS."""

    step: Step
    rates: tuple
    position: np.ndarray
    velocity: np.ndarray
    watched: np.ndarray


class Windows:
    """Takes one body of a law from start_s to end_s; `step` gives the next Window.

    law: `at(rate, position, velocity)` -> acceleration (3, n) and what it watches (n,), rate being the frame's and its change;
    `settled(position, velocity)`; `take(which)` (`pendulum.Hung`). spin: of the frame. position, velocity (3, 1). tolerance_m: the
    error allowed to a window. State: `time_s`, `position`, `velocity`.
    """

    def __init__(self, law, spin, start_s, end_s, position, velocity, tolerance_m):
        self._law, self._spin, self._many = law, spin, law.take(np.zeros(_DEGREE + 1, dtype=int))
        self.time_s, self._end_s, self._tolerance_m = start_s, end_s, tolerance_m
        self.position, self.velocity = position, velocity
        self._fastest = float(np.max(np.abs(spin.rates_rad_s)))
        self._length_s = np.inf

    def step(self):
        """The next Window, or None where the one tried was too long."""
        until_s = self._until_s()
        length = min(self._length_s, self._longest_s(), until_s - self.time_s)
        window, error = self._tried(length)
        self._length_s = length * float(np.clip(_CAUTION * max(error, 1e-30) ** (-1.0 / _DEGREE), _SHRINK, _GROW))
        if error > 1.0 and length > _LEAST_S:
            return None
        end = window.position[:, -1:], window.velocity[:, -1:]
        self.position, self.velocity = self._law.settled(*end)
        self.time_s = until_s if self.time_s + length >= until_s - 1e-14 * abs(until_s) else self.time_s + length
        return window

    def _until_s(self):
        """The end, or the next knot of the spin."""
        later = self._spin.times_s[self._spin.times_s > self.time_s]
        return min(self._end_s, float(later[0])) if len(later) else self._end_s

    def _rates(self, time_s):
        """The frame's rate and its change at times (n,) of one window: the change is that of its middle."""
        change = self._spin.change_rad_s2(0.5 * (time_s[0] + time_s[-1]))
        return self._spin.rate_rad_s(time_s), np.full(len(time_s), float(change))

    def _longest_s(self):
        """How long a window may be for the swing, for the turning of the line and for that of the frame."""
        rate = self._rates(np.array([self.time_s]))
        felt, _ = self._law.at(rate, self.position, self.velocity)
        away2, speed2, felt2 = (float(dot(v, v)[0]) for v in (self.position, self.velocity, felt))
        return _LONGEST_RAD / max(self._fastest, (felt2 / away2) ** 0.25, (speed2 / away2) ** 0.5, 1e-300)

    def _tried(self, length):
        """The Window of a length, and its error over that allowed."""
        rates = self._rates(self.time_s + length * POINTS)
        carried = self.position + length * POINTS * self.velocity
        felt, watched = self._many.at(rates, carried, np.repeat(self.velocity, len(POINTS), axis=1))
        stays = _STAYS * (np.max(np.abs(carried)) + self._tolerance_m)
        with np.errstate(over="ignore", invalid="ignore"):  # a window far too long runs away, and is taken back
            for rounds in range(1, _MOST_ROUNDS + 1):  # noqa: B007 - charged below
                before = felt
                position = carried + length**2 * (felt @ _TWICE.T)
                velocity = self.velocity + length * (felt @ _ONCE.T)
                felt, watched = self._many.at(rates, position, velocity)
                moved = length**2 * float(np.max(np.abs(felt - before)))
                if not moved > stays:
                    break
            spend(1, rounds * len(POINTS))
            series = _TO_SERIES @ felt.T
            tail = length**2 * float(np.max(np.abs(series[-2:])))
            error = max(tail, moved if moved > 100 * stays else 0.0) / self._tolerance_m
            path_m = length**2 * (_TO_POWERS @ (_INTO_TWICE @ series))
            path_m_s = length * (_TO_POWERS @ (_INTO_ONCE @ series))
        path_m[1] += length * self.velocity[:, 0]
        path_m, path_m_s = bernstein.from_powers(path_m), bernstein.from_powers(path_m_s)
        begin, long = np.array([self.time_s]), np.array([length])
        step = Step(begin, long, self.position, self.velocity, path_m[..., None], path_m_s[..., None])
        return Window(step, rates, position, velocity, watched), error if np.isfinite(error) else np.inf
