"""Trace, feel, size and craft as the suite keeps them: words to the letter, numbers to the rounding of another processor."""

import json
import lzma
import math
from pathlib import Path

import numpy as np
from pydantic_core import from_json

from . import asking, random_scenes
from .exact import WISHES
from .seeds import SEEDS
from .trees import close, differences, measured

# What a last bit moves far in an example, and how far two answers may then lie apart, of the greatest number: how a rolling ball
# has turned is summed up from step to step; an apex that all moments share, a sample at the very moment a lift stops speeding
# up, or a swing that ends with the scene may fall either way. Seen with a last bit of the document changed, and without the
# processor's vector instructions (NPY_DISABLE_CPU_FEATURES="X86_V3 X86_V4").
LOOSE = {
    ("example along-the-axis", "motions.0.attitude_wxyz"): 1e-2,
    ("example along-the-axis", "motions.1.attitude_wxyz"): 1e-4,
    ("example ring", "motions.1.attitude_wxyz"): 1e-4,
    ("example garden-sphere", "motions.1.attitude_wxyz"): 1e-4,
    ("example on-the-bench", "motions.0.attitude_wxyz"): 1e-4,
    ("example on-the-bench", "motions.1.attitude_wxyz"): 1e-4,
    ("example spoke-lift", "motions.1.findings"): 1e-2,
    ("example turning-plane", "motions.0.findings"): 0.1,
    ("example turning-plane", "motions.0.words.1"): math.inf,
    ("random 21", "motions.0.apex"): math.inf,
    ("example cup-at-spin-up", "motions.0.apex"): math.inf,
    ("example rim-run", "motions.0.apex"): math.inf,
    ("example rim-run", "motions.1.apex"): math.inf,
}
FILE = Path(__file__).with_name("answers.json.xz")


def documents():
    """name -> JSON text of every document that is asked about."""
    scenes = {f"example {name}": text for name, text in asking.example_documents().items()}
    scenes |= {f"random {seed}": json.dumps(random_scenes.scene(seed)) for seed in SEEDS}
    scenes |= {f"tumble {name}": text for name, text in asking.tumble_documents().items()}
    scenes |= {f"craft {name}": text for name, text in asking.craft_documents().items()}
    return scenes | {f"wishes {seed}": json.dumps(random_scenes.wishes(seed)) for seed in range(WISHES)}


def answers_to(name, document):
    """question -> tree of one document."""
    if name.startswith("wishes"):
        return {
            f"size {units}": _measured(asking.answered(asking.size_answer, document, units)) for units in asking.UNITS
        }
    if name.startswith("craft"):
        si, us = (asking.answered(asking.craft_answer, document, units) for units in asking.UNITS)
        return {"craft": _measured(si), "craft us": texts(from_json(us))}
    worked = asking.answered(asking.felt, document)
    felt = {f"feel {units}": from_json(asking.answered(asking.feel_answer, worked, units)) for units in asking.UNITS}
    trace = asking.answered(asking.traced, document)
    if isinstance(trace, bytes):
        return {"feel": measured(felt["feel si"]), "trace": _measured(trace)}
    in_us = asking.answered(asking.trace_answer, trace, "us", True)  # packed: of all its arrays no figure is looked at
    return {
        "feel": measured(felt["feel si"]),
        "feel us": texts(felt["feel us"]),
        "trace": _measured(asking.answered(asking.trace_answer, trace, "si")),
        "trace us": texts(from_json(in_us)),
    }


def _measured(data):
    return measured(from_json(data))


def texts(answer):
    """What an answer says in whole sentences: all that other units change."""
    if isinstance(answer, dict):
        parts = {name: texts(one) for name, one in answer.items()}
        return {name: one for name, one in parts.items() if one not in (None, {}, [])}
    if isinstance(answer, list):
        if answer and isinstance(answer[0], (float, int)):
            return None
        parts = [texts(one) for one in answer]
        return parts if any(one not in (None, {}, []) for one in parts) else None
    return answer if isinstance(answer, str) and " " in answer else None


def kept():
    """name -> question -> tree, as the file has them."""
    return json.loads(lzma.decompress(FILE.read_bytes()))


def renew():
    """Write the file anew from what the program answers now; returns its size in bytes."""
    answers = {name: answers_to(name, document) for name, document in documents().items()}
    text = json.dumps(answers, ensure_ascii=False, separators=(",", ":"))
    FILE.write_bytes(lzma.compress(text.encode(), preset=9 | lzma.PRESET_EXTREME))
    return FILE.stat().st_size


def changes(name, was, now):
    """Lines that say what differs in the answers to one document: scene, question, path, was, is."""
    return [
        f"{name}: {question}: {path}: was {before!r}, is {after!r}"
        for question in dict.fromkeys([*was, *now])
        if json.dumps(was.get(question)) != json.dumps(now.get(question))  # as most are: alike to the letter
        for path, before, after in differences(was.get(question, {}), now.get(question, {}), equal=close)
        if not _may_move(name, path, before, after)
    ]


def _may_move(name, path, before, after):
    """Whether a difference is one of those that LOOSE allows."""
    room = next((room for (scene, at), room in LOOSE.items() if scene == name and f"{path}.".startswith(f"{at}.")), 0.0)
    if not room or type(before) is not type(after) or not isinstance(before, (float, list, str)):
        return False
    if isinstance(before, str):
        return room == math.inf
    before, after = np.atleast_1d(before), np.atleast_1d(after)
    return bool(np.abs(after - before).max() <= room * max(1.0, np.abs(before).max()))
