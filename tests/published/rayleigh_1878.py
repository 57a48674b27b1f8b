"""Rayleigh, On the instability of jets (1878), as Lefebvre, Atomization and Sprays, gives it (from memory)."""

from .row import Row

ROWS = {
    "LIQ-03": Row("fastest-growing wavelength / jet diameter", {}, 4.508, "1", 0.002, "last digit"),
    "LIQ-05": Row("drop diameter / jet diameter at that wavelength", {}, 1.89, "1", 0.005, "last digit"),
}
