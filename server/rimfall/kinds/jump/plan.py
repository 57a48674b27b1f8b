"""Jumps: a person leaves the ground as a point with a mass and a drag, and is down again when the feet are."""

import math

from ...motions.journey import Start
from ...motions.plan import Plan
from ...physics import frames
from ..motion import NO_GRAVITY
from ..people import over_the_feet, person


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
        findings=findings,
    )


def findings(_setting, plan, track):
    """Where the feet leave the ground and where they land, (along, axial), and how far that is apart on the ground, metres.

    push_g: None, since the push itself is not followed.
    """
    left, landing = [plan.place[0], plan.place[2]], track.landing
    if landing is None:
        return {"left_m": left, "lands_m": None, "apart_m": None, "push_g": None}
    lands = [landing.along_m, landing.axial_m]
    return {"left_m": left, "lands_m": lands, "apart_m": math.dist(left, lands), "push_g": None}
