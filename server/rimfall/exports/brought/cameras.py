"""Cameras out of a file: a table, OpenUSD, glTF, told apart by its first bytes, in the one form of `scene.shot.camera`."""

from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

import numpy as np

from ...errors import BadInput, refusal
from ...language import tr, tr_later, written
from ...physics.coordinates import RoundChart
from ...scene.export_part import GREATEST_ASPECT, GREATEST_CAMERA_ROWS, GREATEST_FOV_DEG, LEAST_ASPECT, LEAST_FOV_DEG
from ...scene.shot import sight
from ...scene.shot.camera import answer, own_camera, wide_as_high
from . import camera_csv, gltf, usd
from .posed import Posed, from_z_up

GREATEST_BYTES = 60_000_000
_SIGNS = {b"glTF": gltf.cameras_of, b"#usd": usd.cameras_of, b"PXR-": usd.cameras_of, b"PK\3\4": usd.cameras_of}
_EQUAL_M, _FARTHEST_M = 1e-9, 1e6
_FIRST_S, _LAST_S = -600.0, 4_200.0  # as of an export
_AHEAD_M = 10.0  # how far before a camera that only has a direction what it looks at is taken


@dataclass(frozen=True)
class About:
    """What a file does not say of its camera. name: None for its own; view: "aboard" or "outside"; origin: "axis", or "deck", the place on
    the deck under the reference line, for which radius_m is needed; fps: of a table's frames; first_frame: the frame of a table, or the
    time code of OpenUSD, at time 0 (None: that with which it begins); up: of a table; aspect: where nothing says it."""

    name: str | None = None
    view: str = "aboard"
    origin: str = "axis"
    radius_m: float | None = None
    fps: Fraction = Fraction(24)
    first_frame: float | None = None
    up: str = "Y"
    aspect: float = 16 / 9


def content_of(path):
    """The bytes of a file. Raises BadInput."""
    try:
        return Path(path).read_bytes()
    except (OSError, ValueError) as error:
        say = tr("Cannot read {file}: {why}.", file=path, why=getattr(error, "strerror", None) or error)
        raise BadInput(refusal("file", str(path), tr("a file that can be read"), say)) from None


def cameras_in(content, about):
    """The answer about a file's cameras as plain data. Raises BadInput or TooMuch."""
    if about.origin == "deck" and about.radius_m is None:
        say = tr("An origin on the deck needs the habitat's radius (radius_m).")
        raise BadInput(refusal("radius_m", tr("nothing"), tr("a radius, with origin=deck"), say))
    if len(content) > GREATEST_BYTES:
        counts = {"count": written(len(content), ","), "most": written(GREATEST_BYTES, ",")}
        say = tr("The file has {count} bytes; at most {most} are read.", **counts)
        was, may_be = tr("{count} bytes", count=len(content)), tr("at most {most} bytes", **counts)
        raise BadInput(refusal("file", was, may_be, say))
    chart = None if about.radius_m is None else RoundChart(about.radius_m)
    reader = _SIGNS.get(bytes(content[:4]))
    cameras = (
        [_of_table(content, about, chart)]
        if reader is None
        else [_of_posed(one, about) for one in reader(bytes(content), about.first_frame)]
    )
    if not cameras:
        say = tr("There is no perspective camera in this file.")
        raise BadInput(refusal("file", tr("no camera"), tr("a file with a camera"), say))
    return answer(cameras, chart)


def _of_posed(posed: Posed, about):
    """A camera that a file of three dimensions has: it looks along its own -Z, its Y is up."""
    time_s, world = posed.time_s, posed.world
    axes = world[:, :3, :3] / np.linalg.norm(world[:, :3, :3], axis=1, keepdims=True)
    position = _on_axis(world[:, :3, 3], about)
    fov_deg = np.degrees(posed.fov_rad)
    return _own(
        posed.name,
        about,
        posed.aspect or about.aspect,
        time_s,
        (position, position - _AHEAD_M * axes[:, :, 2], axes[:, :, 1]),
        fov_deg,
    )


def _of_table(content, about, chart):
    columns, lines = camera_csv.table_of(content)
    time_s = camera_csv.times_of(columns, lines, float(about.fps), about.first_frame)
    fov, aspect = camera_csv.lens_of(columns, about.aspect)
    position = camera_csv.three(columns, "", "xyz")
    if position is None:
        seen = _by_places(columns, chart)
    elif "qw" in columns:
        world = np.zeros((len(time_s), 4, 4))
        quaternion = np.stack([camera_csv.needed(columns, name) for name in ("qx", "qy", "qz", "qw")], axis=1)
        if np.any(np.linalg.norm(quaternion, axis=1) < 1e-9):
            say = tr("A row of the table has a quaternion of 0, 0, 0, 0.")
            raise BadInput(refusal("file", "0, 0, 0, 0", tr("a quaternion that is not all 0"), say))
        world[:, :3, :3], world[:, :3, 3], world[:, 3, 3] = gltf.rotation(quaternion), position, 1.0
        world = from_z_up(world) if about.up == "Z" else world
        eye, axes = _on_axis(world[:, :3, 3], about), world[:, :3, :3]
        seen = eye, eye - _AHEAD_M * axes[:, :, 2], axes[:, :, 1]
    else:
        seen = _by_aim(columns, about, position)
    return _own("Camera", about, aspect, time_s, seen, np.degrees(fov))


