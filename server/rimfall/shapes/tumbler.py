"""A craft that tumbles end over end."""

import math
from dataclasses import dataclass
from typing import ClassVar, Literal

from ..language import tr_later
from . import drawn
from .base import Words
from .floors import Craft, FloorsPart, new_floors
from .part import shape_field


@dataclass(frozen=True)
class Tumbler(Craft):
    """Floors at the ends of one long hull."""

    def joints(self, floor, side):
        """Two longerons of the hull's side with a zigzag between them, from the floor to the axis."""
        own = self.floors[floor]
        half, side_m, radius = own.length_m / 2, own.width_m / 2, own.radius_m
        bays = max(1, math.floor(radius / max(2 * half, 0.12 * radius) + 0.5))

        def at(along, n):
            return self.at(floor, along, n / bays * radius, side * side_m)

        longerons = [at(along, 0) + at(along, bays) for along in (-half, half)]
        yield drawn.lines("joint", longerons, min(0.12, 0.01 * radius), side=side, cut="near")
        zigzag = []
        for n in range(bays):
            start = half if n % 2 else -half
            zigzag += [at(-half, n + 1) + at(half, n + 1), at(start, n) + at(-start, n + 1)]
        yield drawn.lines("joint", zigzag, side=side, cut="near")


class TumblerPart(FloorsPart):
    """A craft that tumbles end over end."""

    WORDS: ClassVar[Words] = Words(
        tr_later("Tumbling craft"),
        tr_later("A craft with its floor {radius} from the axis"),
        whole=tr_later("Whole craft"),
        passes=tr_later("it falls past the end of the floor"),
    )
    HABITAT: ClassVar[type] = Tumbler
    NEW: ClassVar[dict] = new_floors(tr_later("Fore"), tr_later("Aft"))

    shape: Literal["tumbler"] = shape_field("tumbler")
