"""What is said of people at the ends: paces of next to nothing, leans too small to show, thresholds nearly met, other units.

Figures are worked out here from omega^2 R, the kinematics of a head turned in a turning room, and the international foot (1959).
"""

import json
import math

from rimfall.scene.feel import answers as feel_answers
from rimfall.scene.feel.answers import feel
from rimfall.scene.reading import read_feel
from tests.facts import tells
from tests.tables import each_row

NB = "\u00a0"
RPM, FOOT_M = math.pi / 30, 0.3048
TABLE = {"shape": "turntable", "radius_m": 3.0, "spin_rpm": 3.0}


def answer(habitat, units="si", **person):
    return feel_answers.as_data(feel(read_feel(json.dumps({"habitat": habitat, "person": person}))), units)


def told(name, habitat, units="si", **person):
    (text,) = [one["text"] for one in answer(habitat, units, **person)["words"] if one["name"] == name]
    return text.replace(NB, " ")


def test_a_lift_that_stands_still_on_a_turntable_does_not_rise_at_a_speed_of_nothing():
    said = told("lift", TABLE, lift_m_s=0)
    assert tells(said, "lift stands still … along the axis")
    assert tells(told("lift", TABLE, lift_m_s=2), "rises … 2.0 m/s")


def test_who_walks_faster_than_they_run_is_not_told_to_run():
    """On a wheel that hardly turns a pace v presses on by v^2/R: 0.3 m/s in 1 m gives 0.0092 g."""
    said = told("breakfast", {"radius_m": 1.0, "spin_rpm": 0.0}, walk_m_s=0.3, run_m_s=0)
    assert tells(said, f"{0.3**2 / 9.80665:.4f} … at a walk")
    assert "running" not in said
    quicker = told("breakfast", {"radius_m": 1.0, "spin_rpm": 0.0}, walk_m_s=0.3, run_m_s=0.4)
    assert tells(quicker, "walk hardly helps … at a run")


@each_row(("pull", "said"), [(1e-6, "by less than 0.1°"), (0.02, "by 0.2°")])
def test_a_lean_too_small_to_show_is_not_told_as_nothing(pull, said):
    habitat = {"radius_m": 56.0, "spin_rpm": 3.0, "axial_thrust_m_s2": pull}
    lean_deg = math.degrees(math.atan2(pull, (3 * RPM) ** 2 * 56))
    assert (lean_deg < 0.05) == ("less" in said)
    assert tells(told("standing_up", habitat), f"thrust tilts “down” … {said}")


def test_a_drift_is_told_in_inches_from_where_an_inch_shows_it():
    """A stream over 0.2 m goes r (atan(wt) - wt) aside: 1.1 mm, 0.04 in, is a millimetre but no tenth of an inch."""
    for radius in range(100, 20_000, 100):
        omega, hand = math.sqrt(9.80665 / radius), 0.6 * 1.75
        wt = math.sqrt((radius - hand) ** 2 / (radius - hand - 0.2) ** 2 - 1)
        if 0.00101 < (radius - hand) * (wt - math.atan(wt)) < 0.00126:
            break
    habitat = {"radius_m": radius, "spin_rpm": omega / RPM}
    assert "lands 1." in told("drink", habitat).split(" mm antispinward")[0]
    assert tells(told("drink", habitat, "us"), "straight below … inch")


@each_row(
    ("share", "where"),
    [(0.5, "below both"), (0.99, "just below the first"), (1.0, "at the first"), (1.003, "just above the first"), (5.0, "between the two"),
     (9.999, "just below the second"), (10.0, "at the second"), (10.001, "just above the second"), (20.0, "beyond both")],
)  # fmt: skip
def test_a_head_turn_that_reads_as_a_threshold_says_on_which_side_it_is(share, where):
    """The thresholds are 0.06 and 0.6 rad/s² (Clark & Hardy 1960); a turn across the spin gives their product."""
    rate = math.degrees(share * 0.06) / (3 * RPM)
    assert tells(told("head", {"radius_m": 56.0, "spin_rpm": 3.0}, head_turn_deg_s=rate), f"lies {where}.")


def test_levels_without_a_name_are_called_by_their_height_in_the_units_asked_for():
    wheel = {"radius_m": 56.0, "spin_rpm": 3.0}
    names = [one["name"].replace(NB, " ") for one in answer(wheel)["levels"]]
    assert names == ["Deck", "3 m up", "6 m up", "9 m up"]
    levels = answer(wheel, "us")["levels"]
    assert [one["height_m"] for one in levels] == [0, 3, 6, 9]  # data stays SI
    assert [one["name"].split(NB)[0] for one in levels[1:]] == [f"{up / FOOT_M:.2f}" for up in (3, 6, 9)]
    assert all(one["name"].endswith(f"{NB}ft up") for one in levels[1:])


