"""Throws that arrive as rows of a table: how each is thrown, how it arrives, what errors cost, what is in its way."""

from ...language import tr, tr_as, written
from ...phrases import in_units

_ERRORS = ("elevation_1_deg_m", "heading_1_deg_m", "speed_1_percent_m")


def rows_of(ways, units="si"):
    """Rows of texts, the first of them the heading."""
    metres, speed = in_units(0.0, "m", units)[1], in_units(0.0, "m/s", units)[1]
    heading = [
        speed,
        tr("heading °"),
        tr("up °"),
        tr("flight s"),
        tr("turns"),
        tr("arrives {unit}", unit=speed),
        tr("misses {unit}", unit=metres),
        tr("1° up {unit}", unit=metres),
        tr("1° aside {unit}", unit=metres),
        tr("1 % fast {unit}", unit=metres),
        tr("blocked by"),
    ]
    return [heading, *(_row(way, units) for way in ways)] if ways else []


def _row(way, units):
    def shown(value, unit, places):
        return written(in_units(value, unit, units)[0], f".{places}f")

    blocked = way["blocked_by"]
    return [
        shown(way["speed_m_s"], "m/s", 3),
        written(way["heading_deg"] if way["heading_deg"] > -179.995 else 180.0, ".2f"),
        written(way["elevation_deg"], ".2f"),
        written(way["flight_s"], ".3f"),
        written(way["turns"], ".3f"),
        shown(way["arrives"]["speed_m_s"], "m/s", 2),
        shown(way["misses_m"], "m", 3),
        *(shown(way["sensitivity"][name], "m", 2) for name in _ERRORS),
        "–" if blocked is None else _kind(blocked["kind"]),
    ]


def _kind(kind):
    """What is in the way, in a word."""
    return {
        "deck": tr_as("in a table", "deck"),
        "floor": tr_as("in a table", "floor"),
        "ramp": tr_as("in a table", "ramp"),
        "table": tr_as("in a table", "table"),
        "wall": tr_as("in a table", "wall"),
        "ceiling": tr_as("in a table", "ceiling"),
        "hub": tr_as("in a table", "hub"),
        "edge": tr_as("in a table", "edge"),
    }[kind]
