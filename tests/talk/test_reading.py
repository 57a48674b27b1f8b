"""A talk is read as it stands: each step's scene from the one before, changes by the paths of `rimfall vary`, and every fault by its name."""

import json
import re
from dataclasses import asdict
from pathlib import Path

import pytest

from rimfall.errors import BadInput, TooMuch
from rimfall.exports.camera_presets import PRESETS
from rimfall.scene import examples
from rimfall.scene.reading import read as read_scene
from rimfall.sweep.grid import grid_of
from rimfall.sweep.parameters import parameter_of
from rimfall.talk import resolving
from rimfall.talk.document import LETTERS, Step
from rimfall.talk.reading import read
from tests.tables import each_row

GALLEY = examples.example("galley")
LOB = "same-lob"


def talk(*steps, **more):
    return json.dumps({"rimfall_talk": 1, "title": "A talk", "steps": steps} | more)


def steps_of(*steps):
    return read(talk(*steps)).as_data()["steps"]


def refused(*steps):
    with pytest.raises(BadInput) as caught:
        read(talk(*steps))
    return [asdict(one) for one in caught.value.refusals]


def test_a_step_without_a_scene_has_that_of_the_step_before_as_changed():
    one, two, three, four = steps_of(
        {"scene": LOB},
        {"change": {"habitat.spin_rpm": 6, "motions.Lob out.speed_m_s": 4.5}},
        {"change": {"motions.1.elevation_deg": 60}},
        {"scene": json.loads(GALLEY)},
    )
    assert one["scene"] == json.loads(read_scene(examples.example(LOB)).model_dump_json())
    expected = one["scene"] | {"habitat": one["scene"]["habitat"] | {"spin_rpm": 6}}
    expected["motions"] = [one["scene"]["motions"][0] | {"speed_m_s": 4.5}, one["scene"]["motions"][1]]
    assert two["scene"] == expected
    expected["motions"][1] = expected["motions"][1] | {"elevation_deg": 60}
    assert three["scene"] == expected
    assert four["scene"] == json.loads(read_scene(GALLEY).model_dump_json())


def test_a_change_is_what_varying_the_same_path_gives():
    scene, path = read_scene(GALLEY), "motions.serve.body.mass_kg"
    varied = grid_of(scene, [parameter_of(path, [0.3])]).scene(1)
    assert steps_of({"scene": "galley", "change": {path: 0.3}})[0]["scene"] == json.loads(varied.model_dump_json())


def test_what_is_left_out_is_filled_in_and_what_comes_of_it_is_a_talk_too():
    source = talk(
        {"scene": LOB},
        {"change": {"habitat.radius_m": 80}, "seats": {"aboard": {"position_m": [1, 2, 3], "target_m": [0, 0, 0]}}},
    )
    whole = read(source).as_data()
    assert {name: value for name, value in whole["steps"][0].items() if name != "scene"} == {
        "change": {}, "line": "", "notes": "", "place": 2, "show": "both", "merged": False, "swapped": False,
        "seats": {"aboard": "b", "outside": "d"}, "hidden": [], "companion": True, "companion_outside": False, "dimensions": True,
        "arrows": ["velocity", "centrifugal", "coriolis"], "from_s": 0, "until_s": None, "pace": 1, "plays": True, "ask": None,
    }  # fmt: skip
    assert whole["steps"][1]["seats"]["aboard"] == {
        "position_m": [1, 2, 3], "target_m": [0, 0, 0], "up": [0, 1, 0], "vertical_fov_deg": 30,
    }  # fmt: skip
    assert read(json.dumps(whole)).as_data() == whole
    assert steps_of({"scene": "into-a-flat-spin"})[0]["seats"] == {"aboard": "b", "outside": "b"}


def test_the_letters_of_seats_are_those_of_the_cameras_of_files():
    assert set(LETTERS) == {preset.seat for preset in PRESETS.values()}


