"""What leaves a lip at each instant of a pour: how much, how fast, and which way, as the lip tilts.

And parcels of it that are followed one after another, unbroken (`Threads`), to find how large the drops are and where the stream is.
"""

from dataclasses import dataclass

import numpy as np

from ...motions import trajectory_batch
from ...motions.flight import Release, fly
from ...physics import frames, liquids
from ...physics.bodies import Body
from ...physics.forces import Medium
from ..motion import place_of

_CELLS = 2_048  # of a pour's time, in which a flow that changes is taken as straight


@dataclass(frozen=True)
class Flow:
    """A pour's lip over time: elevation_deg and flow_m3_s (P,) at since_s (P,), seconds since it began, straight between; held
    after the last. lip_m: its diameter; heading_deg: where it points; lasts_s: how long it pours."""

    since_s: np.ndarray
    elevation_deg: np.ndarray
    flow_m3_s: np.ndarray
    lip_m: float
    heading_deg: float
    lasts_s: float

    @property
    def steady(self):
        """Whether it never changes."""
        return bool(np.ptp(self.elevation_deg) == 0 and np.ptp(self.flow_m3_s) == 0)

    def at_m3_s(self, since_s):
        """Flow (...) at times since the beginning (...)."""
        return np.interp(since_s, self.since_s, self.flow_m3_s)

    def speed_m_s(self, since_s):
        """Speed (...) at the lip."""
        return liquids.lip_speed_m_s(self.at_m3_s(since_s), self.lip_m)

    def streams(self, liquid, since_s):
        """Whether (...) a stream leaves the lip; otherwise it drips."""
        return liquids.weber(liquid, self.speed_m_s(since_s), self.lip_m) >= liquids.DRIPS_BELOW_WEBER

    def velocity_m_s(self, liquid, since_s):
        """Velocity (n, 3) along the local directions with which parcels leave at times (n,); a dripping lip lets them fall."""
        speed = np.where(self.streams(liquid, since_s), self.speed_m_s(since_s), 0.0)
        up, toward = np.radians(np.interp(since_s, self.since_s, self.elevation_deg)), np.radians(self.heading_deg)
        level = speed * np.cos(up)
        return np.stack([level * np.cos(toward), speed * np.sin(up), level * np.sin(toward)], axis=-1)

    def marks_s(self, cells=_CELLS):
        """Times (M,) since the beginning that cut it into so many cells, and at every point of its own."""
        own = self.since_s[self.since_s < self.lasts_s]
        return np.unique(np.concatenate([np.linspace(0.0, self.lasts_s, cells + 1), own]))

    @property
    def poured_m3(self):
        """All that is poured, m3."""
        marks = self.marks_s(1)
        return float(np.trapezoid(self.at_m3_s(marks), marks))


def of_motion(motion):
    """The Flow of a `pour` of the scene document."""
    points = [
        (0.0, motion.elevation_deg, motion.flow_ml_s),
        *((p.time_s, p.elevation_deg, p.flow_ml_s) for p in motion.tilt),
    ]
    since_s, elevation_deg, flow_ml_s = np.array(points, dtype=float).T
    lip_m = motion.lip_diameter_mm * 1e-3
    return Flow(since_s, elevation_deg, flow_ml_s * 1e-6, lip_m, motion.heading_deg, motion.duration_s)


@dataclass(frozen=True)
class Cut:
    """A pour cut into drops: leaves_s (N,), seconds since the beginning at which the first of each leaves, and volume_m3 (N,)."""

    leaves_s: np.ndarray
    volume_m3: np.ndarray


def cut(flow, marks_s, drop_m3, shares):
    """Cut a pour at places that make each drop as large as the size that holds when it leaves, times its share.

    marks_s (M,) since the beginning, drop_m3 (M,): size of a drop that leaves then, inf where none forms. shares: a function of how
    many drops of those sizes it would be, that gives the shares (n,) of as many as it is to be. However they are cut, the drops
    together are all that forms drops: each is the difference of two readings of what has been poured by then.
    """
    forms = np.isfinite(drop_m3)
    rate = np.where(forms, flow.at_m3_s(marks_s), 0.0)
    step = np.diff(marks_s)
    poured = np.concatenate([[0.0], np.cumsum((rate[1:] + rate[:-1]) / 2 * step)])
    ready = rate / np.where(forms, drop_m3, 1.0)
    counted = np.concatenate([[0.0], np.cumsum((ready[1:] + ready[:-1]) / 2 * step)])
    if counted[-1] <= 0:
        return Cut(np.empty(0), np.empty(0))
    edges = np.concatenate([[0.0], np.cumsum(shares(counted[-1]))])
    edges *= counted[-1] / edges[-1]
    leaves_s = np.interp(edges, counted, marks_s)
    leaves_s[0], leaves_s[-1] = marks_s[np.searchsorted(counted, 0.0, "right") - 1], marks_s[-1]
    return Cut(leaves_s[:-1], np.diff(_poured_by(leaves_s, marks_s, rate, poured)))


def _poured_by(time_s, marks_s, rate, poured):
    """What has been poured (n,) by times (n,), the rate straight between marks."""
    k = np.clip(np.searchsorted(marks_s, time_s, "right") - 1, 0, len(marks_s) - 2)
    since, length = time_s - marks_s[k], np.diff(marks_s)[k]
    return poured[k] + since * (rate[k] + since / (2 * length) * (rate[k + 1] - rate[k]))


