"""A finding's figures as rows of a table: label, value, unit, all read off the names that its fields have."""

from . import words

_UNITS = {  # how a name ends → its unit; the longest ending counts
    "kg_m2_s": "kg m²/s",
    "kg_m2": "kg m²",
    "kg_m3": "kg/m³",
    "n_m": "N m",
    "m_s2": "m/s²",
    "m_s": "m/s",
    "rad_s": "rad/s",
    "deg_s": "°/s",
    "kg_s": "kg/s",
    "kg_min": "kg/min",
    "rpm": "rpm",
    "kg": "kg",
    "deg": "°",
    "kpa": "kPa",
    "mpa": "MPa",
    "pa": "Pa",
    "g": "g",
    "j": "J",
    "w": "W",
    "n": "N",
    "m": "m",
    "s": "s",
}
_MOST_IN_A_ROW = 3
_NO_FIGURES = {"question", "says", "assumptions", "motions"}  # words, and motions of a scene


def figures(finding):
    """(label, value, unit) of every number of a finding and every short list of them, in words; what is null or longer is left out."""
    return [(label, ", ".join(map(words.figure, values)), unit) for label, values, unit in _rows(finding, "")]


def numbers(finding):
    """The same as (label, number, unit), a row a number."""
    for label, values, unit in _rows(finding, ""):
        for number, value in enumerate(values, start=1):
            yield f"{label} {number}" if len(values) > 1 else label, float(value), unit


def _rows(data, before, unit_of_all=""):
    seen = []  # what is the same again is told once: the whole of a craft that turns as one
    for name, value in data.items():
        if name in _NO_FIGURES or value is None or isinstance(value, bool) or value in seen:
            continue
        seen += [value] if isinstance(value, dict) else []
        if isinstance(value, dict):
            label, unit = _label(name)
            yield from _rows(value, f"{before}{label}: ", unit)
        elif isinstance(value, list) and value and isinstance(value[0], dict):
            for number, one in enumerate(value, start=1):
                yield from _rows(one, f"{before}{name.replace('_', ' ')} {number}: ")
        elif _short(value):
            label, unit = _label(name)
            yield before + label, list(value) if isinstance(value, list | tuple) else [value], unit or unit_of_all


def _short(value):
    if isinstance(value, list):
        return 0 < len(value) <= _MOST_IN_A_ROW and all(isinstance(one, (int, float)) for one in value)
    return isinstance(value, (int, float))


def _label(name):
    parts = name.split("_")
    for count in range(min(3, len(parts) - 1), 0, -1):
        unit = _UNITS.get("_".join(parts[-count:]))
        if unit is not None:
            return " ".join(parts[:-count]), unit
    return name.replace("_", " "), ""
