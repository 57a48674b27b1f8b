"""Sentences of what the air bears up."""

from tests.facts import tells
from tests.scene.documents import answer, drop, scene
from tests.scene.test_words import NB, said
from tests.tables import each_row

GALLEY = {"ceiling_m": 4.0, "width_m": 14.0}
HELIUM = "helium balloon"


def contact(document, number):
    return answer(document)["motions"][0]["events"][number]


def test_it_rises_to_the_ceiling_and_stays_there():
    document = scene(drop(1.2, HELIUM), habitat=GALLEY)
    met, rest = contact(document, 1), contact(document, 2)
    spinward, further = (
        met["along_m"] * 52 / 56,
        (rest["along_m"] - met["along_m"]) * 52 / 56,
    )  # measured at the ceiling
    rise = f"rises … ceiling … {spinward:.2f} m spinward … {met['time_s']:.2f} s"
    assert tells(said(document), f"{rise} … rest … {1000 * further:.1f} mm spinward")


def test_it_rises_straight_where_nothing_turns():
    bench = {"shape": "pods", "spin_rpm": 0.0, "axial_thrust_m_s2": 0.0, "floors": [{"length_m": 12.0, "width_m": 6.0}]}
    turntable = {"shape": "turntable", "spin_rpm": 0.0}
    assert "rises" not in said(scene(drop(1.2, HELIUM), habitat=bench)), "nothing weighs anything"
    sentence = said(scene(drop(1.2, HELIUM, place={"height_m": 1.2, "axial_m": 1.0}), habitat=turntable))
    assert tells(sentence, "rises … m in 60.00 s … never … turntable")


@each_row(
    ("document", "sentence"),
    [
        (scene(drop(1.2, HELIUM)), "never meets the deck"),
        (scene(drop(1.2, HELIUM), habitat=GALLEY | {"axial_thrust_m_s2": 2.0}), "meets the ceiling … comes to rest … of there"),
        (scene({"kind": "roll", "body": HELIUM}, habitat=GALLEY), "rises … ceiling"),
        (scene({"kind": "stand", "place": {"height_m": 0.9}, "body": HELIUM}, habitat=GALLEY), "rises … meets"),
        (scene(drop(1.2, HELIUM), habitat={"hub_radius_m": 50.0}), "rises … hub"),
        (scene(drop(1.2, "air balloon"), habitat=GALLEY), "It lands 0."),
        (scene(drop(1.2, HELIUM), air=None), "It lands 0."),
    ],
)  # fmt: skip
def test_every_rise_has_its_sentence(document, sentence):
    assert tells(said(document), sentence)


def test_us_units_are_in_feet():
    document = scene(drop(1.2, HELIUM), habitat=GALLEY)
    assert " in spinward" in said(document, "us")
    assert f"{NB}m" not in said(document, "us")
