"""Words about what people would feel: the numbers and the ways in them follow the figures, and odd places have words of their own."""

import itertools
import json
import math
import re

import numpy as np
import pytest

from rimfall import phrases
from rimfall.scene.feel import words as feel_words
from rimfall.scene.feel.answers import as_data, feel
from rimfall.scene.feel.saying import angle, number, percent, weight
from rimfall.scene.reading import read_feel
from tests.comfort.aboard import PODS, SPHERE, TABLE, felt, scene
from tests.facts import tells
from tests.motions.scenes import LANTERN, one, throw
from tests.tables import each_row

NAMES = ["standing_up", "breakfast", "drink", "head", "lift"]
BARRED = re.compile(
    r"comfort|\bsafe|\bgood\b|\bbad\b|\berror|!|[\u0370-\u03ff]|\bnan\b|\binf\b|\b(?-i:None)\b|\d[eE][+-]?\d",
    re.IGNORECASE,
)


def lead(habitat, person=None, units="si"):
    return feel_words.lead(scene(habitat, person), felt(habitat, person), units)


def told(habitat, person=None, units="si"):
    """Paragraphs by name."""
    found = feel_words.paragraphs(scene(habitat, person), felt(habitat, person), units)
    assert [one["name"] for one in found] == NAMES
    return {one["name"]: one["text"] for one in found}


def sentences(text):
    return re.findall(r"[.](?=\s|$)", text)


def test_the_lead_is_weight_from_feet_to_head_and_running_both_ways():
    """Worked out by hand: 0.314159^2 x 56 and x 54.25, and (17.593 +- 4)^2/56, over 9.80665."""
    assert lead(LANTERN) == (
        "Standing, you weigh 0.56 of your Earth weight at the feet and 0.55 at the head. "
        "Run spinward at 4.0\u00a0m/s and it is 0.85; run back, 0.34."
    )
    assert "Run spinward at 13.1\u00a0ft/s" in lead(LANTERN, units="us")


def test_every_figure_in_the_paragraphs_is_that_of_the_answer():
    v, text = felt(LANTERN).values, told(LANTERN)
    push = f"spinward … {number(v['rise_push_g'])} g … {percent(v['rise_push_g'] / v['feet_g'])}"
    assert tells(text["standing_up"], push)
    assert f"{percent(v['gradient_percent'] / 100)}, from 0.56 to 0.55" in text["standing_up"]
    assert f"weigh {weight(v['walk_antispinward_g'])}; standing it was {number(v['feet_g'])}" in text["breakfast"]
    assert tells(text["breakfast"], f"with the spin … {number(v['walk_spinward_g'])}")
    assert tells(text["breakfast"], f"{v['float_speed_m_s']:.1f} m/s antispinward … leave the deck")
    assert f"lands {-1000 * v['pour_drift_m']:.1f}\u00a0mm antispinward" in text["drink"]
    assert tells(text["drink"], f"falls … {v['drop_time_s']:.2f} s … {-v['drop_drift_m']:.2f} m antispinward")
    assert f"tips to {angle(v['glass_start_lean_deg'])}" in text["drink"]
    assert tells(text["head"], f"tilt … {v['head_worst_deg_s2']:.1f} °/s²")
    assert tells(text["lift"], f"{number(v['lift_push_g'])} g … spinward wall")
    assert tells(text["lift"], f"leans spinward … {angle(v['lift_lean_deg'])}")
    assert tells(text["lift"], f"{number(v['ladder_push_g'])} g … leans spinward … {angle(v['ladder_lean_deg'])}")


def test_us_units_are_in_every_length_and_speed():
    text = " ".join(told(LANTERN, units="us").values())
    assert not re.search(r"\d\u00a0(?:m|mm|m/s)\b", text)
    assert {"ft", "in", "ft/s"} <= set(re.findall(r"\u00a0(ft/s|ft|in)\b", text))


def test_the_words_change_with_the_design():
    near, far = told({"radius_m": 8.0, "spin_rpm": 9.0}), told({"radius_m": 5_000.0, "spin_rpm": 0.4})
    assert all(near[name] != far[name] for name in NAMES)
    assert tells(far["standing_up"], "small … notice")
    assert tells(far["standing_up"], "little … notice")
    assert tells(told({"radius_m": 4.0, "spin_rpm": 9.0})["standing_up"], "lean antispinward")
    assert "hardly leans" in far["drink"]
    assert tells(told({"radius_m": 20_000.0, "spin_rpm": 0.2})["lift"], "small … notice")


