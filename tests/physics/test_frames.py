"""Frames and conventions: design, section 1."""

import math

import numpy as np
import pytest

from rimfall.physics import frames
from tests.tables import each_row

R = 56.0
ROUND_OFF_M = 1e-13  # of numbers near 100
DIFFERENCE_M_S = 1e-6  # of a central difference over 1e-4 s


def test_a_place_is_arc_height_and_axial():
    at_zero, a_quarter_spinward = frames.place_to_rotating(R, [[0.0, 1.5, 2.0], [R * math.pi / 2, 1.5, 2.0]])
    assert at_zero == pytest.approx([54.5, 0, 2], abs=ROUND_OFF_M)
    assert a_quarter_spinward == pytest.approx([0, 54.5, 2], abs=ROUND_OFF_M)


def test_height_is_read_back_in_either_frame():
    position = frames.place_to_rotating(R, [[31.0, 1.5, 2.0]])
    assert frames.height_of(R, position) == pytest.approx(1.5, abs=ROUND_OFF_M)
    assert frames.height_of(R, frames.turn(position, 2.2)) == pytest.approx(1.5, abs=ROUND_OFF_M)


def test_seen_from_plus_z_the_habitat_turns_anticlockwise():
    assert frames.turn([1.0, 0.0, 0.0], math.pi / 2) == pytest.approx([0, 1, 0], abs=ROUND_OFF_M)


def test_the_frames_coincide_at_time_0_but_for_the_spin():
    position, velocity = np.array([54.5, 0.0, 2.0]), np.array([1.0, 2.0, 3.0])
    outside, moving = frames.rotating_to_inertial(position, velocity, 0.0, 0.5)
    assert outside == pytest.approx(position)
    assert moving == pytest.approx([1.0, 2.0 + 0.5 * 54.5, 3.0])


def test_a_point_at_rest_on_board_moves_at_omega_rho_not_omega_r():
    _, moving = frames.rotating_to_inertial(frames.place_to_rotating(R, [0.0, 6.0, 0.0]), np.zeros(3), 1.0, 0.3)
    assert np.linalg.norm(moving) == pytest.approx(0.3 * 50.0)


def test_round_trip_of_both_frames():
    rng = np.random.default_rng(1)
    position, velocity = rng.normal(size=(2, 200, 3)) * 30
    angle, omega = rng.normal(size=(2, 200)) * [[40], [3]]
    outside = frames.rotating_to_inertial(position, velocity, angle, omega)
    back, moving = frames.inertial_to_rotating(*outside, angle, omega)
    assert np.abs(back - position).max() < ROUND_OFF_M
    assert np.abs(moving - velocity).max() < 10 * ROUND_OFF_M  # speeds reach 500 m/s


def test_rotating_velocity_is_the_change_of_rotating_position():
    omega, step = 0.7, 1e-4
    at = lambda t: np.array([3.0, 4.0, 0.0]) + np.array([0.5, -2.0, 1.0]) * t  # noqa: E731 - a straight line
    inside = [frames.inertial_to_rotating(at(t), np.zeros(3), omega * t, omega)[0] for t in (2 - step, 2 + step)]
    _, moving = frames.inertial_to_rotating(at(2.0), np.array([0.5, -2.0, 1.0]), omega * 2, omega)
    assert moving == pytest.approx((inside[1] - inside[0]) / (2 * step), abs=DIFFERENCE_M_S)


def test_local_directions_are_right_handed_spinward_up_axial():
    spinward, up, axial = frames.axes_at(0.9)
    assert np.cross(spinward, up) == pytest.approx(axial)
    assert up == pytest.approx([-math.cos(0.9), -math.sin(0.9), 0])  # toward the axis
    assert axial == pytest.approx([0, 0, 1])


@each_row(
    ("heading", "elevation", "along"),
    [(0, 0, (2, 0, 0)), (90, 0, (0, 0, 2)), (180, 0, (-2, 0, 0)), (270, 0, (0, 0, -2)), (-90, 0, (0, 0, -2)),
     (33, 90, (0, 2, 0)), (33, -90, (0, -2, 0)), (360, 0, (2, 0, 0))],
)  # fmt: skip
def test_headings_and_elevations_are_exact_at_quarter_turns(heading, elevation, along):
    assert tuple(frames.aimed(2.0, heading, elevation)) == along


@each_row("angle", [-359.0, -91.0, -89.5, 12.0, 89.9, 135.0, 271.0, 360.0])
def test_sine_and_cosine_of_degrees(angle):
    assert frames.sin_deg(angle) == pytest.approx(math.sin(math.radians(angle)), abs=1e-15)
    assert frames.cos_deg(angle) == pytest.approx(math.cos(math.radians(angle)), abs=1e-15)


def test_azimuth_steps_add_up_over_turns():
    angle = np.linspace(0, 6 * math.pi, 40)
    steps = frames.azimuth_steps(np.stack([np.cos(angle), np.sin(angle), angle], axis=1))
    assert steps.sum() == pytest.approx(6 * math.pi)
    assert frames.azimuth_steps(np.array([[1.0, 0, 0], [0, -1.0, 0]]))[0] == pytest.approx(-math.pi / 2)


def test_spin_cross_is_the_vector_product():
    vectors = np.array([[1.0, 2.0, 3.0], [-4.0, 0.5, 0.0]])
    assert frames.spin_cross(0.4, vectors) == pytest.approx(np.cross([0, 0, 0.4], vectors))
