"""How the solids of a craft look from a direction: the outline of each as a polygon."""

import math

import numpy as np

from .solids import Solid, direction, turn_to

_ROUND = np.linspace(0.0, 2 * math.pi, 97)[:-1]  # on a wall, a circle a metre across is out by 0.3 mm
CIRCLE = np.stack([np.cos(_ROUND), np.sin(_ROUND)], axis=1)  # of radius 1

# what a view shows to the right and up: the side has the spin axis to the right, the end is seen from +z
SIDE = np.array([[0.0, 0.0, 1.0], [1.0, 0.0, 0.0]])
END = np.array([[1.0, 0.0, 0.0], [0.0, 1.0, 0.0]])


def outlines(solid: Solid, view: np.ndarray) -> list[np.ndarray]:
    """Polygons (n, 2), metres, of a solid as a view (2, 3) shows it: its outer outline, and the hole of a ring that is seen through.

    One point of a point; two or more on a line of a rod, or of what is seen edge on.
    """
    turn = turn_to(direction(solid.axis))

    def seen(local):
        return (np.asarray(solid.place_m) + local @ turn.T) @ view.T

    if solid.kind in ("sphere", "sphere_shell"):
        return [view @ np.asarray(solid.place_m) + solid.radius_m * CIRCLE]
    outer = _swept(solid, turn, view) if solid.kind in ("torus", "torus_shell") else _convex(seen(_surface(solid)))
    if solid.kind not in ("ring", "torus", "torus_shell"):
        return [outer]
    facing = abs(np.cross(*view) @ turn[:, 2])
    hole = solid.radius_m - solid.tube_radius_m
    if facing < 0.99 or hole <= 0 or solid.kind == "ring":
        return [outer]
    return [outer, seen(_circle(hole))]


def _circle(radius, height=0.0):
    return np.stack([radius * np.cos(_ROUND), radius * np.sin(_ROUND), np.full(len(_ROUND), height)], axis=1)


def _surface(solid):
    """Points (n, 3) that span a solid, its axis along z."""
    half = solid.length_m / 2
    match solid.kind:
        case "point":
            return np.zeros((1, 3))
        case "rod":
            return np.array([[0.0, 0.0, -half], [0.0, 0.0, half]])
        case "ring" | "disc":
            return _circle(solid.radius_m)
        case "cylinder" | "cylinder_shell":
            return np.concatenate([_circle(solid.radius_m, -half), _circle(solid.radius_m, half)])
        case "cone":
            return np.concatenate([_circle(solid.radius_m, -half), [[0.0, 0.0, half]]])
        case "box":
            x, y, z = solid.size_m
            signs = np.array([[a, b, c] for a in (-1, 1) for b in (-1, 1) for c in (-1, 1)])
            return signs * np.array([x, y, z]) / 2
    raise ValueError(solid.kind)


def _swept(solid, turn, view):
    """The outer outline of a torus: a ball swept round its circle reaches as far each way as the circle's own outline and, besides, the
    ball (supports of a Minkowski sum add)."""
    seen = solid.radius_m * view @ turn[:, :2]  # the circle of radius 1 as the view shows it
    across = CIRCLE @ seen
    far = np.linalg.norm(across, axis=1, keepdims=True)
    reach = np.divide(across, far, out=np.zeros_like(across), where=far > 0) @ seen.T
    return view @ np.asarray(solid.place_m) + reach + solid.tube_radius_m * CIRCLE


def _convex(points):
    """The corners (n, 2) of the convex hull, in order: A. M. Andrew, Information Processing Letters 9 (1979) 216."""
    scale = max(1.0, float(np.abs(points).max()))
    rounded = np.unique(np.round(points / scale, 12), axis=0) * scale
    if len(rounded) < 3:
        return rounded
    lower, upper = _chain(rounded), _chain(rounded[::-1])
    return np.array(lower[:-1] + upper[:-1])


def _chain(points):
    chain = []
    for point in points:
        while len(chain) > 1 and _turns(chain[-2], chain[-1], point) <= 0:
            chain.pop()
        chain.append(point)
    return chain


def _turns(first, second, third):
    return (second[0] - first[0]) * (third[1] - first[1]) - (second[1] - first[1]) * (third[0] - first[0])
