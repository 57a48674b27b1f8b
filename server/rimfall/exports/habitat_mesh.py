"""The habitat as meshes: what the page draws of it, without the parts that are only light or line.

All in the rotating frame's axes, metres. Every mesh shows one side, the one toward the room, so that from outside one looks in;
ramps show both. What has no edges in the document gets some here: an open drum is OPEN_HALVES times its radius wide to either
side (at most OPEN_MOST_M), a craft's floors end at their rectangles and a turntable is a thin plate. A corner lies on the true
surface, and the middle of a facet above it, toward the room, by at most FACET_M as far as MOST_ROUND facets reach.

A profile is (rho, z) along a line across the ground, swept round the axis; its side that shows is on the left of whoever walks
along it looking spinward (normal = spinward x the way along), so the order of its points says which side that is.
"""

import math

import numpy as np

from ..physics.habitat import Habitat
from ..physics.shapes import Craft, Sphere, Torus, Turntable
from .sampled_scene import Mesh
from .stage_colours import linear

FACET_M = 0.002
MOST_ROUND, LEAST_ROUND = 720, 96
SHELL_ROUND, SHELL_ACROSS = 240, 96  # a sphere or a tube is fine both ways: facets round the axis, and from rim to rim
OPEN_HALVES, OPEN_MOST_M = 2.5, 60.0
MARK_M, MARK_LIFT_M = 6.4, 0.002  # the painted arrow: its length, and how high it lies over the facets
SHAFT_ROWS, HEAD_ROWS = 25, 9
# colours of the page's stages
DECK, CEILING, WALL, HUB, MARK = "#51514D", "#A8ACA2", "#7E8886", "#8A9290", "#B9B5A6"


def meshes(habitat):
    """The parts of a habitat of rimfall.physics as a list of Mesh, the arrow that points spinward last."""
    makers = {Habitat: _drum, Torus: _torus, Sphere: _sphere, Craft: _craft, Turntable: _turntable}
    return makers[type(habitat)](habitat)


def ramps(trace):
    """The ramps of a trace's rolls as a list of Mesh, each named by its motion's number in the scene."""
    corners = [(i, traced.plan.ramp_m) for i, traced in enumerate(trace.motions) if traced.plan.ramp_m is not None]
    return [_quad(f"ramp_{i:05d}", corner, HUB, both_sides=True) for i, corner in corners]


def _drum(habitat):
    radius, half = habitat.radius_m, _half_width_m(habitat)
    around = _around(radius, MOST_ROUND)
    inner = (habitat.hub_radius_m or 0.0) if habitat.ceiling_m is None else radius - habitat.ceiling_m
    deck = np.array([[radius, half], [radius, -half]])
    out = [_swept("deck", around, deck, DECK)]
    if habitat.ceiling_m is not None:
        out.append(_swept("ceiling", around, _column(inner, half), CEILING))
    if habitat.hub_radius_m is not None:
        out.append(_swept("hub", around, _column(habitat.hub_radius_m, half), HUB))
    if habitat.width_m is not None:
        out.append(_swept("wall_fore", around, np.array([[inner, half], [radius, half]]), WALL))
        out.append(_swept("wall_aft", around, np.array([[radius, -half], [inner, -half]]), WALL))
    return [*out, _mark_round(radius, around, deck)]


def _half_width_m(habitat):
    if habitat.width_m is not None:
        return habitat.width_m / 2
    return min(OPEN_HALVES * habitat.radius_m, OPEN_MOST_M)


def _torus(habitat):
    middle, tube = habitat.radius_m - habitat.tube_radius_m, habitat.tube_radius_m
    around = _around(habitat.radius_m, SHELL_ROUND)
    half = _around(tube, 2 * SHELL_ACROSS) // 2
    deck = _arc(middle, tube, math.pi / 2, half)
    roof = _arc(middle, tube, math.pi / 2, half) * [-1, -1] + [2 * middle, 0]
    return [
        _swept("deck", around, deck, DECK, (middle, 0.0)),
        _swept("ceiling", around, roof, CEILING, (middle, 0.0)),
        _mark_round(habitat.radius_m, around, deck),
    ]


