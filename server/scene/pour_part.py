"""A pour as a document."""

from typing import ClassVar, Literal

from pydantic import Field

from ..physics.liquids import LIQUIDS
from .motion_parts import Motion, heading
from .parts import number

LIQUID_NAMES = tuple(x.name for x in LIQUIDS)


class Pour(Motion):
    """A liquid poured from a round lip at a steady flow."""

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
    elevation_deg: float = number("Up", "°", -90, 90, 0.0, shown={"min": -90, "max": 90, "scale": "linear"})
    flow_ml_s: float = number("Flow", "ml/s", 0.1, 1_000, shown={"min": 1, "max": 200, "scale": "log"})
    lip_diameter_mm: float = number("Lip", "mm", 1, 100, shown={"min": 1, "max": 40, "scale": "log"})
    duration_s: float = number("For", "s", 0.05, 600, shown={"min": 0.1, "max": 20, "scale": "log"})
    liquid: Literal[LIQUID_NAMES] = Field(json_schema_extra={"label": "Liquid", "unit": "", "kind": "choice"})
