"""Johnson & Holbrow (eds), Space Settlements: A Design Study, NASA SP-413 (1977); from memory."""

from ..row import Row

ROWS = {
    "MEC-20": Row(
        "speed of the turning torus past its fixed shield",
        {"radius_m": 830.0, "rate_rpm": 1.0},
        87.0,
        "m/s",
        0.5,
        "last digit",
    ),
}
