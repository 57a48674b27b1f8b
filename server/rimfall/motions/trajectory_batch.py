"""The paths of many bodies in the air, read together: a drop's stream and the drop after it are one."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import partial

import numpy as np

from ..physics import bernstein, frames, turned
from ..physics.aboard import of_frame
from ..physics.budget import spend
from ..physics.integrate import Step
from ..physics.protocols import Surface
from ..physics.spin import Spin
from .path import Path, slope, values

_AT_ONCE = 20_000  # times read in one go: their polynomials then stay within a few tens of megabytes


@dataclass(frozen=True)
class TrajectoryBatch:
    """The paths of N bodies, inertial, their pieces one after another: first (N + 1,) numbers of pieces; arrays of the pieces as
    in `path.Path`; begin_s and end_s (N,) of each body."""

    first: np.ndarray
    start_s: np.ndarray
    length_s: np.ndarray
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    path_m: np.ndarray
    path_m_s: np.ndarray
    begin_s: np.ndarray
    end_s: np.ndarray
    _key: np.ndarray

    @property
    def nbytes(self) -> int:
        """How much memory it takes."""
        return sum(getattr(self, name).nbytes for name in self.__dataclass_fields__)

    def inertial(self, body: np.ndarray, time_s: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """Position, velocity, and acceleration (n, 3) of bodies (n,) at times (n,); before its beginning and after its end a
        body is where it begins and ends."""
        k, s = self._share(body, np.clip(time_s, self.begin_s[body], self.end_s[body]))
        return *self._states(k, s), values(slope(self.path_m_s), k, s) / self.length_s[k][:, None]

    def turning(self, spin: Spin, body: np.ndarray, time_s: np.ndarray) -> tuple[np.ndarray, ...]:
        """The same in the turning frame."""
        return _in_parts(partial(self._turning, spin, True), body, time_s)

    def moving(self, spin: Spin, body: np.ndarray, time_s: np.ndarray) -> tuple[np.ndarray, ...]:
        """Position and velocity alone in the turning frame."""
        return _in_parts(partial(self._turning, spin, False), body, time_s)

    def _turning(self, spin, accelerated, body, time_s):
        spend(samples=len(time_s))
        time_s = np.clip(time_s, self.begin_s[body], self.end_s[body])
        k, s = self._share(body, time_s)
        angle, omega = spin.angle_rad(time_s), spin.rate_rad_s(time_s)
        position, velocity = frames.inertial_to_rotating(*self._states(k, s), angle, omega)
        if not accelerated:
            return position, velocity
        acceleration = values(slope(self.path_m_s), k, s) / self.length_s[k][:, None]
        own = of_frame(omega, spin.change_rad_s2(time_s), position.T, velocity.T).T
        return position, velocity, frames.turn(acceleration, -angle) + own

    def _share(self, body, time_s):
        """Number (n,) of the piece that holds for each body and time inside its own, and how far through it that is."""
        k = self._piece(body, time_s)
        return k, (time_s - self.start_s[k]) / self.length_s[k]

    def _states(self, k, s):
        """Inertial position and velocity (n, 3) in pieces k (n,) at s (n,)."""
        return self.position_m[k] + values(self.path_m, k, s), self.velocity_m_s[k] + values(self.path_m_s, k, s)

    def first_fall_s(self, surface: Surface, spin: Spin) -> np.ndarray:
        """When (N,) each body's centre first comes down through a surface from the side of its normal; nan where it never does."""
        out = np.full(len(self.begin_s), np.nan)
        if not len(out):
            return out
        owner = np.repeat(np.arange(len(out)), np.diff(self.first))
        states = (np.ascontiguousarray(np.moveaxis(a, 0, -1)) for a in (self.position_m, self.velocity_m_s))
        powers = (np.ascontiguousarray(np.moveaxis(a, 0, -1)) for a in (self.path_m, self.path_m_s))
        step = Step(0.0, self.length_s, *states, *powers)
        seen = step.position_m, step.path_m
        position, control = turned.path(step, self.start_s, spin) if surface.turned else seen
        gap = surface.gap_control(position, control, np.zeros(len(owner)))
        s = bernstein.first_fall(gap)
        follows = np.append(owner[1:] == owner[:-1], False)
        until_s = np.where(follows, np.append(self.start_s[1:], np.inf), self.end_s[owner])
        between = (
            follows & np.isinf(s) & (gap[-1] > 0) & (np.append(gap[0, 1:], 1.0) <= 0)
        )  # from piece to piece, by rounding
        time_s = self.start_s + np.where(between, 1.0, s) * self.length_s
        falls = np.flatnonzero(time_s <= until_s)
        bodies, at = np.unique(owner[falls], return_index=True)
        out[bodies] = time_s[falls[at]]
        return out

    def _piece(self, body, time_s):
        """Number (n,) of the piece that holds for each body and time."""
        piece = np.searchsorted(self._key, _key(body, time_s, self.begin_s, self.end_s), "right") - 1
        return np.clip(piece, self.first[body], self.first[body + 1] - 1)


