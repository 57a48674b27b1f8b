"""The one batched stepper: many bodies in lock step, order 8, dense output of order 7, in the inertial frame.

Why the inertial frame: there the turning frame's whole part of the motion is a straight line, which any Runge-Kutta step
follows exactly; the error budget goes to the forces alone. Why the stages hold accelerations only: position is the
integral of velocity, so both come from the same sums (A and A^2 of the method), at half the memory traffic.

Inside, arrays are (3, N): a component is contiguous, and the method's sums are small matrix products. Source of the
method and of its error estimate: Hairer, Norsett & Wanner, Solving Ordinary Differential Equations I, section II.10.
"""

from dataclasses import dataclass

import numpy as np

from . import bernstein, dop853
from .budget import spend

AT_ONCE = 5_000  # bodies
_NO_RATE_1_S = 1e-300  # less, and its inverse would be no number
JUST_AFTER = 1.0 + 1e-11  # of a time: on the far side of a jump there
STAGES = 16  # 12 of the step itself; stage 12 is its end, 13 to 15 serve the dense output


def _method():
    """The whole tableau (16, 16) with the step's end as row 12."""
    a = np.zeros((STAGES, STAGES))
    rows = [(), *dop853.STAGES, dop853.WEIGHTS, *dop853.EXTRA_STAGES]
    for i, row in enumerate(rows):
        a[i, : len(row)] = row
    return a


def _dense_basis():
    """(8, 7) powers of s of the seven nested terms of the dense output, s(F0 + (1-s)(F1 + s(F2 + ...)))."""
    basis = np.zeros((8, 7))
    term = np.zeros(8)
    term[0] = 1.0
    for k in range(7):
        shifted = np.concatenate([[0.0], term[:-1]])
        term = shifted if k % 2 == 0 else term - shifted
        basis[:, k] = term
    return basis


def _dense_from(end, start, last, upper):
    """Rows of the seven dense terms, as combinations of accelerations, from those of the change over the step,
    its slope at the start and at the end, and the four upper terms."""
    return np.vstack([end, start - end, 2 * end - last - start, upper])


NODES = np.array(dop853.NODES)
TIMES_A = _method()
TIMES_AA = TIMES_A @ TIMES_A
_E3 = np.array(dop853.ERROR_3)
_E5 = np.array(dop853.ERROR_5)
ERRORS = np.stack([_E5, _E3, _E5 @ TIMES_A[:13, :13], _E3 @ TIMES_A[:13, :13]])
_UPPER = np.array(dop853.DENSE)
_UNIT = np.eye(STAGES)
_BASIS = _dense_basis()
DENSE_VELOCITY = bernstein.from_powers(_BASIS) @ _dense_from(TIMES_A[12], _UNIT[0], _UNIT[12], _UPPER)
DENSE_POSITION = bernstein.from_powers(_BASIS) @ _dense_from(
    TIMES_AA[12], np.zeros(STAGES), TIMES_A[12], _UPPER @ TIMES_A
)


@dataclass(frozen=True)
class Step:
    """One step of M bodies: elapsed_s at its start and length_s (numbers, or (M,)), states (3, M) and the path inside it.

    position_m and velocity_m_s are the state at the start. path_m and path_m_s (K, 3, M) are Bernstein coefficients, in
    s = (elapsed - start)/length, of the change since the start: the first row is zero, the last the change at the end.
    """

    elapsed_s: np.ndarray | float
    length_s: np.ndarray | float
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    path_m: np.ndarray
    path_m_s: np.ndarray

    def at(self, s, some=slice(None)):
        """Position and velocity (3, M) at s (M,) of the bodies of an index, of all unless given."""
        return (
            self.position_m[:, some] + bernstein.value(self.path_m[..., some], s),
            self.velocity_m_s[:, some] + bernstein.value(self.path_m_s[..., some], s),
        )

    @property
    def end(self):
        """Position and velocity (3, M) at the end."""
        return self.position_m + self.path_m[-1], self.velocity_m_s + self.path_m_s[-1]

    def only(self, mask):
        """The same step of the bodies of the mask (M,)."""
        times = (t[mask] if isinstance(t, np.ndarray) else t for t in (self.elapsed_s, self.length_s))
        arrays = (self.position_m, self.velocity_m_s, self.path_m, self.path_m_s)
        return Step(*times, *(a[..., mask] for a in arrays))


def longest_step(elapsed_s, stops_s, limit_s, velocity, reach_m, longest_s):
    """The longest length allowed from elapsed_s, at most longest_s, and the stop (or the limit) that no step may cross.

    velocity (3, M), reach_m (a number or (M,)): no body goes further than that in the plane of rotation.
    """
    end_s = min(next((t for t in stops_s if t > elapsed_s * (1 + 1e-14)), limit_s), limit_s)
    fastest = np.max(np.hypot(velocity[0], velocity[1]) / reach_m)
    return min(end_s - elapsed_s, longest_s, 1.0 / max(fastest, _NO_RATE_1_S)), end_s


