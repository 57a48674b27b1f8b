"""Turning the axis of what spins: size and direction of the torque, and precession, against Euler's law stepped in time."""

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from rimfall.vessel import slew


def test_the_torque_leads_the_momentum_round_as_the_axis_turns():
    """dL/dt = Ω × L, for a quarter turn of L about x."""
    turn = np.array([0.02, 0.0, 0.0])
    momentum = np.array([0.0, 0.0, 300.0])
    end = solve_ivp(
        lambda _, now: slew.gyroscopic_torque(turn, now), (0, math.pi / 2 / 0.02), momentum, rtol=1e-10, atol=1e-9
    ).y[:, -1]
    assert end == pytest.approx([0, -300, 0], abs=1e-6)
    assert np.linalg.norm(slew.gyroscopic_torque(turn, momentum)) == pytest.approx(6.0)


def test_which_way_the_words_have_it():
    """Forward is z, up is y; whoever looks forward with y up has -x to the right. A turn to the right is about -y; the torque then points
    to the right, which lifts the bow: torque = bow × lift."""
    forward, up = np.array([0.0, 0.0, 1.0]), np.array([0.0, 1.0, 0.0])
    right = np.cross(forward, up)
    torque = slew.gyroscopic_torque(-up, forward)
    assert np.allclose(np.cross(-up, forward), right)  # the bow goes to the right
    assert np.allclose(torque, np.cross(forward, up))  # as a lift at the bow gives it


def test_precession_and_its_torque_are_one_relation():
    assert slew.precession_rad_s(6.0, -300.0) == pytest.approx(0.02)
    assert slew.precession_rad_s(6.0, 0.0) is None


def test_from_rest_to_rest():
    """Steady acceleration over half the angle, and the same again backwards."""
    torque, time = slew.rest_to_rest(50.0, 1.2, 0.03)
    assert torque / 50.0 * (time / 2) == pytest.approx(0.03)
    assert torque / 50.0 * (time / 2) ** 2 / 2 == pytest.approx(0.6)
