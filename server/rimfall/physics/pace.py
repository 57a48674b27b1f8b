"""How long the windows of a swing should be, from corner to corner of the drag (`kink.py`), by what served at the swings before.

Beside a corner the series fades slowly, whatever its length: drag is no power of the speed (Cd changes much as a body all but stands), and
the error goes as the cube of the length or so, where amid a swing it goes as its 20th power. So each kind of window has its own length.
"""

import numpy as np

_STRETCHED = 1.2  # so much longer may a window be than was wanted, where they are then fewer
# Of windows beside a corner: the error to be had, of that allowed, and the power with which the length goes with it.
_AIM, _POWER = 0.5, 1 / 3
_SHRINK, _GROW = 0.5, 1.5
_SHORT = 0.05  # of a window beside a corner: none of its own is worth it


class Pace:
    """State: when the last corner was; how long after the one before; the lengths that serve beside a corner and amid a swing, s."""

    def __init__(self, start_s):
        self._corner_s, self._between_s = start_s, np.inf
        self._beside_s, self._amid_s, self._fails = np.inf, None, False

    def length_s(self, time_s, wanted_s):
        """The length to try at a time, where another is wanted: one with which a window ends where the next corner is awaited."""
        ahead_s = self._corner_s + self._between_s - time_s
        if self._fails or not 0.0 < ahead_s < np.inf:
            return wanted_s
        beside_s = min(self._beside_s, ahead_s)
        if time_s == self._corner_s:
            return _evenly(ahead_s, beside_s) if ahead_s <= 2.0 * _STRETCHED * beside_s else beside_s
        amid_s = ahead_s - beside_s
        return _evenly(amid_s, self._amid_s or wanted_s) if amid_s > _SHORT * beside_s else ahead_s

    def failed(self):
        """A window was too long."""
        self._fails = True

    def took(self, time_s, length_s, error, wanted_s, at_corner):
        """A window from a time was taken, of an error, 1 is allowed; wanted_s: the length for the next that `next_length` gives;
        at_corner: whether it ends at one."""
        self._fails = False
        if at_corner or time_s == self._corner_s:
            self._beside_s = length_s * min(max((_AIM / max(error, 1e-9)) ** _POWER, _SHRINK), _GROW)
        else:
            self._amid_s = wanted_s
        if at_corner:
            end_s = time_s + length_s
            self._between_s, self._corner_s = end_s - self._corner_s, end_s


def _evenly(whole_s, about_s):
    """What is about as long as about_s and goes into the whole."""
    return whole_s / np.ceil(whole_s / (_STRETCHED * about_s))
