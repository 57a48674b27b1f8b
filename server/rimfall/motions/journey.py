"""From a release to the end: flight after flight, rebound after rebound, then rolling, sliding, rest. All motions together.

A journey is a list of legs. All bodies in the air fly in one batch, all on the ground go in another; where a leg ends, the
contact decides the next one (`physics/contact.py`). What ends a journey: the last contact allowed, rest, an edge, or time.
"""

from dataclasses import dataclass, field, replace

import numpy as np

from ..physics import contact, frames
from ..physics.aboard import Aboard, of_frame
from ..physics.bodies import as_arrays
from ..physics.crossings import TOUCH_M
from .flight import FlightResult, Path, Release, Room, StepLimitExceeded, fly
from .ground import GroundStart, go

_NO_SLIP_M_S = 1e-9
_PARTED_M_S = 1e-9  # a speed away from the ground that is none
_HAIR_M = 2 * TOUCH_M
_BRIEF_S = 1e-4
_MOST_STANDSTILLS = 8  # brief legs one after another: it lies where several surfaces meet, or is held against one
_MOST_TOUCHES = 40  # contacts without a rebound: something holds it against a surface that does not bear it
ON_THE_GROUND = ("deck", "floor")


@dataclass(frozen=True)
class Start:
    """A Release or a GroundStart; how many rebounds it is allowed; whether it stays where it first meets anything (a liquid);
    rolls: whether it can (a thing that stands cannot); opening: a FlightResult that came before, or None; beyond: the room once it
    has come down from a ramp onto the ground, or None where it stays the same; prescribed: a Prescribed in place of all these, whose first
    is then None."""

    first: object
    bounces: int = 0
    sticks: bool = False
    rolls: bool = True
    opening: FlightResult | None = None
    beyond: Room | None = None
    prescribed: "Prescribed | None" = None


@dataclass(frozen=True)
class Prescribed:
    """A motion that is not worked out here but known: its legs, what happens, and how it ends."""

    legs: tuple
    events: tuple = ()
    end: str | None = None


@dataclass(frozen=True)
class Leg:
    """A stretch of one kind: its Path, inertial in the air, six wide and in the turning frame on the ground; the surface it
    lies on, or None in the air; spin_rad_s (3,): the ball's own in the air, inertial axes."""

    path: Path
    surface: object | None
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
    surface: object | None = None


@dataclass
class Journey:
    """legs and events in order of time; end: "landed", "rest", "edge", "met a surface", or None where time ran out."""

    start: Start
    legs: list = field(default_factory=list)
    events: list = field(default_factory=list)
    end: str | None = None

    @property
    def begin_s(self):
        """When it begins."""
        return self.legs[0].path.begin_s

    @property
    def ends_s(self):
        """When it ends."""
        return self.legs[-1].path.end_s


def carry(medium, starts, watch=None):
    """Take Starts to their ends -> list of Journey, in order.

    watch(done) is told often how many have ended; what it raises stops the work. Raises StepLimitExceeded.
    """
    travels = [_Progress(s) for s in starts]
    for t in travels:
        t.open(medium.spin)
    while active := [t for t in travels if t.next is not None]:
        done = len(travels) - len(active)
        tell = watch and (lambda ended, done=done: watch(done))
        flights = [t for t in active if isinstance(t.next, Release)]
        grounds = [t for t in active if not isinstance(t.next, Release)]
        if flights:
            _after_flights(medium, flights, _worked(fly, medium, travels, flights, tell))
        if grounds:
            _after_grounds(medium, grounds, _worked(go, medium, travels, grounds, tell))
    if watch is not None:
        watch(len(travels))
    return [t.journey for t in travels]


def _worked(work, medium, travels, some, tell):
    """What `fly` or `go` makes of the next legs of some of the travels."""
    try:
        return work(medium, [t.next for t in some], tell)
    except StepLimitExceeded as exceeded:
        raise StepLimitExceeded(travels.index(some[exceeded.index])) from None


