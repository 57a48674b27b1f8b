"""Where something turns from not yet to over and done with, between two times."""

import numpy as np

_PARTS, _ROUNDS = 64, 10  # at each round a bracket becomes so many times shorter: after all, rounding


def narrowed(low, high, past):
    """The bracket (low, high) narrowed as far as numbers go: past(times (n,)) says which (n,) are past it; low is not, high is."""
    for _ in range(_ROUNDS):
        times = np.linspace(low, high, _PARTS + 1)
        first = max(int(np.argmax(past(times))), 1)
        low, high = times[first - 1], times[first]
    return float(low), float(high)
