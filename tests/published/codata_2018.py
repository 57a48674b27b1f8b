"""CODATA 2018 and 2022 recommended values: the molar gas constant, an exact product of SI constants."""

from .row import Row

ROWS = {
    "CON-02": Row(
        "molar gas constant",
        {},
        8.314462618,
        "J/(mol K)",
        1e-09,
        "exact product of SI constants, printed to 10 digits",
    ),
}
