"""`rimfall craft`: whether the craft round a habitat would cope, in words and tables, or as JSON."""

from pathlib import Path

from ..errors import BadInput, refusal
from ..exports.craft_files import FORMATS, file_of
from ..exports.recovery import read_source
from ..exports.writing import write_all
from ..language import tr, tr_later
from ..phrases import OR, listed
from ..scene.craft import answers, examples
from ..scene.craft.asked import asked_of
from ..scene.craft.figures import figures, in_group
from ..scene.reading import read_refitted
from ..scene.work import bounded_alone
from . import common
from .common import aligned, seconds_of

DONE = 0
EXAMPLES = (
    "rimfall craft ring-ship",
    "rimfall craft ring-ship --radius 40 --spin 3.343 --save mine.json",
    "rimfall craft folding-arms --only deploy --only balance --units us",
    "rimfall craft long-tumbler --export wick.pdf --export wick.tumble.csv",
)


# the blocks one of which a finding is asked by, where its name is another
_BLOCKS_OF = {"spin_down": ("spin_up",), "balance": ("loads", "ballast")}


def add_to(parser):
    """Add the command's options."""
    parser.add_argument(
        "craft",
        metavar="CRAFT.json",
        help="a craft's document, or a scene that carries one, or the name of a craft to start from; - reads standard input. "
        f"To start from: {', '.join(examples.SAY)}",
    )
    parser.add_argument("--radius", metavar="M", help="make all its lengths fit this radius, metres; masses stay")
    parser.add_argument("--spin", metavar="RPM", help="turn it at this spin, not its own")
    parser.add_argument("--save", metavar="FILE.json", help="write its document, to change and to ask again")
    parser.add_argument("--only", metavar="FINDING", action="append", choices=list(answers.FINDINGS), help=_only())
    parser.add_argument(
        "--export",
        metavar="FILE",
        action="append",
        default=[],
        help=f"write a file, its format from the file extension ({', '.join(f'.{kind.ending}' for kind in FORMATS.values())}); may be repeated",
    )
    common.add_answer_options(parser)
    common.add_max_seconds(parser)
    parser.set_defaults(run=_craft)


def _only():
    return f"a finding to print (default: all); may be repeated: {', '.join(answers.FINDINGS)}"


def _craft(chosen):
    radius_m, spin_rpm = (None if text is None else common.number(name, text) for name, text in _changed(chosen))
    craft, document = read_refitted(_source(chosen.craft), radius_m, spin_rpm)
    asked = asked_of(craft, chosen.units)
    answer = bounded_alone(answers.of_asked, asked, seconds=seconds_of(chosen.max_seconds))
    _check_told(chosen.only or (), answer)
    if chosen.save is not None:
        common.write_scene(Path(chosen.save), document)
    if chosen.export:
        write_all({Path(name): file_of(name, asked, answer, chosen.units) for name in chosen.export})
    if chosen.only:
        answer = {name: data for name, data in answer.items() if name not in answers.FINDINGS or name in chosen.only}
    if chosen.json:
        common.print_json(answers.packed(answer))
    else:
        common.print_lines(as_text(answer))
    return DONE


def _changed(chosen):
    return ("radius", chosen.radius), ("spin", chosen.spin)


def _source(name):
    """What is asked about: a craft to start from by its name, or a file."""
    known = examples.example(name)
    if known is None:
        common.check_named(
            name,
            "craft",
            tr_later("There is no file {name}, and no craft to start from of that name; those are {names}."),
            examples.SAY,
        )
    return known or read_source(name)


def _check_told(names, answer):
    """Raises BadInput where a finding is wanted that the document does not ask for."""
    for name in names:
        if answer.get(name) is None:
            block = listed(_BLOCKS_OF.get(name, (name,)), OR)
            say = tr(
                "There is no {finding} to print: the craft's document has no {block}; give it one.",
                finding=name,
                block=block,
            )
            raise BadInput(refusal("only", name, tr("a finding that the document asks for"), say))


def as_text(answer):
    """An answer as a reader wants it: each question, what is said, its figures as a table; what is taken for granted once, at the end."""
    lines, taken = [], []
    for name in answers.FINDINGS:
        finding = answer.get(name)
        if finding is None:
            continue
        table = aligned([[f"  {in_group(group, label)}", *rest] for group, label, *rest in figures(finding)])
        lines += [finding["question"], *finding["says"], *table, ""]
        taken += [one for one in finding["assumptions"] if one not in taken]
    return [*lines, *taken, "", answer["caution"]]
