"""Drops and streams of pours whose parcels each go their own way, as files hold them."""

import json
import math
from types import SimpleNamespace

import numpy as np
import pytest

from rimfall.exports import path_sampling
from tests.exports.free_bodies import OMEGA, RADIUS_M, VIEWS, in_file, sampled_of
from tests.scene.documents import pour, scene
from tests.tables import each_row

TILT = [
    {"time_s": 0.4, "elevation_deg": -40.0, "flow_ml_s": 30.0},
    {"time_s": 0.8, "elevation_deg": -70.0, "flow_ml_s": 12.0},
]
OWN = scene(pour(15, 5, 0.8, tilt=TILT, jitter=0.2, seed=3, place={"height_m": 3.0}, name="jug"), air=None)
WITHIN_M = 1e-5


def flowing(speed_up_deg):
    """The lip by hand: straight between the points."""
    times, ups, flows = [0.0, 0.4, 0.8], [0.0, -40.0, -70.0], [15.0, 30.0, 12.0]
    return np.interp(speed_up_deg, times, ups), np.interp(speed_up_deg, times, flows)


def parcel(left_s, age_s):
    """Where a free parcel is that left spinward, as the room that does not turn has it (complex), at an age."""
    up, flow = flowing(left_s)
    speed = 4e-6 * flow / (math.pi * 5e-3**2)
    rho, turn = RADIUS_M - 3.0, np.exp(1j * OMEGA * left_s)
    way = turn * (-speed * np.sin(np.radians(up)) + 1j * (speed * np.cos(np.radians(up)) + OMEGA * rho))
    return turn * rho + way * age_s


