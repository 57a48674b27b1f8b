"""A finding's figures as rows of a table: label, value, unit, all read off the names that its fields have."""

from ...language import tr
from . import words
from .figure_labels import LABELS

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
    "m2": "m²",
    "m": "m",
    "s": "s",
}
_MOST_IN_A_ROW = 3
_NO_FIGURES = {"question", "says", "assumptions", "motions"}  # words, and motions of a scene


def figures(finding):
    """(group, label, value, unit) of every number of a finding and every short list of them, in words; group: what of the finding it
    belongs to, "" where it is of all of it, and those first; what is null or longer is left out."""
    rows = [
        (group, label, ", ".join(_written(name, value) for value in values), unit)
        for group, label, name, values, unit in _rows(finding, "", tr)
    ]
    return sorted(rows, key=lambda row: row[0] != "")


def _written(name, value):
    """As the sentences have it: azimuths all the way round."""
    return words.figure(value % 360 if name.endswith("azimuth") else value).replace("-", "−")


def in_group(group, label):
    """A label with its group before it, for where there is no heading over it."""
    return f"{group}: {label}" if group else label


def numbers(finding):
    """The same as (label, number, unit), a row a number, its group before its label; in English, as names of data are."""
    for group, label, _, values, unit in _rows(finding, "", str):
        named = in_group(group, label)
        for number, value in enumerate(values, start=1):
            yield f"{named} {number}" if len(values) > 1 else named, float(value), unit


def _rows(data, group, told, unit_of_all=""):
    """(group, label, name, values, unit); told: what gives labels in the language that they are wanted in."""
    seen = []  # what is the same again is told once: the whole of a craft that turns as one
    for field, value in data.items():
        if field in _NO_FIGURES or value is None or isinstance(value, bool) or value in seen:
            continue
        seen += [value] if isinstance(value, dict) else []
        name, unit = _name_and_unit(field)
        label = told(_said(name))
        if isinstance(value, dict):
            yield from _rows(value, in_group(group, label), told, unit)
        elif isinstance(value, list) and value and isinstance(value[0], dict):
            for number, one in enumerate(value, start=1):
                own = one.get("name") or f"{label} {number}"
                yield from _rows(one, in_group(group, own), told)
        elif _short(value):
            yield group, label, name, list(value) if isinstance(value, list | tuple) else [value], unit or unit_of_all


def _short(value):
    if isinstance(value, list):
        return 0 < len(value) <= _MOST_IN_A_ROW and all(isinstance(one, (int, float)) for one in value)
    return isinstance(value, (int, float))


def _name_and_unit(field):
    parts = field.split("_")
    for count in range(min(3, len(parts) - 1), 0, -1):
        unit = _UNITS.get("_".join(parts[-count:]))
        if unit is not None:
            return "_".join(parts[:-count]), unit
    return field, ""


def _said(name):
    """What a field's name says; a material's has no other."""
    return LABELS.get(name, name)
