"""What bodies did without their weight, with part of it, and after turns on a short centrifuge, as published; and what a stay makes of it.

Each finding stands for itself, as the limits of `published.py` do. `points` tells which way it speaks on whether a stay needs spin:

- "for": something a body lost or suffered without weight;
- "against": without weight it did not happen;
- "both": it happened, and passed, came back, or was partly made up for, with spin or without;
- "open": it leaves the question open: minutes, mice, or studies that nobody has made;
- "aside": what is done instead of spinning.

Counts of them say how many studies there are, not how strong each is.
"""

from dataclasses import dataclass

from ..language import tr, tr_later
from .body_findings import FINDINGS, STAYS
from .marks import lies

POINTS = ("for", "against", "both", "open", "aside")
TOPICS = {
    "bone": tr_later("Bone"),
    "muscle": tr_later("Muscle"),
    "blood": tr_later("Blood and fluids"),
    "eyes": tr_later("Eyes"),
    "balance": tr_later("Balance and walking"),
    "stones": tr_later("Kidney stones"),
    "sickness": tr_later("Sickness"),
    "exercise": tr_later("Exercise"),
    "centrifuge": tr_later("Short centrifuges"),
    "part": tr_later("Part of one's weight"),
}
EARTH_G = 0.95  # from here on a weight is called that of Earth; our own choice
_HOURS, _DAYS, _MONTHS, _YEARS = STAYS

NOT_KNOWN = {
    _HOURS: (tr_later("How much weight it takes for fluids to stay where they are on Earth: tried for minutes only."),),
    _DAYS: (
        tr_later("What days at part of one's weight do to muscle and blood: no study of people found."),
        tr_later("Whether part of one's weight spares people the first days' sickness: no published figure found."),
    ),
    _MONTHS: (
        tr_later("How much weight keeps bone, muscle, blood and eyes as they are: no study of people found."),
        tr_later("What months of turning do: no study of people found."),
    ),
    _YEARS: (
        tr_later("What years without weight, or at part of it, do: no study of people found."),
        tr_later("What years of turning do: no study of people found."),
        tr_later("Whether children grow as on Earth: no study found."),
    ),
}


def here(finding, felt_g):
    """How a weight lies to those that a finding speaks of, as a sentence; "" where it speaks of none."""
    if not finding.levels_g:
        return ""
    return (
        lies(felt_g, finding.levels_g, tr("What is felt here"), "g")
        if felt_g
        else tr("Nothing is felt here to set beside it.")
    )


@dataclass(frozen=True)
class StayCount:
    """How many of the findings that bear on a stay speak each way; counts: of POINTS -> number; not_known: sentences."""

    stay: str
    counts: dict
    not_known: tuple


def counted(stay):
    """The StayCount of one of STAYS."""
    bearing = [one.points for one in FINDINGS if stay in one.stays]
    return StayCount(stay, {points: bearing.count(points) for points in POINTS}, NOT_KNOWN[stay])
