"""ITF Rules of Tennis, Appendix I: the middle of what the rules allow."""

from .row import Row

ROWS = {
    "DRG-39": Row(
        "tennis ball mass, mid of 56.0-59.4 g",
        {},
        0.0577,
        "kg",
        0.0017,
        "rule range",
        "older rule 56.7-58.5 g",
    ),
    "DRG-40": Row("tennis ball diameter, mid of 6.54-6.86 cm", {}, 0.067, "m", 0.0016, "rule range"),
}
