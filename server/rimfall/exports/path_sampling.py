"""A trace's things at the times of a file: one body, all drops of a pour, the unbroken part of a stream, a drawn path.

Positions, velocities and accelerations are in the turning frame, in its own axes, metres and seconds. A body waits where it
will be let go, or a drop where it will be born, and lies where it ended: there its velocity and acceleration are 0. What is there at
time 0 is there before it too, at rest aboard.
"""

from dataclasses import dataclass

import numpy as np

from ..physics.liquids import thinned_m

_AT_ONCE = 20_000  # times read in one go: their polynomials then stay within a few tens of megabytes
STREAM_POINTS = 48
_FINE = 1_024  # times of leaving, among which the oldest parcel that is still whole is looked for


@dataclass(frozen=True)
class FlyingSamples:
    """The drops of a pour while they are there, M instants in all, by time and then by birth: sample (M,), the number of the time; drop
    (M,), the number by birth; position_m, velocity_m_s, acceleration_m_s2 (M, 3)."""

    sample: np.ndarray
    drop: np.ndarray
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    acceleration_m_s2: np.ndarray


@dataclass(frozen=True)
class MotionSamples:
    """position_m, velocity_m_s, acceleration_m_s2 (..., 3) and alive (...), at times and bodies (...)."""

    position_m: np.ndarray
    velocity_m_s: np.ndarray
    acceleration_m_s2: np.ndarray
    alive: np.ndarray


def body_samples(setting, traced, time_s):
    """MotionSamples of a motion's own body at times (T,)."""
    start_s = traced.plan.start_s
    return _late(
        setting, traced.track.path, time_s, np.zeros(1), start_s, -np.inf if start_s <= 0 else start_s, np.inf
    ).only(0)


def drop_samples(setting, traced, time_s):
    """MotionSamples (T, N) of a pour's drops, in order of birth, at times (T,)."""
    stream, track = traced.plan.stream, traced.track
    if stream.batch is not None:
        return _own(setting, stream.batch, time_s)
    born_s = _first_born_s(stream)
    return _late(setting, track.path, time_s, _late_s(stream), born_s, born_s, track.ends_s)


def flying_count(traced, time_s):
    """How many instants `flying_drops` has at times (T,), rising."""
    first, last = _span(traced, time_s)
    return int(np.sum(np.maximum(last - first, 0)))


def flying_drops(setting, traced, time_s):
    """FlyingSamples of a pour at times (T,), rising."""
    first, last = _span(traced, time_s)
    count = np.maximum(last - first, 0)
    drop = np.repeat(np.arange(len(count)), count)
    sample = first[drop] + np.arange(len(drop)) - (np.cumsum(count) - count)[drop]
    order = np.lexsort((drop, sample))
    drop, sample = drop[order], sample[order]
    stream, path, times = traced.plan.stream, traced.track.path, time_s[sample]
    if stream.batch is not None:
        return FlyingSamples(
            sample, drop, *stream.batch.paths.turning(setting.habitat.spin, stream.batch.drops[drop], times)
        )
    local = times - _late_s(stream)[drop]
    place, velocity, acceleration = at(setting, path, np.minimum(local, path.end_s))
    lies = (local > path.end_s)[:, None]
    return FlyingSamples(sample, drop, place, np.where(lies, 0.0, velocity), np.where(lies, 0.0, acceleration))


def _span(traced, time_s):
    """Numbers (N,) of the first time at which each drop is there, and of the first after it."""
    return np.searchsorted(time_s, births_s(traced), "left"), np.searchsorted(time_s, ends_s(traced), "right")


def ends_s(traced):
    """When each of a pour's drops (N,) ends."""
    stream = traced.plan.stream
    if stream.batch is not None:
        return stream.batch.ends_s[stream.batch.drops]
    return traced.track.ends_s + _late_s(stream)


