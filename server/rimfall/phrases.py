"""Figures in words: lengths, times, speeds, drifts; and the caution, which stands beside all of them.

A no-break space keeps a number and its unit together.
"""

_PURPOSE = "for stories, pictures and teaching"
_DESIGNED = "is designed under local codes by licensed people."
CAUTION = f"{_PURPOSE.capitalize()}. A real rotor, platform or tether {_DESIGNED}"
CAUTION_ABOUT_PEOPLE = (
    f"People vary, the studies are few, small and short, and they disagree: this is {_PURPOSE}, and is not medical advice. A real "
    f"centrifuge, rotating room or tether {_DESIGNED}"
)

FOOT_M = 0.3048  # exact, international foot (1959)
INCH_M = 0.0254  # exact
_STILL_M = 0.005  # a drift smaller than this is none worth a word
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
    """A length in words: "5.21 m" or "17.1 ft"; small ones in millimetres or inches."""
    if units == "us":
        return f"{value_m / FOOT_M:.1f}{_NB}ft" if abs(value_m) >= 1 * FOOT_M else f"{value_m / INCH_M:.1f}{_NB}in"
    if abs(value_m) < 0.1:
        return f"{value_m * 1000:.1f}{_NB}mm"
    return f"{value_m:,.2f}{_NB}m" if abs(value_m) < 1000 else f"{value_m:,.0f}{_NB}m"


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


def drift(along_m, axial_m, units="si", across=ALONG_THE_AXIS, stressed=False):
    """A drift in words: "5.21 m spinward and 0.40 m along the axis"; "straight below" where there is none. stressed: its first
    length stands between the marks of `plain` and `pieces`."""
    parts = []
    if abs(along_m) >= _STILL_M:
        parts.append(f"{length(abs(along_m), units)} {'spinward' if along_m > 0 else 'antispinward'}")
    if abs(axial_m) >= _STILL_M:
        parts.append(f"{length(abs(axial_m), units)} {across[axial_m < 0]}")
    if stressed and parts:
        first, _, way = parts[0].partition(" ")
        parts[0] = f"{_STRESS[0]}{first}{_STRESS[1]} {way}"
    return " and ".join(parts) or "straight below"


def plain(text):
    """Words without the marks of what is stressed in them."""
    return text.replace(_STRESS[0], "").replace(_STRESS[1], "")


def pieces(sentences):
    """Sentences as one text in pieces: what comes before the first that is stressed, that, and the rest; one where nothing is."""
    before, mark, rest = " ".join(sentences).partition(_STRESS[0])
    stressed, _, after = rest.partition(_STRESS[1])
    return [before, stressed, plain(after)] if mark else [before]
