"""What is asked of an aim, and a throw with what comes of it."""

from dataclasses import dataclass

import numpy as np

from .catch import Catch, catches
from .fixed import Fixed
from .target import Moving, Resting
from .throws import Thrower, speed_heading_elevation

MOST_M_S = 3_000.0  # a throw's speed, as the document has it


@dataclass(frozen=True)
class Question:
    """A thrower, the hands and their reach, what is fixed, and the longest flight."""

    thrower: Thrower
    target: Resting | Moving
    within_m: float
    fixed: Fixed
    flight_max_s: float


@dataclass(frozen=True)
class Throw:
    """A throw: its local velocity (3,), the flight time it is meant to take, and the Catch that comes of it."""

    velocity: np.ndarray
    meant_s: float
    catch: Catch

    @property
    def flight_s(self) -> float:
        """How long it flies until it is caught; as it is meant to where something is in the way."""
        return self.meant_s if self.catch.surface is not None else self.catch.time_s - self.catch.flight.release.time_s

    @property
    def aim(self) -> tuple[float, float, float]:
        """Speed, heading and elevation."""
        return tuple(float(each[0]) for each in speed_heading_elevation(self.velocity[None]))


def flown(question: Question, velocities: np.ndarray, flight_s: np.ndarray) -> list[Throw]:
    """Throws (N, 3) meant to take flight_s (N,), flown."""
    if not len(flight_s):
        return []
    found = catches(question.thrower, question.target, velocities, flight_s, question.within_m)
    return [Throw(*each) for each in zip(velocities, flight_s.tolist(), found, strict=True)]
