"""A thing that hangs on a line, as a document."""

from typing import ClassVar, Literal

from ..fields import number
from .motion_parts import BodyPart, Motion, body_field, heading, speed


class Hang(Motion):
    """A body hung by its middle on a line without mass; its place is that of the point it hangs from."""

    NEW: ClassVar[dict] = {
        "place": {"along_m": 0.0, "height_m": 3.0, "axial_m": 0.0},
        "length_m": 1.5,
        "first_angle_deg": 20.0,
        "body": "steel ball 20 mm",
    }
    kind: Literal["hang"]
    length_m: float = number("Line", "m", 0.01, 1_000, 2.0, shown={"min": 0.1, "max": 20, "scale": "log"})
    body: BodyPart = body_field()
    first_angle_deg: float = number(
        "First angle from plumb", "°", 0, 180, 0.0, shown={"min": 0, "max": 90, "scale": "linear"}
    )
    first_heading_deg: float = heading("Drawn aside toward")
    speed_m_s: float = speed("Push", 0.0)
    heading_deg: float = heading("Pushed toward")
