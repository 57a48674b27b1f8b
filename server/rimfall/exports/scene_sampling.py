"""A trace sampled: its things at every frame of the file that the options ask for, as a `sampled_scene.SampledScene`."""

from dataclasses import replace

import numpy as np

from ..errors import TooMuch, refusal
from ..language import tr, written
from ..motions.trajectory import attitudes
from ..physics import frames, quaternions
from ..physics.aboard import of_frame
from ..physics.budget import spend
from ..scene.craft.asked import solid_of
from ..scene.craft.checks import of_scene
from . import axes, camera_presets, habitat_mesh, notes, path_sampling, props, sight
from .bounds import GREATEST_SAMPLES, too_many
from .clock import clock_of
from .craft_solids import craft_solid
from .gltf_shapes import of_axes
from .names import element_names
from .options import INERTIAL_FLAT
from .palette import linear
from .sampled_scene import (
    BodyKeys,
    BodySamples,
    DrawnPath,
    Drops,
    FlyingDrops,
    PropSamples,
    SampledScene,
    StreamSamples,
)
from .stage_cameras import stage_cameras

_SAMPLE_BYTES, _DROP_BYTES = 73, 170  # of memory: a body, a drop at one instant, of which there are two copies
_FAR_M = 1_000.0  # from here on 32-bit numbers lose a twentieth of a millimetre
_NEAR_FRAME = 1e-4  # in frames: an event so near to one needs no key of its own
_MOST_EVENTS = 2_000  # of one motion, keyed between frames
_KEY_BYTES = 100  # of memory: one instant of BodyKeys
_OF_A_MOTION = ("stream", "path", "ramp", "lip", "jug", "cup", "table", "line", "floor")
_SMOOTH_EVENTS = ("apex", "axis")  # at which the path has no corner


def sample_scene(trace, options, shown=None, scenery=False, flying=False):
    """The SampledScene of a Trace; shown: `axes.Axes` to write in, in place of those the options ask for; scenery: with the habitat's
    meshes and the cameras; flying: of drops only while they are there. Raises TooMuch past 2,000,000 samples, naming the motion that has
    most of them."""
    taken = [
        (i, t) for i, t in enumerate(trace.motions) if t.motion.name in options.motions and t.track.path is not None
    ]
    clock = clock_of(options, _last_s(trace, options))
    weigh([(t.motion.name, _samples(t, clock.time_s, flying)) for _, t in taken])
    return _SceneSampler(trace, options, shown or axes.axes_of(trace, options), clock, taken, flying).sampled(scenery)


def _last_s(trace, options):
    """When the last event of the file is: the flat-gravity references are in none."""
    ends = [t.ends_s for t in trace.motions if t.track.path is not None and t.motion.name in options.motions]
    if not ends:
        return (trace.count - 1) / float(trace.setting.rate)
    return max(ends) if trace.setting.duration_s is None else min(max(ends), trace.setting.duration_s)


def weigh(counted):
    """Raise TooMuch where motions, (name, samples), have more than a file may hold."""
    total = sum(count for _, count in counted)
    if total > GREATEST_SAMPLES:
        name = max(counted, key=lambda c: c[1])[0]
        may_be = tr("within {most} samples", most=written(GREATEST_SAMPLES, ","))
        raise TooMuch(refusal("motions", name, may_be, too_many(total, name)))


def _samples(traced, time_s, flying):
    """How many instants of a motion there are at times (T,)."""
    if flying and traced.plan.stream is not None:
        return path_sampling.flying_count(traced, time_s)
    return _elements(traced) * len(time_s)


def most_sampled(trace, options):
    """Name of the motion of a file that has most samples, or None where it has none."""
    taken = [t for t in trace.motions if t.motion.name in options.motions and t.track.path is not None]
    return max(taken, key=_elements).motion.name if taken else None


def _elements(traced):
    return 1 if traced.plan.stream is None else len(path_sampling.births_s(traced))


