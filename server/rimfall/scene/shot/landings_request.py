"""What is asked of a throw: where it comes down over two of its figures, each from first to last in so many."""

from typing import Annotated, Literal

from pydantic import Discriminator, Tag

from ...fields import Strict, Whole, choice, number, of_kind
from ...language import tr_later
from ...shots.landings import FIGURES
from ..document import MOTIONS, Scene

LEAST_COUNT, GREATEST_COUNT = 2, 20_000


class _Varied(Strict):
    """One figure of the throw, evenly spaced from first to last."""

    count: Whole = number(tr_later("Number of values"), "", LEAST_COUNT, GREATEST_COUNT)


def _end(label, figure):
    """A field that is the figure's first or last value, in the figure's own range."""
    field = MOTIONS["throw"].model_fields[figure]
    (low,), (high,) = ([getattr(m, bound) for m in field.metadata if hasattr(m, bound)] for bound in ("ge", "le"))
    unit, shown = (field.json_schema_extra[name] for name in ("unit", "shown"))
    return number(label, unit, low, high, shown=shown)


class SpeedVaried(_Varied):
    """The speed of the throw, evenly spaced from first to last."""

    field: Literal["speed_m_s"] = choice(tr_later("Figure that varies"), FIGURES)
    first: float = _end(tr_later("First speed"), "speed_m_s")
    last: float = _end(tr_later("Last speed"), "speed_m_s")


class HeadingVaried(_Varied):
    """Its heading, evenly spaced from first to last."""

    field: Literal["heading_deg"] = choice(tr_later("Figure that varies"), FIGURES)
    first: float = _end(tr_later("First heading"), "heading_deg")
    last: float = _end(tr_later("Last heading"), "heading_deg")


class ElevationVaried(_Varied):
    """Its elevation, evenly spaced from first to last."""

    field: Literal["elevation_deg"] = choice(tr_later("Figure that varies"), FIGURES)
    first: float = _end(tr_later("First elevation"), "elevation_deg")
    last: float = _end(tr_later("Last elevation"), "elevation_deg")


VARIED = {"@speed_m_s": SpeedVaried, "@heading_deg": HeadingVaried, "@elevation_deg": ElevationVaried}


def _figure_of(value):
    """The tag of a varied figure's model, which no field's name shows; None where it names none."""
    field = value.get("field") if isinstance(value, dict) else getattr(value, "field", None)
    return None if field is None else f"@{field}"


Varied = Annotated[
    Annotated[SpeedVaried, Tag("@speed_m_s")]
    | Annotated[HeadingVaried, Tag("@heading_deg")]
    | Annotated[ElevationVaried, Tag("@elevation_deg")],
    Discriminator(_figure_of),
]


class LandingsRequest(Strict):
    """The body of a question where a throw of a scene can come down. The third figure is the motion's own."""

    scene: Scene
    motion: str = of_kind(tr_later("Throw"), "text", may_be=tr_later("the name of a throw of the scene"))
    over: list[Varied] = of_kind(
        tr_later("Figures that vary"), "list", may_be=tr_later("a list of two"), min_length=2, max_length=2
    )
