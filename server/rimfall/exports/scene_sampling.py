"""A trace sampled: its things at every frame of the file that the options ask for, as a `sampled_scene.SampledScene`."""

import re
from dataclasses import replace
from math import ceil

import numpy as np

from ..errors import TooMuch, refusal
from ..motions.trajectory import attitudes
from ..physics import frames, quaternions
from ..physics.aboard import of_frame
from ..physics.budget import spend
from . import axes, camera_presets, habitat_mesh, notes, path_sampling
from .options import INERTIAL_FLAT
from .sampled_scene import BodySamples, DrawnPath, Drops, SampledScene, StreamSamples
from .stage_cameras import stage_cameras

GREATEST_SAMPLES = 2_000_000  # of bodies, over all frames
_SAMPLE_BYTES, _DROP_BYTES = 73, 170  # of memory: a body, a drop at one instant, of which there are two copies
_FAR_M = 1_000.0  # from here on 32-bit numbers lose a twentieth of a millimetre
_SLACK = 1e-9  # in frames: a time that is on a frame but for rounding is on it


def sample_scene(trace, options, shown=None, scenery=False):
    """The SampledScene of a Trace; shown: `axes.Axes` to write in, in place of those the options ask for; scenery: with the habitat's
    meshes and the cameras. Raises TooMuch past 2,000,000 samples, naming the motion that has most of them."""
    frame, time_s = frames_of(trace, options)
    taken = [
        (i, t) for i, t in enumerate(trace.motions) if t.motion.name in options.motions and t.track.path is not None
    ]
    weigh(taken, len(time_s), GREATEST_SAMPLES)
    return _SceneSampler(trace, options, shown or axes.axes_of(trace, options), frame, time_s, taken).sampled(scenery)


def frames_of(trace, options):
    """Frame numbers and times (T,) of a file: from the first frame at or after from_s to the first at or after the last
    event (or to_s), with the samples between frames; frame k of the scene's time is at k/fps."""
    per_frame, fps = options.samples_per_frame, options.fps
    first = ceil(options.from_s * float(fps) - _SLACK)
    last = max(ceil(_last_s(trace, options) * float(fps) - _SLACK), first)
    number = np.arange(first * per_frame, last * per_frame + 1)
    time_s = number * float(fps.denominator) / (float(fps.numerator) * per_frame)
    return options.first_frame + number / per_frame, time_s


def _last_s(trace, options):
    """When the last event of the file is: the flat-gravity references are in none."""
    if options.to_s is not None:
        return options.to_s
    ends = [t.ends_s for t in trace.motions if t.track.path is not None and t.motion.name in options.motions]
    if not ends:
        return (trace.count - 1) / float(trace.setting.rate)
    return max(ends) if trace.setting.duration_s is None else min(max(ends), trace.setting.duration_s)


def weigh(taken, samples, greatest):
    """Raise TooMuch where (place, Traced) pairs have more than `greatest` samples over so many frames."""
    counts = [_elements(t) for _, t in taken]
    if sum(counts) * samples > greatest:
        name = taken[int(np.argmax(counts))][1].motion.name
        rows = sum(counts) * samples
        say = (
            f"The file would have {rows:,} samples, most of them of motion {name}; it may have {greatest:,}. "
            "Take fewer frames or motions, pour for less time, or end sooner."
        )
        raise TooMuch(refusal("motions", name, f"within {greatest:,} samples", say))


def most_sampled(trace, options):
    """Name of the motion of a file that has most samples, or None where it has none."""
    taken = [t for t in trace.motions if t.motion.name in options.motions and t.track.path is not None]
    return max(taken, key=_elements).motion.name if taken else None


def _elements(traced):
    return 1 if traced.plan.stream is None else len(path_sampling.births_s(traced))


