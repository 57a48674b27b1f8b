"""How far a thing is from where it began: each shape against geometry by hand, from its positions alone, and what is said of it."""

import math

import numpy as np
import pytest

from tests.facts import tells
from tests.motions.scenes import LANTERN, drop, one, place, throw
from tests.tables import each_row

BALL = {"mass_kg": 0.45, "diameter_m": 0.18}
STEEL = "steel ball 20 mm"
TABLE = {"shape": "turntable", "radius_m": 2.0, "spin_rpm": 30.0}
HUB = LANTERN | {"hub_radius_m": 2.4, "width_m": 14.0}
SMALL = {"radius_m": 10.0, "spin_rpm": 6.0}
POUR = {
    "kind": "pour",
    "elevation_deg": -90.0,
    "flow_ml_s": 20.0,
    "lip_diameter_mm": 6.0,
    "duration_s": 1.0,
    "liquid": "water",
}
AIR = {"pressure_kpa": 101.325, "temperature_c": 20.0}


def way_of(motion, habitat, air=None, number=None):
    """The way of an event of a motion, or of its landing; and where it and the release are, in the turning frame."""
    traced = one(motion, habitat, air)
    moment = traced.track.landing if number is None else traced.track.events[number]
    return traced.way(moment), traced.track.events[0].rotating_m, moment.rotating_m


def azimuth(a, b):
    return math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1])


def test_on_a_turntable_it_is_straight():
    """Near the middle an arc at the edge is ten times the distance."""
    way, a, b = way_of(drop(1.0, STEEL, axial_m=0.1), TABLE)
    assert (way.spinward_m, way.axial_m) == pytest.approx((b[1] - a[1], b[0] - a[0]), abs=1e-12)
    assert math.hypot(way.spinward_m, way.axial_m) == pytest.approx(np.linalg.norm((b - a)[:2]), abs=1e-12)
    assert (way.turns, way.of_turn) == (0, None)


def test_in_a_ball_it_is_round_the_circle_it_lies_on_and_along_the_ground():
    way, a, b = way_of(throw(8.0, 5.0, 60, 40, BALL, axial_m=10.0), LANTERN | {"shape": "sphere"})
    touch = b * 56.0 / np.linalg.norm(b)
    assert way.spinward_m == pytest.approx(math.hypot(touch[0], touch[1]) * azimuth(a, b), abs=1e-9)
    under = math.asin(10.0 / (56.0 - 0.09))
    assert way.axial_m == pytest.approx(56.0 * (math.asin(touch[2] / 56.0) - under), abs=1e-9)


def test_in_a_ring_too():
    way, a, b = way_of(throw(4.0, 5.0, 100, 20, BALL, axial_m=2.0), LANTERN | {"shape": "torus", "tube_radius_m": 12.0})
    off = np.array([math.hypot(b[0], b[1]) - 44.0, b[2]])
    touch = off * 12.0 / np.linalg.norm(off)
    assert way.spinward_m == pytest.approx((44.0 + touch[0]) * azimuth(a, b), abs=1e-9)
    assert way.axial_m == pytest.approx(12.0 * (math.asin(touch[1] / 12.0) - math.asin(2.0 / (12.0 - 0.09))), abs=1e-9)


def test_what_only_falls_in_a_ball_goes_nowhere_across():
    way, _, _ = way_of(drop(6.0, BALL, axial_m=20.0), LANTERN | {"shape": "sphere"})
    assert way.axial_m == pytest.approx(0.0, abs=1e-9)


def test_against_the_hub_it_is_round_the_hub():
    """The hub is 15 m round; an arc at the deck would be 21.5 m."""
    way, a, b = way_of({"kind": "drop", "place": place(50.0), "body": "helium balloon"}, HUB, AIR, -1)
    assert way.round_m == pytest.approx(2 * math.pi * 2.4)
    assert way.spinward_m == pytest.approx(2.4 * azimuth(a, b), abs=1e-6)
    assert abs(way.spinward_m) < 2.0


def test_whole_turns_are_apart_from_the_nearest_way():
    """In a drum 62.8 m round it goes 221.76 m antispinward: four times round but for 29.57 m."""
    traced = one(throw(9.5, 0.05, 180, 0, {"mass_kg": 1.0, "diameter_m": 0.05}), SMALL)
    way = traced.way(traced.track.landing)
    assert way.in_all_m == pytest.approx(traced.track.landing.drift_m, abs=1e-9)
    assert (way.turns, way.round_m) == (-4, pytest.approx(20 * math.pi))
    assert way.of_turn == pytest.approx(way.spinward_m / (20 * math.pi))
    said = traced.in_short().replace("\u00a0", " ")
    assert tells(said, "lands 3 times round and 33.26 m antispinward (29.57 m spinward by the nearest way)")


@each_row(
    ("motion", "habitat", "sentence"),
    [
        (drop(1.0, STEEL, axial_m=0.1), TABLE, "lands 76.4 mm antispinward and 55.2 mm outward"),
        (POUR | {"place": place(0.6, axial_m=0.2), "target": {"height_m": 0.1, "axial_m": 0.2, "diameter_m": 0.05}},
         TABLE | {"spin_rpm": 20.0}, "misses the cup by 28.4 mm"),
        (POUR | {"place": place(2.0), "target": {"height_m": 1.5, "diameter_m": 0.05}},
         {"radius_m": 3.0, "spin_rpm": 12.0}, "misses the cup by 0.30 m … 0.30 m antispinward"),
        (throw(1.5, 15.0, 180, 7.3, BALL), LANTERN, "more than a quarter of the way round"),
    ],
)  # fmt: skip
def test_it_is_said_as_a_distance(motion, habitat, sentence):
    assert tells(" ".join(one(motion, habitat).outcome()).replace("\u00a0", " "), sentence)


def test_a_jump_near_the_middle_is_as_far_apart_as_its_feet():
    traced = one(
        {"kind": "jump", "place": place(0.0, axial_m=0.5)}, {"shape": "turntable", "radius_m": 5.0, "spin_rpm": 10.0}
    )
    a, b = traced.track.events[0].rotating_m, traced.track.landing.rotating_m
    assert traced.findings["apart_m"] == pytest.approx(np.linalg.norm((b - a)[:2]), abs=1e-9)


def test_a_pour_whose_jug_tilts_is_told_from_first_to_last():
    """It lands at 1.01 m for an instant, and at -0.07 m for two thirds of it."""
    tilted = POUR | {
        "place": place(1.2),
        "elevation_deg": 0.0,
        "flow_ml_s": 150.0,
        "lip_diameter_mm": 10.0,
        "duration_s": 3.0,
        "tilt": [{"time_s": 1.0, "elevation_deg": -85.0, "flow_ml_s": 150.0}],
    }
    traced = one(tilted, LANTERN, AIR)
    lands = traced.findings["lands_m"]
    middle = (
        1.007 - 0.066
    ) / 2 / 3 + 2 / 3 * -0.066  # if it went evenly from the one to the other in a third of the time
    assert [lands["first"][0], lands["last"][0]] == pytest.approx([1.007, -0.066], abs=1e-3)
    assert lands["middle"][0] == pytest.approx(middle, abs=0.05)
    sentence = (
        "first of the stream lands 1.01 m spinward … last of it lands 66.3 mm antispinward … average … 0.12 m spinward"
    )
    assert tells(" ".join(traced.outcome()).replace("\u00a0", " "), sentence)
    assert tells(traced.in_short().replace("\u00a0", " "), "lands 1.01 m spinward at first and 66.3 mm antispinward")
