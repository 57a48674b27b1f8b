"""What is asked for while a dial moves: paths, events and landings as ever, and nothing that was not asked for is worked out."""

import json

import pytest

from rimfall.motions import drift
from rimfall.scene import answers, examples, prose, questions
from rimfall.scene.reading import read
from rimfall.web.work import WORK

TOLD = {"in_short", "prose", "words", "assumptions", "pieces", "within_reach"}
CAUSES = {"drift_parts_m", "drift_parts_none"}


def answer(name, parts):
    return json.loads(answers.of_trace(questions.trace(read(examples.example(name)), parts=parts), f4=True))


def without_words(one):
    """A habitat's part of a whole answer as it is without what is told."""
    kept = {key: value for key, value in one.items() if key != "prose"}
    return kept | {"motions": [_bare(motion) for motion in one["motions"]]}


def _bare(motion):
    bare = {key: value for key, value in motion.items() if key not in TOLD}
    if bare["landing"] is not None:
        bare["landing"] = {key: value for key, value in bare["landing"].items() if key not in CAUSES}
    return bare


@pytest.mark.parametrize("name", ["two-wheels", "pass-to-a-runner"])
def test_paths_alone_are_those_of_the_whole_answer(name):
    whole = answer(name, "all")
    assert set(whole["motions"][0]) > TOLD
    assert set(whole["motions"][0]["landing"]) > CAUSES
    bare = without_words(whole) | {"compare": [without_words(one) for one in whole["compare"]]}
    assert answer(name, "paths") == bare
    assert answer(name, "own_paths") == {key: value for key, value in bare.items() if key != "compare"}


def test_what_is_left_out_is_not_worked_out(monkeypatch):
    def never(*_):
        raise AssertionError("this was not asked for")

    for module, name in (
        (drift, "parts_of_all"),
        (questions, "_reached"),
        (prose, "of_motion"),
        (prose, "of_scene"),
        (answers, "outcome"),
    ):
        monkeypatch.setattr(module, name, never)
    assert answer("same-lob", "paths")["motions"][0]["landing"]["time_s"] > 0


def test_what_it_is_drawn_from_comes_with_it_where_that_is_asked():
    body = examples.example("wheel-and-keel").encode()
    asked = {"arrays": "f4", "units": "si", "hold": None, "held": None, "follower": None, "parts": "paths"}
    with_it = json.loads(WORK["trace"](body, None, **asked, drawn="1").body)
    assert with_it.pop("drawn") == json.loads(WORK["mesh"](body, None).body)
    assert with_it == json.loads(WORK["trace"](body, None, **asked).body)
