"""Where throws can come down, in words: how far either way, what stops the others, and which throw goes farthest."""

import numpy as np

from ...motions.ways import Way
from ...phrases import STILL_M, in_units, length, seconds, speed, where
from ...shots.landings import ENDINGS, FIGURES, NEVER, Landings, Varied

WAYS = ("spinward", "antispinward", "across", "back")
_ASIDE = 0.05  # of how far apart they land along the ground: less across it is not told
_HEADINGS = {0.0: "spinward", 180.0: "antispinward", 360.0: "spinward"}
_OTHERS = {"ceiling": "The ceiling stops", "hub": "The hub stops", "wall": "The end walls stop"}


def way_of(landings: Landings, k: int) -> Way:
    """From the release to where throw number k ends."""
    round_m = None if landings.round_m is None else float(landings.round_m[k])
    return Way(int(landings.turns[k]), float(landings.spinward_m[k]), float(landings.across_m[k]), round_m)


def farthest(landings: Landings) -> dict[str, int | None]:
    """The number of the throw that lands farthest each way, by WAYS: along the ground, across it (the first of a ground's `across`) and
    back; None where none goes that way."""
    landed = np.flatnonzero(landings.landed)
    along, across = landings.in_all_m, landings.across_m
    out = {}
    for name, far_m in zip(WAYS, (along, -along, across, -across), strict=True):
        k = int(landed[np.argmax(far_m[landed])]) if len(landed) else None
        out[name] = k if k is not None and far_m[k] >= STILL_M else None
    return out


def thrown(landings: Landings, k: int, units: str = "si") -> str:
    """The figures that vary of throw number k: "20.0 m/s, 12° up"."""
    parts, fields = [], {varied.field for varied in landings.over}
    for field in FIGURES:
        value = float(landings.figures[field][k])
        if field not in fields:
            continue
        if field == "speed_m_s":
            parts.append(speed(value, units))
        elif field == "heading_deg":
            parts.append(_HEADINGS.get(round(value % 360, 1), f"heading {_degrees(value)}"))
        else:
            parts.append("level" if abs(value) < 0.05 else f"{_degrees(abs(value))} {'up' if value > 0 else 'down'}")
    return ", ".join(parts)


def _degrees(value):
    return f"{value:.1f}".removesuffix(".0").replace("-", "−") + "°"


def value_of(varied: Varied, number: int, units: str = "si") -> str:
    """One value of a figure that varies, on its line: "9 m/s", "40°"."""
    value = float(varied.values[number])
    if varied.field != "speed_m_s":
        return _degrees(value)
    shown, unit = in_units(value, "m/s", units)
    return f"{shown:.3g}\u00a0{unit}"


def sentences(landings: Landings, ground, units: str = "si") -> list[str]:
    """Sentences of all of them; ground: what is stood on (`shapes.Ground`)."""
    return [*_come_down(landings, ground, units), *_stopped(landings, ground, units)]


def _come_down(landings, ground, units):
    count, total = landings.count("landed"), len(landings.ended)
    if not count:
        return [f"None of {total:,} throws comes down on the {ground.name}."]
    throws = f"All {total:,} throws come" if count == total else f"{count:,} of {total:,} throws come"
    if count == 1:
        throws = f"One of {total:,} throws comes"
    flights = landings.time_s[landings.landed] - landings.start_s
    lasts = _between(seconds(float(flights.min())), seconds(float(flights.max())))
    return [
        f"{throws} down on the {ground.name}, {_span(landings, units)}, after {lasts}.",
        *_farthest(landings, ground.across, units),
    ]


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
    side = last.rpartition(" ")[2]
    return f"from {first.removesuffix(f' {side}') if ' ' not in first.removesuffix(f' {side}') else first} to {last}"


def _along(way):
    return Way(way.turns, way.spinward_m, 0.0, way.round_m)


def _between(first, last):
    if first == last:
        return first
    return f"{first.rpartition(chr(0xA0))[0] or first} to {last}"


def _farthest(landings, across, units):
    along_m, across_m = (float(np.ptp(of[landings.landed])) for of in (landings.in_all_m, landings.across_m))
    for name, k in farthest(landings).items():
        aside = name in ("across", "back")
        if k is None or (aside and across_m <= _ASIDE * along_m):
            continue
        way, flight_s = way_of(landings, k), float(landings.time_s[k]) - landings.start_s
        far_m = abs(way.axial_m if aside else way.in_all_m)
        said = across[name == "back"] if aside else name
        yield f"Farthest {said} goes the throw {_at(landings)}{thrown(landings, k, units)}: {length(far_m, units)} after {seconds(flight_s)}."


def _stopped(landings, ground, units):
    """What ends the others, each with the gentlest throw that it ends."""
    for ending, stops in _OTHERS.items():
        if count := landings.count(ending):
            yield f"{stops} {'one' if count == 1 else f'{count:,}'}, {_gentlest(landings, ending, units)}."
    if count := landings.count("edge"):
        yield f"{_many(count, 'goes', 'go')} over the edge, {_gentlest(landings, 'edge', units)}; what lies beyond is not followed."
    if count := landings.count(NEVER):
        last_s = float(np.max(landings.time_s[landings.ended == ENDINGS.index(NEVER)])) - landings.start_s
        yield f"{_many(count, 'meets', 'meet')} nothing within {seconds(last_s)}."


def _many(count, one, several):
    return f"One {one}" if count == 1 else f"{count:,} {several}"


def _gentlest(landings, ending, units):
    """The slowest throw that ends so, or where speed does not vary the flattest."""
    ended = np.flatnonzero(landings.ended == ENDINGS.index(ending))
    fields = [varied.field for varied in landings.over]
    by = "speed_m_s" if "speed_m_s" in fields else "elevation_deg"
    values = np.abs(landings.figures[by][ended])
    tied = ended[values <= values.min() * (1 + 1e-9)]
    other = next(name for name in fields if name != by)
    k = int(tied[np.argmin(np.abs(landings.figures[other][tied]))])
    word = "the slowest" if by == "speed_m_s" else "the flattest"
    how = f"{_at(landings)}{thrown(landings, k, units)}"
    return f"{word} of them {how}" if len(ended) > 1 else f"the throw {how}"


def _at(landings):
    return "at " if "speed_m_s" in {varied.field for varied in landings.over} else ""


def short(landings: Landings, units: str = "si") -> str:
    """How far they reach, in a few characters: "−12 to 34 m"."""
    if not np.any(landings.landed):
        return "none lands"
    along = landings.in_all_m[landings.landed]
    low, unit = in_units(float(along.min()), "m", units)
    high, _ = in_units(float(along.max()), "m", units)
    low, high = (
        f"{value:.2f}" if abs(value) < 1 else f"{value:.3g}" if abs(value) < 100 else f"{value:.0f}"
        for value in (low, high)
    )
    return f"{low} to {high} {unit}".replace("-", "−")
