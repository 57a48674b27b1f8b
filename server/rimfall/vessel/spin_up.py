"""Spinning up and down: a steady torque from a motor, or thrusters at the rim that burn what turns with them. SI units, angles rad."""

import math
from dataclasses import dataclass

from ..physics.constants import TURN_RAD


@dataclass(frozen=True)
class SpinUp:
    """From rest to a rate, or back. propellant_kg: what thrusters burn, None of a motor; rough_kg: the same as if its own mass weighed
    nothing, L / (arm × exhaust speed)."""

    torque_n_m: float
    time_s: float
    turns: float
    energy_j: float
    momentum_kg_m2_s: float
    propellant_kg: float | None = None
    rough_kg: float | None = None

    @property
    def turns_to_stop(self):
        """How many turns the same takes backwards. What burns what it carries speeds up late, and slows down late: both together
        are as many as at full rate all the time."""
        if self.propellant_kg == self.rough_kg:
            return self.turns
        rate = 2 * self.energy_j / self.momentum_kg_m2_s
        return rate * self.time_s / TURN_RAD - self.turns


def by_motor(inertia_kg_m2, rate_rad_s, torque_n_m):
    """A SpinUp by a steady torque."""
    momentum = inertia_kg_m2 * rate_rad_s
    time = momentum / torque_n_m
    return SpinUp(torque_n_m, time, rate_rad_s * time / 2 / TURN_RAD, momentum * rate_rad_s / 2, momentum)


def by_thrusters(inertia_kg_m2, rate_rad_s, thrust_n, arm_m, exhaust_m_s, weighed):
    """A SpinUp by a steady thrust. weighed: whether the propellant's own mass counts, carried at the thrusters' radius until it is burnt;
    inertia_kg_m2 is what turns without it.

    Then I dω = v arm dm with I = I_dry + m arm² (what is burnt takes its own share of the momentum along), which integrates to
    m = I_dry/arm² (exp(ω arm/v) - 1): the rocket equation, for the speed of the thrusters.
    """
    plain = by_motor(inertia_kg_m2, rate_rad_s, thrust_n * arm_m)
    rough = plain.momentum_kg_m2_s / (arm_m * exhaust_m_s)
    if not weighed:
        return SpinUp(**vars(plain) | {"propellant_kg": rough, "rough_kg": rough})
    x = rate_rad_s * arm_m / exhaust_m_s
    dry = inertia_kg_m2 / arm_m**2
    propellant = dry * math.expm1(x)
    time = propellant * exhaust_m_s / thrust_n
    turns = exhaust_m_s**2 * dry * _expm1_less(x) / (arm_m * thrust_n) / TURN_RAD
    energy = plain.energy_j
    return SpinUp(plain.torque_n_m, time, turns, energy, plain.momentum_kg_m2_s, propellant, rough)


def _expm1_less(x):
    """exp(x) - 1 - x, also where x is small."""
    return math.expm1(x) - x if x > 1e-3 else x * x / 2 * (1 + x / 3 * (1 + x / 4))


def reaction_rad_s(momentum_kg_m2_s, inertia_kg_m2):
    """How fast a body turns that has to hold so much momentum; None where it has no inertia."""
    return momentum_kg_m2_s / inertia_kg_m2 if inertia_kg_m2 else None
