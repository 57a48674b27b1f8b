"""Spin: the rate at a time, the angle it adds up to, and its change."""

import numpy as np
import pytest
from scipy.integrate import quad

from rimfall.physics.spin import ramped, steady

RAMP = ramped(0.4, [(2.0, 1.0), (3.0, -0.5), (7.0, 0.0)])
QUADRATURE_RAD = 1e-12


def test_a_steady_spin_turns_by_rate_times_time():
    spin = steady(0.3)
    assert spin.steady
    assert spin.angle_rad(np.array([0.0, 5.0, -2.0])) == pytest.approx([0, 1.5, -0.6])
    assert spin.rate_rad_s([0.0, 9.0]) == pytest.approx([0.3, 0.3])
    assert spin.change_rad_s2(4.0) == 0.0


def test_a_ramp_is_linear_between_its_points_and_held_after_the_last():
    assert RAMP.rate_rad_s([0.0, 1.0, 2.0, 2.5, 3.0, 5.0, 7.0, 100.0]) == pytest.approx(
        [0.4, 0.7, 1.0, 0.25, -0.5, -0.25, 0.0, 0.0]
    )


@pytest.mark.parametrize("time_s", [0.0, 0.3, 2.0, 2.4, 3.0, 6.9, 7.0, 30.0])
def test_the_angle_is_the_integral_of_the_rate(time_s):
    turned, _ = quad(RAMP.rate_rad_s, 0, time_s, points=[2.0, 3.0, 7.0], epsabs=1e-13, limit=200)
    assert RAMP.angle_rad(time_s) == pytest.approx(turned, abs=QUADRATURE_RAD)


def test_the_change_at_a_knot_is_that_of_the_piece_that_begins_there():
    assert RAMP.change_rad_s2([0.0, 1.9, 2.0, 3.0, 7.0, 8.0]) == pytest.approx([0.3, 0.3, -1.5, 0.125, 0.0, 0.0])


def test_a_ramp_that_comes_back_to_its_rate_is_no_steady_spin():
    assert not ramped(1.0, [(5.0, 1.0)]).steady
    assert ramped(1.0, [(5.0, 1.0)]).angle_rad(7.0) == pytest.approx(7.0)
