"""Where two surfaces meet: both as one, and the line along which their gaps stay.

What lies there goes along t = n_1 x n_2 (`cornered.py`), or along one of them, or leaves both (`going_on.py`).
"""

from dataclasses import dataclass

import numpy as np

from .aboard import cross, dot
from .protocols import Surface
from .surfaces import Drum, Plane

_NONE = 1e-300


@dataclass(frozen=True)
class Corner:
    """Where two surfaces meet, as one: gaps (2, N), normals (3, 2, N)."""

    first: Surface
    second: Surface
    edge = False
    flat = False

    @property
    def parts(self):
        """The two."""
        return self.first, self.second

    def gap(self, position, body_radius_m):
        """Gaps (2, N) of centres (3, N)."""
        return np.stack([part.gap(position, body_radius_m) for part in self.parts])

    def normal(self, position):
        """Unit normals (3, 2, N) into the room."""
        return np.stack([part.normal(position) for part in self.parts], axis=1)

    def rates(self, position, velocity):
        """How fast they change (3, 2, N), 1/s."""
        return np.stack([part.normal_rate(position, velocity) for part in self.parts], axis=1)

    def normal_rate(self, position, velocity):
        """The rate (3, N) of the one that changes faster."""
        first, second = np.moveaxis(self.rates(position, velocity), 1, 0)
        return np.where(dot(first, first) >= dot(second, second), first, second)

    def name_at(self, position):
        """The name of the first."""
        return self.first.name_at(position)

    def never_meets(self, surface):
        """Whether what keeps to both keeps its distance from a surface too."""
        return any(_parallel(part, surface) for part in self.parts)


def _parallel(one, other):
    if isinstance(one, Drum) and isinstance(other, Drum):
        return True
    both = isinstance(one, Plane) and isinstance(other, Plane)
    return both and bool(np.allclose(np.cross(one.into, other.into), 0.0, atol=1e-12))


def parts_of(surface):
    """The surfaces that a body on `surface` touches."""
    return surface.parts if isinstance(surface, Corner) else (surface,)


def unit(vectors):
    """Unit vectors (3, N) along vectors (3, N); nothing along none."""
    return vectors / np.maximum(np.sqrt(dot(vectors, vectors)), _NONE)


def line(n):
    """Unit vectors t (3, N) along the line where surfaces of normals n (3, 2, N) meet."""
    return unit(cross(n[:, 0], n[:, 1]))
