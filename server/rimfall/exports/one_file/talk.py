"""A talk as a file that plays by itself: the answer of every scene of its steps once, and some on the way from step to step."""

import json
from itertools import pairwise

from pydantic_core import to_json

from ... import __version__
from ...errors import Refused, TooMuch, refusal
from ...language import tr, tr_later, written
from ...phrases import caution
from ...scene.feel.answers import as_json as felt_json
from ...scene.feel.answers import feel
from ...scene.questions import trace
from ...scene.reading import read, read_feel
from .answers import answers_of, fields
from .page import packed, page_of

GREATEST_BYTES = 20_000_000
LIGHT_BYTES = 4_000_000  # of a file, as long as fewer answers on the way make it so light
ON_THE_WAY = (15, 7, 0)  # answers between two steps whose dials differ, the most first
ABOUT = tr_later("A talk about motion in a turning habitat: one file that plays by itself.")
_FELT = 4  # the place where people are weighed


def talk_file(talk, watch=None):
    """The HTML file of a talk (a `talk.resolving.GivenTalk`), bytes; watch(done, of) is told how far it is. Raises BadInput where the page
    was not built, and TooMuch, naming the step."""
    scenes, numbers = {}, []
    for step in talk.steps:
        numbers.append(scenes.setdefault(step.scene.model_dump_json(), len(scenes)))
    stations = [read(document) for document in scenes]
    moves = _moves(stations, numbers)
    of = len(stations) + ON_THE_WAY[0] * len(moves)
    traced = [_traced(one, numbers.index(k)) for k, one in enumerate(_counted(stations, watch, 0, of))]
    between = _between(stations, moves, watch, len(stations), of)
    notes = {
        "program": f"Rimfall {__version__}",
        "title": talk.title,
        "talk": talk.as_data(),
        "caution": caution(),
    }
    for most in ON_THE_WAY:
        shown = _shown(talk, numbers, traced, _thinned(between, most))
        file = page_of(talk.title or tr("Untitled talk"), talk.about or tr(ABOUT), notes, packed(shown))
        if len(file) <= LIGHT_BYTES:
            return file
    if len(file) > GREATEST_BYTES:
        say = tr(
            "The talk as one file takes {bytes} bytes; it may take {most}. What would fit: fewer steps, or lighter scenes.",
            bytes=written(len(file), ","),
            most=written(GREATEST_BYTES, ","),
        )
        was, may_be = tr("{bytes} bytes", bytes=len(file)), tr("at most {most}", most=GREATEST_BYTES)
        raise TooMuch(refusal("steps", was, may_be, say))
    return file


def _shown(talk, numbers, traced, between):
    """JSON bytes of what the script reads: `scenes`, of each step the number of its answer; `moves`, the answers on the way from one number
    to another; `felt`, of each step what people feel, where it shows that."""
    traces, moves = list(traced), []
    for (from_, to), way in between.items():
        moves.append({"from": from_, "to": to, "answers": [len(traces) + k for k in range(len(way))]})
        traces += way
    felt = {
        numbers[k]: json.loads(felt_json(feel(read_feel(one.scene.model_dump_json())), "si"))
        for k, one in enumerate(talk.steps)
        if one.step.place == _FELT
    }
    return b'{"fields": %b, "scenes": %b, "moves": %b, "felt": %b, %b}' % (
        to_json(fields()),
        to_json(numbers),
        to_json(moves),
        to_json(felt),
        answers_of(traces),
    )


def _counted(things, watch, first, of):
    for k, thing in enumerate(things):
        if watch:
            watch(first + k, of)
        yield thing


def _traced(scene, step):
    """The Trace of a step's scene. Raises Refused, naming the step."""
    try:
        return trace(scene, parts="paths")
    except Refused as refused:
        raise type(refused)(
            *(
                refusal(
                    f"steps.{step}.scene.{one.field}",
                    one.was,
                    one.may_be,
                    tr("Step {number}: {what}", number=step + 1, what=one.say),
                )
                for one in refused.refusals
            )
        ) from None


def _moves(scenes, numbers):
    """(from, to) of the scenes that follow one another and differ in radius and spin alone, as the page moves its dials between them."""
    pairs = dict.fromkeys((min(pair), max(pair)) for pair in pairwise(numbers))
    return [(a, b) for a, b in pairs if a != b and _without_dials(scenes[a]) == _without_dials(scenes[b])]


def _without_dials(scene):
    document = scene.model_dump(mode="json")
    document["habitat"] |= {"radius_m": None, "spin_rpm": None}
    return document


def _between(scenes, moves, watch, done, of):
    """{(from, to): Traces of scenes on the way}, none of a way that leads through what cannot be."""
    found = {}
    for move in moves:
        ways = _counted(_way(*(scenes[k] for k in move)), watch, done, of)
        try:
            found[move] = [trace(one, parts="own_paths") for one in ways]
        except Refused:
            found[move] = []
        done += ON_THE_WAY[0]
    return found


def _way(first, last):
    """Scenes from one to another; a radius goes by ratios, as the page moves it, and both slowly at either end."""
    habitats = [one.habitat for one in (first, last)]
    (r0, w0), (r1, w1) = ((one.radius_m, one.spin_rpm) for one in habitats)
    document = first.model_dump(mode="json")
    for k in range(1, ON_THE_WAY[0] + 1):
        u = k / (ON_THE_WAY[0] + 1)
        eased = u * u * (3 - 2 * u)
        document["habitat"] |= {"radius_m": r0 * (r1 / r0) ** eased, "spin_rpm": w0 + (w1 - w0) * eased}
        yield read(json.dumps(document))


def _thinned(between, most):
    """As many of each way as may be: every one, every other, or none."""
    every = ON_THE_WAY[0] + 1
    step = every // (most + 1)
    return {move: way[step - 1 :: step] if most else [] for move, way in between.items()}
