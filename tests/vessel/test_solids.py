"""Inertia of each solid against integrals of its own shape, exact but for rounding, and against fine meshes of trimesh."""

import math

import numpy as np
import pytest
import trimesh

from rimfall.vessel.bodies import joined
from rimfall.vessel.solids import SQUARES, Solid, body_of, reach_m, turn_to
from tests.tables import each_row

EXACT, MESH = 1e-12, 1e-3
R, L, B, SIZE = 2.3, 5.1, 0.7, (1.3, 2.9, 4.7)
SIZES = {"radius_m": R, "length_m": L, "tube_radius_m": B, "size_m": SIZE}
KG = 37.0

# Gauss' nodes and weights integrate what is integrated here, polynomials of low degree, exactly; round the axis eight steps do.
_X, _W = np.polynomial.legendre.leggauss(12)
_ROUND = np.arange(8) * math.pi / 4


def nodes(low, high):
    return (low + high) / 2 + (high - low) / 2 * _X, (high - low) / 2 * _W


def turned(rho, z, weights):
    """Points (n, 3) and weights (n,) of points of a half plane turned about z; weights without the rho of the circle."""
    points = [np.stack([rho * math.cos(a), rho * math.sin(a), z], axis=1) for a in _ROUND]
    return np.concatenate(points), np.tile(weights * rho, 8)


def grid(rho, z):
    (r, wr), (h, wh) = rho, z
    return turned(np.repeat(r, len(h)), np.tile(h, len(r)), np.outer(wr, wh).ravel())


def tube(shares):
    """Of a torus: circles of the tube, r from 0 to b or b alone; the integrand has a cosine's powers up to three: sixteen steps do."""
    steps = np.arange(16) * math.pi / 8
    rho, z, weight = [], [], []
    for share, w in zip(*shares, strict=True):
        rho += list(R + share * np.cos(steps))
        z += list(share * np.sin(steps))
        weight += [w * share] * 16
    return turned(np.array(rho), np.array(z), np.array(weight))


def cone():
    """Its radius falls from R at the bottom to 0 at the top."""
    rho, z, weight = [], [], []
    for h, wh in zip(*nodes(-L / 2, L / 2), strict=True):
        r, wr = nodes(0, R * (0.5 - h / L))
        rho, z, weight = rho + list(r), z + [h] * len(r), weight + list(wr * wh)
    return turned(np.array(rho), np.array(z), np.array(weight))


def ball(shares):
    rho, z, weight = [], [], []
    for r, wr in zip(*shares, strict=True):
        # over cos of the polar angle: sin is no polynomial, but only its square is met
        c, wc = nodes(-1, 1)
        rho, z = rho + list(r * np.sqrt(1 - c * c)), z + list(r * c)
        weight += list(wr * r * r * wc)
    points = [np.stack([np.array(rho) * math.cos(a), np.array(rho) * math.sin(a), z], axis=1) for a in _ROUND]
    return np.concatenate(points), np.tile(weight, 8)


def box():
    sides = [nodes(-side / 2, side / 2) for side in SIZE]
    points = np.array(np.meshgrid(*[x for x, _ in sides], indexing="ij")).reshape(3, -1).T
    return points, np.einsum("i,j,k->ijk", *[w for _, w in sides]).ravel()


ONE, FLAT = (np.array([R]), np.array([1.0])), (np.array([0.0]), np.array([1.0]))
SAMPLES = {
    "rod": lambda: (np.stack([0 * _X, 0 * _X, L / 2 * _X], axis=1), _W),
    "ring": lambda: grid(ONE, FLAT),
    "disc": lambda: grid(nodes(0, R), FLAT),
    "cylinder": lambda: grid(nodes(0, R), nodes(-L / 2, L / 2)),
    "cylinder_shell": lambda: grid(ONE, nodes(-L / 2, L / 2)),
    "box": box,
    "sphere": lambda: ball(nodes(0, R)),
    "sphere_shell": lambda: ball(ONE),
    "torus": lambda: tube(nodes(0, B)),
    "torus_shell": lambda: tube((np.array([B]), np.array([1.0]))),
    "cone": cone,
}


def inertia_of(points, weights):
    """Mass 1: the centre (3,) and the inertia (3, 3) about it."""
    weights = weights / weights.sum()
    centre = weights @ points
    away = points - centre
    return centre, np.einsum("n,nk,nk->", weights, away, away) * np.eye(3) - np.einsum(
        "n,ni,nj->ij", weights, away, away
    )


def solid(kind, **more):
    return Solid(kind, KG, **{"place_m": (0.0, 0.0, 0.0)} | SIZES | more)


@each_row("kind", SAMPLES)
def test_a_solid_is_its_own_integral(kind):
    body = body_of(solid(kind))
    centre, inertia = inertia_of(*SAMPLES[kind]())
    assert np.abs(body.inertia_kg_m2 / KG - inertia).max() <= EXACT * np.abs(inertia).max()
    assert np.abs(body.centre_m - centre).max() <= EXACT * L


def test_every_solid_has_its_integral():
    assert {*SAMPLES, "point"} == set(SQUARES)
    assert not body_of(solid("point")).inertia_kg_m2.any()


def shell(mesh):
    """A surface as points and weights: the middles of each triangle's sides, which integrate squares exactly."""
    a, b, c = mesh.triangles.transpose(1, 0, 2)
    return np.concatenate([(a + b) / 2, (b + c) / 2, (c + a) / 2]), np.tile(mesh.area_faces / 3, 3)


