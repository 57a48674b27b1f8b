"""The arithmetic of the soak: its verdict on memory must not be one that nothing can fail."""

import pytest

from tests.soak.processes import Held, slope_mb_per_min


def test_the_slope_of_memory_counts_from_where_it_is_asked():
    samples = [Held(time_s, 500 if time_s < 120 else 80 + 3 * time_s / 60, 9, 9, 2) for time_s in range(0, 480, 5)]
    assert slope_mb_per_min(samples, 120) == pytest.approx(3)
    assert slope_mb_per_min(samples, 0) < -10
    assert slope_mb_per_min(samples[:1], 0) == 0
