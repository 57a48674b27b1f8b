"""W. T. Thomson; P. W. Likins: the flat spin of a uniform rod of the first US satellite's size, by momentum alone."""

from ..row import Row

ROWS = {
    "RIG-23": Row(
        "final / initial spin of a long rod satellite after dissipation (I_min/I_max), 2.03 m x 0.165 m uniform cylinder",
        {"length_m": 2.03, "diameter_m": 0.165},
        0.00986,
        "1",
        1e-05,
        "exact for a uniform cylinder",
    ),
}
