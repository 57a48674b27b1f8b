"""Walks: somebody walks, runs, or climbs stairs or a ladder at a constant speed over the ground, and feels it.

The path is given, not worked out (`motions/course.py`).
"""

from dataclasses import dataclass
from functools import partial
from typing import Literal

import numpy as np

from ...fields import linear, number
from ...language import tr, tr_later, tr_later_as, written
from ...motions.course import Round, course, floats_at_m_s
from ...motions.journey import Event, Prescribed
from ...motions.people import felt, last_state, lean_deg, on_floor, weight_g
from ...phrases import seconds, speed
from ...physics.brackets import narrowed
from ...physics.constants import PERSON_HEIGHT_M, TURN_RAD
from ...physics.crossings import TOUCH_M
from ..kind import Finding, Kind, Page, Stage, when
from ..motion import along_given, at_height, elevation_field, heading_field, speed_field
from ..people import AS_A_BALL, GIVEN, GROUP, RUNS_M_S, SELF, WEIGHT_TERM, Person, over_the_feet, person, stands
from ..words import the_at
from . import prose

_FELT = 0.005  # a share that is none worth a word
_AT_ONCE_S = 0.005
_MOST_TURNS = 1_000.0  # round the axis in one walk: seconds of work
_LEFT_OUT = tr_later("The body goes evenly; the ups and downs of steps are left out.")


class Walk(Person):
    """Someone walks, runs, or climbs stairs or a ladder."""

    kind: Literal["walk"]
    speed_m_s: float = speed_field(tr_later("Speed"), 1.4)
    heading_deg: float = heading_field(tr_later("Toward"))
    climb_deg: float = elevation_field(tr_later("Climbs"), 0.0)
    for_s: float = number(tr_later("For"), "s", 0.05, 600, 5.0, shown=linear(1, 60))


def check(motion, setting, shape):
    """Who walks stands; the ground is level that way; it does not begin into the ground, nor go round too often."""
    clashes = [*_level(motion, setting.habitat, shape)] or [*stands(setting.habitat, motion)]
    if motion.climb_deg < 0 and motion.place.height_m == 0:
        clashes.append(("climb_deg", motion.climb_deg, tr("0 to 90 degrees: the feet are on the ground already")))
    yield from clashes or _rounds(motion, setting)


def _level(motion, habitat, shape):
    """Where the ground bends across, it is level only along the line farthest from the axis."""
    if habitat.section_radius_m is None:
        return
    if motion.place.axial_m:
        yield "place.axial_m", motion.place.axial_m, tr("0 m: in a {shape} the ground slopes beside it", shape=shape)
    if motion.heading_deg % 180.0:
        may_be = tr("0 or 180 degrees: in a {shape} the ground slopes every other way", shape=shape)
        yield "heading_deg", motion.heading_deg, may_be


def _rounds(motion, setting):
    """A walk that goes round the axis too often to be worked out."""
    way = course(setting.habitat, motion)
    lasts_s = min(motion.for_s, max(setting.limit_s(motion.start_s) - motion.start_s, 0.0))
    lasts_s = stop(setting, way, person(motion), motion.place.floor, lasts_s).after_s
    turns = abs(way.turned_rad(lasts_s)) / TURN_RAD
    if turns > _MOST_TURNS:
        most = written(lasts_s * _MOST_TURNS / turns, ".3g")
        may_be = tr("0.05 to {most} s at that speed: about a thousand times round", most=most)
        yield "for_s", motion.for_s, may_be


@dataclass(frozen=True)
class _Stop:
    """When a walk ends, seconds since its start; the surface that ends it, or None."""

    after_s: float
    surface: object | None


def stop(setting, way, body, floor, lasts_s):
    """Where a walk along a way ends within lasts_s: at the first surface its ball meets, with the head at the axis, or in time.

    Along these ways a gap grows at most as fast as before (it is a concave function of time), so that it is lost only once.
    """
    earliest = _Stop(_to_the_axis_s(way, body.diameter_m, lasts_s), None)
    for surface in setting.habitat.surfaces(floor):
        gap_m = partial(_gap_m, way, surface, body.radius_m)
        if gap_m(np.array([earliest.after_s]))[0] >= -TOUCH_M:
            continue
        low, _ = narrowed(0.0, earliest.after_s, lambda since_s, gap_m=gap_m: gap_m(since_s) < 0)
        earliest = _Stop(low, surface)
    return earliest


def _to_the_axis_s(way, head_m, lasts_s):
    rises = isinstance(way, Round) and way.rise_m_s > 0
    return min(lasts_s, max((way.radius_m - head_m) / way.rise_m_s, 0.0)) if rises else lasts_s


def _gap_m(way, surface, radius_m, since_s):
    """Gap (n,) of the ball of a walk to a surface at times (n,) after its start."""
    return surface.gap(way.at(since_s, radius_m)[0].T, radius_m)


