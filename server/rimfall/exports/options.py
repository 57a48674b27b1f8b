"""What a file is asked to be: which motions, which view, which frames, which axes. Resolved: no field is left open but to_s."""

from dataclasses import asdict, dataclass
from fractions import Fraction

import numpy as np

from ..errors import BadInput
from ..scene.document import frame_rate
from ..scene.reading import as_json, read_choices
from ..scene.validation_errors import wrong

ROTATING, INERTIAL, INERTIAL_FLAT = "rotating", "inertial", "inertial_flat"
_STRAIGHT = 1e-9  # of the sine between sight and up: less is along the sight


@dataclass(frozen=True)
class StageCamera:
    """A camera of the page's stages, as `scene.export_part.StageCamera` has it."""

    name: str
    view: str
    position_m: tuple
    target_m: tuple
    up: tuple
    vertical_fov_deg: float
    aspect: float


@dataclass(frozen=True)
class Options:
    """motions: names, in the scene's order. fps: sampled at, frames per second of the scene's time; shown_fps: shown at.

    Frame first_frame is time 0, whatever from_s is. samples_per_frame: 1, 2, 4 or 8. unit: "m" or "cm". up: "Y" or "Z".
    origin: "axis", "release" (the ground under the first motion's release) or a place (along, height, axial, floor).
    stage_cameras: StageCameras that the file has besides its own.
    """

    motions: tuple
    view: str = ROTATING
    fps: Fraction = Fraction(24)
    shown_fps: Fraction = Fraction(24)
    first_frame: int = 1001
    samples_per_frame: int = 1
    unit: str = "m"
    up: str = "Y"
    origin: str | tuple = "axis"
    from_s: float = 0.0
    to_s: float | None = None
    stage_cameras: tuple = ()

    @property
    def frame_format(self):
        """How a table writes the number of a frame: whole, with decimals where there are samples between frames."""
        return "%d" if self.samples_per_frame == 1 else "%.3f"


def choices_of(options):
    """The document of an export's choices that `read_options` makes these Options of."""
    along, height, axial, floor = options.origin if isinstance(options.origin, tuple) else (0.0, 0.0, 0.0, 0)
    place = {"along_m": along, "height_m": height, "axial_m": axial, "floor": floor}
    return {
        "motions": list(options.motions),
        "view": options.view,
        "fps": _rate(options.fps),
        "shown_fps": _rate(options.shown_fps),
        "first_frame": options.first_frame,
        "samples_per_frame": options.samples_per_frame,
        "unit": options.unit,
        "up": options.up,
        "origin": options.origin if isinstance(options.origin, str) else place,
        "from_s": options.from_s,
        "to_s": options.to_s,
        "stage_cameras": [asdict(one) for one in options.stage_cameras],
    }


def _rate(rate):
    return rate.numerator if rate.denominator == 1 else f"{rate.numerator}/{rate.denominator}"


def read_options(choices, scene):
    """Options of an export's choices, a dict (or None for the defaults), for a Scene. Raises BadInput, naming the choice."""
    return options_of(read_choices(as_json(choices or {})), scene)


def options_of(part, scene):
    """The same of an ExportPart."""
    fps = frame_rate(scene.sampling.fps if part.fps is None else part.fps)
    options = Options(
        _chosen(part.motions, scene),
        part.view,
        fps,
        fps if part.shown_fps is None else frame_rate(part.shown_fps),
        part.first_frame,
        part.samples_per_frame,
        part.unit,
        part.up,
        part.origin if isinstance(part.origin, str) else tuple(part.origin.model_dump().values()),
        part.from_s,
        part.to_s,
        tuple(StageCamera(**one.model_dump()) for one in part.stage_cameras),
    )
    _check(options, scene)
    return options


def _chosen(names, scene):
    there = [m.name for m in scene.motions]
    for name in names or []:
        if name not in there:
            raise BadInput(wrong("export.motions", name, "names among " + ", ".join(there) if there else "null"))
    return tuple(n for n in there if names is None or n in names)


def _check(options, scene):
    if options.to_s is not None and options.to_s < options.from_s:
        raise BadInput(wrong("export.to_s", options.to_s, f"{options.from_s:g} s or later, as it starts there"))
    if options.origin == "release" and not options.motions:
        raise BadInput(wrong("export.origin", "release", "axis or a place while no motion is taken"))
    if not isinstance(options.origin, str):
        floors = scene.habitat.grounds
        if options.origin[3] >= floors:
            raise BadInput(wrong("export.origin.floor", options.origin[3], f"0 to {floors - 1}"))
    for k, camera in enumerate(options.stage_cameras):
        _check_sight(f"export.stage_cameras.{k}", camera)


def _check_sight(field, camera):
    """A camera looks somewhere, and knows which side of its picture is up."""
    sight, up = np.subtract(camera.target_m, camera.position_m), np.array(camera.up)
    if not np.any(sight):
        raise BadInput(wrong(f"{field}.target_m", list(camera.target_m), "another place than the camera's own"))
    if np.linalg.norm(np.cross(sight, up)) <= _STRAIGHT * np.linalg.norm(sight) * np.linalg.norm(up):
        raise BadInput(wrong(f"{field}.up", list(camera.up), "a direction across that in which the camera looks"))
