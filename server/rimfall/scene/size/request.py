"""What is wished for of a habitat that is yet to be sized: figures, published studies to keep to, a radius that a hull allows."""

from typing import Annotated, Literal

from pydantic import Discriminator, Tag, field_validator

from ...comfort.published import LIMITS, ROWS, STUDIES
from ...comfort.quantities import QUANTITIES
from ...fields import Strict, choice, invertible, listed, number
from ...language import tr_later
from ..feel.person_part import PersonPart

QUANTITY_NAMES = (*QUANTITIES, "radius")
BOUNDS = ("exactly", "at_least", "at_most")
STUDY_NAMES = tuple(dict.fromkeys(row.study for row in ROWS if row.bound in LIMITS))
CALLED = {
    STUDIES[name].called.lower(): name for name in STUDY_NAMES
}  # what a study is called on screen -> its name here


class FigureWish(Strict):
    """A figure to have; its unit is that of the quantity, metres for a radius."""

    kind: Literal["figure"] = choice(tr_later("Kind"), ("figure", "study"))
    quantity: Literal[QUANTITY_NAMES] = choice(tr_later("Quantity"), QUANTITY_NAMES)
    bound: Literal[BOUNDS] = choice(tr_later("Bound"), BOUNDS)
    value: float = number(tr_later("Value"), "", 0, 1_000_000, above=True)

    _value = field_validator("value")(invertible)


class StudyWish(Strict):
    """A study, all of whose limits are kept to."""

    kind: Literal["study"] = choice(tr_later("Kind"), ("figure", "study"))
    study: Literal[STUDY_NAMES] = choice(tr_later("Study"), STUDY_NAMES)


def _kind_of(value):
    """The tag of a wish's model, which no field's name shows; None where it names none."""
    kind = value.get("kind") if isinstance(value, dict) else getattr(value, "kind", None)
    return None if kind is None else f"@{kind}"


Wish = Annotated[
    Annotated[FigureWish, Tag("@figure")] | Annotated[StudyWish, Tag("@study")],
    Discriminator(_kind_of),
]


class SizeRequest(Strict):
    """The wishes, and who they are for."""

    wishes: list[Wish] = listed(tr_later("Wishes"), 12, least=1)
    person: PersonPart = PersonPart()
