"""Southampton questions in mechanics (standard problems; e.g. Marion & Thornton, ch. 10): (4/3) w cos(lat) sqrt(8 h^3/g) and
(4 V^3/g^2) w sin(lat) sin^2(a) cos(a). The stored statement of the second drops a square on g; its last line has it."""

from .row import Row

ROWS = {
    "TRJ-09": Row(
        "westward landing offset of a ball thrown straight up to 100 m, latitude 45 deg",
        {"height_m": 100.0, "latitude_deg": 45.0},
        0.062096,
        "m",
        2e-06,
        "exact to first order in w: (4/3) w cos(lat) sqrt(8h^3/g)",
        "direct integration of the Coriolis term gives 0.0620958 m",
    ),
    "TRJ-11": Row(
        "southward deflection of a shot fired due east",
        {"speed_m_s": 100.0, "elevation_deg": 45.0, "latitude_deg": 45.0},
        0.75825,
        "m",
        0.0015,
        "first order in w; second-order terms 0.13 %",
        "stored statement drops the square on g; its own last line has g^2. Recomputed value is the full integration",
    ),
}
