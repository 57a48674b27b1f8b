"""From a release to the end: flight after flight, rebound after rebound, then rolling, sliding, rest. All motions together.

All bodies in the air fly in one batch, all on the ground go in another; where a leg ends, the contact decides the next one
(`contacts.py`). What ends a journey: the last contact allowed, rest, an edge, or time.
"""

from collections.abc import Callable, Sequence
from dataclasses import replace

import numpy as np

from ..physics import bernstein
from ..physics.budget import TooMuchWork, spend
from ..physics.corner import Corner
from ..physics.forces import Medium
from .borne import MOST_STANDSTILLS, along, held_up, releases
from .contacts import how, into_frame, meet, stays
from .flight import Release, StepLimitExceeded, fly
from .ground import go
from .journey import Event, Journey, Leg, Start

_BRIEF_S = 1e-4
_LEG_BYTES = 1_200  # of memory, besides its flight's: what a leg and its event take


def carry(
    medium: Medium,
    starts: Sequence[Start],
    watch: Callable[[int], None] | None = None,
    grown: Callable[[int, Journey], None] | None = None,
) -> list[Journey]:
    """Take Starts to their ends -> list of Journey, in order.

    watch(done) is told often how many have ended; grown(number, journey) is told of each journey that has got longer, after every leg;
    what they raise stops the work. Raises StepLimitExceeded, and TooMuchWork with the `index` of one that was still under way.
    """
    moving = [Progress(s) for s in starts]
    for t in moving:
        t.open(medium.spin)
    _tell(grown, enumerate(moving))
    while under_way := [(i, t) for i, t in enumerate(moving) if t.next is not None]:
        done = len(moving) - len(under_way)
        tell = watch and (lambda ended, done=done: watch(done))
        # What has come to the ground waits until the last one has, so that all go on together.
        flying = [(i, t) for i, t in under_way if isinstance(t.next, Release)]
        work, after = (fly, _after_flights) if flying else (go, _after_grounds)
        some = [t for _, t in flying or under_way]
        after(medium, some, _worked(work, medium, moving, some, tell))
        _tell(grown, flying or under_way)
    if watch is not None:
        watch(len(moving))
    return [t.journey for t in moving]


def _tell(grown, numbered):
    """Tell `grown` of the journeys of (number, Progress) pairs that have begun."""
    for i, t in numbered if grown is not None else ():
        if t.journey.legs:
            grown(i, t.journey)


def _worked(work, medium, moving, some, tell):
    """What `fly` or `go` makes of the next legs of some of the moving."""
    try:
        return work(medium, [t.next for t in some], tell)
    except StepLimitExceeded as exceeded:
        raise StepLimitExceeded(moving.index(some[exceeded.index]), exceeded.on_ground) from None
    except TooMuchWork as exceeded:
        exceeded.index = moving.index(some[exceeded.index or 0])
        raise


class Progress:
    """One motion under way: its journey so far, and the Release or GroundStart that comes next, or None."""

    def __init__(self, start):
        self.journey, self.next = Journey(start), start.first
        self.left, self.standstills, self.touches = start.bounces, 0, 0

    def open(self, spin):
        """Put in what is given, or what came before the start; if that is all there is, it ends there."""
        start = self.journey.start
        if start.prescribed is not None:
            self.journey.legs += start.prescribed.legs
            self.journey.events += start.prescribed.events
            self.finish(start.prescribed.end)
        elif start.opening is not None:
            self._follow(spin, start.opening)

    def _follow(self, spin, opening):
        path, surface = opening.path, opening.surface
        self.journey.legs.append(Leg(path, None, np.zeros(3)))
        if self.next is None and surface is not None:
            states = (v for v in path.at(np.array([path.end_s])))
            turns = np.array([opening.release.room.turns])
            position, velocity, _ = into_frame(spin, np.array([path.end_s]), turns, *states, np.zeros((1, 3)))
            kind = surface.name_at(position[0])
            self.happens(kind, path.end_s, position[0], velocity[0], np.zeros(3), surface)
            self.finish(how(kind))

    def add(self, leg):
        """A leg more; brief ones are counted, and those of no length not kept, unless it is the first."""
        length = leg.path.end_s - leg.path.begin_s
        self.standstills = 0 if length > _BRIEF_S else self.standstills + 1
        if length > 0 or not self.journey.legs:
            spend(bytes=_LEG_BYTES)
            self.journey.legs.append(leg)

    def happens(self, *what):
        """Something happens."""
        self.journey.events.append(Event(*what))

    def slips(self, time_s, start):
        """A thing that stood begins to slide as the leg begins; told once."""
        last = self.journey.events and self.journey.events[-1]
        if not last or (last.kind, last.time_s) != ("slip", time_s):
            self.happens("slip", time_s, start.position_m, start.velocity_m_s)

    def finish(self, end):
        """The end."""
        self.journey.end, self.next = end, None


