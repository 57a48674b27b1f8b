"""Stress in a thin turning ring, what spokes carry instead, and the largest ring that a material carries.

Thin ring: radius much greater than thickness. Hoop stress = (R/t) x load per area (MIT 16.86, A Systems Design for a Prototype
Space Colony (1976), p. 7.25), of which the ring's own share, density x rate² x R², does not depend on its thickness.
"""

import math
from dataclasses import dataclass


@dataclass(frozen=True)
class Ring:
    """radius_m, rate_rad_s; density_kg_m3 and thickness_m of its wall; load_kg_m2 on the deck; pressure_pa inside."""

    radius_m: float
    rate_rad_s: float
    density_kg_m3: float
    thickness_m: float
    load_kg_m2: float = 0.0
    pressure_pa: float = 0.0

    @property
    def gravity_m_s2(self) -> float:
        return self.rate_rad_s**2 * self.radius_m


@dataclass(frozen=True)
class HoopStress:
    """Shares of the hoop stress, Pa: of the ring's own weight, of the load on its deck, of the pressure inside."""

    own_pa: float
    load_pa: float
    pressure_pa: float

    @property
    def whole_pa(self) -> float:
        return self.own_pa + self.load_pa + self.pressure_pa


def hoop_stress(ring: Ring) -> HoopStress:
    """Pressure is taken as that of a long cylinder, p R/t; its ends' pull along the axis is left out."""
    slenderness = ring.radius_m / ring.thickness_m
    return HoopStress(
        ring.density_kg_m3 * ring.gravity_m_s2 * ring.radius_m,
        ring.load_kg_m2 * ring.gravity_m_s2 * slenderness,
        ring.pressure_pa * slenderness,
    )


def largest_radius_m(ring: Ring, stress_pa: float, gravity_m_s2: float) -> float:
    """Radius at which a ring of that wall, load and pressure carries stress_pa with that gravity at its rim; inf where nothing pulls."""
    per_m = ring.density_kg_m3 * gravity_m_s2 + (ring.load_kg_m2 * gravity_m_s2 + ring.pressure_pa) / ring.thickness_m
    return stress_pa / per_m if per_m > 0 else math.inf


def least_thickness_m(ring: Ring, stress_pa: float) -> float:
    """The thinnest wall with which a ring carries its load and pressure at stress_pa; inf where its own weight alone is more."""
    left = stress_pa - ring.density_kg_m3 * ring.gravity_m_s2 * ring.radius_m
    return (ring.load_kg_m2 * ring.gravity_m_s2 + ring.pressure_pa) * ring.radius_m / left if left > 0 else math.inf


def spoke_tension_n(mass_kg: float, gravity_m_s2: float, spokes: int) -> float:
    """Pull in each spoke where spokes alone hold mass_kg at the rim, in as many equal shares; the spokes' own mass is left out."""
    return mass_kg * gravity_m_s2 / spokes
