"""What motions do is said in the language that is spoken: of a language whose every message is marked nothing else is left, and in German the
numbers of the English sentences stand in German signs."""

import json
import re
from collections import Counter

import pytest

from rimfall.errors import Refused
from rimfall.kinds import KINDS
from rimfall.kinds.words import surface_words, the, the_at
from rimfall.language import speaking
from rimfall.scene.catalogue import catalogue
from rimfall.scene.questions import trace
from rimfall.scene.reading import read
from tests import pseudo
from tests.frozen import random_scenes
from tests.scene.documents import drop, scene, the_refusal, traced
from tests.tables import each_row

pytestmark = pytest.mark.usefixtures("marked")
MARKED = pseudo.LEFT_TO_RIGHT
SURFACES = ("deck", "floor", "turntable", "ceiling", "hub", "hull", "ramp", "table", "wall", "edge")
FIGURE = re.compile(r"\d[\d.,]*\d|\d")


def traced_drop():
    return traced(scene(drop())).motions[0]


def texts_of(answered):
    """Everything that is said of the motions of a trace."""
    for one in answered.motions:
        for units in ("si", "us"):
            yield from (*one.outcome(units), one.in_short(units))
        yield from one.assumptions(answered.setting)


def test_nothing_that_is_said_of_a_motion_is_left_in_english():
    said, kinds, refused = 0, set(), 0
    for seed in range(100):
        with speaking(MARKED):
            try:
                answered = trace(read(json.dumps(random_scenes.scene(seed))))
            except Refused as error:
                refused += 1
                for one in error.refusals:
                    assert pseudo.outside(one.say) == "", one.say
                continue
            for text in texts_of(answered):
                assert re.sub(r"[.; ]", "", pseudo.outside(text)) == "", text
                said += 1
            kinds |= {one.kind.name for one in answered.motions}
    assert (said > 400, refused > 20) == (True, True)
    assert kinds == set(KINDS) - {"tumble"}  # a craft let go is told alone


def test_german_sentences_have_the_numbers_of_the_english_ones():
    compared = 0
    for seed in range(40):
        try:
            english = list(texts_of(trace(read(json.dumps(random_scenes.scene(seed))))))
        except Refused:
            continue
        with speaking("de"):
            german = list(texts_of(trace(read(json.dumps(random_scenes.scene(seed))))))
        signs = str.maketrans(",.", ".,")
        for one, other in zip(english, german, strict=True):
            assert one != other or not re.search("[a-z]{4}", one), one
            figures = Counter(figure.translate(signs) for figure in FIGURE.findall(one))
            assert figures == Counter(FIGURE.findall(other)), (one, other)
            compared += 1
    assert compared > 300


@each_row("surface", SURFACES)
def test_a_surface_has_its_article_in_each_case_that_german_bends_it(surface):
    dropped = traced_drop()
    assert the(dropped, surface) == the_at(dropped, surface) == surface_words(surface)
    with speaking("de"):
        met, at = the(dropped, surface), the_at(dropped, surface)
    assert met.partition(" ")[0] in ("das", "den", "die", "eine")
    assert at.partition(" ")[0] == {"das": "dem", "den": "dem", "die": "der", "eine": "einer"}[met.partition(" ")[0]]
    assert met.partition(" ")[2] == at.partition(" ")[2]


def test_what_is_told_once_is_told_again_in_another_language():
    dropped = traced_drop()
    english = dropped.outcome()
    with speaking("de"):
        german = dropped.outcome()
    assert english != german
    assert dropped.outcome() == english


def test_what_the_page_needs_of_a_kind_is_told_in_the_language_that_is_spoken():
    with speaking(MARKED):
        kinds = catalogue()["kinds"]
    english = {kind: [word for word in words_of(told) if pseudo.outside(word)] for kind, told in kinds.items()}
    assert english == {kind: [] for kind in KINDS}


def words_of(told):
    """The words that the page is told of a kind, but for its sentence."""
    words = [told[name] for name in ("group", "add", "short", "title", "one", "many")]
    words += [*told["carried"], *told["events"].values(), *filter(None, told["rows"].values())]
    words += [text for finding in told["findings"] for text in (finding["say"], finding["term"])]
    return words + [text for entry in told["terms"].items() for text in entry]


def test_what_a_field_may_be_names_what_a_document_may_have_in_every_language():
    with speaking("de"):
        refused = the_refusal(scene(drop() | {"kind": "fall"}))
    assert [name for name in KINDS if not re.search(rf"\b{name}\b", refused.may_be)] == []
