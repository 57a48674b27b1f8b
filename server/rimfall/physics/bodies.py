"""What flies and rolls: a sphere of a mass and a diameter, how the air holds it, how it rebounds; named bodies with sources."""

from dataclasses import dataclass

import numpy as np

from ..language import tr_later
from .air import air_at
from .kept import told_once

SPHERE = "sphere"
INERTIA_FACTORS = {"solid": 2 / 5, "hollow": 2 / 3}  # of m a^2, a the radius: any mechanics text (from memory)


@told_once
@dataclass(frozen=True)
class Body:
    """mass_kg; diameter_m (0 is a point, in vacuum only); drag is "sphere" or a constant coefficient.

    shell: "solid" or "hollow" (a thin shell). restitution, friction (Coulomb, of both kinds), rolling_resistance (the pull
    that keeps it rolling, over the normal force): against any surface. drag_area_m2: coefficient times area, in place of drag;
    None for none. buoyant: whether the air it displaces bears it up (`buoyancy.py`).
    """

    mass_kg: float
    diameter_m: float
    drag: str | float = SPHERE
    shell: str = "solid"
    restitution: float = 0.7
    friction: float = 0.5
    rolling_resistance: float = 0.0
    drag_area_m2: float | None = None
    buoyant: bool = False

    @property
    def radius_m(self):
        """Half the diameter, metres."""
        return self.diameter_m / 2

    @property
    def inertia_factor(self):
        """beta: the moment of inertia over m a^2."""
        return INERTIA_FACTORS[self.shell]

    @property
    def volume_m3(self):
        """What it displaces: a sphere."""
        return np.pi / 6 * self.diameter_m**3

    @property
    def drag_coefficient(self):
        """The constant coefficient on its own disc that holds it as it says; nan where the sphere's curve does."""
        if self.drag_area_m2 is None:
            return np.nan if self.drag == SPHERE else self.drag
        return self.drag_area_m2 / (np.pi / 4 * self.diameter_m**2) if self.diameter_m else 0.0


@dataclass(frozen=True)
class Bodies:
    """Many bodies as arrays (N,); drag_coefficient is nan where the sphere's curve holds; displaced_m3 the volume of the
    buoyant ones, 0 of the others, None where there are none."""

    mass_kg: np.ndarray
    diameter_m: np.ndarray
    drag_coefficient: np.ndarray
    displaced_m3: np.ndarray | None = None

    def take(self, which):
        """Those that the index or mask `which` picks."""
        displaced = None if self.displaced_m3 is None else self.displaced_m3[which]
        return Bodies(self.mass_kg[which], self.diameter_m[which], self.drag_coefficient[which], displaced)


def as_arrays(bodies):
    """A list of Body -> Bodies."""
    columns = ([getattr(b, name) for b in bodies] for name in ("mass_kg", "diameter_m", "drag_coefficient"))
    displaced = None
    if any(b.buoyant for b in bodies):
        displaced = np.array([b.volume_m3 if b.buoyant else 0.0 for b in bodies])
    return Bodies(*(np.array(column, dtype=float) for column in columns), displaced)


@dataclass(frozen=True)
class NamedBody:
    """A body a scene may name, and where its mass and size come from."""

    name: str
    body: Body
    source: str


def _ball(diameter_m, density_kg_m3, **contact):
    return Body(density_kg_m3 * np.pi / 6 * diameter_m**3, diameter_m, **contact)


def _light(diameter_m, gas_kg_m3, skin_kg, **contact):
    """A thin shell full of a gas, borne by the air."""
    inside = _ball(diameter_m, gas_kg_m3).mass_kg
    return Body(skin_kg + inside, diameter_m, shell="hollow", buoyant=True, **contact)


_ROOM_AIR_KG_M3 = air_at(101.325, 20.0).deck_density_kg_m3
_HELIUM_KG_M3 = 101_325.0 / (2_077.1 * 293.15)  # ideal gas; 2077.1 J/(kg K) is the gas constant over 4.0026 g/mol
_BALLOON = {"skin_kg": 0.003, "restitution": 0.5, "friction": 0.6, "rolling_resistance": 0.02}
_FILM_KG_M2 = 998.2 * 1e-6  # a film of water a micrometre thick
_A4_M2 = 0.210 * 0.297  # ISO 216
PLATE_CD = 1.18

_STEEL = {"restitution": 0.6, "friction": 0.3, "rolling_resistance": 0.002}
_STEEL_SOURCE = tr_later(
    "computed from 7850 kg/m3, a usual density of plain steel; restitution, friction and rolling resistance on a hard floor "
    "(common practice, no source)"
)

