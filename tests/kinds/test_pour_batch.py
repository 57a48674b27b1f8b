"""Pours whose parcels each go their own way: what is poured is kept, sizes follow the lip, and every drop flies like a ball."""

import math
from itertools import pairwise

import numpy as np
import pytest
from scipy.integrate import quad, solve_ivp

from rimfall.physics import air, drag
from rimfall.physics.liquids import LIQUIDS, breakup_length_m, dripping_drop_m, drop_volume_m3, weber
from rimfall.physics.spin import steady
from tests.motions.scenes import AIR, LANTERN, OMEGA_LANTERN, one, pour, throw
from tests.tables import each_row

WHEEL = steady(OMEGA_LANTERN)
R, OMEGA = 56.0, OMEGA_LANTERN
WATER = LIQUIDS[0]
KEPT = 1e-12  # relative, of all that is poured
PATH_M = 1e-6
TILT = [
    {"time_s": 0.8, "elevation_deg": -30.0, "flow_ml_s": 60.0},
    {"time_s": 1.5, "elevation_deg": -75.0, "flow_ml_s": 45.0},
    {"time_s": 2.0, "elevation_deg": 0.0, "flow_ml_s": 5.0},
]
RAMP = LANTERN | {"spin_ramp": [{"time_s": 0.5, "spin_rpm": 3.0}, {"time_s": 1.5, "spin_rpm": 3.6}]}
HIGH = {"height_m": 6.0, "flow_ml_s": 12.0, "lip_mm": 4.0}


def own(habitat=LANTERN, medium=AIR, duration_s=2.0, **parts):
    """The Traced of a pour, and its Batch."""
    lip = {k: parts.pop(k) for k in ("height_m", "flow_ml_s", "lip_mm", "elevation_deg", "start_s") if k in parts}
    traced = one(pour(lip.pop("height_m", 1.1), **lip) | {"duration_s": duration_s} | parts, habitat, medium)
    return traced, traced.plan.stream.batch


def poured_ml(flow_ml_s, tilt, lasts_s):
    """The area under the flow, trapezes by hand."""
    points = [(0.0, flow_ml_s), *((p["time_s"], p["flow_ml_s"]) for p in tilt)]
    points = [p for p in points if p[0] < lasts_s] + [(lasts_s, np.interp(lasts_s, *zip(*points, strict=True)))]
    return sum((b[0] - a[0]) * (a[1] + b[1]) / 2 for a, b in pairwise(points))


@each_row(("tilt", "jitter"), [([], 0.3), ([], 1.0), (TILT, 0.0), (TILT, 0.5)])
def test_the_drops_together_are_what_is_poured(tilt, jitter):
    _, batch = own(tilt=tilt, jitter=jitter, seed=5)
    whole = poured_ml(30.0, tilt, 2.0) * 1e-6
    assert math.fsum(batch.volume_m3) == pytest.approx(whole, rel=KEPT, abs=0.0)
    assert math.pi / 6 * batch.diameter_m**3 == pytest.approx(batch.volume_m3, rel=1e-12, abs=0.0)


def test_a_pour_that_is_steady_but_scattered_by_nothing_stays_one_path():
    assert own()[1] is None
    assert own(LANTERN | {"spin_ramp": [{"time_s": 1.0, "spin_rpm": 3.6}]}, start_s=2.0)[1] is None
    assert own(RAMP)[1] is not None


def test_drops_are_as_many_and_as_large_as_the_steady_stream_s():
    alike = one(pour(6.0, flow_ml_s=12.0, lip_mm=4.0), air=AIR).plan.stream
    _, batch = own(**HIGH, tilt=[{"time_s": 1.0, "elevation_deg": 0.0, "flow_ml_s": 12.0 + 1e-9}])
    assert len(batch.drops) == pytest.approx(alike.drop_count, abs=1)
    assert batch.diameter_m == pytest.approx(alike.drop_diameter_m, rel=3e-3)  # half a drop in 250 more or less
    assert batch.born_s[0] == pytest.approx(alike.breakup_s, abs=1e-9)


def test_scatter_is_even_and_as_wide_as_it_says():
    """Uniform from -1/2 to 1/2: mean 0, variance 1/12; a ball of radius a has mean square a^2 3/5."""
    jitter = 0.4
    traced, batch = own(**HIGH, jitter=jitter, seed=11, duration_s=8.0)
    drops = batch.drops
    shares = batch.diameter_m[drops] / traced.plan.stream.drop_diameter_m
    assert len(drops) > 900
    assert 1 - jitter / 2 - 0.01 < shares.min() < shares.max() < 1 + jitter / 2 + 0.01
    assert np.mean(shares) == pytest.approx(1.0, abs=4 * jitter / math.sqrt(12 * len(drops)) + 0.005)
    assert np.std(shares) == pytest.approx(jitter / math.sqrt(12), rel=0.1)
    before, after = (batch.paths.turning(WHEEL, drops, batch.born_s[drops] + step)[1] for step in (-1e-9, 1e-9))
    kicks = np.linalg.norm(after - before, axis=1) / np.linalg.norm(before, axis=1)
    assert kicks.max() <= jitter / 2 * (1 + 1e-6)
    assert np.mean(kicks**2) == pytest.approx((jitter / 2) ** 2 * 3 / 5, rel=0.1)


