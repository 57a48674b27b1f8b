"""What a file is asked to be: which motions, which view, which frames, which axes. Resolved: no field is left open but to_s."""

from dataclasses import asdict, dataclass
from fractions import Fraction

import numpy as np

from ..errors import BadInput
from ..language import tr, written
from ..scene.document import frame_rate
from ..scene.reading import as_json, read_choices
from ..scene.validation_errors import wrong

ROTATING, INERTIAL, INERTIAL_FLAT = "rotating", "inertial", "inertial_flat"
ALIVE, TURNING = "alive", "quaternion"
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
class CameraRow:
    """A row of a camera of one's own, as `scene.export_part.CameraRow` has it."""

    time_s: float
    position_m: tuple
    target_m: tuple
    up: tuple
    vertical_fov_deg: float


@dataclass(frozen=True)
class OwnCamera:
    """A camera of one's own, as `scene.export_part.OwnCamera` has it."""

    name: str
    view: str
    aspect: float
    rows: tuple[CameraRow, ...]


@dataclass(frozen=True)
class Retime:
    """keys: (frame, seconds of the scene) of each; between: "smooth" or "linear"."""

    keys: tuple
    between: str

    def as_choice(self):
        """As a document has it."""
        return {"keys": [{"frame": frame, "time_s": time_s} for frame, time_s in self.keys], "between": self.between}


@dataclass(frozen=True)
class Options:
    """motions: names, in the scene's order. fps: sampled at, frames per second of the scene's time; shown_fps: shown at.

    Frame first_frame is time 0, whatever from_s is; below 0 from_s is a wait before it. samples_per_frame: 1, 2, 4 or 8. rows: of tables,
    "alive" or "all"; turning: "none" or "quaternion". hull: the purpose of the habitat in OpenUSD, "proxy", "render" or "default".
    unit: "m" or "cm". up: "Y" or "Z". retime: a Retime, in place of from_s, to_s and first_frame.
    origin: "axis", "release" (the ground under the first motion's release) or a place (along, height, axial, floor).
    stage_cameras: StageCameras that the file has besides its own; cameras: OwnCameras that it has too.
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
    retime: Retime | None = None
    rows: str = "alive"
    turning: str = "none"
    hull: str = "proxy"
    stage_cameras: tuple = ()
    cameras: tuple = ()

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
        "retime": None if options.retime is None else options.retime.as_choice(),
        "rows": options.rows,
        "turning": options.turning,
        "hull": options.hull,
        "stage_cameras": [asdict(one) for one in options.stage_cameras],
        "cameras": [asdict(one) for one in options.cameras],
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
        None
        if part.retime is None
        else Retime(tuple((k.frame, k.time_s) for k in part.retime.keys), part.retime.between),
        part.rows,
        part.turning,
        part.hull,
        tuple(StageCamera(**one.model_dump()) for one in part.stage_cameras),
        tuple(_own(one) for one in part.cameras),
    )
    _check(options, scene)
    return options


def _own(part):
    return OwnCamera(part.name, part.view, part.aspect, tuple(CameraRow(**row.model_dump()) for row in part.rows))


def _chosen(names, scene):
    there = [m.name for m in scene.motions]
    for name in names or []:
        if name not in there:
            raise BadInput(
                wrong("export.motions", name, tr("names among {names}", names=", ".join(there)) if there else "null")
            )
    return tuple(n for n in there if names is None or n in names)


def _check(options, scene):
    if options.to_s is not None and options.to_s < options.from_s:
        raise BadInput(
            wrong(
                "export.to_s",
                options.to_s,
                tr("{time} s or later, as it starts there", time=written(options.from_s, "g")),
            )
        )
    _check_retime(options)
    if options.origin == "release" and not options.motions:
        raise BadInput(wrong("export.origin", "release", tr("axis or a place while no motion is taken")))
    if not isinstance(options.origin, str):
        floors = scene.habitat.grounds
        if options.origin[3] >= floors:
            raise BadInput(
                wrong(
                    "export.origin.floor", options.origin[3], tr("{least} to {greatest}", least=0, greatest=floors - 1)
                )
            )
    for k, camera in enumerate(options.stage_cameras):
        _check_sight(f"export.stage_cameras.{k}", camera)
    for k, camera in enumerate(options.cameras):
        _check_rows(f"export.cameras.{k}", camera)


def _check_retime(options):
    """The frames of a retime curve rise, its times never fall; and nothing else says which frames there are."""
    if options.retime is None:
        return
    frames, times = zip(*options.retime.keys, strict=True)
    for k in range(1, len(frames)):
        if frames[k] <= frames[k - 1]:
            raise BadInput(
                wrong(
                    f"export.retime.keys.{k}.frame",
                    frames[k],
                    tr("after frame {frame}, the key before it", frame=frames[k - 1]),
                )
            )
        if times[k] < times[k - 1]:
            raise BadInput(
                wrong(
                    f"export.retime.keys.{k}.time_s",
                    times[k],
                    tr("{time} s or later, as the key before it", time=written(times[k - 1], "g")),
                )
            )
    for name in ("from_s", "to_s", "first_frame"):
        if getattr(options, name) != getattr(Options, name):
            may_be = tr("left out with a retime curve, which goes from its first key to its last")
            raise BadInput(wrong(f"export.{name}", getattr(options, name), may_be))
    if options.shown_fps != options.fps:
        raise BadInput(
            wrong("export.shown_fps", _rate(options.shown_fps), tr("left out with a retime curve, which is the pace"))
        )


def _check_rows(field, camera):
    """A camera's rows look somewhere, each later than the one before."""
    for k, row in enumerate(camera.rows):
        _check_sight(f"{field}.rows.{k}", row)
        if k and row.time_s <= camera.rows[k - 1].time_s:
            may_be = tr("later than {time} s, the row before it", time=written(camera.rows[k - 1].time_s, "g"))
            raise BadInput(wrong(f"{field}.rows.{k}.time_s", row.time_s, may_be))


def _check_sight(field, camera):
    """A camera looks somewhere, and knows which side of its picture is up."""
    sight, up = np.subtract(camera.target_m, camera.position_m), np.array(camera.up)
    if not np.any(sight):
        raise BadInput(wrong(f"{field}.target_m", list(camera.target_m), tr("another place than the camera's own")))
    if np.linalg.norm(np.cross(sight, up)) <= _STRAIGHT * np.linalg.norm(sight) * np.linalg.norm(up):
        raise BadInput(wrong(f"{field}.up", list(camera.up), tr("a direction across that in which the camera looks")))
