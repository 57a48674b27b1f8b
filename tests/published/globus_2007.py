"""Globus, Arora, Bajoria & Straut, The Kalpana One Orbital Space Settlement Revised, AIAA Space (2007). The level is computed
from the printed radius and rate."""

from .row import Row

ROWS = {
    "DES-17": Row(
        "revised 3000-person cylinder, level at hull at 2 rpm",
        {"radius_m": 250.0, "rate_rpm": 2.0},
        1.118,
        "g0",
        0.001,
        "computed from printed radius and rate",
        "abstract calls 250 m the minimum for 1 g at 2 rpm; the true minimum is 223.6 m, and 250 m gives 1 g0 at 1.891 rpm",
    ),
}
