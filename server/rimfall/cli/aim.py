"""`rimfall aim`: how a throw of a scene must go to be caught, in words and a table, or as JSON."""

import math
import re
from pathlib import Path

from ..errors import BadInput, refusal
from ..exports.recovery import read_source
from ..language import tr, tr_as, tr_later
from ..scene.document import setting_of
from ..scene.reading import as_json, read, read_aim
from ..scene.shot import aim
from ..scene.shot.aim_table import rows_of
from ..scene.validation_errors import was_wrong
from ..scene.work import bounded_alone
from . import common
from .common import aligned, number, only_throw, seconds_of

DONE = 0
EXAMPLES = (
    'rimfall aim same-lob.json --motion "Lob out" --to 1/3,1.4 --least speed --save thrown.json',
    "rimfall aim galley.json --motion serve --to=-6,1.4 --speed 9 --back",
    "rimfall aim pass-to-a-runner.json --motion pass --to runner --least speed",
)
_TO_MAY_BE = tr_later(
    "ALONG,HEIGHT or ALONG,HEIGHT,AXIAL in metres, with ALONG as in 1/3 for a share of the way round from the thrower, "
    "or the name of a motion of the scene"
)
_FIXED = (
    ("speed", "speed_m_s", "M/S", "that speed, metres per second"),
    ("elevation", "elevation_deg", "DEG", "that elevation, degrees up from level"),
    ("flight", "flight_s", "S", "that flight time, seconds"),
)


def add_to(parser):
    """Add the command's options."""
    parser._negative_number_matcher = re.compile(r"^-[0-9.][0-9.eE,/+-]*$")  # "-12,1.4" is a place, not an option
    parser.add_argument("scene", metavar="SCENE.json", help="a scene document; - reads standard input")
    parser.add_argument("--motion", metavar="NAME", help="the throw (default: the only one of the scene)")
    parser.add_argument(
        "--to",
        metavar="ALONG,HEIGHT[,AXIAL]",
        required=True,
        help="where the catcher's hands are, metres, ALONG from the reference line, or as in 1/3 a share of the way round from the "
        "thrower, spinward above 0; or the name of another motion of the scene, which catches as it moves",
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
    parser.add_argument("--save", metavar="FILE.json", help="write the scene with the first of them as its throw")
    common.add_answer_options(parser)
    common.add_max_seconds(parser)
    parser.set_defaults(run=_aim)


def _aim(chosen):
    scene = read(read_source(chosen.scene))
    motion = chosen.motion if chosen.motion is not None else only_throw(scene)
    document = {
        "scene": scene.model_dump(mode="json"),
        "motion": motion,
        "to": _to(scene, motion, chosen.to),
        "fixed": _fixed(chosen),
        "back": chosen.back,
    }
    if chosen.within is not None:
        document["within_m"] = number("within_m", chosen.within)
    if chosen.flight_max is not None:
        document["flight_max_s"] = number("flight_max_s", chosen.flight_max)
    request = read_aim(as_json(document))
    found = bounded_alone(aim.find, request, seconds=seconds_of(chosen.max_seconds))
    if chosen.save is not None:
        _save(Path(chosen.save), document, aim.as_data(found)["ways"])
    if chosen.json:
        common.print_json(aim.as_json(found, chosen.units))
    else:
        common.print_lines(_as_text(found, chosen.units))
    return DONE


def _save(path, document, ways):
    """Write the scene with the first way, where nothing is in the way of it. Raises BadInput where there is none."""
    if not ways or ways[0]["blocked_by"] is not None:
        say = tr("There is no throw to save: none arrives.")
        raise BadInput(refusal("save", path.name, tr("left out where no throw arrives"), say))
    scene = document["scene"]
    thrown = next(motion for motion in scene["motions"] if motion["name"] == document["motion"])
    thrown |= {name: ways[0][name] for name in ("speed_m_s", "heading_deg", "elevation_deg")}
    common.write_scene(path, scene)


def _to(scene, motion, text):
    """A place, or the name of a motion."""
    if text in {motion.name for motion in scene.motions}:
        return {"motion": text}
    parts = text.split(",")
    if len(parts) not in (2, 3):
        may_be = tr(_TO_MAY_BE)
        raise BadInput(refusal("to", text, may_be, was_wrong("--to", text, may_be)))
    names = ("along_m", "height_m", "axial_m")
    told = dict(zip(names, parts, strict=False))
    along = {"along_m": _round(scene, motion, told.pop("along_m"))} if "/" in parts[0] else {}
    return along | {name: number(f"to.{name}", part) for name, part in told.items()}


def _round(scene, name, text):
    """Metres along the deck to a share of the way round from a throw, such as "1/3". Raises BadInput."""
    parts = re.fullmatch(r"\s*([+-]?\d{1,6})/(\d{1,6})\s*", text)
    if parts is None or int(parts[2]) == 0:
        may_be = tr("metres, or a share of the way round as in 1/3")
        raise BadInput(refusal("to.along_m", text, may_be, was_wrong("to.along_m", text, may_be)))
    place = next((motion.place for motion in scene.motions if motion.name == name and hasattr(motion, "place")), None)
    chart = setting_of(scene)[0].habitat.chart(0 if place is None else place.floor)
    if not chart.bends:
        say = tr("This ground does not go round, so there is no share of the way round; --to must be in metres.")
        raise BadInput(refusal("to.along_m", text, tr_as("what it may be", "metres"), say))
    begins_m = 0.0 if place is None else place.along_m
    return begins_m + int(parts[1]) / int(parts[2]) * math.tau * chart.radius_m


def _fixed(chosen):
    if chosen.least is not None:
        return {"least": "speed_m_s"}
    ((name, field),) = [(name, field) for name, field, *_ in _FIXED if getattr(chosen, name) is not None]
    return {field: number(f"fixed.{field}", getattr(chosen, name))}


def _as_text(found, units):
    answer = aim.as_data(found, units)
    lines = [*answer["words"], "", *_table(answer, units)]
    if answer["back"] is not None:
        lines += ["", tr("And back"), *answer["back"]["words"], "", *_table(answer["back"], units)]
    return [*lines, *answer["assumptions"], "", answer["caution"]]


def _table(answer, units):
    ways = answer["ways"] or ([] if answer["nearest"] is None else [answer["nearest"]])
    return aligned(rows_of(ways, units), left=0)
