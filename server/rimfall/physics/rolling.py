"""What moves on a surface: a sphere that rolls, a sphere that slips, a thing that cannot turn; in the turning frame.

x is the centre, u its velocity in the turning frame, sigma the spin relative to that frame, n the surface's normal into the
room at x, n' its change as x moves (`normal_rate`), a the radius, beta the moment of inertia over m a^2, Omega = omega z. A is the sum
of all accelerations but the surface's: -2 Omega x u - Omega x (Omega x x) - Omega' x x + pull + drag (`aboard.py`).

Balance, per mass, with F the surface's push along it and N across it (it acts at -a n); the spin sigma + Omega changes by
sigma' + Omega' + Omega x sigma as seen without turning:
    u' = A + N n + F        beta a (sigma' + w) = -n x F, w = Omega' + Omega x sigma        N = -u.n' - A.n
(the last because u.n = 0 stays so). Rolling: the touching point stands still, u = a sigma x n, so sigma = n x u/a + sigma_n n.
Crossed with n, the spin's balance is F = -beta a (sigma' + w) x n; differentiated, the constraint is
a sigma' x n = u' - a sigma x n', whose part along the surface is u'_t - a sigma_n n x n'. Together:
    (1 + beta) u'_t = A_t + beta a (sigma_n n x n' - w x n) - C N u/|u|        sigma_n' = -w.n + sigma.n'
C N u/|u| is rolling resistance: a torque -C N m a sigma_t/|sigma_t|, so that a steady pull of C N keeps it rolling. F = u'_t -
A_t must stay within friction times N; where the resistance would ask for more, it is as great as friction can give, so that it
never makes a ball slip by itself. Slipping: c = u - a sigma x n along the surface, F = -mu N c/|c|, and the spin's balance
as it stands. A thing that cannot turn: F = -mu N u/|u| while it slides; it stands while A_t is within mu N.

Sources: the balance is any rigid-body text's (from memory). On a turntable (n, n' constant, A = -g z in the room) it gives
Weltner's circles at beta/(1 + beta) of the table's rate (Am. J. Phys. 47, 984 (1979)), by test.

Coordinates of a body are (6, N): the centre, and a times the angle turned; velocities u and a sigma: all in metres. What
vanishes is the velocity whose direction friction goes by: the slip, or the speed; where it dies out the law has a corner.
"""

from dataclasses import dataclass

import numpy as np

from .aboard import Aboard, cross, dot
from .bodies import as_arrays

ROLLS, SLIDES, STANDS = "rolls", "slides", "stands"
SEED_M_S = 2e-9  # a speed that says which way and is none
_JUST_M_S = (
    1e-4  # the same of what only just breaks loose: nearer to friction's corner it would take thousands of steps
)
_JUST_S = 2.5e-5  # or what the pull gives in that time, where gravity is many times ours
_JUST = 0.02  # only just: by no more than this share
_HOLDS_LESS = (
    1.0 - 1e-6
)  # what moved is held only where friction has that much to spare; else it would slip again at once
_HOLDS_MORE = 1.0 + 1e-9  # what is held slips where it is passed by that much
ROUNDING = 1e-12  # of the greatest acceleration: an imbalance as small is none
NO_SLIP_M_S = 1e-9  # a slip that is none
GONE_M_S = 1e-9  # a slip, or a speed, that friction has brought to an end
_NONE = 1e-300
_FEATHER_M_S2 = 1e-12  # a press below 0 by as little is none: without spin and pull a thing still lies where it is


@dataclass(frozen=True)
class Riders:
    """What of N bodies the laws need, as arrays (N,), and the accelerations that act on them."""

    aboard: Aboard
    radius_m: np.ndarray
    inertia_factor: np.ndarray
    friction: np.ndarray
    resistance: np.ndarray

    def take(self, which):
        """Those of the index or mask."""
        names = ("radius_m", "inertia_factor", "friction", "resistance")
        return Riders(self.aboard.take(which), *(getattr(self, name)[which] for name in names))


def riders(medium, room, bodies, which):
    """Riders of a room from a list of Body and the number (N,) of each one's own."""
    names = ("radius_m", "inertia_factor", "friction", "rolling_resistance")
    radius, inertia, friction, resistance = (
        np.array([getattr(b, name) for b in bodies], dtype=float)[which] for name in names
    )
    aboard = Aboard(medium, room, as_arrays(bodies).take(which))
    # Per mass that is moved: the air that goes along with a buoyant body does not turn with it.
    return Riders(aboard, radius, inertia / aboard.added_mass_factor, friction, resistance)


