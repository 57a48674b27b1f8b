"""What commands share: a scene file read, the choices of an export as options, a format told by a file's name."""

import json
import sys
from pathlib import Path

from ..errors import BadInput, refusal
from ..exports import FORMATS
from ..exports.recovery import document_in

_COMPANIONS = {"csv": "notes", "csv-frames": "notes", "forces-csv": "forces-notes"}  # tables say nothing of themselves


def source(name):
    """The scene document in a file, or in standard input where the name is "-", JSON bytes; the file may be one that was taken
    away. Raises BadInput."""
    try:
        return document_in(sys.stdin.buffer.read() if name == "-" else Path(name).read_bytes())
    except OSError as error:
        say = f"Cannot read {name}: {error.strerror or error}."
        raise BadInput(refusal("file", name, "a file that can be read", say)) from None


def add_to(parser):
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
    group.add_argument("--fps", metavar="RATE", help='frames a second, a number or "n/d" (default: the scene\'s)')
    group.add_argument(
        "--shown-fps", metavar="RATE", help="frames a second it is shown at, for slow motion (default: --fps)"
    )
    group.add_argument("--first-frame", metavar="N", help="number of the frame at time 0 (default: 1001)")
    group.add_argument("--samples", metavar="N", help="samples a frame: 1, 2, 4 or 8 (default: 1)")
    group.add_argument("--unit", choices=("m", "cm"), help="unit of lengths (default: m)")
    group.add_argument("--up", choices=("Y", "Z"), help="axis that is up (default: Y)")
    group.add_argument(
        "--origin",
        metavar="WHERE",
        help="axis (default), release, or a place ALONG,HEIGHT,AXIAL[,FLOOR] in metres, whose directions the file then has",
    )
    group.add_argument("--from", dest="from_s", metavar="S", help="first second to take (default: 0)")
    group.add_argument("--to", dest="to_s", metavar="S", help="last second to take (default: the last event)")


def asked(chosen):
    """The document of an export's choices from parsed options; what was not said is left out."""
    document = {
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
    }
    return {name: value for name, value in document.items() if value is not None}


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


def format_of(path):
    """The Format a file's name asks for, by the longest ending that fits. Raises BadInput, listing what there is."""
    name = path.name.lower()
    fitting = [f for f in FORMATS.values() if name.endswith("." + f.ending)]
    if not fitting:
        endings = ", ".join(sorted(f".{f.ending}" for f in FORMATS.values()))
        say = f"No format goes by the name {path.name}; a file may end in {endings}."
        raise BadInput(refusal("export", path.name, f"a name that ends in {endings}", say))
    return max(fitting, key=lambda f: len(f.ending))


def files_of(trace, options, path, kind):
    """The files of one export, path -> bytes: itself, and beside a table the notes that say what it means. A table's notes
    have a name of their own: `lob.csv` must not take the place of `lob.json`."""
    files = {path: kind.write(trace, options)}
    if kind.name in _COMPANIONS:
        beside = FORMATS[_COMPANIONS[kind.name]]
        stem = path.name[: -len(kind.ending) - 1]
        files[path.parent / f"{stem}.{beside.ending}"] = beside.write(trace, options)
    return files
