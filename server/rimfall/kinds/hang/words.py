"""Sentences for what hangs on a line: how it leans, how it swings, how hard it pulls, and what ends it."""

import numpy as np

from ...phrases import drift, seconds
from ..air_words import in_air
from ..words import the

_STILL_DEG = 0.05  # an angle smaller than this is none worth a word
_PLANE_DEG = 0.5
_NB = "\u00a0"


def hung(traced, units):
    """What a thing on a line does."""
    found = traced.findings
    if not len(found["swing_deg"]):
        return ["The scene ends as it begins to swing."]
    if not np.any(found["tension_n"]) and not found["slack"]:
        return ["With no weight to stretch its line, it stays where it is."]
    parts = (_leans(traced, units), _swings(traced), _plane(traced), _pulls(found), _slackens(traced), _ends(traced))
    return [s for s in parts if s]


def _degrees(value):
    return f"{value:.1f}°"


def _leans(traced, units):
    """Where its plumb line leads."""
    plumb = traced.findings["plumb_deg"]
    if np.ptp(plumb) >= _STILL_DEG:
        return (
            f"Its plumb line leans {_degrees(plumb[0])} from the upright at first and {_degrees(plumb[-1])} at the end."
        )
    at_rest = np.max(traced.findings["swing_deg"]) < _STILL_DEG
    if plumb[0] < _STILL_DEG:
        return "It hangs straight down and stays there." if at_rest else ""
    if not at_rest:
        return f"Its plumb line leans {_degrees(plumb[0])} from the upright."
    place, pivot = traced.plan.place, traced.motion.place
    aside = drift(place[0] - pivot.along_m, place[2] - pivot.axial_m, units, traced.across)
    return f"It hangs {_degrees(plumb[0])} from the upright, {aside} from its pivot, and stays there."


def _swings(traced):
    swing, period_s = float(np.max(traced.findings["swing_deg"])), traced.findings["period_s"]
    if swing < _STILL_DEG:
        return ""
    once = "" if period_s is None else f", once in {seconds(period_s)}"
    return f"It swings up to {_degrees(swing)} from plumb{once}."


def _plane(traced):
    turns = traced.findings["plane_turns_deg"]
    if turns is None or abs(turns) < _PLANE_DEG:
        return ""
    way = "anticlockwise" if turns > 0 else "clockwise"
    last = seconds(traced.track.ends_s - traced.plan.start_s)
    return f"Seen from above, the plane it swings in turns {_degrees(abs(turns))} {way} in {last}."


def _pulls(found):
    least, most = float(np.min(found["tension_n"])), float(np.max(found["tension_n"]))
    if most - least <= 1e-3 * most:
        return f"Its line bears {most:.3g}{_NB}N."
    return f"Its line bears {least:.3g} to {most:.3g}{_NB}N."


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
    made = traced.track
    after = seconds(made.ends_s - traced.plan.start_s)
    if made.end == "met a surface":
        return f"It meets {the(traced, made.events[-1].surface)} after {after}; what follows is not worked out."
    if made.end == "edge":
        return f"It passes the edge of its floor after {after}; what lies beyond is not followed."
    if made.end == "slack":
        return f"After {after} nothing stretches its line any more, and it is not followed further."
    return ""


def assumptions(traced, setting):
    """What the answer leaves out of a thing that hangs."""
    line = "The line has no mass, does not stretch and is not held back by the air; what hangs on it does not turn about it."
    return [line, *in_air(traced, setting)]
