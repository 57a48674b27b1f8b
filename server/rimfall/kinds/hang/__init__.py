"""Things that hang on a line: lamps, plumb lines, pendulums."""

import math
from typing import Literal

import numpy as np

from ...fields import linear, log, number
from ...language import tr, tr_later, tr_later_as, written
from ...phrases import seconds, times, where
from ..air_words import in_air
from ..kind import Finding, Kind, Page, Stage, StepLimit, when
from ..motion import BodyPart, Motion, at_height, body_field, body_of, heading_field, speed_field
from ..places import TOUCH_M, clear_of_surfaces, of_a_size
from ..words import the, this_surface
from . import prose
from .plan import first_state, line_of, plan
from .swing import MOST_TRIES, STILL_DEG


class Hang(Motion):
    """A body hung by its middle on a line without mass; its place is that of the point it hangs from."""

    kind: Literal["hang"]
    length_m: float = number(tr_later_as("what it hangs on", "Line"), "m", 0.01, 1_000, 2.0, shown=log(0.1, 20))
    body: BodyPart = body_field()
    first_angle_deg: float = number(tr_later("First angle from plumb"), "°", 0, 180, 0.0, shown=linear(0, 90))
    first_heading_deg: float = heading_field(tr_later("Drawn aside toward"))
    speed_m_s: float = speed_field(tr_later("Push"), 0.0)
    heading_deg: float = heading_field(tr_later("Pushed toward"))


def check(motion, setting, _shape):
    """Its pivot is in the room, and what hangs there begins outside every surface and is not pushed along its own line."""
    diameter = body_of(motion.body).diameter_m
    place = clear_of_surfaces(setting.habitat, motion.place, 0.0, "body.diameter_m", diameter)
    yield from [*of_a_size(setting, diameter), *place] or _bob(motion, setting)


def _bob(motion, setting):
    habitat, line = setting.habitat, line_of(setting, motion)
    away, velocity = first_state(line, habitat.spin, motion)
    if velocity is None:
        yield "heading_deg", motion.heading_deg, tr("a heading that is not along the line itself")
    body, first = body_of(motion.body), (line.pivot_m + away)[:, None]
    for surface in habitat.surfaces(motion.place.floor):
        if float(surface.gap(first, np.array([body.radius_m]))[0]) < -TOUCH_M:
            if surface.edge:
                may_be = tr(
                    "any length at which what hangs on it begins outside the edge of its floor, by half its width"
                )
            else:
                may_be = tr(
                    "any length at which what hangs on it begins outside {surface}, by half its width",
                    surface=this_surface(surface.name_at(first[:, 0])),
                )
            yield "length_m", motion.length_m, may_be
            return


_PLANE_DEG = 0.5
_NB = "\u00a0"


def hung(traced, units):
    """What a thing on a line does."""
    findings = traced.findings
    if not len(findings["swing_deg"]):
        return [tr("The scene ends as it begins to swing.")]
    if not np.any(findings["tension_n"]) and not findings["slack"]:
        return [tr("With no weight to stretch its line, it stays where it is.")]
    parts = (_leans(traced, units), _swings(traced), _plane(traced), _pulls(findings), _slackens(traced), _ends(traced))
    return [s for s in parts if s]


def _degrees(value):
    return f"{written(value, '.1f')}°"


def _leans(traced, units):
    """Where its plumb line leads."""
    plumb, floats = traced.findings["plumb_deg"], traced.findings["floats"]
    if np.ptp(plumb) >= STILL_DEG:
        places = {"first": _degrees(plumb[0]), "last": _degrees(plumb[-1])}
        return tr("Its plumb line leans {first} from the upright at first and {last} at the end.", **places)
    at_rest = np.max(traced.findings["swing_deg"]) < STILL_DEG
    if plumb[0] < STILL_DEG:
        if at_rest:
            return tr("It {hangs} and stays there.", hangs=_hangs(traced))
        return tr("At rest it would float straight above its pivot.") if floats else ""
    if not at_rest:
        return tr("Its plumb line leans {angle} from the upright.", angle=_degrees(plumb[0]))
    pivot = traced.motion.place
    (way,) = traced.ways.between((pivot.along_m, pivot.height_m, pivot.axial_m), traced.track.events[:1])
    aside = where(way, units, traced.across)
    return tr("It {hangs}, {where} from its pivot, and stays there.", hangs=_hangs(traced), where=aside)


