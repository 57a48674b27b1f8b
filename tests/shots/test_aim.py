"""Throws that arrive: found, flown by the scene's own trace, and refused where there is nothing to aim at."""

import json

import numpy as np
import pytest

import rimfall
from rimfall.errors import BadInput
from rimfall.scene.reading import read_aim
from rimfall.scene.shot import aim
from tests import aim_scan
from tests.commands import rimfall as command
from tests.tables import each_row

ACROSS_M = -2 * np.pi * 30.0 / 3  # a third of the way round, antispinward
SERVE = {
    "kind": "throw",
    "name": "serve",
    "place": {"height_m": 1.5},
    "speed_m_s": 1.0,
    "elevation_deg": 0.0,
    "body": "handball",
}
WHEEL = {"radius_m": 30.0, "spin_rpm": 4.0}


def request(fixed, to=None, habitat=WHEEL, air=None, motion=SERVE, others=(), **more):
    """An aim's document."""
    scene = {"rimfall": 1, "habitat": habitat, "air": air, "motions": [motion, *others]}
    return {
        "scene": scene,
        "motion": "serve",
        "to": to or {"along_m": ACROSS_M, "height_m": 1.4},
        "fixed": fixed,
    } | more


def answer(document, units="si"):
    """The answer, as it goes out."""
    return json.loads(aim.as_json(aim.find(read_aim(json.dumps(document))), units))


def traced(document, way):
    """The motion that adopts a way, by `trace`."""
    scene = rimfall.open_scene(document["scene"])
    adopted = {name: way[name] for name in ("speed_m_s", "heading_deg", "elevation_deg")}
    motions = [m.model_copy(update=adopted) if m.name == "serve" else m for m in scene.motions]
    dense = scene.sampling.model_copy(update={"fps": 240})
    return rimfall.trace(scene.model_copy(update={"motions": motions, "sampling": dense})).motions["serve"]


def flown_m(document, way):
    """How near the motion that adopts a way comes to the hands, by `trace`."""
    path = traced(document, way)
    k = int(np.argmin(np.abs(path.time_s - way["meets"]["time_s"])))
    near = slice(max(k - 3, 0), k + 4)
    if len(path.time_s[near]) < 4:
        return np.linalg.norm(path.rotating_m[k] - way["meets"]["rotating_m"])
    powers = [np.polyfit(path.time_s[near] - way["meets"]["time_s"], path.rotating_m[near, a], 4)[-1] for a in range(3)]
    return np.linalg.norm(np.array(powers) - way["meets"]["rotating_m"])


def test_to_a_friend_a_third_of_the_way_round():
    document = request({"speed_m_s": 10.0})
    found = answer(document)
    assert [(round(w["elevation_deg"]), round(w["flight_s"], 1), w["heading_deg"]) for w in found["ways"]] == [
        (2, 6.0, 180.0),
        (24, 9.6, 180.0),
    ]
    assert all(flown_m(document, way) < 1e-6 and way["speed_m_s"] == 10.0 for way in found["ways"])
    first, second = (text.replace("\u00a0", " ") for text in found["words"])
    assert (
        first == "Throw at 10 m/s, almost level, 2° up, antispinward: it arrives after 6.0 s; or 24° up, after 9.6 s."
    )
    assert second == "A degree too high misses by 0.91 m, a degree to the side by 1.05 m, 1 % too fast by 0.28 m."


# A throw at 12 m/s against a deck that goes by at 11.94 m/s hangs all but still while the hands come round, once in a turn of 15 s.
def test_who_comes_round_again_and_again_is_met_each_time_and_told_so():
    found = answer(request({"speed_m_s": 12.0}, {"along_m": 30.0, "height_m": 1.0}, WHEEL | {"ceiling_m": 3.0}))
    free = [way for way in found["ways"] if way["blocked_by"] is None]
    assert [round(way["flight_s"], 1) for way in free] == [12.5, 27.5, 42.4, 57.3]
    assert max(way["misses_m"] for way in free) < 1e-6
    first, *_ = (text.replace("\u00a0", " ") for text in found["words"])
    assert first.startswith(
        "Throw at 12 m/s, level, antispinward: it goes 0.84 turns that way and arrives after 12.5 s; or "
    )
    assert "after 42.4 s and 2.84 turns antispinward" in first


