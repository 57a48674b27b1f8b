"""Spinning up: the closed form with propellant against scipy, and what a steady torque does."""

import math

import pytest
from scipy.integrate import solve_ivp

from rimfall.physics.constants import RPM_RAD_S, TURN_RAD
from rimfall.vessel import spin_up
from tests.tables import each_row

# inertia, rate, thrust, arm, exhaust: little propellant, much, and more than all else
RUNS = [
    (2.8e8, 3 * RPM_RAD_S, 400.0, 56.0, 2800.0),
    (2.8e8, 3 * RPM_RAD_S, 400.0, 56.0, 40.0),
    (5e5, 12 * RPM_RAD_S, 90.0, 80.0, 60.0),
    (40.0, 1e-3, 2.0, 1e-3, 10.0),
]


@each_row(("inertia", "rate", "thrust", "arm", "exhaust"), RUNS)
def test_thrusters_that_carry_their_propellant(inertia, rate, thrust, arm, exhaust):
    """The equation of motion itself, (I + m arm²) dω/dt = F arm with m falling by F/exhaust, against the closed form."""
    run = spin_up.by_thrusters(inertia, rate, thrust, arm, exhaust, weighed=True)

    def change(time, state):
        left = run.propellant_kg - thrust / exhaust * time
        return [thrust * arm / (inertia + left * arm**2), state[0]]

    end = solve_ivp(change, (0, run.time_s), [0.0, 0.0], method="DOP853", rtol=1e-12, atol=1e-30).y[:, -1]
    assert end[0] == pytest.approx(rate, rel=1e-9)
    assert end[1] / TURN_RAD == pytest.approx(run.turns, rel=1e-9)
    back = solve_ivp(
        lambda time, state: [-change(time, state)[0], state[0]],
        (0, run.time_s),
        [rate, 0.0],
        method="DOP853",
        rtol=1e-12,
        atol=1e-30,
    ).y[:, -1]
    assert back[0] == pytest.approx(0.0, abs=1e-9 * rate)
    assert back[1] / TURN_RAD == pytest.approx(run.turns_to_stop, rel=1e-9)
    assert run.time_s * thrust / exhaust == pytest.approx(run.propellant_kg, rel=1e-12)
    assert run.propellant_kg >= run.rough_kg
    assert run.rough_kg == pytest.approx(inertia * rate / (arm * exhaust), rel=1e-12)


def test_little_propellant_is_the_same_weighed_or_not():
    how = 2.8e8, 3 * RPM_RAD_S, 400.0, 56.0, 1e6
    one, other = (spin_up.by_thrusters(*how, weighed=weighed) for weighed in (True, False))
    assert one.propellant_kg == pytest.approx(other.propellant_kg, rel=1e-5)
    assert one.turns == pytest.approx(other.turns, rel=2e-5)


def test_a_steady_torque():
    """L = τ t, half the rate on the average, half L ω of energy."""
    run = spin_up.by_motor(100.0, 2.0, 5.0)
    assert (run.time_s, run.turns * TURN_RAD, run.energy_j, run.momentum_kg_m2_s) == pytest.approx((40, 40, 200, 200))
    assert run.propellant_kg is None


def test_what_has_no_inertia_takes_no_reaction():
    assert spin_up.reaction_rad_s(3.0, 0.0) is None
    assert math.isclose(spin_up.reaction_rad_s(-3.0, 2.0), -1.5)