def _hangs(traced):
    """How it is at rest: "hangs straight down", "floats 6.5° from the upright, higher than its pivot"."""
    plumb, floats = traced.findings["plumb_deg"][0], traced.findings["floats"]
    if plumb < STILL_DEG:
        return tr("floats straight above its pivot") if floats else tr("hangs straight down")
    if floats:
        return tr("floats {angle} from the upright, higher than its pivot", angle=_degrees(plumb))
    return tr("hangs {angle} from the upright", angle=_degrees(plumb))


def _swings(traced):
    swing, period_s = float(np.max(traced.findings["swing_deg"])), traced.findings["period_s"]
    if swing < STILL_DEG:
        return ""
    if traced.findings["always_over"]:
        return tr("It goes over the top, once round in {time}.", time=seconds(period_s))
    if over := traced.findings["over_the_top"]:
        return tr("It goes over the top {times}.", times=times(over))
    if period_s is None:
        return tr("It swings up to {angle} from plumb.", angle=_degrees(swing))
    return tr("It swings up to {angle} from plumb, once in {time}.", angle=_degrees(swing), time=seconds(period_s))


def _plane(traced):
    turns = traced.findings["plane_turns_deg"]
    if turns is None or abs(turns) < _PLANE_DEG:
        return ""
    places = {"angle": _degrees(abs(turns)), "time": seconds(traced.track.ends_s - traced.plan.start_s)}
    if turns > 0:
        return tr("Seen from above, the plane it swings in turns {angle} anticlockwise in {time}.", **places)
    return tr("Seen from above, the plane it swings in turns {angle} clockwise in {time}.", **places)


def _pulls(findings):
    least, most = float(np.min(findings["tension_n"])), float(np.max(findings["tension_n"]))
    most_n = f"{_newtons(most)}{_NB}N"
    if most - least <= 1e-3 * most:
        return tr("Its line bears {force}.", force=most_n)
    return tr("Its line bears {least} to {most}.", least=_newtons(least), most=most_n)


def _newtons(value):
    """Three figures, never a power of ten."""
    if value and value < 0.00995:
        return written(value, f".{2 - math.floor(math.log10(value))}f")
    return written(value, ".3g" if value < 999.5 else ",.0f")


def _slackens(traced):
    after = [
        seconds(float(next(e.time_s for e in traced.track.events if e.kind == kind)) - traced.plan.start_s)
        for kind in ("slack", "taut")
        if any(e.kind == kind for e in traced.track.events)
    ]
    if not after:
        return ""
    if len(after) == 1:
        return tr("The line goes slack after {time}; the jerk takes what then moves it outward.", time=after[0])
    return tr(
        "The line goes slack after {time} and is straight again after {again}; the jerk takes what then moves it outward.",
        time=after[0],
        again=after[1],
    )


def _ends(traced):
    track = traced.track
    after = seconds(track.ends_s - traced.plan.start_s)
    if track.end == "met a surface":
        met = the(traced, track.events[-1].surface)
        return tr("It meets {surface} after {time}; what follows is not worked out.", surface=met, time=after)
    if track.end == "edge":
        return tr("It passes the edge of its floor after {time}; what lies beyond is not followed.", time=after)
    if track.end == "slack":
        return tr("After {time} nothing stretches its line any more, and it is not followed further.", time=after)
    return ""


