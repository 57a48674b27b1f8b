"""A mass that moves along a radius, against integrals along its way."""

import numpy as np
import pytest
from scipy.integrate import quad

from rimfall.vessel import move
from tests.tables import each_row

WAYS = [(0.0, 56.0), (56.0, 0.0), (10.0, 30.0), (30.0, 10.0)]
INERTIA, RATE, MASS, SPEED = 2e6, 0.3, 900.0, 1.5


@each_row(("start", "end"), WAYS)
def test_momentum_is_kept_and_work_is_the_pull_along_the_way(start, end):
    course = move.course(INERTIA, RATE, MASS, start, end, SPEED, keeps_spin=False)
    momentum = (INERTIA + MASS * start**2) * RATE
    assert (INERTIA + MASS * course.radius_m**2) * course.rate_rad_s == pytest.approx(np.full(61, momentum), rel=1e-12)
    held = quad(lambda r: -MASS * (momentum / (INERTIA + MASS * r * r)) ** 2 * r, start, end)[0]
    assert course.work_j == pytest.approx(held, rel=1e-9)
    energies = [(INERTIA + MASS * r * r) * w * w / 2 for r, w in ((start, RATE), (end, course.rate_rad_s[-1]))]
    assert course.work_j == pytest.approx(energies[1] - energies[0], rel=1e-9)
    assert course.sideways_n == pytest.approx(2 * MASS * course.rate_rad_s * SPEED * np.sign(end - start))


@each_row(("start", "end"), WAYS)
def test_with_the_spin_kept_the_motor_gives_twice_what_comes_out_at_the_mass(start, end):
    course = move.course(INERTIA, RATE, MASS, start, end, SPEED, keeps_spin=True)
    energy = MASS * (end**2 - start**2) * RATE**2 / 2
    assert course.motor_j == pytest.approx(2 * energy)
    assert course.work_j == pytest.approx(-energy)
    spent = np.trapezoid(course.torque_n_m * RATE, course.time_s)
    assert spent == pytest.approx(course.motor_j, rel=1e-9)
    assert (course.rate_rad_s == RATE).all()


@each_row("keeps_spin", [True, False])
def test_a_reversed_spin_pushes_the_other_way_with_the_same_work(keeps_spin):
    one, other = (move.course(INERTIA, rate, MASS, 0.0, 40.0, SPEED, keeps_spin) for rate in (RATE, -RATE))
    assert (one.sideways_n == -other.sideways_n).all()
    assert (one.rate_rad_s == -other.rate_rad_s).all()
    assert (one.work_j, one.motor_j) == (other.work_j, other.motor_j)


def test_nothing_moves_where_the_way_has_no_length_and_nothing_else_turns():
    course = move.course(0.0, RATE, MASS, 0.0, 0.0, SPEED, keeps_spin=False)
    assert (course.work_j, course.time_s[-1]) == (0.0, 0.0)
    assert (course.rate_rad_s == RATE).all()
