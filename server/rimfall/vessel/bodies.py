"""Rigid bodies: mass, centre and inertia, put together, looked at about another axis, and turned to their principal axes."""

import math
from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True)
class Body:
    """mass_kg; centre_m (3,) of mass; inertia_kg_m2 (3, 3) about that centre, its products with the minus sign; all in the craft's axes."""

    mass_kg: float
    centre_m: np.ndarray
    inertia_kg_m2: np.ndarray


def joined(bodies):
    """One Body of several, at least one; the same to the last digit in whatever order they come."""
    mass = math.fsum(body.mass_kg for body in bodies)
    centre = np.array([math.fsum(body.mass_kg * body.centre_m[k] for body in bodies) / mass for k in range(3)])
    parts = [body.inertia_kg_m2 + body.mass_kg * steiner(body.centre_m - centre) for body in bodies]
    inertia = np.array([[math.fsum(part[i, j] for part in parts) for j in range(3)] for i in range(3)])
    return Body(mass, centre, inertia)


def steiner(offset_m):
    """What a kilogram at an offset (3,) adds to the inertia about the origin (3, 3), m^2 (Steiner's theorem)."""
    return np.dot(offset_m, offset_m) * np.eye(3) - np.outer(offset_m, offset_m)


def about_spin_axis(body):
    """Inertia of a Body about the z axis itself, kg m^2, wherever its centre is; 0 of None."""
    if body is None:
        return 0.0
    x, y, _ = body.centre_m
    return float(body.inertia_kg_m2[2, 2] + body.mass_kg * (x * x + y * y))


def principal(body):
    """Principal inertia (3,) in ascending order, and its axes (3, 3), one a row, right-handed, the greatest figure of the first two above 0."""
    values, columns = np.linalg.eigh(body.inertia_kg_m2)
    axes = columns.T
    for axis in axes[:2]:
        axis *= math.copysign(1.0, axis[np.abs(axis).argmax()])
    axes[2] = np.cross(axes[0], axes[1])
    return values, axes + 0.0


def greater_transverse(body):
    """The greater of a Body's two moments of inertia across z through its centre, kg m^2."""
    (xx, xy, _), (_, yy, _), _ = body.inertia_kg_m2
    return float((xx + yy) / 2 + math.hypot((xx - yy) / 2, xy))