class _Progress:
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
            position, velocity, _ = _into_frame(spin, np.array([path.end_s]), turns, *states, np.zeros((1, 3)))
            kind = surface.name_at(position[0])
            self.happens(kind, path.end_s, position[0], velocity[0], np.zeros(3), surface)
            self.finish(_how(kind))

    def add(self, leg):
        """A leg more; brief ones are counted, and those of no length not kept, unless it is the first."""
        length = leg.path.end_s - leg.path.begin_s
        self.standstills = 0 if length > _BRIEF_S else self.standstills + 1
        if length > 0 or not self.journey.legs:
            self.journey.legs.append(leg)

    def happens(self, *what):
        """Something happens."""
        self.journey.events.append(Event(*what))

    def slips(self, time_s, laid):
        """A thing that stood begins to slide as the leg begins; told once."""
        told = self.journey.events and self.journey.events[-1]
        if not told or (told.kind, told.time_s) != ("slip", time_s):
            self.happens("slip", time_s, laid.position_m, laid.velocity_m_s)

    def finish(self, end):
        """The end."""
        self.journey.end, self.next = end, None


def _after_flights(medium, travels, flown):
    """Add the flights' legs; end or go on."""
    meets = []
    for travel, flight in zip(travels, flown, strict=True):
        travel.add(Leg(flight.path, None, np.asarray(flight.release.spin_rad_s, dtype=float)))
        if flight.surface is None:
            travel.finish(None)
        else:
            meets.append((travel, flight))
    if not meets:
        return
    time_s = np.array([f.path.end_s for _, f in meets])
    position, velocity = _last_states([f.path for _, f in meets])
    turns = np.array([f.release.room.turns for _, f in meets])
    spinning = np.array([t.journey.legs[-1].spin_rad_s for t, _ in meets])
    position, velocity, spinning = _into_frame(medium.spin, time_s, turns, position, velocity, spinning)
    going = []
    for i, (travel, flight) in enumerate(meets):
        kind = flight.surface.name_at(position[i])
        if _stays(travel, kind) and not flight.surface.edge:
            travel.happens(kind, time_s[i], position[i], velocity[i], np.zeros(3), flight.surface)
            travel.finish(_how(kind))
        else:
            going.append(i)
    if going:
        some = [meets[i] for i in going]
        states = time_s[going], position[going], velocity[going], spinning[going]
        _meet(medium, [t for t, _ in some], [f.surface for _, f in some], *states)


def _stays(travel, kind):
    """Whether a motion ends with a contact: a liquid's first, and the first with the ground where no rebound is allowed."""
    start = travel.journey.start
    return start.sticks or (start.bounces == 0 and kind in ON_THE_GROUND)


def _how(kind):
    """The end of a motion that ends at a surface."""
    return "landed" if kind in ON_THE_GROUND else "met a surface"


def _last_states(paths):
    """Position and velocity (n, 3) at the ends of paths, all at once: the end lies in the last piece."""
    length = np.array([(p.end_s - p.start_s[-1]) / p.length_s[-1] for p in paths])[:, None]
    columns = []
    for state, powers in (("position_m", "path_m"), ("velocity_m_s", "path_m_s")):
        most = max(getattr(p, powers).shape[1] for p in paths)
        change = np.zeros((len(paths), 3))
        rows = np.zeros((most, len(paths), 3))
        for i, p in enumerate(paths):
            piece = getattr(p, powers)[-1]
            rows[: len(piece), i] = piece
        for row in rows[::-1]:
            change = change * length + row
        columns.append(np.array([getattr(p, state)[-1] for p in paths]) + change)
    return columns


def _into_frame(spin, time_s, turns, position, velocity, spinning):
    """Inertial states (n, 3) -> those of the turning frame, where `turns` (n,); spins become relative to it."""
    angle = np.where(turns, spin.angle_rad(time_s), 0.0)
    omega = np.where(turns, spin.rate_rad_s(time_s), 0.0)
    position, velocity = frames.inertial_to_rotating(position, velocity, angle, omega)
    spinning = frames.turn(spinning, -angle)
    spinning[:, 2] -= omega
    return position, velocity, spinning


@dataclass(frozen=True)
class _State:
    """One body's position, velocity and spin (3,), the last relative to the room's frame, in that frame's axes."""

    position_m: np.ndarray
    velocity_m_s: np.ndarray
    spin_rad_s: np.ndarray


