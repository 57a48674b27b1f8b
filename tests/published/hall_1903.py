"""E. H. Hall, Phys. Rev. (1903), drops in a Harvard tower, measured, as summarised."""

from .row import Row

ROWS = {
    "TRJ-08": Row(
        "Harvard tower 1902: measured eastward deviation (948 drops)",
        {"height_m": 23.0, "latitude_deg": 42.38},
        0.00149,
        "m",
        0.0004,
        'author: slightly below theory, within error; height "about twenty metres" in the summary',
        "23 m from memory gives 1.79 mm; 20 m gives 1.45 mm",
    ),
}
