"""Sentences for a ball that rolls from the start."""

import numpy as np

from ...phrases import drift, length, seconds
from ..air_words import rose
from ..ground_words import ending, since, the

_SWING_M = 0.05  # a swing along the axis smaller than this is none worth a word


def rolled(traced, units):
    """What a ball does that rolls from the start."""
    made, events = traced.track, traced.track.events
    if risen := rose(traced, units):
        return risen
    on = the(traced, traced.plan.surface)
    grip = next((e for e in events if e.kind == "grip"), None)
    begin = f"It rolls on {on}"
    if traced.motion.start == "sliding":
        begin = f"It slides on {on}"
        if grip is not None:
            begin += f", grips after {since(traced, grip)} and rolls"
    contacts = [e for e in events if e.surface is not None and e.surface != traced.plan.surface]
    met = (
        f", meets {the(traced, contacts[0].surface)} after {since(traced, contacts[0])}"
        if contacts and made.end != "landed"
        else ""
    )
    last = ending(traced, units)
    return [
        f"{begin}{met} and {last}." if last else f"{begin}.",
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
