"""What a file is asked to be, as a document: every choice with its range, label and default, once."""

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Discriminator, Tag, WithJsonSchema

from ..fields import Strict, Vector, Whole, choice, listed, number, of_kind, text, vector
from ..kinds.motion import Place
from ..language import tr_later, tr_later_as
from .document import Scene, fps_json_schema, is_fps


def _rate(label):
    return of_kind(label, "fps", None, unit="fps", may_be=tr_later('1 to 240, "n/d", or null'))


def _fps_or_none(value: Any):
    return None if value is None else is_fps(value)


Rate = Annotated[
    Any, BeforeValidator(_fps_or_none), WithJsonSchema({"anyOf": [*fps_json_schema()["anyOf"], {"type": "null"}]})
]
Origin = Annotated[
    Annotated[Literal["axis", "release"], Tag("@word")] | Annotated[Place, Tag("@place")],
    Discriminator(lambda v: "@word" if isinstance(v, str) else "@place"),
]
LEAST_FOV_DEG, GREATEST_FOV_DEG = 0.1, 170
LEAST_ASPECT, GREATEST_ASPECT = 0.05, 20  # width to height


class StageCamera(Strict):
    """A camera of the page's stages as it stood: X spinward, Y up and Z along the spin vector at the reference line, the origin on
    the axis; of the view "aboard" in the space that turns, of "outside" in the one that does not."""

    name: str = text(tr_later("Name"), 60, min_length=1)
    view: Literal["aboard", "outside"] = choice(tr_later("View"), default="aboard")
    position_m: Vector = vector(tr_later("Position"), "m")
    target_m: Vector = vector(tr_later("Looks at"), "m")
    up: Vector = vector(tr_later_as("direction", "Up"), "", (0.0, 1.0, 0.0))
    vertical_fov_deg: float = number(tr_later("Field of view"), "°", LEAST_FOV_DEG, GREATEST_FOV_DEG, 30.0)
    aspect: float = number(tr_later("Width to height"), "", LEAST_ASPECT, GREATEST_ASPECT, 16 / 9)


GREATEST_CAMERA_ROWS = 5_000


class CameraRow(Strict):
    """Where a camera of one's own is at a time of the scene, and what it sees; as of a StageCamera."""

    time_s: float = number(tr_later("Time"), "s", -600, 4_200, 0.0)
    position_m: Vector = vector(tr_later("Position"), "m")
    target_m: Vector = vector(tr_later("Looks at"), "m")
    up: Vector = vector(tr_later_as("direction", "Up"), "", (0.0, 1.0, 0.0))
    vertical_fov_deg: float = number(tr_later("Field of view"), "°", LEAST_FOV_DEG, GREATEST_FOV_DEG, 30.0)


class OwnCamera(Strict):
    """A camera of one's own: still, with one row, or with a row a frame; between rows it goes straight, before the first and after the last
    it stands. The view is as of a StageCamera."""

    name: str = text(tr_later("Name"), 60, min_length=1)
    view: Literal["aboard", "outside"] = choice(tr_later("View"), default="aboard")
    aspect: float = number(tr_later("Width to height"), "", LEAST_ASPECT, GREATEST_ASPECT, 16 / 9)
    rows: list[CameraRow] = listed(tr_later("Rows of the camera"), GREATEST_CAMERA_ROWS, least=1)


class RetimeKey(Strict):
    """The scene's time at a frame of the file."""

    frame: Whole = number(tr_later("Frame"), "", -1_000_000, 1_000_000)
    time_s: float = number(tr_later("Time"), "s", -600, 4_200)


class Retime(Strict):
    """The scene's time against the file's frames, from the first key to the last: slow motion, a freeze, a ramp."""

    keys: list[RetimeKey] = listed(tr_later("Keys"), 200, least=2)
    between: Literal["smooth", "linear"] = choice(tr_later("Between keys"), default="smooth")


class ExportPart(Strict):
    """The choices of an export. A rate left out is the scene's own; shown_fps left out is fps."""

    motions: list[str] | None = of_kind(
        tr_later("Motions"),
        "names",
        None,
        may_be=tr_later("names of the scene's motions, or null for all"),
        max_length=100,
    )
    view: Literal["rotating", "inertial", "inertial_flat"] = choice(tr_later("View"), default="rotating")
    fps: Rate = _rate(tr_later("Shot at"))
    shown_fps: Rate = _rate(tr_later("Shown at"))
    first_frame: Whole = number(tr_later("First frame"), "", -1_000_000, 1_000_000, 1001)
    samples_per_frame: Literal[1, 2, 4, 8] = choice(tr_later("Samples per frame"), default=1)
    unit: Literal["m", "cm"] = choice(tr_later("Unit"), default="m")
    up: Literal["Y", "Z"] = choice(tr_later("Up axis"), default="Y")
    origin: Origin = of_kind(
        tr_later("Origin"),
        "origin",
        "axis",
        may_be=tr_later("axis, release (the ground under the first release), or a place"),
    )
    from_s: float = number(tr_later_as("time", "From"), "s", -600, 4_200, 0.0)
    to_s: float | None = number(tr_later_as("time", "To"), "s", -600, 4_200, None)
    retime: Retime | None = of_kind(tr_later("Retime curve"), "part", None)
    rows: Literal["alive", "all"] = choice(tr_later("Rows of tables"), default="alive")
    turning: Literal["none", "quaternion"] = choice(tr_later("Orientation in tables"), default="none")
    hull: Literal["proxy", "render", "default"] = choice(tr_later("Purpose of the habitat"), default="proxy")
    stage_cameras: list[StageCamera] = listed(tr_later("Cameras of the stages"), 16, [])
    cameras: list[OwnCamera] = listed(tr_later("Cameras of your own"), 4, [])


class ExportRequest(Strict):
    """The body of an export's request."""

    scene: Scene
    export: ExportPart = ExportPart()
