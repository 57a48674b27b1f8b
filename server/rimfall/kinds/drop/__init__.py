"""Drops: a thing let go at rest aboard, or by who moves."""

from typing import ClassVar, Literal

from ..kind import Kind, Page, called
from ..motion import at_height
from ..released import REBOUNDS, SPINS, Released, check, flew, plan
from ..words import in_air


class Drop(Released):
    """Something let go."""

    kind: Literal["drop"]
    speed_m_s: ClassVar[float] = 0.0
    heading_deg: ClassVar[float] = 0.0
    elevation_deg: ClassVar[float] = 0.0


PAGE = Page(
    group="Things",
    **called("a drop"),
    sentence=("Dropped from {place.height_m} above the {ground}", SPINS, ".", REBOUNDS),
    rows={"place.height_m": "From height"},
    mirrored=False,
    terms={"Drop": "A thing let go at rest aboard; also what a stream breaks into."},
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
