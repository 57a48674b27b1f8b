"""What bears a body from a contact on: a surface, two, or none, where two or three are touched.

States are of the room's frame, spins relative to it. `motion` is a `carry.Progress`, and what it does next is put into it.
"""

from dataclasses import dataclass, replace

import numpy as np

from ..physics import contact, frames
from ..physics.corner import Corner
from ..physics.going_on import way_on
from ..physics.nook import Nook, stopped_by, way_between
from ..physics.rolling import NO_SLIP_M_S, ROLLS, SLIDES, STANDS, riders
from ..physics.stillness import Stillness
from .flight import Release
from .ground import GroundStart
from .journey import Leg
from .path import of_no_length

PARTED_M_S = 1e-9  # a speed away from the ground that is none
MOST_STANDSTILLS = 8  # brief legs one after another: it is held where it is, or by what does not bear it
_CREEPS_M_S = 1e-3  # held at no more than that it is at rest
_DITHERS = 2  # as many brief legs one after another: what hardly slips slips no more


@dataclass(frozen=True)
class State:
    """One body's position, velocity and spin (3,), the last relative to the room's frame, in that frame's axes."""

    position_m: np.ndarray
    velocity_m_s: np.ndarray
    spin_rad_s: np.ndarray


def held_up(motion, time_s, position, velocity):
    """The end of what changes again and again and gets no further: rest, if it hardly moves."""
    if np.linalg.norm(velocity) > _CREEPS_M_S:
        motion.finish("met a surface")
        return
    motion.happens("rest", time_s, position, velocity)
    motion.finish("rest")


def along(medium, motion, corner, time_s, position, velocity, spin):
    """Go on from a state (3,) of the room's frame where the two surfaces of a Corner are touched: along both, one, or off both."""
    one, rate, place, moving, turns = _at(medium, motion, time_s, State(position, velocity, spin))
    way = way_on(corner, one, rate, place, moving, turns, late=motion.standstills > _DITHERS)
    let_go = tuple(part for part in corner.parts if part not in way.parts)
    _take(medium, motion, way, let_go, corner, time_s, position)


def among(medium, motion, surfaces, time_s, state, flies):
    """Go on where three surfaces are touched, without a bounce: along two or one of them, off all, or it lies there."""
    normals = np.stack([s.normal(state.position_m) for s in surfaces], axis=1)
    velocity = stopped_by(normals, state.velocity_m_s)
    on = tuple(s for s, n in zip(surfaces, normals.T, strict=True) if velocity @ n <= PARTED_M_S)
    state = replace(state, velocity_m_s=velocity)
    if len(on) == 2:
        along(medium, motion, Corner(*on), time_s, state.position_m, velocity, state.spin_rad_s)
    elif len(on) == 1:
        slips = contact.slip(
            contact.balls([motion.next.body]),
            on[0].normal(state.position_m)[None],
            velocity[None],
            state.spin_rad_s[None],
        )
        motion.next = on_ground(motion, on[0], time_s, state, np.linalg.norm(slips) > NO_SLIP_M_S)
    elif not on:
        motion.next = flies
    else:
        _between(medium, motion, surfaces, time_s, state)


def _between(medium, motion, surfaces, time_s, state):
    """Go on from where three surfaces are touched, now or once the frame's spin lets it."""
    one, rate, place, moving, turns = _at(medium, motion, time_s, state)
    goes = way_between(surfaces, one, rate, place, moving, turns, late=motion.standstills > _DITHERS)
    if goes is not None:
        way, let_go = goes
        _take(
            medium, motion, way, let_go, Corner(*way.parts) if len(way.parts) == 2 else None, time_s, state.position_m
        )
        return
    before = motion.next
    still = np.zeros((6, 1))
    spin = medium.spin if before.room.turns else None
    lies = Stillness(Nook(surfaces, one), spin, np.array([time_s]), np.array([before.end_s]), place, still)
    starts_s = float(lies.starts_s[0])
    if not time_s < starts_s < np.inf:
        motion.happens("rest", time_s, state.position_m, np.zeros(3))
        motion.finish("rest")
        return
    path = replace(of_no_length(time_s, place[:, 0], still[:, 0]), end_s=starts_s)
    motion.add(Leg(path, Corner(*surfaces[:2]), np.zeros(3)))
    _between(medium, motion, surfaces, starts_s, State(state.position_m, np.zeros(3), np.zeros(3)))


def _at(medium, motion, time_s, state):
    """What `going_on.way_on` wants of one body: its Riders, the frame's rate, its place and velocity (6, 1), whether it can roll."""
    before = motion.next
    one = riders(medium, before.room, [before.body], np.zeros(1, dtype=int))
    rate = (medium.spin.rate_rad_s(time_s), medium.spin.change_rad_s2(time_s)) if before.room.turns else (0.0, 0.0)
    moving = np.concatenate([state.velocity_m_s, state.spin_rad_s * before.body.radius_m])[:, None]
    place = np.concatenate([state.position_m, np.zeros(3)])[:, None]
    return one, rate, place, moving, before.body.diameter_m > 0 and motion.journey.start.rolls


def _take(medium, motion, way, let_go, corner, time_s, position):
    """Go on by a Way; corner: the Corner of its two surfaces, where it is borne by two; let_go: what it touches and is not borne by."""
    before, turns = motion.next, motion.next.body.diameter_m > 0 and motion.journey.start.rolls
    moving = way.velocity[:3, 0], way.velocity[3:, 0] / (before.body.radius_m or 1.0)
    if not way.parts:
        single = [np.array([v]) for v in (time_s, position, *moving)]
        motion.next = releases(medium.spin, [motion], *single, [True])[0]
        return
    surface, mode = way.parts[0], way.mode
    if len(way.parts) == 2:
        surface = corner
    elif not turns:
        mode = STANDS
    else:
        slips = contact.slip(contact.balls([before.body]), surface.normal(position)[None], *(m[None] for m in moving))
        mode = SLIDES if np.linalg.norm(slips) > NO_SLIP_M_S else ROLLS
    motion.next = GroundStart(
        before.room, surface, before.body, float(time_s), position, *moving, before.end_s, mode, tuple(let_go)
    )


def releases(spin, moving, time_s, position, velocity, spinning, lifts):
    """Releases that go on from states (n, 3) of the room's frame, spins relative to it; lifts (n,): whether the air does."""
    turns = np.array([t.next.room.turns for t in moving])
    angle = np.where(turns, spin.angle_rad(time_s), 0.0)
    omega = np.where(turns, spin.rate_rad_s(time_s), 0.0)
    position, velocity = frames.rotating_to_inertial(position, velocity, angle, omega)
    spinning = spinning.copy()
    spinning[:, 2] += omega
    spinning = frames.turn(spinning, angle)
    return [
        Release(
            t.next.room, t.next.body, time_s[i], position[i], velocity[i], t.next.end_s, spinning[i], bool(lifts[i])
        )
        for i, t in enumerate(moving)
    ]


def on_ground(motion, surface, time_s, state, slipping):
    """A GroundStart that goes on from a state of the room's frame."""
    before, body = motion.next, motion.next.body
    mode = STANDS if body.diameter_m == 0 or not motion.journey.start.rolls else SLIDES if slipping else ROLLS
    parts = state.position_m, state.velocity_m_s, state.spin_rad_s
    return GroundStart(before.room, surface, body, float(time_s), *parts, before.end_s, mode)
