"""A mass that moves along a radius of something that spins. SI units, rates rad/s; the axis stays where it is."""

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True)
class Course:
    """A move at constant speed, arrays (n,): when, how far from the axis, how fast all turns, the sideways push on the mass (along the
    spin where it is above 0), the torque that keeps the spin (0 where momentum is kept).

    work_j: done by whoever moves it (below 0: it must be braked); motor_j: by the motor that keeps the spin."""

    time_s: np.ndarray
    radius_m: np.ndarray
    rate_rad_s: np.ndarray
    sideways_n: np.ndarray
    torque_n_m: np.ndarray
    work_j: float
    motor_j: float


def course(inertia_kg_m2, rate_rad_s, mass_kg, from_m, to_m, speed_m_s, keeps_spin, count=61):
    """The Course of a mass beside an inertia; rate_rad_s: at its start.

    With momentum kept ω = L/(I + m r²), and the work is what the energy L²/2(I + m r²) gains. With the spin kept the motor adds
    2 m r ω v of torque, m ω² (r₂² - r₁²) of work, half of which comes out again at the mass. Sideways: 2 m ω v, what Coriolis takes."""
    time = np.linspace(0.0, abs(to_m - from_m) / speed_m_s, count)
    radius = np.linspace(from_m, to_m, count)
    outward = speed_m_s * np.sign(to_m - from_m)
    whole = inertia_kg_m2 + mass_kg * radius**2
    swept = mass_kg * (to_m - from_m) * (to_m + from_m)
    if keeps_spin:
        rate = np.full(count, rate_rad_s)
        torque = 2 * mass_kg * radius * rate_rad_s * outward
        work, motor = -swept * rate_rad_s**2 / 2, swept * rate_rad_s**2
    else:
        ratio = np.divide(whole[0], whole, out=np.ones(count), where=whole > 0)
        rate, torque, motor = rate_rad_s * ratio, np.zeros(count), 0.0
        work = -swept * rate_rad_s**2 / 2 * float(ratio[-1])
    return Course(time, radius, rate, 2 * mass_kg * rate * outward, torque, float(work), float(motor))
