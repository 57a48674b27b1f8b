"""Walking: the path against helix and spiral in closed form, weight against (omega r + v)^2/r, and where a way ends."""

import math

import numpy as np
import pytest

from rimfall.physics.spin import steady
from tests.motions.scenes import LANTERN, OMEGA_LANTERN, kinds, one, place
from tests.tables import each_row

R, OMEGA, G0 = 56.0, OMEGA_LANTERN, 9.80665
EXACT = 1e-12  # of the radius
PODS = {"shape": "pods", "radius_m": 24.0, "spin_rpm": 4.0,
        "floors": [{"length_m": 12.0, "width_m": 6.0, "ceiling_m": 3.0}]}  # fmt: skip
TABLE = {"shape": "turntable", "radius_m": 6.0, "spin_rpm": 6.0}
RAMPED = LANTERN | {"spin_ramp": [{"time_s": 10.0, "spin_rpm": 6.0}]}
RAMP_RAD_S2 = OMEGA / 10.0


def walk(speed_m_s=1.4, heading_deg=0.0, height_m=0.0, **more):
    where = {k: more.pop(k) for k in ("along_m", "axial_m") if k in more}
    return {
        "kind": "walk",
        "place": place(height_m, **where),
        "speed_m_s": speed_m_s,
        "heading_deg": heading_deg,
    } | more


@each_row("heading", [0.0, 180.0, 37.0, 90.0])
@each_row("radius", [5.0, 56.0, 20_000.0])
def test_a_walk_is_a_helix(heading, radius):
    """exp(i v t/R) about the axis, straight along it: exact to 1e-12 R at every sample and just before every knot."""
    traced = one(walk(3.0, heading, for_s=30.0, along_m=0.7), {"radius_m": radius, "spin_rpm": 1.0})
    path, samples = traced.track.path, traced.track.samples
    times = np.concatenate([samples.time_s, np.nextafter(path.knots_s, 0.0)])
    level, across = 3.0 * math.cos(math.radians(heading)), 3.0 * math.sin(math.radians(heading))
    plane = (radius - 1.0) * np.exp(1j * (0.7 + level * times) / radius)
    position = path.at(times)[0]
    assert np.abs(position[:, 0] + 1j * position[:, 1] - plane).max() < EXACT * radius
    assert np.abs(position[:, 2] - across * times).max() < EXACT * max(radius, 90.0)
    assert samples.along_m == pytest.approx(0.7 + level * samples.time_s, abs=1e-9)


@each_row("climb", [20.0, 70.0, -20.0])
def test_stairs_are_a_spiral_toward_the_axis(climb):
    """ODE by hand: d(azimuth)/dt = v cos(climb)/r, dr/dt = -v sin(climb), so azimuth = cot(climb) ln(r0/r)."""
    height = 0.0 if climb > 0 else 40.0
    traced = one(walk(3.0, climb_deg=climb, for_s=12.0, height_m=height), LANTERN)
    times = traced.track.path.knots_s
    first = R - height
    feet = first - 3.0 * math.sin(math.radians(climb)) * times
    plane = (feet - 1.0) * np.exp(1j * np.log(first / feet) / math.tan(math.radians(climb)))
    position = traced.track.path.at(times)[0]
    assert len(times) > 3
    assert np.abs(position[:, 0] + 1j * position[:, 1] - plane).max() < EXACT * R


def test_velocities_and_accelerations_are_the_rates_of_the_path():
    """Central differences of places half a millisecond on either side: errors of order 1e-7."""
    traced = one(walk(3.0, 30.0, climb_deg=25.0, for_s=10.0), LANTERN)
    path, times = traced.track.path, np.linspace(0.1, 9.9, 57)
    step = 5e-4
    before, here, after = (path.at(times + d) for d in (-step, 0.0, step))
    assert here[1] == pytest.approx((after[0] - before[0]) / (2 * step), abs=1e-7)
    spin = traced.track.path.acceleration(steady(OMEGA), times, *here)
    assert spin == pytest.approx((after[1] - before[1]) / (2 * step), abs=1e-7)


