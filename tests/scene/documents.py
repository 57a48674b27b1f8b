"""Small scene documents for tests, and what the program makes of them."""

import base64
import copy
import functools
import json

import numpy as np

from rimfall.errors import Refused
from rimfall.scene import answers, examples, questions
from rimfall.scene.reading import read

POINT = {"mass_kg": 1.0, "diameter_m": 0.0}
BALL = {"mass_kg": 0.45, "diameter_m": 0.18, "drag": "sphere"}
WHEEL = {"radius_m": 56.0, "spin_rpm": 3.0}
_traced_anew = questions.trace  # a test may put `trace_of` in its place


def drop(height_m=1.2, body="cup", **more):
    """A drop, `more` laid over it."""
    return {"kind": "drop", "place": {"height_m": height_m}, "body": body} | more


def throw(speed_m_s=6.0, heading_deg=0.0, elevation_deg=35.0, body="handball", **more):
    """A throw from 1.5 m."""
    aim = {"speed_m_s": speed_m_s, "heading_deg": heading_deg, "elevation_deg": elevation_deg}
    return {"kind": "throw", "place": {"height_m": 1.5}, "body": body} | aim | more


def pour(flow_ml_s=30.0, lip_diameter_mm=8.0, duration_s=2.0, **more):
    """Water poured level spinward from 1.1 m."""
    part = {"flow_ml_s": flow_ml_s, "lip_diameter_mm": lip_diameter_mm, "duration_s": duration_s, "liquid": "water"}
    return {"kind": "pour", "place": {"height_m": 1.1}} | part | more


def scene(*motions, habitat=None, **more):
    """A document of these motions in the 56 m wheel; `habitat` is laid over it, `more` over the document."""
    return {"rimfall": 1, "habitat": WHEEL | (habitat or {}), "motions": list(motions)} | more


def changed(document, path, value):
    """A copy with one field set: "motions.0.place.height_m"; parts that are left out are made on the way."""
    document = copy.deepcopy(document)
    *parents, last = [int(p) if p.isdigit() else p for p in path.split(".")]
    part = document
    for parent in parents:
        part = part[parent] if isinstance(parent, int) else part.setdefault(parent, {})
    part[last] = value
    return document


def trace_of(document):
    """The Trace of a Scene, worked out once by each process of a test run: many tests ask for the same, most for the examples."""
    text = document.model_dump_json()
    return _trace_of_example(text) if text in _examples() else _trace(text)


@functools.cache
def _examples():
    return {read(examples.example(name)).model_dump_json() for name in examples.SAY}


@functools.lru_cache(maxsize=100)
def _trace(text):
    return _traced_anew(read(text))


_trace_of_example = functools.cache(_trace.__wrapped__)


def traced(document, **more):
    """The Trace of a document; with `more` for the tracing, worked out anew."""
    whole = read(json.dumps(document))
    return questions.trace(whole, **more) if more else trace_of(whole)


def forget_traces():
    """For a test of what comes out the same twice: the next Trace, but of an example, is worked out anew."""
    _trace.cache_clear()


def answer(document, units="si", f4=False):
    """What a client gets for it, parsed."""
    return json.loads(answers.of_trace(traced(document), units, f4), parse_constant=_not_finite)


def _not_finite(name):
    raise AssertionError(f"{name} in an answer")


def refusals(document, ask=read):
    """What is refused of a document (data, text or bytes)."""
    source = document if isinstance(document, str | bytes) else json.dumps(document)
    try:
        ask(source)
    except Refused as error:
        return error.refusals
    raise AssertionError("the document was accepted")


def the_refusal(document, ask=read):
    """The one thing refused."""
    all_wrong = refusals(document, ask)
    assert len(all_wrong) == 1, all_wrong
    return all_wrong[0]


def unpacked(packed):
    """An array as `?arrays=f4` sends it -> float32 numpy array."""
    assert set(packed) == {"shape", "f4"}
    return np.frombuffer(base64.b64decode(packed["f4"], validate=True), "<f4").reshape(packed["shape"])
