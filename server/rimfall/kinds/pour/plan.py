"""Pours: a stream from a round lip, which thins as it speeds up, breaks into drops, or drips from the start.

Unbroken, a parcel of the stream flies freely without drag; the broken drops fly with the drag of spheres. The laws of
breakup and drop size, and their sources, are in `physics/liquids.py`. What is steady is one path: every parcel follows the first
one's in the turning frame, later, and that is exact. Where the lip tilts, the flow or the spin changes or the drops scatter, every
parcel has its own (`batch.py`), and the first one's is the motion's.
"""

from dataclasses import dataclass, replace
from functools import partial

import numpy as np

from ...motions import trajectory_batch
from ...motions.flight import fly
from ...motions.journey import Event, Leg, Prescribed, Start
from ...motions.path import of_no_length
from ...motions.plan import LiquidStream, Plan
from ...physics import frames, liquids
from ...physics.bodies import Body
from ..motion import NO_GRAVITY, place_of
from .batch import caught_in, fly_on, of_pour
from .flow import of_motion, speeds_m_s, time_at_length, without_air
from .target import arrivals, cup_of, findings, level_under, none_of, on_table, table_of

CAUGHT = "caught"
_WHOLE = 1e-9  # of a drop: what is a whole number of drops but for rounding is that


@dataclass(frozen=True)
class _PourCourse:
    """What the first parcel does: its Body and Start, when it breaks or None, how far along, its drop's diameter or None; down_m, the height
    of the cup's rim or its table where it ends there, else None."""

    body: Body
    course: Start
    broke_s: float | None
    broke_m: float | None
    drop_m: float | None
    down_m: float | None = None


def plan(setting, motion):
    """Plan of a `pour` of the scene document (attributes as its fields are named)."""
    liquid, flow = liquids.named(motion.liquid), of_motion(motion)
    lip_m, flow_m3_s = flow.lip_m, motion.flow_ml_s * 1e-6
    speed = liquids.lip_speed_m_s(flow_m3_s, lip_m)
    number = liquids.weber(liquid, speed, lip_m)
    drips = number < liquids.DRIPS_BELOW_WEBER
    velocity = frames.aimed(0.0 if drips else speed, motion.heading_deg, motion.elevation_deg)
    gravity = setting.gravity_m_s2(motion.start_s, place_of(motion), motion.place.floor)
    if drips:
        shape = _drip(setting, motion, liquid, lip_m, velocity, poured_m3=flow.poured_m3)
    else:
        shape = _stream(setting, motion, liquid, lip_m, speed, velocity)
    cup, arrived, flown = cup_of(setting, motion), None, None
    batch = _batch(setting, motion, flow, liquid)
    if cup is not None:
        free = shape.course
        shape, arrived = _into(setting, cup, shape)
        flown = None if shape.down_m is None else _above(free, level_under(setting, cup, shape.down_m))
    flat = _flat(setting, motion, liquid, lip_m, speed, velocity, gravity, shape) if gravity else None
    if cup is not None and batch is not None:
        batch, arrived = caught_in(setting, cup, batch)
    interval_s = None if shape.drop_m is None else liquids.drop_volume_m3(shape.drop_m) / flow_m3_s
    stream = LiquidStream(
        lip_m,
        speed,
        "drips" if drips else "stream",
        number,
        liquids.ohnesorge(liquid, lip_m),
        shape.broke_s,
        shape.broke_m,
        shape.drop_m,
        interval_s,
        motion.start_s,
        motion.start_s + motion.duration_s,
        _count(drips, motion.duration_s, interval_s) if batch is None else len(batch.drops),
        batch,
    )
    return Plan(
        motion.start_s,
        place_of(motion),
        tuple(velocity),
        shape.body,
        shape.course,
        flat,
        None if gravity else NO_GRAVITY,
        stream,
        motion.place.floor,
        findings=partial(findings, flow=flow, cup=cup, arrived=arrived, flown=flown),
    )


