"""What somebody has written themselves, such as a motion's name, stays as it is in every language, though it be a message by chance or have braces: a
catalogue that translates each name of a scene, in every context, as a leak. Its other messages are German."""

import json

import pytest

from rimfall import language
from rimfall.exports import craft_files
from rimfall.folders import folder
from rimfall.scene import examples
from rimfall.talk import examples as talks
from rimfall.web.asked import Asked
from rimfall.web.work import answered

TAG, LEAK = "xo", "LEAKED"
NAMES = {"name", "motion", "hidden"}  # names, and what refers to one thing by its name
TEXTS = {"title", "line", "notes", "about"}
SCENES = {each["id"]: json.loads(examples.example(each["id"])) for each in examples.listed()}
SEEN = set()
OF_ALL_KINDS = [  # scenes that have, all together, each kind of motion, shape and block of a craft
    id
    for id, document in SCENES.items()
    for has in [
        {m["kind"] for m in document["motions"]} | {document["habitat"].get("shape")} | document.get("craft", {}).keys()
    ]
    if not has <= SEEN and not SEEN.update(has)
]
TALKS = {name: json.loads(talks.example(name)) for name in talks.NAMES}
WRITTEN = (
    "notes",
    "usda",
    "plot-true-svg",
    "plot-felt-svg",
    "map-svg",
    "forces-notes",
)  # kinds of files with words that are not packed
TRACED = {"arrays": "f4", "units": "si", "hold": None, "held": None, "follower": None}


def own(document):
    """The document with names and texts of one's own, and those."""
    mine = {}

    def renamed(part, key=""):
        if isinstance(part, dict):
            return {name: renamed(value, name) for name, value in part.items()}
        if isinstance(part, list):
            return [renamed(one, key) for one in part]
        if isinstance(part, str) and part and key in NAMES | TEXTS:
            return mine.setdefault(part, f"My {len(mine)} {{who}} {{0}}}}{{")
        return part

    return renamed(document), list(mine.values())


@pytest.fixture
def leaking(tmp_path, monkeypatch):
    """leaking(texts): lets the catalogue translate them."""

    def leak(texts):
        german = json.loads((folder("static") / "vendor/language/de.json").read_text(encoding="utf-8"))
        contexts = {key.partition(language.CONTEXT)[0] for key in german["messages"] if language.CONTEXT in key}
        keys = [*texts, *(f"{context}{language.CONTEXT}{text}" for context in contexts for text in texts)]
        # the same braces, so that nothing else keeps it from being told
        messages = german["messages"] | {key: f"{LEAK} {key.rpartition(language.CONTEXT)[2]}" for key in keys}
        made = german | {"language": TAG, "messages": messages}
        (tmp_path / f"{TAG}.json").write_text(json.dumps(made), encoding="utf-8")
        monkeypatch.setenv(language.TRIED_OUT, str(tmp_path))
        with language.speaking(TAG):
            assert all(language.tr(text).startswith(LEAK) for text in texts)

    return leak


def ask(what, document, status=200, **options):
    answer = answered(Asked(what, json.dumps(document).encode(), options, 60.0, language=TAG), None, lambda: False)
    assert answer.status == status, answer.body[:500]
    assert LEAK.encode() not in answer.body, answer.body[max(answer.body.find(LEAK.encode()) - 200, 0) :][:400]
    return answer.body


@pytest.mark.parametrize("id", OF_ALL_KINDS)
def test_names_of_a_scene_stay_as_they_are_in_every_answer(id, leaking):
    document, texts = own(SCENES[id])
    leaking(texts)
    told = json.loads(ask("trace", document, **TRACED))
    assert [motion["name"] for motion in told["motions"]] == [motion["name"] for motion in document["motions"]]
    ask("feel", document, units="si")
    if "craft" in document:
        ask("craft", document, units="us", width=800, drawing_width=None)
        for name in craft_files.FORMATS.keys() - ({"tumble"} - document["craft"].keys()):
            ask("craft_file", document, name=name, units="si")


@pytest.mark.parametrize("id", OF_ALL_KINDS[::4])
def test_names_of_a_scene_stay_as_they_are_in_every_file(id, leaking):
    document, texts = own(SCENES[id])
    leaking(texts)
    for name in WRITTEN:
        ask("export", {"scene": document, "export": {}}, name=name, packed=False)


@pytest.mark.parametrize("name", TALKS)
def test_texts_of_a_talk_stay_as_they_are(name, leaking):
    document, texts = own(TALKS[name])
    leaking(texts)
    told = json.loads(ask("talk", document))
    assert [told["title"], told["steps"][0]["line"]] == [document["title"], document["steps"][0]["line"]]


def test_names_in_refusals_stay_as_they_are(leaking):
    """Such as the only name that there is, which is all that a field may be."""
    leaking(["Mine", "Other"])
    thrown = {"kind": "throw", "name": "Mine", "place": {"height_m": 1.6}, "speed_m_s": 5, "body": "handball"}
    scene = {"rimfall": 1, "title": "Mine", "habitat": {"radius_m": 56, "spin_rpm": 3}, "motions": [thrown]}
    over = [{"field": name, "first": 1, "last": 2, "count": 3} for name in ("speed_m_s", "elevation_deg")]
    aim = {"scene": scene, "motion": "Mine", "to": {"along_m": 3}, "fixed": {"speed_m_s": 8}}
    for document in (
        scene | {"motions": [thrown, thrown]},
        scene | {"motions": [thrown | {"body": "Other"}]},
        scene | {"motions": [thrown | {"Other": 1}]},
        scene | {"title": "Mine" * 60},
    ):
        refused = ask("trace", document, 422, **TRACED)
        assert b"Mine" in refused or b"Other" in refused
    for wrong in ({"motion": "Other"}, {"to": "Other"}, {"to": {"motion": "Other"}}, {"to": {"motion": "Mine"}}):
        ask("aim", aim | wrong, 422, units="si", arrays="f4")
    ask("landings", {"scene": scene, "motion": "Other", "over": over}, 422, units="si", arrays="f4", width=None)
    ask("export", {"scene": scene, "export": {"motions": ["Other"]}}, 422, name="notes", packed=False)
    for wrong in ({"ask": {"motion": "Other"}}, {"hidden": ["Other"]}, {"Other": 1}):
        ask("talk", {"rimfall_talk": 1, "title": "Mine", "steps": [{"scene": scene, "line": "Mine"} | wrong]}, 422)
