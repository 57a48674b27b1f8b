"""What commands share: options of answers and of exports, the person's height, printing, tables."""

import json
import math
import sys
from pathlib import Path

from ..errors import BadInput, refusal
from ..exports.writing import write_all
from ..language import ENGLISH, tr
from ..scene.bounds import GREATEST_BYTES_ALONE
from .streams import writing


def add_answer_options(parser):
    """Add the options of an answer."""
    parser.add_argument("--json", action="store_true", help="print the whole answer as JSON")
    parser.add_argument("--units", choices=("si", "us"), default="si", help="units of the words (default: %(default)s)")


def add_language(parser):
    """Add the option of the language of all that is said and written."""
    parser.add_argument(
        "--language", metavar="TAG", default=ENGLISH, help="language of the words, such as de (default: %(default)s)"
    )


def add_max_seconds(parser):
    """Add the option that bounds the time of the work."""
    parser.add_argument(
        "--max-seconds",
        metavar="S",
        help="longest that it may be worked on, and refused past it (default: no bound; memory is bounded in any case, at "
        f"{GREATEST_BYTES_ALONE / 1e9:g} GB)",
    )


def seconds_of(text):
    """The seconds that --max-seconds asks for, or None. Raises BadInput."""
    seconds = None if text is None else number("max-seconds", text)
    if seconds is not None and seconds <= 0:
        raise BadInput(_wrong("max-seconds", "--max-seconds", text, tr("above 0")))
    return seconds


def with_height(source, height, read):
    """A document for a person of that height, where one was given."""
    if height is None:
        return source
    document = read_object(source, read)
    person = document.get("person", {})
    if isinstance(person, dict):
        document["person"] = {**person, "height_m": number("height", height)}
    return json.dumps(document)


def read_object(source, read):
    """What a file holds, a JSON object; anything else is refused as all documents are, by `read`."""
    try:
        document = json.loads(source)
    except (ValueError, RecursionError):
        document = None
    if not isinstance(document, dict):
        read(source)
    return document


def check_named(name, field, text, names):
    """Raises BadInput for what is none of the names and can be no file either. text: the message that says so, with {name} and {names}."""
    if name != "-" and not Path(name).suffix and not Path(name).exists():
        listed = ", ".join(names)
        may_be = tr("a file, or one of {names}", names=listed)
        raise BadInput(refusal(field, name, may_be, tr(text, name=name, names=listed)))


def number(field, text):
    """A finite number from the text of an option. Raises BadInput, naming the field."""
    try:
        value = float(text)
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        raise BadInput(_wrong(field, field, text, tr("a number")))
    return value


def _wrong(field, called, text, may_be):
    say = tr("{field} was {value}; it must be {allowed}.", field=called, value=text, allowed=may_be)
    return refusal(field, text, may_be, say)


def write_scene(path, document):
    """Write a scene document, whole or not at all."""
    write_all({path: json.dumps(document, ensure_ascii=False, indent=1).encode() + b"\n"})


def print_json(answer):
    """Print an answer, JSON bytes, on a line of its own."""
    with writing():
        sys.stdout.buffer.write(answer + b"\n")  # UTF-8, whatever the terminal speaks


def print_lines(lines):
    """Print lines of words; a terminal needs no unbreakable spaces."""
    with writing():
        print("\n".join(lines).replace("\u00a0", " "))