@each_row(("rpm", "where"), [(0.5, "below both"), (3.0, "between the two"), (9.0, "beyond both")])
def test_a_turn_of_the_head_is_set_beside_published_thresholds(rpm, where):
    """0.06 and 0.6 rad/s2 (Clark & Hardy 1960, as surveys quote them): 3.4 and 34.4 degrees; 60 degrees a second at a spin of
    0.5, 3 and 9 rpm gives 3.1, 18.8 and 56.5."""
    text = told({"radius_m": 56.0, "spin_rpm": rpm})["head"]
    assert tells(text, f"illusions … 3.4 °/s² … nausea … 34.4 °/s² … {where}.")


def test_a_run_faster_than_the_deck_floats_on_the_way():
    text = told({"radius_m": 3.0, "spin_rpm": 9.0})["breakfast"]
    assert tells(text, "2.8 m/s … float … weight")
    assert tells(lead({"radius_m": 3.0, "spin_rpm": 9.0}), "2.8 m/s … float")
    floats = LANTERN["spin_rpm"] * math.tau / 60 * 12.0
    assert "you float." in told({"radius_m": 12.0, "spin_rpm": 3.0}, {"run_m_s": floats})["breakfast"]


def test_past_the_axis_the_head_is_drawn_the_other_way():
    small = {"radius_m": 1.0, "spin_rpm": 20.0}
    assert tells(lead(small), "past the axis … other way")
    beyond = told({"radius_m": 1.5, "spin_rpm": 20.0})["standing_up"]
    assert ", past the axis." in beyond
    assert tells(beyond, "feet … 0.67 … head … 0.11, the other way")
    assert tells(told(small)["drink"], "no pouring")
    assert tells(told({"radius_m": 0.8, "spin_rpm": 20.0})["standing_up"], "no room")
    at_the_axis = told({"radius_m": 1.75, "spin_rpm": 20.0})["standing_up"]
    assert ", to the axis." in at_the_axis
    assert tells(at_the_axis, "head … nothing")


def test_on_a_flat_floor_down_leans_toward_the_ends_and_running_leaves_it():
    """A floor 12 m long, 24 m from the axis: atan(6/24) is 14 degrees; nothing holds from half the rim speed on, 5.0 m/s."""
    assert tells(told(PODS)["breakfast"], "leans outward … 14°")
    text = told(PODS, {"run_m_s": 8.0, "walk_m_s": 6.0})["breakfast"]
    assert tells(text, "against the spin … 6.0 m/s … 5.0 m/s on nothing holds")
    assert tells(lead(PODS, {"run_m_s": 8.0}), "leave the floor")


def test_on_a_turntable_down_leans_outward_and_a_lift_pushes_nowhere():
    text = told(TABLE)
    assert tells(text["standing_up"], "leans outward … 19°")
    assert "66.3\u00a0mm outward" in text["drink"]
    assert tells(text["drink"], "past the rim")
    assert tells(text["head"], "shoulder … nothing … axis")
    assert tells(text["lift"], "nothing pushes")
    assert tells(told(TABLE | {"spin_rpm": 0.0})["lift"], "turntable … not turn")


def test_thrust_tips_down_against_its_own_way():
    """A ship pushed along the axis leaves loose things behind; without spin its deck is a wall."""
    forward, backward = (LANTERN | {"axial_thrust_m_s2": a} for a in (2.0, -2.0))
    assert tells(told(forward)["standing_up"], "20° … back along the axis")
    assert tells(told(backward)["standing_up"], "20°, along the axis")
    assert tells(lead(forward), "leans … 20° … deck")
    assert tells(told(forward)["drink"], "0.39 m back along")
    assert tells(lead(forward | {"spin_rpm": 0.0}), "deck … wall")
    wall = told(forward | {"spin_rpm": 0.0})
    assert tells(wall["standing_up"], "deck … wall")
    assert tells(wall["breakfast"], "no walking … wall")
    assert tells(wall["drink"], "along the deck … not onto")
    assert tells(told(forward | {"spin_rpm": 0.5})["standing_up"], "more along the deck")


