"""Standard gravity, exact by definition: third General Conference on Weights and Measures (1901); ISO 80000-3."""

from .row import Row

ROWS = {
    "CON-01": Row("standard gravity", {}, 9.80665, "m/s^2", 0, "exact by definition"),
}
