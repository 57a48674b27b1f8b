"""Gemini XI mission accounts: 38, then 55 degrees a minute on a 30 m tether. The level of 0.00015 g is of popular accounts
(from memory)."""

from .row import Row

ROWS = {
    "DES-29": Row(
        "tethered Gemini XI / Agena: final rate in rpm",
        {"rate_deg_per_min": 55.0},
        0.153,
        "rpm",
        0.0015,
        "55 deg/min read to 1 deg/min",
    ),
    "DES-30": Row(
        "Gemini XI level often quoted as 0.00015 g; radius that this implies at 38 deg/min",
        {"rate_deg_per_min": 38.0, "level_g0": 0.00015},
        12.0,
        "m",
        0.5,
        "0.00015 printed to 2 digits",
        "consistent with the first rate (38 deg/min) and about 12 m; at 55 deg/min and about 17 m arm the level is 4.3e-4 g0. Not a pass/fail check",
    ),
}