def _by_places(columns, chart):
    """By places aboard, which a radius makes points."""
    place = camera_csv.three(columns, "", ("along", "height", "axial"))
    if place is None:
        camera_csv.needed(columns, "x_m")
    if chart is None:
        say = tr("Places aboard need the habitat's radius (radius_m).")
        raise BadInput(refusal("radius_m", tr("nothing"), tr("a radius, with places aboard"), say))
    aim = camera_csv.three(columns, "aim_", ("along", "height", "axial"))
    if aim is None:
        camera_csv.needed(columns, "aim_along_m")
    return sight.placed(chart, place, aim, columns.get("roll_deg", np.zeros(len(place))))


def _by_aim(columns, about, position):
    """By a point that it looks at; its up is that of the file, banked."""
    aim = camera_csv.three(columns, "aim_", "xyz")
    if aim is None:
        camera_csv.needed(columns, "aim_x_m")
    points = [position, aim]
    if about.up == "Z":
        points = [np.stack([p[:, 0], p[:, 2], -p[:, 1]], axis=1) for p in points]
    eye, aim = (_on_axis(p, about) for p in points)
    ahead = aim - eye
    right = np.cross(ahead, [0.0, 1.0, 0.0])
    right = np.where(np.linalg.norm(right, axis=1, keepdims=True) < 1e-9, [1.0, 0.0, 0.0], right)
    right, ahead = (v / np.maximum(np.linalg.norm(v, axis=1, keepdims=True), 1e-300) for v in (right, ahead))
    roll = np.radians(columns.get("roll_deg", np.zeros(len(eye))))[:, None]
    return eye, aim, np.cos(roll) * np.cross(right, ahead) + np.sin(roll) * right


def _on_axis(points, about):
    """Points (T, 3) with the origin on the axis."""
    return points - [0.0, about.radius_m, 0.0] if about.origin == "deck" else points


def _own(name, about, aspect, time_s, seen, fov_deg):
    """The camera in its one form. Raises BadInput where it has too many rows, or one that no camera can have."""
    position, target, up = seen
    rows = len(time_s)
    if rows > GREATEST_CAMERA_ROWS:
        may_be = tr("at most {most}", most=written(GREATEST_CAMERA_ROWS, ","))
        say = tr(
            "The camera {name} has {count} rows; it must be {may_be}.",
            name=name,
            count=written(rows, ","),
            may_be=may_be,
        )
        raise BadInput(refusal("file", tr("{count} rows", count=rows), may_be, say))
    if not LEAST_ASPECT <= aspect <= GREATEST_ASPECT:
        shown, may_be = written(aspect, "g"), wide_as_high()
        say = tr(
            "The picture of the camera {name} is {aspect} times as wide as high; it must be {may_be}.",
            name=name,
            aspect=shown,
            may_be=may_be,
        )
        raise BadInput(refusal("file", shown, may_be, say))
    _rows_can_be(name, position, target, up, fov_deg, time_s)
    return own_camera(about.name or name, about.view, aspect, time_s, position, target, up, fov_deg)


def _rows_can_be(name, position, target, up, fov_deg, time_s):
    """Raise BadInput of the first row that no camera can have."""
    far_m = np.abs(np.concatenate([position, target], axis=1)).max(axis=1)
    checks = (
        (
            np.linalg.norm(target - position, axis=1) > _EQUAL_M,
            tr("a place to look at"),
            tr_later("Row {row} of the camera {name} looks at where it stands; it must be {may_be}."),
        ),
        (
            np.linalg.norm(np.cross(target - position, up), axis=1) > _EQUAL_M,
            tr("an up across its sight"),
            tr_later("Row {row} of the camera {name} looks straight along its own up; it must be {may_be}."),
        ),
        (
            (fov_deg >= LEAST_FOV_DEG) & (fov_deg <= GREATEST_FOV_DEG),
            tr("{least} to {most}°", least=written(LEAST_FOV_DEG, "g"), most=written(GREATEST_FOV_DEG, "g")),
            tr_later("Row {row} of the camera {name} has a vertical field of view of {angle}°; it must be {may_be}."),
        ),
        (
            far_m <= _FARTHEST_M,
            tr("within {length} m", length=written(_FARTHEST_M, ",.0f")),
            tr_later("Row {row} of the camera {name} is too far away; it must be {may_be}."),
        ),
        (
            (time_s >= _FIRST_S) & (time_s <= _LAST_S),
            tr("{first} to {last} s", first=written(_FIRST_S, "g"), last=written(_LAST_S, "g")),
            tr_later("Row {row} of the camera {name} is at {time} s; it must be {may_be}."),
        ),
    )
    for holds, may_be, say in checks:
        for k in np.flatnonzero(~holds)[:1].tolist():
            told = {"name": name, "row": k + 1, "angle": written(fov_deg[k], "g"), "time": written(time_s[k], "g")}
            raise BadInput(refusal("file", tr("row {row}", row=k + 1), may_be, tr(say, **told, may_be=may_be)))