class _SceneSampler:
    """What the parts of a SampledScene are made from; each method makes one part."""

    def __init__(self, trace, options, shown, clock, taken, flying):
        self.trace, self.options, self.axes = trace, options, shown
        self.clock, self.time_s, self.taken, self.flying = clock, clock.time_s, taken, flying
        self.spin = spin = trace.setting.habitat.spin
        time_s = clock.time_s
        self.angle, self.omega, self.change = (
            spin.angle_rad(time_s),
            spin.rate_rad_s(time_s),
            spin.change_rad_s2(time_s),
        )
        self.flat = options.view == INERTIAL_FLAT
        every = [(kind or m.kind.element, m.motion.name) for kind in (None, *_OF_A_MOTION) for m in trace.motions]
        self._elements = element_names(every)

    def names(self, kind, number):
        """The name of what belongs to a motion, by its number in the scene: "path_lob_out"; "body": of what moves."""
        first = 0 if kind == "body" else len(self.trace.motions) * (1 + _OF_A_MOTION.index(kind))
        return self._elements[first + number]

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
            {
                "meshes": (meshes := self._meshes()),
                "props": self._props(),
                "cameras": self._cameras(things["balls"], meshes),
            }
            if scenery
            else {"meshes": [], "props": [], "cameras": []}
        )
        sampled = SampledScene(
            **self._clock(), **self._space(), anchor_m=_anchor(**things), **things, **around, notes={}
        )
        return replace(sampled, notes=notes.notes_of(self.trace, sampled))

    def _clock(self):
        """The frames, and how the habitat turns at each."""
        return {
            "options": self.options,
            "clock": self.clock,
            "angle_rad": self.angle,
            "spin_rad_s": self.omega,
            "spin_change_rad_s2": self.change,
        }

    def _space(self):
        """The file's axes and unit."""
        return {
            "to_file": self.axes.rows,
            "pivot_m": self.axes.points(self.spin.centre_m if self.spin.tumbles else np.zeros(3)),
            "axis": self.axes.spin,
            **(self._tumbling() if self.spin.tumbles else {}),
            "per_unit": 100.0 if self.options.unit == "cm" else 1.0,
        }

    def _tumbling(self):
        """How a habitat whose axis moves lies and turns."""
        omega = self.axes.vectors(self.spin.omega_rad_s(self.time_s))
        change = self.axes.vectors(self.spin.omega_change_rad_s2(self.time_s))
        return {
            "attitude": lambda time_s: self.axes.turnings(self.spin.quaternion(time_s)),
            "vectors": (omega, change),
        }

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
        balls = []
        for i, traced in [p for p in self.taken if p[0] in number]:
            spend(bytes=_SAMPLE_BYTES * len(self.time_s))
            motion = path_sampling.body_samples(self.trace.setting, traced, self.time_s)
            place, velocity, acceleration = self._body_seen(motion, self.time_s)
            turns = self._upright(traced) if props.is_person(traced) else self._turns(traced)
            balls.append(
                BodySamples(
                    number[i],
                    self.names("body", i),
                    i,
                    traced.plan.body.diameter_m / 2,
                    place,
                    velocity,
                    acceleration,
                    motion.alive,
                    self._keys(traced, place, motion.alive),
                    turns,
                    self._solid(traced, turns is not None),
                )
            )
        return sorted(balls, key=lambda b: b.id)

    def _solid(self, traced, turns):
        """What a moving body looks like, in the file's axes."""
        if not props.is_craft(traced) or self.trace.scene.craft is None:
            return props.solid_of(traced, self._release_rows(traced), turns)
        parts = [solid_of(part) for part in of_scene(self.trace.scene).parts]
        return craft_solid(parts, self.spin.centre_m).turned(self.axes.rows.T)

    def _keys(self, traced, place, alive):
        """BodyKeys: the samples, and the events between them."""
        clock = self.clock
        events_s = np.unique([e.time_s for e in traced.track.events[:_MOST_EVENTS] if e.kind not in _SMOOTH_EVENTS])
        events_s = events_s[(events_s > clock.time_s[0]) & (events_s < clock.time_s[-1])]
        frame = clock.frames_at(events_s)
        after = np.clip(np.searchsorted(clock.frame, frame), 1, len(clock.frame) - 1)
        apart = np.minimum(frame - clock.frame[after - 1], clock.frame[after] - frame) > _NEAR_FRAME
        events_s, frame = events_s[apart], frame[apart]
        if len(frame) == 0:
            return BodyKeys(clock.frame, clock.time_s, clock.shown_s, place, alive)
        spend(bytes=_KEY_BYTES * (len(frame) + len(clock.frame)))
        there = path_sampling.body_samples(self.trace.setting, traced, events_s)
        between, _, _ = self._body_seen(there, events_s)
        order = np.argsort(np.concatenate([clock.frame, frame]), kind="stable")
        every = (
            (clock.frame, frame),
            (clock.time_s, events_s),
            (clock.shown_s, clock.shown_at(frame)),
            (place, between),
            (alive, there.alive),
        )
        return BodyKeys(*(np.concatenate(pair)[order] for pair in every))

    def _drops(self, born):
        """All drops, in order of their ids; None where there are none."""
        ids = np.array([n for n, (_, _, drop) in enumerate(born) if drop is not None], dtype=int)
        if len(ids) == 0:
            return None
        pours = [(i, t) for i, t in self.taken if t.plan.stream is not None]
        sizes = [path_sampling.diameters_m(t) for _, t in pours]
        motion = np.repeat([i for i, _ in pours], [len(one) for one in sizes])
        owner, number = np.array([(i, drop) for _, i, drop in born if drop is not None]).T
        order = np.argsort(np.lexsort((number, owner)))  # of the drops by birth, in the motions' own order
        about = ids, [f"droplet_{n:05d}" for n in range(len(ids))], motion[order], np.concatenate(sizes)[order]
        return (self._drops_flying if self.flying else self._drops_whole)(pours, order, about)

    def _drops_whole(self, pours, order, about):
        whole = []
        for _, traced in pours:
            spend(bytes=_DROP_BYTES * len(path_sampling.births_s(traced)) * len(self.time_s))
            whole.append(path_sampling.drop_samples(self.trace.setting, traced, self.time_s))
        joined = whole[0] if len(whole) == 1 else _beside(whole, order)
        column = (slice(None), None)
        seen = self._seen(joined, self.angle[column], self.omega[column], self.change[column])
        return Drops(*about, *seen, joined.alive)

    def _drops_flying(self, pours, order, about):
        parts, before, new = (
            [],
            0,
            np.argsort(order),
        )  # new: place among all by birth, of each in the motions' own order
        for _, traced in pours:
            spend(bytes=_DROP_BYTES * path_sampling.flying_count(traced, self.time_s))
            one = path_sampling.flying_drops(self.trace.setting, traced, self.time_s)
            parts.append(replace(one, drop=new[before + one.drop]))
            before += len(path_sampling.births_s(traced))
        names = path_sampling.FlyingSamples.__dataclass_fields__
        joined = path_sampling.FlyingSamples(*(np.concatenate([getattr(p, n) for p in parts]) for n in names))
        k = joined.sample
        place, velocity, _ = self._seen(joined, self.angle[k], self.omega[k], self.change[k])
        by = np.lexsort((joined.drop, k))
        return FlyingDrops(*about, k[by], joined.drop[by], place[by], velocity[by])

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
                streams.append(StreamSamples(self.names("stream", i), i, self.axes.points(position), width))
        return streams

    def _lines(self):
        paths = []
        for i, traced in self.taken:
            rotating, inertial = path_sampling.drawn(traced)
            place = inertial if self.flat else rotating
            paths.append(DrawnPath(self.names("path", i), i, self.axes.points(place)))
        return paths

    def _body_seen(self, motion, time_s):
        """The same of a body at times (T,)."""
        spin = self.spin
        if not (spin.tumbles and self.flat):
            return self._seen(motion, spin.angle_rad(time_s), spin.rate_rad_s(time_s), spin.change_rad_s2(time_s))
        own = spin.own(time_s, motion.position_m, motion.velocity_m_s)
        place, velocity = spin.to_inertial(time_s, motion.position_m, motion.velocity_m_s)
        acceleration = spin.turn(motion.acceleration_m_s2 - own, time_s)
        return self.axes.points(place), self.axes.vectors(velocity), self.axes.vectors(acceleration)

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
                aboard = quaternions.times(spin.quaternion(time_s), aboard)
            return self.axes.turnings(aboard)

        return turned

    def _release_rows(self, traced):
        """The local directions (3, 3) where a motion starts, in the file's axes."""
        return (
            self.trace.setting.habitat.chart(traced.plan.floor).axes_at(np.array(traced.plan.place)) @ self.axes.rows.T
        )

    def _upright(self, traced):
        """How somebody stands: a function of times (n,) to the quaternions (n, 4) of the local directions where they are."""
        chart, spin, path = (
            self.trace.setting.habitat.chart(traced.plan.floor),
            self.trace.setting.habitat.spin,
            traced.track.path,
        )

        def turned(time_s):
            place, _, _ = path.both(spin, np.clip(time_s, path.begin_s, path.end_s))
            rows = chart.axes(place)
            if self.flat:
                rows = frames.turn(rows, spin.angle_rad(time_s)[:, None])
            return np.roll(of_axes(rows @ self.axes.rows.T), 1, axis=1)

        return turned

    def _props(self):
        """PropSamples of the motions taken."""
        standing = {
            i: path_sampling.body_samples(self.trace.setting, t, self.time_s).position_m
            for i, t in self.taken
            if t.plan.stream is None
        }
        return [self._prop(one) for one in props.props_of(self.trace, self.taken, standing)]

    def _prop(self, one):
        about = self.names(one.kind, one.motion), one.material, linear(one.colour)
        rows = self.axes.rows.T
        if one.position_m is None:
            return PropSamples(*about, one.solid.turned(rows, self.axes.points(np.zeros(3))), None, None)
        return PropSamples(
            *about, one.solid, self.axes.points(one.position_m), np.roll(of_axes(one.rows @ rows), 1, axis=1)
        )

    def _meshes(self):
        ramps = habitat_mesh.ramps(self.trace, lambda i: self.names("ramp", i))
        meshes = (*habitat_mesh.meshes(self.trace.setting.habitat), *ramps)
        return [
            replace(m, position_m=self.axes.points(m.position_m), normal=self.axes.vectors(m.normal)) for m in meshes
        ]

    def _cameras(self, balls, meshes):
        """Those of the page's stages, where they were given; then the vantages: they look at the first body to be born, where there is
        one, and one of them goes with it."""
        taken, followed = [t for _, t in self.taken], None
        if balls:
            first = self.trace.motions[balls[0].motion]
            taken.sort(key=lambda t: t is not first)
            followed = path_sampling.body_samples(self.trace.setting, first, self.time_s).position_m
        cameras = camera_presets.cameras(replace(self.trace, motions=taken), self.time_s, followed)
        staged = stage_cameras(self.options, self.spin, self.time_s)
        names = element_names(
            [("camera", c.name) for c in [*cameras, *staged]]
        )  # a seat and a part may be called alike
        placed = [
            replace(c, name=name, position_m=self.axes.points(c.position_m), axes=c.axes @ self.axes.rows.T)
            for name, c in zip(names, [*cameras, *staged], strict=True)
        ]
        moving = [self.axes.points(path_sampling.drawn(t)[0]) for _, t in self.taken]
        if moving:
            points, walls = np.concatenate(moving), sight.walls(meshes)
            placed = [replace(c, near_m=sight.near_m(c, walls, points)) for c in placed]
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
