"""Sentences for what happens on the ground."""

from tests.facts import tells
from tests.scene.documents import BALL, answer, drop, scene, throw
from tests.tables import each_row

SMOOTH = {"mass_kg": 0.45, "diameter_m": 0.18}
ROUGH = SMOOTH | {"rolling_resistance": 0.05, "friction": 0.6, "restitution": 0.5}
PODS = {
    "shape": "pods",
    "radius_m": 24.0,
    "spin_rpm": 4.0,
    "floors": [{"length_m": 12.0, "width_m": 6.0, "ceiling_m": 3.0}],
}
TABLE = {"shape": "turntable", "radius_m": 0.6, "spin_rpm": 20.0}


def roll(**more):
    return {"kind": "roll", "speed_m_s": 1.5, "heading_deg": 90.0, "body": SMOOTH} | more


def stand(**more):
    return {"kind": "stand", "place": {"height_m": 0.9}, "body": "cup"} | more


def within(habitat, *motions):
    return {"rimfall": 1, "habitat": habitat, "motions": list(motions), "air": None}


def said(document, units="si"):
    return " ".join(s for m in answer(document, units)["motions"] for s in m["words"]).replace("\u00a0", " ")


SENTENCES = [
    (scene(throw(body=ROUGH, bounces=9), habitat={"width_m": None}), "It bounces"),
    (scene(throw(body=ROUGH, bounces=9)), "comes to rest"),
    (scene(throw(body=ROUGH, bounces=1)), "It bounces once"),
    (scene(drop(body=ROUGH, bounces=2)), "It bounces twice"),
    (scene(throw(8.0, 0.0, 90.0, ROUGH, bounces=1), habitat={"ceiling_m": 3.0}), "meets the ceiling … lands … bounces once"),
    (scene(drop(body=BALL)), "It lands"),
    (scene(roll(), air=None, sampling={"duration_s": 20.0}), "rolls on the deck … still under way"),
    (scene(roll(), air=None, sampling={"duration_s": 20.0}), "turned back"),
    (scene(roll(), air=None, sampling={"duration_s": 20.0}), "plain gravity … 30.00 m along the axis … 20.00 s"),
    (scene(roll(body=ROUGH)), "comes to rest"),
    (scene(roll(start="sliding", body=ROUGH)), "slides on the deck … grips"),
    (scene(roll(speed_m_s=0.0)), "rest where it began … 0.00 s"),
    (scene(roll(ramp={"slope_deg": 12.0}, speed_m_s=0.0)), "rolls on the ramp … meets the deck"),
    (scene(roll(), habitat={"width_m": 3.0}, sampling={"duration_s": 3.0}), "meets an end wall"),
    (scene(stand()), "stands on the table … not slide"),
    (scene(stand(), habitat={"spin_rpm": 0.0, "spin_ramp": [{"time_s": 20.0, "spin_rpm": 3.0}]}), "On the table … slides at once … grips"),
    (scene(stand(), habitat={"axial_thrust_m_s2": 8.0, "width_m": 14.0}), "On the table … slides at once."),
    (within(PODS, roll(heading_deg=0.0)), "rolls on the floor … passes the edge"),
    (within(PODS, throw(speed_m_s=9.0, body=SMOOTH)), "It passes the edge"),
    (within(PODS, drop(body=SMOOTH)), "It lands"),
    (within(TABLE, roll(place={"axial_m": 0.3}, heading_deg=90.0)),
     "rolls on the turntable … passes the edge … 0.10 m antispinward … 0.29 m outward")
]  # fmt: skip


@each_row(("document", "sentence"), SENTENCES)
def test_every_outcome_on_the_ground_has_its_sentence(document, sentence):
    assert tells(said(document), sentence)


def test_what_only_rolls_is_shown_under_plain_gravity_as_long_as_it_is_followed():
    (motion,) = answer(within(TABLE, roll(place={"axial_m": 0.3}, heading_deg=90.0)))["motions"]
    assert motion["companion"]["count"] == motion["count"]


def test_units_change_the_words_only():
    document = scene(roll(body=ROUGH))
    assert " ft " in said(document, "us")
    assert " m " not in said(document, "us")
