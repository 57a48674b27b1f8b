"""The stepper: its order measured, its dense output, its error kept, against scipy's integrator of another make."""

import itertools

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from rimfall.physics import bernstein
from rimfall.physics.integrate import Coaster, ExplicitStepper
from tests.tables import each_row

SAME = 1e-12  # of sums that differ in order, with coefficients near 500
HUGE = 1e12  # a tolerance no error reaches, so that stops alone set the steps


class Orbit:
    """Attraction to the origin, strength 1, on N bodies: nothing of the program's own, so errors are the stepper's."""

    def at(self, _elapsed_s, position, _velocity):
        return -position / np.sum(position**2, axis=0) ** 1.5

    def take(self, _which):
        return self


class Breeze:
    """Drag by the square of the speed, with strengths (N,), and a pull that swings with time."""

    def __init__(self, strength):
        self.strength = np.asarray(strength, dtype=float)

    def at(self, elapsed_s, _position, velocity):
        out = -self.strength * np.sqrt(np.sum(velocity**2, axis=0)) * velocity
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


def in_steps(count, span_s=4.0):
    """Equal steps through the orbit, by stops, whatever the error."""
    stops = np.linspace(0, span_s, count + 1)[1:-1]
    stepper = ExplicitStepper(Orbit(), *START, span_s, absolute=HUGE, stops_s=stops)
    stepper._length_s = span_s
    steps = []
    while not stepper.done:
        steps.append(stepper.step())
    assert len(steps) == count
    return stepper, steps


def test_the_end_of_a_step_converges_with_order_8():
    exact = reference(Orbit(), *START, [4.0])[:, 0]
    errors = [np.linalg.norm(in_steps(n)[0].propagate()[0][:, 0] - exact) for n in (16, 32)]
    assert errors[1] > 1e-12  # above round-off, so that the slope means something
    assert np.log2(errors[0] / errors[1]) == pytest.approx(8.0, abs=0.7)


def test_the_path_inside_a_step_converges_with_order_7_or_better():
    def worst(count):
        _, steps = in_steps(count)
        at = np.array([s.elapsed_s + 0.37 * s.length_s for s in steps])
        inside = [s.at(np.array([0.37]))[0][:, 0] for s in steps]
        return np.abs(np.array(inside).T - reference(Orbit(), *START, at)).max()

    assert np.log2(worst(12) / worst(24)) > 6.5


def test_the_path_inside_a_step_meets_its_ends_and_its_own_velocity():
    _, steps = in_steps(16)
    for this, then in itertools.pairwise(steps):
        assert this.position_m + this.path_m[-1] == pytest.approx(then.position_m, abs=SAME)
        assert this.velocity_m_s + this.path_m_s[-1] == pytest.approx(then.velocity_m_s, abs=SAME)
        middle = np.array([0.5])
        slope = bernstein.value(bernstein.derivative(this.path_m[:, 0]), middle) / this.length_s
        assert slope == pytest.approx(this.at(middle)[1][0], abs=1e-5)


@each_row("allowed", [1e-6, 1e-9, 1e-11])
def test_the_error_stays_near_what_is_allowed(allowed):
    stepper = ExplicitStepper(Orbit(), *START, 20.0, absolute=allowed)
    found, _ = stepper.propagate()
    missed = np.linalg.norm(found[:, 0] - reference(Orbit(), *START, [20.0])[:, 0])
    assert missed < 1000 * allowed  # three turns of an orbit spread an error of a step a hundredfold
    stepper, steps = ExplicitStepper(Orbit(), *START, 20.0, absolute=allowed), 0
    while not stepper.done:
        stepper.step()
        steps += 1
    assert steps < 400


def test_a_batch_agrees_with_scipy_body_by_body():
    strength = np.array([0.0, 0.1, 1.0, 4.0])
    position, velocity = np.zeros((3, 4)), np.array([[1.0, 2, 3, 4], [2, 2, 2, 2], [0, 1, 0, 1]])
    found, _ = ExplicitStepper(Breeze(strength), position, velocity, 3.0, absolute=1e-10).propagate()
    for i, s in enumerate(strength):
        alone = reference(Breeze([s]), position[:, [i]], velocity[:, [i]], [3.0])
        assert found[:, i] == pytest.approx(alone[:, 0], abs=1e-8)


