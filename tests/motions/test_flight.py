"""Release, flight and first contact of bodies that fly together."""

import json
import math

import numpy as np
import pytest

from rimfall.scene import questions
from tests.motions.scenes import AIR, LANTERN, OMEGA_LANTERN, POINT, drop, kinds, one, read, throw, trace
from tests.tables import each_row

TIME_S, PLACE_M = 1e-9, 1e-8
TOGETHER_M = 2e-7  # lock steps differ with the company; each path keeps within 1e-6 m
BALL = {"mass_kg": 0.45, "diameter_m": 0.18}


def landing(traced):
    state = traced.track.landing
    return state.time_s, state.along_m


def test_a_dropped_cup_lands_where_the_straight_line_says():
    """Let go at rho it flies straight at omega rho: theta = tan(theta') with cos(theta') = rho/R (an involute)."""
    angle = math.acos((56.0 - 1.2) / 56.0)
    time_s, along_m = landing(one(drop(1.2)))
    assert time_s == pytest.approx(math.tan(angle) / OMEGA_LANTERN, abs=TIME_S)
    assert along_m == pytest.approx(56.0 * (angle - math.tan(angle)), abs=PLACE_M)


def test_a_ball_lands_when_its_own_surface_does():
    traced = one(drop(1.2, body=BALL))
    assert traced.track.landing.height_m == pytest.approx(0.09, abs=PLACE_M)


def test_bodies_fly_together_as_they_fly_alone():
    motions = [
        throw(1.5, 6.0, 180, 35, BALL),
        drop(3.0, {"mass_kg": 4e-6, "diameter_m": 0.002}),
        throw(1, 17, 0, 70, BALL, 2.5),
    ]
    together = trace(motions, air=AIR).motions
    for motion, found in zip(motions, together, strict=True):
        assert landing(found) == pytest.approx(landing(one(motion, air=AIR)), abs=TOGETHER_M)


def test_a_motion_that_starts_later_flies_the_same_path_at_steady_spin():
    now, later = (one(throw(1.5, 6.0, 180, 35, BALL, start), air=AIR) for start in (0.0, 7.3))
    assert landing(later) == pytest.approx((landing(now)[0] + 7.3, landing(now)[1]), abs=TOGETHER_M)


def test_a_path_is_of_one_piece_across_its_steps():
    path = one(drop(40.0, {"mass_kg": 4e-6, "diameter_m": 0.002}), air=AIR).track.path
    knots = path.knots_s
    assert len(knots) > 3
    before, after = path.at(np.nextafter(knots, 0)), path.at(knots)
    assert np.abs(before[0] - after[0]).max() < 1e-12
    assert np.abs(before[1] - after[1]).max() < 1e-11


@each_row("air", [None, AIR])
def test_a_body_that_lies_on_the_deck_has_landed_at_its_release(air):
    for motion in (drop(0.09, BALL), throw(0.09, 3.0, 90, 0, BALL), throw(0.09, 3.0, 0, -30, BALL)):
        traced = one(motion, air=air)
        assert kinds(traced) == ["release", "deck"]
        assert landing(traced) == (0.0, 0.0)


def test_a_body_thrown_off_the_deck_leaves_it_and_comes_back():
    traced = one(throw(0.0, 5.0, 0, 90), LANTERN)
    u = 5.0 / (OMEGA_LANTERN * 56)
    assert landing(traced)[0] == pytest.approx(2 * u / (1 + u * u) / OMEGA_LANTERN, abs=TIME_S)


@each_row("air", [None, AIR])
def test_a_body_let_go_at_the_ceiling_falls_to_the_deck(air):
    traced = one(drop(4.0 - 0.09, BALL), LANTERN | {"ceiling_m": 4.0}, air)
    assert kinds(traced) == ["release", "deck"]
    assert landing(traced)[1] < -1.0


