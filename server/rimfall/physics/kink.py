"""Where a velocity passes so nearly 0 that |w| w, which drag goes by, has a corner that no polynomial follows."""

from functools import lru_cache

import numpy as np
from numpy.polynomial import chebyshev

from .picard import rule

_NEAR = 0.3  # half windows: a corner farther aside, in complex time, fades among the first terms of a series
_BEGUN = 1e-4  # of a window: a corner as near its start is there
_AHEAD = 0.1  # of a window: how far past its end one is told
_ROUNDS = 4


def kink(at, w):
    """Where w (3, K), given at the points of a window, first passes nearly 0: a share of the window, also a little past its end, or None.

    It is nearest 0 where w.w' = 0. If w' is steady there, |w| is 0 at i |w|/|w'| from it: how far aside the corner is.
    """
    slope, at_points = _slope(at.degree)
    along = np.add.reduce(w.T * (at_points @ (at.series @ w.T)), axis=1)
    turns = ((along[:-1] < 0) & (along[1:] >= 0)).nonzero()[0]
    if not len(turns) and along[-1] >= 0:
        return None
    series = at.series @ w.T
    change = slope @ series
    for k in turns:
        (low, high), (falls, rises) = at.points[k : k + 2], along[k : k + 2]
        s, aside = _nearest(series, change, low + (high - low) * falls / (falls - rises), low, high)
        if aside < _NEAR and s > _BEGUN:
            return s
    if along[-1] < 0:
        s, aside = _nearest(series, change, 1.0, 1.0, 1.0)
        return s if aside < _NEAR and s < 1.0 + _AHEAD else None
    return None


def _nearest(series, change, s, low, high):
    """Where between low and high a velocity of a series, which changes with s by another, is least, beginning at s; by its next estimate where
    that is past the end. And how far aside it is 0, half windows."""
    orders = np.arange(len(series))
    for _ in range(_ROUNDS if low < high else 1):
        values = np.cos(np.arccos(2.0 * s - 1.0) * orders)
        here, moves = values @ series, values @ change
        square = moves @ moves
        ahead = -(here @ moves) / square
        s = min(max(s + ahead, low), high) if low < high else s + ahead
    return float(s), 2.0 * np.sqrt(max(here @ here - ahead * ahead * square, 0.0) / square)


def terms(degree, s):
    """Chebyshev's polynomials up to a degree (n, degree + 1), in 2 s - 1, at s (n,)."""
    return chebyshev.chebvander(2.0 * s - 1.0, degree)


@lru_cache
def _slope(degree):
    """Matrices (degree + 1, degree + 1): a series in 2 s - 1 -> that of its change with s; and -> that change at Chebyshev's points."""
    slope = np.array([np.append(chebyshev.chebder(unit, scl=2.0), 0.0) for unit in np.eye(degree + 1)]).T
    return slope, terms(degree, rule(degree).points) @ slope
