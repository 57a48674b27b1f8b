"""Somebody who stands on the floor: the place, the directions there, the proportions of a body, and what is felt at points of it."""

from dataclasses import dataclass, replace

import numpy as np

from ..motions.course import course
from ..motions.people import felt
from ..motions.setting import Setting
from ..physics.constants import G0_M_S2
from ..physics.spin import steady

HEART = 0.72  # its height over the feet, share of stature; common practice, no source
SEAT = 0.25  # height of a seat, share of stature; common practice, no source
SITTING = 0.52  # from the seat to the crown, share of stature; common practice, no source
HAND = 0.6  # a cup held in front, share of stature; our own choice
FLOOR = 0  # of flat floors, the one stood on


@dataclass(frozen=True)
class Spot:
    """A place, metres, and its floor, as a scene document has them."""

    along_m: float
    height_m: float
    axial_m: float
    floor: int = FLOOR


@dataclass(frozen=True)
class Pace:
    """A way of going, as a `walk` of the scene document has it."""

    place: Spot
    speed_m_s: float
    heading_deg: float = 0.0
    climb_deg: float = 0.0


@dataclass(frozen=True)
class Stance:
    """Somebody standing. setting: of a steady spin; person: attributes as the document's; rows (3, 3): spinward, up, axial (on a turntable
    outward) at the feet, in the turning frame; feet_m (3,)."""

    setting: Setting
    person: object
    spot: Spot
    rows: np.ndarray
    feet_m: np.ndarray

    @property
    def omega_rad_s(self):
        """Spin, rad/s."""
        return self.setting.omega_rad_s(0.0)

    @property
    def habitat(self):
        """What is stood in."""
        return self.setting.habitat

    @property
    def on_a_table(self):
        """Whether the floor lies across the axis."""
        return self.habitat.words_of_ground.level

    @property
    def is_round(self):
        """Whether the floor bends round the axis."""
        return self.habitat.chart(FLOOR).bends

    @property
    def floor_radius_m(self):
        """From the axis to the feet."""
        return float(np.hypot(self.feet_m[0], self.feet_m[1]))

    def points(self, offsets_m):
        """Positions (n, 3) of offsets (n, 3) from the feet along the rows."""
        return self.feet_m + np.asarray(offsets_m, dtype=float) @ self.rows

    def felt(self, position, velocity=None, acceleration=None):
        """What is felt (n, 3) along the rows at the feet, m/s2, from motion in the turning frame (n, 3); at rest where left out.

        `people.felt` tells it along the directions at the point itself, which turn over beyond the axis.
        """
        none = np.zeros_like(position)
        moving = (none if velocity is None else velocity), (none if acceleration is None else acceleration)
        weight = felt(self.setting, FLOOR, np.zeros(len(position)), position, *moving)
        rows = self.habitat.chart(FLOOR).axes(position)
        return np.einsum("ni,nij->nj", weight, rows) @ self.rows.T

    def felt_at(self, paces, up_m=0.0):
        """What is felt (n, 3) at the first instant of ways of going, up_m over the feet and short of the axis: that which a
        `walk` tells. Round ground never draws one off it; round-off would, near the speed at which one floats."""
        at = np.zeros(1)
        states = [course(self.habitat, pace).at(at, up_m) for pace in paces]
        weight = self.felt(*(np.concatenate(parts) for parts in zip(*states, strict=True)))
        if self.is_round:
            weight[:, 1] = np.minimum(weight[:, 1], 0.0)
        return weight

    def pace(self, speed_m_s, heading_deg=0.0, climb_deg=0.0, height_m=0.0):
        """A Pace from height_m over the feet."""
        spot = replace(self.spot, height_m=height_m) if height_m else self.spot
        return Pace(spot, speed_m_s, heading_deg, climb_deg)


def stance_of(setting, person):
    """The Stance of a person on a habitat's deck, equator, outermost line, the middle of its first floor, or a turntable's rim,
    at the spin of time 0; a changing spin is held."""
    held = replace(setting.habitat, spin=steady(setting.omega_rad_s(0.0)))
    place = standing_place(held)
    spot, chart = Spot(*place), held.chart(FLOOR)
    return Stance(replace(setting, habitat=held), person, spot, chart.axes_at(place), chart.position(place))


def standing_place(habitat):
    """Where somebody stands in a habitat, as (along, height, axial): the start of its deck, on a turntable the rim."""
    return 0.0, 0.0, habitat.radius_m if habitat.words_of_ground.level else 0.0


def in_g(acceleration_m_s2):
    """An acceleration in standard gravities."""
    return float(acceleration_m_s2) / G0_M_S2
