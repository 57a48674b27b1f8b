"""What is asked of a throw that is to be caught: whose hands, how far they reach, and what of the throw is fixed."""

from typing import Annotated, Literal

from pydantic import Discriminator, Tag

from ...fields import Strict, Whole, choice, linear, log, number, of_kind
from ...kinds.motion import Place
from ...language import tr_later
from ...physics.constants import PERSON_HEIGHT_M
from ..document import MOTIONS, Scene

WITHIN_M, FLIGHT_MAX_S = 0.15, 60.0
LEAST_FLIGHT_S, GREATEST_FLIGHT_S = 0.001, 600
_MOST_M_S = next(m.le for m in MOTIONS["throw"].model_fields["speed_m_s"].metadata if hasattr(m, "le"))


class Hands(Strict):
    """A place at rest aboard."""

    along_m: float = number(tr_later("Hands along the deck"), "m", -1e6, 1e6, 0.0, shown=linear(-50, 50))
    height_m: float = number(tr_later("Height of the hands"), "m", 0, 100_000, 1.4, shown=linear(0, 10))
    axial_m: float = number(tr_later("Hands along the axis"), "m", -1e6, 1e6, 0.0, shown=linear(-20, 20))
    floor: Whole = Place.model_fields["floor"]


class Mover(Strict):
    """What moves as a motion of the scene does."""

    motion: str = of_kind(tr_later("Catcher"), "text", may_be=tr_later("the name of another motion of the scene"))


class FixedPart(Strict):
    """Exactly one of these."""

    speed_m_s: float | None = number(
        tr_later("Speed of the throw"), "m/s", 0, _MOST_M_S, None, above=True, shown=linear(1, 30)
    )
    elevation_deg: float | None = number(tr_later("Elevation of the throw"), "°", -90, 90, None, shown=linear(-90, 90))
    flight_s: float | None = number(
        tr_later("Flight time"), "s", LEAST_FLIGHT_S, GREATEST_FLIGHT_S, None, shown=log(0.2, 60)
    )
    least: Literal["speed_m_s"] | None = choice(tr_later("Least"), ("speed_m_s",), None)


def _whose(value):
    """The tag of the hands' model, which no field's name shows."""
    named = "motion" in value if isinstance(value, dict) else isinstance(value, Mover)
    return "@mover" if named else "@hands"


CATCHERS = {"@hands": Hands, "@mover": Mover}
Catcher = Annotated[Annotated[Hands, Tag("@hands")] | Annotated[Mover, Tag("@mover")], Discriminator(_whose)]


class AimRequest(Strict):
    """The body of a question how a thing must be thrown to be caught. Speed, heading and elevation of the throw are what is sought."""

    scene: Scene
    motion: str = of_kind(tr_later("Throw"), "text", may_be=tr_later("the name of a throw of the scene"))
    to: Catcher = of_kind(
        tr_later("Catcher"), "part", may_be=tr_later("a place (along_m, height_m, axial_m), or a motion of the scene")
    )
    within_m: float = number(tr_later("Reach"), "m", 0, 1_000, WITHIN_M, above=True, shown=log(0.02, PERSON_HEIGHT_M))
    fixed: FixedPart
    flight_max_s: float = number(
        tr_later("Longest flight"),
        "s",
        LEAST_FLIGHT_S,
        GREATEST_FLIGHT_S,
        FLIGHT_MAX_S,
        shown=log(1, GREATEST_FLIGHT_S),
    )
    back: bool = of_kind(
        tr_later("And back"), "yes_no", False, may_be=tr_later("true (the same from the catcher's hands) or false")
    )
