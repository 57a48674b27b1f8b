"""Standing, sitting and lying: what is felt along a body at rest, and on the levels above it."""

import math
from dataclasses import dataclass

import numpy as np

from ..motions.people import lean_deg, weight_g
from ..physics.constants import G0_M_S2
from .stand import HEART, SEAT, SITTING, in_g

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


def standing(stand):
    """Weight at the feet, heart and head, seated as well, and how it changes from feet to head.

    The change is that of the whole of what is felt, direction included, so that it is height over radius also for who reaches
    past the axis, and none on a turntable. rise_push_g is what pushes the head spinward while one stands up, at the speed of
    the whole way.
    """
    tall = stand.person.height_m
    heights = tall * np.array([0.0, HEART, 1.0, SEAT + SITTING - (1.0 - HEART), SEAT + SITTING, SEAT + SITTING])
    velocity = np.zeros((len(heights), 3))
    velocity[5] = (1.0 - SEAT - SITTING) * tall / _RISE_S * stand.rows[1]
    felt = stand.felt(stand.points(np.outer(heights, (0.0, 1.0, 0.0))), velocity)
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
        "floor_lean_deg": float(lean_deg(felt)[0]) if stand.on_a_table or any(stand.habitat.pull_m_s2) else None,
    }


def lying(stand):
    """Weight at the heart lying straight along the axis and across it, and how far down leans from the bed at head and feet.

    Across round ground the bed rests on both its ends, so that its middle is over the ground; who is longer than the habitat is
    wide does not fit. A turntable has no place to lie along its axis.
    """
    half = stand.person.height_m / 2
    heart = stand.person.height_m * (HEART - 0.5)
    fits = not stand.is_round or half < stand.floor_radius_m
    high = stand.floor_radius_m - math.sqrt(stand.floor_radius_m**2 - half**2) if stand.is_round and fits else 0.0
    felt = stand.felt(stand.points([(0.0, 0.0, heart), (heart, high, 0.0), (half, high, 0.0), (-half, high, 0.0)]))
    sizes, leans = weight_g(felt), lean_deg(felt)
    return {
        "lying_along_g": None if stand.on_a_table else float(sizes[0]),
        "lying_across_g": float(sizes[1]) if fits else None,
        "lying_across_lean_deg": float(max(leans[2:])) if fits else None,
    }


def levels(stand, decks):
    """Level of each named deck inside the habitat, the inside-most last, with the deck stood on where none of them is that; else
    of storeys, where there is room; on flat floors, of the floors."""
    habitat = stand.habitat
    inside = sorted(((d.name, d.radius_m) for d in decks if d.radius_m <= habitat.radius_m), key=lambda one: -one[1])
    if inside:
        named = inside if inside[0][1] == habitat.radius_m else [("", habitat.radius_m), *inside]
    elif habitat.floors:
        named = [(f.name, f.radius_m) for f in habitat.floors]
    elif stand.on_a_table:
        named = [("Rim of the platform", habitat.radius_m)]
    else:
        named = [("", habitat.radius_m - k * _STOREY_M) for k in _storeys(habitat)]
    return tuple(_level(stand, *one) for one in named)


def _storeys(habitat):
    """Numbers of the storeys that have room for one more over them."""
    free = int(habitat.headroom_m() // _STOREY_M)
    return range(min(max(free, 1), _MOST_STOREYS + 1))


def _level(stand, name, radius_m):
    pull = math.hypot(*stand.habitat.pull_m_s2)
    gravity_g = math.hypot(stand.omega_rad_s**2 * radius_m, pull) / G0_M_S2
    height_m = 0.0 if stand.on_a_table else stand.floor_radius_m - radius_m
    return Level(name, radius_m, height_m, gravity_g, abs(stand.omega_rad_s) * radius_m)
