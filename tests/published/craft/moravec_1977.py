"""H. Moravec, A Non-Synchronous Orbital Skyhook (1977), as quoted by K. Sorensen (2010)."""

from ..row import Row

ROWS = {
    "STR-15": Row(
        "tapered spinning tether, mass / tip mass at v_tip = 1.486 v_c",
        {"velocity_ratio": 1.486},
        23.11,
        "1",
        0.01,
        "evaluation of the formula",
    ),
    "STR-17": Row("root / tip area at v_tip = v_c, exp(x^2)", {"velocity_ratio": 1.0}, 2.71828, "1", 1e-05, "exact"),
}
