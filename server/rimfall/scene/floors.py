"""Flat floors in an answer: where they are, what they weigh, and how far "down" leans along them.

On a flat floor apparent gravity points away from the axis, not along the floor's normal: at `along` from its middle it leans
by atan(along/R) toward that end (design, section 1).
"""

import numpy as np

from ..physics.constants import G0_M_S2

_LEVELS = 9  # places along a floor at which its lean is told


def of_habitat(habitat, omega_rad_s):
    """The floors of a habitat as plain data; none where the ground is round."""
    return [_floor(habitat, i, omega_rad_s) for i in range(len(habitat.floors))]


def _floor(habitat, i, omega):
    floor = habitat.floors[i]
    along = np.linspace(-floor.length_m / 2, floor.length_m / 2, _LEVELS)
    rho = np.hypot(along, floor.radius_m)
    top = None if floor.ceiling_m is None else habitat.corners(i, floor.ceiling_m).tolist()
    return {
        "name": floor.name,
        "floor": i,
        "corners_m": habitat.corners(i).tolist(),
        "ceiling_corners_m": top,
        "radius_m": floor.radius_m,
        "azimuth_deg": float(np.degrees(floor.azimuth_rad)),
        "gravity_g": omega**2 * floor.radius_m / G0_M_S2,
        "rim_speed_m_s": abs(omega) * floor.radius_m,
        "levels": [
            {
                "along_m": float(a),
                "lean_deg": float(np.degrees(np.arctan2(a, floor.radius_m))),
                "gravity_g": float(omega**2 * r / G0_M_S2),
            }
            for a, r in zip(along, rho, strict=True)
        ],
    }
