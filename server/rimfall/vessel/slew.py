"""Turning the axis of something that spins. SI units, angles rad; the turn is slow against the spin."""

import numpy as np


def gyroscopic_torque(turn_rad_s, momentum_kg_m2_s):
    """The torque (3,) that turns an angular momentum (3,) at a rate (3,): Ω × L. What turns pushes back with as much."""
    return np.cross(turn_rad_s, momentum_kg_m2_s)


def precession_rad_s(torque_n_m, momentum_kg_m2_s):
    """The rate at which a steady torque across the axis leads it round, τ / L; None of a body that does not spin."""
    return torque_n_m / abs(momentum_kg_m2_s) if momentum_kg_m2_s else None


def rest_to_rest(inertia_kg_m2, angle_rad, greatest_rad_s):
    """(torque, time) of an ordinary turn, faster and faster over its first half and slower again over the second, with greatest_rad_s in
    the middle: I Ω²/θ and 2θ/Ω, which is 4 I θ/t² (Wertz & Larson, attitude-control sizing)."""
    return inertia_kg_m2 * greatest_rad_s**2 / angle_rad, 2 * angle_rad / greatest_rad_s
