"""Lapple & Shepherd (1940), the values Morsi & Alexander use, J. Fluid Mech. 55, 193 (1972), table 1 (from memory). Other fits
differ by up to 5 %."""

from .row import Row

ROWS = {
    "DRG-15": Row("sphere drag coefficient, standard curve", {"Re": 1.0}, 26.5, "1", 0.53, "printed to 2-3 digits"),
    "DRG-16": Row(
        "sphere drag coefficient, standard curve",
        {"Re": 10.0},
        4.1,
        "1",
        0.08199999999999999,
        "printed to 2-3 digits",
    ),
    "DRG-17": Row(
        "sphere drag coefficient, standard curve",
        {"Re": 1000.0},
        0.46,
        "1",
        0.0092,
        "printed to 2-3 digits",
    ),
    "DRG-18": Row(
        "sphere drag coefficient, standard curve",
        {"Re": 10000.0},
        0.405,
        "1",
        0.008100000000000001,
        "printed to 2-3 digits",
    ),
}
