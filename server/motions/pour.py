"""Pours: a steady stream from a round lip, which thins as it speeds up, breaks into drops, or drips from the start.

Unbroken, a parcel of the stream flies freely without drag; the broken drops fly with the drag of spheres. The laws of
breakup and drop size, and their sources, are in `physics/liquids.py`. Every parcel follows the first one's path in the
turning frame, later: at steady spin that is exact.
"""

from dataclasses import replace

import numpy as np

from ..physics import frames, liquids
from ..physics.bodies import Body
from ..physics.forces import Medium
from .flight import fly
from .journey import Start
from .plan import Plan, Stream
from .throw import NO_GRAVITY, place_of

_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(8)
_WIDEST = 10.0  # a stream that all but stops is drawn no wider than this many lips


def plan(setting, motion):
    """Plan of a `pour` of the scene document (attributes as its fields are named)."""
    liquid = next(x for x in liquids.LIQUIDS if x.name == motion.liquid)
    lip_m, flow_m3_s = motion.lip_diameter_mm * 1e-3, motion.flow_ml_s * 1e-6
    speed = liquids.lip_speed_m_s(flow_m3_s, lip_m)
    number = liquids.weber(liquid, speed, lip_m)
    drips = number < liquids.DRIPS_BELOW_WEBER
    velocity = frames.aimed(0.0 if drips else speed, motion.heading_deg, motion.elevation_deg)
    gravity = setting.gravity_m_s2(motion.start_s, place_of(motion), motion.place.floor)
    shape = (_drip if drips else _stream)(setting, motion, liquid, lip_m, speed, velocity, gravity)
    body, course, companion, broke_s, broke_m, drop_m = shape
    stream = Stream(
        lip_m,
        speed,
        "drips" if drips else "stream",
        number,
        liquids.ohnesorge(liquid, lip_m),
        broke_s,
        broke_m,
        drop_m,
        None if drop_m is None else liquids.drop_volume_m3(drop_m) / flow_m3_s,
        motion.start_s,
        motion.start_s + motion.duration_s,
    )
    return Plan(
        motion.start_s,
        place_of(motion),
        tuple(velocity),
        body,
        course,
        companion,
        None if gravity else NO_GRAVITY,
        stream,
        motion.place.floor,
    )


def diameters_m(stream, time_s, speed_m_s):
    """Diameter (n,) of the stream, then of the drop, of the first parcel at times (n,) where its speed is speed_m_s (n,)."""
    thin = thinned_m(stream.lip_m, stream.speed_m_s, speed_m_s)
    if stream.drop_diameter_m is None:
        return thin if stream.regime == "stream" else np.full_like(thin, stream.lip_m)
    born_s = stream.first_leaves_s if stream.breakup_s is None else stream.breakup_s
    return np.where(time_s >= born_s, stream.drop_diameter_m, thin)


def thinned_m(lip_m, leaves_m_s, speed_m_s):
    """Diameter of a stream where its speed is speed_m_s: the same flow through a thinner thread."""
    return lip_m * np.sqrt(leaves_m_s / np.maximum(speed_m_s, leaves_m_s / _WIDEST**2))


def _drop(liquid, diameter_m):
    return Body(liquid.density_kg_m3 * liquids.drop_volume_m3(diameter_m), diameter_m)


def _drip(setting, motion, liquid, lip_m, _speed, velocity, gravity):
    """Drops that fall from the lip one by one; without gravity one clings there."""
    place, start_s = place_of(motion), motion.start_s
    weight = setting.weight_m_s2(start_s, place, motion.place.floor)
    drop_m = None
    if weight > 0:
        drop_m = min(liquids.dripping_drop_m(liquid, weight, lip_m), setting.habitat.radius_m / 2)
    body = _drop(liquid, drop_m or lip_m)
    course = Start(setting.release(body, start_s, place, velocity, motion.place.floor), sticks=True)
    flat = Start(setting.flat_release(body, start_s, place, velocity, gravity), sticks=True) if gravity else None
    return body, course, flat, None, None, drop_m


