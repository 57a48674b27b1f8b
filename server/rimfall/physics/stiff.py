"""The stepper for bodies that the air all but carries: mist, bubbles, balloons. Implicit, so steps need not follow the drag.

Such a body stops against the air in milliseconds and then settles for minutes; an explicit step would have to stay as
short as the stopping. Here a step is a collocation polynomial: five Radau points, order 9, damped at infinity. Source:
Hairer & Wanner, Solving Ordinary Differential Equations II (2nd ed., 1996), section IV.5 and, for the error estimate,
IV.8. Arrays are (3, N) inside, as in `integrate.py`, and a step comes back in the same form.
"""

import numpy as np

from . import bernstein
from .budget import spend
from .integrate import JUST_AFTER, Step

_POINTS = 5


def _radau():
    """Nodes (5,), and the matrices (5, 5) that turn accelerations at the nodes into velocity, position and powers."""
    legendre = np.polynomial.legendre.Legendre.basis
    nodes = np.sort(np.real((legendre(_POINTS) - legendre(_POINTS - 1)).roots())) / 2 + 0.5
    powers = np.arange(_POINTS)
    to_powers = np.linalg.inv(nodes[:, None] ** powers)
    once = nodes[:, None] ** (powers + 1) / (powers + 1)
    twice = nodes[:, None] ** (powers + 2) / ((powers + 1) * (powers + 2))
    return nodes, once @ to_powers, twice @ to_powers, to_powers


_NODES, _A, _AA, _TO_POWERS = _radau()
_RATES = np.linalg.eigvals(np.linalg.inv(_A))
_GAMMA = 1.0 / float(np.real(_RATES[np.argmin(np.abs(np.imag(_RATES)))]))  # of the method's one real rate
_PROBE = 1e-9  # of the state: far less than the slip of what the air carries, which may be 1e-6 m/s
_ROUNDING = 64 * np.finfo(float).eps  # of the speed: no nearer can the stages come to agreeing
_AGREED = 1e-4  # of the error allowed: how far the stages may still be from agreeing
_NO_RATE_1_S = 1e-300  # less, and its inverse would be no number
_FIRST_S = 1e-4  # a first length to try; it grows or shrinks sixfold a step


def _longest_step(elapsed_s, stops_s, limit_s, velocity, reach_m, longest_s):
    """The longest length allowed from elapsed_s, at most longest_s, and the stop (or the limit) that no step may cross.

    velocity (3, M), reach_m (a number or (M,)): no body goes further than that in the plane of rotation.
    """
    end_s = min(next((t for t in stops_s if t > elapsed_s * (1 + 1e-14)), limit_s), limit_s)
    fastest = np.max(np.hypot(velocity[0], velocity[1]) / reach_m)
    return min(end_s - elapsed_s, longest_s, 1.0 / max(fastest, _NO_RATE_1_S)), end_s


