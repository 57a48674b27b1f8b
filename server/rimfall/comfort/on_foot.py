"""On foot, on stairs and ladders, and in a lift: what is felt at the feet at a steady pace, and how far down leans.

Weights are those that a `walk` of the scene document tells; a lift goes as a ladder does, faster.
"""

import math

import numpy as np

from ..motions.course import floats_at_m_s
from ..motions.people import lean_deg, weight_g
from .stand import in_g

STAIRS_DEG = 32.0  # a step of 175 mm over 280 mm; common practice, no source
_SPINWARD, _AXIAL, _ANTISPINWARD = 0.0, 90.0, 180.0
_UP = 90.0


def on_foot(stand):
    """Every figure of going: on the level, up stairs that rise either way, and straight up at the foot of a ladder or a lift
    and half way to the axis, where its push, spinward above 0, is the same."""
    ways = _ways(stand)
    felt = dict(zip(ways, stand.going(ways.values()), strict=True))
    return _walking(stand, felt) | _stairs(felt) | _straight_up(stand, felt, "ladder") | _lift(stand, felt)


def _ways(stand):
    """Name -> Going."""
    one, way = stand.person, stand.way
    half = stand.floor_radius_m / 2
    spinward, antispinward = stair_ways(stand)
    return {
        "still": way(0.0),
        "walk_spinward_g": way(one.walk_m_s, _SPINWARD),
        "walk_antispinward_g": way(one.walk_m_s, _ANTISPINWARD),
        "run_spinward_g": way(one.run_m_s, _SPINWARD),
        "run_antispinward_g": way(one.run_m_s, _ANTISPINWARD),
        "walk_axial": way(one.walk_m_s, _AXIAL),
        "stairs_spinward_g": spinward,
        "stairs_antispinward_g": antispinward,
        "ladder": way(one.climb_m_s, climb_deg=_UP),
        "ladder_halfway": way(one.climb_m_s, climb_deg=_UP, height_m=half),
        "lift": way(one.lift_m_s, climb_deg=_UP),
        "lift_halfway": way(one.lift_m_s, climb_deg=_UP, height_m=half),
        "halfway": way(0.0, height_m=half),
    }


def stair_ways(stand):
    """Up stairs that rise spinward, and antispinward, at the person's climbing speed."""
    pace = stand.person.climb_m_s / math.sin(math.radians(STAIRS_DEG))
    return [stand.way(pace, heading, STAIRS_DEG) for heading in (_SPINWARD, _ANTISPINWARD)]


def _walking(stand, felt):
    names = ("walk_spinward_g", "walk_antispinward_g", "run_spinward_g", "run_antispinward_g")
    return {name: _pressing_g(felt[name]) for name in names} | {
        "walk_axial_lean_deg": leaning(felt["walk_axial"]),
        "float_speed_m_s": _floats_at_m_s(stand),
        "coriolis_ratio": _coriolis_ratio(stand, felt["still"]),
    }


def _pressing_g(weight):
    """Size of a felt weight (3,) in g; None where it draws off the floor."""
    return float(weight_g(weight[None])[0]) if weight[1] <= 0 else None


def leaning(weight):
    """Angle between a felt weight (3,) and straight down, degrees; None where nothing is felt, or it draws off the floor."""
    return float(lean_deg(weight[None])[0]) if np.any(weight) and weight[1] <= 0 else None


def _floats_at_m_s(stand):
    """The speed at which a walk floats; None also where something else pulls."""
    if any(stand.habitat.pull_m_s2):
        return None
    return floats_at_m_s(stand.habitat, stand.omega_rad_s, stand.floor_radius_m)


def _coriolis_ratio(stand, still):
    """What walking across the spin pushes, 2 omega v, over what is felt standing (3,); None without spin.

    Without thrust it is twice the pace over the rim speed.
    """
    omega, size = abs(stand.omega_rad_s), float(np.linalg.norm(still))
    return 2.0 * omega * stand.person.walk_m_s / size if omega and size else None


def _stairs(felt):
    names = ("stairs_spinward_g", "stairs_antispinward_g")
    lean = greatest(leaning(felt[name]) for name in names)
    return {name: _pressing_g(felt[name]) for name in names} | {"stairs_lean_deg": lean}


def _lift(stand, felt):
    halfway = None if stand.on_a_table else float(weight_g(felt["halfway"][None])[0])
    return _straight_up(stand, felt, "lift") | {"lift_halfway_g": halfway}


def _straight_up(stand, felt, name):
    return {
        f"{name}_push_g": in_g(felt[name][0]),
        f"{name}_lean_deg": leaning(felt[name]),
        f"{name}_halfway_lean_deg": None if stand.on_a_table else leaning(felt[f"{name}_halfway"]),
    }


def greatest(found):
    """The greatest of some figures; None where none of them has a meaning."""
    return max((v for v in found if v is not None), default=None)
