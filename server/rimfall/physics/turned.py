"""A flown path as the turning frame sees it: states there, and the path of a step as Bernstein control points.

Flat floors turn with the habitat; what meets them is looked for on the path in their own frame. There a step's polynomial
is no polynomial any more, but while the frame turns by no more than MOST_RAD within the step, one of a few degrees more through it
at Chebyshev's points is as good: its error is rounding. Arrays are (3, N).
"""

import numpy as np

from . import bernstein, picard
from .aboard import of_frame

MOST_RAD = 0.5  # that the frame may turn within one step
_DEGREE = 11  # of what the frame's turning alone makes of a figure
_MORE = 6  # degrees that it adds to those of a path
NODES = picard.rule(_DEGREE).points


def to_control(values):
    """Values (n + 1, ...) at Chebyshev's points, for n = 11 the NODES -> Bernstein coefficients (n + 1, ...) of the polynomial through
    them."""
    rule = picard.rule(len(values) - 1)
    out = (rule.control @ (rule.series @ values.reshape(len(values), -1))).reshape(values.shape)
    out[0], out[-1] = values[0], values[-1]
    return out


def longest_s(spin):
    """The longest step, seconds, within which the frame turns by no more than MOST_RAD."""
    fastest = spin.fastest_rad_s
    return MOST_RAD / fastest if fastest else np.inf


def turned_back(vectors, angle_rad):
    """Vectors (3, ...) turned about z by -angle_rad: from inertial axes to those of a frame that has turned by it."""
    c, s = np.cos(angle_rad), np.sin(angle_rad)
    x, y = c * vectors[0] + s * vectors[1], c * vectors[1] - s * vectors[0]
    out = np.empty((3, *x.shape))
    out[0], out[1], out[2] = x, y, vectors[2]
    return out


def states(spin, time_s, position, velocity, acceleration):
    """Position, velocity and acceleration (3, N) in the turning frame at times (N,), from the inertial ones.

    With u the velocity there: a' = a - 2 Omega x u - Omega x (Omega x x) - Omega' x x (design, section 2).
    """
    if spin.tumbles:
        x, v = spin.to_frame(time_s, position.T, velocity.T)
        return x.T.copy(), v.T.copy(), (spin.turn_back(acceleration.T, time_s) + spin.own(time_s, x, v)).T.copy()
    angle, omega, change = spin.angle_rad(time_s), spin.rate_rad_s(time_s), spin.change_rad_s2(time_s)
    x, v, a = (turned_back(each, angle) for each in (position, velocity, acceleration))
    v[0] += omega * x[1]
    v[1] -= omega * x[0]
    return x, v, a + of_frame(omega, change, x, v)


def path(step, start_s, spin):
    """The path of a step of M bodies in the turning frame: position (3, M) at its start, and control points (n + 1, 3, M) of
    its change since then.

    start_s (M,): time of each body's elapsed 0. No knot of the spin lies inside the step: its rate is linear there.
    """
    begin_s = start_s + step.elapsed_s
    if spin.tumbles:
        return _tumbled_path(step, begin_s, spin)
    first, last = spin.rate_rad_s(begin_s), spin.rate_rad_s(begin_s + step.length_s)
    share, moved = _moved(step)
    angle = share * step.length_s * (first + 0.5 * share * (last - first))
    # Turned to the frame as it stands at the start first: what is left is small, and its change is told without loss.
    origin = spin.angle_rad(begin_s)
    position = turned_back(step.position_m, origin)
    change = turned_back(turned_back(moved.transpose(1, 0, 2), origin), angle).transpose(1, 0, 2)
    versed, s = -2.0 * np.sin(0.5 * angle) ** 2, np.sin(angle)
    change[:, 0] += versed * position[0] + s * position[1]
    change[:, 1] += versed * position[1] - s * position[0]
    return position, to_control(change)


def _moved(step):
    """Points (n + 1, 1) enough for a step's path and the turning, and how far (n + 1, 3, M) bodies have moved there."""
    degree = len(step.path_m) - 1
    share = picard.rule(max(_DEGREE, degree + _MORE)).points
    moved = bernstein.weights(degree, share).T @ step.path_m.reshape(len(step.path_m), -1)
    return share[:, None], moved.reshape(-1, *step.position_m.shape)


def _tumbled_path(step, begin_s, spin):
    """The same in a frame whose axis moves: begin_s (M,)."""
    share, moved = _moved(step)
    inertial = np.moveaxis(step.position_m + moved, 1, -1)
    turning, _ = spin.to_frame(begin_s + share * step.length_s, inertial, np.zeros_like(inertial))
    position = turning[0].T.copy()
    change = np.moveaxis(turning, -1, 1) - position
    return position, to_control(change)