class StiffStepper:
    """Steps N bodies in lock step through a force with steps that drag does not bound.

    accelerate: as `WindowStepper`'s force. limit_s: when the last body is done; absolute, stops_s (S,), jumps, reach_m, longest_s: as there.
    """

    def __init__(
        self,
        accelerate,
        position,
        velocity,
        limit_s,
        *,
        absolute,
        stops_s=(),
        reach_m=np.inf,
        longest_s=np.inf,
        jumps=False,
    ):
        self._position, self._velocity, self._limit_s = position, velocity, limit_s
        self._stops_s, self._reach_m, self._absolute = sorted(stops_s), reach_m, absolute
        self._longest_s, self._jumps = longest_s, jumps
        self._elapsed_s, self._guess = 0.0, None
        self._set_force(accelerate)
        self._length_s = _FIRST_S

    def _set_force(self, force):
        self._force = force
        self._many = force.take(np.tile(np.arange(self._position.shape[1]), _POINTS))

    @property
    def _begin_s(self):
        """When a step begins: past a jump that may be there."""
        return JUST_AFTER * self._elapsed_s if self._jumps else self._elapsed_s

    @property
    def done(self):
        """Whether no body is left or the limit is reached."""
        return self._position.shape[1] == 0 or self._elapsed_s >= self._limit_s

    def keep(self, mask):
        """Go on with the bodies of the mask (N,) only."""
        self._position, self._velocity = self._position[:, mask], self._velocity[:, mask]
        self._reach_m = self._reach_m[mask] if np.ndim(self._reach_m) else self._reach_m
        if self._guess is not None:
            self._guess = self._guess[0][:, :, mask], self._guess[1]
        self._set_force(self._force.take(mask))

    def step(self) -> Step:
        """Take the next accepted step and return it."""
        longest, end_s = _longest_step(
            self._elapsed_s, self._stops_s, self._limit_s, self._velocity, self._reach_m, self._longest_s
        )
        start = self._force.at(self._begin_s, self._position, self._velocity)
        by_velocity, by_position = self._slopes(start)
        while True:
            length = min(self._length_s, longest)
            with np.errstate(over="ignore", invalid="ignore"):  # a guess that runs away is taken back
                stages, settled = self._solve(start, length, by_velocity, by_position)
            error = self._error(start, stages, length, by_velocity) if settled else np.inf
            if error <= 1.0:
                break
            self._length_s = length * (max(0.2, 0.9 * error ** (-1 / 6)) if settled else 0.25)
        wanted = length * min(6.0, 0.9 * max(error, 1e-12) ** (-1 / 6))
        self._length_s = max(wanted, self._length_s) if length == longest else wanted
        step = self._path(stages, length)
        self._advance(step, stages, length, end_s)
        return step

    def _advance(self, step, stages, length, end_s):
        at_end = end_s - self._elapsed_s - length <= 1e-14 * end_s
        self._elapsed_s = end_s if at_end else self._elapsed_s + length
        self._position, self._velocity = step.end
        self._guess = np.tensordot(_TO_POWERS, stages, axes=1), length

    def _slopes(self, start):
        """Derivatives (N, 3, 3) of the acceleration by velocity and by position, from small changes."""
        out = []
        for which in (1, 0):
            columns = []
            for axis in range(3):
                state = [self._position, self._velocity]
                change = _PROBE * np.maximum(1.0, np.abs(state[which][axis]))
                state[which] = state[which].copy()
                state[which][axis] += change
                columns.append((self._force.at(self._begin_s, *state) - start) / change)
            out.append(np.moveaxis(np.array(columns), (0, 1, 2), (2, 1, 0)))
        return out

    def _solve(self, start, length, by_velocity, by_position):
        """Accelerations (5, 3, N) at the nodes that agree with the states they lead to, and whether they were found."""
        bodies = self._position.shape[1]
        spend(1)
        system = (
            np.eye(3 * _POINTS)
            - length * np.einsum("ij,nab->niajb", _A, by_velocity).reshape(bodies, 3 * _POINTS, -1)
            - length**2 * np.einsum("ij,nab->niajb", _AA, by_position).reshape(bodies, 3 * _POINTS, -1)
        )
        inverse = np.linalg.inv(system)
        times = np.repeat(self._elapsed_s + _NODES * length, bodies)

        def correction(stages):
            wrong = stages - self._at_nodes(stages, length, times)
            return np.einsum("nij,jn->in", inverse, wrong.reshape(3 * _POINTS, bodies)).reshape(stages.shape)

        # Drag is so steep here that a poor guess of the speed runs away: take the better of two.
        trials = [(guess, correction(guess)) for guess in self._guesses(start, length)]
        stages, change = min(trials, key=lambda trial: np.max(np.abs(trial[1])))
        enough = max(_AGREED * self._absolute, _ROUNDING * float(np.max(np.abs(self._velocity))))
        before = np.inf
        for _ in range(12):
            stages = stages - change
            size = length * np.max(np.abs(change))
            if size <= enough:
                return stages, True
            if not size < 2 * before:
                break
            before = size
            change = correction(stages)
        return stages, False

    def _guesses(self, start, length):
        """Guesses of the accelerations at the nodes: all as at the start; the last step's polynomial carried on."""
        yield np.broadcast_to(start, (_POINTS, *start.shape))
        if self._guess is not None:
            powers, before = self._guess
            yield np.tensordot((1.0 + _NODES * length / before)[:, None] ** np.arange(_POINTS), powers, axes=1)

    def _at_nodes(self, stages, length, times):
        spend(0, len(times))
        flat = stages.reshape(_POINTS, -1)
        shape = stages.shape
        velocity = self._velocity + length * (_A @ flat).reshape(shape)
        position = (
            self._position + length * _NODES[:, None, None] * self._velocity + length**2 * (_AA @ flat).reshape(shape)
        )
        stages = self._many.at(times, *(np.moveaxis(a, 1, 0).reshape(3, -1) for a in (position, velocity)))
        return np.moveaxis(stages.reshape(3, _POINTS, -1), 0, 1)

    def _error(self, start, stages, length, by_velocity):
        """Error of the step, 1 is allowed: how far the polynomial misses the acceleration at the start, damped as drag
        would damp it."""
        missed = start - np.tensordot(_TO_POWERS[0], stages, axes=1)
        damped = np.linalg.solve(np.eye(3) - length * _GAMMA * by_velocity, (length * _GAMMA * missed).T[:, :, None])[
            :, :, 0
        ]
        return min(length, 1.0) * float(np.max(np.abs(damped))) / self._absolute

    def _path(self, stages, length):
        """The step with its path: the collocation polynomial, integrated once and twice."""
        powers = np.tensordot(_TO_POWERS, stages, axes=1)
        m = np.arange(_POINTS)[:, None, None]
        none = np.zeros((1, *self._position.shape))
        path_m_s = np.concatenate([none, length * powers / (m + 1), none])
        path_m = np.concatenate([none, length * self._velocity[None], length**2 * powers / ((m + 1) * (m + 2))])
        controls = bernstein.from_powers(path_m), bernstein.from_powers(path_m_s)
        return Step(self._elapsed_s, length, self._position, self._velocity, *controls)
