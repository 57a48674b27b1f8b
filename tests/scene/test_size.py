"""A habitat for wishes, asked as the page asks: what is answered, what is refused by name, and the words.

What is smallest or nearest is scipy.optimize.linprog's in tests/comfort/test_sizing.py; here the answers are asked again: with the
nearest value everything is met, a little short of it it is not.
"""

import json
import math
import re

import numpy as np
import pytest
from scipy.constants import g as G0

from rimfall.comfort.published import ROWS, STUDIES
from rimfall.errors import BadInput
from rimfall.phrases import caution_about_people
from rimfall.scene.reading import read, read_size
from rimfall.scene.size import answers as size_answers
from rimfall.scene.size import wish_words
from tests.tables import each_row

NB = "\u00a0"


def figure(quantity, bound, value):
    return {"kind": "figure", "quantity": quantity, "bound": bound, "value": value}


def study(name):
    return {"kind": "study", "study": name}


def asked(*wishes, units="si", **more):
    return size_answers.as_data(read_size(json.dumps({"wishes": wishes} | more)), units)


GRAVITY, SLOW, HULL = (
    figure("gravity", "exactly", 0.9),
    figure("spin", "at_most", 2.0),
    figure("radius", "at_most", 60.0),
)


def test_two_wishes_make_a_habitat():
    answer = asked(GRAVITY, SLOW)
    smallest, omega = answer["smallest"], 2.0 * 2 * np.pi / 60
    assert smallest["radius_m"] == pytest.approx(0.9 * G0 / omega**2)
    assert smallest["spin_rpm"] == pytest.approx(2.0)
    assert smallest["bound_by"] == [0, 1]
    assert smallest["figures"]["rim_speed"] == pytest.approx(0.9 * G0 / omega)
    assert answer["spin_range_rpm"] == pytest.approx([2.0, 2.0])
    assert (answer["fits"], answer["collides"], answer["ways"], answer["caution"]) == (
        True,
        [],
        None,
        caution_about_people(),
    )
    assert answer["words"] == [
        f"The smallest that gives 0.9{NB}g at no more than 2{NB}rpm has a radius of 201{NB}m and turns at 2.00{NB}rpm; its rim moves at "
        f"42.1{NB}m/s and head to foot changes by 0.870{NB}%.",
        f"Larger ones work as well, up to 100{NB}km, the program's greatest, where the spin is 0.0897{NB}rpm.",
    ]


def test_wishes_that_collide_are_named_with_the_nearest_that_would_do():
    answer = asked(GRAVITY, SLOW, HULL)
    assert (answer["fits"], answer["smallest"], answer["family"], answer["spin_range_rpm"]) == (False, None, None, None)
    assert answer["words"] == [
        f"0.9{NB}g at no more than 2{NB}rpm takes 201{NB}m; your maximum radius is 60{NB}m, 141{NB}m less.",
        f"It would work with 0.268{NB}g instead of 0.9{NB}g or 3.67{NB}rpm instead of 2{NB}rpm.",
    ]
    assert answer["ways"] == answer["words"][1]
    assert [(one["wish"], one["was"], one["unit"]) for one in answer["collides"]] == [
        (0, 0.9, "g"),
        (1, 2.0, "rpm"),
        (2, 60.0, "m"),
    ]


COLLIDING = [
    [GRAVITY, SLOW, HULL],
    [figure("gravity", "at_least", 0.9), figure("rim_speed", "at_most", 20.0), figure("gradient", "at_most", 2.0)],
    [figure("spin", "exactly", 2.0), figure("spin", "exactly", 3.0)],
    [figure("radius", "at_least", 200_000.0)],
    [figure("gravity", "exactly", 1_000_000.0)],
    [study("gilruth_1969"), figure("spin", "at_least", 6.5), figure("radius", "at_least", 10.0)],
    [HULL, GRAVITY, SLOW, figure("head_turn", "at_most", 2.0), study("stone_1973"), figure("coriolis", "at_most", 0.5)],
]


