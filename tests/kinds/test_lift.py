"""Lifts: the profile against scipy's integral of its speed, the push against 2 omega v and -omega' r, the tilt, the time."""

import math

import numpy as np
import pytest
from scipy.integrate import quad

from tests.motions.scenes import LANTERN, OMEGA_LANTERN, kinds, one, place
from tests.tables import each_row

R, OMEGA, G0 = 56.0, OMEGA_LANTERN, 9.80665


def lift(to_height_m=40.0, height_m=0.0, **more):
    return {"kind": "lift", "place": place(height_m), "to_height_m": to_height_m} | more


def speed_at(time_s, way_m, top_m_s, change_m_s2):
    """The even trapezoid, or the triangle where it is too short, from its corners."""
    top = min(top_m_s, math.sqrt(way_m * change_m_s2))
    whole = way_m / top + top / change_m_s2
    corners = [0.0, top / change_m_s2, whole - top / change_m_s2, whole]
    return float(np.interp(time_s, corners, [0.0, top, top, 0.0])), corners


@each_row(("to", "first", "top", "change"), [(40, 0, 3.0, 0.5), (0, 40, 3.0, 0.5), (2, 0, 3.0, 0.5)])
def test_it_goes_as_its_speed_adds_up(to, first, top, change):
    traced = one(lift(to, first, top_speed_m_s=top, acceleration_m_s2=change))
    samples, way = traced.track.samples, abs(to - first)
    _, corners = speed_at(0.0, way, top, change)
    assert traced.findings["takes_s"] == pytest.approx(corners[-1], rel=1e-12)
    for k in (10, len(samples.time_s) // 2, len(samples.time_s) - 3):
        until = float(samples.time_s[k])
        gone, _ = quad(lambda t: speed_at(t, way, top, change)[0], 0, until, points=corners[1:3], limit=200)
        assert samples.height_m[k] - 1.0 == pytest.approx(first + math.copysign(gone, to - first), abs=1e-8)
    assert kinds(traced) == ["release", "arrives"]
    assert traced.track.events[-1].height_m == pytest.approx(to + 1.0, abs=1e-12 * R)
    assert np.abs(samples.along_m).max() < 1e-12 * R


@each_row(("to", "first", "sign"), [(50.0, 0.0, 1.0), (0.0, 50.0, -1.0)])
def test_at_one_speed_the_push_is_twice_omega_v(to, first, sign):
    traced = one(lift(to, first, top_speed_m_s=2.0))
    findings, radius = traced.findings, R - (traced.track.samples.height_m - 1.0)
    assert findings["takes_s"] == pytest.approx(25.0)
    assert findings["sideways_m_s2"] == pytest.approx(sign * 2 * OMEGA * 2.0, rel=1e-12)
    assert findings["most_sideways_m_s2"] == pytest.approx(2 * OMEGA * 2.0, rel=1e-12)
    down = OMEGA**2 * radius
    assert findings["tilt_deg"] == pytest.approx(np.degrees(np.arctan(4 * OMEGA / down)), rel=1e-9)
    assert findings["apparent_g"] == pytest.approx(np.hypot(4 * OMEGA, down) / G0, rel=1e-9)
    assert findings["most_tilt_deg"] == pytest.approx(math.degrees(math.atan(4 * OMEGA / (OMEGA**2 * 6.0))), rel=1e-12)


def test_while_it_speeds_up_one_is_heavier():
    findings = one(lift(40.0, top_speed_m_s=3.0, acceleration_m_s2=0.5)).findings
    assert findings["apparent_g"][0] == pytest.approx((OMEGA**2 * R + 0.5) / G0, rel=1e-12)


def test_spin_up_pushes_back_by_omega_dot_r():
    """2 omega v - omega' r at each time's own omega (Euler)."""
    change = OMEGA / 20.0
    traced = one(lift(40.0, top_speed_m_s=2.0), LANTERN | {"spin_ramp": [{"time_s": 20.0, "spin_rpm": 6.0}]})
    time_s = traced.track.samples.time_s[:-1]  # at the knot itself the spin is steady again
    expected = 4.0 * (OMEGA + change * time_s) - change * (R - 2.0 * time_s)
    assert traced.findings["sideways_m_s2"][:-1] == pytest.approx(expected, rel=1e-9)


def test_thrust_leans_it_too():
    findings = one(lift(40.0, top_speed_m_s=2.0), LANTERN | {"axial_thrust_m_s2": 1.0}).findings
    level = math.hypot(4 * OMEGA, 1.0)
    assert findings["tilt_deg"][0] == pytest.approx(math.degrees(math.atan(level / (OMEGA**2 * R))), rel=1e-12)


def test_a_shaft_passes_a_ceiling():
    traced = one(lift(30.0), LANTERN | {"ceiling_m": 4.0})
    assert traced.track.end == "arrived"


def test_without_spin_nothing_is_felt_but_its_own_speeding_up():
    findings = one(lift(40.0, acceleration_m_s2=0.5), {"radius_m": 56.0, "spin_rpm": 0.0}).findings
    assert findings["apparent_g"][0] == pytest.approx(0.5 / G0)
    assert findings["most_sideways_m_s2"] == 0.0


def test_a_slow_ride_is_cut_at_the_time_limit_but_told_whole():
    traced = one(lift(40.0, top_speed_m_s=0.5))
    assert (traced.track.end, traced.findings["takes_s"]) == ("time limit", 80.0)
    assert float(traced.track.samples.height_m[-1]) == pytest.approx(31.0)
