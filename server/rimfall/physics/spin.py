"""How fast the habitat turns at time t, how far it has turned, and how its rate changes: steady, or ramped in pieces."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from . import frames, quaternions
from .aboard import of_frame
from .constants import G0_M_S2, TURN_RAD


@dataclass(frozen=True)
class Spin:
    """A rate that is linear between knots and held after the last one.

    times_s (K,), first 0 and rising; rates_rad_s (K,); angles_rad (K,), the angle turned by each knot, 0 at the first.
    Rates may have either sign.
    """

    times_s: np.ndarray
    rates_rad_s: np.ndarray
    angles_rad: np.ndarray
    tumbles = False  # its axis is z, and z alone

    @property
    def fastest_rad_s(self):
        """The fastest it ever turns, whichever way, rad/s."""
        return float(np.max(np.abs(self.rates_rad_s)))

    @cached_property
    def steady(self):
        """Whether the rate never changes."""
        return len(self.times_s) == 1

    def rate_rad_s(self, time_s):
        """Rate at times (...), rad/s; before time 0 it is that of time 0."""
        if self.steady:
            rate = np.empty(time_s.shape if isinstance(time_s, np.ndarray) else np.shape(time_s))
            rate.fill(self.rates_rad_s[0])
            return rate
        return np.interp(time_s, self.times_s, self.rates_rad_s)

    def angle_rad(self, time_s):
        """Angle turned since time 0 at times (...), rad; a whole number of turns is not taken off."""
        time_s = np.asarray(time_s, dtype=float)
        if self.steady:
            return self.rates_rad_s[0] * time_s
        k = np.maximum(self.times_s.searchsorted(time_s, "right") - 1, 0)
        since = time_s - self.times_s[k]
        return self.angles_rad[k] + since * (self.rates_rad_s[k] + 0.5 * self.change_rad_s2(time_s) * since)

    def change_rad_s2(self, time_s):
        """Rate of change of the rate at times (...), rad/s2; at a knot that of the piece that begins there."""
        if self.steady:
            return np.zeros(np.asarray(time_s).shape)
        return self._slopes[self.times_s.searchsorted(time_s, "right")]

    @cached_property
    def _slopes(self):
        """Change of the rate (K + 1,) before, between and after the knots."""
        return np.concatenate([[0.0], np.diff(self.rates_rad_s) / np.diff(self.times_s), [0.0]])

    # What a frame is asked: `tumbling.py` answers the same of one whose axis moves. Vectors are (..., 3), at times (...).

    def to_inertial(self, time_s, position, velocity):
        """Position and velocity of the turning frame as inertial ones."""
        return frames.rotating_to_inertial(position, velocity, self.angle_rad(time_s), self.rate_rad_s(time_s))

    def to_frame(self, time_s, position, velocity):
        """Inertial position and velocity as those of the turning frame."""
        return frames.inertial_to_rotating(position, velocity, self.angle_rad(time_s), self.rate_rad_s(time_s))

    def turn(self, vectors, time_s):
        """Vectors of the frame's axes along the inertial ones."""
        return frames.turn(vectors, self.angle_rad(time_s))

    def turn_back(self, vectors, time_s):
        """Vectors of the inertial axes along the frame's."""
        return frames.turn(vectors, -self.angle_rad(time_s))

    def omega_rad_s(self, time_s):
        """How it turns, along its own axes."""
        rate = np.asarray(self.rate_rad_s(time_s), dtype=float)
        omega = np.zeros((*rate.shape, 3))
        omega[..., 2] = rate
        return omega

    def quaternion(self, time_s):
        """Attitudes (n, 4) at times (n,): from the frame's axes to the inertial ones."""
        return quaternions.turning(self.angle_rad(time_s)[:, None] * np.array([0.0, 0.0, 1.0]))

    def own(self, time_s, position, velocity):
        """The frame's own accelerations, m/s2, at positions (n, 3) with velocities (n, 3) in it."""
        return of_frame(self.rate_rad_s(time_s), self.change_rad_s2(time_s), position.T, velocity.T).T

    def centrifugal(self, time_s, position):
        """The part of that without velocity and change of the rate."""
        return self.rate_rad_s(time_s)[:, None] ** 2 * position * np.array([1.0, 1.0, 0.0])

    def coriolis(self, time_s, velocity):
        """The part of that by the velocity."""
        return -2 * frames.spin_cross(self.rate_rad_s(time_s), velocity)

    def back(self, begin_s, end_s):
        """Quaternions (n, 4) by which what does not turn has turned in the frame from times (n,) to others."""
        turned = np.zeros((len(begin_s), 3))
        turned[:, 2] = self.angle_rad(begin_s) - self.angle_rad(end_s)
        return quaternions.turning(turned)


def steady(rate_rad_s):
    """A spin of one rate for all time."""
    return ramped(rate_rad_s, ())


def ramped(rate_rad_s, points):
    """A spin that starts at rate_rad_s and passes the points (time_s, rate_rad_s), times rising above 0."""
    times = np.array([0.0, *(t for t, _ in points)])
    rates = np.array([rate_rad_s, *(w for _, w in points)], dtype=float)
    turned = np.cumsum(np.diff(times) * (rates[1:] + rates[:-1]) / 2)
    return Spin(times, rates, np.concatenate([[0.0], turned]))


@dataclass(frozen=True)
class Figures:
    """What follows from radius and spin at one place: rate, gravity, rim speed, period (None at rest)."""

    omega_rad_s: float
    gravity_m_s2: float
    gravity_g: float
    rim_speed_m_s: float
    period_s: float | None


def figures(radius_m, omega_rad_s):
    """Figures at radius_m of a habitat that turns at omega_rad_s: apparent gravity is omega^2 r."""
    gravity = omega_rad_s**2 * radius_m
    period = TURN_RAD / abs(omega_rad_s) if omega_rad_s else None
    return Figures(omega_rad_s, gravity, gravity / G0_M_S2, abs(omega_rad_s) * radius_m, period)


def radius_for(gravity_m_s2=None, rim_speed_m_s=None, omega_rad_s=0.0):
    """Radius, metres, at which omega_rad_s gives the gravity or the rim speed named. Raises ValueError at no spin."""
    if not omega_rad_s:
        raise ValueError("at no spin no radius gives gravity or rim speed")
    return gravity_m_s2 / omega_rad_s**2 if gravity_m_s2 is not None else rim_speed_m_s / abs(omega_rad_s)


def omega_for(radius_m, gravity_m_s2=None, rim_speed_m_s=None):
    """Spin, rad/s, that gives the gravity or the rim speed named at radius_m."""
    return (gravity_m_s2 / radius_m) ** 0.5 if gravity_m_s2 is not None else rim_speed_m_s / radius_m
