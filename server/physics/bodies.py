"""What flies: a sphere of a mass and a diameter, and how the air holds it; named bodies with their sources."""

from dataclasses import dataclass

import numpy as np

SPHERE = "sphere"


@dataclass(frozen=True)
class Body:
    """mass_kg; diameter_m (0 is a point, in vacuum only); drag is "sphere" or a constant coefficient."""

    mass_kg: float
    diameter_m: float
    drag: str | float = SPHERE


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


def _ball(diameter_m, density_kg_m3):
    return Body(density_kg_m3 * np.pi / 6 * diameter_m**3, diameter_m)


NAMED_BODIES = (
    NamedBody(
        "handball",
        Body(0.45, 0.18),
        "IHF Rules of the Game, rule 3: men's ball 425-475 g, 58-60 cm round (from memory); rounded here",
    ),
    NamedBody(
        "tennis ball", Body(0.0577, 0.067), "ITF Rules of Tennis, Appendix I: middle of 56.0-59.4 g and 6.54-6.86 cm"
    ),
    NamedBody("table-tennis ball", Body(0.0027, 0.04), "ITTF Laws 2.03: 40 mm, 2.7 g"),
    NamedBody(
        "baseball",
        Body(0.1453, 0.0738),
        "MLB Official Baseball Rules, rule 3.01: middle of 5-5.25 oz and 9-9.25 in round (from memory)",
    ),
    NamedBody(
        "steel ball 20 mm",
        _ball(0.020, 7850.0),
        "computed from 7850 kg/m3, a usual density of plain steel (common practice, no source)",
    ),
    NamedBody(
        "steel ball 5 mm",
        _ball(0.005, 7850.0),
        "computed from 7850 kg/m3, a usual density of plain steel (common practice, no source)",
    ),
    NamedBody(
        "cup", Body(0.25, 0.085), "our own: a ceramic cup taken as a ball of its own width (common practice, no source)"
    ),
    NamedBody("water drop 3 mm", _ball(0.003, 998.2), "computed from 998.2 kg/m3, water at 20 C (IAPWS-95)"),
)


def named(name):
    """The Body of a name, or None where there is none of that name."""
    return next((b.body for b in NAMED_BODIES if b.name == name), None)
