"""Picard's iteration at Chebyshev's points: whole windows of smooth motion at once, each body's of a length of its own.

A window's rates are a polynomial through their values at those points; integrated, it gives the states there, and they give the
rates anew, until they stay. All points of all bodies are worked out in one call of the law, so that a window costs as many calls
as it takes rounds, about a dozen; its path is as exact inside as at its ends. Source: Clenshaw & Norton, The Computer Journal 6
(1963) 88; for motions, Bai & Junkins, Journal of the Astronautical Sciences 58 (2011) 583.

`second_order` solves one window of each of N bodies. It asks the law of bodies `which` (M,), those whose rounds
still change something, for all K points of their windows at once: arrays (D, K, M), times (K, M). What comes back is a `Window`:
values at the points, what the last round changed, how much of the rates the polynomial leaves out (`tail`), and the path as Bernstein
coefficients of the change since the start, as `integrate.Step` has it. Whoever steps chooses the length, and asks again for less
where a window was too long (`next_length`).

Where a law slows bodies it may say at what rate, and return it beside the accelerations, (K, M) 1/s: a round then takes what its change
of the velocity will change by that (a step of Newton's with a derivative that is nearly right), and half as many rounds are needed.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import comb

import numpy as np
from numpy.polynomial import chebyshev

from . import bernstein
from .budget import spend

MOST_ROUNDS = 30
_ROUNDING = 4e-16  # of the size of what changes: a change as small is none
_FEW = 16  # bodies: so few are all worked out until the last one's stay
_NONE = 1e-300
_OF_SLOWING = 1.45  # that many times the slowing rate is how drag by the square of the speed grows with it, on the way between along and across
_ROUNDS_TO_LEARN = (
    2  # after which the path is known well enough to tell how it is slowed and whether its window is too long
)
_SOON = 5  # rounds most windows need; of what needs more,
_LEAVE = 0.5  # those that are done are left out once they are so many of the bodies
_WILD = 1e3  # a change so many times the first one has run away
_SHRINK, _GROW, _CAUTION = 0.25, 4.0, 0.85


@dataclass(frozen=True)
class Rule:
    """Chebyshev's K points of [0, 1], both ends among them, and matrices of K columns.

    Of values at the points: series, their Chebyshev coefficients in 2 s - 1; once, twice, the first and the second integral from 0 at
    the points. Of those coefficients: control, once_control, twice_control (K, K + 2 and K + 2 rows), Bernstein coefficients of the
    polynomial and of these integrals. (From values straight to these the sums would lose digits.)
    """

    points: np.ndarray
    series: np.ndarray
    once: np.ndarray
    twice: np.ndarray
    control: np.ndarray
    once_control: np.ndarray
    twice_control: np.ndarray

    @property
    def degree(self) -> int:
        """Of the polynomial through the values."""
        return len(self.points) - 1


def series_to_control(degree):
    """(n + 1, n + 1): Chebyshev coefficients in 2 s - 1 -> Bernstein coefficients. Of T(k) they are (-1)^(k - i) C(2 k, 2 i)/C(k, i), here
    raised to degree n: quotients of whole numbers, at most 2^k, so that coefficients which fade lose no digits (powers grow as 6^k)."""
    n = degree
    columns = [
        [
            sum((-1) ** (k - j) * comb(2 * k, 2 * j) * comb(n - k, i - j) for j in range(min(i, k) + 1)) / comb(n, i)
            for i in range(n + 1)
        ]
        for k in range(n + 1)
    ]
    return np.array(columns).T


@lru_cache
def rule(degree: int) -> Rule:
    """The Rule of a degree."""
    points = 0.5 - 0.5 * np.cos(np.pi * np.arange(degree + 1) / degree)
    k = np.arange(degree + 1)
    halved = np.where(k % degree == 0, 0.5, 1.0)
    series = (2.0 / degree) * (-1.0) ** k[:, None] * halved[:, None] * halved * np.cos(np.pi * k[:, None] * k / degree)
    into = [
        np.array(
            [
                np.pad(c := chebyshev.chebint(unit, m, lbnd=-1, scl=0.5), (0, degree + 3 - len(c)))
                for unit in np.eye(degree + 1)
            ]
        ).T
        for m in (1, 2)
    ]
    at_points = chebyshev.chebvander(2 * points - 1, degree + 2)
    once, twice = (at_points @ i @ series for i in into)
    once[0] = twice[0] = 0.0
    controls = [series_to_control(degree), *(series_to_control(degree + 2) @ i for i in into)]
    for control in controls[1:]:
        control[0] = 0.0
    controls[2][1] = 0.0
    return Rule(points, series, once, twice, *controls)


@dataclass
class Window:
    """One window of N bodies: its Rule, length_s (N,), and at the start position and velocity (D, N); the rates, which are accelerations,
    (D, K, N) at the points. moved (N,): what one more round would change, as a change of a position; inf where it ran away.
    """

    rule: Rule
    length_s: np.ndarray
    position: np.ndarray
    velocity: np.ndarray
    rates: np.ndarray
    moved: np.ndarray

    def states(self) -> tuple[np.ndarray, ...]:
        """Positions and velocities (D, K, N) at the points."""
        return _Windows(self.rule, self.length_s, self.position, self.velocity).states(self.rates)

    def end(self) -> tuple[np.ndarray, np.ndarray]:
        """Position and velocity (D, N) at the end."""
        once = self.length_s * (self.rule.once[-1] @ self.rates)
        twice = self.length_s * (self.velocity + self.length_s * (self.rule.twice[-1] @ self.rates))
        return self.position + twice, self.velocity + once

    def tail(self) -> np.ndarray:
        """(N,) how much of its rates the polynomial leaves out at most: the greatest of its last two coefficients."""
        return _greatest(self.rule.series[-2:] @ self.rates)

    def series(self) -> np.ndarray:
        """Chebyshev coefficients (D, K, N) of the rates."""
        return self.rule.series @ self.rates

    def path_m(self) -> np.ndarray:
        """Bernstein coefficients (K + 2, D, N) of the position's change since the start."""
        change = self.length_s**2 * (self.rule.twice_control @ self.series())
        change += (self.length_s * bernstein.straight(change.shape[1] - 1)[:, 0]) * self.velocity[:, None]
        return change.transpose(1, 0, 2)

    def path_m_s(self) -> np.ndarray:
        """Bernstein coefficients (K + 2, D, N) of the velocity's change since the start."""
        return (self.length_s * (self.rule.once_control @ self.series())).transpose(1, 0, 2)


