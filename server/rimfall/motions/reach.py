"""When what flies first comes within the reach of somebody who is there: near enough to the upright line from the feet to the head."""

from dataclasses import dataclass

import numpy as np

from ..physics.budget import spend
from ..physics.constants import ARM_REACH_M
from .setting import Setting
from .track import Track, grid_times

_LOOKS, _ROUNDS = 33, 6  # about the nearest moment, each round within one step of the last


@dataclass(frozen=True)
class Reached:
    """A flight within somebody's reach, at its nearest to the middle of their body: when, how far off the line from feet to head, how high
    over the ground, and how fast they near each other."""

    time_s: float
    off_m: float
    height_m: float
    closing_m_s: float


def first_reached(
    setting: Setting, flight: Track, floor: int, until_s: float, catcher: Track, half_m: float
) -> Reached | None:
    """The first time that a flight over a floor comes within an arm's reach of somebody there, after it has once been beyond that; None
    where it does not by until_s. half_m: of the catcher's height, about the path. Before and after that path the catcher stands still."""
    spend()
    grid = grid_times(setting.rate, flight.first, len(flight.samples.time_s))
    times = np.unique([flight.path.begin_s, *grid[(grid > flight.path.begin_s) & (grid < until_s)], until_s])
    chart = setting.habitat.chart(floor)
    off = _off_body(chart, *_at(setting, times, flight, catcher)[:2], half_m)
    within = _nearest_of_segments(off) <= ARM_REACH_M
    if np.linalg.norm(off[0]) <= ARM_REACH_M:  # it leaves the catcher's own hands
        within &= np.logical_or.accumulate(~within)
    begins = np.flatnonzero(within & ~np.append(False, within[:-1]))
    ends = np.flatnonzero(within & ~np.append(within[1:], False)) + 1
    for first, last in zip(begins, ends, strict=True):
        reached = _nearest(setting, chart, flight, catcher, half_m, times[first], times[last])
        if reached.off_m <= ARM_REACH_M:
            return reached
    return None


def _off_body(chart, here, there, half_m):
    """From the nearest point of the upright lines through `there` (n, 3), half_m up and down, to `here` (n, 3)."""
    off, up = here - there, chart.axes(there)[..., 1, :]
    along = np.clip(np.sum(off * up, axis=-1), -half_m, half_m)
    return off - along[:, None] * up


def _nearest_of_segments(off):
    """The least length (n - 1,) between each two of the vectors (n, 3)."""
    step = np.diff(off, axis=0)
    square = np.maximum(np.sum(step * step, axis=1), 1e-300)
    share = np.clip(-np.sum(off[:-1] * step, axis=1) / square, 0.0, 1.0)
    return np.linalg.norm(off[:-1] + share[:, None] * step, axis=1)


def _nearest(setting, chart, flight, catcher, half_m, low_s, high_s):
    """The Reached of the nearest moment between two times."""
    for _ in range(_ROUNDS):
        times = np.linspace(low_s, high_s, _LOOKS)
        here, there, closing = _at(setting, times, flight, catcher)
        off = np.linalg.norm(_off_body(chart, here, there, half_m), axis=1)
        middle = np.linalg.norm(here - there, axis=1)
        within = off <= ARM_REACH_M
        k = int(np.argmin(np.where(within, middle, np.inf) if np.any(within) else off))
        low_s, high_s = times[max(k - 1, 0)], times[min(k + 1, _LOOKS - 1)]
    return Reached(float(times[k]), float(off[k]), float(chart.height(here[k])), float(np.linalg.norm(closing[k])))


def _at(setting, times, flight, catcher):
    """Positions of a flight and of a catcher, and the velocity of the one as the other sees it, all (n, 3) in the turning frame."""
    spin = setting.habitat.spin
    here, moving, _ = flight.path.both(spin, times)
    present = np.clip(times, catcher.path.begin_s, catcher.path.end_s)
    there, going, _ = catcher.path.both(spin, present)
    return here, there, moving - np.where((present == times)[:, None], going, 0.0)
