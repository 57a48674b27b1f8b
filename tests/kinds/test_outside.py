"""Outside: letting go and coming in, against straight lines as complex numbers and scipy's root finder."""

import math

import numpy as np
import pytest
from scipy.optimize import brentq, minimize

from tests.motions.scenes import LANTERN, OMEGA_LANTERN, kinds, one, place
from tests.tables import each_row

R, OMEGA = 56.0, OMEGA_LANTERN
EXACT = 1e-10 * R
RAMP = LANTERN | {"spin_ramp": [{"time_s": 20.0, "spin_rpm": 5.0}]}
PODS = {"shape": "pods", "radius_m": 24.0, "spin_rpm": 4.0, "floors": [{"length_m": 12.0, "width_m": 6.0}]}


def let_go(height_m=-1.0, speed_m_s=0.0, heading_deg=0.0, elevation_deg=0.0, **more):
    where = {k: more.pop(k) for k in ("along_m", "axial_m") if k in more}
    push = {"speed_m_s": speed_m_s, "heading_deg": heading_deg, "elevation_deg": elevation_deg}
    return {"kind": "let_go", "place": place(height_m, **where)} | push | more


def approach(speed_m_s=5.0, from_m=200.0, heading_deg=0.0, elevation_deg=-45.0, dock="rim", **more):
    where = {k: more.pop(k) for k in ("height_m", "along_m", "axial_m") if k in more}
    aim = {"speed_m_s": speed_m_s, "heading_deg": heading_deg, "elevation_deg": elevation_deg}
    return {"kind": "approach", "place": where, "dock": dock, "from_m": from_m} | aim | more


def angle(time_s, ramped):
    """How far the wheel has turned: steady, or from 3 to 5 rpm in 20 s and then steady, integrated by hand."""
    if not ramped:
        return OMEGA * time_s
    gains, after = OMEGA * 2 / 3 / 20.0, np.maximum(time_s - 20.0, 0.0)
    on = np.minimum(time_s, 20.0)
    return OMEGA * on + gains * on**2 / 2 + OMEGA * 5 / 3 * after


@each_row("ramped", [False, True])
@each_row("air", [None, {"pressure_kpa": 101.325}])
def test_one_that_lets_go_keeps_to_a_straight_line(ramped, air):
    """57 + i 57 omega t for hanging a metre under the rim, air or no air inside; aboard, turned back by the wheel's angle."""
    track = one(let_go(), RAMP if ramped else LANTERN, air).track
    time_s, p, q = track.samples.time_s, track.samples.inertial_m, track.samples.rotating_m
    line = 57.0 + 57.0j * OMEGA * time_s
    assert np.abs(p[:, 0] + 1j * p[:, 1] - line).max() < EXACT
    assert np.abs(q[:, 0] + 1j * q[:, 1] - line * np.exp(-1j * angle(time_s, ramped))).max() < EXACT
    assert (track.end, kinds(one(let_go()))) == ("time limit", ["release", "time_limit"])


@each_row("ramped", [False, True])
@each_row("push", [{}, {"speed_m_s": 3.0, "heading_deg": 180.0}, {"speed_m_s": 2.0, "heading_deg": 60.0}])
def test_distance_and_sweeps_are_those_of_the_complex_line(ramped, push):
    traced = one(let_go(**push), RAMP if ramped else LANTERN)
    heading, speed = math.radians(push.get("heading_deg", 0.0)), push.get("speed_m_s", 0.0)
    level, axial = 57.0 * OMEGA + speed * math.cos(heading), speed * math.sin(heading)

    def line(t):
        return 57.0 + 1j * level * t

    def apart(t):
        return np.hypot(np.abs(line(t) - 57.0 * np.exp(1j * angle(t, ramped))), axial * t)

    time_s, findings = traced.track.samples.time_s, traced.findings
    assert findings["distance_m"] == pytest.approx(apart(time_s), abs=EXACT)
    assert findings["leaves_m_s"] == pytest.approx(math.hypot(level, axial), rel=1e-12)
    full = [
        brentq(lambda t, n=n: angle(t, ramped) - np.angle(line(t)) - math.tau * n, 0.1, 200, xtol=1e-12)
        for n in (1, 2, 3)
    ]
    expected = [t for t in full if t <= 60.0]
    assert [s["time_s"] for s in findings["sweeps_by"]] == pytest.approx(expected, abs=1e-8)
    assert [s["distance_m"] for s in findings["sweeps_by"]] == pytest.approx(
        [float(apart(t)) for t in expected], abs=1e-6
    )


