"""Throws: a thing that leaves the hand with a speed."""

from typing import Literal

from ..kind import Kind, Page, Stage, called
from ..motion import at_height, elevation_field, heading_field, speed_field
from ..released import REBOUNDS, SPINS, Released, check, flew, plan
from ..telling import thrown
from ..words import in_air


class Throw(Released):
    """Something thrown."""

    kind: Literal["throw"]
    speed_m_s: float = speed_field("Speed", 0.0)
    heading_deg: float = heading_field("Toward")
    elevation_deg: float = elevation_field("Up", 0.0)


PAGE = Page(
    group="Things",
    **called("a throw"),
    sentence=("Thrown at {speed_m_s}, {elevation_deg}, {heading_deg}", SPINS, ".", REBOUNDS),
    rows={"speed_m_s": None, "elevation_deg": "Up", "heading_deg": None, "place.height_m": "From height"},
    terms={"Throw": "A thing that leaves the hand with a speed, relative to the place it leaves."},
    stage=Stage(aimed=True),
)
KIND = Kind(
    name="throw",
    fields=Throw,
    new={
        "place": at_height(1.5),
        "speed_m_s": 6.0,
        "heading_deg": 0.0,
        "elevation_deg": 35.0,
        "body": "handball",
    },
    check=check,
    plan=plan,
    outcome=flew,
    assumptions=in_air,
    flies=True,
    told=thrown,
    page=PAGE,
)
