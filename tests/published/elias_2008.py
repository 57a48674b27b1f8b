"""Elias, Jarchow & Young, Incremental adaptation to yaw head turns during 30 RPM centrifugation, Exp. Brain Res. (2008), abstract."""

from .row import Row

ROWS = {
    "HUM-27": Row(
        "rate reached in a 3-day incremental head-turn protocol",
        {"day1_rpm": 14.0, "day2_rpm": 23.0, "head_movements_per_day": 42},
        30.0,
        "rpm",
        0.0,
        "as stated",
    ),
}
