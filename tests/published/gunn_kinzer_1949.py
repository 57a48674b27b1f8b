"""Gunn & Kinzer, J. Meteorol. 6, 243 (1949): terminal speeds of rain drops in still air, 1 atm, 20 C, measured. Drops of 4 and
5 mm are flattened: a rigid sphere falls 18 % and 30 % faster than they do."""

from .row import Row

ROWS = {
    "DRG-20": Row(
        "terminal speed of a 0.1 mm rain drop, still air, 1 atm, 20 C",
        {"diameter_m": 0.0001},
        0.27,
        "m/s",
        0.03,
        "measured table printed to 1 cm/s; band allows for a rigid-sphere model",
    ),
    "DRG-21": Row(
        "terminal speed of a 0.5 mm rain drop, still air, 1 atm, 20 C",
        {"diameter_m": 0.0005},
        2.06,
        "m/s",
        0.1,
        "measured table printed to 1 cm/s; band allows for a rigid-sphere model",
    ),
    "DRG-22": Row(
        "terminal speed of a 1 mm rain drop, still air, 1 atm, 20 C",
        {"diameter_m": 0.001},
        4.03,
        "m/s",
        0.1,
        "measured table printed to 1 cm/s; band allows for a rigid-sphere model",
    ),
    "DRG-24": Row(
        "terminal speed of a 3 mm rain drop, still air, 1 atm, 20 C",
        {"diameter_m": 0.003},
        8.06,
        "m/s",
        0.7,
        "measured table printed to 1 cm/s; band allows for a rigid-sphere model",
    ),
    "DRG-25": Row(
        "terminal speed of a 4 mm rain drop, still air, 1 atm, 20 C",
        {"diameter_m": 0.004},
        8.83,
        "m/s",
        0.1,
        "measured table; drop is flattened, a rigid-sphere model must NOT match",
    ),
    "DRG-26": Row(
        "terminal speed of a 5 mm rain drop, still air, 1 atm, 20 C",
        {"diameter_m": 0.005},
        9.09,
        "m/s",
        0.1,
        "measured table; drop is flattened, a rigid-sphere model must NOT match",
    ),
}
