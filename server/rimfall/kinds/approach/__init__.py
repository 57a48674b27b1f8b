"""Approaches: a craft coasts in to a dock along a straight line of the room that does not turn: from aboard, a spiral.

The path is that of its docking port, which comes to the dock at the stated time; there is no air outside, and nothing in the way is looked
for. To dock it must lose, at that instant, the velocity that it has relative to the turning dock.
"""

from dataclasses import replace
from functools import partial
from typing import Literal

import numpy as np

from ...fields import choice, linear, log, number
from ...motions.journey import Event, Prescribed
from ...phrases import length, listed, seconds, speed
from ...physics import frames
from ...physics.bodies import Body
from ...physics.constants import TURN_RAD
from ..kind import Finding, Kind, Page, Stage, called
from ..motion import Motion, along_given, at_height, elevation_field, speed_field
from ..outside import NONE_BECAUSE, WEIGHTLESS, OutsidePlace, line, seen, state, turns_between, under_the_hull
from . import prose

_BENT = 0.005  # a share of the way by which it may begin elsewhere and none be told
_LEFT_OUT = ["The craft coasts; the path is that of its docking port, and nothing is looked for in its way."]


class Approach(Motion):
    """A craft coasts in to a dock; the place is the dock's."""

    kind: Literal["approach"]
    place: OutsidePlace = OutsidePlace()
    dock: Literal["hub", "rim"] = choice("Dock", default="hub")
    speed_m_s: float = speed_field("Closing speed", 5.0)
    heading_deg: float = number("Comes from", "°", -360, 360, 90.0, shown=linear(-180, 180))
    elevation_deg: float = elevation_field("From above", 0.0)
    from_m: float = number("From", "m", 1, 1_000_000, 200.0, shown=log(10, 1_000))
    mass_kg: float = number("Mass", "kg", 1, 1e9, 12_000.0, shown=log(1_000, 100_000))
    size_m: float = number("Size", "m", 0.1, 1_000, 3.0, shown=linear(1, 30))


def check(motion, setting, shape):
    """A craft moves, comes from outside, and arrives before its time limit, whatever the scene's own end."""
    habitat = setting.habitat
    if not habitat.in_space or motion.dock == "rim":
        yield from under_the_hull(habitat, shape, motion, "no craft comes to it")
    if not habitat.in_space:
        return
    yield from _docks(motion, habitat)
    longest_s = replace(setting, duration_s=None).limit_s(motion.start_s) - motion.start_s
    if not motion.speed_m_s:
        yield "speed_m_s", motion.speed_m_s, "above 0, to 3,000 m/s"
    elif motion.from_m > motion.speed_m_s * longest_s:
        may_be = f"1 to {motion.speed_m_s * longest_s:.9g} m: within its time limit of {longest_s:.3g} s at that speed"
        yield "from_m", motion.from_m, may_be


def _docks(motion, habitat):
    height, place = motion.place.height_m, motion.place
    if motion.dock == "rim":
        if height > 0:
            yield "place.height_m", height, "-100,000 to 0 m: a rim's dock is on the hull or outside it"
        if motion.elevation_deg > 0:
            yield "elevation_deg", motion.elevation_deg, "-90 to 0 degrees: to the rim a craft comes from outside"
        return
    axis = dock_place(habitat, motion.model_copy(update={"place": place.model_copy(update={"height_m": 0.0})}))[1]
    if not 0 <= height <= axis:
        yield "place.height_m", height, f"0, or up to {axis:.9g} m, the axis: 0 is taken for the axis"


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
    tells = partial(_findings, motion, relative @ chart.axes_at(place).T, there)
    start = _start(setting, leg, place, dock, contact_s, floor)
    return along_given(motion, *start, body, given, NONE_BECAUSE, findings=tells)


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


