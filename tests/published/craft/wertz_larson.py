"""Wertz & Larson, Space Mission Analysis and Design, 3rd edition, attitude-control sizing; from memory."""

from ..row import Row

ROWS = {
    "MEC-14": Row(
        "constant torque for a rest-to-rest turn of 30 deg in 10 min, half speeding up, half slowing",
        {"I_kg_m2": 90.0, "angle_deg": 30.0, "time_s": 600.0},
        0.00052,
        "N m",
        5e-06,
        "last digit",
    ),
}