def test_the_same_seed_gives_the_same_drops_and_another_others():
    first, again, other = (own(**HIGH, jitter=0.2, seed=s)[1] for s in (3, 3, 4))
    assert np.array_equal(first.diameter_m, again.diameter_m)
    assert np.array_equal(first.ends_s, again.ends_s)
    assert not np.array_equal(first.diameter_m, other.diameter_m)


def rate(spin_rpm_at, t):
    return spin_rpm_at(t) * 2 * math.pi / 60


def flown(batch, n, spin_rpm_at):
    """Where drop n ends by scipy's DOP853 in the frame that does not turn, from the state it breaks off in."""
    medium = air.air_at(AIR["pressure_kpa"], AIR["temperature_c"])
    size, born, ends = (float(a[n]) for a in (batch.diameter_m, batch.born_s, batch.ends_s))
    mass = WATER.density_kg_m3 * float(batch.volume_m3[n])
    position, velocity, _ = batch.paths.inertial(np.array([n]), np.array([born + 1e-12]))

    def change(t, state):
        omega = rate(spin_rpm_at, t)
        x, y, _, *v = state.tolist()
        wind = -omega * y - v[0], omega * x - v[1], -v[2]
        density = medium.deck_density_kg_m3 * math.exp(
            omega**2 * (x**2 + y**2 - R**2) / (2 * 287.05 * (AIR["temperature_c"] + 273.15))
        )
        speed = math.hypot(*wind)
        cd = float(drag.sphere_cd(np.array([density * speed * size / medium.viscosity_pa_s]))[0])
        share = math.pi / 8 * size**2 * density * cd * speed / mass
        return [*v, *(share * w for w in wind)]

    kinks = [t for t in (0.5, 1.5) if born < t < ends]
    state, begin = np.concatenate([position[0], velocity[0]]), born
    for end in [*kinks, ends]:
        state = solve_ivp(change, (begin, end), state, method="DOP853", rtol=1e-12, atol=1e-12).y[:, -1]
        begin = end
    return state[:3]


