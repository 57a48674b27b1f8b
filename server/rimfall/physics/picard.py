"""Picard's iteration at Chebyshev's points: whole windows of smooth motion at once, each body's of a length of its own.

A window's rates are a polynomial through their values at those points; integrated, it gives the states there, and they give the
rates anew, until they stay. All points of all bodies are worked out in one call of the law, so that a window costs as many calls
as it takes rounds, about a dozen; its path is as exact inside as at its ends. Source: Clenshaw & Norton, The Computer Journal 6
(1963) 88; for motions, Bai & Junkins, Journal of the Astronautical Sciences 58 (2011) 583.

`second_order` and `first_order` solve one window of each of N bodies. They ask the law of bodies `which` (M,), those whose rounds
still change something, for all K points of their windows at once: arrays (D, K, M), times (K, M). What comes back is a `Window`:
values at the points, what the last round changed, how much of the rates the polynomial leaves out (`tail`), and the path as Bernstein
coefficients of the change since the start, as `integrate.Step` has it. Whoever steps chooses the length, and asks again for less
where a window was too long (`next_length`).
"""

from dataclasses import dataclass
from functools import lru_cache
from math import comb

import numpy as np
from numpy.polynomial import chebyshev

from .budget import spend

MOST_ROUNDS = 30
_ROUNDING = 4e-16  # of the size of what changes: a change as small is none
_FEW = 16  # bodies: so few are all worked out until the last one's stay
_NONE = 1e-300
_WILD = 1e3  # a change so many times the first one has run away
_SHRINK, _GROW, _CAUTION = 0.25, 4.0, 0.85


@dataclass(frozen=True)
class Rule:
    """Chebyshev's K points of [0, 1], both ends among them, and matrices of K columns.

    Of values at the points: series, their Chebyshev coefficients in 2 s - 1; once, twice, the first and the second integral from 0 at
    the points. Of those coefficients: control, once_control, twice_control (K, K + 1 and K + 2 rows), Bernstein coefficients of the
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
                np.pad(c := chebyshev.chebint(unit, m, lbnd=-1, scl=0.5), (0, degree + 1 + m - len(c)))
                for unit in np.eye(degree + 1)
            ]
        ).T
        for m in (1, 2)
    ]
    at_points = [chebyshev.chebvander(2 * points - 1, degree + m) for m in (1, 2)]
    once, twice = (a @ i @ series for a, i in zip(at_points, into, strict=True))
    once[0] = twice[0] = 0.0
    controls = [series_to_control(degree), *(series_to_control(degree + m) @ into[m - 1] for m in (1, 2))]
    for control in controls[1:]:
        control[0] = 0.0
    return Rule(points, series, once, twice, *controls)


@dataclass
class Window:
    """One window of N bodies: its Rule, length_s (N,), and at the points states and rates: position, velocity, rates (D, K, N);
    velocity is None of a law of first order. moved (N,): what the last round changed, in units of a position, inf where it ran away.
    """

    rule: Rule
    length_s: np.ndarray
    position: np.ndarray
    velocity: np.ndarray | None
    rates: np.ndarray
    moved: np.ndarray

    def tail(self) -> np.ndarray:
        """(N,) how much of its rates the polynomial leaves out at most: the greatest of its last two coefficients."""
        return np.max(np.abs(self.rule.series[-2:] @ self.rates), axis=(0, 1))

    def series(self) -> np.ndarray:
        """Chebyshev coefficients (D, K, N) of the rates."""
        return self.rule.series @ self.rates

    def path_m(self) -> np.ndarray:
        """Bernstein coefficients (K + 2, D, N), or (K + 1, D, N) of a law of first order, of the position's change since the start."""
        if self.velocity is None:
            return self.path_m_s()
        change = self.length_s**2 * (self.rule.twice_control @ self.series())
        change += (self.length_s * np.linspace(0.0, 1.0, change.shape[1])[:, None]) * self.velocity[:, :1]
        return np.moveaxis(change, 1, 0)

    def path_m_s(self) -> np.ndarray:
        """Bernstein coefficients (K + 1, D, N) of the velocity's change since the start, of a law of second order."""
        return np.moveaxis(self.length_s * (self.rule.once_control @ self.series()), 1, 0)


