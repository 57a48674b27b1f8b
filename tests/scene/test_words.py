"""Sentences of outcomes in both systems of units, and each assumption where it is due and only there."""

from rimfall import phrases
from rimfall.motions.ways import Way
from tests.facts import tells
from tests.scene.documents import BALL, answer, drop, pour, scene, throw
from tests.tables import each_row

NB = "\u00a0"
HOLLOW = {"mass_kg": 0.01, "diameter_m": 0.18}  # displaces a third of its mass in air
JUG = [{"time_s": 2.0, "elevation_deg": -80.0, "flow_ml_s": 30.0}]


@each_row(
    ("value_m", "si", "us"),
    [
        (5.2137, "5.21 m", "17.1 ft"), (0.0047, "4.7 mm", "0.19 in"), (0.1, "0.10 m", "3.9 in"), (0.3048, "0.30 m", "1.0 ft"),
        (0.0012, "1.2 mm", "0.047 in"), (0.000046, "0.046 mm", "0.0018 in"),
        (1234.5, "1,234 m", "4,050.2 ft"), (0.0, "0.0 mm", "0.0 in"), (999.994, "999.99 m", "3,280.8 ft"),
    ],
)  # fmt: skip
def test_lengths(value_m, si, us):
    """A foot is 0.3048 m and an inch 0.0254 m: international yard and pound agreement, 1959."""
    assert phrases.length(value_m) == si.replace(" ", NB)
    assert phrases.length(value_m, "us") == us.replace(" ", NB)


def test_speeds_and_times():
    assert phrases.speed(10.0) == f"10.0{NB}m/s"
    assert phrases.speed(10.0, "us") == f"32.8{NB}ft/s"
    assert phrases.seconds(1.0624) == f"1.06{NB}s"
    assert phrases.seconds(599.6) == f"600{NB}s"


@each_row(
    ("way", "said"),
    [
        (Way(0, 5.21, 0.0, 100.0), "5.21 m spinward"), (Way(0, -5.21, 0.004), "5.21 m antispinward"),
        (Way(0, 0.0, 0.4), "0.40 m along the axis"), (Way(0, 0.0049, -0.4), "0.40 m back along the axis"),
        (Way(0, -0.02, 0.4), "20.0 mm antispinward and 0.40 m along the axis"), (Way(0, 0.001, -0.001), "straight below"),
        (Way(2, 25.0, 0.0, 100.0), "twice round and 25.00 m spinward"), (Way(-1, 0.0, 0.0, 60.0), "once round antispinward"),
        (Way(3, -0.001, 2.0, 60.0), "3 times round spinward and 2.00 m along the axis"),
        (Way(-4, 29.5, 0.0, 60.0), "3 times round and 30.50 m antispinward (29.50 m spinward by the nearest way)"),
        (Way(1, -40.0, 0.0, 100.0), "60.00 m spinward (40.00 m antispinward by the nearest way)"),
    ],
)  # fmt: skip
def test_ways(way, said):
    assert phrases.where(way) == said.replace(" m", NB + "m")


def said(document, units="si", motion=0):
    return " ".join(answer(document, units)["motions"][motion]["words"]).replace(NB, " ")


def test_a_throw_is_told_with_what_it_would_be_on_plain_ground():
    motion = answer(scene(throw()))["motions"][0]
    landing, flat = motion["landing"], motion["companion"]["landing"]
    it_lands = f"lands … {landing['drift_m']:.2f} m spinward … {landing['time_s']:.2f} s"
    on_earth = f"plain gravity … {flat['drift_m']:.2f} m spinward … {flat['time_s']:.2f} s"
    parts = "Without Coriolis and drag … 7.76 m spinward … 2.33 m antispinward … drag … 0.22 m antispinward"
    assert tells(" ".join(motion["words"]), f"{it_lands} … {on_earth} … {parts}")


def test_what_is_stressed_is_how_far_off_it_ends():
    motion = answer(scene(throw()))["motions"][0]
    assert motion["pieces"][:2] == ["It lands ", f"{motion['landing']['drift_m']:.2f}{NB}m"]
    floating = answer(scene(drop(), habitat={"spin_rpm": 0}))["motions"][0]
    assert floating["pieces"] == [" ".join(floating["words"])]


def test_us_units_change_the_words_and_nothing_else():
    document = scene(throw(), pour())
    si, us = answer(document), answer(document, "us")
    assert " ft " in said(document, "us")
    assert " m " not in said(document, "us")
    assert si.pop("prose") != us.pop("prose")
    for a, b in zip(si["motions"], us["motions"], strict=True):
        a.pop("prose"), b.pop("prose")  # in hands and fingers it may be the same
        assert a.pop("words") != b.pop("words")
        assert a.pop("pieces") != b.pop("pieces")
        assert a.pop("in_short") != b.pop("in_short")
    assert si == us


