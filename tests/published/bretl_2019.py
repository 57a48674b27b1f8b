"""Bretl, McCusker, Dixon & Clark, J. Vestib. Res. 29(2-3) (2019), abstract."""

from .row import Row

ROWS = {
    "DES-20": Row(
        "centrifuge diameter for 1 g at the feet at 1.8 rpm",
        {"rate_rpm": 1.8, "g_used_m_s2": 9.81},
        552.2,
        "m",
        0.05,
        "last digit (authors used 9.81; 9.80665 gives 552.0)",
    ),
    "HUM-28": Row(
        "mean rate with no cross-coupled illusion before training (n=10)", {"sd_rpm": 0.9}, 1.8, "rpm", 0.0, "as stated"
    ),
}
