"""Outlines of solids against their volumes' meshes (trimesh) seen from the same direction."""

import numpy as np
import pytest
import trimesh
from scipy.spatial import ConvexHull

from rimfall.vessel.outline import END, SIDE, outlines
from rimfall.vessel.solids import Solid, direction, turn_to
from tests.tables import each_row

ASLANT = (0.3, -0.5, 0.8)
PLACE = (4.0, -3.0, 10.0)
SOLIDS = {
    "cylinder": ({"radius_m": 3.0, "length_m": 8.0}, lambda: trimesh.creation.cylinder(3.0, 8.0, sections=48)),
    "cylinder_shell": ({"radius_m": 3.0, "length_m": 8.0}, lambda: trimesh.creation.cylinder(3.0, 8.0, sections=48)),
    "box": ({"size_m": (2.0, 5.0, 9.0)}, lambda: trimesh.creation.box((2.0, 5.0, 9.0))),
    "sphere": ({"radius_m": 4.0}, lambda: trimesh.creation.icosphere(4, 4.0)),
    "torus": ({"radius_m": 20.0, "tube_radius_m": 3.0}, lambda: trimesh.creation.torus(20.0, 3.0, 48, 24)),
    "cone": ({"radius_m": 3.0, "length_m": 8.0}, lambda: _cone()),
}


def _cone():
    cone = trimesh.creation.cone(3.0, 8.0, sections=48)
    cone.apply_translation((0.0, 0.0, -4.0))
    return cone


def area(polygon):
    x, y = polygon.T
    return abs(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1))) / 2


@each_row(("kind", "view"), [(kind, view) for kind in SOLIDS for view in (SIDE, END)])
def test_an_outline_is_what_the_mesh_covers(kind, view):
    """Its area (scipy calls that of a flat hull its volume) and its extremes are those of the hull of the mesh's corners."""
    sizes, made = SOLIDS[kind]
    solid = Solid(kind, 1.0, PLACE, ASLANT, **sizes)
    mesh = made()
    corners = (mesh.vertices @ turn_to(direction(ASLANT)).T + PLACE) @ view.T
    outer = outlines(solid, view)[0]
    assert area(outer) == pytest.approx(ConvexHull(corners).volume, rel=0.01)
    for side in (np.min, np.max):
        assert side(outer, axis=0) == pytest.approx(side(corners, axis=0), abs=0.05)


def test_a_ring_is_seen_through_from_its_end_alone():
    ring = Solid("torus", 1.0, (0.0, 0.0, 0.0), radius_m=20.0, tube_radius_m=3.0)
    assert [len(outlines(ring, view)) for view in (SIDE, END)] == [1, 2]
    assert np.hypot(*outlines(ring, END)[1].T) == pytest.approx(17.0)


def test_what_has_no_breadth_is_a_line_or_a_point():
    assert outlines(Solid("point", 1.0, PLACE), SIDE)[0] == pytest.approx(np.array([[10.0, 4.0]]))
    rod = Solid("rod", 1.0, (0.0, 0.0, 0.0), (1.0, 0.0, 0.0), length_m=10.0)
    assert outlines(rod, SIDE)[0] == pytest.approx(np.array([[0.0, -5.0], [0.0, 5.0]]))
    assert outlines(Solid("ring", 1.0, (0.0, 0.0, 0.0), radius_m=5.0), SIDE)[0][:, 1] == pytest.approx([-5.0, 5.0])