def plan(setting, motion):
    """Plan of a `walk` of the scene document (attributes as its fields are named); its path is that of the centre."""
    floor, start_s, body = motion.place.floor, motion.start_s, person(motion)
    habitat = setting.habitat
    way, ground = course(habitat, motion), habitat.ground(floor)
    lasts_s = max(setting.limit_s(start_s) - start_s, 0.0)
    ends = stop(setting, way, body, floor, min(motion.for_s, lasts_s))
    leg = way.leg(ground, start_s, start_s + ends.after_s, motion.centre_m)
    place = over_the_feet(motion)
    velocity = habitat.chart(floor).axes_at(place) @ way.at(np.zeros(1), motion.centre_m)[1][0]
    in_time = ends.surface is None and ends.after_s == lasts_s < motion.for_s
    given = Prescribed((leg,)) if in_time else _ended(leg, ends)
    surface = ground.name_at(habitat.chart(floor).position(place))
    return along_given(motion, place, velocity, body, given, GIVEN, surface=surface, findings=partial(_findings, way))


def _ended(leg, ends):
    """The Given of a walk that ends of itself or at a surface."""
    position, velocity = last_state(leg)
    if ends.surface is None:
        return Prescribed((leg,), (Event("arrives", leg.path.end_s, position, velocity),), "arrived")
    kind = ends.surface.name_at(position)
    if ends.surface.edge:
        return Prescribed((leg,), (Event("edge", leg.path.end_s, position, velocity),), "edge")
    met = Event(kind, leg.path.end_s, position, velocity, np.zeros(3), ends.surface)
    return Prescribed((leg,), (met,), "met a surface")


def _findings(way, setting, plan, track):
    """What the walker feels at the samples (n,): at the feet and at the head, sideways there (spinward is above 0), and how far it
    leans from straight down; before the start, standing; and the speed antispinward at which the feet have no weight."""
    time_s = track.samples.time_s
    since = time_s - plan.start_s
    feet, head = (felt(setting, plan.floor, time_s, *way.at(since, up)) for up in (0.0, PERSON_HEIGHT_M))
    off = ~on_floor(feet)
    off = np.cumsum(off) > 0  # what comes after is not as it is drawn
    feet[off], head[off] = 0.0, 0.0
    at = np.zeros(1)
    still = felt(setting, plan.floor, at + plan.start_s, way.at(at, 0.0)[0], np.zeros((1, 3)), np.zeros((1, 3)))
    return {
        "standing_g": float(weight_g(still)[0]),
        "feet_g": weight_g(feet),
        "head_g": weight_g(head),
        "sideways_m_s2": feet[:, 0].copy(),
        "lean_deg": lean_deg(feet),
        "leaves_s": float(time_s[off][0]) if np.any(off) else None,
        "floats_at_m_s": floats_at_m_s(setting.habitat, setting.omega_rad_s(plan.start_s), _ground_m(way)),
    }


def _ground_m(way):
    """How far from the axis, along what is up, the feet begin."""
    return way.radius_m if isinstance(way, Round) else float(-way.feet_m @ way.up)


def walked(traced, units):
    """What walking does to weight."""
    findings = traced.findings
    if not len(findings["feet_g"]):
        return [tr("The scene ends before the first step.")]
    standing, feet = findings["standing_g"], findings["feet_g"]
    first, last, head = float(feet[0]), float(feet[-1]), _g(findings["head_g"][0])
    goes = {
        "lasts": seconds(traced.track.ends_s - traced.plan.start_s),
        "speed": speed(traced.motion.speed_m_s, units),
    }
    if traced.motion.speed_m_s == 0 and standing > 0:
        return [tr("Standing still, the feet feel {feet} g; the head feels {head} g.", feet=_g(first), head=head)]
    if findings["leaves_s"] is not None and feet[0] == 0.0:
        return [*_leaves(traced, units, goes), *_ending(traced)]
    if standing == 0:
        return [tr("There is no weight to walk with: {lasts} at {speed} take a handrail.", **goes)]
    places = {"feet": _g(first), "change": _change(first / standing - 1)}
    if findings["leaves_s"] is not None:
        out = [tr("At first the feet feel {feet} g, {change}.", **places), *_leaves(traced, units, goes)]
    else:
        out = [_on_the_way(last, abs(last - first) < _FELT, head, places | goes)]
    return [*out, *_leaning(findings), *_ending(traced), *_floating(traced, units)]


def _g(value):
    return written(float(value), ".2f")


def _change(more):
    """How weight differs from that of who stands, more as a share of it."""
    if abs(more) < _FELT:
        return tr("as standing")
    percent = written(abs(100 * more), ".0f")
    if more > 0:
        return tr("{percent} % more than standing", percent=percent)
    return tr("{percent} % less than standing", percent=percent)