def _stream(setting, motion, liquid, lip_m, speed, velocity, gravity):
    """A stream that flies whole as far as it holds together, and then as drops."""
    place, start_s = place_of(motion), motion.start_s
    thread = Body(1.0, 0.0)
    length = liquids.breakup_length_m(liquid, speed, lip_m)
    vacuum = Medium(setting.medium.spin, None, setting.medium.deck_radius_m)
    release = setting.release(thread, start_s, place, velocity, motion.place.floor)
    opening = fly(vacuum, [release])[0]
    course, broke_s, drop_m = _broken(setting, liquid, opening, length, speed, lip_m)
    flat = None
    if gravity:
        level = fly(vacuum, [setting.flat_release(thread, start_s, place, velocity, gravity)])[0]
        flat = _broken(setting, liquid, level, length, speed, lip_m)[0]
    body = thread if drop_m is None else _drop(liquid, drop_m)
    return body, course, flat, broke_s, None if broke_s is None else length, drop_m


def _broken(setting, liquid, opening, length_m, speed, lip_m):
    """Cut a stream where it breaks -> its course, when the first parcel breaks, the drop's diameter (None: lands whole)."""
    turns = opening.release.room.turns
    broke_s = _time_at_length(setting, opening.path, turns, length_m)
    if broke_s is None:
        return Start(None, sticks=True, opening=opening), None, None
    here = np.array([broke_s])
    position, velocity = opening.path.at(here)
    there = float(_speeds(setting, opening.path, turns, here)[0])
    drop_m = min(liquids.DROP_PER_STREAM * float(thinned_m(lip_m, speed, there)), setting.habitat.radius_m / 2)
    first = opening.release
    drop = _drop(liquid, drop_m)
    # A drop turns with the air it breaks in, so that nothing lifts it.
    spin = np.array([0.0, 0.0, setting.omega_rad_s(broke_s) if turns and not first.room.still_air else 0.0])
    release = replace(
        first, body=drop, time_s=broke_s, position_m=position[0], velocity_m_s=velocity[0], spin_rad_s=spin
    )
    return Start(release, sticks=True, opening=opening.until(broke_s)), broke_s, drop_m


def _speeds(setting, path, turns, time_s):
    """Speed (n,) of a parcel relative to its room at times (n,)."""
    position, velocity = path.at(time_s)
    if turns:
        spin = setting.habitat.spin
        _, velocity = frames.inertial_to_rotating(position, velocity, spin.angle_rad(time_s), spin.rate_rad_s(time_s))
    return np.linalg.norm(velocity, axis=1)


def _time_at_length(setting, path, turns, length_m):
    """When the first parcel has gone length_m along its path, or None if it ends sooner (Gauss-Legendre, then Newton)."""
    edges = np.linspace(path.begin_s, path.end_s, 65)
    half = np.diff(edges) / 2
    times = (edges[:-1] + half)[:, None] + half[:, None] * _NODES
    parts = half * (_speeds(setting, path, turns, times.ravel()).reshape(times.shape) @ _WEIGHTS)
    gone = np.concatenate([[0.0], np.cumsum(parts)])
    if not gone[-1] > length_m:
        return None
    k = int(np.searchsorted(gone, length_m, "right")) - 1
    low, t = edges[k], edges[k] + (edges[k + 1] - edges[k]) * (length_m - gone[k]) / parts[k]
    for _ in range(8):
        inside = low + (t - low) / 2 * (1 + _NODES)
        excess = gone[k] + (t - low) / 2 * (_speeds(setting, path, turns, inside) @ _WEIGHTS) - length_m
        t -= excess / max(float(_speeds(setting, path, turns, np.array([t]))[0]), 1e-9)
    return float(np.clip(t, edges[k], edges[k + 1]))
