"""White, Fluid Mechanics (McGraw-Hill), hydrostatics in rigid-body motion: the worked examples of a cup of coffee, 6 cm wide, 10 cm
deep, filled to 7 cm, on a tray in a car, and on a turntable; g 9.81 m/s2 (from memory)."""

from .row import Row

CUP = {"diameter_m": 0.06, "depth_m": 0.10, "filled_m": 0.07, "g_m_s2": 9.81}
ROWS = {
    "LIQ-31": Row(
        "tilt of the surface at 7 m/s2 along the tray", CUP | {"a_m_s2": 7.0}, 35.5, "deg", 0.05, "last digit"
    ),
    "LIQ-32": Row("its rise at the cup's wall", CUP | {"a_m_s2": 7.0}, 0.0214, "m", 0.00005, "last digit"),
    "LIQ-33": Row("spin at which it reaches the rim", CUP, 36.2, "rad/s", 0.05, "last digit"),
}
