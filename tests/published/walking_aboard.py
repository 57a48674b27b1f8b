"""Kinematics of people aboard, worked out from first principles (the acceleration of a point that goes round: any mechanics text)."""

from .row import Row

ROWS = {
    "HUM-36": Row(
        "Coriolis to apparent-gravity ratio for walking at 1 m/s, 10 m/s rim speed",
        {"walk_speed_m_s": 1.0, "rim_speed_m_s": 10.0},
        0.2,
        "1",
        1e-12,
        "exact, 2 v / v_rim (radial motion)",
        "guidance of about 0.25 at most is attributed to Stone (1973)",
    ),
    "HUM-37": Row(
        "head-to-foot change of level, 1.8 m standing at R = 100 m",
        {"height_m": 1.8, "radius_m": 100.0},
        0.018,
        "1",
        1e-12,
        "exact h/R",
    ),
    "TRJ-39": Row(
        "apparent level walking spinward at 1.5 m/s, R = 100 m, 1 g0 at rest",
        {"radius_m": 100.0, "walk_speed_m_s": 1.5},
        1.098093,
        "g0",
        1e-06,
        "exact (wR+v)^2/R",
    ),
    "TRJ-40": Row(
        "apparent level walking antispinward at 1.5 m/s",
        {"radius_m": 100.0, "walk_speed_m_s": -1.5},
        0.906495,
        "g0",
        1e-06,
        "exact (wR+v)^2/R",
    ),
}
