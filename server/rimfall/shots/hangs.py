"""How long a throw can be in the air at most, looked for among all that keep to what is fixed: no longer flight is worth looking for."""

from dataclasses import replace

import numpy as np

from ..motions.flight import fly_to_ends
from ..physics.surfaces import Plane
from .fixed import SPEED, Fixed
from .target import Resting
from .throws import Thrower, aimed

_LOOKS, _FINER, _ROUGH_M = 240, 5, 1e-4
_SPEEDS_M_S, _HEADINGS = np.geomspace(0.3, 600.0, 48), 24
_GROWN, _MARGIN, _MORE_S = 1.15, 1.25, 0.5


def hangs_s(thrower: Thrower, fixed: Fixed, most_s: float, slab: tuple[float, float] | None = None) -> float:
    """About how long a throw that keeps to a fixed speed or elevation can be in the air at most, seconds, whatever else is free, before it
    comes to the ground, with a margin; most_s where that is longer, or where some throws stay up the longer the nearer they are to one (it
    comes to hang about the axis). Ceiling and hub are in nobody's way here. slab: what a throw passes along the axis, from and to, metres,
    it does not come back from."""
    hand = thrower.hand
    grounds = [s for s in hand.room.surfaces if getattr(s, "name", "deck") not in ("ceiling", "hub")]
    if slab is not None:
        half_m = hand.body.diameter_m / 2
        low, high = slab
        grounds += [Plane("wall", (0.0, 0.0, 1.0), low - half_m), Plane("wall", (0.0, 0.0, -1.0), -high - half_m)]
    bare = replace(thrower, hand=replace(hand, room=replace(hand.room, surfaces=tuple(grounds))))

    def lasts(velocities):
        releases = bare.releases(velocities, hand.time_s + most_s)
        return fly_to_ends(thrower.setting.medium, releases, tolerance_m=_ROUGH_M).time_s - hand.time_s

    velocities, size = _all_over(fixed)
    longest = 0.0
    for _ in range(3):
        times = lasts(velocities)
        if times.max() >= most_s * (1 - 1e-9) or (longest and times.max() > _GROWN * longest and size < 0.02):
            return most_s
        longest = max(longest, float(times.max()))
        best = velocities[np.argsort(-times)[:_FINER]]
        offsets = size * np.stack(np.meshgrid(*[np.linspace(-1, 1, 5)] * 2), -1).reshape(-1, 2)
        across = np.linalg.svd(fixed.off(best)[1][:, None, :])[2][:, 1:] * np.linalg.norm(best, axis=1)[:, None, None]
        velocities = fixed.kept((best[:, None] + np.einsum("ok,nka->noa", offsets, across)).reshape(-1, 3))
        size *= 0.3
    return min(_MARGIN * longest + _MORE_S, most_s)


def _all_over(fixed):
    """Throws (N, 3) all over those that keep to it, and about how far apart they are, of their speed."""
    if fixed.what != SPEED:
        headings = np.arange(_HEADINGS) * 360.0 / _HEADINGS
        speed, heading = (each.ravel() for each in np.meshgrid(_SPEEDS_M_S, headings))
        return aimed(speed, heading, fixed.value), float(np.log(_SPEEDS_M_S[1] / _SPEEDS_M_S[0]))
    up = 1.0 - 2.0 * (np.arange(_LOOKS) + 0.5) / _LOOKS
    round_ = np.pi * (3.0 - np.sqrt(5.0)) * np.arange(_LOOKS)
    level = np.sqrt(1.0 - up * up)
    directions = np.stack([level * np.cos(round_), up, level * np.sin(round_)], axis=-1)
    return fixed.value * directions, 2.0 / np.sqrt(_LOOKS)


def slab_of(thrower: Thrower, target: Resting, within_m: float) -> tuple[float, float] | None:
    """What a throw may pass along the axis and still come within reach, from and to; None where something but drag pulls that way."""
    hand = thrower.hand
    if hand.room.pull_m_s2[2] or hand.lifts or not isinstance(target, Resting):
        return None
    ends = hand.position_m[2], target.rotating_m[2]
    return min(ends) - 1.01 * within_m, max(ends) + 1.01 * within_m
