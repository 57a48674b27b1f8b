"""Drops in the Hamburg tower (1802) as a 19th-century text of physical geography reports them, in Paris feet and lines; and
Benzenberg, Versuche ueber die Umdrehung der Erde, p. 11, for the Schlebusch shaft."""

from .row import Row

ROWS = {
    "TRJ-05": Row(
        "Hamburg tower 1802: theoretical eastward deviation",
        {"height_m": 76.337, "latitude_deg": 53.55},
        0.008748,
        "m",
        0.0001,
        "3.878 Paris lines of 2.2558 mm; heights in whole feet",
        "measured about 4 lines (9.0 mm)",
    ),
}

# These do not agree with their source, or it with itself: no test may pass or fail on them.
WARNINGS = {
    "TRJ-07": Row(
        "Schlebusch shaft: theoretical eastward deviation printed by the experimenter",
        {"height_m": 85.108, "latitude_deg": 51.0},
        0.010467,
        "m",
        5e-05,
        "4.64 Paris lines",
        "vacuum first-order formula gives 4.81 lines (3.6 % more): his value includes other assumptions. Do not test",
    ),
}
