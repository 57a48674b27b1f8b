"""Graybiel, Clark & Zarriello (1960) and later Graybiel reviews (from memory)."""

from .row import Row

ROWS = {
    "HUM-23": Row(
        "slow-rotation-room rate with no symptoms even in susceptible subjects", {}, 1.0, "rpm", 0.0, "as quoted"
    ),
}