@dataclass(frozen=True)
class Balance:
    """Normal n and n' (3, N; None where it never changes), A along the surface (3, N), N (N,), and what size A has (N,)."""

    normal: np.ndarray
    normal_rate: np.ndarray | None
    along: np.ndarray
    press: np.ndarray
    size: np.ndarray

    def kept(self, change, u):
        """A change of u along the surface with what of it keeps u there as the normal turns (3, N)."""
        return change if self.normal_rate is None else change - dot(u, self.normal_rate) * self.normal


class GroundLaw:
    """Bodies of one mode on one surface. rate arguments are (omega, its change), numbers or (N,).

    watches: what comes of each figure that falls to 0, a row of `at`'s second; lasting: whether errors of a velocity last.
    """

    watches = ("left", "slip")
    lasting = False

    def __init__(self, surface, many: Riders):
        self.surface, self.many = surface, many
        self._resisted = bool(np.any(many.resistance))
        self._yields = 1.0 / (1.0 + many.inertia_factor)

    def take(self, which):
        """The law of those of the index or mask."""
        return type(self)(self.surface, self.many.take(which))

    def balance(self, rate, x, u, bend=None):
        """The Balance at centres and velocities (3, N); bend: n and n' there, where they are known."""
        free = self.many.aboard.at(*rate, x, u)
        n, normal_rate = self.surface.bend(x, u) if bend is None else bend
        across = dot(free, n)
        along = free - across * n
        press = -across if normal_rate is None else -across - dot(u, normal_rate)
        return Balance(n, normal_rate, along, press, np.sqrt(dot(free, free)))

    def tilt(self, rate, spun):
        """a w (3, N) of a sphere of a sigma (3, N)."""
        omega, change = rate
        out = np.empty_like(spun)
        out[0], out[1], out[2] = -omega * spun[1], omega * spun[0], change * self.many.radius_m
        return out

    def driving(self, b, tilt, spinning):
        """(1 + beta) u' (3, N) along the surface of a sphere that rolls, without resistance; spinning: a sigma_n (N,)."""
        twist = tilt if b.normal_rate is None else tilt + spinning * b.normal_rate
        return b.along + self.many.inertia_factor * cross(b.normal, twist)  # sigma_n n x n' - w x n is n x the twist

    def presses(self, b):
        """Above 0 where the body lies on its surface (N,)."""
        return b.press + (1e-9 * b.size + _FEATHER_M_S2)

    def _watched(self, b):
        """The figures (2, N) of what slips: of press, and 1."""
        out = np.ones((2, len(b.press)))
        out[0] = self.presses(b)
        return out

    def tangent(self, velocity, n):
        """Velocities (6, N) with u along the surface."""
        out = velocity.copy()
        out[:3] -= dot(velocity[:3], n) * n
        return out

    def settled(self, position, velocity, gap):
        """States (6, N) put back at a gap (N,) from the surface, moving along it."""
        n = self.surface.normal(position[:3])
        out = position.copy()
        out[:3] -= (self.surface.gap(position[:3], self.many.radius_m) - gap) * n
        return out, self.tangent(velocity, n)

    def hurry(self, position, velocity, acceleration, short):
        """How short (N,), as 1/s, a step must be for what vanishes: short(away, rate) of it (`vanishing.hurry`)."""
        return short(self.vanishing(position, velocity), self.vanishing_rate(position, velocity, acceleration))

    def axis(self, position):
        """What a ball at rest can spin about (3, N): the normal."""
        return self.surface.normal(position[:3])

    def _holding(self, needed, limit, b, share):
        """Figures (2, N), both above 0 where a limit holds the needed acceleration (3, N) with a share of it.

        The first is a difference of squares, so that it is a polynomial of the frame's rate; the second is that of press.
        With less to spare than rounding nothing needed is held, and all that is needed is not.
        """
        spare = (ROUNDING * b.size) ** 2 + _FEATHER_M_S2**2
        return np.stack([(share * limit * b.press) ** 2 + spare - dot(needed, needed), self.presses(b)])


