"""Figures of going: against places differenced twice in the frame that does not turn, and against the motions of a scene."""

import math

import numpy as np
import pytest

from tests.comfort.aboard import FLOOR, PODS, TABLE, felt, value
from tests.motions.scenes import LANTERN, OMEGA_LANTERN, one, place
from tests.tables import each_row

G0 = 9.80665  # CGPM 1901
STEP_S = 2e-3  # between differenced places: errors of order 1e-6 m/s2
R, OMEGA = 56.0, OMEGA_LANTERN
PODS_OMEGA, TABLE_OMEGA = 4 * math.tau / 60, 10 * math.tau / 60
STAIRS = math.radians(32.0)  # as the program states it: common practice, no source


def felt_at(aboard, omega, pull=(0.0, 0.0, 0.0)):
    """What is felt (x, y, z) at time 0 by a place aboard(t) -> (x, y, z): what bends its path outside, less the pull."""

    def outside(t):
        x, y, z = aboard(t)
        turned = (x + 1j * y) * np.exp(1j * omega * t)
        return np.array([turned.real, turned.imag, z])

    return np.array(pull) - (outside(STEP_S) - 2 * outside(0.0) + outside(-STEP_S)) / STEP_S**2


def on_the_deck(level_m_s, rise_m_s=0.0, up_m=0.0, first_m=R):
    """A place up_m over feet that go round and climb; the feet's azimuth by the integral of its rate v/r."""

    def aboard(t):
        feet = first_m - rise_m_s * t
        azimuth = level_m_s * (t / first_m if not rise_m_s else math.log(first_m / feet) / rise_m_s)
        return (feet - up_m) * math.cos(azimuth), (feet - up_m) * math.sin(azimuth), 0.0

    return aboard


def on_the_floor(along_m_s=0.0, rise_m_s=0.0, up_m=0.0, first_m=24.0):
    """The same straight over a flat floor."""
    return lambda t: (first_m - up_m - rise_m_s * t, along_m_s * t, 0.0)


def lean(weight):
    """From straight down, which is along x here."""
    return math.degrees(math.atan2(math.hypot(weight[1], weight[2]), weight[0]))


PACES = [("walk_spinward_g", 1.4), ("walk_antispinward_g", -1.4), ("run_spinward_g", 4.0), ("run_antispinward_g", -4.0)]


@each_row(("name", "pace"), PACES)
@each_row("thrust", [0.0, 3.0])
def test_weight_on_the_level_is_what_bends_the_path_outside(name, pace, thrust):
    pull = (0.0, 0.0, -thrust)
    weight = felt_at(on_the_deck(pace), OMEGA, pull)
    assert value(name, LANTERN | {"axial_thrust_m_s2": thrust}) == pytest.approx(np.linalg.norm(weight) / G0, abs=1e-6)
    flat = felt_at(on_the_floor(pace), PODS_OMEGA, pull)
    assert value(name, PODS | {"axial_thrust_m_s2": thrust}) == pytest.approx(np.linalg.norm(flat) / G0, abs=1e-6)


@each_row(("name", "pace"), PACES)
def test_weight_along_the_rim_of_a_platform(name, pace):
    weight = felt_at(on_the_floor(pace, first_m=3.0), TABLE_OMEGA, (0.0, 0.0, -G0))
    assert value(name, TABLE) == pytest.approx(np.linalg.norm(weight) / G0, abs=1e-6)


def test_walking_outward_on_a_platform_tips_down():
    weight = felt_at(lambda t: (3.0 + 1.4 * t, 0.0, 0.0), TABLE_OMEGA, (0.0, 0.0, -G0))
    tipped = math.degrees(math.atan2(math.hypot(weight[0], weight[1]), -weight[2]))
    assert value("walk_axial_lean_deg", TABLE) == pytest.approx(tipped, abs=1e-4)
    assert value("walk_axial_lean_deg", LANTERN) == 0


def test_stairs_both_ways():
    climb, level = 0.3, 0.3 / math.tan(STAIRS)
    weights = [felt_at(on_the_deck(way * level, climb), OMEGA) for way in (1, -1)]
    found = felt(LANTERN).values
    for name, weight in zip(("stairs_spinward_g", "stairs_antispinward_g"), weights, strict=True):
        assert found[name] == pytest.approx(np.linalg.norm(weight) / G0, abs=1e-6)
    assert found["stairs_lean_deg"] == pytest.approx(max(map(lean, weights)), abs=1e-4)
    hands = [felt_at(on_the_deck(way * level, climb, up_m=1.05), OMEGA) for way in (1, -1)]
    assert found["glass_stairs_lean_deg"] == pytest.approx(max(map(lean, hands)), abs=1e-4)


