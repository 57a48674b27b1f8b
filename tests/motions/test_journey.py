"""From rebound to rebound and on to rolling: the laws a journey keeps, and what ends it."""

import math

import numpy as np
import pytest

from rimfall.motions.carry import carry
from rimfall.motions.journey import Start
from rimfall.motions.setting import Setting
from rimfall.physics.bodies import Body
from rimfall.physics.spin import steady
from rimfall.shapes import Cylinder
from tests.motions.scenes import AIR, LANTERN, OMEGA_LANTERN, drop, one, place, throw, trace
from tests.tables import each_row

SMOOTH = {"mass_kg": 0.45, "diameter_m": 0.18, "restitution": 1.0, "friction": 0.0}
COURT = LANTERN | {"width_m": 14.0}


def kinds(traced):
    return [e.kind for e in traced.track.events]


def contacts(traced):
    return [e for e in traced.track.events if e.surface is not None]


@each_row("room", [LANTERN, COURT | {"axial_thrust_m_s2": 0.2}])
def test_200_rebounds_without_loss_keep_the_energy_of_the_turning_frame(room):
    """E' = u^2/2 - omega^2 rho^2/2 + thrust z: the bound of a single path (design, section 2), twenty times as long."""
    traced = one(throw(0.115, 0.5, 30, 0, SMOOTH) | {"bounces": 200}, room)
    assert len(contacts(traced)) >= 200
    samples = traced.track.samples
    kinetic = 0.5 * np.sum(samples.rotating_velocity_m_s**2, axis=1)
    spinning = 0.5 * OMEGA_LANTERN**2 * np.sum(samples.rotating_m[:, :2] ** 2, axis=1)
    kept = kinetic - spinning + room.get("axial_thrust_m_s2", 0.0) * samples.axial_m
    rebounding = samples.time_s < float(contacts(traced)[199].time_s)
    assert np.ptp(kept[rebounding]) <= 1e-11 * np.max(kinetic + spinning)


@each_row("bounces", [0, 1, 2, 7])
def test_it_rebounds_as_often_as_it_may(bounces):
    traced = one(drop(1.5, SMOOTH) | {"bounces": bounces}, LANTERN, duration_s=20)
    rebounds = [e for e in contacts(traced) if e.after_m_s[1] > 1e-9]
    assert len(rebounds) == bounces


def test_each_rebound_of_a_drop_rises_by_the_square_of_the_restitution():
    ball = SMOOTH | {"restitution": 0.8}
    traced = one(drop(1.5, ball) | {"bounces": 5}, LANTERN, duration_s=10)
    speeds = [(abs(e.local_m_s[1]), e.after_m_s[1]) for e in contacts(traced)[:5]]
    for before, after in speeds:
        assert after == pytest.approx(0.8 * before, rel=1e-12)


def test_far_out_at_the_same_gravity_a_bounce_is_the_ordinary_one():
    """R -> infinity at fixed gravity: places of the contacts against the parabola's closed form, in units of R^-1/2."""
    g, radius = 9.80665, 100_000.0
    spin_rpm = math.sqrt(g / radius) * 30 / math.pi
    far = {"radius_m": radius, "spin_rpm": spin_rpm}
    traced = one(throw(0.09, 3.0, 0, 60, SMOOTH | {"restitution": 0.5}) | {"bounces": 3}, far)
    up, level, time_s, along = 3.0 * math.sin(math.pi / 3), 1.5, 0.0, 0.0
    for event in contacts(traced)[:3]:
        time_s, along, up = time_s + 2 * up / g, along + level * 2 * up / g, up / 2
        assert event.time_s == pytest.approx(time_s, rel=0.01)
        assert event.along_m == pytest.approx(along, rel=0.02)


def test_without_spin_it_goes_straight_from_wall_to_wall():
    """omega -> 0: straight lines, rebounds with the angle kept."""
    room = {"radius_m": 56.0, "spin_rpm": 0.0, "width_m": 14.0}
    traced = one(throw(56.0, 2.0, 90, 0, SMOOTH) | {"bounces": 4}, room, duration_s=30)
    times = [e.time_s for e in contacts(traced)]
    assert times == pytest.approx([6.91 / 2 + 6.91 * k for k in range(len(times))], abs=1e-9)
    assert {e.kind for e in contacts(traced)} == {"wall"}


def test_off_a_ceiling_without_a_rebound_left_it_falls_on_with_its_normal_speed_gone():
    traced = one(throw(1.5, 9.0, 0, 80, SMOOTH), LANTERN | {"ceiling_m": 4.0})
    assert kinds(traced)[0:2] == ["release", "ceiling"]
    assert contacts(traced)[0].after_m_s[1] == pytest.approx(0.0, abs=1e-12)
    assert traced.track.end == "landed"


@each_row("air", [None, AIR])
def test_a_ball_spun_forward_kicks_on_and_one_spun_back_holds_up(air):
    ball = {"mass_kg": 0.0577, "diameter_m": 0.067, "restitution": 0.75, "friction": 0.6}
    ends = []
    for rpm in (-2000.0, 0.0, 2000.0):
        spun = throw(1.5, 6.0, 0, 0, ball) | {"bounces": 1, "ball_spin_rpm": rpm, "ball_spin_axis": [0, 0, -1]}
        ends.append(contacts(one(spun, LANTERN, air))[0].after_m_s[0])
    assert ends == sorted(ends)
    assert ends[2] > ends[1] + 0.5


def test_a_ball_keeps_its_spin_in_the_inertial_frame():
    """Its attitude aboard is its own turning less the wheel's, about another axis (quaternions by hand)."""
    rate = 2 * math.pi * 30 / 60
    spun = drop(1.5, SMOOTH) | {"ball_spin_rpm": 30.0, "ball_spin_axis": [0, 0, 1]}
    track = one(spun, LANTERN).track
    time_s = track.samples.time_s[-1]
    half = 0.5 * rate * time_s
    assert track.attitude_wxyz[-1] == pytest.approx([math.cos(half), 0, 0, math.sin(half)], abs=1e-12)


def test_a_thousand_journeys_are_the_same_as_each_alone():
    setting = Setting(Cylinder(56.0, steady(OMEGA_LANTERN), 14.0), None, 48, 5.0)
    ball = Body(0.1, 0.06, restitution=0.8)
    releases = [setting.release(ball, 0.0, (0.1 * k, 1.0 + 0.01 * k, 0.0), (1.0, 0.1 * k, 0.5)) for k in range(50)]
    together = carry(setting.medium, [Start(r, 6) for r in releases])
    for release, journey in zip(releases[::10], together[::10], strict=True):
        alone = carry(setting.medium, [Start(release, 6)])[0]
        assert [h.kind for h in alone.events] == [h.kind for h in journey.events]
        for a, b in zip(alone.events, journey.events, strict=True):
            assert a.time_s == pytest.approx(b.time_s, abs=1e-12)
            assert a.position_m == pytest.approx(b.position_m, abs=1e-10)


def test_two_motions_do_not_disturb_each_other():
    both = trace(
        [drop(1.5, SMOOTH) | {"bounces": 3}, throw(1.5, 3.0, 90, 0, SMOOTH) | {"place": place(1.5), "bounces": 1}],
        COURT,
        duration_s=5,
    )
    assert [len([e for e in contacts(t) if e.after_m_s[1] > 1e-9]) for t in both.motions] == [3, 1]
