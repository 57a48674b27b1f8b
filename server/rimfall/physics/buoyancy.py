"""What the air does to a body it is not blown past by: it bears it up, and has to be moved out of its way.

Source: the force on a sphere in an ideal fluid of any flow (Auton, Hunt & Prud'Homme, J. Fluid Mech. 197, 241 (1988); the same
terms in Maxey & Riley, Phys. Fluids 26, 883 (1983), whose history force is left out). With v the body's velocity, u the air's, M
the air displaced, C = 1/2 the added mass of a sphere (Lamb, Hydrodynamics, art. 92) and its lift in air that turns:
    (m + C M) dv/dt = drag + m p + M ((1 + C) Du/Dt - p) + C M (u - v) x curl u
p is the room's pull, which the air's pressure balances as it does the air's own acceleration: Du/Dt = Omega x (Omega x r)
+ Omega' x r of air that turns with the habitat's spin of that instant, 0 where it stands. So a body of the air's own density
stays with the air, and in the turning frame the added mass resists what changes its velocity against the air alone.
The air is of the density at the body's centre: for bodies small against R_s T / gravity, some kilometres.
"""

from copy import copy

import numpy as np

ADDED_MASS = 0.5  # of the displaced air, a sphere's


class Buoyancy:
    """Of N bodies, whose displaced_m3 (N,) is 0 where the air's weight is left out.

    At the deck's density: share (N,), the displaced air over the body's mass; added_mass_factor (N,), the mass that is moved over the body's.
    """

    def __init__(self, bodies, medium):
        air = medium.air
        self.share = air.deck_density_kg_m3 * bodies.displaced_m3 / bodies.mass_kg
        self.added_mass_factor = 1.0 + ADDED_MASS * self.share
        self._thinning, self._deck2 = air.thinning_s2_m2, medium.deck_radius_m**2

    def part(self, which):
        """That of a slice of the bodies."""
        part = copy(self)
        part.share, part.added_mass_factor = self.share[which], self.added_mass_factor[which]
        return part

    def at(self, forced, pull, turning, position, velocity, slowing=None):
        """Inertial acceleration (3, N), m/s2, of bodies that drag and lift alone would give `forced` (3, N).

        turning: omega and omega' of the air, numbers or (N,), 0 where it stands. pull, position (3, N); velocity (3, N):
        against the air, of no account where that stands. All along the same axes, fixed or turning. slowing: a `drag.Slowing` of
        drag alone, where given; its rates are lessened to those of the mass that is moved.
        """
        omega, change = turning
        x, y = position[:2]
        square = omega * omega
        share = self.share * np.exp(square * self._thinning * (x * x + y * y - self._deck2))
        out = forced + (1.0 - share) * pull
        borne, lifted = (1.0 + ADDED_MASS) * share, 2.0 * ADDED_MASS * omega * share
        out[0] -= borne * (square * x + change * y) + lifted * velocity[1]
        out[1] += borne * (change * x - square * y) + lifted * velocity[0]
        moved = 1.0 + ADDED_MASS * share
        if slowing is not None:
            slowing.times(1.0 / moved)
        return out / moved


def of_bodies(bodies, medium):
    """The Buoyancy of Bodies in a medium; None in vacuum, or where it is left out of all."""
    if medium.air is None or bodies.displaced_m3 is None or not np.any(bodies.displaced_m3):
        return None
    return Buoyancy(bodies, medium)
