"""What ends while an answer is written ends as it does before."""

import numpy as np
import pytest

from rimfall.physics.budget import Budget, Stopped, TooMuchWork, spend, spending
from rimfall.scene.json_arrays import as_lists, with_arrays


def made(count):
    for _ in range(count):
        spend(steps=1)
        yield {"array": np.zeros(2)}


def test_what_is_made_as_it_is_written_is_stopped_and_bounded_like_all_work():
    with spending(Budget()):
        assert with_arrays({"events": made(2)}, as_lists) == b'{"events":[{"array":[0.0,0.0]},{"array":[0.0,0.0]}]}'
    with spending(Budget(stopped=lambda: True)), pytest.raises(Stopped):
        with_arrays({"events": made(2)}, as_lists)
    with spending(Budget(steps=1)), pytest.raises(TooMuchWork):
        with_arrays({"events": made(2)}, as_lists)
