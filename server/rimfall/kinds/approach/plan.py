"""A craft that coasts in to a dock along a straight line of the room that does not turn: from aboard, a spiral.

The path is that of its docking port, which comes to the dock at the stated time; there is no air outside, and nothing in the way is looked
for. To dock it must lose, at that instant, the velocity that it has relative to the turning dock.
"""

from functools import partial

import numpy as np

from ...motions.journey import Event, Prescribed, Start
from ...motions.plan import Plan
from ...physics import frames
from ...physics.bodies import Body
from ...physics.constants import TURN_RAD
from ..outside import NONE_BECAUSE, line, seen, state, turns_between


def dock_place(habitat, motion):
    """The dock's place (along, height, axial), metres; a hub's dock whose height is left at 0 is on the axis."""
    place = motion.place
    height = place.height_m
    if motion.dock == "hub" and height == 0.0:
        height = float(habitat.chart(place.floor).height(np.zeros(3)))
    return place.along_m, height, place.axial_m


def plan(setting, motion):
    """Plan of an `approach` of the scene document (attributes as its fields are named)."""
    habitat, floor, start_s = setting.habitat, motion.place.floor, motion.start_s
    contact_s = start_s + motion.from_m / motion.speed_m_s
    place = dock_place(habitat, motion)
    chart = habitat.chart(floor)
    toward = -frames.aimed(motion.speed_m_s, motion.heading_deg, motion.elevation_deg) @ chart.axes_at(place)
    angle = float(habitat.spin.angle_rad(contact_s))
    dock, closing = frames.turn(chart.position(place), angle), frames.turn(toward, angle)
    before = start_s - contact_s
    pull = np.array(habitat.pull_m_s2)
    at, moving = dock + before * (closing + 0.5 * before * pull), closing + before * pull
    end_s = min(contact_s, max(setting.limit_s(start_s), start_s))
    leg = line(setting, at, moving, start_s, end_s, floor)
    given = Prescribed((leg,))
    there, relative = _at_contact(setting, dock, closing, contact_s)
    if end_s == contact_s:
        given = Prescribed((leg,), (Event("dock", contact_s, there, relative),), "arrived")
    body = Body(motion.mass_kg, motion.size_m, 0.0)
    told = partial(findings, motion, relative @ chart.axes_at(place).T, there)
    start = _start(setting, leg, place, dock, contact_s, floor)
    return Plan(start_s, *start, body, Start(None, prescribed=given), None, NONE_BECAUSE, floor=floor, findings=told)


def _at_contact(setting, dock, closing, contact_s):
    """Position and velocity (3,) of the port in the turning frame as it comes to the dock."""
    spin = setting.habitat.spin
    return frames.inertial_to_rotating(dock, closing, spin.angle_rad(contact_s), spin.rate_rad_s(contact_s))


def _start(setting, leg, place, dock, contact_s, floor):
    """Place and velocity along the local directions at which the craft is first seen from aboard; on round ground its `along` is the
    dock's and what it will wind off."""
    chart, start_s = setting.habitat.chart(floor), leg.path.begin_s
    position, velocity = seen(setting, leg, start_s)
    along = place[0]
    if chart.winds:
        swept = frames.azimuth_steps(np.stack([state(leg, start_s)[0][0], dock]))[0]
        along += chart.radius_m * (TURN_RAD * turns_between(setting, start_s, contact_s) - float(swept))
    else:
        along = float(chart.along(position))
    rows = chart.axes(position[None])[0]
    return (along, float(chart.height(position)), float(chart.axial(position))), tuple(rows @ velocity)


def findings(motion, to_cancel, dock, setting, plan, track):
    """How far the craft is from the dock at the samples (n,), metres; the velocity to lose at contact as (spinward, up, axial) and its
    size, m/s, and the push that takes, N s; how often the craft seems to go round, from its start to contact."""
    distance = np.linalg.norm(track.samples.rotating_m - dock, axis=1)
    size, contact_s = float(np.linalg.norm(to_cancel)), plan.start_s + motion.from_m / motion.speed_m_s
    return {
        "distance_m": distance,
        "to_cancel_m_s": [float(v) for v in to_cancel],
        "to_cancel_size_m_s": size,
        "to_cancel_n_s": size * motion.mass_kg,
        "turns_seen": _turns_seen(setting, plan, dock, contact_s),
    }


def _turns_seen(setting, plan, dock, contact_s):
    """Turns of the habitat between start and contact, less what the craft itself goes round the axis."""
    leg = plan.course.prescribed.legs[0]
    end = frames.turn(dock, float(setting.habitat.spin.angle_rad(contact_s)))
    swept = float(frames.azimuth_steps(np.stack([leg.path.position_m[0], end]))[0]) / TURN_RAD
    return abs(turns_between(setting, plan.start_s, contact_s) - swept)
