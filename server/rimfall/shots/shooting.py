"""Throws flown for so long each, through whatever is in the way, all at once; and the throws that come to given places.

In vacuum a flight is its parabola. In air each body's time is counted in its own flight, so that all are done at once and a step is
as hard for one as for another; the steps and the forces are those that fly a scene's motions. Arrays are (N, 3), SI.
"""

from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from ..physics.bodies import as_arrays
from ..physics.forces import Force, settling_rates_1_s
from ..physics.room import fresh
from ..physics.stiff import StiffStepper
from ..physics.windowed import WindowStepper
from .throws import Thrower

ROUGH_M, FINE_M = 1e-6, 5e-10  # error allowed to a step
_STIFF_TIMES = 2_000.0  # as in `motions/flight.py`, but many throws are aimed at once, each in steps of its own
_PROBE = 1e-5  # of a velocity: the change by which its effect is told
_LEAST_PROBE_M_S = 1e-4
_MOST_M_S = 1e5  # a trial faster than that has run away,
_RUNS_AWAY = 6.0  # or one that much faster than its guess
_AIR_KNOWN = 2.0  # radii from the axis: a trial that goes farther meets the air that is there, whose law would grow without bound


class _OfFlights:
    """A force on bodies whose time is counted in their flights of flight_s (N,): accelerations and velocities are metres a flight. What
    is farther from the axis than reach_m feels what it would there."""

    def __init__(self, force, flight_s, reach_m):
        self._force, self._flight_s, self._squared, self._reach_m = force, flight_s, flight_s * flight_s, reach_m

    def at(self, share, position, velocity, slowing=None, room=fresh, out=None):
        """Accelerations (3, N) at a share of the flight, a number or (N,), or (3, K, N) at K of them; slowing, room, out: as for `Force.at`."""
        off_axis_m = np.hypot(position[0], position[1])
        if np.any(off_axis_m > self._reach_m):
            position = position * np.minimum(1.0, self._reach_m / np.maximum(off_axis_m, self._reach_m))
        out = self._force.at(share * self._flight_s, position, velocity / self._flight_s, slowing, room, out)
        if slowing is not None:
            slowing.times(self._flight_s)
        out *= self._squared
        return out

    def take(self, which):
        """The force on those of the index, slice or mask."""
        return _OfFlights(self._force.take(which), self._flight_s[which], self._reach_m)


