"""`rimfall feel` and `rimfall size`: what people would feel, and the smallest habitat that meets some wishes."""

import json
import math
import sys
from pathlib import Path

from ..errors import BadInput, refusal
from ..exports import limits_sheet
from ..exports.options import read_options
from ..exports.writing import write_all
from ..scene import questions
from ..scene.feel import answers as feel_answers
from ..scene.feel.questions import feel
from ..scene.reading import read_feel, read_size
from ..scene.size import answers as size_answers
from ..scene.size.request import CALLED, STUDY_NAMES
from . import export_options, feel_text

DONE = 0
_MAPS = {".svg": limits_sheet.map_svg, ".pdf": limits_sheet.map_pdf}
_SIZE_EXAMPLES = "Such as: rimfall size --exactly gravity=0.9 --most spin=2; or: --study cramer_1985 --most radius=60"


def add_to(commands):
    """Add both commands to argparse's sub-parsers."""
    felt = commands.add_parser("feel", help="say what people would feel, beside every published limit")
    felt.add_argument(
        "scene", metavar="SCENE.json", help="a scene document, of which the habitat will do; - reads standard input"
    )
    felt.add_argument("--height", metavar="M", help="how tall the person is, metres, whatever the document says")
    felt.add_argument("--map", metavar="FILE", help="write the map of limits, .svg or .pdf")
    _answers(felt)
    felt.set_defaults(run=_feel)
    size = commands.add_parser("size", help="find the smallest habitat that meets some wishes", epilog=_SIZE_EXAMPLES)
    size.add_argument("request", metavar="WISHES.json", nargs="?", help="wishes and a person; - reads standard input")
    for option, bound in (("--exactly", "exactly"), ("--least", "at_least"), ("--most", "at_most")):
        size.add_argument(
            option,
            metavar="NAME=VALUE",
            action="append",
            default=[],
            help=f"a wish for {bound.replace('_', ' ')} that: gravity (g), spin (rpm), gradient (%%), rim_speed (m/s), head_turn "
            "(rad/s²), coriolis, radius (m)",
        )
    size.add_argument(
        "--study",
        metavar="ID",
        action="append",
        default=[],
        help=f"a published study to keep to: {', '.join(STUDY_NAMES)}",
    )
    size.add_argument("--height", metavar="M", help="how tall the person is, metres")
    _answers(size)
    size.set_defaults(run=_size)


def _answers(parser):
    parser.add_argument("--json", action="store_true", help="print the whole answer as JSON")
    parser.add_argument("--units", choices=("si", "us"), default="si", help="units of the words (default: %(default)s)")


def _feel(chosen):
    scene = read_feel(_with_height(export_options.source(chosen.scene), chosen.height))
    if chosen.map:
        _write_map(Path(chosen.map), scene)
    felt = feel(scene)
    if chosen.json:
        _print_json(feel_answers.of_feel(felt, chosen.units))
    else:
        _print(feel_text.as_text(felt, chosen.units))
    return DONE


def _write_map(path, scene):
    """The map of limits as a file, whole or not at all."""
    if path.suffix.lower() not in _MAPS:
        say = f"The map's file was {path.name}; its name may end in {' or '.join(_MAPS)}."
        raise BadInput(refusal("map", path.name, " or ".join(_MAPS), say))
    still = questions.trace(scene.model_copy(update={"motions": [], "compare": []}))
    write_all({path: _MAPS[path.suffix.lower()](still, read_options({}, still.scene))})


def _size(chosen):
    request = read_size(_size_request(chosen))
    if chosen.json:
        _print_json(size_answers.of_size(request, chosen.units))
        return DONE
    told = size_answers.as_data(request, chosen.units)
    _print([*told["words"], *told["assumptions"], told["caution"]])
    return DONE


def _size_request(chosen):
    """The request's document: that of the file, with the wishes of the options after its own."""
    document = {} if chosen.request is None else _object(export_options.source(chosen.request), read_size)
    wishes = [{"kind": "study", "study": _study(name)} for name in chosen.study]
    for bound, given in (("exactly", chosen.exactly), ("at_least", chosen.least), ("at_most", chosen.most)):
        wishes += [_wish(bound, text) for text in given]
    own = document.get("wishes", [])
    if isinstance(own, list):  # whatever else it is, its reader refuses it by name
        document["wishes"] = [*own, *wishes]
    return _with_height(json.dumps(document), chosen.height)


def _with_height(source, height):
    """A document for a person of that height, where one was given."""
    if height is None:
        return source
    document = _object(source, read_feel)
    person = document.get("person", {})
    if isinstance(person, dict):
        document["person"] = {**person, "height_m": _number("height", height)}
    return json.dumps(document)


def _object(source, read):
    """What a file holds, a JSON object; anything else is refused as all documents are, by `read`."""
    try:
        document = json.loads(source)
    except (ValueError, RecursionError):
        document = None
    if not isinstance(document, dict):
        read(source)
    return document


def _study(name):
    """A study's id from its id, or from its name and year as the program prints them."""
    return CALLED.get(name.lower(), name)


def _wish(bound, text):
    name, equals, value = text.partition("=")
    if not equals:
        say = f"The wish was {text}; it may be NAME=VALUE, as in gravity=0.9."
        raise BadInput(refusal("wishes", text, "NAME=VALUE", say))
    return {"kind": "figure", "quantity": name, "bound": bound, "value": _number(name, value)}


def _number(field, text):
    try:
        value = float(text)
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        raise BadInput(refusal(field, text, "a number", f"{field} was {text}; it may be a number."))
    return value


def _print_json(answer):
    sys.stdout.buffer.write(answer + b"\n")  # UTF-8, whatever the terminal speaks


def _print(lines):
    print("\n".join(lines).replace("\u00a0", " "))
