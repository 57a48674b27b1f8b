"""An encyclopedia's table of specific strength, which cites suppliers (secondary)."""

from ..row import Row

ROWS = {
    "STR-05": Row(
        "specific strength, strong steel",
        {"strength_MPa": 2000.0, "rho_kg_m3": 7860.0},
        254.0,
        "kN m/kg",
        1.0,
        "last digit",
    ),
    "STR-06": Row(
        "specific strength, strong aluminium",
        {"strength_MPa": 600.0, "rho_kg_m3": 2700.0},
        222.0,
        "kN m/kg",
        1.0,
        "last digit",
    ),
    "STR-07": Row(
        "specific strength, strong titanium",
        {"strength_MPa": 1300.0, "rho_kg_m3": 4510.0},
        288.0,
        "kN m/kg",
        1.0,
        "last digit",
    ),
    "STR-08": Row(
        "specific strength, strong carbon fibre",
        {"strength_MPa": 4300.0, "rho_kg_m3": 1750.0},
        2457.0,
        "kN m/kg",
        1.0,
        "last digit",
    ),
    "STR-09": Row(
        "specific strength, strong aramid",
        {"strength_MPa": 3620.0, "rho_kg_m3": 1440.0},
        2514.0,
        "kN m/kg",
        1.0,
        "last digit",
    ),
    "STR-10": Row(
        "breaking length of that steel (= largest unloaded ring at 1 g0)",
        {"strength_MPa": 2000.0, "rho_kg_m3": 7860.0},
        25.93,
        "km",
        0.03,
        "last digit",
    ),
}
