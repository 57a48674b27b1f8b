"""Sentences for what happens on the ground: rebounds, rolling, sliding, standing, and where it all ends."""

import numpy as np

from ..motions.journey import ON_THE_GROUND
from ..phrases import drift, length, seconds, speed

_SURFACE_WORDS = {
    "deck": "the deck",
    "floor": "the floor",
    "ramp": "the ramp",
    "table": "the table",
    "wall": "an end wall",
}
_LIFTS_M_S = 1e-6  # an upward speed that is more than rounding
_SWING_M = 0.05  # a swing along the axis smaller than this is none worth a word


def the(traced, surface):
    """A surface with its article; the ground by the name that people have for it."""
    if surface == traced.ground:
        return f"the {traced.stands_on.name}"
    return _SURFACE_WORDS.get(surface, f"the {surface}")


def _since(traced, event):
    return seconds(event.time_s - traced.plan.start_s)


def _gone(traced, moment, units):
    return drift(moment.drift_m, moment.axial_m - traced.plan.place[2], units, traced.across)


def _there(traced, moment, units):
    where = _gone(traced, moment, units)
    return "where it began" if where == "straight below" else where


def _last(traced):
    return traced.track.events[-1]


def _ending(traced, units):
    """How it ends, after it has touched ground."""
    made, last = traced.track, _last(traced)
    if made.end == "rest":
        return f"comes to rest {_there(traced, last, units)} after {_since(traced, last)}"
    if made.end == "edge":
        return f"passes the edge {_there(traced, last, units)} after {_since(traced, last)}"
    if made.end == "landed":
        return f"meets {the(traced, last.surface)} {_there(traced, last, units)} after {_since(traced, last)}"
    if made.end == "met a surface":
        return f"ends against {the(traced, last.surface)} after {_since(traced, last)}"
    return _still_going(traced, units)


def _still_going(traced, units):
    samples = traced.track.samples
    if not len(samples.time_s):
        return ""
    moving = speed(float(np.linalg.norm(samples.rotating_velocity_m_s[-1])), units)
    end = samples.moment(-1, "end", traced.plan.place[0])
    after = seconds(end.time_s - traced.plan.start_s)
    return f"is still under way at {moving} after {after}, {_there(traced, end, units)}"


def after_landing(traced, units):
    """What a body does after it has first landed; nothing where it stays there."""
    events = traced.track.events
    contacts = [e for e in events if e.surface is not None]
    later = [e for e in events if traced.track.landing is not None and e.time_s > traced.track.landing.time_s]
    if traced.track.landing is None or (not later and traced.track.end == "landed"):
        return None
    parts = [_rebounds(contacts), *_changes(traced, later), _ending(traced, units)]
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
    return [f"rolls without slipping from {_since(traced, grips[0])} on"] if grips else []


def rolled(traced, units):
    """What a ball does that rolls from the start."""
    made, events = traced.track, traced.track.events
    on = the(traced, traced.plan.surface)
    grip = next((e for e in events if e.kind == "grip"), None)
    begin = f"It rolls on {on}"
    if traced.motion.start == "sliding":
        begin = f"It slides on {on}"
        if grip is not None:
            begin += f", grips after {_since(traced, grip)} and rolls"
    contacts = [e for e in events if e.surface is not None and e.surface != traced.plan.surface]
    met = (
        f", meets {the(traced, contacts[0].surface)} after {_since(traced, contacts[0])}"
        if contacts and made.end != "landed"
        else ""
    )
    ending = _ending(traced, units)
    return [
        f"{begin}{met} and {ending}." if ending else f"{begin}.",
        *_swing(traced, units),
        *_plain_roll(traced, units),
    ]


def _swing(traced, units):
    """How far it went along the axis and back, where it turned back there."""
    axial = traced.track.samples.axial_m - traced.plan.place[2]
    if traced.plan.surface != "deck" or len(axial) < 3:
        return []
    far = float(np.max(np.abs(axial)))
    if far < _SWING_M or abs(axial[-1]) > 0.9 * far:
        return []
    return [f"Along the axis it goes {length(far, units)} at the most, and is turned back."]


def _plain_roll(traced, units):
    beside = traced.flat_gravity
    if beside is None or not beside.count:
        return []
    if beside.ends_s <= traced.plan.start_s:
        return ["Under plain gravity it would stay where it is."]
    place = beside.places_m[-1]
    where = drift(float(place[0]) - traced.plan.place[0], float(place[2]) - traced.plan.place[2], units, traced.across)
    after = seconds(beside.ends_s - traced.plan.start_s)
    return [
        f"Under plain gravity it would be {'where it began' if where == 'straight below' else where} after {after}."
    ]


def stood(traced, units):
    """What a thing does that stands from the start."""
    events = [e for e in traced.track.events if e.kind in ("slip", "grip")]
    on = the(traced, traced.plan.surface)
    if not events:
        moved = any(e.kind not in ("release", "time_limit", "rest") for e in traced.track.events)
        return [f"It {_ending(traced, units)}."] if moved else [f"It stands on {on} and does not slide."]
    parts = []
    for event in events[:6]:
        at_once = event.time_s <= traced.plan.start_s
        slides = "slides at once" if at_once else f"slides from {_since(traced, event)} on"
        parts.append(
            slides if event.kind == "slip" else f"grips {_there(traced, event, units)} after {_since(traced, event)}"
        )
    more = "" if len(events) <= 6 else ", and so on"
    out = [f"On {on} it {' and '.join(parts)}{more}."]
    if traced.track.end in ("edge", "landed", "met a surface"):
        out.append(f"It {_ending(traced, units)}.")
    return out
