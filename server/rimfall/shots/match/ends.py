"""Where in a track a free flight ends: a last row, or rows at rest, in which the thing has landed or been caught."""

from dataclasses import replace

import numpy as np

from .trials import tried

_LEAST_ROWS = 6  # of what is left, for that it fits to tell something
_AT_REST = 3.0  # standard deviations


def free_rows(sight, known, resistance, above: float) -> int | None:
    """How many rows from the first are of a free flight likelier than `above` where the rows after them are not; None where no row at
    the end is to blame, or a camera of its own goes with each row."""
    if hasattr(sight, "rays"):
        return None
    off = np.abs(sight.seen - sight.seen[-1]) > _AT_REST * sight.sd
    moving = np.flatnonzero(off.any(axis=1))
    resting = len(sight.seen) - (int(moving[-1]) + 1 if len(moving) else 0)
    for count in dict.fromkeys(len(sight.seen) - max(rows, 1) for rows in (resting - 1, resting)):
        if count < _LEAST_ROWS:
            break
        trial = tried(replace(sight, time_s=sight.time_s[:count], seen=sight.seen[:count]), known, resistance)
        if trial.problem.freedom > 0 and trial.p_value > above:
            return count
    return None