class Rolling(GroundLaw):
    """Spheres that roll without slipping."""

    mode, lasting = ROLLS, True

    def at(self, rate, position, velocity):
        """Second changes (6, N), and two figures (2, N) that are above 0 while the leg lasts: of press, and of friction."""
        bend = self.surface.bend(position[:3], velocity[:3])
        of_few, watched = self._at_few(rate, position[:3], velocity[:3], dot(velocity[3:], bend[0]), bend)
        out = np.empty_like(velocity)
        out[:3] = of_few[:3]
        out[3:] = _turning(velocity[:3], dot(velocity[3:], bend[0]), of_few, bend)
        return out, watched

    def few(self, position, velocity, acceleration):
        """What the rolling ball's states (6, N) go by, (4, N) each: the centre, and a sigma_n."""
        n, normal_rate = self.surface.bend(position[:3], velocity[:3])
        spinning = dot(velocity[3:], n)
        change = dot(acceleration[3:], n)
        if normal_rate is not None:
            change = change + dot(velocity[3:], normal_rate)
        parts = (position[:3], np.zeros_like(spinning)), (velocity[:3], spinning), (acceleration[:3], change)
        return tuple(np.concatenate([three, one[None]]) for three, one in parts)

    def at_few(self, rate, position, velocity):
        """As `at`, of those (4, N)."""
        x, u = position[:3], velocity[:3]
        return self._at_few(rate, x, u, velocity[3], self.surface.bend(x, u))

    def whole(self, position, velocity, acceleration):
        """Second changes (6, N) of those (4, N)."""
        turning = _turning(velocity[:3], velocity[3], acceleration, self.surface.bend(position[:3], velocity[:3]))
        return np.concatenate([acceleration[:3], turning])

    def _at_few(self, rate, x, u, spinning, bend):
        many, (n, normal_rate) = self.many, bend
        spun = cross(n, u)
        spun += spinning * n
        b, tilt = self.balance(rate, x, u, bend), self.tilt(rate, spun)
        change = self.driving(b, tilt, spinning)
        change *= self._yields
        push = change - b.along
        limit = many.friction * b.press
        push2 = dot(push, push)
        watched = np.empty((2, len(push2)))
        watched[0] = self.presses(b)
        # What friction has to spare where it gives that push, m/s2: a smooth figure also where nothing presses.
        watched[1] = _HOLDS_MORE * limit + (ROUNDING * b.size + _FEATHER_M_S2) - np.sqrt(push2)
        if self._resisted:
            change -= self._resistance(u, push, b.press, limit)
        out = np.empty((4, len(push2)))
        out[:3] = b.kept(change, u)
        out[3] = -dot(tilt, n)
        if normal_rate is not None:
            out[3] += dot(spun, normal_rate)
        return out, watched

    def _resistance(self, u, push, press, limit):
        """What rolling resistance takes (3, N), m/s2: C N/(1 + beta) against u, or what part of it friction, up to a limit (N,), can give
        more than the push (3, N) that rolling needs without it: resistance alone never makes a ball slip."""
        many = self.many
        whole = (many.resistance * self._yields) * press / np.maximum(np.sqrt(dot(u, u)), _NONE) * u
        left = push - whole
        if np.all(dot(left, left) <= limit * limit):
            return whole
        # The greatest share up to 1 with |push - share whole| <= friction N.
        square, along = np.maximum(dot(whole, whole), _NONE), dot(push, whole)
        spare = np.maximum(limit * limit - dot(push, push), 0.0)
        share = (along + np.sqrt(along * along + square * spare)) / square
        return np.clip(share, 0.0, 1.0) * whole

    def tangent(self, velocity, n):
        """Velocities (6, N) with u along the surface and no slip."""
        out = super().tangent(velocity, n)
        out[3:] = cross(n, out[:3]) + dot(velocity[3:], n) * n
        return out

    def vanishing(self, position, velocity):
        """The speed (3, N) where there is resistance; else what never vanishes."""
        return np.where(self.many.resistance > 0, velocity[:3], 1.0)

    def vanishing_rate(self, _position, _velocity, acceleration):
        """Its change (3, N)."""
        return np.where(self.many.resistance > 0, acceleration[:3], 0.0)

    def stopped(self, position, velocity):
        """Velocities (6, N) once what vanishes is gone."""
        n = self.surface.normal(position[:3])
        return np.concatenate([np.zeros_like(n), dot(velocity[3:], n) * n])

    def held(self, rate, position, velocity, share):
        """Figures (2, N), above 0 where those that have stopped stay so, and the way (3, N) they start if not."""
        b = self.balance(rate, position[:3], velocity[:3])
        driving = self.driving(b, self.tilt(rate, velocity[3:]), dot(velocity[3:], b.normal))
        return self._holding(driving, np.minimum(self.many.resistance, self.many.friction), b, share), driving


