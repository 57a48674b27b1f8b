"""Free flight of many things at once, each in a habitat of its own: positions at given times, in both frames.

In vacuum the straight line; in air the law of `physics.drag` in air that turns with the habitat and thins toward the axis (as
`physics.forces` has it), stepped together by the classical Runge-Kutta scheme of order four in the inertial frame, where nothing
but the air acts. The frames coincide at elapsed time 0.
"""

from dataclasses import dataclass

import numpy as np

from ...physics import frames
from ...physics.bodies import Body, as_arrays
from ...physics.budget import spend
from ...physics.drag import Drag

_LEAST_STEPS, _MOST_STEPS = 24, 200
_OF_MOST = 0.8
_STABLE = 1.5  # times the step: what is lost in one, by which Runge-Kutta's scheme of order four stays finite
_TURN_A_STEP, _SLOWING_A_STEP = 0.25, 0.3  # rad; share of the velocity that drag takes


@dataclass(frozen=True)
class State:
    """B habitats, and in each the thing at its first instant. radius_m, omega_rad_s, medium, pace (B,); place, velocity (B, 3):
    (along, height, axial), and (spinward, up, axial) relative to the deck there. medium: density over that of `Resistance`; pace:
    seconds that pass in one of the track."""

    radius_m: np.ndarray
    omega_rad_s: np.ndarray
    place: np.ndarray
    velocity: np.ndarray
    medium: np.ndarray
    pace: np.ndarray


@dataclass(frozen=True)
class Flown:
    """Where B things are at N times. along_m (B, N), not wrapped; rotating_m, inertial_m (B, N, 3)."""

    radius_m: np.ndarray
    along_m: np.ndarray
    rotating_m: np.ndarray
    inertial_m: np.ndarray


class Resistance:
    """How air of a density holds a body: the drag's own law. most: times that density that a fit may try."""

    def __init__(self, body: Body, air, most: float = 10.0):
        self.most = most
        self._law, self._thinning = Drag(as_arrays([body]), air), air.thinning_s2_m2

    def slowing(self, omega, radius_m, medium, most_1_s, x, v):
        """Acceleration (3, B), m/s2, at inertial places and velocities (3, B); no speed is lost faster than at most_1_s (B,), 1/s."""
        wind = v.copy()
        wind[0] += omega * x[1]
        wind[1] -= omega * x[0]
        off = np.minimum(x[0] * x[0] + x[1] * x[1] - radius_m * radius_m, 0.0)
        off *= omega * omega * self._thinning
        density = medium * np.exp(off, out=off)
        speed = np.sqrt(np.einsum("ib,ib->b", wind, wind))
        wind *= np.minimum(self.rate_1_s(speed * np.abs(density)), most_1_s) * -np.sign(density)
        return wind

    def rate_1_s(self, speed):
        """The rate (...), 1/s, at which it loses speed (...), m/s, in air of the stated density."""
        return self._law.rate_1_s(self._law.scale * np.atleast_1d(speed))


def flown(state: State, time_s, resistance: Resistance | None = None) -> Flown:
    """Where the things of a State are at times (N,) of the track, of which 0 is the first instant."""
    elapsed = state.pace[:, None] * np.asarray(time_s)
    spend(samples=0, law_calls=elapsed.size)
    start = frames.place_to_rotating(state.radius_m, state.place)
    carried = np.einsum("bi,bij->bj", state.velocity, frames.local_axes(start))
    velocity = carried + frames.spin_cross(state.omega_rad_s, start)
    if resistance is None or not np.any(state.medium):
        inertial = start[:, None] + velocity[:, None] * elapsed[..., None]
        swept = _swept(start[:, None], inertial)
    else:
        with np.errstate(over="ignore", invalid="ignore"):  # a trial in air of no sense leaves all numbers
            inertial, swept = _through_air(state, start, velocity, elapsed, resistance)
    turned = state.omega_rad_s[:, None] * elapsed
    along = state.place[:, :1] + state.radius_m[:, None] * (swept - turned)
    return Flown(state.radius_m, along, frames.turn(inertial, -turned), inertial)


def _swept(before, after):
    """Change of azimuth between positions (..., 3), within +- pi, rad."""
    cross = before[..., 0] * after[..., 1] - before[..., 1] * after[..., 0]
    return np.arctan2(cross, before[..., 0] * after[..., 0] + before[..., 1] * after[..., 1])


def _through_air(state, start, velocity, elapsed, resistance):
    """Inertial positions (B, N, 3) at elapsed times (B, N), and the azimuth swept until then (B, N)."""
    last = np.maximum(elapsed[:, -1], 1e-12)
    steps = _steps(state, velocity - frames.spin_cross(state.omega_rad_s, start), last, resistance)
    h = last / steps

    def slowing(x, v):
        return resistance.slowing(state.omega_rad_s, state.radius_m, state.medium, _STABLE / h, x, v)

    x, v = start.T.copy(), velocity.T.copy()
    places, speeds = np.empty((steps + 1, *x.shape)), np.empty((steps + 1, *x.shape))
    for k in range(steps):
        places[k], speeds[k] = x, v
        a1 = slowing(x, v)
        a2 = slowing(x + 0.5 * h * v, v + 0.5 * h * a1)
        a3 = slowing(x + 0.5 * h * v + 0.25 * h * h * a1, v + 0.5 * h * a2)
        a4 = slowing(x + h * v + 0.5 * h * h * a2, v + h * a3)
        x = x + h * v + h * h / 6.0 * (a1 + a2 + a3)
        v = v + h / 6.0 * (a1 + 2.0 * a2 + 2.0 * a3 + a4)
    places[steps], speeds[steps] = x, v
    spend(law_calls=4 * steps * len(last))
    return _between(places, speeds, h, elapsed)


def _steps(state, wind, last, resistance):
    """Steps that are enough for most, one way or the other: so many radians turned and so much speed lost in each. What would lose more
    is a trial gone wild, among others near what is sought."""
    turned = float(np.quantile(np.abs(state.omega_rad_s) * last, _OF_MOST))
    speed = np.linalg.norm(wind, axis=1) + np.abs(state.omega_rad_s) ** 2 * state.radius_m * last
    rate = resistance.rate_1_s(speed * np.maximum(np.abs(state.medium), 1e-12))
    needed = max(turned / _TURN_A_STEP, float(np.quantile(rate * last, _OF_MOST)) / _SLOWING_A_STEP)
    return int(np.clip(needed, _LEAST_STEPS, _MOST_STEPS))


def _between(places, speeds, h, elapsed):
    """Cubics through the ends of steps, read at elapsed times (B, N)."""
    steps = len(places) - 1
    node = np.concatenate([np.zeros((1, places.shape[2])), np.cumsum(_swept_xyz(places[:-1], places[1:]), axis=0)])
    k = np.minimum((elapsed / h[:, None]).astype(int), steps - 1)
    s = (elapsed / h[:, None] - k)[..., None]
    b = np.arange(len(h))[:, None]
    p0, p1 = places[k, :, b], places[k + 1, :, b]
    m0, m1 = speeds[k, :, b] * h[:, None, None], speeds[k + 1, :, b] * h[:, None, None]
    inertial = (1 + 2 * s) * (1 - s) ** 2 * p0 + s * (1 - s) ** 2 * m0 + s * s * (3 - 2 * s) * p1 + s * s * (s - 1) * m1
    return inertial, node[k, b] + _swept(p0, inertial)


def _swept_xyz(before, after):
    return _swept(np.moveaxis(before, 1, -1), np.moveaxis(after, 1, -1))
