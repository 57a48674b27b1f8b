"""Throws that arrive, in words: how each is thrown, when it arrives, what is in its way, and how far errors make it miss."""

from ...amounts import number
from ...language import tr, tr_as, tr_many, written
from ...phrases import OR, STILL_M, length, listed, seconds, speed
from ...shots.fixed import ELEVATION, FLIGHT, LEAST, SPEED
from ...shots.question import MOST_M_S

_LEVEL_DEG, _ALMOST_DEG, _STRAIGHT_DEG = 0.5, 5.0, 89.95
_LET_GO_M_S = 0.005
_NOTHING_M = 5e-4  # a miss that no word is worth
_SAID = 4  # throws that a sentence names
_HALF_ROUND = 0.5  # turns from which it goes the long way


def of_way(aimed, way, units):
    """Words of one throw: a name for a label, what it does, how far errors make it miss, and what is in its way."""
    how = ", ".join([speed(way["speed_m_s"], units), *_directed(aimed, way, tenths=True)])
    blocked, after = way["blocked_by"], seconds(way["flight_s"])
    if blocked is not None:
        what, then = surface(aimed, blocked), seconds(blocked["after_s"])
        blocked = blocked | {"says": tr("met by {surface} after {time}", surface=what, time=then)}
    if way["misses_m"] > aimed.aim.question.within_m:
        end = tr("misses by {length} after {time}", length=length(way["misses_m"], units), time=after)
    elif blocked is not None:
        end = tr("would arrive after {time}, but meets {surface} after {then}", time=after, surface=what, then=then)
    elif way["misses_m"] >= STILL_M:
        end = tr("arrives after {time}, {length} off", time=after, length=length(way["misses_m"], units))
    else:
        end = tr("arrives after {time}", time=after)
    says = tr("{throw}: {end}", throw=how, end=end)
    if abs(way["turns"]) > _HALF_ROUND:
        says = tr("{throw}: {end}, having gone {turns}", throw=how, end=end, turns=_turns(way))
    return {
        "name": f"{speed(way['speed_m_s'], units)}, {_up(way['elevation_deg'], 0)}",
        "says": says,
        "off_says": misses(way["sensitivity"], units),
        "blocked_by": blocked,
    }


def up(elevation_deg, tenths=False):
    """An elevation in words: "level", "almost level, 2° up", "24° up", "straight down"."""
    said = _up(elevation_deg, 1 if tenths else 0)
    almost = not tenths and _LEVEL_DEG <= abs(elevation_deg) < _ALMOST_DEG
    return tr("almost level, {elevation}", elevation=said) if almost else said


def _up(elevation_deg, digits):
    """The same without how level it is."""
    size = abs(elevation_deg)
    if size < (0.05 if digits else _LEVEL_DEG):
        return tr("level")
    if size > _STRAIGHT_DEG:
        return tr("straight up") if elevation_deg > 0 else tr("straight down")
    angle = f"{written(size, f'.{digits}f')}°"
    return tr("{angle} up", angle=angle) if elevation_deg > 0 else tr("{angle} down", angle=angle)


def toward(aimed, heading_deg):
    """A heading in words: "antispinward", "spinward, turned 12° along the axis"."""
    level = aimed.setting.habitat.words_of_ground.level
    quarter = round((heading_deg % 360) / 90)
    rest = heading_deg % 360 - 90 * quarter
    way = _headings(level)[quarter % 4]
    if abs(rest) < _LEVEL_DEG:
        return way
    aside = _asides(level)[(quarter + (1 if rest > 0 else -1)) % 4]
    return tr("{way}, turned {angle} {aside}", way=way, angle=f"{written(abs(rest), '.0f')}°", aside=aside)


def _headings(level):
    """The four quarters, from spinward; level: of a turntable."""
    return tr("spinward"), across(level, False), tr("antispinward"), across(level, True)


def across(level, back):
    """Either way across the ground; level: of a turntable."""
    if level:
        return tr("inward") if back else tr("outward")
    return tr("back along the axis") if back else tr("along the axis")


def _asides(level):
    """The quarters that a heading is turned to."""
    spinward, antispinward = tr_as("turned", "spinward"), tr_as("turned", "antispinward")
    if level:
        return spinward, tr_as("turned", "outward"), antispinward, tr_as("turned", "inward")
    return spinward, tr_as("turned", "along the axis"), antispinward, tr_as("turned", "back along the axis")


