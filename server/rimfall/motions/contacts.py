"""What comes of a contact: it ends the motion, or the body flies on, or goes on along a surface (`physics/contact.py`).

States are arrays (n, 3) of the room's frame, one body a row, spins relative to that frame. `moving` are `carry.Progress`, one a body.
"""

from dataclasses import dataclass, replace

import numpy as np

from ..physics import contact, frames
from ..physics.aboard import Aboard, of_frame
from ..physics.bodies import as_arrays
from ..physics.corner import Corner, parts_of, way_on
from ..physics.crossings import TOUCH_M
from ..physics.protocols import Surface
from ..physics.rolling import NO_SLIP_M_S, ROLLS, SLIDES, STANDS, riders
from .flight import Release
from .ground import GroundStart
from .journey import ON_THE_GROUND

_PARTED_M_S = 1e-9  # a speed away from the ground that is none
_HAIR_M = 2 * TOUCH_M
MOST_STANDSTILLS = 8  # brief legs one after another: it lies where three surfaces meet, or is held against one
_DITHERS = 2  # as many brief legs one after another: what hardly slips slips no more
_MOST_TOUCHES = 40  # contacts without a rebound: something holds it against a surface that does not bear it


def stays(motion, kind, surface):
    """Whether a motion ends with a contact: a liquid's first, and the first with the ground where no rebound is allowed; not where it
    comes back to the ground on which it rolled or slid before."""
    start = motion.journey.start
    if start.sticks or start.bounces > 0 or kind not in ON_THE_GROUND:
        return start.sticks
    return not any(leg.surface is not None and surface in parts_of(leg.surface) for leg in motion.journey.legs)


def how(kind):
    """The end of a motion that ends at a surface."""
    return "landed" if kind in ON_THE_GROUND else "met a surface"


def into_frame(spin, time_s, turns, position, velocity, spinning):
    """Inertial states (n, 3) -> those of the turning frame, where `turns` (n,); spins become relative to it."""
    angle = np.where(turns, spin.angle_rad(time_s), 0.0)
    omega = np.where(turns, spin.rate_rad_s(time_s), 0.0)
    position, velocity = frames.inertial_to_rotating(position, velocity, angle, omega)
    spinning = frames.turn(spinning, -angle)
    spinning[:, 2] -= omega
    return position, velocity, spinning


@dataclass(frozen=True)
class _State:
    """One body's position, velocity and spin (3,), the last relative to the room's frame, in that frame's axes."""

    position_m: np.ndarray
    velocity_m_s: np.ndarray
    spin_rad_s: np.ndarray


def meet(medium, moving, surfaces, time_s, position, velocity, spinning):
    """What comes of contacts: states (n, 3) of the room's frame just before, spins relative to it."""
    bodies = contact.balls([t.next.body for t in moving])
    normal = _each(surfaces, "normal", position)
    into = -np.einsum("ij,ij->i", velocity, normal)
    level = velocity + np.maximum(into, 0.0)[:, None] * normal
    pressed = _pressed(medium, moving, surfaces, time_s, position, level, normal)
    may = np.array([t.left > 0 for t in moving])
    real = may & contact.rebounds(bodies, bodies.restitution * into, pressed)
    after, spun, slips = contact.impulse(bodies, normal, velocity, spinning, np.where(real, bodies.restitution, 0.0))
    slipping = np.linalg.norm(slips, axis=1) > NO_SLIP_M_S
    # What neither rebounds nor is pressed glides along and is in nobody's way: a hair's breadth off, it flies free.
    place = np.where((real | (pressed > 0))[:, None], position, position + _HAIR_M * normal)
    # So gliding it is not lifted: a lift toward the surface would have it meet that again and again.
    flies = releases(medium.spin, moving, time_s, place, after, spun, real)
    for i, motion in enumerate(moving):
        touch = _Contact(surfaces[i], time_s[i], position[i], velocity[i], normal[i], real[i], pressed[i], slipping[i])
        _decide(medium, motion, touch, _State(position[i], after[i], spun[i]), flies[i])


@dataclass(frozen=True)
class _Contact:
    """A contact: surface, time, state just before (3,), normal (3,), whether it rebounds, the acceleration that presses it
    on, and whether it slips after."""

    surface: Surface
    time_s: float
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    normal: np.ndarray
    real: bool
    pressed_m_s2: float
    slipping: bool


def _each(surfaces, what, *states):
    """A surface's `what` at each of states (n, 3), all bodies of one surface at once -> (n, 3)."""
    out = np.empty_like(states[0])
    for surface in dict.fromkeys(surfaces):
        same = np.array([s is surface or s == surface for s in surfaces])
        out[same] = getattr(surface, what)(*(state[same].T for state in states)).T
    return out


