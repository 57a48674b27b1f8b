"""Why it drifts: each stage against scipy's solve_ivp in the turning frame, with its terms switched on and off there."""

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from rimfall.motions.drift import ORDER
from tests.motions.scenes import AIR, LANTERN, OMEGA_LANTERN, POINT, drop, one, place, throw
from tests.tables import each_row

BALL = {"mass_kg": 0.45, "diameter_m": 0.18, "drag": 0.47}
SPHERE = LANTERN | {"shape": "sphere"}
TORUS = LANTERN | {"shape": "torus", "tube_radius_m": 12.0}
PODS = {
    "shape": "pods",
    "radius_m": 24.0,
    "spin_rpm": 4.0,
    "floors": [{"length_m": 40.0, "width_m": 40.0, "ceiling_m": 20.0}],
}
TABLE = {"shape": "turntable", "radius_m": 10.0, "spin_rpm": 12.0}

CASES = {
    "a drop": (drop(2.0, BALL), LANTERN),
    "under thrust": (throw(1.5, 7.0, 30, 40, BALL), LANTERN | {"axial_thrust_m_s2": 0.6}),
    "back": (throw(1.5, 9.0, 180, 35, BALL), LANTERN),
    "in a ball": (throw(8.0, 5.0, 60, 40, BALL, axial_m=10.0), SPHERE),
    "in a ring": (throw(4.0, 5.0, 100, 20, BALL, axial_m=2.0), TORUS),
    "over a flat floor": (throw(1.0, 5.0, 20, 30, BALL, along_m=2.0), PODS),
    "over a table": (throw(1.0, 3.0, 250, 30, BALL, axial_m=2.0), TABLE),
}


def found(traced):
    parts, why = traced.drift
    assert why is None
    return parts


def start(traced):
    """Position and velocity (3,) of the release in the turning frame."""
    state = traced.track.events[0]
    return state.rotating_m, state.rotating_velocity_m_s


def gap(habitat, radius_m, x):
    """The distance of a centre x (3,) to the ground of each shape, written anew."""
    shape, radius = habitat.get("shape", "cylinder"), habitat["radius_m"]
    rho = math.hypot(x[0], x[1])
    if shape == "sphere":
        return radius - radius_m - np.linalg.norm(x)
    if shape == "torus":
        tube = habitat["tube_radius_m"]
        return tube - radius_m - math.hypot(rho - radius + tube, x[2])
    if shape == "pods":
        return radius - radius_m - x[0]
    return x[2] - radius_m if shape == "turntable" else radius - radius_m - rho


def along(habitat, x, y):
    """How far along the ground y is from x."""
    shape, radius = habitat.get("shape"), habitat["radius_m"]
    if shape == "pods":
        return y[1] - x[1]
    if shape == "turntable":  # straight, square to the radius of the release
        return (x[0] * y[1] - x[1] * y[0]) / math.hypot(x[0], x[1])
    turned = math.atan2(x[0] * y[1] - x[1] * y[0], x[0] * y[0] + x[1] * y[1])
    out = math.hypot(y[0], y[1])
    if shape == "sphere":  # round the circle on which it lies
        out *= radius / np.linalg.norm(y)
    elif shape == "torus":
        tube, middle = habitat["tube_radius_m"], radius - habitat["tube_radius_m"]
        out = middle + (out - middle) * tube / math.hypot(out - middle, y[2])
    else:
        out = radius
    return out * turned


def stage(habitat, traced, coriolis):
    """Drift of x'' = w^2 x + pull (+ 2 u x w), by DOP853 with the ground as an event; azimuths within half a turn."""
    omega = habitat["spin_rpm"] * math.tau / 60
    pull = -9.80665 if habitat.get("shape") == "turntable" else -habitat.get("axial_thrust_m_s2", 0.0)

    def rates(_t, y):
        x, u = y[:3], y[3:]
        felt = np.array([omega**2 * x[0], omega**2 * x[1], pull])
        return np.concatenate([u, felt + coriolis * 2 * omega * np.array([u[1], -u[0], 0.0])])

    def lands(_t, y):
        return gap(habitat, traced.plan.body.radius_m, y[:3])

    lands.terminal, lands.direction = True, -1
    x, u = start(traced)
    done = solve_ivp(rates, (0, 60), np.concatenate([x, u]), method="DOP853", rtol=1e-13, atol=1e-13, events=lands)
    return along(habitat, x, done.y_events[0][0][:3])


@each_row("case", CASES)
@each_row("air", [None, AIR])
def test_each_stage_is_scipys(case, air):
    motion, habitat = CASES[case]
    traced = one(motion, habitat, air)
    parts = found(traced)
    alone, carried = stage(habitat, traced, 0.0), stage(habitat, traced, 1.0)
    assert parts["centrifugal"] == pytest.approx(alone, abs=1e-8)
    assert parts["coriolis"] == pytest.approx(carried - alone, abs=2e-8)
    assert (parts["drag"] == 0.0) == (air is None)


