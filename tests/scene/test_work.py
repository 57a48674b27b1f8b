"""Bounded work: scenes that would run for minutes are refused by name, at the same step on every machine, within their memory."""

import json
import subprocess
import sys

import numpy as np
import pytest
from pydantic_core import to_json

from rimfall.exports.formats import FORMATS
from rimfall.exports.options import read_options
from rimfall.kinds import KINDS
from rimfall.physics.budget import Budget, Stopped, TooMuchWork, spending
from rimfall.scene import answers, json_arrays, questions
from rimfall.scene.json_arrays import as_lists, with_arrays
from rimfall.scene.reading import read
from rimfall.scene.work import bounded
from tests.commands import rimfall
from tests.scene.documents import drop, pour, scene, throw
from tests.tables import each_row

BALL = {"mass_kg": 0.5, "diameter_m": 0.05, "restitution": 1.0, "friction": 0}
LOW = {"ceiling_m": 2.2, "width_m": 3.0}  # a corridor: something is met every few hundredths of a second


def read_scene(document):
    return read(json.dumps(document))


def bouncing(count=10):
    """Balls that lose nothing, in a corridor: 1,000 rebounds each."""
    return [throw(100.0, 60.0, 30.0, body=BALL, bounces=1000, name=f"ball {i}") for i in range(count)]


def hanging(count=10):
    """Pendulums let go near the top, that swing some 500 times a minute."""
    hang = {
        "kind": "hang",
        "place": {"height_m": 3.0},
        "length_m": 0.05,
        "first_angle_deg": 170,
        "body": "steel ball 20 mm",
    }
    return [{**hang, "name": f"lamp {i}"} for i in range(count)]


def scattered(count, **more):
    return [pour(30, 2, 2.0, jitter=0.5, name=f"pour {i}", **more) for i in range(count)]


CREEPING = {
    "kind": "roll", "name": "marble", "speed_m_s": 2.3, "heading_deg": 10,
    "body": {"mass_kg": 0.05, "diameter_m": 0.06, "restitution": 0.9, "friction": 0.01, "rolling_resistance": 0, "shell": "solid"},
}  # fmt: skip
MINUTE = {"duration_s": 60}
# At thrice the spin and thrice the speed the same comes about three times as often in a minute.
CREEPING_OFTEN = scene({**CREEPING, "speed_m_s": 6.9}, habitat={"spin_rpm": 9.0}, air=None, sampling=MINUTE)


@each_row(
    ("document", "steps", "names", "helps"),
    [
        (scene(*bouncing(), habitat=LOW), 60, "ball", "fewer bounces (bounces)"),
        (scene(*hanging(), sampling=MINUTE), 300, "lamp 0", "a longer line (length_m)"),
        (scene(*scattered(3, place={"height_m": 1.1})), 8, "pour 0", "a wider lip (lip_diameter_mm)"),
        (CREEPING_OFTEN, 300, "marble", "a shorter clock (sampling.duration_s)"),
        (scene(throw(body="soap bubble", name="bubble")), 40, "bubble", "a shorter clock (sampling.duration_s)"),
    ],
)
def test_a_counted_budget_ends_a_slow_scene_at_the_same_step_with_its_name_and_what_would_fit(
    document, steps, names, helps
):
    told = []
    for _ in range(2):
        with spending(Budget(steps=steps)) as budget, pytest.raises(TooMuchWork) as caught:
            questions.trace(read_scene(document))
        (refusal,) = caught.value.refusals
        told.append(refusal)
        assert steps < budget.used.steps <= steps + 8
    assert told[0] == told[1]
    assert refusal.field.startswith("motions.")
    assert names in refusal.say
    assert helps in refusal.say
    assert refusal.was == f"{budget.used.steps:,} steps"
    assert refusal.may_be == f"within {steps:,} steps for the whole scene"


def test_what_one_motion_used_most_of_is_told_of_that_motion():
    document = scene(throw(), drop(1.0), *hanging(1), sampling=MINUTE, compare=[])
    with spending(Budget(steps=500)), pytest.raises(TooMuchWork) as caught:
        questions.trace(read_scene(document))
    (refusal,) = caught.value.refusals
    assert refusal.field == "motions.2"
    assert "Motion lamp 0 took 501 steps." in refusal.say


def test_what_creeps_at_the_edge_of_its_grip_comes_to_an_end():
    """Its slip hovered near the errors of the steps, and the scene was refused after 4,000 of them, seconds of work."""
    with spending(Budget(steps=2_000)):
        (marble,) = questions.trace(read_scene(scene(CREEPING, air=None, sampling=MINUTE))).motions
    assert marble.track.ends_s == 60.0
    assert {"slip", "grip"} <= {e.kind for e in marble.track.events}


def test_a_parcel_of_a_pour_is_not_taken_for_a_motion():
    """Most was used before, and the pour has thousands of parcels under way."""
    document = read_scene(scene(throw(), pour(30, 2, 2.0, name="tea", jitter=0.5)))
    with spending(Budget(steps=105)) as budget:
        budget.spend(steps=100)
        with pytest.raises(TooMuchWork) as caught:
            questions.trace(document)
    assert caught.value.refusals[0].field == "motions.1"


