"""R. C. Hibbeler, Mechanics of Materials, problem 1-67, with its worked solution."""

from ..row import Row

ROWS = {
    "MEC-17": Row(
        "rim speed of a thin flywheel ring at 15 MPa hoop stress",
        {"stress_Pa": 15000000.0, "thickness_m": 0.003, "width_m": 0.02, "mass_per_length_kg_m": 30.0},
        5.48,
        "m/s",
        0.005,
        "last digit",
    ),
}
