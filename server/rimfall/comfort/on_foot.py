"""On foot, on stairs and ladders, and in a lift: what is felt at the feet at a steady pace, and how far down leans.

Weights are those that a `walk` of the scene document tells; a lift goes as a ladder does, faster.
"""

import math

import numpy as np

from ..motions.course import floats_at_m_s
from ..motions.people import lean_deg, weight_g
from .stance import in_g

STAIRS_DEG = 32.0  # a step of 175 mm over 280 mm; common practice, no source
_SPINWARD, _AXIAL, _ANTISPINWARD = 0.0, 90.0, 180.0
_UP = 90.0


def on_foot(stance):
    """Every figure of going: on the level, up stairs that rise either way, and straight up at the foot of a ladder or a lift
    and half way to the axis, where its push, spinward above 0, is the same."""
    paces = _paces(stance)
    felt = dict(zip(paces, stance.felt_at(paces.values()), strict=True))
    return _walking(stance, felt) | _stairs(felt) | _straight_up(stance, felt, "ladder") | _lift(stance, felt)


def _paces(stance):
    """Name -> Going."""
    one, pace = stance.person, stance.pace
    half = stance.floor_radius_m / 2
    spinward, antispinward = stair_paces(stance)
    return {
        "still": pace(0.0),
        "walk_spinward_g": pace(one.walk_m_s, _SPINWARD),
        "walk_antispinward_g": pace(one.walk_m_s, _ANTISPINWARD),
        "run_spinward_g": pace(one.run_m_s, _SPINWARD),
        "run_antispinward_g": pace(one.run_m_s, _ANTISPINWARD),
        "walk_axial": pace(one.walk_m_s, _AXIAL),
        "stairs_spinward_g": spinward,
        "stairs_antispinward_g": antispinward,
        "ladder": pace(one.climb_m_s, climb_deg=_UP),
        "ladder_halfway": pace(one.climb_m_s, climb_deg=_UP, height_m=half),
        "lift": pace(one.lift_m_s, climb_deg=_UP),
        "lift_halfway": pace(one.lift_m_s, climb_deg=_UP, height_m=half),
        "halfway": pace(0.0, height_m=half),
    }


def stair_paces(stance):
    """Up stairs that rise spinward, and antispinward, at the person's climbing speed."""
    along_m_s = stance.person.climb_m_s / math.sin(math.radians(STAIRS_DEG))
    return [stance.pace(along_m_s, heading, STAIRS_DEG) for heading in (_SPINWARD, _ANTISPINWARD)]


def _walking(stance, felt):
    names = ("walk_spinward_g", "walk_antispinward_g", "run_spinward_g", "run_antispinward_g")
    return {name: _pressing_g(felt[name]) for name in names} | {
        "walk_axial_lean_deg": leaning(felt["walk_axial"]),
        "float_speed_m_s": _floats_at_m_s(stance),
        "coriolis_ratio": _coriolis_ratio(stance, felt["still"]),
    }


def _pressing_g(weight):
    """Size of a felt weight (3,) in g; None where it draws off the floor."""
    return float(weight_g(weight[None])[0]) if weight[1] <= 0 else None


def leaning(weight):
    """Angle between a felt weight (3,) and straight down, degrees; None where nothing is felt, or it draws off the floor."""
    return float(lean_deg(weight[None])[0]) if np.any(weight) and weight[1] <= 0 else None


def _floats_at_m_s(stance):
    """The speed at which a walk floats; None also where something else pulls."""
    if any(stance.habitat.pull_m_s2):
        return None
    return floats_at_m_s(stance.habitat, stance.omega_rad_s, stance.floor_radius_m)


def _coriolis_ratio(stance, still):
    """What walking across the spin pushes, 2 omega v, over what is felt standing (3,); None without spin.

    Without thrust it is twice the pace over the rim speed.
    """
    omega, size = abs(stance.omega_rad_s), float(np.linalg.norm(still))
    return 2.0 * omega * stance.person.walk_m_s / size if omega and size else None


def _stairs(felt):
    names = ("stairs_spinward_g", "stairs_antispinward_g")
    lean = greatest(leaning(felt[name]) for name in names)
    return {name: _pressing_g(felt[name]) for name in names} | {"stairs_lean_deg": lean}


def _lift(stance, felt):
    halfway = None if stance.on_a_table else float(weight_g(felt["halfway"][None])[0])
    return _straight_up(stance, felt, "lift") | {"lift_halfway_g": halfway}


def _straight_up(stance, felt, name):
    return {
        f"{name}_push_g": in_g(felt[name][0]),
        f"{name}_lean_deg": leaning(felt[name]),
        f"{name}_halfway_lean_deg": None if stance.on_a_table else leaning(felt[f"{name}_halfway"]),
    }


def greatest(figures):
    """The greatest of some figures; None where none of them has a meaning."""
    return max((v for v in figures if v is not None), default=None)
