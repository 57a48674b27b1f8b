"""ISO 2533:1975 and U.S. Standard Atmosphere 1976: air at sea level."""

from .row import Row

ROWS = {
    "CON-05": Row("ISA sea-level density", {"T_K": 288.15, "p_Pa": 101325.0}, 1.225, "kg/m^3", 5e-05, "last digit"),
    "CON-06": Row("ISA sea-level dynamic viscosity", {"T_K": 288.15}, 1.7894e-05, "Pa s", 5e-10, "last digit"),
    "CON-07": Row("ISA sea-level speed of sound", {"T_K": 288.15}, 340.294, "m/s", 0.0005, "last digit"),
}
