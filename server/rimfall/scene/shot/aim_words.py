"""Throws that arrive, in words: how each is thrown, when it arrives, what is in its way, and how far errors make it miss."""

from ...kinds.words import SURFACE_WORDS
from ...phrases import OR, STILL_M, length, listed, seconds, speed
from ...prose import number
from ...shots.fixed import ELEVATION, FLIGHT, LEAST, SPEED
from ...shots.question import MOST_M_S

_LEVEL_DEG, _ALMOST_DEG, _STRAIGHT_DEG = 0.5, 5.0, 89.95
_LET_GO_M_S = 0.005
_NOTHING_M = 5e-4  # a miss that no word is worth
_SAID = 4  # throws that a sentence names


def of_way(aimed, way, units):
    """Words of one throw: a name for a label, what it does, how far errors make it miss, and what is in its way."""
    how = ", ".join([speed(way["speed_m_s"], units), *_directed(aimed, way, tenths=True)])
    blocked, reach_m = way["blocked_by"], aimed.aim.question.within_m
    if way["misses_m"] > reach_m:
        end = f"misses by {length(way['misses_m'], units)} after {seconds(way['flight_s'])}"
    if blocked is not None:
        blocked = blocked | {"says": f"met by {surface(aimed, blocked)} after {seconds(blocked['after_s'])}"}
    if blocked is not None and way["misses_m"] <= reach_m:
        end = f"would arrive after {seconds(way['flight_s'])}, but meets {surface(aimed, blocked)} after {seconds(blocked['after_s'])}"
    elif way["misses_m"] <= reach_m:
        off = f", {length(way['misses_m'], units)} off" if way["misses_m"] >= STILL_M else ""
        end = f"arrives after {seconds(way['flight_s'])}{off}"
    return {
        "name": f"{speed(way['speed_m_s'], units)}, {up(way['elevation_deg']).removeprefix('almost level, ')}",
        "says": f"{how}: {end}{_round(way)}",
        "off_says": misses(way["sensitivity"], units),
        "blocked_by": blocked,
    }


def _round(way):
    """How far round it goes where that is more than half a turn."""
    return "" if abs(way["turns"]) <= 0.5 else f", having gone {_turns(way)}"


def up(elevation_deg, tenths=False):
    """An elevation in words: "level", "almost level, 2° up", "24° up", "straight down"."""
    size, side = abs(elevation_deg), "up" if elevation_deg > 0 else "down"
    if size < (0.05 if tenths else _LEVEL_DEG):
        return "level"
    if size > _STRAIGHT_DEG:
        return f"straight {side}"
    said = f"{size:.1f}° {side}" if tenths else f"{size:.0f}° {side}"
    if tenths:
        return said
    return f"almost level, {said}" if size < _ALMOST_DEG else said


def toward(aimed, heading_deg):
    """A heading in words: "antispinward", "spinward, turned 12° along the axis"."""
    across = aimed.setting.habitat.words_of_ground.across
    names = ("spinward", across[0], "antispinward", across[1])
    quarter = round((heading_deg % 360) / 90)
    rest = heading_deg % 360 - 90 * quarter
    if abs(rest) < _LEVEL_DEG:
        return names[quarter % 4]
    aside = names[(quarter + (1 if rest > 0 else -1)) % 4]
    return f"{names[quarter % 4]}, turned {abs(rest):.0f}° {aside}"


def surface(aimed, blocked):
    """What is in the way, with its article."""
    if blocked["surface"] is None:
        return "the edge"
    if blocked["surface"] == aimed.setting.habitat.words_of_ground.surface:
        return f"the {aimed.setting.habitat.words_of_ground.name}"
    return SURFACE_WORDS.get(blocked["surface"], f"the {blocked['surface']}")


def misses(sensitivity, units):
    """How far errors of the throw make it miss."""
    names = ("elevation_1_deg_m", "speed_1_percent_m", "heading_1_deg_m")
    high, fast, aside = (
        length(sensitivity[name], units) if sensitivity[name] >= _NOTHING_M else "next to nothing" for name in names
    )
    return f"A degree too high misses by {high}, a degree to the side by {aside}, 1 % too fast by {fast}."