@each_row(
    ("habitat", "spin_rpm_at"),
    [(LANTERN, lambda _: 3.0), (RAMP, lambda t: float(np.interp(t, [0.5, 1.5], [3.0, 3.6])))],
)
def test_a_scattered_drop_flies_where_scipy_has_it(habitat, spin_rpm_at):
    _, batch = own(habitat, **HIGH, jitter=0.3, seed=2, tilt=TILT[:2], duration_s=2.0)
    drops = batch.drops
    for n in drops[[0, len(drops) // 3, len(drops) // 2, -1]]:
        ours = batch.paths.inertial(np.array([n]), np.array([batch.ends_s[n]]))[0][0]
        assert ours == pytest.approx(flown(batch, n, spin_rpm_at), abs=PATH_M)
        assert math.hypot(*ours[:2]) == pytest.approx(R - batch.diameter_m[n] / 2, abs=1e-8)


def test_a_parcel_leaves_with_the_lip_as_it_is_then():
    """Straight between the points; speed 4 Q / (pi lip^2)."""
    _, batch = own(**HIGH | {"flow_ml_s": 40.0}, tilt=TILT)
    n = len(batch.leaves_s) // 2
    left_s = batch.leaves_s[n]
    velocity = batch.paths.turning(WHEEL, np.array([n]), np.array([left_s]))[1][0]
    times, ups, flows = [0, 0.8, 1.5, 2.0], [0, -30, -75, 0], [40, 60, 45, 5]
    up, flow = math.radians(np.interp(left_s, times, ups)), np.interp(left_s, times, flows) * 1e-6
    speed = 4 * flow / (math.pi * 4e-3**2)
    assert velocity == pytest.approx([-speed * math.sin(up), speed * math.cos(up), 0.0], abs=1e-9)


def test_each_drop_breaks_after_its_own_published_length():
    """Along its free path aboard, the length of Grant and Middleman for its own speed at the lip."""
    _, batch = own(**HIGH, medium=None, tilt=[{"time_s": 2.0, "elevation_deg": -40.0, "flow_ml_s": 30.0}])
    for n in batch.drops[[1, len(batch.drops) // 2, -2]]:
        left_s, born_s = batch.leaves_s[n], batch.born_s[n]
        flow = (12.0 + 9.0 * left_s) * 1e-6
        length = breakup_length_m(WATER, 4 * flow / (math.pi * 4e-3**2), 4e-3)
        gone, _ = quad(lambda t, n=n: speed_aboard(batch, n, t), left_s, born_s, epsabs=1e-10)
        assert gone == pytest.approx(length, rel=2e-4)  # read between parcels a thirtieth of a second apart


def speed_aboard(batch, n, t):
    return float(np.linalg.norm(batch.paths.turning(WHEEL, np.array([n]), np.array([t]))[1][0]))


def test_a_lip_that_flows_faster_drips_first_and_streams_then():
    _, batch = own(
        flow_ml_s=2.0, lip_mm=6.0, height_m=5.0, tilt=[{"time_s": 2.0, "elevation_deg": 0.0, "flow_ml_s": 40.0}]
    )
    flow = (2.0 + 19.0 * batch.leaves_s) * 1e-6
    streams = weber(WATER, 4 * flow / (math.pi * 6e-3**2), 6e-3) >= 4
    assert 0 < np.count_nonzero(streams) < len(streams)
    assert np.all(batch.born_s[~streams] == batch.leaves_s[~streams])
    assert np.all(batch.born_s[streams] > batch.leaves_s[streams])
    tate = dripping_drop_m(WATER, OMEGA**2 * (R - 5.0), 6e-3)
    assert batch.diameter_m[:5] == pytest.approx(tate, rel=0.02)


def test_a_stream_that_lands_whole_has_parcels_but_no_drops():
    traced, batch = own(height_m=0.3, jitter=0.5)
    assert len(batch.drops) == 0
    assert traced.findings["drops"]["rotating_m"].shape == (0, 3)
    assert np.all(batch.met)


def test_samples_are_on_the_scene_s_grid_and_on_the_paths():
    traced, batch = own(**HIGH, jitter=0.2)
    findings, drops = traced.findings["drops"], batch.drops
    assert findings["rotating_m"].shape == (findings["count"].sum(), 3)
    assert np.all(np.diff(findings["born_s"]) >= 0)
    n = len(drops) // 2
    at = findings["count"][:n].sum()
    time_s = (findings["first"][n] + 3) / 48.0  # 24 frames, two samples each
    there = batch.paths.turning(WHEEL, drops[[n]], np.array([time_s]))[0][0]
    assert findings["rotating_m"][at + 3] == pytest.approx(there, abs=1e-12)
    assert findings["born_s"][n] <= findings["first"][n] / 48.0 + 1e-9


def test_parcels_that_leave_after_a_scene_s_end_are_not_followed():
    traced = one(pour(1.1) | {"jitter": 0.2}, air=AIR, duration_s=0.7)
    batch = traced.plan.stream.batch
    late = batch.leaves_s > 0.7
    assert np.any(late)
    assert np.all(batch.ends_s[~late] <= 0.7)
    assert np.all(batch.ends_s[late] == batch.leaves_s[late])


def test_a_liquid_with_no_weight_clings_until_there_is_some():
    spinning = {
        "radius_m": 56.0,
        "spin_rpm": 0.0,
        "spin_ramp": [{"time_s": 1.0, "spin_rpm": 0.0}, {"time_s": 1.5, "spin_rpm": 3.0}],
    }
    traced, batch = own(spinning, flow_ml_s=0.5, lip_mm=6.0, duration_s=4.0)
    assert traced.plan.stream.drop_diameter_m is None
    assert batch.leaves_s.min() > 0.9
    assert math.fsum(batch.volume_m3) < 0.5e-6 * 4.0
    ball = one(throw(1.1, 0.0, body={"mass_kg": 1e-3, "diameter_m": 0.006}), spinning, AIR)
    assert ball.track.landing is not None  # a ball let go does not wait at the lip
    assert np.ptp(traced.track.samples.rotating_m, axis=0).max() == 0


def test_a_dripping_drop_is_never_more_than_what_is_poured():
    """At 0.1 rpm Tate's drop is a decilitre; a millilitre is poured."""
    stream = one(pour(1.1, flow_ml_s=0.5, lip_mm=6.0), {"radius_m": 56.0, "spin_rpm": 0.1}).plan.stream
    assert drop_volume_m3(dripping_drop_m(WATER, (0.1 * 2 * math.pi / 60) ** 2 * 54.9, 6e-3)) > 50e-6
    assert drop_volume_m3(stream.drop_diameter_m) == pytest.approx(1e-6, rel=1e-9, abs=0.0)
    assert stream.drop_count == 1


def test_a_drop_does_not_begin_inside_the_deck():
    traced = one(pour(0.003, flow_ml_s=0.5, lip_mm=6.0), {"radius_m": 56.0, "spin_rpm": 1.0}, AIR)
    assert traced.plan.stream.drop_diameter_m == pytest.approx(0.006)
    assert traced.track.events[0].height_m == pytest.approx(0.003)


def test_drips_are_as_many_as_the_volume_gives():
    stream = one(pour(1.1, flow_ml_s=0.5, lip_mm=6.0) | {"duration_s": 5.0}).plan.stream
    assert stream.drop_count == math.floor(2.5e-6 / drop_volume_m3(stream.drop_diameter_m))
