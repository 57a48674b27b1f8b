"""Fox & McDonald, Introduction to Fluid Mechanics, problem 3.124 (from memory)."""

from .row import Row

ROWS = {
    "ATM-02": Row(
        "wall / axis pressure of UF6, 950 ft/s, 620 F",
        {"molar_mass_kg_mol": 0.352, "wall_speed_m_s": 289.56, "T_K": 599.8166666666667},
        19.2,
        "1",
        0.15,
        "answer recalled as 19.2",
        "computed 19.28",
    ),
}
