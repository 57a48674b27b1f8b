"""A craft that tumbles end over end."""

from typing import ClassVar, Literal

from .base import Words, shape_field
from .floors import FloorsPart, new_floors


class TumblerPart(FloorsPart):
    """A craft that tumbles end over end."""

    WORDS: ClassVar[Words] = Words(
        "Tumbling craft",
        "A craft with its floor {radius} from the axis",
        whole="Whole craft",
        passes="it falls past the end of the floor",
    )
    NEW: ClassVar[dict] = new_floors("Fore", "Aft")

    shape: Literal["tumbler"] = shape_field("tumbler")
