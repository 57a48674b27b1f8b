"""Lackner & DiZio, Adaptation in a rotating artificial gravity environment, Brain Res. Rev. 28, 194-202 (1998), abstract.

The abstract names the earlier view: 3-4 rpm.
"""

from .row import Row

ROWS = {
    "HUM-25": Row("rate at which reaching errors adapt in 10-20 movements", {}, 10.0, "rpm", 0.0, "as stated"),
}
