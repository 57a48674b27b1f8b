"""index.csv: a row a combination, what was varied, its files, and what came of each motion (RFC 4180: quotes where needed, CRLF)."""

import csv
import io

from ..exports import FORMATS
from . import file_names
from .parameters import as_text

FIGURES = ("time_s", "along_m", "drift_m", "speed_m_s")  # of a landing


def header(grid, formats):
    """The columns. A motion's carry its name, a dot and the figure; `refused` holds the reason where there is one."""
    figures = [*(f"landing_{f}" for f in FIGURES), "end"]
    columns = [f"{motion['name']}.{figure}" for motion in grid.document["motions"] for figure in figures]
    return ["number", *(o.path for o in grid.over), *(f"{f}_file" for f in formats), *columns, "refused"]


def row(grid, formats, number, record):
    """The cells of a combination, as text; those that there is nothing for are empty."""
    files = [f"{file_names.stem(grid, number)}.{FORMATS[f].ending}" for f in formats]
    motions = record["motions"] or [{"landing": None, "end": ""} for _ in grid.document["motions"]]
    return [
        str(number),
        *map(as_text, grid.values(number)),
        *(f if f in record["files"] else "" for f in files),
        *(cell for motion in motions for cell in _cells(motion)),
        " ".join(record["refused"]),
    ]


def _cells(motion):
    landing = motion["landing"]
    return [*("" if landing is None else f"{landing[f]:.6f}" for f in FIGURES), motion["end"]]


def table(rows):
    """Rows of text as a CSV file's bytes."""
    out = io.StringIO(newline="")
    csv.writer(out).writerows(rows)
    return out.getvalue().encode("utf-8", "surrogatepass")
