"""What is asked of a path that was seen: where it was when, how well that is known, and what is known of its habitat and release."""

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Discriminator, Tag, WithJsonSchema
from pydantic_core import PydanticCustomError

from ...fields import Strict, choice, linear, listed, log, number, of_kind
from ...kinds.motion import BodyPart, Place
from ...language import tr_later
from ...shapes.part import GREATEST_RADIUS_M, GREATEST_SPIN_RPM, LEAST_RADIUS_M, TurningPart
from ..document import AirPart, fps_json_schema, is_fps

MOST_ROWS = 10_000
_MOST_PX = 1e6


class TrackRow(Strict):
    """Where it was at a time, aboard; the time in seconds from anywhere."""

    time_s: float = number(tr_later("Time"), "s", -1e6, 1e6)
    along_m: float = number(tr_later("Along the deck"), "m", -1e6, 1e6)
    height_m: float = number(tr_later("Height"), "m", -1e5, 1e5)
    axial_m: float | None = number(tr_later("Along the axis"), "m", -1e6, 1e6, None)


class KeyRow(Strict):
    """Where an animated object was at a time, in the axes of its file: X spinward, Y up, Z along the spin vector."""

    time_s: float = number(tr_later("Time"), "s", -1e6, 1e6)
    x_m: float = number(tr_later("X"), "m", -1e6, 1e6)
    y_m: float = number(tr_later("Y"), "m", -1e6, 1e6)
    z_m: float = number(tr_later("Z"), "m", -1e6, 1e6)


class Keys(Strict):
    """The keys of an animated object."""

    rows: list[KeyRow] = listed(tr_later("Rows"), MOST_ROWS)
    origin: Literal["deck", "axis"] = choice(tr_later("Origin"), ("deck", "axis"), "deck")
    view: Literal["rotating", "inertial"] = choice(tr_later("View"), ("rotating", "inertial"), "rotating")


def _shown(model, name):
    """What a slider shows of a field of a scene document."""
    return model.model_fields[name].json_schema_extra["shown"]


class Spot(Strict):
    """A place aboard."""

    along_m: float = number(tr_later("Along the deck"), "m", -1e6, 1e6, 0.0, shown=_shown(Place, "along_m"))
    height_m: float = number(tr_later("Height"), "m", -1e5, 1e5, shown=_shown(Place, "height_m"))
    axial_m: float = number(tr_later("Along the axis"), "m", -1e6, 1e6, 0.0, shown=_shown(Place, "axial_m"))


class PicturePoint(Strict):
    """Where it was in a frame, pixels from the picture's top left corner; a time_s of its own goes before the frame's."""

    frame: float | None = number(tr_later("Frame"), "", -1e7, 1e7, None)
    time_s: float | None = number(tr_later("Time"), "s", -1e6, 1e6, None)
    x_px: float = number(tr_later("Pixels from the left"), "px", -_MOST_PX, _MOST_PX)
    y_px: float = number(tr_later("Pixels from the top"), "px", -_MOST_PX, _MOST_PX)


def _pixel(value: Any):
    """Two figures."""
    pair = isinstance(value, (list, tuple)) and len(value) == 2
    if value is None or (pair and all(_is_pixel(v) for v in value)):
        return value
    raise PydanticCustomError("pixel", "pixel")


def _is_pixel(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool) and abs(value) <= _MOST_PX


_TWO = {
    "type": "array",
    "items": {"type": "number", "minimum": -_MOST_PX, "maximum": _MOST_PX},
    "minItems": 2,
    "maxItems": 2,
}
Pixel = Annotated[Any, BeforeValidator(_pixel), WithJsonSchema(_TWO)]
NoPixel = Annotated[Any, BeforeValidator(_pixel), WithJsonSchema({"anyOf": [_TWO, {"type": "null"}]})]
_PAIR_OR_NULL = tr_later(
    "two figures [x, y], pixels from the top left, each within ± 1,000,000, or null for the line's first end"
)
_PAIR = tr_later("two figures [x, y], pixels from the top left, each within ± 1,000,000")


