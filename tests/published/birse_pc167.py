"""Birse, University of Manchester PC167, sheet 2, question 4."""

from .row import Row

ROWS = {
    "TRJ-02": Row(
        "same case, other lecturer",
        {"height_m": 100.0, "latitude_deg": 45.0},
        0.015,
        "m",
        0.001,
        '"about 1.5 cm" (1.55 truncated)',
    ),
}
