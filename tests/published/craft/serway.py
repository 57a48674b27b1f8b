"""R. A. Serway, Physics for Scientists and Engineers, two astronauts on a rope; worked solution."""

from ..row import Row

ROWS = {
    "MEC-07": Row(
        "work done to reel two tethered astronauts from 10 m apart to 5 m apart",
        {"mass_each_kg": 75.0, "separation_before_m": 10.0, "separation_after_m": 5.0, "speed_before_m_s": 5.0},
        5625.0,
        "J",
        0.5,
        "exact arithmetic",
    ),
}