def test_without_weight_there_is_no_standing_up_and_no_pouring():
    text = told(LANTERN | {"spin_rpm": 0.0})
    assert lead(LANTERN | {"spin_rpm": 0.0}).startswith("The habitat does not turn")
    assert tells(text["standing_up"], "Nothing weighs")
    assert "Nothing pours" in text["drink"]
    assert tells(text["head"], "turn of the head")
    assert tells(text["breakfast"], "across … bends up")
    assert tells(text["breakfast"], "walk hardly helps")
    assert tells(lead(LANTERN | {"spin_rpm": 0.05}), "less than 0.001")


def test_who_does_not_move_reads_of_no_pace():
    still = dict.fromkeys(("walk_m_s", "run_m_s", "climb_m_s", "lift_m_s", "head_turn_deg_s"), 0)
    text = told(LANTERN, still)
    assert tells(lead(LANTERN, still), "not run")
    assert text["breakfast"].startswith("You stay")
    assert text["head"].startswith("You hold your head")
    assert text["lift"].startswith("The lift stands")


@each_row("rpm", [1.0, 3.0, 9.0])
@each_row("speed", [0.5, 1.0, 6.0])
def test_a_cup_tossed_up_does_come_back_spinward(rpm, speed):
    """At the height it left: the path of a throw of the scene, between its samples, on its way down; the figure, of 1 m/s."""
    habitat = {"radius_m": 56.0, "spin_rpm": rpm}
    path = one(throw(1.05, speed, 0.0, 90.0), habitat, fps=240).track.samples
    down = int((path.height_m[1:] < 1.05).argmax()) + 1
    assert path.along_m[down - 1] > 0
    if speed == 1.0:
        share = (path.height_m[down - 1] - 1.05) / (path.height_m[down - 1] - path.height_m[down])
        along_m = path.along_m[down - 1] + share * (path.along_m[down] - path.along_m[down - 1])
        off_m = along_m * (56.0 - 1.05) / 56.0  # along_m is told on the deck
        found = re.search(r"of your hand ([\d.]+)\s?(mm|m) spinward of it", told(habitat)["drink"])
        if off_m < 0.001:
            assert found is None
        else:
            shown, unit = found.groups()
            assert float(shown) * (0.001 if unit == "mm" else 1.0) == pytest.approx(off_m, rel=0.01, abs=0.0051)


def test_assumptions_name_the_place_and_the_shares_of_a_body():
    said = " ".join(feel_words.assumptions(scene(SPHERE), felt(SPHERE)))
    assert "at its equator" in said
    assert tells(said, "heart … 0.72")
    assert tells(said, "cup … 0.6")
    ramped = LANTERN | {"spin_ramp": [{"time_s": 1.0, "spin_rpm": 9.0}]}
    assert tells(" ".join(feel_words.assumptions(scene(ramped), felt(ramped))), "spin … start")
    turning = "The change from feet to head counts its direction"
    assert turning in " ".join(
        feel_words.assumptions(scene(thrust := LANTERN | {"axial_thrust_m_s2": 3.0}), felt(thrust))
    )
    assert turning not in said
    small = {"radius_m": 1.0, "spin_rpm": 20.0}
    assert tells(" ".join(feel_words.assumptions(scene(small), felt(small))), "tall … radius")


def test_paragraphs_are_whole_sober_and_of_three_to_six_sentences_wherever_it_is():
    quick = {"height_m": 3, "walk_m_s": 10, "run_m_s": 20, "climb_m_s": 5, "lift_m_s": 50, "head_turn_deg_s": 1000}
    still = dict.fromkeys(("walk_m_s", "run_m_s", "climb_m_s", "lift_m_s", "head_turn_deg_s"), 0)
    turning = itertools.product((0.3, 1.75, 40_000.0), (0.0, 1e-12, 0.05, 30.0), (0.0, -1e-9, 2.0))
    for radius, rpm, pull in turning:
        size = {"radius_m": radius, "spin_rpm": min(rpm, 4_900 / radius * 60 / math.tau)}
        ship = size | {"axial_thrust_m_s2": pull}
        habitats = [ship, PODS | ship | {"floors": [{"length_m": 0.5}]}]
        habitats.append(TABLE | size | {"outside_gravity_m_s2": abs(pull)})
        for habitat, person in itertools.product(habitats, (quick, still)):
            asked = scene(habitat, person), felt(habitat, person)
            for units in ("si", "us"):
                first = feel_words.lead(*asked, units)
                moments = feel_words.paragraphs(*asked, units)
                texts = [one[of] for one in moments for of in ("text", "prose")]
                assert not any(re.search(r"[°%²/]|\d\.\d|\bg\b|  |once as", one["prose"]) for one in moments), moments
                for text in [first, *texts]:
                    assert not BARRED.search(text), (text, habitat, person)
                    assert text[0].isupper()
                    assert text.endswith(".")
                assert len(sentences(first)) == 2
                assert all(3 <= len(sentences(text)) <= 6 for text in texts), (habitat, person)


