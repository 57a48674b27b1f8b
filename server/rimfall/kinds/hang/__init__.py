"""Things that hang on a line: lamps, plumb lines, pendulums."""

import math
from typing import Literal

import numpy as np

from ...fields import linear, log, number
from ...phrases import seconds, times, where
from ..kind import Finding, Kind, Page, Stage, StepLimit, called, when
from ..motion import BodyPart, Motion, at_height, body_field, body_of, heading_field, speed_field
from ..places import TOUCH_M, clear_of_surfaces, of_a_size
from ..words import in_air, the
from . import prose
from .plan import first_state, line_of, plan
from .swing import MOST_TRIES, STILL_DEG


class Hang(Motion):
    """A body hung by its middle on a line without mass; its place is that of the point it hangs from."""

    kind: Literal["hang"]
    length_m: float = number("Line", "m", 0.01, 1_000, 2.0, shown=log(0.1, 20))
    body: BodyPart = body_field()
    first_angle_deg: float = number("First angle from plumb", "°", 0, 180, 0.0, shown=linear(0, 90))
    first_heading_deg: float = heading_field("Drawn aside toward")
    speed_m_s: float = speed_field("Push", 0.0)
    heading_deg: float = heading_field("Pushed toward")


def check(motion, setting, _shape):
    """Its pivot is in the room, and what hangs there begins outside every surface and is not pushed along its own line."""
    diameter = body_of(motion.body).diameter_m
    place = clear_of_surfaces(setting.habitat, motion.place, 0.0, "body.diameter_m", diameter)
    yield from [*of_a_size(setting, diameter), *place] or _bob(motion, setting)


def _bob(motion, setting):
    habitat, line = setting.habitat, line_of(setting, motion)
    away, velocity = first_state(line, habitat.spin, motion)
    if velocity is None:
        yield "heading_deg", motion.heading_deg, "a heading that is not along the line itself"
    body, first = body_of(motion.body), (line.pivot_m + away)[:, None]
    for surface in habitat.surfaces(motion.place.floor):
        if float(surface.gap(first, np.array([body.radius_m]))[0]) < -TOUCH_M:
            name = "edge of its floor" if surface.edge else surface.name_at(first[:, 0])
            may_be = f"any length at which what hangs on it begins outside the {name}, by half its width"
            yield "length_m", motion.length_m, may_be
            return


_PLANE_DEG = 0.5
_NB = "\u00a0"


def hung(traced, units):
    """What a thing on a line does."""
    findings = traced.findings
    if not len(findings["swing_deg"]):
        return ["The scene ends as it begins to swing."]
    if not np.any(findings["tension_n"]) and not findings["slack"]:
        return ["With no weight to stretch its line, it stays where it is."]
    parts = (_leans(traced, units), _swings(traced), _plane(traced), _pulls(findings), _slackens(traced), _ends(traced))
    return [s for s in parts if s]


def _degrees(value):
    return f"{value:.1f}°"


def _leans(traced, units):
    """Where its plumb line leads."""
    plumb = traced.findings["plumb_deg"]
    if np.ptp(plumb) >= STILL_DEG:
        return (
            f"Its plumb line leans {_degrees(plumb[0])} from the upright at first and {_degrees(plumb[-1])} at the end."
        )
    at_rest = np.max(traced.findings["swing_deg"]) < STILL_DEG
    if plumb[0] < STILL_DEG:
        stays = f"It {_hangs(traced)} and stays there."
        return (
            stays
            if at_rest
            else "At rest it would float straight above its pivot."
            if traced.findings["floats"]
            else ""
        )
    if not at_rest:
        return f"Its plumb line leans {_degrees(plumb[0])} from the upright."
    pivot = traced.motion.place
    (way,) = traced.ways.between((pivot.along_m, pivot.height_m, pivot.axial_m), traced.track.events[:1])
    aside = where(way, units, traced.across)
    return f"It {_hangs(traced)}, {aside} from its pivot, and stays there."


def _hangs(traced):
    """How it is at rest: "hangs straight down", "floats 6.5° from the upright above its pivot"."""
    plumb, floats = traced.findings["plumb_deg"][0], traced.findings["floats"]
    if plumb < STILL_DEG:
        return "floats straight above its pivot" if floats else "hangs straight down"
    return (
        f"floats {_degrees(plumb)} from the upright, higher than its pivot"
        if floats
        else f"hangs {_degrees(plumb)} from the upright"
    )


def _swings(traced):
    swing, period_s = float(np.max(traced.findings["swing_deg"])), traced.findings["period_s"]
    if swing < STILL_DEG:
        return ""
    if traced.findings["always_over"]:
        return f"It goes over the top, once round in {seconds(period_s)}."
    if over := traced.findings["over_the_top"]:
        return f"It goes over the top {times(over)}."
    once = "" if period_s is None else f", once in {seconds(period_s)}"
    return f"It swings up to {_degrees(swing)} from plumb{once}."


