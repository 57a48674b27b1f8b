"""Drag coefficients by other published laws, each evaluated at one Reynolds number: Haider & Levenspiel, Powder Technol. 58, 63
(1989); Clift & Gauvin (1970); Morrison, Michigan Tech (2010); Brown & Lawler, J. Environ. Eng. 129, 222 (2003). Such laws differ
among themselves by 4 to 5 % between Re 10 and 1000."""

from .row import Row

ROWS = {
    "DRG-02": Row(
        "sphere drag coefficient at Re = 200, Haider & Levenspiel (1989)",
        {"Re": 200.0},
        0.795955168,
        "1",
        1e-09,
        "worked value of the published correlation",
    ),
    "DRG-03": Row(
        "sphere drag coefficient at Re = 200, Clift & Gauvin (1970)",
        {"Re": 200.0},
        0.7905400398,
        "1",
        1e-09,
        "worked value of the published correlation",
    ),
    "DRG-05": Row(
        "sphere drag coefficient at Re = 200, Morrison (2010 form)",
        {"Re": 200.0},
        0.76773156,
        "1",
        1e-09,
        "worked value of the published correlation",
    ),
    "DRG-06": Row(
        "sphere drag coefficient, Brown & Lawler",
        {"Re": 1.0},
        27.6,
        "1",
        0.0027600046722534724,
        "evaluation of the published formula",
    ),
    "DRG-07": Row(
        "sphere drag coefficient, Brown & Lawler",
        {"Re": 100.0},
        1.0731,
        "1",
        0.00010731388045508317,
        "evaluation of the published formula",
    ),
    "DRG-08": Row(
        "sphere drag coefficient, Brown & Lawler",
        {"Re": 10000.0},
        0.41061,
        "1",
        4.106095720297516e-05,
        "evaluation of the published formula",
    ),
}
