"""Release, fly, meet: what everything that flies shares. Bodies fly in one batch; each comes back with its own path."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from math import hypot

import numpy as np

from ..physics.bodies import Body, as_arrays
from ..physics.budget import TooMuchWork, spend
from ..physics.forces import Medium, settling_rates_1_s
from ..physics.integrate import AT_ONCE
from ..physics.kept import told_once
from ..physics.protocols import Surface
from ..physics.stiff import StiffStepper
from ..physics.windowed import WindowStepper
from .airborne import TOLERANCE_M, Airborne, distinct
from .path import EndLog, Path, StepLog

_STIFF_TIMES = 700.0  # stopping times in a flight beyond which the implicit stepper is the faster one
_RESULT_BYTES = 1_300  # of memory, besides the numbers of its path: what a release and what became of it take
MOST_STEPS = 10_000  # seconds of work; what needs more is refused by whoever asked


@told_once
@dataclass(frozen=True)
class Room:
    """Where bodies fly: what they can meet, whether it turns, and a constant pull (3,) in its frame, m/s2.

    across_m: radius of the circle that holds the room, None where it is open. still_air: the air of a room that turns
    stands still, and is of one density; that of a room that does not turn always does.
    """

    surfaces: tuple[Surface, ...]
    turns: bool
    pull_m_s2: tuple
    across_m: float | None
    still_air: bool = False


@dataclass(frozen=True)
class Release:
    """One body let go at time_s in a room: inertial position and velocity (3,), to fly until end_s at the latest.

    spin_rad_s (3,): its own spin, which it keeps; inertial axes, or those of a room that does not turn.
    lifts: whether the air lifts it by that spin; not a body that is only held still as it is let go.
    """

    room: Room
    body: Body
    time_s: float
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    end_s: float
    spin_rad_s: np.ndarray | tuple = (0.0, 0.0, 0.0)
    lifts: bool = False


class StepLimitExceeded(Exception):
    """A motion that would take too many steps to work out: its number in the list it came in, and whether it was on the ground."""

    def __init__(self, index=0, on_ground=False):
        super().__init__(f"number {index} takes too many steps")
        self.index, self.on_ground = index, on_ground


@dataclass(frozen=True)
class FlightResult:
    """What became of a release: its path, and the surface it met at the path's end, or None if time ran out."""

    release: Release
    path: Path
    surface: Surface | None

    def until(self, time_s: float) -> "FlightResult":
        """The same, ended at time_s, before it met anything."""
        return FlightResult(self.release, replace(self.path, end_s=time_s), None)


def fly(medium: Medium, releases: Sequence[Release], watch: Callable[[int], None] | None = None) -> list[FlightResult]:
    """Fly releases together until each meets a surface of its room or its time ends -> list of FlightResult, in order.

    watch(done) is told after every step how many bodies have ended; what it raises ends the flight. Raises StepLimitExceeded for a
    body whose path takes more than MOST_STEPS.
    """
    flown, ended = [None] * len(releases), 0
    for stepper, part in _parts(medium, releases):
        some = [releases[i] for i in part]
        batch = _flown(medium, some, stepper, StepLog(), TOLERANCE_M, part, _after(ended, watch))
        spend(bytes=_RESULT_BYTES * len(part))
        for i, release, path, surface in zip(part, some, batch.paths(), batch.met, strict=True):
            flown[i] = FlightResult(release, path, surface)
        ended += len(part)
    return flown


@dataclass(frozen=True)
class FlightEnds:
    """Where N releases end: surfaces, a list of what each has met, or None; time_s (N,); position_m and velocity_m_s (N, 3), inertial;
    swept_rad (N,), how far round the axis each has gone, inertial."""

    surfaces: list[Surface | None]
    time_s: np.ndarray
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    swept_rad: np.ndarray


def fly_to_ends(
    medium: Medium,
    releases: Sequence[Release],
    watch: Callable[[int], None] | None = None,
    tolerance_m: float = TOLERANCE_M,
) -> FlightEnds:
    """The same flights as those of `fly`, without their paths: a tenth of the memory. Arguments as there; tolerance_m: the error allowed
    to a step, where a glance will do."""
    count = len(releases)
    ends = FlightEnds([None] * count, *(np.empty(shape) for shape in (count, (count, 3), (count, 3), count)))
    ended = 0
    for stepper, part in _parts(medium, releases):
        some, tell = [releases[i] for i in part], _after(ended, watch)
        batch = _flown(medium, some, stepper, EndLog(), tolerance_m, part, tell)
        log, ended = batch.log, ended + len(part)
        for name, column in (
            ("time_s", batch.ends_s),
            ("position_m", log.position_m.T),
            ("velocity_m_s", log.velocity_m_s.T),
            ("swept_rad", log.swept_rad),
        ):
            getattr(ends, name)[part] = column
        for i, surface in zip(part, batch.met, strict=True):
            ends.surfaces[i] = surface
    return ends


def _parts(medium, releases):
    """Releases that fly together, a few thousand at a time: (a kind of stepper, their numbers) of each batch."""
    if not releases:
        return
    stiff = _stiff(medium, releases)
    for stepper, group in ((WindowStepper, (~stiff).nonzero()[0]), (StiffStepper, stiff.nonzero()[0])):
        yield from ((stepper, group[k : k + AT_ONCE].tolist()) for k in range(0, len(group), AT_ONCE))


def _after(ended, watch):
    """Who is told how many have ended, where so many had before."""
    return watch and (lambda done: watch(ended + done))


def _flown(medium, releases, stepper, log, tolerance_m, numbers, watch):
    """An Airborne of releases, which have these numbers, that have all come down."""
    batch = Airborne(medium, releases, stepper, log, tolerance_m)
    step_to_end(batch, numbers, MOST_STEPS, watch)
    return batch


def step_to_end(batch, numbers, most, watch, on_ground=False):
    """Step a batch of motions, which have these numbers, until none is going; watch(ended), or None, is told after each step. Raises
    StepLimitExceeded where that takes more than `most` steps, and TooMuchWork with the `index` of one that still goes."""
    steps = 0
    while batch.going:
        if steps == most:
            raise StepLimitExceeded(numbers[batch.first_going], on_ground)
        try:
            batch.step()
        except TooMuchWork as exceeded:
            exceeded.index = numbers[batch.first_going]
            raise
        steps += 1
        if watch is not None:
            watch(len(numbers) - batch.going)


def _stiff(medium, releases):
    """Whether (N,) the air stops each body so soon, against the time it may fly, that explicit steps would crawl."""
    if medium.air is None:
        return np.zeros(len(releases), dtype=bool)
    rooms, room = distinct([r.room for r in releases])
    bodies, body = distinct([r.body for r in releases])
    pull = np.array([hypot(*r.pull_m_s2) for r in rooms])[room]
    rates = settling_rates_1_s(medium, as_arrays(bodies).take(body), pull)
    return rates * np.array([r.end_s - r.time_s for r in releases]) > _STIFF_TIMES
