"""Drag: a sphere's standard curve, made smooth, or a constant coefficient; and what either does to bodies (`Drag`).

Source of the curve: Clift, Grace & Weber, Bubbles, Drops and Particles (1978), table 5.2, Reynolds numbers to 10^5.25.
As printed it jumps at its joints, and an adaptive stepper crawls there; so the program flies on a cubic spline of log Cd
against log Re through the printed curve (design, section 2). Below Re = 0.01 it is Oseen's 24/Re (1 + 3 Re/16), above
10^5.25 the last value: the drag crisis of a smooth ball is not modelled.
"""

import numpy as np

from .air import Air
from .bodies import Bodies

LEAST_RE = 1e-2
GREATEST_RE = 10**5.25
_KNOTS = np.linspace(-2.0, 5.25, 30)


def clift_grace_weber(re):
    """Drag coefficient (...) at Reynolds numbers re (...), 0 < re <= 10^5.25: the printed piecewise curve."""
    re = np.asarray(re, dtype=float)
    w = np.log10(re)
    pieces = [
        24.0 / re * (1.0 + 3.0 / 16.0 * re),
        24.0 / re * (1.0 + 0.1315 * re ** (0.82 - 0.05 * w)),
        24.0 / re * (1.0 + 0.1935 * re**0.6305),
        10 ** (1.6435 - 1.1242 * w + 0.1558 * w**2),
        10 ** (-2.4571 + 2.5558 * w - 0.9295 * w**2 + 0.1049 * w**3),
        10 ** (-1.9181 + 0.6370 * w - 0.0636 * w**2),
        10 ** (-4.3390 + 1.5809 * w - 0.1546 * w**2),
    ]
    return np.choose(np.searchsorted([0.01, 20.0, 260.0, 1500.0, 1.2e4, 4.4e4], re), pieces)


def _spline(x, y, slope_first, slope_last):
    """Cubic spline through (x, y) with given end slopes -> (4, n - 1) coefficients, highest power first."""
    h = np.diff(x)
    rise = np.diff(y) / h
    system = np.diag(np.full(len(x), 1.0))
    right = np.empty(len(x))
    right[0], right[-1] = slope_first, slope_last
    for i in range(1, len(x) - 1):
        system[i, i - 1 : i + 2] = h[i], 2 * (h[i - 1] + h[i]), h[i - 1]
        right[i] = 3 * (h[i] * rise[i - 1] + h[i - 1] * rise[i])
    slope = np.linalg.solve(system, right)
    curvature = (slope[:-1] + slope[1:] - 2 * rise) / h
    return np.stack([curvature / h, (rise - slope[:-1]) / h - curvature, slope[:-1], y[:-1]])


_LN10 = np.log(10.0)
_STEP = _KNOTS[1] - _KNOTS[0]


def _force_curve():
    """(4, 30) cubics of ln(Cd Re) in the fraction of the way from knot to knot, highest power first; at the last, its value.

    Cd Re instead of Cd, so that the force needs no division by the speed: the spline of log Cd plus a straight line.
    """
    curve = _spline(_KNOTS, np.log10(clift_grace_weber(10**_KNOTS)), -1.0, 0.0)
    curve[2] += 1.0
    curve[3] += _KNOTS[:-1]
    curve = curve * _LN10 * _STEP ** np.array([3, 2, 1, 0])[:, None]
    last = [[0.0], [0.0], [0.0], [curve[:, -1].sum()]]
    return np.ascontiguousarray(np.concatenate([curve, last], axis=1))


_CURVE = _force_curve()
_PER_LN_RE = 1.0 / (_LN10 * _STEP)
_OFFSET = 2.0 / _STEP


def sphere_cd_re(re):
    """Cd Re (N,) of a sphere at Reynolds numbers re (N,) >= 0, from the smooth curve; 24 at re = 0.

    The drag force is (pi/8) d mu (Cd Re) u: finite and smooth at rest. No branches: this is the program's inner loop.
    """
    above = np.maximum(re, LEAST_RE)
    within = np.minimum(above, GREATEST_RE)
    x = np.log(within)
    x *= _PER_LN_RE
    x += _OFFSET
    k = x.astype(np.intp)
    x -= k
    a, b, c, d = _CURVE.take(k, axis=1, mode="clip")  # clip: a trial step gone wild has no Reynolds number
    a *= x
    a += b
    a *= x
    a += c
    a *= x
    a += d
    value = np.exp(a, out=a)
    value *= np.divide(above, within, out=x)  # above the curve: the last Cd
    above -= re
    above *= 4.5
    value -= above  # below it: 24 (1 + 3 Re/16)
    return value


def sphere_cd(re):
    """Cd (N,) of a sphere at Reynolds numbers re (N,) > 0, from the smooth curve."""
    re = np.asarray(re, dtype=float)
    return sphere_cd_re(re) / re


class Drag:
    """The drag of N bodies: m a = -(pi/8) d^2 rho Cd |u| u, u their velocity through air of density rho.

    scale (N,): `rate_1_s` takes it times |u|, times the density over the deck's.
    """

    def __init__(self, bodies: Bodies, air: Air):
        density, viscosity = air.deck_density_kg_m3, air.viscosity_pa_s
        spheres = np.isnan(bodies.drag_coefficient)
        self._all_spheres = bool(np.all(spheres))
        self._spheres = spheres if np.any(spheres) else None
        area_per_mass = np.pi / 8.0 * bodies.diameter_m**2 / bodies.mass_kg
        self._constant = area_per_mass * density * np.where(spheres, 0.0, bodies.drag_coefficient)
        re_per = bodies.diameter_m * density / viscosity
        self._stokes = np.pi / 8.0 * bodies.diameter_m * viscosity / bodies.mass_kg
        self._constant_per_re = self._constant / np.where(re_per > 0, re_per, 1.0)
        self.scale = self._constant if self._spheres is None else re_per

    def rate_1_s(self, scaled_speed):
        """The rate (N,), 1/s, at which bodies take on the air's velocity."""
        if self._spheres is None:
            return scaled_speed
        sphere = sphere_cd_re(scaled_speed)
        sphere *= self._stokes
        return sphere if self._all_spheres else np.where(self._spheres, sphere, self._constant_per_re * scaled_speed)

    def settling_rate_1_s(self, gravity_m_s2):
        """The rate (N,), 1/s, at which the deck's air stops bodies that have come to their settling speed under a gravity (N,): how
        stiff they are. Stokes drag, and the square-law drag (of a sphere with Cd = 1/2) at the speed where it carries the body."""
        if self._spheres is None:
            return np.sqrt(gravity_m_s2 * self._constant)
        square = np.where(self._spheres, 0.5 * self._stokes * self.scale, self._constant)
        return np.where(self._spheres, 24.0 * self._stokes, 0.0) + np.sqrt(gravity_m_s2 * square)
