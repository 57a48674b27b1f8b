"""How a bob on a line swings until its time ends or it meets something: stretches with the line taut and slack, in turn.

The laws are `physics/pendulum.py`'s, the steps `physics/windows.py`'s. Inside each step are looked for: other surfaces, as in the
air; where a taut line's pull falls to 0, on a polynomial through Chebyshev's points of it; where a slack line is straight again.
Everything is in the turning frame. What is counted of the swings (`Swings`) is read off the path's turning points.
"""

from dataclasses import dataclass, field, replace

import numpy as np

from ...motions.flight import StepLimitExceeded
from ...motions.journey import Event
from ...motions.path import Path, of_no_length
from ...physics import bernstein
from ...physics.crossings import first_contact, touching
from ...physics.integrate import Step
from ...physics.pendulum import Hung, square_to
from ...physics.surfaces import Ball
from ...physics.windows import RULE, Windows

MOST_TRIES = 4_000  # steps: seconds of work
_TOLERANCE = 1e-10  # error allowed to a step, of the line's length
_NO_PULL_M_S2 = 1e-9  # a push smaller than this is none
_MOST_JERKS = 60  # after as many it hangs where nothing holds it


@dataclass
class Swung:
    """What became of it: its path in the room's frame, what happened, how it ended (None where its time did), and the times
    (k, 2) between which its line was slack."""

    path: Path = None
    events: list = field(default_factory=list)
    end: str | None = None
    slack_s: list = field(default_factory=list)


def swing(spin, law: Hung, room, radius_m, start_s, end_s, position, velocity):
    """Let a bob of radius_m swing in a room from a place from the pivot and a velocity (3,), until end_s -> Swung. Raises StepLimitExceeded
    where it would take more than MOST_TRIES steps."""
    going = _Swinging(spin, law, room, radius_m, end_s)
    going.begin(start_s, position, velocity)
    while going.under_way:
        going.stretch()
    return going.swung()


