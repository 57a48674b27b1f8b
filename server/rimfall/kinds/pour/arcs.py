"""When a body has gone a given length along its path, as its room sees it."""

import numpy as np

from ...physics import frames

_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(8)


def speeds_m_s(setting, path, turns, time_s):
    """Speed (n,) of a parcel relative to its room at times (n,)."""
    position, velocity = path.at(time_s)
    if turns:
        spin = setting.habitat.spin
        _, velocity = frames.inertial_to_rotating(position, velocity, spin.angle_rad(time_s), spin.rate_rad_s(time_s))
    return np.linalg.norm(velocity, axis=1)


def time_at_length(setting, path, turns, length_m):
    """When the parcel has gone length_m along its path, or None if it ends sooner (Gauss-Legendre, then Newton)."""
    edges = np.linspace(path.begin_s, path.end_s, 65)
    half = np.diff(edges) / 2
    times = (edges[:-1] + half)[:, None] + half[:, None] * _NODES
    parts = half * (speeds_m_s(setting, path, turns, times.ravel()).reshape(times.shape) @ _WEIGHTS)
    gone = np.concatenate([[0.0], np.cumsum(parts)])
    if not gone[-1] > length_m:
        return None
    k = int(np.searchsorted(gone, length_m, "right")) - 1
    low, t = edges[k], edges[k] + (edges[k + 1] - edges[k]) * (length_m - gone[k]) / parts[k]
    for _ in range(8):
        inside = low + (t - low) / 2 * (1 + _NODES)
        excess = gone[k] + (t - low) / 2 * (speeds_m_s(setting, path, turns, inside) @ _WEIGHTS) - length_m
        t -= excess / max(float(speeds_m_s(setting, path, turns, np.array([t]))[0]), 1e-9)
    return float(np.clip(t, edges[k], edges[k + 1]))
