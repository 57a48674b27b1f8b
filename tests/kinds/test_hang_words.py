"""What is said of things that hang, and why it drifts; and what is refused of them."""

import pytest

from tests.facts import tells
from tests.scene.documents import answer, drop, scene, the_refusal, throw
from tests.tables import each_row

NB = "\u00a0"
THRUST = {"axial_thrust_m_s2": 0.6}
RAMP = {"spin_rpm": 0.5, "spin_ramp": [{"time_s": 4.0, "spin_rpm": 3.0}]}
TABLE = {"shape": "turntable", "radius_m": 2.0}


def hang(height_m=4.0, length_m=2.0, **more):
    return {"kind": "hang", "place": {"height_m": height_m}, "length_m": length_m, "body": "steel ball 20 mm"} | more


def said(motion, habitat=None, units="si", **more):
    (traced,) = answer(scene(motion, habitat=habitat, sampling={"duration_s": 6.0}, **more), units)["motions"]
    return " ".join(traced["words"]).replace(NB, " ")


@each_row(
    ("motion", "habitat", "sentence"),
    [
        (hang(), {}, "hangs straight down … stays … 0.175 N"),
        (hang(), THRUST, "6.4° … 0.22 m back along the axis … stays"),
        (hang(first_angle_deg=20), THRUST, "plumb line … 6.4° … swings … 20.0° … 3.94 s"),
        (hang(first_angle_deg=15), TABLE, "Seen from above … turns"),
        (hang(first_angle_deg=15), TABLE, "clockwise in 6.00 s."),
        (hang(), RAMP, "plumb line … 89.8° … at first … 0.0° at the end"),
        (hang(), {"spin_rpm": 0}, "no weight … stays"),
        (hang(length_m=1.8, first_angle_deg=120), {}, "slack … 0.00 s … straight … 0.96 s"),
        (hang(speed_m_s=3.0, heading_deg=90), {"width_m": 2.0}, "meets an end wall"),
        (hang(start_s=6.0), {}, "ends before it starts"),
    ],
)  # fmt: skip
def test_every_outcome_has_its_sentence(motion, habitat, sentence):
    assert tells(said(motion, habitat), sentence)


def test_between_two_samples_there_is_nothing_to_tell():
    (motion,) = answer(scene(hang(start_s=0.98), sampling={"duration_s": 0.99}))["motions"]
    assert motion["count"] == 0
    (sentence,) = motion["words"]
    assert tells(sentence, "scene ends … swing")


def test_us_units_change_lengths():
    assert tells(said(hang(), THRUST, "us"), "8.8 in back along")


@each_row(
    ("motion", "habitat", "field", "may_be"),
    [
        (hang(length_m=5.0), {}, "length_m", "any length at which what hangs on it begins outside the deck, by half its width"),
        (hang(length_m=2.0, first_angle_deg=80, first_heading_deg=90), {"width_m": 3.0}, "length_m",
         "any length at which what hangs on it begins outside the wall, by half its width"),
        (hang(5.0), {"ceiling_m": 4.0}, "place.height_m", "0 to 4 m, outside every surface by half its diameter"),
        (hang(57.0), {}, "place.height_m", "0 to 56 m, outside every surface by half its diameter"),
        (hang(first_angle_deg=90, speed_m_s=1.0), {}, "heading_deg", "a heading that is not along the line itself"),
        (hang(body={"mass_kg": 1.0, "diameter_m": 0.0}), {}, "body.diameter_m",
         "0.0001 to 10 m in air; 0 (a point) in vacuum only, with air null"),
        (hang(length_m=0.0), {}, "length_m", "0.01 to 1,000 m"),
        (hang(first_angle_deg=181), {}, "first_angle_deg", "0 to 180 °"),
    ],
)  # fmt: skip
def test_what_a_hanging_thing_may_not_be(motion, habitat, field, may_be):
    refused = the_refusal(scene(motion, habitat=habitat))
    assert (refused.field, refused.may_be) == (f"motions.0.{field}", may_be)


def test_what_the_line_leaves_out_is_said_of_it_alone():
    hung, dropped = answer(scene(hang(), drop(), sampling={"duration_s": 0.5}))["motions"]
    assert any("no mass" in one for one in hung["assumptions"])
    assert not any("line" in one for one in dropped["assumptions"])


def test_on_the_ceiling_is_where_a_lamp_may_hang():
    assert answer(scene(hang(4.0), habitat={"ceiling_m": 4.0}, sampling={"duration_s": 1.0}))["motions"][0]["count"]


def test_why_it_drifts_is_said_where_it_can_be_told():
    parts = "Without Coriolis and drag … 7.76 m spinward … Coriolis … 2.33 m antispinward … drag … 0.22 m antispinward"
    assert tells(said(throw()), parts)
    assert tells(said(drop(), air=None), "Without Coriolis … straight below … Coriolis … 0.16 m antispinward")
    assert "Coriolis" not in said(drop(), {"spin_rpm": 0.0})


def test_an_answer_tells_the_parts_or_why_not():
    thrown, rolled = answer(scene(throw(), {"kind": "stand", "body": "cup"} | {"place": {"height_m": 0.9}}))["motions"]
    parts = thrown["landing"]["drift_parts_m"]
    assert sum(parts[cause] for cause in parts["order"]) == pytest.approx(thrown["landing"]["drift_m"], abs=1e-9)
    assert thrown["landing"]["drift_parts_none"] is None
    bounced = answer(scene(throw(speed_m_s=20, elevation_deg=80, bounces=5), habitat={"ceiling_m": 4.0}))["motions"][0]
    assert (bounced["landing"]["drift_parts_m"], bounced["landing"]["drift_parts_none"]) == (
        None,
        "met_something_first",
    )
    assert rolled["landing"] is None
