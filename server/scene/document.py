"""The scene document: every field with its unit, range, label and default, once. The page and the commands read them here.

Reading is strict: no field unknown here, no text for a number, no NaN or infinity. What one field alone cannot show is in
`checks.py`; sentences of refusal are in `refusals.py`.
"""

import re
from fractions import Fraction
from typing import Annotated, Any, ClassVar, Literal

from pydantic import BaseModel, BeforeValidator, ConfigDict, Discriminator, Field, Tag, WithJsonSchema
from pydantic_core import PydanticCustomError

from ..physics.bodies import NAMED_BODIES, SPHERE
from ..physics.liquids import LIQUIDS

VERSION = 1
FILM_RATES = {23.976: Fraction(24000, 1001), 29.97: Fraction(30000, 1001), 59.94: Fraction(60000, 1001)}
LEAST_FPS, GREATEST_FPS = 1, 240
NAME_MARKS = ".=,"


def number(label, unit, low, high, default=..., *, above=False, shown=None):
    """A field that is a number from low to high (above low, if so said); `shown` is what a slider shows of it."""
    bounds = {"gt" if above else "ge": low, "le": high}
    return Field(default, **bounds, json_schema_extra={"label": label, "unit": unit, "shown": shown, "kind": "number"})


def text(label, longest, default=...):
    """A field that is text of at most `longest` characters."""
    return Field(default, max_length=longest, json_schema_extra={"label": label, "unit": "", "kind": "text"})


class Strict(BaseModel):
    """What every part of the document keeps to."""

    model_config = ConfigDict(strict=True, extra="forbid", allow_inf_nan=False, frozen=True)


class RampPoint(Strict):
    """The spin at a time after the start."""

    time_s: float = number("Time", "s", 0, 4200, above=True)
    spin_rpm: float = number("Spin", "rpm", 0, 200)


class Deck(Strict):
    """A named level, for figures and the page; not a surface."""

    name: str = Field(min_length=1, max_length=60, json_schema_extra={"label": "Deck", "unit": "", "kind": "text"})
    radius_m: float = number("Deck radius", "m", 0, 100_000, above=True)


class HabitatPart(Strict):
    """A drum that turns about its axis."""

    shape: Literal["cylinder"] = Field("cylinder", json_schema_extra={"label": "Shape", "unit": "", "kind": "choice"})
    radius_m: float = number("Radius", "m", 0.1, 100_000, shown={"min": 2, "max": 10_000, "scale": "log"})
    spin_rpm: float = number("Spin", "rpm", 0, 200, shown={"min": 0, "max": 30, "scale": "fine_low"})
    width_m: float | None = number("Width", "m", 0.5, 100_000, None, shown={"min": 0.5, "max": 1_000, "scale": "log"})
    ceiling_m: float | None = number(
        "Ceiling", "m", 0, 100_000, None, above=True, shown={"min": 1, "max": 100, "scale": "log"}
    )
    hub_radius_m: float | None = number(
        "Hub radius", "m", 0.01, 100_000, None, shown={"min": 0.1, "max": 100, "scale": "log"}
    )
    axial_thrust_m_s2: float = number(
        "Thrust along the axis", "m/s²", -100, 100, 0.0, shown={"min": -2, "max": 2, "scale": "linear"}
    )
    spin_ramp: list[RampPoint] = Field(
        [], max_length=100, json_schema_extra={"label": "Spin ramp", "unit": "", "kind": "list"}
    )
    decks: list[Deck] = Field([], max_length=20, json_schema_extra={"label": "Decks", "unit": "", "kind": "list"})


class AirPart(Strict):
    """The air at the deck."""

    pressure_kpa: float = number(
        "Air pressure", "kPa", 0.001, 1_000, 101.325, shown={"min": 0, "max": 200, "scale": "linear"}
    )
    temperature_c: float = number(
        "Air temperature", "°C", -150, 500, 20.0, shown={"min": -50, "max": 50, "scale": "linear"}
    )


class Place(Strict):
    """Where a motion starts: the centre of the body."""

    along_m: float = number("Along the deck", "m", -1e6, 1e6, 0.0, shown={"min": -50, "max": 50, "scale": "linear"})
    height_m: float = number("From height", "m", 0, 100_000, 0.0, shown={"min": 0, "max": 10, "scale": "linear"})
    axial_m: float = number("Along the axis", "m", -1e6, 1e6, 0.0, shown={"min": -20, "max": 20, "scale": "linear"})


def _speed(label, default):
    return number(label, "m/s", 0, 3_000, default, shown={"min": 0, "max": 30, "scale": "linear"})