NAMED_BODIES = (
    NamedBody(
        "handball",
        Body(0.45, 0.18, shell="hollow", restitution=0.75, friction=0.6, rolling_resistance=0.01),
        tr_later(
            "IHF Rules of the Game, rule 3: men's ball 425-475 g, 58-60 cm round (from memory); rounded here; restitution, friction "
            "and rolling resistance (common practice, no source)"
        ),
    ),
    NamedBody(
        "tennis ball",
        Body(0.0577, 0.067, shell="hollow", restitution=0.745, friction=0.6, rolling_resistance=0.02),
        tr_later(
            "ITF Rules of Tennis, Appendix I: middle of 56.0-59.4 g and 6.54-6.86 cm, restitution from the middle of the rebound of "
            "135-147 cm from 254 cm; friction and rolling resistance (common practice, no source)"
        ),
    ),
    NamedBody(
        "table-tennis ball",
        Body(0.0027, 0.04, shell="hollow", restitution=0.905, friction=0.25, rolling_resistance=0.01),
        tr_later(
            "ITTF Laws 2.03: 40 mm, 2.7 g; restitution from the middle of the ITTF's rebound of 24-26 cm from 30.5 cm on steel; "
            "friction and rolling resistance (common practice, no source)"
        ),
    ),
    NamedBody(
        "baseball",
        Body(0.1453, 0.0738, restitution=0.55, friction=0.5, rolling_resistance=0.03),
        tr_later(
            "MLB Official Baseball Rules, rule 3.01: middle of 5-5.25 oz and 9-9.25 in round (from memory); restitution, friction "
            "and rolling resistance (common practice, no source)"
        ),
    ),
    NamedBody("steel ball 20 mm", _ball(0.020, 7850.0, **_STEEL), _STEEL_SOURCE),
    NamedBody("steel ball 5 mm", _ball(0.005, 7850.0, **_STEEL), _STEEL_SOURCE),
    NamedBody(
        "cup",
        Body(0.25, 0.085, restitution=0.3, friction=0.4, rolling_resistance=0.05),
        tr_later("our own: a ceramic cup taken as a ball of its own width (common practice, no source)"),
    ),
    NamedBody(
        "water drop 3 mm",
        _ball(0.003, 998.2, restitution=0.0, rolling_resistance=1.0),
        tr_later(
            "computed from 998.2 kg/m3, water at 20 C (IAPWS-95); it stays where it lands (common practice, no source)"
        ),
    ),
    NamedBody(
        "helium balloon",
        _light(0.28, _HELIUM_KG_M3, **_BALLOON),
        tr_later(
            "computed: a sphere of 28 cm at 101.325 kPa and 20 C, and 3 g of latex; its size, its latex, restitution, friction and rolling "
            "resistance (common practice, no source); helium as an ideal gas, 2077.1 J/(kg K)"
        ),
    ),
    NamedBody(
        "air balloon",
        _light(0.28, _ROOM_AIR_KG_M3, **_BALLOON),
        tr_later(
            "computed: a sphere of 28 cm at 101.325 kPa and 20 C, and 3 g of latex; its size, its latex, restitution, friction and rolling "
            "resistance (common practice, no source); air as in ISO 2533"
        ),
    ),
    NamedBody(
        "soap bubble",
        _light(0.05, _ROOM_AIR_KG_M3, np.pi * 0.05**2 * _FILM_KG_M2, restitution=0.0, rolling_resistance=1.0),
        tr_later(
            "computed: 5 cm of air at 101.325 kPa and 20 C in a film of water of 1 micrometre (from memory: films are 0.1 to a few "
            "micrometres thick); it stays where it lands (common practice, no source)"
        ),
    ),
    NamedBody(
        "sheet of paper",
        Body(
            0.080 * _A4_M2, 0.01, restitution=0.0, friction=0.4, rolling_resistance=1.0, drag_area_m2=PLATE_CD * _A4_M2
        ),
        tr_later(
            "A4 (ISO 216) of 80 g/m2 (grammage as in ISO 536), falling flat: 1.18 for a square plate across the flow (White, Fluid "
            "Mechanics, table 7.3; from memory); taken as 10 mm thick where it lands; friction (common practice, no source)"
        ),
    ),
    NamedBody(
        "falling person",
        Body(75.0, 0.3, restitution=0.0, friction=0.6, rolling_resistance=1.0, drag_area_m2=0.70),
        tr_later(
            "75 kg, spread out: coefficient 1.0 on 0.70 m2 (OpenStax, College Physics, section 5.2; from memory); taken as 0.3 m thick "
            "where it lands; friction (common practice, no source)"
        ),
    ),
)


def named(name):
    """The Body of a name, or None where there is none of that name."""
    return next((b.body for b in NAMED_BODIES if b.name == name), None)