def _greatest(figures):
    """The greatest size (N,) among figures (D, K, N)."""
    return np.maximum.reduce(np.abs(figures), axis=(0, 1))


class _Windows:
    """The windows of M bodies as they are worked out: what rates lead to."""

    def __init__(self, at, length_s, position, velocity):
        self._at, self._length_s, self._position, self._velocity = at, length_s, position, velocity
        alike = len(length_s) > _FEW and np.ptp(length_s) == 0.0
        self._alike_s = float(length_s[0]) if alike else None
        self._sums = np.concatenate([at.once, at.twice])
        if alike:
            by = np.full(len(self._sums), self._alike_s)
            by[len(at.points) :] *= self._alike_s
            self._sums = by[:, None] * self._sums
        self._carried = position[:, None] + (length_s * at.points[:, None]) * velocity[:, None]

    def only(self, mask):
        """Those of a mask (M,)."""
        return _Windows(self._at, self._length_s[mask], self._position[:, mask], self._velocity[:, mask])

    def begin(self):
        """States (D, K, M) without any acceleration."""
        return self._carried, self._velocity[:, None].repeat(len(self._at.points), axis=1)

    def states(self, rates):
        """States (D, K, M) that rates lead to."""
        count, sums = len(self._at.points), self._sums @ rates
        once, twice = sums[:, :count], sums[:, count:]
        if self._alike_s is None:
            once *= self._length_s
            twice *= self._length_s**2
        once += self._velocity[:, None]
        twice += self._carried
        return twice, once

    def once(self, rates):
        """The integrals (D, K, M) of rates."""
        if self._alike_s is not None:
            return self._sums[: len(self._at.points)] @ rates
        return self._length_s * (self._at.once @ rates)