@each_row("wishes", COLLIDING)
def test_with_the_nearest_value_the_others_are_met_and_short_of_it_they_are_not(wishes):
    answer = asked(*wishes)
    could_be = [one for one in answer["collides"] if one["could_be"] is not None]
    assert could_be
    for one in could_be:
        nearest, was = one["could_be"], one["was"]
        for value, met in ((nearest, True), (nearest + 1e-6 * (was - nearest), False)):
            changed = [w | ({"value": value} if n == one["wish"] else {}) for n, w in enumerate(wishes)]
            assert asked(*changed)["fits"] is met, (one, value)


def test_the_words_say_which_limit_of_a_study_stands_in_the_way():
    answer = asked(study("gilruth_1969"), figure("radius", "at_most", 5.0))
    (of_study, _) = answer["collides"]
    assert (of_study["was"], of_study["could_be"], of_study["label"]) == (None, None, "the limits of Gilruth 1969")
    omega = 6.0 * 2 * np.pi / 60  # at the study's 6 rpm, and 5 m
    gravity, spin = 5.0 * omega**2 / G0, np.sqrt(0.3 * G0 / 5.0) * 60 / (2 * np.pi)
    assert f"{gravity:.3f}{NB}g instead of 0.3{NB}g in Gilruth 1969" in of_study["say"]
    spin = math.ceil(100 * spin) / 100  # to the side that does
    assert f"{spin:.2f}{NB}rpm instead of 6{NB}rpm in Gilruth 1969" in of_study["say"]
    assert answer["words"][0].startswith(f"The limits of Gilruth 1969 take 7.45{NB}m; your maximum radius is 5{NB}m")


@each_row("name", list(STUDIES))
def test_a_study_is_all_its_limits_or_refused_where_it_has_none(name):
    rows = [row for row in ROWS if row.study == name and row.bound in ("at_least", "at_most")]
    if not rows:
        with pytest.raises(BadInput) as refused:
            asked(study(name))
        assert refused.value.refusals[0].field == "wishes.0.study"
        assert "gilruth_1969" in refused.value.refusals[0].may_be
        return
    each = asked(*(figure(row.quantity, row.bound, row.limit) for row in rows), HULL)
    whole = asked(study(name), HULL)
    assert whole["smallest"]["radius_m"] == each["smallest"]["radius_m"]
    assert whole["family"] == each["family"]


def test_spin_that_nothing_bounds_is_null_and_said():
    answer = asked(figure("gravity", "at_least", 0.5), figure("gradient", "at_most", 3.0))
    assert answer["smallest"]["spin_rpm"] is None
    assert answer["spin_range_rpm"][0] == pytest.approx(np.sqrt(0.5 * G0 / (175 / 3)) * 60 / (2 * np.pi))
    assert answer["spin_range_rpm"][1] is None
    assert answer["smallest"]["figures"]["gravity"] is None
    assert answer["smallest"]["figures"]["gradient"] == pytest.approx(3.0)
    assert f"any spin from 2.77{NB}rpm on" in answer["words"][1]


def test_a_spin_between_two_ends_is_the_highest_and_the_range_is_said():
    answer = asked(
        figure("radius", "exactly", 30.0), figure("gravity", "at_least", 0.3), figure("spin", "at_most", 4.0)
    )
    assert answer["smallest"]["spin_rpm"] == pytest.approx(4.0)
    assert answer["spin_range_rpm"] == pytest.approx([2.9905, 4.0], rel=1e-4)  # said rounded to the inside
    assert f"Any spin from 3.00{NB}rpm to 4.00{NB}rpm would work there; this is the highest." in answer["words"]
    assert answer["words"][-1] == "No other radius works."


