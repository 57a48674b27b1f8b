"""A standardized, incremental protocol to increase human tolerance to the cross-coupled illusion, J. Vestib. Res. (2020).

Abstract, doi 10.3233/VES-190673.
"""

from .row import Row

ROWS = {
    "HUM-30": Row("same, standardised (not personalised) protocol", {}, 11.8, "rpm", 0.0, "as stated"),
}
