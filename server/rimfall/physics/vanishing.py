"""How long a step may be before something that friction goes by would vanish: a slip, or a speed.

Friction turns with its direction c/|c|, which ends in a corner where c is 0. A vector c + c' t of a steady rate c' has the square
|c|^2 + 2 c.c' t + |c'|^2 t^2, which is 0 at the two times tau = (-c.c' +- i |c x c'|)/|c'|^2: a pair of complex ones where it passes nothing at
a distance. There the direction has its singular points, and the series of Chebyshev's polynomials on [0, L] fades as rho^-k, rho being the sum of
the half axes of the ellipse about 0 and L through tau, in halves of L: |tau| + |tau - L| = L (rho + 1/rho)/2 (Trefethen, Approximation Theory and
Approximation Practice, theorem 8.2). That is to be met with a rho with which so many terms reach what is allowed.
"""

import numpy as np

from .aboard import dot

_SHORT_OF_CORNER = 0.999  # of the way to where it vanishes wholly
_CAUTION = 0.9
_REST_M_S, _FROM_REST_M_S = (
    1e-3,
    0.2,
)  # what starts from rest, and how fast it gets in a step: drag there is a broken power of the speed
_NONE = 1e-300


def hurry(away, rate, degree, allowed_m):
    """How short (N,), as 1/s, a step of a degree must be for what vanishes (3, N), m/s, that changes at a rate (3, N), m/s2."""
    away2, rate2, along = dot(away, away), dot(rate, rate), dot(away, rate)
    ahead = -along / np.maximum(rate2, _NONE)
    far = np.sqrt(away2 / np.maximum(rate2, _NONE))
    aside = np.sqrt(np.maximum(far * far - ahead * ahead, 0.0))
    # How much the direction's turning tells: of what passes nothing within what is allowed, nothing.
    tells = np.log(np.maximum(np.sqrt(away2) * aside / allowed_m, 1.0)) / degree
    half = np.cosh(tells)
    with np.errstate(divide="ignore", invalid="ignore"):
        longest = 2.0 * _CAUTION * (half * far - ahead) / np.sinh(tells) ** 2
    turning = np.where(tells > 0, 1.0 / np.maximum(longest, _NONE), 0.0)
    starts = (away2 < _REST_M_S * _REST_M_S) & (along > 0)
    turning = np.where(starts, np.sqrt(rate2) / _FROM_REST_M_S, turning)
    return np.maximum(turning, -along / (_SHORT_OF_CORNER * np.maximum(away2, _NONE)))