def _findings(motion, to_cancel, dock, setting, plan, track):
    """How far the craft is from the dock at the samples (n,), metres; the velocity to lose at contact as (spinward, up, axial) and its
    size, m/s, and the push that takes, N s; how often the craft seems to go round, from its start to contact."""
    distance = np.linalg.norm(track.samples.rotating_m - dock, axis=1)
    start = seen(setting, plan.course.prescribed.legs[0], plan.start_s)[0]
    angle = setting.habitat.spin.angle_rad(plan.start_s)
    end_angle = setting.habitat.spin.angle_rad(plan.start_s + motion.from_m / motion.speed_m_s)
    off = frames.turn(start, float(angle)) - frames.turn(dock, float(end_angle))
    size, contact_s = float(np.linalg.norm(to_cancel)), plan.start_s + motion.from_m / motion.speed_m_s
    return {
        "distance_m": distance,
        "starts_off_m": float(np.linalg.norm(off)),
        "starts_axial_m": float(off[2]),
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


def approached(traced, units):
    """What a craft sees, and must lose, that comes in."""
    findings, track = traced.findings, traced.track
    takes = traced.motion.from_m / traced.motion.speed_m_s
    comes = "reaches the dock" if track.end == "arrived" else "would reach the dock"
    out = [
        f"The craft {comes} after {seconds(takes)}; seen from aboard it goes round {findings['turns_seen']:.1f} times."
    ]
    along, up, axial = findings["to_cancel_m_s"]
    size = findings["to_cancel_size_m_s"]
    parts = [
        (along, "spinward", "antispinward"),
        (up, "up", "outward"),
        (axial, "along the axis", "back along the axis"),
    ]
    said = [f"{speed(abs(v), units)} {a if v > 0 else b}" for v, a, b in parts if abs(v) >= 0.05]
    return [
        *out,
        *_bent(traced, units),
        f"The closing velocity at contact is {speed(size, units)}{': ' + listed(said) if len(said) > 1 else ''}.",
    ]


def _bent(traced, units):
    """Where the craft begins, where the ship's thrust bends its path: not straight out from the dock, as far as was asked."""
    findings, asked_m = traced.findings, traced.motion.from_m
    begins_m = float(findings["starts_off_m"])
    if abs(begins_m - asked_m) < _BENT * asked_m:
        return []
    side = traced.across[findings["starts_axial_m"] < 0]
    return [
        f"The ship’s thrust bends its path: it begins {length(begins_m, units)} from the dock, {length(abs(findings['starts_axial_m']), units)} "
        f"{side}, and not {length(asked_m, units)} straight out."
    ]


def in_short(traced, units):
    """When it docks and how fast, in a phrase."""
    comes = "reaches the dock" if traced.track.end == "arrived" else "would reach the dock"
    takes = seconds(traced.motion.from_m / traced.motion.speed_m_s)
    return f"{comes} after {takes} at {speed(traced.findings['to_cancel_size_m_s'], units)}"


PAGE = Page(
    group="Craft",
    **called("an approach", many="approaches"),
    sentence="Coasts in to the {dock} at {speed_m_s} from {from_m} away; it comes from {elevation_deg}, {heading_deg}.",
    rows={
        "dock": "Dock",
        "speed_m_s": "Speed",
        "elevation_deg": None,
        "heading_deg": "Comes from",
        "place.height_m": "Dock at",
        "from_m": "From",
    },
    more=("Craft", {"mass_kg": "Mass", "size_m": "Size"}),
    mirrored=False,
    findings=(
        Finding("distance_m", "to the dock", "m", "dock"),
        Finding("to_cancel_size_m_s", "to cancel at contact", "m/s", "velocity to cancel"),
        Finding("to_cancel_n_s", "as a push", "N\u00a0s", "velocity to cancel"),
        Finding("turns_seen", "turns seen from aboard", "", "dock"),
    ),
    terms={
        "Approach": (
            "A craft that coasts in to a dock along a straight line of the room that does not turn. From aboard the "
            "same line is a spiral."
        ),
        "Dock": (
            "Where an approaching craft makes contact: at the hub, where hardly anything moves, or at the rim, which "
            "goes by at rim speed."
        ),
        "Velocity to cancel": (
            "The craft’s velocity against the dock at contact, as it is seen from aboard: spinward, up and axial."
        ),
    },
    stage=Stage(mover="craft", attended_m=None, winds=True, outside=True, no_arrows=WEIGHTLESS),
)
KIND = Kind(
    name="approach",
    fields=Approach,
    new={
        "place": at_height(0.0),
        "dock": "rim",
        "speed_m_s": 5.0,
        "heading_deg": 0.0,
        "elevation_deg": -45.0,
        "from_m": 200.0,
    },
    check=check,
    plan=plan,
    outcome=approached,
    in_short=in_short,
    assumptions=lambda _traced, _setting: _LEFT_OUT,
    told=prose.told,
    page=PAGE,
    element="approach",
)