def test_a_flight_so_short_that_no_throw_is_fast_enough_is_told_so():
    found = answer(request({"flight_s": 1e-3}))
    assert not found["ways"]
    assert found["words"][0].endswith(
        "arrives after less than 0.01\u00a0s: it would have to be faster than 3,000\u00a0m/s."
    )
    still = answer(request({"speed_m_s": 20.0}, {"along_m": 20.0, "height_m": 1.4}, WHEEL | {"spin_rpm": 0.0}))
    assert still["words"][1].endswith("1 % too fast by next to nothing.")


# The straight line is worked out here, from where and when it is caught alone: Newton's first law in the room that does not turn.
def test_in_vacuum_a_way_is_the_straight_line():
    found = answer(request({"flight_s": 6.0}, back=True))
    omega, (hand, friend) = 4 * 2 * np.pi / 60, ((28.5, 0.0), (28.6, ACROSS_M / 30.0))
    for way, (rho, at), (far, to) in ((found["ways"][0], hand, friend), (found["back"]["ways"][0], friend, hand)):
        here = rho * np.exp(1j * at)
        there = far * np.exp(1j * (to + omega * 6.0))
        thrown = ((there - here) / 6.0 - 1j * omega * here) / (1j * np.exp(1j * at))  # spinward, less upward times i
        assert way["speed_m_s"] == pytest.approx(abs(thrown), rel=1e-12)
        assert way["elevation_deg"] == pytest.approx(np.degrees(np.arctan2(thrown.imag, abs(thrown.real))), abs=1e-9)
        assert np.cos(np.radians(way["heading_deg"])) == pytest.approx(np.sign(thrown.real))


POD = {"name": "A", "radius_m": 30.0, "azimuth_deg": 0.0, "length_m": 14.0, "width_m": 8.0, "ceiling_m": 6.0}
RAMP = [{"time_s": 1.0, "spin_rpm": 4.0}, {"time_s": 3.0, "spin_rpm": 2.0}]
SPUN = SERVE | {
    "ball_spin_rpm": 600.0,
    "ball_spin_axis": [0, 0, 1],
    "carried": {"speed_m_s": 1.5, "heading_deg": 60.0},
    "start_s": 0.5,
}
SHAPES = [
    (
        {"along_m": -5.0, "height_m": 1.4, "axial_m": 1.0},
        {"shape": "torus", "radius_m": 30.0, "spin_rpm": 4.0, "tube_radius_m": 5.0},
    ),
    ({"along_m": 5.0, "height_m": 1.4, "axial_m": -2.0}, {"shape": "sphere", "radius_m": 30.0, "spin_rpm": 4.0}),
    (
        {"along_m": -4.0, "height_m": 1.4, "axial_m": 2.0},
        {"shape": "pods", "radius_m": 30.0, "spin_rpm": 4.0, "floors": [POD]},
    ),
    ({"along_m": 2.0, "height_m": 0.3, "axial_m": 2.0}, {"shape": "turntable", "radius_m": 3.0, "spin_rpm": 15.0}),
    (
        {"along_m": -8.0, "height_m": 1.4, "axial_m": 2.0},
        WHEEL | {"spin_ramp": RAMP, "axial_thrust_m_s2": 0.5, "width_m": 20.0},
    ),
]


