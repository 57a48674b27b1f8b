"""The list of published limits: whole, each with its source, and telling limits from what is none.

That each figure is the one that its source prints is held in tests/test_published.py.
"""

import math
import re

from rimfall.comfort.published import BOUNDS, LIMITS, ROWS, STUDIES
from rimfall.comfort.quantities import QUANTITIES
from rimfall.scene.feel.person_part import PersonPart
from tests.tables import each_row

BY_ID = {row.id: row for row in ROWS}
SURVEYED = ("hill_schnitzer_1962", "gilruth_1969", "gordon_gervais_1969", "stone_1973", "cramer_1985")
# Titles as the publications bear them, written a second time.
TITLES = {
    "clark_hardy_1960": "Gravity problems in manned space stations (1960)",
    "graybiel_clark_zarriello_1960": "Graybiel, Clark & Zarriello (1960)",
    "hill_schnitzer_1962": "Rotating manned space stations, Astronautics 7(9) (1962)",
    "gilruth_1969": "Manned space stations - gateway to our future in space (1969)",
    "gordon_gervais_1969": "Critical engineering problems of space stations (1969)",
    "graybiel_knepton_1972": "Direction-specific adaptation effects acquired in a slow rotation room (1972), abstract",
    "stone_1973": "An overview of artificial gravity, NASA SP-314 (1973)",
    "sp_413_1977": "Space Settlements: A Design Study, NASA SP-413 (1977), ch. 3",
    "cramer_1985": "Physiological considerations of artificial gravity (1985)",
    "lackner_dizio_1998": "Adaptation in a rotating artificial gravity environment, Brain Res. Rev. 28, 194-202 (1998), abstract",
    "dizio_lackner_2002": "Sensorimotor aspects of high-speed artificial gravity III, J. Vestib. Res. 12, 291-299 (2002), abstract",
    "elias_jarchow_young_2008": "Incremental adaptation to yaw head turns during 30 RPM centrifugation, Exp. Brain Res. (2008), abstract",
    "harris_2014": "How much gravity is needed to establish the perceptual upright?, PLOS ONE (2014), abstract",
    "bretl_2019": "Tolerable acclimation to the cross-coupled illusion through a 10-day, incremental, personalized protocol, "
    "J. Vestib. Res. 29(2-3) (2019), abstract",
    "standardized_protocol_2020": "A standardized, incremental protocol to increase human tolerance to the cross-coupled illusion, "
    "J. Vestib. Res. (2020), abstract",
    "nasa_std_3001": "NASA-STD-3001 Vol. 2, sec. 6.5 (acceleration)",
}  # fmt: skip


def test_each_row_has_a_name_of_its_own_that_says_what_it_is():
    assert len(BY_ID) == len(ROWS)
    for row in ROWS:
        assert re.fullmatch(r"[a-z0-9_.]+", row.id)
        assert row.id.split(".")[:3] == [row.study, row.quantity, row.bound]
        assert row.bound in BOUNDS


def test_each_row_has_the_unit_of_its_quantity_and_a_limit_above_nothing():
    for row in ROWS:
        assert row.unit == QUANTITIES[row.quantity].unit
        assert math.isfinite(row.limit)
        assert row.limit > 0.0


def test_each_study_has_its_rows_and_each_row_the_citation_of_its_study():
    assert {row.study for row in ROWS} == set(STUDIES) == set(TITLES)
    for row in ROWS:
        assert TITLES[row.study] in STUDIES[row.study].citation
        assert row.source.startswith(STUDIES[row.study].citation)


def test_the_year_of_a_study_is_that_of_its_citation():
    for study in STUDIES.values():
        assert (f"({study.year})" in study.citation) == (study.year is not None)
        assert study.called == (f"{study.name} {study.year}" if study.year else study.name)
    assert [study.id for study in STUDIES.values() if study.year is None] == [
        "nasa_std_3001"
    ]  # quoted without its edition


@each_row("row", ROWS)
def test_each_row_says_for_whom_it_holds_and_what_to_know_of_it(row):
    assert row.who
    assert row.note.endswith(".")


def test_what_was_read_is_told_from_what_is_quoted_from_memory():
    """Read: the seven abstracts (of 1972, 1998, 2002, 2008, 2014, 2019, 2020). All else is quoted from memory."""
    read = {STUDIES[row.study].year for row in ROWS if row.known_by == "read"}
    assert read == {1972, 1998, 2002, 2008, 2014, 2019, 2020}
    assert {row.known_by for row in ROWS if "abstract" not in STUDIES[row.study].citation} == {"memory"}
    assert {row.known_by for row in ROWS if "abstract" in STUDIES[row.study].citation} == {"read"}


