"""What in a track speaks against a free flight, and at which rows: it bends too often or elsewhere than a free path can, gains energy,
does not go evenly along the axis, falls straight down, is the parabola of a planet.

Each is looked for in the track as it is seen from the deck of the nearest habitat, smoothed by cubics through so many rows that their
second slopes tell something; and told only where it stands well out of the track's own accuracy.
"""

from dataclasses import dataclass

import numpy as np

from ...physics import frames
from ...physics.constants import G0_M_S2
from .chances import p_value
from .flight import flown as flown_states
from .scan import smooth

CLEAR = 4.5  # standard deviations from which something is told
_ENOUGH_G = 0.01  # standard deviation of an acceleration that is good enough
_ENOUGH_SHARE = 0.1  # of the acceleration itself
_MOST_BENDS = 2


@dataclass(frozen=True)
class Sign:
    """kind; rows from `first` to `last` show it, `at` best; figure: how much, in the unit of its kind."""

    kind: str
    first: int
    last: int
    at: int
    figure: float = 0.0


@dataclass(frozen=True)
class Beside:
    """A track beside the nearest free path. off_m (N, 3): seen less fitted, turning axes, as far as it is seen; seen_m (N, 3): rotating
    positions; sd_m (N,): accuracy; extra_g, extra_sd_g (N,): what the track has of acceleration beyond it, and how well that is known,
    or None where the rows are too few."""

    time_s: np.ndarray
    off_m: np.ndarray
    seen_m: np.ndarray
    sd_m: np.ndarray
    extra_g: np.ndarray | None
    extra_sd_g: np.ndarray | None


def beside(trial) -> Beside:
    """The track of a Trial beside its nearest path."""
    sight, state = trial.problem.sight, trial.state
    fitted, radius = trial.flown.rotating_m[0], float(state.radius_m[0])
    if hasattr(sight, "rays"):
        depth = sight.depth_m(radius, fitted, np.arange(len(fitted)))
        off = sight.off_m(radius, depth, sight.seen - sight.expected(trial.flown)[0])
        sd = np.maximum(depth, 1e-3) / sight.focal_px * sight.sd[0]
        seen = fitted + off
    else:
        seen = sight.positions(radius)
        off, sd = seen - fitted, np.full(len(seen), _sd_m(sight))
        if not sight.has_axial:
            off, seen = off * [1, 1, 0], seen * [1, 1, 0]
    if hasattr(sight, "metres_a_pixel"):
        sd = np.full(len(seen), sight.sd[0] * sight.metres_a_pixel)
    elapsed = float(state.pace[0]) * sight.time_s
    if len(elapsed) < 5:
        return Beside(elapsed, off, seen, sd, None, None)
    turned = frames.turn(off, state.omega_rad_s[0] * elapsed)
    extra, extra_sd = _extra_g(elapsed, turned, sd, 0.03 * float(state.omega_rad_s[0] ** 2 * radius) / G0_M_S2)
    return Beside(elapsed, off, seen, sd, extra, extra_sd)


def _sd_m(sight):
    return float(np.mean(sight.sd))