def _meet(medium, travels, surfaces, time_s, position, velocity, spinning):
    """What comes of contacts: states (n, 3) of the room's frame just before, spins relative to it."""
    bodies = contact.balls([t.next.body for t in travels])
    normal = _each(surfaces, "normal", position)
    into = -np.einsum("ij,ij->i", velocity, normal)
    level = velocity + np.maximum(into, 0.0)[:, None] * normal
    pressed = _pressed(medium, travels, surfaces, time_s, position, level, normal)
    may = np.array([t.left > 0 for t in travels])
    real = may & contact.rebounds(bodies, bodies.restitution * into, pressed)
    after, spun, slips = contact.impulse(bodies, normal, velocity, spinning, np.where(real, bodies.restitution, 0.0))
    slipping = np.linalg.norm(slips, axis=1) > _NO_SLIP_M_S
    # What neither rebounds nor is pressed glides along and is in nobody's way: a hair's breadth off, it flies free.
    place = np.where((real | (pressed > 0))[:, None], position, position + _HAIR_M * normal)
    # So gliding it is not lifted: a lift toward the surface would have it meet that again and again.
    flies = _releases(medium.spin, travels, time_s, place, after, spun, real)
    for i, travel in enumerate(travels):
        met = _Contact(surfaces[i], time_s[i], position[i], velocity[i], normal[i], real[i], pressed[i], slipping[i])
        _decide(travel, met, _State(position[i], after[i], spun[i]), flies[i])


@dataclass(frozen=True)
class _Contact:
    """A contact: surface, time, state just before (3,), normal (3,), whether it rebounds, the acceleration that presses it
    on, and whether it slips after."""

    surface: object
    time_s: float
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    normal: np.ndarray
    real: bool
    pressed_m_s2: float
    slipping: bool


def _each(surfaces, what, *states):
    """A surface's `what` at each of states (n, 3), all bodies of one surface at once -> (n, 3)."""
    out = np.empty_like(states[0])
    for surface in dict.fromkeys(surfaces):
        here = np.array([s is surface or s == surface for s in surfaces])
        out[here] = getattr(surface, what)(*(state[here].T for state in states)).T
    return out


def _decide(travel, met, state, flies):
    """What one body does after a contact: end there, fly on, or lie on a surface."""
    kind = met.surface.name_at(met.position_m)
    if met.surface.edge:
        travel.happens("edge", met.time_s, met.position_m, met.velocity_m_s)
        travel.finish("edge")
        return
    stays = _stays(travel, kind)
    travel.touches += not met.real
    if stays or travel.standstills > _MOST_STANDSTILLS or travel.touches > _MOST_TOUCHES:
        travel.happens(kind, met.time_s, met.position_m, met.velocity_m_s, np.zeros(3), met.surface)
        travel.finish(_how(kind))
        return
    ground = travel.next.surface if isinstance(travel.next, GroundStart) else None
    if met.pressed_m_s2 > 0 or met.velocity_m_s @ met.normal < -_PARTED_M_S:
        travel.happens(kind, met.time_s, met.position_m, met.velocity_m_s, state.velocity_m_s, met.surface)
    travel.left -= bool(met.real)
    travel.standstills = 0 if met.real else travel.standstills
    if ground is not None and not met.real and kind not in ON_THE_GROUND:
        travel.next = _still_on(travel, ground, met, state, flies)
    elif met.real or met.pressed_m_s2 <= 0:
        travel.next = flies
    else:
        travel.next = _laid(travel, met.surface, met.time_s, state, met.slipping)
    if travel.journey.start.beyond is not None and kind in ON_THE_GROUND:
        travel.next = replace(travel.next, room=travel.journey.start.beyond)


def _still_on(travel, ground, met, state, flies):
    """After a wall was met on the ground: it goes on there, unless the wall's friction lifts it and it may still rebound."""
    normal = ground.normal(state.position_m)
    rising = float(state.velocity_m_s @ normal)
    if rising > _PARTED_M_S and travel.left > 0:
        travel.left -= 1
        return flies
    level = replace(state, velocity_m_s=state.velocity_m_s - rising * normal)
    one = contact.balls([travel.next.body])
    slips = contact.slip(one, normal[None], level.velocity_m_s[None], level.spin_rad_s[None])
    return _laid(travel, ground, met.time_s, level, np.linalg.norm(slips) > _NO_SLIP_M_S)


