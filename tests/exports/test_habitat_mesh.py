"""The habitat's meshes against closed forms of solid geometry; trimesh measures areas and volumes."""

import math
from importlib import resources

import numpy as np
import pytest
import trimesh

from rimfall import shapes
from rimfall.exports import habitat_mesh
from rimfall.exports.palette import linear
from rimfall.physics.spin import steady
from rimfall.scene.reading import read
from tests.scene.documents import trace_of
from tests.tables import each_row

SPIN = steady(0.3)
LIFT_M = 0.002
DRUM = shapes.Cylinder(56.0, SPIN, width_m=14.0)
ROOM = shapes.Cylinder(56.0, SPIN, width_m=14.0, ceiling_m=3.0, hub_radius_m=4.0)
SPHERE = shapes.Sphere(20.0, SPIN, hub_radius_m=None)
FLOORS = tuple(shapes.Floor(f"pod {i}", 30.0, 0.7 * i, 8.0, 5.0, 2.5 if i else None) for i in range(3))
EVERY = [
    DRUM,
    ROOM,
    shapes.Cylinder(0.1, SPIN),
    shapes.Cylinder(100_000.0, SPIN, width_m=10.0),
    shapes.Torus(56.0, SPIN, tube_radius_m=6.0),
    shapes.Torus(56.0, SPIN, tube_radius_m=28.0),
    SPHERE,
    shapes.Sphere(20.0, SPIN, hub_radius_m=2.0),
    shapes.Craft(30.0, SPIN, floors=FLOORS),
    shapes.Turntable(0.3, SPIN, 9.81),
]


def named(habitat):
    """Name -> trimesh of each part, corners as they are."""
    return {
        m.name: trimesh.Trimesh(m.position_m, m.faces, vertex_normals=m.normal, process=False)
        for m in habitat_mesh.meshes(habitat)
    }


def joined(*parts):
    """Parts as one solid, corners that fall together made one."""
    whole = trimesh.util.concatenate(parts)
    whole.merge_vertices(merge_norm=True, digits_vertex=6)
    return whole


@each_row("habitat", EVERY)
def test_meshes_are_sound(habitat):
    found = habitat_mesh.meshes(habitat)
    assert len({m.name for m in found}) == len(found)
    for mesh in found:
        assert np.all(np.isfinite(mesh.position_m))
        assert np.linalg.norm(mesh.normal, axis=1) == pytest.approx(1.0, abs=1e-12)
        assert np.all((np.array(mesh.colour) > 0) & (np.array(mesh.colour) <= 1))
        assert sorted(set(mesh.faces.ravel().tolist()) - set(range(len(mesh.position_m)))) == []
        a, b, c = (mesh.position_m[mesh.faces[:, k]] for k in range(3))
        way = np.cross(b - a, c - a)
        assert np.linalg.norm(way, axis=1).min() > 0
        shown = np.einsum("fi,fki->fk", way / np.linalg.norm(way, axis=1, keepdims=True), mesh.normal[mesh.faces])
        assert shown.min() > 0.98, "the side that is drawn is the one the normals are on"


def test_a_drum_closes_round_its_room():
    parts = named(DRUM)
    assert set(parts) == {"deck", "wall_fore", "wall_aft", "spinward"}
    room = joined(parts["deck"], parts["wall_fore"], parts["wall_aft"])
    assert room.is_watertight
    assert room.is_winding_consistent, "all of it is seen from inside"
    # a solid seen from inside has a negative volume
    assert room.volume == pytest.approx(-math.pi * 56.0**2 * 14.0, rel=2e-4)
    assert parts["deck"].area == pytest.approx(2 * math.pi * 56.0 * 14.0, rel=1e-4)


def test_behind_a_ceiling_the_room_is_a_ring():
    parts = named(ROOM)
    room = joined(*(parts[name] for name in ("deck", "ceiling", "wall_fore", "wall_aft")))
    assert room.is_watertight
    assert room.is_winding_consistent, "all of it is seen from inside"
    assert room.volume == pytest.approx(-math.pi * (56.0**2 - 53.0**2) * 14.0, rel=2e-4)
    hub = parts["hub"].vertices
    assert np.hypot(hub[:, 0], hub[:, 1]) == pytest.approx(4.0, abs=1e-12)


@each_row(("radius_m", "within_m"), [(0.1, 1e-3), (5.0, 0.0021), (56.0, 0.0021), (4000.0, 0.0005 * 4000)])
def test_a_deck_s_facets_stay_near_the_arc(radius_m, within_m):
    deck = named(shapes.Cylinder(radius_m, SPIN, width_m=1.0))["deck"]
    assert np.hypot(*deck.vertices[:, :2].T) == pytest.approx(radius_m, rel=1e-12)
    edges = deck.vertices[deck.edges_unique].mean(axis=1)
    assert radius_m - np.hypot(edges[:, 0], edges[:, 1]).min() < within_m
    assert len(deck.vertices) <= 2 * 720


def test_a_sphere_and_its_hub():
    ball = named(SPHERE)["deck"]
    assert joined(ball).is_watertight
    assert joined(ball).is_winding_consistent
    assert joined(ball).volume == pytest.approx(-4 / 3 * math.pi * 20.0**3, rel=1e-3)
    assert np.linalg.norm(ball.vertices, axis=1) == pytest.approx(20.0, rel=1e-12)
    parts = named(shapes.Sphere(20.0, SPIN, hub_radius_m=2.0))
    bead = joined(parts["deck"], parts["hub"])
    assert bead.bounds[1, 2] == pytest.approx(math.sqrt(20.0**2 - 2.0**2))
    # what is left of a ball bored through: the volume of a ball as high as the hole (Cavalieri)
    assert -bead.volume == pytest.approx(math.pi / 6 * (2 * bead.bounds[1, 2]) ** 3, rel=2e-3)


