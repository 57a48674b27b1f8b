"""The folder of a run: what was asked (vary.json), the files, a record of every combination done under .rimfall, and the index.

A record is written with its combination's files, all or none and the record last; so a run that was stopped, by whatever, goes on by
doing what has no record, or whose files are not there in full. Names of files (`0007_spin_rpm=2.5_serve-speed_m_s=6.csv`) are of
letters, digits, `.`, `_`, `-` and `=` alone: the number tells them apart; the values after it are for the reader, to six figures, cut
where a name grows too long. index.csv has a row a combination (RFC 4180: quotes where needed, CRLF); a text that a
spreadsheet would take for a formula has an apostrophe before it. How far a motion lands is in `landing_turns`, `landing_spinward_m`
and `landing_axial_m`, along the ground where it lands (`motions/ways.py`); `landing_along_m` and `landing_drift_m` are coordinates.
"""

import contextlib
import csv
import io
import json
import re
from pathlib import Path

from .. import __version__
from ..errors import BadInput, refusal
from ..exports.formats import FORMATS
from ..exports.writing import write_all
from ..language import ENGLISH, tr
from . import lock
from .parameters import NUMBER, as_text

REQUEST = "vary.json"
RECORDS = ".rimfall"
FIGURES = ("time_s", "turns", "spinward_m", "axial_m", "along_m", "drift_m", "speed_m_s")  # of a landing
_UNSAFE = re.compile(r"[^A-Za-z0-9._-]+")
_FORMULA = tuple(
    "=+-@\t\r\n\uff1d\uff0b\uff0d\uff20"
)  # what makes a formula of a cell, the wide signs of East Asia among them
_LONGEST = 120  # characters before the ending: every common file system takes 255 bytes
_LEAST_DIGITS = 4


def file_stem(grid, number):
    """The name of a combination's files, before the ending."""
    digits = max(_LEAST_DIGITS, len(str(grid.count)))
    parts = [f"{_label(o.path)}={_value(v)}" for o, v in zip(grid.parameters, grid.values(number), strict=True)]
    return "_".join([f"{number:0{digits}}", *parts])[:_LONGEST].rstrip(".-_=")


def _label(path):
    """The path without what is understood: `spin_rpm` of the habitat's, `serve-speed_m_s` of the motion's."""
    keys = path.split(".")
    return "-".join(_safe(k) for k in (keys[1:] if keys[0] in ("habitat", "motions") and len(keys) > 1 else keys))


def _value(value):
    number = isinstance(value, (int, float)) and not isinstance(value, bool)
    return _safe((f"{value:.6g}" if number else as_text(value)).replace("+", ""))


def _safe(text):
    return _UNSAFE.sub("-", text).strip(".") or "-"


@contextlib.contextmanager
def opened(folder, sweep):
    """Make the folder, or find it to be of this very run, and keep other runs out of it; gives its Path. Raises BadInput."""
    folder = Path(folder)
    with contextlib.ExitStack() as held:
        try:
            folder.mkdir(parents=True, exist_ok=True)
            if not (folder / REQUEST).exists():
                _check_empty(folder)
            (folder / RECORDS).mkdir(exist_ok=True)
            held.enter_context(lock.only_run_in(folder, folder / RECORDS))
            before = (folder / REQUEST).read_bytes() if (folder / REQUEST).exists() else None
            for half in [*folder.glob(".*.part"), *(folder / RECORDS).glob(".*.part")]:  # of a run that was killed
                half.unlink(missing_ok=True)
        except OSError as error:
            say = tr("Cannot write into {folder}: {why}.", folder=folder, why=error.strerror or error)
            raise BadInput(refusal("out", str(folder), tr("a folder that can be written"), say)) from None
        if before is None:
            write_all({folder / REQUEST: _as_bytes(sweep)})
        elif before != _as_bytes(sweep):
            how = _difference(before, sweep)
            say = tr("{folder} holds another run ({how}); choose another folder.", folder=folder, how=how)
            raise _other(folder, say)
        yield folder


