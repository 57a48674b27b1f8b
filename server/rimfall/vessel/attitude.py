"""How a rigid body turns when nothing outside turns it: its attitude and its rates at any time, in closed form.

The rates about the principal axes are Jacobi's elliptic functions (Landau & Lifshitz, Mechanics, section 37). Seen in them the
angular momentum goes round the axis of least or of greatest inertia; the attitude is then the two angles of that direction, and the
angle about the momentum itself, an integral of the third kind (the same section; R. van Zon & J. Schofield, Numerical implementation of the
exact dynamics of free rigid bodies, J. Comput. Phys. 225 (2007) 145, has it all, from memory). The latter is written here so that
nothing is subtracted that is nearly as large. Nothing is stepped: no error grows but that of a phase.

Body axes and inertial axes coincide at time 0. Quaternions are (n, 4), w first, body to inertial; rates (n, 3) are in body axes, rad/s.
"""

import math
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from ..physics.quaternions import times, turning
from . import bodies
from .elliptic import carlson_f, carlson_j, jacobi, quarter

ALIKE = 1e-12  # of the greatest: principal moments that differ by less are taken as equal, for rounding makes as much
LEAST_SHARE = 1e-9  # of the greatest: less inertia about an axis is that of a line, and no rate about it can be told
_STEADY = 1e-15  # of all there is: momentum and rate differ in direction by less


@dataclass(frozen=True)
class Principal:
    """A body's principal moments of inertia: moments (3,), ascending, kg m2; axes (3, 3), unit columns in body axes, right-handed."""

    moments: np.ndarray
    axes: np.ndarray

    def momentum(self, rates):
        """Angular momentum (..., 3) in principal axes of rates (..., 3) in body axes."""
        return (rates @ self.axes) * self.moments

    @property
    def has_middle(self):
        """Whether one axis is the middle one, about which no turning lasts."""
        least, middle, greatest = self.moments
        return bool(least < middle < greatest)


def principal_of(body):
    """The Principal of a Body (`bodies.py`), moments that differ by rounding made equal. Raises ValueError where there is next to no
    inertia about some axis."""
    moments, rows = bodies.principal(body)
    greatest = moments[2]
    if not moments[0] >= LEAST_SHARE * greatest > 0:
        raise ValueError("next to no inertia about an axis")
    if greatest - moments[1] <= ALIKE * greatest:
        moments[1] = greatest
    if moments[1] - moments[0] <= ALIKE * greatest:
        moments[0] = moments[1]
    return Principal(moments, rows.T)


@dataclass(frozen=True)
class Turned:
    """Attitudes at n times: quaternion_wxyz (n, 4), body to inertial, each next to the one before; rates_rad_s (n, 3) and how they change
    (n, 3), rad/s2, in body axes; momentum (n, 3), the direction of the angular momentum in principal axes."""

    quaternion_wxyz: np.ndarray
    rates_rad_s: np.ndarray
    changes_rad_s2: np.ndarray
    momentum: np.ndarray


def torque_free(body, rates):
    """The motion of a Principal body that turns at rates (3,), rad/s in body axes, at time 0: what has `at(time_s)`."""
    momentum = body.momentum(np.asarray(rates, dtype=float))
    across = np.linalg.norm(np.cross(momentum, momentum / body.moments))
    if across <= _STEADY * np.linalg.norm(momentum) * np.linalg.norm(rates):
        return Steady(body, np.asarray(rates, dtype=float))
    return Free(body, momentum)


@dataclass(frozen=True)
class Steady:
    """Turning about one axis for ever, which is one of inertia."""

    body: Principal
    rates: np.ndarray

    def at(self, time_s):
        """Turned at times (n,)."""
        time_s = np.asarray(time_s, dtype=float)
        turned = turning(time_s[:, None] * self.rates)
        momentum = self.body.momentum(self.rates)
        size = np.linalg.norm(momentum)
        direction = momentum / size if size else np.array([0.0, 0.0, 1.0])
        same = np.ones((len(time_s), 1))
        return Turned(turned, same * self.rates, 0.0 * same * self.rates, same * direction)


