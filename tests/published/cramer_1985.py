"""Cramer, Physiological considerations of artificial gravity (1985).

As surveyed in T. W. Hall, Artificial Gravity and the Architecture of Orbital Habitats, 1st Int. Symp. on Space Tourism (1997);
from memory.
"""

from .row import Row

ROWS = {
    "HUM-17": Row("Cramer: min level", {}, 0.1, "g0", 0.0, "as quoted"),
    "HUM-18": Row("Cramer: max level", {}, 1.0, "g0", 0.0, "as quoted"),
    "HUM-19": Row("Cramer: max rate", {}, 3.0, "rpm", 0.0, "as quoted"),
    "HUM-20": Row("Cramer: min rim speed", {}, 7.0, "m/s", 0.0, "as quoted"),
}
