"""The path of one body through one leg, as pieces of polynomials."""

from dataclasses import dataclass

import numpy as np

from ..physics import bernstein
from ..physics.budget import spend
from ..physics.integrate import Step

_LONG = 16  # times to a piece: where there are so many, what holds for a piece is taken once, not once for each of them
_AT_ONCE = 20_000  # times read in one go: their polynomials then stay within a few tens of megabytes


@dataclass(frozen=True)
class Path:
    """The path of one body, in S pieces: start_s and length_s (S,), states (S, D) at each start, and the change since then,
    Bernstein coefficients in s = (t - start)/length, path_m and path_m_s (S, K, D). It holds from begin_s to end_s.

    In the air it is inertial and D is 3; on the ground it is of the room's frame and D is 6 (`ground.py`).
    """

    start_s: np.ndarray
    length_s: np.ndarray
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    path_m: np.ndarray
    path_m_s: np.ndarray
    begin_s: float
    end_s: float

    def piece(self, time_s: np.ndarray) -> np.ndarray:
        """Number (n,) of the piece that holds at times (n,); where two meet, the later."""
        return np.maximum(self.start_s.searchsorted(time_s, "right") - 1, 0)

    def share(self, k: np.ndarray, time_s: np.ndarray) -> np.ndarray:
        """s (n,) of times (n,) in pieces k (n,)."""
        return (time_s - self.start_s[k]) / self.length_s[k]

    def at(self, time_s: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Position and velocity (n, D), (n, D) at times (n,) inside [begin_s, end_s]."""
        if len(time_s) > _AT_ONCE:
            parts = [self.at(time_s[i : i + _AT_ONCE]) for i in range(0, len(time_s), _AT_ONCE)]
            return tuple(np.concatenate(column) for column in zip(*parts, strict=True))
        spend(samples=len(time_s))
        k = self.piece(time_s)
        s = self.share(k, time_s)
        weights = bernstein.weights(self.path_m.shape[1] - 1, s)
        alike = self.path_m_s.shape[1] == len(weights)
        faster = _weighed(weights, self.path_m_s, k) if alike else values(self.path_m_s, k, s)
        return self.position_m[k] + _weighed(weights, self.path_m, k), self.velocity_m_s[k] + faster


def of_no_length(time_s: float, position: np.ndarray, velocity: np.ndarray) -> Path:
    """A path of no length, at a state (D,), (D,)."""
    none = np.zeros((1, 2, len(position)))
    return Path(np.array([time_s]), np.ones(1), position[None], velocity[None], none, none, time_s, time_s)


class StepLog:
    """The steps that N bodies take together, kept until they are cut into the path of each."""

    def __init__(self):
        self._steps, self._owners, self._begins = [], [], []

    def begin(self, position: np.ndarray, velocity: np.ndarray) -> None:
        """Bodies begin at states (3, N): their paths tell them."""

    def keep(self, step: Step, owners: np.ndarray, begin_s: np.ndarray, _share: object = None) -> None:
        """Keep a Step of the bodies numbered owners (M,), rising, that begins at begin_s (M,)."""
        spend(bytes=2 * (step.path_m.nbytes + step.position_m.nbytes))
        self._steps.append(step)
        self._owners.append(owners)
        self._begins.append(begin_s)

    def paths(self, begin_s: np.ndarray, end_s: np.ndarray, position: np.ndarray, velocity: np.ndarray) -> list[Path]:
        """The Path of each body in order, from begin_s to end_s (N,); of no length, at its state (D, N), of one that took no step."""
        paths = [None] * len(begin_s)
        for i, pieces in self._pieces() if self._steps else ():
            paths[i] = Path(*pieces, float(begin_s[i]), float(end_s[i]))
        for i in (i for i, path in enumerate(paths) if path is None):
            paths[i] = of_no_length(float(begin_s[i]), position[:, i].copy(), velocity[:, i].copy())
        return paths

    def _pieces(self):
        """(number, columns of a Path) of each body that took a step."""
        if len(self._steps) == 1:
            yield from self._single_pieces()
            return
        owner = np.concatenate(self._owners)
        order = np.argsort(owner, kind="stable")

        def column(values):
            spend()
            return np.concatenate([np.ascontiguousarray(v.transpose(-1, *range(v.ndim - 1))) for v in values])[order]

        def control(name):
            points = [getattr(s, name) for s in self._steps]
            degree = max(len(p) for p in points) - 1
            return column([p if len(p) > degree else bernstein.of_degree(p, degree) for p in points])

        lengths = [np.broadcast_to(s.length_s, who.shape) for s, who in zip(self._steps, self._owners, strict=True)]
        states = (column([getattr(s, n) for s in self._steps]) for n in ("position_m", "velocity_m_s"))
        columns = [column(self._begins), column(lengths), *states, control("path_m"), control("path_m_s")]
        numbers, first = np.unique(owner[order], return_index=True)
        for i, low, high in zip(numbers.tolist(), first, [*first[1:], len(owner)], strict=True):
            yield i, [c[low:high] for c in columns]

    def _single_pieces(self):
        """The same where all is one step: nothing to be put in order."""
        (step,), (owners,), (begin_s,) = self._steps, self._owners, self._begins
        spend()
        length_s = np.broadcast_to(step.length_s, owners.shape)
        arrays = (step.position_m, step.velocity_m_s, step.path_m, step.path_m_s)
        columns = [begin_s, length_s, *(np.ascontiguousarray(a.transpose(-1, *range(a.ndim - 1))) for a in arrays)]
        for k, i in enumerate(owners.tolist()):
            yield i, [column[k : k + 1] for column in columns]


class EndLog:
    """Where N bodies have come to, and how far round the axis, without the steps that took them there: position_m and velocity_m_s
    (3, N), inertial; swept_rad (N,), the change of the inertial azimuth."""

    def begin(self, position: np.ndarray, velocity: np.ndarray) -> None:
        """They begin at states (3, N)."""
        self.position_m, self.velocity_m_s = position.copy(), velocity.copy()
        self.swept_rad = np.zeros(position.shape[1])

    def keep(self, step: Step, owners: np.ndarray, _begin_s: np.ndarray, share: np.ndarray) -> None:
        """Follow a Step of the bodies numbered owners (M,) as far as a share (M,) of it."""
        place, moving = step.at(share)
        before = self.position_m[:, owners]
        across = before[0] * place[1] - before[1] * place[0]
        self.swept_rad[owners] += np.arctan2(across, before[0] * place[0] + before[1] * place[1])
        self.position_m[:, owners] = place
        self.velocity_m_s[:, owners] = moving


def values(control: np.ndarray, k: np.ndarray, s: np.ndarray) -> np.ndarray:
    """Values (n, D) of the pieces k (n,) of control points (S, K, D) at s (n,)."""
    return _weighed(bernstein.weights(control.shape[1] - 1, s), control, k)


def _weighed(weights, control, k):
    """The same by weights (K, n) of the control points."""
    if len(control) == 1:
        return weights.T @ control[0]
    if len(control) * _LONG > len(k):
        return np.einsum("kn,nkd->nd", weights, control[k])
    out, order = np.empty((len(k), control.shape[2])), None
    if (k[1:] < k[:-1]).any():
        order = np.argsort(k, kind="stable")
        weights, k = weights[:, order], k[order]
    edges = k.searchsorted(np.arange(len(control) + 1)).tolist()
    for own, low, high in zip(control, edges[:-1], edges[1:], strict=True):
        np.matmul(weights[:, low:high].T, own, out=out[low:high])
    if order is None:
        return out
    back = np.empty_like(out)
    back[order] = out
    return back


def slope(control: np.ndarray) -> np.ndarray:
    """Control points (S, max(K - 1, 1), D) of the derivative of polynomials of control points (S, K, D)."""
    if control.shape[1] == 1:
        return np.zeros_like(control)
    return (control.shape[1] - 1) * np.diff(control, axis=1)
