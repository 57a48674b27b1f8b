"""Room to work in: arrays that come again and again, so that those of a batch of bodies stay in the cache.

What asks for an array says a name, a shape and a kind; `Room` gives the same memory to the same name each time, `fresh` new memory.
"""

from math import prod

import numpy as np


def fresh(_name: str, shape: tuple[int, ...], kind=float) -> np.ndarray:
    """A new array, its values not set."""
    return np.empty(shape, kind)


class Room:
    """Gives arrays as `fresh` does, in memory that it keeps: one is good until its name is asked for again."""

    def __init__(self):
        self._flat, self._last = {}, {}

    def __call__(self, name: str, shape: tuple[int, ...], kind=float) -> np.ndarray:
        last = self._last.get(name)
        if last is not None and last.shape == shape:
            return last
        size, flat = prod(shape), self._flat.get(name)
        if flat is None or len(flat) < size:
            flat = self._flat[name] = np.empty(size, kind)
        self._last[name] = flat[:size].reshape(shape)
        return self._last[name]
