"""Sentences for what happens on the ground, for every kind: what was met, when, how far off, rebounds, and where it all ends."""

import numpy as np

from ..motions.journey import ON_THE_GROUND
from ..phrases import drift, seconds, speed

_SURFACE_WORDS = {
    "deck": "the deck",
    "floor": "the floor",
    "ramp": "the ramp",
    "table": "the table",
    "wall": "an end wall",
}
_LIFTS_M_S = 1e-6  # an upward speed that is more than rounding


def the(traced, surface):
    """A surface with its article; the ground by the name that people have for it."""
    if surface == traced.ground:
        return f"the {traced.stands_on.name}"
    return _SURFACE_WORDS.get(surface, f"the {surface}")


def since(traced, event):
    """When an event was, after the start, in words."""
    return seconds(event.time_s - traced.plan.start_s)


def there(traced, moment, units, stressed=False):
    """How far it is at a moment from where it began, in words."""
    where = drift(moment.drift_m, moment.axial_m - traced.plan.place[2], units, traced.across, stressed)
    return "where it began" if where == "straight below" else where


def ending(traced, units):
    """How it ends, after it has touched ground."""
    made, final = traced.track, traced.track.events[-1]
    if made.end == "rest":
        return f"comes to rest {there(traced, final, units, stressed=True)} after {since(traced, final)}"
    if made.end == "edge":
        return f"passes the edge {there(traced, final, units, stressed=True)} after {since(traced, final)}"
    if made.end == "landed":
        return f"meets {the(traced, final.surface)} {there(traced, final, units)} after {since(traced, final)}"
    if made.end == "met a surface":
        return f"ends against {the(traced, final.surface)} after {since(traced, final)}"
    return _still_going(traced, units)


def _still_going(traced, units):
    samples = traced.track.samples
    if not len(samples.time_s):
        return ""
    moving = speed(float(np.linalg.norm(samples.rotating_velocity_m_s[-1])), units)
    end = samples.moment(-1, "end", traced.plan.place[0])
    after = seconds(end.time_s - traced.plan.start_s)
    return f"is still under way at {moving} after {after}, {there(traced, end, units)}"


def after_landing(traced, units):
    """What a body does after it has first landed; nothing where it stays there."""
    events = traced.track.events
    contacts = [e for e in events if e.surface is not None]
    later = [e for e in events if traced.track.landing is not None and e.time_s > traced.track.landing.time_s]
    if traced.track.landing is None or (not later and traced.track.end == "landed"):
        return None
    parts = [_rebounds(contacts), *_changes(traced, later), ending(traced, units)]
    return (
        f"It {', '.join(p for p in parts[:-1] if p)}{' and ' if any(parts[:-1]) else ''}{parts[-1]}."
        if parts[-1]
        else None
    )


def _rebounds(contacts):
    """How often it leaves what it met."""
    left = sum(
        e.after_m_s is not None and (e.after_m_s[1] > _LIFTS_M_S or e.kind not in ON_THE_GROUND) for e in contacts
    )
    return (
        ""
        if left == 0
        else "rebounds once"
        if left == 1
        else "rebounds twice"
        if left == 2
        else f"rebounds {left} times"
    )


def _changes(traced, events):
    grips = [e for e in events if e.kind == "grip"]
    return [f"rolls without slipping from {since(traced, grips[0])} on"] if grips else []
