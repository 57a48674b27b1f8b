"""Burton, Periodic acceleration stimulation in space, SAE (1989): radius and level; the rate is computed from them."""

from .row import Row

ROWS = {
    "DES-31": Row(
        "short-radius centrifuge 1.5 m: rate for 1 g0",
        {"radius_m": 1.5},
        24.4,
        "rpm",
        0.05,
        "computed",
        "paper gives radius and level only; the rate is computed",
    ),
}
