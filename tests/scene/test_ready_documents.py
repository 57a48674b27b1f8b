"""Scenes, craft and talks that come with the program are in the language that is spoken, and the same in everything that is no word: what
one reads is another's title, what is worked out of it is the same to the last digit."""

import json
import re
from itertools import chain

import numpy as np
import pytest

from rimfall.language import speaking
from rimfall.language.documents import NAMES, SHOWN
from rimfall.phrases import caution, caution_about_people
from rimfall.scene import examples
from rimfall.scene.craft import examples as craft
from rimfall.scene.craft.scenes import for_scenes
from rimfall.scene.questions import trace
from rimfall.scene.reading import read
from rimfall.talk import examples as talks
from rimfall.talk.reading import read as read_talk

FIGURE = re.compile(r"\d+(?:[.,]\d+)*")
THERE = [(examples, name) for name in examples.SAY] + [(craft, name) for name in craft.SAY]
TALKS = [(talks, name) for name in talks.NAMES]


def in_both(ready, name):
    """The document in English, and in German."""
    with speaking("de"):
        german = ready.example(name)
    return json.loads(ready.example(name)), json.loads(german)


def pairs(english, german, key=""):
    """(key, value, the same in the other language) of all that is not a list or a dict, which are of the same length in both."""
    if isinstance(english, dict):
        assert english.keys() == german.keys()
        for one in english:
            yield from pairs(english[one], german[one], one)
    elif isinstance(english, list):
        assert len(english) == len(german)
        for one, other in zip(english, german, strict=True):
            yield from pairs(one, other, key)
    else:
        yield key, english, german


@pytest.mark.parametrize(("ready", "name"), THERE + TALKS)
def test_a_document_is_translated_in_its_words_and_the_same_in_everything_else(ready, name):
    english, german = in_both(ready, name)
    assert english["title"] != german["title"]
    for key, one, other in pairs(english, german):
        if key in SHOWN and one:
            assert one != other
            figures = [figure.replace(",", ".") for figure in FIGURE.findall(other)]
            assert sorted(figures) == sorted(FIGURE.findall(one)), other
        elif key not in NAMES:
            assert one == other


@pytest.mark.parametrize("name", examples.SAY)
def test_a_scene_in_german_moves_as_in_english(name):
    english, german = (trace(read(json.dumps(one)), parts="own_paths") for one in in_both(examples, name))
    names = [one.motion.name for one in german.motions]
    assert len(set(names)) == len(names)
    for one, other in zip(english.motions, german.motions, strict=True):
        assert np.array_equal(one.track.samples.inertial_m, other.track.samples.inertial_m, equal_nan=True)
        assert one.track.end == other.track.end
        assert [event.time_s for event in one.track.events] == [event.time_s for event in other.track.events]


@pytest.mark.parametrize("name", talks.NAMES)
def test_a_talk_in_german_can_be_given_and_asks_after_motions_by_their_names_there(name):
    english, german = (read_talk(json.dumps(one)) for one in in_both(talks, name))
    asked = 0
    for one, other in zip(english.steps, german.steps, strict=True):
        names = {a.name: b.name for a, b in zip(one.scene.motions, other.scene.motions, strict=True)}
        assert [names[hidden] for hidden in one.step.hidden] == other.step.hidden
        if one.step.ask:
            asked += 1
            assert names[one.step.ask.motion] == other.step.ask.motion != one.step.ask.motion
    assert asked


def test_the_cautions_of_a_talk_are_those_of_the_program_in_either_language():
    _, german = in_both(talks, "how-big-must-a-wheel-be")
    with speaking("de"):
        of_all, about_people = caution(), caution_about_people()
    assert of_all in german["about"]
    assert sum(about_people in step["notes"] for step in german["steps"]) == 3


def test_lists_of_what_comes_with_the_program_are_in_the_language_that_is_spoken():
    english = examples.listed(), talks.listed(), for_scenes()
    with speaking("de"):
        german = examples.listed(), talks.listed(), for_scenes()
    for one, other in zip(chain(*english), chain(*german), strict=True):
        assert one["id"] == other["id"]
        assert one["title"] != other["title"]
        assert one.get("say") is None or one["say"] != other["say"]
        assert one.get("question") is None or one["question"] != other["question"]
    assert english == (examples.listed(), talks.listed(), for_scenes())
