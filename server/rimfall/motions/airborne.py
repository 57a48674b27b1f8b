"""Bodies in the air together, in lock step, each since its own release: where they stand, what they meet, who leaves.

Arrays are (3, N) inside; only what a body meets is told one by one. Steps are kept whole and cut into paths at the end.
"""

import numpy as np

from ..physics import turned
from ..physics.bodies import as_arrays
from ..physics.budget import spend
from ..physics.crossings import TOUCH_M, first_contact, touching
from ..physics.forces import Force
from ..physics.integrate import Coaster
from ..physics.stiff import StiffStepper
from ..physics.windowed import WindowStepper

TOLERANCE_M = 5e-10  # error allowed to a step, metres; six times as much passes a micrometre once in a thousand flights
_A_LITTLE_MORE = 1.1  # than a flight lasts without air: the first window is to end behind its landing
_PAST_ACROSS = 2.02  # a straight line that long, in radii, has left any circle it began in


def distinct(things):
    """Those of a list that differ, and the number (N,) of each's own; the same object is compared once only."""
    numbers, ids = {}, [id(thing) for thing in things]
    of_ids = {
        one: numbers.setdefault(thing, len(numbers)) for one, thing in dict(zip(ids, things, strict=True)).items()
    }
    return list(numbers), np.array([of_ids[one] for one in ids])


_NO_LIFT = (np.nan, np.nan, np.nan)