@each_row("tube_m", [6.0, 28.0])
def test_a_torus_is_deck_and_ceiling(tube_m):
    parts = named(shapes.Torus(56.0, SPIN, tube_radius_m=tube_m))
    ring = joined(parts["deck"], parts["ceiling"])
    assert -ring.volume == pytest.approx(2 * math.pi**2 * (56.0 - tube_m) * tube_m**2, rel=3e-3)
    assert ring.area == pytest.approx(4 * math.pi**2 * (56.0 - tube_m) * tube_m, rel=3e-3)
    rho = np.hypot(parts["deck"].vertices[:, 0], parts["deck"].vertices[:, 1])
    assert rho.min() > 56.0 - tube_m - 1e-9
    assert rho.max() == pytest.approx(56.0)


def test_flat_floors_face_the_axis_and_their_ceilings_the_floor():
    parts = named(shapes.Craft(30.0, SPIN, floors=FLOORS))
    assert [n for n in parts if n.startswith("ceiling")] == ["ceiling_00001", "ceiling_00002"]
    for i in range(3):
        toward = -np.array([math.cos(0.7 * i), math.sin(0.7 * i), 0.0])
        floor = parts[f"floor_{i:05d}"]
        assert floor.area == pytest.approx(40.0)
        assert floor.face_normals == pytest.approx(np.array([toward, toward]))
        assert floor.vertices @ toward == pytest.approx(-30.0)
        if i:
            ceiling = parts[f"ceiling_{i:05d}"]
            assert ceiling.face_normals == pytest.approx(-np.array([toward, toward]))
            assert ceiling.vertices @ toward == pytest.approx(-27.5)


def test_a_turntable_is_a_plate_that_one_looks_down_on():
    parts = named(shapes.Turntable(0.3, SPIN, 9.81))
    assert parts["turntable"].face_normals == pytest.approx(
        np.broadcast_to([0, 0, 1.0], (len(parts["turntable"].faces), 3))
    )
    assert parts["turntable"].area == pytest.approx(math.pi * 0.3**2, rel=5e-3)
    assert parts["rim"].bounds[:, 2] == pytest.approx([-0.018, 0.0])


@each_row("habitat", [DRUM, SPHERE, shapes.Cylinder(4000.0, SPIN)])
def test_the_arrow_lies_just_over_the_facets_and_points_spinward(habitat):
    parts = named(habitat)
    arrow, deck = parts["spinward"].vertices, parts["deck"]
    near = np.linalg.norm(deck.triangles_center[:, 1:2], axis=1) < 5.0 + 0.02 * habitat.radius_m
    near &= deck.triangles_center[:, 0] > 0
    # the deck is convex seen from inside: the nearest of its planes is that of the facet underneath
    over = np.einsum("vfi,fi->vf", arrow[:, None] - deck.triangles[near][None, :, 0], deck.face_normals[near])
    assert over.min() >= LIFT_M - 1e-6
    assert over.min(axis=1).max() <= LIFT_M + 0.003
    along = habitat.radius_m * np.arctan2(arrow[:, 1], arrow[:, 0])
    assert (along.min(), along.max()) == pytest.approx((-3.2, 3.2)), "6.4 m long, its middle at along = 0"
    assert arrow[np.argmax(along), 2] == 0, "a point at the spinward end"
    assert 0 < along[np.argmax(np.abs(arrow[:, 2]))] < 3.2, "and the head at that end"


def test_an_arrow_on_a_turntable_points_the_way_it_turns():
    arrow = named(shapes.Turntable(3.0, SPIN, 9.81))["spinward"].vertices
    turn = np.arctan2(arrow[:, 1], arrow[:, 0])
    rho = np.hypot(arrow[:, 0], arrow[:, 1])
    assert abs(rho[np.argmax(turn)] - 2.25) < 1e-9, "the tip is on the middle line"
    assert np.ptp(rho[turn > 0.4 * turn.max()]) > np.ptp(rho[turn < 0])


def test_an_open_drum_is_as_wide_as_is_said():
    assert named(shapes.Cylinder(10.0, SPIN))["deck"].bounds[:, 2] == pytest.approx([-25.0, 25.0])
    assert named(shapes.Cylinder(500.0, SPIN))["deck"].bounds[:, 2] == pytest.approx([-60.0, 60.0])
    assert set(named(shapes.Cylinder(500.0, SPIN))) == {"deck", "spinward"}


def test_a_ramp_rises_over_its_foot():
    trace = trace_of(read(resources.files("rimfall.scene.examples").joinpath("down-the-ramp.json").read_bytes()))
    found = habitat_mesh.ramps(trace, "ramp_{:05d}".format)
    assert found
    for mesh in found:
        assert mesh.both_sides
        rho = np.hypot(mesh.position_m[:, 0], mesh.position_m[:, 1])
        assert rho[2:].max() < rho[:2].min(), "the top is nearer the axis"
        toward = -mesh.position_m[0] * [1, 1, 0]
        assert mesh.normal[0] @ toward > 0


def test_colours_are_linear():
    # sRGB 50 % grey is 21.4 % of white's light (IEC 61966-2-1)
    assert linear("#808080") == pytest.approx((0.2158605,) * 3, abs=1e-6)
    assert linear("#0A0000")[0] == pytest.approx(10 / 255 / 12.92)
    assert linear("#FFFFFF") == (1.0, 1.0, 1.0)