class Plane(Strict):
    """A picture that looks along the axis: a line of known length in it, its first end on the deck unless deck_px says otherwise."""

    from_px: Pixel = of_kind(tr_later("The line's first end"), "pixel", may_be=_PAIR)
    to_px: Pixel = of_kind(tr_later("The line's other end"), "pixel", may_be=_PAIR)
    distance_m: float = number(tr_later("Length of the line"), "m", 0, 1e6, above=True, shown=log(0.01, 10_000))
    deck_px: NoPixel = of_kind(tr_later("A pixel on the deck"), "pixel", None, may_be=_PAIR_OR_NULL)
    up: Pixel = of_kind(
        tr_later("Up in the picture"),
        "pixel",
        [0.0, -1.0],
        may_be=tr_later("a direction [x, y] in the picture, not both 0"),
    )
    right_is: Literal["spinward", "antispinward"] = choice(
        tr_later("To the right is"), ("spinward", "antispinward"), "spinward"
    )


class PictureCamera(Strict):
    """A camera that rides with the deck; it is rolled clockwise as seen from behind it. time_s: of one row of several, between which it goes
    evenly; rows without are one for each point."""

    time_s: float | None = number(tr_later("Time"), "s", -1e6, 1e6, None)
    field_of_view_deg: float = number(tr_later("Horizontal field of view"), "°", 0.1, 175, shown=linear(1, 175))
    width_px: float = number(tr_later("Width of the picture"), "px", 1, _MOST_PX)
    height_px: float = number(tr_later("Height of the picture"), "px", 1, _MOST_PX)
    position: Spot
    look_at: Spot
    roll_deg: float = number(tr_later("Bank"), "°", -360, 360, 0.0, shown=linear(-180, 180))


FrameRate = Annotated[Any, BeforeValidator(lambda v: v if v is None else is_fps(v)), WithJsonSchema(fps_json_schema())]


def _many(value: Any):
    """The tag of a camera's model, or of a list of them, which no field's name shows."""
    return "@cameras" if isinstance(value, list) else "@camera"


SEEN_BY = ("@camera", "@cameras")
SeenBy = Annotated[
    Annotated[PictureCamera, Tag("@camera")] | Annotated[list[PictureCamera], Tag("@cameras")], Discriminator(_many)
]


class Picture(Strict):
    """Points in pictures, and how pixels become metres: a plane, or a camera, or a camera for each point."""

    points: list[PicturePoint] = listed(tr_later("Points"), MOST_ROWS)
    fps: FrameRate = of_kind(
        tr_later("Frames per second"), "fps", None, unit="fps", may_be=tr_later('1 to 240, or "n/d"')
    )
    plane: Plane | None = None
    camera: SeenBy | None = of_kind(
        tr_later("Camera"), "part", None, may_be=tr_later("a camera, a list of cameras, or null")
    )


class KnownPart(Strict):
    """What is known of the habitat, the air and the release, which is at the first row."""

    radius_m: float | None = number(
        tr_later("Radius"), "m", LEAST_RADIUS_M, GREATEST_RADIUS_M, None, shown=_shown(TurningPart, "radius_m")
    )
    spin_rpm: float | None = number(
        tr_later("Spin"), "rpm", 0, GREATEST_SPIN_RPM, None, shown=_shown(TurningPart, "spin_rpm")
    )
    gravity_g: float | None = number(tr_later("Gravity at the deck"), "g", 0, 1e6, None, above=True, shown=linear(0, 2))
    start: Spot | None = None
    speed: float | None = number(tr_later("Speed at the first row"), "m/s", 0, 3_000, None, shown=linear(0, 30))
    air: AirPart | None = None
    body: BodyPart | None = of_kind(tr_later("Body"), "body", None)


class MatchRequest(Strict):
    """A path that was seen, and what is known."""

    track: list[TrackRow] | None = listed(tr_later("Track"), MOST_ROWS, None)
    picture: Picture | None = None
    keys: Keys | None = None
    accuracy_m: float | None = number(tr_later("Accuracy"), "m", 0, 1_000, None, above=True, shown=log(0.0001, 100))
    accuracy_px: float | None = number(tr_later("Accuracy"), "px", 0, 10_000, None, above=True, shown=log(0.1, 100))
    known: KnownPart = KnownPart()
    playback_fps: FrameRate = of_kind(
        tr_later("Playback rate"), "fps", None, unit="fps", may_be=tr_later('1 to 240, or "n/d", or null')
    )
