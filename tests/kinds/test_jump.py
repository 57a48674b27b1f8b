"""Jumps: the exact straight line of vacuum, the ordinary jump far out, drag against scipy, and what the feet say of it."""

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from tests.motions.scenes import AIR, LANTERN, OMEGA_LANTERN, one, one_g, place
from tests.tables import each_row

R, OMEGA = 56.0, OMEGA_LANTERN


def jump(speed_m_s=2.7, heading_deg=0.0, elevation_deg=90.0, height_m=0.0, **more):
    aim = {"speed_m_s": speed_m_s, "heading_deg": heading_deg, "elevation_deg": elevation_deg}
    return {"kind": "jump", "place": place(height_m)} | aim | more


def straight(centre_m, spinward_m_s, up_m_s):
    """Time and drift of a jump in vacuum from the complex straight line w(t) = (r - up t) + i (omega r + v) t, met by the feet at
    |w| = R - centre: the quadratic by hand."""
    r = R - centre_m
    level = OMEGA * r + spinward_m_s
    time_s = 2 * r * up_m_s / (up_m_s**2 + level**2)
    line = complex(r - up_m_s * time_s, level * time_s)
    return time_s, R * (math.atan2(line.imag, line.real) - OMEGA * time_s)


@each_row(("spinward", "up"), [(0.0, 2.7), (3.0, 3.0), (-4.0, 3.0), (-6.0, 2.5)])
@each_row("centre", [1.0, 0.4])
def test_in_vacuum_it_lands_where_the_straight_line_says(spinward, up, centre):
    speed, elevation = math.hypot(spinward, up), math.degrees(math.atan2(up, abs(spinward)))
    jumped = one(jump(speed, 0.0 if spinward >= 0 else 180.0, elevation, centre_m=centre))
    time_s, drift = straight(centre, spinward, up)
    landing = jumped.track.landing
    assert landing.time_s == pytest.approx(time_s, abs=1e-9)
    assert jumped.findings["lands_m"] == pytest.approx([drift, 0.0], abs=1e-8)
    assert jumped.findings["apart_m"] == pytest.approx(abs(drift), abs=1e-8)
    assert landing.height_m == pytest.approx(centre, abs=1e-9)  # the feet are down when the centre is as high again


def test_far_out_it_is_the_ordinary_jump():
    """R -> infinity at one g: v^2/(2 g) high, 2 v/g long (any mechanics text), to the order of v^2/(g R)."""
    jumped = one(jump(2.7), one_g(100_000.0))
    assert jumped.track.apex.height_m - 1.0 == pytest.approx(2.7**2 / (2 * 9.80665), rel=1e-4)
    assert jumped.track.landing.time_s == pytest.approx(2 * 2.7 / 9.80665, rel=1e-4)
    assert abs(jumped.findings["apart_m"]) < 0.003


def test_a_run_up_is_added():
    """3 m/s up and 4 m/s spinward is one jump of 5 m/s, whoever ran."""
    whole = one(jump(5.0, 0.0, math.degrees(math.atan2(3, 4)))).findings
    ran = one(jump(3.0, 0.0, 90.0, carried={"speed_m_s": 4.0, "heading_deg": 0.0})).findings
    assert ran["lands_m"] == pytest.approx(whole["lands_m"], abs=1e-9)


def test_in_air_it_flies_as_scipy_says():
    """A drag area of 0.9 m2 on 60 kg in air that turns and thins (isothermal), scipy's DOP853 in the inertial frame."""
    air_kg_m3 = 101_325.0 / (287.05 * 293.15)
    jumped = one(jump(9.0, 0.0, 60.0, mass_kg=60.0, drag_area_m2=0.9), LANTERN, AIR)
    end_s = jumped.track.landing.time_s

    def rates(_t, y):
        wind = y[2:] - OMEGA * np.array([-y[1], y[0]])
        thin = math.exp(-(OMEGA**2) * (R**2 - y[0] ** 2 - y[1] ** 2) / (2 * 287.05 * 293.15))
        return [*y[2:], *(-0.5 * air_kg_m3 * thin * 0.9 / 60.0 * np.linalg.norm(wind) * wind)]

    up, level = 9.0 * math.sin(math.pi / 3), 4.5 + OMEGA * 55.0
    flown = solve_ivp(rates, (0, end_s), [55.0, 0, -up, level], method="DOP853", rtol=1e-12, atol=1e-12)
    assert jumped.track.landing.inertial_m[:2] == pytest.approx(flown.y[:2, -1], abs=1e-6)
    assert np.hypot(*flown.y[:2, -1]) == pytest.approx(55.0, abs=1e-6)


def test_without_spin_nothing_brings_a_jumper_back():
    jumped = one(jump(), {"radius_m": 56.0, "spin_rpm": 0.0, "ceiling_m": 4.0}, duration_s=5)
    assert jumped.track.landing is None
    assert jumped.findings["lands_m"] is jumped.findings["apart_m"] is None
    assert jumped.track.events[1].kind == "ceiling"
    assert jumped.track.events[1].height_m == pytest.approx(3.0, abs=1e-9)  # the head is at 4 m


def test_level_and_downward_jumps_are_down_at_once():
    for elevation in (0.0, -30.0):
        jumped = one(jump(2.0, 180.0, elevation))
        assert (jumped.track.end, float(jumped.track.ends_s)) == ("landed", 0.0)


def test_a_jump_begun_later_is_told_as_one_begun_at_once():
    """A steady wheel is the same at every time: what is told is how long each lasts."""
    at_once, later = (one(jump(start_s=s)).outcome("si") for s in (0.0, 7.0))
    assert "under plain gravity" in at_once[0]
    assert later == at_once
