"""Textbooks: sqrt(sigma/(rho g)) (from memory)."""

from .row import Row

ROWS = {
    "LIQ-20": Row("capillary length of water at 1 g0, 20 C", {}, 0.00273, "m", 5e-06, "last digit"),
}
