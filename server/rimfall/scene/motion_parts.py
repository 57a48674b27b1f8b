"""What the kinds of motion are made of as documents: places, bodies, and the motions of balls and of things that stand."""

from typing import Annotated, Any, ClassVar, Literal

from pydantic import BeforeValidator, Discriminator, Field, Tag, WithJsonSchema
from pydantic_core import PydanticCustomError

from ..fields import Strict, number
from ..physics.bodies import NAMED_BODIES, SPHERE

NAME_MARKS = ".=,"


class Place(Strict):
    """Where a motion starts: the centre of the body."""

    along_m: float = number("Along the deck", "m", -1e6, 1e6, 0.0, shown={"min": -50, "max": 50, "scale": "linear"})
    height_m: float = number("From height", "m", 0, 100_000, 0.0, shown={"min": 0, "max": 10, "scale": "linear"})
    axial_m: float = number("Along the axis", "m", -1e6, 1e6, 0.0, shown={"min": -20, "max": 20, "scale": "linear"})
    floor: int = number("On floor", "", 0, 11, 0)


def speed(label, default):
    return number(label, "m/s", 0, 3_000, default, shown={"min": 0, "max": 30, "scale": "linear"})


def heading(label):
    return number(label, "°", -360, 360, 0.0, shown={"min": -180, "max": 180, "scale": "linear"})


def elevation(label, default=...):
    """A field that is an angle up from level."""
    return number(label, "°", -90, 90, default, shown={"min": -90, "max": 90, "scale": "linear"})


class Carried(Strict):
    """The thrower's own motion, added to the throw."""

    speed_m_s: float = speed("Thrower's speed", 0.0)
    heading_deg: float = heading("Thrower's heading")


def _drag(value: Any):
    """ "sphere", or a constant coefficient from 0 to 5."""
    if value == SPHERE and isinstance(value, str):
        return value
    if isinstance(value, (int, float)) and not isinstance(value, bool) and 0 <= value <= 5:
        return float(value)
    raise PydanticCustomError("drag", "drag")


class OwnBody(Strict):
    """A body stated by its numbers."""

    mass_kg: float = number("Mass", "kg", 1e-9, 1e6, shown={"min": 0.001, "max": 100, "scale": "log"})
    diameter_m: float = number("Diameter", "m", 0, 10, shown={"min": 0.001, "max": 1, "scale": "log"})
    drag: Annotated[
        Any,
        BeforeValidator(_drag),
        WithJsonSchema({"anyOf": [{"const": SPHERE}, {"type": "number", "minimum": 0, "maximum": 5}]}),
    ] = Field(
        SPHERE,
        json_schema_extra={"label": "Drag", "unit": "", "kind": "drag", "may_be": '"sphere" or a number from 0 to 5'},
    )
    shell: Literal["solid", "hollow"] = Field(
        "solid", json_schema_extra={"label": "Made", "unit": "", "kind": "choice"}
    )
    restitution: float = number("Restitution", "", 0, 1, 0.7, shown={"min": 0, "max": 1, "scale": "linear"})
    friction: float = number("Friction", "", 0, 5, 0.5, shown={"min": 0, "max": 1, "scale": "linear"})
    rolling_resistance: float = number(
        "Rolling resistance", "", 0, 1, 0.0, shown={"min": 0, "max": 0.1, "scale": "linear"}
    )
    drag_area_m2: float | None = number(
        "Drag area", "m²", 0, 1_000, None, shown={"min": 0.001, "max": 2, "scale": "log"}
    )
    buoyant: bool = Field(
        False,
        json_schema_extra={
            "label": "Borne by the air",
            "unit": "",
            "kind": "yes_no",
            "may_be": "true (the air it displaces bears it up) or false",
        },
    )


BODY_NAMES = tuple(b.name for b in NAMED_BODIES)

BodyPart = Annotated[
    Annotated[Literal[BODY_NAMES], Tag("@named")] | Annotated[OwnBody, Tag("@own")],
    Discriminator(lambda v: "@named" if isinstance(v, str) else "@own"),
]


def body_field():
    return Field(json_schema_extra={"label": "Body", "unit": "", "kind": "body"})


def _ball_spin():
    return number("Its own spin", "rpm", -1e5, 1e5, 0.0, shown={"min": -3_000, "max": 3_000, "scale": "linear"})


def _bounces():
    return number("Rebounds", "", 0, 1_000, 0, shown={"min": 0, "max": 50, "scale": "linear"})


