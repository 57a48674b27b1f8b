"""Grant & Middleman, AIChE J. 12, 669 (1966): 19.5 We^0.5 (1 + 3 Oh)^0.85; coefficients from memory, scatter at least 10 %."""

from .row import Row

ROWS = {
    "LIQ-18": Row(
        "laminar breakup length / diameter, 3 mm water jet at 2 m/s",
        {"diameter_m": 0.003, "speed_m_s": 2.0, "rho_kg_m3": 998.207, "mu_Pa_s": 0.0010016, "sigma_N_m": 0.07274},
        251.6,
        "1",
        25.0,
        "correlation scatter at least 10 %",
        "only the abstract was seen; coefficients from memory",
    ),
}
