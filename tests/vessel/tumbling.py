"""What tests of tumbling bodies share: bodies of given moments, and what scipy makes of Euler's equations."""

import numpy as np
from scipy.integrate import solve_ivp

from rimfall.physics.quaternions import times
from rimfall.vessel.attitude import of_matrix, principal_of
from rimfall.vessel.bodies import Body


def body_of(inertia):
    """The Principal of moments (3,) about body axes, or of an inertia (3, 3)."""
    inertia = np.array(inertia, dtype=float)
    return principal_of(Body(1.0, np.zeros(3), np.diag(inertia) if inertia.ndim == 1 else inertia))


def inertia_of(body):
    return body.axes @ np.diag(body.moments) @ body.axes.T


def matrices(quaternions):
    """Rotation matrices (n, 3, 3) of unit quaternions (n, 4)."""
    w, x, y, z = quaternions.T
    rows = [
        [1 - 2 * (y * y + z * z), 2 * (x * y - w * z), 2 * (x * z + w * y)],
        [2 * (x * y + w * z), 1 - 2 * (x * x + z * z), 2 * (y * z - w * x)],
        [2 * (x * z - w * y), 2 * (y * z + w * x), 1 - 2 * (x * x + y * y)],
    ]
    return np.moveaxis(np.array(rows), 2, 0)


def integrated(body, rates, until_s, loss=0.0, rtol=1e-12):
    """The quaternion (4,) at a time by DOP853 of the attitude and of the momentum P in principal axes, dP/dt = P x W + loss P x (P x W), W = P/I,
    where the body turns at W + loss P x W (Bloch, Krishnaprasad, Marsden & Ratiu 1996)."""
    inverse = (1 / body.moments).tolist()

    def change(_, state):
        a, b, c, d, p, q, r = state.tolist()
        x, y, z = p * inverse[0], q * inverse[1], r * inverse[2]
        x, y, z = x + loss * (q * z - r * y), y + loss * (r * x - p * z), z + loss * (p * y - q * x)
        turning = [-b * x - c * y - d * z, a * x + c * z - d * y, a * y + d * x - b * z, a * z + b * y - c * x]
        return [*(0.5 * v for v in turning), q * z - r * y, r * x - p * z, p * y - q * x]

    first = of_matrix(body.axes)
    start = np.concatenate([first[0], (np.array(rates) @ body.axes) * body.moments])
    last = solve_ivp(change, (0, until_s), start, "DOP853", rtol=rtol, atol=1e-14).y[:4, -1:].T
    return times(last, first * (1.0, -1.0, -1.0, -1.0))[0]


def apart(a, b):
    """Greatest difference of quaternions (..., 4), q and -q being the same."""
    return np.max(np.minimum(np.abs(a - b).max(-1), np.abs(a + b).max(-1)))


def momentum_drift(body, turned, momentum):
    """Greatest change, as a share, of the inertial momentum of a Turned, whose momentum (3,) is in body axes at time 0."""
    size = np.linalg.norm(momentum)
    inertial = np.einsum("nij,nj->ni", matrices(turned.quaternion_wxyz), turned.momentum @ body.axes.T)
    return np.max(np.linalg.norm(inertial - momentum / size, axis=1))