@each_row(
    "document",
    [scene(*bouncing(2), habitat=LOW), scene(*hanging(1), sampling=MINUTE), scene(CREEPING, sampling=MINUTE)],
)
def test_whoever_leaves_stops_the_work(document):
    looks = []

    def stopped():
        looks.append(True)
        return len(looks) == 3

    with pytest.raises(Stopped):
        bounded(questions.trace, read_scene(document), stopped=stopped)
    assert len(looks) == 3


def test_samples_are_counted_while_the_balls_fly_and_not_after():
    with spending(Budget()) as budget, pytest.raises(questions.TooMuch):
        questions.trace(read_scene(scene(*bouncing(), habitat=LOW)), greatest_samples=2_000)
    assert 0 < budget.used.steps < 200


def test_a_late_start_on_a_fine_grid_is_refused_before_anything_is_worked_out(monkeypatch):
    late = read_scene(scene(throw(start_s=3600.0), sampling={"fps": 240}))
    monkeypatch.setitem(KINDS, "throw", None)  # nothing can be asked of it
    with pytest.raises(questions.TooMuch):
        questions.trace(late)


def test_more_drops_than_memory_can_hold_are_refused_before_any_falls():
    many = [pour(300, 2, 4.5, jitter=0.2, elevation_deg=-10.0, name=f"hose {i}") for i in range(90)]
    with pytest.raises(TooMuchWork) as caught:
        bounded(questions.trace, read_scene(scene(*many)))
    (refusal,) = caught.value.refusals
    assert caught.value.used.steps == 0
    assert "needs at least" in refusal.say
    assert "a wider lip (lip_diameter_mm)" in refusal.say


def test_the_least_that_a_pour_takes_is_less_than_what_it_takes():
    document = read_scene(scene(pour(30, 4, 2.0, jitter=0.5, elevation_deg=-20.0)))
    trace = questions.trace(document)
    (one,) = trace.motions
    least = KINDS["pour"].least_bytes(trace.setting, one.motion)
    assert 0 < least < one.plan.stream.batch.paths.nbytes


def test_an_export_past_its_memory_names_the_motion_and_what_would_fit():
    document = read_scene(scene(throw(name="lob"), drop(1.0)))
    trace = questions.trace(document)
    for name in ("csv", "json", "glb", "usda"):
        options = read_options({"fps": 240}, document)
        with spending(Budget(bytes=20_000)), pytest.raises(TooMuchWork) as caught:
            FORMATS[name].write(trace, options)
        (refusal,) = caught.value.refusals
        assert refusal.field == "export"
        assert "lob" in refusal.say
        assert "fewer frames per second (fps)" in refusal.say


_PEAK = """
import json, resource, sys
from rimfall.errors import Refused
from rimfall.scene import answers, questions
from rimfall.scene.reading import read
from rimfall.scene.work import bounded
def peak_mb(): return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
questions.trace(read(json.dumps({"rimfall": 1, "habitat": {"radius_m": 56, "spin_rpm": 3}, "motions": []})))
before, said = peak_mb(), []
for document in json.load(sys.stdin):
    try:
        bounded(lambda: answers.of_trace(questions.trace(read(json.dumps(document)))), most_bytes=25_000_000)
    except Refused as refused:
        said.append(refused.refusals[0].may_be)
print(json.dumps([said, peak_mb() - before]))
"""


def test_memory_stays_near_what_is_counted():
    """The two scenes that took most, against a bound that they pass in a second or two: what is in passing is of one motion."""
    documents = [scene(*bouncing(100), habitat=LOW), scene(*scattered(100, place={"height_m": 0.3}))]
    done = subprocess.run([sys.executable, "-c", _PEAK], input=to_json(documents), capture_output=True, check=True)
    said, grown_mb = json.loads(done.stdout)
    assert said == ["within 25 MB for the whole scene"] * 2
    assert grown_mb < 25 + 50


@each_row("shape", [(0,), (0, 3), (3,), (34, 3), (101,), (35, 2, 3)])
def test_long_arrays_are_written_as_they_would_be_in_one_go(shape, monkeypatch):
    monkeypatch.setattr(json_arrays, "_AT_ONCE", 100)
    array = np.random.default_rng(1).standard_normal(shape)
    assert as_lists(array) == to_json(array.tolist())
    content = {"a": array, "b": [1, {"c": lambda: array}]}
    plain = {"a": array.tolist(), "b": [1, {"c": array.tolist()}]}
    assert with_arrays(content, as_lists) == to_json(plain)


def test_a_command_is_bounded_in_seconds_where_they_are_given(tmp_path):
    file = tmp_path / "scene.json"
    file.write_bytes(to_json(scene(*hanging(2), sampling=MINUTE)))
    refused = rimfall("trace", file, "--max-seconds", "0.05")
    assert refused.returncode == 2
    assert "may use 0.05 s" in refused.stderr
    assert "above 0" in rimfall("trace", file, "--max-seconds", "0").stderr


def test_an_answer_is_whole_under_a_budget():
    document = read_scene(scene(throw(), drop(1.0)))
    assert bounded(lambda: answers.of_trace(questions.trace(document)), seconds=60.0) == answers.of_trace(
        questions.trace(document)
    )