@dataclass(frozen=True)
class Free:
    """Turning of which the axis goes round: momentum (3,) at time 0 in principal axes, kg m2/s.

    Inside, the axes are (x, y, z), right-handed: z, about which the momentum's direction goes round, is that of greatest inertia or of least,
    y the middle one.
    """

    body: Principal
    momentum: np.ndarray

    @cached_property
    def _axes(self):
        """Columns x, y, z (3, 3) in principal axes, and their moments."""
        moments = self.body.moments
        least, _, greatest = (v * v for v in self.momentum)
        about_greatest = greatest * (1 / moments[1] - 1 / moments[2]) >= least * (1 / moments[0] - 1 / moments[1])
        columns = np.eye(3) if about_greatest else np.array([[0.0, 0.0, 1.0], [0.0, -1.0, 0.0], [1.0, 0.0, 0.0]])
        return columns, moments if about_greatest else moments[::-1]

    @cached_property
    def _motion(self):
        """Greatest rates (3,) with their signs, phase at time 0, phase a second and complementary parameter mc."""
        columns, (ix, iy, iz) = self._axes
        x, y, z = start = (self.momentum @ columns) / (ix, iy, iz)
        a = ix * (iz - ix) * x * x + iy * (iz - iy) * y * y  # 2 E iz - L^2
        b = iy * (iy - ix) * y * y + iz * (iz - ix) * z * z  # L^2 - 2 E ix
        mc = (iz - ix) * (iz * (iz - iy) * z * z - ix * (iy - ix) * x * x) / ((iz - iy) * b)
        mc = min(max(mc, 0.0), 1.0)
        greatest = np.sqrt([a / (ix * (iz - ix)), a / (iy * (iz - iy)), b / (iz * (iz - ix))])
        greatest[2] = math.copysign(greatest[2], z)
        greatest[1] *= math.copysign(1.0, (iz - iy) * greatest[2])
        cn, sn, dn = start / greatest
        phase = float(sn * carlson_f(cn * cn, dn * dn, np.array(1.0)))
        if cn < 0:
            phase = math.copysign(2 * quarter(mc), sn) - phase
        return greatest, phase, math.sqrt(b * (iz - iy) / (ix * iy * iz)), mc

    @property
    def period_s(self):
        """After how long the rates are what they were: 4 K(m) by the phase a second; inf where the motion comes to the middle axis and
        stays."""
        _, _, per_s, mc = self._motion
        return 4 * quarter(mc) / per_s

    def at(self, time_s):
        """Turned at times (n,)."""
        time_s = np.asarray(time_s, dtype=float)
        rates, angle = self._rates_and_angle(np.concatenate([[0.0], time_s]))
        columns, moments = self._axes
        size = np.linalg.norm(self.momentum)
        direction = rates * moments / size
        turned = _from_angles(direction, angle)
        to_body = self.body.axes @ columns
        own = of_matrix(to_body)
        first = times(own, turned[:1] * (1.0, -1.0, -1.0, -1.0))
        turned = continued(
            times(times(np.repeat(first, len(time_s), 0), turned[1:]), np.array([own[0] * (1.0, -1.0, -1.0, -1.0)]))
        )
        rates, direction = rates[1:], direction[1:]
        changes = np.cross(size * direction, rates) / moments
        return Turned(turned, rates @ to_body.T, changes @ to_body.T, direction @ columns.T)

    def _rates_and_angle(self, time_s):
        """Rates (n, 3) about x, y, z, and the angle (n,) about the momentum since time 0."""
        greatest, phase, per_s, mc = self._motion
        _, (ix, iy, iz) = self._axes
        u = per_s * time_s + phase
        k = quarter(mc)
        half = np.round(u / (2 * k)) if math.isfinite(k) else np.zeros_like(u)
        rest = u if mc == 0.0 else u - 2 * k * half
        sign = 1 - 2 * (half % 2)
        sn, cn, dn = jacobi(rest, mc)
        rates = greatest * np.stack([sign * cn, sign * sn, dn], axis=1)
        share = iy * (ix - iz) / (ix * (iy - iz))
        area = _share_of_x(rest, half, sn, cn, dn, mc, share)
        size = np.linalg.norm(self.momentum)
        return rates, size * (time_s / iy + (1 / ix - 1 / iy) / per_s * (area - area[0]))


def _share_of_x(u, half, sn, cn, dn, mc, r):
    """Integral (n,) of cn2/(cn2 + r sn2) from 0 to u + 2 K half, u (n,) within K of 0; r at least 1.

    By the quarter period further, where what R_J is of has no differences in it.
    """
    if mc == 0.0:
        root = math.sqrt(r - 1)
        return np.arctan(root * sn) / root if root else sn
    ratio = mc / r

    def to_the_end(sn, cn, dn):
        s2 = (cn / dn) ** 2
        p = mc * (sn * sn + cn * cn / r) / (dn * dn)
        return ratio / 3 * s2 * (cn / dn) * carlson_j(mc * sn * sn / (dn * dn), mc / (dn * dn), np.array(1.0), p)

    whole = to_the_end(np.zeros(1), np.ones(1), np.ones(1))[0]
    return np.sign(u) * (whole - to_the_end(sn, np.maximum(cn, 0.0), dn)) + 2 * whole * half


def _from_angles(direction, angle):
    """Quaternions (n, 4) of attitudes in which the direction (n, 3) points along Z, turned by angle (n,) about it: the z-x-z angles of
    that direction, and of the turning about it."""
    x, y, z = direction.T
    level = np.hypot(x, y)
    large = np.sqrt((1 + np.abs(z)) / 2)
    small = level / (2 * large)
    cos, sin = np.where(z >= 0, large, small), np.where(z >= 0, small, large)
    own = np.arctan2(x, y)
    both, less = (angle + own) / 2, (angle - own) / 2
    return np.stack([cos * np.cos(both), sin * np.cos(less), sin * np.sin(less), cos * np.sin(both)], axis=1)


def of_matrix(m):
    """The quaternion (1, 4) of a turning whose columns (3, 3) are unit vectors, right-handed: what the greatest value of a symmetric matrix
    belongs to (I. Bar-Itzhack, J. Guidance 23 (2000) 1085, from memory)."""
    (a, b, c), (d, e, f), (g, h, k) = m
    symmetric = [
        [a + e + k, h - f, c - g, d - b],
        [h - f, a - e - k, b + d, c + g],
        [c - g, b + d, e - a - k, f + h],
        [d - b, c + g, f + h, k - a - e],
    ]
    return np.linalg.eigh(np.array(symmetric))[1][None, :, -1]


def continued(turned):
    """Quaternions (n, 4) of the same attitudes, none further from the one before than it need be."""
    if len(turned) < 2:
        return turned
    sign = np.where(np.sum(turned[1:] * turned[:-1], axis=1) < 0, -1.0, 1.0)
    return turned * np.concatenate([[1.0], np.cumprod(sign)])[:, None]