@each_row(
    ("document", "sentence"),
    [
        (scene(drop(), habitat={"spin_rpm": 0}), "never meets the deck … 60.00 s"),
        (scene(throw(speed_m_s=9, heading_deg=90), habitat={"width_m": 4.0}), "meets an end wall"),
        (scene(throw(speed_m_s=20, elevation_deg=80), habitat={"ceiling_m": 4.0}), "meets the ceiling"),
        (scene(throw(), sampling={"duration_s": 0.3}), "still in flight … ends"),
        (scene(drop(0.0425)), "lies on the deck … start"),
        (scene(drop(start_s=2.0), sampling={"duration_s": 1.0}), "ends before it starts"),
        (scene(pour(30, 8)), "lip at 0.6 m/s … 8.0 mm"),
        (scene(pour(30, 8)), "breaks into drops"),
        (scene(pour(1000, 20, place={"height_m": 0.3})), "whole to the end"),
        (scene(pour(0.4, 10)), "Too slow … drips … drops"),
        (scene(pour(0.4, 10)), "The drops land"),
        (scene(pour(1000, 20, place={"height_m": 0.3})), "The stream lands"),
        (scene(pour(0.4, 10, 0.5)), "drips … one drop"),
        (scene(pour(target={})), "misses the cup … 0.23 m … should have stood 0.23 m spinward"),
        (scene(pour(target={"along_m": 0.23})), "reaches the cup … all … 60 ml … 11.9 mm deep"),
        (scene(pour(target={"along_m": 0.23, "depth_m": 0.01})), "full … 9.7 ml … over"),
        (scene(pour(target={"along_m": 0.23, "diameter_m": 0.3})), "reaches the basin … all"),
        (scene(pour(target={"height_m": 1.2, "along_m": 0.23})), "misses the cup … none … rim"),
        (scene(pour(tilt=JUG, target={"along_m": 0.2})), "middle of the pour"),
        (scene(pour(tilt=JUG)), "breaks into … drops of"),
        (scene(pour(0.4, 10), habitat={"spin_rpm": 0}), "no weight … clings … lip"),
    ],
)  # fmt: skip
def test_every_outcome_has_its_sentence(document, sentence):
    assert tells(said(document), sentence)


# a piece of each assumption -> a scene that calls for it, and one that all but does
ASSUMED = {
    "Buoyancy": (scene(drop(1.2, HOLLOW)), scene(drop(1.2, BALL))),
    "drag crisis": (scene(throw(speed_m_s=40)), scene(throw(speed_m_s=10))),
    "history force": (scene(drop(1.2, HOLLOW | {"buoyant": True})), scene(drop(1.2, HOLLOW))),
    "does not flutter": (scene(drop(1.2, BALL | {"drag_area_m2": 0.1})), scene(drop(1.2, BALL))),
    "Mach": (
        scene(throw(speed_m_s=150, heading_deg=0, elevation_deg=0)),
        scene(throw(speed_m_s=60, heading_deg=0, elevation_deg=0)),
    ),
    "air follows the changing spin": (
        scene(drop(), habitat={"spin_ramp": [{"time_s": 9.0, "spin_rpm": 2.0}]}),
        scene(drop()),
    ),
    "does not stretch": (scene(pour()), scene(pour(1000, 20, place={"height_m": 0.3}))),
    "over 3 mm flatten": (scene(pour()), scene(pour(), air=None)),
    "scatter by chance of seed 3": (scene(pour(jitter=0.1, seed=3)), scene(pour(seed=3))),
    "held back by its own thread": (scene(pour(60, 20, liquid="honey")), scene(pour(60, 20, liquid="olive oil"))),
    "splashes are left out": (scene(pour(target={})), scene(pour())),
    "all that is poured": (scene(pour(0.4, 10, 0.5)), scene(pour(0.4, 10))),
}


@each_row("piece", ASSUMED)
def test_what_is_left_out_is_said_where_it_matters(piece):
    due, spared = ASSUMED[piece]
    assert any(piece in one for one in answer(due)["motions"][0]["assumptions"])
    assert not any(piece in one for one in answer(spared)["motions"][0]["assumptions"])


def test_buoyancy_is_told_by_its_share():
    (one,) = answer(scene(drop(1.2, HOLLOW)))["motions"][0]["assumptions"]
    density = 101_325 / (287.05 * 293.15)
    assert f"{100 * density * 3.141592653589793 / 6 * 0.18**3 / 0.01:.2g} %" in one


def test_vacuum_leaves_nothing_of_the_air_out():
    assert answer(scene(throw(speed_m_s=400, body=HOLLOW), air=None))["motions"][0]["assumptions"] == []