def _sphere(habitat):
    radius, hub = habitat.radius_m, habitat.hub_radius_m or 0.0
    around = _around(radius, SHELL_ROUND)
    end = math.acos(hub / radius)
    deck = _arc(0.0, radius, end, _around(radius, 2 * SHELL_ACROSS) // 2)
    out = [_swept("deck", around, deck, DECK, (0.0, 0.0))]
    if hub:
        out.append(_swept("hub", around, _column(hub, radius * math.sin(end)), HUB))
    return [*out, _mark_round(radius, around, deck)]


def _craft(habitat):
    out, marks = [], []
    for i, floor in enumerate(habitat.floors):
        out.append(_quad(f"floor_{i:05d}", habitat.corners(i), DECK))
        if floor.ceiling_m is not None:
            out.append(_quad(f"ceiling_{i:05d}", habitat.corners(i, floor.ceiling_m)[::-1], CEILING))
        long = min(MARK_M, floor.length_m / 2)
        marks.append(_mark_flat(f"spinward_{i:05d}", habitat.chart(i), long, min(long, floor.width_m)))
    return [*out, *marks]


def _turntable(habitat):
    radius = habitat.radius_m
    around = _around(radius, MOST_ROUND)
    thick = min(0.05, 0.06 * radius)
    top = _swept("platform", around, np.array([[radius, 0.0], [0.0, 0.0]]), DECK)
    rim = _swept("rim", around, _column(radius, thick / 2) - [0, thick / 2], WALL)
    long = min(MARK_M, radius / 2)
    s, across = _arrow(long, long)
    turn, rho = s / (0.75 * radius), 0.75 * radius + across
    corners = np.stack([rho * np.cos(turn), rho * np.sin(turn), np.full_like(rho, _lift(long))], -1)
    return [top, rim, _strip("spinward", corners, np.broadcast_to([0.0, 0.0, 1.0], corners.shape))]


def _around(radius_m, most):
    """Facets of a whole circle, a multiple of four: as many as keep their middles within FACET_M, at most `most`."""
    fine = math.pi / math.acos(max(1.0 - FACET_M / radius_m, 0.0))
    return 4 * math.ceil(min(max(fine, LEAST_ROUND), most) / 4)


def _column(rho, half):
    """Profile of a cylinder that shows its outside."""
    return np.array([[rho, -half], [rho, half]])


def _arc(middle, radius, end_rad, facets):
    """Profile (facets + 1, 2) of the outer part of a circle about (middle, 0) that shows its inside; ends on the axis are exactly there."""
    angle = np.linspace(end_rad, -end_rad, facets + 1)
    rho = middle + radius * np.cos(angle)
    return np.stack([np.where(np.abs(rho) < 1e-12 * (middle + radius), 0.0, rho), radius * np.sin(angle)], -1)


def _swept(name, around, profile, colour, centre=None):
    """The profile (P, 2) swept round the axis in `around` facets. Normals point to the centre (rho, z) of a round profile,
    or stand on a straight one."""
    if centre is None:
        along = profile[-1] - profile[0]
        normal = np.broadcast_to(np.array([along[1], -along[0]]) / math.hypot(*along), profile.shape)
    else:
        normal = np.asarray(centre) - profile
        normal = normal / np.linalg.norm(normal, axis=1, keepdims=True)
    turn = 2 * math.pi * np.arange(around) / around
    position, normals = _turned(profile, turn), _turned(normal, turn)
    return _mesh(name, position, _grid_faces(around, len(profile)), normals, colour)


def _turned(profile, turn):
    """(rho, z) (P, 2) at angles (A,) -> (A * P, 3)."""
    rho, z = profile.T
    whole = np.stack(
        [np.outer(np.cos(turn), rho), np.outer(np.sin(turn), rho), np.broadcast_to(z, (len(turn), len(z)))], -1
    )
    return whole.reshape(-1, 3)


def _grid_faces(around, across):
    """Faces (F, 3) of a closed band of `around` columns of `across` corners."""
    here = np.arange(around)[:, None] * across + np.arange(across - 1)
    there = (np.arange(around)[:, None] + 1) % around * across + np.arange(across - 1)
    return np.stack([here, there, there + 1, here, there + 1, here + 1], -1).reshape(-1, 3)


def _quad(name, corners, colour, both_sides=False):
    """Four corners (4, 3), anticlockwise seen from the side that shows, as two faces."""
    normal = np.cross(corners[1] - corners[0], corners[3] - corners[0])
    normals = np.broadcast_to(normal / np.linalg.norm(normal), corners.shape)
    return _mesh(name, corners, np.array([[0, 1, 2], [0, 2, 3]]), normals, colour, both_sides)


def _mark_round(radius_m, around, deck):
    """The arrow on ground round the axis, spinward through along = 0 and axial = 0; `deck`: the ground's profile."""
    long = min(MARK_M, radius_m / 2)
    s, across = _arrow(long, np.ptp(deck[:, 1]))
    turn, facet = s / radius_m, 2 * math.pi / around
    # on the facets, not on the arc: their middles are nearer the axis
    chord = math.cos(facet / 2) / np.cos(turn % facet - facet / 2)
    rho = np.interp(across, deck[::-1, 1], deck[::-1, 0]) * chord - _lift(long)
    corners = np.stack([rho * np.cos(turn), rho * np.sin(turn), across], -1)
    up = np.stack([-np.cos(turn), -np.sin(turn), np.zeros_like(turn)], -1)
    return _strip("spinward", corners, up)


def _mark_flat(name, chart, long_m, wide_m):
    """The arrow in the middle of a flat floor."""
    s, across = _arrow(long_m, wide_m)
    corners = chart.position(np.stack([s, np.full_like(s, _lift(long_m)), across], -1))
    return _strip(name, corners, np.broadcast_to(chart.axes_at(None)[1], corners.shape))


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
    here = first[:, None] * 3 + np.arange(2)
    faces = np.stack([here, here + 4, here + 1, here, here + 3, here + 4], -1).reshape(-1, 3)
    return _mesh(name, corners.reshape(-1, 3), faces, np.asarray(up).reshape(-1, 3), MARK)


def _mesh(name, position, faces, normal, colour, both_sides=False):
    """A Mesh of the faces that have an area: on the axis and at an arrow's tip corners fall together."""
    a, b, c = (position[faces[:, k]] for k in range(3))
    area = np.linalg.norm(np.cross(b - a, c - a), axis=1)
    kept = faces[area > 1e-9 * area.max()]
    return Mesh(name, position, kept, np.array(normal), both_sides, linear(colour))
