"""Exercises of the theory of machines: MEC-12 and MEC-15 Khurmi & Gupta (the second, Example 21.1, from memory), MEC-18 Anna
University, Example 6.14 (2009), whose own answer is a picture."""

from ..row import Row

ROWS = {
    "MEC-12": Row(
        "gyroscopic couple on a rotor turned at 0.1 rad/s (slewing a spinning joint)",
        {"mass_kg": 3500.0, "radius_of_gyration_m": 0.45, "rate_rpm": 3000.0, "precession_rad_s": 0.1},
        22.27,
        "kN m",
        0.005,
        "last digit",
    ),
    "MEC-15": Row(
        "balance mass at 0.2 m for four masses in one plane",
        {
            "masses_kg": [200, 300, 240, 260],
            "radii_m": [0.2, 0.15, 0.25, 0.3],
            "angles_deg": [0, 45, 120, 255],
            "balance_radius_m": 0.2,
        },
        116.0,
        "kg",
        0.5,
        "last digit",
    ),
    "MEC-18": Row(
        "friction power of a flat foot-step bearing, uniform pressure",
        {"load_N": 15000.0, "shaft_radius_m": 0.05, "friction": 0.05, "rate_rpm": 150.0},
        392.7,
        "W",
        0.05,
        "evaluation of (2/3) mu W R w",
    ),
}
