"""Many throws of one thrower at once, flown by the very code that flies a scene's motions (`motions/flight.py`).

A throw is a velocity (3,) along the local directions at the hand (spinward, up, axial), relative to the turning frame there; what the
thrower's own motion adds is the thrower's. Arrays are (N, 3), SI.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from ..motions.flight import FlightResult, Release, fly, fly_to_ends
from ..motions.setting import Setting
from ..physics import frames

OPEN = "never"  # the name of what is met by what meets nothing in its time


@dataclass(frozen=True)
class Thrower:
    """A hand that lets go: hand is what it lets go of, thrown at no speed of its own, so that its velocity is that of the hand, the
    thrower's own motion and the habitat's turning in it; place (along, height, axial) on a floor."""

    setting: Setting
    hand: Release
    place: tuple
    floor: int = 0

    @cached_property
    def axes(self) -> np.ndarray:
        """Rows spinward, up, axial (3, 3) at the hand as it lets go, inertial."""
        rows = self.setting.habitat.chart(self.floor).axes_at(self.place)
        return frames.turn(rows, float(self.setting.habitat.spin.angle_rad(self.hand.time_s)))

    def release(self, velocity: np.ndarray, end_s: float | None = None) -> Release:
        """What is thrown at a local velocity (3,), to fly until end_s at the latest, if not the motion's own limit."""
        moving = self.hand.velocity_m_s + np.asarray(velocity, dtype=float) @ self.axes
        return replace(self.hand, velocity_m_s=moving, end_s=self.hand.end_s if end_s is None else end_s)

    def releases(self, velocities: np.ndarray, end_s: float | np.ndarray | None = None) -> list[Release]:
        """The same of local velocities (N, 3); end_s: a number, or (N,)."""
        moving = self.hand.velocity_m_s + np.asarray(velocities, dtype=float) @ self.axes
        hand, until = self.hand, np.broadcast_to(self.hand.end_s if end_s is None else end_s, len(moving)).tolist()
        kept = hand.room, hand.body, hand.time_s, hand.position_m
        return [Release(*kept, v, end, hand.spin_rad_s, hand.lifts) for v, end in zip(moving, until, strict=True)]


@dataclass(frozen=True)
class Throws:
    """How N throws have ended: met, the names of what each met first ("deck", "ceiling", "hub", "wall", "floor", "edge", and OPEN where
    time ran out); when, and where in the turning frame; along_m (N,), how far from along the deck it does not wrap (`winding.py`)."""

    met: np.ndarray
    time_s: np.ndarray
    rotating_m: np.ndarray
    rotating_velocity_m_s: np.ndarray
    along_m: np.ndarray


def aimed(speed_m_s: np.ndarray, heading_deg: np.ndarray, elevation_deg: np.ndarray) -> np.ndarray:
    """Speeds, headings and elevations, numbers or (N,), as local velocities (N, 3)."""
    speed, heading, elevation = np.broadcast_arrays(*np.atleast_1d(speed_m_s, heading_deg, elevation_deg))
    level, up = speed * _cos(elevation), speed * _cos(elevation - 90.0)
    return np.stack([level * _cos(heading), up, level * _cos(heading - 90.0)], axis=-1)


def _cos(angle_deg):
    """Cosines of degrees, exact at the quarter turns, as `frames.cos_deg` of each."""
    quarter, rest = np.divmod(angle_deg + 90.0, 90.0)
    exact = np.array([0.0, 1.0, 0.0, -1.0])[quarter.astype(int) % 4]
    return np.where(rest == 0.0, exact, np.sin(np.radians(angle_deg + 90.0)))


def speed_heading_elevation(velocities: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """The inverse: speeds, headings from -180 to 180 and elevations (N,) of local velocities (N, 3)."""
    spinward, up, axial = np.moveaxis(np.asarray(velocities, dtype=float), -1, 0)
    level = np.hypot(spinward, axial)
    heading = np.degrees(np.arctan2(axial, spinward))
    return np.hypot(level, up), np.where(heading == -180.0, 180.0, heading), np.degrees(np.arctan2(up, level))


def flown(thrower: Thrower, velocities: np.ndarray, end_s: float | np.ndarray | None = None) -> list[FlightResult]:
    """Throws (N, 3) with their paths, each until it first meets something."""
    return fly(thrower.setting.medium, thrower.releases(velocities, end_s))


def ended(thrower: Thrower, velocities: np.ndarray, watch: Callable[[int], None] | None = None) -> Throws:
    """The same without their paths: how throws (N, 3) end. watch(done) is told how many have."""
    setting = thrower.setting
    ends = fly_to_ends(setting.medium, thrower.releases(velocities), watch)
    spin, chart = setting.habitat.spin, setting.habitat.chart(thrower.floor)
    angle, omega = spin.angle_rad(ends.time_s), spin.rate_rad_s(ends.time_s)
    position, velocity = frames.inertial_to_rotating(ends.position_m, ends.velocity_m_s, angle, omega)
    names = [OPEN if one is None else one.name_at(p) for one, p in zip(ends.surfaces, position, strict=True)]
    if chart.winds:
        turned = ends.swept_rad - (angle - spin.angle_rad(thrower.hand.time_s))
        along = thrower.place[0] + setting.habitat.radius_m * turned
    else:
        along = chart.along(position)
    return Throws(np.array(names), ends.time_s, position, velocity, along)