class _SceneSampler:
    """What the parts of a SampledScene are made from; each method makes one part."""

    def __init__(self, trace, options, shown, frame, time_s, taken):
        self.trace, self.options, self.axes = trace, options, shown
        self.frame, self.time_s, self.taken = frame, time_s, taken
        spin = trace.setting.habitat.spin
        self.angle, self.omega, self.change = (
            spin.angle_rad(time_s),
            spin.rate_rad_s(time_s),
            spin.change_rad_s2(time_s),
        )
        self.flat = options.view == INERTIAL_FLAT

    def sampled(self, scenery):
        """The whole; its notes are of it, so they come last."""
        born = self._born()
        things = {
            "balls": self._balls(born),
            "drops": self._drops(born),
            "streams": self._streams(),
            "lines": self._lines(),
        }
        around = (
            {"meshes": self._meshes(), "cameras": self._cameras(things["balls"])}
            if scenery
            else {"meshes": [], "cameras": []}
        )
        sampled = SampledScene(
            **self._clock(), **self._space(), anchor_m=_anchor(**things), **things, **around, notes={}
        )
        return replace(sampled, notes=notes.notes_of(self.trace, sampled))

    def _clock(self):
        """The frames, and how the habitat turns at each."""
        return {
            "options": self.options,
            "frame": self.frame,
            "time_s": self.time_s,
            "shown_s": (self.time_s - self.time_s[0]) / self._pace,
            "pace": self._pace,
            "angle_rad": self.angle,
            "spin_rad_s": self.omega,
            "spin_change_rad_s2": self.change,
        }

    def _space(self):
        """The file's axes and unit."""
        return {
            "to_file": self.axes.rows,
            "pivot_m": self.axes.points(np.zeros(3)),
            "axis": self.axes.spin,
            "per_unit": 100.0 if self.options.unit == "cm" else 1.0,
        }

    @property
    def _pace(self):
        return float(self.options.shown_fps / self.options.fps)

    def _born(self):
        """(when, place in the scene, number of the drop or None) of every body, in order of birth: its place here is its id."""
        born = []
        for i, traced in self.taken:
            if traced.plan.stream is None:
                born.append((traced.plan.start_s, i, None))
            else:
                born += [(born_s, i, n) for n, born_s in enumerate(path_sampling.births_s(traced).tolist())]
        return sorted(born, key=lambda b: b[0])

    def _balls(self, born):
        number = {i: n for n, (_, i, drop) in enumerate(born) if drop is None}
        names = element_names([(t.kind.element, t.motion.name) for i, t in self.taken if i in number])
        balls = []
        for name, (i, traced) in zip(names, [p for p in self.taken if p[0] in number], strict=True):
            spend(bytes=_SAMPLE_BYTES * len(self.time_s))
            motion = path_sampling.body_samples(self.trace.setting, traced, self.time_s)
            place, velocity, acceleration = self._seen(motion, self.angle, self.omega, self.change)
            radius = traced.plan.body.diameter_m / 2
            turns = self._turns(traced)
            balls.append(BodySamples(number[i], name, i, radius, place, velocity, acceleration, motion.alive, turns))
        return sorted(balls, key=lambda b: b.id)

    def _drops(self, born):
        """All drops, in order of their ids; None where there are none."""
        ids = np.array([n for n, (_, _, drop) in enumerate(born) if drop is not None], dtype=int)
        if len(ids) == 0:
            return None
        whole, motion, diameter = [], [], []
        for i, traced in self.taken:
            sizes = path_sampling.diameters_m(traced).tolist() if traced.plan.stream is not None else []
            if sizes:
                spend(bytes=_DROP_BYTES * len(sizes) * len(self.time_s))
                whole.append(path_sampling.drop_samples(self.trace.setting, traced, self.time_s))
                motion += [i] * len(sizes)
                diameter += sizes
        owner, number = np.array([(i, drop) for _, i, drop in born if drop is not None]).T
        order = np.argsort(np.lexsort((number, owner)))  # of the drops by birth, in the motions' own order
        joined = whole[0] if len(whole) == 1 else _beside(whole, order)
        column = (slice(None), None)
        seen = self._seen(joined, self.angle[column], self.omega[column], self.change[column])
        names = [f"droplet_{n:05d}" for n in range(len(ids))]
        return Drops(ids, names, np.array(motion)[order], np.array(diameter)[order], *seen, joined.alive)

    def _streams(self):
        streams = []
        for i, traced in self.taken:
            curve = (
                None
                if traced.plan.stream is None
                else path_sampling.stream_curve(self.trace.setting, traced, self.time_s)
            )
            if curve is not None:
                position, width = curve
                position = frames.turn(position, self.angle[:, None]) if self.flat else position
                streams.append(StreamSamples(f"stream_{i:05d}", i, self.axes.points(position), width))
        return streams

    def _lines(self):
        paths = []
        for i, traced in self.taken:
            rotating, inertial = path_sampling.drawn(traced)
            place = inertial if self.flat else rotating
            paths.append(DrawnPath(f"path_{i:05d}", i, self.axes.points(place)))
        return paths

    def _seen(self, motion, angle, omega, change):
        """Positions, velocities and accelerations of a `path_sampling.MotionSamples` in the file's view and axes."""
        place, velocity, acceleration = motion.position_m, motion.velocity_m_s, motion.acceleration_m_s2
        if self.flat:
            own = np.moveaxis(of_frame(omega, change, *(np.moveaxis(v, -1, 0) for v in (place, velocity))), 0, -1)
            acceleration = frames.turn(acceleration - own, angle)
            place, velocity = frames.rotating_to_inertial(place, velocity, angle, omega)
        return self.axes.points(place), self.axes.vectors(velocity), self.axes.vectors(acceleration)

    def _turns(self, traced):
        """How a body turns: a function of times (n,), rising, to quaternions (n, 4); None where it does not."""
        path, spin = traced.track.path, self.trace.setting.habitat.spin
        if traced.track.attitude_wxyz is None and not self.flat:
            return None

        def turned(time_s):
            aboard = np.broadcast_to([1.0, 0.0, 0.0, 0.0], (len(time_s), 4))
            if traced.track.attitude_wxyz is not None:
                aboard = attitudes(path, spin, np.clip(time_s, path.begin_s, path.end_s))
            if self.flat:
                about = np.zeros((len(time_s), 3))
                about[:, 2] = spin.angle_rad(time_s)
                aboard = quaternions.times(quaternions.turning(about), aboard)
            return self.axes.turnings(aboard)

        return turned

    def _meshes(self):
        meshes = (*habitat_mesh.meshes(self.trace.setting.habitat), *habitat_mesh.ramps(self.trace))
        return [
            replace(m, position_m=self.axes.points(m.position_m), normal=self.axes.vectors(m.normal)) for m in meshes
        ]

    def _cameras(self, balls):
        """Those of the page's stages, where they were given; then the vantages: they look at the first body to be born, where there is
        one, and one of them goes with it."""
        taken, followed = [t for _, t in self.taken], None
        if balls:
            first = self.trace.motions[balls[0].motion]
            taken.sort(key=lambda t: t is not first)
            followed = path_sampling.body_samples(self.trace.setting, first, self.time_s).position_m
        cameras = camera_presets.cameras(replace(self.trace, motions=taken), self.time_s, followed)
        staged = stage_cameras(self.options, self.angle)
        names = element_names(
            [("camera", c.name) for c in [*cameras, *staged]]
        )  # a seat and a part may be called alike
        placed = [
            replace(c, name=name, position_m=self.axes.points(c.position_m), axes=c.axes @ self.axes.rows.T)
            for name, c in zip(names, [*cameras, *staged], strict=True)
        ]
        return placed[len(cameras) :] + placed[: len(cameras)]