_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(8)
_THREADS = 64  # parcels followed
_AGES = 24  # places along each of them


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

    def findings(self, setting, flow):
        """The stream, by parcels that left one after another: leaves_s (K,); whole_s (K,), how long each is whole; flows (K,), 1 where a
        stream left then and 0 where the lip dripped; rotating_m (K, A, 3) and diameter_m (K, A) at A even ages, 0 to whole_s."""
        count = len(self.leaves_s)
        body = np.repeat(np.arange(count), _AGES)
        times = (self.leaves_s[:, None] + self.whole_s[:, None] * np.linspace(0.0, 1.0, _AGES)).ravel()
        position, velocity = self.paths.moving(setting.habitat.spin, body, times)
        leaves = np.maximum(self.speed_m_s, 1e-9)[body]
        width = liquids.thinned_m(flow.lip_m, leaves, np.linalg.norm(velocity, axis=1)) * self.streams[body]
        return {
            "leaves_s": self.leaves_s,
            "whole_s": self.whole_s,
            "flows": self.streams.astype(float),
            "rotating_m": position.reshape(count, _AGES, 3),
            "diameter_m": width.reshape(count, _AGES),
        }


def followed(setting, motion, flow, liquid, dripping_m):
    """Threads of a `pour` of the scene document; dripping_m as in `batch.of_pour`."""
    since_s = flow.marks_s(_THREADS)
    leaves_s = motion.start_s + since_s
    speed, streams = flow.speed_m_s(since_s), flow.streams(liquid, since_s)
    bodies = [Body(1.0, 0.0)] * len(since_s)
    leaving = releases(setting, motion, bodies, leaves_s, flow.velocity_m_s(liquid, since_s))
    flown = fly(without_air(setting.medium), leaving)
    paths = trajectory_batch.of_paths([[one.path] for one in flown])
    broke_s, streaming = np.full(len(flown), np.nan), np.flatnonzero(streams)

    def speeds(body, time_s):
        return np.linalg.norm(paths.moving(setting.habitat.spin, streaming[body], time_s)[1], axis=1)

    if len(streaming):
        lengths = np.array([liquids.breakup_length_m(liquid, speed[k], flow.lip_m) for k in streaming])
        spans = (np.array([getattr(flown[k].path, edge) for k in streaming]) for edge in ("begin_s", "end_s"))
        broke_s[streaming] = times_at_lengths(speeds, *spans, lengths)
    breaks = ~np.isnan(broke_s)
    ends_s, drop_m = np.where(breaks, broke_s, paths.end_s), np.empty(len(flown))
    if len(streaming):
        thin = liquids.thinned_m(flow.lip_m, speed[streaming], speeds(np.arange(len(streaming)), ends_s[streaming]))
        drop_m[streaming] = np.minimum(liquids.DROP_PER_STREAM * thin, setting.habitat.radius_m / 2)
    for k in np.flatnonzero(~streams).tolist():
        dripped_m = dripping_m(flown[k].path.begin_s)
        drop_m[k] = np.inf if dripped_m is None else dripped_m
    return Threads(leaves_s, streams, ends_s - paths.begin_s, breaks, paths, speed, drop_m)


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
    """When the parcel has gone length_m along its path, or None if it ends sooner."""

    def speeds(_body, time_s):
        return speeds_m_s(setting, path, turns, time_s)

    (time_s,) = times_at_lengths(speeds, np.array([path.begin_s]), np.array([path.end_s]), np.array([length_m]))
    return None if np.isnan(time_s) else float(time_s)


def times_at_lengths(speeds, begin_s, end_s, length_m):
    """When (n,) each of n parcels has gone length_m (n,) along its path from begin_s to end_s (n,), nan of one that ends sooner
    (Gauss-Legendre, then Newton). speeds(body, time_s) -> (m,): of the parcels of numbers (m,) at times (m,)."""
    count, share = len(begin_s), np.linspace(0.0, 1.0, 65)
    edges = begin_s[:, None] + (end_s - begin_s)[:, None] * share
    half = np.diff(edges) / 2
    times = (edges[:, :-1] + half)[..., None] + half[..., None] * _NODES
    each = np.repeat(np.arange(count), times[0].size)
    parts = half * (speeds(each, times.ravel()).reshape(times.shape) @ _WEIGHTS)
    gone = np.concatenate([np.zeros((count, 1)), np.cumsum(parts, axis=1)], axis=1)
    out = np.full(count, np.nan)
    which = np.flatnonzero(gone[:, -1] > length_m)
    if not len(which):
        return out
    k = np.count_nonzero(gone[which] <= length_m[which, None], axis=1) - 1
    low, high, left_m = edges[which, k], edges[which, k + 1], length_m[which] - gone[which, k]
    t, each = low + (high - low) * left_m / parts[which, k], np.repeat(which, len(_NODES))
    for _ in range(8):
        inside = low[:, None] + (t - low)[:, None] / 2 * (1 + _NODES)
        excess = (t - low) / 2 * (speeds(each, inside.ravel()).reshape(inside.shape) @ _WEIGHTS) - left_m
        change = excess / np.maximum(speeds(which, t), 1e-9)
        t = t - change
        if np.all(np.abs(change) <= 1e-15 * np.abs(t)):
            break
    out[which] = np.clip(t, low, high)
    return out
