"""Textbook kinematics of turning the head in a rotating room (Guedry 1974)."""

from .row import Row

ROWS = {
    "HUM-35": Row(
        "cross-coupled angular acceleration for 2 rpm and a 60 deg/s head turn",
        {"rate_rpm": 2.0, "head_rate_rad_s": 1.0471975511965976},
        0.2193,
        "rad/s^2",
        0.0001,
        "exact kinematics, alpha = w_hab * w_head",
    ),
}
