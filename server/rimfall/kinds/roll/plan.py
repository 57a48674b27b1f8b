"""Balls that roll, or slide until they grip, on the ground or on a ramp; and things that stand and cannot roll."""

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
from ...physics.surfaces import Drum, Plane
from ..throw.plan import NO_GRAVITY, body_of, place_of

_ON_THE_GROUND_M = 1e-9  # a thing whose underside is that near the ground stands on it


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


def place_near(chart, under, position):
    """Place (along, height, axial) of a position near the place `under`."""
    along = chart.along(position) if not chart.winds else under[0] + _arc(chart, under, position)
    return float(along), float(chart.height(position)), float(chart.axial(position))


def _arc(chart, under, position):
    """How far along the deck a position lies from the place `under`."""
    return chart.radius_m * float(frames.azimuth_steps(np.stack([chart.position(under), position]))[0])


def plan_standing(setting, motion):
    """Plan of a `stand`: a thing that rests on a level table, or on the ground itself, and slides when pushed too hard."""
    body, floor, start_s, place = body_of(motion.body), motion.place.floor, motion.start_s, place_of(motion)
    chart = setting.habitat.chart(floor)
    surface = _table(setting.habitat, chart, floor, body, place)
    position = chart.position(place)
    at_rest = np.zeros(3), np.zeros(3), setting.limit_s(start_s), "stands"
    laid = GroundStart(setting.room(floor), surface, body, start_s, position, *at_rest)
    course = Start(laid, rolls=False)
    name = surface.name_at(position)
    return Plan(start_s, place, (0.0, 0.0, 0.0), body, course, None, "at_rest", floor=floor, surface=name)


def _table(habitat, chart, floor, body, place):
    """What it stands on: the ground if it is there, else a level table top, half the thing's width below its centre."""
    foot_m = place[1] - body.radius_m
    if abs(foot_m - habitat.ground_height_m(place[2])) <= _ON_THE_GROUND_M:
        return habitat.ground(floor)
    if habitat.ground(floor).flat:
        top = chart.position((place[0], foot_m, place[2]))
        up = habitat.ground(floor).normal(top)
        return Plane("table", tuple(float(v) for v in up), float(up @ top))
    return Drum("table", habitat.radius_m - foot_m, hollow=True)
