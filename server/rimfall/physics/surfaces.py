"""What bodies meet: drums, planes, the inside of a ball and of a tube, each as a gap that is a polynomial along a path.

A surface is met when the body's own surface meets it, so the gap is taken from the body's centre less its radius. Gaps are
exact polynomials of the path's parameter: squared distances, scaled to metres near contact. Each shape gives the same:

- `gap(position, body_radius_m)`, `gap_rates(position, velocity, acceleration)`: gaps (N,) of centres (3, N), and how they change;
- `gap_control(position, control, body_radius_m)`: Bernstein coefficients (m + 1, N) of a polynomial that has the gap's sign
  along paths position (3, N) + control (n + 1, 3, N), and is the gap in metres near contact;
- `near`: bodies (N,) whose path could meet it: no only where the control points show that it cannot;
- `normal(position)`, `normal_rate(position, velocity)`: the unit normal into the room, (3,) or (3, N), at centres, and how fast it
  changes along a motion of the centre;
- `bend(position, velocity)`: both at once, for centres (3, N); the second is None where it never changes;
- `name_at(position)`: the name of the part at a centre (3,);
- `flat`: whether it is a plane;
- `turned`: whether it turns with the habitat and looks different for it. Others look the same in both frames, and may be
  asked with states of either.

With `edge` it is a boundary of the room and no thing: passed by a body's centre, so that the body's radius counts as 0.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from . import bernstein


@dataclass(frozen=True)
class Drum:
    """A cylinder about the axis. name: "deck", "ceiling", "hub" or "edge". hollow: bodies are inside it (else outside)."""

    name: str
    radius_m: float
    hollow: bool
    edge: bool = False
    turned = False
    flat = False

    def _sign_and_limit(self, body_radius_m):
        """+1 or -1, and the radius (N,) at which the body's centre stands in contact."""
        sign = 1.0 if self.hollow else -1.0
        return sign, self.radius_m - (0.0 if self.edge else sign * body_radius_m)

    def gap(self, position, body_radius_m):
        """Gap (N,), metres, of centres (3, N): above 0 in the room, below 0 inside the wall."""
        sign, limit = self._sign_and_limit(body_radius_m)
        return sign * (limit - np.hypot(position[0], position[1]))

    def gap_rates(self, position, velocity, acceleration):
        """First and second rate of change of the gap (N,), m/s and m/s2, from states (3, N)."""
        sign = 1.0 if self.hollow else -1.0
        _, rate, change = _rho_rates(position, velocity, acceleration)
        return -sign * rate, -sign * change

    def gap_control(self, position, control, body_radius_m):
        """Bernstein coefficients (2n + 1, N) of (limit^2 - rho^2)/(2 limit) along paths position + control.

        position (3, N) at the path's start, control (n + 1, 3, N) its change since then.
        """
        sign, limit = self._sign_and_limit(body_radius_m)
        rho = np.hypot(position[0], position[1])
        change = _square_change(position[:2], control[:, :2])
        return sign * ((limit - rho) * (limit + rho) - change) / (2 * limit)

    def near(self, position, control, body_radius_m):
        """Bodies (N,) whose path could meet it: no where the control points already show it cannot (convexity)."""
        _, limit = self._sign_and_limit(body_radius_m)
        points = position[:2] + control[:, :2]
        if self.hollow:
            return (points[:, 0] ** 2 + points[:, 1] ** 2 >= limit**2).any(axis=0)
        return (_outward_part(position, points) <= limit).any(axis=0)

    def normal(self, position):
        """Unit normals (3, ...) into the room at centres (3, ...)."""
        outward = _outward(position)
        return -outward if self.hollow else outward

    def normal_rate(self, position, velocity):
        """Rate of change (3, ...), 1/s, of the normal along a motion of centres (3, ...)."""
        normal_rate = _outward_rate(position, velocity)
        return -normal_rate if self.hollow else normal_rate

    def bend(self, position, velocity):
        """Both (3, N)."""
        x, y = position[0], position[1]
        rho = np.hypot(x, y)
        per = (-1.0 if self.hollow else 1.0) / _safe(rho)
        turning = per**3 * (x * velocity[1] - y * velocity[0])
        n, rate = np.zeros_like(position), np.zeros_like(position)
        n[0], n[1] = x * per, y * per
        rate[0], rate[1] = -y * turning, x * turning
        return n, rate

    def name_at(self, _position):
        """Its name."""
        return self.name