def _releases(spin, travels, time_s, position, velocity, spinning, lifts):
    """Releases that go on from states (n, 3) of the room's frame, spins relative to it; lifts (n,): whether the air does."""
    turns = np.array([t.next.room.turns for t in travels])
    angle = np.where(turns, spin.angle_rad(time_s), 0.0)
    omega = np.where(turns, spin.rate_rad_s(time_s), 0.0)
    position, velocity = frames.rotating_to_inertial(position, velocity, angle, omega)
    spinning = spinning.copy()
    spinning[:, 2] += omega
    spinning = frames.turn(spinning, angle)
    return [
        Release(
            t.next.room, t.next.body, time_s[i], position[i], velocity[i], t.next.end_s, spinning[i], bool(lifts[i])
        )
        for i, t in enumerate(travels)
    ]


def _laid(travel, surface, time_s, state, slipping):
    """A GroundStart that goes on from a state of the room's frame."""
    before, body = travel.next, travel.next.body
    mode = "stands" if body.diameter_m == 0 or not travel.journey.start.rolls else "slides" if slipping else "rolls"
    parts = state.position_m, state.velocity_m_s, state.spin_rad_s
    return GroundStart(before.room, surface, body, float(time_s), *parts, before.end_s, mode)


def _pressed(medium, travels, surfaces, time_s, position, velocity, normal):
    """Acceleration (n,) toward its surface of each body that glides along it, m/s2; below 0 where it would leave it."""
    spin = medium.spin
    turns = np.array([t.next.room.turns for t in travels])
    omega, change = np.where(turns, spin.rate_rad_s(time_s), 0.0), np.where(turns, spin.change_rad_s2(time_s), 0.0)
    free = np.array([t.next.room.pull_m_s2 for t in travels]) + of_frame(omega, change, position.T, velocity.T).T
    for i in [i for i, t in enumerate(travels) if t.next.body.buoyant]:
        borne = Aboard(medium, travels[i].next.room, as_arrays([travels[i].next.body]))
        free[i] = borne.at(omega[i], change[i], position[i][:, None], velocity[i][:, None])[:, 0]
    bends = _each(surfaces, "normal_rate", position, velocity)
    return -np.einsum("ij,ij->i", free, normal) - np.einsum("ij,ij->i", velocity, bends)


def _after_grounds(medium, travels, went):
    """Add the legs on the ground; end or go on."""
    for travel, leg in zip(travels, went, strict=True):
        _after_ground(medium, travel, leg)


def _after_ground(medium, travel, leg):
    travel.add(Leg(leg.path, leg.laid.surface, np.zeros(3)))
    if leg.laid.mode == "stands" and not np.any(leg.laid.velocity_m_s) and np.any(leg.path.path_m[0]):
        travel.slips(leg.path.begin_s, leg.laid)
    time_s, state = leg.path.end_s, (leg.position_m, leg.velocity_m_s, leg.spin_rad_s)
    arrays = [np.array([v]) for v in (time_s, *state)]
    if leg.end == "time":
        travel.finish(None)
    elif leg.end == "left":
        travel.next = _releases(medium.spin, [travel], *arrays, [True])[0]
    elif leg.end == "met":
        _meet(medium, [travel], [leg.surface], *arrays)
    else:
        travel.happens(leg.end, time_s, leg.position_m, leg.velocity_m_s)
        if leg.end == "rest":
            travel.finish("rest")
        elif travel.standstills > _MOST_STANDSTILLS:
            travel.finish("met a surface")
        else:
            mode = leg.laid.mode if leg.laid.mode == "stands" else "rolls" if leg.end == "grip" else "slides"
            travel.next = replace(
                leg.laid, time_s=time_s, position_m=state[0], velocity_m_s=state[1], spin_rad_s=state[2], mode=mode
            )
