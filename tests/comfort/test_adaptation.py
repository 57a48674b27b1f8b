"""What people got used to: each statement holds the figures of its source, and says how a spin lies to them."""

from rimfall.comfort import adaptation
from rimfall.comfort.published import ROWS, STUDIES
from tests.published import (
    bretl_2019,
    dizio_lackner_2002,
    elias_2008,
    graybiel_1960,
    graybiel_knepton_1972,
    lackner_dizio_1998,
    standardized_protocol_2020,
)
from tests.tables import each_row

NB = "\u00a0"
SOURCES = {
    "Graybiel, Clark & Zarriello": graybiel_1960.ROWS["HUM-23"],
    "Graybiel & Knepton": graybiel_knepton_1972.ROWS["HUM-24"],
    "Lackner & DiZio": lackner_dizio_1998.ROWS["HUM-25"],
    "DiZio & Lackner": dizio_lackner_2002.ROWS["HUM-26"],
    "Elias, Jarchow & Young": elias_2008.ROWS["HUM-27"],
    "Bretl and others": bretl_2019.ROWS["HUM-28"],
    "Standardized protocol": standardized_protocol_2020.ROWS["HUM-30"],
}


def told(spin_rpm, study):
    (finding,) = [one for one in adaptation.beside(spin_rpm) if one.study == study]
    return finding


def here(spin_rpm, study):
    return told(spin_rpm, study).here.replace(NB, " ")


@each_row("study", SOURCES)
def test_a_claim_has_every_figure_of_its_source(study):
    claim = told(3.0, study).claim
    for figure in (SOURCES[study].value, *SOURCES[study].inputs.values()):
        assert f"{figure:g}" in claim


def test_only_what_people_were_brought_to_counts_as_reached():
    reached = {
        finding.study: finding.reached_rpm for finding in adaptation.beside(3.0) if finding.reached_rpm is not None
    }
    assert reached == {
        "Graybiel & Knepton": 6.0, "Lackner & DiZio": 10.0, "Elias, Jarchow & Young": 30.0, "Standardized protocol": 11.8,
    }  # fmt: skip
    assert reached == {name: SOURCES[name].value for name in reached}


def test_findings_go_by_year_with_their_sources_and_what_is_not_published_comes_last():
    findings = adaptation.beside(3.0)
    published = findings[: len(SOURCES)]
    assert [finding.study for finding in published] == list(SOURCES)
    assert [finding.year for finding in published] == [1960, 1972, 1998, 2002, 2008, 2019, 2020]
    assert {finding.source for finding in published} <= {row.source for row in ROWS}
    assert [finding.claim for finding in findings[len(SOURCES) :]] == list(adaptation.UNPUBLISHED)


def test_what_is_not_published_claims_no_source_and_no_figure():
    for finding in adaptation.beside(3.0)[len(SOURCES) :]:
        assert (finding.study, finding.year, finding.reached_rpm, finding.source, finding.known_by) == (
            "",
            None,
            None,
            "",
            "",
        )
        assert finding.claim.endswith("no published figure found.")
        assert not any(letter.isdigit() for letter in finding.claim)


@each_row(
    ("spin_rpm", "study", "said"),
    [
        (3.0, "Graybiel & Knepton", "This spin, 3.00 rpm, lies below the 6 rpm of the last step."),
        (6.0, "Graybiel & Knepton", "This spin, 6.00 rpm, equals the 6 rpm of the last step."),
        (6.0 * (1 + 1e-12), "Graybiel & Knepton", "This spin, 6.00 rpm, equals the 6 rpm of the last step."),
        (7.5, "Graybiel & Knepton", "This spin, 7.50 rpm, lies above the 6 rpm of the last step."),
        (20.0, "Elias, Jarchow & Young", "This spin, 20.00 rpm, lies between the 14 rpm of the first day and the 23 rpm of the second."),
        (2.0, "Bretl and others",
         "This spin, 2.00 rpm, lies between the 1.8 rpm of the average and the 2.7 rpm that is one standard deviation above the average."),
        (0.00001, "Graybiel & Knepton", "This spin, 0.00001 rpm, lies below the 6 rpm of the last step."),
        (6.0004, "Graybiel & Knepton", "This spin, 6.0004 rpm, lies above the 6 rpm of the last step."),
        (5.9999999, "Graybiel & Knepton", "This spin, 5.9999999 rpm, lies below the 6 rpm of the last step."),
        (0.0096543, "Graybiel & Knepton", "This spin, 0.009654 rpm, lies below the 6 rpm of the last step."),
        (1e-9, "Graybiel & Knepton", "This spin, less than 0.000001 rpm, lies below the 6 rpm of the last step."),
        (0.0, "Graybiel & Knepton", "Nothing turns here to set beside it."),
        (None, "Graybiel & Knepton", "Nothing turns here to set beside it."),
    ],
)  # fmt: skip
def test_how_a_spin_lies_to_a_statement(spin_rpm, study, said):
    assert here(spin_rpm, study) == said


def test_the_spins_of_bretl_are_the_mean_and_one_deviation_either_way():
    mean, deviation = SOURCES["Bretl and others"].value, SOURCES["Bretl and others"].inputs["sd_rpm"]
    for spin, mark in ((0.01, mean - deviation), (100.0, mean + deviation)):
        assert f"the {mark:g} rpm that is one standard deviation" in here(spin, "Bretl and others")


def test_each_finding_has_the_note_of_its_row_and_for_whom_it_holds():
    rows = {(STUDIES[row.study].name, row.note, row.who) for row in ROWS}
    found = [one for one in adaptation.beside(3.0) if one.study]
    assert all((one.study, one.note, one.who) in rows for one in found)
    assert all(one.who for one in found)
