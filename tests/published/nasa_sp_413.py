"""Johnson & Holbrow (eds), Space Settlements: A Design Study, NASA SP-413 (1977), overview and chapters 3 to 5 (from memory)."""

from .row import Row

ROWS = {
    "DES-01": Row(
        "torus of the 1975 study, level at outermost floor",
        {"radius_m": 895.0, "period_s": 60.0},
        1.0,
        "g0",
        0.006,
        "1790 m outer diameter rounded to 10 m",
        "a secondary page gives 1.8 km, one turn a minute, 1.0 g",
    ),
    "DES-02": Row(
        "same torus, level at tube centre line (830 m)",
        {"radius_m": 830.0, "period_s": 60.0},
        0.93,
        "g0",
        0.005,
        "last digit",
        "study quotes 0.9 to 1.0 g for the living area",
    ),
    "HUM-22": Row(
        "general-population rate limit adopted for settlement design",
        {},
        1.0,
        "rpm",
        0.0,
        "as quoted",
        "same table gives 0.95 g with a spread that is printed inconsistently (text: 0.9 to 1.0 g)",
    ),
}
