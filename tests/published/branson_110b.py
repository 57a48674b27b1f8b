"""Branson, UCSD Physics 110B notes."""

from .row import Row

ROWS = {
    "TRJ-03": Row(
        "eastward deviation, 100 m drop, latitude 32 deg",
        {"height_m": 100.0, "latitude_deg": 32.0},
        0.019,
        "m",
        0.0005,
        '"about 1.9 cm"',
    ),
}
