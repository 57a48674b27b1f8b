"""Approaches: a craft coasts in to a dock along a straight line of the room that does not turn: from aboard, a spiral.

The path is that of its docking port, which comes to the dock at the stated time; there is no air outside, and nothing in the way is looked
for. To dock it must lose, at that instant, the velocity that it has relative to the turning dock.
"""

from dataclasses import replace
from functools import partial
from typing import Literal

import numpy as np

from ...fields import choice, linear, log, number
from ...language import tr, tr_later, tr_later_as, written
from ...motions.journey import Event, Prescribed
from ...phrases import length, listed, seconds, speed
from ...physics import frames
from ...physics.bodies import Body
from ...physics.constants import TURN_RAD
from ..kind import Finding, Kind, Page, Stage
from ..motion import Motion, along_given, at_height, elevation_field, speed_field
from ..outside import NONE_BECAUSE, WEIGHTLESS, OutsidePlace, line, seen, state, turns_between, under_the_hull
from . import prose

_BENT = 0.005  # a share of the way by which it may begin elsewhere and none be told
_LEFT_OUT = tr_later("The craft coasts; the path is that of its docking port, and nothing is looked for in its way.")
_NO_CRAFT_COMES = tr_later("another kind of motion on a {shape}: no craft comes to it")
# of its velocity at contact, above 0 and below
_ALONG = (tr_later("{speed} spinward"), tr_later("{speed} antispinward"))
_UP = (tr_later("{speed} up"), tr_later("{speed} outward"))
_ACROSS = (tr_later("{speed} along the axis"), tr_later("{speed} back along the axis"))


class Approach(Motion):
    """A craft coasts in to a dock; the place is the dock's."""

    kind: Literal["approach"]
    place: OutsidePlace = OutsidePlace()
    dock: Literal["hub", "rim"] = choice(tr_later("Dock"), default="hub")
    speed_m_s: float = speed_field(tr_later("Closing speed"), 5.0)
    heading_deg: float = number(tr_later("Comes from"), "°", -360, 360, 90.0, shown=linear(-180, 180))
    elevation_deg: float = elevation_field(tr_later("From above"), 0.0)
    from_m: float = number(tr_later_as("how far away", "From"), "m", 1, 1_000_000, 200.0, shown=log(10, 1_000))
    mass_kg: float = number(tr_later("Mass"), "kg", 1, 1e9, 12_000.0, shown=log(1_000, 100_000))
    size_m: float = number(tr_later("Size"), "m", 0.1, 1_000, 3.0, shown=linear(1, 30))


def check(motion, setting, shape):
    """A craft moves, comes from outside, and arrives before its time limit, whatever the scene's own end."""
    habitat = setting.habitat
    if not habitat.in_space or motion.dock == "rim":
        yield from under_the_hull(habitat, shape, motion, _NO_CRAFT_COMES)
    if not habitat.in_space:
        return
    yield from _docks(motion, habitat)
    longest_s = replace(setting, duration_s=None).limit_s(motion.start_s) - motion.start_s
    if not motion.speed_m_s:
        yield "speed_m_s", motion.speed_m_s, tr("above 0, to 3,000 m/s")
    elif motion.from_m > motion.speed_m_s * longest_s:
        may_be = tr(
            "1 to {most} m: within its time limit of {time} s at that speed",
            most=written(motion.speed_m_s * longest_s, ".9g"),
            time=written(longest_s, ".3g"),
        )
        yield "from_m", motion.from_m, may_be


def _docks(motion, habitat):
    height, place = motion.place.height_m, motion.place
    if motion.dock == "rim":
        if height > 0:
            yield "place.height_m", height, tr("-100,000 to 0 m: a rim's dock is on the hull or outside it")
        if motion.elevation_deg > 0:
            yield "elevation_deg", motion.elevation_deg, tr("-90 to 0 degrees: to the rim a craft comes from outside")
        return
    axis = dock_place(habitat, motion.model_copy(update={"place": place.model_copy(update={"height_m": 0.0})}))[1]
    if not 0 <= height <= axis:
        yield (
            "place.height_m",
            height,
            tr("0, or up to {most} m, the axis: 0 is taken for the axis", most=written(axis, ".9g")),
        )


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
    places = {"time": seconds(takes), "turns": written(findings["turns_seen"], ".1f")}
    if track.end == "arrived":
        comes = tr("The craft reaches the dock after {time}; seen from aboard it goes round {turns} times.", **places)
    else:
        comes = tr(
            "The craft would reach the dock after {time}; seen from aboard it goes round {turns} times.", **places
        )
    return [comes, *_bent(traced, units), _closing(findings, units)]


