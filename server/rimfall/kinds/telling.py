"""Paragraphs of what flies, rolls or stands, as prose: told to somebody who stands at the release and faces spinward.

Every kind has a `told(traced, telling, thing)` of its own or one of these: sentences, the first of which names the `things.Thing`; telling:
tense and units (`prose.Telling`).
"""

from ..language import tr, tr_later, tr_later_as
from ..phrases import STILL_M
from ..prose import YOU
from .words import the, the_at

_LEVEL_DEG, _SLIGHT_DEG, _SLANT_DEG, _STEEP_DEG = 8, 25, 55, 80
_SAME = 0.06  # a difference from plain gravity smaller than this share of the way is none worth a word
WHERE_IT_BEGAN, _BELOW = tr_later("where it began"), tr_later("straight below")
_WAYS = (  # of a heading over the ground, every 45 degrees from spinward to the right; then of a turntable, where right is outward
    (
        tr_later("with the spin"),
        tr_later("with the spin and to your right"),
        tr_later("to your right"),
        tr_later("against the spin and to your right"),
        tr_later("against the spin"),
        tr_later("against the spin and to your left"),
        tr_later("to your left"),
        tr_later("with the spin and to your left"),
    ),
    (
        tr_later("with the spin"),
        tr_later("with the spin and outward"),
        tr_later("outward"),
        tr_later("against the spin and outward"),
        tr_later("against the spin"),
        tr_later("against the spin and inward"),
        tr_later("inward"),
        tr_later("with the spin and inward"),
    ),
)


def lasted(traced, moment):
    """Seconds from the start to a Moment."""
    return moment.time_s - traced.plan.start_s


def place(traced, telling, way, none, whom=YOU):
    """Where a way leads, or `none`, marked."""
    leads = traced.once(("way", telling.units, way, whom), lambda: telling.where(way, traced.across, whom))
    return leads or tr(none)


def toward(traced, heading_deg):
    """The way of a heading over the ground, to somebody who faces spinward."""
    return tr(_WAYS[traced.stands_on.level][round((heading_deg % 360) / 45) % 8])


def _steeply(elevation_deg):
    """How steeply, in words; "" where it is level."""
    size, up = abs(elevation_deg), elevation_deg > 0
    if size < _LEVEL_DEG:
        return ""
    if size < _SLIGHT_DEG:
        return tr("slightly upward") if up else tr("slightly downward")
    if size < _SLANT_DEG:
        return tr("upward at a slant") if up else tr("downward at a slant")
    return tr("steeply upward") if up else tr("steeply downward")


def _leaves(traced, motion):
    """Which way a throw leaves the hand."""
    if abs(motion.elevation_deg) >= _STEEP_DEG:
        return tr("straight up") if motion.elevation_deg > 0 else tr("straight down")
    return ", ".join(way for way in (toward(traced, motion.heading_deg), _steeply(motion.elevation_deg)) if way)


def dropped(traced, telling, thing):
    """A drop."""
    drops = telling.says(
        tr_later_as("present tense", "You let go of {thing}."),
        tr_later_as("past tense", "You let go of {thing}."),
        thing=thing.done_to,
    )
    return [drops, *flight(traced, telling, thing.it)]


def thrown(traced, telling, thing):
    """A throw."""
    motion = traced.motion
    if not motion.speed_m_s:
        return dropped(traced, telling, thing)
    leaves = telling.says(
        tr_later("{thing} leaves your hand {way}, at {speed}."),
        tr_later("{thing} left your hand {way}, at {speed}."),
        thing=thing.does,
        way=_leaves(traced, motion),
        speed=telling.speed(motion.speed_m_s),
    )
    return [leaves, *flight(traced, telling, thing.it)]


def flight(traced, telling, it):
    """Where it lands, what it does there, and where it would have landed under plain gravity; `it` is the word that stands for it."""
    return traced.once(("flight", telling), lambda: _flight(traced, telling, it))


def _flight(traced, telling, it):
    landing, caught = traced.track.landing, _caught(traced, telling, it)
    if landing is None:
        return [*caught, ends(traced, telling, it)]
    if lasted(traced, landing) <= 0:
        lies = telling.says(
            tr_later("{it} lies on {surface} from the start."),
            tr_later("{it} lay on {surface} from the start."),
            it=it[:1].upper() + it[1:],
            surface=the_at(traced, landing.surface),
        )
        return [lies]
    if caught:
        return [*caught, _uncaught(traced, telling, landing, it), *_plain(traced, telling, landing, it)]
    return [
        _lands(traced, telling, landing, it),
        *_then(traced, telling, landing, it),
        *_plain(traced, telling, landing, it),
    ]


def _met_before(traced, landing):
    """What it meets on the way to its landing, with its article; None where that is nothing."""
    before = next((e for e in traced.track.events if e.surface is not None and e.time_s < landing.time_s), None)
    return None if before is None else the(traced, before.surface)


def _landed(traced, telling, landing, it):
    """What lands, when and where, for a sentence."""
    where = place(traced, telling, traced.way(landing), _BELOW)
    return {"it": it, "time": telling.time(lasted(traced, landing)), "where": where}


def _lands(traced, telling, landing, it):
    met, told = _met_before(traced, landing), _landed(traced, telling, landing, it)
    if met is None:
        return telling.says(
            tr_later("After {time} {it} lands {where}."), tr_later("After {time} {it} landed {where}."), **told
        )
    return telling.says(
        tr_later("After {time} {it} meets {surface} on the way and lands {where}."),
        tr_later("After {time} {it} met {surface} on the way and landed {where}."),
        surface=met,
        **told,
    )


