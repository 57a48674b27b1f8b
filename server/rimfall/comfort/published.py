"""Published limits on what people bear in a rotating habitat, and rates that people got used to: data, each with its source.

Every study stands for itself: they disagree, and nothing here chooses or averages. A bound is one of BOUNDS:

- "at_least", "at_most": a limit that the study sets, or a threshold that it names;
- "optimum": what the study would choose inside its limits;
- "reached": a spin that people worked at after getting used to it;
- "observed": what was found in people as they came, or over a range that was tried.

Only the first two are limits. Head-to-foot gradient has none: the figures that go round could not be confirmed.
"""

from dataclasses import dataclass

from .quantities import QUANTITIES
from .studies import STUDIES

LIMITS = ("at_least", "at_most")
BOUNDS = (*LIMITS, "optimum", "reached", "observed")


@dataclass(frozen=True)
class Published:
    """One figure of one study: limit in `unit` (that of the quantity), for whom, and how it is known: "read" or "memory"."""

    id: str
    study: str
    quantity: str
    bound: str
    limit: float
    unit: str
    who: str
    source: str
    note: str
    known_by: str


_STATION = "people aboard rotating stations; the survey's table says no more"
_BY_HALL = (
    "as surveyed in T. W. Hall, Artificial Gravity and the Architecture of Orbital Habitats, 1st Int. Symp. on Space Tourism "
    "(1997)"
)
_SURVEYED = "As the table of the 1997 survey gives it, not the paper itself."


def _row(study, quantity, bound, limit, who, note, via="", of="", known_by="memory"):
    """A Published; `via` is the secondary source, `of` tells apart two figures of one study on the same quantity."""
    name = ".".join(part for part in (study, quantity, bound, of) if part)
    source = "; ".join(part for part in (STUDIES[study].citation, via) if part)
    return Published(name, study, quantity, bound, limit, QUANTITIES[quantity].unit, who, source, note, known_by)


def _surveyed(study, least_g, most_g, most_rpm, least_rim_m_s=None, spin_note=""):
    """What the survey's table gives for one study."""
    found = (
        ("gravity", "at_least", least_g, ""),
        ("gravity", "at_most", most_g, ""),
        ("spin", "at_most", most_rpm, spin_note),
        ("rim_speed", "at_least", least_rim_m_s, ""),
    )
    return tuple(
        _row(study, quantity, bound, limit, _STATION, f"{_SURVEYED} {note}".strip(), _BY_HALL)
        for quantity, bound, limit, note in found
        if limit is not None
    )


ROWS = (
    _row(
        "clark_hardy_1960",
        "spin",
        "at_most",
        0.1,
        _STATION,
        f"{_SURVEYED} It rests on the threshold of an illusion: 0.06 rad/s² over a head turn of 5 rad/s would be 0.115 rpm.",
        _BY_HALL,
    ),
    _row(
        "clark_hardy_1960",
        "head_turn",
        "at_most",
        0.06,
        "people who turn their heads; the surveys say no more",
        "The threshold of an illusion of turning; quoted by surveys, not from the paper itself.",
        "as quoted by surveys",
        "illusion",
    ),
    _row(
        "clark_hardy_1960",
        "head_turn",
        "at_most",
        0.6,
        "people who turn their heads; the surveys say no more",
        "The threshold of nausea; quoted by surveys, not from the paper itself.",
        "as quoted by surveys",
        "nausea",
    ),
    _row(
        "graybiel_clark_zarriello_1960",
        "spin",
        "observed",
        1.0,
        "people in a slowly rotating room, the susceptible among them",
        "No symptoms at this spin, even in susceptible people: a finding, no limit.",
    ),
    *_surveyed("hill_schnitzer_1962", 0.035, 1.0, 4.0, 6.0),
    *_surveyed(
        "gilruth_1969",
        0.3,
        0.9,
        6.0,
        spin_note="6 rpm is the outer limit and 2 rpm the optimum of the same author: the two are easily confused.",
    ),
    _row(
        "gilruth_1969",
        "spin",
        "optimum",
        2.0,
        _STATION,
        f"{_SURVEYED} 2 rpm is the optimum, 6 rpm the outer limit of the same author; to be checked before use.",
        _BY_HALL,
    ),
    *_surveyed("gordon_gervais_1969", 0.2, 1.0, 6.0, 7.0),
    _row(
        "graybiel_knepton_1972",
        "spin",
        "reached",
        6.0,
        "people in a slowly rotating room, sped up in steps of 1 rpm with 120 head movements at each",
        "The highest spin of the protocol, not the highest that people could bear.",
        known_by="read",
    ),
    *_surveyed("stone_1973", 0.2, 1.0, 6.0, 10.0),
    _row(
        "stone_1973",
        "coriolis",
        "at_most",
        0.25,
        "people who walk aboard; not said further",
        "Guidance of about 0.25 that is attributed to this paper; quoted with low confidence.",
        "as attributed to it elsewhere",
    ),
    _row(
        "sp_413_1977",
        "spin",
        "at_most",
        1.0,
        "the general population of a settlement",
        "Adopted as a criterion of the design. The same table gives 0.95 g with a spread that is printed inconsistently "
        "(the text says 0.9 to 1.0 g), so no gravity is taken from it here.",
    ),
    *_surveyed("cramer_1985", 0.1, 1.0, 3.0, 7.0),
    _row(
        "lackner_dizio_1998",
        "spin",
        "reached",
        10.0,
        "people who reach for things while they are turned",
        "Misses in reaching adapt within 10 to 20 movements. The same abstract names the earlier view: adaptation up to "
        "3 to 4 rpm at most.",
        known_by="read",
    ),
    _row(
        "dizio_lackner_2002",
        "spin",
        "observed",
        20.0,
        "people who point at things while they are turned",
        "The upper end of 5 to 20 rpm, over which the miss grows in proportion to the Coriolis force: a range tried, no limit.",
        known_by="read",
    ),
    _row(
        "elias_jarchow_young_2008",
        "spin",
        "reached",
        30.0,
        "people who made 42 head turns a day for three days on a centrifuge",
        "14 rpm on the first day, 23 rpm on the second. Early work took 3 to 4 rpm for the most that people adapt to.",
        known_by="read",
    ),
    _row(
        "harris_2014",
        "gravity",
        "observed",
        0.15,
        "people asked which way is up",
        "Where gravity has half of its influence on what people take for upright: a finding, no limit.",
        known_by="read",
    ),
    _row(
        "bretl_2019",
        "spin",
        "observed",
        1.8,
        "ten people, before training",
        "The mean of the spins up to which they had no cross-coupled illusion, with a standard deviation of 0.9 rpm.",
        known_by="read",
    ),
    _row(
        "standardized_protocol_2020",
        "spin",
        "reached",
        11.8,
        "people trained in steps that were the same for everyone",
        "After the training, where the protocol of 2019 was fitted to each person.",
        known_by="read",
    ),
    _row(
        "nasa_std_3001",
        "head_turn",
        "at_most",
        2.0,
        "crew, for an acceleration that lasts more than 0.5 s",
        "With a head turn of 3 rad/s this is 6.37 rpm, in line with the limits of 6 rpm.",
    ),
)