@pytest.mark.parametrize("air", [None, {}])
@each_row(("to", "habitat"), SHAPES)
def test_in_every_shape_what_arrives_does_when_it_is_traced(air, to, habitat):
    place = {"height_m": 1.5, "axial_m": 1.0 if habitat.get("shape") == "turntable" else 0.0}
    motion = (SERVE if habitat.get("shape") == "turntable" else SPUN) | {"place": place}
    beside = 0  # ways that only come within reach: in the torus as its flights are cut off, in the wheel where 7 m/s is just too slow
    for fixed in ({"speed_m_s": 7.0}, {"elevation_deg": 40.0}, {"flight_s": 1.2}, {"least": "speed_m_s"})[
        :: 1 if air is None else 3
    ]:
        document = request(fixed, to, habitat, air, motion, flight_max_s=3.0)
        found = answer(document)
        free = [way for way in found["ways"] if way["blocked_by"] is None]
        assert free or found["would_do"], fixed
        for way in free:
            exact = way["misses_m"] <= (1e-6 if air is None else 1e-3)
            assert exact or (air is not None and way["misses_m"] <= 0.15)
            beside += not exact
            assert flown_m(document, way) <= way["misses_m"] + (1e-6 if air is None else 1e-3)
        if "speed_m_s" in fixed:
            assert all(way["speed_m_s"] == pytest.approx(7.0, rel=1e-12) for way in free)
    assert beside == (air is not None and habitat.get("shape") in (None, "torus"))


def test_a_catcher_on_the_run_is_met_where_they_then_are():
    runner = {"kind": "walk", "name": "runner", "place": {"along_m": -12.0}, "speed_m_s": 3.0, "heading_deg": 180.0}
    document = request({"speed_m_s": 9.0}, {"motion": "runner"}, others=[runner])
    found = answer(document)
    assert found["ways"]
    assert found["target"] is None
    tracks = rimfall.trace(rimfall.open_scene(document["scene"])).motions["runner"]
    for way in (w for w in found["ways"] if w["meets"]["time_s"] < tracks.time_s[-1]):
        where = [np.interp(way["meets"]["time_s"], tracks.time_s, tracks.rotating_m[:, a]) for a in range(3)]
        assert np.linalg.norm(np.array(where) - way["meets"]["rotating_m"]) < 1e-3  # between samples
        assert flown_m(document, way) < 1e-6


def test_what_is_in_the_way_is_told_and_what_would_do():
    low = answer(request({"elevation_deg": 20.0}, habitat=WHEEL | {"ceiling_m": 2.0}))
    assert [way["blocked_by"]["kind"] for way in low["ways"]] == ["ceiling"] * 3
    assert [round(way["flight_s"], 1) for way in low["ways"]] == [2.1, 8.6, 12.8]
    assert {"says": "Do without the ceiling", "fixed": None, "set": {"habitat.ceiling_m": None}} in low["would_do"]
    slow = answer(request({"speed_m_s": 8.5}))
    assert not slow["ways"]
    assert slow["nearest"]["misses_m"] == pytest.approx(5.1, abs=0.1)
    (would,) = slow["would_do"]
    assert would["fixed"] == {"speed_m_s": 8.9}
    assert answer(request(would["fixed"]))["ways"]


def test_within_reach_is_near_enough():
    least = answer(request({"least": "speed_m_s"}))["ways"][0]["speed_m_s"]
    document = request({"speed_m_s": least - 0.01})
    (way,) = answer(document)["ways"]
    assert 0.05 < way["misses_m"] <= 0.15
    assert flown_m(document, way) <= way["misses_m"] + 1e-6
    # In vacuum the nearest throw of that speed at a flight time t is the one straight at the hands: it misses by ||W| - s t|.
    by_flight = answer(document | {"fixed": {"flight_s": way["flight_s"]}})["by_flight"]
    least_m = np.min((np.array(by_flight["speed_m_s"]) - least + 0.01) * by_flight["flight_s"])
    assert np.min(by_flight["speed_m_s"]) >= least - 1e-9
    nearest = answer(document | {"within_m": 0.01})["nearest"]
    assert 0.05 < nearest["misses_m"] <= least_m
    assert nearest["misses_m"] == pytest.approx(way["misses_m"], abs=1e-6)
    for share, count in ((1.001, 1), (0.999, 0), (0.6, 0)):
        assert len(answer(document | {"within_m": share * nearest["misses_m"]})["ways"]) == count


