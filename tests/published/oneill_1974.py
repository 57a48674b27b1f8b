"""O'Neill, The Colonization of Space, Physics Today 27(9), 32-40 (1974), table of colony models (from memory)."""

from .row import Row

ROWS = {
    "DES-04": Row(
        "cylinder model 2 rotation period for 1 g0",
        {"radius_m": 320.0, "length_km": 3.2},
        36.0,
        "s",
        0.6,
        "period printed to 1 s, g taken as 9.8",
    ),
    "DES-05": Row(
        "cylinder model 3 rotation period for 1 g0",
        {"radius_m": 1000.0, "length_km": 10.0},
        63.0,
        "s",
        0.6,
        "period printed to 1 s, g taken as 9.8",
    ),
}

# These do not agree with their source, or it with itself: no test may pass or fail on them.
WARNINGS = {
    "DES-03": Row(
        "cylinder model 1 rotation period for 1 g0",
        {"radius_m": 100.0, "length_km": 1.0},
        21.0,
        "s",
        0.6,
        "period printed to 1 s, g taken as 9.8",
        "printed 21 s corresponds to 0.913 g0 at 100 m; 1 g0 needs 20.06 s",
    ),
}
