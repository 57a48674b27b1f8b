"""Cabins joined by a tether."""

from dataclasses import dataclass
from typing import ClassVar, Literal

from ..language import tr_later
from . import drawn
from .base import Words
from .floors import Craft, FloorsPart, new_floors
from .part import shape_field


@dataclass(frozen=True)
class Tether(Craft):
    """Floors on a tether."""

    def joints(self, floor, side):
        """Lines from two corners to one point, the tether from there to the axis (with the far side), and on the near side the winch."""
        own = self.floors[floor]
        half, side_m, radius, top = own.length_m / 2, own.width_m / 2, own.radius_m, own.ceiling_m or 0.0
        knot = min(0.7 * radius, max(1.6 * max(half, side_m), 2 * top))
        bridle = [self.at(floor, along, top, side * side_m) + self.at(floor, 0.0, knot, 0.0) for along in (-half, half)]
        yield drawn.lines("joint", bridle, side=side, cut="near")
        if side < 0:
            long = self.at(floor, 0.0, knot, 0.0) + self.at(floor, 0.0, radius, 0.0)
            yield drawn.lines("joint", [long], 0.06, side=side, cut="near")
        elif floor == 0:
            size = min(0.04 * self.radius_m, 1.2)
            yield drawn.box("hub", (0.0, 0.0, 0.0), [1.6 * size, size, size], side=side, cut="near")


class TetherPart(FloorsPart):
    """Cabins joined by a tether."""

    WORDS: ClassVar[Words] = Words(
        tr_later("Tether pair"),
        tr_later("A pair of cabins, {radius} from the axis,"),
        whole=tr_later("Whole craft"),
        passes=tr_later("it falls past the end of the floor"),
    )
    HABITAT: ClassVar[type] = Tether
    NEW: ClassVar[dict] = new_floors(tr_later("Cabin"), tr_later("Counterweight"))

    shape: Literal["tether"] = shape_field("tether")
