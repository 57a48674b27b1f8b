"""A moment of a day aboard: pouring a drink, carrying it, and dropping the cup."""

import math

from ...comfort.in_hand import POURED_FROM_M, tossed_m
from ...comfort.on_foot import STAIRS_DEG
from ...comfort.stance import HAND
from ...phrases import INCH_M
from .day import SLIGHT_DEG

_SLIGHT_M = {"si": 0.001, "us": 0.05 * INCH_M}  # at a glass: too small to notice, and to show; our own choice
_TOSSED_M_S = 1.0  # a gentle toss; our own choice


def drink(day):
    """Pouring a drink."""
    if day.weightless:
        return [
            "Nothing pours: what leaves the jug goes on the way it was shaken, in balls, until it meets something.",
            "A glass has no level to keep, and what is in it climbs its side.",
            "A cup that you let go stays about where you left it.",
        ]
    if day.wall or day.hidden:
        return [
            f"The stream falls with the thrust, {day.aft}, along the deck and not onto it.",
            f"You hold the glass under the jug that way, and there it weighs {day.say.share_of(day.v['feet_g'])} what it would on Earth.",
            "With nothing turning, the stream falls straight."
            if day.still
            else "The spin hardly draws the stream aside.",
        ]
    if day.flung:
        return [
            "Nothing falls onto the turntable: what leaves the jug goes outward, and off over the rim.",
            f"You hold the glass outward of the jug, and there it weighs {day.say.share_of(day.v['feet_g'])} what it would on Earth.",
            "A cup that you let go goes the same way, over the rim.",
        ]
    if day.past_the_axis(HAND * day.person.height_m):
        return [
            f"Your hand, {day.say.length(HAND * day.person.height_m, upright=True)} over your feet, is at the axis or past it, where there is no "
            "pouring into a glass.",
            "What you spill there does not fall to your feet: it goes out on the far side.",
            "You drink sitting down, or from something that is closed.",
        ]
    return [_poured(day), *_carried(day), _slips(day), *_tossed(day)]


def _poured(day):
    drift, axial = day.v["pour_drift_m"], day.v["pour_axial_m"]
    if drift is None and day.past_the_axis(HAND * day.person.height_m + POURED_FROM_M):
        return "The lip of the jug is at the axis or past it, and what you pour goes out on the far side, away from the glass."
    if drift is None:
        return "You pour, and the stream goes past the glass without ever coming down on it."
    parts = _parts(day, drift, axial)
    pours = f"You pour from {day.say.length(POURED_FROM_M, upright=True)} over the glass"
    if not parts:
        return f"{pours}, and the stream lands straight below the lip, but for {_hair(day)} that nobody notices."
    return (
        f"{pours}, and the stream lands {_off(day, parts)} straight below the lip, so that is where you hold the glass."
    )


def _parts(day, drift_m, axial_m):
    """The drifts worth a word, each with its way."""
    parts = [day.off(drift_m)] if abs(drift_m) > _SLIGHT_M[day.units] else []
    if abs(axial_m) > _SLIGHT_M[day.units]:
        parts.append(f"{day.say.length(abs(axial_m))} {'outward' if day.table else day.aft}")
    return parts


def _off(day, parts):
    """Drifts before the point they start from: "0.14 m antispinward of"; "from" after an axis, which would read as its axis."""
    return f"{' and '.join(parts)} {'from' if parts[-1].endswith('axis') else 'of'}"


def _hair(day):
    return "a small part of an inch" if day.units == "us" else "less than a millimetre"


def _carried(day):
    v = day.v
    if day.person.walk_m_s == 0:
        lies = "lies level with" if not v["floor_lean_deg"] else f"leans by {day.say.angle(v['floor_lean_deg'])} from"
        return [f"You carry the glass nowhere, and what is in it {lies} the {day.ground}."]
    walk, start = v["glass_walk_lean_deg"], v["glass_start_lean_deg"]
    stays = "stays level with" if walk < SLIGHT_DEG else f"leans by up to {day.say.angle(walk)} from"
    level = f"At a steady walk what is in the glass {stays} the {day.ground}"
    if start < SLIGHT_DEG:
        return [f"{level}, and setting off hardly tips it; {_on_stairs(day)}."]
    behind = "" if v["floor_lean_deg"] is not None else ", the high side toward you"
    return [
        f"{level}.",
        f"Set off within a second and at first it tips to {day.say.angle(start)}{behind}; {_on_stairs(day)}.",
    ]


def _on_stairs(day):
    lean = day.v["glass_stairs_lean_deg"]
    if day.person.climb_m_s == 0:
        return "stairs you do not climb"
    if lean < SLIGHT_DEG:
        return "up the stairs it hardly leans"
    return f"up the stairs it leans by {day.say.angle(lean)}{_high_side(day)}"


def _high_side(day):
    """The side to which climbing alone draws it; not told where stairs up against the
    spin are gone faster than the deck turns, for there it may change sides."""
    along_m_s = day.person.climb_m_s / math.tan(math.radians(STAIRS_DEG))
    floats = day.v["float_speed_m_s"]
    return ", the spinward side high" if floats is not None and along_m_s < floats else ""


def _slips(day):
    from_hand = f"A cup that slips from your hand, {day.say.length(HAND * day.person.height_m, upright=True)} up,"
    time_s, drift, axial = (day.v[name] for name in ("drop_time_s", "drop_drift_m", "drop_axial_m"))
    if time_s is None:
        return f"{from_hand} does not land at your feet: {day.words.passes}."
    falls = f"{from_hand} falls for {day.say.seconds(time_s)}"
    if day.times_round(drift) >= 1:
        return f"{falls} and goes {_round(day, drift)} before it lands{_and_along(day, axial)}."
    parts = _parts(day, drift, axial)
    where = f"{_off(day, parts)} straight below" if parts else "straight below, as near as you can see"
    return f"{falls} and lands {where}."


def _round(day, drift_m):
    way = "spinward" if drift_m > 0 else "antispinward"
    return f"{day.say.round(day.times_round(drift_m))} round the habitat {way}"


def _and_along(day, axial_m):
    return f", {day.say.length(abs(axial_m))} {day.aft}" if abs(axial_m) > _SLIGHT_M[day.units] else ""


def _tossed(day):
    """Where a cup is that was tossed gently up, back at the height of the hand: told where nothing draws it along."""
    v, radius_m = day.v, day.radius_m - HAND * day.person.height_m
    if day.flat or day.table or v["floor_lean_deg"] is not None or v["drop_drift_m"] is None:
        return []
    turning_m_s = v["rim_speed_m_s"] * radius_m / day.radius_m
    if turning_m_s < _TOSSED_M_S:
        return []
    off_m = tossed_m(radius_m, turning_m_s, _TOSSED_M_S)
    if off_m <= _SLIGHT_M[day.units]:
        return []
    tossed = f"Tossed gently up, at {day.say.speed(_TOSSED_M_S)},"
    return [f"{tossed} it comes back to the height of your hand {day.off(off_m)} of it."]
