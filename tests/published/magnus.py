"""Sawicki, Hubbard & Stronge, Am. J. Phys. 71, 1152 (2003): lift of a spinning baseball, C_L = 0.09 + 0.6 S for S > 0.1."""

from .row import Row

ROWS = {
    "DRG-29": Row(
        "baseball lift coefficient at spin factor 0.2",
        {"spin_factor": 0.2},
        0.21,
        "1",
        0.01,
        "two fits agree to 0.004",
        "recalled",
    ),
}
