"""What touches two surfaces at once: how it goes on along the line where they meet, with friction at each.

The notation is that of `rolling.py`, with n_i, N_i and F_i for each of the two surfaces. A body's centre keeps to the line along
t = n_1 x n_2, so that u = (u.t) t. Its balance, per mass:
    u' = A + sum (N_i n_i + F_i)        beta (a sigma)' = -beta a w - sum n_i x F_i
Unknown are both N_i, and F_i where the ball rolls on its surface (two figures, square to n_i); where it slips, with c_i = u - a sigma x n_i,
F_i = -mu N_i c_i/|c_i|. As many conditions: u'.n_i = -u.n_i', and where it rolls c_i' = 0. Rolling on both (as in a groove) leaves one
of them to the others: the two surfaces could press against each other through the ball by any amount, along d = (n_1 - n_2)/|n_1 - n_2|,
which changes no motion. Said are then the forces with the least friction; it rolls on for as long as any such amount keeps both
F_i within mu N_i. Rolling resistance acts at each surface on which it rolls, by the smaller of C and mu. A thing that cannot turn slides on
both: F_i = -mu N_i u/|u|; what lies still stays where |A.t| is within the limit (mu, or the smaller of C and mu for a ball) times
N_1 + N_2.

Sources: the rigid-body balance and Coulomb's law of any mechanics text (from memory), as in `rolling.py`.
"""

from dataclasses import dataclass

import numpy as np

from .aboard import cross, dot
from .corner import line as meeting_line
from .corner import unit
from .rolling import ROLLS, ROUNDING, STANDS, GroundLaw

_NONE = 1e-300
_FEATHER_M_S2 = 1e-12
_LETS_GO_M_S2 = (
    5e-9  # pressed on by so much less than nothing it leaves a surface: enough to be seen to leave it (`crossings.py`)
)
_LETS_GO_SHARE = 1e-9  # or by that share of all that acts
HOLDS_LESS, HOLDS_MORE = 1.0 - 1e-6, 1.0 + 1e-9  # of friction, for what is to roll and for what rolls


@dataclass(frozen=True)
class Forces:
    """Changes of u and a sigma (3, N), presses N_i (2, N), friction F_i (3, 2, N), and what size all that acts has (N,)."""

    change: np.ndarray
    spun_change: np.ndarray
    press: np.ndarray
    friction: np.ndarray
    size: np.ndarray

    def presses(self, share):
        """Figures (2, N) above 0 where each surface is lain on; share: of what lets go of it that it may be pulled by."""
        return self.press + share * (_LETS_GO_M_S2 + _LETS_GO_SHARE * self.size)