def test_the_family_runs_from_the_smallest_to_the_largest_and_keeps_to_the_wishes():
    family = asked(figure("gravity", "at_least", 0.3), figure("gravity", "at_most", 0.9), SLOW)["family"]
    radius, most, least = (np.array(family[k]) for k in ("radius_m", "most_spin_rpm", "least_spin_rpm"))
    assert len(radius) >= 61
    assert np.all(np.diff(radius) > 0)
    assert radius[0] == pytest.approx(0.3 * G0 / (2 * 2 * np.pi / 60) ** 2)
    assert radius[-1] == 100_000.0
    assert np.all(most <= 2.0 + 1e-9)
    gravity = np.stack([(spin * 2 * np.pi / 60) ** 2 * radius / G0 for spin in (least, most)])
    assert gravity == pytest.approx(np.stack([family["least_gravity_g"], family["most_gravity_g"]]), rel=1e-9)
    assert gravity.min() == pytest.approx(0.3)
    assert gravity.max() == pytest.approx(0.9)
    assert np.min(np.abs(radius - 0.9 * G0 / (2 * 2 * np.pi / 60) ** 2)) < 1e-6  # the corner, where 0.9 g takes over


@each_row(
    "wishes",
    [
        [figure("gravity", "exactly", 0.9)],
        [figure("gravity", "exactly", 10_678.0)],
        [figure("rim_speed", "at_least", 5_000.0)],
        [figure("radius", "at_least", 100_000.0), figure("rim_speed", "exactly", 5_000.0)],
        [figure("spin", "exactly", 200.0)],
        [GRAVITY, GRAVITY],
        [HULL],
        [SLOW],
        [figure("gravity", "at_most", 1e-300)],
        [figure("gradient", "at_most", 1e6)],
        [figure("spin", "at_most", 20.0 - k) for k in range(12)],
    ],
)
def test_every_answer_is_one_that_a_scene_can_have(wishes):
    answer = asked(*wishes)
    json.dumps(answer, allow_nan=False)
    assert answer["fits"]
    smallest = answer["smallest"]
    habitat = {"radius_m": smallest["radius_m"], "spin_rpm": smallest["spin_rpm"] or 0.0}
    read(json.dumps({"rimfall": 1, "habitat": habitat, "motions": []}))


@each_row(
    ("body", "field"),
    [
        ({}, "wishes"),
        ({"wishes": []}, "wishes"),
        ({"wishes": [GRAVITY] * 13}, "wishes"),
        ({"wishes": [3]}, "wishes.0"),
        ({"wishes": [{}]}, "wishes.0.kind"),
        ({"wishes": [{"kind": "dream"}]}, "wishes.0.kind"),
        ({"wishes": [GRAVITY, figure("gravity", "exactly", 0)]}, "wishes.1.value"),
        ({"wishes": [figure("spin", "at_most", -2)]}, "wishes.0.value"),
        ({"wishes": [figure("spin", "at_most", "2")]}, "wishes.0.value"),
        ({"wishes": [figure("spin", "nearly", 2)]}, "wishes.0.bound"),
        ({"wishes": [figure("mass", "at_most", 2)]}, "wishes.0.quantity"),
        ({"wishes": [study("nobody_1900")]}, "wishes.0.study"),
        ({"wishes": [GRAVITY | {"study": "stone_1973"}]}, "wishes.0.study"),
        ({"wishes": [GRAVITY], "person": {"height_m": 9}}, "person.height_m"),
        ({"wishes": [GRAVITY], "hull": 60}, "hull"),
        ({"wishes": [figure("coriolis", "at_least", 0.1)], "person": {"walk_m_s": 0}}, "person.walk_m_s"),
        ({"wishes": [figure("head_turn", "exactly", 0.1)], "person": {"head_turn_deg_s": 0}}, "person.head_turn_deg_s"),
    ],
)
def test_what_cannot_be_asked_is_refused_by_name(body, field):
    with pytest.raises(BadInput) as refused:
        size_answers.as_data(read_size(json.dumps(body)))
    (only,) = refused.value.refusals
    assert only.field == field
    assert only.may_be in only.say or "known here" in only.may_be


def test_an_unknown_field_is_told_what_may_stand_there():
    with pytest.raises(BadInput) as refused:
        read_size(json.dumps({"wishes": [GRAVITY], "hull": 60}))
    assert refused.value.refusals[0].may_be == "absent; known here: person, wishes"


def test_feet_where_they_are_asked_for():
    words = " ".join(asked(GRAVITY, SLOW, HULL, units="us")["words"])
    assert f"takes 660{NB}ft; your maximum radius is 197{NB}ft, 463{NB}ft less" in words
    assert f"138{NB}ft/s" in asked(GRAVITY, SLOW, units="us")["words"][0]


