"""ITTF Laws 2.03 and Technical Leaflet T3 (2016)."""

from .row import Row

ROWS = {
    "DRG-32": Row("table-tennis ball diameter", {}, 0.04, "m", 0, "rule value"),
    "DRG-33": Row("table-tennis ball mass", {}, 0.0027, "kg", 0, "rule value", "old ball: 38 mm, 2.5 g"),
}
