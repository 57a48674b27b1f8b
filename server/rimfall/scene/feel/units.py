"""Figures of people in the units that are shown: SI, or US customary where there is one in use."""

from ...phrases import FOOT_M

_US = {"m": ("ft", 1 / FOOT_M), "m/s": ("ft/s", 1 / FOOT_M), "g/m": ("g/ft", FOOT_M)}


def shown(value, unit, units):
    """A figure in `unit` and its unit as they are shown; units: "si" or "us"."""
    if units != "us" or unit not in _US:
        return value, unit
    name, per = _US[unit]
    return value * per, name
