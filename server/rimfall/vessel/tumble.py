"""A whole craft let go as one rigid body: how long a flip takes, whether its spin lasts, what it comes to, and when.

All of it by momentum and energy alone. What is worked out of the attitude itself is in `attitude.py` and `damped.py`.
"""

import math
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from ..physics.constants import G0_M_S2
from .attitude import Free, Principal, Steady, Turned, torque_free
from .damped import Damped
from .elliptic import mean_sn2

# Kalpana One is laid out for 1.2: A. Globus et al. (2007), the ratio from memory; common practice has 1.05 to 1.2, no source.
RULE = 1.2
FLAT_DEG = 1.0  # a wobble of less is none
PAIRED = 0.01  # of the spread of the moments: two that are nearer to each other than that are a pair
BEGUN_DEG = 1.0  # what a spin about an axis that loses it is taken to begin with, where it has no wobble at all
_MANY_RAD = 30.0  # of wobble while energy falls by e: enough for means over a wobble to be as good as the motion
_POINTS, _FAR = 161, 45.0
_CHUNK = 256  # samples


_ALIGNED_RAD = math.radians(1.0)  # a spin axis further than that from every principal one wobbles from the start


@dataclass(frozen=True)
class Spin:
    """Whether a spin about z lasts. axis: the principal one that z is nearest to, that of "greatest", "middle" or "least" inertia, one "across" of
    two of equal and lesser inertia, or "any" where all are alike; off_rad: how far z is from it."""

    axis: str
    off_rad: float

    @property
    def aligned(self):
        """Whether z is that axis."""
        return self.off_rad <= _ALIGNED_RAD

    @property
    def lasts(self):
        """Whether it lasts while no energy is lost."""
        return self.aligned and self.axis in ("greatest", "least", "any")

    @property
    def lasts_with_losses(self):
        """Whether it lasts whatever is lost."""
        return self.aligned and self.axis in ("greatest", "any")


def spin_about_z(body):
    """The Spin of a Principal body."""
    least, middle, greatest = body.moments
    groups = {"least": [0], "middle": [1], "greatest": [2]}
    if least == greatest:
        groups = {"any": [0, 1, 2]}
    elif middle == greatest:
        groups = {"least": [0], "greatest": [1, 2]}
    elif least == middle:
        groups = {"across": [0, 1], "greatest": [2]}
    shares = {name: float(np.linalg.norm(body.axes[2, which])) for name, which in groups.items()}
    axis = max(shares, key=shares.get)
    return Spin(axis, math.acos(min(shares[axis], 1.0)))


def motion_of(body, rates, time_s=None):
    """What has `at(time_s)`: the motion of a Principal body from rates (3,) in body axes; time_s: of its loss of energy, None for none. What turns
    steadily loses none."""
    free = torque_free(body, rates)
    return free if time_s is None or isinstance(free, Steady) else Damped(body, rates, time_s)


@dataclass(frozen=True)
class LetGo:
    """A craft as it is let go: its Principal body, mass and centre (3,) of mass, its rates (3,), rad/s in its own axes, the time of its loss of
    energy (None for none); spread: nothing is known of its mass but where its surfaces are. Read as `motion_of` is."""

    body: Principal
    mass_kg: float
    centre_m: np.ndarray
    rates_rad_s: np.ndarray
    losses_s: float | None
    spread: bool

    @cached_property
    def motion(self):
        """What moves it from time 0 on."""
        return motion_of(self.body, self.rates_rad_s, self.losses_s)

    @cached_property
    def _before(self):
        return torque_free(self.body, self.rates_rad_s)

    def at(self, time_s):
        """Turned at times (n,); before time 0, where nothing is lost yet, as without losses."""
        after = np.asarray(time_s, dtype=float) >= 0
        if np.all(after):
            return self.motion.at(time_s)
        turned = self._before.at(time_s)
        if np.any(after):
            since = self.motion.at(time_s[after])
            for name in Turned.__dataclass_fields__:
                getattr(turned, name)[after] = getattr(since, name)
        return turned


def nutation_rad(body, direction):
    """Angles (n,) between momentum, whose directions (n, 3) are in principal axes, and the axis of greatest inertia, up to a right angle;
    where two moments are next to the same and the third far less, the plane of both: a long craft is flat in it whichever way it has rolled."""
    less = np.array([True, not _paired(body), False]) if body.moments[0] < body.moments[2] else np.zeros(3, dtype=bool)
    return np.arctan2(np.linalg.norm(direction[:, less], axis=1), np.linalg.norm(direction[:, ~less], axis=1))


def _paired(body):
    """Whether the middle moment is next to the greatest, against how far the least is off."""
    least, middle, greatest = body.moments
    return bool(greatest - middle <= PAIRED * (greatest - least))


def energy_j(body, momentum):
    """Energy of turning (n,), joules, of momenta (n, 3) in principal axes."""
    return 0.5 * np.sum(momentum**2 / body.moments, axis=1)


def gravity_g(turned, offset_m):
    """Apparent gravity (n, 3) in g and body axes at a place offset_m (3,) from the centre of mass, of a Turned: what a thing at rest there
    feels."""
    rates, changes = turned.rates_rad_s, turned.changes_rad_s2
    carried = np.cross(changes, offset_m) + np.cross(rates, np.cross(rates, offset_m))
    return -carried / G0_M_S2


def flip_period_s(body, rates):
    """After how long the rates of a body without losses are what they were, 4 K(m)/w_p: two flips. None where they never change, or
    come to the middle axis and stay, or no axis is the middle one."""
    motion = torque_free(body, rates)
    period = motion.period_s if isinstance(motion, Free) and body.has_middle else math.inf
    return period if math.isfinite(period) else None


