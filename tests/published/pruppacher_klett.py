"""Pruppacher & Klett, Microphysics of Clouds and Precipitation, table 10.1: rigid spheres, tabulated."""

from .row import Row

ROWS = {
    "DRG-10": Row(
        "sphere drag coefficient, tabulated rigid sphere",
        {"Re": 10.0},
        4.29,
        "1",
        0.1716,
        "spread between data and curve fits near 4 %",
    ),
    "DRG-11": Row(
        "sphere drag coefficient, tabulated rigid sphere",
        {"Re": 30.0},
        2.11,
        "1",
        0.0844,
        "spread between data and curve fits near 4 %",
    ),
    "DRG-12": Row(
        "sphere drag coefficient, tabulated rigid sphere",
        {"Re": 57.0},
        1.51,
        "1",
        0.0604,
        "spread between data and curve fits near 4 %",
    ),
    "DRG-14": Row(
        "sphere drag coefficient, tabulated rigid sphere",
        {"Re": 300.0},
        0.63,
        "1",
        0.0252,
        "spread between data and curve fits near 4 %",
    ),
}
