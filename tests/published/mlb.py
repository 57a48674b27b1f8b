"""MLB Official Baseball Rules, rule 3.01 (from memory): the middle of what the rule allows."""

from .row import Row

ROWS = {
    "DRG-43": Row("baseball mass, mid of 5-5.25 oz", {}, 0.1453, "kg", 0.0036, "rule range"),
    "DRG-44": Row(
        "baseball diameter from 9-9.25 in circumference",
        {},
        0.0738,
        "m",
        0.001,
        "rule range",
        "Nathan uses 0.0728 m",
    ),
}