@each_row(
    ("habitat", "ground"),
    [
        ({"radius_m": 56.0, "spin_rpm": 3.0}, "deck"),
        ({"shape": "sphere", "radius_m": 56.0, "spin_rpm": 3.0}, "deck"),
        ({"shape": "pods", "radius_m": 56.0, "spin_rpm": 3.0, "floors": [{}]}, "floor"),
        (TABLE, "turntable"),
    ],
)
def test_labels_speak_of_what_is_stood_on(habitat, ground):
    labels = {row["name"]: row["label"] for row in answer(habitat)["figure_rows"]}
    assert labels["float_speed_m_s"] == f"Feet leave the {ground}, antispinward at"
    assert labels["floor_lean_deg"] == f"Standing: down leans from the {ground}"
    assert not [label for label in labels.values() if "{" in label]


@each_row(
    ("habitat", "said"),
    [
        ({"radius_m": 20.0, "spin_rpm": 0.0}, "Nothing weighs … habitat does not turn"),
        ({"radius_m": 20.0, "spin_rpm": 0.0, "axial_thrust_m_s2": 0.005},
         "habitat does not turn … less than 0.001 … too little"),
        ({"radius_m": 2.0, "spin_rpm": 0.1, "axial_thrust_m_s2": 0.005},
         "habitat turns at 0.10 rpm … less than 0.001 … too little"),
        (TABLE | {"spin_rpm": 0.0, "outside_gravity_m_s2": 0.005},
         "turntable does not turn … less than 0.001 … too little"),
    ],
)  # fmt: skip
def test_what_gives_little_weight_is_not_said_to_be_nothing(habitat, said):
    assert tells(told("standing_up", habitat), said)


@each_row(
    ("habitat", "said", "unsaid"),
    [
        (TABLE | {"spin_rpm": 30.0, "outside_gravity_m_s2": 0.0}, "outer wall", "nothing pushes"),
        (TABLE | {"spin_rpm": 0.0, "outside_gravity_m_s2": 0.0}, "Nothing holds", "under your feet"),
        (TABLE | {"spin_rpm": 0.0}, "under your feet", "Nothing holds"),
    ],
)  # fmt: skip
def test_a_lift_on_a_turntable_says_one_thing_of_its_floor(habitat, said, unsaid):
    text = told("lift", habitat)
    assert said in text
    assert unsaid not in text


def test_a_fall_of_next_to_no_time_is_not_told_as_one_of_nothing():
    """From 0.18 m under a pull of (4,900 m/s)²/240 m it takes sqrt(2 h/a), 0.0019 s."""
    habitat = {"radius_m": 240.0, "spin_rpm": 4_900 / 240 / RPM}
    assert math.sqrt(2 * 0.18 / (4_900**2 / 240)) < 0.005
    assert tells(told("drink", habitat, height_m=0.3), "falls … less than 0.01 s")


def test_a_push_of_more_than_its_own_weight_is_not_called_too_small_to_notice():
    """At 200 rpm and 56 m one weighs 2505 g; 1.7 g on the head is 0.07 % of that, and nearly twice what one weighs on Earth."""
    habitat = {"radius_m": 56.0, "spin_rpm": 200.0}
    for name in ("standing_up", "breakfast", "lift"):
        assert "notice" not in told(name, habitat)
    assert "notice" in told("lift", {"radius_m": 9000.0, "spin_rpm": 0.3})


def test_a_hand_over_the_ceiling_of_a_tube_drops_nothing_on_its_deck():
    tube = {"shape": "torus", "radius_m": 30.0, "spin_rpm": 3.0, "tube_radius_m": 0.5}
    assert tells(told("drink", tube), "not land … ceiling")


def test_the_glass_tips_on_setting_off_as_the_weight_of_standing_has_it():
    """atan(1.4 / omega^2 R): that of the first instant, before the pace changes what one weighs."""
    lean = math.degrees(math.atan(1.4 / ((3 * RPM) ** 2 * 56)))
    assert tells(told("drink", {"radius_m": 56.0, "spin_rpm": 3.0}), f"at first … tips … {lean:.0f}°")


def test_running_both_ways_at_high_gravity_is_told_apart():
    """(omega R ± v)^2 / R at 6.88 rpm and 268 m: 14.8 and 13.6 g beside 14.2."""
    said = told("breakfast", {"radius_m": 268.0, "spin_rpm": 6.88}, run_m_s=4.0)
    rim = 6.88 * RPM * 268
    back, spinward = ((rim + way * 4.0) ** 2 / 268 / 9.80665 for way in (-1, 1))
    assert tells(said, f"it is {back:.1f} … with it, {spinward:.1f}")


def test_whoever_is_taller_than_the_habitat_is_across_has_no_room_in_it():
    for tall, said in ((1.75, "no room"), (1.05, "tall as the radius")):
        assert said in " ".join(answer({"radius_m": 0.8, "spin_rpm": 9.0}, height_m=tall)["assumptions"])
