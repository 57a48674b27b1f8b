"""Cameras of one's own, which a command takes out of files and puts into those that it writes."""

from dataclasses import replace
from pathlib import Path

from ..exports.brought.cameras import About, cameras_in, content_of
from ..scene.document import frame_rate
from .common import number


def add_camera_options(parser):
    """Add the options of cameras."""
    group = parser.add_argument_group("cameras of your own in the files")
    group.add_argument(
        "--camera",
        metavar="FILE",
        action="append",
        default=[],
        help="a camera to put into .glb and OpenUSD files: a table (.csv), .usda, .usdc, .usdz or .glb; may be repeated",
    )
    group.add_argument(
        "--camera-view",
        choices=("aboard", "outside"),
        default="aboard",
        help="whether it rides with the deck (default) or stands outside the turning",
    )
    group.add_argument(
        "--camera-origin",
        choices=("axis", "deck"),
        default="axis",
        help="where its file has the origin: on the axis (default), or on the deck under the reference line",
    )
    group.add_argument(
        "--camera-first-frame", metavar="N", help="its file's frame at time 0 (default: that with which it begins)"
    )


def camera_choices(chosen, scene):
    """What the options add to the choices of an export of a Scene. Raises BadInput."""
    if not chosen.camera:
        return {}
    first = chosen.camera_first_frame
    about = About(
        view=chosen.camera_view,
        origin=chosen.camera_origin,
        radius_m=scene.habitat.radius_m,
        fps=frame_rate(scene.sampling.fps),
        first_frame=None if first is None else number("camera-first-frame", first),
    )
    return {"cameras": [one for name in chosen.camera for one in _cameras_of(Path(name), about)]}


def _cameras_of(path, about):
    """The cameras of a file; that of a table, which has no name, is called as the file is."""
    named = path.stem[:60] if path.suffix.lower() == ".csv" else None
    return cameras_in(content_of(path), replace(about, name=named))["cameras"]
