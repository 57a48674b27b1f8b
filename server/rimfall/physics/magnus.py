"""Lift of a ball that spins in the air it flies through (Magnus).

Source: the fit C_L = 1.12 S/(0.583 + 2.333 S) to measured flights of baseballs (Cross & Nathan; from memory), S the spin
factor: the speed of the ball's surface over that of the ball, both against the air. It is 0.21 at S = 0.2, as other fits
have it, and ends at 0.48. Measured for S up to about 0.5 and seamed balls; a smooth ball's lift can even be reversed near
the drag crisis, which is not modelled.
"""

from copy import copy

import numpy as np

_TOP, _FLAT, _STEEP = 1.12, 0.583, 2.333
_LEAST = 1e-300  # m/s


class MagnusLift:
    """The lift on N balls, per density of the air: (1/2) A C_L |u|^2 (s x u)/(|s| |u|) / m, smooth also at rest.

    spin_rad_s (3, N): inertial, constant; nan for a body without lift. s is it less the air's own turning, u the velocity
    through the air.
    """

    def __init__(self, bodies, spin_rad_s):
        none = np.isnan(spin_rad_s[0])
        self._spin = np.where(none, 0.0, spin_rad_s)
        radius = bodies.diameter_m / 2
        self._share = np.where(none, 0.0, 0.5 * _TOP * np.pi * radius**3 / bodies.mass_kg)
        self._surface = _STEEP * radius
        self._fixed = None

    def with_steady(self, omega_rad_s):
        """The same where the air turns at omega_rad_s (N,) for all time, worked out once; None where no ball spins in it."""
        self._fixed = self._against(omega_rad_s)
        return self if np.any(self._fixed[1] * self._share) else None

    def part(self, which):
        """That of a slice of the balls."""
        part = copy(self)
        part._spin, part._share, part._surface = self._spin[:, which], self._share[which], self._surface[which]
        if self._fixed is not None:
            against, surface = self._fixed
            part._fixed = tuple(a[which] for a in against), surface[which]
        return part

    def _against(self, omega_rad_s):
        """Spin against the air, as components, and what it adds to the divisor (N,), m/s."""
        x, y, z = self._spin
        z = z - omega_rad_s
        return (x, y, z), self._surface * np.sqrt(x * x + y * y + z * z)

    def at(self, omega_rad_s, wind, speed):
        """Acceleration (3, N) per density, m4/(kg s2), where the air goes past at (3, N), which is -u, at speeds (N,)."""
        (x, y, z), surface = self._fixed or self._against(omega_rad_s)
        u, v, w = wind
        share = _FLAT * speed
        share += surface
        np.maximum(share, _LEAST, out=share)  # where nothing moves there is no lift either
        np.divide(speed, share, out=share)
        share *= self._share
        out = np.empty_like(wind)
        for k, (a, b, c, d) in enumerate(((z, v, y, w), (x, w, z, u), (y, u, x, v))):
            np.multiply(a, b, out=out[k])
            out[k] -= c * d
        out *= share
        return out
