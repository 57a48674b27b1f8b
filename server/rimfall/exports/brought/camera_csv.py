"""A camera out of a table, a row a frame: where it stands, where it looks, its lens.

Columns by name, in any order: `frame` or `time_s`; `x y z` with `qw qx qy qz` (it looks along its own -Z, its Y is up) or with
`aim_x aim_y aim_z`, or places `along height axial` with `aim_along aim_height aim_axial`, each with `_m` or `_cm`; `roll_deg`;
`focal_length_mm` with `film_width_mm` and `film_height_mm`, or `horizontal_fov_deg`, or `vertical_fov_deg`.
"""

import csv
import io
import math
import re

import numpy as np

from ...errors import BadInput, TooMuch, refusal
from ...language import tr, written

MOST_ROWS = 20_000


def table_of(content):
    """A table's columns, name -> (T,), and the line (T,) of the file on which each row stands. Lines that are empty or begin with # are left
    out. Raises BadInput, naming the line and column, or TooMuch."""
    try:
        text = bytes(content).decode("utf-8-sig")
    except UnicodeDecodeError:
        raise _wrong("file", tr("bytes"), tr("a table in UTF-8"), tr("This table is not in UTF-8.")) from None
    lines, mark = _cells(text)
    if len(lines) - 1 > MOST_ROWS:
        counts = {"count": written(len(lines) - 1, ","), "most": written(MOST_ROWS, ",")}
        may_be, say = (
            tr("at most {most} rows", **counts),
            tr("This table has {count} rows; at most {most} are read.", **counts),
        )
        raise TooMuch(refusal("file", tr("{count} rows", count=len(lines) - 1), may_be, say))
    names = _names(lines)
    for number, row in lines[1:]:
        if any(cell.strip() for cell in row[len(names) :]):
            spare = tr("{values} values under {columns} columns", values=len(row), columns=len(names))
            say = tr("Line {line} of the table has {what}.", line=number, what=spare)
            if mark != ";":
                say = tr(
                    "Line {line} of the table has {what}; with decimal commas, put semicolons between the columns.",
                    line=number,
                    what=spare,
                )
            raise _wrong(tr("line {line}", line=number), spare, tr("a value a column"), say)
    columns = {
        name: np.array([_cell(row, k, name, number, mark) for number, row in lines[1:]]) for k, name in enumerate(names)
    }
    return columns, np.array([number for number, _ in lines[1:]])


def _cells(text):
    """[(line, its cells)] of what is not empty, the first of them the names, and what stands between cells. Raises BadInput."""
    text = "\n".join("" if line.startswith("#") else line for line in re.split("\r\n|\r|\n", text))
    first = text.lstrip("\n").partition("\n")[0]
    mark = ";" if first.count(";") > first.count(",") else "\t" if "\t" in first and "," not in first else ","
    reader = csv.reader(io.StringIO(text), delimiter=mark)
    try:
        return [(reader.line_num, row) for row in reader if any(cell.strip() for cell in row)], mark
    except csv.Error as error:
        line = reader.line_num
        say = tr("Line {line} of the table cannot be read: {why}.", line=line, why=error)
        may_be = tr("a table of commas, semicolons or tabs")
        raise _wrong("file", tr("line {line}", line=line), may_be, say) from None


def _names(lines):
    """The columns' names, the first line's. Raises BadInput."""
    names = [name.strip().lower() for name in lines[0][1]] if lines else []
    while names and not names[-1]:  # a mark at the end of each line
        names.pop()
    may_be = tr("a line of column names, each once, and rows under it")
    twice = next((name for k, name in enumerate(names) if name in names[:k]), None)
    if any(_is_number(name) for name in names):
        say = tr("The first line of this table has numbers; it must name the columns.")
        raise _wrong("file", ", ".join(names), may_be, say)
    if twice is not None:
        say = (
            tr("This table has two columns {name}.", name=twice)
            if twice
            else tr("This table has two columns without a name.")
        )
        raise _wrong("file", tr("{name} twice", name=twice), may_be, say)
    if len(lines) < 2:
        raise _wrong("file", tr("a table"), may_be, tr("This table has no rows under a line of column names."))
    return names


def _is_number(text):
    try:
        float(text.replace(",", "."))
    except ValueError:
        return False
    return True


def _cell(row, k, name, number, mark):
    text = row[k].strip() if k < len(row) else ""
    try:
        value = float(text.replace(",", ".") if mark == ";" else text)
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        say = tr(
            "Line {line} of the table has {value} in column {name}; it must be {may_be}.",
            line=number,
            value=text[:40] or tr("nothing"),
            name=name,
            may_be=tr("a number"),
        )
        raise _wrong(tr("line {line}, {name}", line=number, name=name), text, tr("a number"), say)
    return value


def times_of(columns, lines, fps, first_frame):
    """Seconds (T,) of the rows, which stand on lines (T,), rising; first_frame: the frame at time 0, None for that of the first row.
    Raises BadInput."""
    if "time_s" in columns:
        times = columns["time_s"]
    elif "frame" in columns:
        times = (columns["frame"] - (columns["frame"][0] if first_frame is None else first_frame)) / fps
    elif len(next(iter(columns.values()))) == 1:
        times = np.zeros(1)
    else:
        say = tr("This table has neither a column time_s nor a column frame.")
        raise _wrong("time_s", tr("nothing"), tr("a column time_s or frame"), say)
    late = np.flatnonzero(np.diff(times) <= 0)
    if len(late):
        name = "time_s" if "time_s" in columns else "frame"
        before, value = (written(columns[name][k], ".10g") for k in (late[0], late[0] + 1))
        place = {"line": int(lines[late[0] + 1]), "name": name}
        than = tr("later than the row before it, {before}", before=before)
        say = tr(
            "Line {line} of the table has {value} in column {name}; it must be {may_be}.",
            **place,
            value=value,
            may_be=than,
        )
        raise _wrong(tr("line {line}, {name}", **place), value, than, say)
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
        say = tr("This table has no column {name}; it has {names}.", name=name, names=", ".join(columns))
        raise _wrong(name, tr("nothing"), tr("a column {name}", name=name), say)
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
    may_be = tr("vertical_fov_deg, horizontal_fov_deg, or focal_length_mm with film_width_mm")
    say = tr("This table has no lens; it may have {may_be}.", may_be=may_be)
    raise _wrong(tr("lens"), tr("nothing"), may_be, say)


def _wrong(field, was, may_be, say):
    return BadInput(refusal("file", was if field == "file" else f"{field}: {was}", may_be, say))
