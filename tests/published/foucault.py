"""Foucault's pendulum at Paris: an Irish Times column on science; standard textbooks (from memory)."""

from .row import Row

ROWS = {
    "TRJ-13": Row(
        "Foucault pendulum turn in 24 h at Paris",
        {"latitude_deg": 48.85},
        272.0,
        "deg",
        0.6,
        "printed to 1 deg",
        "271.06 deg per sidereal day",
    ),
    "TRJ-14": Row("Foucault pendulum full turn at Paris", {"latitude_deg": 48.85}, 31.8, "h", 0.05, "last digit"),
}
