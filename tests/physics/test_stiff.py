"""The implicit stepper, for bodies the air stops in milliseconds: against closed forms, scipy's Radau, and its own order."""

import math
from itertools import pairwise

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.special import roots_jacobi

from rimfall.physics import stiff
from rimfall.physics.air import air_at
from rimfall.physics.bodies import Body, as_arrays
from rimfall.physics.constants import G0_M_S2
from rimfall.physics.forces import Force, Medium
from rimfall.physics.spin import steady
from rimfall.physics.stiff import StiffStepper
from tests.tables import each_row

HUGE = 1e12  # a tolerance no error reaches, so that stops alone set the steps
SAME = 1e-12
MIST = Body(5.2e-10, 1e-4)  # a drop of 0.1 mm: it stops within 30 ms
FOAM = Body(1e-6, 0.5)  # so light that it stops within microseconds
AIR = air_at(101.325, 20.0)


class Swing:
    """A spring and a brake, strengths of their own: a linear law with a closed answer."""

    def at(self, _elapsed_s, position, velocity):
        return -4.0 * position - 1.0 * velocity

    def take(self, _which):
        return self


def swung(time_s):
    """Where the swing gets from 1 m at rest."""
    fast = math.sqrt(3.75)
    return math.exp(-time_s / 2) * (math.cos(fast * time_s) + 0.5 / fast * math.sin(fast * time_s))


def steps_of(force, position, velocity, limit_s, **options):
    stepper = StiffStepper(force, np.array(position, dtype=float), np.array(velocity, dtype=float), limit_s, **options)
    steps = []
    while not stepper.done:
        steps.append(stepper.step())
        assert len(steps) < 2000, "it crawls"
    return steps


def end_of(step):
    return step.position_m + step.path_m[-1], step.velocity_m_s + step.path_m_s[-1]


def test_the_nodes_are_those_of_radau():
    inner, _ = roots_jacobi(
        4, 1.0, 0.0
    )  # Hairer & Wanner II, section IV.5: zeros of the Jacobi polynomial, and the end
    assert pytest.approx([*np.sort(inner) / 2 + 0.5, 1.0], abs=1e-14) == stiff._NODES


def test_the_nodes_integrate_powers_exactly():
    for k in range(5):
        assert stiff._A @ stiff._NODES**k == pytest.approx(stiff._NODES ** (k + 1) / (k + 1), abs=SAME)
        assert stiff._AA @ stiff._NODES**k == pytest.approx(stiff._NODES ** (k + 2) / ((k + 1) * (k + 2)), abs=SAME)


def in_steps(count, monkeypatch):
    """Error at 4 s after equal steps, whatever the error estimate says."""
    monkeypatch.setattr(stiff, "_FIRST_S", 4.0)
    stops = np.linspace(0, 4.0, count + 1)[1:-1]
    monkeypatch.setattr(StiffStepper, "_error", lambda *_: 0.5)
    steps = steps_of(Swing(), [[1.0], [0.0], [0.0]], np.zeros((3, 1)), 4.0, absolute=1e-10, stops_s=stops)
    assert len(steps) == count
    return abs(end_of(steps[-1])[0][0, 0] - swung(4.0))


def test_the_end_of_a_step_converges_with_order_9(monkeypatch):
    errors = [in_steps(n, monkeypatch) for n in (6, 12)]
    assert errors[1] > 1e-13
    assert math.log2(errors[0] / errors[1]) == pytest.approx(9.0, abs=0.5)


def air_force(body, omega=0.0, turns=0.0, pull=(0.0, 0.0, -G0_M_S2)):
    medium = Medium(steady(omega), AIR, 56.0)
    return Force(medium, as_arrays([body]), np.zeros(1), np.array([turns]), np.array([pull]).T)


def test_mist_comes_to_fall_at_a_steady_speed_in_few_steps():
    """There drag holds it up: the force without its pull, at that speed, is the pull."""
    steps = steps_of(air_force(MIST), np.zeros((3, 1)), np.zeros((3, 1)), 60.0, absolute=1e-9)
    fallen = -end_of(steps[-1])[1][2, 0]
    held = air_force(MIST, pull=(0.0, 0.0, 0.0)).at(0.0, np.zeros((3, 1)), np.array([[0.0], [0.0], [-fallen]]))[2, 0]
    assert held == pytest.approx(G0_M_S2, rel=1e-9)
    assert len(steps) < 60  # the stopping alone would ask for thousands


@each_row("body", [MIST, FOAM])
def test_in_air_that_turns_it_agrees_with_scipys_radau(body):
    force = air_force(body, 0.3, 1.0, (0.0, 0.0, -0.1))
    start = np.array([40.0, 0.0, 0.0, 1.0, 9.0, 2.0])
    steps = steps_of(force, start[:3, None], start[3:, None], 5.0, absolute=1e-9)
    rates = lambda t, y: np.concatenate([y[3:], force.at(t, y[:3, None], y[3:, None])[:, 0]])  # noqa: E731
    other = solve_ivp(rates, (0, 5.0), start, "Radau", rtol=1e-10, atol=1e-11).y[:3, -1]
    assert end_of(steps[-1])[0][:, 0] == pytest.approx(other, abs=3e-7)
    assert len(steps) < 200


def test_the_lightest_and_largest_body_of_all_is_carried_by_the_air_in_few_steps():
    """10 m and 1e-9 kg, 5 km from the axis of a 10 km drum: it slips by micrometres a second, and for ten minutes."""
    omega, turns = 0.03, np.ones(1)
    force = Force(Medium(steady(omega), AIR, 1e4), as_arrays([Body(1e-9, 10.0)]), np.zeros(1), turns, np.zeros((3, 1)))
    steps = steps_of(force, [[5000.0], [0], [0]], [[0.0], [150.0], [0]], 600.0, absolute=1e-10)
    x, y, _ = end_of(steps[-1])[0][:, 0]
    assert math.hypot(x, y) - 5000.0 == pytest.approx(0.0015, abs=0.0005)  # 4.5 m/s2 against 2e6 1/s
    assert math.sin(math.atan2(y, x) - omega * 600.0) * 5000.0 == pytest.approx(0.0, abs=1e-4)
    assert len(steps) < 400


def test_steps_join_into_one_path():
    steps = steps_of(air_force(MIST, 0.3, 1.0), [[40.0], [0], [0]], [[0.0], [12.0], [0]], 5.0, absolute=1e-9)
    for this, then in pairwise(steps):
        position, velocity = end_of(this)
        assert position == pytest.approx(then.position_m, abs=SAME * 50)
        assert velocity == pytest.approx(then.velocity_m_s, abs=SAME * 50)


def test_no_step_crosses_a_stop_and_the_last_ends_at_the_limit():
    steps = steps_of(air_force(MIST), np.zeros((3, 1)), np.zeros((3, 1)), 9.0, absolute=1e-6, stops_s=[3.3, 0.7, 20.0])
    ends = {round(s.elapsed_s + s.length_s, 12) for s in steps}
    assert {0.7, 3.3, 9.0} <= ends
