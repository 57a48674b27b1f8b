"""How long what has stopped on a surface stays there, as the frame's spin changes.

Between knots of the spin its rate is linear in time, and what would move a body at rest is a polynomial of the time, but for
air that blows past: exact, or as good, through Chebyshev's points. So the instant at which it starts is found, not stepped to.
"""

from itertools import pairwise

import numpy as np

from . import bernstein
from .aboard import dot
from .turned import NODES, to_control

_HOLDS_AT_FIRST = 1.0 + 5e-10  # less than what it breaks at, so that what broke loose is not held at that same instant
_BREAKS = 1.0 + 1e-9


class Stillness:
    """Bodies of a law that have stopped at time_s (N,), to stay until end_s (N,) at the latest.

    position, velocity (6, N): of a rolling sphere the spin about the normal is left. starts_s (N,): when each starts to move,
    inf where it does not before end_s. pieces: (mask (N,), begin_s, lasts_s (N,), spinning, its change (3, N)) of the time
    until then, a velocity a sigma each.
    """

    def __init__(self, law, spin, time_s, end_s, position, velocity):
        self._law, self._position = law, position
        self._normal = law.axis(position)
        self._spinning = dot(velocity[3:], self._normal)
        self.starts_s = np.full(len(time_s), np.inf)
        self.pieces = []
        for low, high in _segments(spin, time_s, end_s):
            self._look(spin, np.maximum(low, time_s), np.minimum(high, end_s))

    def _look(self, spin, begin, until):
        """Look through one piece of the spin, from begin to until (N,): empty where that is before begin."""
        open_ = (until > begin) & np.isinf(self.starts_s)
        if not np.any(open_):
            return
        begin, until = np.where(open_, begin, 0.0), np.where(open_, until, 1.0)
        rate, change = (0.0, 0.0) if spin is None else (spin.rate_rad_s(begin), spin.change_rad_s2(begin))
        rate, change = np.broadcast_to(rate, begin.shape), np.broadcast_to(change, begin.shape)
        turning = -change * self._normal[2] * self._law.many.radius_m  # sigma_n' = -n.Omega'
        first = np.any(self._figures(rate, change, np.zeros_like(begin), _HOLDS_AT_FIRST) <= 0, axis=0)
        share = np.full(len(begin), np.inf)
        if np.any(change):
            values = np.stack([self._figures(rate, change, s * (until - begin), _BREAKS, turning) for s in NODES])
            for each in np.moveaxis(values, 1, 0):
                scale = np.maximum(np.max(np.abs(each), axis=0), 1e-300)
                share = np.minimum(share, bernstein.first_descent(to_control(each / scale), depth=1e-15))
        share[first] = 0.0
        starts = open_ & (share <= 1.0)
        lasts = np.where(starts, np.minimum(share, 1.0), 1.0) * (until - begin)
        self.starts_s[starts] = (begin + lasts)[starts]
        self.pieces.append((open_, begin, lasts, self._spinning * self._normal, turning * self._normal))
        self._spinning = self._spinning + turning * lasts

    def _figures(self, rate, change, since, share, turning=0.0):
        velocity = np.zeros_like(self._position)
        velocity[3:] = (self._spinning + turning * since) * self._normal
        return self._law.held((rate + change * since, change), self._position, velocity, share)[0]


def _segments(spin, time_s, end_s):
    """Pieces of the spin (low, high) from the first time to the last end."""
    knots = [] if spin is None else [t for t in spin.times_s[1:].tolist() if np.min(time_s) < t < np.max(end_s)]
    edges = [-np.inf, *knots, np.inf]
    return list(pairwise(edges))
