"""Scenes drawn at random, every kind and shape among them: each number in their words has to be one of the answer's figures."""

import json

from rimfall.errors import Refused
from rimfall.scene import answers, questions
from rimfall.scene.reading import read
from tests.frozen import random_scenes

from . import truth
from .tokens import tokens

UNITS = ("si", "us")


def false_numbers(document):
    """(what a motion says, the number in it that is none of its figures) of a scene in both systems of units; and how many were right."""
    scene = questions.trace(read(json.dumps(document)))
    wrong, right = [], 0
    for units in UNITS:
        answer = json.loads(answers.of_trace(scene, units))
        rate = answer["grid"]["fps"][0] / answer["grid"]["fps"][1] * answer["grid"]["samples_per_frame"]
        for number, motion in enumerate(answer["motions"]):
            motion["_grid"] = rate
            figures = truth.figures_of(answer["scene"], motion, number)
            for sentence in (*motion["words"], motion["in_short"]):
                for token in tokens(sentence):
                    if any(_is(token, figure) for figure in figures):
                        right += 1
                    else:
                        wrong.append((motion["kind"], sentence, token.text, token.cue))
    return wrong, right


def _is(token, figure):
    cue = "of there" if token.of_there else token.cue
    if token.after.lstrip().startswith((f"{token.side} by the nearest way",)) and token.side:
        cue = "the nearest way"
    if figure.cues is not None and cue not in figure.cues:
        return False
    if token.measure != figure.measure or (token.side != figure.side and (token.side or figure.side)):
        return False
    return token.shows(figure.value)


def of_seed(seed):
    """false_numbers of a random scene; None for one that is refused, as some are made to be."""
    try:
        return false_numbers(random_scenes.scene(seed))
    except Refused:
        return None