def _beside(motions, order):
    """Motions (T, N) of several pours as one, in an order of their drops."""
    names = path_sampling.MotionSamples.__dataclass_fields__
    return path_sampling.MotionSamples(
        *(np.concatenate([getattr(m, n) for m in motions], axis=1)[:, order] for n in names)
    )


def _anchor(balls, drops, streams, lines):
    """What to take from far positions: the first place in the file, in whole metres, which 32-bit numbers hold."""
    clouds = [b.position_m for b in balls] + ([] if drops is None else [drops.position_m])
    clouds += [s.position_m for s in streams] + [line.position_m for line in lines]
    if not any(len(c) and np.max(np.abs(c)) > _FAR_M for c in clouds):
        return np.zeros(3)
    first = lines[0].position_m if lines else clouds[0].reshape(-1, 3)
    return np.round(first[0])


def element_names(named):
    """Names for a file's elements, (kind, name) of each, letters, digits and _ alone and each once: a ball "lob out" is
    "ball_lob_out"."""
    taken, out = set(), []
    for i, (kind, name) in enumerate(named):
        plain = re.sub(r"[^A-Za-z0-9]+", "_", name).strip("_") or f"{i:05d}"
        element = f"{kind}_{plain}"
        while element in taken:
            element += "_"
        taken.add(element)
        out.append(element)
    return out
