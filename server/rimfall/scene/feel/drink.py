"""A moment of a day aboard: pouring a drink, carrying it, and dropping the cup."""

import math

from ...comfort.in_hand import POURED_FROM_M, tossed_m
from ...comfort.on_foot import STAIRS_DEG
from ...comfort.stance import HAND
from ...language import tr
from ...phrases import INCH_M, OUTWARD, listed
from .day import SLIGHT_DEG
from .saying import would_weigh_on_earth

_SLIGHT_M = {"si": 0.001, "us": 0.05 * INCH_M}  # at a glass: too small to notice, and to show; our own choice
_TOSSED_M_S = 1.0  # a gentle toss; our own choice


def drink(day):
    """Pouring a drink."""
    if day.weightless:
        return [
            tr("Nothing pours: what leaves the jug goes on the way it was shaken, in balls, until it meets something."),
            tr("A glass has no level to keep, and what is in it climbs its side."),
            tr("A cup that you let go stays about where you left it."),
        ]
    if day.wall or day.hidden:
        return [
            tr("The stream falls with the thrust, {way}, along the deck and not onto it.", way=day.aft),
            tr("You hold the glass under the jug that way, and there it weighs {weight}.", weight=_weighs(day)),
            tr("With nothing turning, the stream falls straight.")
            if day.still
            else tr("The spin hardly draws the stream aside."),
        ]
    if day.flung:
        return [
            tr("Nothing falls onto the turntable: what leaves the jug goes outward, and off over the rim."),
            tr("You hold the glass outward of the jug, and there it weighs {weight}.", weight=_weighs(day)),
            tr("A cup that you let go goes the same way, over the rim."),
        ]
    if day.past_the_axis(HAND * day.person.height_m):
        return [
            tr(
                "Your hand, {height} over your feet, is at the axis or past it, where there is no pouring into a glass.",
                height=day.say.length(HAND * day.person.height_m, upright=True),
            ),
            tr("What you spill there does not fall to your feet: it goes out on the far side."),
            tr("You drink sitting down, or from something that is closed."),
        ]
    return [_poured(day), *_carried(day), _slips(day), *_tossed(day)]


def _weighs(day):
    return day.say.share_of(day.v["feet_g"], would_weigh_on_earth())


def _poured(day):
    drift, axial = day.v["pour_drift_m"], day.v["pour_axial_m"]
    if drift is None and day.past_the_axis(HAND * day.person.height_m + POURED_FROM_M):
        return tr(
            "The lip of the jug is at the axis or past it, and what you pour goes out on the far side, away from the glass."
        )
    if drift is None:
        return tr("You pour, and the stream goes past the glass without ever coming down on it.")
    height = day.say.length(POURED_FROM_M, upright=True)
    parts = _parts(day, drift, axial)
    if not parts:
        return tr(
            "You pour from {height} over the glass, and the stream lands straight below the lip, but for {hair} that nobody notices.",
            height=height,
            hair=_hair(day),
        )
    if _ends_with_an_axis(day, axial):
        return tr(
            "You pour from {height} over the glass, and the stream lands {way} from straight below the lip, so that is where you hold "
            "the glass.",
            height=height,
            way=listed(parts),
        )
    return tr(
        "You pour from {height} over the glass, and the stream lands {way} of straight below the lip, so that is where you hold the glass.",
        height=height,
        way=listed(parts),
    )


def _parts(day, drift_m, axial_m):
    """The drifts worth a word, each with its way."""
    parts = [day.off(drift_m)] if abs(drift_m) > _SLIGHT_M[day.units] else []
    if abs(axial_m) > _SLIGHT_M[day.units]:
        outward = tr(OUTWARD[0], length=day.say.length(abs(axial_m))) if day.table else day.aft_by(abs(axial_m))
        parts.append(outward)
    return parts


def _ends_with_an_axis(day, axial_m):
    """Whether the last of those ways is along the axis: "of" after it would read as what the axis is of."""
    return abs(axial_m) > _SLIGHT_M[day.units] and not day.table


def _hair(day):
    return tr("a small part of an inch") if day.units == "us" else tr("less than a millimetre")


