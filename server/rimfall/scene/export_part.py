"""What a file is asked to be, as a document: every choice with its range, label and default, once."""

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Discriminator, Tag, WithJsonSchema

from ..fields import Strict, Whole, choice, number, of_kind
from ..kinds.motion import Place
from .document import Scene, fps_json_schema, is_fps


def _rate(label):
    return of_kind(label, "fps", None, unit="fps", may_be='1 to 240, "n/d", or null')


def _fps_or_none(value: Any):
    return None if value is None else is_fps(value)


Rate = Annotated[
    Any, BeforeValidator(_fps_or_none), WithJsonSchema({"anyOf": [*fps_json_schema()["anyOf"], {"type": "null"}]})
]
Origin = Annotated[
    Annotated[Literal["axis", "release"], Tag("@word")] | Annotated[Place, Tag("@place")],
    Discriminator(lambda v: "@word" if isinstance(v, str) else "@place"),
]


class ExportPart(Strict):
    """The choices of an export. A rate left out is the scene's own; shown_fps left out is fps."""

    motions: list[str] | None = of_kind(
        "Motions", "names", None, may_be="names of the scene's motions, or null for all", max_length=100
    )
    view: Literal["rotating", "inertial", "inertial_flat"] = choice("View", default="rotating")
    fps: Rate = _rate("Shot at")
    shown_fps: Rate = _rate("Shown at")
    first_frame: Whole = number("First frame", "", 0, 1_000_000, 1001)
    samples_per_frame: Literal[1, 2, 4, 8] = choice("Samples a frame", default=1)
    unit: Literal["m", "cm"] = choice("Unit", default="m")
    up: Literal["Y", "Z"] = choice("Up axis", default="Y")
    origin: Origin = of_kind(
        "Origin", "origin", "axis", may_be="axis, release (the ground under the first release), or a place"
    )
    from_s: float = number("From", "s", 0, 4_200, 0.0)
    to_s: float | None = number("To", "s", 0, 4_200, None)


class ExportRequest(Strict):
    """The body of an export's request."""

    scene: Scene
    export: ExportPart = ExportPart()
