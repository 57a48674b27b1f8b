"""What lies where two surfaces meet and touches both: how it goes on along the line they leave it, with friction at each.

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
from itertools import product

import numpy as np

from .aboard import cross, dot
from .protocols import Surface
from .rolling import GONE_M_S, NO_SLIP_M_S, ROLLS, ROUNDING, SEED_M_S, SLIDES, STANDS, GroundLaw
from .surfaces import Drum, Plane

_NONE = 1e-300
_FEATHER_M_S2 = 1e-12
_LETS_GO_M_S2 = (
    5e-9  # pressed on by so much less than nothing it leaves a surface: enough to be seen to leave it (`crossings.py`)
)
_LETS_GO_SHARE = 1e-9  # or by that share of all that acts
_AT_ONCE_S = 1e-4
_HOLDS_LESS, _HOLDS_MORE = 1.0 - 1e-6, 1.0 + 1e-9  # of friction, for what is to roll and for what rolls


@dataclass(frozen=True)
class Corner:
    """Where two surfaces meet, as one: gaps (2, N), normals (3, 2, N)."""

    first: Surface
    second: Surface
    edge = False
    flat = False

    @property
    def parts(self):
        """The two."""
        return self.first, self.second

    def gap(self, position, body_radius_m):
        """Gaps (2, N) of centres (3, N)."""
        return np.stack([part.gap(position, body_radius_m) for part in self.parts])

    def normal(self, position):
        """Unit normals (3, 2, N) into the room."""
        return np.stack([part.normal(position) for part in self.parts], axis=1)

    def rates(self, position, velocity):
        """How fast they change (3, 2, N), 1/s."""
        return np.stack([part.normal_rate(position, velocity) for part in self.parts], axis=1)

    def normal_rate(self, position, velocity):
        """The rate (3, N) of the one that changes faster."""
        first, second = np.moveaxis(self.rates(position, velocity), 1, 0)
        return np.where(dot(first, first) >= dot(second, second), first, second)

    def name_at(self, position):
        """The name of the first."""
        return self.first.name_at(position)

    def never_meets(self, surface):
        """Whether what keeps to both keeps its distance from a surface too."""
        return any(_parallel(part, surface) for part in self.parts)


def _parallel(one, other):
    if isinstance(one, Drum) and isinstance(other, Drum):
        return True
    both = isinstance(one, Plane) and isinstance(other, Plane)
    return both and bool(np.allclose(np.cross(one.into, other.into), 0.0, atol=1e-12))


def parts_of(surface):
    """The surfaces that a body on `surface` touches."""
    return surface.parts if isinstance(surface, Corner) else (surface,)


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
        self._rolls = tuple(i for i in (0, 1) if mode != STANDS and mode[i] == ROLLS)

    def take(self, which):
        """The law of those of the index or mask."""
        return Cornered(self.surface, self.many.take(which), self.mode)

    @property
    def lasting(self):
        """Whether errors of a velocity last: it rolls on both."""
        return len(self._rolls) == 2

    def at(self, rate, position, velocity):
        """Second changes (6, N), and four figures (4, N) above 0 while the leg lasts: of each press, of each grip."""
        now = self.forces(rate, position, velocity)
        out = np.concatenate([now.change, now.spun_change])
        watched = np.ones((4, len(now.size)))
        watched[:2] = now.presses(1.0)
        for i in self._rolls:
            watched[2 + i] = self._grip(i, now, self.surface.normal(position[:3]), _HOLDS_MORE)
        return out, watched

    def _grip(self, i, now, n, share):
        """What friction has to spare (N,) at surface i, on which it rolls."""
        spare = ROUNDING * now.size + _FEATHER_M_S2
        if len(self._rolls) == 2:
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
        if len(self._rolls) == 2 and np.any(many.resistance):
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
        if len(self._rolls) == 2:
            unknown = np.einsum("nkr,rn->kn", np.linalg.pinv(matrix, rcond=1e-11), known)
            return unknown + _least_friction(n, push, unknown)
        return np.linalg.solve(matrix, known.T[..., None])[..., 0].T

    def _columns(self, n, u, spun):
        """What each unknown does to u and to a sigma (3, K, N); the directions of the conditions and what of (a sigma)' counts in
        them (3, K, N); the surface's number of each condition after the first two."""
        many, stands = self.many, self.mode == STANDS
        push, twist = [n[:, 0], n[:, 1]], [np.zeros_like(u), np.zeros_like(u)]
        rows, lever, rolls = [n[:, 0], n[:, 1]], [np.zeros_like(u), np.zeros_like(u)], []
        line = self._line(n)
        for i in (0, 1):
            if i in self._rolls:
                aside = cross(n[:, i], line)
                for way, across in ((line, aside), (aside, -line)):
                    push.append(way)
                    twist.append(-across / many.inertia_factor)
                    rows.append(way)
                    lever.append(across)
                    rolls.append(i)
                if len(self._rolls) == 1:
                    twist[i] = -self._resistance(n[:, i], spun)
            else:
                along = -many.friction * _unit(u if stands else self._slip(n[:, i], u, spun))
                push[i] = n[:, i] + along
                if not stands:
                    twist[i] = -cross(n[:, i], along) / many.inertia_factor
        return *(np.stack(list_, axis=1) for list_ in (push, twist, rows, lever)), rolls

    def _resistance(self, n, spun):
        """What rolling resistance takes of a sigma, a unit of press (3, N)."""
        rolling = spun - dot(spun, n) * n
        limit = np.minimum(self.many.resistance, self.many.friction)
        return limit / self.many.inertia_factor * _unit(rolling)

    def _line(self, n):
        """Unit vectors t (3, N) along the line."""
        return _unit(cross(n[:, 0], n[:, 1]))

    @staticmethod
    def _slip(n, u, spun):
        slip = u - cross(spun, n)
        return slip - dot(slip, n) * n

    def tangent(self, velocity, n):
        """Velocities (6, N) along the line, with no slip where it rolls."""
        out, line = velocity.copy(), self._line(n)
        speed = dot(velocity[:3], line)
        out[:3] = speed * line
        if self.mode == STANDS:
            out[3:] = 0.0
        elif len(self._rolls) == 2:
            between = cross(n[:, 0], n[:, 1])
            out[3:] = speed / np.sqrt(dot(between, between)) * (n[:, 0] - n[:, 1])
        elif self._rolls:
            own = n[:, self._rolls[0]]
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
        slips = [self._slip(n[:, i], u, spun) for i in (0, 1) if i not in self._rolls]
        out = [np.where(many.friction > 0, slip, 1.0) for slip in slips]
        return out + ([np.where(many.resistance > 0, u, 1.0)] if self._rolls else [])

    def _fading_rates(self, position, velocity, acceleration):
        """How fast each of those changes."""
        u, spun, many = velocity[:3], velocity[3:], self.many
        n, bend = self.surface.normal(position[:3]), self.surface.rates(position[:3], u)
        if self.mode == STANDS:
            return [np.where(many.friction > 0, acceleration[:3], 0.0)]
        out = []
        for i in (0, 1):
            if i not in self._rolls:
                change = acceleration[:3] - cross(acceleration[3:], n[:, i]) - cross(spun, bend[:, i])
                out.append(np.where(many.friction > 0, change, 0.0))
        return out + ([np.where(many.resistance > 0, acceleration[:3], 0.0)] if self._rolls else [])

    def _soonest(self, position, velocity):
        """Number (N,) of the smallest of what fades."""
        return np.argmin([dot(away, away) for away in self._fading(position, velocity)], axis=0)

    def vanishing(self, position, velocity):
        """The smallest of what fades (3, N)."""
        return _chosen(self._fading(position, velocity), self._soonest(position, velocity))

    def vanishing_rate(self, position, velocity, acceleration):
        """Its change (3, N)."""
        return _chosen(self._fading_rates(position, velocity, acceleration), self._soonest(position, velocity))

    def closing(self, position, velocity, acceleration):
        """How fast (N,), 1/s, the first of what fades is on its way to nothing."""
        away, rates = self._fading(position, velocity), self._fading_rates(position, velocity, acceleration)
        closing = [-dot(a, r) / np.maximum(dot(a, a), _NONE) for a, r in zip(away, rates, strict=True)]
        return np.max(closing, axis=0)

    def stopped(self, position, velocity):
        """Velocities (6, N) once the smallest of what fades is gone."""
        n, out = self.surface.normal(position[:3]), velocity.copy()
        if self.mode == STANDS:
            return np.zeros_like(velocity)
        which = self._soonest(position, velocity)
        slides = [i for i in (0, 1) if i not in self._rolls]
        for k, i in enumerate(slides):
            slip = np.where(which == k, self._slip(n[:, i], out[:3], out[3:]), 0.0)
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
        line = self._line(n)
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


