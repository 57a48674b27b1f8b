"""An answer has every field of the contract, always; lists and float32 say the same; frames and figures agree."""

import json
import math

import numpy as np
import pytest

from rimfall.scene import answers, examples, questions
from rimfall.scene.feel import answers as feel_answers
from rimfall.scene.reading import read
from tests.scene.documents import POINT, answer, drop, pour, scene, the_refusal, throw, unpacked
from tests.tables import each_row

TOP = {
    "rimfall_answer",
    "program",
    "scene",
    "grid",
    "time_s",
    "angle_rad",
    "spin_rad_s",
    "tumbling",
    "habitat",
    "motions",
    "compare",
    "prose",
}
HABITAT = {
    "omega_rad_s", "deck_gravity_m_s2", "deck_gravity_g", "felt_m_s2", "felt_g", "felt_lean_deg", "rim_speed_m_s", "period_s",
    "decks", "floors",
}  # fmt: skip
OTHER = (TOP - {"rimfall_answer", "program", "scene", "compare"}) | {"name", "habitat_part"}
SCALARS = ("along_m", "height_m", "axial_m")
VECTORS = ("rotating_m", "rotating_velocity_m_s", "inertial_m", "centrifugal_m_s2", "coriolis_m_s2")
MOTION = {
    "name", "kind", "first", "count", "end", *SCALARS, *VECTORS, "attitude_wxyz", "events", "landing", "no_landing", "apex",
    "companion", "stream", "words", "within_reach", "in_short", "prose", "last", "pieces", "assumptions", "surface", "ramp",
    "findings",
}  # fmt: skip
EVENT = {
    "kind", "time_s", *SCALARS, "rotating_m", "inertial_m", "velocity_m_s", "speed_m_s", "incidence_deg", "surface", "way",
}  # fmt: skip
CONTACTS = {"deck", "floor", "ceiling", "hub", "wall", "table"}
LANDING = {"time_s", "along_m", "axial_m", "drift_m", "way", "speed_m_s", "incidence_deg"}
COMPANION = {"first", "count", *SCALARS, "rotating_m", "landing", "last", "none_because"}
STREAM = {
    "speed_m_s", "regime", "weber", "ohnesorge", "breakup", "drop_diameter_m", "drop_interval_s", "first_leaves_s",
    "last_leaves_s", "diameter_m", "drop_count",
}  # fmt: skip
ENDS = {"landed", "rest", "met a surface", "edge", "time limit", "duration", "arrived", "caught", "slack"}
NO_LANDINGS = {
    "never_meets", "met_ceiling", "met_hub", "met_wall", "met_table", "left_edge", "duration", "starts_there", "arrived", "caught",
}  # fmt: skip
EVENTS = {
    "release", "apex", "axis", "grip", "slip", "rest", "edge", "time_limit", "arrives", "dock", "hull", "target", "slack", "taut",
} | CONTACTS  # fmt: skip

LATE = scene(drop(start_s=5.0), pour(start_s=5.0), sampling={"duration_s": 1.0})
SCENES = {name: json.loads(examples.example(name)) for name in examples.SAY} | {
    "nothing moves": scene(),
    "no spin": scene(drop(), throw(), pour(), pour(flow_ml_s=0.1, lip_diameter_mm=100), habitat={"spin_rpm": 0}),
    "starts after the end": LATE,
    "cut short": scene(throw(), pour(), sampling={"duration_s": 0.3}),
    "a wall": scene(throw(speed_m_s=9, heading_deg=90), habitat={"width_m": 4.0}),
    "a ceiling": scene(throw(speed_m_s=20, elevation_deg=80), habitat={"ceiling_m": 4.0}),
    "a hub": scene(throw(speed_m_s=30, elevation_deg=80, heading_deg=150), habitat={"hub_radius_m": 30.0}),
    "through the axis": scene(throw(5.0, 0.0, 90.0, POINT, place={"height_m": 56.0}), habitat={"spin_rpm": 3.0}, air=None),
    "lies on the deck": scene(drop(0.0425)),
    "vacuum pour": scene(pour(), air=None),
}  # fmt: skip
ROUND = ("cylinder", "torus", "sphere")