class Sliding(GroundLaw):
    """Spheres that slip."""

    mode = SLIDES

    def _slip(self, n, u, spun):
        slip = u - cross(spun, n)
        return slip - dot(slip, n) * n

    def at(self, rate, position, velocity):
        """Second changes (6, N), and two figures as for Rolling; the second is always 1."""
        x, u, spun, many = position[:3], velocity[:3], velocity[3:], self.many
        b = self.balance(rate, x, u)
        slip = self._slip(b.normal, u, spun)
        push = -many.friction * b.press / np.maximum(np.sqrt(dot(slip, slip)), _NONE) * slip
        out = np.empty_like(velocity)
        out[:3] = b.kept(b.along + push, u)
        out[3:] = -self.tilt(rate, spun) - cross(b.normal, push) / many.inertia_factor
        return out, self._watched(b)

    def vanishing(self, position, velocity):
        """The slip (3, N)."""
        return self._slip(self.surface.normal(position[:3]), velocity[:3], velocity[3:])

    def vanishing_rate(self, position, velocity, acceleration):
        """Its change (3, N), along the surface."""
        n, normal_rate = self.surface.normal(position[:3]), self.surface.normal_rate(position[:3], velocity[:3])
        return acceleration[:3] - cross(acceleration[3:], n) - cross(velocity[3:], normal_rate)

    def stopped(self, position, velocity):
        """Velocities (6, N) after the impulse that stops the slip."""
        n = self.surface.normal(position[:3])
        share = self.many.inertia_factor / (1.0 + self.many.inertia_factor)
        slip = self._slip(n, velocity[:3], velocity[3:])
        impulse = -share * slip
        return velocity + np.concatenate([impulse, -cross(n, impulse) / self.many.inertia_factor])

    def held(self, rate, position, velocity, share):
        """Figures (2, N), above 0 where friction makes those without slip roll, and the way (3, N) they slip if it cannot."""
        b = self.balance(rate, position[:3], velocity[:3])
        push = self._yields * self.driving(b, self.tilt(rate, velocity[3:]), dot(velocity[3:], b.normal)) - b.along
        return self._holding(push, self.many.friction, b, share), -push


class Standing(GroundLaw):
    """Things that cannot turn, while they slide."""

    mode = STANDS

    def at(self, rate, position, velocity):
        """Second changes (6, N), and two figures as for Sliding."""
        x, u = position[:3], velocity[:3]
        b = self.balance(rate, x, u)
        push = -self.many.friction * b.press / np.maximum(np.sqrt(dot(u, u)), _NONE) * u
        out = np.zeros_like(velocity)
        out[:3] = b.kept(b.along + push, u)
        return out, self._watched(b)

    def tangent(self, velocity, n):
        """Velocities (6, N) with u along the surface and no spin."""
        out = super().tangent(velocity, n)
        out[3:] = 0.0
        return out

    def vanishing(self, _position, velocity):
        """The speed (3, N)."""
        return velocity[:3]

    def vanishing_rate(self, _position, _velocity, acceleration):
        """Its change (3, N)."""
        return acceleration[:3]

    def stopped(self, _position, velocity):
        """Velocities (6, N) once it stands: none."""
        return np.zeros_like(velocity)

    def held(self, rate, position, velocity, share):
        """Figures (2, N), above 0 where friction holds those that stand, and the way (3, N) they slide if it does not."""
        b = self.balance(rate, position[:3], velocity[:3])
        return self._holding(b.along, self.many.friction, b, share), b.along


def _turning(u, spinning, of_few, bend):
    """How a sigma = n x u + a sigma_n n changes (3, N) with u and a sigma_n (4, N)."""
    n, normal_rate = bend
    out = cross(n, of_few[:3])
    out += of_few[3] * n
    if normal_rate is not None:
        out += cross(normal_rate, u)
        out += spinning * normal_rate
    return out


LAWS = {law.mode: law for law in (Rolling, Sliding, Standing)}


def holds(law, rate, position, velocity):
    """Whether (N,) what has just stopped stays so, and the velocity (3, N), of no account, with which it starts if not."""
    figures, way = law.held(rate, position, velocity, _HOLDS_LESS)
    size = np.maximum(np.sqrt(dot(way, way)), _NONE)
    just = -figures[0] <= _JUST * size * size
    return np.all(figures > 0, axis=0), np.where(just, np.maximum(_JUST_M_S, _JUST_S * size), SEED_M_S) / size * way


def seeded(law, position, velocity, seed):
    """Velocities (6, N) of bodies that have stopped, with the velocity (3, N) of no account with which they start."""
    moving = velocity.copy()
    moving[:3] += seed
    return law.tangent(moving, law.surface.normal(position[:3]))
