"""What bodies did without their weight: each finding holds the figures of its source, and a stay counts those that bear on it."""

import math
import re

from rimfall.comfort.without_weight import FINDINGS, NOT_KNOWN, POINTS, STAYS, TOPICS, counted, here
from rimfall.scene.feel.why_spin import LEAD, why_spin
from tests.published.bodies_without_weight import FOUND as ROWS
from tests.tables import each_row

BY_ID = {finding.id: finding for finding in FINDINGS}
SAID_IN = {  # finding -> rows of the checks whose figures it tells
    "bone.hip_and_spine": ("BOD-01", "BOD-02"), "bone.legs": ("BOD-03",), "bone.with_exercise": ("BOD-04",),
    "bone.calcium": ("BOD-05", "BOD-06"), "muscle.back": ("BOD-07",), "muscle.all": ("BOD-08",), "muscle.calf": ("BOD-09",),
    "blood.fluid": ("BOD-12",), "blood.plasma": ("BOD-13",), "blood.red_cells": ("BOD-14",), "blood.standing": ("BOD-17",),
    "eyes.near": ("BOD-16",), "balance.walking": ("BOD-21",), "stones.counted": ("BOD-20",), "sickness.first": ("BOD-18",),
    "exercise.set_aside": ("BOD-10",), "exercise.done": ("BOD-11",), "centrifuge.bed_rest": ("BOD-23",),
    "part.mice": ("BOD-24",), "part.vein": ("BOD-19",), "part.none_long": ("BOD-25",),
}  # fmt: skip
WORKED_OUT = {
    "BOD-06": "10.7 g",
    "BOD-14": "three million",
    "BOD-17": "5 of 6",
    "BOD-18": "57 of 85",
    "BOD-20": "14 kidney stones",
}


def plain(text):
    return text.replace("\u00a0", " ")


@each_row(("id", "rows"), SAID_IN.items())
def test_a_finding_has_every_figure_of_its_rows(id, rows):
    said = plain(f"{BY_ID[id].claim} {BY_ID[id].note}").replace(",", "")
    figures = {float(figure) for figure in re.findall(r"\d+(?:\.\d+)?", said)}
    for row in rows:
        if row in WORKED_OUT:
            assert WORKED_OUT[row] in said
        else:
            assert ROWS[row].value in figures, row
        if row != "BOD-06":
            assert set(ROWS[row].inputs.values()) <= figures, row


def test_every_row_is_told_and_every_finding_but_one_opinion_has_a_row():
    assert {row for rows in SAID_IN.values() for row in rows} == set(ROWS)
    assert set(BY_ID) - set(SAID_IN) == {"part.too_little"}  # of the note of BOD-25
    assert {finding.topic for finding in FINDINGS} == set(TOPICS)


def test_figures_worked_out_here_are_those_of_the_rows():
    grown = ROWS["BOD-06"].inputs
    low, high, days = (grown[name] for name in ("rate_start_mg_per_day", "rate_end_mg_per_day", "days"))
    assert ROWS["BOD-06"].allows((high - low) * days / math.log(high / low) / 1000)
    assert ROWS["BOD-11"].allows(ROWS["BOD-11"].inputs["minutes_per_week"] / 7 / 60)
    assert ROWS["BOD-14"].allows(2e6 * (1 + ROWS["BOD-14"].inputs["increase_percent"] / 100))
    for row, (part, whole), per in (("BOD-17", (5, 6), 1), ("BOD-18", (57, 85), 1), ("BOD-20", (14, 5434.5), 1000)):
        assert ROWS[row].allows(per * part / whole)


@each_row("stay", STAYS)
def test_a_verdict_counts_what_bears_on_the_stay_and_names_the_unknown(stay):
    bearing = [finding.points for finding in FINDINGS if stay in finding.stays]
    assert counted(stay).counts == {points: bearing.count(points) for points in POINTS}
    (told,) = [one for one in why_spin(0.56)["stays"] if one["stay"] == stay]
    words = ["none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"]
    for points, way in (("for", "for spin"), ("against", "against it")):
        assert re.search(rf"\b{words[bearing.count(points)]} (speaks? )?{way}", told["verdict"]), told["verdict"]
    assert f"bear on {stay}" in told["verdict"]
    assert tuple(told["not_known"]) == NOT_KNOWN[stay] != ()


@each_row(
    ("felt_g", "said"),
    [
        (0.0, "gives no weight"),
        (0.0005, "gives no weight"),
        (0.38, "Here one feels 0.38 g: how much of it that prevents has not been measured in people."),
        (1.0, "Here one feels 1.00 g, as on Earth"),
        (1.3, "Here one feels 1.30 g, more than on Earth"),
    ],
)
def test_a_verdict_says_what_this_weight_makes_of_it(felt_g, said):
    for stay in why_spin(felt_g)["stays"]:
        assert said in plain(stay["verdict"])


@each_row(
    ("id", "felt_g", "said"),
    [
        ("part.mice", 0.5, "lies between the 0.33 g at which size was kept and the 0.67 g"),
        ("part.mice", 0.33, "equals the 0.33 g"),
        ("part.vein", 1.2, "lies above the 1 g tried"),
        ("part.too_little", 0.1, "What is felt here, 0.10 g, lies below the 0.4 g it names."),
        ("part.too_little", 0.0, "Nothing is felt here to set beside it."),
        ("bone.legs", 0.5, ""),
    ],
)
def test_a_finding_on_part_of_ones_weight_is_set_beside_what_is_felt_here(id, felt_g, said):
    told = plain(here(BY_ID[id], felt_g))
    assert said in told if said else told == ""


def test_it_is_said_to_be_no_medical_advice_where_it_stands():
    assert "not medical advice" in LEAD
    assert why_spin(0.5)["lead"] == LEAD