def every_field_is_there(name, whole):
    assert set(whole) == TOP
    assert set(whole["habitat"]) == HABITAT
    assert set(whole["grid"]) == {"fps", "samples_per_frame", "count"}
    assert all(set(other) == OTHER for other in whole["compare"])
    assert len(whole["compare"]) == len(SCENES[name].get("compare", []))
    for part in (whole, *whole["compare"]):
        assert len(part["motions"]) == len(SCENES[name]["motions"])
    for motion in (m for part in (whole, *whole["compare"]) for m in part["motions"]):
        assert set(motion) == MOTION
        for event in motion["events"]:
            assert set(event) == EVENT | ({"velocity_after_m_s"} if event["kind"] in CONTACTS else set())
        assert set(motion["companion"]) == COMPANION
        assert motion["landing"] is None or set(motion["landing"]) == LANDING | {"drift_parts_m", "drift_parts_none"}
        assert motion["companion"]["landing"] is None or set(motion["companion"]["landing"]) == LANDING
        for moment in (motion["apex"], motion["companion"]["last"]):
            assert moment is None or set(moment) == {"time_s", "way", *SCALARS}
        assert motion["last"] is None or set(motion["last"]) == {"time_s", "way", "speed_m_s", *SCALARS}
        assert (motion["stream"] is None) == (motion["kind"] != "pour")
        assert motion["stream"] is None or set(motion["stream"]) == STREAM
        assert motion["ramp"] is None or np.shape(motion["ramp"]["corners_m"]) == (4, 3)
        assert (motion["surface"] is None) == (motion["kind"] not in ("roll", "stand", "walk"))


def words_of_the_contract_are_used(name, whole):
    for motion in whole["motions"]:
        assert motion["end"] in ENDS
        assert (motion["landing"] is None) != (motion["no_landing"] is None)
        assert motion["no_landing"] is None or motion["no_landing"] in NO_LANDINGS
        assert {event["kind"] for event in motion["events"]} <= EVENTS
        assert all(isinstance(said, str) and said.endswith(".") for said in motion["words"] + motion["assumptions"])
        assert motion["words"]
        assert "".join(motion["pieces"]) == " ".join(motion["words"])


def arrays_are_as_long_as_they_say(name, whole):
    count = whole["grid"]["count"]
    assert len(whole["time_s"]) == len(whole["angle_rad"]) == len(whole["spin_rad_s"]) == count
    for motion in whole["motions"]:
        for part in (motion, motion["companion"]):
            assert part["first"] >= 0
            assert part["first"] + part["count"] <= count
            for key in SCALARS:
                assert np.shape(part[key]) == (part["count"],)
            assert np.reshape(part["rotating_m"], (-1, 3)).shape == (part["count"], 3)
        for key in VECTORS:
            assert np.reshape(motion[key], (-1, 3)).shape == (motion["count"], 3)
        if motion["stream"] is not None:
            assert np.shape(motion["stream"]["diameter_m"]) == (motion["count"],)
        if motion["attitude_wxyz"] is not None:
            assert np.shape(motion["attitude_wxyz"]) == (motion["count"], 4)
            assert np.abs(np.linalg.norm(motion["attitude_wxyz"], axis=1) - 1).max(initial=0) < 1e-12


def lists_and_f4_say_the_same(name, whole):
    lists, packed = whole, answer(SCENES[name], f4=True)
    assert "time_s" not in packed
    assert same(lists["angle_rad"], packed["angle_rad"])
    assert same(lists["spin_rad_s"], packed["spin_rad_s"])
    for plain, f4 in zip(lists["motions"], packed["motions"], strict=True):
        anchor = f4["anchor_m"]
        assert set(f4) == MOTION | {"anchor_m"}
        assert anchor == (plain["events"][0]["rotating_m"] if plain["events"] else [0.0, 0.0, 0.0])
        for key in (*SCALARS, *(v for v in VECTORS if v != "rotating_m")):
            assert same(plain[key], f4[key]), key
        for a, b in ((plain, f4), (plain["companion"], f4["companion"])):
            assert same(np.reshape(a["rotating_m"], (-1, 3)) - anchor, b["rotating_m"])
            assert all(same(a[key], b[key]) for key in SCALARS)
        if plain["stream"] is not None:
            assert same(plain["stream"]["diameter_m"], f4["stream"]["diameter_m"])
        for key in (
            "name",
            "kind",
            "first",
            "count",
            "end",
            "events",
            "landing",
            "no_landing",
            "apex",
            "words",
            "assumptions",
        ):
            assert plain[key] == f4[key], key


def same(plain, packed):
    """An array as a list, and as float32: rounded once and no more."""
    figures = unpacked(packed)
    return np.array_equal(np.asarray(plain, dtype="<f4").reshape(figures.shape), figures)


