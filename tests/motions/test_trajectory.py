"""All legs as one path: the two frames of a leg on the ground, arcs that do not wrap, and turning told as quaternions."""

import math
from itertools import pairwise

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.spatial.transform import Rotation

from rimfall.motions.trajectory import attitudes, parted
from rimfall.physics import bernstein
from rimfall.physics.spin import steady
from tests.motions.scenes import LANTERN, OMEGA_LANTERN, one, place, throw
from tests.tables import each_row

BALL = {"mass_kg": 0.45, "diameter_m": 0.18, "restitution": 0.6, "friction": 0.5}
R = 56.0


def roll(speed_m_s, heading_deg, **more):
    return {
        "kind": "roll",
        "place": place(0.0),
        "speed_m_s": speed_m_s,
        "heading_deg": heading_deg,
        "body": BALL,
    } | more


def test_on_the_ground_the_inertial_place_is_the_turning_one_turned():
    samples = one(roll(2.0, 40.0), LANTERN, duration_s=12).track.samples
    turned = (samples.rotating_m[:, 0] + 1j * samples.rotating_m[:, 1]) * np.exp(1j * OMEGA_LANTERN * samples.time_s)
    assert turned == pytest.approx(samples.inertial_m[:, 0] + 1j * samples.inertial_m[:, 1], abs=1e-11)


def test_a_ball_that_rolls_round_the_deck_twice_has_gone_two_rounds():
    """Spinward along the deck nothing turns it: along grows with the speed of the place under it."""
    samples = one(roll(8.0, 0.0), LANTERN, duration_s=60).track.samples
    assert samples.along_m[-1] == pytest.approx(8.0 * 60 * R / (R - 0.09), rel=1e-9)
    assert np.all(np.diff(samples.along_m) > 0)


def test_a_rolling_ball_turns_by_its_way_over_its_radius():
    """Over plain ground: the deck of a wheel at rest is straight along the axis."""
    still = {"radius_m": R, "spin_rpm": 0.0}
    track = one(roll(0.3, 90.0), still, duration_s=2.0).track
    half = 0.5 * 0.3 * track.samples.time_s[-1] / 0.09
    w, x, y, z = track.attitude_wxyz[-1]
    assert (abs(w), math.hypot(x, y, z)) == pytest.approx((abs(math.cos(half)), abs(math.sin(half))), abs=1e-9)
    assert (x, z) == pytest.approx((0.0, 0.0), abs=1e-9)


def test_a_quaternion_turns_the_ball_as_its_spin_does():
    """d/dt of a point of the ball is spin x point, by small differences along a rebound and the rolling after it."""
    traced = one(
        throw(1.0, 3.0, 30, 20, BALL) | {"bounces": 2, "ball_spin_rpm": 90.0, "ball_spin_axis": [1, 2, 3]},
        LANTERN,
        duration_s=6,
    )
    path, spin = traced.track.path, steady(OMEGA_LANTERN)
    for t in (0.4, 1.3, 5.5):
        step = 1e-5
        before, now, after = attitudes(path, spin, np.array([t - step, t, t + step]))
        point = np.array([0.2, -0.5, 0.9])
        moving = (rotate(after, point) - rotate(before, point)) / (2 * step)
        here = rotate(now, point)
        sigma = spin_of(path, spin, t)
        assert moving == pytest.approx(np.cross(sigma, here), abs=1e-4 * max(1.0, np.linalg.norm(sigma)))


@each_row("fps", [1, 5, 48])
def test_a_ball_that_rolls_round_a_bend_has_turned_as_its_spin_says(fps):
    """Against scipy: R' = [spin] R of the rotation matrix, whose axis turns with the ball's way, at few times and at many."""
    traced = one(roll(1.5, 70.0) | {"ball_spin_rpm": 60.0}, LANTERN, duration_s=3.0)
    path, spin = traced.track.path, steady(OMEGA_LANTERN)
    assert path.grounded.all()

    def turning(t, flat):
        return np.cross(spin_of(path, spin, t), flat.reshape(3, 3)).ravel()

    columns = np.eye(3).ravel()
    for begin, end in pairwise([path.begin_s, *path.knots_s, path.end_s]):
        columns = solve_ivp(turning, (begin, end), columns, "DOP853", rtol=1e-10, atol=1e-11).y[:, -1]
    times = np.linspace(path.begin_s, path.end_s, 3 * fps + 1)
    w, x, y, z = attitudes(path, spin, times)[-1]
    apart = Rotation.from_matrix(columns.reshape(3, 3).T) * Rotation.from_quat([x, y, z, w]).inv()
    assert apart.magnitude() < 5e-5


def test_times_between_are_bounded_where_a_ball_spins_faster_than_can_be_followed():
    """9 m/s over a radius of 0.5 mm: 360,000 rad in 20 s."""
    traced = one(roll(9.0, 70.0, body=BALL | {"diameter_m": 0.001, "mass_kg": 1e-6}), LANTERN, duration_s=20.0)
    path, times = traced.track.path, np.array([0.0, 5.0, 20.0])
    marks = parted(path, times)
    assert set(times) <= set(marks)
    assert np.all(np.diff(marks) > 0)
    assert 900 < len(marks) < 1100
    assert np.linalg.norm(attitudes(path, steady(OMEGA_LANTERN), times), axis=1) == pytest.approx(np.ones(3))


def spin_of(path, spin, t):
    """The spin relative to the turning frame at a time."""
    k = int(path.piece(np.array([t]))[0])
    if path.grounded[k]:
        share = path.share(np.array([k]), np.array([t]))
        return bernstein.value(bernstein.derivative(path.turned_rad[k]), np.repeat(share, 3)) / path.length_s[k]
    angle = float(spin.angle_rad(t))
    c, s = math.cos(-angle), math.sin(-angle)
    x, y, z = path.spin_rad_s[k]
    return np.array([c * x - s * y, s * x + c * y, z - OMEGA_LANTERN])


def rotate(q, v):
    w, u = q[0], q[1:]
    return v + 2 * np.cross(u, np.cross(u, v) + w * v)
