"""What pours: properties of liquids, and how a stream thins, breaks and drips.

Sources: stream breakup, Grant & Middleman, AIChE J. 12, 669 (1966), and Weber (1931) (coefficients from memory); drop size of a broken
stream, Rayleigh (1878): 1.89 times the stream's diameter; size of a dripping drop, Tate's law with the Harkins & Brown
correction in the fit of Lando & Oakley, J. Colloid Interface Sci. 25, 526 (1967) (from memory).
"""

import math
from dataclasses import dataclass

import numpy as np

from ..language import tr_later

_WIDEST = 10.0  # a stream that all but stops is taken to be no wider than this many lips
DROP_PER_STREAM = 1.89  # Rayleigh (1878): diameter of a drop over that of the stream it broke from
DRIPS_BELOW_WEBER = 4.0  # common practice: below it a free stream does not form at the lip


@dataclass(frozen=True)
class Liquid:
    """density_kg_m3, viscosity_pa_s, surface_tension_n_m, and where they come from, with the temperature they are of."""

    name: str
    density_kg_m3: float
    viscosity_pa_s: float
    surface_tension_n_m: float
    source: str


LIQUIDS = (
    Liquid(
        "water",
        998.207,
        1.0016e-3,
        0.07274,
        tr_later("IAPWS-95, IAPWS R12-08 and IAPWS R1-76(2014), 20 C, 1 atm"),
    ),
    Liquid(
        "tea",
        968.61,
        0.33307e-3,
        0.06175,
        tr_later(
            "85 C, as water (IAPWS-95, IAPWS R12-08, IAPWS R1-76(2014), 1 atm); what is dissolved in it is left out"
        ),
    ),
    Liquid(
        "coffee",
        980.55,
        0.43290e-3,
        0.06537,
        tr_later(
            "65 C, as water (IAPWS-95, IAPWS R12-08, IAPWS R1-76(2014), 1 atm); what is dissolved in it is left out"
        ),
    ),
    Liquid(
        "olive oil",
        911.0,
        84.0e-3,
        0.0330,
        tr_later(
            "20 C: density within Codex Alimentarius 33 (0.910 to 0.916 of water's), viscosity 84.0 cP of the CRC Handbook, "
            "surface tension near 33 mN/m of handbooks; all from memory"
        ),
    ),
    Liquid(
        "honey",
        1_414.0,
        6.9,
        0.0550,
        tr_later(
            "25 C, clover at 17.1 % water: viscosity 69 poise of Krell, FAO Agricultural Services Bulletin 124 (1996), density "
            "near White's tables, surface tension between 50 and 60 mN/m; all from memory"
        ),
    ),
)


def named(name):
    """The Liquid of a name."""
    return next(x for x in LIQUIDS if x.name == name)


def lip_speed_m_s(flow_m3_s, lip_m):
    """Speed at which a flow leaves a round lip of diameter lip_m: v = 4 Q / (pi lip^2)."""
    return 4.0 * flow_m3_s / (math.pi * lip_m**2)


def weber(liquid, speed_m_s, lip_m):
    """Weber number of a stream: inertia against surface tension."""
    return liquid.density_kg_m3 * speed_m_s**2 * lip_m / liquid.surface_tension_n_m


def ohnesorge(liquid, lip_m):
    """Ohnesorge number of a stream: viscosity against inertia and surface tension."""
    return liquid.viscosity_pa_s / math.sqrt(liquid.density_kg_m3 * liquid.surface_tension_n_m * lip_m)


def breakup_length_m(liquid, speed_m_s, lip_m):
    """Length along a laminar stream to where it breaks into drops, metres, from the numbers at the lip.

    19.5 sqrt(We) (1 + 3 Oh)^0.85 diameters; scatter at least 10 %. A stream that gravity stretches breaks later.
    """
    number = 19.5 * math.sqrt(weber(liquid, speed_m_s, lip_m)) * (1.0 + 3.0 * ohnesorge(liquid, lip_m)) ** 0.85
    return number * lip_m


def breakup_length_weber_m(liquid, speed_m_s, lip_m):
    """The same by Weber's theory with the disturbances of quiet jets, metres: 12 sqrt(We) (1 + 3 Oh) diameters, the 12 within about a
    tenth (Weber, ZAMM 11, 136 (1931); from memory)."""
    return 12.0 * math.sqrt(weber(liquid, speed_m_s, lip_m)) * (1.0 + 3.0 * ohnesorge(liquid, lip_m)) * lip_m


def thinned_m(lip_m, leaves_m_s, speed_m_s):
    """Diameter of a stream where its speed is speed_m_s: the same flow through a thinner thread."""
    return lip_m * np.sqrt(leaves_m_s / np.maximum(speed_m_s, leaves_m_s / _WIDEST**2))


def drop_volume_m3(diameter_m):
    """Volume of a sphere, m3."""
    return math.pi / 6.0 * diameter_m**3


def dripping_drop_m(liquid, gravity_m_s2, lip_m):
    """Diameter of the drop that falls from a wetted lip when the flow is too slow for a stream, metres.

    Volume V = r sigma / (rho g F), F = 0.14782 + 0.27896 x - 0.166 x^2 with x = r / V^(1/3), r the lip's radius; the fit
    holds for 0.3 <= x <= 1.2 and is held at its ends outside. Raises ValueError for gravity not above 0.
    """
    if not gravity_m_s2 > 0:
        raise ValueError("a drop falls from a lip only where there is gravity")
    radius = lip_m / 2.0
    volume = 2.0 * math.pi * radius * liquid.surface_tension_n_m / (liquid.density_kg_m3 * gravity_m_s2)
    for _ in range(60):
        x = min(max(radius / volume ** (1.0 / 3.0), 0.3), 1.2)
        factor = 0.14782 + 0.27896 * x - 0.166 * x * x
        volume = radius * liquid.surface_tension_n_m / (liquid.density_kg_m3 * gravity_m_s2 * factor)
    return (6.0 * volume / math.pi) ** (1.0 / 3.0)