def test_anchors_keep_small_motions_of_a_large_habitat_fine():
    far = scene(throw(place={"height_m": 1.5, "along_m": 5_000.0}), habitat={"radius_m": 10_000.0, "spin_rpm": 0.2})
    plain, f4 = (answer(far, f4=packed)["motions"][0] for packed in (False, True))
    error = unpacked(f4["rotating_m"]).astype(float) + f4["anchor_m"] - plain["rotating_m"]
    assert np.abs(error).max() < 2e-6
    assert np.abs(np.asarray(plain["rotating_m"], "<f4") - plain["rotating_m"]).max() > 1e-4, "what it is for"


def the_two_frames_are_one_motion(name, whole):
    angle, spin = np.array(whole["angle_rad"]), np.array(whole["spin_rad_s"])
    for motion in whole["motions"]:
        here = slice(motion["first"], motion["first"] + motion["count"])
        rotating, inertial = (np.reshape(motion[key], (-1, 3)) for key in ("rotating_m", "inertial_m"))
        turned = (rotating[:, 0] + 1j * rotating[:, 1]) * np.exp(1j * angle[here])
        assert turned == pytest.approx(inertial[:, 0] + 1j * inertial[:, 1], abs=1e-9)
        assert rotating[:, 2] == pytest.approx(inertial[:, 2], abs=0)
        velocity = np.reshape(motion["rotating_velocity_m_s"], (-1, 3))
        coriolis = -2 * spin[here, None] * np.stack([-velocity[:, 1], velocity[:, 0], 0 * velocity[:, 2]], 1)
        assert np.reshape(motion["coriolis_m_s2"], (-1, 3)) == pytest.approx(coriolis, abs=1e-9)
        centrifugal = spin[here, None] ** 2 * rotating * [1, 1, 0]
        assert np.reshape(motion["centrifugal_m_s2"], (-1, 3)) == pytest.approx(centrifugal, abs=1e-9)
        if whole["scene"]["habitat"]["shape"] not in ROUND:
            continue
        radius = SCENES[name]["habitat"]["radius_m"]
        assert radius - np.hypot(*rotating[:, :2].T) == pytest.approx(np.array(motion["height_m"]), abs=1e-9)
        assert rotating[:, 2] == pytest.approx(np.array(motion["axial_m"]), abs=0)
        place = np.exp(1j * np.array(motion["along_m"]) / radius) * (radius - np.array(motion["height_m"]))
        assert place == pytest.approx(rotating[:, 0] + 1j * rotating[:, 1], abs=1e-8 * radius)


def events_begin_with_the_release_and_rise_in_time(name, whole):
    for motion in whole["motions"]:
        events = motion["events"]
        times = [event["time_s"] for event in events]
        assert times == sorted(times)
        assert [event["kind"] for event in events].count("release") == bool(events)
        if motion["landing"] is not None:
            first = next(e for e in events if e["kind"] in ("deck", "floor"))
            assert first["surface"] == first["kind"]
            assert first["time_s"] == motion["landing"]["time_s"]
            assert motion["landing"]["drift_m"] == motion["landing"]["along_m"] - events[0]["along_m"]
        for event in events:
            assert event["speed_m_s"] == pytest.approx(math.hypot(*event["velocity_m_s"]), rel=1e-12)
            assert (event["surface"] is None) == (event["kind"] not in CONTACTS)


@each_row("name", SCENES)
def test_an_answer_is_whole_and_of_one_piece(name):
    """An answer is asked for and read once for all that is looked at in it."""
    whole = answer(SCENES[name])
    for holds in (
        every_field_is_there,
        words_of_the_contract_are_used,
        arrays_are_as_long_as_they_say,
        lists_and_f4_say_the_same,
        the_two_frames_are_one_motion,
        events_begin_with_the_release_and_rise_in_time,
    ):
        holds(name, whole)


def test_velocity_of_the_release_is_what_was_asked_for():
    (event, *_) = answer(scene(throw(9.0, 30.0, 30.0, place={"height_m": 1.5, "along_m": 100.0})))["motions"][0][
        "events"
    ]
    level = 9.0 * math.cos(math.radians(30))
    expected = [level * math.cos(math.radians(30)), 4.5, level * math.sin(math.radians(30))]
    assert event["velocity_m_s"] == pytest.approx(expected, rel=1e-12)
    assert event["incidence_deg"] is None
    assert (event["along_m"], event["height_m"]) == pytest.approx((100.0, 1.5), abs=1e-12)


