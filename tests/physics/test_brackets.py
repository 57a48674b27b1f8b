"""A bracket is narrowed onto the root that a formula gives."""

import numpy as np
import pytest

from rimfall.physics.brackets import narrowed

ROOTS = {
    "of a square": (lambda x: x * x >= 2.0, 0.0, 4.0, 2.0**0.5),
    "of a cosine": (lambda x: np.cos(x) <= 0, 1.0, 2.0, np.pi / 2),
}


@pytest.mark.parametrize("which", ROOTS)
def test_both_ends_come_to_the_root(which):
    past, low, high, root = ROOTS[which]
    low, high = narrowed(low, high, past)
    assert low <= high
    assert not past(low)
    assert past(high)
    assert max(abs(low - root), abs(high - root)) <= 2e-15 * root
