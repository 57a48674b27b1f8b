"""DiZio & Lackner, Sensorimotor aspects of high-speed artificial gravity III, J. Vestib. Res. 12, 291-299 (2002), abstract."""

from .row import Row

ROWS = {
    "HUM-26": Row(
        "upper rate over which pointing error is proportional to Coriolis force",
        {"lower_rate_rpm": 5.0},
        20.0,
        "rpm",
        0.0,
        "as stated",
    ),
}
