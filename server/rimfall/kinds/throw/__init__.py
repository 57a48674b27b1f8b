"""Throws: a thing that leaves the hand with a speed."""

from typing import Literal

from ...language import tr_later, tr_later_as
from ..air_words import in_air
from ..kind import Kind, Page, Stage
from ..motion import at_height, elevation_field, heading_field, speed_field
from ..released import REBOUNDS, SPINS, Released, check, flew, plan
from ..telling import thrown


class Throw(Released):
    """Something thrown."""

    kind: Literal["throw"]
    speed_m_s: float = speed_field(tr_later("Speed"), 0.0)
    heading_deg: float = heading_field(tr_later("Toward"))
    elevation_deg: float = elevation_field(tr_later_as("how steeply", "Up"), 0.0)


PAGE = Page(
    group=tr_later("Things"),
    add=tr_later_as("added", "a throw"),
    short=tr_later("Throw"),
    title=tr_later("Throw"),
    one=tr_later_as("counted", "throw"),
    many=tr_later_as("counted", "throws"),
    sentence=(tr_later("Thrown at {speed_m_s}, {elevation_deg}, {heading_deg}"), SPINS, ".", REBOUNDS),
    rows={
        "speed_m_s": None,
        "elevation_deg": tr_later_as("how steeply", "Up"),
        "heading_deg": None,
        "place.height_m": tr_later("From height"),
    },
    terms={tr_later("Throw"): tr_later("A thing that leaves the hand with a speed, relative to the place it leaves.")},
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