def test_a_carried_thrower_adds_to_the_throw():
    carried = {"speed_m_s": 2.0, "heading_deg": 180.0}
    (event, *_) = answer(scene(throw(6.0, 0.0, 0.0, carried=carried)))["motions"][0]["events"]
    assert event["velocity_m_s"] == pytest.approx([4.0, 0.0, 0.0], abs=1e-12)


def test_the_scene_comes_back_whole():
    document = SCENES["galley"]
    back = answer(document)["scene"]
    assert read(json.dumps(back)) == read(json.dumps(document))
    assert back["air"] == {"pressure_kpa": 101.325, "temperature_c": 20.0}


def test_figures_of_the_habitat_follow_from_radius_and_spin():
    figures = answer(scene(habitat={"decks": [{"name": "Upper", "radius_m": 28.0}]}))["habitat"]
    omega = 3.0 * 2 * math.pi / 60
    assert figures["omega_rad_s"] == pytest.approx(omega, rel=1e-15)
    assert figures["deck_gravity_m_s2"] == pytest.approx(omega**2 * 56, rel=1e-14)
    assert figures["deck_gravity_g"] == pytest.approx(omega**2 * 56 / 9.80665, rel=1e-14)
    assert figures["rim_speed_m_s"] == pytest.approx(omega * 56, rel=1e-14)
    assert figures["period_s"] == pytest.approx(20.0, rel=1e-14)
    (deck,) = figures["decks"]
    assert (deck["name"], deck["radius_m"]) == ("Upper", 28.0)
    assert deck["gravity_g"] == pytest.approx(figures["deck_gravity_g"] / 2, rel=1e-14)
    assert deck["rim_speed_m_s"] == pytest.approx(figures["rim_speed_m_s"] / 2, rel=1e-14)


OMEGA, G0 = 3.0 * 2 * math.pi / 60, 9.80665
PULLED = {  # habitat -> spin's gravity at the deck, all else that pulls at a right angle to it, m/s2, and degrees from onto the deck
    "thrust": ({"axial_thrust_m_s2": 2.0}, OMEGA**2 * 56, 2.0, math.degrees(math.atan2(2.0, OMEGA**2 * 56))),
    "thrust the other way": ({"axial_thrust_m_s2": -2.0}, OMEGA**2 * 56, 2.0, math.degrees(math.atan2(2.0, OMEGA**2 * 56))),
    "thrust alone": ({"axial_thrust_m_s2": 2.0, "spin_rpm": 0}, 0.0, 2.0, 90.0),
    "a turntable": (
        {"shape": "turntable", "radius_m": 0.6, "spin_rpm": 20},
        (2 * math.pi / 3) ** 2 * 0.6, G0, math.degrees(math.atan2((2 * math.pi / 3) ** 2 * 0.6, G0)),
    ),
    "pods": (
        {"shape": "pods", "floors": [{"name": "A", "length_m": 8, "width_m": 4}], "axial_thrust_m_s2": 2.0},
        OMEGA**2 * 56, 2.0, math.degrees(math.atan2(2.0, OMEGA**2 * 56)),
    ),
    "neither": ({"spin_rpm": 0}, 0.0, 0.0, None),
    "a changing spin": ({"spin_ramp": [{"time_s": 1.0, "spin_rpm": 30.0}]}, OMEGA**2 * 56, 0.0, 0.0),
}  # fmt: skip


@each_row(("habitat", "outward", "pull", "lean"), PULLED.values())
def test_what_is_felt_on_the_deck_has_thrust_and_the_rooms_gravity_in_it(habitat, outward, pull, lean):
    document = scene(habitat=habitat)
    figures, felt = answer(document)["habitat"], math.hypot(outward, pull)
    assert figures["deck_gravity_m_s2"] == pytest.approx(outward, rel=1e-13)
    assert figures["felt_m_s2"] == pytest.approx(felt, rel=1e-13)
    assert figures["felt_g"] == pytest.approx(felt / G0, rel=1e-13)
    assert figures["felt_lean_deg"] == (None if lean is None else pytest.approx(lean, abs=1e-9))
    assert feel_answers.as_data(feel_answers.feel(read(json.dumps(document))))["figures"]["feet_g"] == pytest.approx(
        figures["felt_g"], rel=1e-13
    )


