"""A small heavy thing on a line without mass, hung from a point of a turning frame: its laws, taut and slack, and its plumb line.

With d the bob's place from the pivot, of length L, a the acceleration that everything but the line gives it (`aboard.py`) and u
its velocity, the line gives -(a.d/L + u.u/L) d/L, so that d.d stays L^2: Lagrange's multiplier, worked out (Goldstein, Classical
Mechanics, section 2.4). A line pulls and does not push: where that figure would fall below 0 it is slack, and the bob flies free
until the line is straight again; the jerk then takes the outward part of its velocity.

The laws are for `windows.py`, which puts the bob back on its sphere after every window. Arrays are (3, N); positions are those
from the pivot, so that no digits are lost where the frame is wide.
"""

from dataclasses import dataclass, replace

import numpy as np

from .aboard import Aboard, dot
from .budget import spend

_MOST_TURNS = 2_000  # of the search for a plumb line
_FOUND = 1e-15  # its direction changes by no more
ALONG = 1e-6  # sine of an angle that is none
_NONE_M_S2 = 1e-12  # an apparent gravity that is none


@dataclass(frozen=True)
class Hung:
    """The law of N bobs on lines of one length_m from one pivot_m (3,) in the turning frame. forces: an `Aboard` of theirs. taut:
    whether the lines are; else the bobs are free."""

    pivot_m: np.ndarray
    length_m: float
    forces: Aboard
    taut: bool = True

    def take(self, which):
        """Those of the index or mask."""
        return replace(self, forces=self.forces.take(which))

    def pull_m_s2(self, rate, position, velocity):
        """What a taut line pulls at its bob with (N,), over the mass; below 0 where it would have to push."""
        acceleration = self.forces.at(*rate, self.pivot_m[:, None] + position, velocity)
        away = np.sqrt(dot(position, position))
        return (dot(acceleration, position) + dot(velocity, velocity)) / away

    def through_air(self, rate, position, velocity):
        """Velocities (3, N) through the air at positions from the pivot; None where there is none."""
        return self.forces.through_air(rate[0], self.pivot_m[:, None] + position, velocity)

    def at(self, rate, position, velocity):
        """Acceleration (3, N) at positions from the pivot while the frame turns at a rate and that changes (rate: both), and what is
        watched (N,): the line's pull over the mass, 0 where it is slack."""
        acceleration = self.forces.at(*rate, self.pivot_m[:, None] + position, velocity)
        if not self.taut:
            return acceleration, np.zeros(position.shape[1])
        square = dot(position, position)
        share = (dot(acceleration, position) + dot(velocity, velocity)) / square
        acceleration -= share * position
        return acceleration, share * np.sqrt(square)

    def settled(self, position, velocity):
        """The state on the sphere, moving along it; a free bob's as it is."""
        if not self.taut:
            return position, velocity
        line = position / np.sqrt(dot(position, position))
        return self.length_m * line, velocity - dot(velocity, line) * line


def plumb(weights, rate, change, pivot_m, length_m, otherwise):
    """Directions (3, N) in which bobs on lines of length_m hang at rest from a pivot (3,), while the frame turns at rate (N,)
    and that changes by `change` (N,); `otherwise` (3,) where they weigh nothing.

    weights: an `Aboard` without air. A line hangs along the apparent gravity at its bob, which depends on where that is: the
    search turns it toward that until it stays.
    """
    down = np.tile(otherwise[:, None], (1, len(rate)))
    still = np.zeros_like(down)
    for _ in range(_MOST_TURNS):
        spend(0, len(rate))
        gravity = weights.at(rate, change, pivot_m[:, None] + length_m * down, still)
        size = np.sqrt(dot(gravity, gravity))
        turned = np.where(size > _NONE_M_S2, gravity / np.maximum(size, _NONE_M_S2), down)
        moved = float(np.max(np.abs(turned - down), initial=0.0))
        down = turned
        if moved <= _FOUND:
            break
    return down


def square_to(down, toward, otherwise):
    """Unit vector (3,) square to the unit vector `down`, toward `toward`; where that is along it, toward `otherwise`."""
    for way in (toward, otherwise):
        level = way - (way @ down) * down
        size = float(np.linalg.norm(level))
        if size > ALONG:
            break
    return level / size
