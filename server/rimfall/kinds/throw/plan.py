"""Throws, and drops, which are throws at 0 m/s. The thrower may be moving: `carried` is added."""

import numpy as np

from ...motions.journey import Start
from ...motions.plan import Plan
from ...physics import frames
from ...physics.bodies import Body, named
from ...physics.constants import RPM_RAD_S

NO_GRAVITY = "no_spin"  # why there is no flat-gravity reference
RISES = "rises"


def plan(setting, motion):
    """Plan of a `throw` or a `drop` of the scene document (attributes as its fields are named)."""
    body, place, floor = body_of(motion.body), place_of(motion), motion.place.floor
    velocity = frames.aimed(motion.speed_m_s, motion.heading_deg, motion.elevation_deg)
    if motion.carried is not None:
        velocity = velocity + frames.aimed(motion.carried.speed_m_s, motion.carried.heading_deg, 0.0)
    spinning = _ball_spin_rad_s(motion)
    release = setting.release(body, motion.start_s, place, velocity, floor, spinning)
    course = Start(release, motion.bounces)
    gravity = setting.gravity_m_s2(motion.start_s, place, floor)
    none = RISES if _rises(setting, body) else None if gravity else NO_GRAVITY
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


def place_of(motion):
    """A motion's place as (along, height, axial), metres."""
    return motion.place.along_m, motion.place.height_m, motion.place.axial_m


def body_of(body):
    """The Body a document names or states."""
    if isinstance(body, str):
        return named(body)
    contact = (body.shell, body.restitution, body.friction, body.rolling_resistance)
    return Body(body.mass_kg, body.diameter_m, body.drag, *contact, body.drag_area_m2, body.buoyant)
