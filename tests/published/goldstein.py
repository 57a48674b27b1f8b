"""Goldstein, Classical Mechanics, problem 4-21."""

from .row import Row

ROWS = {
    "TRJ-10": Row(
        "ratio of thrown-up to dropped deviation, opposite sense",
        {},
        -4.0,
        "1",
        0.001,
        "exact to first order",
    ),
}
