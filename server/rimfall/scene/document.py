"""The scene document: every field with its unit, range, label and default, once. The page and the commands read them here.

Reading is strict: no field unknown here, no text for a number, no NaN or infinity. What one field alone cannot show is in
`checks.py`; sentences of refusal are in `validation_errors.py`; habitats are in `shapes`, motions in `kinds`.
"""

import re
from fractions import Fraction
from functools import lru_cache
from typing import Annotated, Any, Union

from pydantic import BeforeValidator, Field, WithJsonSchema
from pydantic_core import PydanticCustomError

from ..fields import Strict, Version, linear, listed, number, of_kind, text
from ..kinds import KINDS
from ..language import tr_later
from ..motions.setting import Setting
from ..physics.air import air_at
from ..shapes import HabitatPart
from .craft.document import Craft
from .feel.person_part import OwnLimit, PersonPart

VERSION = 1
FILM_RATES = tuple(
    Fraction(1000 * whole, 1001) for whole in (24, 30, 48, 60, 120)
)  # 23.976, 29.97, 47.952, ... (SMPTE ST 12-1)
_ROUNDED = 0.006  # 23.98 and 23.97 are 24000/1001 too, as people round it
LEAST_FPS, GREATEST_FPS = 1, 240
_RATIO = "[0-9]{1,7}/[1-9][0-9]{0,6}"


class AirPart(Strict):
    """The air at the deck."""

    pressure_kpa: float = number(tr_later("Air pressure"), "kPa", 0.001, 1_000, 101.325, shown=linear(0, 200))
    temperature_c: float = number(tr_later("Air temperature"), "°C", -150, 500, 20.0, shown=linear(-50, 50))


MOTIONS = {name: kind.fields for name, kind in KINDS.items()}
AnyMotion = Annotated[Union[tuple(MOTIONS.values())], Field(discriminator="kind")]  # noqa: UP007 - made from the table


def is_fps(value: Any):
    """A frame rate, as it is: a number from 1 to 240, or "n/d" in that range."""
    try:
        rate = frame_rate(value)
    except (TypeError, ValueError, ZeroDivisionError, OverflowError):
        raise PydanticCustomError("fps", "fps") from None
    if not LEAST_FPS <= rate <= GREATEST_FPS:
        raise PydanticCustomError("fps", "fps")
    return value


def fps_json_schema():
    """What a frame rate may be, for the API's own description."""
    return {
        "anyOf": [
            {"type": "number", "minimum": LEAST_FPS, "maximum": GREATEST_FPS},
            {"type": "string", "pattern": f"^{_RATIO}$"},
        ]
    }


@lru_cache(typed=True)
def frame_rate(value):
    """A document's fps as an exact Fraction. Raises ValueError or TypeError for what is not one."""
    if isinstance(value, str):
        if not re.fullmatch(_RATIO, value):
            raise ValueError(value)
        return Fraction(value)
    if isinstance(value, bool):
        raise TypeError(value)
    film = next((rate for rate in FILM_RATES if abs(float(rate) - value) <= _ROUNDED + 1e-9), None)
    return film or Fraction(value).limit_denominator(1001)


class Sampling(Strict):
    """How often paths are sampled, and when everything ends."""

    fps: Annotated[
        Any,
        BeforeValidator(is_fps),
        WithJsonSchema(fps_json_schema()),
    ] = of_kind(tr_later("Frames per second"), "fps", 24, unit="fps", may_be=tr_later('1 to 240, or "n/d"'))
    duration_s: float | None = number(tr_later("Ends at"), "s", 0.1, 600, None)


class Other(Strict):
    """Another habitat, in which the same motions are shown."""

    name: str = text(tr_later("Name"), 60, min_length=1, may_be=tr_later("1 to 60 characters, unique"))
    habitat: HabitatPart


class Scene(Strict):
    """A whole scene."""

    rimfall: Version = of_kind(tr_later("Document version"), "version")
    title: str = text(tr_later("Title"), 200, "")
    habitat: HabitatPart
    air: AirPart | None = AirPart()
    motions: list[AnyMotion] = listed(tr_later("Motions"), 100)
    sampling: Sampling = Sampling()
    compare: list[Other] = listed(tr_later("Other habitats"), 3, [])
    person: PersonPart = PersonPart()
    own_limits: list[OwnLimit] = listed(tr_later("Limits of your own"), 12, [])
    craft: Craft | None = None


LEAST_SAMPLES_S = 48


def setting_of(scene):
    """Habitat, air and clock of a scene, and its samples a frame."""
    air = None if scene.air is None else air_at(scene.air.pressure_kpa, scene.air.temperature_c)
    fps = frame_rate(scene.sampling.fps)
    per_frame = -(-LEAST_SAMPLES_S * fps.denominator // fps.numerator)
    return Setting(scene.habitat.habitat(), air, fps * per_frame, scene.sampling.duration_s), per_frame
