"""Published throws turned round: given where and when it comes down, the throw comes out.

Rows and their sources are in `tests/published`. Bodies are points without air, which is what the sources take them to be.
"""

import numpy as np
import pytest

import rimfall
from tests.published import cylinder_closed_forms, puck_and_student, taylor_2005
from tests.tables import each_row

UP = [("TRJ-32", "TRJ-33"), ("TRJ-36", "TRJ-37")]


def aimed(habitat, place, to, flight_s):
    """The one throw from a place to another that takes so long."""
    body = {"mass_kg": 0.1, "diameter_m": 0}
    motion = {"kind": "throw", "name": "it", "place": place, "speed_m_s": 0.0, "body": body}
    scene = rimfall.open_scene({"rimfall": 1, "habitat": habitat, "air": None, "motions": [motion]})
    found = rimfall.aim(scene, "it", to, {"flight_s": flight_s}, within_m=1e-3)
    (way,) = found["ways"]
    return way


def spun_for_one_g(radius_m):
    """A cylinder whose deck feels one g0."""
    return {"radius_m": radius_m, "spin_rpm": float(np.sqrt(9.80665 / radius_m) * 30 / np.pi)}


@each_row(("flight", "arc"), UP)
def test_a_ball_that_comes_down_there_was_thrown_straight_up(flight, arc):
    row, landing = cylinder_closed_forms.ROWS[flight], cylinder_closed_forms.ROWS[arc]
    radius_m, speed = row.inputs["radius_m"], row.inputs["speed_m_s"]
    way = aimed(spun_for_one_g(radius_m), {"height_m": 0.0}, {"along_m": landing.value, "height_m": 0.0}, row.value)
    assert way["speed_m_s"] == pytest.approx(speed, abs=2e-7)  # the arc is printed to 1e-7 m, in a second or two
    assert way["elevation_deg"] == pytest.approx(90.0, abs=2e-5)
    assert way["blocked_by"] is None


def test_what_comes_back_after_one_period_was_thrown_antispinward_at_rim_speed():
    row = cylinder_closed_forms.ROWS["TRJ-38"]
    radius_m = row.inputs["radius_m"]
    way = aimed(spun_for_one_g(radius_m), {"height_m": 0.5}, {"along_m": 0.0, "height_m": 0.5}, row.value)
    rim = np.sqrt(9.80665 / radius_m) * (radius_m - 0.5)
    assert (way["speed_m_s"], way["turns"]) == pytest.approx((rim, -1.0), abs=1e-3)  # the period is printed to 1e-4 s
    assert abs(way["heading_deg"]) == pytest.approx(180.0, abs=1e-3)


@each_row(("x", "y"), [("TRJ-16", "TRJ-17"), ("TRJ-18", "TRJ-19")])
def test_a_puck_that_slides_there_was_let_go_at_rest(x, y):
    """Taylor, Classical Mechanics (2005), problem 9.20."""
    row, other = taylor_2005.ROWS[x], taylor_2005.ROWS[y]
    table = {
        "shape": "turntable",
        "radius_m": 8.0,
        "spin_rpm": 30 / np.pi * row.inputs["omega_rad_s"],
        "outside_gravity_m_s2": 0.0,
    }
    there = {
        "along_m": 8.0 * float(np.arctan2(other.value, row.value)),
        "height_m": 0.5,
        "axial_m": float(np.hypot(row.value, other.value)),
    }
    way = aimed(table, {"height_m": 0.5, "axial_m": row.inputs["x0_m"]}, there, row.inputs["time_s"])
    assert way["speed_m_s"] == pytest.approx(0.0, abs=2e-7)


def test_a_student_catches_the_own_puck_after_half_a_turn():
    row, seen = puck_and_student.ROWS["TRJ-22"], puck_and_student.ROWS["TRJ-23"]
    radius_m, turn_s = row.inputs["diameter_m"] / 2, 60.0 / row.inputs["rate_rpm"]
    table = {
        "shape": "turntable",
        "radius_m": radius_m,
        "spin_rpm": row.inputs["rate_rpm"],
        "outside_gravity_m_s2": 0.0,
    }
    at = {"along_m": 0.0, "height_m": 0.5, "axial_m": radius_m}
    way = aimed(table, at, at, row.inputs["catch_after_turns"] * turn_s)
    assert way["speed_m_s"] == pytest.approx(row.value, abs=row.tolerance)
    begin, end = way["path"]["inertial_m"][[0, -1]]
    assert np.linalg.norm(end - begin) / way["flight_s"] == pytest.approx(seen.value, abs=seen.tolerance)
