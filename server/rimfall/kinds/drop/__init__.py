"""Drops: a thing let go at rest aboard, or by who moves."""

from typing import ClassVar, Literal

from ...language import tr_later, tr_later_as
from ..air_words import in_air
from ..kind import Kind, Page
from ..motion import at_height
from ..released import REBOUNDS, SPINS, Released, check, flew, plan


class Drop(Released):
    """Something let go."""

    kind: Literal["drop"]
    speed_m_s: ClassVar[float] = 0.0
    heading_deg: ClassVar[float] = 0.0
    elevation_deg: ClassVar[float] = 0.0


PAGE = Page(
    group=tr_later("Things"),
    add=tr_later_as("added", "a drop"),
    short=tr_later("Drop"),
    title=tr_later("Drop"),
    one=tr_later_as("counted", "drop"),
    many=tr_later_as("counted", "drops"),
    sentence=(tr_later("Dropped from {place.height_m} above the {ground}"), SPINS, ".", REBOUNDS),
    rows={"place.height_m": tr_later("From height")},
    mirrored=False,
    terms={tr_later("Drop"): tr_later("A thing let go at rest aboard; also what a stream breaks into.")},
)
KIND = Kind(
    name="drop",
    fields=Drop,
    new={"place": at_height(1.2), "body": "cup"},
    check=check,
    plan=plan,
    outcome=flew,
    assumptions=in_air,
    flies=True,
    page=PAGE,
)
