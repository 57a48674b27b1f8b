"""Turning the head aboard: the angular acceleration across both turns, which the inner ear takes for a third.

Its vector is the spin times the head's own turn (Guedry 1974; textbook kinematics), told in the axes of a head that is held
upright: yaw about up, pitch about the line through the ears, roll about the line of sight.
"""

from dataclasses import dataclass

import numpy as np

from ..physics.frames import spin_cross

_TURNS = ("yaw", "pitch", "roll")
_NONE = 1e-12  # of the product of both rates: nothing is left but round-off


@dataclass(frozen=True)
class HeadTurn:
    """A turn of the head, where it faces, the angular acceleration across it, and the turn it is felt as, or None."""

    turn: str
    facing: str
    deg_s2: float
    felt_as: str | None


def head_turns(stand):
    """The six HeadTurns: each turn facing spinward, and along the axis (on a turntable outward)."""
    facings = ("spinward", 0), ("outward" if stand.on_a_table else "axial", 2)
    return tuple(one for name, row in facings for one in _facing(stand, name, row))


def _facing(stand, name, row):
    forward, up = stand.rows[row], stand.rows[1]
    axes = np.array([up, np.cross(up, forward), forward])  # of yaw, pitch and roll; the second points left
    rate_deg_s = stand.person.head_turn_deg_s
    across = spin_cross(stand.omega_rad_s * rate_deg_s, axes) @ axes.T
    least = _NONE * abs(stand.omega_rad_s) * rate_deg_s
    return [_turn(turn, name, felt, least) for turn, felt in zip(_TURNS, across, strict=True)]


def _turn(turn, facing, across_deg_s2, least_deg_s2):
    size = float(np.linalg.norm(across_deg_s2))
    if size <= least_deg_s2:
        return HeadTurn(turn, facing, 0.0, None)
    return HeadTurn(turn, facing, size, _TURNS[int(np.argmax(np.abs(across_deg_s2)))])