def second_order(law, begin_s, length_s, position, velocity, stays_m, *, degree=19, lasts_s=0.0, most=np.inf) -> Window:
    """One window of x'' = f(t, x, x') for each of N bodies.

    law(which, time_s, position, velocity) -> accelerations (D, K, M), or these and slowing rates (K, M), of the bodies of an index (M,), or
    of all where that is None, at times (K, M). begin_s, length_s (N,); position, velocity (D, N) at the start. stays_m (a number or (N,)):
    an error of a position that matters no more, also after a further lasts_s; rounds end when they would change less. most (a number or
    (N,)): a tail beyond which a window is given up early.
    """
    at, count = rule(degree), len(length_s)
    windows, moved = _Windows(at, length_s, position, velocity), np.full(count, np.inf)
    to_position = length_s * np.maximum(
        0.5 * length_s, lasts_s
    )  # of a change of the rates' integral over a window of length 1
    own = _Rounds(at, to_position, *(figure + np.zeros(count) for figure in (stays_m, most)))
    some, solved, rates, times = None, None, None, begin_s + length_s * at.points[:, None]
    with np.errstate(all="ignore"):  # a window far too long runs away, and is taken back
        state = windows.begin()
        for round_ in range(MOST_ROUNDS):
            spend(1, times.size)
            fresh = law(some, times, *state)
            fresh, slowing = fresh if isinstance(fresh, tuple) else (fresh, None)
            rates = own.mended(windows, fresh, rates, slowing)
            done, wild = own.judged(rates)
            here = slice(None) if some is None else some
            moved[here] = np.where(wild, np.inf, own.next_)
            if round_ == MOST_ROUNDS - 1 or done.all():
                break
            if round_ >= _SOON and len(done) > _FEW and np.count_nonzero(done) > _LEAVE * len(done):
                solved = np.empty_like(rates) if solved is None else solved
                solved[..., here] = rates
                some, rates = (np.arange(count) if some is None else some)[~done], rates[..., ~done]
                own, windows, times = own.only(~done), windows.only(~done), times[:, ~done]
            state = windows.states(rates)
    if solved is not None:
        solved[..., here] = rates
        rates = solved
    return Window(at, length_s, position, velocity, rates, moved)


class _Rounds:
    """What rounds have come to, of M bodies. next_ (M,): what the next one would change, as a position."""

    _NAMES = ("_to_position", "_stays", "_most", "_first", "_change", "next_")

    def __init__(self, at, to_position, stays, most):
        self._at, self._to_position, self._stays, self._most = at, to_position, stays, most
        self._slowed, self._change, self._room, self._round = None, None, None, 0
        count = len(at.points)
        self._looked_at = at.once[[count // 4, count // 2, 3 * count // 4, count - 1]]

    def only(self, mask):
        """Those of a mask (M,)."""
        out = object.__new__(_Rounds)
        out.__dict__.update(self.__dict__)
        for name in self._NAMES:
            setattr(out, name, getattr(self, name)[mask])
        out._slowed = self._slowed and tuple(a[:, mask] for a in self._slowed)
        return out

    def mended(self, windows, fresh, rates, slowing):
        """The rates to go on with: `fresh`, but for what the change of velocity that it brings will change in turn."""
        off = fresh.copy() if rates is None else np.subtract(fresh, rates, out=rates)
        if slowing is not None:
            if self._round < _ROUNDS_TO_LEARN:
                slowing *= _OF_SLOWING
                grown = np.exp(windows.once(slowing[None])[0])
                slowing /= grown
                self._slowed = grown, slowing
            grown, shrunk = self._slowed
            mend = windows.once(np.multiply(off, grown, out=self._scratch(off)))
            mend *= shrunk
            fresh -= mend
            off -= mend
        self._judge(off, fresh)
        return fresh

    def _scratch(self, like):
        if self._room is None or self._room.shape != like.shape:
            self._room = np.empty_like(like)
        return self._room

    def _judge(self, off, rates):
        """Note what a change of rates has changed; rates: as they are now."""
        before = self._change
        self._change = self._to_position * _greatest(self._looked_at @ off)
        if before is None:
            size = self._to_position * _greatest(self._looked_at @ rates)
            self._stays = np.maximum(self._stays, _ROUNDING * size)
            self._first = np.maximum(self._change, self._stays)
            self.next_ = self._change
        else:  # rounds change less and less: the next one by no larger a share than the last
            self.next_ = self._change * np.minimum(self._change / np.maximum(before, _NONE), 1.0)
        self._round += 1

    def judged(self, rates):
        """Which bodies (M,) are done with, and which of them because their windows are too long."""
        wild = ~(self._change <= _WILD * self._first)
        if self._round == _ROUNDS_TO_LEARN:
            wild |= ~(_greatest(self._at.series[-2:] @ rates) <= self._most)
        return (self.next_ <= self._stays) | wild, wild


def next_length(length_s, error, degree):
    """(N,) lengths to try next after windows of length_s (N,) whose errors, 1 is allowed, were error (N,): their polynomials' tails grow as
    that power of the length."""
    factor = _CAUTION * np.maximum(error, 1e-30) ** (-1.0 / degree)
    return length_s * np.where(np.isfinite(error), np.clip(factor, _SHRINK, _GROW), _SHRINK)
