"""Jumps: somebody leaves the ground with a stated speed and flies as one body until the feet meet the ground again."""

from typing import Literal

from ...fields import number
from ..kind import Finding, Kind, Page, Stage, when
from ..motion import Carried, elevation, heading, speed
from ..people import GROUP, HERE, Person, stands
from .plan import plan
from .words import assumptions, jumped

_STRAIGHT_UP_DEG = 89.95


class Jump(Person):
    """Someone jumps."""

    kind: Literal["jump"]
    speed_m_s: float = speed("Speed", 2.7)
    heading_deg: float = heading("Toward")
    elevation_deg: float = elevation("Up", 90.0)
    carried: Carried | None = None
    drag_area_m2: float = number("Drag area", "m²", 0, 100, 0.5, shown={"min": 0, "max": 2, "scale": "linear"})


def check(motion, setting, _shape):
    """The feet are on or over the ground, the head under what is above."""
    return stands(setting.habitat, motion)


PAGE = Page(
    group=GROUP,
    short="Jump",
    add="a jump",
    title="Jump",
    one="jump",
    many="jumps",
    sentence=(
        "Jumps at {speed_m_s}, ",
        when("elevation_deg", "straight up", "{elevation_deg}, {heading_deg}", least=_STRAIGHT_UP_DEG),
        when("carried.speed_m_s", ", on the run at {carried.speed_m_s}, {carried.heading_deg}"),
        ".",
    ),
    rows={"speed_m_s": None, "elevation_deg": None, "heading_deg": None, "place.height_m": "Feet at"},
    more=("Person", {"mass_kg": "Mass", "drag_area_m2": "Drag area", "centre_m": "Centre"}),
    carried=("Run-up", "none"),
    findings=(Finding("apart_m", "lands off where they left", "m", "drift"),),
    terms={
        "Jump": (
            "A person leaves the ground with a stated speed and flies as one body until the feet meet the ground again."
        ),
    },
    stage=Stage(mover="person", attended_m=None),
)
KIND = Kind(
    name="jump",
    fields=Jump,
    new={"place": HERE, "speed_m_s": 2.7, "heading_deg": 0.0, "elevation_deg": 90.0},
    check=check,
    plan=plan,
    outcome=jumped,
    assumptions=assumptions,
    page=PAGE,
    element="jump",
)
