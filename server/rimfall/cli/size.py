"""`rimfall size`: the smallest habitat that meets some wishes."""

import json

from ..errors import BadInput, refusal
from ..exports.recovery import read_source
from ..language import tr
from ..scene.reading import read_size
from ..scene.size import answers as size_answers
from ..scene.size.request import CALLED, STUDY_NAMES
from . import common

DONE = 0
EXAMPLES = (
    "rimfall size --exactly gravity=0.9 --most spin=2",
    "rimfall size --study cramer_1985 --most radius=60",
)


def add_to(parser):
    """Add the command's options."""
    parser.add_argument("request", metavar="WISHES.json", nargs="?", help="wishes and a person; - reads standard input")
    for option, bound in (("--exactly", "exactly"), ("--least", "at_least"), ("--most", "at_most")):
        parser.add_argument(
            option,
            metavar="NAME=VALUE",
            action="append",
            default=[],
            help=f"a wish for {bound.replace('_', ' ')} that: gravity (g), spin (rpm), gradient (%%), rim_speed (m/s), head_turn "
            "(rad/s²), coriolis, radius (m)",
        )
    parser.add_argument(
        "--study",
        metavar="ID",
        action="append",
        default=[],
        help=f"a published study to keep to: {', '.join(STUDY_NAMES)}",
    )
    parser.add_argument("--height", metavar="M", help="how tall the person is, metres")
    common.add_answer_options(parser)
    parser.set_defaults(run=_size)


def _size(chosen):
    request = read_size(_size_request(chosen))
    if chosen.json:
        common.print_json(size_answers.as_json(request, chosen.units))
        return DONE
    answer = size_answers.as_data(request, chosen.units)
    common.print_lines([*answer["words"], *answer["assumptions"], answer["caution"]])
    return DONE


def _size_request(chosen):
    """The request's document: that of the file, with the wishes of the options after its own."""
    document = {} if chosen.request is None else common.read_object(read_source(chosen.request), read_size)
    wishes = [{"kind": "study", "study": _study(name)} for name in chosen.study]
    for bound, given in (("exactly", chosen.exactly), ("at_least", chosen.least), ("at_most", chosen.most)):
        wishes += [_wish(bound, text) for text in given]
    own = document.get("wishes", [])
    if isinstance(own, list):  # whatever else it is, its reader refuses it by name
        document["wishes"] = [*own, *wishes]
    return common.with_height(json.dumps(document), chosen.height, read_size)


def _study(name):
    """A study's id from its id, or from its name and year as the program prints them."""
    return CALLED.get(name.lower(), name)


def _wish(bound, text):
    name, equals, value = text.partition("=")
    if not equals:
        say = tr("The wish was {wish}; it must be NAME=VALUE, as in gravity=0.9.", wish=text)
        raise BadInput(refusal("wishes", text, "NAME=VALUE", say))
    return {"kind": "figure", "quantity": name, "bound": bound, "value": common.number(name, value)}
