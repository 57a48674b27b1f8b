"""Pours: the stream from lip to breakup, thinning, drops, dripping, and parcels that follow one another."""

import math

import numpy as np
import pytest
from scipy.integrate import quad

from rimfall.physics.liquids import LIQUIDS, dripping_drop_m
from tests.motions.scenes import AIR, LANTERN, OMEGA_LANTERN, event, kinds, one, pour, throw

R, OMEGA = 56.0, OMEGA_LANTERN
WATER = LIQUIDS[0]
LENGTH = 1e-9  # relative, of two quadratures
SAME_M = 1e-8
HIGH = {"height_m": 20.0, "flow_ml_s": 12.0, "lip_mm": 4.0}  # falls far enough to break


def lip_speed(flow_ml_s, lip_mm):
    return 4 * flow_ml_s * 1e-6 / (math.pi * (lip_mm * 1e-3) ** 2)


def free_state(time_s, height_m, speed):
    """Position and velocity aboard (x, y) of a free parcel that left spinward at `speed`: a straight line outside."""
    start, moving = R - height_m, OMEGA * (R - height_m) + speed
    c, s = math.cos(OMEGA * time_s), math.sin(OMEGA * time_s)
    x, y = c * start + s * moving * time_s, -s * start + c * moving * time_s
    return x, y, s * moving + OMEGA * y, c * moving - OMEGA * x


def speed_aboard(time_s, height_m, speed):
    return math.hypot(*free_state(time_s, height_m, speed)[2:])


def test_it_leaves_the_lip_at_the_flow_over_the_lips_area():
    stream = one(pour(1.1)).plan.stream
    assert stream.speed_m_s == pytest.approx(lip_speed(30.0, 8.0))
    assert stream.regime == "stream"


def test_it_breaks_where_the_published_length_along_the_path_ends():
    stream = one(pour(**HIGH)).plan.stream
    v = lip_speed(12.0, 4.0)
    oh = WATER.viscosity_pa_s / math.sqrt(WATER.density_kg_m3 * WATER.surface_tension_n_m * 4e-3)
    we = WATER.density_kg_m3 * v**2 * 4e-3 / WATER.surface_tension_n_m
    length = 19.5 * math.sqrt(we) * (1 + 3 * oh) ** 0.85 * 4e-3
    gone, _ = quad(speed_aboard, 0, stream.breakup_s, args=(20.0, v), epsabs=1e-13)
    assert stream.breakup_m == pytest.approx(length)
    assert gone == pytest.approx(length, rel=LENGTH)


def test_the_place_of_breakup_is_on_the_free_path():
    traced = one(pour(**HIGH))
    x, y, _, _ = free_state(traced.plan.stream.breakup_s, 20.0, lip_speed(12.0, 4.0))
    assert traced.track.broke.height_m == pytest.approx(R - math.hypot(x, y), abs=SAME_M)
    assert traced.track.broke.along_m == pytest.approx(R * math.atan2(y, x), abs=SAME_M)


def test_it_thins_as_it_speeds_up_so_that_the_flow_stays():
    traced = one(pour(**HIGH))
    samples = traced.track.samples
    speeds = np.linalg.norm(samples.rotating_velocity_m_s, axis=1)
    whole = samples.time_s < traced.plan.stream.breakup_s
    diameter = traced.plan.stream.diameters_m(samples.time_s, speeds)
    assert np.count_nonzero(whole) > 20
    assert diameter[whole] ** 2 * speeds[whole] * math.pi / 4 == pytest.approx(12e-6)
    assert np.all(diameter[~whole] == traced.plan.stream.drop_diameter_m)


def test_drops_are_189_times_the_stream_and_carry_the_flow():
    traced = one(pour(**HIGH))
    stream = traced.plan.stream
    v = lip_speed(12.0, 4.0)
    thin = 4e-3 * math.sqrt(v / speed_aboard(stream.breakup_s, 20.0, v))
    assert stream.drop_diameter_m == pytest.approx(1.89 * thin)
    assert math.pi / 6 * stream.drop_diameter_m**3 / stream.drop_interval_s == pytest.approx(12e-6)


