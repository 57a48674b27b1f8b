"""Reich's drops in a Freiberg shaft (1831-32), measured, from a 19th-century text of physical geography."""

from .row import Row

ROWS = {
    "TRJ-06": Row(
        "Freiberg shaft 1831-32: mean measured eastward deviation (106 drops)",
        {"height_m": 158.52, "latitude_deg": 50.88},
        0.0284,
        "m",
        0.0015,
        "12 3/5 Paris lines (fraction unclear in scan); experimental scatter several mm",
        "theory 27.6 mm; other sources give 28.3 mm measured",
    ),
}
