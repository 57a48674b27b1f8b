"""The work limit, and what is held while the other dial moves."""

import json
import math
import sys

import pytest

from rimfall.errors import BadInput, TooMuch
from rimfall.motions import flight
from rimfall.scene.checks import followed
from rimfall.scene.questions import GREATEST_SAMPLES, GREATEST_SAMPLES_IN_LISTS
from rimfall.scene.reading import read
from tests.scene.documents import POINT, answer, drop, scene, throw, traced
from tests.tables import each_row

STILL = {"spin_rpm": 0}  # nothing lands: every motion lasts to its limit, 60 s


def test_a_scene_may_have_half_a_million_samples():
    motions = [drop(1.2, POINT) for _ in range(8)]
    document = scene(*motions, habitat=STILL, air=None, sampling={"fps": 240, "duration_s": 60})
    assert len(traced(document).motions) == 8  # 8 x 14,401
    with pytest.raises(TooMuch) as caught:
        traced(document, greatest_samples=100_000)
    (refusal,) = caught.value.refusals
    assert (refusal.field, refusal.was) == ("motions.6", "drop 7")
    assert "100,000 samples" in refusal.may_be
    assert "sampling.duration_s" in refusal.say
    assert "sampling.fps" in refusal.say


def test_the_limit_is_exact():
    document = scene(drop(1.2, POINT), drop(1.2, POINT), habitat=STILL, air=None, sampling={"fps": 50})
    assert traced(document, greatest_samples=6002)
    with pytest.raises(TooMuch):
        traced(document, greatest_samples=6001)


def test_a_late_start_counts_as_the_grid_it_needs():
    with pytest.raises(TooMuch) as caught:
        traced(scene(throw(start_s=3600.0), sampling={"fps": 240}))
    assert caught.value.refusals[0].field == "motions.0"


def test_lists_may_be_two_fifths_of_what_f4_may():
    assert (GREATEST_SAMPLES, GREATEST_SAMPLES_IN_LISTS) == (500_000, 200_000)


def test_an_early_end_brings_a_scene_back_under_the_limit():
    motions = [drop(1.2, POINT) for _ in range(40)]
    long = scene(*motions, habitat=STILL, air=None, sampling={"fps": 240})
    with pytest.raises(TooMuch):
        traced(long)
    assert traced(long | {"sampling": {"fps": 240, "duration_s": 40}})


@each_row("hold", ["gravity", "felt", "rim_speed"])
@each_row("follower", ["habitat.spin_rpm", "habitat.radius_m"])
def test_what_is_held_stays_and_only_the_follower_moves(hold, follower):
    figure = {"gravity": "deck_gravity_m_s2", "felt": "felt_m_s2", "rim_speed": "rim_speed_m_s"}[hold]
    before = read(json.dumps(scene(throw(), habitat={"radius_m": 80.0, "axial_thrust_m_s2": 2.0})))
    after = followed(before, hold, 7.0, follower)
    assert answer(json.loads(after.model_dump_json()))["habitat"][figure] == pytest.approx(7.0, rel=1e-12)
    unchanged = {"habitat.spin_rpm": "radius_m", "habitat.radius_m": "spin_rpm"}[follower]
    assert getattr(after.habitat, unchanged) == getattr(before.habitat, unchanged)
    assert after.motions == before.motions


@each_row(
    ("hold", "held", "follower", "habitat", "field"),
    [
        ("gravity", 1e6, "habitat.spin_rpm", {}, "habitat.spin_rpm"),
        ("gravity", 1e6, "habitat.radius_m", {}, "habitat.radius_m"),
        ("rim_speed", 1e-3, "habitat.radius_m", {"spin_rpm": 100.0}, "habitat.radius_m"),
        ("gravity", 5.0, "habitat.radius_m", {"spin_rpm": 0}, "habitat.spin_rpm"),
        ("rim_speed", 5001.0, "habitat.spin_rpm", {"radius_m": 5000.0}, "habitat.spin_rpm"),
        ("felt", 2.0, "habitat.spin_rpm", {"axial_thrust_m_s2": 2.0}, "habitat.spin_rpm"),
        ("felt", 9.0, "habitat.radius_m", {"shape": "turntable", "radius_m": 2.0}, "habitat.radius_m"),
    ],
)
def test_a_follower_out_of_its_range_is_refused_by_name(hold, held, follower, habitat, field):
    with pytest.raises(BadInput) as caught:
        followed(read(json.dumps(scene(habitat=habitat))), hold, held, follower)
    assert [r.field for r in caught.value.refusals] == [field]


