"""Where throws can come down, in words: how far either way, what stops the others, and which throw goes farthest."""

import numpy as np

from ...language import in_signs, tr, tr_as, tr_many, written
from ...motions.ways import Way
from ...phrases import STILL_M, in_units, length, seconds, speed, where
from ...shots.landings import CEILING, EDGE, ENDINGS, FIGURES, HUB, NEVER, WALL, Landings, Varied
from .aim_words import across

WAYS = ("spinward", "antispinward", "across", "back")
_ASIDE = 0.05  # of how far apart they land along the ground: less across it is not told
_LEVEL_DEG = 0.05
_NB = "\u00a0"


def way_of(landings: Landings, k: int) -> Way:
    """From the release to where throw number k ends."""
    round_m = None if landings.round_m is None else float(landings.round_m[k])
    return Way(int(landings.turns[k]), float(landings.spinward_m[k]), float(landings.across_m[k]), round_m)


def farthest(landings: Landings) -> dict[str, int | None]:
    """The number of the throw that lands farthest each way, by WAYS: along the ground, across it (the first of a ground's `across`) and
    back; None where none goes that way."""
    landed = np.flatnonzero(landings.landed)
    along_m, across_m = landings.in_all_m, landings.across_m
    out = {}
    for name, far_m in zip(WAYS, (along_m, -along_m, across_m, -across_m), strict=True):
        k = int(landed[np.argmax(far_m[landed])]) if len(landed) else None
        out[name] = k if k is not None and far_m[k] >= STILL_M else None
    return out


def thrown(landings: Landings, k: int, units: str = "si") -> str:
    """The figures that vary of throw number k: "20.0 m/s, 12° up"."""
    fields = {varied.field for varied in landings.over}
    told = {"speed_m_s": lambda value: speed(value, units), "heading_deg": _heading, "elevation_deg": _elevation}
    return ", ".join(told[field](float(landings.figures[field][k])) for field in FIGURES if field in fields)


def _heading(heading_deg):
    tenths = round(heading_deg % 360, 1)
    if tenths in (0.0, 360.0):
        return tr("spinward")
    return tr("antispinward") if tenths == 180.0 else tr("heading {angle}", angle=_degrees(heading_deg))


def _elevation(elevation_deg):
    if abs(elevation_deg) < _LEVEL_DEG:
        return tr("level")
    angle = _degrees(abs(elevation_deg))
    return tr("{angle} up", angle=angle) if elevation_deg > 0 else tr("{angle} down", angle=angle)


def _degrees(value):
    return in_signs(f"{value:.1f}".removesuffix(".0")).replace("-", "−") + "°"


def value_of(varied: Varied, number: int, units: str = "si") -> str:
    """One value of a figure that varies, on its line: "9 m/s", "40°"."""
    value = float(varied.values[number])
    if varied.field != "speed_m_s":
        return _degrees(value)
    shown, unit = in_units(value, "m/s", units)
    return f"{written(shown, '.3g')}{_NB}{unit}"


def sentences(landings: Landings, ground, units: str = "si") -> list[str]:
    """Sentences of all of them; ground: what is stood on (`shapes.Ground`)."""
    return [*_come_down(landings, ground, units), *_stopped(landings, units)]


def _come_down(landings, ground, units):
    count, total = landings.count("landed"), len(landings.ended)
    on, of = _on(ground), written(total, ",")
    if not count:
        return [tr("None of {total} throws comes down {on}.", total=of, on=on)]
    flights = landings.time_s[landings.landed] - landings.start_s
    lasts = _between(seconds(float(flights.min())), seconds(float(flights.max())))
    told = {"total": of, "on": on, "span": _span(landings, units), "time": lasts}
    if count == total:
        said = tr("All {total} throws come down {on}, {span}, after {time}.", **told)
    elif count == 1:
        said = tr("One of {total} throws comes down {on}, {span}, after {time}.", **told)
    else:
        counted = written(count, ",")
        said = tr("{count} of {total} throws come down {on}, {span}, after {time}.", **told, count=counted)
    return [said, *_farthest(landings, ground.level, units)]


def _on(ground):
    """On what they come down."""
    return {
        "deck": tr_as("comes down", "on the deck"),
        "floor": tr_as("comes down", "on the floor"),
        "turntable": tr_as("comes down", "on the turntable"),
    }[ground.name]


def _span(landings, units):
    """From where to where along the ground."""
    landed = np.flatnonzero(landings.landed)
    ends = [int(landed[pick(landings.in_all_m[landed])]) for pick in (np.argmin, np.argmax)]
    ways = [_along(way_of(landings, k)) for k in ends]
    if ways[0].in_all_m < 0 and ways[1].in_all_m <= 0:
        ways.reverse()
    first, last = (where(way, units) for way in ways)
    if first == last:
        return first
    if _same_side(*ways):
        first = length(abs(ways[0].in_all_m), units)
    return tr("from {first} to {last}", first=first, last=last)


