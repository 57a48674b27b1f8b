"""For each flight time the throw that arrives then: a curve of velocities. In vacuum it is exact; in air it is that one, mended by
shooting, many flight times at once, and carried on from flight times that are known to those that are not.

The curve is kept as W(t) = t u(t), u the local velocity thrown: W is smooth down to t = 0, where u has no bound. Polynomials on
panels that no kink of the spin or of the target crosses (`panels.py`).
"""

from dataclasses import dataclass, replace

import numpy as np

from ..physics.budget import spend
from ..physics.constants import TURN_RAD
from . import panels as chebyshev
from .panels import Panels
from .shooting import Shooting, hit
from .target import Moving, Resting

_EXACT_DEGREE, _AIR_DEGREE = 20, 8
_SHARE_OF_TURN = 0.25  # that the habitat turns within a panel
_GROWS = 0.6  # a panel is at most that share of its own flight time long, where air is: fast throws change faster
_SETTLED_M, _STEP_M = 1e-3, 1e-4  # how near a throw of the curve comes, and the error allowed to a step of its flight
_RESOLVED = 2e-5  # of W: how small the last coefficients are
_ROUNDS = 5  # of halving panels that are not resolved
_MOST_WAVES, _FEW = 60, 4
_FIRST, _FIRST_TURN = 24, 1.5  # so many flight times, or such a share of a panel, are begun with throws of a vacuum
_DENSITIES = (0.03, 0.1, 0.3, 0.6, 1.0)


@dataclass(frozen=True)
class Curve:
    """panels of flight times, in order, and the coefficients (P, n + 1, 3) of W on each; missing_s: stretches (low, high) of flight
    times for which no throw was settled."""

    panels: Panels
    coefs: np.ndarray
    missing_s: tuple = ()

    def at_nodes(self, degree: int) -> tuple[np.ndarray, np.ndarray]:
        """W and its slope by time (P, degree + 1, 3), at the nodes of that degree."""
        x = chebyshev.nodes(degree)
        basis = np.cos(np.outer(np.arccos(np.clip(x, -1, 1)), np.arange(self.coefs.shape[1])))
        length = (0.5 * (self.panels.high - self.panels.low))[:, None, None]
        slopes = np.einsum("xk,pka->pxa", basis[:, :-1], chebyshev.slope(self.coefs)) / length
        return np.einsum("xk,pka->pxa", basis, self.coefs), slopes

    def w(self, flight_s: np.ndarray) -> np.ndarray:
        """W (M, 3) at flight times (M,)."""
        k, x = self.panels.x(flight_s)
        return chebyshev.value(self.coefs[k], x)

    def velocity(self, flight_s: np.ndarray) -> np.ndarray:
        """Local velocities (M, 3) thrown for flight times (M,)."""
        return self.w(flight_s) / flight_s[:, None]


def curve_of(shooting: Shooting, target: Resting | Moving, least_s: float, most_s: float) -> Curve:
    """The Curve of flight times from least_s to most_s."""
    stops = target.kinks_s - shooting.thrower.hand.time_s
    stops = np.unique(np.concatenate([[least_s, most_s], stops[(stops > least_s) & (stops < most_s)]]))
    fastest = float(np.max(np.abs(target.spin.rates_rad_s)))
    longest = _SHARE_OF_TURN * TURN_RAD / fastest if fastest else np.inf
    if shooting.in_vacuum:
        parts = chebyshev.between(stops, longest)
        times = parts.times(_EXACT_DEGREE)
        return Curve(parts, chebyshev.coefficients(_straight(shooting, target, times.ravel()).reshape(*times.shape, 3)))
    return _in_air(shooting, target, _growing(stops, longest), _FIRST_TURN * longest)


def _straight(shooting, target, flight_s):
    """W (M, 3) of straight flights but for a constant pull: to where the target will be, less what the hand's own motion and the pull do."""
    hand, each = shooting.thrower.hand, flight_s[:, None]
    place = target.at(hand.time_s + flight_s)[0]
    pull = np.array(hand.room.pull_m_s2)
    return (place - hand.position_m - each * (hand.velocity_m_s + 0.5 * each * pull)) @ shooting.thrower.axes.T


def _growing(stops, longest):
    """Panels between stops, short where flights are."""
    edges = [stops[0]]
    for stop in stops[1:]:
        while edges[-1] < stop:
            spend(1)
            length = min(longest, _GROWS * edges[-1])
            left = stop - edges[-1]
            edges.append(stop if left <= 1.01 * length else edges[-1] + (length if left > 2 * length else 0.5 * left))
    edges = np.array(edges)
    return Panels(edges[:-1], edges[1:])


