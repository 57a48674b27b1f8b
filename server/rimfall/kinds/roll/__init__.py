"""Balls that roll, or slide until they grip, on the ground or on a ramp: where they lie at first, and how they move there."""

import math
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from ...fields import Strict, Whole, choice, linear, log, number
from ...language import tr, tr_later, tr_later_as, written
from ...motions.ground import GroundStart
from ...motions.journey import Start
from ...motions.plan import Plan
from ...phrases import AND, length, seconds
from ...physics import contact, frames
from ...physics.constants import RPM_RAD_S
from ...physics.coordinates import FlatChart
from ...physics.ramp import Ramp, ramp_at
from .. import telling
from ..air_words import in_air
from ..kind import Kind, Page, when
from ..motion import (
    NO_GRAVITY,
    BodyPart,
    Motion,
    at_height,
    ball_spin_field,
    body_field,
    body_of,
    bounces_field,
    heading_field,
    place_of,
    speed_field,
)
from ..places import TOUCH_M, below_half_the_radius, between, of_a_size, over_its_floor, place_near
from ..words import ending, off, rose, since, the, the_at, this_surface

_SWING_M = 0.05  # a swing along the axis smaller than this is none worth a word


class RampPart(Strict):
    """A flat ramp that stands on the deck, its middle at the motion's place, its foot on the deck."""

    slope_deg: float = number(tr_later("Slope"), "°", 0, 80, shown=linear(0, 45))
    heading_deg: float = heading_field(tr_later("Rises toward"))
    length_m: float = number(tr_later("Ramp length"), "m", 0.1, 1_000, 4.0, shown=log(0.5, 20))
    width_m: float = number(tr_later("Ramp width"), "m", 0.1, 1_000, 1.0, shown=log(0.5, 20))


class Roll(Motion):
    """A ball that rolls, or slides until it grips, on the deck or on a ramp."""

    kind: Literal["roll"]
    speed_m_s: float = speed_field(tr_later("Speed"), 0.0)
    heading_deg: float = heading_field(tr_later("Toward"))
    body: BodyPart = body_field()
    ball_spin_rpm: float = ball_spin_field()
    start: Literal["rolling", "sliding"] = choice(tr_later("Starts"), default="rolling")
    ramp: RampPart | None = None
    bounces: Whole = bounces_field()


def check(motion, setting, _shape):
    """The body may be in this air, and lies on its ground: its height follows, and it fits there."""
    habitat, place, diameter = setting.habitat, motion.place, body_of(motion.body).diameter_m
    if small := list(of_a_size(setting, diameter)):
        yield from small
        return
    if not diameter < habitat.radius_m / 2:
        yield "body.diameter_m", diameter, below_half_the_radius(habitat)
        return
    yield from over_its_floor(habitat, place)
    least, side, _ = habitat.sides(place.floor, diameter / 2)
    if not least <= place.axial_m <= side:
        yield "place.axial_m", place.axial_m, tr("{least} to {most} m, on the ground", **between(least, side))
        return
    yield from _lies(habitat, motion, diameter)


def _lies(habitat, motion, diameter_m):
    place, half = motion.place, diameter_m / 2
    laid = seat(habitat, motion, half)
    height = float(habitat.chart(place.floor).height(laid.position_m[None])[0])
    if place.height_m and abs(place.height_m - height) > 1e-6:
        lies = tr("0, or {height} m: a ball that rolls lies on its surface", height=written(height, ".9g"))
        yield "place.height_m", place.height_m, lies
    for surface in habitat.surfaces(place.floor):
        if float(surface.gap(laid.position_m[:, None], np.array([half]))[0]) < -TOUCH_M:
            inside = this_surface(surface.name_at(laid.position_m))
            may_be = tr("small enough that the ball does not start inside {surface}", surface=inside)
            if motion.ramp is None:
                yield "body.diameter_m", diameter_m, may_be
            else:
                yield "ramp.length_m", motion.ramp.length_m, may_be
            return


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
    touch, ramp = chart.position(under), None
    if part is not None:
        angles = math.radians(part.slope_deg), math.radians(part.heading_deg)
        ramp = ramp_at(chart, under, *angles, part.length_m, part.width_m)
        ground, touch = ramp.slope, ramp.corners_m.mean(axis=0)
    normal = ground.normal(touch)
    return Seat(touch + body_radius_m * normal, normal, ground, ramp)


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


