"""Vectors one at a time, as the oracles' right-hand sides need them: numpy's own functions are made for many at once."""

import numpy as np


def cross(a, b):
    """a x b of two vectors (3,); `np.cross` takes ten times as long for one pair."""
    (ax, ay, az), (bx, by, bz) = a, b
    return np.array([ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx])
