"""`rimfall craft`: whether the craft round a habitat would cope, in words and tables, or as JSON."""

from pathlib import Path

from ..exports.craft_files import FORMATS, file_of
from ..exports.recovery import read_source
from ..exports.writing import write_all
from ..scene.craft import answers, examples
from ..scene.craft.asked import asked_of
from ..scene.craft.figures import figures
from ..scene.reading import read_craft
from ..scene.work import bounded_alone
from . import common
from .common import aligned, seconds_of

DONE = 0
EXAMPLES = (
    "rimfall craft ring-ship",
    "rimfall craft folding-arms --only deploy --only balance --units us",
    "rimfall craft long-tumbler --export wick.pdf --export wick.tumble.csv",
)


def add_to(parser):
    """Add the command's options."""
    parser.add_argument(
        "craft",
        metavar="CRAFT.json",
        help="a craft's document, or a scene that carries one, or the name of a craft to start from; - reads standard input. "
        f"To start from: {', '.join(examples.SAY)}",
    )
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
    asked = asked_of(read_craft(examples.example(chosen.craft) or read_source(chosen.craft)), chosen.units)
    answer = bounded_alone(answers.of_asked, asked, seconds=seconds_of(chosen.max_seconds))
    if chosen.export:
        write_all({Path(name): file_of(name, asked, answer, chosen.units) for name in chosen.export})
    if chosen.only:
        answer = {name: data for name, data in answer.items() if name not in answers.FINDINGS or name in chosen.only}
    if chosen.json:
        common.print_json(answers.packed(answer))
    else:
        common.print_lines(as_text(answer))
    return DONE


def as_text(answer):
    """An answer as a reader wants it: each question, what is said, its figures as a table; what is taken for granted once, at the end."""
    lines, taken = [], []
    for name in answers.FINDINGS:
        finding = answer.get(name)
        if finding is None:
            continue
        table = aligned([[f"  {label}", value, unit] for label, value, unit in figures(finding)])
        lines += [finding["question"], *finding["says"], *table, ""]
        taken += [one for one in finding["assumptions"] if one not in taken]
    return [*lines, *taken, "", answer["caution"]]
