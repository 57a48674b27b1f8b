"""A stepper for one body whose path is smooth for long, as one on a line: whole windows of it at Chebyshev's points (`collocation.py`).

The path inside is as exact as its ends; a window costs a few calls of the law, a third of a swing or more of it.
"""

from dataclasses import dataclass

import numpy as np

from .aboard import dot
from .budget import spend
from .collocation import Steps, as_step, change_at_end, next_length
from .integrate import Step
from .picard import rule

RULE = rule(20)
_LONGEST_RAD = 5.0  # of a swing, of the line's turning and of the frame's, within one window
_LEAST_S = 1e-9  # a window as short is taken whatever its error
_ASIDE = 1e-6  # how far aside the law is asked, of the distance from its middle


@dataclass(frozen=True)
class Window:
    """One window as a Step of one body, and what the law watches at the points (K,)."""

    step: Step
    watched: np.ndarray


class Windows:
    """Takes one body of a law from start_s to end_s; `step` gives the next Window.

    law: `at(rate, position, velocity)` -> acceleration (3, n) and what it watches (n,), rate being the frame's and its change;
    `settled(position, velocity)`; `take(which)` (`pendulum.Hung`). spin: of the frame. position, velocity (3, 1). tolerance_m: the
    error allowed to a window. State: `time_s`, `position`, `velocity`.
    """

    def __init__(self, law, spin, start_s, end_s, position, velocity, tolerance_m):
        self._law, self._spin, self._laws = law, spin, {}
        self.time_s, self._end_s, self._tolerance_m = start_s, end_s, tolerance_m
        self.position, self.velocity = position, velocity
        self._fastest = float(np.max(np.abs(spin.rates_rad_s)))
        self._length_s, self._too_long = np.array([np.inf]), np.array([False])
        self._felt = law.at(self._rates(np.array([start_s])), position, velocity)[0]
        self._changing = np.zeros_like(self._felt)

    def step(self):
        """The next Window, or None where the one tried was too long."""
        until_s = self._until_s()
        length = np.minimum(self._length_s, min(self._longest_s(), until_s - self.time_s))
        steps = self._steps(length)
        with np.errstate(over="ignore", invalid="ignore"):  # a window far too long runs away, and is taken back
            solved = steps.solved(self._felt, self._changing)
            self._length_s = next_length(RULE, length, solved.error, steps.terms(solved.series), self._too_long)
        self._too_long = solved.given_up | ~((solved.error <= 1.0) | (length <= _LEAST_S))
        if self._too_long[0]:
            return None
        step = as_step(RULE, np.array([self.time_s]), length, self.position, self.velocity, solved.series)
        self.position, self.velocity = self._law.settled(solved.position[:, -1], solved.velocity[:, -1])
        ends_s = self.time_s + float(length[0])
        self.time_s = until_s if ends_s >= until_s - 1e-14 * abs(until_s) else ends_s
        self._felt, self._changing = solved.acceleration[:, -1], change_at_end(RULE, length, solved.series)
        return Window(step, solved.watched[0, :, 0])

    def _until_s(self):
        """The end, or the next knot of the spin."""
        later = self._spin.times_s[self._spin.times_s > self.time_s]
        return min(self._end_s, float(later[0])) if len(later) else self._end_s

    def _rates(self, time_s):
        """The frame's rate and its change at times (n,) of one window, the change that of its middle; numbers where they never change."""
        if self._spin.steady:
            return float(self._spin.rates_rad_s[0]), 0.0
        change = self._spin.change_rad_s2(0.5 * (time_s[0] + time_s[-1]))
        return self._spin.rate_rad_s(time_s), np.full(len(time_s), float(change))

    def _longest_s(self):
        """How long a window may be for the swing, for the turning of the line and for that of the frame."""
        away2, speed2, felt2 = (float(dot(v, v)[0]) for v in (self.position, self.velocity, self._felt))
        return _LONGEST_RAD / max(self._fastest, (felt2 / away2) ** 0.25, (speed2 / away2) ** 0.5, 1e-300)

    def _steps(self, length):
        """The Steps of one window of a length (1,), to be solved."""
        rates = self._rates(self.time_s + length * RULE.points)

        def felt(position, velocity):
            shape = position.shape[1:]
            times = position[0].size
            spend(1, times)
            if times not in self._laws:
                self._laws[times] = self._law.take(np.zeros(times, dtype=int))
            each = rates if self._spin.steady else [np.broadcast_to(r[:, None], shape).ravel() for r in rates]
            out, watched = self._laws[times].at(tuple(each), position.reshape(3, -1), velocity.reshape(3, -1))
            return out.reshape(3, *shape), watched.reshape(1, *shape)

        away = np.sqrt(dot(self.position, self.position))
        aside = _ASIDE * away, _ASIDE * (np.sqrt(dot(self.velocity, self.velocity)) + away / length)
        weight = length * length / self._tolerance_m
        return Steps(
            RULE, felt, length, self.position, self.velocity, 3, lambda *_: aside, weight, np.zeros_like(weight)
        )
