"""What every finding of a craft has."""

from .drawings import CraftChart
from .parts import Closed, left_out, rows_of, said


class Finding(Closed):
    """What every finding has."""

    question: str = said("The question that it answers, as a heading.")
    says: list[str] = said("The finding in sentences.")
    assumptions: list[str] = said("What it rests on and leaves out.")
    chart: CraftChart = left_out(
        "What is better seen than said; left out without a `width`, or where there is nothing to see."
    )
    figures: list[rows_of(str, 4)] = left_out(
        'Its figures as rows: what of it they belong to ("" where to all of it), label, value, unit; left out without a `width`.'
    )
