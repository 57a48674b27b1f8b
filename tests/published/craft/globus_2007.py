"""Globus et al., The Kalpana One Orbital Space Settlement Revised (2007): a drum of 250 m radius and 325 m length; the ratio from memory."""

from ..row import Row

ROWS = {
    "RIG-16": Row(
        "spin / transverse inertia of a uniform thin drum with flat ends, L = 1.3 R",
        {"length_over_radius": 1.3},
        1.2,
        "1",
        0.006,
        "last digit",
    ),
}