def _decide(medium, motion, touch, state, flies):
    """What one body does after a contact: end there, fly on, or lie on a surface."""
    kind = touch.surface.name_at(touch.position_m)
    if touch.surface.edge:
        motion.happens("edge", touch.time_s, touch.position_m, touch.velocity_m_s)
        motion.finish("edge")
        return
    motion.touches += not touch.real
    if stays(motion, kind, touch.surface) or motion.standstills > MOST_STANDSTILLS or motion.touches > _MOST_TOUCHES:
        motion.happens(kind, touch.time_s, touch.position_m, touch.velocity_m_s, np.zeros(3), touch.surface)
        motion.finish(how(kind))
        return
    ground = motion.next.surface if isinstance(motion.next, GroundStart) else None
    if touch.pressed_m_s2 > 0 or touch.velocity_m_s @ touch.normal < -_PARTED_M_S:
        before = touch.position_m, touch.velocity_m_s
        motion.happens(kind, touch.time_s, *before, state.velocity_m_s, touch.surface)
    motion.left -= bool(touch.real)
    motion.standstills = 0 if touch.real else motion.standstills
    if ground is not None and not touch.real and kind not in ON_THE_GROUND:
        _still_on(medium, motion, ground, touch, state, flies)
    elif touch.real or touch.pressed_m_s2 <= 0:
        motion.next = flies
    else:
        motion.next = _on_ground(motion, touch.surface, touch.time_s, state, touch.slipping)
    if motion.journey.start.beyond is not None and kind in ON_THE_GROUND:
        motion.next = replace(motion.next, room=motion.journey.start.beyond)


def _still_on(medium, motion, ground, touch, state, flies):
    """After a surface was met while on another: it goes on along both or along what it must, unless friction there lifts it and it may
    still rebound. Where it meets a third, it ends."""
    if isinstance(ground, Corner):
        motion.finish("met a surface")
        return
    normal = ground.normal(state.position_m)
    rising = float(state.velocity_m_s @ normal)
    if rising > _PARTED_M_S and motion.left > 0:
        motion.left -= 1
        motion.next = flies
        return
    level = replace(state, velocity_m_s=state.velocity_m_s - rising * normal)
    parts = level.position_m, level.velocity_m_s, level.spin_rad_s
    along(medium, motion, Corner(ground, touch.surface), touch.time_s, *parts)


def along(medium, motion, corner, time_s, position, velocity, spin):
    """Go on from a state (3,) of the room's frame where the two surfaces of a Corner are touched: along both, one, or off both."""
    before, turns = motion.next, motion.next.body.diameter_m > 0 and motion.journey.start.rolls
    one = riders(medium, before.room, [before.body], np.zeros(1, dtype=int))
    rate = (medium.spin.rate_rad_s(time_s), medium.spin.change_rad_s2(time_s)) if before.room.turns else (0.0, 0.0)
    moving = np.concatenate([velocity, spin * before.body.radius_m])[:, None]
    place = np.concatenate([position, np.zeros(3)])[:, None]
    way = way_on(corner, one, rate, place, moving, turns, late=motion.standstills > _DITHERS)
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
    let_go = tuple(part for part in corner.parts if part not in way.parts)
    motion.next = GroundStart(
        before.room, surface, before.body, float(time_s), position, *moving, before.end_s, mode, let_go
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


def _on_ground(motion, surface, time_s, state, slipping):
    """A GroundStart that goes on from a state of the room's frame."""
    before, body = motion.next, motion.next.body
    mode = STANDS if body.diameter_m == 0 or not motion.journey.start.rolls else SLIDES if slipping else ROLLS
    parts = state.position_m, state.velocity_m_s, state.spin_rad_s
    return GroundStart(before.room, surface, body, float(time_s), *parts, before.end_s, mode)


def _pressed(medium, moving, surfaces, time_s, position, velocity, normal):
    """Acceleration (n,) toward its surface of each body that glides along it, m/s2; below 0 where it would leave it."""
    spin = medium.spin
    turns = np.array([t.next.room.turns for t in moving])
    omega, change = np.where(turns, spin.rate_rad_s(time_s), 0.0), np.where(turns, spin.change_rad_s2(time_s), 0.0)
    free = np.array([t.next.room.pull_m_s2 for t in moving]) + of_frame(omega, change, position.T, velocity.T).T
    for i in [i for i, t in enumerate(moving) if t.next.body.buoyant]:
        borne = Aboard(medium, moving[i].next.room, as_arrays([moving[i].next.body]))
        free[i] = borne.at(omega[i], change[i], position[i][:, None], velocity[i][:, None])[:, 0]
    bends = _each(surfaces, "normal_rate", position, velocity)
    return -np.einsum("ij,ij->i", free, normal) - np.einsum("ij,ij->i", velocity, bends)
