"""Every answer and file bit for bit, on one machine: taken before a change, compared after it."""

import json
import multiprocessing

from pydantic_core import from_json

from . import asking, random_scenes
from .seeds import SEEDS
from .trees import differences, digest, digested

PROCESSES = 2
WISHES = 60
FILES = 3  # formats that a random scene is written in
CHOICES = (
    {},
    {"view": "inertial", "up": "Z", "unit": "cm", "fps": 29.97, "samples_per_frame": 2, "first_frame": 1},
    {"view": "inertial_flat", "origin": "release", "from_s": 0.25, "to_s": 1.5, "fps": 25, "shown_fps": 12},
)
SHOWN = 8  # differing paths of one question that are printed
CUT = 160  # characters of a value that is printed


def names():
    """The names of everything that is asked about, in order."""
    examples = [f"example {name}" for name in asking.example_documents()]
    seeded = [f"random {seed}" for seed in SEEDS] + [f"wishes {seed}" for seed in range(WISHES)]
    crafts = [f"craft {name}" for name in asking.craft_documents()]
    return ["program", *examples, *crafts, *seeded]


def taken(only=""):
    """name -> question -> its digest and, of JSON, its tree; of names that hold the text `only`."""
    wanted = [name for name in names() if only in name]
    with multiprocessing.get_context("spawn").Pool(PROCESSES) as pool:
        return dict(pool.imap(_named, wanted, chunksize=2))


def _named(name):
    return name, questions_of(name)


def questions_of(name):
    """question -> {"digest", "tree"} of one name."""
    kind, _, which = name.partition(" ")
    if kind == "program":
        return {"catalogue": _json(asking.answered(asking.catalogue)), "examples": _json(asking.examples_listed())}
    if kind == "wishes":
        return _of_wishes(json.dumps(random_scenes.wishes(int(which))))
    if kind == "craft":
        return _of_craft(asking.craft_documents()[which])
    if kind == "example":
        return _of_scene(asking.example_documents()[which], _all_files()) | _of_commands(which)
    return _of_scene(json.dumps(random_scenes.scene(int(which))), _some_files(SEEDS.index(int(which))))


def _json(data):
    return {"digest": digest(data), "tree": digested(from_json(data))}


def _of_wishes(document):
    asked = {f"size {units}": _json(asking.answered(asking.size_answer, document, units)) for units in asking.UNITS}
    return asked | {"printed size": _text(asking.printed("size", document))}


def _of_craft(document):
    asked = {f"craft {units}": _json(asking.answered(asking.craft_answer, document, units)) for units in asking.UNITS}
    return asked | {"printed craft": _text(asking.printed("craft", document))}


def _of_commands(name):
    document = asking.example_documents()[name]
    return {
        f"printed {command} {units}": _text(asking.printed(command, document, "--units", units))
        for command in ("trace", "feel")
        for units in asking.UNITS
    }


def _text(data):
    return {"digest": digest(data), "tree": {"line": data.decode().split("\n")}}


def _of_scene(document, files):
    felt = asking.answered(asking.felt, document)
    answers = {f"feel {units}": _json(asking.answered(asking.feel_answer, felt, units)) for units in asking.UNITS}
    trace = asking.answered(asking.traced, document)
    if isinstance(trace, bytes):
        return answers | {"trace": _json(trace)}
    for units in asking.UNITS:
        answers[f"trace {units}"] = _json(asking.answered(asking.trace_answer, trace, units))
    answers["trace packed"] = {"digest": digest(asking.answered(asking.trace_answer, trace, "si", True))}
    for format_name, number in files:
        choices = CHOICES[number]
        written = asking.answered(asking.exported, trace, format_name, choices)
        answer = _json(written) if format_name in asking.JSON_FORMATS else {"digest": digest(written)}
        answers[f"file {format_name}, choices {number}"] = answer
    return answers


def _all_files():
    """(format, number of the choices) of every pair that makes a file of its own."""
    return [
        (name, number)
        for name, uses in asking.FORMAT_USES.items()
        for number, choices in enumerate(CHOICES)
        if not choices or set(choices) & set(uses)
    ]


def _some_files(place):
    """The share of one random scene: the scenes together go through all pairs many times."""
    pairs = _all_files()
    return [pairs[(FILES * place + i) % len(pairs)] for i in range(FILES)]


def changes(was, only=""):
    """Lines that say what differs now from what was taken, none where nothing does; and how many digests were compared."""
    now, wanted = taken(only), {name: asked for name, asked in was.items() if only in name}
    lines, count = [], 0
    for name in [*wanted, *(n for n in now if n not in wanted)]:
        before, after = wanted.get(name, {}), now.get(name, {})
        for question in [*before, *(q for q in after if q not in before)]:
            count += 1
            lines += _change(f"{name}: {question}", before.get(question), after.get(question))
    return lines, count


def _change(title, before, after):
    if before is None or after is None:
        return [f"{title}: {'was not asked before' if before is None else 'is not asked any more'}"]
    if before["digest"] == after["digest"]:
        return []
    if not ("tree" in before and "tree" in after):
        return [f"{title}: other bytes"]
    found = list(differences(before["tree"], after["tree"]))
    lines = [f"{title}: {len(found) or 'no'} values differ" + ("" if found else ", but the order or the writing does")]
    lines += [f"    {path}: was {_cut(was)}, is {_cut(now)}" for path, was, now in found[:SHOWN]]
    return lines + ([f"    and {len(found) - SHOWN} more"] if len(found) > SHOWN else [])


def _cut(value):
    text = json.dumps(value, ensure_ascii=False)
    return text if len(text) <= CUT else text[: CUT - 1] + "…"