def test_free_throws_come_first_and_where_the_others_end_is_where_trace_has_them_end():
    document = request({"speed_m_s": 11.0}, {"along_m": -25.0, "height_m": 1.4}, WHEEL | {"ceiling_m": 6.0})
    ways = answer(document | {"flight_max_s": 30.0})["ways"]
    assert [(round(way["flight_s"], 1), way["blocked_by"] is not None) for way in ways] == [
        (2.2, False),
        (18.6, False),
        (7.4, True),
        (22.0, True),
    ]
    for way in ways[2:]:
        met = way["blocked_by"]
        event = next(event for event in traced(document, way).events if event.kind == "ceiling")
        assert met["kind"] == "ceiling"
        assert abs(met["time_s"] - event.time_s) < 1e-9
        assert np.abs(np.array(met["rotating_m"]) - event.rotating_m).max() < 1e-9
        assert way["path"]["time_s"][-1] == met["time_s"] == met["after_s"]
        assert np.abs(np.array(way["path"]["rotating_m"][-1]) - event.rotating_m).max() < 1e-9


# A straight line in the room that does not turn, and hands that go round: their least distance, looked for at 400,001 times about then.
def test_how_far_errors_miss_is_how_far_the_line_passes_the_hands():
    omega, rho = 4 * 2 * np.pi / 60, 28.5
    for way in answer(request({"speed_m_s": 10.0}))["ways"]:
        time_s = way["flight_s"] + np.linspace(-1.0, 1.0, 400_001)
        hands = 28.6 * np.exp(1j * (ACROSS_M / 30.0 + omega * time_s))
        for name, speed, higher, aside in (
            ("speed_1_percent_m", 1.01, 0.0, 0.0),
            ("elevation_1_deg_m", 1.0, 1.0, 0.0),
            ("heading_1_deg_m", 1.0, 0.0, 1.0),
        ):
            up, thrown = np.radians(way["elevation_deg"] + higher), 10.0 * speed
            level, turn = thrown * np.cos(up), np.radians(180.0 + aside)
            ball = rho + time_s * (1j * (omega * rho + level * np.cos(turn)) - thrown * np.sin(up))
            apart = np.hypot(np.abs(ball - hands), level * np.sin(turn) * time_s)
            assert way["sensitivity"][name] == pytest.approx(apart.min(), abs=1e-6)
        swept = np.angle((rho + time_s[200_000] * (1j * (omega * rho - 10.0 * np.cos(up)) - thrown * np.sin(up))) / rho)
        assert way["turns"] == pytest.approx((swept - omega * way["flight_s"]) / (2 * np.pi), abs=5e-3)


REFUSED = [
    ({"to": {"along_m": 0.0, "height_m": -1.0}}, "to.height_m"),
    ({"to": {"along_m": 0.0, "height_m": 40.0}}, "to.height_m"),
    ({"to": {"along_m": 0.0, "height_m": 1.4, "axial_m": 9.0}}, "to.axial_m"),
    ({"to": {"along_m": 0.0, "height_m": 0.0}, "within_m": 0.01}, "to.height_m"),
    ({"to": {"along_m": 0.0, "height_m": 1.4, "floor": 1}}, "to.floor"),
    ({"to": {"motion": "nobody"}}, "to.motion"),
    ({"to": {"motion": "serve"}}, "to.motion"),
    ({"within_m": 0.0}, "within_m"),
    ({"within_m": -1.0}, "within_m"),
    ({"motion": "cup"}, "motion"),
    ({"motion": "nobody"}, "motion"),
    ({"fixed": {}}, "fixed"),
    ({"fixed": {"speed_m_s": 9.0, "flight_s": 2.0}}, "fixed"),
    ({"fixed": {"speed_m_s": 0.0}}, "fixed.speed_m_s"),
    ({"fixed": {"speed_m_s": 4000.0}}, "fixed.speed_m_s"),
    ({"fixed": {"elevation_deg": 91.0}}, "fixed.elevation_deg"),
    ({"fixed": {"flight_s": 500.0}}, "fixed.flight_s"),
    ({"fixed": {"least": "time"}}, "fixed.least"),
    ({"flight_max_s": 0.0}, "flight_max_s"),
    ({"flight_max_s": 5e-324}, "flight_max_s"),
    ({"fixed": {"flight_s": 5e-324}}, "fixed.flight_s"),
    ({"back": True, "to": {"motion": "cup"}}, "back"),
    ({"from": 1}, "from"),
]