@each_row("speed", [1.4, 4.0, 10.0])
@each_row(("heading", "sign"), [(0.0, 1), (180.0, -1)])
def test_weight_at_the_feet_is_that_of_the_whole_speed(speed, heading, sign):
    """(omega R + v)^2/R: the centripetal acceleration of a point that goes round at that speed (any mechanics text)."""
    findings = one(walk(speed, heading), LANTERN).findings
    assert findings["feet_g"] == pytest.approx((OMEGA * R + sign * speed) ** 2 / R / G0, rel=1e-12)
    head = R - 1.75
    assert findings["head_g"] == pytest.approx((OMEGA + sign * speed / R) ** 2 * head / G0, rel=1e-12)
    assert findings["standing_g"] == pytest.approx(OMEGA**2 * R / G0, rel=1e-12)
    assert np.abs(findings["sideways_m_s2"]).max() < 1e-12


def test_at_the_ground_s_own_speed_it_floats():
    floats = one(walk(), LANTERN).findings["floats_at_m_s"]
    assert floats == pytest.approx(OMEGA * R, rel=1e-12)
    assert one(walk(floats, 180.0), LANTERN).findings["feet_g"] == pytest.approx(0.0, abs=1e-12)


def test_on_a_flat_floor_half_that_speed_is_enough():
    """A straight line does not bend with the ground: omega^2 r = 2 omega v in the middle of the floor."""
    omega = 4.0 * math.pi / 30
    findings = one(walk(omega * 24.0 / 2, 180.0, for_s=0.2, along_m=0.0), PODS).findings
    assert findings["floats_at_m_s"] == pytest.approx(omega * 24.0 / 2, rel=1e-12)
    assert findings["feet_g"][0] == pytest.approx(0.0, abs=1e-12)


def test_a_ladder_pushes_sideways_by_twice_omega_v():
    findings = one(walk(1.0, climb_deg=90.0, for_s=8.0), LANTERN).findings
    assert findings["sideways_m_s2"] == pytest.approx(2 * OMEGA * 1.0, rel=1e-12)
    down = OMEGA**2 * (R - np.arange(len(findings["feet_g"])) / 48)
    assert findings["lean_deg"] == pytest.approx(np.degrees(np.arctan(2 * OMEGA / down)), rel=1e-9)


def test_while_the_wheel_spins_up_everything_is_pushed_back():
    """Euler: -omega' r at the feet, and down with it at the time's own omega."""
    traced = one(walk(0.0, for_s=8.0), RAMPED)
    rate = OMEGA + RAMP_RAD_S2 * traced.track.samples.time_s
    assert traced.findings["sideways_m_s2"] == pytest.approx(-RAMP_RAD_S2 * R, rel=1e-12)
    assert traced.findings["feet_g"] == pytest.approx(np.hypot(rate**2 * R, RAMP_RAD_S2 * R) / G0, rel=1e-12)


def test_walking_outward_on_a_turntable():
    """Straight out at v: 2 omega v antispinward, omega^2 r outward, the room's weight down (any mechanics text)."""
    omega = 6.0 * math.pi / 30
    traced = one(walk(1.0, 90.0, axial_m=1.5, for_s=3.0, centre_m=1.0), TABLE)
    findings, r = traced.findings, 1.5 + traced.track.samples.time_s
    assert findings["sideways_m_s2"] == pytest.approx(-2 * omega, rel=1e-12)
    level = np.hypot(2 * omega, omega**2 * r)
    assert findings["feet_g"] == pytest.approx(np.hypot(level, G0) / G0, rel=1e-12)
    assert findings["lean_deg"] == pytest.approx(np.degrees(np.arctan(level / G0)), rel=1e-12)
    assert traced.track.samples.axial_m == pytest.approx(r, abs=1e-12)


