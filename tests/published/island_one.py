"""O'Neill and the summer studies of 1975 and 1976, as summarised by an encyclopedia (secondary): the Island One sphere."""

from .row import Row

ROWS = {
    "DES-07": Row(
        "Island One sphere, equatorial level",
        {"diameter_m": 500.0, "rate_rpm": 1.9},
        1.0,
        "g0",
        0.03,
        "rate printed to 0.1 rpm (2.6 % each way in a = w^2 R)",
    ),
}
