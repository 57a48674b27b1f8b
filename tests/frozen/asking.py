"""The program as it is asked here, and the one place that knows where its parts are: documents in, bytes out.

A refusal is an answer, and so is a fault: a change must be named, not stop the others from being looked at.
"""

import contextlib
import io
import json
import tempfile
from pathlib import Path

from rimfall.cli import main as cli
from rimfall.comfort.published import STUDIES
from rimfall.comfort.quantities import QUANTITIES
from rimfall.errors import Refused
from rimfall.exports.formats import FORMATS
from rimfall.exports.options import read_options
from rimfall.physics.bodies import NAMED_BODIES
from rimfall.physics.liquids import LIQUIDS
from rimfall.scene import answers, examples, questions
from rimfall.scene.craft import answers as craft_answers
from rimfall.scene.craft import examples as crafts
from rimfall.scene.document import MOTIONS
from rimfall.scene.feel import answers as feel_answers
from rimfall.scene.feel.answers import feel
from rimfall.scene.questions import GREATEST_SAMPLES_IN_LISTS
from rimfall.scene.reading import read, read_craft, read_feel, read_size
from rimfall.scene.size import answers as size_answers
from rimfall.shapes import SHAPES
from rimfall.web.work import WORK

UNITS = ("si", "us")
# What the scenes drawn at random have; beside a tumble nothing moves but drops and throws, so that it has documents of its own.
KIND_NAMES, SHAPE_NAMES = tuple(name for name in MOTIONS if name != "tumble"), tuple(SHAPES)
BODY_NAMES = tuple(b.name for b in NAMED_BODIES if b.body.diameter_m < 0.5)
LIQUID_NAMES = tuple(x.name for x in LIQUIDS)
QUANTITY_NAMES, STUDY_NAMES = tuple(QUANTITIES), tuple(STUDIES)
FORMAT_USES = {f.name: f.uses for f in FORMATS.values()}
JSON_FORMATS = tuple(f.name for f in FORMATS.values() if f.media_type == "application/json")


def example_documents():
    """name -> JSON text of each example."""
    return {name: examples.example(name) for name in examples.SAY}


def tumble_documents():
    """name -> JSON text of scenes whose craft tumbles."""
    wheel, air = {"radius_m": 56.0, "spin_rpm": 3.0, "width_m": 14.0}, {"pressure_kpa": 60.0}
    floor = {"length_m": 12.0, "width_m": 10.0, "ceiling_m": 4.0}
    bow = {"shape": "tumbler", "radius_m": 30.0, "spin_rpm": 4.0, "floors": [floor]}
    tug = {"parts": json.loads(crafts.example("long-tumbler"))["parts"], "rimfall_craft": 1}
    tossed = {
        "kind": "throw",
        "place": {"height_m": 1.5},
        "speed_m_s": 4.0,
        "heading_deg": 160.0,
        "elevation_deg": 40.0,
    }
    inside = [tossed | {"body": "handball"}, {"kind": "drop", "place": {"height_m": 1.2}, "body": "cup"}]
    scenes = {
        "free": {"habitat": wheel, "motions": [{"kind": "tumble", "about_x_rpm": 0.4}, *inside], "air": None},
        "losing": {
            "habitat": wheel | {"radius_m": 3.5, "spin_rpm": 9.0},
            "motions": [{"kind": "tumble", "about_y_rpm": 0.05, "losses_s": 8.0}],
            "craft": tug,
        },
        "floor": {"habitat": bow, "motions": [{"kind": "tumble", "about_x_rpm": 0.5}, *inside], "air": air},
    }
    return {name: json.dumps({"rimfall": 1, "sampling": {"duration_s": 20.0}} | one) for name, one in scenes.items()}


def craft_documents():
    """name -> JSON text of each craft to start from."""
    return {name: crafts.example(name) for name in crafts.SAY}


def answered(ask, *arguments):
    """What ask(*arguments) gives, bytes; a refusal or a fault as JSON bytes."""
    try:
        return ask(*arguments)
    except Refused as refused:
        return _as_json({"refusal": type(refused).__name__, "status": refused.status, **refused.as_dict()})
    except Exception as fault:  # noqa: BLE001 - a fault that was not there before is named like any change
        return _as_json({"fault": f"{type(fault).__name__}: {fault}"})


def _as_json(data):
    return json.dumps(data, ensure_ascii=False).encode()


def traced(document):
    """The trace of a scene's JSON text, for `trace_answer` and `exported`. Raises Refused."""
    return questions.trace(read(document), GREATEST_SAMPLES_IN_LISTS)


def trace_answer(trace, units="si", packed=False):
    """The answer to a trace, JSON bytes; packed: arrays as base64 float32."""
    return answers.of_trace(trace, units, packed)


def felt(document):
    """What people would feel in a scene, for `feel_answer`. Raises Refused."""
    return feel(read_feel(document))


def feel_answer(felt, units="si"):
    """The answer to what is felt, JSON bytes; a refusal, which is bytes, is its own."""
    return felt if isinstance(felt, bytes) else feel_answers.as_json(felt, units)


def size_answer(document, units="si"):
    """The habitat for a document of wishes, JSON bytes."""
    return size_answers.as_json(read_size(document), units)


def craft_answer(document, units="si"):
    """Whether a craft would cope, JSON bytes."""
    return craft_answers.as_json(read_craft(document), units)


def exported(trace, name, choices):
    """A trace as a file of the format `name`, bytes."""
    return FORMATS[name].write(trace, read_options(choices, trace.scene))


def catalogue():
    """Every field, body, liquid and format as the page is told of them, JSON bytes."""
    return WORK["fields"]().body


def examples_listed():
    """The examples as the page lists them, JSON bytes."""
    return _as_json(examples.listed())


def printed(command, document, *options):
    """What a command prints of a document, bytes."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "document.json"
        path.write_text(document, "utf-8")
        out = io.TextIOWrapper(io.BytesIO(), "utf-8", write_through=True)
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(out):
            code = cli.main([command, str(path), *options])
    return out.buffer.getvalue() + f"exit code {code}\n".encode()