def in_short(traced, _units):
    """How it hangs or swings, in a phrase."""
    findings = traced.findings
    if not len(findings["swing_deg"]):
        return tr("begins to swing as the scene ends")
    if not np.any(findings["tension_n"]) and not findings["slack"]:
        return tr("stays where it is, with no weight to stretch its line")
    swing = float(np.max(findings["swing_deg"]))
    if findings["always_over"]:
        return tr("goes over the top, once round in {time}", time=seconds(findings["period_s"]))
    if findings["over_the_top"]:
        return tr("goes over the top {times}", times=times(findings["over_the_top"]))
    if swing >= STILL_DEG:
        return tr("swings up to {angle} from plumb", angle=_degrees(swing))
    return _hangs(traced)


_LEFT_OUT = tr_later(
    "The line has no mass, does not stretch and is not held back by the air; what hangs on it does not turn about it."
)


def assumptions(traced, setting):
    """What the answer leaves out of a thing that hangs."""
    return [tr(_LEFT_OUT), *in_air(traced, setting)]


_AT_REST = when("first_angle_deg", "", tr_later(", at rest"))
PAGE = Page(
    group=tr_later("Things"),
    add=tr_later_as("added", "a hanging thing"),
    short=tr_later("Hang"),
    title=tr_later("Hanging"),
    one=tr_later_as("counted", "hanging thing"),
    many=tr_later_as("counted", "hanging things"),
    sentence=(
        tr_later("Hangs on a line of {length_m}"),
        when("first_angle_deg", tr_later(", let go {first_angle_deg} aside, {first_heading_deg}")),
        when("speed_m_s", tr_later(", pushed at {speed_m_s}, {heading_deg}"), _AT_REST),
        ".",
    ),
    rows={
        "length_m": tr_later_as("what it hangs on", "Line"),
        "first_angle_deg": tr_later("Aside"),
        "first_heading_deg": tr_later("Toward"),
        "speed_m_s": None,
        "heading_deg": tr_later("Pushed"),
        "place.height_m": tr_later("Pivot"),
    },
    mirrored=False,
    stays=tr_later("hangs"),
    findings=(
        Finding("swing_deg", tr_later("from the plumb line"), "°", tr_later("plumb line")),
        Finding("plumb_deg", tr_later("plumb line leans"), "°", tr_later("plumb line")),
        Finding("tension_n", tr_later("tension in the line"), "N", tr_later("tension")),
        Finding("period_s", tr_later("one swing"), "s", tr_later("period")),
        Finding("plane_turns_deg_per_h", tr_later("its plane turns, an hour"), "°", tr_later("swing plane")),
    ),
    terms={
        tr_later("Hang"): tr_later("A weight on a line from a pivot: a lamp, a plumb line, a pendulum."),
        tr_later("Pivot"): tr_later("The point a line hangs from."),
        tr_later("Plumb line"): tr_later(
            "A line with a weight at rest on it. It shows where down is, thrust and a changing spin included."
        ),
        tr_later("Slack"): tr_later(
            "A line pulls and does not push. Where nothing stretches it, what hangs on it flies free until the line "
            "is straight again."
        ),
        tr_later("Swing plane"): tr_later(
            "The upright plane in which a pendulum swings. Aboard it turns, as the plane of a pendulum on Earth does "
            "in the course of a day."
        ),
        tr_later("Tension"): tr_later("How hard a line is pulled."),
    },
    stage=Stage(beside="pendulum", attended_m=1.2, winds=True),
)
KIND = Kind(
    name="hang",
    fields=Hang,
    new={
        "place": at_height(3.0),
        "length_m": 1.5,
        "first_angle_deg": 20.0,
        "body": "steel ball 20 mm",
    },
    check=check,
    plan=plan,
    heavy=True,
    outcome=hung,
    in_short=in_short,
    assumptions=assumptions,
    told=prose.told,
    page=PAGE,
    element="hang",
    limit=StepLimit(
        MOST_TRIES,
        "length_m",
        tr_later(
            "it swings too often, or its body is too light for its size in this air. Lengthen its line, make it heavier, or let the "
            "scene end sooner (sampling.duration_s)."
        ),
    ),
    eases=(tr_later("a longer line (length_m)"),),
)
