"""From the document's habitat to the one that is computed with: units, defaults of floors, the changing spin."""

import math

from ..physics import habitat, shapes, spin
from ..physics.constants import RPM_RAD_S

_LEAST_RPM = 1e-12


def of_part(part):
    """The habitat of a document's habitat part."""
    turning = spin.ramped(_rate_rad_s(part.spin_rpm), [(p.time_s, _rate_rad_s(p.spin_rpm)) for p in part.spin_ramp])
    if part.shape == "turntable":
        return shapes.Turntable(part.radius_m, turning, part.outside_gravity_m_s2)
    ship = part.radius_m, turning, part.axial_thrust_m_s2
    if part.shape == "torus":
        return shapes.Torus(*ship, part.tube_radius_m)
    if part.shape == "sphere":
        return shapes.Sphere(*ship, part.hub_radius_m)
    if part.shape == "cylinder":
        return habitat.Habitat(*ship, part.width_m, part.ceiling_m, part.hub_radius_m)
    return shapes.Craft(*ship, tuple(_floor(part, i) for i in range(len(part.floors))))


def _rate_rad_s(spin_rpm):
    """A spin in rad/s; one of less than a turn in two million years is none, for its inverse is no number."""
    return spin_rpm * RPM_RAD_S if spin_rpm >= _LEAST_RPM else 0.0


def _floor(part, i):
    """Floor i: its own radius or the habitat's, its own azimuth or an even share of the turn; without a name people count from one."""
    floor = part.floors[i]
    azimuth_deg = 360.0 * i / len(part.floors) if floor.azimuth_deg is None else floor.azimuth_deg
    radius_m = part.radius_m if floor.radius_m is None else floor.radius_m
    name = floor.name or f"Floor {i + 1}"
    return shapes.Floor(name, radius_m, math.radians(azimuth_deg), floor.length_m, floor.width_m, floor.ceiling_m)