def _on_the_way(last, same, head, places):
    """What feet and head feel on the way; same: the feet feel at the end what they feel at first."""
    if same:
        return tr(
            "On the way, {lasts} at {speed}, the feet feel {feet}\u00a0g, {change}; the head feels {head}\u00a0g.",
            head=head,
            **places,
        )
    return tr(
        "On the way, {lasts} at {speed}, the feet feel {feet}\u00a0g, {change}, and {last}\u00a0g at the end; the head feels {head}\u00a0g.",
        last=_g(last),
        head=head,
        **places,
    )


def _leaves(traced, units, goes):
    """That the walker does not stay on the floor: nothing presses the feet on."""
    after_s, floats = traced.findings["leaves_s"] - traced.plan.start_s, traced.findings["floats_at_m_s"]
    after, at_once = seconds(after_s), after_s < _AT_ONCE_S
    if floats is None:
        leaves = (
            tr("The walker leaves the floor at once.")
            if at_once
            else tr("The walker leaves the floor after {time}.", time=after)
        )
    elif at_once:
        leaves = tr(
            "The walker leaves the floor at once: beyond {speed} antispinward nothing presses the feet on.",
            speed=speed(floats, units),
        )
    else:
        leaves = tr(
            "The walker leaves the floor after {time}: beyond {speed} antispinward nothing presses the feet on.",
            time=after,
            speed=speed(floats, units),
        )
    return [f"{leaves} {tr('The way shown, {lasts} at {speed}, would take a handrail.', **goes)}"]


def in_short(traced, _units):
    """What the feet feel, in a phrase."""
    feet = traced.findings["feet_g"]
    if not len(feet):
        return tr("has no time for a step before the scene ends")
    if traced.findings["standing_g"] == 0:
        return tr("has no weight to walk with")
    if feet[0] == 0.0:
        return tr("leaves the floor at once")
    lasts = seconds(traced.track.ends_s - traced.plan.start_s)
    return tr("feels {feet} g at the feet for {time}", feet=_g(feet[0]), time=lasts)


def _leaning(findings):
    lean = float(max(findings["lean_deg"]))
    return [tr("Down leans by up to {angle}°.", angle=written(lean, ".0f"))] if lean >= 1 else []


def _ending(traced):
    track = traced.track
    if track.end == "met a surface":
        return [tr("The way ends at {surface}.", surface=the_at(traced, track.events[-1].surface))]
    return [tr("The way ends at the edge.")] if track.end == "edge" else []


def _floating(traced, units):
    floats = traced.findings["floats_at_m_s"]
    if floats is None:
        return []
    return [tr("At {speed} antispinward the feet would leave the ground.", speed=speed(floats, units))]


PAGE = Page(
    group=GROUP,
    add=tr_later_as("added", "a walk"),
    short=tr_later("Walk"),
    title=tr_later("Walk"),
    one=tr_later_as("counted", "walk"),
    many=tr_later_as("counted", "walks"),
    sentence=(
        when("climb_deg", tr_later("Climbs"), when("speed_m_s", tr_later("Runs"), tr_later("Walks"), above=RUNS_M_S)),
        tr_later(" at {speed_m_s}, {heading_deg},"),
        when("climb_deg", tr_later(" up a slope of {climb_deg},")),
        tr_later(" for {for_s}."),
    ),
    rows={
        "speed_m_s": None,
        "heading_deg": None,
        "climb_deg": tr_later("Slope"),
        "place.height_m": tr_later("Feet at"),
        "for_s": tr_later("For"),
    },
    more=(tr_later("Person"), SELF),
    findings=(
        Finding("feet_g", tr_later("weight at the feet"), "g", WEIGHT_TERM),
        Finding("head_g", tr_later("at the head"), "g", tr_later("apparent gravity")),
        Finding("standing_g", tr_later("standing still"), "g", tr_later("apparent gravity")),
        Finding("sideways_m_s2", tr_later("sideways push"), "m/s²", tr_later("sideways push"), sided=True),
        Finding("lean_deg", tr_later("leans"), "°", tr_later("lean")),
        Finding("floats_at_m_s", tr_later("would float at"), "m/s", tr_later("floats at")),
    ),
    terms={
        tr_later("Walk"): tr_later(
            "A person goes over the ground at an even speed. Spinward they are heavier, antispinward lighter."
        ),
    },
    stage=Stage(mover="person", attended_m=None, weight="feet_g"),
)
KIND = Kind(
    name="walk",
    fields=Walk,
    new={"place": at_height(0.0), "speed_m_s": 1.4, "heading_deg": 0.0, "climb_deg": 0.0, "for_s": 5.0},
    check=check,
    plan=plan,
    outcome=walked,
    in_short=in_short,
    assumptions=lambda _traced, _setting: [tr(_LEFT_OUT), tr(AS_A_BALL)],
    catches=True,
    told=prose.told,
    page=PAGE,
    element="walk",
)
