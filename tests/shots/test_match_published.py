"""Worked examples turned round: from the path that a source's answer lies on, the rate of rotation that the source states comes out."""

import math

import numpy as np
import pytest

from rimfall import match
from tests.published import cylinder_closed_forms, puck_and_student
from tests.shots.match_paths import G0_M_S2, rows
from tests.tables import each_row

SD_M = 0.002


def test_the_students_own_puck_tells_the_turntables_rate():
    """A student on the rim of a turning platform pushes a puck over it, through its middle, and catches it after half a turn."""
    speed, launch = puck_and_student.ROWS["TRJ-23"], puck_and_student.ROWS["TRJ-22"]
    radius, omega = speed.inputs["diameter_m"] / 2, speed.inputs["rate_rpm"] * math.pi / 30
    time_s = np.linspace(0.0, launch.inputs["catch_after_turns"] * 2 * math.pi / omega, 60)
    across = radius - speed.value * time_s  # seen from the ground: straight through the middle
    assert across[-1] == pytest.approx(-radius, rel=1e-5)
    turned = np.stack([-across * np.sin(omega * time_s), -across * np.cos(omega * time_s), 0 * time_s], axis=-1)
    keys = turned + np.random.default_rng(22).normal(0.0, SD_M, turned.shape)
    listed = [
        {"time_s": float(t), "x_m": x, "y_m": y, "z_m": z} for t, (x, y, z) in zip(time_s, keys.tolist(), strict=True)
    ]
    asked = {"keys": {"rows": listed, "origin": "axis"}, "accuracy_m": SD_M, "known": {"air": None}}
    for known in ({}, {"radius_m": radius}):
        answer = match(asked | {"known": asked["known"] | known})
        assert answer["verdict"] == "possible", answer["words"]
        spin, seen = answer["fit"]["spin_rpm"], answer["fit"]["speed_m_s"]
        assert spin["low"] < speed.inputs["rate_rpm"] < spin["high"] < spin["low"] + 0.01
        assert seen["low"] < launch.value < seen["high"]


@each_row(("time", "arc"), [("TRJ-24", "TRJ-25"), ("TRJ-26", "TRJ-27"), ("TRJ-30", "TRJ-31")])
def test_a_drop_tells_the_cylinders_rate(time, arc):
    """A thing let go in a cylinder with 1 g at its floor goes along a tangent: an involute as seen from the floor."""
    time, arc = cylinder_closed_forms.ROWS[time], cylinder_closed_forms.ROWS[arc]
    radius, height = time.inputs["radius_m"], time.inputs["height_m"]
    omega = math.sqrt(G0_M_S2 / radius)
    t = np.linspace(0.0, time.value, 60)
    along = radius * (np.arctan(omega * t) - omega * t)
    up = radius - (radius - height) * np.sqrt(1.0 + (omega * t) ** 2)
    assert along[-1] == pytest.approx(-arc.value, abs=2 * arc.tolerance)
    assert up[-1] == pytest.approx(0.0, abs=1e-6)
    track = rows(t, np.stack([along, up, 0 * t], axis=-1), SD_M, seed=25)
    for known in ({"speed": 0.0}, {"gravity_g": 1.0}, {"radius_m": radius}):
        answer = match({"track": track, "accuracy_m": SD_M, "known": known | {"air": None}})
        assert answer["verdict"] == "possible", answer["words"]
        spin = answer["fit"]["spin_rpm"]
        assert spin["low"] < omega * 30 / math.pi < spin["high"]
        assert spin["decided"]