@each_row("case", CASES)
def test_the_parts_sum_to_the_drift(case):
    motion, habitat = CASES[case]
    traced = one(motion, habitat, AIR)
    parts = found(traced)
    drift_m = traced.way(traced.track.landing).in_all_m
    assert parts["order"] == list(ORDER)
    assert sum(parts[cause] for cause in ORDER) == pytest.approx(drift_m, abs=1e-9)
    assert parts["other"] == 0.0


def test_what_lifts_a_ball_is_other():
    """The drag stage is the same throw without its spin."""
    spun = throw(1.5, 9.0, 0, 30, BALL) | {"ball_spin_rpm": 2000.0, "ball_spin_axis": [0.0, 0.0, 1.0]}
    parts, plain = found(one(spun, LANTERN, AIR)), found(one(throw(1.5, 9.0, 0, 30, BALL), LANTERN, AIR))
    assert abs(parts["other"]) > 0.1
    assert [parts[c] for c in ORDER[:3]] == pytest.approx([plain[c] for c in ORDER[:3]], abs=1e-8)


@each_row("air", [None, AIR])
def test_what_a_changing_spin_does_is_other(air):
    """Until the drag, the parts are those of the spin at the release, held."""
    ramped = {"radius_m": 56.0, "spin_rpm": 2.0, "spin_ramp": [{"time_s": 10.0, "spin_rpm": 4.0}]}
    motion = throw(2.0, 4.0, 30, 50, BALL, start_s=5.0)
    parts, steady = found(one(motion, ramped, air)), found(one(motion, LANTERN, air))
    assert abs(parts["other"]) > 0.1
    assert [parts[c] for c in ORDER[:3]] == pytest.approx([steady[c] for c in ORDER[:3]], abs=1e-7)


def test_a_drop_in_vacuum_drifts_by_coriolis_alone():
    """The straight line of the room: R (atan(w t) - w t) with w t = sqrt(R^2 - r^2)/r (by hand)."""
    parts = found(one(drop(6.0)))
    wt = math.sqrt(56.0**2 - 50.0**2) / 50.0
    assert parts["centrifugal"] == pytest.approx(0.0, abs=1e-12)
    assert parts["coriolis"] == pytest.approx(56.0 * (math.atan(wt) - wt), abs=1e-8)


def test_a_poured_stream_is_taken_apart_too():
    pour = {"kind": "pour", "place": place(1.1), "heading_deg": 180.0, "flow_ml_s": 30.0, "lip_diameter_mm": 8.0,
            "duration_s": 1.0, "liquid": "water"}  # fmt: skip
    traced = one(pour, LANTERN, AIR)
    assert found(traced)["centrifugal"] == pytest.approx(
        stage(LANTERN, traced, 0.0), abs=5e-3
    )  # a drop is wider than its stream


@each_row(
    ("motion", "habitat", "why"),
    [
        (drop(2.0), LANTERN | {"spin_rpm": 0.0, "axial_thrust_m_s2": 1.0}, "not_flown"),
        (throw(2.0, 5.0, 0, -40), LANTERN | {"spin_rpm": 0.0}, "no_spin"),
        (drop(0.0), LANTERN, "starts_there"),
        (throw(1.5, 20.0, 0, 80, BALL) | {"bounces": 3}, LANTERN | {"ceiling_m": 4.0}, "met_something_first"),
        ({"kind": "roll", "place": place(0.0), "speed_m_s": 1.0, "body": BALL}, LANTERN, "not_flown"),
        (throw(1.0, 9.0, 0, 30), LANTERN | {"ceiling_m": 2.5}, "no_landing_without_coriolis"),
        (throw(1.5, 15.0, 180, 7.3, BALL), LANTERN, "far_round"),
    ],
)
def test_where_it_cannot_be_told_it_says_why(motion, habitat, why):
    assert one(motion, habitat).drift == (None, why)


def test_what_is_thrown_back_at_the_rims_own_speed_never_lands_and_has_no_parts():
    assert one(throw(1.0, OMEGA_LANTERN * 55.0, 180, 0, POINT)).drift == (None, "not_flown")


@each_row("start_s", [1e-300, 1e-9, 1e-3])
def test_a_spin_that_has_hardly_begun_lets_it_go_straight(start_s):
    """Without Coriolis, and with next to no centrifugal force, it goes along a chord: plane geometry."""
    begins = LANTERN | {"spin_rpm": 0.0, "spin_ramp": [{"time_s": 60.0, "spin_rpm": 3e-6}]}
    parts = found(one(throw(10.0, 5.0, 0.0, -30.0, start_s=start_s), begins))
    down, level, from_m, radius_m = 0.5, math.sqrt(0.75), 46.0, 56.0
    chord_m = -from_m * down + math.sqrt((from_m * down) ** 2 + radius_m**2 - from_m**2)
    assert parts["centrifugal"] == pytest.approx(
        radius_m * math.atan2(chord_m * level, from_m + chord_m * down), rel=1e-9
    )
