"""What is let go of in the air: drops, and throws. The thrower may be moving: `carried` is added."""

from typing import Annotated, Any

import numpy as np
from pydantic import BeforeValidator, WithJsonSchema
from pydantic_core import PydanticCustomError

from ..fields import Whole, of_kind
from ..language import tr, tr_later
from ..motions.journey import Start
from ..motions.plan import Plan
from ..physics import frames
from ..physics.constants import RPM_RAD_S
from .kind import when
from .motion import NO_GRAVITY, BodyPart, Carried, Motion, ball_spin_field, body_field, body_of, bounces_field, place_of
from .places import body_clear
from .words import IT, UNCAUGHT, after_landing, landing, rose, why, within_reach

RISES = "rises"  # why there is nothing under plain gravity beside it
TUMBLES = "tumbles"
SPINS = when("ball_spin_rpm", tr_later(", spinning at {ball_spin_rpm} {ball_spin_axis}"))
REBOUNDS = when("bounces", tr_later(" It may bounce {bounces}."))


def _axis(value: Any):
    """Three figures, not all 0."""
    three = isinstance(value, (list, tuple)) and len(value) == 3
    if value is None or (three and all(_is_figure(v) for v in value) and any(value)):
        return value
    raise PydanticCustomError("axis", "axis")


def _is_figure(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool) and abs(value) <= 1e6


class Released(Motion):
    """The fields they share: how the ball spins as it leaves the hand, and how often it may rebound."""

    carried: Carried | None = None
    body: BodyPart = body_field()
    ball_spin_rpm: float = ball_spin_field()
    ball_spin_axis: Annotated[
        Any,
        BeforeValidator(_axis),
        WithJsonSchema(
            {
                "anyOf": [
                    {
                        "type": "array",
                        "items": {"type": "number", "minimum": -1e6, "maximum": 1e6},
                        "minItems": 3,
                        "maxItems": 3,
                        "not": {"items": {"const": 0}},
                    },
                    {"type": "null"},
                ]
            }
        ),
    ] = of_kind(
        tr_later("Axis of its spin"),
        "axis",
        None,
        may_be=tr_later("three figures [spinward, up, axial], each within ± 1,000,000 and not all 0, or null"),
    )
    bounces: Whole = bounces_field()


def check(motion, setting, _shape):
    """A spin has an axis; the body may be in this air, and its place is outside every surface."""
    if motion.ball_spin_rpm and motion.ball_spin_axis is None:
        may_be = tr("three figures [spinward, up, axial], not all 0, where ball_spin_rpm is not 0")
        yield "ball_spin_axis", None, may_be
    yield from body_clear(motion, setting)


def plan(setting, motion):
    """Plan of a thing let go at speed_m_s, heading_deg and elevation_deg (attributes as the fields of a document are named)."""
    body, place, floor = body_of(motion.body), place_of(motion), motion.place.floor
    velocity = frames.aimed(motion.speed_m_s, motion.heading_deg, motion.elevation_deg)
    if motion.carried is not None:
        velocity = velocity + frames.aimed(motion.carried.speed_m_s, motion.carried.heading_deg, 0.0)
    spinning = _ball_spin_rad_s(motion)
    release = setting.release(body, motion.start_s, place, velocity, floor, spinning)
    tumbles = setting.habitat.spin.tumbles
    course = Start(release, motion.bounces, sticks=tumbles)  # what comes after a contact is not worked out there
    gravity = setting.gravity_m_s2(motion.start_s, place, floor)
    none = TUMBLES if tumbles else RISES if _rises(setting, body) else None if gravity else NO_GRAVITY
    if none:
        return Plan(motion.start_s, place, tuple(velocity), body, course, None, none, floor=floor)
    flat = Start(setting.flat_release(body, motion.start_s, place, velocity, gravity, spinning))
    return Plan(motion.start_s, place, tuple(velocity), body, course, flat, None, floor=floor)


def _rises(setting, body):
    """Whether the air bears a body up: over flat ground without a ceiling it would never come down."""
    return body.buoyant and setting.air is not None and setting.air.deck_density_kg_m3 * body.volume_m3 > body.mass_kg


def _ball_spin_rad_s(motion):
    """The ball's own spin along the local directions (3,), rad/s, relative to the turning frame."""
    if motion.ball_spin_axis is None:
        return np.zeros(3)
    axis = np.array(motion.ball_spin_axis, dtype=float)
    return motion.ball_spin_rpm * RPM_RAD_S * axis / np.linalg.norm(axis)


def flew(traced, units):
    """Who can catch it, and what it does: rises, or lands and drifts, and what comes after."""
    near = within_reach(traced, units)
    lands = landing(traced, units, UNCAUGHT if near else IT)
    return [
        *near,
        *(rose(traced, units) or [s for s in (lands, why(traced, units), after_landing(traced, units)) if s]),
    ]