def test_numbers_never_come_with_a_power_of_ten():
    assert [number(v) for v in (0.0, 1e-9, 0.0123, 0.0949, 0.5636, 9.994, 9.996, 12_345.6)] == [
        "0", "less than 0.001", "0.012", "0.095", "0.56", "9.99", "10.0", "12,346",
    ]  # fmt: skip
    assert weight(0.996) == "1.00 times your Earth weight"
    assert percent(1e-6) == "less than 0.1\u00a0%"


DRUM = {"radius_m": 56.0, "spin_rpm": 3.0}
RIM_4_M_S = 4.0 / 56.0 * 30.0 / math.pi  # rpm with which a rim of 56 m moves at 4 m/s


def everything(habitat, person=None):
    return " ".join([lead(habitat, person), *told(habitat, person).values()]).replace("\u00a0", " ")


def test_a_habitat_that_turns_under_great_thrust_is_not_said_to_stand_still():
    said = everything({"radius_m": 5.0, "spin_rpm": 0.5, "axial_thrust_m_s2": 10.0})
    assert "does not turn" not in said
    assert "whichever way you go and however fast" not in said
    assert tells(said, "leans … 90° … hides the spin … 4.0 m/s … 1.08")
    assert said.count("nearly a wall") == 2
    assert tells(said, "along the deck … not onto")
    assert "1.02 of" not in said
    assert "hides the spin" not in everything(DRUM | {"axial_thrust_m_s2": 2.0})


def test_a_head_that_is_past_the_axis_does_not_go_toward_it():
    """A seat and the body over it come to 0.77 of 1.75 m, 1.35 m: past an axis 1.2 m up already, short of one 1.5 m up."""
    seated_past = told({"radius_m": 1.2, "spin_rpm": 20.0})["standing_up"]
    assert tells(seated_past, "0.40 m, away from the axis")
    assert "reaches" not in seated_past
    assert "past the axis. " in told({"radius_m": 1.5, "spin_rpm": 20.0})["standing_up"]
    assert "toward the axis. " in told(DRUM)["standing_up"]


def test_at_the_pace_of_the_rim_under_thrust_nothing_presses_the_feet_on():
    said = everything(DRUM | {"spin_rpm": RIM_4_M_S, "axial_thrust_m_s2": 2.0})
    assert len(re.findall(r"nothing presses.*?thrust is left, 0\.20", said)) == 2
    walking = told(DRUM | {"spin_rpm": RIM_4_M_S, "axial_thrust_m_s2": 2.0}, {"walk_m_s": 4.0})["breakfast"]
    assert walking.count("thrust is left, 0.20") == 2
    assert "nothing presses" not in everything(DRUM | {"axial_thrust_m_s2": 2.0})


@each_row("pace", [3.95, 4.0, 4.05])
def test_floating_is_floating_in_every_sentence(pace):
    habitat = DRUM | {"spin_rpm": RIM_4_M_S}
    assert "run back, and you float." in lead(habitat, {"run_m_s": pace})
    assert "you float." in told(habitat, {"run_m_s": pace})["breakfast"]
    assert "and float;" in told(habitat, {"walk_m_s": pace})["breakfast"]


@each_row("pace", [3.6, 3.9, 4.0, 4.3])
def test_where_there_is_no_thrust_none_is_left(pace):
    assert "thrust" not in everything(DRUM | {"spin_rpm": RIM_4_M_S}, {"walk_m_s": pace, "run_m_s": pace})


