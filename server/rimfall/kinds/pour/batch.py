"""Pours whose parcels each go their own way: the lip tilts, the flow changes, the spin changes, or the drops scatter.

The pour is cut into drops (`flow.cut`), each as large as Rayleigh's or Tate's size for its instant; all fly to where they
break in one batch, and from there in another. A drop that meets something before it breaks arrives as a part of the whole
stream. Scatter (`jitter` j, seeded): diameters of drops are 1 + j (u - 1/2) times what they would be, u even from 0 to 1, then all
scaled so that together they are what was poured; where a drop breaks off it gets a velocity more, drawn evenly from a ball of
radius j/2 times its speed aboard. Between the parcels that are followed to find sizes, sizes and times of breakup are taken as
straight. Arrays are (N,) over parcels.
"""

import math
from bisect import bisect_right
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from ...errors import TooMuch, refusal
from ...language import tr, written
from ...motions import trajectory_batch
from ...motions.flight import Release, fly
from ...motions.track import grid_spans, grid_times
from ...physics import frames, liquids
from ...physics.bodies import Body
from ...physics.budget import passing, spend
from .flow import Threads, cut, followed, of_motion, releases, without_air
from .target import arrivals, on_table

MOST_DROPS = 20_000
_ON_THE_GROUND = 1e-6  # gap, metres and share of the radius, at which a parcel has come down on it
_PARCEL_BYTES = 200  # of memory: the least that a parcel's path is kept in


@dataclass(frozen=True)
class Batch:
    """The parcels of a pour: leaves_s; born_s, when each is a drop, inf where it never is; ends_s, and whether there it met
    something; volume_m3; diameter_m; paths, a TrajectoryBatch; threads, the stream they are of."""

    leaves_s: np.ndarray
    born_s: np.ndarray
    ends_s: np.ndarray
    met: np.ndarray
    volume_m3: np.ndarray
    diameter_m: np.ndarray
    paths: trajectory_batch.TrajectoryBatch
    threads: Threads

    @cached_property
    def drops(self):
        """Numbers of the parcels that become drops, in order of birth."""
        drops = np.flatnonzero(np.isfinite(self.born_s) & (self.born_s < self.ends_s))
        return drops[np.argsort(self.born_s[drops], kind="stable")]

    @property
    def dripped(self):
        """Whether (n,) each of the drops, in order of birth, fell from the lip; a stream broke into the others."""
        return self.born_s[self.drops] <= self.leaves_s[self.drops]

    def fates(self):
        """Numbers of the drops that dripped before there was a stream, of those that a stream broke into, and of those that dripped
        later, each in order of leaving the lip."""
        order = np.argsort(self.leaves_s[self.drops], kind="stable")
        drops, dripped = self.drops[order], self.dripped[order]
        early = self.leaves_s[drops] < np.min(self.leaves_s[drops[~dripped]], initial=np.inf)
        return drops[dripped & early], drops[~dripped], drops[dripped & ~early]

    @property
    def last_ends_s(self):
        """When the last parcel has come to its end."""
        return float(np.max(self.ends_s, initial=0.0))

    def landings(self, setting, floor):
        """Numbers of the parcels that come down on the ground, in the order they left the lip, and where (n, 3), in the turning frame."""
        met = np.flatnonzero(self.met)
        if not len(met):
            return met, np.empty((0, 3))
        at = self.paths.moving(setting.habitat.spin, met, self.ends_s[met])[0]
        half_m = np.where(self.born_s[met] < self.ends_s[met], self.diameter_m[met] / 2, 0.0)
        down = np.abs(setting.habitat.ground(floor).gap(at.T, half_m)) <= _ON_THE_GROUND * (
            1 + setting.habitat.radius_m
        )
        return met[down], at[down]

    def span(self, rate):
        """First grid number and count (n,) of the drops' samples at `rate` a second."""
        return grid_spans(rate, self.born_s[self.drops], self.ends_s[self.drops])

    def samples(self, setting):
        """Positions (sum of counts, 3) of the drops in the turning frame at their samples, one drop after another."""
        first, count = self.span(setting.rate)
        if not np.sum(count):
            return np.empty((0, 3))
        body = np.repeat(self.drops, count)
        before = np.cumsum(count) - count  # samples of the drops before
        times = grid_times(setting.rate, 0, len(body), np.repeat(first - before, count))
        times = np.clip(times, self.born_s[body], self.ends_s[body])
        return self.paths.moving(setting.habitat.spin, body, times)[0]

    def findings(self, setting, arrived):
        """The drops in order of birth: leaves_s (from the lip), born_s, ends_s, diameter_m, dripped and caught (0 or 1); how many of
        them dripped at first, came of a stream, dripped later; and their samples on the scene's grid: the number of the first, how many,
        and all their positions in the turning frame, one drop after another."""
        drops = self.drops
        first, count = self.span(setting.rate)
        dripped_first, of_stream, dripped_later = (len(some) for some in self.fates())
        return {
            "dripped_first": dripped_first,
            "of_stream": of_stream,
            "dripped_later": dripped_later,
            "leaves_s": self.leaves_s[drops],
            "dripped": self.dripped.astype(float),
            "born_s": self.born_s[drops],
            "ends_s": self.ends_s[drops],
            "diameter_m": self.diameter_m[drops],
            "caught": np.zeros(len(drops)) if arrived is None else arrived.caught[drops].astype(float),
            "first": first,
            "count": count,
            "rotating_m": self.samples(setting),
        }


