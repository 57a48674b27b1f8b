"""Release, fly, meet: what everything that flies shares. Bodies fly in one batch; each comes back with its own path."""

from dataclasses import dataclass, replace

import numpy as np

from ..physics.bodies import Body, as_arrays
from ..physics.crossings import first_contact, touching
from ..physics.forces import Force, Medium, settling_rate_1_s
from ..physics.integrate import AT_ONCE, Coaster, Stepper
from ..physics.stiff import StiffStepper

TOLERANCE_M = 5e-10  # error allowed to a step, metres; six times as much passes a micrometre once in a thousand flights
_STIFF_TIMES = 2_000.0  # stopping times in a flight beyond which the implicit stepper is the faster one
MOST_STEPS = 10_000  # seconds of work; what needs more is refused by whoever asked
_PAST_ACROSS = 2.02  # a straight line that long, in radii, has left any circle it began in


@dataclass(frozen=True)
class Room:
    """Where bodies fly: what they can meet, whether it turns, and a constant pull (3,) in its frame, m/s2.

    across_m: radius of the circle that holds the room, None where it is open.
    """

    surfaces: tuple
    turns: bool
    pull_m_s2: tuple
    across_m: float | None


@dataclass(frozen=True)
class Release:
    """One body let go at time_s in a room: inertial position and velocity (3,), to fly until end_s at the latest."""

    room: Room
    body: Body
    time_s: float
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    end_s: float


@dataclass(frozen=True)
class Path:
    """The inertial path of one body, in S pieces: start_s and length_s (S,), states (S, 3) at each start, and the change
    since then, powers of s = (t - start)/length, path_m and path_m_s (S, K, 3). It holds from begin_s to end_s."""

    start_s: np.ndarray
    length_s: np.ndarray
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    path_m: np.ndarray
    path_m_s: np.ndarray
    begin_s: float
    end_s: float

    def at(self, time_s):
        """Inertial position and velocity (n, 3), (n, 3) at times (n,) inside [begin_s, end_s]."""
        k = np.clip(np.searchsorted(self.start_s, time_s, "right") - 1, 0, None)
        s = ((time_s - self.start_s[k]) / self.length_s[k])[:, None]
        return self.position_m[k] + _horner(self.path_m[k], s), self.velocity_m_s[k] + _horner(self.path_m_s[k], s)

    @property
    def knots_s(self):
        """Times at which one piece ends and the next begins, inside the path."""
        return self.start_s[(self.start_s > self.begin_s) & (self.start_s < self.end_s)]


def _joined(first, second):
    """Two paths as one; the second begins where the first ends."""
    powers = max(first.path_m.shape[1], second.path_m.shape[1])

    def both(a, b):
        return np.concatenate([_padded(a, powers), _padded(b, powers)]) if a.ndim == 3 else np.concatenate([a, b])

    columns = ("start_s", "length_s", "position_m", "velocity_m_s", "path_m", "path_m_s")
    return Path(*(both(getattr(first, c), getattr(second, c)) for c in columns), first.begin_s, second.end_s)


def _padded(a, powers):
    return np.pad(a, ((0, 0), (0, powers - a.shape[1]), (0, 0)))


def _horner(powers, s):
    """Sum of powers (n, K, 3) at s (n, 1)."""
    out = powers[:, -1]
    for k in range(powers.shape[1] - 2, -1, -1):
        out = out * s + powers[:, k]
    return out


class Crawls(Exception):
    """A flight that would take too long to work out: its Release."""

    def __init__(self, release):
        super().__init__(f"more than {MOST_STEPS:,} steps")
        self.release = release


@dataclass(frozen=True)
class Flown:
    """What became of a release: its path, and the surface it met at the path's end, or None if time ran out."""

    release: Release
    path: Path
    surface: object | None

    def until(self, time_s):
        """The same, ended at time_s, before it met anything."""
        return Flown(self.release, replace(self.path, end_s=time_s), None)