@each_row(("change", "field"), REFUSED)
def test_what_cannot_be_aimed_at_is_refused_by_name(change, field):
    cup = {"kind": "drop", "name": "cup", "place": {"height_m": 1.0}, "body": "cup"}
    with pytest.raises(BadInput) as refused:
        answer(request({"speed_m_s": 9.0}, habitat=WHEEL | {"width_m": 10.0}, others=[cup]) | change)
    assert [one.field for one in refused.value.refusals] == [field]


def test_the_command_says_it_in_words_and_a_table(tmp_path):
    scene = tmp_path / "scene.json"
    scene.write_text(json.dumps(request({"speed_m_s": 10.0})["scene"]))
    said = command("aim", scene, "--to", f"{ACROSS_M},1.4", "--speed", 10, "--back")
    assert said.returncode == 0, said.stderr
    lines = said.stdout.splitlines()
    assert lines[0].startswith("Throw at 10 m/s, almost level, 2° up, antispinward: it arrives after 6.0 s")
    assert "And back" in lines
    assert any(line.split()[:3] == ["10.000", "180.00", "2.29"] for line in lines)
    data = json.loads(command("aim", scene, "--to", f"{ACROSS_M},1.4", "--least", "speed", "--json").stdout)
    assert data["ways"][0]["speed_m_s"] == pytest.approx(8.8336, abs=1e-4)
    third = command("aim", scene, "--to", "1/3,1.4", "--speed", 10, "--save", tmp_path / "thrown.json")
    assert third.stdout.splitlines()[0].startswith("Throw at 10 m/s, 7° up, antispinward: it goes 0.67 turns that way")
    kept = json.loads((tmp_path / "thrown.json").read_text())["motions"][0]
    assert (kept["speed_m_s"], round(kept["elevation_deg"], 2)) == (10.0, 6.95)
    assert (
        "no throw to save"
        in command("aim", scene, "--to", "1/3,1.4", "--speed", 2, "--save", tmp_path / "x.json").stderr
    )
    assert "to.along_m was 1/0" in command("aim", scene, "--to", "1/0,1.4", "--speed", 2).stderr
    scene.write_text(
        json.dumps(request({}, habitat={"shape": "pods", "radius_m": 30.0, "spin_rpm": 4.0, "floors": [POD]})["scene"])
    )
    assert "does not go round" in command("aim", scene, "--to", "1/3,1.4", "--speed", 2).stderr
    scene.write_text(json.dumps(request({})["scene"]))
    assert command("aim", scene, "--to", "5", "--speed", 10).returncode == 2
    assert "to.height_m" not in command("aim", scene, "--to", "5,99", "--speed", 10).stdout


def test_from_python_it_is_the_same():
    scene = rimfall.open_scene(request({"speed_m_s": 1.0})["scene"])
    found = rimfall.aim(scene, "serve", {"along_m": ACROSS_M, "height_m": 1.4}, {"speed_m_s": 10.0})
    assert [way["flight_s"] for way in found["ways"]] == pytest.approx([6.00483, 9.61542], abs=1e-4)
    assert isinstance(found["by_flight"]["speed_m_s"], np.ndarray)


# The whole scan, 60 scenes of 200,000 throws and 20,000 in air, is `python -m tests.aim_scan`.
def test_none_is_missed_and_none_invented():
    for number, count, fixed in (
        (2, 3_000, None),
        (32, 3_000, None),
        (3, 250, None),
        (2, 2_000, "flight_s"),
        (12, 2_000, "least"),
    ):
        row = aim_scan.scan(number, count, most=1 if fixed else 2, fixed=fixed)
        assert row["free"], number
        assert not row["missed"], number
        assert not row["invented"], number
