"""What moves a body in the turning frame, but the surface it lies on: the frame's own accelerations, a pull, and the air.

Arrays are (3, N). omega, the frame's rate about z, and its change are numbers or (N,).
"""

from functools import lru_cache

import numpy as np

from . import buoyancy
from .drag import Drag

_NEXT, _BUT_ONE = np.array([1, 2, 0]), np.array([2, 0, 1])


def dot(a, b):
    """a.b (N,) of vectors (3, N)."""
    return np.add.reduce(a * b, axis=0)


def cross(a, b):
    """a x b (3, N) of vectors (3, N)."""
    out = a.take(_NEXT, 0) * b.take(_BUT_ONE, 0)
    out -= a.take(_BUT_ONE, 0) * b.take(_NEXT, 0)
    return out


@lru_cache(maxsize=64)
def _matrices(omega, change):
    """What the frame's rate and its change make of velocities and of places, (3, 3) each."""
    twice, outward = 2.0 * omega, omega * omega
    of_velocity = np.array([[0.0, twice, 0.0], [-twice, 0.0, 0.0], [0.0, 0.0, 0.0]])
    return of_velocity, np.array([[outward, change, 0.0], [-change, outward, 0.0], [0.0, 0.0, 0.0]])


def of_frame(omega, change, x, u):
    """The turning frame's own accelerations (3, N), m/s2, at x with velocities u (3, N) in it: -2 Omega x u
    - Omega x (Omega x x) - Omega' x x."""
    if isinstance(omega, float) and isinstance(change, float):
        of_velocity, of_place = _matrices(omega, change)
        out = of_velocity @ u
        out += of_place @ x
        return out
    twice, outward = 2.0 * omega, omega * omega
    out = np.empty_like(u)
    out[0] = twice * u[1] + outward * x[0] + change * x[1]
    out[1] = outward * x[1] - twice * u[0] - change * x[0]
    out[2] = 0.0
    return out


class Aboard:
    """The accelerations of N bodies in one room, m/s2: -2 Omega x u - Omega x (Omega x x) - Omega' x x + pull + drag / m.

    medium: its air, None for none. room: `turns`, `pull_m_s2`, `still_air`. bodies: a `bodies.Bodies`. Drag by the velocity
    against the air, which turns with the frame and thins toward the axis as in `forces.py`; or stands still, of one density.
    What is buoyant: `buoyancy.py`. added_mass_factor (N,), or 1: what is moved with a body, over its mass.
    """

    def __init__(self, medium, room, bodies):
        self._medium, self._room, self._bodies = medium, room, bodies
        self._buoyancy = buoyancy.of_bodies(bodies, medium)
        self.added_mass_factor = 1.0 if self._buoyancy is None else self._buoyancy.added_mass_factor
        self._pull = np.array(room.pull_m_s2, dtype=float)[:, None]
        self._pulls = bool(np.any(self._pull))
        self._air = medium.air
        if self._air is not None:
            self._drag = Drag(bodies, self._air)
            self._thins = self._room.turns and not self._room.still_air

    def take(self, which):
        """Those of the index or mask."""
        return Aboard(self._medium, self._room, self._bodies.take(which))

    def at(self, omega, change, x, u):
        """Acceleration (3, N) of bodies at x with velocities u (3, N), both in the room's frame."""
        out = of_frame(omega, change, x, u)
        if self._buoyancy is not None:
            turning = (0.0, 0.0) if self._room.still_air else (omega, change)
            return out + self._buoyancy.at(-self._dragged(omega, x, u), self._pull, turning, x, u)
        if self._pulls:
            out += self._pull
        if self._air is not None:
            out -= self._dragged(omega, x, u)
        return out

    def through_air(self, omega, x, u):
        """Velocities (3, N) through the air of bodies at x with velocities u (3, N); None where there is none."""
        if self._air is None:
            return None
        return np.stack([u[0] - omega * x[1], u[1] + omega * x[0], u[2]]) if self._room.still_air else u

    def _dragged(self, omega, x, u):
        wind = self.through_air(omega, x, u)
        speed = np.sqrt(dot(wind, wind))
        if self._thins:
            off = x[0] * x[0] + x[1] * x[1] - self._medium.deck_radius_m**2
            speed = speed * np.exp(omega * omega * self._air.thinning_s2_m2 * off)
        return self._drag.rate_1_s(self._drag.scale * speed) * wind
