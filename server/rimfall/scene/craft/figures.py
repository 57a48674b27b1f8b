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
_SAID = {  # what a field's own name says too shortly
    "principal": "principal inertias",
    "cancel": "to cancel it",
    "still rate": "rate of the still part",
    "relative": "relative spin",
    "drag along": "until both turn as one",
    "seized": "if it seizes",
    "bearing force free": "bearing force, craft free",
    "axis moves": "axis moves by",
    "spin to transverse": "inertia, spin to transverse",
    "propellant rough": "propellant, its own mass left out",
    "sideways": "sideways force",
    "shares": "shares of the stress",
    "own": "own weight",
    "pressure": "air",
    "largest": "largest radius",
    "rule": "common rule",
}
_NO_FIGURES = {"question", "says", "assumptions", "motions"}  # words, and motions of a scene


def figures(finding):
    """(group, label, value, unit) of every number of a finding and every short list of them, in words; group: what of the finding it
    belongs to, "" where it is of all of it, and those first; what is null or longer is left out."""
    rows = [
        (group, label, ", ".join(_written(label, value) for value in values), unit)
        for group, label, values, unit in _rows(finding, "")
    ]
    return sorted(rows, key=lambda row: row[0] != "")


def _written(label, value):
    """As the sentences have it: azimuths all the way round."""
    return words.figure(value % 360 if label.endswith("azimuth") else value).replace("-", "−")


def in_group(group, label):
    """A label with its group before it, for where there is no heading over it."""
    return f"{group}: {label}" if group else label


def numbers(finding):
    """The same as (label, number, unit), a row a number, its group before its label."""
    for group, label, values, unit in _rows(finding, ""):
        named = in_group(group, label)
        for number, value in enumerate(values, start=1):
            yield f"{named} {number}" if len(values) > 1 else named, float(value), unit


def _rows(data, group, unit_of_all=""):
    seen = []  # what is the same again is told once: the whole of a craft that turns as one
    for name, value in data.items():
        if name in _NO_FIGURES or value is None or isinstance(value, bool) or value in seen:
            continue
        seen += [value] if isinstance(value, dict) else []
        if isinstance(value, dict):
            label, unit = _label(name)
            yield from _rows(value, in_group(group, label), unit)
        elif isinstance(value, list) and value and isinstance(value[0], dict):
            for number, one in enumerate(value, start=1):
                own = one.get("name") or one.get("material") or f"{_said(name)} {number}"
                yield from _rows(one, in_group(group, own))
        elif _short(value):
            label, unit = _label(name)
            yield group, label, list(value) if isinstance(value, list | tuple) else [value], unit or unit_of_all


def _short(value):
    if isinstance(value, list):
        return 0 < len(value) <= _MOST_IN_A_ROW and all(isinstance(one, (int, float)) for one in value)
    return isinstance(value, (int, float))


def _label(name):
    """What a field's name says, and its unit."""
    parts = name.split("_")
    for count in range(min(3, len(parts) - 1), 0, -1):
        unit = _UNITS.get("_".join(parts[-count:]))
        if unit is not None:
            return _said("_".join(parts[:-count])), unit
    return _said(name), ""


def _said(name):
    words_of_it = name.replace("_", " ")
    return _SAID.get(words_of_it, words_of_it)