def whole(opening, flown):
    """A course as one flight: its opening, then its release, of which either may be None."""
    if opening is None or flown is None:
        return flown or opening
    return Flown(flown.release, _joined(opening.path, flown.path), flown.surface)


def fly(medium: Medium, releases, watch=None):
    """Fly releases together until each meets a surface of its room or its time ends -> list of Flown, in order.

    watch(done) is told after every step how many bodies have ended; what it raises ends the flight. Raises Crawls for a
    body whose path takes more than MOST_STEPS.
    """
    ended = 0
    flown = [None] * len(releases)
    for stiff in (False, True):
        group = [i for i, r in enumerate(releases) if _stiff(medium, r) == stiff]
        for part in (group[k : k + AT_ONCE] for k in range(0, len(group), AT_ONCE)):
            batch = _Batch(medium, [releases[i] for i in part], StiffStepper if stiff else Stepper)
            while batch.flying:
                batch.step()
                if watch is not None:
                    watch(ended + len(part) - batch.flying)
            ended += len(part)
            for k, i in enumerate(part):
                flown[i] = Flown(releases[i], batch.path(k), batch.met[k])
    return flown


def _stiff(medium, release):
    """Whether the air stops a body so soon, against the time it may fly, that explicit steps would crawl."""
    rate = settling_rate_1_s(medium, release.body, float(np.linalg.norm(release.room.pull_m_s2)))
    return rate * (release.end_s - release.time_s) > _STIFF_TIMES


