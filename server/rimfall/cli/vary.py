"""`rimfall vary`: its options, and what it says at the end."""

import json

from ..exports.formats import FORMATS
from ..exports.recovery import read_source
from ..language import tr, written
from ..scene.reading import read
from ..sweep import parameters
from ..sweep.run import INDEX, run, sweep_of
from . import common
from .own_cameras import add_camera_options, camera_choices
from .streams import complain

DONE, FAILED, REFUSED = 0, 1, 2
_MOST_NAMED = 20
EXAMPLES = (
    "rimfall vary scene.json --over habitat.spin_rpm=1..6/11 --over motions.serve.speed_m_s=4,6,8 --export csv --out spins",
)


def add_to(parser):
    """Add the command's options."""
    parser.add_argument("scene", metavar="SCENE.json", help="a scene document; - reads standard input")
    parser.add_argument(
        "--over",
        metavar="PATH=VALUES",
        action="append",
        default=[],
        help="a path of the document and its values, first..last/count or a list; may be repeated, the last changing fastest",
    )
    parser.add_argument(
        "--export",
        metavar="FORMAT",
        action="append",
        default=[],
        help=f"files of each: {', '.join(FORMATS)}; may be repeated",
    )
    parser.add_argument(
        "--out",
        metavar="DIR",
        required=True,
        help="a folder for everything; run the same command again to resume",
    )
    parser.add_argument("--workers", type=int, metavar="N", help="processes on this machine (default: one per core)")
    parser.add_argument(
        "--scheduler", metavar="ADDRESS", help="a Dask scheduler to hand the work to (needs the extra: cluster)"
    )
    parser.add_argument("--json", action="store_true", help="print what it came to as JSON, and no progress")
    common.add_export_options(parser)
    add_camera_options(parser)
    parser.set_defaults(run=_vary)


def _vary(chosen):
    """Do the run; the exit code: 2 where combinations were refused, 1 where some failed by a fault of ours."""
    scene = read(read_source(chosen.scene))
    varied = [parameters.parse(text) for text in chosen.over]
    choices = common.export_document(chosen) | camera_choices(chosen, scene)
    sweep, grid = sweep_of(scene, varied, chosen.export, choices)
    try:
        done = run(sweep, grid, chosen.out, chosen.workers, chosen.scheduler, quiet=chosen.json)
    except KeyboardInterrupt:
        stopped = tr("stopped; the same command goes on from here, in {folder}.", folder=chosen.out)
        complain(f"\nrimfall: {stopped}")
        raise
    for sentence in _named(done):
        complain(f"rimfall: {sentence}")
    if chosen.json:
        common.print_json(_as_json(done, chosen.out).encode("utf-8", "replace"))
    else:
        common.print_lines([_as_text(done, chosen.out)])
    return FAILED if done.failed else REFUSED if done.refused else DONE


def _as_text(done, out):
    whole = done.count - len(done.refused) - len(done.failed)
    return tr(
        "{whole} of {count} combinations are in {folder}; {index} lists them, {sheet} shows them.",
        whole=written(whole, ","),
        count=written(done.count, ","),
        folder=out,
        index=INDEX,
        sheet=done.files[1],
    )


def _as_json(done, out):
    say = {"folder": str(out), "count": done.count, "files": list(done.files)}
    return json.dumps(say | {"refused": done.refused, "failed": done.failed}, indent=1, ensure_ascii=False)


def _named(done):
    """A sentence for each combination that was not done in full, up to twenty."""
    short = sorted((done.refused | done.failed).items())
    yield from (tr("combination {number}: {what}", number=number, what=said) for number, said in short[:_MOST_NAMED])
    if len(short) > _MOST_NAMED:
        yield tr("and {count} more; {index} names them.", count=written(len(short) - _MOST_NAMED, ","), index=INDEX)
