"""Figures of a body at rest: published rows, an inertial path differenced twice, laws of the trade, and every odd case finite."""

import itertools
import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rimfall.comfort.figures import FIGURES
from rimfall.comfort.quantities import QUANTITIES
from rimfall.errors import Refused
from tests.comfort.aboard import FLOOR, PODS, SHIPS, SPHERE, TABLE, TORUS, felt, scene, value
from tests.motions.scenes import LANTERN, OMEGA_LANTERN, one_g
from tests.published.guedry_1974 import ROWS as TURNS
from tests.published.walking_aboard import ROWS as WALKS
from tests.tables import each_row

G0 = 9.80665  # CGPM 1901
RPM = math.tau / 60
STEP_S = 2e-3  # between differenced places: errors of order 1e-6 m/s2
NEAR_G = 1e-6
R, OMEGA = 56.0, OMEGA_LANTERN
GROUPS = [
    "Turning", "Standing", "Sitting and lying", "On foot", "Stairs and ladders", "Lift", "Turning the head", "Things in hand",
    "The floor",
]  # fmt: skip


def second_difference(still):
    """Acceleration of a place still(t), m/s2, at time 0."""
    return (still(STEP_S) - 2 * still(0.0) + still(-STEP_S)) / STEP_S**2


def at_rest_g(radius_m, omega, pull=0.0):
    """What is felt at rest that far from the axis: what bends its path outside, and the pull along the axis."""
    return math.hypot(abs(second_difference(lambda t: radius_m * np.exp(1j * omega * t))), pull) / G0


def test_hum_37_from_feet_to_head():
    row = WALKS["HUM-37"]
    found = felt(one_g(row.inputs["radius_m"]), {"height_m": row.inputs["height_m"]})
    assert row.allows(found.values["gradient_percent"] / 100)
    assert row.allows(1 - found.values["head_g"] / found.values["feet_g"])
    assert row.allows(found.quantities["gradient"] / 100)


@each_row(("key", "name"), [("TRJ-39", "walk_spinward_g"), ("TRJ-40", "walk_antispinward_g")])
def test_trj_39_and_40_weight_on_foot(key, name):
    row = WALKS[key]
    person = {"walk_m_s": abs(row.inputs["walk_speed_m_s"])}
    assert row.allows(value(name, one_g(row.inputs["radius_m"]), person))


def test_hum_36_coriolis_to_gravity():
    row, radius = WALKS["HUM-36"], 20.0
    habitat = {"radius_m": radius, "spin_rpm": row.inputs["rim_speed_m_s"] / radius / RPM}
    found = felt(habitat, {"walk_m_s": row.inputs["walk_speed_m_s"]})
    assert row.allows(found.values["coriolis_ratio"])
    assert row.allows(found.quantities["coriolis"])


def test_hum_35_turning_the_head():
    row = TURNS["HUM-35"]
    person = {"head_turn_deg_s": math.degrees(row.inputs["head_rate_rad_s"])}
    found = felt({"radius_m": 80.0, "spin_rpm": row.inputs["rate_rpm"]}, person)
    assert row.allows(found.quantities["head_turn"])
    assert row.allows(math.radians(found.values["head_worst_deg_s2"]))


@each_row("thrust", [0.0, 2.0, -2.0])
@each_row("habitat", SHIPS)
def test_weight_at_rest_is_what_bends_the_path_outside(habitat, thrust):
    """Shares of the height as the program states them: common practice, no source."""
    found = felt(habitat | {"axial_thrust_m_s2": thrust}).values
    radius, omega = habitat["radius_m"], habitat["spin_rpm"] * RPM
    heights = {"feet_g": 0.0, "heart_g": 0.72, "head_g": 1.0, "seated_heart_g": 0.49, "seated_head_g": 0.77}
    for name, share in heights.items():
        assert found[name] == pytest.approx(at_rest_g(radius - 1.75 * share, omega, thrust), abs=NEAR_G)
    floor_lean = None if not thrust else math.degrees(math.atan(2.0 / (at_rest_g(radius, omega) * G0)))
    assert found["floor_lean_deg"] == (floor_lean and pytest.approx(floor_lean, abs=1e-4))
    assert found["gradient_g_per_m"] == pytest.approx(omega**2 / G0, rel=1e-9)


def test_a_platform_tips_down_outward_and_weighs_the_same_from_feet_to_head():
    found = felt(TABLE).values
    outward = at_rest_g(3.0, 10 * RPM)
    assert found["feet_g"] == pytest.approx(math.hypot(outward, 1.0), abs=NEAR_G)
    assert found["head_g"] == found["heart_g"] == found["feet_g"]
    assert found["gradient_percent"] == 0
    assert found["floor_lean_deg"] == pytest.approx(math.degrees(math.atan(outward)), abs=1e-4)


