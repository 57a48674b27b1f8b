"""The folder of a run: what was asked (vary.json), the files, and under .rimfall a record of every combination done.

A record is written with its combination's files, all or none and the record last; so a run that was stopped, by whatever, goes on by
doing what has no record, or whose files are not there in full.
"""

import json
from pathlib import Path

from .. import __version__
from ..errors import BadInput, refusal
from ..exports.writing import write_all

ASKED = "vary.json"
RECORDS = ".rimfall"


def opened(folder, asked):
    """Make the folder, or find it to be of this very run; returns its Path. Raises BadInput."""
    folder, wanted = Path(folder), _as_bytes(asked)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        found = sorted(p.name for p in folder.iterdir() if not p.name.startswith("."))
        before = (folder / ASKED).read_bytes() if ASKED in found else None
        (folder / RECORDS).mkdir(exist_ok=True)
        for half in [*folder.glob(".*.part"), *(folder / RECORDS).glob(".*.part")]:  # of a run that was killed
            half.unlink(missing_ok=True)
    except OSError as error:
        say = f"Cannot write into {folder}: {error.strerror or error}."
        raise BadInput(refusal("out", str(folder), "a folder that can be written", say)) from None
    if before is None and found:
        raise _other(folder, f"{folder} holds other files ({found[0]}); choose a new or an empty folder.")
    if before is None:
        write_all({folder / ASKED: wanted})
    elif before != wanted:
        raise _other(folder, f"{folder} holds another run ({_difference(before, asked)}); choose another folder.")
    return folder


def _other(folder, say):
    return BadInput(refusal("out", str(folder), "a new or an empty folder, or that of the same run", say))


def _as_data(asked):
    return {
        "program": f"Rimfall {__version__}",
        "over": [{"path": path, "values": list(values)} for path, values in asked.over],
        "export": {"formats": list(asked.formats), "options": json.loads(asked.export)},
        "scene": json.loads(asked.scene),
    }


def _as_bytes(asked):
    return (json.dumps(_as_data(asked), indent=1, ensure_ascii=False) + "\n").encode("utf-8", "surrogatepass")


def _difference(before, asked):
    """In a few words, in what another run's folder differs."""
    try:
        before = json.loads(before)
        differs = [key for key, value in _as_data(asked).items() if before.get(key) != value]
    except (ValueError, AttributeError):
        return f"its {ASKED} cannot be read"
    return f"its {ASKED} differs in {', '.join(differs) or 'its wording'}"


def keep(folder, outcome):
    """Write an Outcome's files and its record, all or none. Raises BadInput naming what cannot be written."""
    record = outcome.record | {"files": {name: len(data) for name, data in outcome.files.items()}}
    files = {folder / name: data for name, data in outcome.files.items()}
    write_all(files | {_place(folder, outcome.number): json.dumps(record, separators=(",", ":")).encode()})


def record(folder, number):
    """The record of a combination, or None where it is not done in full."""
    try:
        found = json.loads(_place(folder, number).read_bytes())
        whole = all((folder / name).stat().st_size == size for name, size in found["files"].items())
    except (OSError, ValueError, LookupError, TypeError, AttributeError):
        return None
    return found if whole else None


def _place(folder, number):
    return folder / RECORDS / f"{number:06}.json"
