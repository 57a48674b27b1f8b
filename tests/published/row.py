"""What a published value is."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Row:
    """A value as its source prints it; `inputs` are the source's, `tolerance` is absolute and comes from `rounding`."""

    quantity: str
    inputs: dict
    value: float
    unit: str
    tolerance: float
    rounding: str
    note: str = ""

    def allows(self, ours):
        """Whether a value of ours, in the same unit, agrees within the source's rounding."""
        return abs(ours - self.value) <= self.tolerance
