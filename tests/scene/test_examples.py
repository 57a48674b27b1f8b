"""The scenes to start from."""

import json
from pathlib import Path

import pytest

from rimfall.scene import examples
from rimfall.scene.reading import read, read_aim, read_landings, read_match
from rimfall.scene.shot import aim, landings, match
from rimfall.shots.landings import ENDINGS
from tests import drawings
from tests.scene.documents import answer
from tests.tables import each_row

FOLDER = Path(examples.__file__).parent
each = each_row("name", list(examples.SAY))


def test_every_file_is_listed_and_every_listed_one_is_a_file():
    assert {path.stem for path in FOLDER.glob("*.json")} == set(examples.SAY)


def test_the_list_has_title_sentence_question_and_drawing():
    for one in examples.listed():
        assert set(one) == {"id", "title", "say", "question", "drawing"}
        assert one["title"]
        assert one["say"].endswith(".")
    assert [one["id"] for one in examples.listed()][:2] == ["empty", examples.OPENING]
    titles = [one["title"] for one in examples.listed()]
    assert len(set(titles)) == len(titles)


def test_every_drawing_shows_what_the_program_answers_now():
    assert drawings.FILE.read_text(encoding="utf-8") == drawings.written(drawings.drawn()), "python -m tests.drawings"


@each
def test_it_reads_traces_and_comes_back_the_same(name):
    scene = read(examples.example(name))
    whole = answer(json.loads(examples.example(name)))
    assert read(json.dumps(whole["scene"])) == scene  # and so has the same answer
    assert all(motion["count"] > 10 or motion["end"] == "rest" for motion in whole["motions"])


def test_the_empty_habitat_has_nothing_in_it():
    assert read(examples.example("empty")).motions == []
    assert answer(json.loads(examples.example("empty")))["motions"] == []


def test_the_opening_scene_is_the_one_of_the_contract():
    first = json.loads(examples.example(examples.OPENING))
    assert first["title"] == "The same lob, both ways"
    scene = read(examples.example(examples.OPENING))
    assert scene.air is not None
    assert [(m.speed_m_s, m.elevation_deg, m.heading_deg, m.place.height_m) for m in scene.motions] == [
        (6.0, 35.0, 0.0, 1.5), (6.0, 35.0, 180.0, 1.5),
    ]  # fmt: skip


def test_a_steep_lob_thrown_back_lands_ahead():
    """6 m/s at 80 degrees antispinward on the 56 m, 3 rpm deck, vacuum: 0.48 m spinward (straight line, by hand)."""
    (lob,) = answer(json.loads(examples.example("steep-lob")))["motions"]
    assert lob["landing"]["drift_m"] == pytest.approx(0.482, abs=0.001)


def test_thrown_back_at_the_rim_s_speed_it_hangs_still_outside():
    (courier,) = answer(json.loads(examples.example("round-the-rim")))["motions"]
    assert courier["inertial_m"][0] == pytest.approx(courier["inertial_m"][-1], abs=1e-9)
    assert courier["along_m"][-1] == pytest.approx(-2 * 3.141592653589793 * 56, abs=1e-6)


@each_row("name", ["", "..", "../cli", "nothing", "same-lob.json", "SAME-LOB"])
def test_what_is_no_example(name):
    assert examples.example(name) is None


def test_the_pass_is_a_throw_that_arrives_in_the_runner_s_hands():
    document = json.loads(examples.example("pass-to-a-runner"))
    asked = {"scene": document, "motion": "pass", "to": {"motion": "runner"}, "within_m": 0.3}
    found = aim.find(read_aim(json.dumps(asked | {"fixed": {"speed_m_s": 12.0}, "flight_max_s": 4.0})))
    (way,) = aim.as_data(found)["ways"]
    thrown = document["motions"][0]
    assert [way["heading_deg"], way["elevation_deg"]] == pytest.approx(
        [thrown["heading_deg"], thrown["elevation_deg"]], abs=1e-6
    )
    assert way["blocked_by"] is None


def test_a_degree_more_meets_the_galley_s_ceiling():
    document = json.loads(examples.example("under-the-ceiling"))
    over = [
        {"field": "elevation_deg", "first": 42, "last": 43, "count": 2},
        {"field": "speed_m_s", "first": 12, "last": 12.5, "count": 2},
    ]
    found = landings.find(read_landings(json.dumps({"scene": document, "motion": "just under", "over": over})))
    assert [ENDINGS[k] for k in found.landings.ended] == ["landed", "ceiling", "ceiling", "ceiling"]
    first = [motion["events"][1]["kind"] for motion in answer(document)["motions"]]
    assert first == ["apex", "ceiling"]


def test_the_filmed_toss_is_a_path_that_could_be():
    document = json.loads(examples.example("filmed-toss"))
    (lamp,) = answer(document)["motions"]
    names = ("along_m", "height_m", "axial_m")
    columns = [lamp[name][: lamp["count"] : 2] for name in names]
    rows = [{"time_s": k / 24} | dict(zip(names, row, strict=True)) for k, row in enumerate(zip(*columns, strict=True))]
    known = {"radius_m": 56.0, "air": document["air"], "body": document["motions"][0]["body"]}
    asked = {"track": rows, "accuracy_m": 0.01, "known": known}
    found = match.as_data(read_match(json.dumps(asked)))
    assert found["verdict"] == "possible"
    assert found["fit"]["spin_rpm"]["low"] < 3.0 < found["fit"]["spin_rpm"]["high"]
