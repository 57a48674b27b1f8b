"""How a body turns that loses energy inside and is turned by nothing outside: its inertial angular momentum is constant, exactly, and its
energy only falls, until it turns about its axis of greatest inertia.

The model is double-bracket dissipation (A. Bloch, P. S. Krishnaprasad, J. E. Marsden & T. S. Ratiu, The Euler-Poincare equations and double
bracket dissipation, Commun. Math. Phys. 175 (1996) 1, from memory): with P the angular momentum in body axes and W = P/I,

    dP/dt = P x W + a P x (P x W).

P keeps its size, and energy falls by a |P x W|^2. A body whose P changes so, while its momentum stands still in the room, turns at
W + a P x W: what is not P/I is momentum of what moves inside, which is left out of the energy. a is given as a time: for a body of
revolution the tangent of the angle between momentum and long axis grows by e in it (the law is then closed), and that of a disc falls so.

Inside, an attitude is two complex numbers (Cayley & Klein): A = w + i z, B = x + i y of a quaternion from principal axes to axes whose
Z is the momentum. P is read from them, so that it cannot drift. One body is stepped by the method of `physics/dop853.py` in Python's own
numbers, which for two of them is ten times as fast as arrays; what is read between steps is one more step each, all at once.
"""

import math
from operator import itemgetter, mul

import numpy as np

from ..physics import dop853
from ..physics.budget import spend
from ..physics.quaternions import times
from .attitude import Turned, continued, of_matrix

TOLERANCE = 1e-12  # error allowed to a step, of a quaternion of size 1
_SPENT_EVERY = 64  # steps
_CONJUGATE = np.array([1.0, -1.0, -1.0, -1.0])


def _without_zeros(row):
    """The coefficients of a row that are not 0, and what picks from a list what they are of."""
    some = [i for i, share in enumerate(row) if share]
    return tuple(row[i] for i in some), itemgetter(*some) if len(some) > 1 else lambda stages: (stages[some[0]],)


_STAGES = tuple(_without_zeros(row) for row in (*dop853.STAGES, dop853.WEIGHTS))
_ERRORS = tuple(_without_zeros(row) for row in (dop853.ERROR_5, dop853.ERROR_3))


