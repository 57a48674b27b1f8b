"""Tracks out of a file, for a match: a table of places aboard, of pixels, or of points (Rimfall's own among them), and the nodes of
OpenUSD and glTF files that move. What the file says of its habitat, where Rimfall wrote it, comes with them.

Columns of a table by name, in any order: `time_s` or `frame`; `along height axial`, `x y z`, each with `_m` or `_cm`, or `x_px y_px`;
`id` where there are several things, and `alive`. Commas, tabs, or semicolons with decimal commas.
"""

import json
from dataclasses import dataclass
from fractions import Fraction

import numpy as np

from ...errors import BadInput, Refused, TooMuch, refusal
from ...language import tr, written
from ...scene.shot.match_request import MOST_ROWS
from ..recovery import recovered
from . import camera_csv, gltf, usd

GREATEST_BYTES = 60_000_000
_MOST_LINES = 200_000
_READERS = {b"glTF": gltf.nodes_of, b"#usd": usd.nodes_of, b"PXR-": usd.nodes_of, b"PK\3\4": usd.nodes_of}
_PLACES, _POINTS = ("along", "height", "axial"), ("x", "y", "z")
_METRES = {"m": 1.0, "cm": 0.01}


@dataclass(frozen=True)
class About:
    """What a file does not say of its tracks. fps: of a table's frames; view: "rotating" or "inertial" axes; origin: "deck" or "axis"; up:
    of a table's points; None: as the file says, where Rimfall wrote it, else turning axes, an origin on the axis, Y up. notes: the
    bytes of the notes beside a table, or None."""

    fps: Fraction = Fraction(24)
    view: str | None = None
    origin: str | None = None
    up: str | None = None
    notes: bytes | None = None


def tracks_in(content, about):
    """The tracks of a file's bytes as plain data, each ready for a MatchRequest, and what is known of their habitat. Raises BadInput or
    TooMuch."""
    if len(content) > GREATEST_BYTES:
        was, may_be = (
            tr("{count} bytes", count=len(content)),
            tr("at most {most} bytes", most=written(GREATEST_BYTES, ",")),
        )
        raise TooMuch(refusal("file", was, may_be, tr("The file is too large.")))
    reader = _READERS.get(bytes(content[:4]))
    known, said = _of_notes(about.notes if reader is None else content)
    axes = {
        "view": about.view or said.get("view", "rotating"),
        "origin": about.origin or said.get("origin", "axis"),
    }
    if reader is None:
        tracks = _of_table(content, about, axes, about.up or said.get("up", "Y"))
    else:
        tracks = [_keys(one.name, one.time_s, one.world[:, :3, 3], axes) for one in reader(bytes(content))]
    if not tracks:
        was, may_be = tr("nothing that moves"), tr("a file with an animated object")
        raise BadInput(refusal("file", was, may_be, tr("Nothing moves in this file.")))
    return {"tracks": tracks, "known": known, "axes": axes}


def _of_notes(content):
    """(known, axes) that Rimfall's own notes tell; ({}, {}) of what it did not write."""
    if content is None:
        return {}, {}
    try:
        back = recovered(content)
        scene = json.loads(back.scene)
    except (Refused, ValueError):
        return {}, {}
    habitat, export = scene.get("habitat", {}), back.export or {}
    steady = habitat.get("shape", "cylinder") == "cylinder" and not habitat.get("spin_ramp")
    known = {name: habitat[name] for name in ("radius_m", "spin_rpm") if steady and name in habitat}
    known |= {"air": scene["air"]} if "air" in scene and known else {}
    origin = export.get("origin", "axis")
    axes = {
        "view": "rotating" if export.get("view", "rotating") == "rotating" else "inertial",
        "up": export.get("up", "Y"),
    }
    return known, axes | ({"origin": "axis"} if origin == "axis" else {})


def _of_table(content, about, axes, up):
    count = len(bytes(content).splitlines())
    if count > _MOST_LINES:
        say = tr(
            "This table has {count} lines; at most {most} rows of one thing are matched. Line {line} is one too many.",
            count=written(count, ","),
            most=written(MOST_ROWS, ","),
            line=written(MOST_ROWS + 2, ","),
        )
        may_be = tr("at most {most} rows", most=written(MOST_ROWS, ","))
        raise TooMuch(refusal("file", tr("{count} lines", count=count), may_be, say))
    columns, lines = camera_csv.table_of(content)
    if "alive" in columns:
        columns, lines = _kept(columns, lines, columns["alive"] != 0)
    if "id" not in columns:
        return [_of_columns(tr("Track"), columns, lines, about, axes, up)]
    ids = np.unique(columns["id"])
    if len(ids) > 500:
        was, say = tr("{count} things", count=len(ids)), tr("This table has more than 500 things in it.")
        raise TooMuch(refusal("file", was, tr("at most {most}", most=500), say))
    return [_of_columns(f"id {one:g}", *_kept(columns, lines, columns["id"] == one), about, axes, up) for one in ids]


def _kept(columns, lines, mask):
    return {name: column[mask] for name, column in columns.items()}, lines[mask]


def _of_columns(name, columns, lines, about, axes, up):
    if "x_px" in columns:
        return {
            "name": name,
            "points": _rows(_timed(columns, lines, about), x_px=columns["x_px"], y_px=_needed(columns, "y_px")),
        }
    along, points = _three(columns, _PLACES), _three(columns, _POINTS)
    if along is not None:
        return {"name": name, "track": _rows({"time_s": _seconds(columns, lines, about)}, **along)}
    if points is None or len(points) < 3:
        names = ", ".join(columns)
        may_be = tr(
            "time_s (or frame) with along_m, height_m and axial_m, with x_m, y_m and z_m, or with x_px and y_px"
        )
        say = tr("This table has columns {names}; it must have {may_be}.", names=names, may_be=may_be)
        raise BadInput(refusal("file", names, may_be, say))
    places = np.stack([points["x_m"], points["y_m"], points["z_m"]], axis=-1)
    time_s = _seconds(columns, lines, about)
    return _keys(name, time_s, places if up == "Y" else places[:, [0, 2, 1]] * [1, 1, -1], axes)


def _seconds(columns, lines, about):
    return camera_csv.times_of(columns, lines, float(about.fps), 0)


def _timed(columns, lines, about):
    """Times or frames of a picture's points; without either the rows are frames one after another."""
    if "time_s" in columns or "frame" in columns:
        return {"time_s": _seconds(columns, lines, about)}
    return {"frame": np.arange(len(columns["x_px"]), dtype=float)}


def _three(columns, names):
    """Columns of lengths in metres by their names there, the last of them only where it is in the table; None without the first."""
    for unit, metres in _METRES.items():
        if f"{names[0]}_{unit}" in columns:
            here = [n for n in names if f"{n}_{unit}" in columns or n != names[-1]]
            return {f"{n}_m": metres * _needed(columns, f"{n}_{unit}") for n in here}
    return None


def _needed(columns, name):
    return camera_csv.needed(columns, name)


def _keys(name, time_s, points, axes):
    x, y, z = points.T
    return {"name": name, "keys": {"rows": _rows({"time_s": time_s}, x_m=x, y_m=y, z_m=z), **axes}}


def _rows(first, **columns):
    """Rows as dicts of numbers."""
    named = {name: column.tolist() for name, column in (first | columns).items()}
    return [dict(zip(named, row, strict=True)) for row in zip(*named.values(), strict=True)]
