"""FSU PHY 5246, assignment 3 (2009), problem 1: (2 w g cos(lat)/k^3) [kt (1 + e^-kt) - 2 (1 - e^-kt)]. The prefactor is garbled
in the stored text; derived again and confirmed by integration."""

from .row import Row

ROWS = {
    "TRJ-12": Row(
        "eastward deviation after 10 s of fall with linear drag, latitude 45 deg",
        {"drag_rate_1_s": 0.1, "time_s": 10.0, "latitude_deg": 45.0},
        0.1048117,
        "m",
        1e-06,
        "closed form to first order in w: (2 w g cos(lat)/k^3)[kt(1+e^-kt) - 2(1-e^-kt)]",
        "prefactor is garbled in the stored text; re-derived and confirmed by integration. Without drag: 0.168554 m",
    ),
}
