"""Pods on arms from a hub."""

from typing import ClassVar, Literal

from .base import Words, shape_field
from .floors import FloorsPart, new_floors


class PodsPart(FloorsPart):
    """Pods on arms."""

    WORDS: ClassVar[Words] = Words(
        "Pods on arms",
        "A set of pods on arms of {radius}",
        whole="Whole craft",
        passes="it falls past the end of the floor",
    )
    NEW: ClassVar[dict] = new_floors("Pod 1", "Pod 2", "Pod 3")

    shape: Literal["pods"] = shape_field("pods")
