"""A frame whose axis moves: that of a craft that tumbles about its centre of mass. It is asked what a `Spin` is asked.

The inertial axes are those of the frame at time 0, with the same origin; the centre of mass stays where it is in both. Vectors are (..., 3), at
times (...). Its attitude is a given function of time (`vessel/attitude.py`, `vessel/damped.py`), read anew for each call.
"""

from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np

from . import frames, quaternions

_LOOKS = 2_001  # at how many times the fastest turning is looked for
_KEPT = 4  # readings of so many arrays of times
_SLACK = 1.1  # between two of them it may be that much faster


@dataclass(frozen=True)
class Tumbling:
    """motion: what has `at(time_s)`, attitudes with quaternion_wxyz, rates_rad_s and changes_rad_s2; centre_m (3,): of mass, in the frame;
    last_s: until when it is asked."""

    motion: Any
    centre_m: np.ndarray
    last_s: float
    tumbles = True
    steady = False

    @cached_property
    def fastest_rad_s(self):
        """The fastest it turns about any axis, rad/s."""
        rates = self.motion.at(np.linspace(0.0, self.last_s, _LOOKS)).rates_rad_s
        return _SLACK * float(np.max(np.linalg.norm(rates, axis=1)))

    @property
    def rates_rad_s(self):
        """For bounds: as the rates of a spin, the fastest."""
        return np.array([self.fastest_rad_s])

    @property
    def times_s(self):
        """Where its rate has corners: nowhere."""
        return np.zeros(1)

    def quaternion(self, time_s):
        """Attitudes (n, 4) at times (n,): from the frame's axes to the inertial ones."""
        return self._read(np.asarray(time_s, dtype=float)).quaternion_wxyz

    def angle_rad(self, time_s):
        """How far round z its attitude is, rad; unwrapped along times (n,)."""
        time_s = np.asarray(time_s, dtype=float)
        w, _, _, z = self.quaternion(time_s.ravel()).T
        return np.unwrap(2 * np.arctan2(z, w)).reshape(time_s.shape)

    def rate_rad_s(self, time_s):
        """Its rate about its own z at times (...), rad/s."""
        return self._at(time_s)[1][..., 2]

    def change_rad_s2(self, time_s):
        """How that changes, rad/s2."""
        return self._at(time_s)[2][..., 2]

    def omega_rad_s(self, time_s):
        """How it turns, along its own axes."""
        return self._at(time_s)[1]

    def omega_change_rad_s2(self, time_s):
        """How that changes, along its own axes."""
        return self._at(time_s)[2]

    def to_inertial(self, time_s, position, velocity):
        """Position and velocity of the turning frame as inertial ones."""
        turn, rates, _ = self._at(time_s)
        off = position - self.centre_m
        return _turned(turn, off) + self.centre_m, _turned(turn, velocity + frames.cross(rates, off))

    def to_frame(self, time_s, position, velocity):
        """Inertial position and velocity as those of the turning frame."""
        turn, rates, _ = self._at(time_s)
        off = _turned(np.swapaxes(turn, -1, -2), position - self.centre_m)
        return off + self.centre_m, _turned(np.swapaxes(turn, -1, -2), velocity) - frames.cross(rates, off)

    def turn(self, vectors, time_s):
        """Vectors of the frame's axes along the inertial ones."""
        return _turned(self._at(time_s)[0], vectors)

    def turn_back(self, vectors, time_s):
        """Vectors of the inertial axes along the frame's."""
        return _turned(np.swapaxes(self._at(time_s)[0], -1, -2), vectors)

    def carries(self, time_s, position):
        """Inertial velocity of what stands still in the frame at inertial positions."""
        turn, rates, _ = self._at(time_s)
        return frames.cross(_turned(turn, rates), position - self.centre_m)

    def own(self, time_s, position, velocity):
        """The frame's own accelerations, m/s2, at positions with velocities in it."""
        _, rates, changes = self._at(time_s)
        off = position - self.centre_m
        return (
            -2 * frames.cross(rates, velocity)
            - frames.cross(rates, frames.cross(rates, off))
            - frames.cross(changes, off)
        )

    def centrifugal(self, time_s, position):
        """The part of that without velocity and change of the rates."""
        rates = self._at(time_s)[1]
        return -frames.cross(rates, frames.cross(rates, position - self.centre_m))

    def coriolis(self, time_s, velocity):
        """The part of that by the velocity."""
        return -2 * frames.cross(self._at(time_s)[1], velocity)

    def back(self, begin_s, end_s):
        """Quaternions (n, 4) by which what does not turn has turned in the frame from times (n,) to others."""
        return quaternions.times(self.quaternion(end_s) * (1.0, -1.0, -1.0, -1.0), self.quaternion(begin_s))

    @cached_property
    def _lately(self):
        return {}

    def _read(self, time_s):
        """The attitudes at times (n,): one path is read at the same times for many figures."""
        key = time_s.tobytes()
        if key not in self._lately:
            while len(self._lately) >= _KEPT:
                del self._lately[next(iter(self._lately))]
            self._lately[key] = self.motion.at(time_s)
        return self._lately[key]

    def _at(self, time_s):
        """Matrices (..., 3, 3) from the frame's axes to the inertial ones, rates and their changes (..., 3) in the frame's, at times (...)."""
        time_s = np.asarray(time_s, dtype=float)
        turned = self._read(time_s.ravel())
        shape = time_s.shape
        return (
            quaternions.matrices(turned.quaternion_wxyz).reshape(*shape, 3, 3),
            turned.rates_rad_s.reshape(*shape, 3),
            turned.changes_rad_s2.reshape(*shape, 3),
        )


def _turned(matrices, vectors):
    return np.einsum("...ij,...j->...i", matrices, vectors)