@each_row(("name", "pace"), [("ladder", 0.3), ("lift", 2.0)])
@each_row(("habitat", "aboard", "omega"), [(LANTERN, on_the_deck, OMEGA), (PODS, on_the_floor, PODS_OMEGA)])
def test_straight_up_one_is_pushed_spinward(name, pace, habitat, aboard, omega):
    """Spinward is along y here."""
    found, radius = felt(habitat).values, habitat["radius_m"]
    weight, halfway = (felt_at(aboard(0.0, pace, first_m=r), omega) for r in (radius, radius / 2))
    assert found[f"{name}_push_g"] == pytest.approx(weight[1] / G0, abs=1e-6)
    assert found[f"{name}_push_g"] > 0
    assert found[f"{name}_lean_deg"] == pytest.approx(lean(weight), abs=1e-4)
    assert found[f"{name}_halfway_lean_deg"] == pytest.approx(lean(halfway), abs=1e-4)


def test_up_from_a_platform_nothing_pushes():
    found = felt(TABLE).values
    assert found["lift_push_g"] == found["ladder_push_g"] == found["rise_push_g"] == 0
    assert found["lift_lean_deg"] == found["floor_lean_deg"]
    assert found["lift_halfway_g"] is None


def test_a_glass_stays_level_at_a_steady_walk_round_the_deck_and_tips_on_setting_off():
    """Setting off by 1.4 m/s in a second, the feet by that and the hand by its share of the radius, at 0.6 of the height."""
    found, hand = felt(LANTERN).values, R - 1.05

    def aboard(t):
        azimuth = 0.5 * 1.4 * t**2 / R
        return hand * math.cos(azimuth), hand * math.sin(azimuth), 0.0

    assert found["glass_walk_lean_deg"] == pytest.approx(0, abs=1e-9)
    assert found["glass_start_lean_deg"] == pytest.approx(lean(felt_at(aboard, OMEGA)), abs=1e-4)
    flat = felt_at(lambda t: (24.0 - 1.05, 0.7 * t**2, 0.0), PODS_OMEGA)
    assert value("glass_start_lean_deg", PODS) == pytest.approx(lean(flat), abs=1e-4)


@each_row(("habitat", "share"), [(LANTERN, 1.0), (PODS, 0.5)])
def test_at_the_floating_speed_nothing_presses_the_feet_on(habitat, share):
    """On a deck the rim speed; straight over a flat floor half of it, and beyond it there is no walking."""
    floats = value("float_speed_m_s", habitat)
    assert floats == pytest.approx(share * habitat["radius_m"] * habitat["spin_rpm"] * math.tau / 60)
    assert value("run_antispinward_g", habitat, {"run_m_s": floats * (1 - 1e-9)}) == pytest.approx(0, abs=1e-6)
    beyond = value("run_antispinward_g", habitat, {"run_m_s": floats * 1.1})
    assert beyond is None if "floors" in habitat else beyond > 0


@each_row("habitat", [LANTERN | {"axial_thrust_m_s2": 0.1}, TABLE, TABLE | {"outside_gravity_m_s2": 0}])
def test_nothing_floats_where_something_else_pulls(habitat):
    assert value("float_speed_m_s", habitat) is None


@each_row("habitat", [LANTERN, PODS, LANTERN | {"axial_thrust_m_s2": 2.0}])
@each_row(("name", "speed", "heading"), [("walk_spinward_g", 1.4, 0.0), ("run_antispinward_g", 4.0, 180.0)])
def test_weight_is_that_which_a_walk_of_the_scene_tells(habitat, name, speed, heading):
    told = one({"kind": "walk", "place": place(0.0), "speed_m_s": speed, "heading_deg": heading, "for_s": 0.1}, habitat)
    assert value(name, habitat) == pytest.approx(float(told.findings["feet_g"][0]), rel=1e-12)
    if "axial_thrust_m_s2" not in habitat:
        assert value("float_speed_m_s", habitat) == pytest.approx(told.findings["floats_at_m_s"], rel=1e-12)


@each_row("habitat", [LANTERN, PODS | {"floors": [FLOOR | {"ceiling_m": None}]}])
def test_the_push_is_that_which_a_lift_of_the_scene_tells(habitat):
    ride = {"kind": "lift", "place": place(0.0), "to_height_m": habitat["radius_m"] / 2, "top_speed_m_s": 2.0}
    told, found = one(ride, habitat).findings, felt(habitat).values
    assert found["lift_push_g"] * G0 == pytest.approx(told["most_sideways_m_s2"], rel=1e-9)
    assert found["lift_lean_deg"] == pytest.approx(float(told["tilt_deg"][0]), rel=1e-9)
    assert found["lift_halfway_lean_deg"] == pytest.approx(told["most_tilt_deg"], rel=1e-9)


@each_row("habitat", [LANTERN, LANTERN | {"axial_thrust_m_s2": 3.0}, TABLE])
def test_coriolis_to_gravity_is_of_the_whole_of_what_is_felt_standing(habitat):
    """2 omega v (any mechanics text) over omega^2 R and, at a right angle, the thrust or a room's gravity."""
    omega, radius = habitat["spin_rpm"] * math.tau / 60, habitat["radius_m"]
    pull = G0 if habitat is TABLE else habitat.get("axial_thrust_m_s2", 0.0)
    expected = 2 * omega * 1.4 / math.hypot(omega**2 * radius, pull)
    assert value("coriolis_ratio", habitat) == pytest.approx(expected, rel=1e-12)
