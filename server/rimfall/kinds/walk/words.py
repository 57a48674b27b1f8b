"""Sentences for a walk."""

from ...phrases import seconds, speed
from ..ground_words import the

_FELT = 0.005  # a share that is none worth a word


def walked(traced, units):
    """What walking does to weight."""
    found = traced.findings
    if not len(found["feet_g"]):
        return ["The scene ends before the first step."]
    standing, feet = found["standing_g"], found["feet_g"]
    first, last = float(feet[0]), float(feet[-1])
    goes = f"{seconds(traced.track.ends_s - traced.plan.start_s)} at {speed(traced.motion.speed_m_s, units)}"
    if standing == 0:
        return [f"There is no weight to walk with: {goes} take a handrail."]
    more = first / standing - 1
    change = (
        "as standing"
        if abs(more) < _FELT
        else f"{abs(100 * more):.0f} % {'more' if more > 0 else 'less'} than standing"
    )
    out = [
        f"On the way, {goes}, the feet feel {first:.2f} g, {change}{_later(first, last)}; the head feels {float(found['head_g'][0]):.2f} g."
    ]
    return [*out, *_leaning(found), *_ending(traced, units), *_floating(traced, units)]


def _later(first, last):
    return "" if abs(last - first) < _FELT else f", and {last:.2f} g at the end"


def _leaning(found):
    lean = float(max(found["lean_deg"]))
    return [f"Down leans by up to {lean:.0f}°."] if lean >= 1 else []


def _ending(traced, units):
    made = traced.track
    if made.end == "met a surface":
        return [f"The way ends at {the(traced, made.events[-1].surface)}."]
    return ["The way ends at the edge."] if made.end == "edge" else []


def _floating(traced, units):
    floats = traced.findings["floats_at_m_s"]
    return [] if floats is None else [f"At {speed(floats, units)} antispinward the feet would leave the ground."]
