"""Who stands on the deck, and the limits that a user sets beside the published ones."""

from typing import Literal

from pydantic import field_validator

from ...comfort.quantities import QUANTITIES
from ...fields import Strict, choice, invertible, linear, number, text
from ...language import tr_later
from ...physics.constants import PERSON_HEIGHT_M

_LEAST_RATE = 1e-9  # m/s, °/s


def _pace(label, high, default, shown):
    return number(label, "m/s", 0, high, default, shown=linear(0, shown))


class PersonPart(Strict):
    """Somebody aboard: how tall, how fast on foot, on stairs and in a lift, and how quickly the head turns."""

    height_m: float = number(tr_later("Height"), "m", 0.3, 3, PERSON_HEIGHT_M, shown=linear(0.5, 2.2))
    walk_m_s: float = _pace(tr_later("Walks at"), 10, 1.4, 3)
    run_m_s: float = _pace(tr_later("Runs at"), 20, 4.0, 12)
    climb_m_s: float = _pace(tr_later("Climbs at"), 5, 0.3, 2)
    lift_m_s: float = _pace(tr_later("Lift goes at"), 50, 2.0, 10)
    head_turn_deg_s: float = number(tr_later("Turns the head at"), "°/s", 0, 1_000, 60.0, shown=linear(0, 360))

    @field_validator("walk_m_s", "run_m_s", "climb_m_s", "lift_m_s", "head_turn_deg_s")
    @classmethod
    def _still(cls, rate):
        """What is slower than anybody moves is none: its inverse may be no number."""
        return rate if rate >= _LEAST_RATE else 0.0


class OwnLimit(Strict):
    """A limit of the user's own, marked as such; its unit is that of the quantity."""

    name: str = text(tr_later("Name"), 60, "")
    quantity: Literal[tuple(QUANTITIES)] = choice(tr_later("Quantity"), tuple(QUANTITIES))
    bound: Literal["at_least", "at_most"] = choice(tr_later("Bound"), ("at_least", "at_most"))
    value: float = number(tr_later("Your limit"), "", 0, 1_000_000, above=True)

    _value = field_validator("value")(invertible)
