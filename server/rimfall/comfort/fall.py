"""Things let go aboard, without air: where they come down, in closed form, since they go straight in the room that does not turn.

In it a thing let go at a distance r from the axis moves at omega r, square to the line to the axis; a pull along the axis adds
p t^2/2 there. Walls are not looked for.
"""

import math
from dataclasses import dataclass

import numpy as np

_HALVINGS = 60
_LOOKS = 129
_ON_AXIS = 1e-9  # of the ground's radius


@dataclass(frozen=True)
class Fall:
    """How long it takes; where it lands from straight below: along the ground (spinward above 0), and along the axis (on a
    turntable outward), metres."""

    time_s: float
    along_m: float
    axial_m: float


def to_the_floor(stand, height_m):
    """The Fall from height_m to the floor stood on; None where it never lands, or past the floor's edge."""
    habitat = stand.habitat
    if stand.on_a_table:
        return _to_the_table(stand, height_m) if not stand.omega_rad_s else None
    if habitat.floors:
        found = _to_a_flat(stand, stand.floor_radius_m, height_m)
        return found if found is not None and _within(habitat.floors[0], found) else None
    time_s = _round_time_s(stand, height_m)
    return None if time_s is None else _on_a_round(stand, stand.floor_radius_m, time_s)


def into_a_glass(stand, glass_m, above_m):
    """The Fall from above_m over a glass that is held glass_m over the floor; None where nothing brings it down."""
    if stand.on_a_table:
        return _to_the_table(stand, above_m)
    radius_m = stand.floor_radius_m - glass_m
    if radius_m <= 0:
        return None
    if stand.habitat.floors:
        return _to_a_flat(stand, radius_m, above_m)
    time_s = _drum_time_s(stand.omega_rad_s, radius_m, above_m)
    return None if time_s is None else _on_a_round(stand, radius_m, time_s)


def _within(floor, found):
    return abs(found.along_m) <= floor.length_m / 2 and abs(found.axial_m) <= floor.width_m / 2


def _sag_m(stand, time_s):
    return 0.5 * stand.habitat.pull_m_s2[2] * time_s**2 + 0.0  # never -0


def _on_a_round(stand, radius_m, time_s):
    """It has gone round by atan(omega t), the ground by omega t."""
    turned = stand.omega_rad_s * time_s
    return Fall(time_s, radius_m * (math.atan(turned) - turned), _sag_m(stand, time_s))


def _drum_time_s(omega_rad_s, radius_m, height_m, pull_m_s2=0.0):
    """Time until r^2 (1 + omega^2 t^2) + p^2 t^4/4 is the square of the ground's radius; the pull is a ball's, which closes
    along the axis. None from the axis on, and where nothing moves."""
    from_m = radius_m - height_m
    if from_m <= _ON_AXIS * radius_m:
        return None
    left, rate = height_m * (radius_m + from_m), (omega_rad_s * from_m) ** 2
    divisor = rate + math.hypot(rate, pull_m_s2 * math.sqrt(left))
    return math.sqrt(2.0 * left / divisor) if divisor else None


def _round_time_s(stand, height_m):
    habitat, pull = stand.habitat, stand.habitat.pull_m_s2[2]
    section_m = habitat.section_radius_m
    if section_m == habitat.radius_m:  # a ball
        return _drum_time_s(stand.omega_rad_s, habitat.radius_m, height_m, pull)
    if section_m is not None and height_m >= 2 * section_m:
        return None
    drum_s = _drum_time_s(stand.omega_rad_s, habitat.radius_m, height_m)
    if section_m is None or not pull or height_m >= habitat.radius_m:
        return drum_s
    return _tube_time_s(stand, height_m, abs(pull), drum_s)


def _tube_time_s(stand, height_m, pull_m_s2, drum_s):
    """First time at which it leaves the circle of the tube: by then it has sagged no more than across the tube."""
    tube, middle = stand.habitat.section_radius_m, stand.habitat.radius_m - stand.habitat.section_radius_m
    from_m, omega = stand.habitat.radius_m - height_m, stand.omega_rad_s

    def outside(t):
        return np.hypot(from_m * np.hypot(1.0, omega * t) - middle, 0.5 * pull_m_s2 * t**2) - tube

    sags_s = 2.0 * math.sqrt(tube / pull_m_s2)
    times = np.linspace(0.0, sags_s if drum_s is None else min(sags_s, drum_s), _LOOKS)[1:]
    first = int(np.argmax(outside(times) >= 0)) if np.any(outside(times) >= 0) else _LOOKS - 2
    low, high = (times[first - 1] if first else 0.0), times[first]
    for _ in range(_HALVINGS):
        middle_s = 0.5 * (low + high)
        low, high = (middle_s, high) if outside(middle_s) < 0 else (low, middle_s)
    return float(high)


def _to_a_flat(stand, radius_m, height_m):
    """In the floor's own directions it is r (cos + t sin) out and r (t cos - sin) along, of the angle turned: it lands while the
    floor turns toward it, within a quarter turn, or goes past its plane's end."""
    from_m, omega = radius_m - height_m, stand.omega_rad_s
    if from_m <= _ON_AXIS * radius_m or not omega:
        return None
    low, high = 0.0, 0.5 * math.pi
    share = height_m / from_m
    if _outward(high) < share:
        return None
    for _ in range(_HALVINGS):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if _outward(middle) < share else (low, middle)
    time_s = high / omega
    return Fall(time_s, from_m * (high * math.cos(high) - math.sin(high)), _sag_m(stand, time_s))


def _outward(turned):
    """How far out it has come since the release, over the radius of that."""
    return turned * math.sin(turned) - 2.0 * math.sin(0.5 * turned) ** 2


def _to_the_table(stand, height_m):
    gravity = -stand.habitat.pull_m_s2[2]
    if gravity <= 0:
        return None
    time_s = math.sqrt(2.0 * height_m / gravity)
    radius_m, turned = stand.floor_radius_m, stand.omega_rad_s * time_s
    return Fall(time_s, radius_m * (math.atan(turned) - turned), radius_m * (math.hypot(1.0, turned) - 1.0))