def _unit(vectors):
    return vectors / np.maximum(np.sqrt(dot(vectors, vectors)), _NONE)


def _chosen(many, which):
    return np.choose(which, many) if len(many) > 1 else many[0]


def _squeeze(n):
    """d (3, N), and what of it each surface gives along it (3, 2, N), a unit of squeezing; and d.n_1 (N,)."""
    d = _unit(n[:, 0] - n[:, 1])
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


@dataclass(frozen=True)
class Way:
    """How one body goes on: the surfaces that bear it (none: it flies), its mode, and its velocity (6, 1)."""

    parts: tuple
    mode: object
    velocity: np.ndarray


def way_on(surface, one, rate, position, velocity, turns, late=False):
    """The Way in which one body at a Corner goes on from a state (6, 1). one: its Riders; turns: whether it can roll; late: whether it
    has dithered here: a slip that friction would end at once is then none."""
    n = surface.normal(position[:3])
    if late and turns:
        velocity = _ended(surface, one, rate, position, velocity, n)
    still = not np.any(np.abs(velocity) > GONE_M_S)
    if still:
        law = Cornered(surface, one, (ROLLS, ROLLS) if turns else STANDS)
        figures, way = law.held(rate, position, velocity, _HOLDS_LESS)
        if np.all(figures > 0):
            return Way(surface.parts, law.mode, np.zeros_like(velocity))
        velocity = np.concatenate([SEED_M_S * _unit(way), np.zeros_like(way)])
    leaves = None
    for mode in _modes(one, n, velocity) if turns else (STANDS,):
        law = Cornered(surface, one, mode)
        going, seeds = _seeded(law, one, rate, position, law.tangent(velocity, n), n)
        now = law.forces(rate, position, going)
        presses = now.presses(0.5)[:, 0]
        grips = all(law._grip(i, now, n, _HOLDS_LESS)[0] > 0 for i in law._rolls)
        grips = grips and not _fades(law, now, position, going, seeds)
        if grips and np.all(presses > 0):
            return Way(surface.parts, mode, going)
        if grips and leaves is None:
            leaves = presses, going
    if leaves is None:
        return Way((), None, velocity)
    bears = tuple(part for part, press in zip(surface.parts, leaves[0], strict=True) if press > 0)
    return Way(bears, None, leaves[1])