def _same_side(first, last):
    """Whether the side of the last way can be said of both: the first is a length alone."""
    far_m = abs(first.in_all_m)
    once = first.round_m and far_m >= first.round_m - STILL_M
    alone = far_m >= STILL_M and not once and not _nearer_round(first)
    return alone and not _nearer_round(last) and first.in_all_m * last.in_all_m > 0 and abs(last.in_all_m) >= STILL_M


def _nearer_round(way):
    """Whether its words name a nearer way round the other side."""
    return way.round_m and way.round_m / 2 < abs(way.in_all_m) % way.round_m <= way.round_m - STILL_M


def _along(way):
    return Way(way.turns, way.spinward_m, 0.0, way.round_m)


def _between(first, last):
    """From one figure to another of the same unit."""
    return first if first == last else tr("{first} to {last}", first=first.rpartition(_NB)[0] or first, last=last)


def _farthest(landings, level, units):
    along_m, across_m = (float(np.ptp(of[landings.landed])) for of in (landings.in_all_m, landings.across_m))
    for name, k in farthest(landings).items():
        aside = name in ("across", "back")
        if k is None or (aside and across_m <= _ASIDE * along_m):
            continue
        way, flight_s = way_of(landings, k), float(landings.time_s[k]) - landings.start_s
        yield tr(
            "Farthest {way} goes the throw {how}: {length} after {time}.",
            way=across(level, name == "back")
            if aside
            else tr("spinward")
            if name == "spinward"
            else tr("antispinward"),
            how=_how(landings, k, units),
            length=length(abs(way.axial_m if aside else way.in_all_m), units),
            time=seconds(flight_s),
        )


def _how(landings, k, units):
    """How it is thrown, after the word for it."""
    how = thrown(landings, k, units)
    return tr("at {throw}", throw=how) if "speed_m_s" in {varied.field for varied in landings.over} else how


def _stopped(landings, units):
    """What ends the others, each with the gentlest throw that it ends."""
    told = {
        CEILING: lambda count, which: tr_many(
            "The ceiling stops one, {which}.", "The ceiling stops {count}, {which}.", count, which=which
        ),
        HUB: lambda count, which: tr_many(
            "The hub stops one, {which}.", "The hub stops {count}, {which}.", count, which=which
        ),
        WALL: lambda count, which: tr_many(
            "The end walls stop one, {which}.", "The end walls stop {count}, {which}.", count, which=which
        ),
        EDGE: lambda count, which: tr_many(
            "One goes over the edge, {which}; what lies beyond is not followed.",
            "{count} go over the edge, {which}; what lies beyond is not followed.",
            count,
            which=which,
        ),
    }
    for ending, says in told.items():
        if count := landings.count(ending):
            yield says(count, _gentlest(landings, ending, units))
    if count := landings.count(NEVER):
        last_s = float(np.max(landings.time_s[landings.ended == ENDINGS.index(NEVER)])) - landings.start_s
        yield tr_many(
            "One meets nothing within {time}.", "{count} meet nothing within {time}.", count, time=seconds(last_s)
        )


def _gentlest(landings, ending, units):
    """The slowest throw that ends so, or where speed does not vary the flattest."""
    ended = np.flatnonzero(landings.ended == ENDINGS.index(ending))
    fields = [varied.field for varied in landings.over]
    by = "speed_m_s" if "speed_m_s" in fields else "elevation_deg"
    values = np.abs(landings.figures[by][ended])
    tied = ended[values <= values.min() * (1 + 1e-9)]
    other = next(name for name in fields if name != by)
    how = _how(landings, int(tied[np.argmin(np.abs(landings.figures[other][tied]))]), units)
    if len(ended) == 1:
        return tr("the throw {how}", how=how)
    return tr("the slowest of them {how}", how=how) if by == "speed_m_s" else tr("the flattest of them {how}", how=how)


def short(landings: Landings, units: str = "si") -> str:
    """How far they reach, in a few characters: "−12 to 34 m"."""
    if not np.any(landings.landed):
        return tr("none lands")
    along = landings.in_all_m[landings.landed]
    low, unit = in_units(float(along.min()), "m", units)
    high, _ = in_units(float(along.max()), "m", units)
    low, high = (
        written(value, ".2f" if abs(value) < 1 else ".3g" if abs(value) < 100 else ".0f").replace("-", "−")
        for value in (low, high)
    )
    return tr("{low} to {high} {unit}", low=low, high=high, unit=unit)