def _plane(traced):
    turns = traced.findings["plane_turns_deg"]
    if turns is None or abs(turns) < _PLANE_DEG:
        return ""
    way = "anticlockwise" if turns > 0 else "clockwise"
    last = seconds(traced.track.ends_s - traced.plan.start_s)
    return f"Seen from above, the plane it swings in turns {_degrees(abs(turns))} {way} in {last}."


def _pulls(findings):
    least, most = float(np.min(findings["tension_n"])), float(np.max(findings["tension_n"]))
    if most - least <= 1e-3 * most:
        return f"Its line bears {_newtons(most)}{_NB}N."
    return f"Its line bears {_newtons(least)} to {_newtons(most)}{_NB}N."


def _newtons(value):
    """Three figures, never a power of ten."""
    if value and value < 0.00995:
        return f"{value:.{2 - math.floor(math.log10(value))}f}"
    return f"{value:.3g}" if value < 999.5 else f"{value:,.0f}"


def _slackens(traced):
    times = [
        seconds(float(next(e.time_s for e in traced.track.events if e.kind == kind)) - traced.plan.start_s)
        for kind in ("slack", "taut")
        if any(e.kind == kind for e in traced.track.events)
    ]
    if not times:
        return ""
    again = f" and is straight again after {times[1]}" if len(times) > 1 else ""
    return f"The line goes slack after {times[0]}{again}; the jerk takes what then moves it outward."


def _ends(traced):
    track = traced.track
    after = seconds(track.ends_s - traced.plan.start_s)
    if track.end == "met a surface":
        return f"It meets {the(traced, track.events[-1].surface)} after {after}; what follows is not worked out."
    if track.end == "edge":
        return f"It passes the edge of its floor after {after}; what lies beyond is not followed."
    if track.end == "slack":
        return f"After {after} nothing stretches its line any more, and it is not followed further."
    return ""


def in_short(traced, _units):
    """How it hangs or swings, in a phrase."""
    findings = traced.findings
    if not len(findings["swing_deg"]):
        return "begins to swing as the scene ends"
    if not np.any(findings["tension_n"]) and not findings["slack"]:
        return "stays where it is, with no weight to stretch its line"
    swing = float(np.max(findings["swing_deg"]))
    if findings["always_over"]:
        return f"goes over the top, once round in {seconds(findings['period_s'])}"
    if findings["over_the_top"]:
        return f"goes over the top {times(findings['over_the_top'])}"
    if swing >= STILL_DEG:
        return f"swings up to {_degrees(swing)} from plumb"
    return _hangs(traced)


def assumptions(traced, setting):
    """What the answer leaves out of a thing that hangs."""
    line = "The line has no mass, does not stretch and is not held back by the air; what hangs on it does not turn about it."
    return [line, *in_air(traced, setting)]


_AT_REST = when("first_angle_deg", "", ", at rest")
PAGE = Page(
    group="Things",
    **called("a hanging thing", short="Hang", title="Hanging"),
    sentence=(
        "Hangs on a line of {length_m}",
        when("first_angle_deg", ", let go {first_angle_deg} aside, {first_heading_deg}"),
        when("speed_m_s", ", pushed at {speed_m_s}, {heading_deg}", _AT_REST),
        ".",
    ),
    rows={
        "length_m": "Line",
        "first_angle_deg": "Aside",
        "first_heading_deg": "Toward",
        "speed_m_s": None,
        "heading_deg": "Pushed",
        "place.height_m": "Pivot",
    },
    mirrored=False,
    stays="hangs",
    findings=(
        Finding("swing_deg", "from the plumb line", "°", "plumb line"),
        Finding("plumb_deg", "plumb line leans", "°", "plumb line"),
        Finding("tension_n", "tension in the line", "N", "tension"),
        Finding("period_s", "one swing", "s", "period"),
        Finding("plane_turns_deg_per_h", "its plane turns, an hour", "°", "swing plane"),
    ),
    terms={
        "Hang": "A weight on a line from a pivot: a lamp, a plumb line, a pendulum.",
        "Pivot": "The point a line hangs from.",
        "Plumb line": (
            "A line with a weight at rest on it. It shows where down is, thrust and a changing spin included."
        ),
        "Slack": (
            "A line pulls and does not push. Where nothing stretches it, what hangs on it flies free until the line "
            "is straight again."
        ),
        "Swing plane": (
            "The upright plane in which a pendulum swings. Aboard it turns, as the plane of a pendulum on Earth does "
            "in the course of a day."
        ),
        "Tension": "How hard a line is pulled.",
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
        "it swings too often, or its body is too light for its size in this air. Lengthen its line, make it heavier, or let the "
        "scene end sooner (sampling.duration_s).",
    ),
    eases=("a longer line (length_m)",),
)