def test_every_drop_flies_on_its_own_straight_line_without_air():
    """In the view that does not turn, places at three frames of its flight lie evenly on one line, and velocities along it."""
    sampled = sampled_of(OWN, view="inertial_flat", fps=48)
    drops = sampled.drops
    assert len(drops.ids) > 50
    assert np.unique(drops.diameter_m).size == len(drops.ids)
    for n in range(0, len(drops.ids), 7):
        flies = np.flatnonzero(drops.alive[:, n])
        a, b, c = drops.position_m[flies[[0, len(flies) // 2, -1]], n]
        share = (len(flies) // 2) / (len(flies) - 1)
        assert b == pytest.approx(a + (c - a) * share, abs=WITHIN_M)
        time = sampled.time_s[flies[-1]] - sampled.time_s[flies[0]]
        assert drops.velocity_m_s[flies[0], n] == pytest.approx((c - a) / time, abs=1e-3)
        assert np.all(drops.acceleration_m_s2[flies, n] == pytest.approx(0.0, abs=1e-9))
        born = a - drops.velocity_m_s[flies[0], n] * (sampled.time_s[flies[0]] - sampled.notes["ids"][n]["born_s"])
        waits = drops.position_m[0, n]  # aboard: as far from the axis as where the line begins
        assert np.hypot(*born[:2]) == pytest.approx(np.hypot(*waits[:2]), abs=WITHIN_M)


@each_row("view", VIEWS)
def test_accelerations_are_what_velocities_change_by(view):
    sampled = sampled_of(OWN, view=view, fps=240, samples_per_frame=4)
    drops, step = sampled.drops, sampled.time_s[1] - sampled.time_s[0]
    for n in range(0, len(drops.ids), 11):
        flies = np.flatnonzero(drops.alive[:, n])[1:-1]
        moving = drops.velocity_m_s[:, n]
        change = (moving[flies + 1] - moving[flies - 1]) / (2 * step)
        assert change[1:-1] == pytest.approx(drops.acceleration_m_s2[flies, n][1:-1], abs=1e-4)


def test_drops_wait_where_they_are_born_and_lie_where_they_ended():
    sampled = sampled_of(OWN, fps=48)
    drops, born_s = sampled.drops, [one["born_s"] for one in sampled.notes["ids"]]
    assert born_s == sorted(born_s)
    for n in (0, len(born_s) // 2, len(born_s) - 1):
        waits = sampled.time_s < born_s[n] - 1e-9
        assert np.ptp(drops.position_m[waits, n], axis=0).max() == 0
        assert not np.any(drops.alive[waits, n])
        lies = np.flatnonzero(~drops.alive[:, n] & ~waits)
        assert np.ptp(drops.position_m[lies, n], axis=0).max() == 0
        assert np.hypot(*drops.position_m[lies[-1], n, :2]) == pytest.approx(
            RADIUS_M - drops.diameter_m[n] / 2, abs=1e-8
        )


def test_the_stream_s_points_are_parcels_in_order_of_age():
    """Each against the free path of the parcel that left then; it begins at the lip and tapers."""
    sampled = sampled_of(OWN, fps=48)
    stream, k = sampled.streams[0], 24
    time_s = sampled.time_s[k]
    points = stream.position_m[k]
    lip = in_file(np.array([RADIUS_M - 3.0 + 0j]), np.zeros(1))[0]
    assert points[0] == pytest.approx(lip, abs=1e-9)
    ages = np.linspace(0.0, time_s, 10_001)
    curve = parcel(time_s - ages, ages) * np.exp(-1j * OMEGA * time_s)
    curve = in_file(curve, np.zeros(len(ages)))
    far = np.min(np.linalg.norm(points[:, None] - curve[None], axis=2), axis=1)
    assert np.max(far) < 1e-3  # between parcels followed an eightieth of a second apart
    assert stream.width_m[k, 0] == pytest.approx(0.005, rel=1e-6)
    born_s = np.array([one["born_s"] for one in sampled.notes["ids"]])
    breaks = sampled.drops.position_m[0, np.argmax(born_s > time_s)]
    assert np.linalg.norm(points[-1] - breaks) < 0.05  # its end, where the next drop breaks off


def test_the_stream_is_there_while_it_flows():
    sampled = sampled_of(OWN, fps=48)
    width = sampled.streams[0].width_m
    assert np.all(width[0] == 0)
    assert np.all(width[(sampled.time_s > 0.05) & (sampled.time_s < 0.79)][:, 0] > 0)
    assert np.all(width[sampled.time_s > 2.0] == 0)


def test_between_two_parcels_that_were_followed_a_stream_stays_whole_a_share_of_both():
    """1 s for what leaves at 0, 3 s for what leaves at 10 s, so 1 + l/5: at 5 s the oldest whole left at l = 10/3 s."""
    threads = SimpleNamespace(
        leaves_s=np.array([0.0, 10.0]), whole_s=np.array([1.0, 3.0]), streams=np.array([True, True])
    )
    span = SimpleNamespace(first_leaves_s=0.0, last_leaves_s=10.0)
    leaves_s, flows = path_sampling._parcel_span(span, threads, np.array([5.0]))
    assert (leaves_s[0, 0], leaves_s[0, -1]) == (5.0, pytest.approx(10 / 3, abs=0.01))
    assert flows.all()


def test_a_lip_that_only_drips_has_no_stream():
    sampled = sampled_of(scene(pour(0.4, 10, 2.0, tilt=[{"time_s": 1.0, "elevation_deg": 0.0, "flow_ml_s": 0.6}])))
    assert sampled.streams == []
    assert len(sampled.drops.ids) > 1


def test_what_a_cup_catches_ends_there():
    cup = {"diameter_m": 3.0, "height_m": 0.5, "depth_m": 0.3}
    document = json.loads(json.dumps(OWN))
    document["motions"][0]["target"] = cup
    sampled = sampled_of(document, fps=48)
    lowest = RADIUS_M - np.hypot(*np.moveaxis(sampled.drops.position_m[..., :2], -1, 0)).max()
    assert lowest == pytest.approx(0.5, abs=0.03)  # a flat opening 3 m wide
    assert RADIUS_M - np.hypot(*np.moveaxis(sampled.streams[0].position_m[..., :2], -1, 0)).max() > 0.46


def test_as_many_drops_as_a_dripping_lip_pours_are_in_the_file():
    sampled = sampled_of(scene(pour(0.4, 10, 3.0)))
    interval = sampled.notes["ids"][1]["born_s"]
    assert len(sampled.drops.ids) == math.floor(3.0 / interval)
