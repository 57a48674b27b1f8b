"""Where a path turns back: its heights' greatest values, and where it passes through the axis."""

import numpy as np

from ..physics import bernstein, turned
from ..physics.crossings import STILL_M_S, nearest_axis
from ..physics.integrate import Step
from .plan import Plan
from .setting import Setting
from .trajectory import Trajectory

AXIS_SHARE = 1e-9  # nearer to the axis than this share of the radius is through it


def marks(setting: Setting, plan: Plan, path: Trajectory) -> list[tuple[float, str]]:
    """(time, kind) of the turning points of the height inside a path (Trajectory), in the air: "apex", or "axis" where it passes
    through the axis. In order of time."""
    chart = setting.habitat.chart(plan.floor)
    air = (~path.grounded).nonzero()[0]
    if not len(air):
        return []
    about_axis = chart.bends
    s = _nearest(setting, path, air) if about_axis else _highest(setting, chart, path, air)
    turns = np.isfinite(s)
    if not turns.any():
        return []
    turning = air[turns]
    times = path.start_s[turning] + s[turns] * path.length_s[turning]
    # A piece's polynomial runs on past where the next piece begins; what it does there never happened.
    until_s = np.append(path.start_s[1:], path.end_s)[turning]
    times = times[(times > path.begin_s) & (times < np.minimum(until_s, path.end_s))]
    if not about_axis:
        return [(t, "apex") for t in times]
    spin = setting.habitat.spin
    position = path.both(spin, times)[0] if spin.tumbles else path.at(times)[0]  # as far from an axis that stands still
    through = np.hypot(position[:, 0], position[:, 1]) <= AXIS_SHARE * setting.habitat.radius_m
    return [
        (t, kind) for t, axis in zip(times, through, strict=True) for kind in (("axis", "apex") if axis else ("apex",))
    ]


def _nearest(setting, path, air):
    """s (len(air),) at which a path is nearest to the axis, inf where that is not inside."""
    if not setting.habitat.spin.tumbles:
        control = np.ascontiguousarray(path.path_m[air, :, :2].transpose(1, 2, 0))
        return nearest_axis(path.position_m[air], control, path.length_s[air])
    position, control = _from_aboard(setting, path, air)
    return nearest_axis(position.T, np.ascontiguousarray(control[:, :2]), path.length_s[air])


def _from_aboard(setting, path, air):
    """`turned.path` of a path's pieces in the air."""
    states = (path.position_m[air].T, path.velocity_m_s[air].T)
    powers = (np.ascontiguousarray(np.moveaxis(p[air], 0, -1)) for p in (path.path_m, path.path_m_s))
    step = Step(0.0, path.length_s[air], *states, *powers)
    return turned.path(step, path.start_s[air], setting.habitat.spin)


def _highest(setting, chart, path, air):
    """s (len(air),) at which the height over a flat floor or a table has its greatest value, inf where it has none inside."""
    _, control = _from_aboard(setting, path, air)
    up = chart.axes(np.array([[1.0, 0.0, 0.0]]))[0, 1]
    rising = bernstein.derivative(np.einsum("kan,a->kn", control, up))
    rises = rising[0] > STILL_M_S * path.length_s[air]
    s = bernstein.first_descent(np.where(rises, rising, 1.0), depth=0.0)
    return np.where(rises & (s < 1.0), s, np.inf)
