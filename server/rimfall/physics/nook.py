"""What touches three surfaces at once: it goes on along two of them, or one, or off all three; else it lies there.

Where no normals are the same but for a sign, three surfaces leave a centre nowhere to go; what meets the third without a bounce has after
that the velocity nearest to the one before that leads into none of them (Moreau's law of the impact without bounce; from memory). Of the ways of
going on, the first is taken that does not press it into the surface left out. Where there is none it lies: at rest, sum N_i n_i = -A.
Spin that it has left then, friction ends within a fraction of a second; that is not followed.
"""

from itertools import combinations

import numpy as np

from .aboard import cross, dot
from .corner import Corner
from .cornered import Cornered
from .crossings import STILL_M_S
from .going_on import way_on
from .rolling import LAWS, ROLLS, SLIDES, STANDS

_ONE_LINE = 1e-9  # of the sine between two normals: as small, they meet in no line
_LEAST_M_S2, _LEAST_SHARE = (
    5e-9,
    1e-9,
)  # pressed on by no more than that, or that share of all that acts, is not pressed on
_PARTED_M_S = 1e-9


def stopped_by(normals, velocity):
    """The velocity (3,) nearest to a velocity that leads into none of surfaces of normals (3, K)."""
    candidates = []
    for count in range(normals.shape[1] + 1):
        for which in combinations(range(normals.shape[1]), count):
            n = normals[:, which]
            left = velocity - n @ (np.linalg.pinv(n) @ velocity) if count else velocity
            if np.all(left @ normals >= -_PARTED_M_S):
                candidates.append((float(np.sum((left - velocity) ** 2)), count, left))
    return min(candidates, key=lambda one: one[:2])[2]


def way_between(surfaces, one, rate, position, velocity, turns, late=False):
    """(Way, surfaces left out) of one body that touches three, from a state (6, 1) that leads into none; None where it lies between
    them. Arguments as of `going_on.way_on`."""
    for left_out in surfaces:
        pair = [s for s in surfaces if s is not left_out]
        first, second = (s.normal(position[:3]) for s in pair)
        across = cross(first, second)
        if dot(across, across)[0] < _ONE_LINE**2:
            continue
        way = way_on(Corner(*pair), one, rate, position, velocity, turns, late)
        others = [s for s in surfaces if s not in way.parts]
        if not any(_enters(s, way, one, rate, position, turns) for s in others):
            return way, others
    return None


def _enters(surface, way, one, rate, position, turns):
    """Whether a Way leads into a surface that is touched."""
    x, u = position[:3], way.velocity[:3]
    if len(way.parts) == 2 and not np.any(way.velocity):
        return False
    omega, turning = rate
    free = one.aboard.at(omega, turning, x, u)
    change = _law(way, one, position, turns).at(rate, position, way.velocity)[0][:3] if way.parts else free
    parts, faster = surface.gap_rates(x, u, change)
    least = _LEAST_M_S2 + _LEAST_SHARE * float(np.sqrt(dot(free, free))[0])
    return bool(parts[0] < -STILL_M_S or (parts[0] <= STILL_M_S and faster[0] < -least))


def _law(way, one, position, turns):
    if len(way.parts) == 2:
        return Cornered(Corner(*way.parts), one, way.mode)
    (surface,) = way.parts
    if not turns:
        return LAWS[STANDS](surface, one)
    n = surface.normal(position[:3])
    slip = way.velocity[:3] - cross(way.velocity[3:], n)
    slip = slip - dot(slip, n) * n
    return LAWS[SLIDES if np.any(np.abs(slip) > STILL_M_S) else ROLLS](surface, one)


class Nook:
    """Bodies that lie between three surfaces, for `stillness.Stillness`: what holds them does while all three are pressed on."""

    def __init__(self, surfaces, many):
        self.surfaces, self.many = surfaces, many

    def axis(self, position):
        """What it can spin about at rest: nothing (3, N)."""
        return np.zeros_like(position[:3])

    def held(self, rate, position, velocity, _share):
        """The least press (1, N), above 0 where what lies still stays so; and no way to go (3, N)."""
        free = self.many.aboard.at(*rate, position[:3], velocity[:3])
        n = np.stack([s.normal(position[:3]) for s in self.surfaces], axis=1)
        press = -np.einsum("nij,jn->in", np.linalg.pinv(np.moveaxis(n, -1, 0)), free)
        least = _LEAST_M_S2 + _LEAST_SHARE * np.sqrt(dot(free, free))
        return (np.min(press, axis=0) + least)[None], np.zeros_like(free)
