"""Plumb lines and the law of a line against closed forms and scipy's root finding, written down here a second time."""

import math

import numpy as np
import pytest
from scipy.optimize import brentq, fsolve

from rimfall.motions.flight import Room
from rimfall.physics.aboard import Aboard
from rimfall.physics.bodies import Body, as_arrays
from rimfall.physics.constants import RPM_RAD_S
from rimfall.physics.forces import Medium
from rimfall.physics.pendulum import Hung, plumb, square_to
from rimfall.physics.spin import steady
from tests.tables import each_row

OMEGA = 3.0 * RPM_RAD_S
OUT, SPINWARD, AXIAL = np.eye(3)


def weights(omega, pull=(0.0, 0.0, 0.0)):
    return Aboard(Medium(steady(omega), None, 56.0), Room((), True, pull, None), as_arrays([Body(1.0, 0.0)]))


def hangs(omega, pivot, length_m, pull=(0.0, 0.0, 0.0), change=0.0):
    rates = np.array([omega]), np.array([change])
    return plumb(weights(omega, pull), *rates, np.array(pivot), length_m, OUT)[:, 0]


@each_row("thrust", [0.05, 0.6, 5.0, -2.0])
@each_row("length_m", [0.01, 2.0, 20.0])
def test_under_thrust_it_leans_by_thrust_over_gravity_at_its_bob(thrust, length_m):
    """tan a = thrust / (w^2 (rho + L cos a)), by bracketing; level ground's atan(thrust/g) where the line is short."""
    down = hangs(OMEGA, (52.0, 0.0, 0.0), length_m, (0.0, 0.0, -thrust))
    lean = brentq(lambda a: math.tan(a) * OMEGA**2 * (52 + length_m * math.cos(a)) - thrust, -1.57, 1.57, xtol=1e-15)
    assert down == pytest.approx([math.cos(lean), 0.0, -math.sin(lean)], abs=1e-13)
    if length_m == 0.01:
        assert lean == pytest.approx(math.atan(thrust / (OMEGA**2 * 52)), abs=2e-4)


@each_row("change", [0.001, -0.02])
def test_while_the_spin_grows_it_leans_antispinward(change):
    """The line is parallel to w^2 r - a x r at the bob (Euler's force), by scipy's solver."""
    length_m, pivot = 3.0, np.array([50.0, 0.0, 1.0])

    def across(angle):
        bob = pivot + length_m * np.array([math.cos(angle[0]), -math.sin(angle[0]), 0.0])
        felt = OMEGA**2 * bob * [1, 1, 0] - np.cross([0, 0, change], bob)
        return np.cross(bob - pivot, felt)[2]

    angle = float(fsolve(across, [0.0], xtol=1e-14)[0])
    down = hangs(OMEGA, pivot, length_m, change=change)
    assert down == pytest.approx([math.cos(angle), -math.sin(angle), 0.0], abs=1e-12)
    assert (down[1] < 0) == (change > 0)


def test_at_the_axis_a_long_line_under_little_thrust_stands_off_as_a_governor_does():
    """cos a = thrust / (w^2 L), where that is below 1 (Watt's governor; any mechanics text, from memory)."""
    down = hangs(OMEGA, (0.0, 0.0, 0.0), 10.0, (0.0, 0.0, -0.5))
    assert math.hypot(down[0], down[1]) == pytest.approx(math.sqrt(1 - (0.5 / OMEGA**2 / 10) ** 2), abs=1e-9)


def test_with_no_weight_it_points_where_it_is_told():
    assert hangs(0.0, (50.0, 0.0, 0.0), 2.0) == pytest.approx(OUT)


def test_the_law_keeps_the_length_and_tells_the_pull():
    """On a table without spin, g: the pull of a pendulum is g cos a + u^2/L, and d.d'' + u.u = 0 (any mechanics text)."""
    law = Hung(np.zeros(3), 2.0, weights(0.0, (0.0, 0.0, -9.8)))
    angle = 0.7
    place = 2.0 * np.array([[math.sin(angle)], [0.0], [-math.cos(angle)]])
    moving = 1.3 * np.array([[math.cos(angle)], [0.0], [math.sin(angle)]])
    acceleration, watched = law.at((0.0, 0.0), place, moving)
    assert watched[0] == pytest.approx(9.8 * math.cos(angle) + 1.3**2 / 2, rel=1e-14)
    assert float(np.sum(place * acceleration + moving * moving)) == pytest.approx(0.0, abs=1e-13)


def test_a_direction_square_to_the_line():
    assert square_to(OUT, SPINWARD + OUT, AXIAL) == pytest.approx(SPINWARD)
    assert square_to(OUT, OUT, AXIAL) == pytest.approx(AXIAL)
