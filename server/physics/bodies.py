"""What flies and rolls: a sphere of a mass and a diameter, how the air holds it, how it rebounds; named bodies with sources."""

from dataclasses import dataclass

import numpy as np

SPHERE = "sphere"
INERTIA_FACTORS = {"solid": 2 / 5, "hollow": 2 / 3}  # of m a^2, a the radius: any mechanics text (from memory)


@dataclass(frozen=True)
class Body:
    """mass_kg; diameter_m (0 is a point, in vacuum only); drag is "sphere" or a constant coefficient.

    shell: "solid" or "hollow" (a thin shell). restitution, friction (Coulomb, of both kinds), rolling_resistance (the pull
    that keeps it rolling, over the normal force): against any surface.
    """

    mass_kg: float
    diameter_m: float
    drag: str | float = SPHERE
    shell: str = "solid"
    restitution: float = 0.7
    friction: float = 0.5
    rolling_resistance: float = 0.0

    @property
    def radius_m(self):
        """Half the diameter, metres."""
        return self.diameter_m / 2

    @property
    def inertia_factor(self):
        """beta: the moment of inertia over m a^2."""
        return INERTIA_FACTORS[self.shell]


@dataclass(frozen=True)
class Bodies:
    """Many bodies as arrays (N,); drag_coefficient is nan where the sphere's curve holds."""

    mass_kg: np.ndarray
    diameter_m: np.ndarray
    drag_coefficient: np.ndarray

    def take(self, which):
        """Those that the index or mask `which` picks."""
        return Bodies(self.mass_kg[which], self.diameter_m[which], self.drag_coefficient[which])


def as_arrays(bodies):
    """A list of Body -> Bodies."""
    drag = [np.nan if b.drag == SPHERE else b.drag for b in bodies]
    return Bodies(
        *(np.array(v, dtype=float) for v in ([b.mass_kg for b in bodies], [b.diameter_m for b in bodies], drag))
    )


@dataclass(frozen=True)
class NamedBody:
    """A body a scene may name, and where its mass and size come from."""

    name: str
    body: Body
    source: str


def _ball(diameter_m, density_kg_m3, **contact):
    return Body(density_kg_m3 * np.pi / 6 * diameter_m**3, diameter_m, **contact)


_STEEL = {"restitution": 0.6, "friction": 0.3, "rolling_resistance": 0.002}
_STEEL_SOURCE = (
    "computed from 7850 kg/m3, a usual density of plain steel; restitution, friction and rolling resistance on a hard floor "
    "(common practice, no source)"
)

NAMED_BODIES = (
    NamedBody(
        "handball",
        Body(0.45, 0.18, shell="hollow", restitution=0.75, friction=0.6, rolling_resistance=0.01),
        "IHF Rules of the Game, rule 3: men's ball 425-475 g, 58-60 cm round (from memory); rounded here; restitution, friction "
        "and rolling resistance (common practice, no source)",
    ),
    NamedBody(
        "tennis ball",
        Body(0.0577, 0.067, shell="hollow", restitution=0.745, friction=0.6, rolling_resistance=0.02),
        "ITF Rules of Tennis, Appendix I: middle of 56.0-59.4 g and 6.54-6.86 cm, restitution from the middle of the rebound of "
        "135-147 cm from 254 cm; friction and rolling resistance (common practice, no source)",
    ),
    NamedBody(
        "table-tennis ball",
        Body(0.0027, 0.04, shell="hollow", restitution=0.905, friction=0.25, rolling_resistance=0.01),
        "ITTF Laws 2.03: 40 mm, 2.7 g; restitution from the middle of the ITTF's rebound of 24-26 cm from 30.5 cm on steel; "
        "friction and rolling resistance (common practice, no source)",
    ),
    NamedBody(
        "baseball",
        Body(0.1453, 0.0738, restitution=0.55, friction=0.5, rolling_resistance=0.03),
        "MLB Official Baseball Rules, rule 3.01: middle of 5-5.25 oz and 9-9.25 in round (from memory); restitution, friction "
        "and rolling resistance (common practice, no source)",
    ),
    NamedBody("steel ball 20 mm", _ball(0.020, 7850.0, **_STEEL), _STEEL_SOURCE),
    NamedBody("steel ball 5 mm", _ball(0.005, 7850.0, **_STEEL), _STEEL_SOURCE),
    NamedBody(
        "cup",
        Body(0.25, 0.085, restitution=0.3, friction=0.4, rolling_resistance=0.05),
        "our own: a ceramic cup taken as a ball of its own width (common practice, no source)",
    ),
    NamedBody(
        "water drop 3 mm",
        _ball(0.003, 998.2, restitution=0.0, rolling_resistance=1.0),
        "computed from 998.2 kg/m3, water at 20 C (IAPWS-95); it stays where it lands (common practice, no source)",
    ),
)


def named(name):
    """The Body of a name, or None where there is none of that name."""
    return next((b.body for b in NAMED_BODIES if b.name == name), None)