ENDS = [
    (walk(2.0, 90.0, for_s=30.0), LANTERN | {"width_m": 14.0}, "wall", 6.0 / 2.0),
    (walk(2.0, climb_deg=90.0, for_s=30.0), LANTERN | {"ceiling_m": 4.0}, "ceiling", 1.0),
    (walk(2.0, climb_deg=90.0, for_s=30.0), LANTERN | {"hub_radius_m": 2.0}, "hub", 52.0 / 2.0),
    (walk(2.0, climb_deg=90.0, for_s=30.0), LANTERN, "arrives", 54.0 / 2.0),
    (walk(2.0, climb_deg=-90.0, height_m=3.0), LANTERN, "deck", 1.5),
    (walk(2.0, 0.0, for_s=30.0), PODS, "edge", 3.0),
    (walk(2.0, 90.0, for_s=30.0), PODS, "edge", 1.5),
    (walk(2.0, climb_deg=90.0, for_s=30.0), PODS, "ceiling", 0.5),
    (walk(2.0, 90.0, axial_m=1.0, for_s=30.0), TABLE, "edge", 2.5),
    (walk(2.0, climb_deg=90.0, for_s=30.0), {"shape": "torus", "tube_radius_m": 6.0} | LANTERN, "ceiling", 5.0),
    (walk(2.0, for_s=4.0), LANTERN, "arrives", 4.0),
]


@each_row(("motion", "habitat", "kind", "after_s"), ENDS)
def test_a_way_ends_where_something_is_or_when_it_is_over(motion, habitat, kind, after_s):
    traced = one(motion, habitat)
    assert kinds(traced) == ["release", kind]
    assert traced.track.events[-1].time_s == pytest.approx(after_s, abs=1e-9)
    ends = {"arrives": "arrived", "edge": "edge"}
    assert traced.track.end == ends.get(kind, "met a surface")


def test_a_long_walk_ends_at_the_time_limit_or_with_the_scene():
    assert one(walk(for_s=600.0)).track.end == "time limit"
    assert one(walk(for_s=600.0), duration_s=7.0).track.end == "duration"
    assert one(walk(start_s=9.0), duration_s=7.0).track.path is None


def test_the_body_turns_with_the_ground_it_walks_on():
    traced = one(walk(5.6, for_s=20.0), LANTERN)
    half = 0.5 * 5.6 * 20.0 / R
    assert traced.track.attitude_wxyz[-1] == pytest.approx([math.cos(half), 0, 0, math.sin(half)], abs=1e-12)


@each_row("climb", [25.0, -25.0])
def test_what_is_felt_on_stairs_is_what_bends_the_inertial_path(climb):
    """Feet and head at f exp(i(azimuth + omega t)) in the still frame; second differences over 2 ms: errors of order 1e-6."""
    height = 0.0 if climb > 0 else 30.0
    traced = one(walk(3.0, climb_deg=climb, for_s=10.0, height_m=height), LANTERN)
    time_s, step = traced.track.samples.time_s, 2e-3
    rise, first = 3.0 * math.sin(math.radians(climb)), R - height

    def still(t, up):
        feet = first - rise * t
        return (feet - up) * np.exp(1j * (np.log(first / feet) / math.tan(math.radians(climb)) + OMEGA * t))

    def bend(up):
        return (still(time_s + step, up) - 2 * still(time_s, up) + still(time_s - step, up)) / step**2

    findings = traced.findings
    assert findings["feet_g"] == pytest.approx(np.abs(bend(0.0)) / G0, abs=1e-6)
    assert findings["head_g"] == pytest.approx(np.abs(bend(1.75)) / G0, abs=1e-6)
    spinward = 1j * still(time_s, 0.0) / np.abs(still(time_s, 0.0))
    assert findings["sideways_m_s2"] == pytest.approx(-(bend(0.0) * spinward.conj()).real, abs=1e-5)
