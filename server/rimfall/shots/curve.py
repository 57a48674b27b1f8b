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
from .settled import Settled
from .shooting import Shooting
from .target import Moving, Resting

_EXACT_DEGREE, _AIR_DEGREE = 20, 8
_SHARE_OF_TURN = 0.25  # that the habitat turns within a panel
_GROWS = 0.6  # a panel is at most that share of its own flight time long, where air is: fast throws change faster
_RESOLVED = 2e-5  # of W: how small the last coefficients are
_ROUNDS = 5  # of halving panels that are not resolved
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


def _in_air(shooting, target, parts, begin_s):
    """The Curve in air on panels, halved where they must be."""
    known = Settled(shooting, target)
    wanted = np.unique(parts.times(_AIR_DEGREE))
    _begin(known, shooting, target, wanted, begin_s)
    known.spread(wanted)
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
        known.spread(wanted)
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
        thinner = Settled(replace(shooting, thinned=share * shooting.thinned), target)
        thinner.solve(wanted, guesses)
        if not len(thinner.flight_s):
            return
        guesses = thinner.guess(wanted)
    known.flight_s, known.throws = thinner.flight_s, thinner.throws
