"""Exercises of physics textbooks with worked solutions: MEC-01 and MEC-02 of Serway's type, MEC-03 a multiple choice, MEC-04 Giancoli,
Physics for Scientists and Engineers (from memory)."""

from ..row import Row

ROWS = {
    "MEC-01": Row(
        "time to spin up a thin-ring station to 1 g at its rim with two rim rockets",
        {"mass_kg": 44500.0, "radius_m": 145.0, "thrust_each_N": 115.0, "rockets": 2, "g_used_m_s2": 9.8},
        7292.195,
        "s",
        2.0,
        "solution rounds the rim speed to 37.69 m/s",
    ),
    "MEC-02": Row(
        "time to spin up a 21 m wheel station, all mass at the rim, to 1 g",
        {"mass_kg": 550000.0, "radius_m": 10.5, "thrust_each_N": 130.0, "rockets": 2, "g_used_m_s2": 9.8},
        21500.0,
        "s",
        100.0,
        "three digits printed (2.15e4 s, 5.96 h)",
    ),
    "MEC-03": Row(
        "rate of a rod-shaped station after its end thrusters fire, from rest",
        {"mass_kg": 4200000.0, "length_m": 953.0, "thrust_each_end_N": 440000.0, "time_s": 86.0},
        1.08,
        "rpm",
        0.005,
        "last digit",
    ),
    "MEC-04": Row(
        "thrust of each of four rim rockets that spin a disc satellite to 32 rpm in 5 min",
        {
            "disc_mass_kg": 3600.0,
            "radius_m": 4.0,
            "rocket_mass_each_kg": 250.0,
            "rockets": 4,
            "rate_rpm": 32.0,
            "time_s": 300.0,
        },
        31.0,
        "N",
        0.5,
        "last digit",
    ),
}