@each_row(
    ("step", "field", "says"),
    [
        ({"pace": 0.3}, "pace", "Pace was 0.3; it must be 1, 0.5, 0.25 or 0.1."),
        ({"pace": True}, "pace", "Pace was true;"),
        ({"place": 3}, "place", "Place was 3; it must be 2 or 4 or 5 or 6."),
        ({"seats": {"outside": "z"}}, "seats.outside", 'Seat outside was "z"; it must be a, b, c, d, e or w, a camera'),
        ({"seats": {"aboard": {"position_m": [1, 2, 3]}}}, "seats.aboard.target_m", "Looks at is missing;"),
        ({"seats": {"aboard": {"position_m": [0, 0, 1], "target_m": [0, 0, 0], "fov": 3}}}, "seats.aboard.fov", "is unknown;"),
        ({"scene": "gally"}, "scene", 'Scene was "gally"; it must be the name of a scene to start from (empty, same-lob,'),
        ({"scene": 7}, "scene", "Scene was 7; it must be a scene document, the name"),
        ({"scene": {"rimfall": 1, "motions": []}}, "scene.habitat", "habitat is missing;"),
        ({"scene": json.loads(GALLEY) | {"rimfall": 2}}, "scene.rimfall", "Document version was 2; it must be 1."),
        ({"change": {"habitat.spin_rpm": 400}}, "change.habitat.spin_rpm", "Spin was 400 rpm; it must be 0 to 200 rpm."),
        ({"change": {"habitat.spun": 4}}, "change.habitat.spun", "habitat has no spun; there may be radius_m, spin_rpm,"),
        ({"change": {"motions.tea.speed_m_s.x": 4}}, "change.motions.tea.speed_m_s.x", "has no speed_m_s; there may be"),
        ({"change": {"motions.cup.speed": 4}}, "change.motions.cup.speed", "motions.cup has no speed;"),
        ({"change": {"motions.cups.start_s": 4}}, "change.motions.cups.start_s", "motions has no cups; there is cup, serve, tea."),
        ({"change": {"motions.serve.body": {"mass_kg": -1, "diameter_m": 0.1}}}, "change.motions.serve.body.mass_kg", "Mass was -1 kg;"),
        ({"change": {"habitat.radius_m": 1}}, "change.habitat.ceiling_m", "Ceiling was 4 m; it must be above 0, below 1 m"),
        ({"change": {"habitat": {}, "habitat.spin_rpm": 3}}, "change.habitat.spin_rpm", "habitat.spin_rpm and habitat set the same"),
        ({"change": []}, "change", "Change was []; it must be paths of the scene and their values, in braces."),
        ({"hidden": ["cup", "ball"]}, "hidden.1", 'Hidden motion was "ball"; it must be the name of a motion of the step\'s scene (cup,'),
        ({"ask": {"motion": "ball"}}, "ask.motion", 'Motion was "ball"; it must be the name of a motion'),
        ({"ask": {"motion": "serve", "until_s": 3}, "until_s": 2}, "ask.until_s", "Stands still at was 3 s; it must be 0 to 2 s,"),
        ({"ask": {"motion": "serve"}, "from_s": 1}, "ask.until_s", "Stands still at was 0 s; it must be 1 to 4,200 s,"),
        ({"from_s": 2, "until_s": 1}, "until_s", "Pause point was 1 s; it must be at least 2 s, from which the step begins, or null."),
        ({"until_s": 9000}, "until_s", "Pause point was 9000 s; it must be 0 to 4,200 s, or null."),
        ({"line": "x" * 161}, "line", "it must be text of at most 160 characters."),
        ({"notes": "x" * 4001}, "notes", "it must be text of at most 4000 characters."),
        ({"arrows": ["gravity"]}, "arrows.0", 'Arrows was "gravity"; it must be velocity, centrifugal or coriolis.'),
        ({"merged": 1}, "merged", "Merged was 1; it must be true or false."),
        ({"lines": ""}, "lines", "Field steps.1.lines is unknown; steps.1 may hold arrows, ask, change,"),
    ],
)  # fmt: skip
def test_what_is_wrong_with_a_step_is_refused_by_name(step, field, says):
    one = refused({"scene": "galley"}, step)[0]
    assert one["field"] == f"steps.1.{field}"
    assert one["say"].startswith("Step 2: ")
    assert says in one["say"]


def test_every_fault_of_fields_is_told_at_once():
    faults = refused({"scene": "galley", "pace": 2}, {"from_s": -1}, 7)
    assert [one["field"] for one in faults] == ["steps.0.pace", "steps.1.from_s", "steps.2"]


@each_row(
    ("source", "field", "says"),
    [
        ("[]", "document", "document was []; it must be an object in braces."),
        ("{", "document", "The document is not JSON at line 1"),
        (talk(), "steps", "Steps was []; it must be a list of 1 to 200."),
        (talk(*[{"scene": "galley"}] * 201), "steps", "it must be a list of 1 to 200."),
        (talk({}), "steps.0.scene", "Step 1: Scene is missing; it must be a scene document or the name of a scene to start from: there is no step"),
        (talk({"scene": "galley"}, rimfall_talk=2), "rimfall_talk", "Version of the talk was 2; it must be 1."),
        (talk({"scene": "galley"}, more=1), "more", "the document may hold about, rimfall_talk, steps, title."),
        ('{"rimfall_talk": 1, "steps": [{"scene": "galley"}]}', "title", "Title is missing; it must be text of at most 200 characters."),
        ('{"rimfall_talk": 1, "title": "", "steps": [{"line": "a", "line": "b"}]}', "line", "is there twice in one pair of braces"),
    ],
)  # fmt: skip
def test_what_is_wrong_with_a_talk_is_refused_by_name(source, field, says):
    with pytest.raises(BadInput) as caught:
        read(source)
    (one,) = caught.value.refusals
    assert one.field == field
    assert says in one.say


def test_a_talk_of_too_many_bytes_is_refused_as_it_is_and_as_it_would_become(monkeypatch):
    with pytest.raises(TooMuch) as caught:
        read(talk({"scene": "galley", "notes": ""}, about=" " * 1_000_000))
    assert caught.value.status == 413
    each = len(read_scene(GALLEY).model_dump_json())
    monkeypatch.setattr(resolving, "GREATEST_BYTES", 3 * each)
    assert len(steps_of({"scene": "galley"}, {}, {})) == 3
    with pytest.raises(TooMuch) as caught:
        read(talk({"scene": "galley"}, {}, {}, {}, {}))
    (one,) = caught.value.refusals
    assert (caught.value.status, one.field) == (422, "steps")
    assert (
        f"The scenes of the talk's first 4 steps have {4 * each:,} bytes, written out; all of them may have {3 * each:,} bytes."
        == one.say
    )


def test_the_readme_s_talk_is_one_and_its_table_names_every_field_of_a_step():
    readme = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
    section = readme[readme.index("## Give a talk") : readme.index("## Take it away")]
    document = re.search(r"```json\n(.*?)```", section, re.DOTALL)[1]
    assert len(read(document).steps) == len(json.loads(document)["steps"])
    named = {
        name for row in re.findall(r"^\| (`.*?) \|", section, re.MULTILINE) for name in re.findall(r"`(\w+)`", row)
    }
    assert named == set(Step.model_fields)
