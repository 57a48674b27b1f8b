"""MIT course 16.86, A Systems Design for a Prototype Space Colony (1976), pages 6.32, 6.35 and 6.47."""

from .row import Row

ROWS = {
    "DES-12": Row(
        "capped cylinder prototype, low level at 2.2 rpm",
        {"radius_m": 100.0, "rate_rpm": 2.2},
        0.5,
        "g0",
        0.05,
        "level printed to one digit",
        "exact 0.5 g0 would need 2.115 rpm",
    ),
    "DES-14": Row("rim speed at 2 rpm", {"radius_m": 100.0, "rate_rpm": 2.0}, 20.9, "m/s", 0.05, "last digit"),
    "DES-15": Row("rim speed at 3 rpm", {"radius_m": 100.0, "rate_rpm": 3.0}, 31.4, "m/s", 0.05, "last digit"),
    "DES-16": Row(
        "time for a 150 m half-length body turning once a sidereal year to sweep 5 m at its tip",
        {"rate_rad_s": 1.99e-07, "half_length_m": 150.0, "gap_m": 5.0},
        46.5,
        "h",
        0.15,
        "rate printed to 3 digits",
    ),
}

# These do not agree with their source, or it with itself: no test may pass or fail on them.
WARNINGS = {
    "ATM-05": Row(
        "density of half oxygen, half nitrogen at 40.53 kPa, 295 K",
        {"p_Pa": 40530.0, "T_K": 295.0},
        0.491,
        "kg/m^3",
        0.0005,
        "last digit",
        "ideal gas gives 0.496 (by pressure) or 0.494 (by mass): printed value is 1 % low. Do not test",
    ),
}
