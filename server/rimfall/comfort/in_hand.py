"""Things in hand: where a cup lands that slips, where a stream meets the glass, and how far the surface in a glass leans.

What is let go falls without air, and so goes straight in the room that does not turn: where it comes down is a closed form, or
the one root of a condition that holds from some time on. In that room a thing let go at a distance r from the axis moves at
omega r, square to the line to the axis; a pull along the axis adds p t^2/2 there. Walls are not looked for. The surface of a
liquid at rest in a glass is level across what is felt there; slopping about is left out.
"""

import math
from dataclasses import dataclass

import numpy as np

from .on_foot import greatest, leaning, stair_paces
from .stance import HAND

_HALVINGS = 60
_ON_AXIS = 1e-9  # of the ground's radius


@dataclass(frozen=True)
class Fall:
    """How long it takes; where it lands from straight below: along the ground (spinward above 0), and along the axis; on a
    turntable straight, in the directions spinward and outward of there; metres."""

    time_s: float
    along_m: float
    axial_m: float


def fall_to_the_floor(stance, height_m):
    """The Fall from height_m to the floor stood on; None where it never lands, or past the floor's edge."""
    habitat = stance.habitat
    if stance.on_a_table:
        return _to_the_table(stance, height_m) if not stance.omega_rad_s else None
    if habitat.floors:
        fall = _to_a_flat(stance, stance.floor_radius_m, height_m)
        return fall if fall is not None and _within(habitat.floors[0], fall) else None
    time_s = _round_time_s(stance, height_m)
    return None if time_s is None else _on_a_round(stance, stance.floor_radius_m, time_s)


def fall_into_a_glass(stance, glass_m, above_m):
    """The Fall from above_m over a glass that is held glass_m over the floor; None where nothing brings it down."""
    if stance.on_a_table:
        return _to_the_table(stance, above_m)
    radius_m = stance.floor_radius_m - glass_m
    if radius_m <= 0:
        return None
    if stance.habitat.floors:
        return _to_a_flat(stance, radius_m, above_m)
    time_s = _drum_time_s(stance.omega_rad_s, radius_m, above_m)
    return None if time_s is None else _on_a_round(stance, radius_m, time_s)


def _within(floor, fall):
    return abs(fall.along_m) <= floor.length_m / 2 and abs(fall.axial_m) <= floor.width_m / 2


def _sag_m(stance, time_s):
    return 0.5 * stance.habitat.pull_m_s2[2] * time_s**2 + 0.0  # never -0


def _on_a_round(stance, radius_m, time_s):
    """It has gone round by atan(omega t), the ground by omega t."""
    turned = stance.omega_rad_s * time_s
    return Fall(time_s, radius_m * (math.atan(turned) - turned), _sag_m(stance, time_s))


def _drum_time_s(omega_rad_s, radius_m, height_m, pull_m_s2=0.0):
    """Time until r^2 (1 + omega^2 t^2) + p^2 t^4/4 is the square of the ground's radius; the pull is a ball's, which closes
    along the axis. None from the axis on, and where nothing moves."""
    from_m = radius_m - height_m
    if from_m <= _ON_AXIS * radius_m:
        return None
    left, rate = height_m * (radius_m + from_m), (omega_rad_s * from_m) ** 2
    divisor = rate + math.hypot(rate, pull_m_s2 * math.sqrt(left))
    return math.sqrt(2.0 * left / divisor) if divisor else None


def _round_time_s(stance, height_m):
    habitat, pull = stance.habitat, stance.habitat.pull_m_s2[2]
    section_m = habitat.section_radius_m
    if section_m == habitat.radius_m:  # a ball
        return _drum_time_s(stance.omega_rad_s, habitat.radius_m, height_m, pull)
    if section_m is not None and height_m >= 2 * section_m:
        return None
    drum_s = _drum_time_s(stance.omega_rad_s, habitat.radius_m, height_m)
    if section_m is None or not pull or height_m >= habitat.radius_m:
        return drum_s
    return _tube_time_s(stance, height_m, abs(pull), drum_s)


def _tube_time_s(stance, height_m, pull_m_s2, drum_s):
    """Time at which it leaves the circle of the tube: by then it has sagged no more than across the tube.

    It leaves once: with u = hypot(1, omega t), which rises with time, the square of its distance from the middle of the tube is
    (from u - middle)^2 + (p/2)^2 (u^2 - 1)^2 / omega^4, convex in u from 1 on, and it begins inside.
    """
    tube, middle = stance.habitat.section_radius_m, stance.habitat.radius_m - stance.habitat.section_radius_m
    from_m, omega = stance.habitat.radius_m - height_m, stance.omega_rad_s

    def outside(t):
        return math.hypot(from_m * math.hypot(1.0, omega * t) - middle, 0.5 * pull_m_s2 * t**2) - tube

    sags_s = 2.0 * math.sqrt(tube / pull_m_s2)
    return _root(outside, sags_s if drum_s is None else min(sags_s, drum_s))


