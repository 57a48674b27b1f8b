"""The surface of a liquid at rest in what turns: level across the local apparent gravity everywhere.

With Omega along z and a constant pull p along z (m/s2, below 0 where it pulls toward -z) the liquid's surface keeps
omega^2 rho^2 / 2 + p z constant: a cylinder about the axis without a pull, a paraboloid with one. Any text on fluids in
rigid-body rotation gives it for a pail on a turntable, z = omega^2 rho^2 / (2 g). Surface tension and the liquid's own motion
are left out.
"""

import math

import numpy as np

_HALVINGS = 60


def apparent_m_s2(omega_rad_s, pull_m_s2, position):
    """What a thing at rest at positions (..., 3) of the turning frame feels (..., 3), m/s2: centrifugal, and a pull (3,)."""
    return omega_rad_s**2 * np.asarray(position) * np.array([1.0, 1.0, 0.0]) + np.asarray(pull_m_s2, dtype=float)


def tilt_rad(apparent, up):
    """Angle (...) between the normal of the surface, against an apparent gravity (..., 3), and a direction `up` (3,), rad; 0
    where nothing is felt."""
    size = np.linalg.norm(apparent, axis=-1)
    with np.errstate(invalid="ignore", divide="ignore"):
        cosine = -(np.asarray(apparent) @ np.asarray(up)) / size
    return np.where(size > 0, np.arccos(np.clip(np.nan_to_num(cosine, nan=1.0), -1.0, 1.0)), 0.0)


def rho_m(omega_rad_s, pull_m_s2, through_rho_m, along_z_m):
    """Distance (...) from the axis of the surface that passes through_rho_m, metres, along_z_m (...) further along z; nan where
    it has none. Raises ValueError at no spin."""
    if not omega_rad_s:
        raise ValueError("without spin the surface has no distance from the axis")
    squared = through_rho_m**2 - 2.0 * pull_m_s2 * np.asarray(along_z_m, dtype=float) / omega_rad_s**2
    return np.sqrt(np.where(squared >= 0, squared, np.nan))


def rise_m(omega_rad_s, pull_m_s2, rho):
    """How much higher along z the surface stands at rho (...) than at the axis, metres, where a pull draws it toward -z.

    Raises ValueError without such a pull.
    """
    if not pull_m_s2 < 0:
        raise ValueError("a surface rises from the axis only where something pulls back along z")
    return omega_rad_s**2 * np.asarray(rho, dtype=float) ** 2 / (-2.0 * pull_m_s2)


def held_m3(level_m, radius_m, slope):
    """Volume, m3, under a plane surface in an upright round cup: level_m is its height over the bottom at the cup's axis, and
    `slope` its rise over its run. Where it reaches the bottom the bottom is dry beyond."""
    if slope * radius_m <= abs(level_m):
        return math.pi * radius_m**2 * max(level_m, 0.0)
    # Over the chords x from where the surface meets the bottom: 2 sqrt(r^2 - x^2) (level + slope x).
    x = -level_m / slope
    segment = radius_m**2 * math.acos(x / radius_m) - x * math.sqrt(radius_m**2 - x**2)
    moment = 2.0 / 3.0 * (radius_m**2 - x**2) ** 1.5
    return level_m * segment + slope * moment


def brim_m3(depth_m, radius_m, tilt):
    """Most that a round cup holds at rest, m3, its surface tilted by `tilt` (rad) from the cup's own level."""
    if tilt >= math.pi / 2:
        return 0.0
    slope = math.tan(tilt)
    return held_m3(depth_m - slope * radius_m, radius_m, slope)


def level_m(volume_m3, radius_m, tilt):
    """Height over the bottom, at the cup's axis, of the surface of a volume at rest in a round cup, metres. It is below 0 where
    the middle of the bottom is dry. A tilt (rad) of a right angle or more holds nothing: 0."""
    if tilt >= math.pi / 2 or volume_m3 <= 0:
        return 0.0
    slope = math.tan(tilt)
    low, high = -slope * radius_m, volume_m3 / (math.pi * radius_m**2) + slope * radius_m
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if held_m3(middle, radius_m, slope) < volume_m3 else (low, middle)
    return (low + high) / 2
