"""Bodies on one surface under way together, each at its own pace, until something changes for it.

The laws are `physics/rolling.py`'s, the steps `physics/walker.py`'s. What ends a leg is looked for inside each step: other
surfaces on its polynomial, as in the air; a press or a grip that fades on a polynomial through Chebyshev's points of it; a
slip or a speed that dies out at a step's end, since no step goes past that. Everything is in the room's own frame.
"""

import numpy as np

from ..physics import bernstein
from ..physics.aboard import dot
from ..physics.corner import Corner, parts_of
from ..physics.cornered import Cornered
from ..physics.crossings import LET_GO, TOUCH_M, first_contact, touching
from ..physics.crowd import CROWD, CrowdWalker
from ..physics.integrate import Step
from ..physics.rolling import GONE_M_S, LAWS, ROLLS, SLIDES, STANDS, holds, riders, seeded
from ..physics.stillness import Stillness
from ..physics.walker import RULE, Walker
from .airborne import columns, distinct
from .path import StepLog

TOLERANCE_M = 2e-9  # error allowed to a step; a minute's rolling then keeps its energy to 1e-11
_LASTS_S = (1.0, 60.0)  # an error of the velocity counts over the time that is left, within these
# What is gone is GONE_M_S; or that share of the leg's greatest, or what it gains in as many seconds.
# A slip that has crept for so many tries is as small as the errors allowed to a step: then this is none.
_MANY_TRIES, _GONE_LATE_M_S = 300, 3e-8
_TIME, _GRIP, _SLIPS, _REST, _LEAVES, _MET = range(6)
_ENDS = ("time", "grip", "slip", "rest", "left", "met")


