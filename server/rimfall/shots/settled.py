"""Throws through the air that arrive after given flight times, carried on from those that are known to those that are not.

Kept with each is how W(t) = t u(t), u the throw, changes with the flight time: the throw arrives at the hands, x(u, t) = h(t), so
that dx/du u' = h' - v, v how it then moves. Two throws and these slopes guess those beyond (Hermite's cubic). Arrays are (n, 3), SI.
"""

import numpy as np

from .shooting import Shooting, hit
from .target import Moving, Resting

_SETTLED_M, _STEP_M = (
    5e-3,
    1e-4,
)  # how near a throw comes before it is mended once more, and the error allowed to a step of its flight
_MOST_WAVES, _FEW = 60, 4
_GUESSED = 0.05  # radii: by how much guesses of a wave may well miss


class Settled:
    """Flight times (n,), rising, the throws that arrive then, and the slopes of W."""

    def __init__(self, shooting: Shooting, target: Resting | Moving):
        self._shooting, self._target = shooting, target
        self.flight_s, self.throws, self.slopes = np.empty(0), np.empty((0, 3)), np.empty((0, 3))

    def solve(self, flight_s: np.ndarray, guesses: np.ndarray, most: int = 7) -> tuple[np.ndarray, np.ndarray]:
        """Which of the throws of flight times (M,) could be settled from guesses (M, 3), and how far the guesses missed (M,); those that
        could are kept."""
        place, going = self._target.at(self._shooting.thrower.hand.time_s + flight_s)
        throws, missed_m, good, moving, back = hit(self._shooting, place, flight_s, guesses, _SETTLED_M, _STEP_M, most)
        slopes = throws + flight_s[:, None] * np.einsum("nab,nb->na", back, going - moving)
        times, order = np.unique(np.concatenate([self.flight_s, flight_s[good]]), return_index=True)
        self.throws = np.concatenate([self.throws, throws[good]])[order]
        self.slopes = np.concatenate([self.slopes, slopes[good]])[order]
        self.flight_s = times
        return good, missed_m

    def knows(self, flight_s: np.ndarray) -> np.ndarray:
        """Whether each of the flight times (M,) is settled."""
        return np.isin(flight_s, self.flight_s)

    def of(self, flight_s: np.ndarray) -> np.ndarray:
        """The throws (M, 3) of flight times that are settled."""
        return self.throws[np.searchsorted(self.flight_s, flight_s)]

    def guess(self, flight_s: np.ndarray) -> np.ndarray:
        """Throws (M, 3) of flight times (M,): by the cubic between the two about each that are settled; beyond them, and across a gap, by
        that of the nearest and one half as far behind it."""
        known, last = self.flight_s, len(self.flight_s) - 1
        right = np.clip(np.searchsorted(known, flight_s), min(1, last), last)
        left = np.maximum(right - 1, 0)
        one = np.where(flight_s - known[left] <= known[right] - flight_s, left, right)
        off = flight_s - known[one]
        behind = _nearest(known, known[one] - 0.5 * off)
        behind = np.where(behind == one, np.clip(one - np.sign(off).astype(int), 0, last), behind)
        between = (known[left] < flight_s) & (flight_s < known[right]) & (known[right] - known[left] <= 4 * np.abs(off))
        other = np.where(between, left + right - one, behind)
        w = known[:, None] * self.throws
        apart = (known[other] - known[one])[:, None]
        alone = apart == 0.0
        apart = np.where(alone, 1.0, apart)
        x, begins, ends = off[:, None] / apart, apart * self.slopes[one], apart * self.slopes[other]
        grows = np.where(alone, 0.0, w[other] - w[one])
        bends = np.where(alone, 0.0, 3 * grows - 2 * begins - ends + x * (begins + ends - 2 * grows))
        return (w[one] + x * begins + x * x * bends) / flight_s[:, None]

    def spread(self, wanted: np.ndarray) -> None:
        """Carry on from what is settled to what is wanted and not, a stretch at a time, as far as that goes."""
        widest = max(wanted[-1] / 8, 1.001 * float(np.max(np.diff(wanted), initial=0.0)))
        allowed_m = _GUESSED * self._shooting.medium.deck_radius_m
        reach = None
        for _ in range(_MOST_WAVES):
            left = wanted[~self.knows(wanted)]
            if not len(left) or not len(self.flight_s):
                return
            off = np.abs(left - self.flight_s[_nearest(self.flight_s, left)])
            spacing = float(np.median(np.diff(wanted))) if len(wanted) > 1 else off.min()
            reach = 4 * spacing if reach is None else reach
            near = left[off <= max(reach, 1.001 * off.min())]
            good, missed_m = self.solve(near, self.guess(near), _FEW)
            if good.all():
                grows = (allowed_m / max(float(missed_m.max()), 1e-9)) ** 0.25
                reach = min(float(np.clip(grows, 0.7, 1.6)) * reach, widest)
            elif good.any():
                reach = max(0.7 * reach, spacing)
            else:
                reach = 0.4 * reach
                if reach < 0.2 * spacing or reach < off.min():
                    return


def _nearest(known, times):
    """Numbers (M,) of the known times (n,), rising, that are nearest to times (M,)."""
    right = np.clip(np.searchsorted(known, times), min(1, len(known) - 1), len(known) - 1)
    left = np.maximum(right - 1, 0)
    return np.where(times - known[left] <= known[right] - times, left, right)
