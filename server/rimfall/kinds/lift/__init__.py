"""Lifts: somebody rides in a spoke, toward the axis or away from it."""

from typing import Literal

from ...fields import linear, log, number
from ...phrases import seconds
from ...physics.constants import G0_M_S2
from ..kind import Finding, Kind, Page, Stage, when
from ..people import GROUP, HERE, SELF, WEIGHT_TERM, Person
from ..places import over_its_floor
from .plan import plan

_LEAST_PUSH = 1e-6  # of the greatest one
_FELT = 0.005  # in g; less is none worth a word
_LEFT_OUT = ["The rider stands still in the cabin; the air of the shaft goes with it."]


class Lift(Person):
    """Someone rides a lift in a spoke; heights are those of the cabin's floor."""

    kind: Literal["lift"]
    to_height_m: float = number("To height", "m", 0, 100_000, shown=linear(0, 100))
    top_speed_m_s: float = number("Top speed", "m/s", 0.01, 1_000, 2.0, shown=log(0.1, 20))
    acceleration_m_s2: float | None = number("Speeds up by", "m/s²", 0.001, 100, None, shown=log(0.1, 5))


def check(motion, setting, shape):
    """A shaft goes from the ground to the hub, or to the axis; it may pass a ceiling."""
    habitat, place, half = setting.habitat, motion.place, motion.centre_m
    if not habitat.in_space:
        yield "kind", motion.kind, f"another kind of motion on a {shape}: no spoke leads to its axis"
        return
    low, top = _shaft(habitat, place, half)
    side = habitat.hull_half_width_m(place.floor)
    if abs(place.axial_m) > side:
        yield "place.axial_m", place.axial_m, f"{-side:.9g} to {side:.9g} m, inside the hull"
        return
    yield from over_its_floor(habitat, place)
    if top < low:
        yield "centre_m", half, "small enough that a person of twice that height fits below hub and axis"
        return
    may_be = f"{low:.9g} to {top:.9g} m: from the ground to a head's height below the hub or the axis"
    if not low <= place.height_m <= top:
        yield "place.height_m", place.height_m, may_be
    if not low <= motion.to_height_m <= top:
        yield "to_height_m", motion.to_height_m, may_be
    elif motion.to_height_m == place.height_m:
        yield "to_height_m", motion.to_height_m, "another height than that where it starts"


def _shaft(habitat, place, half):
    """Least and greatest height of a cabin's floor."""
    reach = min(abs(place.axial_m), habitat.radius_m)
    return habitat.ground_height_m(reach), habitat.ground_radius_m(place.floor) - habitat.hub_m - 2 * half


def rode(traced, units):
    """What a ride in a lift does sideways."""
    found = traced.findings
    most, tilt = found["most_sideways_m_s2"], found["most_tilt_deg"]
    out = [f"The ride takes {seconds(found['takes_s'])}{_cut(traced, found)}."]
    if most / G0_M_S2 < _FELT and tilt < 1:
        return [*out, "Nothing worth a word pushes sideways."]
    return [
        *out,
        f"The rider is pushed {_way(found)} by up to {most / G0_M_S2:.2f} g, and down leans by up to {tilt:.0f}°.",
    ]


def _way(found):
    """The way of a push that keeps to one way."""
    least = _LEAST_PUSH * found["most_sideways_m_s2"]  # one that begins from rest begins with rounding errors
    pushes = [v for v in found["sideways_m_s2"] if abs(v) > least]
    if not pushes or min(pushes) < 0 < max(pushes):
        return "sideways"
    return "spinward" if pushes[0] > 0 else "antispinward"


def _cut(traced, found):
    lasts = traced.track.ends_s - traced.plan.start_s
    return "" if traced.track.end == "arrived" else f", of which {seconds(lasts)} are shown"


PAGE = Page(
    group=GROUP,
    short="Lift",
    add="a lift ride",
    title="Lift",
    one="lift ride",
    many="lift rides",
    sentence=(
        "Rides a lift from {place.height_m} to {to_height_m} at ",
        when("acceleration_m_s2", "up to "),
        "{top_speed_m_s}",
        when("acceleration_m_s2", ", gaining speed at {acceleration_m_s2}"),
        ".",
    ),
    rows={
        "place.height_m": "From height",
        "to_height_m": "To height",
        "top_speed_m_s": "Top speed",
        "acceleration_m_s2": "Gains",
    },
    more=("Person", SELF),
    mirrored=False,
    findings=(
        Finding("apparent_g", "weight at the feet", "g", WEIGHT_TERM),
        Finding("sideways_m_s2", "sideways push", "m/s²", "sideways push", sided=True),
        Finding("tilt_deg", "floor seems to tilt", "°", "apparent tilt"),
        Finding("takes_s", "the ride takes", "s", "lift"),
    ),
    terms={
        "Apparent tilt": (
            "How far the floor of a moving lift seems to slope, because the sideways push is felt together with the "
            "weight."
        ),
        "Lift": (
            "A car that goes toward or away from the axis. Because the rim moves faster than the hub, its wall must "
            "push the rider sideways."
        ),
    },
    # a lift's push has an arrow of its own
    stage=Stage(mover="person", beside="lift", attended_m=None, no_arrows=("coriolis",), weight="apparent_g"),
)
KIND = Kind(
    name="lift",
    fields=Lift,
    new={"place": HERE, "to_height_m": 20.0, "top_speed_m_s": 2.0, "acceleration_m_s2": None},
    check=check,
    plan=plan,
    outcome=rode,
    assumptions=lambda _traced, _setting: _LEFT_OUT,
    page=PAGE,
    element="lift",
)
