"""Kibble & Berkshire, Classical Mechanics, p. 116, eq. (5.23): (1/3) w sqrt(8 h^3/g) sin(colatitude)."""

from .row import Row

ROWS = {
    "TRJ-01": Row(
        "eastward deviation, 100 m drop, latitude 45 deg",
        {"height_m": 100.0, "latitude_deg": 45.0},
        0.016,
        "m",
        0.0006,
        '"about 16 mm"',
    ),
}