class GroundBatch:
    """The bodies of `ground.GroundStart`s of one room, surface and mode."""

    def __init__(self, medium, starts):
        room = starts[0].room
        self._mode, self._spin = starts[0].mode, medium.spin if room.turns else None
        surface, self._corner = starts[0].surface, isinstance(starts[0].surface, Corner)
        self._others = [s for s in room.surfaces if s not in parts_of(surface)]
        if self._corner:
            self._others = [s for s in self._others if not surface.never_meets(s)]
        self._start_s = np.array([one.time_s for one in starts], dtype=float)
        self._end_s = np.maximum(np.array([one.end_s for one in starts], dtype=float), self._start_s)
        let_go = [[s in one.let_go for one in starts] for s in self._others]
        self._let_go = np.array(let_go, dtype=bool).reshape(len(self._others), len(starts))
        many = riders(medium, room, *distinct([one.body for one in starts]))
        law = Cornered(surface, many, self._mode) if self._corner else LAWS[self._mode](surface, many)
        self._radius_m = law.many.radius_m
        x, u, spin = (
            columns([getattr(one, n) for one in starts]) for n in ("position_m", "velocity_m_s", "spin_rad_s")
        )
        lasts_s = np.clip(self._end_s - self._start_s, *_LASTS_S) if law.lasting else np.ones(len(starts))
        state = np.concatenate([x, np.zeros_like(x)]), np.concatenate([u, spin * self._radius_m])
        walker = CrowdWalker if len(starts) > CROWD else Walker
        self._walker = walker(
            law, self._spin, self._start_s, self._end_s, *state, absolute_m=TOLERANCE_M, lasts_s=lasts_s
        )
        lever = np.where(self._radius_m > 0, self._radius_m, 1.0)
        self._to_angles = np.concatenate([np.ones((3, len(starts))), np.broadcast_to(1.0 / lever, (3, len(starts)))])
        self._log, self._tries = StepLog(), 0
        self._first = self._walker.position.copy(), self._walker.velocity.copy()
        self._last = self._first[0].copy(), self._first[1].copy()
        self._ends, self._ends_s = np.full(len(starts), -1), self._start_s.copy()
        self._met = np.full(len(starts), -1)
        self._at = np.arange(len(starts))
        self._greatest = self._vanishing()
        self._begin()

    @property
    def going(self):
        """How many are still under way."""
        return len(self._at)

    @property
    def first_going(self):
        """Number of one that is still under way."""
        return int(self._at[0])

    def _vanishing(self):
        """Size (N,) of what friction brings to an end."""
        away = self._walker.law.vanishing(self._walker.position, self._walker.velocity)
        return np.sqrt(dot(away, away))

    def _begin(self):
        """What ends at once, or has nothing that moves it; and how each stands to the other surfaces."""
        walker = self._walker
        self._touch = np.zeros((len(self._others), self.going), dtype=int)
        motion = walker.position[:3], walker.velocity[:3], walker.acceleration[:3]
        over = walker.time_s >= self._end_s
        self._finish(np.flatnonzero(over), _TIME)
        for k, surface in enumerate(self._others):
            self._touch[k] = touching(surface, *motion, self._radius_m)
            self._touch[k, (self._touch[k] != 0) & self._let_go[k]] = LET_GO
            # What lies still where friction holds it presses against nothing else that it touches.
            meets = self._touch[k] < 0
            if np.any(meets):
                lies = self._lies()
                self._finish(np.flatnonzero(meets & ~lies), _MET, k)
                self._touch[k, meets & lies] = 0
        self._fallen(_LEAVES)
        still = self._vanishing() <= GONE_M_S
        if self._mode == ROLLS:
            still |= ~np.any(walker.velocity[:3], axis=0)
        if self._corner:
            still = ~np.any(np.abs(walker.velocity) > GONE_M_S, axis=0)
        self._settle(np.flatnonzero(still), moved=False)
        self._fallen(_SLIPS)
        self._drop()

    def _fallen(self, what):
        """End the legs of those of which a figure that says so is not above 0."""
        for row, end in enumerate(self._walker.law.watches):
            if end == _ENDS[what]:
                self._finish(np.flatnonzero(self._walker.watched[row] <= 0), what)

    def _lies(self):
        """Whether (N,) each lies still and is held by friction."""
        walker = self._walker
        if self._mode == SLIDES or self._corner:
            return np.zeros(self.going, dtype=bool)
        still = ~np.any(walker.velocity[:3], axis=0)
        held, _ = holds(walker.law, walker.rates(walker.time_s), walker.position, walker.velocity)
        return still & held

    def step(self):
        """A step of each body; those for which something changes leave."""
        self._tries += 1
        taken = self._walker.step()
        if taken is None:
            return
        self._record(self._at[taken.who], taken.step)
        changed = self._changes(taken)
        walker = self._walker
        done = taken.who[~changed & (walker.time_s[taken.who] >= self._end_s[self._at[taken.who]])]
        self._finish(done, _TIME)
        self._touch[:, taken.who] = 0
        for k in np.flatnonzero(np.any(self._let_go[:, self._at], axis=1)):
            near = self._others[k].gap(walker.position[:3], self._radius_m[self._at]) <= TOUCH_M
            self._touch[k, near & self._let_go[k, self._at]] = LET_GO
        size = self._vanishing()
        self._greatest[self._at] = np.maximum(self._greatest[self._at], size)
        fading = (size <= self._gone()) & (self._ends[self._at] < 0)
        fading[np.setdiff1d(np.arange(self.going), taken.who)] = False
        self._settle(np.flatnonzero(fading), moved=True)
        self._drop()

    def _gone(self):
        """Below what size (N,) what vanishes is gone: nothing while it grows."""
        walker = self._walker
        least = np.maximum(self._greatest[self._at], np.sqrt(dot(walker.acceleration[:3], walker.acceleration[:3])))
        away = walker.law.vanishing(walker.position, walker.velocity)
        change = walker.law.vanishing_rate(walker.position, walker.velocity, walker.acceleration)
        gone = GONE_M_S if self._tries <= _MANY_TRIES else _GONE_LATE_M_S
        return np.where(dot(away, change) < 0, gone * np.maximum(least, 1.0), 0.0)

    def _changes(self, taken):
        """End the legs of those for which something changes inside their step -> whether (M,) it does."""
        step = taken.step
        near = Step(step.elapsed_s, step.length_s, *(a[..., :3, :] for a in (step.position_m, step.velocity_m_s)),
                    *(np.ascontiguousarray(a[:, :3]) for a in (step.path_m, step.path_m_s)))  # fmt: skip
        s, met = np.full(len(taken.who), np.inf), np.full(len(taken.who), -1)
        if self._others:
            radius = self._radius_m[self._at[taken.who]]
            s, met = first_contact(near, self._others, radius, self._touch[:, taken.who])
        kind = np.where(s <= 1.0, _MET, -1)
        for row, end in enumerate(self._walker.law.watches):
            what = _ENDS.index(end)
            some = np.flatnonzero(_doubtful(taken.watched[:, row]))
            if len(some):
                falls = self._falls(taken, some, row)
                sooner = falls < np.minimum(s[some], 1.0 + 1e-15)
                s[some[sooner]], kind[some[sooner]] = falls[sooner], what
        changed = kind >= 0
        if np.any(changed):
            self._end_inside(taken, np.flatnonzero(changed), s, kind, met)
        return changed

    def _falls(self, taken, some, row):
        """Where in their steps a law's figure `row` falls to 0 for the bodies `some`: s, inf where it does not."""
        values = self._walker.at_points(taken, some, row)
        scale = np.maximum(np.max(np.abs(values), axis=0), 1e-300)
        return bernstein.first_descent(RULE.control @ (RULE.series @ (values / scale)), depth=1e-15)

    def _end_inside(self, taken, some, s, kind, met):
        """End the legs of the bodies `some` of the steps at s."""
        step, who = taken.step, taken.who[some]
        law, walker = self._walker.law.take(who), self._walker
        position, velocity = step.at(s[some], some)
        walker.position[:, who] = position
        walker.velocity[:, who] = law.tangent(velocity, law.surface.normal(position[:3]))
        walker.time_s[who] = step.elapsed_s[some] + s[some] * step.length_s[some]
        self._finish(who, kind[some], met[some])

    def _settle(self, some, *, moved):
        """What friction has brought to a stop (walker's numbers): it holds, and the leg ends or waits; or it goes on."""
        walker = self._walker
        some = some[self._ends[self._at[some]] < 0]
        if not len(some):
            return
        law = walker.law.take(some)
        position = walker.position[:, some]
        velocity = law.stopped(position, walker.velocity[:, some])
        if self._corner and moved:
            walker.put(some, velocity)
            self._finish(some, _GRIP)
            return
        time_s = walker.time_s[some]
        held, way = holds(law, walker.rates(time_s), position, velocity)
        if self._mode == SLIDES or (self._mode == STANDS and moved):
            walker.put(some[held], velocity[:, held])
            self._finish(some[held], _GRIP)
            self._go_on(some[~held], velocity[:, ~held], way[:, ~held])
            return
        if moved and not np.any(held):
            self._go_on(some, velocity, way)
            return
        still = Stillness(law, self._spin, time_s, self._end_s[self._at[some]], position, velocity)
        stays = still.starts_s > time_s
        stays &= held | (not moved)
        self._wait(some[stays], still, stays, velocity)
        self._go_on(some[~stays], velocity[:, ~stays], way[:, ~stays])

    def _go_on(self, some, velocity, way):
        """Friction does not hold them: they go on the way they are pulled."""
        walker = self._walker
        if not len(some):
            return
        law = walker.law.take(some)
        walker.put(some, seeded(law, walker.position[:, some], velocity, way))
        walker.refresh()

    def _wait(self, some, still, stays, velocity):
        """They stay: for good, or until the spin's change moves them."""
        if not len(some):
            return
        walker = self._walker
        starts_s = still.starts_s[stays]
        walker.put(some, velocity[:, stays])
        self._finish(some[np.isinf(starts_s)], _REST)
        for_now = np.isfinite(starts_s)
        some = some[for_now]
        if not len(some):
            return
        for piece in still.pieces:
            self._record_still(some, *(a[..., stays][..., for_now] for a in piece))
        walker.put(some, velocity[:, stays][:, for_now], starts_s[for_now])
        if self._mode == STANDS or self._corner:
            self._finish(some, _SLIPS)
            return
        law = walker.law.take(some)
        at = walker.velocity[:, some]
        _, way = holds(law, walker.rates(starts_s[for_now]), walker.position[:, some], at)
        self._go_on(some, at, np.where(law.many.resistance > 0, way, 0.0))

    def _record_still(self, some, open_, begin, lasts, spinning, change):
        """A piece of no motion but a spin about the normal, of the walker's bodies `some`."""
        some, begin, lasts = some[open_], begin[open_], lasts[open_]
        walker, keep = self._walker, lasts > 0
        if not np.any(keep):
            return
        some, begin, lasts = some[keep], begin[keep], lasts[keep]
        spinning, change = spinning[:, open_][:, keep], change[:, open_][:, keep]
        powers = np.zeros((2, 8, 6, len(some)))
        powers[0, 1, 3:], powers[0, 2, 3:] = spinning * lasts, 0.5 * change * lasts**2
        powers[1, 1, 3:] = change * lasts
        path_m, path_m_s = (bernstein.from_powers(p) for p in powers)
        velocity = np.concatenate([np.zeros_like(spinning), spinning])
        self._record(self._at[some], Step(begin, lasts, walker.position[:, some].copy(), velocity, path_m, path_m_s))
        walker.position[3:, some] += path_m[-1, 3:]
        walker.velocity[3:, some] = spinning + change * lasts

    def _record(self, owners, step):
        """Keep a step, its angles in place of angles times the radius."""
        scale = self._to_angles[:, owners]
        parts = (a * scale for a in (step.position_m, step.velocity_m_s, step.path_m, step.path_m_s))
        self._log.keep(Step(step.elapsed_s, step.length_s, *parts), owners, step.elapsed_s)

    def _finish(self, some, end, met=-1):
        """The legs of the walker's bodies `some` end now, unless they have."""
        which = self._at[some]
        first = self._ends[which] < 0
        some, which = some[first], which[first]
        end, met = (np.broadcast_to(v, first.shape)[first] for v in (end, met))
        self._ends[which], self._met[which] = end, met
        self._ends_s[which] = self._walker.time_s[some]
        for last, now in zip(self._last, (self._walker.position, self._walker.velocity), strict=True):
            last[:, which] = now[:, some]

    def _drop(self):
        """Go on with those that have not ended."""
        staying = self._ends[self._at] < 0
        self._at, self._touch = self._at[staying], self._touch[:, staying]
        self._walker.keep(staying)

    def results(self):
        """Of each, in order: its path, how it ended, the surface met or None, and position, velocity and spin (3,) there."""
        paths = self._log.paths(self._start_s, self._ends_s, *(a * self._to_angles for a in self._first))
        (position, velocity), ends, met = (
            (a * self._to_angles for a in self._last),
            self._ends.tolist(),
            self._met.tolist(),
        )
        x, u, spin = position[:3].T.copy(), velocity[:3].T.copy(), velocity[3:].T.copy()
        surfaces = [self._others[k] if end == _MET else None for k, end in zip(met, ends, strict=True)]
        return list(zip(paths, [_ENDS[end] for end in ends], surfaces, x, u, spin, strict=True))


def _doubtful(values):
    """Whether (M,) a figure known at the points of a step (K, M) might fall to 0 within it."""
    low, high = np.min(values, axis=0), np.max(values, axis=0)
    return ~(low > 0.5 * (high - low)) | ~(low > 0)
