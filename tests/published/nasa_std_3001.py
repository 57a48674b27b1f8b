"""NASA-STD-3001 Vol. 2, sec. 6.5, acceleration (from memory)."""

from .row import Row

ROWS = {
    "HUM-34": Row(
        "limit on sustained (>0.5 s) cross-coupled angular acceleration of crew",
        {},
        2.0,
        "rad/s^2",
        0.0,
        "as quoted",
        "with a 3 rad/s head turn this is 6.37 rpm, in line with the 6 rpm family of limits",
    ),
}
