"""What stands in a camera's way: walls between it and what moves are cut off by its near plane, as the stages leave them out."""

import numpy as np

_MOST_POINTS = 16
_JUST = 1e-3  # of a distance: what touches what is looked at hides nothing
_PARALLEL = 1e-12
MOST_CUT = 0.99  # of the way to the nearest thing that moves


def near_m(camera, meshes, points):
    """Where a Camera's near plane must lie, metres, so that no mesh (position_m, faces) hides points (n, 3) of the same space; None where
    none does."""
    seen = points[np.unique(np.linspace(0, len(points) - 1, min(len(points), _MOST_POINTS)).astype(int))]
    keys = np.unique(np.linspace(0, len(camera.position_m) - 1, 8).astype(int))
    follows = len(camera.position_m) > 1
    needed = [
        _cut(
            camera.position_m[k], -camera.axes[k, 2], meshes, _nearest(seen, camera.position_m[k]) if follows else seen
        )
        for k in keys
    ]
    return max((cut for cut in needed if cut is not None), default=None)


def _nearest(points, eye):
    """Of what a camera follows, the one place it is at."""
    return points[[np.argmin(np.linalg.norm(points - eye, axis=1))]]


def _cut(eye, ahead, meshes, points):
    """How far ahead the farthest hindrance lies, no nearer to the points than MOST_CUT of the way to the first of them."""
    depth = (points - eye) @ ahead
    hits = [
        share * far
        for mesh in meshes
        for point, far in zip(points, depth, strict=True)
        for share in _shares(eye, point - eye, mesh)
    ]
    if not hits or np.min(depth) <= 0:
        return None
    return float(min(max(hits) * (1 + _JUST), MOST_CUT * np.min(depth)))


def _shares(eye, ray, mesh):
    """How far along a ray (3,) from the eye triangles lie in its way, shares of it (Moller and Trumbore, Journal of Graphics Tools
    2(1), 1997)."""
    a, b, c = (mesh.position_m[mesh.faces[:, k]] for k in range(3))
    one, two, off = b - a, c - a, eye - a
    across, side = np.cross(ray, two), np.cross(off, one)
    volume = np.einsum("fk,fk->f", across, one)
    safe = np.where(np.abs(volume) > _PARALLEL, volume, np.inf)
    u, v, far = np.einsum("fk,fk->f", across, off) / safe, side @ ray / safe, np.einsum("fk,fk->f", two, side) / safe
    return far[(u >= 0) & (v >= 0) & (u + v <= 1) & (far > 0) & (far < 1 - 10 * _JUST)]