@each_row(("floats", "pace"), [(1.0, 1.04), (0.47, 0.54), (2.5, 2.54)])
def test_a_pace_that_reads_as_that_of_the_deck_is_not_said_to_be_faster(floats, pace):
    habitat = {"radius_m": 3.0, "spin_rpm": floats / 3.0 * 30.0 / math.pi}
    breakfast = told(habitat, {"walk_m_s": pace, "run_m_s": pace})["breakfast"]
    assert "faster than the deck turns" not in breakfast
    assert "passes" not in breakfast
    past = told(habitat, {"walk_m_s": 2 * floats})["breakfast"].replace("\u00a0", " ")
    assert tells(past, f"{2 * floats:.1f} m/s, faster … {floats:.1f} m/s")


def test_what_goes_round_the_wheel_before_it_lands_is_told_so():
    drink = told({"radius_m": 1.1, "spin_rpm": 20.0})["drink"].replace("\u00a0", " ")
    turns = float(re.search(r"goes ([\d.]+) times round the habitat antispinward", drink)[1])
    # without air it goes straight: theta - atan(theta) round, with cos(atan theta) = (R - h) / R and h = 0.6 of 1.75 m
    theta = math.tan(math.acos((1.1 - 1.05) / 1.1))
    assert turns == pytest.approx((theta - math.atan(theta)) / math.tau, abs=0.05)


def test_once_round_is_said_in_a_word():
    assert tells(told({"radius_m": 1.2, "spin_rpm": 20.0})["drink"], "once round … antispinward")


def test_a_cup_tossed_next_to_the_axis_is_not_said_to_come_back():
    """At 1 m/s from a hand that moves at 0.1 m/s it crosses the axis and lands on the far side."""
    assert "Tossed" not in told({"radius_m": 1.1, "spin_rpm": 20.0})["drink"]
    assert "Tossed" not in told(DRUM | {"axial_thrust_m_s2": 2.0})["drink"]


def test_what_leans_in_a_lift_and_on_stairs_leans_spinward_on_the_way_up():
    """2 m/s toward the axis while the deck goes round spinward: what is carried there is too fast for where it comes, so that it
    is pressed to the spinward side, and a plumb line hangs that way; a throw straight up lands spinward at its height too."""
    assert felt(DRUM).values["lift_push_g"] == pytest.approx(2 * 0.1 * math.pi * 2.0 / 9.80665)
    text = told(DRUM)
    assert tells(text["lift"], "way down … antispinward")
    assert tells(text["drink"], "stairs … 2.1°, the spinward side")
    # 1 m/s up at 32 degrees goes 1.6 m/s along: faster than this deck turns, 1.3 m/s
    slow = told({"radius_m": 3.0, "spin_rpm": 4.0}, {"climb_m_s": 1.0})["drink"]
    assert tells(slow, "stairs … leans")
    assert "side high" not in slow
    assert "side high" not in told(DRUM | {"axial_thrust_m_s2": 2.0})["drink"]


def test_a_lip_past_the_axis_pours_away_from_the_glass():
    assert tells(told({"radius_m": 1.2, "spin_rpm": 20.0})["drink"], "away from the glass")


def test_without_spin_either_way_round_is_alike():
    assert "spinward" not in told(DRUM | {"spin_rpm": 0.0})["breakfast"]


def test_where_a_walk_presses_the_feet_on_running_is_not_all_that_helps():
    breakfast = told({"radius_m": 5.0, "spin_rpm": 0.3})["breakfast"].replace("\u00a0", " ")
    omega = 0.3 * math.pi / 30
    felt = (omega * 5.0 + 1.4) ** 2 / 5.0 / 9.80665  # of a point that goes round at that speed
    assert tells(breakfast, f"{felt:.2g} … at a walk")


def test_who_does_not_walk_carries_no_glass_about():
    assert "steady walk" not in told(DRUM, {"walk_m_s": 0.0})["drink"]
    assert tells(told(DRUM, {"climb_m_s": 0.0})["drink"], "stairs … not climb")
    assert "A ladder" not in told(DRUM, {"climb_m_s": 0.0})["lift"]
    assert "0.0\u00a0m/s" not in told(DRUM | {"spin_rpm": 0.0}, {"walk_m_s": 0.0})["breakfast"]


def test_a_platform_without_the_rooms_gravity_flings_outward():
    said = everything({"shape": "turntable", "radius_m": 3.0, "spin_rpm": 20.0, "outside_gravity_m_s2": 0.0})
    assert "flings you outward" in said
    assert tells(said, "over the rim")
    assert tells(said, "Nothing holds")
    assert "90°" not in said
    assert "you stand leaning inward" not in said


