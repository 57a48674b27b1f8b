"""Clark & Hardy, Gravity problems in manned space stations (1960): the rate as surveyed in T. W. Hall, Artificial Gravity and the
Architecture of Orbital Habitats, 1st Int. Symp. on Space Tourism (1997), the thresholds as surveys quote them; all from memory.
"""

from .row import Row

ROWS = {
    "HUM-01": Row(
        "max rate (illusion threshold basis)",
        {},
        0.1,
        "rpm",
        0.05,
        "last digit",
        "0.06 rad/s^2 illusion threshold over a 5 rad/s head turn gives 0.115 rpm",
    ),
    "HUM-32": Row("cross-coupled angular acceleration, illusion threshold", {}, 0.06, "rad/s^2", 0.0, "as quoted"),
    "HUM-33": Row("cross-coupled angular acceleration, nausea threshold", {}, 0.6, "rad/s^2", 0.0, "as quoted"),
}