@each_row("follower", ["spin_rpm", "radius_m"])
def test_gravity_is_held_in_a_second_habitat_alone(follower):
    home = {"radius_m": 112.0, "spin_rpm": 2.0, "decks": [{"name": "Court", "radius_m": 112.0}]}
    before = read(json.dumps(scene(throw(), compare=[{"name": "Second", "habitat": home}])))
    after = followed(before, "gravity", 7.0, f"compare.0.habitat.{follower}")
    answered = answer(json.loads(after.model_dump_json()))
    assert answered["compare"][0]["habitat"]["deck_gravity_m_s2"] == pytest.approx(7.0, rel=1e-12)
    assert after.habitat == before.habitat
    second = after.compare[0].habitat
    assert second.decks[0].radius_m == pytest.approx(second.radius_m)
    with pytest.raises(BadInput, match=r"There is no compare\.1\.habitat; there are habitat, compare\.0\.habitat"):
        followed(before, "gravity", 7.0, f"compare.1.habitat.{follower}")
    with pytest.raises(BadInput) as caught:
        followed(before, "gravity", 1e6, f"compare.0.habitat.{follower}")
    assert [r.field for r in caught.value.refusals] == [f"compare.0.habitat.{follower}"]


def test_decks_go_with_a_radius_that_follows():
    """Each at its height over the deck; 4 m up there is no place in 2.8 m, so the second keeps 52/56 of it there."""
    decks = [{"name": "Court", "radius_m": 56.0}, {"name": "Galley", "radius_m": 52.0}]
    before = read(json.dumps(scene(habitat={"radius_m": 56.0, "decks": decks})))
    for radius_m, radii in ((30.0, [30.0, 26.0]), (2.8, [2.8, 2.6])):
        speed = radius_m * before.habitat.spin_rpm * 2 * math.pi / 60
        after = followed(before, "rim_speed", speed, "habitat.radius_m")
        assert [deck.radius_m for deck in after.habitat.decks] == pytest.approx(radii, rel=1e-11)


def test_a_radius_that_follows_must_still_hold_what_is_in_it():
    scene_ = read(json.dumps(scene(drop(50.0))))
    with pytest.raises(BadInput) as caught:
        followed(scene_, "rim_speed", 10.0, "habitat.radius_m")
    assert caught.value.refusals[0].field == "motions.0.place.height_m"


def test_progress_is_told_and_can_stop_the_work():
    class Enough(Exception):
        pass

    progress = []

    def watch(done, of):
        progress.append((done, of))
        if len(progress) == 2:
            raise Enough

    with pytest.raises(Enough):
        traced(scene(throw(), throw(), throw()), watch=watch)
    assert all(0 <= done <= of for done, of in progress)


def test_a_flight_that_would_take_too_long_is_refused_by_the_motion_s_name(monkeypatch):
    monkeypatch.setattr(flight, "MOST_STEPS", 2)
    with pytest.raises(TooMuch) as caught:
        traced(
            scene(
                throw(name="balloon", speed_m_s=60.0, elevation_deg=80.0), habitat={"radius_m": 900.0, "spin_rpm": 1.0}
            )
        )
    (refusal,) = caught.value.refusals
    assert refusal.field == "motions.0.body"
    assert "balloon" in refusal.say


LEAST = sys.float_info.min  # the least number of full precision


@each_row(
    "document",
    [
        scene(throw(speed_m_s=LEAST / 2, elevation_deg=-90.0), habitat=STILL, air=None),
        scene(
            {"kind": "jump", "centre_m": 0.5},
            habitat={"shape": "turntable", "radius_m": 10.0, "spin_rpm": 0.0, "outside_gravity_m_s2": LEAST},
            sampling={"duration_s": 1.0},
        ),
    ],
)
def test_next_to_no_speed_and_next_to_no_pull_are_as_none(document):
    (motion,) = traced(document).motions
    assert motion.track.end in ("time limit", "duration")