def test_bodies_that_leave_do_not_disturb_those_that_stay():
    strength = np.array([0.0, 0.5, 5.0])
    position, velocity = np.zeros((3, 3)), np.ones((3, 3))
    stepper = ExplicitStepper(Breeze(strength), position, velocity, 4.0, absolute=1e-10)
    for _ in range(3):
        stepper.step()
    stepper.keep(np.array([True, False, True]))
    found, _ = stepper.propagate()
    assert found[:, 0] == pytest.approx(
        reference(Breeze([0.0]), position[:, :1], velocity[:, :1], [4.0])[:, 0], abs=1e-8
    )
    assert found[:, 1] == pytest.approx(
        reference(Breeze([5.0]), position[:, :1], velocity[:, :1], [4.0])[:, 0], abs=1e-8
    )


def test_no_step_crosses_a_stop_and_the_last_ends_at_the_limit():
    stepper = ExplicitStepper(
        Breeze([0.1]), np.zeros((3, 1)), np.ones((3, 1)), 5.0, absolute=1e-6, stops_s=[3.3, 0.7, 9.0]
    )
    ends = []
    while not stepper.done:
        step = stepper.step()
        ends.append(step.elapsed_s + step.length_s)
    assert {0.7, 3.3} <= {round(t, 12) for t in ends}
    assert ends[-1] == pytest.approx(5.0, abs=1e-14)


def test_no_body_goes_further_than_its_reach_in_a_step():
    stepper = ExplicitStepper(
        Breeze([0.0, 0.0]), np.zeros((3, 2)), np.full((3, 2), 10.0), 50.0, absolute=HUGE, reach_m=np.array([90.0, 7.0])
    )
    assert np.hypot(*stepper.step().path_m[-1][:2, 1]) < 7.5


def test_a_coaster_flies_its_parabola_exactly_in_one_step():
    pull, position, velocity = np.array([[0.0], [0.0], [-2.0]]), np.zeros((3, 1)), np.array([[3.0], [0.0], [5.0]])
    coaster = Coaster(pull, position, velocity, np.array([6.0]), np.array([np.inf]))
    step = coaster.step()
    assert coaster.done
    assert step.path_m[-1][:, 0] == pytest.approx([18, 0, 30 - 36])
    assert step.path_m_s[-1][:, 0] == pytest.approx([0, 0, -12])


def test_a_coaster_goes_no_further_than_its_reach_in_the_plane_of_rotation():
    still = np.zeros((3, 2))
    velocity = np.array([[3.0, 0.0], [4.0, 0.0], [90.0, 90.0]])
    step = Coaster(still, still, velocity, np.array([100.0, 100.0]), np.array([10.0, 10.0])).step()
    assert list(step.length_s) == [2.0, 100.0]


def test_a_coaster_in_steps_flies_the_same_parabola_and_stops_where_each_body_must():
    rng = np.random.default_rng(1)
    pull, position, velocity = rng.normal(size=(3, 3, 2))
    limit_s, stops_s = np.array([2.0, 3.0]), np.array([[0.7, -1.0], [9.0, 1.25]])
    coaster = Coaster(
        pull, position, velocity, limit_s, np.full(2, np.inf), longest_s=np.array([0.5, 2.0]), stops_s=stops_s
    )
    ends = [[], []]
    while not np.all(coaster.done):
        flying = ~coaster.done
        step = coaster.step()
        for i in np.flatnonzero(flying):
            ends[i].append(step.elapsed_s[i] + step.length_s[i])
            at = step.position_m[:, i] + step.path_m[-1, :, i]
            moving = step.velocity_m_s[:, i] + step.path_m_s[-1, :, i]
            assert at == pytest.approx(position[:, i] + ends[i][-1] * (velocity[:, i] + ends[i][-1] / 2 * pull[:, i]))
            assert moving == pytest.approx(velocity[:, i] + ends[i][-1] * pull[:, i])
    assert ends == [pytest.approx([0.5, 0.7, 1.2, 1.7, 2.0]), pytest.approx([1.25, 3.0])]


@each_row("mask", [[True, False], [False, True]])
def test_a_coaster_goes_on_with_those_that_are_kept(mask):
    rng = np.random.default_rng(1)
    pull, position, velocity = rng.normal(size=(3, 3, 2))
    coasters = [Coaster(pull, position, velocity, np.array([2.0, 3.0]), np.full(2, np.inf), longest_s=np.array([0.5, 0.4]))
                for _ in range(2)]  # fmt: skip
    coasters[0].step(), coasters[1].step()
    coasters[1].keep(np.array(mask))
    assert coasters[1].step().path_m == pytest.approx(coasters[0].step().path_m[..., mask])


def test_no_step_is_longer_than_allowed():
    stepper = ExplicitStepper(Breeze([0.0]), np.zeros((3, 1)), np.ones((3, 1)), 5.0, absolute=HUGE, longest_s=0.3)
    lengths = []
    while not stepper.done:
        lengths.append(stepper.step().length_s)
    assert max(lengths) <= 0.3
    assert sum(lengths) == pytest.approx(5.0)