def _after_flights(medium, moving, flown):
    """Add the flights' legs; end or go on."""
    meets = []
    for motion, flight in zip(moving, flown, strict=True):
        motion.add(Leg(flight.path, None, np.asarray(flight.release.spin_rad_s, dtype=float)))
        if flight.surface is None:
            motion.finish(None)
        else:
            meets.append((motion, flight))
    if not meets:
        return
    time_s = np.array([f.path.end_s for _, f in meets])
    position, velocity = _last_states([f.path for _, f in meets])
    turns = np.array([f.release.room.turns for _, f in meets])
    spinning = np.array([t.journey.legs[-1].spin_rad_s for t, _ in meets])
    position, velocity, spinning = into_frame(medium.spin, time_s, turns, position, velocity, spinning)
    going = []
    for i, (motion, flight) in enumerate(meets):
        kind = flight.surface.name_at(position[i])
        if stays(motion, kind, flight.surface) and not flight.surface.edge:
            motion.happens(kind, time_s[i], position[i], velocity[i], np.zeros(3), flight.surface)
            motion.finish(how(kind))
        else:
            going.append(i)
    if going:
        some = [meets[i] for i in going]
        states = time_s[going], position[going], velocity[going], spinning[going]
        meet(medium, [t for t, _ in some], [f.surface for _, f in some], *states)


def _last_states(paths):
    """Position and velocity (n, 3) at the ends of paths, all at once: the end lies in the last piece."""
    length = np.array([(p.end_s - p.start_s[-1]) / p.length_s[-1] for p in paths])
    rows = np.array([p.path_m.shape[1] for p in paths])
    columns = [np.array([getattr(p, state)[-1] for p in paths]) for state in ("position_m", "velocity_m_s")]
    for count in set(rows.tolist()):
        some = (rows == count).nonzero()[0]
        weights = bernstein.weights(count - 1, length[some])
        for column, name in zip(columns, ("path_m", "path_m_s"), strict=True):
            column[some] += np.einsum("kn,nkd->nd", weights, np.array([getattr(paths[i], name)[-1] for i in some]))
    return columns


def _after_grounds(medium, moving, results):
    """Add the legs on the ground; end or go on."""
    for motion, leg in zip(moving, results, strict=True):
        _after_ground(medium, motion, leg)


def _after_ground(medium, motion, leg):
    motion.add(Leg(leg.path, leg.start.surface, np.zeros(3)))
    if leg.start.mode == "stands" and not np.any(leg.start.velocity_m_s) and np.any(leg.path.path_m[0]):
        motion.slips(leg.path.begin_s, leg.start)
    time_s, state = leg.path.end_s, (leg.position_m, leg.velocity_m_s, leg.spin_rad_s)
    arrays = [np.array([v]) for v in (time_s, *state)]
    if leg.end == "time":
        motion.finish(None)
    elif isinstance(leg.start.surface, Corner) and leg.end in ("left", "grip", "slip"):
        _after_corner(medium, motion, leg, time_s, state)
    elif leg.end == "left":
        motion.next = releases(medium.spin, [motion], *arrays, [True])[0]
    elif leg.end == "met":
        meet(medium, [motion], [leg.surface], *arrays)
    else:
        motion.happens(leg.end, time_s, leg.position_m, leg.velocity_m_s)
        if leg.end == "rest":
            motion.finish("rest")
        elif motion.standstills > MOST_STANDSTILLS:
            held_up(motion, time_s, *state[:2])
        else:
            mode = leg.start.mode if leg.start.mode == "stands" else "rolls" if leg.end == "grip" else "slides"
            motion.next = replace(
                leg.start, time_s=time_s, position_m=state[0], velocity_m_s=state[1], spin_rad_s=state[2], mode=mode
            )


def _after_corner(medium, motion, leg, time_s, state):
    """Something has changed where two surfaces were touched: another way of going on."""
    if motion.standstills > MOST_STANDSTILLS:
        held_up(motion, time_s, *state[:2])
        return
    slipped = _slips(leg.start)
    along(medium, motion, leg.start.surface, time_s, *state)
    if leg.end != "left" and _slips(motion.next) != slipped:
        motion.happens(leg.end, time_s, *state[:2])


def _slips(start):
    """Whether what goes on by a GroundStart slips anywhere."""
    if start.mode == "stands":
        return bool(np.any(start.velocity_m_s))
    return "slides" in start.mode
