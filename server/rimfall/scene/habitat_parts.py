"""The habitats a scene document may hold, one model a shape; a habitat that names none is a cylinder."""

from typing import Annotated, Literal

from pydantic import Discriminator, Field, Tag

from ..fields import Strict, number
from ..physics.constants import G0_M_S2


class RampPoint(Strict):
    """The spin at a time after the start."""

    time_s: float = number("Time", "s", 0, 4200, above=True)
    spin_rpm: float = number("Spin", "rpm", 0, 200)


class Deck(Strict):
    """A named level, for figures and the page; not a surface."""

    name: str = Field(min_length=1, max_length=60, json_schema_extra={"label": "Deck", "unit": "", "kind": "text"})
    radius_m: float = number("Deck radius", "m", 0, 100_000, above=True)


class Floor(Strict):
    """A flat floor of a pod or a cabin. A radius or an azimuth left out is the habitat's radius, and its share of the turn."""

    name: str = Field(
        "",
        max_length=60,
        json_schema_extra={"label": "Floor", "unit": "", "kind": "text", "may_be": "text of at most 60 characters"},
    )
    radius_m: float | None = number("Floor radius", "m", 0.1, 100_000, None)
    azimuth_deg: float | None = number("Floor azimuth", "°", -360, 360, None)
    length_m: float = number("Floor length", "m", 0.5, 100_000, 10.0, shown={"min": 1, "max": 100, "scale": "log"})
    width_m: float = number("Floor width", "m", 0.5, 100_000, 6.0, shown={"min": 1, "max": 100, "scale": "log"})
    ceiling_m: float | None = number("Floor ceiling", "m", 0, 100_000, None, above=True)


def _radius(label):
    return number(label, "m", 0.1, 100_000, shown={"min": 2, "max": 10_000, "scale": "log"})


class Turning(Strict):
    """What every habitat has."""

    radius_m: float = _radius("Radius")
    spin_rpm: float = number("Spin", "rpm", 0, 200, shown={"min": 0, "max": 30, "scale": "fine_low"})
    spin_ramp: list[RampPoint] = Field(
        [], max_length=100, json_schema_extra={"label": "Spin ramp", "unit": "", "kind": "list"}
    )


class Ship(Turning):
    """A habitat in space, which may be under thrust; named levels are for figures."""

    axial_thrust_m_s2: float = number(
        "Thrust along the axis", "m/s²", -100, 100, 0.0, shown={"min": -2, "max": 2, "scale": "linear"}
    )
    decks: list[Deck] = Field([], max_length=20, json_schema_extra={"label": "Decks", "unit": "", "kind": "list"})


def _hub_radius():
    return number("Hub radius", "m", 0.01, 100_000, None, shown={"min": 0.1, "max": 100, "scale": "log"})


def _shape(name):
    return Field(name, json_schema_extra={"label": "Shape", "unit": "", "kind": "choice"})


class CylinderPart(Ship):
    """A drum that turns about its axis."""

    shape: Literal["cylinder"] = _shape("cylinder")
    width_m: float | None = number("Width", "m", 0.5, 100_000, None, shown={"min": 0.5, "max": 1_000, "scale": "log"})
    ceiling_m: float | None = number(
        "Ceiling", "m", 0, 100_000, None, above=True, shown={"min": 1, "max": 100, "scale": "log"}
    )
    hub_radius_m: float | None = _hub_radius()


class TorusPart(Ship):
    """A tube bent into a ring; the radius is that of its outermost inside line."""

    shape: Literal["torus"] = _shape("torus")
    tube_radius_m: float = number("Tube radius", "m", 0.05, 50_000, shown={"min": 0.5, "max": 1_000, "scale": "log"})


class SpherePart(Ship):
    """A ball; the radius is that of its inside at the equator."""

    shape: Literal["sphere"] = _shape("sphere")
    hub_radius_m: float | None = _hub_radius()


class FloorsPart(Ship):
    """Flat floors that go round the axis."""

    floors: list[Floor] = Field(
        min_length=1,
        max_length=12,
        json_schema_extra={"label": "Floors", "unit": "", "kind": "list", "may_be": "a list of 1 to 12"},
    )


class PodsPart(FloorsPart):
    """Pods on arms."""

    shape: Literal["pods"] = _shape("pods")


class TetherPart(FloorsPart):
    """Cabins joined by a tether."""

    shape: Literal["tether"] = _shape("tether")


class TumblerPart(FloorsPart):
    """A craft that tumbles end over end."""

    shape: Literal["tumbler"] = _shape("tumbler")


class TurntablePart(Turning):
    """A platform on a bench, under the gravity of the room."""

    shape: Literal["turntable"] = _shape("turntable")
    outside_gravity_m_s2: float = number(
        "Gravity of the room", "m/s²", 0, 100, G0_M_S2, shown={"min": 0, "max": 20, "scale": "linear"}
    )


SHAPES = {
    "cylinder": CylinderPart,
    "torus": TorusPart,
    "sphere": SpherePart,
    "pods": PodsPart,
    "tether": TetherPart,
    "tumbler": TumblerPart,
    "turntable": TurntablePart,
}


def _shape_of(value):
    """The tag of a habitat's model: its shape, a cylinder where it names none."""
    shape = value.get("shape", "cylinder") if isinstance(value, dict) else getattr(value, "shape", "cylinder")
    return f"@{shape}" if isinstance(shape, str) else "@"


HabitatPart = Annotated[
    Annotated[CylinderPart, Tag("@cylinder")]
    | Annotated[TorusPart, Tag("@torus")]
    | Annotated[SpherePart, Tag("@sphere")]
    | Annotated[PodsPart, Tag("@pods")]
    | Annotated[TetherPart, Tag("@tether")]
    | Annotated[TumblerPart, Tag("@tumbler")]
    | Annotated[TurntablePart, Tag("@turntable")],
    Discriminator(_shape_of),
]


class Other(Strict):
    """Another habitat, in which the same motions are shown."""

    name: str = Field(
        min_length=1,
        max_length=60,
        json_schema_extra={"label": "Name", "unit": "", "kind": "text", "may_be": "1 to 60 characters, unique"},
    )
    habitat: HabitatPart
