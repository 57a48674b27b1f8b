"""What people got used to in rotating rooms and on centrifuges, as published, and what no source here tells."""

from dataclasses import dataclass

from .marks import lies
from .published import ROWS, STUDIES

_ROWS = {row.id: row for row in ROWS}


@dataclass(frozen=True)
class PublishedFinding:
    """One published statement, and in `here` how a spin lies to it; study is "" for what is not published."""

    claim: str
    study: str
    year: int | None
    reached_rpm: float | None
    source: str
    note: str
    here: str
    known_by: str
    who: str


@dataclass(frozen=True)
class _Statement:
    """A claim on the figure with the id `row`; marks: its spins, rpm, rising, each with what it is."""

    row: str
    claim: str
    marks: tuple


_STATEMENTS = (
    _Statement(
        "graybiel_clark_zarriello_1960.spin.observed",
        "At 1 rpm in a slowly rotating room even susceptible people showed no symptoms.",
        ((1.0, "at which they had none"),),
    ),
    _Statement(
        "graybiel_knepton_1972.spin.reached",
        "People in a slowly rotating room were taken up in steps of 1 rpm to 6 rpm, with 120 head movements at each step.",
        ((6.0, "of the last step"),),
    ),
    _Statement(
        "lackner_dizio_1998.spin.reached",
        "At 10 rpm people's misses in reaching adapted within 10 to 20 movements; the earlier view, which the abstract names, was "
        "that people adapt to 3 to 4 rpm at most.",
        ((3.0, "where the earlier view begins"), (4.0, "where it ends"), (10.0, "of this finding")),
    ),
    _Statement(
        "dizio_lackner_2002.spin.observed",
        "From 5 to 20 rpm the miss of a pointing arm grew in proportion to the Coriolis force.",
        ((5.0, "where the range begins"), (20.0, "where the range ends")),
    ),
    _Statement(
        "elias_jarchow_young_2008.spin.reached",
        "With 42 head turns a day people went from 14 rpm on the first day to 23 rpm on the second and 30 rpm on the third.",
        ((14.0, "of the first day"), (23.0, "of the second"), (30.0, "of the third")),
    ),
    _Statement(
        "bretl_2019.spin.observed",
        "Before any training ten people had no cross-coupled illusion up to 1.8 rpm on average, with a standard deviation of "
        "0.9 rpm.",
        (
            (0.9, "that is one standard deviation below the average"),
            (1.8, "of the average"),
            (2.7, "that is one standard deviation above the average"),
        ),
    ),
    _Statement(
        "standardized_protocol_2020.spin.reached",
        "Trained in small steps that were the same for everyone, people reached 11.8 rpm.",
        ((11.8, "after this training"),),
    ),
)

UNPUBLISHED = (
    "How long adaptation lasts after people leave a rotating place: no published figure found.",
    "How fast people learn to move between what turns and what does not: no published figure found.",
    "What months or years of living in rotation do: no published figure found.",
    "How children and old people adapt: no published figure found.",
    "Whether people get used to gravity that changes from head to foot, and to how much: no published figure found.",
)


def beside(spin_rpm):
    """Every published statement with how spin_rpm (or None) lies to it, by year, then what is not published -> list of PublishedFinding."""
    published = [_finding(statement, _ROWS[statement.row], spin_rpm) for statement in _STATEMENTS]
    return published + [PublishedFinding(claim, "", None, None, "", "", "", "", "") for claim in UNPUBLISHED]


def _finding(statement, row, spin_rpm):
    study = STUDIES[row.study]
    reached = row.limit if row.bound == "reached" else None
    here = lies(spin_rpm, statement.marks, "This spin", "rpm") if spin_rpm else "Nothing turns here to set beside it."
    return PublishedFinding(
        statement.claim, study.name, study.year, reached, row.source, row.note, here, row.known_by, row.who
    )
