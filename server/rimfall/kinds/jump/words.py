"""Sentences for a jump."""

from ...phrases import drift, length, seconds
from ..air_words import AIR_FOLLOWS
from ..ground_words import the
from ..landing_words import why
from ..people import AS_A_BALL

_LEFT_OUT = "The jumper is a point with a mass and one drag at every speed, and does not turn or bend the knees."


def jumped(traced, units):
    """Where a jump comes down."""
    found, made = traced.findings, traced.track
    if made.landing is None:
        return [f"Nothing brings the jumper back: {_still(traced, units)}."]
    after = made.landing.time_s - traced.plan.start_s
    if after == 0:
        return ["The jumper does not leave the ground."]
    along, axial = (b - a for a, b in zip(found["left_m"], found["lands_m"], strict=True))
    where = drift(along, axial, units, traced.across, stressed=True)
    where = "where the jump began" if where == "straight below" else where
    rise = made.apex.height_m - traced.plan.place[1] if made.apex is not None else 0.0
    plain = _plain_jump(traced, units)
    lands = f"The jumper rises {length(rise, units)} and lands {where} after {seconds(after)}{plain}."
    return [s for s in (lands, why(traced, units)) if s]


def _plain_jump(traced, units):
    if traced.flat_gravity is None or traced.flat_gravity.landing is None:
        return ""
    landing = traced.flat_gravity.landing
    where = drift(landing["drift_m"], landing["axial_m"] - traced.plan.place[2], units, traced.across)
    where = "where it began" if where == "straight below" else where
    return f"; under plain gravity, {where} after {seconds(landing['time_s'] - traced.plan.start_s)}"


def _still(traced, units):
    last = traced.track.events[-1]
    after = seconds(traced.track.ends_s - traced.plan.start_s)
    if traced.track.end == "met a surface":
        return f"the jump ends at {the(traced, last.surface)} after {after}"
    if traced.track.end == "edge":
        return f"the jump passes the edge after {after}"
    return f"after {after} the jumper is {length(last.height_m, units)} up"


def assumptions(_traced, setting):
    """What a jump's answer leaves out."""
    lags = setting.air is not None and not setting.habitat.spin.steady
    return [_LEFT_OUT, AS_A_BALL, *([AIR_FOLLOWS] if lags else [])]
