"""What bodies meet: drums about the axis and planes across an axis, each as a gap that is a polynomial along a path.

A surface is met when the body's own surface meets it, so the gap is taken from the body's centre less its radius. Gaps are
exact polynomials of the path's parameter: squared distances, scaled to metres near contact. Other shapes join by giving
the same: `gap`, `gap_rates`, `gap_control`, `near`, `normal`.
"""

from dataclasses import dataclass

import numpy as np

from . import bernstein


@dataclass(frozen=True)
class Drum:
    """A cylinder about the axis. name: "deck", "ceiling" or "hub". hollow: bodies are inside it (else outside)."""

    name: str
    radius_m: float
    hollow: bool

    def _sign_and_limit(self, body_radius_m):
        """+1 or -1, and the radius (N,) at which the body's centre stands in contact."""
        return (1.0, self.radius_m - body_radius_m) if self.hollow else (-1.0, self.radius_m + body_radius_m)

    def gap(self, position, body_radius_m):
        """Gap (N,), metres, of centres (3, N): above 0 in the room, below 0 inside the wall."""
        sign, limit = self._sign_and_limit(body_radius_m)
        return sign * (limit - np.hypot(position[0], position[1]))

    def gap_rates(self, position, velocity, acceleration):
        """First and second rate of change of the gap (N,), m/s and m/s2, from states (3, N)."""
        sign = 1.0 if self.hollow else -1.0
        rho = np.hypot(position[0], position[1])
        safe = np.where(rho > 0, rho, 1.0)
        rate = (position[0] * velocity[0] + position[1] * velocity[1]) / safe
        pull = (position[0] * acceleration[0] + position[1] * acceleration[1]) / safe
        swing = (velocity[0] ** 2 + velocity[1] ** 2 - rate**2) / safe
        return -sign * rate, -sign * (pull + swing)

    def gap_control(self, position, control, body_radius_m):
        """Bernstein coefficients (2n + 1, N) of (limit^2 - rho^2)/(2 limit) along paths position + control.

        position (3, N) at the path's start, control (n + 1, 3, N) its change since then.
        """
        sign, limit = self._sign_and_limit(body_radius_m)
        rho = np.hypot(position[0], position[1])
        level = control[:, :2]
        change = bernstein.raised(2 * np.einsum("an,kan->kn", position[:2], level)) + bernstein.squared(level)
        return sign * ((limit - rho) * (limit + rho) - change) / (2 * limit)

    def near(self, position, control, body_radius_m):
        """Bodies (N,) whose path could meet it: no where the control points already show it cannot (convexity)."""
        _, limit = self._sign_and_limit(body_radius_m)
        points = position[:2] + control[:, :2]
        if self.hollow:
            return np.any(points[:, 0] ** 2 + points[:, 1] ** 2 >= limit**2, axis=0)
        rho = np.hypot(position[0], position[1])
        toward = position[:2] / np.where(rho > 0, rho, 1.0)
        return np.any(np.einsum("an,kan->kn", toward, points) <= limit, axis=0)

    def normal(self, position):
        """Unit normals (..., 3) into the room at positions (..., 3)."""
        level = position * np.array([1.0, 1.0, 0.0])
        level = level / np.linalg.norm(level, axis=-1, keepdims=True)
        return -level if self.hollow else level


@dataclass(frozen=True)
class Plane:
    """A plane across coordinate `axis` (0, 1 or 2) at `at_m`; the room is on the side that `side` (+1 or -1) points to."""

    name: str
    axis: int
    at_m: float
    side: float

    def gap(self, position, body_radius_m):
        """Gap (N,), metres, of centres (3, N)."""
        return self.side * (position[self.axis] - self.at_m) - body_radius_m

    def gap_rates(self, position, velocity, acceleration):
        """First and second rate of change of the gap (N,), m/s and m/s2, from states (3, N)."""
        return self.side * velocity[self.axis], self.side * acceleration[self.axis]

    def gap_control(self, position, control, body_radius_m):
        """Bernstein coefficients (n + 1, N) of the gap along paths position + control (see Drum)."""
        return self.gap(position, body_radius_m) + self.side * control[:, self.axis]

    def near(self, position, control, body_radius_m):
        """Bodies (N,) whose path could meet it (see Drum)."""
        return np.any(self.gap_control(position, control, body_radius_m) <= 0, axis=0)

    def normal(self, position):
        """Unit normals (..., 3) into the room."""
        out = np.zeros(np.shape(position))
        out[..., self.axis] = self.side
        return out