def _caught(traced, telling, it):
    """That it comes within the reach of somebody, of the first where there are several."""
    if not traced.reached:
        return []
    one = traced.reached[0][1]
    comes = telling.says(
        tr_later(
            "After {time} {it} comes within the catcher’s reach, {height} above {ground}, at a closing velocity of {speed}."
        ),
        tr_later(
            "After {time} {it} came within the catcher’s reach, {height} above {ground}, at a closing velocity of {speed}."
        ),
        it=it,
        time=telling.time(lasted(traced, one)),
        height=telling.length(max(one.height_m, 0.0), upright=True),
        ground=the_at(traced, traced.ground),
        speed=telling.speed(one.closing_m_s),
    )
    return [comes]


def _uncaught(traced, telling, landing, it):
    """Where it lands if nobody catches it."""
    met, told = _met_before(traced, landing), _landed(traced, telling, landing, it)
    if met is None:
        return telling.says(
            tr_later("If nobody catches it, {it} lands after {time}, {where}."),
            tr_later("If nobody had caught it, {it} would have landed after {time}, {where}."),
            **told,
        )
    return telling.says(
        tr_later("If nobody catches it, {it} meets {surface} on the way and lands after {time}, {where}."),
        tr_later("If nobody had caught it, {it} would have met {surface} on the way and landed after {time}, {where}."),
        surface=met,
        **told,
    )


def _then(traced, telling, landing, it):
    """What comes after its landing."""
    track = traced.track
    if track.end not in ("rest", "edge", "met a surface") or track.events[-1].time_s <= landing.time_s:
        return []
    return [ends(traced, telling, it)]


def _plain(traced, telling, landing, it):
    plain = traced.plain_way
    if plain is None:
        return []
    way = traced.way(landing)
    apart = max(abs(plain.in_all_m - way.in_all_m), abs(plain.axial_m - way.axial_m))
    if apart < max(STILL_M, _SAME * max(abs(plain.in_all_m), abs(plain.axial_m))):
        same = telling.says(
            tr_later("On a planet with the same gravity {it} would land in the same place."),
            tr_later("On a planet with the same gravity {it} would have landed in the same place."),
            it=it,
        )
        return [same]
    elsewhere = telling.says(
        tr_later("On a planet with the same gravity {it} would land {where}."),
        tr_later("On a planet with the same gravity {it} would have landed {where}."),
        it=it,
        where=place(traced, telling, plain, _BELOW),
    )
    return [elsewhere]


def ends(traced, telling, it):
    """A sentence of how a motion ends; `it` is the word that stands for what moves."""
    track = traced.track
    told = {
        "it": it,
        "time": telling.time(lasted(traced, track.last)),
        "where": place(traced, telling, traced.way(track.last), WHERE_IT_BEGAN),
    }
    if track.end == "rest":
        return telling.says(
            tr_later("After {time} {it} comes to rest {where}."),
            tr_later("After {time} {it} came to rest {where}."),
            **told,
        )
    if track.end == "edge":
        return telling.says(
            tr_later("After {time} {it} goes over the edge, {where}."),
            tr_later("After {time} {it} went over the edge, {where}."),
            **told,
        )
    if track.end in ("landed", "met a surface"):
        return telling.says(
            tr_later("After {time} {it} meets {surface}, {where}."),
            tr_later("After {time} {it} met {surface}, {where}."),
            surface=the(traced, track.events[-1].surface),
            **told,
        )
    return telling.says(
        tr_later("After {time} {it} is still moving, {where}."),
        tr_later("After {time} {it} was still moving, {where}."),
        **told,
    )


def rolled(traced, telling, thing):
    """A roll."""
    motion = traced.motion
    if not motion.speed_m_s:
        sets = telling.says(
            tr_later_as("present tense", "You set {thing} down."),
            tr_later_as("past tense", "You set {thing} down."),
            thing=thing.done_to,
        )
        return [sets, ends(traced, telling, thing.it)]
    told = {
        "thing": thing.does,
        "way": toward(traced, motion.heading_deg),
        "speed": telling.speed(motion.speed_m_s),
    }
    if motion.start == "sliding":
        goes = telling.says(
            tr_later("{thing} slides off {way} at {speed}."), tr_later("{thing} slid off {way} at {speed}."), **told
        )
    else:
        goes = telling.says(
            tr_later("{thing} rolls off {way} at {speed}."), tr_later("{thing} rolled off {way} at {speed}."), **told
        )
    return [goes, ends(traced, telling, thing.it)]


def stood(traced, telling, thing):
    """A thing that stands."""
    moved = any(e.kind not in ("release", "time_limit", "rest") for e in traced.track.events)
    told = {"thing": thing.does, "surface": the_at(traced, traced.plan.surface)}
    if not moved:
        stays = telling.says(
            tr_later("{thing} stands on {surface} and does not slide."),
            tr_later("{thing} stood on {surface} and did not slide."),
            **told,
        )
        return [stays]
    leaves = telling.says(
        tr_later("{thing} does not stay where it stands on {surface}."),
        tr_later("{thing} did not stay where it stood on {surface}."),
        **told,
    )
    return [leaves, ends(traced, telling, thing.it)]