def births_s(traced):
    """When each of a pour's drops (N,) comes to be."""
    stream = traced.plan.stream
    if stream.batch is not None:
        return stream.batch.born_s[stream.batch.drops]
    return _first_born_s(stream) + _late_s(stream)


def diameters_m(traced):
    """Diameter of each of a pour's drops (N,)."""
    stream = traced.plan.stream
    if stream.batch is not None:
        return stream.batch.diameter_m[stream.batch.drops]
    return np.full(stream.drop_count, stream.drop_diameter_m or 0.0)


def _late_s(stream):
    """How long after the first each drop leaves (N,), where all follow it."""
    return np.arange(stream.drop_count) * (stream.drop_interval_s or 0.0)


def _first_born_s(stream):
    """When the first drop comes to be."""
    return stream.first_leaves_s if stream.breakup_s is None else stream.breakup_s


def _own(setting, batch, time_s):
    """MotionSamples (T, N) of drops that each have a path of their own."""
    drops = batch.drops
    born_s, ends_s = batch.born_s[drops], batch.ends_s[drops]
    alive = (time_s[:, None] >= born_s) & (time_s[:, None] <= ends_s)
    body = np.broadcast_to(drops, alive.shape)
    ends = [batch.paths.moving(setting.habitat.spin, drops, t)[0] for t in (born_s, ends_s)]
    position = np.where((time_s[:, None] < born_s)[..., None], *ends)
    velocity, acceleration = np.zeros_like(position), np.zeros_like(position)
    times = np.broadcast_to(time_s[:, None], alive.shape)[alive]
    position[alive], velocity[alive], acceleration[alive] = batch.paths.turning(
        setting.habitat.spin, body[alive], times
    )
    return MotionSamples(position, velocity, acceleration, alive)


@dataclass(frozen=True)
class _Late(MotionSamples):
    def only(self, n):
        """That of one body."""
        return MotionSamples(*(getattr(self, name)[:, n] for name in self.__dataclass_fields__))


def _late(setting, path, time_s, late, born, seen, dies):
    """MotionSamples (T, N) of bodies that follow one path, each `late` (N,) behind it, born, seen from and gone at those times of the
    path."""
    local = time_s[:, None] - late
    inside = np.clip(local, born, path.end_s)
    flies = (local >= born) & (local <= path.end_s)
    shape = (*local.shape, 3)
    position, velocity, acceleration = np.empty(shape), np.zeros(shape), np.zeros(shape)
    ends = at(setting, path, np.array([born, path.end_s]))[0]
    position[...] = np.where((local < born)[..., None], ends[0], ends[1])
    position[flies], velocity[flies], acceleration[flies] = at(setting, path, inside[flies])
    return _Late(position, velocity, acceleration, (local >= seen) & (local <= dies))


def at(setting, path, time_s):
    """Position, velocity and acceleration (n, 3) in the turning frame at times (n,) inside a path (Trajectory)."""
    spin, parts = setting.habitat.spin, []
    for first in range(0, max(len(time_s), 1), _AT_ONCE):
        times = time_s[first : first + _AT_ONCE]
        position, velocity, _ = path.both(spin, times)
        parts.append((position, velocity, path.acceleration(spin, times, position, velocity)))
    return tuple(np.concatenate(column) for column in zip(*parts, strict=True))


def stream_curve(setting, traced, time_s):
    """Positions (T, M, 3) along a pour's unbroken part and its widths (T, M) at times (T,); None where it drips. Before the
    first parcel leaves it is a point at the lip, once the last has come to the end a point there, both of no width."""
    stream, path = traced.plan.stream, traced.track.path
    if stream.batch is not None:
        return _stream_of_batch(setting, stream, time_s)
    if stream.regime != "stream":
        return None
    whole_s = (path.end_s if stream.breakup_s is None else stream.breakup_s) - stream.first_leaves_s
    youngest = np.clip(time_s - stream.last_leaves_s, 0.0, whole_s)[:, None]
    oldest = np.clip(time_s - stream.first_leaves_s, 0.0, whole_s)[:, None]
    ages = youngest + (oldest - youngest) * np.linspace(0.0, 1.0, STREAM_POINTS)
    times = np.clip(stream.first_leaves_s + ages, path.begin_s, path.end_s)
    position, velocity, _ = at(setting, path, times.ravel())
    speed = np.linalg.norm(velocity, axis=1).reshape(times.shape)
    width = thinned_m(stream.lip_m, stream.speed_m_s, speed) * (oldest > youngest)
    return position.reshape(*times.shape, 3), width