def test_what_a_survey_quotes_names_the_survey():
    """T. W. Hall (1997): the table of five studies, and the spin of Clark & Hardy."""
    by_hall = [row for row in ROWS if "T. W. Hall" in row.source]
    assert {row.study for row in by_hall} == {*SURVEYED, "clark_hardy_1960"}
    others = [row.id for row in ROWS if row.study in SURVEYED and row not in by_hall]
    assert others == ["stone_1973.coriolis.at_most"]  # attributed to it elsewhere
    assert all("1997 survey" in row.note for row in by_hall)
    assert all(
        "surveys" in row.source for row in ROWS if row.quantity == "head_turn" and row.study == "clark_hardy_1960"
    )


def test_what_was_found_or_reached_is_no_limit():
    """What the abstracts report, and the 1 rpm of 1960, are findings; 2 rpm is the optimum of who sets 6 rpm."""
    none = {row.id: row.bound for row in ROWS if row.bound not in LIMITS}
    assert none == {
        "graybiel_clark_zarriello_1960.spin.observed": "observed",
        "gilruth_1969.spin.optimum": "optimum",
        "graybiel_knepton_1972.spin.reached": "reached",
        "lackner_dizio_1998.spin.reached": "reached",
        "dizio_lackner_2002.spin.observed": "observed",
        "elias_jarchow_young_2008.spin.reached": "reached",
        "harris_2014.gravity.observed": "observed",
        "bretl_2019.spin.observed": "observed",
        "standardized_protocol_2020.spin.reached": "reached",
    }


def test_so_many_limits_are_on_each_quantity():
    """Ten on gravity, of five studies; seven on spin; none on the gradient, for which no figure could be confirmed."""
    limits = [row.quantity for row in ROWS if row.bound in LIMITS]
    counts = {name: limits.count(name) for name in QUANTITIES}
    assert counts == {"gravity": 10, "spin": 7, "gradient": 0, "rim_speed": 4, "head_turn": 3, "coriolis": 1}


def test_citations_leave_the_full_stop_to_whoever_shows_them_and_notes_bring_it():
    for row in ROWS:
        assert row.source.endswith(row.via)
        assert not any(text.endswith((".", "?", "!")) for text in (row.source, row.who)), row.id
        assert not row.note or row.note.endswith("."), row.id


def test_a_least_lies_below_the_most_of_the_same_study():
    for study in SURVEYED:
        assert BY_ID[f"{study}.gravity.at_least"].limit < BY_ID[f"{study}.gravity.at_most"].limit


@each_row(
    ("name", "told"),
    [
        ("gilruth_1969.spin.at_most", "6 rpm is the outer limit and 2 rpm the optimum"),
        ("gilruth_1969.spin.optimum", "2 rpm is the optimum, 6 rpm the outer limit"),
        ("sp_413_1977.spin.at_most", "0.95 g with a spread that is printed inconsistently (the text says 0.9 to 1.0 g)"),
        ("stone_1973.coriolis.at_most", "attributed to this paper; quoted with low confidence"),
        ("lackner_dizio_1998.spin.reached", "3 to 4 rpm"),
        ("elias_jarchow_young_2008.spin.reached", "3 to 4 rpm"),
        ("bretl_2019.spin.observed", "standard deviation of 0.9 rpm"),
        ("dizio_lackner_2002.spin.observed", "5 to 20 rpm"),
    ],
)  # fmt: skip
def test_where_sources_differ_the_note_says_so(name, told):
    assert told in BY_ID[name].note


@each_row(
    ("name", "head_rad_s", "limit", "rpm"),
    [
        ("clark_hardy_1960.spin.at_most", 5.0, "clark_hardy_1960.head_turn.at_most.illusion", "0.115 rpm"),
        ("nasa_std_3001.head_turn.at_most", 3.0, "nasa_std_3001.head_turn.at_most", "6.37 rpm"),
    ],
)
def test_the_spins_that_notes_work_out_are_those_of_the_threshold(name, head_rad_s, limit, rpm):
    """A spin times a head's turn is the threshold (Guedry 1974): the program's own law, turned round."""
    person = PersonPart(head_turn_deg_s=math.degrees(head_rad_s))
    spin_rad_s = BY_ID[limit].limit / QUANTITIES["head_turn"].value(person, 1.0, 1.0)
    assert f"{spin_rad_s * 30 / math.pi:.3g} rpm" == rpm
    assert rpm in BY_ID[name].note