def _carried(day):
    if day.person.walk_m_s == 0:
        return [_stood_still(day)]
    lean = day.v["glass_start_lean_deg"]
    if lean < SLIGHT_DEG:
        return [
            tr("{level}, and setting off hardly tips it; {on_stairs}.", level=_level(day), on_stairs=_on_stairs(day))
        ]
    places = {"angle": day.say.angle(lean), "on_stairs": _on_stairs(day)}
    if day.v["floor_lean_deg"] is not None:
        tips = tr("Set off within a second and at first it tips to {angle}; {on_stairs}.", **places)
    else:
        tips = tr(
            "Set off within a second and at first it tips to {angle}, the high side toward you; {on_stairs}.", **places
        )
    return [f"{_level(day)}.", tips]


def _stood_still(day):
    lean = day.v["floor_lean_deg"]
    if not lean:
        return tr("You carry the glass nowhere, and what is in it lies level with the {ground}.", ground=day.stood_on)
    return tr(
        "You carry the glass nowhere, and what is in it leans by {angle} from the {ground}.",
        angle=day.say.angle(lean),
        ground=day.stood_on,
    )


def _level(day):
    lean = day.v["glass_walk_lean_deg"]
    if lean < SLIGHT_DEG:
        return tr("At a steady walk what is in the glass stays level with the {ground}", ground=day.stood_on)
    return tr(
        "At a steady walk what is in the glass leans by up to {angle} from the {ground}",
        angle=day.say.angle(lean),
        ground=day.stood_on,
    )


def _on_stairs(day):
    lean = day.v["glass_stairs_lean_deg"]
    if day.person.climb_m_s == 0:
        return tr("stairs you do not climb")
    if lean < SLIGHT_DEG:
        return tr("up the stairs it hardly leans")
    if _spinward_side_high(day):
        return tr("up the stairs it leans by {angle}, the spinward side high", angle=day.say.angle(lean))
    return tr("up the stairs it leans by {angle}", angle=day.say.angle(lean))


def _spinward_side_high(day):
    """Whether climbing alone draws that side of it up; not where stairs up against the
    spin are gone faster than the deck turns, for there it may change sides."""
    along_m_s = day.person.climb_m_s / math.tan(math.radians(STAIRS_DEG))
    floats = day.v["float_speed_m_s"]
    return floats is not None and along_m_s < floats


def _slips(day):
    time_s, drift, axial = (day.v[name] for name in ("drop_time_s", "drop_drift_m", "drop_axial_m"))
    slips = tr(
        "A cup that slips from your hand, {height} up,",
        height=day.say.length(HAND * day.person.height_m, upright=True),
    )
    if time_s is None:
        return tr("{cup} does not land at your feet: {why}.", cup=slips, why=tr(day.words.passes))
    falls = tr("{cup} falls for {time}", cup=slips, time=day.say.seconds(time_s))
    if day.times_round(drift) >= 1:
        return _round(day, falls, drift, axial)
    parts = _parts(day, drift, axial)
    if not parts:
        return tr("{falls} and lands straight below, as near as you can see.", falls=falls)
    if _ends_with_an_axis(day, axial):
        return tr("{falls} and lands {way} from straight below.", falls=falls, way=listed(parts))
    return tr("{falls} and lands {way} of straight below.", falls=falls, way=listed(parts))


def _round(day, falls, drift_m, axial_m):
    times = day.say.round(day.times_round(drift_m))
    spinward = tr("{times} round the habitat spinward", times=times)
    way = spinward if drift_m > 0 else tr("{times} round the habitat antispinward", times=times)
    if abs(axial_m) <= _SLIGHT_M[day.units]:
        return tr("{falls} and goes {way} before it lands.", falls=falls, way=way)
    along = day.aft_by(abs(axial_m))
    return tr("{falls} and goes {way} before it lands, {along}.", falls=falls, way=way, along=along)


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
    return [
        tr(
            "Tossed gently up, at {speed}, it comes back to the height of your hand {way} of it.",
            speed=day.say.speed(_TOSSED_M_S),
            way=day.off(off_m),
        )
    ]