def surface(aimed, blocked):
    """What is in the way, with its article, as what is met."""
    name = blocked["surface"]
    if name is None:
        return tr_as("is met", "the edge")
    if name == aimed.setting.habitat.words_of_ground.surface:
        name = aimed.setting.habitat.words_of_ground.name
    return {
        "deck": tr_as("is met", "the deck"),
        "floor": tr_as("is met", "the floor"),
        "turntable": tr_as("is met", "the turntable"),
        "ramp": tr_as("is met", "the ramp"),
        "table": tr_as("is met", "the table"),
        "wall": tr_as("is met", "an end wall"),
        "ceiling": tr_as("is met", "the ceiling"),
        "hub": tr_as("is met", "the hub"),
    }[name]


def misses(sensitivity, units):
    """How far errors of the throw make it miss."""
    names = ("elevation_1_deg_m", "speed_1_percent_m", "heading_1_deg_m")
    high, fast, aside = (
        length(sensitivity[name], units) if sensitivity[name] >= _NOTHING_M else tr("next to nothing") for name in names
    )
    return tr(
        "A degree too high misses by {high}, a degree to the side by {aside}, 1 % too fast by {fast}.",
        high=high,
        aside=aside,
        fast=fast,
    )


def short(ways):
    """How many arrive, in a few characters."""
    free = sum(way["blocked_by"] is None for way in ways)
    if free:
        return tr_many("one throw", "{number} throws", free, number=number(free))
    return tr("all are blocked") if ways else tr("none arrives")


def sentences(aimed, ways, nearest, units):
    """One or two sentences over all of it."""
    free = [way for way in ways if way["blocked_by"] is None]
    blocked = [way for way in ways if way["blocked_by"] is not None]
    if free:
        out = [_arriving(aimed, free, units), misses(free[0]["sensitivity"], units)]
        return [*out, _also(aimed, blocked, units)] if blocked else out
    if blocked:
        return [_stopped(aimed, blocked, units), *_would(aimed, units)]
    return [_none(aimed, nearest, units), *_would(aimed, units)]


def _arriving(aimed, free, units):
    first, *others = free[:_SAID]
    said, before = _first(aimed, first, units), first
    for way in others:
        told = {"throws": said, "throw": _otherwise(aimed, first, way, units), "time": _time(way)}
        if abs(way["turns"] - before["turns"]) < _HALF_ROUND:
            said = tr("{throws}; or {throw}, after {time}", **told)
        else:
            said = tr("{throws}; or {throw}, after {time} and {turns}", **told, turns=_turns(way))
        before = way
    more = len(free) - _SAID
    if more > 0:
        said = tr_many("{throws}; and one more", "{throws}; and {number} more", more, throws=said, number=number(more))
    return f"{said}."


def _first(aimed, way, units):
    """How the first is thrown, and when it arrives: where it goes the long way, how far round."""
    thrown, after = way["speed_m_s"] >= _LET_GO_M_S, _time(way)
    how = _how(aimed, way, units)
    if abs(way["turns"]) <= _HALF_ROUND:
        if thrown:
            return tr("Throw at {how}: it arrives after {time}", how=how, time=after)
        return tr("Let it go at no speed: it arrives after {time}", time=after)
    turns = _goes(aimed, way)
    if thrown:
        return tr("Throw at {how}: it goes {turns} and arrives after {time}", how=how, turns=turns, time=after)
    return tr("Let it go at no speed: it goes {turns} and arrives after {time}", turns=turns, time=after)


def _how(aimed, way, units):
    """How it is thrown: "10 m/s, almost level, 2° up, antispinward"."""
    if way["speed_m_s"] < _LET_GO_M_S:
        return tr("let go at no speed")
    return f"{_speed(way, units)}, {', '.join(_directed(aimed, way))}"


def _directed(aimed, way, tenths=False):
    """Elevation and heading in words; no heading of what goes straight up or down."""
    said = up(way["elevation_deg"], tenths)
    return [said] if abs(way["elevation_deg"]) > _STRAIGHT_DEG else [said, toward(aimed, way["heading_deg"])]


