"""A pour as a document, and what its fields must be against one another and the habitat."""

from typing import Literal

from pydantic import Field

from ...fields import Strict, number
from ...physics.liquids import LIQUIDS
from ..motion import Motion, elevation, heading
from ..places import clear_of_surfaces

LIQUID_NAMES = tuple(x.name for x in LIQUIDS)


class TiltPoint(Strict):
    """Where the lip points, and how much flows, at a time after the pour began; straight between points, held after the last."""

    time_s: float = number("Time of the tilt", "s", 0, 600, above=True)
    elevation_deg: float = elevation("Up")
    flow_ml_s: float = number("Flow", "ml/s", 0, 1_000, shown={"min": 0, "max": 200, "scale": "linear"})


class TargetPart(Strict):
    """A cup or a basin that stands there to be poured into: a round upright opening, whose rim is at height_m."""

    along_m: float = number("Cup along the deck", "m", -1e6, 1e6, 0.0, shown={"min": -5, "max": 5, "scale": "linear"})
    height_m: float = number("Cup's rim", "m", 0, 100_000, 0.1, shown={"min": 0, "max": 2, "scale": "linear"})
    axial_m: float = number("Cup along the axis", "m", -1e6, 1e6, 0.0, shown={"min": -5, "max": 5, "scale": "linear"})
    diameter_m: float = number("Cup's opening", "m", 0.001, 10, 0.08, shown={"min": 0.02, "max": 1, "scale": "log"})
    depth_m: float = number("Cup's depth", "m", 0.001, 10, 0.09, shown={"min": 0.01, "max": 1, "scale": "log"})


class Pour(Motion):
    """A liquid poured from a round lip, at a steady flow or one that changes as the lip tilts."""

    kind: Literal["pour"]
    heading_deg: float = heading("Toward")
    elevation_deg: float = elevation("Up", 0.0)
    flow_ml_s: float = number("Flow", "ml/s", 0.1, 1_000, shown={"min": 1, "max": 200, "scale": "log"})
    lip_diameter_mm: float = number("Lip", "mm", 1, 100, shown={"min": 1, "max": 40, "scale": "log"})
    duration_s: float = number("For", "s", 0.05, 600, shown={"min": 0.1, "max": 20, "scale": "log"})
    liquid: Literal[LIQUID_NAMES] = Field(json_schema_extra={"label": "Liquid", "unit": "", "kind": "choice"})
    tilt: list[TiltPoint] = Field(
        [], max_length=100, json_schema_extra={"label": "Tilt of the lip", "unit": "", "kind": "list"}
    )
    target: TargetPart | None = None
    jitter: float = number("Scatter of the drops", "", 0, 1, 0.0, shown={"min": 0, "max": 1, "scale": "linear"})
    seed: int = number("Seed of the scatter", "", 0, 1_000_000, 0)


def check(motion, setting, _shape):
    """The lip is in the room, the tilt's times rise, and its cup stands in the room."""
    width = motion.lip_diameter_mm
    yield from clear_of_surfaces(setting.habitat, motion.place, width * 1e-3, "lip_diameter_mm", width)
    before = 0.0
    for i, point in enumerate(motion.tilt):
        if not point.time_s > before:
            yield f"tilt.{i}.time_s", point.time_s, f"later than the point before it, above {before:g} s"
        before = point.time_s
    if motion.target is not None:
        yield from _cup(setting.habitat, motion.target, motion.place.floor)


def _cup(habitat, cup, floor):
    """The opening is inside the room, over the motion's own floor; the cup's foot is not below the ground."""
    if not cup.diameter_m < habitat.radius_m / 2:
        yield "target.diameter_m", cup.diameter_m, f"below half the radius, {habitat.radius_m / 2:g} m"
        return
    half = habitat.half_length_m(floor)
    if abs(cup.along_m) > half:
        yield "target.along_m", cup.along_m, f"-{half:g} to {half:g} m, over its floor"
        return
    least, side, span = habitat.sides(floor, 0.0)
    if not least <= cup.axial_m <= side:
        yield "target.axial_m", cup.axial_m, f"{least:.9g} to {side:.9g} m, in the room"
        return
    low, high = span(abs(cup.axial_m))
    if not low < cup.height_m < high:
        yield "target.height_m", cup.height_m, f"above {low:.9g}, below {high:.9g} m, in the room"
    elif cup.depth_m > cup.height_m - low:
        may_be = f"0.001 to {cup.height_m - low:.9g} m, so that its foot is not below the ground"
        yield "target.depth_m", cup.depth_m, may_be
