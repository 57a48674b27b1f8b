"""A node of a file as it moves, and the lens of one that is a camera: what every reader gives."""

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True)
class Posed:
    """A node. time_s (T,): seconds of the file, rising; world (T, 4, 4): its space in that of the file, metres and Y up, column vectors.
    fov_rad (T,): vertical, and aspect, width to height: of a camera, else None."""

    name: str
    time_s: np.ndarray
    world: np.ndarray
    fov_rad: np.ndarray | None = None
    aspect: float | None = None


def from_z_up(world):
    """Matrices (..., 4, 4) of a file whose Z is up -> with Y up: X stays, what was up is up."""
    turn = np.array([[1.0, 0, 0, 0], [0, 0, 1.0, 0], [0, -1.0, 0, 0], [0, 0, 0, 1.0]])
    return turn @ world
