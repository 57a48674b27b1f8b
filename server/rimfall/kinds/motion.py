"""What every motion has as a document: a name, a start, a place; and fields that several kinds have."""

from typing import Annotated

from pydantic import BeforeValidator
from pydantic_core import PydanticCustomError

from ..fields import Strict, linear, number, text

NAME_MARKS = ".=,"
NO_GRAVITY = "no_spin"  # why there is nothing under plain gravity beside it


class Place(Strict):
    """Where a motion starts: the centre of the body."""

    along_m: float = number("Along the deck", "m", -1e6, 1e6, 0.0, shown=linear(-50, 50))
    height_m: float = number("From height", "m", 0, 100_000, 0.0, shown=linear(0, 10))
    axial_m: float = number("Along the axis", "m", -1e6, 1e6, 0.0, shown=linear(-20, 20))
    floor: int = number("On floor", "", 0, 11, 0)


def speed_field(label, default):
    return number(label, "m/s", 0, 3_000, default, shown=linear(0, 30))


def heading_field(label):
    return number(label, "°", -360, 360, 0.0, shown=linear(-180, 180))


def elevation_field(label, default=...):
    """A field that is an angle up from level."""
    return number(label, "°", -90, 90, default, shown=linear(-90, 90))


class Carried(Strict):
    """The thrower's own motion, added to the throw."""

    speed_m_s: float = speed_field("Thrower's speed", 0.0)
    heading_deg: float = heading_field("Thrower's heading")


def _named(value):
    """A name of a motion that an option or a file name can carry."""
    if isinstance(value, str) and (not value.strip() or any(mark in value for mark in NAME_MARKS)):
        raise PydanticCustomError("name", "name")
    return value


class Motion(Strict):
    """What every motion has. A name left out becomes its kind and number."""

    name: Annotated[str, BeforeValidator(_named)] | None = text(
        "Name", 60, None, min_length=1, may_be="1 to 60 characters, without . = ,"
    )
    start_s: float = number("Starts at", "s", 0, 3_600, 0.0, shown=linear(0, 10))
    place: Place = Place()


def place_of(motion):
    """A motion's place as (along, height, axial), metres."""
    return motion.place.along_m, motion.place.height_m, motion.place.axial_m
