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

Where a law slows bodies it may say how, along their way and across it (`drag.Slowing`): a round then takes into account what its change
of the velocity will change by that (a step of Newton's with a derivative that is nearly right), and a third as many rounds are needed.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import comb

import numpy as np
from numpy.polynomial import chebyshev

from . import bernstein
from .budget import spend
from .drag import Slowing
from .room import fresh

MOST_ROUNDS = 30
_ROUNDING = 4e-16  # of the size of what changes: a change as small is none
_FEW = 16  # bodies: so few are all worked out until the last one's stay
_NONE = 1e-300
_ROUNDS_TO_LEARN = (
    2  # after which the path is known well enough to tell how it is slowed and whether its window is too long
)
_LOOKS = 3  # points, about, at which the change of a velocity is looked at
_SOON = 4  # rounds most windows need; of what needs more,
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

    def to_states(self, length_s: float) -> np.ndarray:
        """(2 K, K + 2): what accelerations at the points, a position and a velocity at the start lead to within length_s: velocities at the
        points, then positions."""
        ones, points = np.ones((len(self.points), 1)), length_s * self.points[:, None]
        velocity = np.concatenate([length_s * self.once, 0.0 * ones, ones], axis=1)
        return np.concatenate([velocity, np.concatenate([length_s**2 * self.twice, ones, points], axis=1)])


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
        once, twice = (self.length_s * (matrix @ self.rates) for matrix in (self.rule.once, self.rule.twice))
        velocity, points = self.velocity[:, None], self.rule.points[:, None]
        return self.position[:, None] + self.length_s * (points * velocity + twice), velocity + once

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


def second_order(
    law, begin_s, length_s, position, velocity, stays_m, *, degree=19, lasts_s=0.0, most=np.inf, room=fresh
) -> Window:
    """One window of x'' = f(t, x, x') for each of N bodies.

    law(which, time_s, position, velocity, slowing) -> accelerations (D, K, M) of the bodies of an index (M,), or of all where that is None, at
    times (K, M), and fills in a `drag.Slowing` where one is given; it may write over the velocity, and what it returns is written over.
    begin_s, length_s (N,);
    position, velocity (D, N) at the start. stays_m (a number or (N,)): an error of a position that matters no more, also after a further
    lasts_s; rounds end when they would change less. most (a number or (N,)): a tail beyond which a window is given up early.
    room: where arrays come from (`room.py`), the rates that are returned among them.
    """
    at, count = rule(degree), len(length_s)
    stays, most, lasts_s = (figure + np.zeros(count) for figure in (stays_m, most, lasts_s))
    some, solved, moved, times = None, None, np.empty(count), begin_s + length_s * at.points[:, None]
    with np.errstate(all="ignore"):  # a window far too long runs away, and is taken back
        own = _Rounds(at, length_s, position, velocity, stays, most, np.maximum(0.5 * length_s, lasts_s), room)
        for round_ in range(MOST_ROUNDS):
            spend(1, times.size)
            slowing = Slowing(own.kind) if own.learns else None
            own.take(law(some, times, *own.states(), slowing), slowing)
            if round_ < own.first_look:
                continue
            done = own.judged()
            if round_ == MOST_ROUNDS - 1 or done.all():
                break
            if round_ >= _SOON and len(done) > _FEW and np.count_nonzero(done) > _LEAVE * len(done):
                solved = np.empty((len(position), len(at.points), count)) if solved is None else solved
                here = slice(None) if some is None else some
                solved[..., here], moved[here] = own.rates(), own.moved
                some, own, times = (np.arange(count) if some is None else some)[~done], own.only(~done), times[:, ~done]
    if solved is None:
        return Window(at, length_s, position, velocity, own.rates(), own.moved)
    solved[..., some], moved[some] = own.rates(), own.moved
    return Window(at, length_s, position, velocity, solved, moved)


class _Rounds:
    """What rounds have come to, of M bodies.

    Inside, rates are those by the share of a window, times its length; where all windows are of one length the matrices have it in them
    instead. _kept (D, K + 2, M): the rates, then the position and the velocity at the start, so that one product gives states.
    moved (M,): what the next round would change, as a position; inf where the window is too long. first_look: the round after which it is
    told first: of many bodies some are not done before the one that follows.
    """

    def __init__(self, at, length_s, position, velocity, stays, most, to_position_s, room):
        self.at, count = at, len(at.points)
        alike = len(length_s) > _FEW and length_s.min() == length_s.max()
        share_s, self._each_s = (float(length_s[0]), None) if alike else (1.0, length_s)
        self._once, self._to_states = share_s * at.once, at.to_states(share_s)
        self._room, self._kept = room, room("kept", (len(position), count + 2, len(length_s)))
        self._rates = self._kept[:, :count]
        self._rates[...] = 0.0
        self._kept[:, count] = position if alike else position / length_s
        self._kept[:, count + 1] = velocity
        self._stays, self._most, self._to_position_s = stays, most if alike else most * length_s, to_position_s
        self._fading, self._change, self._first, self._round = None, None, None, 0
        self.moved = np.full(len(length_s), np.inf)
        few = len(length_s) <= _FEW
        self.first_look, self.kind = (0, float) if few else (_ROUNDS_TO_LEARN, np.float32)
        self._looked_at = slice(count - 1, None, -max(count // _LOOKS, 1))
        self._looks = self._once[self._looked_at]

    def only(self, mask):
        """Those of a mask (M,)."""
        out = object.__new__(_Rounds)
        out.__dict__.update(self.__dict__)
        out._room = fresh
        for name in ("_kept", "_stays", "_most", "_to_position_s", "_change", "_first", "_each_s", "moved"):
            value = getattr(self, name)
            setattr(out, name, None if value is None else value[..., mask])
        out._rates = out._kept[:, : len(self.at.points)]
        out._fading = self._fading and self._fading.only(mask)
        return out

    @property
    def learns(self):
        """Whether the next round is one that tells how a law slows."""
        return self._round < _ROUNDS_TO_LEARN

    def states(self):
        """Positions and velocities (D, K, M) that the rates lead to."""
        count = len(self.at.points)
        shape = len(self._kept), 2 * count, len(self.moved)
        states = np.matmul(self._to_states, self._kept, out=self._room("states", shape))
        position, velocity = states[:, count:], states[:, :count]
        if self._each_s is not None:
            position *= self._each_s
        return position, velocity

    def rates(self):
        """Accelerations (D, K, M)."""
        return self._rates if self._each_s is None else self._rates / self._each_s

    def take(self, fresh, slowing):
        """Go on with accelerations (D, K, M), but for what the change of velocity that they bring will change in turn, told by a Slowing or
        None, which is as before."""
        if self._each_s is not None:
            fresh *= self._each_s
        if slowing is not None and slowing.across_1_s is not None:
            if self._each_s is not None:
                slowing.times(self._each_s)
            self._fading = self._fading or _Fading(
                self._once, self._rates.shape, self._looked_at, self.kind, self._room
            )
            self._fading.learn(slowing)
        if self._fading is None:
            fresh -= self._rates
            self._rates += fresh
            self._gained = self._looks @ fresh
        else:
            np.subtract(fresh, self._rates, out=self._fading.added)
            taken, self._gained = self._fading.of_added(self._round >= self.first_look)
            np.subtract(fresh, taken, out=self._rates)
        self._round += 1

    def judged(self):
        """Which bodies (M,) are done with."""
        before, change = self._change, _greatest(self._gained) * self._to_position_s
        self._change = change
        if before is None:
            size = _greatest(self._looks @ self._rates) * self._to_position_s
            self._stays = np.maximum(self._stays, _ROUNDING * size)
            self._first, self.moved = np.maximum(change, self._stays), change
        else:  # rounds change less and less: the next one by no larger a share than the last
            self.moved = change * np.minimum(change / np.maximum(before, _NONE), 1.0)
        calm = change <= _WILD * self._first
        if self._round == max(self.first_look + 1, _ROUNDS_TO_LEARN):
            calm &= _greatest(self.at.series[-2:] @ self._rates) <= self._most
        if not calm.all():
            self.moved = np.where(calm, self.moved, np.inf)
        return (self.moved <= self._stays) | ~calm


def _greatest(values):
    """(M,) of (D, n, M), whatever their sign."""
    return np.maximum.reduce(np.abs(values).reshape(-1, values.shape[2]), axis=0)


class _Fading:
    """What becomes of a change of the velocity where drag slows it: across the way and along it, it is divided by exponentials of what has
    been taken, each by its own. The way is taken to turn slowly.

    It is only near the truth: for many bodies single precision does, in half the memory.
    """

    def __init__(self, once, shape, looked_at, kind, room):
        self._once, self._looked_at = once.astype(kind), looked_at
        self.added, self._taken = (room(name, shape, kind) for name in ("added", "taken"))
        self._work = room("of the way", (3, *shape[1:]), kind)
        self._fades = [room(f"grown and shrunk {name}", (2, *shape[1:]), kind) for name in ("across", "along")]

    def learn(self, slowing):
        """From a `drag.Slowing`."""
        self._way = slowing.way
        for (grown, shrunk), rate_1_s in zip(self._fades, (slowing.across_1_s, slowing.along_1_s), strict=True):
            shrunk[...] = rate_1_s
            np.matmul(self._once, shrunk, out=grown)
            np.exp(grown, out=grown)
            shrunk /= grown

    def only(self, mask):
        """Those of a mask (M,)."""
        out = object.__new__(_Fading)
        out._once, out._looked_at = self._once, self._looked_at
        out._way, out.added, out._taken, out._work = (
            a[..., mask] for a in (self._way, self.added, self._taken, self._work)
        )
        out._fades = [(grown[:, mask], shrunk[:, mask]) for grown, shrunk in self._fades]
        return out

    def of_added(self, looks):
        """Of accelerations that are `added` (D, K, M), which is written over, how much is taken again; and where looks, by how much the velocity
        changes (D, n, M) at the points that are looked at."""
        off, taken, (along, more, less) = self.added, self._taken, self._work
        (grown_across, shrunk_across), (grown_along, shrunk_along) = self._fades
        np.multiply(self._way, off, out=taken)
        np.add.reduce(taken, axis=0, out=along)
        np.matmul(self._once, np.multiply(along, grown_along, out=less), out=more)
        more *= shrunk_along
        along *= grown_across
        np.matmul(self._once, along, out=less)
        less *= shrunk_across
        more -= less
        off *= grown_across
        np.matmul(self._once, off, out=taken)
        gained = taken[:, self._looked_at] / grown_across[self._looked_at] if looks else None
        taken *= shrunk_across
        taken += np.multiply(self._way, more, out=off)
        return taken, gained


def next_length(length_s, error, degree):
    """(N,) lengths to try next after windows of length_s (N,) whose errors, 1 is allowed, were error (N,): their polynomials' tails grow as
    that power of the length."""
    factor = _CAUTION * np.maximum(error, 1e-30) ** (-1.0 / degree)
    return length_s * np.where(np.isfinite(error), np.clip(factor, _SHRINK, _GROW), _SHRINK)
