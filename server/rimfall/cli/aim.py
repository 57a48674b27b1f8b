"""`rimfall aim`: how a throw of a scene must go to be caught, in words and a table, or as JSON."""

import re

from ..errors import BadInput, refusal
from ..exports.recovery import read_source
from ..scene.reading import as_json, read, read_aim
from ..scene.shot import aim
from ..scene.shot.aim_table import rows_of
from ..scene.work import GREATEST_BYTES_ALONE, bounded
from . import common
from .common import aligned, number, only_throw, seconds_of

DONE = 0
_EXAMPLE = "rimfall aim galley.json --motion serve --to 12,1.4 --speed 9; --to friend --least speed"
_FIXED = (
    ("speed", "speed_m_s", "M/S", "that speed, metres per second"),
    ("elevation", "elevation_deg", "DEG", "that elevation, degrees up from level"),
    ("flight", "flight_s", "S", "that flight time, seconds"),
)


def add_to(parser):
    """Add the command's options."""
    parser.epilog = f"Such as: {_EXAMPLE}"
    parser._negative_number_matcher = re.compile(r"^-[0-9.][0-9.eE,+-]*$")  # "-12,1.4" is a place, not an option
    parser.add_argument("scene", metavar="SCENE.json", help="a scene document; - reads standard input")
    parser.add_argument("--motion", metavar="NAME", help="the throw (default: the only one of the scene)")
    parser.add_argument(
        "--to",
        metavar="ALONG,HEIGHT[,AXIAL]",
        required=True,
        help="where the catcher's hands are, metres; or the name of another motion of the scene, which catches as it moves",
    )
    parser.add_argument("--within", metavar="M", help="how far the catcher reaches, metres (default: 0.15)")
    fixed = parser.add_mutually_exclusive_group(required=True)
    for name, _, metavar, say in _FIXED:
        fixed.add_argument(f"--{name}", metavar=metavar, help=f"what is fixed of the throw: {say}")
    fixed.add_argument("--least", choices=("speed",), help="the slowest throw that arrives")
    parser.add_argument(
        "--flight-max", metavar="S", help="the longest flight that is looked for, seconds (default: 60)"
    )
    parser.add_argument("--back", action="store_true", help="the same from the catcher's hands, too")
    common.add_answer_options(parser)
    common.add_max_seconds(parser)
    parser.set_defaults(run=_aim)


def _aim(chosen):
    scene = read(read_source(chosen.scene))
    document = {
        "scene": scene.model_dump(mode="json"),
        "motion": chosen.motion if chosen.motion is not None else only_throw(scene),
        "to": _to(scene, chosen.to),
        "fixed": _fixed(chosen),
        "back": chosen.back,
    }
    if chosen.within is not None:
        document["within_m"] = number("within_m", chosen.within)
    if chosen.flight_max is not None:
        document["flight_max_s"] = number("flight_max_s", chosen.flight_max)
    request = read_aim(as_json(document))
    found = bounded(aim.find, request, seconds=seconds_of(chosen.max_seconds), most_bytes=GREATEST_BYTES_ALONE)
    if chosen.json:
        common.print_json(aim.as_json(found, chosen.units))
    else:
        common.print_lines(_as_text(found, chosen.units))
    return DONE


def _to(scene, text):
    """A place, or the name of a motion."""
    if text in {motion.name for motion in scene.motions}:
        return {"motion": text}
    parts = text.split(",")
    if len(parts) not in (2, 3):
        may_be = "ALONG,HEIGHT or ALONG,HEIGHT,AXIAL in metres, or the name of a motion of the scene"
        raise BadInput(refusal("to", text, may_be, f"--to was {text}; it must be {may_be}."))
    names = ("along_m", "height_m", "axial_m")
    return {name: number(f"to.{name}", part) for name, part in zip(names, parts, strict=False)}


def _fixed(chosen):
    if chosen.least is not None:
        return {"least": "speed_m_s"}
    ((name, field),) = [(name, field) for name, field, *_ in _FIXED if getattr(chosen, name) is not None]
    return {field: number(f"fixed.{field}", getattr(chosen, name))}


def _as_text(found, units):
    answer = aim.as_data(found, units)
    lines = [*answer["words"], "", *_table(answer, units)]
    if answer["back"] is not None:
        lines += ["", "And back", *answer["back"]["words"], "", *_table(answer["back"], units)]
    return [*lines, *answer["assumptions"], "", answer["caution"]]


def _table(answer, units):
    ways = answer["ways"] or ([] if answer["nearest"] is None else [answer["nearest"]])
    return aligned(rows_of(ways, units), left=0)
