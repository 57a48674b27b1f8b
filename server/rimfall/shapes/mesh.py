"""Meshes of a habitat's parts, in the turning frame's axes, metres: profiles swept round the axis, rectangles, the painted arrow.

Every mesh shows one side, the one toward the room, so that from outside one looks in. A corner lies on the true surface, and the
middle of a facet above it, toward the room, by at most FACET_M as far as MOST_ROUND facets reach.

A profile is (rho, z) along a line across the ground, swept round the axis; its side that shows is on the left of whoever walks
along it looking spinward (normal = spinward x the way along), so the order of its points says which side that is.
"""

import math
from dataclasses import dataclass

import numpy as np

FACET_M = 0.002
MOST_ROUND, LEAST_ROUND = 720, 96
SHELL_ROUND, SHELL_ACROSS = 240, 96  # a sphere or a tube is fine both ways: facets round the axis, and from rim to rim
MARK_M, MARK_LIFT_M = 6.4, 0.002  # the painted arrow: its length, and how high it lies over the facets
SHAFT_ROWS, HEAD_ROWS = 25, 9
DECK, CEILING, WALL, HUB, MARK = "deck", "ceiling", "wall", "hub", "mark"  # materials


@dataclass(frozen=True)
class Mesh:
    """A part of the habitat. material: one of those above; position_m (V, 3); faces (F, 3) of vertex numbers, anticlockwise seen from
    the side that shows; normal (V, 3) unit; both_sides: it has no inside."""

    name: str
    material: str
    position_m: np.ndarray
    faces: np.ndarray
    normal: np.ndarray
    both_sides: bool = False


def around(radius_m, most):
    """Facets of a whole circle, a multiple of four: as many as keep their middles within FACET_M, at most `most`."""
    fine = math.pi / math.acos(max(1.0 - FACET_M / radius_m, 0.0))
    return 4 * math.ceil(min(max(fine, LEAST_ROUND), most) / 4)


def column(rho, half):
    """Profile of a cylinder that shows its outside."""
    return np.array([[rho, -half], [rho, half]])


def arc(middle, radius, end_rad, facets):
    """Profile (facets + 1, 2) of the outer part of a circle about (middle, 0) that shows its inside; ends on the axis are exactly there."""
    angle = np.linspace(end_rad, -end_rad, facets + 1)
    rho = middle + radius * np.cos(angle)
    return np.stack([np.where(np.abs(rho) < 1e-12 * (middle + radius), 0.0, rho), radius * np.sin(angle)], -1)


def swept(name, material, facets, profile, centre=None):
    """The profile (P, 2) swept round the axis in `facets` facets. Normals point to the centre (rho, z) of a round profile, or
    stand on a straight one."""
    if centre is None:
        along = profile[-1] - profile[0]
        normal = np.broadcast_to(np.array([along[1], -along[0]]) / math.hypot(*along), profile.shape)
    else:
        normal = np.asarray(centre) - profile
        normal = normal / np.linalg.norm(normal, axis=1, keepdims=True)
    turn = 2 * math.pi * np.arange(facets) / facets
    return _mesh(name, material, _turned(profile, turn), _band(facets, len(profile)), _turned(normal, turn))


def _turned(profile, turn):
    """(rho, z) (P, 2) at angles (A,) -> (A * P, 3)."""
    rho, z = profile.T
    whole = np.stack(
        [np.outer(np.cos(turn), rho), np.outer(np.sin(turn), rho), np.broadcast_to(z, (len(turn), len(z)))], -1
    )
    return whole.reshape(-1, 3)


def _band(facets, across):
    """Faces (F, 3) of a closed band of `facets` columns of `across` corners."""
    column_0 = np.arange(facets)[:, None] * across + np.arange(across - 1)
    column_1 = (np.arange(facets)[:, None] + 1) % facets * across + np.arange(across - 1)
    return np.stack([column_0, column_1, column_1 + 1, column_0, column_1 + 1, column_0 + 1], -1).reshape(-1, 3)


