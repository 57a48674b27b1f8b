"""The quantities that published limits speak of, each one power of radius times one power of spin.

On log axes of radius and spin every limit is therefore a straight line (`chart.py`), and the smallest habitat that keeps to
some of them a corner (`sizing.py`). They are those of a person on the deck of a steady habitat without thrust.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass

from ..language import tr_later
from ..physics.constants import G0_M_S2, RPM_RAD_S


@dataclass(frozen=True)
class Quantity:
    """label, in_text (the same inside a sentence), both in English, and unit, for people; its value is
    factor(person) * radius_m ** radius_power * omega_rad_s ** spin_power."""

    name: str
    label: str
    in_text: str
    unit: str
    factor: Callable
    radius_power: int
    spin_power: int

    def value(self, person, radius_m, omega_rad_s):
        """Its value at a radius and a spin (> 0 where the power is below 0), in its unit."""
        return self.factor(person) * radius_m**self.radius_power * omega_rad_s**self.spin_power


_ALL = (
    Quantity(
        "gravity",
        tr_later("Gravity at the feet"),
        tr_later("gravity at the feet"),
        "g",
        lambda person: 1.0 / G0_M_S2,
        1,
        2,
    ),
    Quantity("spin", tr_later("Spin"), tr_later("spin"), "rpm", lambda person: 1.0 / RPM_RAD_S, 0, 1),
    Quantity(
        "gradient",
        tr_later("Head to foot"),
        tr_later("head to foot"),
        "%",
        lambda person: 100.0 * person.height_m,
        -1,
        0,
    ),
    Quantity("rim_speed", tr_later("Rim speed"), tr_later("rim speed"), "m/s", lambda person: 1.0, 1, 1),
    Quantity(
        "head_turn",
        tr_later("Turning the head"),
        tr_later("turning the head"),
        "rad/s²",
        lambda person: math.radians(person.head_turn_deg_s),
        0,
        1,
    ),
    Quantity(
        "coriolis",
        tr_later("Coriolis to gravity"),
        tr_later("Coriolis to gravity"),
        "",
        lambda person: 2.0 * person.walk_m_s,
        -1,
        -1,
    ),
)
QUANTITIES = {one.name: one for one in _ALL}
