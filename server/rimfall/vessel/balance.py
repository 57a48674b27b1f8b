"""A turning body that is not quite even: how far off its axis it is, what it does to the bearing and the floor, and weights against it.

A Body is told in axes that turn with it, z the axis it is held to. SI units, angles rad.
"""

import math
from dataclasses import dataclass

import numpy as np

from .bodies import principal

_ONE_PLANE_M = 1e-9  # planes nearer to each other are one
_ALIKE = 1e-12  # of the greatest: moments that differ by less are the same


@dataclass(frozen=True)
class Weight:
    """A weight of two-plane balancing: where along the axis, how heavy, and at which azimuth from x toward y."""

    plane_m: float
    mass_kg: float
    azimuth_rad: float


def offset(body):
    """How far the centre of mass is from the axis, and its azimuth."""
    x, y, _ = body.centre_m
    return math.hypot(x, y), math.atan2(y, x)


def moments(body):
    """First moment Σ m (x + iy), kg m, and product Σ m (x + iy) z, kg m², about the origin: what is 0 of a body in balance."""
    (x, y, z), inertia = body.centre_m, body.inertia_kg_m2
    first = body.mass_kg * complex(x, y)
    return first, first * z - complex(inertia[0, 2], inertia[1, 2])


def bearing_moment_n_m(body, rate_rad_s):
    """The moment that an axis held in place takes from a body that is skew to it, about its centre of mass."""
    return rate_rad_s**2 * math.hypot(body.inertia_kg_m2[0, 2], body.inertia_kg_m2[1, 2])


def tilt(body):
    """How far the principal axis nearest z leans from it, and toward which azimuth; 0 of a point."""
    skew = math.hypot(body.inertia_kg_m2[0, 2], body.inertia_kg_m2[1, 2])
    if skew <= 1e-15 * np.abs(body.inertia_kg_m2).max():
        return 0.0, 0.0
    values, axes = principal(body)
    nearest = [_nearest(axes[np.abs(values - value) <= _ALIKE * values[2]]) for value in values]
    axis = max(nearest, key=lambda axis: axis[2])
    return math.atan2(math.hypot(axis[0], axis[1]), axis[2]), math.atan2(axis[1], axis[0])


def _nearest(axes):
    """The direction (3,) nearest to z of those that axes (n, 3) of equal moments span: each of them is principal."""
    z = axes[:, 2] @ axes
    size = np.linalg.norm(z)
    return z / size if size else axes[0]


def gravity_round(rim_m, centre_m, rate_rad_s):
    """Least and greatest gravity (m/s²) round a rim that turns about a point so far from its middle: ω² times the distance."""
    return rate_rad_s**2 * abs(rim_m - centre_m), rate_rad_s**2 * (rim_m + centre_m)


def gravity_at(rim_m, centre_m, azimuths_rad, rate_rad_s):
    """Gravity (n,), m/s², at azimuths (n,) round a rim that turns about a point centre_m from its middle, toward azimuth 0."""
    return rate_rad_s**2 * np.sqrt(rim_m**2 + centre_m**2 - 2 * rim_m * centre_m * np.cos(azimuths_rad))


def two_plane_weights(body, radius_m, planes_m):
    """The Weights at a radius in two planes that leave a body in balance, offset and products both 0; None where the planes are one and
    that cannot do it. Weights act as points."""
    low, high = planes_m
    first, product = moments(body)
    if abs(high - low) <= _ONE_PLANE_M:
        skew = product - low * first
        if abs(skew) > 1e-12 * (abs(product) + abs(low * first)):
            return None
        return tuple(_weight(-first / 2, radius_m, plane) for plane in planes_m)
    upper = -(product - low * first) / (high - low)
    return _weight(-first - upper, radius_m, low), _weight(upper, radius_m, high)


def _weight(moment, radius_m, plane_m):
    return Weight(plane_m, abs(moment) / radius_m, math.atan2(moment.imag, moment.real))
