"""L. D. Landau & E. M. Lifshitz, Mechanics, section 37; the elliptic functions also in Am. J. Phys. 89, 349 (2021). From memory."""

from ..row import Row

ROWS = {
    "RIG-20": Row(
        "torque-free period of the angular velocity in the body frame",
        {"I1": 1.0, "I2": 2.0, "I3": 3.0, "w1_rad_s": 0.1, "w2_rad_s": 1.0, "w3_rad_s": 0.1},
        22.99626294,
        "s",
        1e-07,
        "closed form with the complete elliptic integral",
    ),
}