def test_what_is_felt_on_decks_and_along_floors_has_thrust_in_it():
    thrust = {"axial_thrust_m_s2": 2.0}
    (deck,) = answer(scene(habitat=thrust | {"decks": [{"name": "Upper", "radius_m": 28.0}]}))["habitat"]["decks"]
    assert deck["felt_g"] == pytest.approx(math.hypot(OMEGA**2 * 28, 2.0) / G0, rel=1e-13)
    pods = {"shape": "pods", "floors": [{"name": "A", "length_m": 8, "width_m": 4}]}
    (floor,) = answer(scene(habitat=thrust | pods))["habitat"]["floors"]
    assert floor["felt_g"] == pytest.approx(math.hypot(OMEGA**2 * 56, 2.0) / G0, rel=1e-13)
    end = floor["levels"][0]
    assert end["along_m"] == -4.0
    assert end["felt_g"] == pytest.approx(math.hypot(OMEGA**2 * 56, OMEGA**2 * 4, 2.0) / G0, rel=1e-13)
    assert end["felt_lean_deg"] == pytest.approx(
        math.degrees(math.atan2(math.hypot(OMEGA**2 * 4, 2.0), OMEGA**2 * 56)), rel=1e-12
    )


def test_without_spin_there_is_no_gravity_no_period_and_no_companion():
    whole = answer(SCENES["no spin"])
    assert whole["habitat"]["deck_gravity_g"] == 0
    assert whole["habitat"]["period_s"] is None
    assert {m["companion"]["none_because"] for m in whole["motions"]} == {"no_spin"}
    resting = whole["motions"][0]
    assert (resting["end"], resting["no_landing"]) == ("time limit", "never_meets")
    assert np.ptp(resting["rotating_m"], axis=0) == pytest.approx(0, abs=1e-12)


def test_what_starts_after_the_end_never_starts():
    for motion in answer(LATE)["motions"]:
        assert (motion["end"], motion["no_landing"], motion["count"], motion["events"]) == (
            "duration",
            "duration",
            0,
            [],
        )
        assert motion["words"] == ["The scene ends before it starts."]


def test_a_body_resting_on_the_deck_has_landed_at_its_release():
    (motion,) = answer(SCENES["lies on the deck"])["motions"]
    assert (motion["end"], motion["landing"]["time_s"], motion["landing"]["drift_m"]) == ("landed", 0.0, 0.0)
    assert motion["landing"]["incidence_deg"] is None


@each_row(("name", "surface"), [("a wall", "wall"), ("a ceiling", "ceiling"), ("a hub", "hub")])
def test_off_what_is_no_ground_it_falls_on_with_its_normal_speed_gone(name, surface):
    (motion,) = answer(SCENES[name])["motions"]
    met = next(e for e in motion["events"] if e["surface"] is not None)
    assert met["kind"] == met["surface"] == surface
    assert 0 <= met["incidence_deg"] <= 90
    part = 2 if surface == "wall" else 1
    assert met["velocity_after_m_s"][part] == pytest.approx(0.0, abs=1e-12)
    assert motion["end"] == "landed"


def test_a_number_that_is_not_finite_is_a_fault_of_ours_and_not_an_answer():
    trace = questions.trace(read(json.dumps(scene(drop()))))  # one of its own: others are shared
    trace.motions[0].track.samples.height_m[3] = np.nan
    for f4 in (False, True):
        with pytest.raises(FloatingPointError):
            answers.of_trace(trace, "si", f4)


def test_the_same_document_twice_gives_the_same_bytes():
    source = examples.example("galley")
    assert answers.of_trace(questions.trace(read(source))) == answers.of_trace(questions.trace(read(source)))


def test_bodies_traced_together_fly_as_if_alone():
    motions = [
        drop(1.2, "cup", name="a"),
        throw(name="b"),
        throw(9.0, 120.0, 60.0, "tennis ball", name="c", start_s=0.7),
    ]
    together = answer(scene(*motions))["motions"]
    for one, motion in zip(motions, together, strict=True):
        (alone,) = answer(scene(one))["motions"]
        assert motion["landing"]["time_s"] == pytest.approx(alone["landing"]["time_s"], abs=1e-6)
        assert motion["landing"]["along_m"] == pytest.approx(alone["landing"]["along_m"], abs=1e-6)


def test_no_motion_at_all_is_a_turn_of_the_habitat():
    assert answer(scene())["grid"]["count"] == 20 * 48 + 1
    assert the_refusal(scene() | {"motions": None}).field == "motions"
