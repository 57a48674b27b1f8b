"""A technical lexicon, entry on gas centrifuges: rigid isothermal rotation."""

from .row import Row

ROWS = {
    "ATM-01": Row(
        "gas-centrifuge separation factor for a 3 g/mol mass difference",
        {"radius_m": 0.065, "frequency_Hz": 1200.0, "T_K": 293.15},
        1.16,
        "1",
        0.005,
        "last digit; temperature not stated (290-300 K gives 1.161-1.155)",
    ),
}
