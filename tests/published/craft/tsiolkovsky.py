"""Tsiolkovsky's rocket equation, from memory."""

from ..row import Row

ROWS = {
    "STR-18": Row(
        "rocket equation: mass ratio for 1 km/s at 450 s",
        {"delta_v_m_s": 1000.0, "Isp_s": 450.0},
        1.25433,
        "1",
        1e-05,
        "exact",
    ),
}
