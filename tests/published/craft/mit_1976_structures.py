"""MIT course 16.86, A Systems Design for a Prototype Space Colony (1976), page 7.25."""

from ..row import Row

ROWS = {
    "STR-01": Row(
        "hoop stress in a 100 m hull at 1 g: thickness-independent part",
        {"radius_m": 100.0, "rho_hull_kg_m3": 7870.0, "bulkhead_equiv_kg_m3": 2158.0, "g_m_s2": 9.807},
        9834000.0,
        "Pa",
        1000.0,
        "last digit",
    ),
    "STR-02": Row(
        "same: part inversely proportional to thickness (per metre)",
        {"areal_load_kg_m2": 308.9},
        302900.0,
        "N/m",
        100.0,
        "last digit",
    ),
    "STR-03": Row(
        "hoop stress from own weight only, rho g R",
        {"rho_kg_m3": 7870.0, "g_m_s2": 9.807, "radius_m": 100.0},
        7718000.0,
        "Pa",
        1000.0,
        "exact rho w^2 R^2",
    ),
}