@each_row("habitat", [LANTERN, PODS])
def test_lying_across_the_axis(habitat):
    """On a deck the bed lies on both its ends, R from the axis; on a flat floor its middle is. The heart lies 0.22 of the height
    from the middle."""
    found, radius, omega = felt(habitat).values, habitat["radius_m"], habitat["spin_rpm"] * RPM
    middle = radius if "floors" in habitat else math.sqrt(radius**2 - 0.875**2)
    assert found["lying_along_g"] == pytest.approx(at_rest_g(radius, omega), abs=NEAR_G)
    assert found["lying_across_g"] == pytest.approx(at_rest_g(math.hypot(middle, 0.22 * 1.75), omega), abs=NEAR_G)
    assert found["lying_across_lean_deg"] == pytest.approx(math.degrees(math.atan(0.875 / middle)), rel=1e-9)


def test_who_is_longer_than_the_deck_is_wide_does_not_lie_across_it():
    assert value("lying_across_g", {"radius_m": 0.8, "spin_rpm": 20.0}) is None
    assert value("lying_across_g", {"radius_m": 0.9, "spin_rpm": 20.0}) > 0


def test_rising_from_a_seat_pushes_spinward_by_twice_omega_v():
    """The head goes from 0.77 to the whole of the height in a second: the acceleration of a place that comes in at that pace and
    stays at one azimuth aboard, along the way the deck goes."""
    still = lambda t: (R - 1.3475 - 0.4025 * t) * np.exp(1j * OMEGA * t)  # noqa: E731
    pushed = -second_difference(still).imag
    assert value("rise_push_g", LANTERN) == pytest.approx(pushed / G0, abs=NEAR_G)
    assert pushed > 0


def test_who_reaches_past_the_axis_feels_the_other_way_there():
    found = felt({"radius_m": 1.0, "spin_rpm": 20.0}).values
    assert found["head_g"] == pytest.approx(at_rest_g(0.75, 20 * RPM), abs=1e-5)
    assert found["gradient_percent"] == pytest.approx(175)


def test_levels_are_the_named_decks_the_inside_most_last():
    decks = [{"name": "Stores", "radius_m": 50.0}, {"name": "Galley", "radius_m": 56.0}]
    found = felt(LANTERN | {"decks": decks, "axial_thrust_m_s2": 2.0}).levels
    assert [(level.name, level.height_m) for level in found] == [("Galley", 0.0), ("Stores", 6.0)]
    assert found[1].gravity_g == pytest.approx(at_rest_g(50.0, OMEGA, 2.0), abs=NEAR_G)
    assert found[1].rim_speed_m_s == pytest.approx(OMEGA * 50.0)


@each_row(
    ("habitat", "heights"),
    [
        (LANTERN, [0, 3, 6, 9]),
        (LANTERN | {"ceiling_m": 4.0}, [0]),
        (LANTERN | {"ceiling_m": 7.0}, [0, 3]),
        (LANTERN | {"hub_radius_m": 49.0}, [0, 3]),
        (TORUS, [0, 3, 6, 9]),
        (TORUS | {"tube_radius_m": 3.5}, [0, 3]),
        (SPHERE | {"radius_m": 2.0}, [0]),
        (PODS, [0, 6]),
        (TABLE, [0]),
    ],
)
def test_storeys_are_where_there_is_room(habitat, heights):
    assert [level.height_m for level in felt(habitat).levels] == heights


def test_a_changing_spin_is_held_at_that_of_the_start():
    ramped = LANTERN | {"spin_ramp": [{"time_s": 1.0, "spin_rpm": 9.0}]}
    assert felt(ramped).values == felt(LANTERN).values


def test_without_spin_or_pull_there_is_no_weight_and_no_lean():
    found = felt(LANTERN | {"spin_rpm": 0.0})
    none = {
        "period_s",
        "gradient_percent",
        "float_speed_m_s",
        "coriolis_ratio",
        "drop_time_s",
        "drop_drift_m",
        "pour_drift_m",
    }
    none |= {name for name in FIGURES if name.endswith("_lean_deg")}
    assert all(found.values[name] is None for name in none)
    assert found.values["feet_g"] == found.values["head_worst_deg_s2"] == 0
    assert found.quantities | {"gradient": 1, "coriolis": 1} == {
        "gravity": 0, "spin": 0, "gradient": 1, "rim_speed": 0, "head_turn": 0, "coriolis": 1,
    }  # fmt: skip


def test_every_row_has_a_group_and_they_come_in_order():
    groups = [row.group for row in FIGURES.values()]
    assert list(dict.fromkeys(groups)) == GROUPS
    assert groups == sorted(groups, key=GROUPS.index)


def odd_scenes():
    people = [
        {},
        dict.fromkeys(("walk_m_s", "run_m_s", "climb_m_s", "lift_m_s", "head_turn_deg_s"), 0) | {"height_m": 0.3},
    ]
    people += [{"height_m": 3, "walk_m_s": 10, "run_m_s": 20, "climb_m_s": 5, "lift_m_s": 50, "head_turn_deg_s": 1000}]
    sizes = (0.1, 1.8, 56.0, 1e5), (0.0, 1e-12, 3.0, 200.0), (0.0, 1e-9, -100.0)
    for radius, spin, pull, person in itertools.product(*sizes, people):
        turning = {"radius_m": radius, "spin_rpm": spin}
        ship = turning | {"axial_thrust_m_s2": pull}
        yield ship, person
        yield ship | {"shape": "torus", "tube_radius_m": max(radius / 3, 0.05)}, person
        yield ship | {"shape": "sphere"}, person
        yield (
            ship | {"shape": "tether", "floors": [{"length_m": 0.5, "width_m": 0.5}, FLOOR | {"ceiling_m": None}]},
            person,
        )
        yield turning | {"shape": "turntable", "outside_gravity_m_s2": abs(pull)}, person


