"""Water at 20 C and 1 atm: IAPWS R1-76(2014) (surface tension), IAPWS-95 (density), IAPWS R12-08 (viscosity)."""

from .row import Row

ROWS = {
    "LIQ-07": Row("surface tension of water, 20 C", {"T_K": 293.15}, 0.07274, "N/m", 5e-06, "last digit"),
    "LIQ-10": Row(
        "density of water, 20 C, 1 atm",
        {"T_K": 293.15, "p_Pa": 101325.0},
        998.207,
        "kg/m^3",
        0.0005,
        "last digit",
    ),
    "LIQ-11": Row(
        "viscosity of water, 20 C, 1 atm",
        {"T_K": 293.15, "p_Pa": 101325.0},
        0.0010016,
        "Pa s",
        5e-07,
        "last digit",
    ),
}
