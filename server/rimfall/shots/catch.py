"""How near a flight comes to the catcher's hands, when, and how it comes in; how far errors of the throw make it miss."""

from dataclasses import dataclass

import numpy as np

from ..motions.flight import FlightResult
from ..physics import frames
from ..physics.protocols import Surface
from .shooting import ROUGH_M, Shooting
from .target import Moving, Resting
from .throws import Thrower, aimed, flown, speed_heading_elevation

_LOOKS = 96  # along a flight, before the nearest is told exactly
_NEWTON = 8
_WINDOW = 0.3  # of the flight: how much sooner or later than meant it may come nearest
_ERRORS = np.array(
    [[0.01, 0.0, 0.0], [0.0, 0.0, 1.0], [0.0, 1.0, 0.0]]
)  # share of the speed; heading, elevation, degrees


@dataclass(frozen=True)
class Catch:
    """A flight at its nearest to the hands: time_s, misses_m; surface: what it meets before, where it comes within reach no more, or None.

    flight: as a scene's motion is flown, to where it first meets something.
    """

    flight: FlightResult
    time_s: float
    misses_m: float
    surface: Surface | None

    @property
    def ends_s(self) -> float:
        """When there is no more of it to be told: it is caught, or has met something."""
        return self.flight.path.end_s if self.surface is not None else self.time_s


def catches(
    thrower: Thrower, target: Resting | Moving, velocities: np.ndarray, flight_s: np.ndarray, within_m: float
) -> list[Catch]:
    """The Catches of throws (N, 3) that are meant to take flight_s (N,), flown as motions of a scene are."""
    start_s = thrower.hand.time_s
    flights = flown(thrower, velocities, start_s + (1 + _WINDOW) * flight_s)
    out = []
    for flight, lasts in zip(flights, flight_s.tolist(), strict=True):
        time_s, misses_m = nearest(
            flight.path, target, start_s + (1 - _WINDOW) * lasts, start_s + (1 + _WINDOW) * lasts, start_s + lasts
        )
        out.append(Catch(flight, time_s, misses_m, None if misses_m <= within_m else flight.surface))
    return out


def nearest(path, target, from_s: float, to_s: float, meant_s: float) -> tuple[float, float]:
    """When a path comes nearest to the target between two times, and how near; at its own end where it does not last so long.

    meant_s: when it is meant to; the hands may go by at rim speed, once a turn, and pass between any other looks.
    """
    low, high = min(max(from_s, path.begin_s), path.end_s), min(to_s, path.end_s)
    times = np.sort(np.append(np.linspace(low, high, _LOOKS), np.clip(meant_s, low, high)))
    apart = path.at(times)[0] - target.at(times)[0]
    k = int(np.argmin(np.einsum("na,na->n", apart, apart)))
    below, above = times[max(k - 1, 0)], times[min(k + 1, len(times) - 1)]
    time = times[k : k + 1]
    for _ in range(_NEWTON):
        (place, moving), (there, going) = path.at(time), target.at(time)
        closing = moving - going
        square = float(np.sum(closing * closing))
        if square == 0.0:
            break
        moved = np.clip(time - np.sum((place - there) * closing) / square, below, above)
        if moved[0] == time[0]:
            break
        time = moved
    best = min((times[k : k + 1], time), key=lambda t: np.linalg.norm(path.at(t)[0] - target.at(t)[0]))
    return float(best[0]), float(np.linalg.norm(path.at(best)[0] - target.at(best)[0]))


def errors_m(shooting: Shooting, target: Resting | Moving, velocities: np.ndarray, flight_s: np.ndarray) -> np.ndarray:
    """How far throws (N, 3) that arrive after flight_s (N,) miss, at their nearest, where they are 1 % too fast, 1 degree too high, and 1
    degree off to the side (N, 3), metres; with nothing in the way."""
    aims = np.stack(speed_heading_elevation(velocities), axis=-1)
    wrong = aims[:, None] + _ERRORS * np.stack([aims[:, 0], np.ones(len(aims)), np.ones(len(aims))], axis=-1)[:, None]
    throws = aimed(*wrong.reshape(-1, 3).T)
    lasts = np.repeat(flight_s, 3)
    begin_s = shooting.thrower.hand.time_s
    least, now = np.full(len(lasts), np.inf), lasts
    for _ in range(4):
        place, moving = shooting.arrive(throws, now, ROUGH_M)
        there, going = target.at(begin_s + now)
        apart, closing = place - there, moving - going
        least = np.minimum(least, np.linalg.norm(apart, axis=1))
        square = np.maximum(np.sum(closing * closing, axis=1), 1e-300)
        now = np.clip(now - np.sum(apart * closing, axis=1) / square, (1 - _WINDOW) * lasts, (1 + _WINDOW) * lasts)
    return least.reshape(-1, 3)


def relative(thrower: Thrower, target: Resting | Moving, flight: FlightResult, time_s: float):
    """Position (3,) in the turning frame at a time, and the velocity (3,) there relative to the hands, along the local directions."""
    spin = thrower.setting.habitat.spin
    time = np.array([time_s])
    position, velocity = frames.inertial_to_rotating(*flight.path.at(time), spin.angle_rad(time), spin.rate_rad_s(time))
    rows = thrower.setting.habitat.chart(thrower.floor).axes(position)[0]
    return position[0], rows @ (velocity[0] - target.seen(time)[1][0])