def test_the_stream_flies_free_and_the_drops_in_air():
    in_air, in_vacuum = one(pour(**HIGH), air=AIR), one(pour(**HIGH))
    whole = in_air.track.samples.time_s < in_air.plan.stream.breakup_s
    n = np.count_nonzero(whole)
    assert np.abs(in_air.track.samples.rotating_m[:n] - in_vacuum.track.samples.rotating_m[:n]).max() < SAME_M
    assert in_air.track.ends_s > in_vacuum.track.ends_s + 0.01


def test_a_drop_flies_like_a_ball_of_its_size_let_go_where_the_stream_breaks():
    traced = one(pour(**HIGH), air=AIR)
    stream, broke = traced.plan.stream, traced.track.broke
    size = stream.drop_diameter_m
    body = {"mass_kg": WATER.density_kg_m3 * math.pi / 6 * size**3, "diameter_m": size}
    spinward, up, _ = broke.local_m_s
    aim = (math.hypot(spinward, up), 0.0 if spinward > 0 else 180.0, math.degrees(math.atan2(up, abs(spinward))))
    ball = one(throw(broke.height_m, *aim, body, stream.breakup_s, along_m=broke.along_m), air=AIR)
    assert ball.track.ends_s == pytest.approx(traced.track.ends_s, abs=1e-7)
    assert ball.track.landing.along_m == pytest.approx(traced.track.landing.along_m, abs=2e-7)


def test_a_short_fall_lands_whole():
    stream = one(pour(0.3)).plan.stream
    assert (stream.breakup_s, stream.drop_diameter_m, stream.drop_interval_s) == (None, None, None)


def test_too_slow_a_flow_drips_from_the_lip():
    traced = one(pour(1.1, flow_ml_s=0.5, lip_mm=6.0))
    stream = traced.plan.stream
    assert (stream.regime, stream.breakup_s) == ("drips", None)
    assert stream.drop_diameter_m == pytest.approx(dripping_drop_m(WATER, OMEGA**2 * (R - 1.1), 6e-3))
    assert math.pi / 6 * stream.drop_diameter_m**3 / stream.drop_interval_s == pytest.approx(0.5e-6)
    assert traced.plan.velocity == (0.0, 0.0, 0.0)


def test_without_weight_a_slow_liquid_clings_to_the_lip():
    traced = one(pour(1.1, flow_ml_s=0.5, lip_mm=6.0), {"radius_m": 56.0, "spin_rpm": 0.0})
    assert traced.plan.stream.drop_diameter_m is None
    assert traced.track.no_landing == "never_meets"


def test_drops_of_a_pour_upward_have_one_apex_and_events_in_order():
    traced = one(pour(1.0, flow_ml_s=120.0, lip_mm=4.0, elevation_deg=60.0), air=AIR)
    rises_s = float(event(traced, "apex").time_s)
    assert traced.plan.stream.breakup_s < rises_s
    assert kinds(traced) == ["release", "apex", "deck"]


def test_parcels_follow_one_path_aboard_each_later():
    first, later = (one(pour(**HIGH, start_s=s), air=AIR) for s in (0.0, 0.75))
    assert later.plan.stream.breakup_s - 0.75 == pytest.approx(first.plan.stream.breakup_s, abs=1e-9)
    n = min(len(first.track.samples.time_s), len(later.track.samples.time_s))
    assert np.abs(first.track.samples.rotating_m[:n] - later.track.samples.rotating_m[:n]).max() < SAME_M


def test_the_first_and_last_parcels_leave_with_the_pour():
    stream = one(pour(1.1, start_s=0.4)).plan.stream
    assert (stream.first_leaves_s, stream.last_leaves_s) == (0.4, 2.4)


def test_the_companion_stream_breaks_at_the_same_length_of_its_own_path():
    traced = one(pour(**HIGH))
    gravity = OMEGA**2 * R
    v = lip_speed(12.0, 4.0)
    assert traced.flat_gravity.landing["time_s"] == pytest.approx(math.sqrt(2 * 20.0 / gravity), abs=0.2)
    assert traced.flat_gravity.landing["drift_m"] == pytest.approx(v * math.sqrt(2 * 20.0 / gravity), rel=0.05)


def test_a_pour_meets_the_ceiling_like_anything_else():
    traced = one(pour(3.9, flow_ml_s=200.0, elevation_deg=80.0), LANTERN | {"ceiling_m": 4.0})
    assert traced.track.no_landing == "met_ceiling"
