"""Figures in words: lengths, times, speeds, drifts; and the caution, which stands beside all of them.

A no-break space keeps a number and its unit together.
"""

import math
from functools import reduce

from .language import tr, tr_later, tr_many, written

CAUTION = tr_later(
    "For stories, pictures and teaching. A real centrifuge, rotating platform or tether is designed under local codes by licensed "
    "people."
)
PEOPLE_VARY = tr_later(
    "People vary, and the studies are few, small and short, and they disagree: none of this is medical advice."
)
NOT_MADE = tr_later(
    "What it takes from npm was not made when Rimfall was installed from its checkout. With the npm registry in reach, "
    "run: python static/vendor_build.py"
)

FOOT_M = 0.3048  # exact, international foot (1959)
INCH_M = 0.0254  # exact
STILL_M = 0.005  # a distance smaller than this is none worth a word
AND, OR = tr_later("{first} and {last}"), tr_later("{first} or {last}")
_SIDES = (tr_later("{length} antispinward"), tr_later("{length} spinward"))
_ROUND, _ROUND_TO = (
    tr_later("{times} round"),
    (tr_later("{times} round antispinward"), tr_later("{times} round spinward")),
)
STRAIGHT_BELOW = tr_later("straight below")
_NB = "\u00a0"
_STRESS = "\ue000", "\ue001"  # for private use: no font and no keyboard has them
ALONG_THE_AXIS = (tr_later("{length} along the axis"), tr_later("{length} back along the axis"))
OUTWARD = (tr_later("{length} outward"), tr_later("{length} inward"))  # a turntable's
_US = {"m": ("ft", 1 / FOOT_M), "m/s": ("ft/s", 1 / FOOT_M), "g/m": ("g/ft", FOOT_M)}


def caution():
    """The caution, in the language that is spoken."""
    return tr(CAUTION)


def caution_about_people():
    """The caution beside what people would feel."""
    return f"{tr(PEOPLE_VARY)} {caution()}"


def in_units(value, unit, units):
    """A figure in `unit` and its unit as they are shown; units: "si", or "us", customary where there is one in use."""
    if units != "us" or unit not in _US:
        return value, unit
    name, per = _US[unit]
    return value * per, name


def length(value_m, units="si"):
    """A length in words: "5.21 m" or "17.1 ft"; small ones in millimetres or inches, the smallest to two digits."""
    if units == "us":
        if abs(value_m) >= 1 * FOOT_M:
            return f"{written(value_m / FOOT_M, ',.1f')}{_NB}ft"
        return f"{_small(value_m / INCH_M)}{_NB}in"
    if abs(value_m) < 0.1:
        return f"{_small(value_m * 1000)}{_NB}mm"
    return f"{written(value_m, ',.2f' if abs(value_m) < 1000 else ',.0f')}{_NB}m"


def _small(value):
    """A figure to the tenth, below 1 to two digits that tell."""
    if not 0.001 <= abs(value) < 0.995:
        return written(value, ".1f")
    return written(value, f".{1 - math.floor(math.log10(abs(value)))}f")


def seconds(value_s):
    """A time in words."""
    if 0 < value_s < 0.005:
        return _less_than(0.01, "s")
    return f"{written(value_s, '.2f' if value_s < 100 else '.0f')}{_NB}s"


def _less_than(value, unit):
    return tr("less than {figure}", figure=f"{written(value)}{_NB}{unit}")


def speed(value_m_s, units="si"):
    """A speed in words; small ones to the hundredth."""
    shown, unit = (value_m_s / FOOT_M, "ft/s") if units == "us" else (value_m_s, "m/s")
    if 0 < abs(shown) < 0.005:
        return _less_than(0.01, unit)
    return f"{written(shown, f',.{2 if 0 < abs(shown) < 0.095 else 1 if abs(shown) < 999.95 else 0}f')}{_NB}{unit}"


def listed(parts, last=AND):
    """Parts as a sentence names them: "a", "a and b", "a, b and c"; last: how the last of them follows the others, `AND` or `OR`."""
    return parts[0] if len(parts) == 1 else tr(last, first=", ".join(parts[:-1]), last=parts[-1])


def where(way, units="si", across=ALONG_THE_AXIS, stressed=False, none=STRAIGHT_BELOW):
    """A way (`motions.ways.Way`) in words: "5.21 m spinward and 0.40 m along the axis", "twice round and 25.00 m spinward"; where another
    way is nearer, that as well; `none`, not yet translated, where there is no way. stressed: its first length stands between the marks of
    `plain` and `pieces`."""
    mark = _stress if stressed else str
    round_, left_m, side = _about(way)
    parts = [] if not round_ else [round_]
    if left_m:
        parts.append(tr(_SIDES[side], length=mark(length(left_m, units))) + _nearer(way, left_m, side, units))
        mark = str
    if abs(way.axial_m) >= STILL_M:
        parts.append(tr(across[way.axial_m < 0], length=mark(length(abs(way.axial_m), units))))
    return reduce(lambda first, last: tr(AND, first=first, last=last), parts) if parts else none and tr(none)


def _about(way):
    """What of a way goes about the axis: whole turns in words, or ""; what is left beyond them, m, or 0; and its side, of `_SIDES`."""
    in_all_m, side = abs(way.in_all_m), way.in_all_m > 0
    turns, left_m = divmod(in_all_m, way.round_m) if way.round_m else (0, in_all_m)
    if way.round_m and way.round_m - left_m < STILL_M:
        turns, left_m = turns + 1, 0.0
    if left_m < STILL_M:
        left_m = 0.0
    if turns == 0:
        return "", left_m, side
    return tr(_ROUND if left_m else _ROUND_TO[side], times=times(int(turns))), left_m, side


def _nearer(way, left_m, side, units):
    """The nearest way, where that is the other way round; else ""."""
    if not way.round_m or left_m <= way.round_m / 2:
        return ""
    other = tr(_SIDES[not side], length=length(way.round_m - left_m, units))
    return " " + tr("({way} by the nearest way)", way=other)


def times(count):
    """How often, in words: "once", "twice", "3 times"."""
    return tr("once") if count == 1 else tr("twice") if count == 2 else tr_many("{count} time", "{count} times", count)


def _stress(text):
    """Words between the marks of `plain` and `pieces`."""
    return f"{_STRESS[0]}{text}{_STRESS[1]}"


def plain(text):
    """Words without the marks of what is stressed in them."""
    return text.replace(_STRESS[0], "").replace(_STRESS[1], "")


def pieces(sentences):
    """Sentences as one text in pieces: what comes before the first that is stressed, that, and the rest; one where nothing is."""
    before, mark, rest = " ".join(sentences).partition(_STRESS[0])
    stressed, _, after = rest.partition(_STRESS[1])
    return [before, stressed, plain(after)] if mark else [before]
