"""What all motions of a scene share: the habitat, its air, the clock's grid, and the flat ground of the companion."""

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

import numpy as np

from ..physics import frames
from ..physics.air import Air
from ..physics.constants import TURN_RAD
from ..physics.forces import Medium
from ..physics.habitat import Habitat
from ..physics.surfaces import Plane
from .flight import Release, Room

LEAST_LIMIT_S = 60.0
GREATEST_LIMIT_S = 600.0
LIMIT_TURNS = 3.0


@dataclass(frozen=True)
class Setting:
    """habitat; air or None; rate: grid samples a second (exact); duration_s: when everything ends, or None."""

    habitat: Habitat
    air: Air | None
    rate: Fraction
    duration_s: float | None

    @cached_property
    def medium(self):
        """What resists: the air, turning with the spin."""
        return Medium(self.habitat.spin, self.air, self.habitat.radius_m)

    @cached_property
    def room(self):
        """The inside of the habitat."""
        thrust = (0.0, 0.0, -self.habitat.axial_thrust_m_s2)
        return Room(self.habitat.surfaces(), True, thrust, self.habitat.radius_m)

    def flat_room(self, gravity_m_s2):
        """Flat ground under plain gravity; its coordinates are (along, height, axial)."""
        pull = (0.0, -gravity_m_s2, -self.habitat.axial_thrust_m_s2)
        return Room((Plane("floor", 1, 0.0, 1.0),), False, pull, None)

    def omega_rad_s(self, time_s):
        """Spin at one time, rad/s."""
        return float(self.habitat.spin.rate_rad_s(time_s))

    def gravity_m_s2(self, time_s):
        """Apparent gravity at the deck at one time, m/s2."""
        return self.omega_rad_s(time_s) ** 2 * self.habitat.radius_m

    def limit_s(self, start_s):
        """When a motion that starts at start_s ends at the latest: the longer of 60 s and three turns, never over 600 s."""
        omega = abs(self.omega_rad_s(start_s))
        turns = LIMIT_TURNS * TURN_RAD / omega if omega else 0.0
        end_s = start_s + min(max(LEAST_LIMIT_S, turns), GREATEST_LIMIT_S)
        return end_s if self.duration_s is None else min(end_s, self.duration_s)

    def release(self, body, time_s, place, velocity):
        """A body let go at time_s at a place (along, height, axial) with a velocity (spinward, up, axial) relative to the
        turning frame at that very place."""
        radius = self.habitat.radius_m
        position = frames.place_to_rotating(radius, place)
        moving = frames.from_local(place[0] / radius, np.asarray(velocity, dtype=float))
        angle = float(self.habitat.spin.angle_rad(time_s))
        inertial = frames.rotating_to_inertial(position, moving, angle, self.omega_rad_s(time_s))
        return Release(self.room, body, time_s, *inertial, self.limit_s(time_s))

    def flat_release(self, body, time_s, place, velocity, gravity_m_s2):
        """The same body, place and velocity over flat ground."""
        room = self.flat_room(gravity_m_s2)
        return Release(room, body, time_s, np.array(place, float), np.array(velocity, float), self.limit_s(time_s))
