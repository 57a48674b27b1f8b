"""A flat ramp on a ground: the slope, and the edges past which a ball leaves it."""

import math
from dataclasses import dataclass

import numpy as np

from .surfaces import Plane


@dataclass(frozen=True)
class Ramp:
    """A flat ramp on a ground: corners (4, 3), foot left, foot right, top right, top left; the slope itself; the edges past
    which a ball leaves it (not the foot: there the ground is)."""

    corners_m: np.ndarray
    slope: Plane
    edges: tuple


def ramp_at(chart, place, slope_rad, heading_rad, length_m, width_m):
    """The Ramp whose middle is over the place (along, ground height, axial), with its foot at that height; it rises toward
    the heading (0 spinward, a quarter turn axial) by slope_rad."""
    spinward, up, axial = chart.axes_at(np.asarray(place, dtype=float))
    level = math.cos(heading_rad) * spinward + math.sin(heading_rad) * axial
    rise = math.cos(slope_rad) * level + math.sin(slope_rad) * up
    normal = math.cos(slope_rad) * up - math.sin(slope_rad) * level
    left = np.cross(normal, rise)
    middle = chart.position(place) + 0.5 * length_m * math.sin(slope_rad) * up
    corners = np.array(
        [middle + a * length_m / 2 * rise + b * width_m / 2 * left for a, b in ((-1, 1), (-1, -1), (1, -1), (1, 1))]
    )
    slope = _through("ramp", normal, middle)
    ways = [(-rise, length_m / 2), (left, width_m / 2), (-left, width_m / 2)]
    edges = tuple(_through("edge", way, middle - half * way, edge=True) for way, half in ways)
    return Ramp(corners, slope, edges)


def _through(name, normal, point, edge=False):
    return Plane(name, tuple(float(v) for v in normal), float(normal @ point), edge=edge)
