"""Taylor, Classical Mechanics (2005): section 9.8, and problem 9.20 with eq. (9.72) (from memory), evaluated:
x = (x0 + vx0 t) cos wt + (vy0 + w x0) t sin wt, y = -(x0 + vx0 t) sin wt + (vy0 + w x0) t cos wt."""

from .row import Row

ROWS = {
    "TRJ-04": Row(
        "eastward deviation, 100 m drop, equator",
        {"height_m": 100.0, "latitude_deg": 0.0},
        0.022,
        "m",
        0.0005,
        "printed 2.2 cm",
    ),
    "TRJ-16": Row(
        "free puck on a turntable, x in the rotating frame",
        {"omega_rad_s": 1.0, "x0_m": 1.0, "vx0_m_s": 0.0, "vy0_m_s": 0.0, "time_s": 1.0},
        1.38177329,
        "m",
        1e-07,
        "exact solution",
    ),
    "TRJ-17": Row(
        "free puck on a turntable, y in the rotating frame",
        {"omega_rad_s": 1.0, "x0_m": 1.0, "vx0_m_s": 0.0, "vy0_m_s": 0.0, "time_s": 1.0},
        -0.30116868,
        "m",
        1e-07,
        "exact solution",
    ),
    "TRJ-18": Row(
        "free puck on a turntable, x in the rotating frame",
        {"omega_rad_s": 1.0, "x0_m": 1.0, "vx0_m_s": 0.0, "vy0_m_s": 0.0, "time_s": 5.0},
        -4.51095919,
        "m",
        1e-07,
        "exact solution",
    ),
    "TRJ-19": Row(
        "free puck on a turntable, y in the rotating frame",
        {"omega_rad_s": 1.0, "x0_m": 1.0, "vx0_m_s": 0.0, "vy0_m_s": 0.0, "time_s": 5.0},
        2.3772352,
        "m",
        1e-07,
        "exact solution",
    ),
}