def of_pour(setting, motion, flow, liquid, dripping_m):
    """The Batch of a `pour` of the scene document; dripping_m: a function of time that gives the diameter of a drop that falls
    from the lip, None where none does. Raises TooMuch past MOST_DROPS."""
    threads = followed(setting, motion, flow, liquid, dripping_m)
    chance = np.random.Generator(np.random.PCG64(motion.seed))
    marks_s = flow.marks_s()
    sizes = liquids.drop_volume_m3(_sizes(threads, flow, liquid, marks_s, motion))
    parts = cut(flow, marks_s, sizes, lambda count: _shares(motion, chance, count))
    diameter_m = (6.0 * parts.volume_m3 / np.pi) ** (1 / 3)
    return _Parcels(setting, motion, flow, liquid, threads, chance, parts, diameter_m).batch()


def least_bytes(setting, motion):
    """Memory that the parcels of a `pour` are sure to take, bytes: 0 where they all follow the first.

    A stream that never rises only gets thinner where the spin is steady, so none of its drops is larger than those of the lip.
    """
    flow, spin, liquid = of_motion(motion), setting.habitat.spin, liquids.named(motion.liquid)
    ends = np.array([0.0, motion.duration_s])
    if (flow.steady and not motion.jitter) or not spin.steady or np.any(flow.elevation_deg > 0):
        return 0.0
    if not np.all(flow.streams(liquid, np.append(flow.since_s[flow.since_s < flow.lasts_s], ends))):
        return 0.0
    largest_m3 = liquids.drop_volume_m3(liquids.DROP_PER_STREAM * flow.lip_m)
    return _PARCEL_BYTES * flow.poured_m3 / largest_m3 / (1 + motion.jitter**2 / 4)


def caught_in(setting, cup, batch):
    """The same, each parcel ended where it passes into a cup or comes down on its table; and the Arrivals of all."""
    arrived = arrivals(setting, cup, batch.paths)
    tabled_s = on_table(setting, cup, batch.paths)
    ends_s = np.where(arrived.caught, arrived.caught_s, np.fmin(batch.ends_s, tabled_s))
    met = batch.met | arrived.caught | np.isfinite(tabled_s)
    threads = batch.threads
    filled_s = arrivals(setting, cup, threads.paths).caught_s
    filled_s = np.where(np.isfinite(filled_s), filled_s, on_table(setting, cup, threads.paths)) - threads.leaves_s
    threads = replace(threads, whole_s=np.fmin(threads.whole_s, filled_s))
    return replace(batch, ends_s=ends_s, met=met, threads=threads), arrived


