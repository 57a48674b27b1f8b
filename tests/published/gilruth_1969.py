"""Gilruth, Manned space stations - gateway to our future in space (1969).

As surveyed in T. W. Hall, Artificial Gravity and the Architecture of Orbital Habitats, 1st Int. Symp. on Space Tourism (1997);
from memory.
"""

from .row import Row

ROWS = {
    "HUM-06": Row("Gilruth: min level", {}, 0.3, "g0", 0.0, "as quoted"),
    "HUM-07": Row("Gilruth: max level", {}, 0.9, "g0", 0.0, "as quoted"),
    "HUM-08": Row("Gilruth: max rate", {}, 6.0, "rpm", 0.0, "as quoted"),
    "HUM-21": Row(
        "Gilruth: optimum rate",
        {},
        2.0,
        "rpm",
        0.0,
        "as quoted",
        "6 rpm is his outer limit, 2 rpm his optimum; recalled, check before use",
    ),
}