class Damped:
    """The motion of a Principal body from rates (3,), rad/s in body axes, at time 0, that loses energy in time_s; `at(time_s)`.

    The rates are taken as P/I. What has been stepped is kept, and gone on with when later times are asked for.
    """

    def __init__(self, body, rates, time_s):
        momentum = body.momentum(np.asarray(rates, dtype=float))
        self.body, self._size = body, float(np.linalg.norm(momentum))
        self._inverse = 1 / body.moments
        spread = self._size * float(self._inverse[0] - self._inverse[2])
        self._loss = 1 / (time_s * spread) if spread else 0.0
        self._mean = float(self._inverse[2])  # the turning about the momentum itself that is taken out
        self._law = _law(self._size, *(self._inverse - self._mean).tolist(), self._loss)
        self._first = _toward(momentum / self._size)
        self._times_s, self._states = [0.0], [_klein(self._first)]
        self._length_s = 0.1 / max(self._size * float(self._inverse[0]), 1 / time_s)

    def at(self, time_s):
        """Turned at times (n,), at least 0."""
        time_s = np.asarray(time_s, dtype=float)
        states, direction = self._read(time_s)
        about = 0.5 * self._size * self._mean * time_s
        spun = np.stack([np.cos(about), 0 * about, 0 * about, np.sin(about)], axis=1)
        own = of_matrix(self.body.axes)
        first = times(own, (self._first * _CONJUGATE)[None])
        turned = times(times(np.repeat(first, len(time_s), 0), spun), _quaternions(*states))
        turned = times(turned, own * _CONJUGATE)
        rates, changes = self._rates(direction)
        return Turned(continued(turned), rates @ self.body.axes.T, changes @ self.body.axes.T, direction)

    def directions(self, time_s):
        """The momentum's direction (n, 3) in principal axes at times (n,)."""
        return self._read(np.asarray(time_s, dtype=float))[1]

    def _rates(self, direction):
        """Rates and their changes (n, 3) about principal axes."""
        size, loss = self._size, self._loss
        own = size * direction * self._inverse
        rates = own + loss * np.cross(direction, own)
        turns = np.cross(direction, rates)
        changing = size * turns * self._inverse
        return rates, changing + loss * (np.cross(turns, own) + np.cross(direction, changing))

    def _read(self, time_s):
        """A and B (n,) and the momentum's direction (n, 3) at times (n,)."""
        self._reach(float(np.max(time_s, initial=0.0)))
        nodes_s = np.array(self._times_s)
        k = np.clip(np.searchsorted(nodes_s, time_s, "right") - 1, 0, None)
        a, b = np.array(self._states)[k].T
        a, b = _step(self._law, a, b, time_s - nodes_s[k])[0]
        return (a, b), _direction(a, b)

    def _reach(self, until_s):
        """Step on until a time."""
        while self._times_s[-1] < until_s:
            self._advance()
            if len(self._times_s) % _SPENT_EVERY == 0:
                spend(_SPENT_EVERY, 12 * _SPENT_EVERY, bytes=100 * _SPENT_EVERY)

    def _advance(self):
        """The next step that is exact enough (Hairer, Norsett & Wanner, Solving Ordinary Differential Equations I, II.4 and II.10)."""
        while True:
            length = self._length_s
            (a, b), stages = _step(self._law, *self._states[-1], length)
            five, three = (sum(abs(sum(map(mul, row, of(k)))) ** 2 for k in stages) for row, of in _ERRORS)
            bottom = math.sqrt(five + 0.01 * three)
            error = length * five / bottom / TOLERANCE if bottom > 0 else 0.0
            self._length_s = (
                length * (min(5.0, 0.9 * error**-0.125) if error > 0 else 5.0) if error < 1e8 else 0.1 * length
            )
            if error <= 1.0:
                break
        size = math.sqrt(abs(a) ** 2 + abs(b) ** 2)
        self._times_s.append(self._times_s[-1] + length)
        self._states.append((a / size, b / size))


def _law(size, x, y, z, loss):
    """dA/dt and dB/dt of A and B, numbers or arrays; x, y, z: inverse moments less what is taken out."""
    zy, xz, yx = (size * loss * difference for difference in (z - y, x - z, 2 * (y - x)))
    x, y, z = size * x, size * y, 0.5 * size * z

    def rates(a, b):
        c = a.conjugate()
        level = b * c
        p, q = -level.imag, level.real  # half of two components of the momentum's direction
        r = (a * c).real - (b * b.conjugate()).real
        w = x * p + zy * q * r + 1j * (y * q + xz * r * p)
        v = 1j * (z * r + yx * p * q)
        return v * a - b * w.conjugate(), a * w - v * b

    return rates


def _step(law, a, b, length):
    """A and B a step later, and the 12 stages of each."""
    u, v = a, b
    ka, kb = [], []
    for row, of in _STAGES:
        p, q = law(u, v)
        ka.append(p)
        kb.append(q)
        u, v = a + length * sum(map(mul, row, of(ka))), b + length * sum(map(mul, row, of(kb)))
    return (u, v), (ka, kb)


def _klein(quaternion):
    w, x, y, z = quaternion.tolist()
    return complex(w, z), complex(x, y)


def _quaternions(a, b):
    out = np.stack([a.real, b.real, b.imag, a.imag], axis=1)
    return out / np.linalg.norm(out, axis=1, keepdims=True)


def _direction(a, b):
    level = 2j * b * a.conj()
    out = np.stack([level.real, level.imag, np.abs(a) ** 2 - np.abs(b) ** 2], axis=1)
    return out / np.linalg.norm(out, axis=1, keepdims=True)


def _toward(direction):
    """A quaternion (4,) that turns a unit vector (3,) to Z."""
    x, y, z = direction
    large = math.sqrt((1 + abs(z)) / 2)
    if z >= 0:
        return np.array([large, y / (2 * large), -x / (2 * large), 0.0])
    level = math.hypot(x, y)
    small = level / (2 * large)
    return np.array([small, y / level * large, -x / level * large, 0.0]) if level else np.array([0.0, 1.0, 0.0, 0.0])