def flips(body, rates):
    """Whether a body turns right over by turns: its momentum comes within 45 degrees of either end of the middle axis and lingers there. Where
    two moments are almost the same it only rolls on about the axis of the third."""
    if not body.has_middle or flip_period_s(body, rates) is None:
        return False
    least, middle, greatest = 1 / body.moments[::-1]
    end, other = (greatest, least) if _level(body, rates) > middle else (least, greatest)
    off = (_level(body, rates) - middle) / (end - middle)
    parameter = (1 - off) * (middle - other) / (off * (end - middle) + middle - other)
    return bool(parameter > 0.5)  # which is never more than 1 - off, the square of the cosine of that angle


def _level(body, rates):
    """2 E/L^2: between 1/greatest and 1/least moment."""
    momentum = body.momentum(np.asarray(rates, dtype=float))
    return float(np.sum(momentum**2 / body.moments) / np.sum(momentum**2))


def size_of_momentum(body, rates):
    """L, kg m2/s."""
    return float(np.linalg.norm(body.momentum(np.asarray(rates, dtype=float))))


def time_to_flat_s(body, rates, time_s, motion=None):
    """When the greatest wobble in a round falls below FLAT_DEG, and the wobble (degrees) that had to be made up to begin with, or None.

    0 where it is flat from the start; None where it never turns, or all three moments are the same. By means over each wobble where there are
    many before it is flat (the energy's fall averaged over the motion without losses), else by the motion itself, which whoever
    has its Damped gives, so that it is not stepped twice.
    """
    inverse = 1 / body.moments
    size, (most, middle, least) = size_of_momentum(body, rates), inverse
    if not size or most == least:
        return None, None
    first, begun = _level(body, rates), None
    if most - first < 1e-9 * (most - least):
        first, begun = most - ((most - middle) or (most - least)) * math.sin(math.radians(BEGUN_DEG)) ** 2, BEGUN_DEG
    flat = math.sin(math.radians(FLAT_DEG)) ** 2
    until = middle + (most - middle) * flat if _paired(body) else least + (middle - least) * flat
    if first <= until:
        return 0.0, begun
    if begun is None and size * (most - least) * time_s < _MANY_RAD:
        return _by_motion(motion or Damped(body, rates, time_s), rates, time_s, until), None
    return float(time_s * (most - least) / 2 * _rounds(inverse, first, until)), begun


def _by_motion(motion, rates, time_s, until):
    """The time by a Damped motion itself, read some times a wobble: a body whose moments are almost alike turns far more often than it
    wobbles."""
    body, begin_s = motion.body, 0.0
    wobble_s = 2 * math.pi / (size_of_momentum(body, rates) * float(1 / body.moments[0] - 1 / body.moments[2]))
    step_s = min(time_s, wobble_s) / 16
    while begin_s < 1e3 * time_s:
        times_s = begin_s + step_s * np.arange(_CHUNK)
        near_s, levels = _crossing(motion, times_s, until)
        if levels[-1] <= until:
            return _crossing(motion, near_s + step_s * np.linspace(-1.0, 1.0, _CHUNK), until)[0]
        begin_s = times_s[-1]
    return None


def _crossing(motion, times_s, until):
    """When a level is reached between some times (n,), and the levels (n,) then."""
    levels = np.sum(motion.directions(np.maximum(times_s, 0.0)) ** 2 / motion.body.moments, axis=1)
    return float(np.interp(-until, -levels, times_s)), levels


def _rounds(inverse, first, until):
    """Integral of dh/<|n x Dn|^2> from the level `until` up to `first`, the mean over a round without losses: levels are 2E/L^2, and fall
    at 2/(time (D1 - D3)) times that mean."""
    most, middle, least = inverse
    total = 0.0
    if first > middle:
        total += _side(inverse, most, max(until, middle), first)
    if until < middle:
        total += _side(inverse, least, until, min(first, middle))
    return total


def _side(inverse, end, low, high):
    """The part of it on one side of the middle axis; `end` is the level of the axis there. In s, where the level's distances to the middle
    and to the end are as e^s: at the middle the mean vanishes like an inverse logarithm, and in s all is smooth."""
    middle = inverse[1]
    span = end - middle
    if not span or not high > low:
        return 0.0

    def place(level):
        off, near = (level - middle) / span, (end - level) / span
        return max(math.log(off / near), -_FAR) if off > 0 else -_FAR

    ends = sorted([place(low), place(high)])
    s = np.linspace(*ends, _POINTS)
    off, near = 1 / (1 + np.exp(-s)), 1 / (1 + np.exp(s))
    values = abs(span) * off * near / _mean(inverse, end, off, near)
    weights = np.where(np.arange(_POINTS) % 2, 4.0, 2.0)  # Simpson's rule
    weights[[0, -1]] = 1.0
    return float((ends[1] - ends[0]) / (_POINTS - 1) / 3 * (weights @ values))


def _mean(inverse, end, off, near):
    """Mean of |n x Dn|^2 over a round without losses, n the momentum's direction and D the inverse moments: at the level that is `off` of
    the way from the middle axis's to `end`, the level of one of the others, and `near` (1 - off) from there.

    z is the axis of `end`, x the other: n_x^2 = X cn^2, n_y^2 = Y sn^2, n_z^2 = Z dn^2. Arrays are (k,).
    """
    most, middle, least = inverse
    other = least if end == most else most
    span, across, whole = end - middle, middle - other, end - other
    share = 1 / (off * span + across)
    sn2 = mean_sn2(off * whole * share, near * across * share)
    # whole² X cn² + span² Y sn² - (near span)², with nothing left that is taken away
    return near * span * (across * (1 - sn2) + span * off)
