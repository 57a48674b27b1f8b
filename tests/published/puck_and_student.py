"""A course problem: a student on a turning turntable catches the own puck after half a turn. The answers are computed from the
printed inputs (the pi in the diameter is lost in the stored text; with 60/pi m the rim speed is 1 m/s)."""

from .row import Row

ROWS = {
    "TRJ-22": Row(
        "catch-your-own-puck: launch speed seen in the rotating frame",
        {"diameter_m": 19.098593171027442, "rate_rpm": 1.0, "catch_after_turns": 0.5},
        1.18545,
        "m/s",
        1e-05,
        "exact: components (-2/pi, -1) m/s",
    ),
    "TRJ-23": Row(
        "same puck, inertial launch speed",
        {"diameter_m": 19.098593171027442, "rate_rpm": 1.0},
        0.63662,
        "m/s",
        1e-05,
        "exact 2/pi",
    ),
}
