"""Motions of people, and of a craft that comes in, as documents."""

from typing import ClassVar, Literal

from pydantic import Field

from ..fields import number
from .motion_parts import Carried, Motion, Place, elevation, heading, speed

_HERE = {"along_m": 0.0, "height_m": 0.0, "axial_m": 0.0}


class FeetPlace(Place):
    """Where the feet are."""

    height_m: float = number("Feet at height", "m", 0, 100_000, 0.0, shown={"min": 0, "max": 10, "scale": "linear"})


class OutsidePlace(Place):
    """A place that may lie outside: below the ground is beyond the hull."""

    height_m: float = number("At height", "m", -100_000, 100_000, 0.0, shown={"min": -20, "max": 0, "scale": "linear"})


class HungPlace(OutsidePlace):
    """Where someone hangs outside, under the rim."""

    height_m: float = number("Hangs at height", "m", -100_000, 0, -1.0, shown={"min": -20, "max": 0, "scale": "linear"})


def _mass():
    return number("Mass", "kg", 1, 1_000, 75.0, shown={"min": 20, "max": 150, "scale": "linear"})


class Person(Motion):
    """What motions of people on their feet share: the place is that of the feet, the path that of the centre."""

    place: FeetPlace = FeetPlace()
    mass_kg: float = _mass()
    centre_m: float = number(
        "Centre over the feet", "m", 0.1, 3, 1.0, shown={"min": 0.5, "max": 1.5, "scale": "linear"}
    )


class Jump(Person):
    """Someone jumps."""

    NEW: ClassVar[dict] = {"place": _HERE, "speed_m_s": 2.7, "heading_deg": 0.0, "elevation_deg": 90.0}
    kind: Literal["jump"]
    speed_m_s: float = speed("Speed", 2.7)
    heading_deg: float = heading("Toward")
    elevation_deg: float = elevation("Up", 90.0)
    carried: Carried | None = None
    drag_area_m2: float = number("Drag area", "m²", 0, 100, 0.5, shown={"min": 0, "max": 2, "scale": "linear"})


class Walk(Person):
    """Someone walks, runs, or climbs stairs or a ladder."""

    NEW: ClassVar[dict] = {"place": _HERE, "speed_m_s": 1.4, "heading_deg": 0.0, "climb_deg": 0.0, "for_s": 5.0}
    kind: Literal["walk"]
    speed_m_s: float = speed("Speed", 1.4)
    heading_deg: float = heading("Toward")
    climb_deg: float = elevation("Climbs", 0.0)
    for_s: float = number("For", "s", 0.05, 600, 5.0, shown={"min": 1, "max": 60, "scale": "linear"})


class Lift(Person):
    """Someone rides a lift in a spoke; heights are those of the cabin's floor."""

    NEW: ClassVar[dict] = {"place": _HERE, "to_height_m": 20.0, "top_speed_m_s": 2.0, "acceleration_m_s2": None}
    kind: Literal["lift"]
    to_height_m: float = number("To height", "m", 0, 100_000, shown={"min": 0, "max": 100, "scale": "linear"})
    top_speed_m_s: float = number("Top speed", "m/s", 0.01, 1_000, 2.0, shown={"min": 0.1, "max": 20, "scale": "log"})
    acceleration_m_s2: float | None = number(
        "Speeds up by", "m/s²", 0.001, 100, None, shown={"min": 0.1, "max": 5, "scale": "log"}
    )


class LetGo(Motion):
    """Someone outside lets go, or pushes off."""

    NEW: ClassVar[dict] = {
        "place": _HERE | {"height_m": -1.0},
        "speed_m_s": 0.0,
        "heading_deg": 0.0,
        "elevation_deg": 0.0,
    }
    kind: Literal["let_go"]
    place: HungPlace = HungPlace()
    mass_kg: float = _mass()
    speed_m_s: float = speed("Push", 0.0)
    heading_deg: float = heading("Toward")
    elevation_deg: float = elevation("Up", 0.0)


class Approach(Motion):
    """A craft coasts in to a dock; the place is the dock's."""

    NEW: ClassVar[dict] = {
        "place": _HERE,
        "dock": "rim",
        "speed_m_s": 5.0,
        "heading_deg": 0.0,
        "elevation_deg": -45.0,
        "from_m": 200.0,
    }
    kind: Literal["approach"]
    place: OutsidePlace = OutsidePlace()
    dock: Literal["hub", "rim"] = Field("hub", json_schema_extra={"label": "Dock", "unit": "", "kind": "choice"})
    speed_m_s: float = speed("Closing speed", 5.0)
    heading_deg: float = number("Comes from", "°", -360, 360, 90.0, shown={"min": -180, "max": 180, "scale": "linear"})
    elevation_deg: float = elevation("From up", 0.0)
    from_m: float = number("From", "m", 1, 1_000_000, 200.0, shown={"min": 10, "max": 1_000, "scale": "log"})
    mass_kg: float = number("Mass", "kg", 1, 1e9, 12_000.0, shown={"min": 1_000, "max": 100_000, "scale": "log"})
    size_m: float = number("Size", "m", 0.1, 1_000, 3.0, shown={"min": 1, "max": 30, "scale": "linear"})
