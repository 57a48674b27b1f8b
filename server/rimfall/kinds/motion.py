"""What every motion has as a document: a name, a start, a place; what moves; and fields that several kinds have."""

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Discriminator, Field, Tag, WithJsonSchema
from pydantic_core import PydanticCustomError

from ..fields import Strict, Whole, choice, linear, log, number, of_kind, text
from ..language import tr_later
from ..motions.journey import Start
from ..motions.plan import Plan
from ..physics.bodies import NAMED_BODIES, SPHERE, Body, named
from ..physics.kept import told

NAME_MARKS = ".=,"
NO_GRAVITY = "no_spin"  # why there is nothing under plain gravity beside it


class Place(Strict):
    """Where a motion starts: the centre of the body."""

    along_m: float = number(tr_later("Along the deck"), "m", -1e6, 1e6, 0.0, shown=linear(-50, 50))
    height_m: float = number(tr_later("From height"), "m", 0, 100_000, 0.0, shown=linear(0, 10))
    axial_m: float = number(tr_later("Along the axis"), "m", -1e6, 1e6, 0.0, shown=linear(-20, 20))
    floor: Whole = number(tr_later("On floor"), "", 0, 11, 0)


def speed_field(label, default):
    return number(label, "m/s", 0, 3_000, default, shown=linear(0, 30))


def heading_field(label):
    return number(label, "°", -360, 360, 0.0, shown=linear(-180, 180))


def elevation_field(label, default=...):
    """A field that is an angle up from level."""
    return number(label, "°", -90, 90, default, shown=linear(-90, 90))


class Carried(Strict):
    """The thrower's own motion, added to the throw."""

    speed_m_s: float = speed_field(tr_later("Thrower's speed"), 0.0)
    heading_deg: float = heading_field(tr_later("Thrower's heading"))


# the same as a pattern; the control characters count as spaces here, but not in patterns
_NAME = r"^[^.=,]*[^.=,\s\x1c-\x1f\x85\ufeff][^.=,]*$"


def _named(value):
    """A name of a motion that an option or a file name can carry."""
    if isinstance(value, str) and (not value.strip() or any(mark in value for mark in NAME_MARKS)):
        raise PydanticCustomError("name", "name")
    return value


class Motion(Strict):
    """What every motion has. A name left out becomes its kind and number."""

    name: Annotated[str, BeforeValidator(_named), Field(json_schema_extra={"pattern": _NAME})] | None = text(
        tr_later("Name"), 60, None, min_length=1, may_be=tr_later("1 to 60 characters, without . = ,")
    )
    start_s: float = number(tr_later("Starts at"), "s", 0, 3_600, 0.0, shown=linear(0, 10))
    place: Place = Place()


@told.register
def _(motion: Motion):
    return [type(motion).__qualname__, motion.model_dump_json()]


def nameless(motion):
    """A motion without its name, which nothing but words may go by."""
    return motion.model_copy(update={"name": None})


def at_height(height_m):
    """A place as the page makes one afresh, as data."""
    return {"along_m": 0.0, "height_m": height_m, "axial_m": 0.0}


def place_of(motion):
    """A motion's place as (along, height, axial), metres."""
    return motion.place.along_m, motion.place.height_m, motion.place.axial_m


def _drag(value: Any):
    """ "sphere", or a constant coefficient from 0 to 5."""
    if value == SPHERE and isinstance(value, str):
        return value
    if isinstance(value, (int, float)) and not isinstance(value, bool) and 0 <= value <= 5:
        return float(value)
    raise PydanticCustomError("drag", "drag")


class OwnBody(Strict):
    """A body stated by its numbers."""

    mass_kg: float = number(tr_later("Mass"), "kg", 1e-9, 1e6, shown=log(0.001, 100))
    diameter_m: float = number(tr_later("Diameter"), "m", 0, 10, shown=log(0.001, 1))
    drag: Annotated[
        Any,
        BeforeValidator(_drag),
        WithJsonSchema({"anyOf": [{"const": SPHERE}, {"type": "number", "minimum": 0, "maximum": 5}]}),
    ] = of_kind(tr_later("Drag"), "drag", SPHERE, may_be=tr_later('"sphere" or a number from 0 to 5'))
    shell: Literal["solid", "hollow"] = choice(tr_later("Construction"), default="solid")
    restitution: float = number(tr_later("Restitution"), "", 0, 1, 0.7, shown=linear(0, 1))
    friction: float = number(tr_later("Friction"), "", 0, 5, 0.5, shown=linear(0, 1))
    rolling_resistance: float = number(tr_later("Rolling resistance"), "", 0, 1, 0.0, shown=linear(0, 0.1))
    drag_area_m2: float | None = number(tr_later("Drag area"), "m²", 0, 1_000, None, shown=log(0.001, 2))
    buoyant: bool = of_kind(
        tr_later("Borne by the air"),
        "yes_no",
        False,
        may_be=tr_later("true (the air it displaces bears it up) or false"),
    )


BODY_NAMES = tuple(b.name for b in NAMED_BODIES)

BodyPart = Annotated[
    Annotated[Literal[BODY_NAMES], Tag("@named")] | Annotated[OwnBody, Tag("@own")],
    Discriminator(lambda v: "@named" if isinstance(v, str) else "@own"),
]


def body_field():
    return of_kind(tr_later("Body"), "body")


def ball_spin_field():
    return number(tr_later("Its own spin"), "rpm", -1e5, 1e5, 0.0, shown=linear(-3_000, 3_000))


def bounces_field():
    return number(tr_later("Bounces"), "", 0, 1_000, 0, shown=linear(0, 50))


def body_of(body):
    """The Body a document names or states."""
    if isinstance(body, str):
        return named(body)
    contact = (body.shell, body.restitution, body.friction, body.rolling_resistance)
    return Body(body.mass_kg, body.diameter_m, body.drag, *contact, body.drag_area_m2, body.buoyant)


def along_given(motion, place, velocity, body, given, none_because, **more):
    """Plan of a motion whose path is given, a `Prescribed`: from a place (along, height, axial), at a velocity (3,) along the local
    directions there; none_because: why there is nothing under plain gravity beside it."""
    floor, course = motion.place.floor, Start(None, prescribed=given)
    return Plan(motion.start_s, place, tuple(velocity), body, course, None, none_because, floor=floor, **more)