def test_a_push_at_the_rim_s_own_speed_meets_the_place_again_every_turn():
    traced = one(let_go(speed_m_s=57.0 * OMEGA, heading_deg=180.0))
    assert traced.findings["leaves_m_s"] == pytest.approx(0.0, abs=1e-12)
    assert [s["time_s"] for s in traced.findings["sweeps_by"]] == pytest.approx([20.0, 40.0, 60.0], abs=1e-6)
    assert [s["distance_m"] for s in traced.findings["sweeps_by"]] == pytest.approx([0.0] * 3, abs=1e-6)


def taut_m(near_m, far_m, psi):
    """Length of a taut string round a disc of radius R, from near_m to far_m and psi apart in azimuth: 120 beads on it, pressed in by
    scipy until it is shortest and none is inside. The chords of beads on the disc are short by 2e-4 at the most."""
    azimuth = psi / 120

    def length(radii):
        r = np.concatenate([[near_m], radii, [far_m]])
        parts = np.sqrt(r[1:] ** 2 + r[:-1] ** 2 - 2 * r[1:] * r[:-1] * math.cos(azimuth))
        slope_out, slope_in = r[1:] - r[:-1] * math.cos(azimuth), r[:-1] - r[1:] * math.cos(azimuth)
        grows = np.zeros(len(r))
        grows[1:] += slope_out / parts
        grows[:-1] += slope_in / parts
        return float(np.sum(parts)), grows[1:-1]

    first = np.linspace(near_m, far_m, 121)[1:-1]
    return minimize(
        length, first, jac=True, bounds=[(R, None)] * 119, options={"maxiter": 20_000, "maxfun": 40_000}
    ).fun


@each_row("k", [300, 700, 1200])
def test_a_line_paid_out_goes_round_the_hull(k):
    traced = one(let_go(-5.0), LANTERN)
    time_s = traced.track.samples.time_s[k]
    psi = OMEGA * time_s - math.atan(OMEGA * time_s)  # how far apart in azimuth, unwound
    expected = taut_m(61.0, 61.0 * math.hypot(1.0, OMEGA * time_s), psi)
    assert traced.findings["line_m"][k] == pytest.approx(expected, rel=5e-4)


def test_a_line_laid_round_the_hull_is_longer_by_the_way_along_the_axis():
    """A drum unrolls into a plane: the two lengths are sides of a right angle."""
    (level, aslant), k = (one(let_go(-5.0, v, 90.0)) for v in (0.0, 20.0)), 700
    along_the_axis = 20.0 * aslant.track.samples.time_s[k]
    round_it = level.findings["line_m"][k]
    assert aslant.findings["line_m"][k] == pytest.approx(math.hypot(round_it, along_the_axis), rel=1e-9)
    assert aslant.findings["line_m"][k] > 1.01 * round_it


def test_pushed_up_against_the_hull_it_is_met():
    """|57 - 8 t + i (57 omega) t| = 56: the quadratic's earlier root."""
    traced = one(let_go(-1.0, 8.0, 0.0, 90.0))
    level = 57.0 * OMEGA
    b, c = -2 * 57.0 * 8.0, 57.0**2 - 56.0**2
    square = 8.0**2 + level**2
    time_s = (-b - math.sqrt(b * b - 4 * square * c)) / (2 * square)
    assert traced.track.end == "met a surface"
    assert [k for k in kinds(traced) if k != "apex"] == ["release", "hull"]
    assert traced.track.events[-1].time_s == pytest.approx(time_s, abs=1e-9)
    assert traced.track.no_landing == "met_hull"


@each_row("heading", [90.0, 270.0])
def test_past_either_end_of_the_hull_it_is_not_met(heading):
    """As above, 0.13 s on the way to the hull's radius; at 8 m/s along the axis that is 1.1 m, and 0.5 m further the hull ends."""
    out, aslant = 1.5 if heading == 90.0 else -1.5, math.hypot(8.0, 8.0)
    wheel = LANTERN | {"width_m": 4.0}
    assert one(let_go(-1.0, 8.0, heading, 90.0, axial_m=out), wheel).track.end == "met a surface"
    assert one(let_go(-1.0, aslant, heading, 45.0, axial_m=out), wheel).track.end == "time limit"


def test_under_thrust_it_falls_behind_the_ship():
    traced = one(let_go(), LANTERN | {"axial_thrust_m_s2": 0.5})
    assert traced.track.samples.axial_m == pytest.approx(-0.25 * traced.track.samples.time_s**2, abs=1e-9)


def test_without_spin_and_push_it_stays():
    traced = one(let_go(), {"radius_m": 56.0, "spin_rpm": 0.0})
    assert traced.findings["distance_m"].max() == traced.findings["line_m"].max() == 0.0
    assert traced.findings["sweeps_by"] == []