def rolled(traced, units):
    """What a ball does that rolls from the start."""
    track, events = traced.track, traced.track.events
    if risen := rose(traced, units):
        return risen
    contacts = [e for e in events if e.surface is not None and e.surface != traced.plan.surface]
    parts = [_begins(traced)]
    if contacts and track.end != "landed":
        met = contacts[0]
        parts.append(tr("meets {surface} after {time}", surface=the(traced, met.surface), time=since(traced, met)))
    return [
        f"{tr(AND, first=', '.join(parts), last=ending(traced, units))}.",
        *_swing(traced, units),
        *_plain_roll(traced, units),
    ]


def _begins(traced):
    """How it begins, as a sentence that goes on."""
    on = the_at(traced, traced.plan.surface)
    if traced.motion.start != "sliding":
        return tr("It rolls on {surface}", surface=on)
    grip = next((e for e in traced.track.events if e.kind == "grip"), None)
    if grip is None:
        return tr("It slides on {surface}", surface=on)
    return tr("It slides on {surface}, grips after {time} and rolls", surface=on, time=since(traced, grip))


def _swing(traced, units):
    """How far it went along the axis and back, where it turned back there."""
    samples, place = traced.track.samples, traced.plan.place
    if traced.plan.surface != "deck" or len(samples.time_s) < 3:
        return []
    ways = traced.ways.at(place, samples.along_m - place[0], samples.rotating_m)
    axial = np.array([way.axial_m for way in ways])
    far = float(np.max(np.abs(axial)))
    if far < _SWING_M or abs(axial[-1]) > 0.9 * far:
        return []
    return [tr("Along the axis it goes {length} at the most, and is turned back.", length=length(far, units))]


def _plain_roll(traced, units):
    beside = traced.flat_gravity
    if beside is None:
        return []
    if beside.ends_s <= traced.plan.start_s:
        return [tr("Under plain gravity it would stay where it is.")]
    where, after = off(traced, traced.plain_end, units), seconds(beside.ends_s - traced.plan.start_s)
    return [tr("Under plain gravity it would be {where} after {time}.", where=where, time=after)]


_COMMA = when("start", ",", when("speed_m_s", ","), equals="sliding")
PAGE = Page(
    group=tr_later("Things"),
    add=tr_later_as("added", "a roll"),
    short=tr_later("Roll"),
    title=tr_later("Roll"),
    one=tr_later_as("counted", "roll"),
    many=tr_later_as("counted", "rolls"),
    sentence=(
        when(
            "start",
            tr_later("Set sliding at {speed_m_s}, {heading_deg}"),
            when("speed_m_s", tr_later("Rolled at {speed_m_s}, {heading_deg}"), tr_later("Let roll from rest")),
            equals="sliding",
        ),
        when(
            "ramp",
            tr_later(" on a ramp of {ramp.slope_deg} that rises {ramp.heading_deg}"),
            when("ball_spin_rpm", _COMMA),
        ),
        when("ball_spin_rpm", tr_later(" spinning at {ball_spin_rpm} about the upright")),
        ".",
    ),
    rows={"speed_m_s": None, "heading_deg": None, "start": tr_later("Starts")},
    terms={tr_later("Roll"): tr_later("A ball that rolls on the ground, or slides until it grips.")},
)
KIND = Kind(
    name="roll",
    fields=Roll,
    new={
        "place": at_height(0.0),
        "speed_m_s": 1.5,
        "heading_deg": 90.0,
        "body": "handball",
    },
    check=check,
    plan=plan,
    outcome=rolled,
    assumptions=in_air,
    told=telling.rolled,
    page=PAGE,
)