def short(ways):
    """How many arrive, in a few characters."""
    free = sum(way["blocked_by"] is None for way in ways)
    if free:
        return f"{number(free)} throw{'' if free == 1 else 's'}"
    return "all are blocked" if ways else "none arrives"


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
    how = f"Throw at {_how(aimed, first, units)}" if first["speed_m_s"] >= _LET_GO_M_S else "Let it go at no speed"
    said = f"{how}: it {_goes(aimed, first)}arrives after {_time(first)}"
    before = first
    for way in others:
        farther = "" if abs(way["turns"] - before["turns"]) < 0.5 else f" and {_turns(way)}"
        said += f"; or {_otherwise(aimed, first, way, units)}, after {_time(way)}{farther}"
        before = way
    more = len(free) - _SAID
    return f"{said}{f'; and {number(more)} more' if more > 0 else ''}."


def _how(aimed, way, units):
    """How it is thrown: "10 m/s, almost level, 2° up, antispinward"."""
    if way["speed_m_s"] < _LET_GO_M_S:
        return "let go at no speed"
    return f"{_speed(way, units)}, {', '.join(_directed(aimed, way))}"


def _directed(aimed, way, tenths=False):
    """Elevation and heading in words; no heading of what goes straight up or down."""
    said = up(way["elevation_deg"], tenths)
    return [said] if said.startswith("straight") else [said, toward(aimed, way["heading_deg"])]


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
    """How far round, where that is the long way: a catcher not far off one way is then thrown to the other way."""
    if abs(way["turns"]) <= 0.5:
        return ""
    said = _turns(way)
    side = said.rpartition(" ")[2]
    return f"goes {said.replace(side, 'that way') if side == toward(aimed, way['heading_deg']) else said} and "


def _turns(way):
    return f"{abs(way['turns']):.2f} turns {'spinward' if way['turns'] > 0 else 'antispinward'}"


def _speed(way, units):
    return _plain(speed(way["speed_m_s"], units))


def _plain(said):
    return said.replace(".0\u00a0", "\u00a0")


def _time(way):
    """A time to the tenth, where that tells enough."""
    return f"{way['flight_s']:.1f}\u00a0s" if way["flight_s"] >= 1 else seconds(way["flight_s"])


def _also(aimed, blocked, units):
    one = blocked[0]
    also = f"{_speed(one, units)}, {up(one['elevation_deg'])}, would arrive too, but meets {surface(aimed, one['blocked_by'])}"
    return f"{also}{f', as do {number(len(blocked) - 1)} more' if len(blocked) > 1 else ''}."


def _stopped(aimed, blocked, units):
    kinds = listed(list(dict.fromkeys(surface(aimed, way["blocked_by"]) for way in blocked)), OR)
    if len(blocked) > 1:
        return f"All {number(len(blocked))} throws that would arrive meet {kinds} first."
    one = blocked[0]
    how = _how(aimed, one, units)
    return f"The one throw that would arrive, {how}, meets {kinds} {seconds(one['blocked_by']['after_s'])} after it is thrown."


def _none(aimed, nearest, units):
    fixed = aimed.aim.question.fixed
    with_it = {
        SPEED: lambda: f"No throw at {_plain(speed(fixed.value, units))} arrives",
        ELEVATION: lambda: f"No throw that is {up(fixed.value, tenths=True)} arrives",
        FLIGHT: lambda: f"No throw arrives after {seconds(fixed.value)}",
        LEAST: lambda: "No throw arrives",
    }[fixed.what]()
    if nearest is None:
        return f"{with_it}."
    if nearest["misses_m"] <= aimed.aim.question.within_m:
        return f"{with_it}: it would have to be faster than {speed(MOST_M_S, units)}."
    return f"{with_it}; the nearest, {_how(aimed, nearest, units)}, misses by {length(nearest['misses_m'], units)}."


def _would(aimed, units):
    """What would do."""
    if not aimed.remedies:
        return []
    says = [one.says(units) for one in aimed.remedies]
    return [f"{listed([says[0], *(say[0].lower() + say[1:] for say in says[1:])], OR)}, and it arrives."]