def add_export_options(parser):
    """Add an option to an argparse parser for each choice of an export."""
    group = parser.add_argument_group("what the files hold")
    group.add_argument(
        "--only", metavar="NAME", action="append", help="a motion to take (default: all); may be repeated"
    )
    group.add_argument(
        "--view",
        choices=("rotating", "inertial", "inertial_flat"),
        help="turning with the deck (default), or not turning",
    )
    group.add_argument("--fps", metavar="RATE", help='frames per second, a number or "n/d" (default: the scene\'s)')
    group.add_argument(
        "--shown-fps", metavar="RATE", help="frames per second it is shown at, for slow motion (default: --fps)"
    )
    group.add_argument("--first-frame", metavar="N", help="number of the frame at time 0 (default: 1001)")
    group.add_argument("--samples", metavar="N", help="samples per frame: 1, 2, 4 or 8 (default: 1)")
    group.add_argument("--unit", choices=("m", "cm"), help="unit of lengths (default: m)")
    group.add_argument("--up", choices=("Y", "Z"), help="axis that is up (default: Y)")
    group.add_argument(
        "--origin",
        metavar="WHERE",
        help="axis (default), release, or a place ALONG,HEIGHT,AXIAL[,FLOOR] in metres, whose directions the file then has",
    )
    group.add_argument(
        "--from",
        dest="from_s",
        metavar="S",
        help="first second to take (default: 0); below 0, a wait at rest before time 0",
    )
    group.add_argument("--to", dest="to_s", metavar="S", help="last second to take (default: the last event)")
    group.add_argument(
        "--retime",
        metavar="FRAME=S,FRAME=S,…",
        help="a curve of the scene's seconds against frames, from the first to the last of which the file goes; time may slow down or "
        "stand, not run back (write --retime=-9=0,… where the first is below 0)",
    )
    group.add_argument(
        "--between", choices=("smooth", "linear"), help="how the retime curve goes between its frames (default: smooth)"
    )
    group.add_argument(
        "--rows",
        choices=("alive", "all"),
        help="rows of a table: only while a body is there (default), or at every frame",
    )
    group.add_argument(
        "--turning",
        choices=("none", "quaternion"),
        help="how bodies have turned, in four more columns of a table (default: none)",
    )
    group.add_argument(
        "--hull",
        choices=("proxy", "render", "default"),
        help="purpose of the habitat in OpenUSD: a stand-in that is not rendered (proxy, default), or else",
    )


def export_document(chosen):
    """The document of an export's choices from parsed options; what was not said is left out."""
    choices = {
        "motions": chosen.only,
        "view": chosen.view,
        "fps": _rate(chosen.fps),
        "shown_fps": _rate(chosen.shown_fps),
        "first_frame": _number(chosen.first_frame),
        "samples_per_frame": _number(chosen.samples),
        "unit": chosen.unit,
        "up": chosen.up,
        "origin": _origin(chosen.origin),
        "from_s": _number(chosen.from_s),
        "to_s": _number(chosen.to_s),
        "retime": _retime(chosen.retime, chosen.between),
        "rows": chosen.rows,
        "turning": chosen.turning,
        "hull": chosen.hull,
    }
    return {name: value for name, value in choices.items() if value is not None}


def _retime(text, between):
    """A retime curve of "FRAME=S,FRAME=S". Raises BadInput."""
    if text is None:
        if between is not None:
            raise BadInput(_wrong("between", "--between", between, tr("left out without --retime")))
        return None
    keys = []
    for one in text.split(","):
        frame, equals, time_s = one.partition("=")
        if not equals:
            may_be = tr("FRAME=SECONDS for each key, such as 1001=0,1049=0.5,1097=2")
            raise BadInput(_wrong("retime", "--retime", text, may_be))
        keys.append({"frame": number("--retime frame", frame), "time_s": number("--retime seconds", time_s)})
    return {"keys": keys} | ({} if between is None else {"between": between})


def _number(text):
    """A number where it is one; the document's own check refuses what is not."""
    try:
        return text if text is None else json.loads(text)
    except ValueError:
        return text


def _rate(text):
    return text if text is None or "/" in text else _number(text)


def _origin(text):
    if text is None or "," not in text:
        return text
    return dict(zip(("along_m", "height_m", "axial_m", "floor"), map(_number, text.split(",")), strict=False))


def aligned(rows, left=1):
    """Lines of a table of texts; the first `left` columns stand to the left, the others to the right."""
    widths = [max(len(row[k]) for row in rows) for k in range(len(rows[0]))] if rows else []
    return [
        "  ".join(
            cell.ljust(width) if k < left else cell.rjust(width)
            for k, (cell, width) in enumerate(zip(row, widths, strict=True))
        ).rstrip()
        for row in rows
    ]


def only_throw(scene):
    """The name of the one throw of a scene, where none was named. Raises BadInput where it is not one."""
    throws = [motion.name for motion in scene.motions if motion.kind == "throw"]
    if len(throws) == 1:
        return throws[0]
    none = tr("the name of a throw, of which this scene has none")
    named = tr("one of {names}", names=", ".join(throws)) if throws else none
    say = tr("Which throw is meant was not said (--motion); it must be {allowed}.", allowed=named)
    raise BadInput(refusal("motion", None, named, say))
