"""The stepper of flights: many bodies, each in windows of its own length, by Picard's iteration in the inertial frame.

Why the inertial frame: there the turning frame's whole part of the motion is a straight line, which no window need follow; the error
budget goes to the forces alone, and a lob is one window. `picard.py` solves windows; here their lengths are chosen, each body's by how
fast the coefficients of its accelerations fall. Arrays are (3, N), as in `integrate.py`, and a step comes back in the same form.
"""

import numpy as np

from . import picard
from .integrate import JUST_AFTER, Step
from .room import Room, fresh

DEGREE = 23  # of a window's accelerations: where few bodies fly a call costs the same however many points it has,
DEGREES_OF_MANY = 8, 9, 10, 12, 15, 18  # where many do it costs by the point: as few as a window of some of them needs
_SOME = 8  # of many bodies, which are looked at first
MANY = 64  # bodies
_AT_ONCE = 10_000  # points of windows: so many that what numpy costs a call no longer counts, so few that their arrays stay in the cache
_SETTLED = 0.2  # of the error allowed: what rounds may leave
_WELL_WITHIN = 0.3  # of the error allowed: what is left out of the windows of some, so that most others do too
_GIVE_UP = 3.0  # times the error allowed, told after two rounds
_LEAST = 1e-9  # of the time it is at, or s: a window as short is taken whatever its error
_NO_SPEED = 1e-300
_ALL = slice(None)


class _Law:
    """A force for `picard.second_order`, on the bodies of an index."""

    def __init__(self, force, begin_s, jumps, room):
        self._force, self._begin_s, self._jumps, self._room = force, begin_s, jumps, room
        self._which, self._some, self._some_begin_s = None, force, begin_s

    def __call__(self, which, elapsed_s, position, velocity, slowing):
        if which is not self._which:
            self._which, self._some, self._some_begin_s = which, self._force.take(which), self._begin_s[which]
        if self._jumps:  # at the instant of a jump a force is still that of before
            elapsed_s = np.maximum(elapsed_s, JUST_AFTER * self._some_begin_s)
        return self._some.at(elapsed_s, position, velocity, slowing, self._room, velocity)


