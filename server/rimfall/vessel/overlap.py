"""Parts that fill the same space: full solids, some of whose points lie inside another. Found by sampling, so what touches or hardly
cuts may pass; shells, discs, rods and points are where other things are, and count as none."""

import math

import numpy as np

from .solids import direction, turn_to

_FULL = ("cylinder", "box", "sphere", "torus", "cone")
_ROUND = np.linspace(0.0, 2 * math.pi, 25)[:-1]
_LEAST_IN = 1e-6  # of a size: what is less deep inside touches


def overlapping(solids):
    """Pairs of names, in order, of those of some Solids by name that fill the same space."""
    full = [(name, solid) for name, solid in solids.items() if solid.kind in _FULL]
    frames = [turn_to(direction(solid.axis)) for _, solid in full]
    points = [np.array(s.place_m) + _samples(s) @ turn.T for (_, s), turn in zip(full, frames, strict=True)]
    reach = [
        float(np.linalg.norm(p - np.array(s.place_m), axis=1).max()) for (_, s), p in zip(full, points, strict=True)
    ]
    pairs = []
    for i, (name, one) in enumerate(full):
        for j in range(i + 1, len(full)):
            other_name, other = full[j]
            apart = math.dist(one.place_m, other.place_m)
            if apart < reach[i] + reach[j] and (
                _inside(other, frames[j], points[i]) or _inside(one, frames[i], points[j])
            ):
                pairs.append((name, other_name))
    return pairs


def _samples(solid):
    """Points of a solid (n, 3) in its own axes: its middle, its skin and halfway to it."""
    if solid.kind == "box":
        steps = np.linspace(-0.5, 0.5, 5)
        return np.array(np.meshgrid(steps, steps, steps)).reshape(3, -1).T * np.array(solid.size_m)
    east, north, none = np.cos(_ROUND), np.sin(_ROUND), 0.0 * _ROUND
    circle = np.stack([east, north, none], axis=1)
    if solid.kind == "torus":
        tube = solid.tube_radius_m
        rows = [(share * math.cos(a), share * math.sin(a)) for a in _ROUND[::3] for share in (0.0, tube)]
        return np.concatenate([circle * (solid.radius_m + out) + [0.0, 0.0, up] for out, up in rows])
    if solid.kind == "sphere":
        rows = [(math.cos(a), math.sin(a)) for a in np.linspace(-math.pi / 2, math.pi / 2, 9)]
        skin = np.concatenate([circle * out + [0.0, 0.0, up] for out, up in rows]) * solid.radius_m
        return np.concatenate([skin, skin / 2])
    up = np.linspace(-0.5, 0.5, 9)
    wide = solid.radius_m * ((0.5 - up) if solid.kind == "cone" else np.ones(9))
    rows = [(out * share, h * solid.length_m) for h, out in zip(up, wide, strict=True) for share in (0, 0.5, 1)]
    return np.concatenate([circle * out + [0.0, 0.0, h] for out, h in rows])


def _inside(solid, turn, points):
    """Whether any of some points (n, 3) is inside a solid."""
    x, y, z = ((points - np.array(solid.place_m)) @ turn).T
    away, room = np.hypot(x, y), 1 - _LEAST_IN
    match solid.kind:
        case "box":
            half = np.array(solid.size_m) / 2 * room
            hit = (np.abs(x) < half[0]) & (np.abs(y) < half[1]) & (np.abs(z) < half[2])
        case "sphere":
            hit = np.hypot(away, z) < solid.radius_m * room
        case "torus":
            hit = np.hypot(away - solid.radius_m, z) < solid.tube_radius_m * room
        case "cone":
            hit = (np.abs(z) < solid.length_m / 2 * room) & (away < solid.radius_m * (0.5 - z / solid.length_m) * room)
        case _:
            hit = (np.abs(z) < solid.length_m / 2 * room) & (away < solid.radius_m * room)
    return bool(hit.any())
