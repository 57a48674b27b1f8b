"""The stepper of flights: its errors kept, its paths, its lengths, against scipy's integrator of another make."""

import itertools

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from rimfall.physics import windowed
from rimfall.physics.windowed import WindowStepper
from tests.tables import each_row

SAME = 1e-12  # of sums that differ in order
HUGE = 1e12  # a tolerance no error reaches, so that limits alone set the steps


class Orbit:
    """Attraction to the origin, strength 1, on N bodies: nothing of the program's own, so errors are the stepper's."""

    def at(self, _elapsed_s, position, *_):
        return -position / np.sum(position**2, axis=0) ** 1.5

    def take(self, _which):
        return self


class Breeze:
    """Drag by the square of the speed, with strengths (N,), and a pull that swings with time."""

    def __init__(self, strength):
        self.strength = np.asarray(strength, dtype=float)

    def at(self, elapsed_s, _position, velocity, slowing=None, *_):
        speed = np.sqrt(np.sum(velocity**2, axis=0))
        rate = self.strength * speed
        if slowing is not None:
            slowing.across_1_s, slowing.along_1_s, slowing.way = rate, 2 * rate, velocity / np.maximum(speed, 1e-300)
        out = -rate * velocity
        out[1] += np.cos(3 * elapsed_s)
        return out

    def take(self, which):
        return Breeze(self.strength[which])


START = np.array([[1.0], [0.0], [0.2]]), np.array([[0.1], [0.9], [0.0]])


def reference(force, position, velocity, times_s):
    """Positions (3, n) of one body by scipy's DOP853."""
    rates = lambda t, y: np.concatenate([y[3:], force.at(t, y[:3, None], y[3:, None])[:, 0]])  # noqa: E731
    start = np.concatenate([position[:, 0], velocity[:, 0]])
    return solve_ivp(rates, (0, max(times_s)), start, "DOP853", times_s, rtol=1e-13, atol=1e-13).y[:3]


def steps_of(stepper, limit=400):
    """All steps of one body."""
    steps = []
    while not np.all(stepper.done):
        steps.append(stepper.step())
        assert len(steps) < limit
    return steps


@each_row("allowed", [1e-6, 1e-9, 1e-11])
def test_the_error_stays_near_what_is_allowed(allowed):
    found, _ = WindowStepper(Orbit(), *START, 20.0, absolute=allowed).propagate()
    missed = np.linalg.norm(found[:, 0] - reference(Orbit(), *START, [20.0])[:, 0])
    assert missed < 1000 * allowed  # three turns of an orbit spread an error of a step a hundredfold
    assert len(steps_of(WindowStepper(Orbit(), *START, 20.0, absolute=allowed))) < 60


def test_the_path_inside_a_step_is_as_exact_as_its_end_and_meets_it_and_its_own_velocity():
    steps = steps_of(WindowStepper(Orbit(), *START, 4.0, absolute=1e-11))
    share = np.array([0.37])
    at = np.array([s.elapsed_s[0] + 0.37 * s.length_s[0] for s in steps])
    inside = np.array([s.at(share)[0][:, 0] for s in steps]).T
    assert np.abs(inside - reference(Orbit(), *START, at)).max() < 1e-10
    for this, then in itertools.pairwise(steps):
        assert this.end[0] == pytest.approx(then.position_m, abs=SAME)
        assert this.end[1] == pytest.approx(then.velocity_m_s, abs=SAME)
        near = [this.at(share + d)[0] for d in (-1e-5, 1e-5)]
        assert (near[1] - near[0]) / (2e-5 * this.length_s) == pytest.approx(this.at(share)[1], abs=1e-8)


@each_row("copies", [1, 40])
def test_a_batch_agrees_with_scipy_body_by_body(copies):
    assert (4 * copies >= windowed.MANY) == (copies > 1)
    strength = np.repeat([0.0, 0.1, 1.0, 4.0], copies)
    position = np.zeros((3, 4 * copies))
    velocity = np.repeat(np.array([[1.0, 2, 3, 4], [2, 2, 2, 2], [0, 1, 0, 1]]), copies, axis=1)
    found, _ = WindowStepper(Breeze(strength), position, velocity, 3.0, absolute=1e-10).propagate()
    for i in range(0, 4 * copies, copies):
        alone = reference(Breeze(strength[[i]]), position[:, [i]], velocity[:, [i]], [3.0])
        assert found[:, i] == pytest.approx(alone[:, 0], abs=1e-8)


def test_bodies_that_leave_do_not_disturb_those_that_stay():
    strength = np.array([0.0, 0.5, 5.0])
    position, velocity = np.zeros((3, 3)), np.ones((3, 3))
    stepper = WindowStepper(Breeze(strength), position, velocity, 4.0, absolute=1e-10, longest_s=0.7)
    for _ in range(3):
        stepper.step()
    stepper.keep(np.array([True, False, True]))
    found, _ = stepper.propagate()
    for i, k in ((0, 0.0), (1, 5.0)):
        exact = reference(Breeze([k]), position[:, :1], velocity[:, :1], [4.0])[:, 0]
        assert found[:, i] == pytest.approx(exact, abs=1e-8)


def test_no_step_crosses_a_stop_of_its_body_and_the_last_ends_at_its_limit():
    stops_s = np.array([[3.3, 1.1], [0.7, -1.0], [9.0, 9.0]])
    stepper = WindowStepper(
        Breeze([0.1, 0.1]), np.zeros((3, 2)), np.ones((3, 2)), np.array([5.0, 4.0]), absolute=1e-6, stops_s=stops_s
    )
    ends = [set(), set()]
    while not np.all(stepper.done):
        flying, step = ~stepper.done, stepper.step()
        for i in np.flatnonzero(flying):
            ends[i].add(round(step.elapsed_s[i] + step.length_s[i], 12))
    assert {0.7, 3.3, 5.0} <= ends[0]
    assert {1.1, 4.0} <= ends[1]


def test_no_body_goes_further_than_its_reach_in_a_step():
    stepper = WindowStepper(
        Breeze([0.0, 0.0]), np.zeros((3, 2)), np.full((3, 2), 10.0), 50.0, absolute=HUGE, reach_m=np.array([90.0, 7.0])
    )
    assert np.hypot(*stepper.step().path_m[-1][:2, 1]) < 7.5


def test_no_step_is_longer_than_allowed_nor_than_is_wanted_first():
    still = np.zeros((3, 1)), np.ones((3, 1))
    steps = steps_of(WindowStepper(Breeze([0.0]), *still, 5.0, absolute=HUGE, longest_s=0.3))
    assert max(s.length_s[0] for s in steps) <= 0.3
    assert sum(s.length_s[0] for s in steps) == pytest.approx(5.0)
    first = WindowStepper(Breeze([0.0]), *still, 5.0, absolute=HUGE, first_s=0.2).step()
    assert first.length_s[0] <= 0.2


def test_a_lob_takes_one_window_and_five_calls():
    class Counted(Breeze):
        calls = 0

        def at(self, *state):
            Counted.calls += 1
            return super().at(*state)

        def take(self, which):
            return Counted(self.strength[which])

    stepper = WindowStepper(Counted([0.05, 0.02]), np.zeros((3, 2)), np.full((3, 2), 3.0), 2.0, absolute=5e-10)
    stepper.step()
    assert np.all(stepper.done)
    assert Counted.calls <= 5
