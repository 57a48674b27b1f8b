"""The stepper with a step of its own for every body, for what rolls and slides: whole steps at Chebyshev's points (`collocation.py`).

Friction ends in corners (a slip that dies out, a ball that comes to rest), where steps must be short; in lock step one such
body would hold up all others. So every body has its own length and its own time; their points are worked out together. Arrays
are (6, N), and (6, K, N) at the points of a step.
"""

from dataclasses import dataclass

import numpy as np

from .aboard import dot
from .budget import spend
from .collocation import Steps, as_step, change_at_end, next_length, straight, together
from .integrate import Step
from .picard import rule
from .rolling import ROLLS, STANDS
from .vanishing import hurry

RULE = rule(20)
MOST_TURNED_RAD = 4.0  # that the frame may turn within one step
MOST_BENT_RAD = 1.0  # that the surface's normal may turn within one
LEAST_S = 1e-10  # a step as short is taken whatever its error
_FIRST_RAD, _FIRST_S = 0.5, 1.0
_AT_ONCE = 64  # bodies: some megabytes at their points
_ASIDE = 1e-6  # how far aside the law is asked, of the speed that friction goes by
_SEEN = 1e-9  # and at least, of the place or the speed: what rounding leaves to be seen
_NONE = 1e-300


@dataclass(frozen=True)
class Taken:
    """The steps accepted at one try: numbers (M,) of their bodies, their Step, the frame's rate and its change (M,) at the
    start, and what the law watches at the points, (K, W, M)."""

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
        self._laws, self._too_long = {}, np.zeros(len(start_s), dtype=bool)
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
        self._changing = np.zeros_like(self.acceleration)

    def put(self, which, velocity, time_s=None):
        """Set velocities (6, M), and times (M,), of the bodies `which`; to be followed by `refresh`."""
        self.velocity[:, which] = velocity
        if time_s is not None:
            self.time_s[which] = time_s

    def keep(self, mask):
        """Go on with the bodies of the mask (N,) only."""
        if np.all(mask):
            return
        self.law, self._laws = self.law.take(mask), {}
        for name in (
            "time_s",
            "_end_s",
            "_gap",
            "position",
            "velocity",
            "_lasts_s",
            "_length_s",
            "_too_long",
            "acceleration",
            "_changing",
            "watched",
        ):
            setattr(self, name, getattr(self, name)[..., mask])
        if np.ndim(self._rate):
            self._rate, self._change = self._rate[mask], self._change[mask]

    def at_points(self, taken, some, row):
        """What the law watches in a row at the points of the steps of bodies `some` of a Taken, (K, len(some))."""
        return taken.watched[:, row, some]

    def step(self):
        """Try one step of every body -> the Taken of those whose step was accepted, or None."""
        until = self._until_s()
        longest = np.minimum(until - self.time_s, self._longest_s())
        length = np.minimum(self._length_s, longest)
        with np.errstate(over="ignore", invalid="ignore"):  # a trial far too long runs away, and is taken back
            solved, faded = self._solved(length)
            fine = ((solved.error <= 1.0) | (length <= LEAST_S)) & ~solved.given_up
            wanted = next_length(RULE, length, solved.error, faded, self._too_long)
        # A step cut short says nothing against the length that was wanted before it.
        self._length_s = np.where(fine & (length == longest), np.maximum(wanted, self._length_s), wanted)
        self._too_long = ~fine
        if not np.any(fine):
            return None
        return self._take(fine, length, until, solved)

    def _solved(self, length):
        """The Solved of steps of lengths (N,), and what their series say of the next (2, N) (`Steps.terms`)."""
        if self.count <= _AT_ONCE:
            return self._solved_of(length, None)
        parts = [np.arange(k, min(k + _AT_ONCE, self.count)) for k in range(0, self.count, _AT_ONCE)]
        solved, faded = zip(*(self._solved_of(length, some) for some in parts), strict=True)
        return together(solved), np.concatenate(faded, axis=1)

    def _solved_of(self, length, some):
        """The same of the bodies of an index, or of all."""

        def of(a):
            return a if some is None or not np.ndim(a) else a[..., some]

        length, x, u, lasts_s = of(length), of(self.position), of(self.velocity), of(self._lasts_s)
        laws, rate, change = self._laws if some is None else {}, of(self._rate), of(self._change)
        size, speed = np.sqrt(square(x[:3])), np.sqrt(square(u))
        least, slowest = self._absolute_m + 1e-14 * size, self._absolute_m / lasts_s + 1e-14 * speed

        def law_of(times):
            if times not in laws:
                laws[times] = self.law.take(np.tile(np.arange(self.count) if some is None else some, times))
            return laws[times]

        def felt(position, velocity):
            wide, *shape = position.shape
            rates = (rate, change)
            spend(1, position[0].size)
            if np.ndim(rate):
                rates = (rate + change * (RULE.points[:, None] * length), change)
                rates = [np.broadcast_to(r, shape).ravel() for r in rates]
            law = law_of(position[0].size // len(length))
            at = law.at if wide == 6 else law.at_few
            out, watched = at(tuple(rates), position.reshape(wide, -1), velocity.reshape(wide, -1))
            return out.reshape(wide, *shape), watched.reshape(-1, *shape)

        def aside(position, velocity):
            flat = (a.reshape(len(a), -1) for a in (position, velocity))
            fades = np.sqrt(square(law_of(len(RULE.points)).vanishing(*flat))).reshape(position.shape[1:])
            return [np.maximum(_ASIDE * fades, _SEEN * v) + _NONE for v in (size, speed)]

        weights, begin = (length * length / least, length / slowest), (of(self.acceleration), of(self._changing))
        steps = Steps(RULE, felt, length, x, u, 3 if self.law.mode == STANDS else 6, aside, *weights)
        if self.law.mode != ROLLS:
            solved = steps.solved(straight(RULE, length, *begin))
            return solved, steps.terms(solved.series)
        # A ball that rolls goes by four figures; how it turns about the others follows.
        law = law_of(1)
        x4, u4, first = law.few(x, u, begin[0])
        changing = np.concatenate([begin[1][:3], dot(begin[1][3:], law.surface.normal(x[:3]))[None]])
        few = Steps(RULE, felt, length, x4, u4, 4, aside, *weights).solved(straight(RULE, length, first, changing))
        states = (a.reshape(4, -1) for a in (few.position, few.velocity, few.acceleration))
        whole = law_of(len(RULE.points)).whole(*states).reshape(6, *few.position.shape[1:])
        solved = steps.of(whole, few)
        return solved, steps.terms(solved.series)

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
        fastest = np.maximum(fastest, self.law.hurry(self.position, self.velocity, self.acceleration, self._short))
        return 1.0 / np.maximum(fastest, 1e-300)

    def _short(self, away, rate):
        return hurry(away, rate, RULE.degree, self._absolute_m)

    def _take(self, fine, length, until, solved):
        """Go on with the bodies of the mask, whose steps are accepted; the Taken of them."""
        whole = bool(np.all(fine))
        law = self.law if whole else self.law.take(fine)

        def of(a):
            return a if whole or not np.ndim(a) else a[..., fine]

        begin, x, u, length, until = (of(a) for a in (self.time_s, self.position, self.velocity, length, until))
        rate, change, series = of(self._rate), of(self._change), of(solved.series)
        end_s = np.where(until - begin <= length * (1.0 + 1e-14), until, begin + length)
        settled = law.settled(of(solved.position[:, -1]), of(solved.velocity[:, -1]), of(self._gap))
        step = as_step(RULE, begin, length, x, u, series)
        who, watched = np.flatnonzero(fine), of(solved.watched)
        self._changing[:, who] = change_at_end(RULE, length, series)
        self._advance(who, whole, end_s, settled, of(solved.acceleration[:, -1]), watched[:, -1])
        wide = np.broadcast_to(rate, begin.shape), np.broadcast_to(change, begin.shape)
        return Taken(who, step, *wide, np.moveaxis(watched, 0, 1))

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


def square(a):
    return dot(a, a)
