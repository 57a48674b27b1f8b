"""The document of a talk: every field with its range, label and default, once. What one field alone cannot show is in `resolving.py`.

A step's scene is that of the step before where it names none, and `change` sets things of it by their paths. What else it leaves out is
as when a scene is opened.
"""

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Discriminator, Tag, WithJsonSchema, WrapValidator

from ..fields import Strict, Vector, Version, choice, linear, listed, log, number, of_kind, text, vector
from ..language import tr_later
from ..scene import examples
from ..scene.document import Scene
from ..scene.export_part import GREATEST_FOV_DEG, LEAST_FOV_DEG

GREATEST_STEPS = 200
GREATEST_CHANGES = 100  # things that one step changes
LETTERS = ("a", "b", "c", "d", "e", "w")  # of the seats, as the page has them
ARROWS = ("velocity", "centrifugal", "coriolis")
PACES = (1, 0.5, 0.25, 0.1)
_A_SEAT = tr_later("a, b, c, d, e or w, a camera in braces (position_m, target_m, up, vertical_fov_deg), or null")
A_SCENE = tr_later("a scene document, the name of a scene to start from, or null: that of the step before")


def _is_pace(value: Any):
    if isinstance(value, bool) or value not in PACES:
        raise ValueError(value)
    return value


Pace = Annotated[Any, BeforeValidator(_is_pace), WithJsonSchema({"enum": list(PACES)})]
# a scene is read as every other is, with its own names for what is wrong with it; this is what it may be for who describes it
AnyScene = Annotated[Scene | Literal[tuple(examples.SAY)] | None, WrapValidator(lambda value, _: value)]


class Camera(Strict):
    """Where one looks from, in the axes of files: X spinward, Y up and Z along the spin vector at the reference line, the origin on the
    axis; aboard in the space that turns, outside in the one that does not."""

    position_m: Vector = vector(tr_later("Position"), "m")
    target_m: Vector = vector(tr_later("Looks at"), "m")
    up: Vector = vector(tr_later("Up"), "", (0.0, 1.0, 0.0))
    vertical_fov_deg: float = number(
        tr_later("Field of view"), "°", LEAST_FOV_DEG, GREATEST_FOV_DEG, 30.0, shown=log(1, GREATEST_FOV_DEG)
    )


Seat = Annotated[
    Annotated[Literal[LETTERS], Tag("@letter")] | Annotated[Camera, Tag("@camera")],
    Discriminator(lambda value: "@camera" if isinstance(value, (dict, Camera)) else "@letter"),
]


class Seats(Strict):
    """From where both stages are seen; null: as when the scene is opened."""

    aboard: Seat | None = of_kind(tr_later("Seat aboard"), "seat", None, may_be=_A_SEAT)
    outside: Seat | None = of_kind(tr_later("Seat outside"), "seat", None, may_be=_A_SEAT)


class Ask(Strict):
    """What the room is asked: where a motion comes down. Of it nothing that is to come is shown until it is revealed."""

    motion: str = text(
        tr_later("Motion"), 60, min_length=1, may_be=tr_later("the name of a motion of the step's scene")
    )
    until_s: float = number(tr_later("Stands still at"), "s", 0, 4_200, 0.0, shown=linear(0, 60))


class Step(Strict):
    """One step of a talk."""

    scene: AnyScene = of_kind(tr_later("Scene"), "scene", None, may_be=A_SCENE)
    change: dict[str, Any] = of_kind(
        tr_later("Change"),
        "change",
        {},
        may_be=tr_later("paths of the scene and their values, in braces"),
        max_length=GREATEST_CHANGES,
    )
    line: str = text(tr_later("Line"), 160, "")
    notes: str = text(tr_later("Notes"), 4_000, "")
    place: Literal[2, 4, 5, 6] = choice(tr_later("Place"), default=2)
    show: Literal["both", "aboard", "outside"] = choice(tr_later("Stages"), default="both")
    merged: bool = of_kind(tr_later("Merged"), "flag", False, may_be=tr_later("true or false"))
    swapped: bool = of_kind(tr_later("Swapped"), "flag", False, may_be=tr_later("true or false"))
    seats: Seats = Seats()
    hidden: list[str] = listed(tr_later("Hidden motions"), 100, [])
    companion: bool = of_kind(tr_later("Companion aboard"), "flag", True, may_be=tr_later("true or false"))
    companion_outside: bool = of_kind(tr_later("Companion outside"), "flag", False, may_be=tr_later("true or false"))
    dimensions: bool = of_kind(tr_later("Dimensions"), "flag", True, may_be=tr_later("true or false"))
    arrows: list[Literal[ARROWS]] = listed(tr_later("Arrows"), 3, list(ARROWS))
    from_s: float = number(tr_later("From"), "s", 0, 4_200, 0.0, shown=linear(0, 60))
    until_s: float | None = number(tr_later("Pause point"), "s", 0, 4_200, None, shown=linear(0, 60))
    pace: Pace = of_kind(tr_later("Pace"), "pace", 1, may_be=tr_later("1, 0.5, 0.25 or 0.1"))
    plays: bool = of_kind(tr_later("Plays"), "flag", True, may_be=tr_later("true or false"))
    ask: Ask | None = of_kind(tr_later("Question to the room"), "part", None)


class Talk(Strict):
    """A whole talk."""

    rimfall_talk: Version = of_kind(tr_later("Version of the talk"), "version")
    title: str = text(tr_later("Title"), 200)
    about: str = text(tr_later("About"), 1_000, "")
    steps: list[Step] = listed(tr_later("Steps"), GREATEST_STEPS, least=1)