def _heading(label):
    return number(label, "°", -360, 360, 0.0, shown={"min": -180, "max": 180, "scale": "linear"})


class Carried(Strict):
    """The thrower's own motion, added to the throw."""

    speed_m_s: float = _speed("Thrower's speed", 0.0)
    heading_deg: float = _heading("Thrower's heading")


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


BODY_NAMES = tuple(b.name for b in NAMED_BODIES)
LIQUID_NAMES = tuple(x.name for x in LIQUIDS)

BodyPart = Annotated[
    Annotated[Literal[BODY_NAMES], Tag("@named")] | Annotated[OwnBody, Tag("@own")],
    Discriminator(lambda v: "@named" if isinstance(v, str) else "@own"),
]


def _body_field():
    return Field(json_schema_extra={"label": "Body", "unit": "", "kind": "body"})


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


class Drop(Motion):
    """Something let go."""

    kind: Literal["drop"]
    carried: Carried | None = None
    body: BodyPart = _body_field()
    speed_m_s: ClassVar[float] = 0.0
    heading_deg: ClassVar[float] = 0.0
    elevation_deg: ClassVar[float] = 0.0


class Throw(Motion):
    """Something thrown."""

    kind: Literal["throw"]
    speed_m_s: float = _speed("Speed", 0.0)
    heading_deg: float = _heading("Toward")
    elevation_deg: float = number("Up", "°", -90, 90, 0.0, shown={"min": -90, "max": 90, "scale": "linear"})
    carried: Carried | None = None
    body: BodyPart = _body_field()


class Pour(Motion):
    """A liquid poured from a round lip at a steady flow."""

    kind: Literal["pour"]
    heading_deg: float = _heading("Toward")
    elevation_deg: float = number("Up", "°", -90, 90, 0.0, shown={"min": -90, "max": 90, "scale": "linear"})
    flow_ml_s: float = number("Flow", "ml/s", 0.1, 1_000, shown={"min": 1, "max": 200, "scale": "log"})
    lip_diameter_mm: float = number("Lip", "mm", 1, 100, shown={"min": 1, "max": 40, "scale": "log"})
    duration_s: float = number("For", "s", 0.05, 600, shown={"min": 0.1, "max": 20, "scale": "log"})
    liquid: Literal[LIQUID_NAMES] = Field(json_schema_extra={"label": "Liquid", "unit": "", "kind": "choice"})


MOTIONS = {"drop": Drop, "throw": Throw, "pour": Pour}


def _fps(value: Any):
    """A frame rate: a number from 1 to 240, or "n/d" in that range."""
    try:
        rate = frame_rate(value)
    except (TypeError, ValueError, ZeroDivisionError, OverflowError):
        raise PydanticCustomError("fps", "fps") from None
    if not LEAST_FPS <= rate <= GREATEST_FPS:
        raise PydanticCustomError("fps", "fps")
    return value


def frame_rate(value):
    """A document's fps as an exact Fraction. Raises ValueError or TypeError for what is not one."""
    if isinstance(value, str):
        if not re.fullmatch(r"[0-9]{1,7}/[0-9]{1,7}", value):
            raise ValueError(value)
        return Fraction(value)
    if isinstance(value, bool):
        raise TypeError(value)
    return FILM_RATES.get(value) or Fraction(value).limit_denominator(1001)


class Sampling(Strict):
    """How often paths are sampled, and when everything ends."""

    fps: Annotated[
        Any,
        BeforeValidator(_fps),
        WithJsonSchema(
            {
                "anyOf": [
                    {"type": "number", "minimum": 1, "maximum": 240},
                    {"type": "string", "pattern": "^[0-9]+/[0-9]+$"},
                ]
            }
        ),
    ] = Field(
        24, json_schema_extra={"label": "Frames a second", "unit": "fps", "kind": "fps", "may_be": '1 to 240, or "n/d"'}
    )
    duration_s: float | None = number("Ends at", "s", 0.1, 600, None)


def _version(value: Any):
    """True equals 1, but is no version."""
    if isinstance(value, bool):
        raise PydanticCustomError("version", "version")
    return value


class Scene(Strict):
    """A whole scene."""

    rimfall: Annotated[Literal[1], BeforeValidator(_version)] = Field(
        json_schema_extra={"label": "Document version", "unit": "", "kind": "version"}
    )
    title: str = text("Title", 200, "")
    habitat: HabitatPart
    air: AirPart | None = AirPart()
    motions: list[Annotated[Drop | Throw | Pour, Field(discriminator="kind")]] = Field(
        max_length=100, json_schema_extra={"label": "Motions", "unit": "", "kind": "list"}
    )
    sampling: Sampling = Sampling()
