"""Where to begin: for every radius and spin on a grid the straight line, in the frame that does not turn, that lies nearest to what
was seen. For one radius and spin that is linear, so none is missed between.

Drag is taken along by what it has done to the line until then, worked out from the speeds that were seen. Through a camera the
distances are not seen; the line that lies nearest to all rays is linear too, weighted by distances in a second pass.
"""

from dataclasses import dataclass

import numpy as np

from ...physics import frames
from ...physics.budget import spend
from .flight import State
from .unknowns import (
    GREATEST_PACE,
    GREATEST_RADIUS_M,
    GREATEST_RIM_M_S,
    GREATEST_SPIN_RAD_S,
    LEAST_PACE,
    LEAST_RADIUS_M,
)

MOST_POINTS = 40
_RADII, _GRAVITIES = 40, 28
_PHASE_RAD, _MOST_SPINS = 0.6, 500
_GRAVITY_M_S2 = (3e-3, 300.0)
_KEPT_A_RADIUS = 2
_NEAR_M = 0.3


@dataclass(frozen=True)
class Grid:
    """radii_m (R,), and for each the spins (W,), rad/s, 0 or above, as the track's own seconds show them."""

    radii_m: np.ndarray
    spins_rad_s: list


def grid_of(problem):
    """The Grid of what is not known."""
    known, unknowns = problem.unknowns.known, problem.unknowns
    lasts_s = float(problem.sight.time_s[-1])
    if known.radius_m is not None or not problem.sight.has_deck:
        radii = np.array([known.radius_m or unknowns.nominal_radius_m])
    else:
        radii = np.geomspace(max(unknowns.least_radius_m * 1.001, LEAST_RADIUS_M), GREATEST_RADIUS_M, _RADII)
    if known.pace is not None and known.omega_rad_s is not None:
        return Grid(radii, [np.array([known.pace * known.omega_rad_s])] * len(radii))
    step = _PHASE_RAD / max(lasts_s, 1e-9)
    spins = []
    for radius in radii:
        if known.gravity_m_s2 is not None and known.pace is not None:
            spins.append(np.array([known.pace * np.sqrt(known.gravity_m_s2 / radius)]))
            continue
        most = min(GREATEST_SPIN_RAD_S, GREATEST_RIM_M_S / radius)
        count = int(min(most / step, _MOST_SPINS))
        by_gravity = np.sqrt(np.geomspace(*_GRAVITY_M_S2, _GRAVITIES) / radius)
        both = np.concatenate([step * np.arange(count + 1), by_gravity[by_gravity <= most]])
        spins.append(np.unique(both))
    return Grid(radii, spins)


def starts(problem, most):
    """At most so many States from which to begin, the best first, as one State of arrays (B,)."""
    sight, side = problem.sight, problem.unknowns.side
    some = np.unique(np.linspace(0, len(sight.time_s) - 1, min(MOST_POINTS, len(sight.time_s))).round().astype(int))
    line = _by_rays if hasattr(sight, "rays") else _by_positions
    found = []
    grid = grid_of(problem)
    for radius, spins in zip(grid.radii_m, grid.spins_rad_s, strict=True):
        spend(law_calls=len(spins) * len(some))
        for misfit, spin, place, velocity, medium in line(problem, radius, side * spins, some):
            found.append((misfit, radius, spin, place, velocity, medium))
    found.sort(key=lambda one: one[0])
    return _states(problem, found[:most])


def _states(problem, found):
    """The States of (misfit, radius, spin, inertial place and velocity, medium), made to agree with a pace that is sought."""
    known = problem.unknowns.known
    radius, omega, medium = (np.array([one[k] for one in found]) for k in (1, 2, 5))
    start, velocity = (np.array([one[k] for one in found]) for k in (3, 4))
    pace = np.full(len(found), known.pace or 1.0)
    if known.pace is None:
        seen = np.maximum(np.abs(omega), 1e-6)
        if known.omega_rad_s:
            pace = seen / known.omega_rad_s
        elif known.gravity_m_s2 is not None:
            pace = seen * np.sqrt(radius / known.gravity_m_s2)
    pace = np.clip(pace, LEAST_PACE, GREATEST_PACE)
    omega, velocity = omega / pace, velocity / pace[:, None]
    relative = velocity - frames.spin_cross(omega, start)
    height = radius - np.hypot(start[:, 0], start[:, 1])
    place = np.stack([radius * np.arctan2(start[:, 1], start[:, 0]), height, start[:, 2]], -1)
    local = np.einsum("bij,bj->bi", frames.local_axes(start), relative)
    first = getattr(problem.sight, "names", ())[:1] == ("along_m",)
    if first:  # along does not wrap: the turn is the one that was seen
        turn = 2 * np.pi * radius
        place[:, 0] += turn * np.round((problem.sight.seen[0, 0] - place[:, 0]) / turn)
    return State(radius, omega, place, local, medium, pace)


