"""What spheres do when they meet a surface at rest in their frame: rebound, grip or slip, and the spin that follows.

With n the normal into the room, u the velocity, sigma the spin relative to that frame, a the radius, beta the moment of
inertia over m a^2: the slip is c = u + sigma x (-a n). Normal impulse (1 + e) m |u.n|; along the surface the impulse that
stops the slip, m |c_t| beta/(1 + beta), if friction times the normal one allows it (grip), else that much against c_t
(slip). Source: the rigid-body impulse law of any mechanics text (from memory), as the design, section 2, states it. A point
has no spin: its slip is its velocity, and stopping it takes all of it. Arrays are (N,) and (N, 3), SI.
"""

from dataclasses import dataclass

import numpy as np

from . import frames

LEAST_RISE_M = 1e-4  # a rebound that would rise less than this, or than a thousandth of the diameter, is none
_LEAST_RISE_SHARE = 1e-3


@dataclass(frozen=True)
class Balls:
    """What of N bodies a contact needs, as arrays (N,)."""

    radius_m: np.ndarray
    inertia_factor: np.ndarray
    friction: np.ndarray
    restitution: np.ndarray


def balls(bodies):
    """A list of Body -> Balls."""
    columns = ("radius_m", "inertia_factor", "friction", "restitution")
    return Balls(*(np.array([getattr(b, c) for b in bodies]) for c in columns))


def slip(many, normal, velocity, spin):
    """Velocity (N, 3) of the touching points, along the surface; a point has none but its own."""
    at_point = velocity - many.radius_m[:, None] * frames.cross(spin, normal)
    return at_point - _along(at_point, normal)[:, None] * normal


def impulse(many, normal, velocity, spin, restitution):
    """Velocity, spin and what slip is left, (N, 3) each, of Balls that meet a surface with a velocity and a spin relative to
    it; normal (N, 3) into the room, restitution (N,) as far as they rebound."""
    into = np.maximum(-_along(velocity, normal), 0.0)
    sliding = slip(many, normal, velocity, spin)
    speed = np.linalg.norm(sliding, axis=1)
    beta, point = many.inertia_factor, many.radius_m == 0.0
    wanted = speed * np.where(point, 1.0, beta / (1.0 + beta))
    given = np.minimum(wanted, many.friction * (1.0 + restitution) * into)
    still = speed == 0.0
    along = -sliding * (given / np.where(still, 1.0, speed))[:, None]
    velocity = velocity + ((1.0 + restitution) * into)[:, None] * normal + along
    lever = np.where(point, np.inf, beta * many.radius_m)
    spin = spin - frames.cross(normal, along) / lever[:, None]
    return velocity, spin, sliding * (1.0 - given / np.where(still, 1.0, wanted))[:, None]


_STEPS = 400  # of an impulse that is followed: its slips are then known to a part in hundreds of what stops
_SMOOTH = 2e-3  # of the velocity into a surface: the slip over which friction sets in


def impulse_beside(body, normal, ground, velocity, spin):
    """Velocity and spin (3,), (3,) of a Body that lies on a ground of normal `ground` (3,) and meets another surface without a rebound,
    whose friction presses it on: the ground then pushes and rubs as well, while the impulse lasts.

    The impulse is followed as it grows (Routh's method; of any mechanics text, from memory), friction at each surface against the slip there.
    """
    velocity, spun, turns = velocity.copy(), spin * body.radius_m, body.radius_m > 0.0
    into = max(-float(velocity @ normal), 0.0)
    least2 = (_SMOOTH * into) ** 2
    for _ in range(4 * _STEPS):
        left = -float(velocity @ normal)
        if left <= 0.0:
            break
        rubs = []
        for n in (normal, ground):
            slips = velocity - frames.cross(spun, n)
            slips = slips - (slips @ n) * n
            rubs.append(-body.friction * slips / np.sqrt(slips @ slips + least2))
        borne = max(-float((normal + rubs[0]) @ ground), 0.0)
        change = normal + rubs[0] + borne * (ground + rubs[1])
        gains = float(change @ normal)
        if gains <= 0.0:
            break
        step = min(into / _STEPS, left / gains)
        velocity = velocity + step * change
        if turns:
            twist = frames.cross(normal, rubs[0]) + borne * frames.cross(ground, rubs[1])
            spun = spun - step / body.inertia_factor * twist
    return velocity, spun / body.radius_m if turns else spin


def rebounds(many, leaves_m_s, pressed_m_s2):
    """Whether (N,) bodies that leave a surface at leaves_m_s (N,), against an acceleration pressed_m_s2 (N,) toward it, rise
    enough to be said to rebound."""
    rise = leaves_m_s**2 / np.where(pressed_m_s2 > 0.0, 2.0 * pressed_m_s2, np.inf)
    least = np.maximum(LEAST_RISE_M, _LEAST_RISE_SHARE * 2.0 * many.radius_m)
    return (leaves_m_s > 0.0) & ((pressed_m_s2 <= 0.0) | (rise >= least))


def _along(vectors, normal):
    return np.einsum("ij,ij->i", vectors, normal)
