"""MIL-HDBK-5 / MMPDS, typical table values; from memory."""

from ..row import Row

ROWS = {
    "STR-11": Row(
        "handbook specific strength, 6061-T6 aluminium, ultimate",
        {"strength_MPa": 290.0, "rho_kg_m3": 2710.0},
        107.0,
        "kN m/kg",
        5.0,
        "product-form dependent",
    ),
    "STR-12": Row(
        "handbook specific strength, 7075-T6 aluminium, ultimate",
        {"strength_MPa": 538.0, "rho_kg_m3": 2800.0},
        192.0,
        "kN m/kg",
        5.0,
        "product-form dependent",
    ),
    "STR-13": Row(
        "handbook specific strength, Ti-6Al-4V annealed, ultimate",
        {"strength_MPa": 896.0, "rho_kg_m3": 4430.0},
        202.0,
        "kN m/kg",
        5.0,
        "product-form dependent",
    ),
    "STR-14": Row(
        "handbook specific strength, 4340 steel 260 ksi, ultimate",
        {"strength_MPa": 1792.0, "rho_kg_m3": 7830.0},
        229.0,
        "kN m/kg",
        5.0,
        "product-form dependent",
    ),
}
