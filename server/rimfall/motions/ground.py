"""Roll, slide, stand: what moves on a surface, each leg until something changes (`ground_batch.py`). Everything is in the room's own
frame."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from ..physics.bodies import Body
from ..physics.corner import Corner
from ..physics.forces import Medium
from ..physics.integrate import AT_ONCE
from ..physics.kept import kept
from ..physics.protocols import Surface
from .airborne import distinct
from .flight import Room, step_to_end
from .ground_batch import GroundBatch
from .path import Path

MOST_TRIES = 4_000  # steps: seconds of work


@dataclass(frozen=True)
class GroundStart:
    """A body on a surface of a room at time_s: centre, velocity and spin relative to the room's frame (3,), to go on until
    end_s at the latest. mode: "rolls", "slides" (a sphere that slips), "stands" (a thing that cannot turn). surface may be a
    Corner of two; mode is then "stands", or what a ball does at each. let_go: what it touched until now and presses against no more."""

    room: Room
    surface: Surface | Corner
    body: Body
    time_s: float
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    spin_rad_s: np.ndarray
    end_s: float
    mode: str | tuple[str, str]
    let_go: tuple[Surface, ...] = ()


@dataclass(frozen=True)
class GroundResult:
    """What became of it: its path, six wide (centre, and the integral of its spin), in the room's frame; how the leg ended
    ("grip", "slip", "rest", "left", "met", "time"), the surface met, and the state there."""

    start: GroundStart
    path: Path
    end: str
    surface: Surface | None
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    spin_rad_s: np.ndarray


def go(medium: Medium, starts: Sequence[GroundStart], watch: Callable[[int], None] | None = None) -> list[GroundResult]:
    """Take GroundStarts along their surfaces until each changes -> list of GroundResult, in order.

    A leg ends with "grip" where a slip has died out and friction holds, "slip" where it does not hold any more, "rest" where
    nothing will move it before its end, "left" where nothing presses it on, "met" at another surface of its room, "time" at
    its end. watch(done) is told after every step how many have ended; what it raises stops the work. Raises StepLimitExceeded for a leg
    of more than MOST_TRIES tries.
    """
    results, done = [None] * len(starts), 0
    for group in _groups(starts):
        tell = watch and (lambda ended, before=done: watch(before + ended))
        some = kept(_legs, medium, [starts[i] for i in group], numbers=group, watch=tell)
        done += len(group)
        for i, result in zip(group, some, strict=True):
            results[i] = GroundResult(starts[i], *result)
    return results


def _legs(medium, starts, *, numbers, watch):
    """What `GroundResult` has besides its start, of each of starts that have these numbers, of one room, surface and mode."""
    batch = GroundBatch(medium, starts)
    step_to_end(batch, numbers, MOST_TRIES, watch, on_ground=True)
    return batch.results()


def _groups(starts):
    """Numbers of those of one room, surface and mode, a few thousand at once."""
    room, surface = (distinct([getattr(one, name) for one in starts])[1] for name in ("room", "surface"))
    groups = {}
    for i, one in enumerate(starts):
        groups.setdefault((room[i], surface[i], one.mode), []).append(i)
    return [g[k : k + AT_ONCE] for g in groups.values() for k in range(0, len(g), AT_ONCE)]
