"""Cylinder, torus, sphere, floors, turntable and ramp: their surfaces, grounds and gravities."""

import math

import numpy as np
import pytest

from rimfall import shapes
from rimfall.physics.coordinates import FloorChart, RoundChart
from rimfall.physics.ramp import ramp_at
from rimfall.physics.spin import steady
from rimfall.shapes.pods import PodsPart
from tests.tables import each_row

OMEGA = 0.4


def craft(*floors):
    flat = [shapes.Floor(f"f{i}", *f) for i, f in enumerate(floors)]
    return shapes.Craft(24.0, steady(OMEGA), 0.0, tuple(flat))


PODS = craft((24.0, 0.0, 12.0, 6.0, 3.0), (24.0, 2.0, 10.0, 6.0, None))


def names(habitat, floor=0):
    return [s.name_at(np.array([30.0, 0.0, 0.0])) for s in habitat.surfaces(floor)]


def gaps(habitat, place, floor=0, radius_m=0.0):
    position = habitat.chart(floor).position(np.array(place))[:, None]
    return [float(s.gap(position, np.array([radius_m]))[0]) for s in habitat.surfaces(floor)]


def test_a_pod_is_a_box_whose_sides_are_edges():
    assert names(PODS) == ["floor", "ceiling", "edge", "edge", "edge", "edge"]
    assert gaps(PODS, (1.0, 1.2, 0.5)) == pytest.approx([1.2, 1.8, 7.0, 5.0, 3.5, 2.5])
    assert gaps(PODS, (1.0, 1.2, 0.5), radius_m=0.1) == pytest.approx([1.1, 1.7, 7.0, 5.0, 3.5, 2.5])


def test_floors_without_azimuths_share_the_whole_turn():
    """Three at 24 m are the corners of a triangle of equal sides, sqrt(3) 24 m long."""
    floors = [{"length_m": 12.0, "width_m": 6.0}] * 3
    three = PodsPart(radius_m=24.0, spin_rpm=4.0, floors=floors).habitat()
    a, b, c = (three.chart(i).position(np.zeros(3)) for i in range(3))
    assert [np.linalg.norm(v) for v in (a - b, b - c, c - a)] == pytest.approx([24.0 * math.sqrt(3)] * 3)


def test_a_turned_pod_is_the_same_box_turned():
    assert gaps(PODS, (1.0, 1.2, 0.5), floor=1)[0] == pytest.approx(1.2)
    assert names(PODS, 1)[1] == "edge"


def test_a_floor_right_across_the_axis_is_met_from_below():
    tug = craft((9.0, 0.0, 6.0, 4.0, None), (7.0, math.pi, 6.0, 4.0, None))
    assert names(tug) == ["floor", "floor", "edge", "edge", "edge", "edge"]
    assert gaps(tug, (0.0, 4.0, 0.0))[:2] == pytest.approx([4.0, 12.0])
    smaller = craft((9.0, 0.0, 6.0, 4.0, None), (7.0, math.pi, 5.0, 4.0, None))
    assert names(smaller)[1] == "edge"


def test_corners_lie_on_the_floor():
    corners = PODS.corners(1)
    chart = FloorChart(24.0, 2.0)
    assert chart.height(corners) == pytest.approx(np.zeros(4), abs=1e-12)
    assert sorted(chart.along(corners)) == pytest.approx([-5, -5, 5, 5])
    assert sorted(chart.axial(corners)) == pytest.approx([-3, -3, 3, 3])


def test_ground_heights_lie_on_the_ground():
    torus, sphere = shapes.Torus(56.0, steady(OMEGA), 0.0, 6.0), shapes.Sphere(56.0, steady(OMEGA))
    for habitat, axial in ((torus, 4.0), (sphere, 40.0)):
        place = (0.0, habitat.ground_height_m(axial), axial)
        assert gaps(habitat, place)[0] == pytest.approx(0.0, abs=1e-12)
    assert torus.ground_height_m(4.0) == pytest.approx(6.0 - math.sqrt(20.0))
    assert sphere.ground_height_m(40.0) == pytest.approx(56.0 - math.sqrt(56.0**2 - 40.0**2))


def test_gravity_on_the_ground():
    assert shapes.Sphere(56.0, steady(OMEGA)).ground_gravity_m_s2(OMEGA, 40.0) == pytest.approx(
        OMEGA**2 * math.sqrt(56.0**2 - 1600)
    )
    assert PODS.ground_gravity_m_s2(OMEGA) == pytest.approx(OMEGA**2 * 24.0)
    assert shapes.Turntable(1.0, steady(2.0), 9.8).ground_gravity_m_s2(2.0) == 9.8


def test_a_turntable_pulls_down_and_ends_at_its_edge():
    table = shapes.Turntable(1.0, steady(2.0), 9.8)
    assert table.pull_m_s2 == (0.0, 0.0, -9.8)
    assert names(table) == ["floor", "edge"]
    assert gaps(table, (0.0, 0.2, 0.7), radius_m=0.05) == pytest.approx([0.15, 0.3])


def test_a_ship_s_thrust_is_felt_backward():
    assert shapes.Torus(56.0, steady(OMEGA), 0.5, 6.0).pull_m_s2 == (0.0, 0.0, -0.5)


@each_row(("heading_deg", "level"), [(0, (0, 1, 0)), (90, (0, 0, 1)), (180, (0, -1, 0))])
def test_a_ramp_rises_toward_its_heading_from_a_foot_on_the_deck(heading_deg, level):
    slope = math.radians(20)
    ramp = ramp_at(RoundChart(56.0), (0.0, 0.0, 0.0), slope, math.radians(heading_deg), 4.0, 1.0)
    up, level = np.array([-1.0, 0.0, 0.0]), np.array(level, dtype=float)
    foot, top = ramp.corners_m[:2].mean(axis=0), ramp.corners_m[2:].mean(axis=0)
    assert top - foot == pytest.approx(4.0 * (math.cos(slope) * level + math.sin(slope) * up), abs=1e-12)
    assert (foot - np.array([56.0, 0, 0])) @ up == pytest.approx(0.0, abs=1e-12)
    normal = ramp.slope.normal(foot)
    assert normal == pytest.approx(math.cos(slope) * up - math.sin(slope) * level, abs=1e-12)
    assert ramp.slope.gap(ramp.corners_m.T, np.zeros(4)) == pytest.approx(np.zeros(4), abs=1e-12)
    assert [float(e.gap(top[:, None], np.zeros(1))[0]) for e in ramp.edges] == pytest.approx([0.0, 0.5, 0.5], abs=1e-12)


def drum(**parts):
    return [(s.name, getattr(s, "radius_m", None)) for s in shapes.Cylinder(56.0, steady(0.3), **parts).surfaces()]


def test_surfaces_are_those_that_a_body_can_meet():
    assert drum() == [("deck", 56.0)]
    assert drum(ceiling_m=4.0) == [("deck", 56.0), ("ceiling", 52.0)]
    assert drum(hub_radius_m=2.0) == [("deck", 56.0), ("hub", 2.0)]
    assert drum(ceiling_m=4.0, hub_radius_m=2.0) == [("deck", 56.0), ("ceiling", 52.0)]  # the hub lies behind it
    assert drum(width_m=14.0) == [("deck", 56.0), ("wall", None), ("wall", None)]