def _to_a_flat(stance, radius_m, height_m):
    """In the floor's own directions it is r (cos + t sin) out and r (t cos - sin) along, of the angle turned: it lands while the
    floor turns toward it, within a quarter turn, or goes past its plane's end."""
    from_m, omega = radius_m - height_m, stance.omega_rad_s
    if from_m <= _ON_AXIS * radius_m or not omega:
        return None
    share = height_m / from_m
    if _outward(0.5 * math.pi) < share:
        return None
    turned = _root(lambda angle: _outward(angle) - share, 0.5 * math.pi)
    time_s = turned / omega
    return Fall(time_s, from_m * (turned * math.cos(turned) - math.sin(turned)), _sag_m(stance, time_s))


def _root(condition, high):
    """The one root in 0 to `high` of what is below 0 before it and not after, by halving."""
    low = 0.0
    for _ in range(_HALVINGS):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if condition(middle) < 0 else (low, middle)
    return high


def _outward(turned):
    """How far out it has come since the release, over the radius of that."""
    return turned * math.sin(turned) - 2.0 * math.sin(0.5 * turned) ** 2


def _to_the_table(stance, height_m):
    gravity = -stance.habitat.pull_m_s2[2]
    if gravity <= 0:
        return None
    time_s = math.sqrt(2.0 * height_m / gravity)
    radius_m, turned = stance.floor_radius_m, stance.omega_rad_s * time_s
    out_m, behind = radius_m * math.hypot(1.0, turned), math.atan(turned) - turned
    return Fall(time_s, out_m * math.sin(behind), out_m * math.cos(behind) - radius_m)


POURED_FROM_M = 0.2  # the lip over the glass; our own choice
_SET_OFF_S = 1.0  # from standing to a walk; our own choice
_HEADINGS = (0.0, 180.0, 90.0)  # spinward, antispinward, along the axis


def dropped(stance):
    """What slips from the hand: when it lands and where, spinward above 0."""
    fall = fall_to_the_floor(stance, HAND * stance.person.height_m)
    return _drifts(fall, "drop") | {"drop_time_s": None if fall is None else fall.time_s}


def poured(stance):
    """How far from straight below the lip a stream meets the glass."""
    return _drifts(fall_into_a_glass(stance, HAND * stance.person.height_m, POURED_FROM_M), "pour")


def _drifts(fall, name):
    along, axial = (None, None) if fall is None else (fall.along_m, fall.axial_m)
    return {f"{name}_drift_m": along, f"{name}_axial_m": axial}


def glass(stance):
    """How far the surface leans from the floor's own level in a glass carried at a steady walk (the greatest of three ways),
    setting off, and up the stairs. None where the hand is at the axis or beyond."""
    hand_m = HAND * stance.person.height_m
    names = ("glass_walk_lean_deg", "glass_start_lean_deg", "glass_stairs_lean_deg")
    if not stance.on_a_table and hand_m >= stance.floor_radius_m:
        return dict.fromkeys(names)
    paces = [stance.pace(stance.person.walk_m_s, heading) for heading in _HEADINGS] + stair_paces(stance)
    leans = [leaning(weight) for weight in stance.felt_at(paces, hand_m)]
    walks, up = leans[: len(_HEADINGS)], leans[len(_HEADINGS) :]
    return dict(zip(names, (greatest(walks), leaning(_setting_off(stance, hand_m)), greatest(up)), strict=True))


def _setting_off(stance, hand_m):
    """What is felt (3,) at the hand as one sets off spinward; on round ground the body turns as it goes, and what is nearer the
    axis speeds up less."""
    share = 1.0 - hand_m / stance.floor_radius_m if stance.is_round else 1.0
    acceleration = stance.person.walk_m_s / _SET_OFF_S * share * stance.rows[0]
    position = stance.points([(0.0, hand_m, 0.0)])
    return stance.felt(position, np.zeros((1, 3)), acceleration[None])[0]


def tossed_m(radius_m, turning_m_s, up_m_s):
    """How far spinward of a hand at that radius, going round at turning_m_s > 0, what it tossed up at up_m_s comes back to its height,
    metres along the hand's circle. Straight on, a chord of that circle; for as long as it takes the hand goes round as well."""
    up_rad = math.atan2(up_m_s, turning_m_s)
    return radius_m * (2 * up_rad - math.sin(2 * up_rad))
