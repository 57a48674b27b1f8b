"""What is counted of a bob's swings: how long one takes, and how the plane in which it swings turns, as seen aboard.

Both are read off the turning points of the path itself, where the bob is farthest from its plumb line: the period is twice the
mean time from one to the next, and the plane's turn is that of the line through them, seen from above.
"""

import numpy as np

from ...physics.pendulum import square_to

_SHARES = np.linspace(0.0, 1.0, 13)[1:]  # of a step, at which turning points are looked for
_HALVINGS = 45
_ROUND = 0.95  # a swing whose least angle is more than that share of its greatest goes round, and has no plane
_NONE_RAD = 1e-7  # a swing that is none
_MOST_RAD = np.pi / 3  # that the plane may turn from one turning point to the next: beyond, none could tell which way


class Swings:
    """The swings of a bob on a `hang.HangingLine` along a path (Trajectory). period_s, plane_turns_deg, plane_turns_deg_per_h: None where
    there are none to count: it is at rest, goes round, or its plumb line itself turns with a changing spin; nor are they where
    they are not to be `counted`.

    The plane's turn is anticlockwise seen from above where it is positive.
    """

    def __init__(self, line, spin, path, *, counted=True):
        self.period_s = self.plane_turns_deg = self.plane_turns_deg_per_h = None
        if not counted or np.any(spin.times_s > path.begin_s):
            return
        self._line, self._path = line, path
        self._down = line.plumb(spin, np.array([path.begin_s]))[0]
        times = self._turning_s()
        if len(times) >= 2:
            self.period_s = float(2.0 * (times[-1] - times[0]) / (len(times) - 1))
            self._turn(times)

    def _away(self, time_s):
        """How far (n,) the line is from plumb, radians, and a figure (n,) with the sign of its rate, at times (n,)."""
        position, velocity = self._path.at(time_s)
        place = position - self._line.pivot_m
        level = place - (place @ self._down)[:, None] * self._down
        angle = np.arctan2(np.linalg.norm(level, axis=1), place @ self._down)
        return angle, -(velocity @ self._down)

    def _turning_s(self):
        """Times (k,) at which the bob is farthest from its plumb line."""
        path = self._path
        knots = path.start_s[:, None] + path.length_s[:, None] * _SHARES
        # The begin itself, where it is let go from rest, is one: the rate there is 0, and falls.
        grid = np.unique(np.clip(np.concatenate([[path.begin_s], knots.ravel()]), path.begin_s, path.end_s))
        angle, rate = self._away(grid)
        if np.max(angle, initial=0.0) <= _NONE_RAD or np.min(angle) >= _ROUND * np.max(angle):
            return np.empty(0)
        k = np.flatnonzero((rate[:-1] > 0) & (rate[1:] <= 0))
        low, high = grid[k], grid[k + 1]
        for _ in range(_HALVINGS):
            middle = 0.5 * (low + high)
            grows = self._away(middle)[1] > 0 if len(k) else np.empty(0, dtype=bool)
            low, high = np.where(grows, middle, low), np.where(grows, high, middle)
        first = [path.begin_s] if len(rate) > 1 and rate[0] == 0.0 and rate[1] < 0 else []
        return np.concatenate([first, 0.5 * (low + high)])

    def _turn(self, times):
        """How the line through the turning points turns."""
        up = -self._down
        east = square_to(up, self._line.rows[0], self._line.rows[2])
        level = self._path.at(times)[0] - self._line.pivot_m
        azimuth = np.arctan2(level @ np.cross(up, east), level @ east)
        steps = (np.diff(azimuth) + np.pi / 2) % np.pi - np.pi / 2
        if np.max(np.abs(steps)) > _MOST_RAD:
            return
        self.plane_turns_deg = float(np.degrees(np.sum(steps)))
        self.plane_turns_deg_per_h = self.plane_turns_deg / (float(times[-1] - times[0]) / 3600.0)