def _in_parts(read, body, time_s):
    """What `read` gives of bodies at times, a part of them at once."""
    if len(body) <= _AT_ONCE:
        return read(body, time_s)
    parts = [read(body[k : k + _AT_ONCE], time_s[k : k + _AT_ONCE]) for k in range(0, len(body), _AT_ONCE)]
    return tuple(np.concatenate(column) for column in zip(*parts, strict=True))


def _key(body, time_s, begin_s, end_s):
    """One rising figure for body and time: the body's number, and how far through its own time."""
    whole = np.maximum(end_s[body] - begin_s[body], 1e-12)
    return body + np.clip((time_s - begin_s[body]) / whole, 0.0, 1.0) * 0.999


def of_paths(paths: Sequence[Sequence[Path]]) -> TrajectoryBatch:
    """The TrajectoryBatch of N lists of Paths, each list those of one body, one after another; all inertial."""
    paths = [[trimmed(p) for p in one] for one in paths]
    flat = [p for one in paths for p in one]
    columns = [_column([getattr(p, name) for p in flat]) for name in _COLUMNS] if flat else _NO_COLUMNS
    counts = np.array([sum([len(p.start_s) for p in one]) for one in paths], dtype=int)
    first = np.concatenate([[0], np.cumsum(counts)]).astype(int)
    begin_s, end_s = np.array([one[0].begin_s for one in paths]), np.array([one[-1].end_s for one in paths])
    key = _key(np.repeat(np.arange(len(paths)), counts), columns[0], begin_s, end_s)
    return TrajectoryBatch(first, *columns, begin_s, end_s, key)


_COLUMNS = tuple(Path.__dataclass_fields__)[:6]
_NO_COLUMNS = [np.empty(shape) for shape in (0, 0, (0, 3), (0, 3), (0, 1, 3), (0, 1, 3))]


def _column(pieces):
    """What a column of so many Paths is together; polynomials of the highest degree among them."""
    rows = [len(piece[0]) if piece.ndim > 2 else 0 for piece in pieces]
    most = max(rows)
    if min(rows) == most:
        spend(bytes=sum([piece.nbytes for piece in pieces]))
        return np.concatenate(pieces)
    of_piece = np.repeat(rows, [len(piece) for piece in pieces])
    spend(bytes=8 * len(of_piece) * most * pieces[0].shape[2])
    out = np.empty((len(of_piece), most, pieces[0].shape[2]))
    for count in set(rows):
        alike = np.concatenate([piece for piece, own in zip(pieces, rows, strict=True) if own == count])
        out[of_piece == count] = np.moveaxis(bernstein.of_degree(np.moveaxis(alike, 1, 0), most - 1), 0, 1)
    return out


def trimmed(path: Path) -> Path:
    """A path without the pieces that begin after it has ended."""
    if len(path.start_s) == 1 or path.start_s[-1] < path.end_s:
        return path
    count = max(int(np.searchsorted(path.start_s, path.end_s, "left")), 1)
    return replace(path, **{name: getattr(path, name)[:count] for name in _COLUMNS})
