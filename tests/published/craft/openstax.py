"""OpenStax, College Physics, worked example on a spinning skater (section 10.5, from memory)."""

from ..row import Row

ROWS = {
    "MEC-06": Row(
        "spin after arms are pulled in (swinging masses inward)",
        {"I_before_kg_m2": 2.34, "I_after_kg_m2": 0.363, "rate_before_rev_s": 0.8},
        5.16,
        "rev/s",
        0.005,
        "last digit",
    ),
}