class ExplicitStepper:
    """Steps N bodies through forces; `step` gives the next Step, `keep` drops bodies that are done.

    accelerate: a force (below) with `at(elapsed_s, position, velocity)` -> (3, N) m/s2 and `take(mask)`.
    limit_s: elapsed time at which the last body is done. stops_s: elapsed times no step may cross (kinks of the force).
    jumps: whether the force jumps there, its value at that instant being the one before.
    reach_m (a number or (N,)): in one step no body goes further than this, in the plane of rotation. longest_s: of a step.
    The error of a step, per body, is at most absolute + relative |value| in metres, and the same over lasts_s in metres a
    second: an error of the velocity grows with the time it still flies. lasts_s (a number or (N,)).
    """

    def __init__(
        self,
        accelerate,
        position,
        velocity,
        limit_s,
        *,
        absolute,
        relative=0.0,
        lasts_s=1.0,
        stops_s=(),
        reach_m=np.inf,
        longest_s=np.inf,
        jumps=False,
    ):
        self._force, self._jumps = accelerate, jumps
        self._position, self._velocity = position, velocity
        self._limit_s, self._stops_s, self._reach_m = limit_s, sorted(stops_s), reach_m
        self._absolute, self._relative, self._lasts_s = absolute, relative, lasts_s
        self._longest_s = longest_s
        self._elapsed_s = 0.0
        self._start = accelerate.at(0.0, position, velocity)
        self._length_s = self._first_length()
        self._rows = None

    @property
    def done(self):
        """Whether no body is left or the limit is reached."""
        return self._position.shape[1] == 0 or self._elapsed_s >= self._limit_s

    def _scale(self, value):
        return self._absolute + self._relative * np.abs(value)

    def _first_length(self):
        """A first length from how fast the acceleration changes (Hairer, Norsett & Wanner, section II.4)."""
        if self._position.shape[1] == 0:
            return self._limit_s
        probe = 1e-3
        moved = self._position + probe * self._velocity
        changed = self._force.at(probe, moved, self._velocity + probe * self._start) - self._start
        allowed = self._scale(self._velocity) / self._lasts_s
        size = max(np.max(np.abs(changed) / allowed) / probe, np.max(np.abs(self._start) / allowed))
        return 0.3 if size <= 1e-10 else 3.0 * (0.01 / size) ** 0.125

    def step(self) -> Step:
        """Take the next accepted step."""
        stages, length, end_s = self._accepted()
        step = self._dense(stages, length)
        self._advance(stages, length, end_s)
        return step

    def _accepted(self):
        """Stages (16, 3, N), the first 13 filled, and length of the next step, and the stop or limit ahead of it."""
        longest, end_s = longest_step(
            self._elapsed_s, self._stops_s, self._limit_s, self._velocity, self._reach_m, self._longest_s
        )
        growth = 10.0
        while True:
            length = min(self._length_s, longest)
            with np.errstate(over="ignore", invalid="ignore"):  # a trial far too long runs away, and is taken back
                stages, error = self._try(length)
            if error <= 1.0:
                break
            self._length_s = length * (max(0.2, 0.9 * error**-0.125) if np.isfinite(error) else 0.2)
            growth = 1.0
        wanted = length * min(growth, 0.9 * error**-0.125 if error > 0 else growth)
        # A step cut short by a stop says nothing against the length that was wanted before it.
        self._length_s = max(wanted, self._length_s) if length == longest else wanted
        return stages, length, end_s

    def _advance(self, stages, length, end_s):
        """The state at the end of a step."""
        at_end = end_s - self._elapsed_s - length <= 1e-14 * end_s
        self._elapsed_s = end_s if at_end else self._elapsed_s + length
        self._position, self._velocity = self._sums(_shares(length), 12)
        self._start = stages[12].copy()
        if self._jumps and at_end:
            self._start = self._force.at(JUST_AFTER * end_s, self._position, self._velocity)

    def keep(self, mask):
        """Go on with the bodies of the mask (N,) only."""
        self._force = self._force.take(mask)
        self._position, self._velocity = self._position[:, mask], self._velocity[:, mask]
        self._start = self._start[:, mask]
        self._reach_m = self._reach_m[mask] if np.ndim(self._reach_m) else self._reach_m
        self._lasts_s = self._lasts_s[mask] if np.ndim(self._lasts_s) else self._lasts_s
        self._rows = None

    def propagate(self):
        """Step to the limit; the state (3, N), (3, N) there. No dense output is made."""
        while not self.done:
            self._advance(*self._accepted())
        return self._position, self._velocity

    def _sums(self, shares, i):
        """Position and velocity (3, N) of stage i: one product, whose rows are the start and the stages before it."""
        rows = self._rows[: i + 2].reshape(i + 2, -1)
        return (shares[i, :, : i + 2] @ rows).reshape(2, *self._position.shape)

    def _try(self, length):
        """The accelerations (16, 3, N), the first 13 filled, of a step of this length, and its error (1 is allowed)."""
        spend(1, 12 * self._position.shape[1])
        if self._rows is None:
            self._rows = np.empty((STAGES + 2, *self._position.shape))
        self._rows[0], self._rows[1], self._rows[2] = self._position, self._velocity, self._start
        stages, shares = self._rows[2:], _shares(length)
        for i in range(1, 13):
            position, velocity = self._sums(shares, i)
            stages[i] = self._force.at(self._elapsed_s + NODES[i] * length, position, velocity)
        flat = stages[:13].reshape(13, -1)
        v5, v3, x5, x3 = (ERRORS @ flat).reshape(4, *self._position.shape)
        to_position, to_velocity = length / self._scale(position), self._lasts_s / self._scale(velocity)
        five = _square_sum(x5 * to_position) + _square_sum(v5 * to_velocity)
        three = _square_sum(x3 * to_position) + _square_sum(v3 * to_velocity)
        bottom = np.sqrt(6.0 * (five + 0.01 * three))
        error = length * five / np.where(bottom > 0, bottom, 1.0)
        return stages, float(np.max(error))

    def _dense(self, stages, length):
        """The step with its path, from three more stages."""
        shares = _shares(length)
        for i in range(13, STAGES):
            position, velocity = self._sums(shares, i)
            stages[i] = self._force.at(self._elapsed_s + NODES[i] * length, position, velocity)
        flat = stages.reshape(STAGES, -1)
        shape = (8, *self._position.shape)
        path_m = (length * length * DENSE_POSITION @ flat).reshape(shape)
        path_m += bernstein.straight(7) * (length * self._velocity)
        path_m_s = (length * DENSE_VELOCITY @ flat).reshape(shape)
        return Step(self._elapsed_s, length, self._position, self._velocity, path_m, path_m_s)


