"""What falls: forces of the turning frame followed by scipy, step by step, to the ground; and the drops of a scene."""

import math

import pytest
from scipy.integrate import solve_ivp

from tests.comfort.aboard import PODS, SPHERE, TABLE, TORUS, felt, value
from tests.motions.scenes import LANTERN, drop, one
from tests.tables import each_row

HAND_M, GLASS_M, POURED_M = 0.6 * 1.75, 0.6 * 1.75, 0.2
FALLS = [
    LANTERN,
    TORUS,
    SPHERE,
    PODS,
    {"radius_m": 3.0, "spin_rpm": 9.0},
    {"radius_m": 1.2, "spin_rpm": 20.0},
    {"radius_m": 20_000.0, "spin_rpm": 0.2},
    LANTERN | {"axial_thrust_m_s2": 2.0},
    TORUS | {"axial_thrust_m_s2": 3.0},
    TORUS | {"axial_thrust_m_s2": -30.0},
    SPHERE | {"axial_thrust_m_s2": -2.0},
    SPHERE | {"axial_thrust_m_s2": 40.0},
    PODS | {"axial_thrust_m_s2": 1.0},
]


def over_the_ground(habitat, ground_m):
    """Gap (x, y, z) -> m between a point and the ground ground_m from the axis."""
    shape = habitat.get("shape", "cylinder")
    if shape == "pods":
        return lambda x, y, z: ground_m - x
    if shape == "sphere":
        return lambda x, y, z: ground_m - math.sqrt(x * x + y * y + z * z)
    if shape == "torus":
        tube = habitat["tube_radius_m"]
        return lambda x, y, z: tube - math.hypot(math.hypot(x, y) - ground_m + tube, z)
    return lambda x, y, z: ground_m - math.hypot(x, y)


def fallen(omega, pull, from_m, gap, lasts_s):
    """Where and when a thing at rest aboard, from_m from the axis along x, comes down, by the forces of the turning frame."""

    def change(_t, s):
        x, y, _z, u, v, w = s
        return [u, v, w, 2 * omega * v + omega**2 * x, -2 * omega * u + omega**2 * y, pull]

    def lands(_t, s):
        return gap(*s[:3])

    lands.terminal, lands.direction = True, -1
    start = [from_m, 0.0, 0.0, 0.0, 0.0, 0.0]
    found = solve_ivp(
        change, (0.0, lasts_s), start, "DOP853", events=lands, rtol=1e-12, atol=1e-13, max_step=lasts_s / 50
    )
    return found.t_events[0][0], found.y_events[0][0]


@each_row("habitat", FALLS)
def test_a_drop_lands_where_the_forces_of_the_turning_frame_take_it(habitat):
    radius, omega = habitat["radius_m"], habitat["spin_rpm"] * math.tau / 60
    found, pull = felt(habitat).values, -habitat.get("axial_thrust_m_s2", 0.0)
    time_s, at = fallen(omega, pull, radius - HAND_M, over_the_ground(habitat, radius), 20.0)
    along = at[1] if habitat.get("shape") == "pods" else radius * math.atan2(at[1], at[0])
    assert found["drop_time_s"] == pytest.approx(time_s, abs=1e-8)
    off = found["drop_drift_m"] - along
    laps = (
        0.0 if habitat.get("shape") == "pods" else math.tau * radius
    )  # the deck may have turned under it more than once
    assert (math.remainder(off, laps) if laps else off) == pytest.approx(0.0, abs=1e-7)
    assert found["drop_axial_m"] == pytest.approx(at[2], abs=1e-7)
    assert found["drop_drift_m"] < 0


@each_row("habitat", [LANTERN, PODS, {"radius_m": 3.0, "spin_rpm": 9.0}, LANTERN | {"axial_thrust_m_s2": 2.0}])
def test_a_stream_meets_the_glass_antispinward(habitat):
    glass, omega = habitat["radius_m"] - GLASS_M, habitat["spin_rpm"] * math.tau / 60
    gap = over_the_ground(habitat, glass)
    _, at = fallen(omega, -habitat.get("axial_thrust_m_s2", 0.0), glass - POURED_M, gap, 20.0)
    along = at[1] if habitat.get("shape") == "pods" else glass * math.atan2(at[1], at[0])
    assert value("pour_drift_m", habitat) == pytest.approx(along, abs=1e-8)
    assert value("pour_axial_m", habitat) == pytest.approx(at[2], abs=1e-8)
    assert along < 0


def test_on_a_platform_a_stream_goes_outward_and_a_drop_over_the_rim():
    """The glass is POURED_M below the lip, under the gravity of the room."""
    omega = TABLE["spin_rpm"] * math.tau / 60
    _, at = fallen(omega, -9.80665, 3.0, lambda x, y, z: z + POURED_M, 1.0)
    found = felt(TABLE).values
    assert found["pour_drift_m"] == pytest.approx(at[1], abs=1e-8)  # straight, as on a bench
    assert found["pour_axial_m"] == pytest.approx(at[0] - 3.0, abs=1e-8)
    assert found["drop_time_s"] is None
    assert value("drop_time_s", TABLE | {"spin_rpm": 0.0}) == pytest.approx(math.sqrt(2 * HAND_M / 9.80665))


@each_row("habitat", [LANTERN, TORUS | {"axial_thrust_m_s2": 3.0}, SPHERE, PODS])
def test_it_is_where_a_drop_of_the_scene_lands(habitat):
    landing = one(drop(HAND_M), habitat).track.landing
    assert value("drop_drift_m", habitat) == pytest.approx(landing.along_m, abs=1e-8)
    assert value("drop_time_s", habitat) == pytest.approx(landing.time_s, abs=1e-8)


def test_past_the_axis_or_the_end_of_a_floor_nothing_lands_at_the_feet():
    assert value("drop_drift_m", {"radius_m": 1.0, "spin_rpm": 20.0}) is None
    pods = {"shape": "pods", "radius_m": 3.0, "spin_rpm": 12.0}
    drift = value("drop_drift_m", pods | {"floors": [{"length_m": 100.0}]})
    for share, lands in ((0.99, False), (1.01, True)):
        found = value("drop_drift_m", pods | {"floors": [{"length_m": -2 * share * drift}]})
        assert found == (drift if lands else None)
    assert (
        value("drop_drift_m", pods | {"radius_m": 2.0, "floors": [{"length_m": 100.0}]}) is None
    )  # 2/0.95 is over pi/2


def test_over_the_side_of_a_floor_nothing_lands_on_it():
    """Half of 5 m/s2 for as long as a drop on this floor takes, 0.48 s, is 0.6 m: over the side of a floor 1 m wide."""
    floor = {"length_m": 12.0, "ceiling_m": 3.0}
    pods = {"shape": "pods", "radius_m": 24.0, "spin_rpm": 6.0, "axial_thrust_m_s2": 5.0}
    narrow, wide = (pods | {"floors": [floor | {"width_m": width}, {}]} for width in (1.0, 6.0))
    assert abs(value("drop_axial_m", wide)) > 0.5
    assert value("drop_time_s", narrow) is None


def test_under_thrust_a_glass_carried_against_the_spin_leans_most():
    """Going round at omega - v/R its hand, 1.05 m up, weighs (omega - v/R)^2 r outward, the least there is; the thrust stays."""
    hand, turning = 56.0 - HAND_M, 3.0 * math.tau / 60 - 1.4 / 56.0
    leans = math.degrees(math.atan(2.0 / (turning**2 * hand)))
    assert value("glass_walk_lean_deg", LANTERN | {"axial_thrust_m_s2": 2.0}) == pytest.approx(leans, rel=1e-9)