def _named(value):
    """A name of a motion that an option or a file name can carry."""
    if isinstance(value, str) and (not value.strip() or any(mark in value for mark in NAME_MARKS)):
        raise PydanticCustomError("name", "name")
    return value


class Motion(Strict):
    """What every motion has. A name left out becomes its kind and number."""

    name: Annotated[str, BeforeValidator(_named)] | None = Field(
        None,
        min_length=1,
        max_length=60,
        json_schema_extra={"label": "Name", "unit": "", "kind": "text", "may_be": "1 to 60 characters, without . = ,"},
    )
    start_s: float = number("Starts at", "s", 0, 3_600, 0.0, shown={"min": 0, "max": 10, "scale": "linear"})
    place: Place = Place()


def _axis(value: Any):
    """Three figures, not all 0."""
    three = isinstance(value, (list, tuple)) and len(value) == 3
    if value is None or (three and all(_is_figure(v) for v in value) and any(value)):
        return value
    raise PydanticCustomError("axis", "axis")


def _is_figure(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool) and abs(value) <= 1e6


class Released(Motion):
    """What drops and throws share: how the ball spins as it leaves the hand, and how often it may rebound."""

    carried: Carried | None = None
    body: BodyPart = body_field()
    ball_spin_rpm: float = _ball_spin()
    ball_spin_axis: Annotated[
        Any,
        BeforeValidator(_axis),
        WithJsonSchema(
            {"anyOf": [{"type": "array", "items": {"type": "number"}, "minItems": 3, "maxItems": 3}, {"type": "null"}]}
        ),
    ] = Field(
        None,
        json_schema_extra={
            "label": "Axis of its spin",
            "unit": "",
            "kind": "axis",
            "may_be": "three figures [spinward, up, axial], each within ± 1,000,000 and not all 0, or null",
        },
    )
    bounces: int = _bounces()


class Drop(Released):
    """Something let go."""

    NEW: ClassVar[dict] = {"place": {"along_m": 0.0, "height_m": 1.2, "axial_m": 0.0}, "body": "cup"}
    kind: Literal["drop"]
    speed_m_s: ClassVar[float] = 0.0
    heading_deg: ClassVar[float] = 0.0
    elevation_deg: ClassVar[float] = 0.0


class Throw(Released):
    """Something thrown."""

    NEW: ClassVar[dict] = {
        "place": {"along_m": 0.0, "height_m": 1.5, "axial_m": 0.0},
        "speed_m_s": 6.0,
        "heading_deg": 0.0,
        "elevation_deg": 35.0,
        "body": "handball",
    }
    kind: Literal["throw"]
    speed_m_s: float = speed("Speed", 0.0)
    heading_deg: float = heading("Toward")
    elevation_deg: float = elevation("Up", 0.0)


class RampPart(Strict):
    """A flat ramp that stands on the deck, its middle at the motion's place, its foot on the deck."""

    slope_deg: float = number("Slope", "°", 0, 80, shown={"min": 0, "max": 45, "scale": "linear"})
    heading_deg: float = heading("Rises toward")
    length_m: float = number("Ramp length", "m", 0.1, 1_000, 4.0, shown={"min": 0.5, "max": 20, "scale": "log"})
    width_m: float = number("Ramp width", "m", 0.1, 1_000, 1.0, shown={"min": 0.5, "max": 20, "scale": "log"})


class Roll(Motion):
    """A ball that rolls, or slides until it grips, on the deck or on a ramp."""

    NEW: ClassVar[dict] = {
        "place": {"along_m": 0.0, "height_m": 0.0, "axial_m": 0.0},
        "speed_m_s": 1.5,
        "heading_deg": 90.0,
        "body": "handball",
    }
    kind: Literal["roll"]
    speed_m_s: float = speed("Speed", 0.0)
    heading_deg: float = heading("Toward")
    body: BodyPart = body_field()
    ball_spin_rpm: float = _ball_spin()
    start: Literal["rolling", "sliding"] = Field(
        "rolling", json_schema_extra={"label": "Starts", "unit": "", "kind": "choice"}
    )
    ramp: RampPart | None = None
    bounces: int = _bounces()


class Stand(Motion):
    """A thing that stands on a level table and cannot roll; its place is that of its centre."""

    NEW: ClassVar[dict] = {"place": {"along_m": 0.0, "height_m": 0.9, "axial_m": 0.0}, "body": "cup"}
    kind: Literal["stand"]
    body: BodyPart = body_field()
