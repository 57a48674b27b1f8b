"""Pods on arms from a hub."""

from dataclasses import dataclass
from typing import ClassVar, Literal

from ..language import tr_later
from . import drawn
from .base import Words
from .floors import Craft, FloorsPart, new_floors
from .part import shape_field


@dataclass(frozen=True)
class Pods(Craft):
    """Floors on arms."""

    def joints(self, floor, side):
        """An arm that leaves the hub and meets the middle of the floor's long edge."""
        own = self.floors[floor]
        side_m, radius = own.width_m / 2, own.radius_m
        thick = min(0.012 * radius + 0.04, 0.5)
        hub = self.at(floor, 0.0, radius, side * min(side_m, 0.2 * radius))
        foot = self.at(floor, 0.0, 0.0, side * (side_m + 1.2 * thick))
        yield drawn.tube("hub", hub, foot, [thick, thick], 12, side=side, cut="near")


class PodsPart(FloorsPart):
    """Pods on arms."""

    WORDS: ClassVar[Words] = Words(
        tr_later("Pods on arms"),
        tr_later("A set of pods on arms of {radius}"),
        whole=tr_later("Whole craft"),
        passes=tr_later("it falls past the end of the floor"),
    )
    HABITAT: ClassVar[type] = Pods
    NEW: ClassVar[dict] = new_floors(tr_later("Pod 1"), tr_later("Pod 2"), tr_later("Pod 3"))

    shape: Literal["pods"] = shape_field("pods")
