"""A moment of a day aboard: pouring a drink, carrying it, and dropping the cup."""

from ..feel.in_hand import POURED_FROM_M
from ..feel.stand import HAND
from .feel_day import SLIGHT_DEG, angle, number
from .phrases import length, seconds

_SLIGHT_M = 0.001  # at a glass: too small to notice; our own choice


def drink(day):
    """Pouring a drink."""
    if day.weightless:
        return [
            "Nothing pours: what leaves the jug goes on the way it was shaken, in balls, until it meets something.",
            "A glass has no level to keep, and what is in it climbs its side.",
            "A cup that you let go stays about where you left it.",
        ]
    if day.wall:
        return [
            f"The stream falls with the thrust, {day.aft}, along the deck and not onto it.",
            f"You hold the glass under the jug that way, and there it weighs {number(day.v['feet_g'])} of what it would on Earth.",
            "With nothing turning, the stream falls straight.",
        ]
    if day.past_the_axis(HAND * day.person.height_m):
        return [
            f"Your hand, {length(HAND * day.person.height_m, day.units)} over your feet, is at the axis or past it, where there is no "
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
    parts = [day.off(drift)] if abs(drift) >= _SLIGHT_M else []
    if abs(axial) >= _SLIGHT_M:
        parts.append(f"{length(abs(axial), day.units)} {'outward' if day.table else day.aft}")
    pours = f"You pour from {length(POURED_FROM_M, day.units)} over the glass"
    if not parts:
        return f"{pours}, and the stream lands straight below the lip, but for {_hair(day)} that nobody notices."
    return f"{pours}, and the stream lands {' and '.join(parts)} of straight below the lip, so that is where you hold the glass."


def _hair(day):
    return "a small part of an inch" if day.units == "us" else "less than a millimetre"


def _carried(day):
    v = day.v
    if day.person.walk_m_s == 0:
        lies = "lies level with" if not v["floor_lean_deg"] else f"leans by {angle(v['floor_lean_deg'])} from"
        return [f"You carry it nowhere, and its surface {lies} the {day.ground}."]
    walk, start, stairs = (v[f"glass_{name}_lean_deg"] for name in ("walk", "start", "stairs"))
    level = (
        f"Carried at a steady walk its surface stays level with the {day.ground}"
        if walk < SLIGHT_DEG
        else f"Carried at a steady walk its surface leans by up to {angle(walk)} from the {day.ground}"
    )
    up = f"up the stairs it leans by {angle(stairs)}" if stairs >= SLIGHT_DEG else "up the stairs it hardly leans"
    if start < SLIGHT_DEG:
        return [f"{level}, and neither setting off nor the stairs tip it much: {angle(start)} and {angle(stairs)}."]
    behind = "" if v["floor_lean_deg"] is not None else ", the high side toward you"
    return [f"{level}.", f"Set off within a second and it tips to {angle(start)}{behind}; {up}."]


def _slips(day):
    from_hand = f"A cup that slips from your hand, {length(HAND * day.person.height_m, day.units)} up,"
    time_s, drift, axial = (day.v[name] for name in ("drop_time_s", "drop_drift_m", "drop_axial_m"))
    if time_s is None:
        past = "flies out over the rim" if day.table else f"falls past the end of the {day.ground}"
        return f"{from_hand} does not land at your feet: it {past}."
    parts = [day.off(drift)] if abs(drift) >= _SLIGHT_M else []
    if abs(axial) >= _SLIGHT_M:
        parts.append(f"{length(abs(axial), day.units)} {day.aft}")
    if day.times_round(drift) >= 1:
        return f"{from_hand} falls for {seconds(time_s)}, and goes {day.times_round(drift):.1f} times round the wheel before it lands."
    where = f"{' and '.join(parts)} of straight below" if parts else "straight below, as near as you can see"
    return f"{from_hand} falls for {seconds(time_s)} and lands {where}."


def _tossed(day):
    drift = day.v["drop_drift_m"]
    if day.flat or day.table or drift is None or abs(drift) < _SLIGHT_M:
        return []
    return ["Tossed straight up, it comes back to the height of your hand spinward of it."]