def _shares(motion, chance, count):
    """Shares of the size that holds (n,) of as many drops as make up `count` drops without scatter."""
    jitter = motion.jitter
    number = max(round(count / (1 + jitter**2 / 4)), 1)  # the mean cube of 1 + j (u - 1/2)
    if number > MOST_DROPS:
        most = written(MOST_DROPS, ",")
        say = tr(
            "Motion {name} would break into {count} drops, each with a path of its own; it may have {most}. Pour for less time or "
            "through a wider lip, or leave out tilt and jitter.",
            name=motion.name,
            count=written(number, ","),
            most=most,
        )
        raise TooMuch(refusal("motions", motion.name, tr("within {count} drops of their own paths", count=most), say))
    return (1 + jitter * (chance.random(number) - 0.5)) ** 3


def _sizes(threads, flow, liquid, since_s, motion):
    """Diameters (M,) of the drops that leave at times (M,) since the beginning; inf where none forms. Their inverses are taken
    as straight: 0 where nothing pulls a drop off."""
    inverse = np.zeros(len(since_s))
    left_s = threads.leaves_s - motion.start_s
    streams = flow.streams(liquid, since_s)
    for mine, known in ((streams, threads.streams), (~streams, ~threads.streams)):
        if np.any(mine) and np.any(known):
            inverse[mine] = np.interp(since_s[mine], left_s[known], 1 / threads.drop_m[known])
    with np.errstate(divide="ignore"):
        return 1 / inverse


