"""Hill & Schnitzer, Rotating manned space stations, Astronautics 7(9) (1962).

As surveyed in T. W. Hall, Artificial Gravity and the Architecture of Orbital Habitats, 1st Int. Symp. on Space Tourism (1997);
from memory.
"""

from .row import Row

ROWS = {
    "HUM-02": Row("Hill & Schnitzer: min level", {}, 0.035, "g0", 0.0, "as quoted"),
    "HUM-03": Row("Hill & Schnitzer: max level", {}, 1.0, "g0", 0.0, "as quoted"),
    "HUM-04": Row("Hill & Schnitzer: max rate", {}, 4.0, "rpm", 0.0, "as quoted"),
    "HUM-05": Row("Hill & Schnitzer: min rim speed", {}, 6.0, "m/s", 0.0, "as quoted"),
}