class _Swinging:
    """A bob under way: the law of its line, its state (3, 1) and the steps so far."""

    def __init__(self, spin, law, room, radius_m, end_s):
        self._spin, self._law, self._room, self._radius = spin, law, room, np.array([radius_m])
        self._end_s, self._steps, self._tries, self._jerks = end_s, [], 0, 0
        self._line = Ball("line", law.length_m)
        self._out = Swung()
        self.under_way = True

    def begin(self, start_s, position, velocity):
        """Set the state; what is in contact at the start, and stays so, ends there."""
        self._begin_s = self._time_s = start_s
        self._position, self._velocity = position[:, None], velocity[:, None]
        rate = self._rates()
        state = self._position + self._pivot, self._velocity, self._law.at(rate, self._position, self._velocity)[0]
        self._touch = np.array([touching(s, *state, self._radius) for s in self._room.surfaces]).reshape(-1, 1)
        stays = np.flatnonzero(self._touch[:, 0] < 0)
        if len(stays):
            self._meet(self._room.surfaces[stays[0]])
        elif start_s >= self._end_s:
            self.under_way = False

    @property
    def _pivot(self):
        return self._law.pivot_m[:, None]

    def _rates(self):
        now = np.array([self._time_s])
        return self._spin.rate_rad_s(now), self._spin.change_rad_s2(now)

    def stretch(self):
        """Go on until the line goes slack or straight, something is met, or the time ends."""
        if self._law.taut and self._law.pull_m_s2(self._rates(), self._position, self._velocity)[0] < -_NO_PULL_M_S2:
            self._slacken()
        error_m = _TOLERANCE * self._law.length_m
        state = self._position, self._velocity
        windows = Windows(self._law, self._spin, self._time_s, self._end_s, *state, error_m)
        after, straight = None, 2  # a slack line is straight as it begins, and not any straighter
        while after is None and self.under_way:
            if self._tries == MOST_TRIES:
                raise StepLimitExceeded
            self._tries += 1
            taken = windows.step()
            if taken is None:
                continue
            s, after = self._first(taken, straight)
            self._keep(taken.step, s, windows)
            straight = 0
            self.under_way = after is not None or self._time_s < self._end_s
        if after is not None:
            after()

    def _first(self, taken, straight):
        """Where in a step something changes, at most 1, and what is to be done then, or None."""
        step = taken.step
        absolute = Step(
            step.elapsed_s, step.length_s, step.position_m + self._pivot, step.velocity_m_s, step.path_m, step.path_m_s
        )
        s, met = first_contact(absolute, self._room.surfaces, self._radius, self._touch)
        self._touch = np.zeros_like(self._touch)
        turn = self._slackens(taken) if self._law.taut else self._straightens(step, straight)
        if s[0] <= 1.0 and s[0] <= turn:
            return float(s[0]), lambda: self._meet(self._room.surfaces[met[0]])
        if turn <= 1.0:
            return turn, self._slacken if self._law.taut else self._jerk
        return 1.0, None

    def _slackens(self, taken):
        """Where in a step the pull of a taut line falls to 0, or inf."""
        pull = taken.watched + _NO_PULL_M_S2
        if np.min(pull) > 0.5 * np.ptp(pull):
            return np.inf
        scale = max(float(np.max(np.abs(pull))), 1e-300)
        return float(bernstein.first_descent(RULE.control @ (RULE.series @ (pull[:, None] / scale)), depth=1e-15)[0])

    def _straightens(self, step, straight):
        """Where in a step a slack line is straight again, or inf; `straight` roots at the step's start are left out."""
        gap = self._line.gap_control(step.position_m, step.path_m, np.zeros(1))
        for _ in range(straight):
            gap = bernstein.deflated(gap)
        return float(bernstein.first_descent(gap)[0])

    def _keep(self, step, s, windows):
        """Keep a step as far as s, and the state there."""
        self._steps.append(step)
        if s == 1.0:
            self._time_s, self._position, self._velocity = windows.time_s, windows.position, windows.velocity
            return
        self._time_s = float(step.elapsed_s[0] + s * step.length_s[0])
        self._position, self._velocity = step.at(np.array([s]))

    def _happens(self, kind, **more):
        place = (self._position + self._pivot)[:, 0]
        self._out.events.append(Event(kind, self._time_s, place, self._velocity[:, 0].copy(), **more))

    def _meet(self, surface):
        """It meets a surface, and ends there; past an edge it is not followed."""
        kind = "edge" if surface.edge else surface.name_at((self._position + self._pivot)[:, 0])
        if surface.edge:
            self._happens(kind)
        else:
            self._happens(kind, after_m_s=np.zeros(3), surface=surface)
        self._out.end, self.under_way = "edge" if surface.edge else "met a surface", False

    def _slacken(self):
        """The line goes slack; after very many times it ends there."""
        self._happens("slack")
        self._out.slack_s.append([self._time_s, self._end_s])
        self._jerks += 1
        self._law = replace(self._law, taut=False)
        if self._jerks > _MOST_JERKS:
            self._out.end, self.under_way = "slack", False

    def _jerk(self):
        """The line is straight again: the outward part of the velocity is lost."""
        self._happens("taut")
        self._out.slack_s[-1][1] = self._time_s
        self._law = replace(self._law, taut=True)
        self._position, self._velocity = self._law.settled(self._position, self._velocity)

    def swung(self):
        """All of it."""
        steps, pivot = self._steps, self._law.pivot_m
        if not steps:
            state = (self._position + self._pivot)[:, 0], self._velocity[:, 0]
            self._out.path = of_no_length(self._begin_s, *state)
            return self._out
        times = [np.array([float(getattr(p, name)[0]) for p in steps]) for name in ("elapsed_s", "length_s")]
        states = [
            np.stack([getattr(p, name)[..., 0] for p in steps])
            for name in ("position_m", "velocity_m_s", "path_m", "path_m_s")
        ]
        states[0] = states[0] + pivot
        self._out.path = Path(*times, *states, self._begin_s, self._time_s)
        return self._out


STILL_DEG = 0.05  # a swing narrower than that has no plane worth a word
_NONE_RAD = 1e-7  # a swing that is none
_SHARES = np.linspace(0.0, 1.0, 31)[1:]  # of a step, at which turning points are looked for
_ROUNDS = 12  # of the search for one: six or seven leave rounding
_NO_RATE = 1e-12  # of the fastest
_ROUND = 0.95  # a swing whose least angle is more than that share of its greatest goes round, and has no plane
_MOST_RAD = np.pi / 3  # that the plane may turn from one turning point to the next: beyond, none could tell which way