def test_words_hold_no_power_of_ten_and_keep_numbers_to_their_units():
    for wishes in (
        *COLLIDING,
        [SLOW],
        [HULL],
        [figure("gravity", "exactly", 123_456.0)],
        [figure("gravity", "at_least", 1e-5)],
    ):
        answer = asked(*wishes)
        for text in (*answer["words"], *answer["assumptions"], *(one["say"] for one in answer["collides"])):
            assert "e-" not in text.replace("line-", "")
            assert "e+" not in text
            assert not any(
                f"{digit} {unit}" in text for digit in "0123456789" for unit in ("m", "g ", "rpm", "%", "km")
            )
            assert text[0] == text[0].upper()
            assert text.endswith(".")


@each_row(
    ("value", "said"),
    [
        (0, "0"),
        (0.0000001, "under 0.000001"),
        (0.00123, "0.00123"),
        (0.2684, "0.268"),
        (0.9999, "1.00"),
        (2, "2.00"),
        (41.94, "41.9"),
        (99.97, "100"),
        (201.2, "201"),
        (1234.5, "1,234"),
        (99999.6, "100,000"),
    ],
)
def test_three_figures(value, said):
    assert wish_words.three_figures(value) == said


@each_row(
    "wishes",
    [
        [study("stone_1973")],
        [study("cramer_1985"), figure("gradient", "at_most", 2.0)],
        [study("stone_1973"), figure("radius", "exactly", 30.0)],
    ],
)
def test_the_figures_said_keep_to_the_wishes_when_they_are_typed_in(wishes):
    said = asked(*wishes)["words"][0].replace("\u00a0", " ")
    radius = re.search(r"radius of (?:no more than )?([\d.,]+) m(?: and|,| turns)", said)[1]
    spin = re.search(r"turns at ([\d.,]+) rpm", said)[1]
    typed = [figure("radius", "exactly", float(radius)), figure("spin", "exactly", float(spin))]
    assert asked(*wishes[:1], *typed)["fits"]


@each_row(
    ("wishes", "movable"),
    [
        ((figure("gravity", "exactly", 1.0), SLOW, figure("radius", "at_most", 100.0)), 1),
        ((figure("gravity", "exactly", 1.0), figure("spin", "at_most", 2.99), figure("radius", "at_most", 100.0)), 0),
        ((figure("gravity", "exactly", 1.0), figure("spin", "at_most", 2.99), figure("radius", "at_most", 100.0)), 1),
        ((figure("gravity", "at_least", 0.7), SLOW, figure("radius", "at_most", 37.0)), 0),
        ((figure("gravity", "exactly", 1.0), figure("spin", "exactly", 2.0), figure("radius", "exactly", 100.0)), 0),
        ((figure("gravity", "exactly", 1.0), figure("spin", "exactly", 2.0), figure("radius", "exactly", 100.0)), 1),
        ((figure("gravity", "exactly", 1.0), figure("spin", "exactly", 2.0), figure("radius", "exactly", 100.0)), 2),
        ((figure("gravity", "at_most", 0.2), figure("spin", "at_least", 4.0), figure("radius", "at_least", 33.0)), 0),
    ],
)
def test_a_way_out_does_when_it_is_typed_in_as_it_is_said(wishes, movable):
    answer = asked(*wishes)
    one = next(one for one in answer["collides"] if one["wish"] == movable)
    said = float(one["could_be_says"].split(NB)[0])
    assert said == pytest.approx(one["could_be"], rel=5e-3)  # 0.999 for 0.9997, not 0.990
    changed = list(wishes)
    changed[movable] = changed[movable] | {"value": said}
    assert asked(*changed)["fits"]
    assert one["could_be_says"] in one["say"]


def test_what_a_hull_lacks_by_a_hair_is_said_with_figures_that_differ():
    first, *_ = asked(
        figure("gravity", "exactly", 1.0), figure("spin", "at_most", 2.99), figure("radius", "at_most", 100.0)
    )["words"]
    takes, allows = re.search(r"takes ([\d.]+).m; your maximum radius is ([\d.]+).m", first).groups()
    assert float(takes) > float(allows)


