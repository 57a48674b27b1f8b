"""A flown path as the turning frame sees it, against the frame algebra and against fine differences."""

import numpy as np
import pytest

from rimfall.physics import bernstein, frames, turned
from rimfall.physics.integrate import Coaster, Step
from rimfall.physics.spin import ramped, steady
from tests.tables import each_row

STEADY, RAMP = steady(0.4), ramped(0.3, [(50.0, 0.5)])
START_S = np.array([0.0, 3.7, 41.0])
COUNT = len(START_S)


def turned_at(position, angle):
    return frames.turn(position.T, -angle).T


def value(control, s):
    while len(control) > 1:
        control = control[:-1] + s * (control[1:] - control[:-1])
    return control[0]


def wavy(radius_m, length_s):
    """A step of degree 7 whose coefficients fall off as those of a flight with drag do."""
    rng = np.random.default_rng(3)
    position, velocity = rng.uniform(-1, 1, (2, 3, COUNT)) * radius_m / 1.8
    path_m = rng.uniform(-1, 1, (8, 3, COUNT)) * radius_m * (0.2 ** np.arange(8))[:, None, None]
    path_m[0] = 0.0
    path_m = bernstein.from_powers(path_m)
    return Step(2.0, length_s, position, velocity, path_m, path_m)


@each_row("spin", [STEADY, RAMP, steady(-0.4)])
@each_row("radius_m", [2.0, 1e4])
def test_the_path_is_the_turned_one_to_a_millionth_of_a_micrometre_a_metre(spin, radius_m):
    length_s = turned.longest_s(spin)
    step = wavy(radius_m, length_s)
    position, control = turned.path(step, START_S, spin)
    assert np.all(control[0] == 0.0)
    for s in np.linspace(0, 1, 41):
        flown = step.at(np.full(COUNT, s))[0]
        true = turned_at(flown, spin.angle_rad(START_S + 2.0 + s * length_s))
        assert np.abs(position + value(control, s) - true).max() <= 1e-12 * radius_m


def test_bodies_whose_steps_differ_in_start_and_length_are_turned_each_by_its_own():
    rng = np.random.default_rng(8)
    position, velocity, none = *rng.normal(size=(2, 3, COUNT)), np.zeros((3, COUNT))
    limit_s = np.array([0.2, 1.1, 0.7])
    step = Coaster(none, position, velocity, limit_s, np.full(COUNT, np.inf)).step()
    start, control = turned.path(step, START_S, RAMP)
    true = turned_at(position + limit_s * velocity, RAMP.angle_rad(START_S + limit_s))
    assert start + control[-1] == pytest.approx(true, abs=1e-13)


def test_the_longest_step_turns_the_frame_by_half_a_radian_at_most():
    assert turned.longest_s(RAMP) * 0.5 == pytest.approx(turned.MOST_RAD)
    assert turned.longest_s(steady(0.0)) == np.inf


@each_row("spin", [STEADY, RAMP])
def test_states_in_the_turning_frame_are_the_changes_of_the_turned_path(spin):
    rng = np.random.default_rng(2)
    x0, v0, a0 = rng.normal(size=(3, 3, COUNT))
    h, time_s = 1e-4, START_S + 1.0

    def position(later):
        return turned_at(x0 + later * v0 + 0.5 * later**2 * a0, spin.angle_rad(time_s + later))

    x, v, a = turned.states(spin, time_s, x0, v0, a0)
    assert x == pytest.approx(position(0.0), abs=1e-14)
    assert v == pytest.approx((position(h) - position(-h)) / (2 * h), abs=1e-7)
    assert a == pytest.approx((position(h) - 2 * position(0.0) + position(-h)) / h**2, abs=1e-6)