def drawn(traced):
    """Places (n, 3) in the turning and in the inertial frame of a motion's samples and events in order of time, each instant once."""
    samples, events = traced.track.samples, traced.track.events
    _, first = np.unique([*samples.time_s, *(e.time_s for e in events)], return_index=True)
    rotating = np.concatenate([samples.rotating_m, [e.rotating_m for e in events]])
    inertial = np.concatenate([samples.inertial_m, [e.inertial_m for e in events]])
    return rotating[first], inertial[first]


def _stream_of_batch(setting, stream, time_s):
    """The same of a pour whose parcels each go their own way; None where no stream ever leaves.

    Its points are parcels in order of age: each lies between the two followed parcels it left between, at the same age, and is
    as wide as those are there. Where no stream left, the curve has no width.
    """
    threads = stream.batch.threads
    if not np.any(threads.streams):
        return None
    leaves_s, width_on = _parcel_span(stream, threads, time_s)
    age_s = np.maximum(time_s[:, None] - leaves_s, 0.0)
    k, share = _between(threads, leaves_s)
    position, width = 0.0, 0.0
    for number, weight in ((k, 1 - share), (k + 1, share)):
        age = np.minimum(age_s, threads.whole_s[number])
        points_m, velocity = threads.paths.moving(
            setting.habitat.spin, number.ravel(), (threads.leaves_s[number] + age).ravel()
        )
        speed = np.linalg.norm(velocity, axis=1).reshape(age.shape)
        position = position + weight[..., None] * points_m.reshape(*age.shape, 3)
        width = width + weight * _thinned(stream, threads, number, speed)
    return position, width * width_on


def _thinned(stream, threads, number, speed_m_s):
    flows = threads.streams[number]
    return np.where(flows, thinned_m(stream.lip_m, np.where(flows, threads.speed_m_s[number], 1.0), speed_m_s), 0.0)


def _between(threads, leaves_s):
    """The followed parcel before each time of leaving, and how far it is to the next."""
    k = np.clip(np.searchsorted(threads.leaves_s, leaves_s, "right") - 1, 0, len(threads.leaves_s) - 2)
    return k, np.clip((leaves_s - threads.leaves_s[k]) / (threads.leaves_s[k + 1] - threads.leaves_s[k]), 0.0, 1.0)


def _parcel_span(stream, threads, time_s):
    """When the parcels (T, STREAM_POINTS) of the curve left, the youngest first; and whether (T, 1) there is a curve."""
    fine = np.linspace(stream.first_leaves_s, stream.last_leaves_s, _FINE)
    k, share = _between(threads, fine)
    whole_s = np.where(threads.streams, threads.whole_s, 0.0)
    gone_s = fine + (1 - share) * whole_s[k] + share * whole_s[k + 1]  # when each breaks or ends
    youngest = np.clip(time_s, fine[0], fine[-1])
    still = gone_s[None] > time_s[:, None]
    oldest = np.minimum(fine[np.argmax(still, axis=1)], youngest)
    flows = np.any(still, axis=1) & (time_s > fine[0])
    oldest = np.where(flows, oldest, youngest)
    return youngest[:, None] + (oldest - youngest)[:, None] * np.linspace(0.0, 1.0, STREAM_POINTS), flows[:, None]
