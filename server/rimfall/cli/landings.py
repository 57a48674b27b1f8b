"""`rimfall landings`: where a throw of a scene can come down over two of its figures, in words and a table, as JSON, and as files."""

from ..errors import BadInput, refusal
from ..exports import landings as files
from ..exports.recovery import read_source
from ..exports.writing import write_all
from ..language import tr, tr_many
from ..scene.reading import as_json, read, read_landings
from ..scene.shot import landings
from ..scene.shot.landings_table import rows_of
from ..scene.validation_errors import was_wrong
from ..scene.work import bounded_alone
from ..sweep.parameters import range_of
from . import common
from .common import aligned, only_throw, seconds_of

DONE = 0
EXAMPLES = (
    "rimfall landings galley.json --motion serve --over elevation_deg=0..80/81 --over speed_m_s=2..20/73 --export net.svg",
)


def add_to(parser):
    """Add the command's options."""
    parser.add_argument("scene", metavar="SCENE.json", help="a scene document; - reads standard input")
    parser.add_argument("--motion", metavar="NAME", help="the throw (default: the only one of the scene)")
    parser.add_argument(
        "--over",
        metavar="FIGURE=FIRST..LAST/COUNT",
        action="append",
        default=[],
        help="two of speed_m_s, heading_deg and elevation_deg, each from first to last in so many",
    )
    parser.add_argument(
        "--export",
        metavar="FILE",
        action="append",
        default=[],
        help="write a file, its format from the file extension (.csv, .svg, .pdf); may be repeated",
    )
    common.add_answer_options(parser)
    common.add_max_seconds(parser)
    parser.set_defaults(run=_landings)


def _landings(chosen):
    if len(chosen.over) != 2:
        may_be = tr("given twice: two of speed_m_s, heading_deg and elevation_deg, each as in speed_m_s=2..20/37")
        times = tr_many("given once", "given {count} times", len(chosen.over)) if chosen.over else tr("not given")
        raise BadInput(refusal("over", times, may_be, was_wrong("--over", times, may_be)))
    scene = read(read_source(chosen.scene))
    document = {
        "scene": scene.model_dump(mode="json"),
        "motion": chosen.motion if chosen.motion is not None else only_throw(scene),
        "over": [dict(zip(("field", "first", "last", "count"), range_of(text), strict=True)) for text in chosen.over],
    }
    request = read_landings(as_json(document))
    found = bounded_alone(landings.find, request, seconds=seconds_of(chosen.max_seconds))
    write_all(
        {path: content for name in chosen.export for path, content in files.files_of(found, name, chosen.units).items()}
    )
    if chosen.json:
        common.print_json(landings.as_json(found, chosen.units))
    else:
        common.print_lines(_as_text(found, chosen.units))
    return DONE


def _as_text(found, units):
    answer = landings.as_data(found, units)
    heading, rows = rows_of(found, units)
    return [*answer["words"], *answer["assumptions"], "", heading, *aligned(rows, left=1), "", answer["caution"]]
