"""Sentences for what the air bears up: how it rises, and what it meets there."""

from ..phrases import drift, length, seconds
from .ground_words import the

KINDS = ("drop", "throw", "roll", "stand")  # of motion, that may rise
_RISEN_M = 0.005  # less is none worth a word


def rose(traced, units):
    """What a body does that the air bears up and that meets no ground; nothing where it does not rise."""
    made = traced.track
    last = made.events[-1]
    risen = last.height_m - traced.plan.place[1]
    if not traced.plan.body.buoyant or made.landing is not None or risen < _RISEN_M:
        return []
    first = next((e for e in made.events if e.surface is not None), None)
    after = seconds(last.time_s - traced.plan.start_s)
    if first is None:
        return [f"It rises {length(risen, units)} in {after} and never meets {the(traced, traced.ground)}."]
    met_after = seconds(first.time_s - traced.plan.start_s)
    where = drift(*_from(traced.plan.place, first), units, traced.across)
    above = "straight above" if where == "straight below" else where
    return [f"It rises and meets {the(traced, first.surface)} {above} after {met_after}{_then(traced, first, units)}."]


def _from(place, moment):
    return moment.along_m - place[0], moment.axial_m - place[2]


def _then(traced, first, units):
    """How it goes on along what it has met."""
    made, last = traced.track, traced.track.events[-1]
    if last is first or made.end not in ("rest", "met a surface"):
        return ""
    place = (first.along_m, first.height_m, first.axial_m)
    further = drift(*_from(place, last), units, traced.across)
    if made.end == "rest":
        return " and comes to rest there" if further == "straight below" else f" and comes to rest {further} of there"
    after = seconds(last.time_s - traced.plan.start_s)
    return f" and ends against {the(traced, last.surface)} after {after}"
