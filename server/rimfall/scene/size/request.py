"""What is wished for of a habitat that is yet to be sized: figures, published studies to keep to, a radius that a hull allows."""

from typing import Annotated, Literal

from pydantic import Discriminator, Field, Tag

from ...comfort.published import LIMITS, ROWS
from ...comfort.quantities import QUANTITIES
from ...comfort.studies import STUDIES
from ...fields import Strict, number
from ..feel.person_part import Person

QUANTITY_NAMES = (*QUANTITIES, "radius")
BOUNDS = ("exactly", "at_least", "at_most")
STUDY_NAMES = tuple(dict.fromkeys(row.study for row in ROWS if row.bound in LIMITS))
CALLED = {
    STUDIES[name].called.lower(): name for name in STUDY_NAMES
}  # what a study is called on screen -> its name here


def _choice(label, names):
    said = {"label": label, "unit": "", "kind": "choice", "may_be": " or ".join(names)}
    return Field(json_schema_extra=said)


class FigureWish(Strict):
    """A figure to have; its unit is that of the quantity, metres for a radius."""

    kind: Literal["figure"] = _choice("Kind", ("figure", "study"))
    quantity: Literal[QUANTITY_NAMES] = _choice("Quantity", QUANTITY_NAMES)
    bound: Literal[BOUNDS] = _choice("Bound", BOUNDS)
    value: float = number("Value", "", 0, 1_000_000, above=True)


class StudyWish(Strict):
    """A study, all of whose limits are kept to."""

    kind: Literal["study"] = _choice("Kind", ("figure", "study"))
    study: Literal[STUDY_NAMES] = _choice("Study", STUDY_NAMES)


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

    wishes: list[Wish] = Field(
        min_length=1,
        max_length=12,
        json_schema_extra={"label": "Wishes", "unit": "", "kind": "list", "may_be": "a list of 1 to 12"},
    )
    person: Person = Person()