def quad(name, material, corners, both_sides=False):
    """Four corners (4, 3), anticlockwise seen from the side that shows, as two faces."""
    normal = np.cross(corners[1] - corners[0], corners[3] - corners[0])
    normals = np.broadcast_to(normal / np.linalg.norm(normal), corners.shape)
    return _mesh(name, material, corners, np.array([[0, 1, 2], [0, 2, 3]]), normals, both_sides)


def mark_round(radius_m, facets, deck):
    """The arrow on ground round the axis, spinward through along = 0 and axial = 0; `deck`: the ground's profile."""
    long = min(MARK_M, radius_m / 2)
    s, across = _arrow(long, np.ptp(deck[:, 1]))
    turn, facet = s / radius_m, 2 * math.pi / facets
    # on the facets, not on the arc: their middles are nearer the axis
    chord = math.cos(facet / 2) / np.cos(turn % facet - facet / 2)
    rho = np.interp(across, deck[::-1, 1], deck[::-1, 0]) * chord - _lift(long)
    corners = np.stack([rho * np.cos(turn), rho * np.sin(turn), across], -1)
    up = np.stack([-np.cos(turn), -np.sin(turn), np.zeros_like(turn)], -1)
    return _strip("spinward", corners, up)


def mark_flat(name, chart, length_m, width_m):
    """The arrow in the middle of a flat floor."""
    long = min(MARK_M, length_m / 2)
    s, across = _arrow(long, min(long, width_m))
    corners = chart.position(np.stack([s, np.full_like(s, _lift(long)), across], -1))
    return _strip(name, corners, np.broadcast_to(chart.axes_at(None)[1], corners.shape))


def mark_table(radius_m):
    """The arrow round a table, at three quarters of its radius."""
    long = min(MARK_M, radius_m / 2)
    s, across = _arrow(long, long)
    turn, rho = s / (0.75 * radius_m), 0.75 * radius_m + across
    corners = np.stack([rho * np.cos(turn), rho * np.sin(turn), np.full_like(rho, _lift(long))], -1)
    return _strip("spinward", corners, np.broadcast_to([0.0, 0.0, 1.0], corners.shape))


def _lift(long_m):
    return min(MARK_LIFT_M, 0.02 * long_m)


def _arrow(long_m, wide_m):
    """An arrow's corners as (spinward, across), each (n, 3): rows along it, three corners a row; within wide_m."""
    half = min(long_m / 16, 0.4 * wide_m)
    shaft = np.linspace(-0.5, 0.25, SHAFT_ROWS)
    head = np.linspace(0.25, 0.5, HEAD_ROWS)
    s = long_m * np.concatenate([shaft, head])
    halves = half * np.concatenate([np.full(len(shaft), 0.32), 4 * (0.5 - head)])
    return np.broadcast_to(s[:, None], (len(s), 3)), halves[:, None] * np.array([1.0, 0.0, -1.0])


def _strip(name, corners, up):
    """The arrow's rows of three corners (n, 3, 3), with normals (n, 3, 3), as a Mesh seen from above."""
    first = np.delete(np.arange(len(corners) - 1), SHAFT_ROWS - 1)  # the shaft ends and the head begins at one place
    row = first[:, None] * 3 + np.arange(2)
    faces = np.stack([row, row + 4, row + 1, row, row + 3, row + 4], -1).reshape(-1, 3)
    return _mesh(name, MARK, corners.reshape(-1, 3), faces, np.asarray(up).reshape(-1, 3))


def _mesh(name, material, position, faces, normal, both_sides=False):
    """A Mesh of the faces that have an area: on the axis and at an arrow's tip corners fall together."""
    a, b, c = (position[faces[:, k]] for k in range(3))
    area = np.linalg.norm(np.cross(b - a, c - a), axis=1)
    return Mesh(name, material, position, faces[area > 1e-9 * area.max()], np.array(normal), both_sides)