class _Settled:
    """Flight times (n,), rising, and what is known of each: the throw (n, 3), whether it is settled, its inverse effects."""

    def __init__(self, shooting, target):
        self._shooting, self._target = shooting, target
        self.flight_s, self.throws = np.empty(0), np.empty((0, 3))

    def solve(self, flight_s, guesses, most=7):
        """Whether the throws of those flight times could be settled from guesses; those that could are kept."""
        hand = self._shooting.thrower.hand
        place = self._target.at(hand.time_s + flight_s)[0]
        throws, good, _ = hit(self._shooting, place, flight_s, guesses, _SETTLED_M, _STEP_M, most)
        times, order = np.unique(np.concatenate([self.flight_s, flight_s[good]]), return_index=True)
        self.throws = np.concatenate([self.throws, throws[good]])[order]
        self.flight_s = times
        return good

    def knows(self, flight_s):
        """Whether each of the flight times (M,) is settled."""
        return np.isin(flight_s, self.flight_s)

    def of(self, flight_s):
        """The throws (M, 3) of flight times that are settled."""
        return self.throws[np.searchsorted(self.flight_s, flight_s)]

    def guess(self, flight_s):
        """Throws (M, 3) of flight times (M,) by the cubic through W at the four nearest that are settled."""
        count = min(4, len(self.flight_s))
        first = np.clip(np.searchsorted(self.flight_s, flight_s) - 2, 0, len(self.flight_s) - count)
        near = first[:, None] + np.arange(count)
        t, w = self.flight_s[near], self.flight_s[near][:, :, None] * self.throws[near]
        out = np.zeros((len(flight_s), 3))
        for i in range(count):
            weight = np.ones(len(flight_s))
            for j in range(count):
                if j != i:
                    weight *= (flight_s - t[:, j]) / (t[:, i] - t[:, j])
            out += weight[:, None] * w[:, i]
        return out / flight_s[:, None]


def _in_air(shooting, target, parts, begin_s):
    """The Curve in air on panels, halved where they must be."""
    known = _Settled(shooting, target)
    wanted = np.unique(parts.times(_AIR_DEGREE))
    _begin(known, shooting, target, wanted, begin_s)
    _spread(known, wanted)
    kept = []
    for round_ in range(_ROUNDS):
        times = parts.times(_AIR_DEGREE)
        whole = known.knows(times).all(axis=1)
        coefs = chebyshev.coefficients(
            times[whole][:, :, None] * known.of(times[whole].ravel()).reshape(-1, times.shape[1], 3)
        )
        size = np.abs(coefs).sum(axis=1).max(axis=1)
        resolved = np.abs(coefs[:, -2:]).max(axis=(1, 2)) <= _RESOLVED * size + 1e-6
        done = np.flatnonzero(whole)[resolved]
        kept.append((Panels(parts.low[done], parts.high[done]), coefs[resolved]))
        open_ = np.ones(len(whole), dtype=bool)
        open_[done] = False
        if not open_.any() or not len(known.flight_s):
            break
        if round_ == _ROUNDS - 1:
            rest = np.flatnonzero(whole)[~resolved]
            kept.append((Panels(parts.low[rest], parts.high[rest]), coefs[~resolved]))
            open_[rest] = False
            break
        parts = parts.halved(open_)
        wanted = np.unique(parts.times(_AIR_DEGREE))
        wanted = wanted[~known.knows(wanted)]
        known.solve(wanted, known.guess(wanted))
        _spread(known, wanted)
    low = np.concatenate([p.low for p, _ in kept])
    order = np.argsort(low)
    high = np.concatenate([p.high for p, _ in kept])[order]
    missing = tuple(zip(parts.low[open_].tolist(), parts.high[open_].tolist(), strict=True))
    return Curve(Panels(low[order], high), np.concatenate([c for _, c in kept])[order], missing)


def _begin(known, shooting, target, wanted, begin_s):
    """Settle what can be from the throws of a vacuum; where none can, from those of thinner air, step by step."""
    wanted = wanted[: max(_FIRST, int(np.searchsorted(wanted, begin_s)))]
    guesses = _straight(shooting, target, wanted) / wanted[:, None]
    known.solve(wanted, guesses)
    if len(known.flight_s):
        return
    for share in _DENSITIES:
        thinner = _Settled(replace(shooting, thinned=share * shooting.thinned), target)
        thinner.solve(wanted, guesses)
        if not len(thinner.flight_s):
            return
        guesses = thinner.guess(wanted)
    known.flight_s, known.throws = thinner.flight_s, thinner.throws


def _spread(known, wanted):
    """Carry on from what is settled to what is not, a stretch at a time, as far as that goes."""
    reach, widest = None, max(wanted[-1] / 8, 1.001 * float(np.max(np.diff(wanted), initial=0.0)))
    for _ in range(_MOST_WAVES):
        left = wanted[~known.knows(wanted)]
        if not len(left) or not len(known.flight_s):
            return
        k = (
            np.clip(np.searchsorted(known.flight_s, left), 1, len(known.flight_s) - 1)
            if len(known.flight_s) > 1
            else np.zeros(len(left), int)
        )
        off = np.minimum(np.abs(left - known.flight_s[k]), np.abs(left - known.flight_s[k - 1]))
        spacing = float(np.median(np.diff(wanted))) if len(wanted) > 1 else off.min()
        reach = 4 * spacing if reach is None else reach
        near = left[off <= max(reach, 1.001 * off.min())]
        good = known.solve(near, known.guess(near), _FEW)
        if good.all():
            reach = min(1.6 * reach, widest)
        elif good.any():
            reach = max(0.7 * reach, spacing)
        else:
            reach = 0.4 * reach
            if reach < 0.2 * spacing or reach < off.min():
                return
