"""A camera of one's own as it is stated by hand: by places aboard, bank and lens."""

from typing import Literal

from ...fields import Strict, choice, linear, listed, log, number, text
from ...kinds.motion import Place
from ...language import tr_later
from ..document import Scene
from ..export_part import GREATEST_CAMERA_ROWS, GREATEST_FOV_DEG, LEAST_FOV_DEG


class FilmBack(Strict):
    """The part of the film or sensor that the picture is taken from."""

    width_mm: float = number(tr_later("Film width"), "mm", 0.1, 1_000, shown=log(1, 100))
    height_mm: float = number(tr_later("Film height"), "mm", 0.1, 1_000, shown=log(1, 100))


class PlacedRow(Strict):
    """Where a camera stands, what it looks at, how it banks, and its lens: a field of view, or a focal length on the film back."""

    time_s: float = number(tr_later("Time"), "s", -600, 4_200, 0.0)
    place: Place = Place()
    look_at: Place = Place()
    roll_deg: float = number(tr_later("Bank"), "°", -360, 360, 0.0, shown=linear(-180, 180))
    field_of_view_deg: float | None = number(
        tr_later("Horizontal field of view"),
        "°",
        LEAST_FOV_DEG,
        GREATEST_FOV_DEG,
        None,
        shown=linear(1, GREATEST_FOV_DEG),
    )
    focal_length_mm: float | None = number(tr_later("Focal length"), "mm", 0.1, 10_000, None, shown=log(1, 1_000))


class PlacedCamera(Strict):
    """A camera by its places aboard. film_back: as wide and as high as the picture; only their ratio counts where there are fields of view."""

    name: str = text(tr_later("Name"), 60, "Camera", min_length=1)
    view: Literal["aboard", "outside"] = choice(tr_later("View"), default="aboard")
    film_back: FilmBack = FilmBack(width_mm=36.0, height_mm=20.25)
    rows: list[PlacedRow] = listed(tr_later("Rows of the camera"), GREATEST_CAMERA_ROWS, least=1)


class CameraRequest(Strict):
    """The body of a question what a camera that is stated by hand sees."""

    scene: Scene
    camera: PlacedCamera
