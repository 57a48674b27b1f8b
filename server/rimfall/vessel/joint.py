"""A bearing between two bodies that turn about one axis: what friction does, and what is left when it seizes. SI units, rates rad/s."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Seized:
    """Both bodies turning as one: their rate, and the energy that has become heat."""

    rate_rad_s: float
    heat_j: float


def friction_torque_n_m(coefficient, load_n, radius_m):
    """Torque of dry friction in a bearing, μ F r."""
    return coefficient * load_n * radius_m


def drag_along_s(inertias, relative_rad_s, torque_n_m):
    """How long a steady friction torque takes until both turn as one with nothing else acting: ω_rel / (τ (1/I_1 + 1/I_2)); None where
    there is no friction."""
    first, second = inertias
    if not torque_n_m:
        return None
    return abs(relative_rad_s) / torque_n_m * (first * second / (first + second) if first and second else 0.0)


def seized(inertias, rates_rad_s):
    """The Seized of two bodies at these rates; None where neither has inertia. The heat is what they lose, half the reduced inertia
    times the square of their relative rate."""
    (first, second), (one, other) = inertias, rates_rad_s
    if not first + second:
        return None
    return Seized(
        (first * one + second * other) / (first + second), first * second / (first + second) * (one - other) ** 2 / 2
    )
