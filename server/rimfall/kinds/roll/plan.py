"""Where a ball that rolls lies at first, on the ground or on a ramp, and how it moves there."""

import math
from dataclasses import dataclass, replace

import numpy as np

from ...motions.ground import GroundStart
from ...motions.journey import Start
from ...motions.plan import Plan
from ...physics import contact, frames
from ...physics.constants import RPM_RAD_S
from ...physics.coordinates import FlatChart
from ...physics.ramp import Ramp, ramp_at
from ..body import body_of
from ..motion import NO_GRAVITY, place_of
from ..places import place_near


def plan(setting, motion):
    """Plan of a `roll` of the scene document (attributes as its fields are named)."""
    body, floor, start_s = body_of(motion.body), motion.place.floor, motion.start_s
    habitat = setting.habitat
    along, _, axial = place_of(motion)
    under = (along, habitat.ground_height_m(axial), axial)
    laid, corners = _laid(
        setting, motion, body, setting.room(floor), habitat.ground(floor), habitat.chart(floor), under
    )
    chart = habitat.chart(floor)
    local = chart.axes_at(under) @ laid.velocity_m_s
    gravity = setting.gravity_m_s2(start_s, under, floor)
    flat = None
    if gravity:
        still = setting.flat_room(gravity, under[1])
        laid_flat = _laid(setting, motion, body, still, still.surfaces[0], FlatChart(), under)[0]
        flat = Start(laid_flat, motion.bounces, beyond=still)
    return Plan(
        start_s,
        place_near(chart, under, laid.position_m),
        tuple(float(v) for v in local),
        body,
        Start(laid, motion.bounces, beyond=setting.room(floor)),
        flat,
        None if gravity else NO_GRAVITY,
        floor=floor,
        surface=laid.surface.name_at(laid.position_m),
        ramp_m=corners,
    )


@dataclass(frozen=True)
class Seat:
    """Where a ball lies at first: its centre and the normal (3,), the surface, and the Ramp it is on, or None."""

    position_m: np.ndarray
    normal: np.ndarray
    surface: object
    ramp: Ramp | None


def seat(habitat, motion, body_radius_m):
    """The Seat of a `roll` in a habitat."""
    floor, (along, _, axial) = motion.place.floor, place_of(motion)
    under = (along, habitat.ground_height_m(axial), axial)
    return _seat(habitat.chart(floor), under, habitat.ground(floor), motion.ramp, body_radius_m)


def _seat(chart, under, ground, part, body_radius_m):
    touch, made = chart.position(under), None
    if part is not None:
        angles = math.radians(part.slope_deg), math.radians(part.heading_deg)
        made = ramp_at(chart, under, *angles, part.length_m, part.width_m)
        ground, touch = made.slope, made.corners_m.mean(axis=0)
    normal = ground.normal(touch)
    return Seat(touch + body_radius_m * normal, normal, ground, made)


def _laid(setting, motion, body, room, ground, chart, under):
    """A ball laid on a ground, or on a ramp that stands there -> the GroundStart, and the ramp's corners or None."""
    at, corners = _seat(chart, under, ground, motion.ramp, body.radius_m), None
    if at.ramp is not None:
        room = replace(room, surfaces=(at.surface, *room.surfaces, *at.ramp.edges))
        corners = at.ramp.corners_m
    normal = at.normal
    velocity = _along(chart.axes_at(under), normal, motion)
    spin = motion.ball_spin_rpm * RPM_RAD_S * normal
    mode = "stands" if body.diameter_m == 0 else "slides"
    if mode == "slides" and motion.start == "rolling":
        spin = spin + np.cross(normal, velocity) / body.radius_m
    if mode == "slides" and not np.any(_slip(body, normal, velocity, spin) > 1e-12):
        mode = "rolls"
    state = at.position_m, velocity, spin
    laid = GroundStart(room, at.surface, body, motion.start_s, *state, setting.limit_s(motion.start_s), mode)
    return laid, corners


def _slip(body, normal, velocity, spin):
    return np.abs(contact.slip(contact.balls([body]), normal[None], velocity[None], spin[None]))


def _along(axes, normal, motion):
    """Velocity (3,) along the surface: its speed is that asked for, its heading that of the local directions."""
    level = frames.aimed(1.0, motion.heading_deg, 0.0) @ axes
    along = level - (level @ normal) * normal
    size = float(np.linalg.norm(along))
    return motion.speed_m_s * along / size if size > 1e-12 else np.zeros(3)
