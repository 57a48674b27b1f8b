"""A maker's fact sheet on the control-moment gyros of a space station: 6600 rpm, 3600 ft lb s (4880 N m s)."""

from ..row import Row

ROWS = {
    "MEC-13": Row(
        "rotor inertia of a station control-moment gyro from its momentum and speed",
        {"H_N_m_s": 4880.0, "rate_rpm": 6600.0},
        7.06,
        "kg m^2",
        0.01,
        "momentum printed to 3 digits",
    ),
}
