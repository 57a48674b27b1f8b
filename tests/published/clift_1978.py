"""Clift, Grace & Weber, Bubbles, Drops and Particles (1978), table 5.2, with the worked value at Re = 200 of open library
documentation. The whole printed curve is here too, to be compared with and flown on by the tests."""

import math

from .row import Row

ROWS = {
    "DRG-01": Row(
        "sphere drag coefficient at Re = 200, Clift, Grace & Weber (1978) piecewise curve",
        {"Re": 200.0},
        0.7756342422,
        "1",
        1e-09,
        "worked value of the published correlation",
    ),
}

LEAST_RE = 0.01
JOINTS = (20.0, 260.0, 1500.0, 1.2e4, 4.4e4)
GREATEST_RE = 10**5.25


def printed_cd(re):
    """Drag coefficient of a sphere at one Reynolds number, piece by piece as the table prints it (w = log10 Re)."""
    w = math.log10(re)
    if re <= LEAST_RE:
        return 24 / re + 9 / 2
    if re <= 20:
        return 24 / re * (1 + 0.1315 * re ** (0.82 - 0.05 * w))
    if re <= 260:
        return 24 / re * (1 + 0.1935 * re**0.6305)
    if re <= 1500:
        return 10 ** (1.6435 - 1.1242 * w + 0.1558 * w**2)
    if re <= 1.2e4:
        return 10 ** (-2.4571 + 2.5558 * w - 0.9295 * w**2 + 0.1049 * w**3)
    if re <= 4.4e4:
        return 10 ** (-1.9181 + 0.6370 * w - 0.0636 * w**2)
    return 10 ** (-4.3390 + 1.5809 * w - 0.1546 * w**2)
