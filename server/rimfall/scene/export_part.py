"""What a file is asked to be, as a document: every choice with its range, label and default, once."""

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Discriminator, Field, Tag, WithJsonSchema

from ..fields import Strict, number
from ..kinds.motion import Place
from .document import Scene, fps_json_schema, is_fps


def _choice(label, default):
    return Field(default, json_schema_extra={"label": label, "unit": "", "kind": "choice"})


def _rate(label):
    return Field(
        None,
        json_schema_extra={"label": label, "unit": "fps", "kind": "fps", "may_be": '1 to 240, "n/d", or null'},
    )


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

    motions: list[str] | None = Field(
        None,
        max_length=100,
        json_schema_extra={
            "label": "Motions",
            "unit": "",
            "kind": "names",
            "may_be": "names of the scene's motions, or null for all",
        },
    )
    view: Literal["rotating", "inertial", "inertial_flat"] = _choice("View", "rotating")
    fps: Rate = _rate("Shot at")
    shown_fps: Rate = _rate("Shown at")
    first_frame: int = number("First frame", "", 0, 1_000_000, 1001)
    samples_per_frame: Literal[1, 2, 4, 8] = _choice("Samples a frame", 1)
    unit: Literal["m", "cm"] = _choice("Unit", "m")
    up: Literal["Y", "Z"] = _choice("Up axis", "Y")
    origin: Origin = Field(
        "axis",
        json_schema_extra={
            "label": "Origin",
            "unit": "",
            "kind": "origin",
            "may_be": "axis, release (the ground under the first release), or a place",
        },
    )
    from_s: float = number("From", "s", 0, 4_200, 0.0)
    to_s: float | None = number("To", "s", 0, 4_200, None)


class ExportRequest(Strict):
    """The body of an export's request."""

    scene: Scene
    export: ExportPart = ExportPart()
