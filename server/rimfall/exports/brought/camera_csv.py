"""A camera out of a table, a row a frame: where it stands, where it looks, its lens.

Columns by name, in any order: `frame` or `time_s`; `x y z` with `qw qx qy qz` (it looks along its own -Z, its Y is up) or with
`aim_x aim_y aim_z`, or places `along height axial` with `aim_along aim_height aim_axial`, each with `_m` or `_cm`; `roll_deg`;
`focal_length_mm` with `film_width_mm` and `film_height_mm`, or `horizontal_fov_deg`, or `vertical_fov_deg`.
"""

import csv
import io
import math

import numpy as np

from ...errors import BadInput, TooMuch, refusal

MOST_ROWS = 20_000


def table_of(content):
    """Columns of a table, name -> (T,). Raises BadInput, naming the row and column, or TooMuch."""
    try:
        text = bytes(content).decode("utf-8-sig")
    except UnicodeDecodeError:
        raise _wrong("file", "bytes", "a table in UTF-8", "This table is not in UTF-8.") from None
    first = text.lstrip("\r\n").partition("\n")[0]
    mark = ";" if first.count(";") > first.count(",") else "\t" if "\t" in first and "," not in first else ","
    rows = [
        row for row in csv.reader(io.StringIO(text.lstrip("\r\n")), delimiter=mark) if any(cell.strip() for cell in row)
    ]
    names = [name.strip().lower() for name in rows[0]] if rows else []
    if len(rows) < 2 or len(set(names)) != len(names):
        raise _wrong(
            "file",
            "a table",
            "a row of column names, each once, and rows under it",
            "This table has no rows under a row of column names.",
        )
    if len(rows) - 1 > MOST_ROWS:
        raise TooMuch(
            refusal(
                "file",
                f"{len(rows) - 1} rows",
                f"at most {MOST_ROWS:,} rows",
                f"This table has {len(rows) - 1:,} rows; at most {MOST_ROWS:,} are read.",
            )
        )
    return {
        name: np.array([_cell(row, k, name, number, mark) for number, row in enumerate(rows[1:], start=2)])
        for k, name in enumerate(names)
    }


def _cell(row, k, name, number, mark):
    text = row[k].strip() if k < len(row) else ""
    try:
        value = float(text.replace(",", ".") if mark == ";" else text)
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        raise _wrong(
            f"row {number}, {name}",
            text,
            "a number",
            f"Row {number} of the table has {text or 'nothing'} in column {name}; it must be a number.",
        )
    return value


def times_of(columns, fps, first_frame):
    """Seconds (T,) of the rows, rising; first_frame: the frame at time 0, None for that of the first row. Raises BadInput."""
    if "time_s" in columns:
        times = columns["time_s"]
    elif "frame" in columns:
        times = (columns["frame"] - (columns["frame"][0] if first_frame is None else first_frame)) / fps
    elif len(next(iter(columns.values()))) == 1:
        times = np.zeros(1)
    else:
        raise _wrong(
            "time_s",
            "nothing",
            "a column time_s or frame",
            "This table has neither a column time_s nor a column frame.",
        )
    late = np.flatnonzero(np.diff(times) <= 0)
    if len(late):
        number = int(late[0]) + 3
        raise _wrong(
            f"row {number}",
            f"{times[number - 2]:g} s",
            "later than the row before it",
            f"Row {number} of the table is not later than the row before it.",
        )
    return times


def three(columns, prefix, names):
    """Three columns (T, 3) in metres, or None where the first of them is not there. Raises BadInput where another is not."""
    for unit, metres in (("_m", 1.0), ("_cm", 0.01), ("", 1.0)):
        wanted = [f"{prefix}{name}{unit}" for name in names]
        if wanted[0] in columns:
            return metres * np.stack([needed(columns, name) for name in wanted], axis=1)
    return None


def needed(columns, name):
    """A column. Raises BadInput where it is not there."""
    if name not in columns:
        raise _wrong(
            name, "nothing", f"a column {name}", f"This table has no column {name}; it has {', '.join(columns)}."
        )
    return columns[name]


def lens_of(columns, aspect):
    """Vertical field of view (T,), radians, and width to height. aspect: where the table does not say. Raises BadInput."""
    if "film_width_mm" in columns and "film_height_mm" in columns:
        aspect = float(columns["film_width_mm"][0] / columns["film_height_mm"][0])
    if "vertical_fov_deg" in columns:
        return np.radians(columns["vertical_fov_deg"]), aspect
    if "horizontal_fov_deg" in columns:
        return 2 * np.arctan(np.tan(np.radians(columns["horizontal_fov_deg"]) / 2) / aspect), aspect
    if "focal_length_mm" in columns:
        return 2 * np.arctan(needed(columns, "film_width_mm") / aspect / 2 / columns["focal_length_mm"]), aspect
    may_be = "vertical_fov_deg, horizontal_fov_deg, or focal_length_mm with film_width_mm"
    raise _wrong("lens", "nothing", may_be, f"This table has no lens; it may have {may_be}.")


def _wrong(field, was, may_be, say):
    return BadInput(refusal("file", was if field == "file" else f"{field}: {was}", may_be, say))
