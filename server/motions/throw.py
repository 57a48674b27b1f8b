"""Throws, and drops, which are throws at 0 m/s. The thrower may be moving: `carried` is added."""

from ..physics import frames
from ..physics.bodies import Body, named
from .plan import Course, Plan

NO_GRAVITY = "no_spin"


def plan(setting, motion):
    """Plan of a `throw` or a `drop` of the scene document (attributes as its fields are named)."""
    body = body_of(motion.body)
    place = place_of(motion)
    velocity = frames.aimed(motion.speed_m_s, motion.heading_deg, motion.elevation_deg)
    if motion.carried is not None:
        velocity = velocity + frames.aimed(motion.carried.speed_m_s, motion.carried.heading_deg, 0.0)
    release = setting.release(body, motion.start_s, place, velocity)
    gravity = setting.gravity_m_s2(motion.start_s)
    if not gravity:
        return Plan(motion.start_s, place, tuple(velocity), body, Course(None, release), None, NO_GRAVITY)
    flat = setting.flat_release(body, motion.start_s, place, velocity, gravity)
    return Plan(motion.start_s, place, tuple(velocity), body, Course(None, release), Course(None, flat), None)


def place_of(motion):
    """A motion's place as (along, height, axial), metres."""
    return motion.place.along_m, motion.place.height_m, motion.place.axial_m


def body_of(body):
    """The Body a document names or states."""
    return named(body) if isinstance(body, str) else Body(body.mass_kg, body.diameter_m, body.drag)
