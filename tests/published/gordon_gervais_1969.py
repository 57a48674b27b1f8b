"""Gordon & Gervais, Critical engineering problems of space stations (1969).

As surveyed in T. W. Hall, Artificial Gravity and the Architecture of Orbital Habitats, 1st Int. Symp. on Space Tourism (1997);
from memory.
"""

from .row import Row

ROWS = {
    "HUM-09": Row("Gordon & Gervais: min level", {}, 0.2, "g0", 0.0, "as quoted"),
    "HUM-10": Row("Gordon & Gervais: max level", {}, 1.0, "g0", 0.0, "as quoted"),
    "HUM-11": Row("Gordon & Gervais: max rate", {}, 6.0, "rpm", 0.0, "as quoted"),
    "HUM-12": Row("Gordon & Gervais: min rim speed", {}, 7.0, "m/s", 0.0, "as quoted"),
}
