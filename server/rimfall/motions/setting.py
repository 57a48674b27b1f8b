"""What all motions of a scene share: the habitat, its air, the clock's grid, and the flat ground of the reference."""

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

import numpy as np

from ..physics.air import Air
from ..physics.bodies import Body
from ..physics.constants import TURN_RAD
from ..physics.forces import Medium
from ..physics.kept import told_once
from ..physics.protocols import Vector
from ..physics.surfaces import Plane
from ..shapes import Shape
from .flight import Release, Room

LEAST_LIMIT_S = 60.0
GREATEST_LIMIT_S = 600.0
LIMIT_TURNS = 3.0


@told_once
@dataclass(frozen=True)
class Setting:
    """habitat; air or None; rate: grid samples a second (exact); duration_s: when everything ends, or None."""

    habitat: Shape
    air: Air | None
    rate: Fraction
    duration_s: float | None

    @cached_property
    def medium(self) -> Medium:
        """What resists: the air, turning with the spin."""
        return Medium(self.habitat.spin, self.air, self.habitat.radius_m)

    @cached_property
    def _rooms(self):
        return {}

    def room(self, floor: int = 0) -> Room:
        """The inside of the habitat; of flat floors, the space over one of them. One object a floor, for batches."""
        if floor not in self._rooms:
            shape = self.habitat
            self._rooms[floor] = Room(
                shape.surfaces(floor), True, shape.pull_m_s2, shape.across_m(floor), shape.still_air
            )
        return self._rooms[floor]

    def flat_room(self, gravity_m_s2: float, ground_m: float = 0.0) -> Room:
        """Flat ground under plain gravity; its coordinates are (along, height, axial)."""
        pull = (0.0, -gravity_m_s2, 0.0 if self.habitat.still_air else self.habitat.pull_m_s2[2])
        return Room((Plane("floor", (0.0, 1.0, 0.0), ground_m),), False, pull, None)

    def omega_rad_s(self, time_s: float) -> float:
        """Spin at one time, rad/s."""
        spin = self.habitat.spin
        return float(spin.rates_rad_s[0] if spin.steady else spin.rate_rad_s(time_s))

    def gravity_m_s2(self, time_s: float, place: Vector = (0.0, 0.0, 0.0), floor: int = 0) -> float:
        """Apparent gravity on the ground under a place at one time, m/s2."""
        return self.habitat.ground_gravity_m_s2(self.omega_rad_s(time_s), place[2], floor)

    def weight_at_rest(self, time_s: float, place: Vector, floor: int = 0) -> np.ndarray:
        """What a thing at rest at a place feels at one time (3,), m/s2, as (spinward, up, axial): centrifugal, and the room's pull;
        the push while the spin changes is left out."""
        chart = self.habitat.chart(floor)
        position = chart.position(place)
        if self.habitat.spin.tumbles:
            return chart.axes_at(place) @ self.habitat.spin.own(time_s, position, np.zeros(3))
        outward = self.omega_rad_s(time_s) ** 2 * position * np.array([1.0, 1.0, 0.0])
        return chart.axes_at(place) @ (outward + np.array(self.habitat.pull_m_s2))

    def weight_m_s2(self, time_s: float, place: Vector, floor: int = 0) -> float:
        """Size of what a thing at rest at a place feels at one time, m/s2."""
        return float(np.linalg.norm(self.weight_at_rest(time_s, place, floor)))

    def limit_s(self, start_s: float) -> float:
        """When a motion that starts at start_s ends at the latest: the longer of 60 s and three turns, never over 600 s."""
        spin = self.habitat.spin
        omega = spin.fastest_rad_s if spin.tumbles else abs(self.omega_rad_s(start_s))
        turns = LIMIT_TURNS * TURN_RAD / omega if omega else 0.0
        end_s = start_s + min(max(LEAST_LIMIT_S, turns), GREATEST_LIMIT_S)
        return end_s if self.duration_s is None else min(end_s, self.duration_s)

    def start(self, time_s: float, place: Vector, velocity: Vector, floor: int = 0) -> tuple[np.ndarray, np.ndarray]:
        """Position and velocity (3,), (3,) in the turning frame, of a place (along, height, axial) and a velocity along its
        local directions, relative to the turning frame at that very place."""
        chart = self.habitat.chart(floor)
        return chart.position(place), np.asarray(velocity, dtype=float) @ chart.axes_at(place)

    def release(
        self,
        body: Body,
        time_s: float,
        place: Vector,
        velocity: Vector,
        floor: int = 0,
        ball_spin_rad_s: Vector = (0.0, 0.0, 0.0),
    ) -> Release:
        """A body let go at time_s at a place with a velocity and a spin along its local directions, both relative to the
        turning frame."""
        position, moving = self.start(time_s, place, velocity, floor)
        spinning = np.asarray(ball_spin_rad_s, dtype=float) @ self.habitat.chart(floor).axes_at(place)
        spin = self.habitat.spin
        inertial = spin.to_inertial(time_s, position, moving)
        turned = spin.turn(spinning + spin.omega_rad_s(time_s), time_s)
        lifts = bool(np.any(spinning))
        return Release(self.room(floor), body, time_s, *inertial, self.limit_s(time_s), turned, lifts)

    def flat_release(
        self,
        body: Body,
        time_s: float,
        place: Vector,
        velocity: Vector,
        gravity_m_s2: float,
        ball_spin_rad_s: Vector = (0.0, 0.0, 0.0),
    ) -> Release:
        """The same body, place, velocity and spin over flat ground at the height of the ground under the place."""
        room = self.flat_room(gravity_m_s2, self.habitat.ground_height_m(place[2]))
        state = (np.array(v, dtype=float) for v in (place, velocity))
        spinning = np.array(ball_spin_rad_s, dtype=float)
        return Release(room, body, time_s, *state, self.limit_s(time_s), spinning, bool(np.any(spinning)))
