"""The acceleration of many bodies in air that turns, in the inertial frame, for `integrate.py`. Arrays are (3, N) inside."""

from dataclasses import dataclass

import numpy as np

from .air import Air
from .bodies import SPHERE, Bodies
from .drag import sphere_cd_re
from .spin import Spin


@dataclass(frozen=True)
class Medium:
    """The air, and how it turns.

    spin: of the habitat. air: None in vacuum. deck_radius_m: where the air has its stated pressure.
    """

    spin: Spin
    air: Air | None
    deck_radius_m: float


class Force:
    """Drag of the turning air, and a pull, on N bodies whose elapsed time 0 is start_s (N,).

    turns (N,): 1 for a body in the turning habitat, 0 for one over still ground, where the air is still and of one
    density. pull_m_s2 (3, N): a constant acceleration in the body's frame, turning with it where that turns.
    Drag: m a = -(pi/8) d^2 rho Cd |u| u, u the velocity relative to the air, which turns with the spin of that instant.
    """

    def __init__(self, medium: Medium, bodies: Bodies, start_s, turns, pull_m_s2):
        self._medium, self._bodies, self._start_s = medium, bodies, start_s
        self._turns, self._pull = turns, pull_m_s2
        self._turned_pull = bool(np.any(pull_m_s2[:2, turns != 0]))
        self._any_pull = bool(np.any(pull_m_s2))
        self._spheres = np.isnan(bodies.drag_coefficient)
        self._some_spheres, self._all_spheres = bool(np.any(self._spheres)), bool(np.all(self._spheres))
        if medium.air is not None:
            density, viscosity = medium.air.deck_density_kg_m3, medium.air.viscosity_pa_s
            area_per_mass = np.pi / 8.0 * bodies.diameter_m**2 / bodies.mass_kg
            # Negative: drag is against the motion, and a sign taken here is not taken at every step.
            self._constant = -area_per_mass * density * np.where(self._spheres, 0.0, bodies.drag_coefficient)
            self._re_per = bodies.diameter_m * density / viscosity
            self._stokes = -np.pi / 8.0 * bodies.diameter_m * viscosity / bodies.mass_kg
            self._steady = self._turning(medium.spin.rates_rad_s[0]) if medium.spin.steady else None

    @property
    def coasts(self):
        """Whether every body's inertial path is a parabola: no air, and no pull that the turning turns."""
        return self._medium.air is None and not (self._turned_pull and np.any(self._medium.spin.rates_rad_s))

    @property
    def pull_m_s2(self):
        """The pull (3, N), m/s2."""
        return self._pull

    def take(self, which):
        """The force on those of the index or mask."""
        return Force(
            self._medium, self._bodies.take(which), self._start_s[which], self._turns[which], self._pull[:, which]
        )

    def at(self, elapsed_s, position, velocity):
        """Acceleration (3, N), m/s2, at elapsed_s (a number or (N,)) of inertial position and velocity (3, N)."""
        out = np.empty_like(position)
        if self._medium.air is None:
            out[:] = 0.0
        else:
            self._drag(elapsed_s, position, velocity, out)
        if self._any_pull:
            self._add_pull(elapsed_s, out)
        return out

    def _turning(self, rate_rad_s):
        """Spin (N,), and what it does to the air: the exponent of its density is share (rho^2 - R^2)."""
        omega = rate_rad_s * self._turns
        share = omega * omega * self._medium.air.thinning_s2_m2
        return omega, -omega, share, -share * self._medium.deck_radius_m**2

    def _drag(self, elapsed_s, position, velocity, out):
        turning = self._steady
        if turning is None:
            turning = self._turning(self._medium.spin.rate_rad_s(self._start_s + elapsed_s))
        omega, back, share, offset = turning
        x, y, _ = position
        np.multiply(y, omega, out=out[0])
        np.multiply(x, back, out=out[1])
        out[2] = 0.0
        out += velocity
        squares = out * out
        speed = np.sqrt(squares[0] + squares[1] + squares[2])
        # Density over the deck's, carried on smoothly past the hull, where a step may end.
        thin = x * x
        thin += y * y
        thin *= share
        thin += offset
        speed *= np.exp(thin, out=thin)
        out *= self._held_back(speed)

    def _held_back(self, thinned_speed):
        """The rate (N,), 1/s, of change of the velocity, below 0; its argument is the speed times density over deck's."""
        if not self._some_spheres:
            return self._constant * thinned_speed
        sphere = self._stokes * sphere_cd_re(thinned_speed * self._re_per)
        return sphere if self._all_spheres else np.where(self._spheres, sphere, self._constant * thinned_speed)

    def _add_pull(self, elapsed_s, out):
        if not self._turned_pull:
            out += self._pull
            return
        px, py, pz = self._pull
        angle = self._medium.spin.angle_rad(self._start_s + elapsed_s) * self._turns
        c, s = np.cos(angle), np.sin(angle)
        out[0] += c * px - s * py
        out[1] += s * px + c * py
        out[2] += pz


def settling_rate_1_s(medium, body, pull_m_s2):
    """The rate, 1/s, at which the deck's air stops a body that has come to its settling speed: how stiff its motion is.

    Stokes drag, and the square-law drag at the speed where it carries the body under the spin's gravity and pull_m_s2.
    """
    if medium.air is None:
        return 0.0
    coefficient = 0.5 if body.drag == SPHERE else body.drag
    square = np.pi / 8.0 * medium.air.deck_density_kg_m3 * coefficient * body.diameter_m**2 / body.mass_kg
    gravity = float(np.max(medium.spin.rates_rad_s**2)) * medium.deck_radius_m + pull_m_s2
    slow = 3.0 * np.pi * medium.air.viscosity_pa_s * body.diameter_m / body.mass_kg if body.drag == SPHERE else 0.0
    return slow + float(np.sqrt(gravity * square))
