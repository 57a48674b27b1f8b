"""Paragraphs of what flies, rolls or stands, as prose: told to somebody who stands at the release and faces spinward.

Every kind has a `told(traced, telling, thing)` of its own or one of these: sentences, the first of which names the thing ("the cup",
"another handball"); telling: tense and units (`prose.Telling`).
"""

import re

from ..phrases import STILL_M
from .words import the

_SIZE = re.compile(r" [\d.]+ ?[a-z]+$")  # "steel ball 20 mm"
_LEVEL_DEG, _SLIGHT_DEG, _SLANT_DEG, _STEEP_DEG = 8, 25, 55, 80
_SAME = 0.06  # a difference from plain gravity smaller than this share of the way is none worth a word


def noun(motion):
    """What prose calls the thing of a motion: "cup", "steel ball"; "ball" where it has no name."""
    body = getattr(motion, "body", None)
    return _SIZE.sub("", body) if isinstance(body, str) else "ball"


def capital(text):
    """Words as a sentence begins with them."""
    return text[:1].upper() + text[1:]


def lasted(traced, moment):
    """Seconds from the start to a Moment."""
    return moment.time_s - traced.plan.start_s


def place(traced, telling, way, none, whom="you"):
    """Where a way leads, or `none`."""
    leads = traced.once(("way", telling.units, way, whom), lambda: telling.where(way, traced.across, whom))
    return leads or none


def toward(traced, telling, heading_deg):
    """The way of a heading over the ground, to somebody who faces spinward."""
    quarter = round((heading_deg % 360) / 45) % 8
    level = traced.stands_on.level
    right, left = ("outward", "inward") if level else ("to your right", "to your left")
    ahead, back = "with the spin", "against the spin"
    return (
        ahead,
        f"{ahead} and {right}",
        right,
        f"{back} and {right}",
        back,
        f"{back} and {left}",
        left,
        f"{ahead} and {left}",
    )[quarter]


def upward(elevation_deg):
    """How steeply, in words; "" where it is level."""
    size, way = abs(elevation_deg), "upward" if elevation_deg > 0 else "downward"
    if size < _LEVEL_DEG:
        return ""
    if size < _SLIGHT_DEG:
        return f"slightly {way}"
    if size < _SLANT_DEG:
        return f"{way} at a slant"
    return f"steeply {way}" if size < _STEEP_DEG else f"straight {way.removesuffix('ward')}"


def dropped(traced, telling, thing):
    """A drop."""
    return [f"You let go of {thing}.", *flight(traced, telling)]


def thrown(traced, telling, thing):
    """A throw."""
    motion, up = traced.motion, upward(traced.motion.elevation_deg)
    if not motion.speed_m_s:
        return dropped(traced, telling, thing)
    ways = [up] if up.startswith("straight") else [p for p in (toward(traced, telling, motion.heading_deg), up) if p]
    leaves = f"{capital(thing)} {telling.verb('leaves', 'left')} your hand {', '.join(ways)}, at {telling.speed(motion.speed_m_s)}."
    return [leaves, *flight(traced, telling)]


def flight(traced, telling):
    """Where it lands, what it does there, and where it would have landed under plain gravity."""
    return traced.once(("flight", telling), lambda: _flight(traced, telling))


def _flight(traced, telling):
    landing, caught = traced.track.landing, _caught(traced, telling)
    if landing is None:
        return [*caught, ends(traced, telling, "it")]
    if lasted(traced, landing) <= 0:
        return [f"It {telling.verb('lies', 'lay')} on {the(traced, landing.surface)} from the start."]
    before = next((e for e in traced.track.events if e.surface is not None and e.time_s < landing.time_s), None)
    met = "" if before is None else f"{telling.verb('meets', 'met')} {the(traced, before.surface)} on the way and "
    where = place(traced, telling, traced.way(landing), "straight below")
    if caught:
        return [*caught, _uncaught(traced, telling, landing, before, where), *_plain(traced, telling, landing)]
    lands = f"After {telling.time(lasted(traced, landing))} it {met}{telling.verb('lands', 'landed')} {where}."
    return [lands, *_then(traced, telling, landing), *_plain(traced, telling, landing)]


