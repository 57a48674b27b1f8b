"""A visitor that comes to a turning craft or leaves it: at the rim, at the hub, and by letting go."""

import math
from dataclasses import dataclass


@dataclass(frozen=True)
class AtRim:
    """speed_m_s to match; acceleration_m_s2 toward the axis, to stay beside one place of the rim; push_n and propellant_kg_s for it."""

    speed_m_s: float
    acceleration_m_s2: float
    push_n: float
    propellant_kg_s: float


def hold_at_rim(radius_m: float, rate_rad_s: float, mass_kg: float, exhaust_m_s: float) -> AtRim:
    """The visitor goes round with the rim, held by its own engine alone; its mass is taken as it is at the start."""
    acceleration = rate_rad_s**2 * radius_m
    push = mass_kg * acceleration
    return AtRim(rate_rad_s * radius_m, acceleration, push, push / exhaust_m_s)


@dataclass(frozen=True)
class Adrift:
    """Seen from the rim, after its engine stops: away_m outward of the rim, along_m of the rim (negative: antispinward)."""

    away_m: float
    along_m: float


def adrift(radius_m: float, rate_rad_s: float, time_s: float) -> Adrift:
    """It goes on straight along the tangent while the rim turns under it."""
    turned_rad = rate_rad_s * time_s
    return Adrift(radius_m * (math.hypot(1.0, turned_rad) - 1.0), radius_m * (math.atan(turned_rad) - turned_rad))


@dataclass(frozen=True)
class AtHub:
    """angular_momentum_kg_m2_s that the visitor must take on; time_s and propellant_kg for it."""

    angular_momentum_kg_m2_s: float
    time_s: float
    propellant_kg: float


def match_hub(inertia_kg_m2: float, rate_rad_s: float, thrust_n: float, arm_m: float, exhaust_m_s: float) -> AtHub:
    """Its thrusters push at arm_m from its own axis with thrust_n in all."""
    momentum = inertia_kg_m2 * abs(rate_rad_s)
    return AtHub(momentum, momentum / (thrust_n * arm_m), momentum / (arm_m * exhaust_m_s))


def let_go_azimuth_rad(direction_rad: float, rate_rad_s: float) -> float:
    """Inertial azimuth of the place that lets go so that what leaves flies toward direction_rad: a quarter turn before it."""
    return direction_rad - math.copysign(math.pi / 2, rate_rad_s)


def wait_s(azimuth_rad: float, place_rad: float, rate_rad_s: float) -> float:
    """Time until a place now at place_rad comes to azimuth_rad."""
    ahead = (azimuth_rad - place_rad) * math.copysign(1.0, rate_rad_s)
    return math.fmod(math.fmod(ahead, 2 * math.pi) + 2 * math.pi, 2 * math.pi) / abs(rate_rad_s)
