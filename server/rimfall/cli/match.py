"""`rimfall match`: whether a path that was seen could be, in words and a table, or as JSON."""

import json
from pathlib import Path

from ..errors import BadInput, refusal
from ..exports.brought.tracks import About, tracks_in
from ..exports.recovery import tables
from ..language import tr, tr_as, tr_later, tr_many, written
from ..phrases import in_units
from ..scene.document import frame_rate
from ..scene.reading import as_json, read_match
from ..scene.shot import match
from ..scene.size.wish_words import three_figures
from ..scene.validation_errors import was_wrong
from ..scene.work import bounded_alone
from . import common
from .common import aligned, number, seconds_of

DONE = 0
EXAMPLES = (
    "rimfall match track.csv --accuracy 0.02 --known radius_m=56 --known air=none",
    "rimfall match ball.usda --view inertial --accuracy 0.005 --known radius_m=56 --known spin_rpm=3 --save nearest.json",
)
_NUMBERS = ("radius_m", "spin_rpm", "gravity_g", "speed")
_MAY_BE = tr_later("NAME=VALUE, the name one of radius_m, spin_rpm, gravity_g, start, speed, air, body")


def add_to(parser):
    """Add the command's options."""
    parser.add_argument(
        "track",
        metavar="TRACK",
        help="a table (.csv) with time_s, along_m, height_m and, if it is known, axial_m; or of points x_m, y_m, z_m; an animated object "
        "(.usda, .usdc, .usdz, .glb); or a whole request (.json)",
    )
    parser.add_argument("--accuracy", metavar="M", help="how well a point is known, one standard deviation, metres")
    parser.add_argument("--accuracy-px", metavar="PX", help="the same of a picture's points, pixels")
    parser.add_argument(
        "--known",
        metavar="NAME=VALUE",
        action="append",
        default=[],
        help="what is known: radius_m, spin_rpm, gravity_g, start=ALONG,HEIGHT[,AXIAL], speed (m/s, as it is let go), air=none or "
        "air=KPA,CELSIUS, body; may be repeated",
    )
    parser.add_argument(
        "--playback-fps", metavar="RATE", help="the footage is played at that rate and may have been slowed"
    )
    parser.add_argument(
        "--fps", metavar="RATE", default="24", help="frames per second of a table's frames (default: 24)"
    )
    parser.add_argument(
        "--origin", choices=("axis", "deck"), help="origin of points: on the axis, or on the deck at the reference line"
    )
    parser.add_argument(
        "--view", choices=("rotating", "inertial"), help="axes of points: turning with the deck, or not turning"
    )
    parser.add_argument("--up", choices=("Y", "Z"), help="axis of a table's points that is up (default: Y)")
    parser.add_argument("--object", metavar="NAME", help="which object of a file with several")
    parser.add_argument("--save", metavar="FILE.json", help="write the scene that flies the nearest free path")
    common.add_answer_options(parser)
    common.add_max_seconds(parser)
    parser.set_defaults(run=_match)


def _match(chosen):
    request = read_match(as_json(_document(chosen)))
    answer = bounded_alone(match.as_data, request, chosen.units, seconds=seconds_of(chosen.max_seconds))
    if chosen.save:
        _save(Path(chosen.save), answer)
    if chosen.json:
        common.print_json(json.dumps(answer, ensure_ascii=False, separators=(",", ":")).encode())
    else:
        common.print_lines(as_text(answer, chosen.units))
    return DONE


def _save(path, answer):
    """The scene of what would make it possible, else of the nearest path."""
    motion = answer["changes"][0]["motion"] if answer["changes"] else answer["motion"]
    if motion is None:
        say = tr("There is no scene to save: no scene document holds the nearest free path.")
        raise BadInput(refusal("save", path.name, tr("left out where no scene flies the path"), say))
    common.write_scene(path, motion)


def _document(chosen):
    """The request's document: that of a file, or of the tracks in it, with what the options say."""
    content, notes = _read(chosen.track)
    if content.lstrip()[:1] == b"{":
        document = common.read_object(content, read_match)
        if not isinstance(document.get("known", {}), dict):
            read_match(content)
    else:
        document = _of_file(content, notes, chosen)
    for name, text in (("accuracy_m", chosen.accuracy), ("accuracy_px", chosen.accuracy_px)):
        if text is not None:
            document[name] = number(name, text)
    if chosen.playback_fps is not None:
        document["playback_fps"] = _rate("playback_fps", chosen.playback_fps)
    document["known"] = document.get("known", {}) | dict(_known(text) for text in chosen.known)
    return document