class _Batch:
    """Bodies in the air, in lock step, each since its own release."""

    def __init__(self, medium, releases, stepper):
        self._stepper, self._steps = stepper, 0
        self._releases = releases
        self._rooms = list(dict.fromkeys(r.room for r in releases))
        self._room = np.array([self._rooms.index(r.room) for r in releases])
        self._start_s = np.array([r.time_s for r in releases])
        self._last_s = np.array([max(r.end_s - r.time_s, 0.0) for r in releases])
        self._ends_s = self._start_s + self._last_s
        bodies = as_arrays([r.body for r in releases])
        self._radius_m = bodies.diameter_m / 2
        self.met = [None] * len(releases)
        self._pieces = [[] for _ in releases]
        position = np.array([r.position_m for r in releases]).T.copy()
        velocity = np.array([r.velocity_m_s for r in releases]).T.copy()
        turns = np.array([float(r.room.turns) for r in releases])
        pull = np.array([r.room.pull_m_s2 for r in releases]).T.copy()
        force = Force(medium, bodies, self._start_s, turns, pull)
        self._at = np.arange(len(releases))  # index of each body still in the air
        self._touch = self._first_touch(position, velocity, force.at(0.0, position, velocity))
        up = np.array([self.met[i] is None and self._last_s[i] > 0 for i in self._at])
        for i in self._at[~up]:
            self._rest(i, position[:, i], velocity[:, i])
        self._mover = self._moving(medium, force, position, velocity, up) if np.any(up) else None
        self._drop(up)

    @property
    def flying(self):
        """How many bodies are still in the air."""
        return len(self._at)

    def _first_touch(self, position, velocity, acceleration):
        """State (surfaces, N) of each body to each surface of its room at its release; notes those that stay."""
        touch = np.zeros((max(len(room.surfaces) for room in self._rooms), len(self._releases)), dtype=int)
        for number, room in enumerate(self._rooms):
            here = self._room == number
            for k, surface in enumerate(room.surfaces):
                state = touching(
                    surface, position[:, here], velocity[:, here], acceleration[:, here], self._radius_m[here]
                )
                touch[k, here] = state
                for i in np.flatnonzero(here)[state < 0]:
                    self.met[i] = self.met[i] or surface
                    self._ends_s[i] = self._start_s[i]
        return touch

    def _rest(self, i, position, velocity):
        """A path of no length, for a body that does not fly."""
        still = np.zeros((2, 3))
        self._pieces[i].append((self._start_s[i], 1.0, position, velocity, still, still))
        self._ends_s[i] = self._start_s[i]

    def _moving(self, medium, force, position, velocity, up):
        reach = np.array(
            [np.inf if r.room.across_m is None else _PAST_ACROSS * r.room.across_m for r in self._releases]
        )[up]
        force, position, velocity = force.take(up), position[:, up], velocity[:, up]
        if force.coasts:
            return Coaster(force.pull_m_s2, position, velocity, self._last_s[up], reach)
        kinks = medium.spin.times_s[1:, None] - self._start_s[up]
        options = {"absolute": TOLERANCE_M, "stops_s": np.unique(kinks[kinks > 0]), "reach_m": reach}
        if self._stepper is Stepper:  # in the other, drag wipes out what goes wrong with a velocity
            options["lasts_s"] = self._lasts(position, velocity, force.pull_m_s2, up)
        return self._stepper(force, position, velocity, self._last_s[up].max(), **options)

    def _lasts(self, position, velocity, pull, up):
        """About how long each body flies (M,), seconds, as it would without air: at least 1, at most to its limit."""
        x, y = position[:2]
        vx, vy = velocity[:2]
        across = np.array([r.room.across_m or np.inf for r in self._releases])[up]
        speed2, along = vx * vx + vy * vy, x * vx + y * vy
        with np.errstate(divide="ignore", invalid="ignore"):
            inside = (np.sqrt(along**2 + speed2 * (across**2 - x * x - y * y)) - along) / speed2
            falling = (np.sqrt(vy * vy - 2 * pull[1] * np.maximum(y, 0.0)) + vy) / -pull[1]
        lasts = np.where(np.isfinite(across), inside, falling)
        return np.clip(np.nan_to_num(lasts, nan=np.inf), 1.0, np.maximum(self._last_s[up], 1.0))

    def step(self):
        """One step of all bodies in the air; those that meet something, or whose time ends, leave."""
        self._steps += 1
        if self._steps > MOST_STEPS:
            raise Crawls(self._releases[self._at[0]])
        step = self._mover.step()
        s, which = self._contacts(step)
        length = np.broadcast_to(step.length_s, s.shape)
        s_last = (self._last_s[self._at] - step.elapsed_s) / length
        staying = np.ones(len(s), dtype=bool)
        for j, i in enumerate(self._at):
            begin_s = self._start_s[i] + step.elapsed_s
            self._pieces[i].append(
                (
                    begin_s,
                    length[j],
                    step.position_m[:, j],
                    step.velocity_m_s[:, j],
                    step.path_m[:, :, j],
                    step.path_m_s[:, :, j],
                )
            )
            if s[j] <= min(1.0, s_last[j]):
                self.met[i] = self._rooms[self._room[i]].surfaces[which[j]]
                self._ends_s[i] = begin_s + s[j] * length[j]
            staying[j] = self.met[i] is None and s_last[j] > 1.0 and not self._mover.done
        self._touch = np.zeros_like(self._touch)
        self._mover.keep(staying)
        self._drop(staying)

    def _contacts(self, step):
        """First contact inside the step (M,), and the index of the surface in its room (M,)."""
        s, which = np.full(len(self._at), np.inf), np.full(len(self._at), -1)
        for number, room in enumerate(self._rooms):
            here = self._room[self._at] == number
            if np.any(here):
                part = step.only(here)
                s[here], which[here] = first_contact(
                    part, room.surfaces, self._radius_m[self._at[here]], self._touch[:, here]
                )
        return s, which

    def _drop(self, staying):
        self._at = self._at[staying]
        self._touch = self._touch[:, staying]

    def path(self, i):
        """The whole path of body i."""
        columns = [np.array(c, dtype=float) for c in zip(*self._pieces[i], strict=True)]
        return Path(*columns, self._start_s[i], self._ends_s[i])