def _shares(length):
    """(16, 2, 18): what position, velocity and stages give to the position and the velocity of each stage."""
    shares = np.zeros((STAGES, 2, STAGES + 2))
    shares[:, 0, 0] = shares[:, 1, 1] = 1.0
    shares[:, 0, 1] = length * NODES
    shares[:, 0, 2:] = length * length * TIMES_AA
    shares[:, 1, 2:] = length * TIMES_A
    return shares


def propagate(force, position, velocity, limit_s, **tolerance):
    """Fly N bodies to limit_s, a few thousand at once -> their states (3, N), (3, N) there. Arguments as for ExplicitStepper.

    A few thousand: so many that what numpy costs a call no longer counts, so few that a step's rows stay in the cache.
    """
    parts = [slice(i, i + AT_ONCE) for i in range(0, position.shape[1], AT_ONCE)]
    ends = [
        ExplicitStepper(force.take(p), position[:, p], velocity[:, p], limit_s, **tolerance).propagate() for p in parts
    ]
    return tuple(np.concatenate(column, axis=1) for column in zip(*ends, strict=True))


def _square_sum(a):
    return a[0] * a[0] + a[1] * a[1] + a[2] * a[2]


class Coaster:
    """The same for N bodies that nothing but a constant inertial pull moves: exact steps, as far as reach_m.

    pull_m_s2 (3, N); limit_s and reach_m (N,). Each path is its parabola in closed form: exact however long it flies. One
    step each; or steps no longer than longest_s (N,) that do not cross stops_s (S, N), elapsed times of each body's own.
    """

    def __init__(self, pull_m_s2, position, velocity, limit_s, reach_m, *, longest_s=None, stops_s=None):
        self._pull, self._position, self._velocity = pull_m_s2, position, velocity
        level = np.hypot(velocity[0], velocity[1])
        with np.errstate(over="ignore"):  # a speed next to none reaches nothing: inf, as none does
            reached_s = np.divide(reach_m, level, out=np.full_like(level, np.inf), where=level > 0)
        self._end_s = np.minimum(limit_s, reached_s)
        self._longest_s = np.full_like(level, np.inf) if longest_s is None else longest_s
        self._stops_s = np.empty((0, len(level))) if stops_s is None else stops_s
        self._elapsed_s = np.zeros_like(level)

    @property
    def done(self):
        """Which bodies (N,) have come to their limit or their reach."""
        return self._elapsed_s >= self._end_s

    def step(self):
        """The next step; its elapsed_s and length_s are (N,)."""
        spend(1, len(self._elapsed_s))
        since = self._elapsed_s
        ahead = np.where(self._stops_s > since, self._stops_s, np.inf)
        until = np.minimum(np.min(ahead, axis=0, initial=np.inf), np.minimum(self._end_s, since + self._longest_s))
        length = until - since
        position = self._position + since * (self._velocity + 0.5 * since * self._pull)
        velocity = self._velocity + since * self._pull
        none, moved, faster = np.zeros_like(position), length * velocity, length * self._pull
        path_m = np.stack([none, 0.5 * moved, moved + 0.5 * length * faster])
        path_m_s = np.stack([none, 0.5 * faster, faster])
        self._elapsed_s = until
        return Step(since, length, position, velocity, path_m, path_m_s)

    def keep(self, mask):
        """Go on with the bodies of the mask (N,) only."""
        for name in ("_pull", "_position", "_velocity", "_end_s", "_longest_s", "_stops_s", "_elapsed_s"):
            setattr(self, name, getattr(self, name)[..., mask])