class Airborne:
    """The bodies of releases in a medium, moved by a kind of stepper.

    met: the surface each has met, or None; ends_s (N,): when each has ended, once it has; log: a `StepLog` or an `EndLog` of them.
    tolerance_m: the error allowed to a step.
    """

    def __init__(self, medium, releases, stepper, log, tolerance_m=TOLERANCE_M):
        spend()
        self._tolerance_m = tolerance_m
        self._spin, self._stepper = medium.spin, stepper
        self._rooms, self._room = distinct([r.room for r in releases])
        bodies, which = distinct([r.body for r in releases])
        bodies = as_arrays(bodies).take(which)
        self._radius_m = bodies.diameter_m / 2
        self._start_s = np.array([r.time_s for r in releases])
        self._last_s = np.maximum(np.array([r.end_s for r in releases]) - self._start_s, 0.0)
        self.ends_s = self._start_s + self._last_s
        self.met = [None] * len(releases)
        position, velocity = (columns([getattr(r, n) for r in releases]) for n in ("position_m", "velocity_m_s"))
        force = self._force(medium, bodies, releases)
        self._at = np.arange(len(releases))  # index of each body still in the air
        self._touch = self._first_touch(position, velocity, force)
        up = np.array([surface is None for surface in self.met]) & (self._last_s > 0)
        self.ends_s[~up] = self._start_s[~up]
        self._first, self.log = (position, velocity), log
        log.begin(position, velocity)
        if not up.all():
            force, position, velocity = force.take(up), position[:, up], velocity[:, up]
        self._mover = self._moving(force, position, velocity, up) if up.any() else None
        self._drop(up)

    @property
    def first_going(self):
        """Index of one that is still in the air, or None."""
        return int(self._at[0]) if len(self._at) else None

    @property
    def going(self):
        """How many bodies are still in the air."""
        return len(self._at)

    def _of_rooms(self, what):
        """An array (N, ...) of what each body's room says."""
        return np.array([what(room) for room in self._rooms], dtype=float)[self._room]

    def _force(self, medium, bodies, releases):
        turns = self._of_rooms(lambda room: room.turns)
        air_turns = turns * self._of_rooms(lambda room: not room.still_air)
        pull = self._of_rooms(lambda room: room.pull_m_s2).T.copy()
        spinning = None
        if medium.air is not None and any(r.lifts for r in releases):
            spinning = columns([r.spin_rad_s if r.lifts else _NO_LIFT for r in releases])
        return Force(medium, bodies, self._start_s, turns, pull, spinning, air_turns)

    def _turned(self, room):
        """Whether a room holds what looks different for its turning."""
        return room.turns and (self._spin.tumbles or any(surface.turned for surface in room.surfaces))

    def _tumbles(self, room):
        """Whether a room's axis moves: then nothing that bounds it stands still, round or not."""
        return room.turns and self._spin.tumbles

    def _first_touch(self, position, velocity, force):
        """State (surfaces, N) of each body to each surface of its room at its release; notes those that stay."""
        touch = np.zeros((max(len(room.surfaces) for room in self._rooms), len(self._at)), dtype=int)
        if self._all_clear(position):
            return touch
        acceleration = force.at(0.0, position, velocity)
        for number, room in enumerate(self._rooms):
            inside = (self._room == number).nonzero()[0]
            own = position[:, inside], velocity[:, inside], acceleration[:, inside]
            turning = turned.states(self._spin, self._start_s[inside], *own) if self._turned(room) else own
            for k, surface in enumerate(room.surfaces):
                seen = turning if surface.turned or self._tumbles(room) else own
                state = touching(surface, *seen, self._radius_m[inside])
                touch[k, inside] = state
                for i in inside[state < 0] if (state < 0).any() else ():
                    self.met[i] = self.met[i] or surface
        return touch

    def _all_clear(self, position):
        """Whether no body touches anything, told where no room looks different for its turning."""
        if any(self._turned(room) for room in self._rooms):
            return False
        for number, room in enumerate(self._rooms):
            inside = slice(None) if len(self._rooms) == 1 else self._room == number
            own, radius_m = position[:, inside], self._radius_m[inside]
            if any((surface.gap(own, radius_m) <= TOUCH_M).any() for surface in room.surfaces):
                return False
        return True

    def _moving(self, force, position, velocity, up):
        """What moves the bodies of the mask."""
        open_ended = [room.across_m is None or self._tumbles(room) for room in self._rooms]
        reach = np.array(
            [
                np.inf if is_open else _PAST_ACROSS * room.across_m
                for room, is_open in zip(self._rooms, open_ended, strict=True)
            ]
        )[self._room][up]
        longest = self._of_rooms(lambda room: turned.longest_s(self._spin) if self._turned(room) else np.inf)[up]
        kinks = self._spin.times_s[1:, None] - self._start_s[up]
        if force.coasts:
            kinks = np.where(np.isfinite(longest), kinks, np.inf)
            return Coaster(
                force.pull_m_s2, position, velocity, self._last_s[up], reach, longest_s=longest, stops_s=kinks
            )
        options = {"absolute": self._tolerance_m, "reach_m": reach, "jumps": force.jumps}
        if self._stepper is StiffStepper:  # drag wipes out what goes wrong with a velocity
            stops_s = np.unique(kinks[(kinks > 0) & (kinks < self._last_s[up])])
            options |= {"stops_s": stops_s, "longest_s": float(np.min(longest))}
            return StiffStepper(force, position, velocity, self._last_s[up].max(), **options)
        falls_s = self._falls_s(position, velocity, force.pull_m_s2, up)
        lasts_s = np.clip(falls_s, 1.0, np.maximum(self._last_s[up], 1.0))
        options |= {"stops_s": kinks, "longest_s": longest, "lasts_s": lasts_s, "first_s": _A_LITTLE_MORE * falls_s}
        return WindowStepper(force, position, velocity, self._last_s[up], **options)

    def _falls_s(self, position, velocity, pull, up):
        """How long each body would fly (M,), seconds, without air; inf where it would not come down."""
        x, y = position[:2]
        vx, vy = velocity[:2]
        across = self._of_rooms(lambda room: room.across_m or np.inf)[up]
        speed2, along = vx * vx + vy * vy, x * vx + y * vy
        with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
            inside = (np.sqrt(along**2 + speed2 * (across**2 - x * x - y * y)) - along) / speed2
            falling = (np.sqrt(vy * vy - 2 * pull[1] * np.maximum(y, 0.0)) + vy) / -pull[1]
        falls_s = np.where(np.isfinite(across), inside, falling)
        return np.where(falls_s > 0, falls_s, np.inf)

    def step(self):
        """One step of all bodies in the air; those that meet something, or whose time ends, leave."""
        step = self._mover.step()
        s, which = self._contacts(step)
        begin_s = self._start_s[self._at] + step.elapsed_s
        s_last = (self._last_s[self._at] - step.elapsed_s) / step.length_s
        meets = s <= np.minimum(1.0, s_last)
        self.log.keep(step, self._at, begin_s, np.minimum(np.minimum(s, s_last), 1.0))
        self.ends_s[self._at[meets]] = (begin_s + np.where(meets, s, 0.0) * step.length_s)[meets]
        for i, k in zip(self._at[meets].tolist(), which[meets].tolist(), strict=True):
            self.met[i] = self._rooms[self._room[i]].surfaces[k]
        staying = ~meets & (s_last > 1.0) & ~np.asarray(self._mover.done)
        self._touch[:] = 0
        if not staying.all():
            if staying.any():
                self._mover.keep(staying)
            self._drop(staying)

    def _contacts(self, step):
        """First contact inside the step (M,), and the index of the surface in its room (M,)."""
        s, which = np.full(len(self._at), np.inf), np.full(len(self._at), -1)
        for number, room in enumerate(self._rooms):
            inside = self._room[self._at] == number
            if not inside.any():
                continue
            at, part = self._at[inside], step if inside.all() else step.only(inside)
            turning = (self._spin, self._start_s[at]) if self._turned(room) else None
            s[inside], which[inside] = first_contact(
                part, room.surfaces, self._radius_m[at], self._touch[: len(room.surfaces), inside], turning
            )
        return s, which

    def _drop(self, staying):
        self._at = self._at[staying]
        self._touch = self._touch[:, staying]

    def paths(self):
        """The path of each body, in order; of a `StepLog`."""
        return self.log.paths(self._start_s, self.ends_s, *self._first)


def columns(vectors):
    """A list of N vectors of 3 -> (3, N)."""
    return np.ascontiguousarray(np.array(vectors, dtype=float).T)