def _halves(count):
    """Rows to either side that cubics are tried through, the fewest first."""
    most = max(2, count // 4)
    return sorted({min(most, max(2, round(most * share))) for share in (0.15, 0.25, 0.4, 0.6, 1.0)})


def _extra_g(time_s, off_m, sd_m, enough_g):
    """Accelerations (N,) of what is off a path, g, and their standard deviations: through the fewest rows that give them to so much, or
    to a small part of what they are."""
    for half in _halves(len(time_s)):
        *_, second, through = smooth(time_s, off_m, half)
        extra, sd = np.linalg.norm(second, axis=1) / G0_M_S2, through[2] * sd_m / G0_M_S2
        if np.median(sd) <= max(enough_g, _ENOUGH_G, _ENOUGH_SHARE * float(np.median(extra))):
            break
    return extra, sd


def off_the_path(trial, off: Beside):
    """Where the track lies farthest off the nearest free path; figure: how far, m."""
    share = np.linalg.norm(off.off_m, axis=1) / off.sd_m
    at = int(np.argmax(share))
    first, last = at, at
    while first > 0 and share[first - 1] > 3.0:
        first -= 1
    while last < len(share) - 1 and share[last + 1] > 3.0:
        last += 1
    return Sign("off_the_path", first, last, at, float(np.linalg.norm(off.off_m[at])))


def along_the_axis(off: Beside, has_axial):
    """A thing that does not go evenly along the axis, or none; figure: its acceleration there, m/s2, or how far it strays, m."""
    if not has_axial or len(off.time_s) < 4:
        return None
    z, t = off.seen_m[:, 2] / off.sd_m, off.time_s - off.time_s.mean()
    line = np.polyfit(t, z, 1)
    left = z - np.polyval(line, t)
    if p_value(float(left @ left), len(t) - 2) >= 1e-3:
        return None
    curve = np.polyfit(t, z, 2)
    bent = z - np.polyval(curve, t)
    at = int(np.argmax(np.abs(left)))
    if bent @ bent < 0.1 * (left @ left) or p_value(float(bent @ bent), len(t) - 3) > 1e-3:
        return Sign("speeds_up_along_axis", 0, len(t) - 1, len(t) - 1, float(2 * curve[0] * np.mean(off.sd_m)))
    return Sign("leaves_its_plane", at, at, at, float(abs(left[at]) * off.sd_m[at]))


def bends(trial, off: Beside):
    """Bends back more often than a free path can, or at another distance from the axis; figure: how often, or that distance, m."""
    if off.extra_g is None:
        return None
    found = [_bending(off, half) for half in _halves(len(off.time_s))]
    position, bend, clear, half = max(found, key=lambda one: np.count_nonzero(np.diff(np.sign(one[1][one[2]]))))
    if len(clear) == 0:
        return None
    sides = np.sign(bend[clear])
    changes = np.flatnonzero(sides[1:] != sides[:-1])
    if len(changes) > _MOST_BENDS:
        at = changes[_MOST_BENDS]
        return Sign("bends_too_often", int(clear[changes[0]]), int(clear[-1]), int(clear[at + 1]), float(len(changes)))
    if trial.state.medium[0] > 0 or len(changes) == 0:
        return None
    where, reach = _bend_radius_m(trial), half
    for change in changes:
        rows = slice(int(clear[change]), int(clear[change + 1]) + 1)
        rho = np.hypot(position[rows, 0], position[rows, 1])
        slack = 3.0 * np.max(np.abs(np.diff(np.hypot(position[:, 0], position[:, 1])))) * reach
        if where is None or not (rho.min() - slack <= where <= rho.max() + slack):
            at = int((clear[change] + clear[change + 1]) // 2)
            return Sign("bends_elsewhere", rows.start, rows.stop - 1, at, float(np.hypot(*position[at, :2])))
    return None


def _bending(off, half):
    """Positions (N, 3), how the path bends (N,), positive to the left, the rows where that is clear, and the rows smoothed over."""
    position, velocity, second, through = smooth(off.time_s, off.seen_m, half)
    speed, pull = np.hypot(velocity[:, 0], velocity[:, 1]), np.hypot(second[:, 0], second[:, 1])
    bend = velocity[:, 0] * second[:, 1] - velocity[:, 1] * second[:, 0]
    sd = off.sd_m * np.hypot(pull * through[1], speed * through[2])
    return position, bend, np.flatnonzero(np.abs(bend) > CLEAR * sd), half


def _bend_radius_m(trial):
    """The distance from the axis at which the nearest free path changes the side to which it bends, m; None where it never does
    (design, section 2: rho*^2 = (3 omega h - 2 v^2) / omega^2, for v^2 < omega h < 2 v^2)."""
    omega = float(trial.state.omega_rad_s[0])
    start = frames.place_to_rotating(trial.state.radius_m, trial.state.place)
    carried = np.einsum("bi,bij->bj", trial.state.velocity, frames.local_axes(start))
    v = (carried + frames.spin_cross(trial.state.omega_rad_s, start))[0]
    spun, square = omega * float(start[0, 0] * v[1] - start[0, 1] * v[0]), float(v[0] ** 2 + v[1] ** 2)
    return np.sqrt((3 * spun - 2 * square) / omega**2) if square < spun < 2 * square else None


def energy(trial, off: Beside):
    """A gain of u^2/2 - omega^2 rho^2/2, which is constant in free flight and falls in air; in vacuum a loss as well. figure: how much,
    m2/s2."""
    if off.extra_g is None:
        return None
    position, velocity, _, through = smooth(off.time_s, off.seen_m)
    omega = float(trial.state.omega_rad_s[0])
    value = 0.5 * np.sum(velocity**2, axis=1) - 0.5 * omega**2 * np.sum(position[:, :2] ** 2, axis=1)
    pull = omega**2 * np.hypot(position[:, 0], position[:, 1])
    sd = off.sd_m * np.hypot(np.linalg.norm(velocity, axis=1) * through[1], pull * through[0])
    found = []
    for kind, figure in (("gains_energy", value), ("loses_energy", -value)):
        lowest = np.minimum.accumulate(figure)
        last = int(np.argmax(figure - lowest))
        first = int(np.argmin(figure[: last + 1]))
        rise = float(figure[last] - figure[first])
        if rise > CLEAR * np.hypot(sd[first], sd[last]):
            found.append(Sign(kind, first, last, last, rise))
    if trial.problem.unknowns.known.medium != 0.0:
        found = [one for one in found if one.kind == "gains_energy"]
    return max(found, key=lambda one: one.figure, default=None)


def straight_fall(trial, off: Beside):
    """A fall straight down where a thing let go would drift; figure: the drift that is missing, m."""
    across, height = _on_deck(trial, off)
    sd = off.sd_m
    if np.max(np.abs(across - across[0]) / sd) > 4.0 or height[0] - height[-1] < 10.0 * sd[0]:
        return None
    still = type(trial.state)(
        *(getattr(trial.state, n) for n in ("radius_m", "omega_rad_s", "place")),
        np.zeros((1, 3)),
        *(getattr(trial.state, n) for n in ("medium", "pace")),
    )
    resting = flown_states(still, trial.problem.sight.time_s, trial.problem.resistance)
    drift = float(resting.along_m[0, -1] - resting.along_m[0, 0])
    count = len(height)
    return Sign("straight_fall", 0, count - 1, count - 1, drift) if abs(drift) > CLEAR * sd[-1] else None


def ordinary_parabola(trial, off: Beside):
    """A path that a planet would give: evenly on, and up and down under one gravity; figure: that gravity, m/s2."""
    found = _parabola(trial, off)
    if found is None:
        return None
    falls, chi2, count = found
    down = falls * float(off.time_s[-1] - off.time_s[0]) ** 2 / 8.0 > 5.0 * off.sd_m[0]
    fits = down and p_value(chi2, 2 * count - 5) > 0.01
    return Sign("ordinary_parabola", 0, count - 1, count // 2, falls) if fits else None


def as_a_parabola(trial, off: Beside, alike):
    """The same where chi squared of the nearest free path, across and up, is less than that of the parabola by no more than `alike`."""
    sign = ordinary_parabola(trial, off)
    if sign is None:
        return None
    free = float(np.sum((np.linalg.norm(off.off_m[:, :2], axis=1) / off.sd_m) ** 2))
    return sign if _parabola(trial, off)[1] - free <= alike else None


def _parabola(trial, off):
    """Gravity, chi squared and the number of rows of the parabola nearest to a track; None of too few rows."""
    across, height = _on_deck(trial, off)
    t, count = off.time_s, len(off.time_s)
    if count < 5:
        return None
    fall = np.polyfit(t, height, 2)
    left = np.concatenate([across - np.polyval(np.polyfit(t, across, 1), t), height - np.polyval(fall, t)])
    return -2.0 * float(fall[0]), float(np.sum((left / np.tile(off.sd_m, 2)) ** 2)), count


def _on_deck(trial, off):
    """Across and over the deck (N,), (N,), m, as a track aboard has them, or as a picture shows them."""
    sight, radius = trial.problem.sight, float(trial.state.radius_m[0])
    if sight.names[0] == "along_m":
        return sight.seen[:, 0], sight.seen[:, 1]
    start = float(trial.state.place[0, 0]) / radius
    turned = frames.turn(off.seen_m, -start)
    return turned[:, 1], radius - turned[:, 0]