class Swings:
    """The swings of a bob on a `hang.HangingLine` along a path (Trajectory). period_s, plane_turns_deg, plane_turns_deg_per_h: None where
    there are none to count: it is at rest, goes round, or its plumb line itself turns with a changing spin; nor are they where
    they are not to be `counted`. over_the_top: how often it goes over the top; where it does so every time, period_s is that of once round.

    The plane's turn, over the whole path, is anticlockwise seen from above where it is positive.
    """

    def __init__(self, line, spin, path, *, counted=True):
        self.period_s = self.plane_turns_deg = self.plane_turns_deg_per_h = None
        self.over_the_top, self.always_over = 0, False
        if not counted or np.any(spin.times_s > path.begin_s):
            return
        self._line, self._path = line, path
        self._down = line.plumb(spin, np.array([path.begin_s]))[0]
        tops, bottoms = self._turning_s()
        self._go_over(bottoms)
        times = bottoms if self.always_over else tops
        if len(times) >= 2:
            self.period_s = float((1.0 if self.always_over else 2.0) * (times[-1] - times[0]) / (len(times) - 1))
        if len(tops) >= 2 and not self.over_the_top and self._widest_rad >= np.radians(STILL_DEG):
            self._turn(tops)

    def _away(self, time_s):
        """How far (n,) the line is from plumb, radians, and a figure (n,) with the sign of its rate, at times (n,)."""
        position, velocity = self._path.at(time_s)
        place = position - self._line.pivot_m
        level = place - (place @ self._down)[:, None] * self._down
        angle = np.arctan2(np.linalg.norm(level, axis=1), place @ self._down)
        return angle, -(velocity @ self._down)

    def _turning_s(self):
        """Times (k,) at which the bob is farthest from its plumb line, and (m,) at which it is nearest."""
        path = self._path
        knots = path.start_s[:, None] + path.length_s[:, None] * _SHARES
        # The begin itself, let go from rest or pushed at its lowest, is one: the rate there is 0, and falls or rises.
        grid = np.unique(np.clip(np.concatenate([[path.begin_s], knots.ravel()]), path.begin_s, path.end_s))
        angle, rate = self._away(grid)
        self._widest_rad = float(np.max(angle, initial=0.0))
        if self._widest_rad <= _NONE_RAD or np.min(angle) >= _ROUND * np.max(angle):
            return np.empty(0), np.empty(0)
        turns = len(rate) > 1 and abs(rate[0]) <= _NO_RATE * np.max(np.abs(rate))
        if turns:
            rate[0] = 0.0
        falls, rises = ((sign * rate[:-1] > 0) & (sign * rate[1:] <= 0) for sign in (1.0, -1.0))
        k = (falls | rises).nonzero()[0]
        times = self._none_s(grid[k], grid[k + 1], rate[k], rate[k + 1])
        begins = [np.full(int(turns and sign * rate[1] < 0), path.begin_s) for sign in (1.0, -1.0)]
        return tuple(np.concatenate([first, times[of[k]]]) for first, of in zip(begins, (falls, rises), strict=True))

    def _none_s(self, low_s, high_s, low, high):
        """Times (k,) between two at which the rate is 0, which has one sign at low_s and the other, or is 0, at high_s: by false position,
        where an end that stays twice counts half (the Illinois rule: Dahlquist & Bjorck, Numerical Methods, section 6.4)."""
        middle_s, before = low_s, np.zeros_like(low_s, dtype=int)
        for _ in range(_ROUNDS if len(low) else 0):
            middle_s = low_s + (high_s - low_s) * low / (low - high)
            middle = self._away(middle_s)[1]
            past = middle * low <= 0
            again, before = np.where(before == np.where(past, 1, -1), 0.5, 1.0), np.where(past, 1, -1)
            low_s, high_s = np.where(past, low_s, middle_s), np.where(past, middle_s, high_s)
            low, high = np.where(past, again * low, middle), np.where(past, middle, again * high)
        return middle_s

    def _go_over(self, bottoms_s):
        """How often it goes over the top: from bottom to bottom it then goes round the same way, where a swing turns back."""
        if len(bottoms_s) < 2:
            return
        position, velocity = self._path.at(bottoms_s)
        about = np.cross(position - self._line.pivot_m, velocity)
        about -= (about @ self._down)[:, None] * self._down
        over = np.einsum("ni,ni->n", about[1:], about[:-1]) > 0
        self.over_the_top, self.always_over = int(np.sum(over)), bool(np.all(over))

    def _turn(self, times):
        """How the line through the turning points turns."""
        up = -self._down
        east = square_to(up, self._line.rows[0], self._line.rows[2])
        level = self._path.at(times)[0] - self._line.pivot_m
        azimuth = np.arctan2(level @ np.cross(up, east), level @ east)
        steps = (np.diff(azimuth) + np.pi / 2) % np.pi - np.pi / 2
        if np.max(np.abs(steps)) > _MOST_RAD:
            return
        rate_deg_s = float(np.degrees(np.sum(steps))) / float(times[-1] - times[0])
        self.plane_turns_deg = rate_deg_s * float(self._path.end_s - self._path.begin_s)
        self.plane_turns_deg_per_h = rate_deg_s * 3600.0