def _otherwise(aimed, first, way, units):
    """What of another throw differs from the first."""
    parts = []
    if abs(way["speed_m_s"] - first["speed_m_s"]) > 0.005 * first["speed_m_s"]:
        parts.append(_speed(way, units))
    if aimed.aim.question.fixed.what != ELEVATION or not parts:
        parts.append(up(way["elevation_deg"]))
    level = abs(way["elevation_deg"]) < _STRAIGHT_DEG
    if level and abs((way["heading_deg"] - first["heading_deg"] + 180) % 360 - 180) >= 1:
        parts.append(toward(aimed, way["heading_deg"]))
    return ", ".join(parts)


def _goes(aimed, way):
    """How far round what goes the long way: a catcher not far off one way is then thrown to the other way."""
    said, side = toward(aimed, way["heading_deg"]), tr("spinward") if way["turns"] > 0 else tr("antispinward")
    return tr("{turns} turns that way", turns=_round(way)) if said == side else _turns(way)


def _turns(way):
    turns = _round(way)
    return (
        tr("{turns} turns spinward", turns=turns) if way["turns"] > 0 else tr("{turns} turns antispinward", turns=turns)
    )


def _round(way):
    return written(abs(way["turns"]), ".2f")


def _speed(way, units):
    return plain_speed(way["speed_m_s"], units)


def plain_speed(speed_m_s, units):
    """A speed as people say it: "10 m/s", not "10.0 m/s"."""
    return speed(speed_m_s, units).replace(f"{written(0.0, '.1f')[1:]}\u00a0", "\u00a0")


def _time(way):
    """A time to the tenth, where that tells enough."""
    return f"{written(way['flight_s'], '.1f')}\u00a0s" if way["flight_s"] >= 1 else seconds(way["flight_s"])


def _also(aimed, blocked, units):
    one, more = blocked[0], len(blocked) - 1
    told = {
        "speed": _speed(one, units),
        "elevation": up(one["elevation_deg"]),
        "surface": surface(aimed, one["blocked_by"]),
    }
    if not more:
        return tr("{speed}, {elevation}, would arrive too, but meets {surface}.", **told)
    return tr_many(
        "{speed}, {elevation}, would arrive too, but meets {surface}, as does one more.",
        "{speed}, {elevation}, would arrive too, but meets {surface}, as do {number} more.",
        more,
        **told,
        number=number(more),
    )


def _stopped(aimed, blocked, units):
    kinds = listed(list(dict.fromkeys(surface(aimed, way["blocked_by"]) for way in blocked)), OR)
    if len(blocked) > 1:
        return tr(
            "All {number} throws that would arrive meet {surfaces} first.", number=number(len(blocked)), surfaces=kinds
        )
    one = blocked[0]
    return tr(
        "The one throw that would arrive, {how}, meets {surface} {time} after it is thrown.",
        how=_how(aimed, one, units),
        surface=kinds,
        time=seconds(one["blocked_by"]["after_s"]),
    )


def _none(aimed, nearest, units):
    none = _none_with(aimed.aim.question.fixed, units)
    if nearest is None:
        return f"{none}."
    if nearest["misses_m"] <= aimed.aim.question.within_m:
        return tr("{none}: it would have to be faster than {speed}.", none=none, speed=speed(MOST_M_S, units))
    return tr(
        "{none}; the nearest, {how}, misses by {length}.",
        none=none,
        how=_how(aimed, nearest, units),
        length=length(nearest["misses_m"], units),
    )


def _none_with(fixed, units):
    """That no throw arrives with what is fixed."""
    return {
        SPEED: lambda: tr("No throw at {speed} arrives", speed=plain_speed(fixed.value, units)),
        ELEVATION: lambda: tr("No throw that is {elevation} arrives", elevation=up(fixed.value, tenths=True)),
        FLIGHT: lambda: tr("No throw arrives after {time}", time=seconds(fixed.value)),
        LEAST: lambda: tr("No throw arrives"),
    }[fixed.what]()


def _would(aimed, units):
    """What would do."""
    if not aimed.remedies:
        return []
    first, *others = (one.says(units) for one in aimed.remedies)
    remedies = listed([first, *(say[0].lower() + say[1:] for say in others)], OR)
    return [tr("{remedies}, and it arrives.", remedies=remedies)]
