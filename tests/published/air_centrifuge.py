"""No source: the law of the gas centrifuge, worked out for air with 1 g0 at the floor."""

from .row import Row

ROWS = {
    "ATM-03": Row(
        "axis / floor pressure of air at 293.15 K with 1 g0 at the floor",
        {"radius_m": 895.0, "molar_mass_kg_mol": 0.0289652, "T_K": 293.15},
        0.94919,
        "1",
        1e-05,
        "exact exp(-M g R/(2 R T))",
    ),
}
