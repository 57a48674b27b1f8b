"""Throws that arrive as rows of a table: how each is thrown, how it arrives, what errors cost, what is in its way."""

from ...phrases import in_units

_ERRORS = ("elevation_1_deg_m", "heading_1_deg_m", "speed_1_percent_m")


def rows_of(ways, units="si"):
    """Rows of texts, the first of them the heading."""
    metres, speed = in_units(0.0, "m", units)[1], in_units(0.0, "m/s", units)[1]
    heading = [speed, "heading °", "up °", "flight s", "turns", f"arrives {speed}", f"misses {metres}"]
    heading += [f"1° up {metres}", f"1° aside {metres}", f"1 % fast {metres}", "blocked by"]
    return [heading, *(_row(way, units) for way in ways)] if ways else []


def _row(way, units):
    def shown(value, unit, places):
        return f"{in_units(value, unit, units)[0]:.{places}f}"

    blocked = way["blocked_by"]
    return [
        shown(way["speed_m_s"], "m/s", 3),
        f"{way['heading_deg']:.2f}".replace("-180.00", "180.00"),
        f"{way['elevation_deg']:.2f}",
        f"{way['flight_s']:.3f}",
        f"{way['turns']:.3f}",
        shown(way["arrives"]["speed_m_s"], "m/s", 2),
        shown(way["misses_m"], "m", 3),
        *(shown(way["sensitivity"][name], "m", 2) for name in _ERRORS),
        "–" if blocked is None else blocked["kind"],
    ]