class WindowStepper:
    """Steps N bodies through a force; `step` gives the next Step, of every body its own, `keep` drops bodies that are done.

    force: with `at(elapsed_s, position, velocity, slowing, room, out)` -> (3, K, N) m/s2 (`forces.py`) and `take(which)`.
    limit_s (a number or (N,)): elapsed time at which each is done. stops_s (S, N): elapsed times no window of a body may cross (kinks of
    the force); jumps: whether the force jumps there, its value at that instant being the one before.
    reach_m, longest_s (numbers or (N,)): in one window no body goes further than this in the plane of rotation, nor longer.
    The error of a window is at most absolute + relative |position|, metres, and that of the velocity the same over lasts_s: it grows
    with the time that is still flown. lasts_s, first_s (numbers or (N,)): a length to try first.
    """

    def __init__(
        self,
        force,
        position,
        velocity,
        limit_s,
        *,
        absolute,
        relative=0.0,
        lasts_s=1.0,
        first_s=np.inf,
        stops_s=None,
        reach_m=np.inf,
        longest_s=np.inf,
        jumps=False,
    ):
        count = position.shape[1]
        self._force, self._position, self._velocity, self._jumps = force, position, velocity, jumps
        self._absolute, self._relative = absolute, relative
        self._limit_s, self._lasts_s, self._length_s, self._reach_m, self._longest_s = (
            figure + np.zeros(count) for figure in (limit_s, lasts_s, first_s, reach_m, longest_s)
        )
        self._stops_s = np.empty((0, count)) if stops_s is None else stops_s
        self._elapsed_s = np.zeros(count)
        self._room = fresh if count < MANY else Room()
        self._degree = DEGREE if count < MANY else self._degree_of_many()

    @property
    def done(self):
        """Which bodies (N,) have come to their limit."""
        return self._elapsed_s >= self._limit_s

    def _degree_of_many(self):
        """The least of the degrees at which the windows that are wanted first are as exact as allowed, told from some of the bodies."""
        some = np.linspace(0, self._position.shape[1] - 1, _SOME).astype(int)
        length_s, allowed_m = self._lengths(some)[0], self._allowed_m(some)
        window = self._window(some, length_s, allowed_m, self._to_error(some, length_s, allowed_m, DEGREE), DEGREE)
        with np.errstate(over="ignore", invalid="ignore"):
            size = np.max(np.abs(window.series()), axis=0)
            for degree in DEGREES_OF_MANY:
                to_error = self._to_error(some, length_s, allowed_m, degree)
                if np.all(to_error * np.max(size[degree - 1 : degree + 1], axis=0) <= _WELL_WITHIN):
                    break
        return degree

    def keep(self, mask):
        """Go on with the bodies of the mask (N,) only."""
        self._force = self._force.take(mask)
        for name in (
            "_position",
            "_velocity",
            "_limit_s",
            "_lasts_s",
            "_length_s",
            "_reach_m",
            "_longest_s",
            "_stops_s",
            "_elapsed_s",
        ):
            setattr(self, name, getattr(self, name)[..., mask])

    def step(self) -> Step:
        """The next step of every body."""
        shape = self._position.shape
        path_m, path_m_s, length_s = *np.zeros((2, self._degree + 3, *shape)), np.zeros(shape[1])
        begin_s, position, velocity = self._elapsed_s, self._position, self._velocity

        def keep(which, window, fine):
            some = which[fine]
            path_m[:, :, some], path_m_s[:, :, some] = window.path_m()[..., fine], window.path_m_s()[..., fine]
            length_s[some] = window.length_s[fine]

        self._advance(keep)
        return Step(begin_s, length_s, position, velocity, path_m, path_m_s)

    def propagate(self):
        """Step every body to its limit; the states (3, N), (3, N) there."""
        ends = np.empty((2, *self._position.shape))
        at = np.arange(self._position.shape[1])
        while len(at):
            self._advance(lambda *_: None)
            done = self.done
            if len(at) == ends.shape[2] and done.all():
                return self._position, self._velocity
            ends[:, :, at[done]] = self._position[:, done], self._velocity[:, done]
            if np.any(done):
                at = at[~done]
                self.keep(~done)
        return ends[0], ends[1]

    def _advance(self, keep):
        """Take every body through its next window that is fine; keep(which, window, fine) is told each."""
        left = (~self.done).nonzero()[0]
        while len(left):
            left = left[~self._tried(left, keep)]

    def _ahead(self, which):
        """Elapsed times (M,) that the next windows of bodies may not cross, and how long they may be and are wanted to be at most."""
        begin_s = self._elapsed_s[which]
        stops_s = self._stops_s[:, which]
        until_s = np.minimum.reduce(np.where(stops_s > begin_s, stops_s, np.inf), axis=0, initial=np.inf)
        speed = np.hypot(self._velocity[0, which], self._velocity[1, which])
        longest_s = np.minimum(self._longest_s[which], self._reach_m[which] / np.maximum(speed, _NO_SPEED))
        return np.minimum(until_s, self._limit_s[which]), np.minimum(self._length_s[which], longest_s)

    def _lengths(self, which):
        """Lengths (M,) of the next windows of bodies, until when they may be, and whether (M,) they are cut short."""
        until_s, wanted_s = self._ahead(which)
        ahead_s = until_s - self._elapsed_s[which]
        length_s = ahead_s / np.ceil(
            np.maximum(ahead_s / wanted_s - 1e-9, 1.0)
        )  # alike, so that no short one is left at the end
        return length_s, until_s, length_s < wanted_s

    def _allowed_m(self, which):
        """The errors (M,) allowed to windows of bodies."""
        if not self._relative:
            return np.full(len(self._elapsed_s[which]), self._absolute)
        x, y, z = np.abs(self._position[:, which])
        return self._absolute + self._relative * np.maximum(np.maximum(x, y), z)

    def _to_error(self, which, length_s, allowed_m, degree):
        """(M,): what a coefficient of a degree that is left out is in errors, of those allowed."""
        return length_s * np.maximum(length_s / degree**2, 0.1 / degree * self._lasts_s[which]) / allowed_m

    def _window(self, which, length_s, allowed_m, to_error, degree):
        """The windows of bodies."""
        force = self._force if isinstance(which, slice) and which == _ALL else self._force.take(which)
        law = _Law(force, self._elapsed_s[which], self._jumps, self._room)
        return picard.second_order(
            law, self._elapsed_s[which], length_s, self._position[:, which], self._velocity[:, which], _SETTLED * allowed_m,
            degree=degree, lasts_s=self._lasts_s[which], most=_GIVE_UP / to_error, room=self._room,
        )  # fmt: skip

    def _tried(self, which, keep):
        """One try of windows of the bodies `which`: whether (M,) each was fine. Those that were are at its end."""
        whole = len(which) == len(self._elapsed_s)
        some = _ALL if whole else which
        begin_s, (length_s, until_s, cut_short) = self._elapsed_s[some], self._lengths(some)
        allowed_m, error, end = self._allowed_m(some), np.empty(len(which)), np.empty((2, 3, len(which)))
        to_error = self._to_error(some, length_s, allowed_m, self._degree)
        brief, at_once = length_s <= _LEAST * np.maximum(begin_s, 1.0), _AT_ONCE // (self._degree + 1)
        with np.errstate(over="ignore", invalid="ignore"):  # of windows far too long, which ran away
            for first in range(0, len(which), at_once):
                part = slice(first, first + at_once)
                own = some if len(which) <= at_once else part if whole else which[part]
                window = self._window(own, length_s[part], allowed_m[part], to_error[part], self._degree)
                off = to_error[part] * window.tail()
                error[part] = np.where((window.moved <= allowed_m[part]) | (off > 1.0), off, np.inf)
                end[0, :, part], end[1, :, part] = window.end()
                keep(which[part], window, (error[part] <= 1.0) | brief[part])
        fine = (error <= 1.0) | brief
        wanted_s = picard.next_length(length_s, error, self._degree)
        # A window cut short says nothing against the length that was wanted before it.
        wanted_s = np.where(fine & cut_short, np.maximum(wanted_s, self._length_s[some]), wanted_s)
        self._length_s[some] = wanted_s
        at_end = begin_s + length_s >= until_s * (1.0 - 1e-14)
        ends_s = np.where(at_end, until_s, begin_s + length_s)
        if whole and fine.all():
            (self._position, self._velocity), self._elapsed_s = end, ends_s
        else:
            on = which[fine]  # the arrays of before are those of a Step, or of whoever gave them
            self._position, self._velocity, self._elapsed_s = (
                a.copy() for a in (self._position, self._velocity, self._elapsed_s)
            )
            self._position[:, on], self._velocity[:, on] = end[..., fine]
            self._elapsed_s[on] = ends_s[fine]
        return fine
