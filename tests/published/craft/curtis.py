"""Curtis, Orbital Mechanics for Engineering Students, a problem of chapter 10, its answer from memory. The rate is that about the spin axis."""

from ..row import Row

ROWS = {
    "MEC-11": Row(
        "kinetic energy lost when internal damping brings a nutating disc-like satellite to pure spin",
        {"I_transverse_kg_m2": 30.0, "I_spin_kg_m2": 60.0, "rate_rad_s": 2.0, "nutation_deg": 15.0},
        8.62,
        "J",
        0.005,
        "last digit",
    ),
}
