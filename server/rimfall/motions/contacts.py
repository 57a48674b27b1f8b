"""What comes of a contact: it ends the motion, or the body flies on, or goes on along a surface (`physics/contact.py`).

States are arrays (n, 3) of the room's frame, one body a row, spins relative to that frame. `moving` are `carry.Progress`, one a body.
"""

from dataclasses import dataclass, replace

import numpy as np

from ..physics import contact, frames
from ..physics.aboard import Aboard, of_frame
from ..physics.bodies import as_arrays
from ..physics.corner import Corner, parts_of
from ..physics.crossings import TOUCH_M
from ..physics.protocols import Surface
from ..physics.rolling import NO_SLIP_M_S
from .airborne import distinct
from .borne import MOST_STANDSTILLS, PARTED_M_S, State, along, among, held_up, on_ground, releases
from .ground import GroundStart
from .journey import ON_THE_GROUND

_LAST = 3  # so many events before: what was met among them is not met anew while it gets no further
_HAIR_M = 2 * TOUCH_M
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
    if spin.tumbles:
        return _into_tumbling(spin, time_s, turns, position, velocity, spinning)
    angle = np.where(turns, spin.angle_rad(time_s), 0.0)
    omega = np.where(turns, spin.rate_rad_s(time_s), 0.0)
    position, velocity = frames.inertial_to_rotating(position, velocity, angle, omega)
    spinning = frames.turn(spinning, -angle)
    spinning[:, 2] -= omega
    return position, velocity, spinning


def _into_tumbling(spin, time_s, turns, position, velocity, spinning):
    """The same in a frame whose axis moves."""
    own = spin.to_frame(time_s, position, velocity)
    relative = spin.turn_back(spinning, time_s) - spin.omega_rad_s(time_s)
    pairs = zip((*own, relative), (position, velocity, spinning), strict=True)
    return tuple(np.where(turns[:, None], turned, still) for turned, still in pairs)


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
        touch = _Contact(
            surfaces[i], time_s[i], position[i], velocity[i], normal[i], real[i], pressed[i], slipping[i], spinning[i]
        )
        _decide(medium, motion, touch, State(position[i], after[i], spun[i]), flies[i])


@dataclass(frozen=True)
class _Contact:
    """A contact: surface, time, state just before (3,), normal (3,), whether it rebounds, the acceleration that presses it
    on, whether it slips after, and its spin just before (3,)."""

    surface: Surface
    time_s: float
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    normal: np.ndarray
    real: bool
    pressed_m_s2: float
    slipping: bool
    spin_rad_s: np.ndarray


def _each(surfaces, what, *states):
    """A surface's `what` at each of states (n, 3), all bodies of one surface at once -> (n, 3)."""
    out = np.empty_like(states[0])
    kinds, own = distinct(surfaces)
    for k, surface in enumerate(kinds):
        same = own == k
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
    if motion.standstills > MOST_STANDSTILLS and isinstance(motion.next, GroundStart):
        held_up(motion, touch.time_s, touch.position_m, touch.velocity_m_s)
        return
    if stays(motion, kind, touch.surface) or motion.standstills > MOST_STANDSTILLS or motion.touches > _MOST_TOUCHES:
        motion.happens(kind, touch.time_s, touch.position_m, touch.velocity_m_s, np.zeros(3), touch.surface)
        motion.finish(how(kind))
        return
    ground = motion.next.surface if isinstance(motion.next, GroundStart) else None
    beside = ground is not None and not touch.real and kind not in ON_THE_GROUND
    if beside and not isinstance(ground, Corner):
        state = _borne(motion.next.body, ground, touch, state)
    again = motion.standstills > 0 and any(e.surface is touch.surface for e in motion.journey.events[-_LAST:])
    if (touch.pressed_m_s2 > 0 or touch.velocity_m_s @ touch.normal < -PARTED_M_S) and not again:
        before = touch.position_m, touch.velocity_m_s
        motion.happens(kind, touch.time_s, *before, state.velocity_m_s, touch.surface)
    motion.left -= bool(touch.real)
    motion.standstills = 0 if touch.real else motion.standstills
    if beside:
        _still_on(medium, motion, ground, touch, state, flies)
    elif touch.real or touch.pressed_m_s2 <= 0:
        motion.next = flies
    else:
        motion.next = on_ground(motion, touch.surface, touch.time_s, state, touch.slipping)
    if motion.journey.start.beyond is not None and kind in ON_THE_GROUND:
        motion.next = replace(motion.next, room=motion.journey.start.beyond)


def _borne(body, ground, touch, state):
    """The State after a contact, where the ground bears what friction there presses into it."""
    normal = ground.normal(state.position_m)
    if state.velocity_m_s @ normal >= -PARTED_M_S:
        return state
    parts = touch.velocity_m_s, touch.spin_rad_s
    return State(state.position_m, *contact.impulse_beside(body, touch.normal, normal, *parts))


def _still_on(medium, motion, ground, touch, state, flies):
    """After a surface was met while on another, or on two: it goes on along what it must, unless friction there lifts it and it may
    still rebound."""
    if isinstance(ground, Corner):
        among(medium, motion, (*ground.parts, touch.surface), touch.time_s, state, flies)
        return
    normal = ground.normal(state.position_m)
    rising = float(state.velocity_m_s @ normal)
    if rising > PARTED_M_S and motion.left > 0:
        motion.left -= 1
        motion.next = flies
        return
    level = replace(state, velocity_m_s=state.velocity_m_s - rising * normal)
    parts = level.position_m, level.velocity_m_s, level.spin_rad_s
    along(medium, motion, Corner(ground, touch.surface), touch.time_s, *parts)


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