@dataclass(frozen=True)
class Plane:
    """A plane: points p with into . p = at_m. into: its unit normal into the room, a tuple of 3."""

    name: str
    into: tuple
    at_m: float
    edge: bool = False
    flat = True

    @property
    def turned(self):
        """Whether its turning with the habitat shows: not where it lies square across the axis."""
        return bool(self.into[0] or self.into[1])

    def gap(self, position, body_radius_m):
        """Gap (N,), metres, of centres (3, N)."""
        return _row(self.into) @ position - self.at_m - (0.0 if self.edge else body_radius_m)

    def gap_rates(self, _position, velocity, acceleration):
        """First and second rate of change of the gap (N,), m/s and m/s2, from states (3, N) in the plane's own frame."""
        normal = _row(self.into)
        return normal @ velocity, normal @ acceleration

    def gap_control(self, position, control, body_radius_m):
        """Bernstein coefficients (n + 1, N) of the gap along paths position + control (see Drum)."""
        return self.gap(position, body_radius_m) + _row(self.into) @ control

    def near(self, position, control, body_radius_m):
        """Bodies (N,) whose path could meet it (see Drum)."""
        return (self.gap_control(position, control, body_radius_m) <= 0).any(axis=0)

    def normal(self, position):
        """Unit normals (3, ...) into the room at centres (3, ...)."""
        return _row(self.into).reshape(3, *(1,) * (np.ndim(position) - 1)) + np.zeros(np.shape(position))

    def normal_rate(self, position, _velocity):
        """Rate of change (3, ...) of the normal: none."""
        return np.zeros(np.shape(position))

    def bend(self, position, _velocity):
        """The normal (3, N), and that it never changes."""
        n = np.empty_like(position)
        n[:] = _column(self.into)
        return n, None

    def name_at(self, _position):
        """Its name."""
        return self.name


@dataclass(frozen=True)
class Ball:
    """The inside of a ball about the origin."""

    name: str
    radius_m: float
    edge = False
    turned = False
    flat = False

    def gap(self, position, body_radius_m):
        """Gap (N,), metres, of centres (3, N)."""
        return self.radius_m - body_radius_m - _length(position)

    def gap_rates(self, position, velocity, acceleration):
        """First and second rate of change of the gap (N,), m/s and m/s2, from states (3, N)."""
        out = position / _safe(_length(position))
        rate = _dot(out, velocity)
        swing = (_dot(velocity, velocity) - rate**2) / _safe(_length(position))
        return -rate, -_dot(out, acceleration) - swing

    def gap_control(self, position, control, body_radius_m):
        """Bernstein coefficients (2n + 1, N) of (L^2 - |x|^2)/(2 L), L the radius less the body's (see Drum)."""
        limit, start = self.radius_m - body_radius_m, _length(position)
        return ((limit - start) * (limit + start) - _square_change(position, control)) / (2 * limit)

    def near(self, position, control, body_radius_m):
        """Bodies (N,) whose path could meet it (see Drum)."""
        points = position + control
        return (np.einsum("kan,kan->kn", points, points) >= (self.radius_m - body_radius_m) ** 2).any(axis=0)

    def normal(self, position):
        """Unit normals (3, ...) into the room at centres (3, ...)."""
        return -position / _safe(_length(position))

    def normal_rate(self, position, velocity):
        """Rate of change (3, ...), 1/s, of the normal along a motion of centres (3, ...)."""
        far = _safe(_length(position))
        out = position / far
        return (out * _dot(out, velocity) - velocity) / far

    def bend(self, position, velocity):
        """Both (3, N)."""
        far = -_safe(_length(position))
        n = position / far
        return n, (velocity - n * _dot(n, velocity)) / far

    def name_at(self, _position):
        """Its name."""
        return self.name