def _by_positions(problem, radius, spins, some):
    """The best spins (W,) of a radius, where positions are seen: (misfit, spin, inertial place and velocity at the start, medium)."""
    sight, known = problem.sight, problem.unknowns.known
    time_s = sight.time_s[some]
    position = sight.positions(radius)
    rotating = position[some]
    flat = (rotating[:, 0] + 1j * rotating[:, 1]) * np.exp(1j * np.outer(spins, time_s))
    dragged, free = None, known.medium is None
    if problem.resistance is not None and known.medium != 0.0:
        dragged = _dragged(problem, position)[some] * np.exp(1j * np.outer(spins, time_s))
        dragged = _twice_summed(dragged, time_s) * (1.0 if free else known.medium)
        if not free:
            flat = flat + dragged
    basis = _basis(time_s)
    off = flat - (flat @ basis) @ basis.T
    medium = np.zeros(len(spins))
    if dragged is not None and free:
        left = dragged - (dragged @ basis) @ basis.T
        size = np.sum(np.abs(left) ** 2, axis=1)
        medium = np.maximum(-np.real(np.sum(np.conj(left) * off, axis=1)) / np.maximum(size, 1e-30), 0.0)
        off, flat = off + medium[:, None] * left, flat + medium[:, None] * dragged
    elif not free:
        medium[:] = known.medium
    misfit = np.sum(np.abs(off) ** 2, axis=1)
    axial = np.polyfit(time_s, rotating[:, 2], 1) if sight.has_axial else (0.0, 0.0)
    for k in np.argsort(misfit, kind="stable")[:_KEPT_A_RADIUS]:
        rate, start = np.polynomial.polynomial.polyfit(time_s, np.stack([flat[k].real, flat[k].imag], -1), 1)[::-1]
        yield misfit[k], spins[k], np.append(start, axial[1]), np.append(rate, axial[0]), medium[k]


def _basis(time_s):
    """Two orthonormal columns (N, 2) that span 1 and t."""
    return np.linalg.qr(np.stack([np.ones_like(time_s), time_s], -1))[0]


def _dragged(problem, position):
    """What air of density 1 takes of the velocity that was seen (N,), m/s2, complex in the plane of rotation, turning axes."""
    velocity = smooth(problem.sight.time_s, position)[1]
    speed = np.linalg.norm(velocity, axis=1)
    return problem.resistance.rate_1_s(speed) * (velocity[:, 0] + 1j * velocity[:, 1])


def _twice_summed(values, time_s):
    """The double integral (W, N) of values over times, by the trapezium rule, 0 and without slope at the first."""
    step = np.diff(time_s)
    once = np.concatenate([np.zeros((len(values), 1)), np.cumsum(0.5 * (values[:, 1:] + values[:, :-1]) * step, 1)], 1)
    return np.concatenate([np.zeros((len(values), 1)), np.cumsum(0.5 * (once[:, 1:] + once[:, :-1]) * step, 1)], 1)


def _by_rays(problem, radius, spins, some):
    """The same through a camera: the line nearest to all rays."""
    sight = problem.sight
    eye, across = (rows[some] for rows in sight.rays(radius))
    time_s = sight.time_s[some]
    turning = frames.turn(across[None], np.outer(spins, time_s)[:, :, None])  # (W, n, 2, 3)
    design = np.concatenate([turning, turning * time_s[:, None, None]], axis=-1)
    aim = np.broadcast_to(np.einsum("nki,ni->nk", across, eye), turning.shape[:3])
    weight = np.ones(turning.shape[:2])
    for _ in range(3):
        rows = design * weight[..., None, None]
        normal = np.einsum("wnkp,wnkq->wpq", rows, rows)
        scale = np.sqrt(np.maximum(np.einsum("wpp->wp", normal), 1e-30))
        normal = normal / (scale[:, :, None] * scale[:, None, :]) + 1e-10 * np.eye(6)
        right = np.einsum("wnkp,wnk->wp", rows, aim * weight[..., None]) / scale
        line = np.linalg.solve(normal, right[..., None])[..., 0] / scale
        position = line[:, None, :3] + line[:, None, 3:] * time_s[:, None]
        rotating = frames.turn(position, -np.outer(spins, time_s))
        off = rotating - eye
        depth = np.linalg.norm(off, axis=-1)
        weight = 1.0 / np.maximum(depth, 0.1 * _NEAR_M)
    left = np.sum(((np.einsum("wnkp,wp->wnk", design, line) - aim) * weight[..., None]) ** 2, axis=(1, 2))
    left = left + np.mean(
        sight.depth_m(radius, rotating, some) <= _NEAR_M, axis=1
    )  # in the camera all rays meet, and tell nothing
    for k in np.argsort(left, kind="stable")[:_KEPT_A_RADIUS]:
        yield left[k], spins[k], line[k, :3], line[k, 3:], problem.unknowns.known.medium or 0.0


def smooth(time_s, values, half=None):
    """Values (N, D), their slopes and second slopes at times (N,), each by a cubic through the points around it; and how one standard
    deviation of a value comes through in each (3, N). half: points taken to either side."""
    count = len(time_s)
    half = max(2, count // 8) if half is None else half
    width = min(2 * half + 1, count)
    first = np.clip(np.arange(count) - half, 0, count - width)
    index = first[:, None] + np.arange(width)
    since = time_s[index] - time_s[:, None]
    span = np.maximum(np.max(np.abs(since), axis=1), 1e-12)
    powers = (since / span[:, None])[..., None] ** np.arange(min(4, width - 1) if width > 2 else width)
    inverse = np.linalg.pinv(powers)  # (N, 4, width)
    order = inverse.shape[1]
    rows = [inverse[:, k] * (np.array([1.0, 1.0, 2.0])[k] / span**k)[:, None] for k in range(min(3, order))]
    rows += [np.zeros_like(rows[0])] * (3 - len(rows))
    return (
        *(np.einsum("nw,nwd->nd", row, values[index]) for row in rows),
        np.stack([np.linalg.norm(row, axis=1) for row in rows]),
    )