def _count(drips, lasts_s, interval_s):
    """How many drops: a lip drips whole drops, a stream's last one may be short."""
    if interval_s is None:
        return 0
    return max(int(lasts_s / interval_s + _WHOLE), 1) if drips else int(lasts_s / interval_s) + 1


def _batch(setting, motion, flow, liquid):
    """The parcels where each goes its own way, or None where all follow the first."""
    spin = setting.habitat.spin
    if flow.steady and not motion.jitter and motion.start_s >= spin.times_s[-1]:
        return None
    dripping_m = partial(_dripping_m, setting, motion, liquid, flow.lip_m, flow.poured_m3)
    return of_pour(setting, motion, flow, liquid, dripping_m)


def _drop(liquid, diameter_m):
    return Body(liquid.density_kg_m3 * liquids.drop_volume_m3(diameter_m), diameter_m)


def _dripping_m(setting, motion, liquid, lip_m, poured_m3, time_s):
    """Diameter of the drop that falls from the lip at time_s, or None where nothing pulls it off. It is never more than all that is
    poured, and goes as soon as it touches anything."""
    weight = setting.weight_m_s2(time_s, place_of(motion), motion.place.floor)
    if not weight > 0:
        return None
    place, floor = place_of(motion), motion.place.floor
    position = setting.habitat.chart(floor).position(np.array(place))[:, None]
    clear = min(float(s.gap(position, np.zeros(1))[0]) for s in setting.habitat.surfaces(floor))
    whole = (6.0 * poured_m3 / np.pi) ** (1 / 3)
    return min(liquids.dripping_drop_m(liquid, weight, lip_m), whole, 2 * clear, setting.habitat.radius_m / 2)


def _drip(setting, motion, liquid, lip_m, velocity, *, poured_m3):
    """Drops that fall from the lip one by one; without gravity one clings there."""
    place, start_s = place_of(motion), motion.start_s
    drop_m = _dripping_m(setting, motion, liquid, lip_m, poured_m3, start_s)
    body = _drop(liquid, drop_m or lip_m)
    course = Start(setting.release(body, start_s, place, velocity, motion.place.floor), sticks=True)
    if drop_m is None and not setting.habitat.spin.steady:
        course = Start(None, sticks=True, prescribed=_clinging(setting, motion))
    return _PourCourse(body, course, None, None, drop_m)


def _clinging(setting, motion):
    """What hangs at the lip goes on hanging there, though the spin begins to change."""
    floor, start_s = motion.place.floor, motion.start_s
    position, still = setting.start(start_s, place_of(motion), np.zeros(3), floor)
    path = replace(of_no_length(start_s, position, still), end_s=setting.limit_s(start_s))
    return Prescribed((Leg(path, setting.habitat.ground(floor), np.zeros(3)),))


def _stream(setting, motion, liquid, lip_m, speed, velocity):
    """A stream that flies whole as far as it holds together, and then as drops."""
    place, start_s = place_of(motion), motion.start_s
    thread = Body(1.0, 0.0)
    length = liquids.breakup_length_m(liquid, speed, lip_m)
    vacuum = without_air(setting.medium)
    release = setting.release(thread, start_s, place, velocity, motion.place.floor)
    opening = fly(vacuum, [release])[0]
    course, broke_s, drop_m = _broken(setting, liquid, opening, length, speed, lip_m)
    body = thread if drop_m is None else _drop(liquid, drop_m)
    return _PourCourse(body, course, broke_s, None if broke_s is None else length, drop_m)


def _flat(setting, motion, liquid, lip_m, speed, velocity, gravity, shape):
    """The same under plain gravity, down to the ground, or to the cup's rim or its table where it ends there."""
    drips = not np.any(velocity)
    body = (
        Body(liquid.density_kg_m3 * liquids.drop_volume_m3(shape.drop_m or lip_m), shape.drop_m or lip_m)
        if drips
        else Body(1.0, 0.0)
    )
    release = setting.flat_release(body, motion.start_s, place_of(motion), velocity, gravity)
    if shape.down_m is not None and shape.down_m < motion.place.height_m:
        (ground,) = release.room.surfaces
        release = replace(release, room=replace(release.room, surfaces=(replace(ground, at_m=shape.down_m),)))
    if drips:
        return Start(release, sticks=True)
    level = fly(without_air(setting.medium), [release])[0]
    length = liquids.breakup_length_m(liquid, speed, lip_m)
    return _broken(setting, liquid, level, length, speed, lip_m)[0]


