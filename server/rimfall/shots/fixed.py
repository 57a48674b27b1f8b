"""What of a throw is fixed (its speed, its elevation, its flight time, or that it is the slowest) as functions along the curve of
throws that arrive (`curve.py`), and throws made to keep to it."""

from dataclasses import dataclass

import numpy as np

from ..physics.frames import cos_deg, sin_deg

SPEED, ELEVATION, FLIGHT, LEAST = "speed_m_s", "elevation_deg", "flight_s", "least"


@dataclass(frozen=True)
class Fixed:
    """what: one of the four; value in its unit, None for LEAST."""

    what: str
    value: float | None

    def vanishes(self, flight_s: np.ndarray, w: np.ndarray, slope: np.ndarray) -> np.ndarray:
        """A smooth function (...), 0 where a throw of the curve keeps to it: of flight times (...), W and its slope (..., 3)."""
        if self.what == SPEED:
            return np.sum(w * w, axis=-1) - (self.value * flight_s) ** 2
        if self.what == LEAST:  # where the square of the speed, |W|^2/t^2, has no slope
            return flight_s * np.sum(w * slope, axis=-1) - np.sum(w * w, axis=-1)
        if self.value == 0.0:
            return w[..., 1]
        level = w[..., 0] ** 2 + w[..., 2] ** 2
        return (w[..., 1] * cos_deg(self.value)) ** 2 - level * sin_deg(self.value) ** 2

    def keeps(self, w: np.ndarray) -> np.ndarray:
        """Which (N,) of the throws at which `vanishes` does are so, and not the mirror image."""
        if self.what != ELEVATION or self.value == 0.0:
            return np.ones(len(w), dtype=bool)
        return w[:, 1] * self.value > 0

    def off_m(self, flight_s: np.ndarray, w: np.ndarray) -> np.ndarray:
        """By how much (N,) the throw that keeps to it and comes nearest after flight_s misses, without air; of either sign."""
        if self.what == SPEED:
            return np.linalg.norm(w, axis=-1) - self.value * flight_s
        level = np.hypot(w[:, 0], w[:, 2])
        return w[:, 1] * cos_deg(self.value) - level * sin_deg(self.value)

    def off(self, velocities: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """By how much throws (N, 3) do not keep to it (N,), m/s, and how that changes with them (N, 3)."""
        if self.what == SPEED:
            speed = np.linalg.norm(velocities, axis=1)
            return speed - self.value, velocities / np.maximum(speed, 1e-300)[:, None]
        level = np.hypot(velocities[:, 0], velocities[:, 2])
        ahead = velocities / np.maximum(level, 1e-300)[:, None]
        up, along = cos_deg(self.value), sin_deg(self.value)
        change = np.stack([-along * ahead[:, 0], np.full(len(level), up), -along * ahead[:, 2]], axis=-1)
        return velocities[:, 1] * up - level * along, change

    def kept(self, velocities: np.ndarray) -> np.ndarray:
        """Throws (N, 3) made to keep to it, nearest to what they were."""
        if self.what == SPEED:
            speed = np.linalg.norm(velocities, axis=1, keepdims=True)
            return velocities * (self.value / np.maximum(speed, 1e-300))
        if self.what != ELEVATION:
            return velocities
        level = np.hypot(velocities[:, 0], velocities[:, 2])
        speed = np.maximum(level * cos_deg(self.value) + velocities[:, 1] * sin_deg(self.value), 0.0)
        share = (speed * cos_deg(self.value) / np.maximum(level, 1e-300))[:, None]
        out = velocities * share
        out[:, 1] = speed * sin_deg(self.value)
        return out
