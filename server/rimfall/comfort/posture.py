"""Standing, sitting, lying and turning the head: what is felt along a body, and on the levels above it.

A turn of the head brings an angular acceleration across both turns, which the inner ear takes for a third: the spin times the
head's own turn (Guedry 1974; textbook kinematics), told in the axes of a head that is held upright: yaw about up, pitch about the
line through the ears, roll about the line of sight."""

import math
from dataclasses import dataclass

import numpy as np

from ..language import tr
from ..motions.people import lean_deg, weight_g
from ..physics.constants import G0_M_S2
from ..physics.frames import spin_cross
from .stance import HEART, SEAT, SITTING, in_g

_STOREY_M = 3.0  # from floor to floor; our own choice
_MOST_STOREYS = 3
_RISE_S = 1.0  # from a seat to one's feet; our own choice


@dataclass(frozen=True)
class Level:
    """A floor or a deck: its distance from the axis, how much nearer to it than the floor stood on, and what is felt there.

    name: "" where it has none, as the storeys over a deck.
    """

    name: str
    radius_m: float
    height_m: float
    gravity_g: float
    rim_speed_m_s: float


def standing(stance):
    """Weight at the feet, heart and head, seated as well, and how it changes from feet to head.

    The change is that of the whole of what is felt, direction included, so that it is height over radius also for who reaches
    past the axis, and none on a turntable. rise_push_g is what pushes the head spinward while one stands up, at the speed of
    the whole way.
    """
    tall = stance.person.height_m
    heights = tall * np.array([0.0, HEART, 1.0, SEAT + SITTING - (1.0 - HEART), SEAT + SITTING, SEAT + SITTING])
    velocity = np.zeros((len(heights), 3))
    velocity[5] = (1.0 - SEAT - SITTING) * tall / _RISE_S * stance.rows[1]
    felt = stance.felt(stance.points(np.outer(heights, (0.0, 1.0, 0.0))), velocity)
    feet, heart, head, seated_heart, seated_head, _ = (float(v) for v in weight_g(felt))
    change_g = in_g(np.linalg.norm(felt[0] - felt[2]))
    return {
        "feet_g": feet,
        "heart_g": heart,
        "head_g": head,
        "gradient_percent": 100.0 * change_g / feet if feet else None,
        "gradient_g_per_m": change_g / tall,
        "seated_heart_g": seated_heart,
        "seated_head_g": seated_head,
        "rise_push_g": in_g(felt[5, 0] - felt[4, 0]),
        "floor_lean_deg": float(lean_deg(felt)[0]) if stance.on_a_table or any(stance.habitat.pull_m_s2) else None,
    }


def lying(stance):
    """Weight at the heart lying straight along the axis and across it, and how far down leans from the bed at head and feet.

    Across round ground the bed rests on both its ends, so that its middle is over the ground; who is longer than the habitat is
    wide does not fit. A turntable has no place to lie along its axis.
    """
    half = stance.person.height_m / 2
    heart = stance.person.height_m * (HEART - 0.5)
    fits = not stance.is_round or half < stance.floor_radius_m
    high = stance.floor_radius_m - math.sqrt(stance.floor_radius_m**2 - half**2) if stance.is_round and fits else 0.0
    felt = stance.felt(stance.points([(0.0, 0.0, heart), (heart, high, 0.0), (half, high, 0.0), (-half, high, 0.0)]))
    sizes, leans = weight_g(felt), lean_deg(felt)
    return {
        "lying_along_g": None if stance.on_a_table else float(sizes[0]),
        "lying_across_g": float(sizes[1]) if fits else None,
        "lying_across_lean_deg": float(max(leans[2:])) if fits else None,
    }


def levels(stance, decks):
    """Level of each named deck inside the habitat, the inside-most last, with the deck stood on where none of them is that; else
    of storeys, where there is room; on flat floors, of the floors."""
    habitat = stance.habitat
    inside = sorted(((d.name, d.radius_m) for d in decks if d.radius_m <= habitat.radius_m), key=lambda one: -one[1])
    if inside:
        named = inside if inside[0][1] == habitat.radius_m else [("", habitat.radius_m), *inside]
    elif habitat.floors:
        named = [(f.name, f.radius_m) for f in habitat.floors]
    elif stance.on_a_table:
        named = [(tr("Rim of the turntable"), habitat.radius_m)]
    else:
        named = [("", habitat.radius_m - k * _STOREY_M) for k in _storeys(habitat)]
    return tuple(_level(stance, *one) for one in named)


def _storeys(habitat):
    """Numbers of the storeys that have room for one more over them."""
    free = int(habitat.headroom_m() // _STOREY_M)
    return range(min(max(free, 1), _MOST_STOREYS + 1))


def _level(stance, name, radius_m):
    pull = math.hypot(*stance.habitat.pull_m_s2)
    gravity_g = math.hypot(stance.omega_rad_s**2 * radius_m, pull) / G0_M_S2
    height_m = 0.0 if stance.on_a_table else stance.floor_radius_m - radius_m
    return Level(name, radius_m, height_m, gravity_g, abs(stance.omega_rad_s) * radius_m)


_TURNS = ("yaw", "pitch", "roll")
_NONE = 1e-12  # of the product of both rates: nothing is left but round-off


@dataclass(frozen=True)
class HeadTurn:
    """A turn of the head, where it faces, the angular acceleration across it, and the turn it is felt as, or None."""

    turn: str
    facing: str
    deg_s2: float
    felt_as: str | None


def head_turns(stance):
    """The six HeadTurns: each turn facing spinward, and along the axis (on a turntable outward)."""
    facings = ("spinward", 0), ("outward" if stance.on_a_table else "axial", 2)
    return tuple(one for name, row in facings for one in _facing(stance, name, row))


def _facing(stance, name, row):
    forward, up = stance.rows[row], stance.rows[1]
    axes = np.array([up, np.cross(up, forward), forward])  # of yaw, pitch and roll; the second points left
    rate_deg_s = stance.person.head_turn_deg_s
    across = spin_cross(stance.omega_rad_s * rate_deg_s, axes) @ axes.T
    least = _NONE * abs(stance.omega_rad_s) * rate_deg_s
    return [_turn(turn, name, felt, least) for turn, felt in zip(_TURNS, across, strict=True)]


def _turn(turn, facing, across_deg_s2, least_deg_s2):
    size = float(np.linalg.norm(across_deg_s2))
    if size <= least_deg_s2:
        return HeadTurn(turn, facing, 0.0, None)
    return HeadTurn(turn, facing, size, _TURNS[int(np.argmax(np.abs(across_deg_s2)))])
