"""Jumps: somebody leaves the ground with a stated speed and flies as one body until the feet meet the ground again."""

import math
from typing import Literal

from ...fields import linear, number
from ...language import tr, tr_as, tr_later, tr_later_as
from ...motions.journey import Start
from ...motions.plan import Plan
from ...motions.ways import Ways
from ...phrases import length, seconds
from ...physics import frames
from ..air_words import AIR_FOLLOWS
from ..kind import Finding, Kind, Page, Stage, when
from ..motion import NO_GRAVITY, Carried, at_height, elevation_field, heading_field, speed_field
from ..people import AS_A_BALL, GROUP, Person, over_the_feet, person, stands
from ..words import WHERE_IT_BEGAN, plainly, the_at, there, why
from . import prose

_LEFT_OUT = tr_later(
    "The jumper is a point with a mass and one drag at every speed, and does not turn or bend the knees."
)
_BEGAN = tr_later("where the jump began")
_STRAIGHT_UP_DEG = 89.95


class Jump(Person):
    """Someone jumps."""

    kind: Literal["jump"]
    speed_m_s: float = speed_field(tr_later("Speed"), 2.7)
    heading_deg: float = heading_field(tr_later("Toward"))
    elevation_deg: float = elevation_field(tr_later_as("how steeply", "Up"), 90.0)
    carried: Carried | None = None
    drag_area_m2: float = number(tr_later("Drag area"), "m²", 0, 100, 0.5, shown=linear(0, 2))


def check(motion, setting, _shape):
    """The feet are on or over the ground, the head under what is above."""
    return stands(setting.habitat, motion)


def plan(setting, motion):
    """Plan of a `jump` of the scene document (attributes as its fields are named); its path is that of the centre."""
    body, place, floor, start_s = (
        person(motion, motion.drag_area_m2),
        over_the_feet(motion),
        motion.place.floor,
        motion.start_s,
    )
    velocity = frames.aimed(motion.speed_m_s, motion.heading_deg, motion.elevation_deg)
    if motion.carried is not None:
        velocity = velocity + frames.aimed(motion.carried.speed_m_s, motion.carried.heading_deg, 0.0)
    gravity = setting.gravity_m_s2(start_s, place, floor)
    flat = Start(setting.flat_release(body, start_s, place, velocity, gravity)) if gravity else None
    return Plan(
        start_s,
        place,
        tuple(velocity),
        body,
        Start(setting.release(body, start_s, place, velocity, floor)),
        flat,
        None if gravity else NO_GRAVITY,
        floor=floor,
        findings=_findings,
    )


def _findings(setting, plan, track):
    """Where the feet leave the ground and where they land, (along, axial), and how far that is apart by the nearest way on the ground, metres.

    push_g: None, since the push itself is not followed.
    """
    left, landing = [plan.place[0], plan.place[2]], track.landing
    if landing is None:
        return {"left_m": left, "lands_m": None, "apart_m": None, "push_g": None}
    (way,) = Ways(setting.habitat, plan).of([landing])
    lands = [landing.along_m, landing.axial_m]
    return {"left_m": left, "lands_m": lands, "apart_m": math.hypot(way.spinward_m, way.axial_m), "push_g": None}


def jumped(traced, units):
    """Where a jump comes down."""
    track = traced.track
    if track.landing is None:
        return [tr("Nothing brings the jumper back: {what}.", what=_still(traced, units))]
    after = track.landing.time_s - traced.plan.start_s
    if after == 0:
        return [tr("The jumper does not leave the ground.")]
    where = there(traced, track.landing, units, stressed=True, none=_BEGAN)
    rise = track.apex.height_m - traced.plan.place[1] if track.apex is not None else 0.0
    plain = plainly(traced, units, none=WHERE_IT_BEGAN)
    places = {"length": length(rise, units), "where": where, "time": seconds(after)}
    lands = f"{tr('The jumper rises {length} and lands {where} after {time}', **places)}{plain}."
    return [s for s in (lands, why(traced, units, tr_as("would land", "the jumper"))) if s]


def _still(traced, units):
    last = traced.track.events[-1]
    after = seconds(traced.track.ends_s - traced.plan.start_s)
    if traced.track.end == "met a surface":
        return tr("the jump ends at {surface} after {time}", surface=the_at(traced, last.surface), time=after)
    if traced.track.end == "edge":
        return tr("the jump passes the edge after {time}", time=after)
    return tr("after {time} the jumper is {height} up", time=after, height=length(last.height_m, units))


def assumptions(_traced, setting):
    """What a jump's answer leaves out."""
    lags = setting.air is not None and not setting.habitat.spin.steady
    return [tr(_LEFT_OUT), tr(AS_A_BALL), *([tr(AIR_FOLLOWS)] if lags else [])]


PAGE = Page(
    group=GROUP,
    add=tr_later_as("added", "a jump"),
    short=tr_later("Jump"),
    title=tr_later("Jump"),
    one=tr_later_as("counted", "jump"),
    many=tr_later_as("counted", "jumps"),
    sentence=(
        tr_later("Jumps at {speed_m_s}, "),
        when("elevation_deg", tr_later("straight up"), "{elevation_deg}, {heading_deg}", least=_STRAIGHT_UP_DEG),
        when("carried.speed_m_s", tr_later(", on the run at {carried.speed_m_s}, {carried.heading_deg}")),
        ".",
    ),
    rows={"speed_m_s": None, "elevation_deg": None, "heading_deg": None, "place.height_m": tr_later("Feet at")},
    more=(
        tr_later("Person"),
        {"mass_kg": tr_later("Mass"), "drag_area_m2": tr_later("Drag area"), "centre_m": tr_later("Centre")},
    ),
    carried=(tr_later("Run-up"), tr_later_as("run-up", "none")),
    findings=(Finding("apart_m", tr_later("lands off where they left"), "m", tr_later("drift")),),
    terms={
        tr_later("Jump"): tr_later(
            "A person leaves the ground with a stated speed and flies as one body until the feet meet the ground again."
        ),
    },
    stage=Stage(mover="person", attended_m=None),
)
KIND = Kind(
    name="jump",
    fields=Jump,
    new={"place": at_height(0.0), "speed_m_s": 2.7, "heading_deg": 0.0, "elevation_deg": 90.0},
    check=check,
    plan=plan,
    outcome=jumped,
    assumptions=assumptions,
    catches=True,
    told=prose.told,
    page=PAGE,
    element="jump",
)