class Cornered(GroundLaw):
    """Bodies that touch both surfaces of a Corner. mode: STANDS, or ROLLS or SLIDES of each."""

    watches = ("left", "left", "slip", "slip")

    def __init__(self, surface, many, mode):
        super().__init__(surface, many)
        self.mode = mode
        self.rolls = tuple(i for i in (0, 1) if mode != STANDS and mode[i] == ROLLS)

    def take(self, which):
        """The law of those of the index or mask."""
        return Cornered(self.surface, self.many.take(which), self.mode)

    @property
    def lasting(self):
        """Whether errors of a velocity last: it rolls on both."""
        return len(self.rolls) == 2

    def at(self, rate, position, velocity):
        """Second changes (6, N), and four figures (4, N) above 0 while the leg lasts: of each press, of each grip."""
        now = self.forces(rate, position, velocity)
        out = np.concatenate([now.change, now.spun_change])
        watched = np.ones((4, len(now.size)))
        watched[:2] = now.presses(1.0)
        for i in self.rolls:
            watched[2 + i] = self.grip(i, now, self.surface.normal(position[:3]), HOLDS_MORE)
        return out, watched

    def grip(self, i, now, n, share):
        """What friction has to spare (N,) at surface i, on which it rolls."""
        spare = ROUNDING * now.size + _FEATHER_M_S2
        if len(self.rolls) == 2:
            return _margin(now, n, share * self.many.friction, spare)
        f = now.friction[:, i]
        return share * self.many.friction * now.press[i] + spare - np.sqrt(dot(f, f))

    def forces(self, rate, position, velocity):
        """The Forces at states (6, N)."""
        omega, turning = rate
        x, u, spun, many = position[:3], velocity[:3], velocity[3:], self.many
        free = many.aboard.at(omega, turning, x, u)
        n, bend = self.surface.normal(x), self.surface.rates(x, u)
        tilt = np.zeros_like(u)
        if self.mode != STANDS:
            tilt[0], tilt[1], tilt[2] = -omega * spun[1], omega * spun[0], turning * many.radius_m
        columns = self._columns(n, u, spun)
        unknown = self._balance(columns, n, bend, u, spun, free, tilt)
        if len(self.rolls) == 2 and np.any(many.resistance):
            # How hard it resists goes by how hard it is pressed, which the resistance changes no more.
            tilt = tilt + sum(unknown[i] * self._resistance(n[:, i], spun) for i in (0, 1))
            unknown = self._balance(columns, n, bend, u, spun, free, tilt)
        push, twist, _, _, rolls = columns
        change = free + np.einsum("akn,kn->an", push, unknown)
        spun_change = -tilt + np.einsum("akn,kn->an", twist, unknown)
        friction = np.zeros_like(n)
        for k, i in enumerate(rolls, start=2):
            friction[:, i] += push[:, k] * unknown[k]
        return Forces(change, spun_change, unknown[:2], friction, np.sqrt(dot(free, free)))

    def _balance(self, columns, n, bend, u, spun, free, tilt):
        """The unknowns (K, N): both N_i, and the friction of each surface on which it rolls."""
        push, twist, rows, lever, rolls = columns
        matrix = np.einsum("arn,akn->nrk", rows, push) - np.einsum("arn,akn->nrk", lever, twist)
        known = -np.einsum("arn,an->rn", rows, free) - np.einsum("arn,an->rn", lever, tilt)
        known[:2] -= np.einsum("an,ain->in", u, bend)
        for k, i in enumerate(rolls, start=2):
            known[k] += dot(rows[:, k], cross(spun, bend[:, i]))
        if len(self.rolls) == 2:
            unknown = np.einsum("nkr,rn->kn", np.linalg.pinv(matrix, rcond=1e-11), known)
            return unknown + _least_friction(n, push, unknown)
        return np.linalg.solve(matrix, known.T[..., None])[..., 0].T

    def _columns(self, n, u, spun):
        """What each unknown does to u and to a sigma (3, K, N); the directions of the conditions and what of (a sigma)' counts in
        them (3, K, N); the surface's number of each condition after the first two."""
        many, stands = self.many, self.mode == STANDS
        push, twist = [n[:, 0], n[:, 1]], [np.zeros_like(u), np.zeros_like(u)]
        rows, lever, rolls = [n[:, 0], n[:, 1]], [np.zeros_like(u), np.zeros_like(u)], []
        line = meeting_line(n)
        for i in (0, 1):
            if i in self.rolls:
                aside = cross(n[:, i], line)
                for way, across in ((line, aside), (aside, -line)):
                    push.append(way)
                    twist.append(-across / many.inertia_factor)
                    rows.append(way)
                    lever.append(across)
                    rolls.append(i)
                if len(self.rolls) == 1:
                    twist[i] = -self._resistance(n[:, i], spun)
            else:
                along = -many.friction * unit(u if stands else self.slip(n[:, i], u, spun))
                push[i] = n[:, i] + along
                if not stands:
                    twist[i] = -cross(n[:, i], along) / many.inertia_factor
        return *(np.stack(list_, axis=1) for list_ in (push, twist, rows, lever)), rolls

    def _resistance(self, n, spun):
        """What rolling resistance takes of a sigma, a unit of press (3, N)."""
        rolling = spun - dot(spun, n) * n
        limit = np.minimum(self.many.resistance, self.many.friction)
        return limit / self.many.inertia_factor * unit(rolling)

    @staticmethod
    def slip(n, u, spun):
        slip = u - cross(spun, n)
        return slip - dot(slip, n) * n

    def tangent(self, velocity, n):
        """Velocities (6, N) along the line, with no slip where it rolls."""
        out, line = velocity.copy(), meeting_line(n)
        speed = dot(velocity[:3], line)
        out[:3] = speed * line
        if self.mode == STANDS:
            out[3:] = 0.0
        elif len(self.rolls) == 2:
            between = cross(n[:, 0], n[:, 1])
            out[3:] = speed / np.sqrt(dot(between, between)) * (n[:, 0] - n[:, 1])
        elif self.rolls:
            own = n[:, self.rolls[0]]
            out[3:] = cross(own, out[:3]) + dot(velocity[3:], own) * own
        return out

    def settled(self, position, velocity, gap):
        """States (6, N) put back at gaps (2, N), moving along the line."""
        n = self.surface.normal(position[:3])
        off = self.surface.gap(position[:3], self.many.radius_m) - gap
        between = dot(n[:, 0], n[:, 1])
        share = (off - between * off[::-1]) / (1.0 - between**2)
        out = position.copy()
        out[:3] -= share[0] * n[:, 0] + share[1] * n[:, 1]
        return out, self.tangent(velocity, n)

    def _fading(self, position, velocity):
        """What friction brings to an end: a list of functions of a state's rates of change, each with its value (3, N)."""
        u, spun, many = velocity[:3], velocity[3:], self.many
        n = self.surface.normal(position[:3])
        if self.mode == STANDS:
            return [np.where(many.friction > 0, u, 1.0)]
        slips = [self.slip(n[:, i], u, spun) for i in (0, 1) if i not in self.rolls]
        out = [np.where(many.friction > 0, slip, 1.0) for slip in slips]
        return out + ([np.where(many.resistance > 0, u, 1.0)] if self.rolls else [])

    def fading_rates(self, position, velocity, acceleration):
        """How fast each of those changes."""
        u, spun, many = velocity[:3], velocity[3:], self.many
        n, bend = self.surface.normal(position[:3]), self.surface.rates(position[:3], u)
        if self.mode == STANDS:
            return [np.where(many.friction > 0, acceleration[:3], 0.0)]
        out = []
        for i in (0, 1):
            if i not in self.rolls:
                change = acceleration[:3] - cross(acceleration[3:], n[:, i]) - cross(spun, bend[:, i])
                out.append(np.where(many.friction > 0, change, 0.0))
        return out + ([np.where(many.resistance > 0, acceleration[:3], 0.0)] if self.rolls else [])

    def _soonest(self, position, velocity):
        """Number (N,) of the smallest of what fades."""
        return np.argmin([dot(away, away) for away in self._fading(position, velocity)], axis=0)

    def vanishing(self, position, velocity):
        """The smallest of what fades (3, N)."""
        return _chosen(self._fading(position, velocity), self._soonest(position, velocity))

    def vanishing_rate(self, position, velocity, acceleration):
        """Its change (3, N)."""
        return _chosen(self.fading_rates(position, velocity, acceleration), self._soonest(position, velocity))

    def hurry(self, position, velocity, acceleration, short):
        """How short (N,), as 1/s, a step must be for all that fades: short(away, rate) of each (`vanishing.hurry`)."""
        away, rates = self._fading(position, velocity), self.fading_rates(position, velocity, acceleration)
        return np.max([short(*one) for one in zip(away, rates, strict=True)], axis=0)

    def stopped(self, position, velocity):
        """Velocities (6, N) once the smallest of what fades is gone."""
        n, out = self.surface.normal(position[:3]), velocity.copy()
        if self.mode == STANDS:
            return np.zeros_like(velocity)
        which = self._soonest(position, velocity)
        slides = [i for i in (0, 1) if i not in self.rolls]
        for k, i in enumerate(slides):
            slip = np.where(which == k, self.slip(n[:, i], out[:3], out[3:]), 0.0)
            out[3:] += cross(n[:, i], slip)
        stops = which == len(slides)
        out[:3] = np.where(stops, 0.0, out[:3])
        return self.tangent(out, n)

    def held(self, rate, position, velocity, share):
        """Figures (2, N), above 0 where what lies still stays so, and the way (3, N) it starts if not."""
        omega, turning = rate
        many, still = self.many, np.zeros_like(velocity)
        free = many.aboard.at(omega, turning, position[:3], still[:3])
        n = self.surface.normal(position[:3])
        line = meeting_line(n)
        across = np.einsum("ain,an->in", n, free)
        between = dot(n[:, 0], n[:, 1])
        press = -(across - between * across[::-1]) / (1.0 - between**2)
        along, limit = dot(free, line), many.friction
        if self.mode != STANDS:
            limit = np.minimum(many.friction, many.resistance)
            along = np.abs(along) + many.inertia_factor * many.radius_m * np.abs(turning)
        size2 = dot(free, free)
        spare = ROUNDING**2 * size2 + _FEATHER_M_S2**2
        presses = np.min(press, axis=0) + _LETS_GO_M_S2 + _LETS_GO_SHARE * np.sqrt(size2)
        figures = np.stack([(share * limit * press.sum(axis=0)) ** 2 + spare - along**2, presses])
        return figures, dot(free, line) * line

    def axis(self, position):
        """What it can spin about at rest: nothing (3, N)."""
        return np.zeros_like(position[:3])


