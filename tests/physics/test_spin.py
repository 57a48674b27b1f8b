"""Spin: the rate at a time, the angle it adds up to, and its change; the figures that follow from it."""

import math

import numpy as np
import pytest
from scipy.integrate import quad

from rimfall.physics.constants import G0_M_S2
from rimfall.physics.spin import figures, omega_for, radius_for, ramped, steady
from tests.tables import each_row

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


@each_row("time_s", [0.0, 0.3, 2.0, 2.4, 3.0, 6.9, 7.0, 30.0])
def test_the_angle_is_the_integral_of_the_rate(time_s):
    turned, _ = quad(RAMP.rate_rad_s, 0, time_s, points=[2.0, 3.0, 7.0], epsabs=1e-13, limit=200)
    assert RAMP.angle_rad(time_s) == pytest.approx(turned, abs=QUADRATURE_RAD)


def test_the_change_at_a_knot_is_that_of_the_piece_that_begins_there():
    assert RAMP.change_rad_s2([0.0, 1.9, 2.0, 3.0, 7.0, 8.0]) == pytest.approx([0.3, 0.3, -1.5, 0.125, 0.0, 0.0])


def test_a_ramp_that_comes_back_to_its_rate_is_no_steady_spin():
    assert not ramped(1.0, [(5.0, 1.0)]).steady
    assert ramped(1.0, [(5.0, 1.0)]).angle_rad(7.0) == pytest.approx(7.0)


def test_the_lantern_wheel():
    found = figures(56.0, 3 * math.tau / 60)
    assert found.gravity_m_s2 == pytest.approx(56.0 * (math.pi / 10) ** 2)
    assert found.gravity_g == pytest.approx(found.gravity_m_s2 / G0_M_S2)
    assert found.rim_speed_m_s == pytest.approx(5.6 * math.pi)
    assert found.period_s == pytest.approx(20.0)


def test_at_rest_there_is_no_gravity_and_no_period():
    assert (figures(56.0, 0.0).gravity_m_s2, figures(56.0, 0.0).period_s) == (0.0, None)


def test_a_spin_the_other_way_gives_the_same_gravity():
    assert figures(56.0, -0.3).gravity_m_s2 == figures(56.0, 0.3).gravity_m_s2
    assert figures(56.0, -0.3).period_s > 0


@pytest.mark.parametrize("held", ["gravity_m_s2", "rim_speed_m_s"])
def test_radius_and_spin_for_a_figure_give_it_back(held):
    assert getattr(figures(radius_for(**{held: 7.0}, omega_rad_s=0.4), 0.4), held) == pytest.approx(7.0)
    assert getattr(figures(80.0, omega_for(80.0, **{held: 7.0})), held) == pytest.approx(7.0)


def test_no_radius_gives_gravity_at_rest():
    with pytest.raises(ValueError, match="no spin"):
        radius_for(gravity_m_s2=9.8, omega_rad_s=0.0)
