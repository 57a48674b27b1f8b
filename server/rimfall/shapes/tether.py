"""Cabins joined by a tether."""

from typing import ClassVar, Literal

from .base import Words, shape_field
from .floors import FloorsPart, new_floors


class TetherPart(FloorsPart):
    """Cabins joined by a tether."""

    WORDS: ClassVar[Words] = Words(
        "Tether pair",
        "A pair of cabins, {radius} from the axis,",
        whole="Whole craft",
        passes="it falls past the end of the floor",
    )
    NEW: ClassVar[dict] = new_floors("Cabin", "Counterweight")

    shape: Literal["tether"] = shape_field("tether")
