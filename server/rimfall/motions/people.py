"""What is felt as weight by who moves in the turning frame, and paths that are given there."""

import numpy as np

from ..physics import bernstein
from ..physics.constants import G0_M_S2
from .journey import Leg
from .path import Path, slope
from .setting import Setting

_PRESSES_M_S2 = 1e-9  # up: rounding, where nothing is felt


def felt(
    setting: Setting,
    floor: int,
    time_s: np.ndarray,
    position: np.ndarray,
    velocity: np.ndarray,
    acceleration: np.ndarray,
) -> np.ndarray:
    """What is felt as weight at a point, as (spinward, up, axial) (n, 3), m/s2, from its motion in the turning frame (n, 3).

    It is what the frame and the room pull, less what the point follows of it: -2 Omega x u - Omega x (Omega x x) - Omega' x x
    + pull - u'. A thing at rest on the deck of a steady drum feels omega^2 R, down: up is below 0.
    """
    spin = setting.habitat.spin
    pull = spin.own(time_s, position, velocity) + np.array(setting.habitat.pull_m_s2) - acceleration
    return np.einsum("nij,nj->ni", setting.habitat.chart(floor).axes(position), pull)


def weight_g(weight: np.ndarray) -> np.ndarray:
    """Size (n,) of a felt weight (n, 3), in standard gravities."""
    return np.sqrt(np.add.reduce(weight * weight, axis=1)) / G0_M_S2


def lean_deg(weight: np.ndarray) -> np.ndarray:
    """Angle (n,) between a felt weight (n, 3) and straight down; 0 where there is none."""
    return np.degrees(np.arctan2(np.hypot(weight[:, 0], weight[:, 2]), -weight[:, 1] + 0.0))


def on_floor(weight: np.ndarray) -> np.ndarray:
    """Whether (n,) a felt weight (n, 3), (spinward, up, axial), presses somebody onto the floor: a floor does not pull."""
    return weight[:, 1] <= _PRESSES_M_S2


def given_leg(surface, start_s, length_s, powers, end_s, turned_rad=None):
    """A Leg in the turning frame of S pieces that begin at start_s (S,), rising, and last length_s (S,): positions are powers
    (S, K, 3) of the share of the piece. turned_rad (S, K, 3): powers of how a body turns on the way; None for not at all.

    It ends at end_s; pieces that begin later are left out.
    """
    keep = (start_s < end_s) | (np.arange(len(start_s)) == 0)
    turned = np.zeros_like(powers) if turned_rad is None else turned_rad
    whole = np.concatenate([powers, turned], axis=2)[keep]
    control = np.moveaxis(bernstein.from_powers(np.moveaxis(whole, 1, 0)), 0, 1)
    start_s, length_s = start_s[keep], length_s[keep]
    rates = slope(control) / length_s[:, None, None]
    changes = (each - each[:, :1] for each in (control, rates))
    path = Path(start_s, length_s, control[:, 0], rates[:, 0], *changes, float(start_s[0]), float(end_s))
    return Leg(path, surface, np.zeros(3))


def last_state(leg: Leg) -> tuple[np.ndarray, np.ndarray]:
    """Position and velocity (3,), (3,) in the turning frame at a given leg's end."""
    position, velocity = leg.path.at(np.array([leg.path.end_s]))
    return position[0, :3], velocity[0, :3]
