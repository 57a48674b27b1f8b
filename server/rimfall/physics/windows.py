"""A stepper for one body whose path is smooth for long, as one on a line: whole windows of it at Chebyshev's points (`collocation.py`).

The path inside is as exact as its ends; a window costs a few calls of the law, and is half a swing or a large part of it.

Drag goes as |w| w, w being the velocity through the air, which ends in a corner where w passes 0, as at the end of a swing. No polynomial
follows it there, and two of its coefficients may tell nothing of that: a window ends where it passes nearly nothing (`kink`).
"""

from dataclasses import dataclass

import numpy as np

from .aboard import dot
from .budget import spend
from .collocation import Steps, as_step, change_at_end, next_length
from .integrate import Step
from .kink import kink, terms
from .pace import Pace
from .picard import rule

RULE = rule(20)
_LONGEST_RAD = 5.0  # of a swing, of the line's turning and of the frame's, within one window
_LEAST_S = 1e-9  # a window as short is taken whatever its error
_MOST_CUTS = 3  # of one window
_AT_KINK = 1e-5  # of a window: one that ends as near a corner ends there
_STILL = 1e-6  # of its distance from the pivot: what moves less in a window is so slow that its drag has no corner
_ASIDE = 1e-6  # how far aside the law is asked, of the distance from its middle


@dataclass(frozen=True)
class Window:
    """One window as a Step of one body, and what the law watches at the points (K,)."""

    step: Step
    watched: np.ndarray


class Windows:
    """Takes one body of a law from start_s to end_s; `step` gives the next Window.

    law: `at(rate, position, velocity)` -> acceleration (3, n) and what it watches (n,), rate being the frame's and its change;
    `settled(position, velocity)`; `through_air(rate, position, velocity)` -> velocity (3, n), or None without air; `take(which)`
    (`pendulum.Hung`). spin: of the frame. position, velocity (3, 1). tolerance_m: the error allowed to a window. State: `time_s`,
    `position`, `velocity`.
    """

    def __init__(self, law, spin, start_s, end_s, position, velocity, tolerance_m):
        self._law, self._spin, self._laws = law, spin, {}
        self.time_s, self._end_s, self._tolerance_m = start_s, end_s, tolerance_m
        self.position, self.velocity = position, velocity
        self._fastest = float(np.max(np.abs(spin.rates_rad_s)))
        self._length_s, self._too_long, self._pace = np.inf, np.array([False]), Pace(start_s)
        self._felt, self._pull = law.at(self._rates(np.array([start_s])), position, velocity)
        self._changing = np.zeros_like(self._felt)

    def step(self):
        """The next Window, or None where the one tried was too long."""
        until_s = self._until_s()
        left_s = until_s - self.time_s
        tried = self._pace.length_s(self.time_s, min(self._length_s, self._longest_s()))
        steps, solved, length, at_corner = self._solved(np.array([min(tried, left_s)]), left_s)
        wanted = next_length(RULE, length, solved.error, steps.terms(solved.series), self._too_long)
        # A window cut short says little against the length that was tried.
        self._length_s = max(float(wanted[0]), 0.5 * tried if length[0] < tried else 0.0)
        self._too_long = solved.given_up | ~((solved.error <= 1.0) | (length <= _LEAST_S))
        if self._too_long[0]:
            self._pace.failed()
            return None
        step = as_step(RULE, np.array([self.time_s]), length, self.position, self.velocity, solved.series)
        self.position, self.velocity = self._law.settled(solved.position[:, -1], solved.velocity[:, -1])
        self._pace.took(self.time_s, float(length[0]), float(solved.error[0]), self._length_s, at_corner)
        ends_s = self.time_s + float(length[0])
        self.time_s = until_s if ends_s >= until_s - 1e-14 * abs(until_s) else ends_s
        self._felt, self._changing = solved.acceleration[:, -1], change_at_end(RULE, length, solved.series)
        self._pull = solved.watched[0, -1]
        return Window(step, solved.watched[0, :, 0])

    def _solved(self, length, most_s):
        """The Steps of a length (1,), at most most_s, and their Solved; that length, changed so that it ends at a corner of the drag that it
        would hold; and whether it does."""
        with np.errstate(over="ignore", invalid="ignore"):  # a window far too long runs away, and is taken back
            steps = self._steps(length)
            solved = steps.solved(self._first(length))
            for _ in range(_MOST_CUTS):
                share = self._kink(length, solved)
                at_corner = share is not None and share <= most_s / length[0]
                share = 1.0 if share is None else min(share, most_s / length[0])
                if abs(share - 1.0) < _AT_KINK:
                    break
                length = share * length
                steps = self._steps(length)
                solved = steps.solved(terms(RULE.degree, share * RULE.points) @ solved.series)
        return steps, solved, length, at_corner

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

    def _kink(self, length, solved):
        """Where in a window of a length (1,) there is a corner of the drag, a share of it; or None."""
        rates = self._rates(self.time_s + length * RULE.points)
        through = self._law.through_air(rates, solved.position[..., 0], solved.velocity[..., 0])
        if through is None:
            return None
        still_m = _STILL * np.sqrt(dot(self.position, self.position)[0])
        return kink(RULE, through) if np.max(np.abs(through)) * length[0] > still_m else None

    def _longest_s(self):
        """How long a window may be for the swing, for the turning of the line and for that of the frame."""
        away2, speed2, felt2 = (float(dot(v, v)[0]) for v in (self.position, self.velocity, self._felt))
        fastest = max(self._fastest, (felt2 / away2) ** 0.25, (speed2 / away2) ** 0.5, self._swings_1_s())
        return _LONGEST_RAD / max(fastest, 1e-300)

    def _swings_1_s(self):
        """The rate of a small swing where the line pulls as it does now, rad/s; 0 where it does not pull."""
        return float(max(self._pull[0], 0.0) / np.sqrt(dot(self.position, self.position)[0])) ** 0.5

    def _first(self, length):
        """Accelerations (3, K, 1) to begin with in a window of a length (1,): as of a small swing."""
        rate_1_s = self._swings_1_s()
        turned = rate_1_s * length * RULE.points[:, None]
        lasts = np.sinc(turned / np.pi) * length * RULE.points[:, None]
        return np.cos(turned) * self._felt[:, None] + lasts * self._changing[:, None]

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
