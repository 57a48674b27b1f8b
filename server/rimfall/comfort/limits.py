"""Published limits and the user's own, each held against the values of one habitat and one person."""

import math
from dataclasses import dataclass
from string import ascii_lowercase

from ..language import tr_as
from .published import BOUNDS, LIMITS, ROWS, told
from .quantities import QUANTITIES

SAME = 1e-9  # relative: below this two values are one, and a value at its limit keeps to it
_QUANTITY_ORDER = tuple(QUANTITIES)


@dataclass(frozen=True)
class Compared:
    """One figure of a study (or of the user: mine) beside the value here; limit, value and margin in unit.

    state is "inside", "at the limit" or "beyond" for limits; "below", "equal" or "above" for figures that are no limit;
    "none" where there is no value. inside and margin (> 0 inside, < 0 beyond) are None for all but limits with a value.
    times: how many times past the limit, where it is passed and that is a number. letter: its place in its quantity.
    """

    id: str
    study: str
    year: int | None
    quantity: str
    bound: str
    limit: float
    unit: str
    value: float | None
    state: str
    inside: bool | None
    margin: float | None
    times: float | None
    letter: str
    who: str
    source: str
    via: str
    note: str
    known_by: str
    mine: bool


def compare(values, own_limits):
    """Every published figure and every own limit beside values (quantity -> number or None) -> list of Compared.

    Ordered by quantity; within one by year, then study, those without a year and then the user's own last.
    """
    rows = sorted([*map(_published, ROWS), *map(_own, range(1, 1 + len(own_limits)), own_limits)], key=_place)
    letters = {name: iter(_letters()) for name in QUANTITIES}
    return [
        Compared(**row, **_held(row, values[row["quantity"]]), letter=next(letters[row["quantity"]])) for row in rows
    ]


def same(one, other):
    """Whether two figures are one."""
    return math.isclose(one, other, rel_tol=SAME)


def no_name():
    """What a limit of the user's is called that has no name."""
    return tr_as("limit", "your own")


def own_id(number):
    """The id of the user's limit of that number, from 1."""
    return f"own.{number}"


def _published(row):
    return {name: value for name, value in vars(row).items() if name != "notes"} | told(row) | {"mine": False}


def _own(number, own):
    """A limit of the user's as a row; number is its place in the document, from 1."""
    figure = {"quantity": own.quantity, "bound": own.bound, "limit": own.value, "unit": QUANTITIES[own.quantity].unit}
    study = own.name.strip() or no_name()
    about = {"who": "", "source": "", "via": "", "note": "", "known_by": "", "mine": True}
    return {"id": own_id(number), "study": study, "year": None} | figure | about


def _place(row):
    """What rows are ordered by; the user's own keep their order in the document."""
    if row["mine"]:
        return _QUANTITY_ORDER.index(row["quantity"]), True
    within = (row["year"] or math.inf, row["study"], BOUNDS.index(row["bound"]), row["limit"])
    return _QUANTITY_ORDER.index(row["quantity"]), False, *within


def _held(row, value):
    """value, state, inside, margin and times of one row."""
    limit, bound = row["limit"], row["bound"]
    held = {"value": value, "state": "none", "inside": None, "margin": None, "times": None}
    if value is None:
        return held
    if bound not in LIMITS:
        return held | {"state": "equal" if same(value, limit) else "below" if value < limit else "above"}
    if same(value, limit):
        return held | {"state": "at the limit", "inside": True, "margin": 0.0}
    margin = limit - value if bound == "at_most" else value - limit
    if margin > 0:
        return held | {"state": "inside", "inside": True, "margin": margin}
    return held | {"state": "beyond", "inside": False, "margin": margin, "times": _times(bound, limit, value)}


def _times(bound, limit, value):
    """value over limit, or the other way for a least; None where that is no number: a least, and nothing there."""
    over, under = (value, limit) if bound == "at_most" else (limit, value)
    times = over / under if under > 0 else math.inf
    return times if math.isfinite(times) else None


def _letters():
    """a to z, then aa to az and on: a user's own may come after twenty-six."""
    for first in ("", *ascii_lowercase):
        yield from (first + letter for letter in ascii_lowercase)
