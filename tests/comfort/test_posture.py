"""Turning the head: the rates that a head's own axes go through, from scipy's rotations, differenced."""

import math

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from tests.comfort.aboard import SHIPS, TABLE, felt
from tests.tables import each_row

STEP_S = 1e-4
TURN_RAD_S = math.radians(60.0)
AXES = {"yaw": 2, "pitch": 1, "roll": 0}  # of a head whose axes are forward, left, up


def rates(head, omega, turn, time_s):
    """Angular velocity (3,) in the head's own axes, rad/s, of a head that turns about one of them aboard what turns."""

    def attitude(t):
        aboard = Rotation.from_rotvec([0.0, 0.0, omega * t])
        return aboard * Rotation.from_matrix(head) * Rotation.from_rotvec(TURN_RAD_S * t * np.eye(3)[AXES[turn]])

    return (attitude(time_s - STEP_S).inv() * attitude(time_s + STEP_S)).as_rotvec() / (2 * STEP_S)


def head_of(habitat, facing):
    """Columns forward, left, up of a head held upright at the azimuth 0, where x is outward, y spinward and z along the axis."""
    up = np.array([0.0, 0.0, 1.0] if habitat["shape"] == "turntable" else [-1.0, 0.0, 0.0])
    forward = np.array({"spinward": [0.0, 1.0, 0.0], "axial": [0.0, 0.0, 1.0], "outward": [1.0, 0.0, 0.0]}[facing])
    return np.column_stack([forward, np.cross(up, forward), up])


@each_row("habitat", [*SHIPS, TABLE])
def test_the_acceleration_across_a_turn_is_the_change_of_the_heads_own_rates(habitat):
    habitat = {"shape": "cylinder"} | habitat
    omega = habitat["spin_rpm"] * math.tau / 60
    found = felt(habitat).head_turns
    assert len(found) == 6
    for turn in found:
        head = head_of(habitat, turn.facing)
        change = (rates(head, omega, turn.turn, 1e-3) - rates(head, omega, turn.turn, -1e-3)) / 2e-3
        assert math.radians(turn.deg_s2) == pytest.approx(np.linalg.norm(change), abs=1e-5)
        if turn.felt_as is None:
            assert np.abs(change).max() < 1e-5
        else:
            assert abs(change[AXES[turn.felt_as]]) == pytest.approx(np.linalg.norm(change), rel=1e-4)


def test_a_turn_about_the_spin_brings_nothing_along():
    free = {(t.turn, t.facing) for t in felt(SHIPS[0]).head_turns if t.felt_as is None}
    assert free == {("pitch", "spinward"), ("roll", "axial")}
    free = {(t.turn, t.facing) for t in felt(TABLE).head_turns if t.felt_as is None}
    assert free == {("yaw", "spinward"), ("yaw", "outward")}
