"""What stands in a camera's way: walls between it and what moves are cut off by its near plane, as the stages leave them out."""

from dataclasses import dataclass

import numpy as np

_MOST_POINTS = 16
_JUST = 1e-3  # of a distance: what touches what is looked at hides nothing
_PARALLEL = 1e-12
MOST_CUT = 0.99  # of the way to the nearest thing that moves


@dataclass(frozen=True)
class Walls:
    """Triangles as a ray is tried against all of them at once: a corner (n, 3), the two edges from it, and their cross product."""

    corner_m: np.ndarray
    one_m: np.ndarray
    two_m: np.ndarray
    normal_m2: np.ndarray


def walls(meshes):
    """Walls of meshes (position_m, faces), all in one space."""
    corners = [np.empty((0, 3, 3)), *(np.asarray(mesh.position_m)[mesh.faces] for mesh in meshes)]
    a, b, c = np.moveaxis(np.concatenate(corners), 1, 0)
    return Walls(a, b - a, c - a, np.cross(c - a, b - a))


def near_m(camera, walls, points):
    """Where a Camera's near plane must lie, metres, so that no wall hides points (n, 3) of the same space; None where none does."""
    seen = points[np.unique(np.linspace(0, len(points) - 1, min(len(points), _MOST_POINTS)).astype(int))]
    keys = np.unique(np.linspace(0, len(camera.position_m) - 1, 8).astype(int))
    follows = len(camera.position_m) > 1
    needed = [
        _cut(camera.position_m[k], -camera.axes[k, 2], walls, _nearest(seen, camera.position_m[k]) if follows else seen)
        for k in keys
    ]
    return max((cut for cut in needed if cut is not None), default=None)


def _nearest(points, eye):
    """Of what a camera follows, the one place it is at."""
    return points[[np.argmin(np.linalg.norm(points - eye, axis=1))]]


def _cut(eye, ahead, walls, points):
    """How far ahead the farthest hindrance lies, no nearer to the points than MOST_CUT of the way to the first of them."""
    depth = (points - eye) @ ahead
    share, hit = _shares(eye, points - eye, walls)
    if not hit.any() or np.min(depth) <= 0:
        return None
    farthest = np.max((share * depth[:, None])[hit])
    return float(min(farthest * (1 + _JUST), MOST_CUT * np.min(depth)))


def _shares(eye, rays, walls):
    """How far along rays (p, 3) from the eye triangles lie, shares (p, n) of them, and which (p, n) are in the way (Moller and
    Trumbore, Journal of Graphics Tools 2(1), 1997; their triple products turned so that a ray stands alone)."""
    off = eye - walls.corner_m
    side = np.cross(off, walls.one_m)
    volume = rays @ walls.normal_m2.T
    safe = np.where(np.abs(volume) > _PARALLEL, volume, np.inf)
    u, v = rays @ np.cross(walls.two_m, off).T / safe, rays @ side.T / safe
    far = np.einsum("fk,fk->f", walls.two_m, side) / safe
    return far, (u >= 0) & (v >= 0) & (u + v <= 1) & (far > 0) & (far < 1 - 10 * _JUST)
