"""Shapes that a glTF file draws bodies and streams with, and the turnings between the keys of its animation."""

import math

import numpy as np

RING = 6  # corners round a stream
# From key to key: readers go the shorter way round, so it must stay well below half a turn.
GREATEST_STEP_RAD = math.radians(60)
# How long a body's turning is looked at: of a key's step, and at most, 0.1 rad at 100,000 rpm.
_GLANCE, _GLANCE_S = 1e-3, 1e-5
_LEAST_M = 1e-12


def ball(across, around):
    """A sphere of radius 1: corners (V, 3), which are its normals too, and faces (F, 3), seen from outside; `across` from pole
    to pole, `around` the equator."""
    down, turn = np.meshgrid(
        np.pi * np.arange(1, across) / across, 2 * np.pi * np.arange(around) / around, indexing="ij"
    )
    rings = np.stack([np.sin(down) * np.cos(turn), np.sin(down) * np.sin(turn), np.cos(down)], -1).reshape(-1, 3)
    corners = np.concatenate([rings, [[0.0, 0.0, 1.0], [0.0, 0.0, -1.0]]])
    ring = np.arange(across - 2)[:, None] * around + np.arange(around)
    beside = np.arange(across - 2)[:, None] * around + (np.arange(around) + 1) % around
    sides = np.stack([ring, ring + around, beside + around, ring, beside + around, beside], -1).reshape(-1, 3)
    first, last, pole = np.arange(around), np.arange(around) + (across - 2) * around, len(rings)
    top = np.stack([np.full(around, pole), first, np.roll(first, -1)], -1)
    bottom = np.stack([np.full(around, pole + 1), np.roll(last, -1), last], -1)
    return corners, np.concatenate([sides, top, bottom])


def tube(position, width, axis):
    """Corners (T, M * RING, 3) of a stream's skin about its curve position (T, M, 3) of width (T, M), rings from its start on;
    axis (3,): a direction the curve is hardly ever along."""
    along = np.gradient(position, axis=1)
    side = np.cross(along, axis)
    long = np.linalg.norm(side, axis=-1, keepdims=True)
    spare = np.eye(3)[np.argmin(np.abs(axis))]
    side = np.where(long > _LEAST_M, side / np.maximum(long, _LEAST_M), spare)
    over = np.cross(side, along)
    over /= np.maximum(np.linalg.norm(over, axis=-1, keepdims=True), _LEAST_M)
    turn = 2 * np.pi * np.arange(RING) / RING
    ring = np.cos(turn)[:, None] * side[:, :, None] + np.sin(turn)[:, None] * over[:, :, None]
    skin = position[:, :, None] + 0.5 * width[:, :, None, None] * ring
    return skin.reshape(len(position), -1, 3)


def tube_faces(rings):
    """Faces (F, 3) of a tube of so many rings, open at its ends."""
    ring = np.arange(rings - 1)[:, None] * RING + np.arange(RING)
    beside = np.arange(rings - 1)[:, None] * RING + (np.arange(RING) + 1) % RING
    return np.stack([ring, beside, beside + RING, ring, beside + RING, ring + RING], -1).reshape(-1, 3)


def spin_keys(times_s, angle_rad, axis):
    """Times (n,) and quaternions (n, 4), x, y, z, w, of a turn about a unit axis (3,) by angles (T,) at times (T,), with keys put
    between where it turns fast."""
    times = parted(times_s, _parts(np.abs(np.diff(angle_rad))))
    half = 0.5 * np.interp(times, times_s, angle_rad)
    return times, np.concatenate([np.sin(half)[:, None] * axis, np.cos(half)[:, None]], axis=1)


def attitude_steps(times_s, attitude, greatest):
    """In how many parts (T - 1,) each step between times (T,), never falling, is to be cut for the keys of a body's attitude (times -> (n, 4),
    w first): more where it turns fast; None where they would be more than `greatest` keys. How fast is looked at just beside each
    of the times given, so that whole turns between them are not missed."""
    if len(times_s) == 1:
        return np.empty(0, dtype=int)
    step = np.diff(times_s)
    glance = np.maximum(np.minimum(_GLANCE * step, _GLANCE_S), np.finfo(float).tiny)
    looked = np.stack([times_s[:-1], times_s[:-1] + glance, times_s[1:] - glance, times_s[1:]], -1)
    seen = attitude(looked.ravel()).reshape(*looked.shape, 4)
    turned = np.maximum(_angles(seen[:, 0], seen[:, 1]), _angles(seen[:, 2], seen[:, 3])) * step / glance
    turned = np.maximum(turned, _angles(seen[:, 0], seen[:, 3]))
    return None if np.sum(turned) / GREATEST_STEP_RAD + len(step) > greatest else _parts(turned)


def attitude_keys(times_s, attitude):
    """Quaternions (n, 4), x, y, z, w, of a body's attitude at times (n,), each of the sign that is nearer to the one before."""
    wxyz = attitude(times_s)
    turned = np.sum(wxyz[1:] * wxyz[:-1], axis=1) < 0
    sign = np.where(np.concatenate([[0], np.cumsum(turned)]) % 2, -1.0, 1.0)
    return np.roll(sign[:, None] * wxyz, -1, axis=1)


def _parts(turned_rad):
    """In how many even parts (T - 1,) each step is cut for its turn (T - 1,)."""
    return np.maximum(np.ceil(turned_rad / GREATEST_STEP_RAD), 1).astype(int)


def parted(values, parts):
    """Values (T,) with as many put evenly into each step between them as parts (T - 1,) say."""
    first = np.concatenate([[0], np.cumsum(parts)])
    k = np.repeat(np.arange(len(parts)), parts)
    share = (np.arange(first[-1]) - first[k]) / parts[k]
    return np.append(values[k] + share * np.diff(values)[k], values[-1])


def _angles(a, b):
    """Angles (n,) between quaternions (n, 4), exact when small."""
    b = b * np.where(np.sum(a * b, axis=-1, keepdims=True) < 0, -1.0, 1.0)
    return 4 * np.arcsin(np.clip(np.linalg.norm(a - b, axis=-1) / 2, 0.0, 1.0))


def of_axes(rows):
    """Quaternions (n, 4), x, y, z, w, that turn X, Y and Z to rows (n, 3, 3) of unit vectors (Bar-Itzhack 2000: the greatest
    eigenvector, exact for any turn)."""
    m = np.swapaxes(rows, 1, 2)
    (xx, xy, xz), (yx, yy, yz), (zx, zy, zz) = np.moveaxis(m, 0, -1)
    k = np.array([
        [xx - yy - zz, yx + xy, zx + xz, zy - yz],
        [yx + xy, yy - xx - zz, zy + yz, xz - zx],
        [zx + xz, zy + yz, zz - xx - yy, yx - xy],
        [zy - yz, xz - zx, yx - xy, xx + yy + zz],
    ])  # fmt: skip
    out = np.linalg.eigh(np.moveaxis(k, -1, 0))[1][:, :, -1]
    turned = np.sum(out[1:] * out[:-1], axis=1) < 0
    return out * np.where(np.concatenate([[out[0, 3] < 0], turned]).cumsum() % 2, -1.0, 1.0)[:, None]
