"""A pour as a document."""

from typing import ClassVar, Literal

from pydantic import Field

from ..fields import Strict, number
from ..physics.liquids import LIQUIDS
from .motion_parts import Motion, elevation, heading

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

    NEW: ClassVar[dict] = {
        "place": {"along_m": 0.0, "height_m": 1.1, "axial_m": 0.0},
        "heading_deg": 180.0,
        "elevation_deg": 0.0,
        "flow_ml_s": 30.0,
        "lip_diameter_mm": 8.0,
        "duration_s": 2.0,
        "liquid": "water",
    }
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
