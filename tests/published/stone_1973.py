"""Stone, An overview of artificial gravity, NASA SP-314 (1973).

As surveyed in T. W. Hall, Artificial Gravity and the Architecture of Orbital Habitats, 1st Int. Symp. on Space Tourism (1997);
from memory.
"""

from .row import Row

ROWS = {
    "HUM-13": Row("Stone: min level", {}, 0.2, "g0", 0.0, "as quoted"),
    "HUM-14": Row("Stone: max level", {}, 1.0, "g0", 0.0, "as quoted"),
    "HUM-15": Row("Stone: max rate", {}, 6.0, "rpm", 0.0, "as quoted"),
    "HUM-16": Row("Stone: min rim speed", {}, 10.0, "m/s", 0.0, "as quoted"),
}
