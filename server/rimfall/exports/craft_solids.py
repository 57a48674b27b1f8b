"""The parts of a craft as solids of a file: what a tumbling craft looks like, about its centre of mass, in the habitat's axes."""

import numpy as np

from ..vessel.solids import direction, turn_to
from . import solids

_THIN_M, _POINT_M = 0.02, 0.25  # how thick what has no thickness is drawn, of its size; how large a point, metres
_UP = np.array(
    [[1.0, 0.0, 0.0], [0.0, 0.0, 1.0], [0.0, -1.0, 0.0]]
)  # rows: a lathe's X, Y (its axis) and Z in a part's axes, z its own


def craft_solid(parts, centre_m):
    """A solids.Solid of parts (`vessel.solids.Solid`), their centre of mass at its origin."""
    return solids.joined([_placed(part, centre_m) for part in parts])


def _placed(part, centre_m):
    rows = _UP @ turn_to(direction(part.axis)).T
    return _shape(part).turned(rows, np.asarray(part.place_m, dtype=float) - centre_m)


def _shape(part):
    kind, radius, length = part.kind, part.radius_m, part.length_m
    if kind == "box":
        return _box(part.size_m)
    if kind == "rod":
        return solids.disc(_THIN_M * length, -length / 2, length / 2)
    if kind == "ring":
        return solids.ring((1 - _THIN_M) * radius, radius, -_THIN_M * radius, _THIN_M * radius)
    if kind == "disc":
        return solids.disc(radius, -_THIN_M * radius / 2, _THIN_M * radius / 2)
    if kind == "cylinder":
        return solids.disc(radius, -length / 2, length / 2)
    if kind == "cylinder_shell":
        return solids.ring((1 - _THIN_M) * radius, radius, -length / 2, length / 2)
    if kind == "cone":
        return solids.lathe([[0.0, -length / 2], [radius, -length / 2], [0.0, length / 2]])
    if kind in ("torus", "torus_shell"):
        return _torus(radius, part.tube_radius_m)
    return solids.ball(_POINT_M if kind == "point" else radius, False)


def _torus(radius_m, tube_m):
    turn = np.linspace(-np.pi, np.pi, 25)
    profile = np.stack([radius_m + tube_m * np.cos(turn), tube_m * np.sin(turn)], axis=1)
    profile[:, 0] = np.maximum(profile[:, 0], 0.0)
    return solids.lathe(profile, 48, smooth=True)


def _box(size_m):
    """Its third size along the lathe's Y: a prism of four sides, flat."""
    corners = np.array([[-1, -1], [1, -1], [1, 1], [-1, 1]]) / 2 * np.asarray(size_m[:2])
    low, high = (np.insert(corners, 1, y, axis=1) * [1.0, 1.0, -1.0] for y in (-size_m[2] / 2, size_m[2] / 2))
    sides = [[low[k], low[(k + 1) % 4], high[(k + 1) % 4], high[k]] for k in range(4)] + [low[::-1], high]
    position = np.concatenate([np.array(side) for side in sides])
    normal = np.repeat([np.cross(s[1] - s[0], s[2] - s[0]) for s in map(np.array, sides)], 4, axis=0)
    normal /= np.linalg.norm(normal, axis=1, keepdims=True)
    uv = np.tile([[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]], (6, 1))
    faces = np.concatenate([[[4 * k, 4 * k + 1, 4 * k + 2], [4 * k, 4 * k + 2, 4 * k + 3]] for k in range(6)])
    return solids.Solid(position, normal, uv, faces, np.zeros(len(faces), dtype=bool))