def _chosen(many, which):
    return np.choose(which, many) if len(many) > 1 else many[0]


def _squeeze(n):
    """d (3, N), and what of it each surface gives along it (3, 2, N), a unit of squeezing; and d.n_1 (N,)."""
    d = unit(n[:, 0] - n[:, 1])
    q = dot(d, n[:, 0])
    return np.stack([d - q * n[:, 0], -d - q * n[:, 1]], axis=1), q


def _least_friction(n, push, unknown):
    """How much unknowns (6, N) of a ball that rolls on both are changed by the squeezing that leaves the least friction."""
    along, q = _squeeze(n)
    friction = [push[:, 2] * unknown[2] + push[:, 3] * unknown[3], push[:, 4] * unknown[4] + push[:, 5] * unknown[5]]
    square = sum(dot(along[:, i], along[:, i]) for i in (0, 1))
    s = -sum(dot(friction[i], along[:, i]) for i in (0, 1)) / np.maximum(square, _NONE)
    parts = [q, q, *(dot(push[:, k], along[:, (k - 2) // 2]) for k in range(2, 6))]
    return s * np.stack(parts)


def _margin(now, n, friction, spare):
    """How wide (N,) is what a squeezing may be that keeps a ball that rolls on both from slipping on either; below 0 where
    none does."""
    along, q = _squeeze(n)
    low, high = np.full_like(q, -np.inf), np.full_like(q, np.inf)
    for i in (0, 1):
        f, p, limit = now.friction[:, i], along[:, i], friction * now.press[i] + spare
        a = dot(p, p) - (friction * q) ** 2
        b, c = dot(f, p) - friction * q * limit, dot(f, f) - limit**2
        bounded = a > 1e-12
        a = np.where(bounded, a, 1.0)
        inside = b * b - a * c
        half = np.sign(inside) * np.sqrt(np.abs(inside)) / a
        low = np.where(bounded, np.maximum(low, -b / a - half), low)
        high = np.where(bounded, np.minimum(high, -b / a + half), high)
    return np.where(np.isfinite(high - low), high - low, 1.0)
