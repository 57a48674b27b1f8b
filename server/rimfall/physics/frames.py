"""Places, the rotating frame and the inertial frame, and the ways between them. Frame algebra lives nowhere else.

Conventions (design, section 1): z is along the spin vector, both frames share the origin on the axis, and they coincide
at time 0. A place is (along, height, axial) in metres: arc length spinward on the deck, height toward the axis, distance
along z. Local directions at a place are (spinward, up, axial), right-handed in that order. Arrays end in an axis of
length 3; leading axes broadcast. Angles are in radians unless a name says `_deg`.
"""

import numpy as np


def place_to_rotating(radius_m, place):
    """Places (..., 3) on a deck of radius_m -> rotating-frame positions (..., 3), metres."""
    place = np.asarray(place, dtype=float)
    azimuth = place[..., 0] / radius_m
    rho = radius_m - place[..., 1]
    return _vectors(rho * np.cos(azimuth), rho * np.sin(azimuth), place[..., 2])


def _vectors(x, y, z):
    """Vectors (..., 3) of their parts: x and y (...), of one shape, and z, which spreads to it. np.stack would take four times as long."""
    out = np.empty((*x.shape, 3))
    out[..., 0], out[..., 1], out[..., 2] = x, y, z
    return out


def height_of(radius_m, position):
    """Height (...) above the deck, metres, of positions (..., 3) in either frame."""
    return radius_m - np.hypot(position[..., 0], position[..., 1])


def turn(vectors, angle_rad):
    """Vectors (..., 3) turned about z by angle_rad (...), anticlockwise seen from +z."""
    c, s = np.cos(angle_rad), np.sin(angle_rad)
    vectors = np.asarray(vectors, dtype=float)
    x, y = vectors[..., 0], vectors[..., 1]
    return _vectors(c * x - s * y, s * x + c * y, vectors[..., 2])


def spin_cross(omega_rad_s, vectors):
    """Omega x v for a spin of omega_rad_s (...) about z and vectors (..., 3)."""
    return _vectors(-omega_rad_s * vectors[..., 1], omega_rad_s * vectors[..., 0], 0.0)


def cross(a, b):
    """a x b of vectors (..., 3). np.cross would take five times as long."""
    x, y, z = a[..., 0], a[..., 1], a[..., 2]
    u, v, w = b[..., 0], b[..., 1], b[..., 2]
    return _vectors(y * w - z * v, z * u - x * w, x * v - y * u)


def rotating_to_inertial(position, velocity, angle_rad, omega_rad_s):
    """Rotating-frame position and velocity (..., 3) -> inertial position and velocity (..., 3).

    angle_rad and omega_rad_s (...) are the frame's angle and rate at that instant.
    """
    carried = velocity + spin_cross(omega_rad_s, position)
    return turn(position, angle_rad), turn(carried, angle_rad)


def inertial_to_rotating(position, velocity, angle_rad, omega_rad_s):
    """The inverse of `rotating_to_inertial`."""
    position = turn(position, -np.asarray(angle_rad))
    return position, turn(velocity, -np.asarray(angle_rad)) - spin_cross(omega_rad_s, position)


def local_axes(position):
    """Unit vectors (..., 3, 3), rows spinward, up, axial, at positions (..., 3), in the frame the positions are in.

    On the axis itself, where "up" has no direction, the rows are those of azimuth 0.
    """
    return axes_at(np.arctan2(position[..., 1], position[..., 0]))


def axes_at(azimuth_rad):
    """Unit vectors (..., 3, 3), rows spinward, up, axial, at azimuths (...)."""
    c, s = np.cos(azimuth_rad), np.sin(azimuth_rad)
    axes = np.zeros((*c.shape, 3, 3))
    axes[..., 0, 0], axes[..., 0, 1] = -s, c
    axes[..., 1, 0], axes[..., 1, 1] = -c, -s
    axes[..., 2, 2] = 1.0
    return axes


def aimed(speed_m_s, heading_deg, elevation_deg):
    """Speed, heading (0 spinward, 90 axial) and elevation -> (spinward, up, axial) velocity (3,), m/s."""
    level = speed_m_s * cos_deg(elevation_deg)
    return np.array([level * cos_deg(heading_deg), speed_m_s * sin_deg(elevation_deg), level * sin_deg(heading_deg)])


def cos_deg(angle_deg):
    """Cosine of degrees, exact at the quarter turns, so that a level throw is level and a square one square."""
    return sin_deg(angle_deg + 90.0)


def sin_deg(angle_deg):
    """Sine of degrees, exact at the quarter turns."""
    quarter, rest = divmod(angle_deg, 90.0)
    if rest == 0.0:
        return (0.0, 1.0, 0.0, -1.0)[int(quarter) % 4]
    return float(np.sin(np.radians(angle_deg)))


def azimuth_steps(position):
    """Change of azimuth (n - 1) from each of the positions (n, 3) to the next, within +- pi, radians."""
    a, b = position[:-1], position[1:]
    return np.arctan2(a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0], a[:, 0] * b[:, 0] + a[:, 1] * b[:, 1])