def _check_empty(folder):
    """Raises BadInput where a folder that is no run's holds anything."""
    names = sorted(p.name for p in folder.iterdir() if not p.name.startswith("."))
    if names:
        say = tr("{folder} holds other files ({name}); choose a new or an empty folder.", folder=folder, name=names[0])
        raise _other(folder, say)


def _other(folder, say):
    return BadInput(refusal("out", str(folder), tr("a new or an empty folder, or that of the same run"), say))


def _as_data(sweep):
    spoken = {} if sweep.language == ENGLISH else {"language": sweep.language}
    return {
        "program": f"Rimfall {__version__}",
        **spoken,
        "over": [{"path": path, "values": list(values)} for path, values in sweep.parameters],
        "export": {"formats": list(sweep.formats), "options": json.loads(sweep.export)},
        "scene": json.loads(sweep.scene),
    }


def _as_bytes(sweep):
    return (json.dumps(_as_data(sweep), indent=1, ensure_ascii=False) + "\n").encode("utf-8", "surrogatepass")


def _difference(before, sweep):
    """In a few words, in what another run's folder differs."""
    try:
        before, now = json.loads(before), _as_data(sweep)
        differs = [key for key in dict.fromkeys([*now, *before.keys()]) if before.get(key) != now.get(key)]
    except (ValueError, AttributeError):
        return tr("its {file} cannot be read", file=REQUEST)
    if not differs:
        return tr("its {file} differs in its wording", file=REQUEST)
    return tr("its {file} differs in {parts}", file=REQUEST, parts=", ".join(differs))


def keep(folder, outcome):
    """Write an Outcome's files and its record, all or none. Raises BadInput naming what cannot be written."""
    record = outcome.record | {"files": {name: len(data) for name, data in outcome.files.items()}}
    files = {folder / name: data for name, data in outcome.files.items()}
    write_all(files | {_place(folder, outcome.number): json.dumps(record, separators=(",", ":")).encode()})


def record_of(folder, number):
    """The record of a combination, or None where it is not done in full."""
    try:
        record = json.loads(_place(folder, number).read_bytes())
        whole = all((folder / name).stat().st_size == size for name, size in record["files"].items())
    except (OSError, ValueError, LookupError, TypeError, AttributeError):
        return None
    return record if whole else None


def _place(folder, number):
    return folder / RECORDS / f"{number:06}.json"


def index_header(grid, formats):
    """The columns. A motion's carry its name, a dot and the figure; `refused` holds the reason where there is one."""
    figures = [*(f"landing_{f}" for f in FIGURES), "end"]
    columns = [f"{motion['name']}.{figure}" for motion in grid.document["motions"] for figure in figures]
    return ["number", *(o.path for o in grid.parameters), *(f"{f}_file" for f in formats), *columns, "refused"]


def index_row(grid, formats, number, record):
    """The cells of a combination, as text; those that there is nothing for are empty."""
    files = [f"{file_stem(grid, number)}.{FORMATS[f].ending}" for f in formats]
    motions = record["motions"] or [{"landing": None, "end": ""} for _ in grid.document["motions"]]
    return [
        str(number),
        *map(as_text, grid.values(number)),
        *(f if f in record["files"] else "" for f in files),
        *(cell for motion in motions for cell in _index_cells(motion)),
        " ".join(record["refused"]),
    ]


def _index_cells(motion):
    landing = motion["landing"]
    if landing is None:
        return [*("" for _ in FIGURES), motion["end"]]
    return [*(str(landing[f]) if f == "turns" else f"{landing[f]:.6f}" for f in FIGURES), motion["end"]]


def index_table(rows):
    """Rows of text as a CSV file's bytes."""
    out = io.StringIO(newline="")
    csv.writer(out).writerows([[_inert(cell) for cell in row] for row in rows])
    return out.getvalue().encode("utf-8", "surrogatepass")


def _inert(cell):
    """A cell that a spreadsheet takes for text: a name is no formula, however it begins. Numbers stay as they are."""
    return f"'{cell}" if cell.startswith(_FORMULA) and not NUMBER.fullmatch(cell) else cell