def second_order(law, begin_s, length_s, position, velocity, stays_m, *, degree=19, guess=None) -> Window:
    """One window of x'' = f(t, x, x') for each of N bodies.

    law(which, time_s, position, velocity) -> (D, K, M): accelerations of the bodies of an index (M,), or of all where that is None, at
    times (K, M). begin_s, length_s (N,); position, velocity (D, N) at the start. stays_m (a number or (N,)): an error of a position that
    matters no more; rounds end when they would change less. guess (D, K, N): accelerations to begin with; else those of no acceleration.
    """
    at, length = rule(degree), length_s
    carried = position[:, None] + (length * at.points[:, None]) * velocity[:, None]

    def states(rates, some):
        if some is None:
            return carried + length**2 * (at.twice @ rates), velocity[:, None] + length * (at.once @ rates)
        own = length[some]
        return carried[..., some] + own**2 * (at.twice @ rates), velocity[:, None, some] + own * (at.once @ rates)

    if guess is None:
        guess = np.zeros_like(carried)
        begin = carried, np.broadcast_to(velocity[:, None], carried.shape)
    else:
        begin = states(guess, None)
    return _solved(law, at, begin_s, length, begin, guess, states, length**2, stays_m)


def first_order(law, begin_s, length_s, position, stays_m, *, degree=19, guess=None) -> Window:
    """The same of x' = f(t, x): law(which, time_s, position) -> rates (D, K, M)."""
    at, length = rule(degree), length_s

    def states(rates, some):
        start, own = (position, length) if some is None else (position[:, some], length[some])
        return (start[:, None] + own * (at.once @ rates),)

    if guess is None:
        guess = np.zeros((len(position), len(at.points), position.shape[1]))
    return _solved(law, at, begin_s, length, states(guess, None), guess, states, length, stays_m)


def _solved(law, at, begin_s, length_s, state, rates, states, to_position, stays_m):
    """The Window whose rounds begin with a state and rates. states(rates, some): what rates lead to; to_position (N,): a change of rates
    is, times that, at most one of a position."""
    count = len(length_s)
    times = begin_s + length_s * at.points[:, None]
    solved, moved = np.empty_like(rates), np.full(count, np.inf)
    some, first, before = None, None, None
    least = np.broadcast_to(stays_m, count)
    with np.errstate(over="ignore", invalid="ignore"):  # a window far too long runs away, and is taken back
        for _ in range(MOST_ROUNDS):
            spend(1, times.size)
            fresh = law(some, times, *state)
            change = to_position * np.max(np.abs(fresh - rates), axis=(0, 1))
            if before is None:
                first = np.maximum(change, least)
                least = np.maximum(least, _ROUNDING * to_position * np.max(np.abs(fresh), axis=(0, 1)))
                change_next = change
            else:  # rounds change less and less: the next one by no larger a share than the last
                change_next = change * np.minimum(change / np.maximum(before, _NONE), 1.0)
            wild = ~(change <= _WILD * first)
            done = (change_next <= least) | wild
            if some is None and (np.all(done) or count <= _FEW):
                solved, moved = fresh, np.where(wild, np.inf, change_next)
                if np.all(done):
                    break
                rates, before = fresh, change
            else:
                here = np.arange(count) if some is None else some
                solved[..., here], moved[here] = fresh, np.where(wild, np.inf, change_next)
                if np.all(done):
                    break
                going = ~done
                some, rates, before, first = here[going], fresh[..., going], change[going], first[going]
                times, to_position, least = times[:, going], to_position[going], least[going]
            state = states(rates, some)
        position, velocity = (*states(solved, None), None)[:2]
    return Window(at, length_s, position, velocity, solved, moved)


def next_length(length_s, error, degree):
    """(N,) lengths to try next after windows of length_s (N,) whose errors, 1 is allowed, were error (N,): their polynomials' tails grow as
    that power of the length."""
    factor = _CAUTION * np.maximum(error, 1e-30) ** (-1.0 / degree)
    return length_s * np.where(np.isfinite(error), np.clip(factor, _SHRINK, _GROW), _SHRINK)