def side_of(mesh):
    """The wall of a cylinder without its ends."""
    mesh.update_faces(np.abs(mesh.face_normals[:, 2]) < 0.5)
    return mesh


MADE = trimesh.creation
THIN = 1e-3
MESHES = {
    "rod": lambda: MADE.cylinder(THIN, L),
    "ring": lambda: MADE.torus(R, THIN, 256, 16),
    "disc": lambda: MADE.cylinder(R, THIN, sections=256),
    "cylinder": lambda: MADE.cylinder(R, L, sections=256),
    "box": lambda: MADE.box(SIZE),
    "sphere": lambda: MADE.icosphere(5, R),
    "torus": lambda: MADE.torus(R, B, 256, 128),
    "cone": lambda: MADE.cone(R, L, sections=256),
}
SHELLS = {
    "cylinder_shell": lambda: side_of(MADE.cylinder(R, L, sections=256)),
    "sphere_shell": lambda: MADE.icosphere(5, R),
    "torus_shell": lambda: MADE.torus(R, B, 256, 128),
}


@each_row("kind", [*MESHES, *SHELLS])
def test_a_solid_is_a_fine_mesh(kind):
    if kind in MESHES:
        mesh = MESHES[kind]()
        inertia = mesh.moment_inertia / mesh.volume
    else:
        _, inertia = inertia_of(*shell(SHELLS[kind]()))
    assert np.abs(body_of(solid(kind)).inertia_kg_m2 / KG - inertia).max() <= MESH * np.abs(inertia).max()


@each_row("axis", [(0, 0, 1), (0, 0, -1), (1, 0, 0), (0.3, -2.0, 0.5), (1e-9, 0, -1), (3e5, 1e5, -1e5)])
def test_a_turn_takes_z_to_an_axis_by_the_shortest_way(axis):
    unit = np.array(axis) / np.linalg.norm(axis)
    turn = turn_to(unit)
    assert np.abs(turn @ turn.T - np.eye(3)).max() <= 1e-15 * 4
    assert np.linalg.det(turn) == pytest.approx(1, abs=1e-15 * 8)
    assert np.abs(turn @ [0, 0, 1] - unit).max() <= 1e-15 * 4
    angle = math.acos(np.clip((np.trace(turn) - 1) / 2, -1, 1))
    assert angle == pytest.approx(math.acos(np.clip(unit[2], -1, 1)), abs=1e-7)


@each_row("kind", SAMPLES)
def test_a_solid_turns_with_its_axis(kind):
    """Points of it turned the same way have the same inertia; a cone's centre goes along."""
    axis, place = (0.4, -1.1, -0.7), (3.0, -8.0, 5.0)
    points, weights = SAMPLES[kind]()
    turn = turn_to(np.array(axis) / np.linalg.norm(axis)) if "sphere" not in kind else np.eye(3)
    centre, inertia = inertia_of(points @ turn.T + place, weights)
    body = body_of(solid(kind, axis=axis, place_m=place))
    assert np.abs(body.inertia_kg_m2 / KG - inertia).max() <= EXACT * np.abs(inertia).max()
    assert np.abs(body.centre_m - centre).max() <= EXACT * 10


def test_a_sphere_and_half_a_cylinder_s_length_add_up_as_steiner_has_it():
    """Two halves of a cylinder, joined, are the cylinder."""
    halves = [body_of(Solid("cylinder", KG / 2, (0, 0, z), radius_m=R, length_m=L / 2)) for z in (L / 4, -L / 4)]
    whole, both = body_of(solid("cylinder")), joined(halves)
    assert both.mass_kg == KG
    assert np.abs(both.inertia_kg_m2 - whole.inertia_kg_m2).max() <= EXACT * whole.inertia_kg_m2.max()


TILTED = (1.0, 0.0, 1.0)  # half a right angle
REACHES = [
    ("point", {"radius_m": 0.0}, 5.0),
    ("rod", {"axis": (1, 0, 0)}, math.hypot(3 + L / 2, 4)),
    ("rod", {}, 5.0),
    ("ring", {}, 5.0 + R),
    ("ring", {"axis": (0, 0, -7)}, 5.0 + R),
    ("torus", {}, 5.0 + R + B),
    ("sphere", {}, 5.0 + R),
    ("box", {}, math.hypot(3 + SIZE[0] / 2, 4 + SIZE[1] / 2)),
    ("cylinder", {"axis": (1, 0, 0)}, math.hypot(3 + L / 2, 4 + R)),
    ("cone", {"axis": (1, 0, 0), "place_m": (10.0, 0.0, 0.0)}, 10 + L / 2),
    ("cone", {"axis": (-1, 0, 0), "place_m": (10.0, 0.0, 0.0)}, math.hypot(10 + L / 2, R)),
    ("disc", {"axis": TILTED, "place_m": (0.0, 0.0, 4.0)}, R),
]


@each_row(("kind", "more", "reach"), REACHES)
def test_how_far_a_solid_reaches_from_the_axis(kind, more, reach):
    has = {"rod": ("length_m",), "torus": ("radius_m", "tube_radius_m"), "box": ("size_m",)} | dict.fromkeys(
        ("cylinder", "cone"), ("radius_m", "length_m")
    )
    sizes = {name: SIZES[name] for name in has.get(kind, ("radius_m",)) if kind != "point"}
    placed = {"place_m": (3.0, 4.0, 7.0)} | sizes | more
    assert reach_m(Solid(kind, KG, **placed)) == pytest.approx(reach, rel=1e-5)