def _caught(traced, telling):
    """That it comes within the reach of somebody, of the first where there are several."""
    if not traced.reached:
        return []
    one = traced.reached[0][1]
    comes = f"After {telling.time(lasted(traced, one))} it {telling.verb('comes', 'came')} within the catcher’s reach"
    up = telling.length(max(one.height_m, 0.0), upright=True)
    over = f"{up} above {the(traced, traced.ground)}"
    return [f"{comes}, {over}, at a closing velocity of {telling.speed(one.closing_m_s)}."]


def _uncaught(traced, telling, landing, before, where):
    """Where it lands if nobody catches it."""
    after = telling.time(lasted(traced, landing))
    if telling.past:
        met = "" if before is None else f"met {the(traced, before.surface)} on the way and "
        return f"If nobody had caught it, it would have {met}landed after {after}, {where}."
    met = "" if before is None else f"meets {the(traced, before.surface)} on the way and "
    return f"If nobody catches it, it {met}lands after {after}, {where}."


def _then(traced, telling, landing):
    """What comes after its landing."""
    track = traced.track
    if track.end not in ("rest", "edge", "met a surface") or track.events[-1].time_s <= landing.time_s:
        return []
    return [ends(traced, telling, "it")]


def _plain(traced, telling, landing):
    plain = traced.plain_way
    if plain is None:
        return []
    way = traced.way(landing)
    apart = max(abs(plain.in_all_m - way.in_all_m), abs(plain.axial_m - way.axial_m))
    if apart < max(STILL_M, _SAME * max(abs(plain.in_all_m), abs(plain.axial_m))):
        return [f"On a planet with the same gravity it {telling.would('land', 'landed')} in the same place."]
    return [
        f"On a planet with the same gravity it {telling.would('land', 'landed')} {place(traced, telling, plain, 'straight below')}."
    ]


def ends(traced, telling, thing):
    """A sentence of how a motion ends."""
    track = traced.track
    after = f"After {telling.time(lasted(traced, track.last))} {thing}"
    where = place(traced, telling, traced.way(track.last), "where it began")
    if track.end == "rest":
        return f"{after} {telling.verb('comes', 'came')} to rest {where}."
    if track.end == "edge":
        return f"{after} {telling.verb('goes', 'went')} over the edge, {where}."
    if track.end in ("landed", "met a surface"):
        return f"{after} {telling.verb('meets', 'met')} {the(traced, track.events[-1].surface)}, {where}."
    return f"{after} {telling.verb('is', 'was')} still moving, {where}."


def rolled(traced, telling, thing):
    """A roll."""
    motion = traced.motion
    if not motion.speed_m_s:
        return [f"You set {thing} down.", ends(traced, telling, "it")]
    way = toward(traced, telling, motion.heading_deg)
    goes = telling.verb("slides", "slid") if motion.start == "sliding" else telling.verb("rolls", "rolled")
    return [f"{capital(thing)} {goes} off {way} at {telling.speed(motion.speed_m_s)}.", ends(traced, telling, "it")]


def stood(traced, telling, thing):
    """A thing that stands."""
    moved = any(e.kind not in ("release", "time_limit", "rest") for e in traced.track.events)
    on = the(traced, traced.plan.surface)
    if not moved:
        return [
            f"{capital(thing)} {telling.verb('stands', 'stood')} on {on} and {telling.verb('does', 'did')} not slide."
        ]
    return [
        f"{capital(thing)} {telling.verb('does', 'did')} not stay where it {telling.verb('stands', 'stood')} on {on}.",
        ends(traced, telling, "it"),
    ]
