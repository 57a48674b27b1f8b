"""What a motion is to be and what it was: where it starts, its legs in the air and on the ground, what happens on the way.

`carry.py` takes starts to their ends.
"""

from dataclasses import dataclass, field

import numpy as np

from ..physics.protocols import Surface
from .flight import FlightResult, Release, Room
from .ground import GroundStart
from .path import Path

ON_THE_GROUND = ("deck", "floor")


@dataclass(frozen=True)
class Leg:
    """A stretch of one kind: its Path, inertial in the air, six wide and in the turning frame on the ground; the surface it
    lies on, or None in the air; spin_rad_s (3,): the ball's own in the air, inertial axes."""

    path: Path
    surface: Surface | None
    spin_rad_s: np.ndarray


@dataclass(frozen=True)
class Event:
    """What happens in a journey, most often the end of a leg: kind, time, position and velocity (3,) in the room's frame just
    before; after a contact the velocity just after, and the surface."""

    kind: str
    time_s: float
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    after_m_s: np.ndarray | None = None
    surface: Surface | None = None


@dataclass(frozen=True)
class Prescribed:
    """A motion that is not worked out here but known: its legs, what happens, and how it ends."""

    legs: tuple[Leg, ...]
    events: tuple[Event, ...] = ()
    end: str | None = None


@dataclass(frozen=True)
class Start:
    """A Release or a GroundStart; how many rebounds it is allowed; whether it stays where it first meets anything (a liquid);
    rolls: whether it can (a thing that stands cannot); opening: a FlightResult that came before, or None; beyond: the room once it
    has come down from a ramp onto the ground, or None where it stays the same; prescribed: a Prescribed in place of all these,
    whose first is then None."""

    first: Release | GroundStart | None
    bounces: int = 0
    sticks: bool = False
    rolls: bool = True
    opening: FlightResult | None = None
    beyond: Room | None = None
    prescribed: Prescribed | None = None


@dataclass
class Journey:
    """legs and events in order of time; end: "landed", "rest", "edge", "met a surface", or None where time ran out."""

    start: Start
    legs: list[Leg] = field(default_factory=list)
    events: list[Event] = field(default_factory=list)
    end: str | None = None

    @property
    def begin_s(self) -> float:
        """When it begins."""
        return self.legs[0].path.begin_s

    @property
    def ends_s(self) -> float:
        """When it ends."""
        return self.legs[-1].path.end_s