@each_row(
    ("value", "down", "up"), [(0.9997, 0.999, 1.0), (9.997, 9.99, 10.0), (99.97, 99.9, 100.0), (2.99042, 2.99, 3.0)]
)
def test_a_figure_rounded_to_a_side_keeps_three(value, down, up):
    """The sides are those of decimal arithmetic, by hand."""
    assert wish_words.rounded(value, math.floor) == pytest.approx(down, rel=1e-12)
    assert wish_words.rounded(value, math.ceil) == pytest.approx(up, rel=1e-12)


@each_row("quantity", ["radius", "rim_speed"])
def test_figures_that_read_alike_in_feet_are_told_with_more(quantity):
    wishes = figure(quantity, "at_most", 100.16), figure(quantity, "at_least", 100.19)  # 328.6 and 328.7 feet, 329 both
    for one in asked(*wishes, units="us")["collides"]:
        could_be, was = re.search(r"([\d.]+).ft(?:/s at the rim)? instead of ([\d.]+).ft", one["say"]).groups()
        assert float(could_be) != float(was)
        changed = list(wishes)
        changed[one["wish"]] = changed[one["wish"]] | {"value": float(could_be) * 0.3048}
        assert asked(*changed)["fits"]


def test_a_smallest_that_the_program_alone_bounds_once_its_radius_is_rounded_is_said():
    """At 49,736.5 m the wish is the slower, at 49,737 m the 5,000 m/s of the program are."""
    spin_rpm = 5_000.0 / 49_736.7 * 30 / math.pi
    first, *_ = asked(figure("radius", "at_least", 49_736.5), figure("spin", "at_most", spin_rpm))["words"]
    assert f"turns at 0.959{NB}rpm" in first  # down to three figures of 0.95998


def test_every_sentence_has_a_verb_and_a_forced_spin_is_said():
    given, *_ = asked(figure("radius", "exactly", 56.0))["words"]
    assert (
        given
        == f"A habitat that meets a radius of 56{NB}m has a change of {100 * 1.75 / 56:.2f}{NB}% from head to foot."
    )
    fast, *_ = asked(figure("rim_speed", "at_least", 42.6))["words"]
    radius_m, spin_rpm = map(float, re.search(r"radius of ([\d.]+).m and turns at ([\d.]+).rpm", fast).groups())
    assert radius_m * spin_rpm * math.pi / 30 >= 42.6
    assert spin_rpm <= 200.0


def test_bounds_are_joined_as_they_are_spoken():
    words = " ".join(asked(figure("gravity", "at_most", 0.703), figure("spin", "at_least", 0.245))["words"])
    assert f"no more than 0.703{NB}g with at least 0.245{NB}rpm" in words


def test_a_study_that_no_one_change_would_save_is_told_to_be_left_out():
    answer = asked(study("gilruth_1969"), figure("gravity", "at_most", 0.1), figure("spin", "at_least", 8.0))
    said = [one["say"] for one in answer["collides"] if one["label"] == "the limits of Gilruth 1969"]
    assert said == ["Without the limits of Gilruth 1969, every other wish is met."]


def test_of_two_wishes_alike_only_the_tighter_keeps_it_from_being_smaller():
    answer = asked(figure("gravity", "at_least", 0.5), figure("spin", "at_most", 3.0), figure("spin", "at_most", 2.0))
    assert answer["smallest"]["bound_by"] == [0, 2]