def test_a_spin_that_changes_is_told_as_that_of_the_start():
    assert lead(DRUM | {"spin_ramp": [{"time_s": 5.0, "spin_rpm": 6.0}]}).startswith("At the start")


def test_of_a_craft_that_tumbles_the_spin_before_is_told():
    alone = {"rimfall": 1, "habitat": DRUM}
    over = read_feel(json.dumps(alone | {"motions": [{"kind": "tumble", "about_x_rpm": 0.4}]}))
    told = as_data(feel(over))
    assert told["says"]["lead"].startswith("Before the craft is let go, standing, you weigh")
    assert [one for one in told["assumptions"] if "what is felt while it tumbles is left out here" in one]
    assert told["figures"] == as_data(feel(read_feel(json.dumps(alone))))["figures"]


def test_what_the_map_leaves_out_is_among_the_assumptions():
    for habitat, pull in (
        (DRUM | {"axial_thrust_m_s2": 9.0}, "the thrust"),
        (DRUM | {"shape": "turntable"}, "the room's gravity"),
    ):
        assert tells(" ".join(feel_words.assumptions(scene(habitat), felt(habitat))), f"{pull} … the map")
    assert "the map" not in " ".join(feel_words.assumptions(scene(DRUM), felt(DRUM)))


def test_under_thrust_a_change_of_weight_is_that_of_the_weight():
    """From the vectors: the thrust's part is the same at feet and head."""
    text = told({"radius_m": 10.0, "spin_rpm": 3.0, "axial_thrust_m_s2": 3.0})["standing_up"]
    spin = (3.0 * math.pi / 30) ** 2
    feet, head = (math.hypot(spin * out, 3.0) for out in (10.0, 10.0 - 1.75))
    assert float(re.search(r"changes by ([\d.]+)\s%", text)[1]) == pytest.approx(100 * (1 - head / feet), abs=0.051)


def test_at_the_end_of_a_flat_floor_under_thrust_down_leans_by_both():
    """The angle between straight down onto the floor and what is felt at its end, both as vectors."""
    floors = [{"name": name, "length_m": 20.0} for name in ("a", "b")]
    text = told({"shape": "pods", "radius_m": 30.0, "spin_rpm": 1.0, "axial_thrust_m_s2": 2.0, "floors": floors})[
        "breakfast"
    ]
    spin = (1.0 * math.pi / 30) ** 2
    felt = np.array([spin * 10.0, -spin * 30.0, -2.0])
    lean = math.degrees(math.acos(-felt[1] / np.linalg.norm(felt)))
    assert tells(text, f"end … {lean:.0f}° in all")
    assert tells(text, "thrust tilts “down”")


def test_what_is_next_to_nothing_is_said_so():
    vast = told({"radius_m": 50_000.0, "spin_rpm": 0.13})
    assert "Tossed" not in vast["drink"]  # a fifth of a millimetre off
    assert tells(vast["standing_up"], "less than a degree")
    assert phrases.speed(0.05) == "0.05\u00a0m/s"
    assert phrases.speed(0.001) == "less than 0.01\u00a0m/s"
    assert phrases.speed(0.0) == "0.0\u00a0m/s"


def test_a_push_of_many_times_the_weight_is_told_as_times():
    text = told({"radius_m": 5.0, "spin_rpm": 0.5})["lift"]
    spin = 0.5 * math.pi / 30
    assert tells(text, f"{2 * spin * 2.0 / (spin**2 * 5.0):.1f} times")
    assert tells(told({"radius_m": 56.0, "spin_rpm": 3.0}, {"head_turn_deg_s": 5.0})["head"], "head … 5.0 °/s")


def test_a_day_is_told_as_prose_beside_its_exact_words():
    """At 56 m and 3 rpm: 0.564 g at the feet, 0.68 walking with the spin, the cup falls for 0.65 s and 0.12 m behind."""
    words = {one["name"]: one for one in feel_words.paragraphs(scene(DRUM), felt(DRUM), "si")}
    assert tells(
        words["breakfast"]["prose"],
        "at about one and a half metres per second … Back with the spin it is about two thirds",
    )
    assert tells(
        words["drink"]["prose"],
        "falls for about two thirds of a second and lands about six fingers’ breadth antispinward",
    )
    assert tells(words["standing_up"]["prose"], "by about three hundredths of your Earth weight on average")
    assert "0.56" in words["standing_up"]["text"]
