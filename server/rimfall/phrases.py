"""Figures in words: lengths, times, speeds, drifts; and the caution, which stands beside all of them.

A no-break space keeps a number and its unit together.
"""

import math

CAUTION = (
    "For stories, pictures and teaching. A real centrifuge, rotating platform or tether is designed under local codes by licensed "
    "people."
)
CAUTION_ABOUT_PEOPLE = (
    "People vary, and the studies are few, small and short, and they disagree: none of this is medical advice. "
    + CAUTION
)

FOOT_M = 0.3048  # exact, international foot (1959)
INCH_M = 0.0254  # exact
STILL_M = 0.005  # a distance smaller than this is none worth a word
STRAIGHT_BELOW = "straight below"
_NB = "\u00a0"
_STRESS = "\ue000", "\ue001"  # for private use: no font and no keyboard has them
ALONG_THE_AXIS = ("along the axis", "back along the axis")
OUTWARD = ("outward", "inward")  # a turntable's
_US = {"m": ("ft", 1 / FOOT_M), "m/s": ("ft/s", 1 / FOOT_M), "g/m": ("g/ft", FOOT_M)}


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
            return f"{value_m / FOOT_M:,.1f}{_NB}ft"
        return f"{_small(value_m / INCH_M)}{_NB}in"
    if abs(value_m) < 0.1:
        return f"{_small(value_m * 1000)}{_NB}mm"
    return f"{value_m:,.2f}{_NB}m" if abs(value_m) < 1000 else f"{value_m:,.0f}{_NB}m"


def _small(value):
    """A figure to the tenth, below 1 to two digits that tell."""
    if not 0.001 <= abs(value) < 0.995:
        return f"{value:.1f}"
    return f"{value:.{1 - math.floor(math.log10(abs(value)))}f}"


def seconds(value_s):
    """A time in words."""
    if 0 < value_s < 0.005:
        return f"less than 0.01{_NB}s"
    return f"{value_s:.2f}{_NB}s" if value_s < 100 else f"{value_s:.0f}{_NB}s"


def speed(value_m_s, units="si"):
    """A speed in words; small ones to the hundredth."""
    shown, unit = (value_m_s / FOOT_M, "ft/s") if units == "us" else (value_m_s, "m/s")
    if 0 < abs(shown) < 0.005:
        return f"less than 0.01{_NB}{unit}"
    return f"{shown:,.{2 if 0 < abs(shown) < 0.095 else 1 if abs(shown) < 999.95 else 0}f}{_NB}{unit}"


def listed(parts, word="and"):
    """Parts as a sentence names them: "a", "a and b", "a, b and c"; `word` stands before the last."""
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} {word} {parts[-1]}"


def where(way, units="si", across=ALONG_THE_AXIS, stressed=False):
    """A way (`motions.ways.Way`) in words: "5.21 m spinward and 0.40 m along the axis", "twice round and 25.00 m spinward"; where another
    way is nearer, that as well; "straight below" where there is none. stressed: its first length stands between the marks of `plain`
    and `pieces`."""
    round_, left, nearer = _about(way, units)
    beside = f"{length(abs(way.axial_m), units)} {across[way.axial_m < 0]}" if abs(way.axial_m) >= STILL_M else ""
    if stressed and (left or beside):
        left, beside = (_stress(left), beside) if left else ("", _stress(beside))
    return " and ".join(p for p in (round_, f"{left}{nearer}", beside) if p) or STRAIGHT_BELOW


def _about(way, units):
    """What of a way goes about the axis: whole turns, what is left beyond them, and the nearest way where it is another; each in
    words, or ""."""
    in_all_m, side = abs(way.in_all_m), ("antispinward", "spinward")[way.in_all_m > 0]
    if not way.round_m:
        return "", (f"{length(in_all_m, units)} {side}" if in_all_m >= STILL_M else ""), ""
    turns, left_m = divmod(in_all_m, way.round_m)
    if way.round_m - left_m < STILL_M:
        turns, left_m = turns + 1, 0.0
    left = f"{length(left_m, units)} {side}" if left_m >= STILL_M else ""
    round_ = "" if turns == 0 else f"{times(int(turns))} round" + ("" if left else f" {side}")
    other = ("spinward", "antispinward")[side == "spinward"]
    nearer = "" if left_m <= way.round_m / 2 else f" ({length(way.round_m - left_m, units)} {other} by the nearest way)"
    return round_, left, nearer


def times(count):
    """How often, in words: "once", "twice", "3 times"."""
    return {1: "once", 2: "twice"}.get(count, f"{count:,} times")


def _stress(text):
    """Words whose length, which comes first, stands between the marks of `plain` and `pieces`."""
    first, _, rest = text.partition(" ")
    return f"{_STRESS[0]}{first}{_STRESS[1]} {rest}"


def plain(text):
    """Words without the marks of what is stressed in them."""
    return text.replace(_STRESS[0], "").replace(_STRESS[1], "")


def pieces(sentences):
    """Sentences as one text in pieces: what comes before the first that is stressed, that, and the rest; one where nothing is."""
    before, mark, rest = " ".join(sentences).partition(_STRESS[0])
    stressed, _, after = rest.partition(_STRESS[1])
    return [before, stressed, plain(after)] if mark else [before]
