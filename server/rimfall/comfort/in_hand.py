"""Things in hand: what a cup does that slips, where a stream meets the glass, and how far the surface in a glass leans.

The surface of a liquid at rest in a glass is level across what is felt there; slopping about is left out.
"""

import math

import numpy as np

from . import fall
from .on_foot import greatest, leaning, stair_ways
from .stand import HAND

POURED_FROM_M = 0.2  # the lip over the glass; our own choice
_SET_OFF_S = 1.0  # from standing to a walk; our own choice
_HEADINGS = (0.0, 180.0, 90.0)  # spinward, antispinward, along the axis


def dropped(stand):
    """What slips from the hand: when it lands and where, spinward above 0."""
    found = fall.to_the_floor(stand, HAND * stand.person.height_m)
    return _told(found, "drop") | {"drop_time_s": None if found is None else found.time_s}


def poured(stand):
    """How far from straight below the lip a stream meets the glass."""
    return _told(fall.into_a_glass(stand, HAND * stand.person.height_m, POURED_FROM_M), "pour")


def _told(found, name):
    along, axial = (None, None) if found is None else (found.along_m, found.axial_m)
    return {f"{name}_drift_m": along, f"{name}_axial_m": axial}


def glass(stand):
    """How far the surface leans from the floor's own level in a glass carried at a steady walk (the greatest of three ways),
    setting off, and up the stairs. None where the hand is at the axis or beyond."""
    hand_m = HAND * stand.person.height_m
    names = ("glass_walk_lean_deg", "glass_start_lean_deg", "glass_stairs_lean_deg")
    if not stand.on_a_table and hand_m >= stand.floor_radius_m:
        return dict.fromkeys(names)
    ways = [stand.way(stand.person.walk_m_s, heading) for heading in _HEADINGS] + stair_ways(stand)
    leans = [leaning(weight) for weight in stand.going(ways, hand_m)]
    walks, up = leans[: len(_HEADINGS)], leans[len(_HEADINGS) :]
    return dict(zip(names, (greatest(walks), leaning(_setting_off(stand, hand_m)), greatest(up)), strict=True))


def _setting_off(stand, hand_m):
    """What is felt (3,) at the hand as one sets off spinward; on round ground the body turns as it goes, and what is nearer the
    axis speeds up less."""
    share = 1.0 - hand_m / stand.floor_radius_m if stand.is_round else 1.0
    acceleration = stand.person.walk_m_s / _SET_OFF_S * share * stand.rows[0]
    position = stand.points([(0.0, hand_m, 0.0)])
    return stand.felt(position, np.zeros((1, 3)), acceleration[None])[0]


def tossed_m(radius_m, turning_m_s, up_m_s):
    """How far spinward of a hand at that radius, going round at turning_m_s > 0, what it tossed up at up_m_s comes back to its height,
    metres along the hand's circle. Straight on, a chord of that circle; for as long as it takes the hand goes round as well."""
    up_rad = math.atan2(up_m_s, turning_m_s)
    return radius_m * (2 * up_rad - math.sin(2 * up_rad))
