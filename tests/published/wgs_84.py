"""WGS 84: nominal angular velocity of the Earth relative to the stars; the sidereal day that follows is tabulated in astronomy
handbooks (from memory)."""

from .row import Row

ROWS = {
    "CON-03": Row("Earth rotation rate relative to the stars (WGS 84)", {}, 7.292115e-05, "rad/s", 5e-12, "last digit"),
    "CON-04": Row("sidereal rotation period of Earth", {"omega_rad_s": 7.292115e-05}, 86164.1, "s", 0.02, "last digit"),
}
