"""The ways on which somebody goes over the ground at a constant speed, and how fast nothing would press the feet on.

On round ground the heading is kept, so that the feet go along a helix, or, climbing, along a spiral toward the axis; on flat floors
and on a turntable they go straight. Pieces of a way are powers of the share of the piece.
"""

import math
from dataclasses import dataclass

import numpy as np

from ..physics import frames
from .people import given_leg

_POWERS = 16  # of a piece of a spiral; with the next two, what is left out is below 1e-15 of the radius
_MOST_RAD = 0.3  # that a piece goes round the axis
_MOST_SHARE = 0.05  # of its radius that a piece climbs


@dataclass(frozen=True)
class Straight:
    """Straight on over flat ground: where the feet begin and how they move (3,), and which way is up (3,), turning frame."""

    feet_m: np.ndarray
    velocity_m_s: np.ndarray
    up: np.ndarray

    def at(self, since_s, up_m):
        """Position, velocity and acceleration (n, 3) of the point up_m over the feet, since_s (n,) after the start."""
        position = self.feet_m + up_m * self.up + since_s[:, None] * self.velocity_m_s
        return position, np.broadcast_to(self.velocity_m_s, position.shape), np.zeros_like(position)

    def turned_rad(self, _since_s):
        """How far it goes round: a line does not go round more than half."""
        return 0.0

    def leg(self, surface, start_s, end_s, up_m):
        """The Leg of that point."""
        length_s = max(end_s - start_s, 1.0)
        powers = np.stack([self.feet_m + up_m * self.up, length_s * self.velocity_m_s])[None]
        return given_leg(surface, np.array([start_s]), np.array([length_s]), powers, end_s)


@dataclass(frozen=True)
class Round:
    """Round the axis: the feet begin at radius_m, azimuth_rad and axial_m; level_m_s spinward, rise_m_s toward the axis, axial_m_s."""

    radius_m: float
    azimuth_rad: float
    axial_m: float
    level_m_s: float
    rise_m_s: float
    axial_m_s: float

    def _feet(self, since_s):
        """Radius and azimuth (n,) of the feet."""
        radius = self.radius_m - self.rise_m_s * since_s
        if self.rise_m_s == 0.0:
            return radius, self.azimuth_rad + self.level_m_s / self.radius_m * since_s
        wound = -np.log1p(-self.rise_m_s * since_s / self.radius_m) / self.rise_m_s
        return radius, self.azimuth_rad + self.level_m_s * wound

    def at(self, since_s, up_m):
        """Position, velocity and acceleration (n, 3) of the point up_m over the feet, since_s (n,) after the start."""
        feet, azimuth = self._feet(since_s)
        turning = self.level_m_s / feet
        radius, out = feet - up_m, np.exp(1j * azimuth)
        plane = radius * out, (-self.rise_m_s + 1j * radius * turning) * out
        bend = (-radius * turning**2 + 1j * turning * self.rise_m_s * (radius / feet - 2)) * out
        axial = self.axial_m + self.axial_m_s * since_s, self.axial_m_s, 0.0
        return tuple(_in_space(p, z) for p, z in zip((*plane, bend), axial, strict=True))

    def turned_rad(self, since_s):
        """How far it has gone round, since_s after the start."""
        return float(self._feet(np.array([since_s]))[1][0]) - self.azimuth_rad

    def leg(self, surface, start_s, end_s, up_m):
        """The Leg of that point; the person turns with the ground.

        On a piece, with e the share of its radius that it climbs and k the angle it would turn at its first radius, the turn by then is
        (1 - e s)^(-i k/e) = sum c_n s^n, c_0 = 1, c_n+1 = c_n (n e + i k)/(n + 1): the binomial series, also where e is 0.
        """
        edges = self._edges(max(end_s - start_s, 0.0))
        length_s = np.diff(edges)
        feet, azimuth = self._feet(edges[:-1])
        climbs, turns = self.rise_m_s * length_s / feet, self.level_m_s * length_s / feet
        series = [np.exp(1j * azimuth)]
        for n in range(_POWERS - 1):
            series.append(series[-1] * (n * climbs + 1j * turns) / (n + 1))
        powers, turned = np.zeros((len(feet), _POWERS + 1, 3)), np.zeros((len(feet), _POWERS + 1, 3))
        plane = np.zeros((len(feet), _POWERS + 1), dtype=complex)
        plane[:, :-1] = ((feet - up_m) * np.array(series)).T
        plane[:, 1:] -= (feet * climbs * np.array(series)).T
        powers[:, :, 0], powers[:, :, 1] = plane.real, plane.imag
        powers[:, 0, 2], powers[:, 1, 2] = self.axial_m + self.axial_m_s * edges[:-1], self.axial_m_s * length_s
        turned[:, 0, 2] = azimuth - self.azimuth_rad
        turned[:, 1:, 2] = (turns * climbs ** np.arange(_POWERS)[:, None] / np.arange(1, _POWERS + 1)[:, None]).T
        return given_leg(surface, start_s + edges[:-1], length_s, powers, end_s, turned)

    def _edges(self, lasts_s):
        """Times (S + 1,) since the start at which pieces begin and end: none turns or climbs too far. Where the radius changes much
        they shorten with it, so that each has the same share of it, and turns as far."""
        if lasts_s == 0.0:
            return np.array([0.0, 1e-3])
        last_m = self.radius_m - self.rise_m_s * lasts_s
        shrinks = math.log(self.radius_m / last_m)
        pieces = math.ceil(max(abs(self.turned_rad(lasts_s)) / _MOST_RAD, abs(shrinks) / _MOST_SHARE, 1.0))
        share = np.linspace(0.0, 1.0, pieces + 1)
        if abs(shrinks) <= _MOST_SHARE:
            return lasts_s * share
        edges = -np.expm1(-shrinks * share) * self.radius_m / self.rise_m_s
        edges[-1] = lasts_s
        return edges


def _in_space(plane, axial):
    """Vectors (n, 3) of complex numbers (n,) across the axis and how far along it (n,)."""
    out = np.empty((len(plane), 3))
    out[:, 0], out[:, 1], out[:, 2] = plane.real, plane.imag, axial
    return out


def course(habitat, motion):
    """The Straight or Round along which a `walk` goes in a habitat."""
    place = motion.place.along_m, motion.place.height_m, motion.place.axial_m
    chart = habitat.chart(motion.place.floor)
    velocity = frames.aimed(motion.speed_m_s, motion.heading_deg, motion.climb_deg)
    if not chart.bends:
        rows = chart.axes_at(place)
        return Straight(chart.position(place), velocity @ rows, rows[1])
    return Round(
        habitat.radius_m - place[1], place[0] / habitat.radius_m, place[2], velocity[0], velocity[1], velocity[2]
    )


def floats_at_m_s(habitat, omega_rad_s, ground_m):
    """The speed antispinward at which nothing presses the feet on, of ground that lies ground_m from the axis: on round ground
    that of the ground there, on a flat floor half of that (the shape's `floats_share`). None elsewhere, and without spin."""
    omega = abs(omega_rad_s)
    if not omega or habitat.floats_share is None:
        return None
    return omega * ground_m * habitat.floats_share
