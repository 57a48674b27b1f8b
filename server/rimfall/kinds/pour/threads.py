"""Parcels of a pour that are followed one after another, unbroken, to find how large the drops are and where the stream is."""

from dataclasses import dataclass

import numpy as np

from ...motions import trajectory_batch
from ...motions.flight import Release, fly
from ...physics import frames, liquids
from ...physics.bodies import Body
from ...physics.forces import Medium
from ..motion import place_of

_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(8)
_THREADS = 64  # parcels followed


@dataclass(frozen=True)
class Threads:
    """Parcels of the stream followed until each breaks or ends: leaves_s (K,), streams (K,) whether a stream left then, whole_s
    (K,) how long it is whole, breaks (K,); paths, a TrajectoryBatch of all; speed_m_s (K,) at the lip; drop_m (K,): diameter of its drop,
    inf where none forms."""

    leaves_s: np.ndarray
    streams: np.ndarray
    whole_s: np.ndarray
    breaks: np.ndarray
    paths: trajectory_batch.TrajectoryBatch
    speed_m_s: np.ndarray
    drop_m: np.ndarray


def followed(setting, motion, flow, liquid, dripping_m):
    """Threads of a `pour` of the scene document; dripping_m as in `batch.of_pour`."""
    since_s = flow.marks_s(_THREADS)
    leaves_s = motion.start_s + since_s
    speed, streams = flow.speed_m_s(since_s), flow.streams(liquid, since_s)
    bodies = [Body(1.0, 0.0)] * len(since_s)
    leaving = releases(setting, motion, bodies, leaves_s, flow.velocity_m_s(liquid, since_s))
    flown = fly(without_air(setting.medium), leaving)
    whole_s, breaks, drop_m = [], [], []
    for one, fast, streaming in zip(flown, speed, streams, strict=True):
        broke_s = None
        if streaming:
            broke_s = time_at_length(setting, one.path, True, liquids.breakup_length_m(liquid, fast, flow.lip_m))
        end_s = one.path.end_s if broke_s is None else broke_s
        whole_s.append(end_s - one.path.begin_s)
        breaks.append(broke_s is not None)
        drop_m.append(_thread_drop_m(setting, flow, one, end_s, fast) if streaming else dripping_m(one.path.begin_s))
    paths = trajectory_batch.of_paths([[one.path] for one in flown])
    drop_m = np.array([np.inf if d is None else d for d in drop_m])
    return Threads(leaves_s, streams, np.array(whole_s), np.array(breaks), paths, speed, drop_m)


def _thread_drop_m(setting, flow, flown, time_s, leaves_m_s):
    """Diameter of the drop that a thread makes where it is at time_s."""
    position, velocity = flown.path.at(np.array([time_s]))
    spin = setting.habitat.spin
    velocity = frames.inertial_to_rotating(position, velocity, spin.angle_rad(time_s), spin.rate_rad_s(time_s))[1]
    thin = liquids.thinned_m(flow.lip_m, leaves_m_s, float(np.linalg.norm(velocity)))
    return min(liquids.DROP_PER_STREAM * thin, setting.habitat.radius_m / 2)


def releases(setting, motion, bodies, time_s, velocity):
    """Releases from a motion's place of bodies at times (n,) of the scene, velocities (n, 3) along the local directions."""
    chart, spin, place = setting.habitat.chart(motion.place.floor), setting.habitat.spin, place_of(motion)
    position, moving = chart.position(np.array(place)), velocity @ chart.axes_at(place)
    states = frames.rotating_to_inertial(position, moving, spin.angle_rad(time_s), spin.rate_rad_s(time_s))
    room = setting.room(motion.place.floor)
    return [
        Release(room, body, t, x, v, setting.limit_s(t))
        for body, t, x, v in zip(bodies, time_s.tolist(), *states, strict=True)
    ]


def without_air(medium):
    """The same medium with no air: what an unbroken stream flies through."""
    return Medium(medium.spin, None, medium.deck_radius_m)


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
