"""The 250 ft wheel of 1952. von Braun in Ryan (ed.), Across the Space Frontier (1952), as summarised by a book review; the same,
Crossing the Last Frontier, Collier's (22 March 1952) (from memory); and a press article of 2017 on it (secondary)."""

from .row import Row

ROWS = {
    "DES-08": Row(
        "250 ft wheel turning once in 22 s, level at rim",
        {"radius_m": 38.1, "period_s": 22.0},
        0.3333333333333333,
        "g0",
        0.02,
        '"one third" in words; floor lies inside the 125 ft outer radius',
    ),
    "DES-09": Row(
        "same wheel, period for a full g0",
        {"radius_m": 38.1},
        12.3,
        "s",
        0.1,
        "12.3 s printed; exact radius of the floor not stated",
    ),
    "DES-10": Row(
        "same wheel as quoted elsewhere: 76 m, 3 rpm, level at rim",
        {"radius_m": 38.0, "rate_rpm": 3.0},
        0.38,
        "g0",
        0.005,
        "last digit",
        "3 rpm is 20 s, not the 22 s of the original; do not mix the two",
    ),
}