def _closing(findings, units):
    """The velocity to lose at contact, and its parts where there are several."""
    parts = zip(findings["to_cancel_m_s"], (_ALONG, _UP, _ACROSS), strict=True)
    said = [tr(ways[v <= 0], speed=speed(abs(v), units)) for v, ways in parts if abs(v) >= 0.05]
    size = speed(findings["to_cancel_size_m_s"], units)
    if len(said) > 1:
        return tr("The closing velocity at contact is {speed}: {parts}.", speed=size, parts=listed(said))
    return tr("The closing velocity at contact is {speed}.", speed=size)


def _bent(traced, units):
    """Where the craft begins, where the ship's thrust bends its path: not straight out from the dock, as far as was asked."""
    findings, asked_m = traced.findings, traced.motion.from_m
    begins_m = float(findings["starts_off_m"])
    if abs(begins_m - asked_m) < _BENT * asked_m:
        return []
    axial_m = findings["starts_axial_m"]
    return [
        tr(
            "The ship’s thrust bends its path: it begins {begins} from the dock, {aside}, and not {asked} straight out.",
            begins=length(begins_m, units),
            aside=tr(traced.across[axial_m < 0], length=length(abs(axial_m), units)),
            asked=length(asked_m, units),
        )
    ]


def in_short(traced, units):
    """When it docks and how fast, in a phrase."""
    places = {
        "time": seconds(traced.motion.from_m / traced.motion.speed_m_s),
        "speed": speed(traced.findings["to_cancel_size_m_s"], units),
    }
    if traced.track.end == "arrived":
        return tr("reaches the dock after {time} at {speed}", **places)
    return tr("would reach the dock after {time} at {speed}", **places)


PAGE = Page(
    group=tr_later("Craft"),
    add=tr_later_as("added", "an approach"),
    short=tr_later("Approach"),
    title=tr_later("Approach"),
    one=tr_later_as("counted", "approach"),
    many=tr_later_as("counted", "approaches"),
    sentence=tr_later(
        "Coasts in to the {dock} at {speed_m_s} from {from_m} away; it comes from {elevation_deg}, {heading_deg}."
    ),
    rows={
        "dock": tr_later("Dock"),
        "speed_m_s": tr_later("Speed"),
        "elevation_deg": None,
        "heading_deg": tr_later("Comes from"),
        "place.height_m": tr_later("Dock at"),
        "from_m": tr_later_as("how far away", "From"),
    },
    more=(tr_later("Craft"), {"mass_kg": tr_later("Mass"), "size_m": tr_later("Size")}),
    mirrored=False,
    findings=(
        Finding("distance_m", tr_later("to the dock"), "m", tr_later("dock")),
        Finding("to_cancel_size_m_s", tr_later("to cancel at contact"), "m/s", tr_later("velocity to cancel")),
        Finding("to_cancel_n_s", tr_later("as a push"), "N\u00a0s", tr_later("velocity to cancel")),
        Finding("turns_seen", tr_later("turns seen from aboard"), "", tr_later("dock")),
    ),
    terms={
        tr_later("Approach"): tr_later(
            "A craft that coasts in to a dock along a straight line of the room that does not turn. From aboard the "
            "same line is a spiral."
        ),
        tr_later("Dock"): tr_later(
            "Where an approaching craft makes contact: at the hub, where hardly anything moves, or at the rim, which "
            "goes by at rim speed."
        ),
        tr_later("Velocity to cancel"): tr_later(
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
    assumptions=lambda _traced, _setting: [tr(_LEFT_OUT)],
    told=prose.told,
    page=PAGE,
    element="approach",
)
