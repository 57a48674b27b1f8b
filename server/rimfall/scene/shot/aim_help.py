"""What would do where no throw arrives, or something is in the way of each: another speed, elevation or flight, no air, no ceiling."""

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from ...language import tr, written
from ...phrases import seconds
from ...shots.aim import Aim, aim
from ...shots.beside import least_free
from ...shots.fixed import ELEVATION, FLIGHT, LEAST, SPEED, Fixed
from ...shots.question import Question
from ...shots.throws import speed_heading_elevation
from .aim_words import plain_speed

MOST = 3
_FIGURES = {  # of throws (N, 3) and their flight times (N,)
    SPEED: lambda velocities, _: speed_heading_elevation(velocities)[0],
    ELEVATION: lambda velocities, _: speed_heading_elevation(velocities)[2],
    FLIGHT: lambda _, flight_s: flight_s,
}
_IN_THE_WAY = {"ceiling": ("ceiling_m", "ceiling"), "hub": ("hub_radius_m", "hub")}


@dataclass(frozen=True)
class Remedy:
    """What would do: another thing to fix, or fields of the document to set, by their paths; kind: "fixed", "air", "ceiling", "hub"."""

    kind: str
    fixed: dict[str, Any] | None = None
    set: dict[str, Any] | None = None

    def as_data(self, units: str) -> dict[str, Any]:
        """As it stands in an answer."""
        return {"says": self.says(units), "fixed": self.fixed, "set": self.set}

    def says(self, units: str) -> str:
        """What to do, as a sentence without its end."""
        if self.kind != "fixed":
            return _without(self.kind)
        ((name, value),) = self.fixed.items()
        if name == SPEED:
            return tr("Throw at {speed}", speed=plain_speed(value, units))
        if name == ELEVATION:
            return _thrown_up(value)
        return tr("Let it fly for {time}", time=seconds(value))


def _without(kind):
    return {
        "air": tr("Do without air"),
        "ceiling": tr("Do without the ceiling"),
        "hub": tr("Do without the hub"),
    }[kind]


def _thrown_up(elevation_deg):
    angle = f"{written(abs(elevation_deg), 'g')}°"
    if not elevation_deg:
        return tr("Throw it level")
    return tr("Throw it {angle} up", angle=angle) if elevation_deg > 0 else tr("Throw it {angle} down", angle=angle)


def remedies(found: Aim, scene: Any, asked_of: Callable[[Any], Question]) -> list[Remedy]:
    """Up to three things that would do, each tried: the nearest first. asked_of(scene): the same question of another scene."""
    out = []
    other = _other_throw(found)
    if other is not None:
        out.append(other)
    met = {getattr(way.catch.surface, "name", None) for way in found.ways}
    for name, (field, called) in _IN_THE_WAY.items():
        if getattr(scene.habitat, field, None) is not None and (name in met or not found.ways):
            changed = scene.model_copy(update={"habitat": scene.habitat.model_copy(update={field: None})})
            same = None if found.question.fixed.what == LEAST else found.curve  # what is in the way does not bend it
            if aim(asked_of(changed), same).free:
                out.append(Remedy(called, set={f"habitat.{field}": None}))
    if scene.air is not None and aim(asked_of(scene.model_copy(update={"air": None}))).free:
        out.append(Remedy("air", set={"air": None}))
    return out[:MOST]


def _other_throw(found):
    """The nearest other speed, elevation or flight time with which something arrives and nothing is in its way."""
    question, fixed = found.question, found.question.fixed
    if fixed.what == LEAST:
        return None
    near = least_free(question, found.curve, lambda *throws: np.abs(_FIGURES[fixed.what](*throws) - fixed.value))
    if near is None:
        return None
    figure = float(_FIGURES[fixed.what](near.velocity[None], np.array([near.flight_s]))[0])
    for value in _round_about(fixed, figure):
        if value > 0 or fixed.what == ELEVATION:
            tried = aim(replace(question, fixed=Fixed(fixed.what, value)), found.curve)
            if tried.free:
                return Remedy("fixed", fixed={fixed.what: value})
    return None


def _round_about(fixed, value):
    """A figure as people say it, a little farther from what is fixed than it must be; more and more exactly."""
    step = 1.0 if fixed.what == ELEVATION else 10.0 ** math.floor(math.log10(max(abs(value), 1e-3)) - 1)
    away = math.copysign(1.0, value - fixed.value)
    out = []
    for each in (step, step / 10, step / 100):
        rounded = math.ceil(away * value / each - 1e-9) * each * away
        out.append(float(f"{rounded:.6g}"))
    return [*out, value]
