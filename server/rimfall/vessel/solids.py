"""The solids a craft is made of: their inertia in closed form, and how far they reach from the spin axis.

Moments of inertia of uniform solids about their centres of mass, as every handbook of mechanics has them. Lengths m, masses kg.
"""

import math
from dataclasses import dataclass

import numpy as np

from .bodies import Body

_Z = (0.0, 0.0, 1.0)


@dataclass(frozen=True)
class Solid:
    """A solid of the kind `kind` (a key of SQUARES), the middle of it at place_m (3,), its axis of symmetry along axis (3,), any length;
    those of its sizes that it has. A box's third size is along its axis, to which it is turned from z by the shortest way."""

    kind: str
    mass_kg: float
    place_m: tuple
    axis: tuple = _Z
    radius_m: float = 0.0
    length_m: float = 0.0
    tube_radius_m: float = 0.0
    size_m: tuple = (0.0, 0.0, 0.0)


def _round(axial, transverse):
    return transverse, transverse, axial


def _box(s):
    x, y, z = (side * side / 12 for side in s.size_m)
    return y + z, x + z, x + y


# kind → squares of the radii of gyration (m^2) about the centre of mass: across, across and along the axis
SQUARES = {
    "point": lambda s: (0.0, 0.0, 0.0),
    "rod": lambda s: _round(0.0, s.length_m**2 / 12),
    "ring": lambda s: _round(s.radius_m**2, s.radius_m**2 / 2),
    "disc": lambda s: _round(s.radius_m**2 / 2, s.radius_m**2 / 4),
    "cylinder": lambda s: _round(s.radius_m**2 / 2, s.radius_m**2 / 4 + s.length_m**2 / 12),
    "cylinder_shell": lambda s: _round(s.radius_m**2, s.radius_m**2 / 2 + s.length_m**2 / 12),
    "box": _box,
    "sphere": lambda s: _round(0.4 * s.radius_m**2, 0.4 * s.radius_m**2),
    "sphere_shell": lambda s: _round(s.radius_m**2 / 1.5, s.radius_m**2 / 1.5),
    "torus": lambda s: _round(s.radius_m**2 + 0.75 * s.tube_radius_m**2, s.radius_m**2 / 2 + 0.625 * s.tube_radius_m**2),
    "torus_shell": lambda s: _round(s.radius_m**2 + 1.5 * s.tube_radius_m**2, s.radius_m**2 / 2 + 1.25 * s.tube_radius_m**2),
    "cone": lambda s: _round(0.3 * s.radius_m**2, 0.15 * s.radius_m**2 + 0.0375 * s.length_m**2),
}  # fmt: skip


def direction(axis):
    """The unit vector (3,) along a direction of any length above 0."""
    axis = np.asarray(axis, float)
    axis = axis / np.abs(axis).max()
    return axis / np.linalg.norm(axis)


def turn_to(axis):
    """The turn (3, 3) that takes z to a unit vector by the shortest way; to -z, half a turn about x."""
    x, y, c = axis
    s = math.hypot(x, y)
    if s == 0.0:
        return np.diag([1.0, 1.0 if c > 0 else -1.0, 1.0 if c > 0 else -1.0])
    nx, ny = -y / s, x / s
    across = np.array([nx, ny, 0.0])
    skew = np.array([[0.0, 0.0, ny], [0.0, 0.0, -nx], [-ny, nx, 0.0]])
    return c * np.eye(3) + (1 - c) * np.outer(across, across) + s * skew


def body_of(solid):
    """The Body of a Solid."""
    axis = direction(solid.axis)
    turn = turn_to(axis)
    inertia = solid.mass_kg * (turn * SQUARES[solid.kind](solid)) @ turn.T
    return Body(solid.mass_kg, centre_of(solid, axis), (inertia + inertia.T) / 2)


def centre_of(solid, axis):
    """Where a solid's centre of mass is (3,): its middle, but for a cone, a quarter of whose height it is up."""
    place = np.asarray(solid.place_m, float)
    return place - axis * solid.length_m / 4 if solid.kind == "cone" else place


def reach_m(solid):
    """How far a solid reaches from the z axis, m."""
    x, y, _ = solid.place_m
    if solid.kind in ("point", "sphere", "sphere_shell"):
        return math.hypot(x, y) + solid.radius_m
    axis = direction(solid.axis)
    if solid.kind == "box":
        half = np.array(solid.size_m) / 2
        corners = np.array(np.meshgrid(*np.stack([-half, half], axis=1))).reshape(3, -1)
        east, north, _ = turn_to(axis) @ corners
        return float(np.hypot(x + east, y + north).max())
    ends = (1, -1) if solid.length_m else (0,)
    middles = [np.array(solid.place_m) + axis * end * solid.length_m / 2 for end in ends]
    if solid.kind == "cone":
        return max(_circle_reach(middles[1], axis, solid.radius_m), float(np.hypot(*middles[0][:2])))
    return max(_circle_reach(middle, axis, solid.radius_m) for middle in middles) + solid.tube_radius_m


_ROUND = np.linspace(0.0, 2 * math.pi, 721)[:-1]


def _circle_reach(middle, axis, radius):
    """How far a circle across an axis reaches from z; of one aslant to it among 720 points, which is 1e-5 of the radius short at most."""
    away = math.hypot(middle[0], middle[1])
    if axis[2] ** 2 == 1.0 or radius == 0.0:
        return away + radius
    turn = turn_to(axis)
    x, y = (middle[k] + radius * (turn[k, 0] * np.cos(_ROUND) + turn[k, 1] * np.sin(_ROUND)) for k in (0, 1))
    return float(np.hypot(x, y).max())