@dataclass(frozen=True)
class Tube:
    """The inside of a tube of tube_radius_m b bent into a ring: (rho - c)^2 + z^2 = b^2, c = radius_m - b, c >= b.

    Its outer half is "deck", its inner half "ceiling".
    """

    radius_m: float
    tube_radius_m: float
    edge = False
    turned = False
    flat = False

    @property
    def middle_m(self):
        """c: radius of the ring that the tube's own axis makes."""
        return self.radius_m - self.tube_radius_m

    def gap(self, position, body_radius_m):
        """Gap (N,), metres, of centres (3, N)."""
        rho = np.hypot(position[0], position[1])
        return self.tube_radius_m - body_radius_m - np.hypot(rho - self.middle_m, position[2])

    def gap_rates(self, position, velocity, acceleration):
        """First and second rate of change of the gap (N,), m/s and m/s2, from states (3, N)."""
        rho, rate, change = _rho_rates(position, velocity, acceleration)
        off = np.stack([rho - self.middle_m, position[2]])
        moving, pull = np.stack([rate, velocity[2]]), np.stack([change, acceleration[2]])
        far = _safe(np.hypot(off[0], off[1]))
        closing = np.sum(off * moving, axis=0) / far
        swing = (np.sum(moving * moving, axis=0) - closing**2) / far
        return -closing, -np.sum(off * pull, axis=0) / far - swing

    def gap_control(self, position, control, body_radius_m):
        """Bernstein coefficients (4n + 1, N) of -(w + (D + w)^2/(4 c^2))/(2 L) along paths position + control (see Drum).

        L = b less the body's radius, w = z^2 - L^2, D = rho^2 - c^2; it is 0 just where (rho - c)^2 + z^2 = L^2, for
        there rho^2 + c^2 + z^2 - L^2 = 2 rho c, squared, is that. D is taken as a product and a change, so that no
        digits are lost where c is ten thousand times L. Off the ring's middle it is rho/c of the gap: made up for.
        """
        middle, limit = self.middle_m, self.tube_radius_m - body_radius_m
        rho = np.hypot(position[0], position[1])
        flat = _square_change(position[2:], control[:, 2:]) + (position[2] - limit) * (position[2] + limit)
        both = _square_change(position[:2], control[:, :2]) + (rho - middle) * (rho + middle) + flat
        bent = bernstein.squared(both[:, None] / (2 * middle))
        least = np.maximum(middle - limit, 1e-6 * middle)
        return -(bernstein.raised(flat) + bent) * (middle / (2 * limit * least))

    def near(self, position, control, body_radius_m):
        """Bodies (N,) whose path could meet it.

        The distance from the tube's axis is at most the greater of two convex functions: with rho - c, or 0 if less,
        for the outer half, and with c less the part of the position outward at the start for the inner half. Where both
        are below the limit at all control points, they are so all along.
        """
        points = position + control
        outer = np.maximum(np.hypot(points[:, 0], points[:, 1]) - self.middle_m, 0.0)
        inner = np.maximum(self.middle_m - _outward_part(position, points), 0.0)
        across = np.maximum(outer, inner)
        return (across**2 + points[:, 2] ** 2 >= (self.tube_radius_m - body_radius_m) ** 2).any(axis=0)

    def _off_axis(self, position):
        """From the tube's own axis to centres: (3, ...), and its length (...)."""
        off = position - self.middle_m * _outward(position)
        return off, _safe(_length(off))

    def normal(self, position):
        """Unit normals (3, ...) into the room at centres (3, ...)."""
        off, far = self._off_axis(position)
        return -off / far

    def normal_rate(self, position, velocity):
        """Rate of change (3, ...), 1/s, of the normal along a motion of centres (3, ...)."""
        off, far = self._off_axis(position)
        moving = velocity - self.middle_m * _outward_rate(position, velocity)
        out = off / far
        return (out * _dot(out, moving) - moving) / far

    def bend(self, position, velocity):
        """Both (3, N)."""
        x, y = position[0], position[1]
        rho = _safe(np.hypot(x, y))
        middle = self.middle_m / rho  # c outward is that times x and y
        turning = (x * velocity[0] + y * velocity[1]) * middle / (rho * rho)
        off, moving = position.copy(), velocity.copy()
        off[:2] -= middle * position[:2]
        moving[:2] += turning * position[:2] - middle * velocity[:2]
        far = -_safe(_length(off))
        n = off / far
        return n, (moving - n * _dot(n, moving)) / far

    def name_at(self, position):
        """ "deck" on the outer half, "ceiling" on the inner."""
        return "deck" if np.hypot(position[0], position[1]) >= self.middle_m else "ceiling"


def _dot(a, b):
    return np.add.reduce(a * b, axis=0)


def _length(vectors):
    return np.sqrt(_dot(vectors, vectors))


def _safe(length):
    """Lengths to divide by: all but none in place of 0, where what is divided is 0 too."""
    return np.maximum(length, 1e-100)


@lru_cache
def _row(vector):
    """A tuple as an array that nobody changes."""
    row = np.array(vector)
    row.flags.writeable = False
    return row


def _column(vector):
    return _row(vector)[:, None]


def _rho_rates(position, velocity, acceleration):
    """Distance from the axis (N,), and its first and second rate of change."""
    rho = np.hypot(position[0], position[1])
    safe = _safe(rho)
    rate = (position[0] * velocity[0] + position[1] * velocity[1]) / safe
    pull = (position[0] * acceleration[0] + position[1] * acceleration[1]) / safe
    swing = (velocity[0] ** 2 + velocity[1] ** 2 - rate**2) / safe
    return rho, rate, pull + swing


def _square_change(position, control):
    """Bernstein coefficients (2n + 1, N) of |position + path|^2 - |position|^2, of (A, N) and (n + 1, A, N)."""
    return bernstein.raised(2 * np.einsum("an,kan->kn", position, control)) + bernstein.squared(control)


def _outward_part(position, points):
    """The part (n + 1, N) of points (n + 1, >= 2, N) that lies away from the axis as seen at position (3, N)."""
    toward = position[:2] / _safe(np.hypot(position[0], position[1]))
    return np.einsum("an,kan->kn", toward, points[:, :2])


def _outward(position):
    """Unit vectors (3, ...) from the axis at (3, ...)."""
    rho = _safe(np.hypot(position[0], position[1]))
    out = np.zeros(position.shape)
    out[0], out[1] = position[0] / rho, position[1] / rho
    return out


def _outward_rate(position, velocity):
    """Rate of change (3, ...) of that along a motion."""
    x, y = position[0], position[1]
    rho = _safe(np.hypot(x, y))
    turning = (x * velocity[1] - y * velocity[0]) / rho**3
    return np.stack([-y * turning, x * turning, np.zeros_like(rho)])