def test_a_body_let_go_at_the_hub_falls_to_the_deck():
    traced = one(drop(46.0 - 0.09, BALL), LANTERN | {"hub_radius_m": 10.0})
    assert kinds(traced) == ["release", "deck"]


def test_a_body_let_go_at_a_wall_falls_clear_of_it():
    traced = one(drop(2.0, BALL, axial_m=6.91), LANTERN | {"width_m": 14.0})
    assert kinds(traced) == ["release", "deck"]
    assert landing(traced)[0] == pytest.approx(landing(one(drop(2.0, BALL)))[0], abs=1e-8)
    thrown = one(throw(2.0, 0.5, 270, 0, BALL, axial_m=6.91), LANTERN | {"width_m": 14.0})
    assert kinds(thrown) == ["release", "deck"]


def test_a_push_from_the_ship_takes_a_body_off_the_wall_or_has_it_roll_down_there():
    room = LANTERN | {"width_m": 14.0, "axial_thrust_m_s2": 0.4}
    assert kinds(one(drop(2.0, BALL, axial_m=6.91), room)) == ["release", "deck"]
    pressed = one(drop(2.0, BALL, axial_m=-6.91), room)
    assert [k for k in kinds(pressed) if k not in ("slip", "grip")] == ["release", "wall", "deck"]
    assert pressed.track.landing.axial_m == pytest.approx(-6.91, abs=1e-9)


def test_under_thrust_loose_things_sag_along_minus_z():
    traced = one(drop(2.0), LANTERN | {"axial_thrust_m_s2": 0.4})
    time_s = traced.track.landing.time_s
    assert traced.track.landing.axial_m == pytest.approx(-0.2 * time_s**2, abs=PLACE_M)


def test_the_spin_of_the_release_is_that_of_its_own_time():
    """Let go while the wheel is at rest, it stays; let go once it turns, it falls."""
    ramp = {"radius_m": 56.0, "spin_rpm": 0.0, "spin_ramp": [{"time_s": 10.0, "spin_rpm": 3.0}]}
    assert one(drop(1.2, start_s=0.0), ramp).track.end == "time limit"
    assert landing(one(drop(1.2, start_s=20.0), ramp))[0] == pytest.approx(
        20.0 + landing(one(drop(1.2)))[0], abs=TIME_S
    )


def test_no_step_in_air_crosses_a_kink_of_the_spin():
    ramp = LANTERN | {"spin_ramp": [{"time_s": 1.25, "spin_rpm": 4.0}, {"time_s": 1.5, "spin_rpm": 0.0}]}
    path = one(throw(30.0, 1.0, 90, 0, BALL, start_s=0.5), ramp, AIR).track.path
    for kink_s in (1.25, 1.5):
        assert np.abs(path.start_s - kink_s).min() < 1e-12


def test_a_constant_and_a_curved_drag_fly_in_one_batch():
    motions = [drop(3.0, BALL), drop(3.0, BALL | {"drag": 0.5}), drop(3.0, BALL | {"drag": 0.0})]
    curved, constant, none = (landing(t)[0] for t in trace(motions, air=AIR).motions)
    assert none == pytest.approx(landing(one(motions[2]))[0], abs=TIME_S)
    assert none < min(curved, constant)
    assert curved != constant


def test_carried_is_added_to_the_throw():
    walking = throw(1.5, 4.0, 90, 20) | {"carried": {"speed_m_s": 1.4, "heading_deg": 0.0}}
    path = trace([walking, throw(1.5, 4.0, 90, 20)]).motions
    assert np.array(path[0].plan.velocity) - path[1].plan.velocity == pytest.approx([1.4, 0, 0])


def test_nothing_flies_past_its_time():
    document = read([throw(30.0, 0.001, 0, 0, POINT)], LANTERN | {"spin_rpm": 0.0}, duration_s=5.0)
    traced = questions.trace(document).motions[0]
    assert (traced.track.ends_s, traced.track.end) == (5.0, "duration")
    assert json.dumps(traced.track.samples.time_s.tolist())[-4:] == "5.0]"