def test_no_habitat_is_smaller_than_the_person_in_it_unless_a_wish_leaves_no_more():
    for wishes in (
        [figure("gravity", "exactly", 1.0), figure("radius", "at_most", 10.0)],
        [figure("spin", "at_most", 4.0)],
    ):
        for tall in (1.75, 1.2):
            answer = asked(*wishes, person={"height_m": tall})
            assert answer["smallest"]["radius_m"] == pytest.approx(tall, rel=1e-9)
            assert (
                f"What keeps it from being smaller: room for somebody {tall:.2f}{NB}m tall to stand in."
                in answer["words"]
            )
    low = asked(figure("radius", "exactly", 0.85))["words"]
    assert f"Somebody 1.75{NB}m tall has no room in it, 1.70{NB}m across." in low
    past = asked(figure("radius", "exactly", 1.5))["words"]
    assert f"The head of somebody 1.75{NB}m tall would be beyond its axis." in past
    assert not any("tall" in one for one in asked(GRAVITY, SLOW)["words"])


ONE_ROUNDING = (
    figure("gradient", "exactly", 23.701), figure("coriolis", "at_most", 0.373), figure("rim_speed", "at_most", 31.364),
)  # fmt: skip


def test_a_spin_is_rounded_once():
    """40.56 rpm is not called 40.6 in one sentence and 40.5, the highest, in the next."""
    first, second, *_ = asked(*ONE_ROUNDING)["words"]
    spin = re.search(r"turns at ([\d.]+)", first)[1]
    assert f"to {spin}{NB}rpm would work there; this is the highest." in second
    omega = float(spin) * math.pi / 30
    assert omega * 1.75 / 0.23701 <= 31.364


def test_what_is_used_and_offered_is_the_figure_that_is_said():
    said = asked(*ONE_ROUNDING)
    assert f"turns at {said['smallest']['as_said']['spin_rpm']}{NB}rpm" in said["words"][0]
    third = [
        figure("rim_speed", "at_most", 5.0),
        figure("spin", "at_most", 1.0),
        figure("radius", "at_least", 200 / math.pi),
    ]
    for units, per in (("si", 1.0), ("us", 0.3048)):
        for wishes in (*COLLIDING, third):
            for one in asked(*wishes, units=units)["collides"]:
                if one["could_be"] is None:
                    continue
                written = float(one["could_be_says"].split(NB)[0].replace(",", ""))
                length = per if one["unit"] in ("m", "m/s") else 1.0
                kilo = 1000 if f"{NB}km" in one["could_be_says"] else 1
                assert one["could_be_said"] == pytest.approx(written * length * kilo, rel=1e-11)
                changed = [
                    w | ({"value": one["could_be_said"]} if n == one["wish"] else {}) for n, w in enumerate(wishes)
                ]
                assert asked(*changed)["fits"]


def test_bounds_of_the_program_are_in_the_units_asked_for():
    """The international foot (1959) is 0.3048 m."""
    says = asked(GRAVITY, units="us")["assumptions"][-1]
    assert f"a radius from {0.1 / 0.3048:.3f}{NB}ft to {1e5 / 0.3048:,.0f}{NB}ft" in says
    assert f"a rim speed up to {5e3 / 0.3048:,.0f}{NB}ft/s" in says
    si = f"a radius from 0.1{NB}m to 100{NB}km, a spin up to 200{NB}rpm, a rim speed up to 5,000{NB}m/s"
    assert si in asked(GRAVITY)["assumptions"][-1]


def test_limits_of_a_study_that_bind_are_named_with_it():
    says = asked(study("cramer_1985"), figure("radius", "at_most", 60.0))["words"]
    assert (
        f"What keeps it from being smaller: no more than 3{NB}rpm (Cramer 1985) and at least 7{NB}m/s at the rim (Cramer 1985)."
        in says
    )


def test_limits_of_a_study_that_bind_come_in_the_units_asked_for():
    """7 m/s over the international foot (1959)."""
    says = asked(study("cramer_1985"), figure("radius", "at_most", 60.0), units="us")["words"]
    assert any(f"at least {7 / 0.3048:.1f}{NB}ft/s at the rim (Cramer 1985)" in one for one in says)
    assert not any("m/s" in one for one in says)


def test_a_pace_of_nothing_is_refused_with_what_the_wish_is_for():
    with pytest.raises(BadInput) as caught:
        asked(figure("coriolis", "at_least", 0.1), person={"walk_m_s": 0})
    assert "above 0 while wishes.0 asks for some Coriolis to gravity" in caught.value.refusals[0].say
