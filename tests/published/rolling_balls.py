"""Balls that roll on a turntable and down a slope.

Turntable: Weltner, Am. J. Phys. 47, 984 (1979); Burns, Am. J. Phys. 49, 56 (1981); Morin, Harvard Physics Problem of the Week
21 (2003); hollow: the same formula, and Ehrlich & Tuszynski, Am. J. Phys. 63, 351 (1995). Slope: any mechanics text.
"""

from .row import Row

ROWS = {
    "ROL-01": Row(
        "orbit rate / turntable rate, uniform solid sphere",
        {"inertia_factor": 2 / 5},
        2 / 7,
        "1",
        1e-9,
        "exact 1/(1 + m a^2/I); the bound is that of a path worked out in steps",
    ),
    "ROL-02": Row(
        "orbit rate / turntable rate, thin hollow sphere",
        {"inertia_factor": 2 / 3},
        2 / 5,
        "1",
        1e-9,
        "exact, the same formula; the bound as for ROL-01",
    ),
    "ROL-03": Row(
        "orbit radius of a solid sphere: 0.1 m/s on a 2 rad/s table",
        {"inertia_factor": 2 / 5, "speed_m_s": 0.1, "omega_rad_s": 2.0},
        0.175,
        "m",
        1e-9,
        "exact v/((2/7) w)",
        "derived",
    ),
    "ROL-05": Row(
        "acceleration of a solid sphere rolling down a slope / (g sin)",
        {"inertia_factor": 2 / 5},
        5 / 7,
        "1",
        1e-9,
        "exact; the bound as for ROL-01",
        "recalled",
    ),
}