def _above(course, level):
    """A Start with nothing to meet but a level."""

    def over(release):
        return replace(release, room=replace(release.room, surfaces=(level,)))

    opening = course.opening and replace(course.opening, release=over(course.opening.release))
    return replace(course, opening=opening, first=course.first and over(course.first))


def _broken(setting, liquid, opening, length_m, speed, lip_m):
    """Cut a stream where it breaks -> its course, when the first parcel breaks, the drop's diameter (None: lands whole)."""
    turns = opening.release.room.turns
    broke_s = time_at_length(setting, opening.path, turns, length_m)
    if broke_s is None:
        return Start(None, sticks=True, opening=opening), None, None
    break_s = np.array([broke_s])
    position, velocity = opening.path.at(break_s)
    moves_m_s = float(speeds_m_s(setting, opening.path, turns, break_s)[0])
    thin = float(liquids.thinned_m(lip_m, speed, moves_m_s))
    drop_m = min(liquids.DROP_PER_STREAM * thin, setting.habitat.radius_m / 2)
    first = opening.release
    drop = _drop(liquid, drop_m)
    # A drop turns with the air it breaks in, so that nothing lifts it.
    spin = np.array([0.0, 0.0, setting.omega_rad_s(broke_s) if turns and not first.room.still_air else 0.0])
    release = replace(
        first, body=drop, time_s=broke_s, position_m=position[0], velocity_m_s=velocity[0], spin_rad_s=spin
    )
    return Start(release, sticks=True, opening=opening.until(broke_s)), broke_s, drop_m


def _into(setting, cup, shape):
    """The same, ended where the first parcel passes into a cup or comes down on its table, unchanged where it does neither; and its
    Arrivals."""
    course = shape.course
    if course.prescribed is not None:
        return shape, none_of(1)
    before = [] if course.opening is None else [course.opening.path]
    after = [] if course.first is None else fly_on(setting.medium, [course.first])[0][0]
    paths = trajectory_batch.of_paths([[*before, *after]])
    arrived = arrivals(setting, cup, paths)
    caught = bool(arrived.caught[0])
    end_s = float(arrived.caught_s[0] if caught else on_table(setting, cup, paths)[0])
    if not np.isfinite(end_s):
        return shape, arrived
    spun = np.zeros(3) if course.first is None else np.asarray(course.first.spin_rad_s, dtype=float)
    legs = [Leg(p, None, np.zeros(3)) for p in before] + [Leg(p, None, spun) for p in after]
    legs = [
        replace(leg, path=replace(leg.path, end_s=min(leg.path.end_s, end_s)))
        for leg in legs
        if leg.path.begin_s < end_s
    ]
    legs = [replace(leg, path=trajectory_batch.trimmed(leg.path)) for leg in legs]
    position, velocity = paths.moving(setting.habitat.spin, np.zeros(1, dtype=int), np.array([end_s]))
    kind, surface, end = ("target", None, CAUGHT) if caught else ("table", table_of(setting, cup), "landed")
    after = None if caught else np.zeros(3)
    event = Event(kind, end_s, position[0], velocity[0], after, surface)
    given = Start(None, sticks=True, prescribed=Prescribed(tuple(legs), (event,), end))
    shape = replace(shape, down_m=cup.place[1] - (0.0 if caught else cup.depth_m))
    if shape.broke_s is not None and shape.broke_s >= end_s:
        return replace(shape, body=Body(1.0, 0.0), course=given, broke_s=None, broke_m=None, drop_m=None), arrived
    return replace(shape, course=given), arrived
