"""Stress in a thin turning ring, what spokes carry instead, and the largest ring that a material carries.

Thin ring: radius much greater than thickness. Hoop stress = (R/t) x load per area (MIT 16.86, A Systems Design for a Prototype
Space Colony (1976), p. 7.25), of which the ring's own share, density x rate² x R², does not depend on its thickness. Air in a tube of
its own pulls as in any toroidal shell (Young & Budynas, Roark's Formulas for Stress and Strain, 7th ed., table 13.1): along the ring
p r/2t, around the tube p r/2t (2R − r)/(R − r) on its inner side, with R to the tube's middle.
"""

import math
from dataclasses import dataclass, replace


@dataclass(frozen=True)
class Ring:
    """radius_m, rate_rad_s; density_kg_m3 and thickness_m of its wall; load_kg_m2 on the deck; pressure_pa inside. tube_radius_m: of the
    tube that the ring is, whose floor is as wide as the tube; None where the ring is the wall of a cylinder that is full of air."""

    radius_m: float
    rate_rad_s: float
    density_kg_m3: float
    thickness_m: float
    load_kg_m2: float = 0.0
    pressure_pa: float = 0.0
    tube_radius_m: float | None = None

    @property
    def loaded_share(self) -> float:
        """How much of a wall's width carries the load of as wide a floor: a tube's wall, π times its width, has so much less of it."""
        return 1.0 if self.tube_radius_m is None else 1.0 / math.pi

    @property
    def air_along_pa(self) -> float:
        """The pressure's pull along the ring."""
        if self.tube_radius_m is None:
            return self.pressure_pa * self.radius_m / self.thickness_m
        return self.pressure_pa * self.tube_radius_m / (2 * self.thickness_m)

    @property
    def air_around_pa(self) -> float:
        """The pressure's greatest pull around the tube; 0 where there is none."""
        if self.tube_radius_m is None:
            return 0.0
        middle_m = self.radius_m - self.tube_radius_m
        return self.air_along_pa * (2 * middle_m - self.tube_radius_m) / (middle_m - self.tube_radius_m)

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
    """Along the ring. Without a tube pressure is that of a long cylinder, p R/t; its ends' pull along the axis is left out."""
    slenderness = ring.radius_m / ring.thickness_m
    return HoopStress(
        ring.density_kg_m3 * ring.gravity_m_s2 * ring.radius_m,
        ring.load_kg_m2 * ring.gravity_m_s2 * slenderness * ring.loaded_share,
        ring.air_along_pa,
    )


def largest_radius_m(ring: Ring, stress_pa: float, gravity_m_s2: float) -> float:
    """Radius at which a ring of that wall, load and pressure carries stress_pa with that gravity at its rim; inf where nothing
    pulls, 0 where the tube's own air is too much."""
    per_m = (ring.density_kg_m3 + ring.load_kg_m2 * ring.loaded_share / ring.thickness_m) * gravity_m_s2
    if ring.tube_radius_m is None:
        per_m += ring.pressure_pa / ring.thickness_m
        return stress_pa / per_m if per_m > 0 else math.inf
    # the pull around the tube of the largest rings; around that of smaller ones it is more
    if 2 * ring.air_along_pa > stress_pa:
        return 0.0
    radius_m = (stress_pa - ring.air_along_pa) / per_m if per_m > 0 else math.inf
    if not math.isfinite(radius_m):
        return radius_m
    narrow = radius_m <= 3 * ring.tube_radius_m or replace(ring, radius_m=radius_m).air_around_pa > stress_pa
    return 0.0 if narrow else radius_m


def least_thickness_m(ring: Ring, stress_pa: float) -> float:
    """The thinnest wall with which a ring carries its load and pressure at stress_pa; inf where its own weight alone is more."""
    left = stress_pa - ring.density_kg_m3 * ring.gravity_m_s2 * ring.radius_m
    if left <= 0:
        return math.inf
    loaded_n_m = ring.load_kg_m2 * ring.gravity_m_s2 * ring.radius_m * ring.loaded_share
    along_m = (loaded_n_m + ring.air_along_pa * ring.thickness_m) / left
    return max(along_m, ring.air_around_pa * ring.thickness_m / stress_pa)


def spoke_tension_n(mass_kg: float, gravity_m_s2: float, spokes: int) -> float:
    """Pull in each spoke where spokes alone hold mass_kg at the rim, in as many equal shares; the spokes' own mass is left out."""
    return mass_kg * gravity_m_s2 / spokes
