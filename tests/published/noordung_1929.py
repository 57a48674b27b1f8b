"""Noordung (Potocnik), Das Problem der Befahrung des Weltraums (1929): a 30 m wheel, one turn in 8 s (from memory)."""

from .row import Row

ROWS = {
    "DES-11": Row("Noordung wheel, level at rim", {"radius_m": 15.0, "period_s": 8.0}, 0.94, "g0", 0.005, "last digit"),
}
