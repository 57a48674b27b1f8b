"""Henderson & Holderman, Technology Applications that Support Space Exploration, AIAA 2011-5570 (from memory)."""

from .row import Row

ROWS = {
    "DES-22": Row(
        "ISS demonstration centrifuge, 30 ft outer diameter at 4 rpm",
        {"outer_diameter_m": 9.144, "rate_rpm": 4.0},
        0.08,
        "g0",
        0.005,
        "printed to 0.01 g",
    ),
    "DES-23": Row(
        "ISS demonstration centrifuge, 30 ft outer diameter at 7 rpm",
        {"outer_diameter_m": 9.144, "rate_rpm": 7.0},
        0.25,
        "g0",
        0.005,
        "printed to 0.01 g",
    ),
    "DES-24": Row(
        "ISS demonstration centrifuge, 30 ft outer diameter at 10 rpm",
        {"outer_diameter_m": 9.144, "rate_rpm": 10.0},
        0.51,
        "g0",
        0.005,
        "printed to 0.01 g",
    ),
    "DES-25": Row(
        "ISS demonstration centrifuge, 40 ft outer diameter at 4 rpm",
        {"outer_diameter_m": 12.192, "rate_rpm": 4.0},
        0.11,
        "g0",
        0.005,
        "printed to 0.01 g",
    ),
    "DES-27": Row(
        "ISS demonstration centrifuge, 40 ft outer diameter at 9 rpm",
        {"outer_diameter_m": 12.192, "rate_rpm": 9.0},
        0.55,
        "g0",
        0.005,
        "printed to 0.01 g",
    ),
}

# These do not agree with their source, or it with itself: no test may pass or fail on them.
WARNINGS = {
    "DES-28": Row(
        "ISS demonstration centrifuge, 40 ft outer diameter at 10 rpm",
        {"outer_diameter_m": 12.192, "rate_rpm": 10.0},
        0.69,
        "g0",
        0.005,
        "printed to 0.01 g",
        "recalled 0.69, computed 0.68: recall or source rounding; do not test",
    ),
}