@dataclass(frozen=True)
class Shooting:
    """Flights from a Thrower's hand. thinned: the share of the air that is there."""

    thrower: Thrower
    thinned: float = 1.0

    @cached_property
    def medium(self):
        """The air, or what there is of it."""
        medium = self.thrower.setting.medium
        if self.thinned == 1.0 or medium.air is None:
            return medium
        return replace(medium, air=replace(medium.air, pressure_pa=self.thinned * medium.air.pressure_pa))

    @property
    def in_vacuum(self) -> bool:
        """Whether paths are parabolas."""
        return self.medium.air is None

    @cached_property
    def _pull(self):
        return np.array(self.thrower.hand.room.pull_m_s2)

    @cached_property
    def _settles_1_s(self):
        bodies = as_arrays([self.thrower.hand.body])
        return float(settling_rates_1_s(self.medium, bodies, np.linalg.norm(self._pull))[0])

    def _force(self, count):
        hand, room = self.thrower.hand, self.thrower.hand.room
        turns = np.full(count, float(room.turns))
        spinning = np.repeat(np.asarray(hand.spin_rad_s, dtype=float)[:, None], count, axis=1) if hand.lifts else None
        bodies = as_arrays([hand.body]).take(np.zeros(count, dtype=int))
        pull = np.repeat(self._pull[:, None], count, axis=1)
        return Force(
            self.medium, bodies, np.full(count, hand.time_s), turns, pull, spinning, turns * (not room.still_air)
        )

    def arrive(
        self, velocities: np.ndarray, flight_s: np.ndarray, absolute_m: float = ROUGH_M
    ) -> tuple[np.ndarray, np.ndarray]:
        """Inertial positions and velocities (N, 3) after flights of flight_s (N,) of throws at local velocities (N, 3)."""
        hand, each = self.thrower.hand, flight_s[:, None]
        leaves = hand.velocity_m_s + velocities @ self.thrower.axes
        if self.in_vacuum:
            return hand.position_m + each * (leaves + 0.5 * each * self._pull), leaves + each * self._pull
        reach_m = _AIR_KNOWN * self.medium.deck_radius_m
        stiff = self._settles_1_s * flight_s > _STIFF_TIMES
        position, velocity = np.empty_like(leaves), np.empty_like(leaves)
        for some, fly in ((~stiff, _propagate), (stiff, _propagate_stiff)):
            if np.any(some):
                start = np.repeat(hand.position_m[:, None], some.sum(), axis=1)
                force = _OfFlights(self._force(some.sum()), flight_s[some], reach_m)
                ends = fly(force, start, (leaves[some] * each[some]).T.copy(), 1.0, absolute=absolute_m)
                position[some], velocity[some] = ends[0].T, ends[1].T / each[some]
        return position, velocity

    def effects(
        self, velocities: np.ndarray, flight_s: np.ndarray, absolute_m: float = ROUGH_M
    ) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """Those states, and how the position changes with the velocity thrown: (N, 3, 3), [i, a, b] = d place_a / d velocity_b."""
        count = len(velocities)
        if self.in_vacuum:
            change = flight_s[:, None, None] * self.thrower.axes.T
            return *self.arrive(velocities, flight_s), change
        step = np.maximum(_PROBE * np.linalg.norm(velocities, axis=1), _LEAST_PROBE_M_S)
        probes = np.concatenate([velocities, *(velocities + step[:, None] * axis for axis in np.eye(3))])
        position, velocity = self.arrive(probes, np.tile(flight_s, 4), absolute_m)
        moved = (position[count:].reshape(3, count, 3) - position[:count]) / step[:, None]
        return position[:count], velocity[:count], np.moveaxis(moved, 0, -1)


def _propagate(force, position, velocity, limit, absolute):
    """States (3, N), (3, N) of bodies at a limit."""
    return WindowStepper(force, position, velocity, limit, absolute=absolute).propagate()


def _propagate_stiff(force, position, velocity, limit, absolute):
    """As `_propagate`, of bodies that the air stops at once."""
    stepper = StiffStepper(force, position, velocity, limit, absolute=absolute)
    while not stepper.done:
        step = stepper.step()
    return step.end


def hit(
    shooting: Shooting,
    place: np.ndarray,
    flight_s: np.ndarray,
    velocities: np.ndarray,
    within_m: float,
    absolute_m: float = ROUGH_M,
    most: int = 12,
) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
    """Throws that come to inertial places (N, 3) after flight_s (N,), from guesses (N, 3) -> local velocities (N, 3), how far the guesses
    miss (N,), which of the throws did come within within_m before they were mended once more (N,), how they then move (N, 3), and the
    inverse effects (N, 3, 3) (Newton's method: four flights that fly together cost little more than one)."""
    velocities = velocities.copy()
    fastest = np.minimum(_RUNS_AWAY * (1.0 + np.linalg.norm(velocities, axis=1)), _MOST_M_S)
    count = len(velocities)
    good, first_m = np.zeros(count, dtype=bool), np.full(count, np.inf)
    moving, back = np.zeros((count, 3)), np.zeros((count, 3, 3))
    going = np.flatnonzero(np.linalg.norm(velocities, axis=1) < fastest)
    least = np.full(count, np.inf)
    for round_ in range(most):
        if not len(going):
            break
        position, moving[going], effects = shooting.effects(velocities[going], flight_s[going], absolute_m)
        back[going] = np.linalg.pinv(effects)
        off = place[going] - position
        size = np.linalg.norm(off, axis=1)
        if round_ == 0:
            first_m[going] = size
        some = size <= 4 * least[going]
        least[going] = np.minimum(least[going], size)
        good[going[size <= within_m]] = True
        velocities[going[some]] += np.einsum("nab,nb->na", back[going[some]], off[some])
        some &= (size > within_m) & (np.linalg.norm(velocities[going], axis=1) < fastest[going])
        going = going[some]
    return velocities, first_m, good, moving, back