def _read(name):
    """The bytes of a file, and of the notes beside a table."""
    path = Path(name)
    try:
        content = path.read_bytes()
        notes = tables.beside(path, content[:32])
        return content, notes.read_bytes() if notes is not None and notes.exists() else None
    except (OSError, ValueError) as error:
        say = tr("Cannot read {file}: {why}.", file=name, why=getattr(error, "strerror", None) or error)
        raise BadInput(refusal("file", str(name), tr("a file that can be read"), say)) from None


def _of_file(content, notes, chosen):
    """The document of one of a file's tracks."""
    fps = frame_rate(_rate("fps", chosen.fps))
    found = tracks_in(content, About(fps, chosen.view, chosen.origin, chosen.up, notes))
    names = [track["name"] for track in found["tracks"]]
    if (chosen.object is None and len(names) > 1) or (chosen.object is not None and chosen.object not in names):
        may_be = tr("one of {names}", names=", ".join(names[:20]))
        say = tr_many(
            "The file has one object that moves; --object must be {may_be}.",
            "The file has {count} objects that move; --object must be {may_be}.",
            len(names),
            may_be=may_be,
        )
        raise BadInput(refusal("object", chosen.object or tr("nothing"), may_be, say))
    track = found["tracks"][names.index(chosen.object) if chosen.object is not None else 0]
    if "points" in track:
        say = tr(
            "These are pixels without a scale: give a request (.json) with picture.points and picture.plane or picture.camera."
        )
        raise BadInput(refusal("picture.plane", tr("nothing"), tr("a request with a plane or a camera"), say))
    return {name: value for name, value in track.items() if name != "name"} | {"known": found["known"]}


def _rate(field, text):
    return text if "/" in text else number(field, text)


def _known(text):
    """(name, value) of one thing that is known. Raises BadInput."""
    name, equals, value = (part.strip() for part in text.partition("="))
    if not equals:
        raise BadInput(refusal("known", text, tr(_MAY_BE), was_wrong("--known", text, tr(_MAY_BE))))
    if name in _NUMBERS:
        return name, number(f"known.{name}", value)
    if name == "start":
        parts = [number("known.start", part) for part in value.split(",")]
        if len(parts) not in (2, 3):
            may_be = tr("ALONG,HEIGHT or ALONG,HEIGHT,AXIAL in metres")
            raise BadInput(refusal("known.start", value, may_be, was_wrong("known.start", value, may_be)))
        return name, dict(zip(("along_m", "height_m", "axial_m"), parts, strict=False))
    if name == "air":
        if value == "none":
            return name, None
        parts = [number("known.air", part) for part in value.split(",")]
        if len(parts) != 2:
            may_be = tr("air=none, or air=KPA,CELSIUS as in {example}", example="air=101.3,20")
            raise BadInput(refusal("known.air", value, may_be, was_wrong("known.air", value, may_be)))
        return name, {"pressure_kpa": parts[0], "temperature_c": parts[1]}
    return name, value


def as_text(answer, units):
    """An answer as a reader wants it: the verdict, its reasons, the fit as a table, what is taken for granted."""
    lines = list(answer["words"])
    if answer["reasons"]:
        lines += ["", tr("What shows it"), *(f"  {one['says']}" for one in answer["reasons"])]
    if answer["changes"]:
        lines += ["", tr("It would be possible"), *(f"  {one['says']}." for one in answer["changes"])]
    lines += ["", tr("The nearest free path"), *_table(answer["fit"], units)]
    lines += ["", *answer["assumptions"], answer["caution"]]
    return lines


def _table(fit, units):
    """Value and interval of each quantity; no value of one that has no end on some side, for any would do as well."""
    rows = [["  ", tr("value"), "", tr_as("of an interval", "from"), tr_as("of an interval", "to")]]
    for figure in fit.values():
        value, low, high = (
            None if one is None else in_units(one, figure["unit"], units)[0]
            for one in (figure["value"], figure["low"], figure["high"])
        )
        told = (
            [tr("known"), ""]
            if figure["known"]
            else ["–" if end is None else three_figures(end) for end in (low, high)]
        )
        shown = "–"
        if value is not None and figure["known"]:
            shown = three_figures(value)
        elif value is not None and low is not None and high is not None:
            shown = _to_its_ends(value, low, high)
        rows.append([f"  {figure['label']}", shown, in_units(0.0, figure["unit"], units)[1], *told])
    return aligned(rows)


def _to_its_ends(value, *ends):
    """A value to three figures, but to no more decimals than the ends of its interval have; one near 0 has no figures to tell."""
    own, *others = (_decimals(three_figures(one)) for one in (value, *ends))
    decimals = max(others)
    return three_figures(value) if own <= decimals else written(round(value, decimals) + 0.0, f",.{decimals}f")


def _decimals(figure):
    """How many decimals a figure has as it is written."""
    point = written(0.5, ".1f")[1]
    return len(figure.partition(point)[2])