def _ended(surface, one, rate, position, velocity, n):
    """Velocity (6, 1) without what slips friction would end within _AT_ONCE_S."""
    now = Cornered(surface, one, (SLIDES, SLIDES)).forces(rate, position, velocity)
    out = velocity.copy()
    for i in (0, 1):
        slip = Cornered._slip(n[:, i], out[:3], out[3:])
        loses_m_s2 = one.friction * np.abs(now.press[i]) * (1.0 + 1.0 / one.inertia_factor)
        out[3:] += np.where(np.sqrt(dot(slip, slip)) <= _AT_ONCE_S * loses_m_s2, cross(n[:, i], slip), 0.0)
    return out


def _modes(one, n, velocity):
    """What a ball may do at the two, the likelier first: it rolls only where it does not slip and has friction."""
    may = []
    for i in (0, 1):
        slip = Cornered._slip(n[:, i], velocity[:3], velocity[3:])
        rolls = np.sqrt(dot(slip, slip))[0] <= NO_SLIP_M_S and one.friction[0] > 0
        may.append((ROLLS, SLIDES) if rolls else (SLIDES,))
    return product(*may)


def _seeded(law, one, rate, position, velocity, n):
    """Velocity (6, 1) with a slip of no account where it is about to slip and does not yet: against the push it would need; and those
    slips, surface by surface."""
    seeds = {}
    for i in (0, 1):
        slip = law._slip(n[:, i], velocity[:3], velocity[3:])
        if law.mode == STANDS or i in law._rolls or one.friction[0] == 0 or np.sqrt(dot(slip, slip))[0] > GONE_M_S:
            continue
        rolling = Cornered(law.surface, one, tuple(ROLLS if j == i else m for j, m in enumerate(law.mode)))
        needed = rolling.forces(rate, position, rolling.tangent(velocity, n)).friction[:, i]
        way = -SEED_M_S * _unit(needed)
        velocity, seeds[i] = velocity.copy(), way
        velocity[3:] += cross(way, n[:, i])
    return velocity, seeds


def _fades(law, now, position, velocity, seeds):
    """Whether a slip that was put in would be gone at once: then it does not slip."""
    acceleration = np.concatenate([now.change, now.spun_change])
    rates = law._fading_rates(position, velocity, acceleration)
    slides = [i for i in (0, 1) if i not in law._rolls]
    return any(dot(rates[slides.index(i)], way)[0] < 0 for i, way in seeds.items())
