"""Turnings as unit quaternions (n, 4), w first."""

import numpy as np


def turning(vectors):
    """Quaternions (n, 4) of rotations by vectors (n, 3), rad."""
    size = np.sqrt(np.add.reduce(vectors * vectors, axis=1))
    half, turns = 0.5 * size, size > 0
    share = np.where(turns, np.sin(half) / np.where(turns, size, 1.0), 0.5)
    out = np.empty((len(vectors), 4))
    out[:, 0] = np.cos(half)
    out[:, 1:] = vectors * share[:, None]
    return out


def times(a, b):
    """Products (n, 4) of quaternions: b first, then a."""
    return _times(a.T, b.T).T


def _times(a, b):
    """The same of (4, n)."""
    (w, x, y, z), (r, i, j, k) = a, b
    out = np.empty((4, np.broadcast_shapes(w.shape, r.shape)[0]))
    out[0] = w * r - x * i - y * j - z * k
    out[1] = w * i + x * r + y * k - z * j
    out[2] = w * j - x * k + y * r + z * i
    out[3] = w * k + x * j - y * i + z * r
    return out


def products(turns):
    """Running products (n, 4): each after all before it, in about log2 n sweeps; about z alone as complex numbers, in one."""
    out, reach = turns.T.copy(), 1
    if not out[1:3].any():
        plane = np.multiply.accumulate(out[0] + 1j * out[3])
        out[0], out[3] = plane.real, plane.imag
        reach = len(turns)
    while reach < len(turns):
        out[:, reach:] = _times(out[:, reach:], out[:, :-reach])
        reach *= 2
    return np.ascontiguousarray((out / np.sqrt(np.add.reduce(out * out, axis=0))).T)


def slerp(before, after, share):
    """Unit quaternions (n, 4) the nearer way between two of any length above 0, a share (n, 1) of it; w first or last."""
    before, after = _unit(before), _unit(after)
    dot = np.sum(before * after, axis=1, keepdims=True)
    after, dot = np.where(dot < 0, -after, after), np.minimum(np.abs(dot), 1.0)
    angle = np.arccos(dot)
    sine = np.sin(angle)
    far = sine > 1e-9
    safe = np.where(far, sine, 1.0)
    weights = (
        np.where(far, np.sin((1 - share) * angle) / safe, 1 - share),
        np.where(far, np.sin(share * angle) / safe, share),
    )
    return _unit(weights[0] * before + weights[1] * after)


def _unit(turns):
    return turns / np.maximum(np.linalg.norm(turns, axis=-1, keepdims=True), 1e-300)


def matrices(turns):
    """Matrices (n, 3, 3) of unit quaternions (n, 4): columns are where x, y and z come to point."""
    w, x, y, z = turns.T
    rows = [
        [1 - 2 * (y * y + z * z), 2 * (x * y - w * z), 2 * (x * z + w * y)],
        [2 * (x * y + w * z), 1 - 2 * (x * x + z * z), 2 * (y * z - w * x)],
        [2 * (x * z - w * y), 2 * (y * z + w * x), 1 - 2 * (x * x + y * y)],
    ]
    return np.moveaxis(np.array(rows), 2, 0)
