"""A uniform sphere of rock that is spun: when its equator would lose all weight, and what pulls it apart when it is spun faster.

The spin barrier of observed asteroids, a period near 2.2 h, is that of this formula (P. Pravec and A. W. Harris, "Fast and slow
rotation of asteroids", Icarus 148 (2000) 12).
"""

import math
from dataclasses import dataclass

from ..language import tr_later
from ..physics.constants import GRAVITATION_M3_KG_S2


@dataclass(frozen=True)
class Strength:
    """of: what kind of rock; tension_pa; source."""

    of: str
    tension_pa: float
    source: str


STRENGTHS = (
    Strength(
        tr_later("intact rock"),
        10e6,
        tr_later("granite in direct tension, 7 to 25 MPa: rock mechanics handbooks, from memory"),
    ),
    Strength(
        tr_later("rubble"),
        25.0,
        tr_later(
            "P. Sánchez and D. J. Scheeres, Meteoritics & Planetary Science 49 (2014) 788: about 25 Pa, from memory"
        ),
    ),
)


@dataclass(frozen=True)
class Rock:
    """density_kg_m3, radius_m of a uniform sphere."""

    density_kg_m3: float
    radius_m: float

    @property
    def own_rate_rad2_s2(self) -> float:
        """Square of the rate at which the equator's weight vanishes: 4 pi G density / 3."""
        return 4 * math.pi * GRAVITATION_M3_KG_S2 * self.density_kg_m3 / 3

    @property
    def weightless_rate_rad_s(self) -> float:
        return math.sqrt(self.own_rate_rad2_s2)

    @property
    def own_gravity_m_s2(self) -> float:
        """Gravity of its mass at its surface."""
        return self.own_rate_rad2_s2 * self.radius_m

    @property
    def section_m2(self) -> float:
        """Area of the plane through its middle."""
        return math.pi * self.radius_m**2


def rate_for(rock: Rock, gravity_m_s2: float) -> float:
    """rad/s at which what stands inside its equator, head toward the axis, feels that gravity: the spin must also undo the rock's own."""
    return math.sqrt(gravity_m_s2 / rock.radius_m + rock.own_rate_rad2_s2)


def mean_tension_pa(rock: Rock, rate_rad_s: float) -> float:
    """Mean tension over a plane through the axis, density x R² (rate² - 4 pi G density / 3)/4; negative where it is pressed together."""
    return rock.density_kg_m3 * rock.radius_m**2 * (rate_rad_s**2 - rock.own_rate_rad2_s2) / 4


def largest_radius_m(density_kg_m3: float, tension_pa: float, gravity_m_s2: float) -> float:
    """Radius of the sphere whose mean tension is tension_pa when it is spun to that gravity: 4 tension / (density x gravity)."""
    return 4 * tension_pa / (density_kg_m3 * gravity_m_s2)
