"""What a stepper takes bodies through: a `Step` of many bodies, its path inside it as Bernstein coefficients; and the stepper of those
that coast (`Coaster`). The others are `windowed.py`, and `stiff.py` for what the air all but carries.

Inside, arrays are (3, N): a component is contiguous.
"""

from dataclasses import dataclass

import numpy as np

from . import bernstein
from .budget import spend

AT_ONCE = 5_000  # bodies
JUST_AFTER = 1.0 + 1e-11  # of a time: on the far side of a jump there


@dataclass(frozen=True)
class Step:
    """One step of M bodies: elapsed_s at its start and length_s (numbers, or (M,)), states (3, M) and the path inside it.

    position_m and velocity_m_s are the state at the start. path_m and path_m_s (K, 3, M) are Bernstein coefficients, in
    s = (elapsed - start)/length, of the change since the start: the first row is zero, the last the change at the end.
    """

    elapsed_s: np.ndarray | float
    length_s: np.ndarray | float
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    path_m: np.ndarray
    path_m_s: np.ndarray

    def at(self, s, some=slice(None)):
        """Position and velocity (3, M) at s (M,) of the bodies of an index, of all unless given."""
        return (
            self.position_m[:, some] + bernstein.value(self.path_m[..., some], s),
            self.velocity_m_s[:, some] + bernstein.value(self.path_m_s[..., some], s),
        )

    @property
    def end(self):
        """Position and velocity (3, M) at the end."""
        return self.position_m + self.path_m[-1], self.velocity_m_s + self.path_m_s[-1]

    def only(self, mask):
        """The same step of the bodies of the mask (M,)."""
        times = (t[mask] if isinstance(t, np.ndarray) else t for t in (self.elapsed_s, self.length_s))
        arrays = (self.position_m, self.velocity_m_s, self.path_m, self.path_m_s)
        return Step(*times, *(a[..., mask] for a in arrays))


class Coaster:
    """The same for N bodies that nothing but a constant inertial pull moves: exact steps, as far as reach_m.

    pull_m_s2 (3, N); limit_s and reach_m (N,). Each path is its parabola in closed form: exact however long it flies. One
    step each; or steps no longer than longest_s (N,) that do not cross stops_s (S, N), elapsed times of each body's own.
    """

    def __init__(self, pull_m_s2, position, velocity, limit_s, reach_m, *, longest_s=None, stops_s=None):
        self._pull, self._position, self._velocity = pull_m_s2, position, velocity
        level = np.hypot(velocity[0], velocity[1])
        with np.errstate(over="ignore"):  # a speed next to none reaches nothing: inf, as none does
            reached_s = np.divide(reach_m, level, out=np.full_like(level, np.inf), where=level > 0)
        self._end_s = np.minimum(limit_s, reached_s)
        self._longest_s = np.full_like(level, np.inf) if longest_s is None else longest_s
        self._stops_s = np.empty((0, len(level))) if stops_s is None else stops_s
        self._elapsed_s = np.zeros_like(level)

    @property
    def done(self):
        """Which bodies (N,) have come to their limit or their reach."""
        return self._elapsed_s >= self._end_s

    def step(self):
        """The next step; its elapsed_s and length_s are (N,)."""
        spend(1, len(self._elapsed_s))
        since = self._elapsed_s
        ahead = np.where(self._stops_s > since, self._stops_s, np.inf)
        until = np.minimum(np.min(ahead, axis=0, initial=np.inf), np.minimum(self._end_s, since + self._longest_s))
        length = until - since
        position = self._position + since * (self._velocity + 0.5 * since * self._pull)
        velocity = self._velocity + since * self._pull
        none, moved, faster = np.zeros_like(position), length * velocity, length * self._pull
        path_m = np.stack([none, 0.5 * moved, moved + 0.5 * length * faster])
        path_m_s = np.stack([none, 0.5 * faster, faster])
        self._elapsed_s = until
        return Step(since, length, position, velocity, path_m, path_m_s)

    def keep(self, mask):
        """Go on with the bodies of the mask (N,) only."""
        for name in ("_pull", "_position", "_velocity", "_end_s", "_longest_s", "_stops_s", "_elapsed_s"):
            setattr(self, name, getattr(self, name)[..., mask])
