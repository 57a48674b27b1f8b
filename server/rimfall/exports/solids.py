"""What is turned on a lathe: balls, cups, people as capsules, jugs, tables, lines. Corners with normals and a place on a texture each.

A profile is (radius, height) (P, 2) from the foot up the outside (and down the inside of what is hollow); it is turned about the
local Y, which is up. Metres.
"""

from dataclasses import dataclass, replace

import numpy as np

_AROUND = 32
_THIN = 1e-12


@dataclass(frozen=True)
class Solid:
    """position_m, normal (V, 3); uv (V, 2), of 0 to 1, u round the axis, v along the profile; faces (F, 3), anticlockwise seen from
    outside; dark (F,) bool: the faces that are darker, so that one sees it turn."""

    position_m: np.ndarray
    normal: np.ndarray
    uv: np.ndarray
    faces: np.ndarray
    dark: np.ndarray

    def turned(self, rows, to=(0.0, 0.0, 0.0)):
        """Its local X, Y and Z along the rows (3, 3), its origin at a place (3,)."""
        return replace(self, position_m=self.position_m @ rows + np.asarray(to), normal=self.normal @ rows)


def lathe(profile, around=_AROUND, smooth=False):
    """A Solid of a profile; smooth: without edges, as of a ball."""
    profile = np.asarray(profile, dtype=float)
    steps = np.diff(profile, axis=0)
    outward = np.stack([steps[:, 1], -steps[:, 0]], axis=1) / np.linalg.norm(steps, axis=1)[:, None]
    way = np.concatenate([[0.0], np.cumsum(np.linalg.norm(steps, axis=1))])
    v = way / way[-1]
    if smooth:
        ends = np.concatenate([outward[:1], outward[:-1] + outward[1:], outward[-1:]])
        rims, normals, v = profile, ends / np.linalg.norm(ends, axis=1)[:, None], v
        bands = np.arange(len(profile) - 1)
    else:
        rims, v = (np.stack([a[:-1], a[1:]], axis=1).reshape(-1, *a.shape[1:]) for a in (profile, v))
        normals, bands = np.repeat(outward, 2, axis=0), 2 * np.arange(len(profile) - 1)
    u = np.arange(around + 1) / around
    turn = 2 * np.pi * (u % 1.0)  # the seam's two rows of corners lie on one another exactly
    position, normal = (
        np.stack(
            [
                np.outer(np.cos(turn), a[:, 0]),
                np.broadcast_to(a[:, 1], (around + 1, len(a))),
                -np.outer(np.sin(turn), a[:, 0]),
            ],
            -1,
        ).reshape(-1, 3)
        for a in (rims, normals)
    )
    uv = np.stack([np.repeat(u, len(rims)), np.tile(v, around + 1)], axis=1)
    low = (np.arange(around)[:, None] * len(rims) + bands).ravel()
    beside = low + len(rims)
    faces = np.stack([low, beside, beside + 1, low, beside + 1, low + 1], -1).reshape(-1, 3)
    a, b, c = (position[faces[:, k]] for k in range(3))
    area = np.linalg.norm(np.cross(b - a, c - a), axis=1)
    faces = faces[area > _THIN * area.max()]
    return Solid(position, normal, uv, faces, np.zeros(len(faces), dtype=bool))


def ball(radius_m, turns, across=16):
    """A ball; turns: whether every other eighth of it is dark."""
    angle = np.linspace(-np.pi / 2, np.pi / 2, across + 1)
    circle = np.stack([np.cos(angle), np.sin(angle)], axis=1)
    circle[[0, -1], 0] = 0.0
    one = lathe(radius_m * circle, 24, smooth=True)
    one = replace(one, normal=one.position_m / radius_m)
    return replace(one, dark=np.prod(one.position_m[one.faces].mean(axis=1), axis=1) < 0) if turns else one


def capsule(height_m, radius_m, across=8):
    """A person, as far as a file shows one: upright about its centre."""
    angle = np.linspace(0.0, np.pi / 2, across + 1)
    cap = radius_m * np.stack([np.sin(angle), -np.cos(angle)], axis=1)
    cap[0, 0] = 0.0
    low = cap - [0.0, height_m / 2 - radius_m]
    return lathe(np.concatenate([low, (low * [1.0, -1.0])[::-1]]), 24, smooth=True)


def cup(diameter_m, depth_m, foot=0.82, wall=0.06):
    """An open cup, its foot on the local ground; foot: its width there, wall: of its radius."""
    r, inner = diameter_m / 2, diameter_m / 2 * (1 - wall)
    base = wall * diameter_m / 2
    return lathe([(0, 0), (foot * r, 0), (r, depth_m), (inner, depth_m), (foot * inner, base), (0, base)])


def disc(radius_m, low_m, high_m):
    """A flat round plate, or a leg, between two heights."""
    return lathe([(0, low_m), (radius_m, low_m), (radius_m, high_m), (0, high_m)])


def ring(inner_m, outer_m, low_m, high_m):
    """A short tube."""
    return lathe([(inner_m, low_m), (outer_m, low_m), (outer_m, high_m), (inner_m, high_m), (inner_m, low_m)])


def joined(parts):
    """Several Solids as one."""
    first = np.cumsum([0, *(len(p.position_m) for p in parts[:-1])])
    whole = {name: np.concatenate([getattr(p, name) for p in parts]) for name in ("position_m", "normal", "uv", "dark")}
    return Solid(**whole, faces=np.concatenate([p.faces + k for p, k in zip(parts, first, strict=True)]))