class _Parcels:
    """The parcels of a pour on their way."""

    def __init__(self, setting, motion, flow, liquid, threads, chance, parts, diameter_m):
        self.setting, self.motion, self.flow, self.liquid = setting, motion, flow, liquid
        self.threads, self.chance, self.parts, self.diameter_m = threads, chance, parts, diameter_m
        self.leaves_s = motion.start_s + parts.leaves_s
        self.streams = flow.streams(liquid, parts.leaves_s)

    def batch(self):
        """All of them, to their ends."""
        with passing():
            made = self._batch()
        spend(bytes=made.paths.nbytes)
        return made

    def _batch(self):
        whole, met = self._whole()
        ends_s = np.array([p.end_s for p in whole])
        born_s = np.where(self.streams, self.leaves_s + self._whole_s(), self.leaves_s)
        drop = ~self.streams | (born_s < ends_s)
        numbers, paths = np.flatnonzero(drop), [[p] for p in whole]
        after, met[numbers] = fly_on(self.setting.medium, self._drops(whole, numbers, born_s))
        for i, own in zip(numbers, after, strict=True):
            before = [replace(whole[i], end_s=float(born_s[i]))] if self.streams[i] else []
            paths[i] = [*before, *own]
        joined = trajectory_batch.of_paths(paths)
        born_s = np.where(drop, born_s, np.inf)
        volume, size = self.parts.volume_m3, self.diameter_m
        return Batch(self.leaves_s, born_s, joined.end_s, met, volume, size, joined, self.threads)

    def _whole(self):
        """The Paths of all parcels flown as the stream does, unbroken, and whether (n,) each met something."""
        velocity = self.flow.velocity_m_s(self.liquid, self.parts.leaves_s)
        bodies = [Body(1.0, 0.0)] * len(self.leaves_s)
        leaving = releases(self.setting, self.motion, bodies, self.leaves_s, velocity)
        flown = fly(without_air(self.setting.medium), leaving)
        return [one.path for one in flown], np.array([one.surface is not None for one in flown], dtype=bool)

    def _whole_s(self):
        """How long each is whole, inf where it is to its end: as the two followed parcels it left between, or as the nearer."""
        threads = self.threads
        known = np.flatnonzero(threads.streams)
        if not len(known):
            return np.zeros(len(self.leaves_s))
        left_s = threads.leaves_s[known]
        whole_s = np.where(threads.breaks, threads.whole_s, np.inf)[known]
        after = np.clip(np.searchsorted(left_s, self.leaves_s), 1, max(len(known) - 1, 1)) if len(known) > 1 else 0
        before = np.maximum(after - 1, 0)
        gap = np.where(left_s[after] > left_s[before], left_s[after] - left_s[before], 1.0)
        share = np.clip((self.leaves_s - left_s[before]) / gap, 0.0, 1.0)
        both = np.isfinite(whole_s[before]) & np.isfinite(whole_s[after])
        low, high = np.where(both, whole_s[before], 0.0), np.where(both, whole_s[after], 0.0)
        return np.where(both, low + share * (high - low), np.where(share < 0.5, whole_s[before], whole_s[after]))

    def _drops(self, whole, numbers, born_s):
        """Releases of the drops, each where its stream breaks."""
        if not len(numbers):
            return []
        spin, room = self.setting.habitat.spin, self.setting.room(self.motion.place.floor)
        threads = trajectory_batch.of_paths([[whole[i]] for i in numbers])
        position, velocity, _ = threads.inertial(np.arange(len(numbers)), born_s[numbers])
        angle, omega = spin.angle_rad(born_s[numbers]), spin.rate_rad_s(born_s[numbers])
        speed = np.linalg.norm(frames.inertial_to_rotating(position, velocity, angle, omega)[1], axis=1)
        velocity = velocity + self._kicks(len(numbers)) * speed[:, None]
        mass = self.liquid.density_kg_m3 * self.parts.volume_m3[numbers]
        bodies = [Body(m, d) for m, d in zip(mass.tolist(), self.diameter_m[numbers].tolist(), strict=True)]
        limits = [self.setting.limit_s(t) for t in self.leaves_s[numbers].tolist()]
        columns = (bodies, born_s[numbers].tolist(), position, velocity, limits)
        return [Release(room, *one) for one in zip(*columns, strict=True)]

    def _kicks(self, count):
        """What scatter adds to each velocity (count, 3), in speeds: even in a ball of radius half the jitter."""
        if not self.motion.jitter:
            return np.zeros((count, 3))
        way = self.chance.standard_normal((count, 3))
        far = self.chance.random(count) ** (1 / 3) * self.motion.jitter / 2
        return way * (far / np.linalg.norm(way, axis=1))[:, None]


def fly_on(medium, releases):
    """Fly releases to their ends -> for each its Paths, one after another; and whether (n,) it met something there.

    Where the spin's change changes, all stop and set out anew: in one go each body's own kink would hold up the steps of all.
    """
    paths, under_way = [[] for _ in releases], dict(enumerate(releases))
    met = np.zeros(len(releases), dtype=bool)
    kinks = medium.spin.times_s[1:].tolist()
    while under_way:
        numbers, going = list(under_way), list(under_way.values())
        until_s = [_next_kink(kinks, r) for r in going]
        cut = [replace(r, end_s=t) if t < r.end_s else r for r, t in zip(going, until_s, strict=True)]
        flown = fly(medium, cut)
        under_way = {}
        for i, release, one, kink_s in zip(numbers, going, flown, until_s, strict=True):
            paths[i].append(one.path)
            met[i] = one.surface is not None
            if one.surface is None and kink_s < release.end_s:
                under_way[i] = _from_there(release, one.path)
    return paths, met


def _next_kink(kinks_s, release):
    after = bisect_right(kinks_s, release.time_s)
    return kinks_s[after] if after < len(kinks_s) else math.inf


def _from_there(release, path):
    position, velocity = path.at(np.array([path.end_s]))
    return replace(release, time_s=path.end_s, position_m=position[0], velocity_m_s=velocity[0])
