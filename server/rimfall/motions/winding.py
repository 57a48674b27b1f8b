"""How far along a round deck, or round a table, a path has gone: an arc that does not wrap.

In the air it follows the unwrapped inertial azimuth less the frame's angle (a free body's azimuth changes by less than half a
turn between neighbouring times and the path's own knots), on the ground the azimuth in the turning frame. Where a path passes
through the axis the azimuth steps by +pi; at the axis itself it stays what it was.
"""

from collections.abc import Sequence

import numpy as np

from ..physics import frames
from .apexes import AXIS_SHARE
from .plan import Plan
from .setting import Setting
from .trajectory import Trajectory


def knots_s(path: Trajectory) -> np.ndarray:
    """Times (m,) besides those wanted at which a path is read for `along`: its begin and its own knots."""
    return np.concatenate([[path.begin_s], path.knots_s])


def along(
    setting: Setting,
    path: Trajectory,
    plan: Plan,
    anchors_s: np.ndarray,
    time_s: np.ndarray,
    rotating_m: np.ndarray,
    inertial_m: np.ndarray,
    axis_s: Sequence[float] = (),
) -> np.ndarray:
    """Arcs (n,), metres at the deck's radius, at times (n,) inside a path (Trajectory), in any order. anchors_s: its `knots_s` (m,);
    rotating_m, inertial_m (m + n, 3): where it is at these and at the times; axis_s: when it passes through the axis."""
    radius, spin = setting.habitat.radius_m, setting.habitat.spin
    times = np.concatenate([anchors_s, time_s])
    order = np.argsort(times, kind="stable")
    at = times[order]
    steps = _steps(setting, path, at, plan, rotating_m[order], inertial_m[order], axis_s)
    azimuth = np.empty(len(times))
    azimuth[order] = plan.place[0] / radius + np.concatenate([[0.0], np.cumsum(steps)])
    if (
        path.turned_rad is None and not spin.tumbles
    ):  # one subtraction at the end keeps all digits of a path that only flies
        azimuth += float(spin.angle_rad(path.begin_s)) - spin.angle_rad(times)
    return radius * azimuth[len(anchors_s) :]


def _steps(setting, path, at, plan, turning, position, axis_s):
    """Change of azimuth (n - 1) from each of the rising times (n,) to the next: inertial where all of it flies, else that
    in the turning frame. turning, position (n, 3): where it is in either."""
    spin, radius = setting.habitat.spin, setting.habitat.radius_m
    flies = path.turned_rad is None and not spin.tumbles
    if spin.tumbles:  # its axis moves: only seen from aboard does a thing go round it
        return _aboard(setting, plan, turning, at, axis_s)
    steps = frames.azimuth_steps(position)
    on_axis = np.hypot(position[:, 0], position[:, 1]) <= AXIS_SHARE * radius
    for t in axis_s:
        _cross_axis(steps, position, on_axis, at, t)
    if on_axis[0]:
        _leave_axis(steps, position, on_axis, plan.place[0] / radius + float(spin.angle_rad(path.begin_s)))
    if flies:
        return steps
    ground = path.grounded[path.piece(at[1:])]
    rolled = frames.azimuth_steps(turning)
    if on_axis[0]:
        _leave_axis(rolled, turning, on_axis, plan.place[0] / radius)
    return np.where(ground, rolled, steps - np.diff(spin.angle_rad(at)))


def _aboard(setting, plan, turning, at, axis_s):
    """The same of positions (n, 3) in the turning frame, where they alone count."""
    radius = setting.habitat.radius_m
    steps = frames.azimuth_steps(turning)
    on_axis = np.hypot(turning[:, 0], turning[:, 1]) <= AXIS_SHARE * radius
    for t in axis_s:
        _cross_axis(steps, turning, on_axis, at, t)
    if on_axis[0]:
        _leave_axis(steps, turning, on_axis, plan.place[0] / radius)
    return steps


def _cross_axis(steps, along, on_axis, times, axis_s):
    """Make the change of azimuth through the axis upward, half a turn in all: none up to the axis, all of it after."""
    before = np.flatnonzero((times < axis_s) & ~on_axis)
    after = np.flatnonzero((times > axis_s) & ~on_axis)
    if len(before) and len(after):
        steps[before[-1] : after[0]] = 0.0
        steps[after[0] - 1] = frames.azimuth_steps(along[[before[-1], after[0]]])[0] % (2 * np.pi)
    elif len(before):
        steps[before[-1] :] = 0.0


def _leave_axis(steps, along, on_axis, start):
    """For a body released on the axis, where azimuth has no meaning: turn at once to the way it leaves."""
    away = np.flatnonzero(~on_axis)
    if len(away):
        x, y = along[away[0], :2]
        turned = (np.arctan2(y, x) - start) % (2 * np.pi)
        steps[: away[0]] = 0.0
        steps[away[0] - 1] = turned if turned <= np.pi + AXIS_SHARE else turned - 2 * np.pi
