"""A journey's legs as one path that can be read at any times, in the turning frame and in the other, and the body's turning.

In the air a leg is a polynomial of the inertial frame, on the ground one of the turning frame; each is read in its own and
turned into the other, so that neither loses digits. At the instant of a contact the state is that just before.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ..physics import bernstein, quaternions
from ..physics.budget import spend
from ..physics.spin import Spin
from .journey import Leg
from .path import Path, slope, values

# How far a ball on the ground may turn from one time to the next: where its axis turns too, errors then stay within 1e-4.
_MOST_RAD = 1.0
# So many times as many times as are asked for, and so many more, are the most that come between them.
_MOST_PARTS, _MORE_PARTS = 4, 1_000


@dataclass(frozen=True)
class Trajectory(Path):
    """The Path of all legs, D = 3, each piece in its own frame. grounded (S,): in the turning one; turned_rad (S, K, 3): on
    the ground the integral of the spin relative to it; spin_rad_s (S, 3): the ball's in the air, inertial axes."""

    grounded: np.ndarray
    turned_rad: np.ndarray | None
    spin_rad_s: np.ndarray

    def piece(self, time_s: np.ndarray) -> np.ndarray:
        """Number (n,) of the piece that holds at times (n,); where two meet, the earlier."""
        return np.maximum(self.start_s.searchsorted(time_s, "left") - 1, 0)

    def both(self, spin: Spin, time_s: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """Position and velocity (n, 3) in the turning frame, and the position in the inertial one, at times (n,)."""
        position, velocity = self.at(time_s)
        turning, moving = spin.to_frame(time_s, position, velocity)
        if not self.grounded.any():
            return turning, moving, position
        ground = self.grounded[self.piece(time_s)]
        turning[ground], moving[ground] = position[ground], velocity[ground]
        inertial = np.where(ground[:, None], spin.to_inertial(time_s, turning, moving)[0], position)
        return turning, moving, inertial

    def acceleration(self, spin: Spin, time_s: np.ndarray, position: np.ndarray, velocity: np.ndarray) -> np.ndarray:
        """Acceleration (n, 3) in the turning frame at times (n,), of the path that is at `position` and `velocity` (n, 3) there
        (those of `both`): in the air what bends the inertial path, and the turning frame's own."""
        k = self.piece(time_s)
        acceleration = values(slope(self.path_m_s), k, self.share(k, time_s)) / self.length_s[k][:, None]
        flies = ~self.grounded[k]
        own = spin.own(time_s, position, velocity)
        acceleration[flies] = (spin.turn_back(acceleration, time_s) + own)[flies]
        return acceleration

    @property
    def knots_s(self) -> np.ndarray:
        """Times at which one piece ends and the next begins, inside the path."""
        return self.start_s[(self.start_s > self.begin_s) & (self.start_s < self.end_s)]


def of_legs(legs: Sequence[Leg]) -> Trajectory:
    """The Trajectory of a journey's legs."""
    paths = [leg.path for leg in legs]
    count = [len(p.start_s) for p in paths]
    rows = max(p.path_m.shape[1] for p in paths)

    def all_of(name, first=0, last=3):
        spend(bytes=8 * sum(count) * (rows if name.startswith("path") else 1) * 3)
        return np.concatenate([_padded(getattr(p, name)[..., first:last], rows) for p in paths])

    if len(legs) == 1 and legs[0].surface is None:
        columns = (getattr(paths[0], name) for name in Path.__dataclass_fields__)
        return Trajectory(*columns, np.zeros(count[0], dtype=bool), None, legs[0].spin_rad_s[None].repeat(count[0], 0))
    grounded = np.repeat([leg.surface is not None for leg in legs], count)
    return Trajectory(
        np.concatenate([p.start_s for p in paths]),
        np.concatenate([p.length_s for p in paths]),
        all_of("position_m"),
        all_of("velocity_m_s"),
        all_of("path_m"),
        all_of("path_m_s"),
        paths[0].begin_s,
        paths[-1].end_s,
        grounded,
        _turned(paths, rows) if np.any(grounded) else None,
        np.repeat([leg.spin_rad_s for leg in legs], count, axis=0),
    )


def _padded(a, rows):
    """An array (S, D), or control points (S, K, D) as of a higher degree, (S, rows, D)."""
    if a.ndim < 3 or a.shape[1] == rows:
        return a
    return np.moveaxis(bernstein.of_degree(np.moveaxis(a, 1, 0), rows - 1), 0, 1)


def _turned(paths, rows):
    """Control points (S, K, 3) of the integral of the spin relative to the ground; 0 in the air."""
    none = [np.zeros((len(p.start_s), rows, 3)) for p in paths]
    return np.concatenate(
        [_padded(p.path_m[..., 3:], rows) if p.path_m.shape[2] > 3 else n for p, n in zip(paths, none, strict=True)]
    )


def attitudes(trajectory: Trajectory, spin: Spin, time_s: np.ndarray) -> np.ndarray:
    """Unit quaternions (n, 4), w first, of how a body has turned in the turning frame at times (n,), rising, since the path
    began; 1, 0, 0, 0 there."""
    if trajectory.grounded.all() and not trajectory.turned_rad.any():
        return np.tile([1.0, 0.0, 0.0, 0.0], (len(time_s), 1))
    marks = np.unique(np.concatenate([[trajectory.begin_s], trajectory.start_s, time_s]))
    marks = parted(trajectory, marks[marks >= trajectory.begin_s])
    begin, end = marks[:-1], marks[1:]
    k = trajectory.piece(end)
    turns = _air_turns(trajectory, spin, k, begin, end)
    if trajectory.turned_rad is not None:
        ground = trajectory.grounded[k]
        turns[ground] = _ground_turns(trajectory, k[ground], begin[ground], end[ground])
    whole = np.concatenate([[[1.0, 0.0, 0.0, 0.0]], quaternions.products(turns)])
    return whole[np.searchsorted(marks, np.maximum(time_s, trajectory.begin_s))]


def parted(trajectory: Trajectory, marks: np.ndarray) -> np.ndarray:
    """Times (n,), rising, with more between them where a body turns far on the ground from one to the next."""
    if trajectory.turned_rad is None or len(marks) < 2:
        return marks
    begin, length = marks[:-1], np.diff(marks)
    fastest = np.max(np.linalg.norm(slope(trajectory.turned_rad), axis=2), axis=1) / trajectory.length_s
    parts = np.maximum(fastest[trajectory.piece(marks[1:])] * length / _MOST_RAD, 1.0)
    most = _MOST_PARTS * len(marks) + _MORE_PARTS
    parts = np.ceil(parts * min(1.0, most / np.sum(parts))).astype(int)
    if parts.max() == 1:
        return marks
    which = np.repeat(np.arange(len(parts)), parts)
    share = (np.arange(len(which)) - np.repeat(np.cumsum(parts) - parts, parts)) / parts[which]
    return np.append(begin[which] + share * length[which], marks[-1])


def _ground_turns(trajectory, k, begin, end):
    """Turns (n, 4) in the turning frame of bodies whose spin a piece's polynomial has the integral of: to the fourth order in the time.

    Turnings about axes that turn do not add up. Of two halves, by a and then by b, the sum lacks b x a/2 if each were about one axis; with a spin
    that changes steadily it lacks 2/3 b x a: Magnus' second term (Hairer, Lubich & Wanner, Geometric Numerical Integration, section IV.7).
    """
    parts = [trajectory.share(k, time_s) for time_s in (begin, 0.5 * (begin + end), end)]
    begins, halfway, ends = (values(trajectory.turned_rad, k, s) for s in parts)
    first, second = halfway - begins, ends - halfway
    whole = first + second
    # What turns farther from one time to the next is seen to turn anyhow; there the series would run away.
    near = np.add.reduce(whole * whole, axis=1, keepdims=True) < np.pi**2
    return quaternions.turning(whole + np.where(near, 2.0 / 3.0, 0.0) * np.cross(second, first))


def _air_turns(trajectory, spin, k, begin, end):
    """Turns (n, 4) in the turning frame of bodies whose spin is constant in the inertial one."""
    spinning = spin.turn_back(trajectory.spin_rad_s[k], begin)
    return quaternions.times(spin.back(begin, end), quaternions.turning(spinning * (end - begin)[:, None]))