def test_every_figure_is_finite_or_none_in_every_odd_case():
    asked = 0
    for habitat, person in odd_scenes():
        try:
            scene(habitat, person)
        except Refused:  # a rim too fast for a document
            continue
        found, asked = felt(habitat, person), asked + 1
        assert list(found.values) == list(FIGURES)
        assert list(found.quantities) == list(QUANTITIES)
        for name, number in (found.values | found.quantities).items():
            assert number is None or (isinstance(number, float) and math.isfinite(number)), (name, habitat, person)
    assert asked > 300


# Rules of the trade: common practice, no source.

radii = st.floats(math.log(10.0), math.log(2_000.0)).map(math.exp)
levels = st.floats(0.05, 2.0)


def wheel(radius, level_g):
    """A wheel of that gravity at its deck."""
    return {"radius_m": radius, "spin_rpm": math.sqrt(level_g * G0 / radius) / RPM}


@settings(max_examples=30)
@given(radii, levels, st.floats(1.05, 5.0))
def test_more_radius_at_the_same_gravity_is_less_of_everything_that_tells_the_spin(radius, level, times):
    """Common practice, no source."""
    small, large = felt(wheel(radius, level)), felt(wheel(times * radius, level))
    assert large.values["feet_g"] == pytest.approx(small.values["feet_g"], rel=1e-9)
    names = ["spin_rpm", "gradient_percent", "gradient_g_per_m", "coriolis_ratio", "ladder_push_g", "ladder_lean_deg"]
    names += ["lift_push_g", "lift_lean_deg", "rise_push_g", "head_worst_deg_s2", "walk_spinward_g", "run_spinward_g"]
    names += ["stairs_spinward_g", "lying_across_lean_deg"]
    for name in names:
        assert large.values[name] < small.values[name], name
    for name in ("rim_speed_m_s", "period_s", "float_speed_m_s", "head_g", "walk_antispinward_g"):
        assert large.values[name] > small.values[name], name
    assert -large.values["drop_drift_m"] < -small.values["drop_drift_m"]
    assert -large.values["pour_drift_m"] < -small.values["pour_drift_m"]


@settings(max_examples=30)
@given(radii, st.floats(0.5, 15.0), st.floats(1.05, 3.0))
def test_more_spin_is_more_weight_and_more_of_the_head_turn(radius, rpm, times):
    """Common practice, no source: by the second power and the first."""
    slow, fast = felt({"radius_m": radius, "spin_rpm": rpm}), felt({"radius_m": radius, "spin_rpm": times * rpm})
    assert fast.values["feet_g"] == pytest.approx(times**2 * slow.values["feet_g"])
    assert fast.values["head_worst_deg_s2"] == pytest.approx(times * slow.values["head_worst_deg_s2"])
    assert fast.values["coriolis_ratio"] < slow.values["coriolis_ratio"]
    assert fast.values["gradient_percent"] == pytest.approx(slow.values["gradient_percent"])


@settings(max_examples=30)
@given(radii, levels, st.floats(0.01, 0.95))
def test_spinward_is_heavier_than_standing_and_that_than_antispinward(radius, level, share):
    """Common practice, no source: below the speed at which one floats."""
    habitat = wheel(radius, level)
    pace = min(share * value("float_speed_m_s", habitat), 10.0)
    found = felt(habitat, {"walk_m_s": pace}).values
    assert found["walk_spinward_g"] > found["feet_g"] > found["walk_antispinward_g"]


@settings(max_examples=20)
@given(levels)
def test_an_endless_radius_at_the_same_gravity_is_ordinary_ground(level):
    """Gradient and Coriolis go, by the first power of the radius and by its root."""
    near, far = felt(wheel(1_000.0, level)).values, felt(wheel(100_000.0, level)).values
    for name in ("gradient_percent", "gradient_g_per_m", "lying_across_lean_deg"):
        assert far[name] == pytest.approx(near[name] / 100, rel=1e-3)
    for name in ("coriolis_ratio", "ladder_push_g", "lift_push_g", "rise_push_g", "head_worst_deg_s2"):
        assert far[name] == pytest.approx(near[name] / 10, rel=1e-3)
    for name in ("drop_drift_m", "pour_drift_m"):
        assert far[name] == pytest.approx(near[name] / 10, rel=0.01)
    assert far["walk_spinward_g"] == pytest.approx(level, rel=0.02)
    assert far["drop_time_s"] == pytest.approx(math.sqrt(2 * 1.05 / (level * G0)), rel=1e-4)
