"""What people got used to in rotating rooms and on centrifuges, as published, and what no source here tells."""

from dataclasses import dataclass

from ..language import tr, tr_later
from .marks import lies
from .published import ROWS, told

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
        tr_later("At 1 rpm in a slowly rotating room even susceptible people showed no symptoms."),
        ((1.0, tr_later("at which they had none")),),
    ),
    _Statement(
        "graybiel_knepton_1972.spin.reached",
        tr_later(
            "People in a slowly rotating room were taken up in steps of 1 rpm to 6 rpm, with 120 head movements at each step."
        ),
        ((6.0, tr_later("of the last step")),),
    ),
    _Statement(
        "lackner_dizio_1998.spin.reached",
        tr_later(
            "At 10 rpm people's misses in reaching adapted within 10 to 20 movements; the earlier view, which the abstract names, was "
            "that people adapt to 3 to 4 rpm at most."
        ),
        (
            (3.0, tr_later("where the earlier view begins")),
            (4.0, tr_later("where it ends")),
            (10.0, tr_later("of this finding")),
        ),
    ),
    _Statement(
        "dizio_lackner_2002.spin.observed",
        tr_later("From 5 to 20 rpm the miss of a pointing arm grew in proportion to the Coriolis force."),
        ((5.0, tr_later("where the range begins")), (20.0, tr_later("where the range ends"))),
    ),
    _Statement(
        "elias_jarchow_young_2008.spin.reached",
        tr_later(
            "With 42 head turns a day people went from 14 rpm on the first day to 23 rpm on the second and 30 rpm on the third."
        ),
        ((14.0, tr_later("of the first day")), (23.0, tr_later("of the second")), (30.0, tr_later("of the third"))),
    ),
    _Statement(
        "bretl_2019.spin.observed",
        tr_later(
            "Before any training ten people had no cross-coupled illusion up to 1.8 rpm on average, with a standard deviation of "
            "0.9 rpm."
        ),
        (
            (0.9, tr_later("that is one standard deviation below the average")),
            (1.8, tr_later("of the average")),
            (2.7, tr_later("that is one standard deviation above the average")),
        ),
    ),
    _Statement(
        "standardized_protocol_2020.spin.reached",
        tr_later("Trained in small steps that were the same for everyone, people reached 11.8 rpm."),
        ((11.8, tr_later("after this training")),),
    ),
)

UNPUBLISHED = (
    tr_later("How long adaptation lasts after people leave a rotating place: no published figure found."),
    tr_later("How fast people learn to move between what turns and what does not: no published figure found."),
    tr_later("What months or years of living in rotation do: no published figure found."),
    tr_later("How children and old people adapt: no published figure found."),
    tr_later(
        "Whether people get used to gravity that changes from head to foot, and to how much: no published figure found."
    ),
)


def beside(spin_rpm):
    """Every published statement with how spin_rpm (or None) lies to it, by year, then what is not published -> list of PublishedFinding."""
    published = [_finding(statement, _ROWS[statement.row], spin_rpm) for statement in _STATEMENTS]
    return published + [PublishedFinding(tr(claim), "", None, None, "", "", "", "", "") for claim in UNPUBLISHED]


def _finding(statement, row, spin_rpm):
    words = told(row)
    reached = row.limit if row.bound == "reached" else None
    here = (
        lies(spin_rpm, statement.marks, tr("This spin"), "rpm")
        if spin_rpm
        else tr("Nothing turns here to set beside it.")
    )
    return PublishedFinding(
        tr(statement.claim),
        words["study"],
        words["year"],
        reached,
        words["source"],
        words["note"],
        here,
        row.known_by,
        words["who"],
    )
