"""Where the catcher's hands are at any time, inertial, and how they move: at rest aboard, or those of a motion of the scene."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from ..motions.trajectory import Trajectory
from ..physics import frames
from ..physics.spin import Spin


@dataclass(frozen=True)
class Resting:
    """A place at rest aboard: rotating_m (3,)."""

    spin: Spin
    rotating_m: np.ndarray

    @property
    def kinks_s(self) -> np.ndarray:
        """Times at which its motion is not smooth."""
        return self.spin.times_s[1:]

    def seen(self, time_s: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Position and velocity (n, 3) in the turning frame at times (n,)."""
        return np.broadcast_to(self.rotating_m, (len(time_s), 3)), np.zeros((len(time_s), 3))

    def at(self, time_s: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """The same, inertial."""
        return _inertial(self.spin, self, time_s)


@dataclass(frozen=True)
class Moving:
    """What moves as a motion of the scene does; at rest aboard where that begins until it does, and where it ends from then on."""

    spin: Spin
    path: Trajectory

    @property
    def kinks_s(self) -> np.ndarray:
        """Times at which its motion is not smooth."""
        return np.concatenate([[self.path.begin_s, self.path.end_s], self.path.knots_s, self.spin.times_s[1:]])

    @cached_property
    def _ends(self):
        """Where it is (2, 3) as it begins and ends, turning frame."""
        return self.path.both(self.spin, np.array([self.path.begin_s, self.path.end_s]))[0]

    def seen(self, time_s: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Position and velocity (n, 3) in the turning frame at times (n,)."""
        inside = np.clip(time_s, self.path.begin_s, self.path.end_s)
        position, velocity, _ = self.path.both(self.spin, inside)
        early, late = time_s < self.path.begin_s, time_s > self.path.end_s
        position[early], position[late] = self._ends
        velocity[early | late] = 0.0
        return position, velocity

    def at(self, time_s: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """The same, inertial."""
        return _inertial(self.spin, self, time_s)


def _inertial(spin, target, time_s):
    position, velocity = target.seen(time_s)
    return frames.rotating_to_inertial(position, velocity, spin.angle_rad(time_s), spin.rate_rad_s(time_s))