def test_under_a_pod_it_leaves_along_the_same_line():
    omega = 4.0 * math.pi / 30
    track = one(let_go(-2.0), PODS | {"spin_ramp": [{"time_s": 5.0, "spin_rpm": 4.0}]}).track
    p = track.samples.inertial_m
    assert np.abs(p[:, 0] + 1j * p[:, 1] - (26.0 + 26.0j * omega * track.samples.time_s)).max() < 1e-10 * 24


@each_row("habitat", [LANTERN, RAMP])
@each_row(("heading", "elevation"), [(0.0, -45.0), (180.0, -10.0), (30.0, -60.0), (90.0, 0.0)])
def test_a_craft_comes_straight_to_where_the_dock_then_is(habitat, heading, elevation):
    """Dock exp(i theta(T)) R at contact; the line runs back from there along the directions at that very moment."""
    traced = one(approach(5.0, 150.0, heading, elevation), habitat)
    track, ramped = traced.track, "spin_ramp" in habitat
    there = np.exp(1j * angle(np.array(30.0), ramped))
    e, h = math.radians(elevation), math.radians(heading)
    toward = -5.0 * (math.cos(e) * math.cos(h) * 1j - math.sin(e)) * there
    time_s, p = track.samples.time_s, track.samples.inertial_m
    assert np.abs(p[:, 0] + 1j * p[:, 1] - (R * there + toward * (time_s - 30.0))).max() < EXACT
    assert np.abs(p[:, 2] + 5.0 * math.cos(e) * math.sin(h) * (time_s - 30.0)).max() < EXACT
    assert (track.end, kinds(traced)[-1], float(track.ends_s)) == ("arrived", "dock", 30.0)
    assert traced.findings["distance_m"][0] == pytest.approx(np.linalg.norm(track.samples.rotating_m[0] - [R, 0, 0]))
    assert traced.findings["distance_m"][-1] == pytest.approx(0.0, abs=EXACT)


def test_what_must_be_cancelled_is_the_velocity_against_the_rim():
    """Closing at 5 m/s from 45 degrees below spinward, the rim running to meet it at omega R."""
    findings = one(approach()).findings
    level = -5.0 * math.sqrt(0.5) - OMEGA * R
    assert findings["to_cancel_m_s"] == pytest.approx([level, 5.0 * math.sqrt(0.5), 0.0], abs=1e-9)
    assert findings["to_cancel_size_m_s"] == pytest.approx(math.hypot(level, 5.0 * math.sqrt(0.5)))
    assert findings["to_cancel_n_s"] == pytest.approx(12_000 * findings["to_cancel_size_m_s"])


def test_at_the_hub_only_the_closing_speed_is_left():
    traced = one(approach(2.0, 60.0, 90.0, 0.0, "hub", axial_m=7.0))
    assert traced.findings["to_cancel_m_s"] == pytest.approx([0.0, 0.0, -2.0], abs=1e-12)
    assert traced.findings["turns_seen"] == pytest.approx(1.5)
    assert np.abs(traced.track.samples.rotating_m[:, :2]).max() == pytest.approx(0.0, abs=1e-12)


def test_from_aboard_it_winds_in():
    """Turns seen: how far the wheel turns, less the craft's own azimuth, by the complex line."""
    traced = one(approach(5.0, 200.0, 0.0, -45.0))
    back = (R * np.exp(1j * 0.0) - (-5.0 * (math.sqrt(0.5) * 1j + math.sqrt(0.5))) * 40.0) / R
    turns = OMEGA * 40.0 / math.tau + np.angle(back) / math.tau
    assert traced.findings["turns_seen"] == pytest.approx(turns, abs=1e-9)
    along = traced.track.samples.along_m
    assert (along[0] - along[-1]) / (math.tau * R) == pytest.approx(turns, abs=1e-9)
    assert along[-1] == pytest.approx(0.0, abs=1e-8)


def test_under_thrust_the_craft_sags_into_the_dock():
    traced = one(approach(5.0, 100.0, 90.0, 0.0, "hub"), LANTERN | {"axial_thrust_m_s2": 0.1})
    before = traced.track.samples.time_s - 20.0
    assert traced.track.samples.axial_m == pytest.approx(-5.0 * before - 0.05 * before**2, abs=1e-9)


def test_under_a_pod_with_thrust_it_falls_behind_through_every_change_of_spin():
    pods = PODS | {"axial_thrust_m_s2": 0.5, "spin_ramp": [{"time_s": 5.0, "spin_rpm": 6.0}]}
    samples = one(let_go(-2.0), pods).track.samples
    assert samples.axial_m == pytest.approx(-0.25 * samples.time_s**2, abs=1e-9)


@each_row("along", [0.0, 37.0, -101.3, 200.0])
def test_from_the_hull_itself_it_leaves(along):
    assert one(let_go(0.0, along_m=along)).track.end == "time limit"
