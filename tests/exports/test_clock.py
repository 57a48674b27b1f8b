"""Frames of a file and the scene's time: straight, before time 0, and by a retime curve. scipy's own monotone cubic is the oracle."""

import json
from fractions import Fraction

import numpy as np
import pytest
from pxr import Usd, UsdGeom
from scipy.interpolate import PchipInterpolator

from rimfall.errors import BadInput
from rimfall.exports import gltf, usd
from rimfall.exports.clock import clock_of
from rimfall.exports.options import choices_of, read_options
from rimfall.exports.scene_sampling import sample_scene
from rimfall.scene.reading import read
from tests.exports.glb import Glb
from tests.scene.documents import BALL, POINT, pour, scene, throw, trace_of
from tests.tables import each_row

RAMP = [(101, 0.0), (125, 0.5), (149, 0.6), (173, 0.6), (185, 1.4)]


def keyed(keys, between="smooth"):
    return {"keys": [{"frame": frame, "time_s": time_s} for frame, time_s in keys], "between": between}


def options(document, **choices):
    found = read(json.dumps(document))
    return found, read_options(choices, found)


def sampled_of(document, **choices):
    found, chosen = options(document, **choices)
    return sample_scene(trace_of(found), chosen, scenery=True)


@each_row(
    "keys",
    [
        RAMP,
        RAMP[:2],
        [(0, 0.0), (7, 0.1), (30, 2.0), (31, 2.0), (90, 2.5)],
        [(-20, -0.5), (0, 0.0), (48, 3.0)],
        RAMP[2:4],
    ],
)
def test_a_smooth_curve_is_scipys_monotone_cubic(keys):
    _, chosen = options(scene(), retime=keyed(keys), samples_per_frame=4)
    clock = clock_of(chosen, 0.0)
    assert (clock.frame[0], clock.frame[-1]) == (keys[0][0], keys[-1][0])
    wanted = PchipInterpolator(*map(list, zip(*keys, strict=True)))
    assert clock.time_s == pytest.approx(wanted(clock.frame), abs=1e-12)
    assert clock.pace == pytest.approx(24 * wanted(clock.frame, 1), abs=1e-9)
    inside = ~np.isin(clock.frame, [frame for frame, _ in keys])
    assert clock.bend_1_s[inside] == pytest.approx(576 * wanted(clock.frame[inside], 2), abs=1e-7)
    assert np.all(np.diff(clock.time_s) >= -1e-15)


def test_a_linear_curve_is_straight_between_its_keys():
    _, chosen = options(scene(), retime=keyed(RAMP, "linear"))
    clock = clock_of(chosen, 0.0)
    assert clock.time_s == pytest.approx(np.interp(clock.frame, *zip(*RAMP, strict=True)), abs=1e-12)
    assert clock.pace[[0, 23, 24, 50]].tolist() == pytest.approx([0.5, 0.5, 0.1, 0.0])
    assert not np.any(clock.bend_1_s)


@each_row("between", ["smooth", "linear"])
def test_frames_of_times_are_the_curve_read_backwards(between):
    _, chosen = options(scene(), retime=keyed(RAMP, between))
    clock = clock_of(chosen, 0.0)
    at = np.array([110.25, 130.0, 180.5])
    fine = options(scene(), retime=keyed(RAMP, between), samples_per_frame=4)[1]
    times = np.interp(at, clock_of(fine, 0.0).frame, clock_of(fine, 0.0).time_s)
    assert clock.frames_at(times) == pytest.approx(at, abs=1e-6)


@each_row(
    ("choices", "field", "said"),
    [
        ({"retime": keyed([(1, 0.0)])}, "export.retime.keys", "2 to 200"),
        ({"retime": keyed([(1, 0.0), (1, 1.0)])}, "export.retime.keys.1.frame", "after frame 1"),
        ({"retime": keyed([(1, 0.5), (9, 0.4)])}, "export.retime.keys.1.time_s", "0.5 s or later"),
        ({"retime": keyed(RAMP, "wobbly")}, "export.retime.between", "smooth or linear"),
        ({"retime": keyed(RAMP), "from_s": 0.1}, "export.from_s", "left out"),
        ({"retime": keyed(RAMP), "first_frame": 1}, "export.first_frame", "left out"),
        ({"retime": keyed(RAMP), "shown_fps": 12}, "export.shown_fps", "left out"),
    ],
)
def test_a_curve_that_says_two_things_is_refused(choices, field, said):
    with pytest.raises(BadInput) as refused:
        options(scene(throw()), **choices)
    (one,) = refused.value.refusals
    assert one.field == field
    assert said in one.say


def test_a_curve_comes_back_from_the_notes():
    found, chosen = options(scene(throw()), retime=keyed(RAMP))
    assert read_options(choices_of(chosen), found) == chosen
    notes = sampled_of(scene(throw()), retime=keyed(RAMP)).notes
    assert notes["file"]["pace"] is None
    assert len(notes["file"]["retimed_s"]) == notes["file"]["frame_count"] == 85


def test_a_retimed_ball_is_where_the_curve_says_in_gltf_and_usd(tmp_path):
    """A held time holds the ball and its turning; a key is at the contact, wherever that falls."""
    document = scene(throw(9.0, 30.0, 10.0, BALL, ball_spin_rpm=300, ball_spin_axis=[0, 0, 1]), air=None)
    sampled = sampled_of(document, retime=keyed(RAMP), view="inertial_flat")
    plain = sampled_of(document, view="inertial_flat", fps=240, samples_per_frame=8, to_s=1.5)
    file = Glb(gltf.glb(sampled))
    (tmp_path / "a.usda").write_bytes(usd.usda(sampled))
    stage = Usd.Stage.Open(str(tmp_path / "a.usda"))
    (prim,) = (p for p in stage.Traverse() if p.GetName().startswith("ball_"))
    name = sampled.balls[0].name
    turns = [file.value(name, "rotation", (frame - 101) / 24) for frame in (150, 160, 172)]
    assert turns[0] == pytest.approx(turns[1], abs=1e-6)
    assert turns[0] == pytest.approx(turns[2], abs=1e-6)
    for frame, time_s in zip(sampled.frame, sampled.time_s, strict=True):
        wanted = [np.interp(time_s, plain.time_s, column) for column in plain.balls[0].position_m.T]
        assert file.world(name, np.zeros(3), (frame - 101) / 24) == pytest.approx(wanted, abs=2e-4)
        place = UsdGeom.Xformable(prim).ComputeLocalToWorldTransform(Usd.TimeCode(frame)).ExtractTranslation()
        assert list(place) == pytest.approx(wanted, abs=2e-4)
    contact = next(e for e in sampled.notes["events"] if e["kind"] == "deck")
    keys = sampled.balls[0].keys
    k = int(np.argmin(np.abs(keys.frame - contact["frame"])))
    assert keys.frame[k] == pytest.approx(contact["frame"], abs=1e-4)
    assert keys.position_m[k] == pytest.approx(contact["position_m"], abs=1e-9)
    assert contact["frame"] % 1 > 0.01


def test_velocities_of_drops_are_those_of_the_file(tmp_path):
    """Half a frame on, position, velocity and acceleration of a retimed cloud give where the drops are then, within 0.1 mm."""
    document = scene(pour(20.0, 2.0, 0.5), air=None)
    curve = keyed([(1, 0.0), (30, 0.2), (60, 0.7), (80, 1.5)])
    sampled, fine = sampled_of(document, retime=curve), sampled_of(document, retime=curve, samples_per_frame=2)
    (tmp_path / "a.usda").write_bytes(usd.usda(sampled))
    stage = Usd.Stage.Open(str(tmp_path / "a.usda"))
    (cloud,) = (UsdGeom.PointBased(p) for p in stage.Traverse() if p.GetTypeName() == "Points")
    compared = 0
    for k, frame in enumerate(sampled.frame[:-1].tolist()):
        there = fine.drops.alive[2 * k] & fine.drops.alive[2 * k + 1]
        found = np.array(cloud.ComputePointsAtTime(frame + 0.5, frame + 0.5))
        off = np.linalg.norm(found - fine.drops.position_m[2 * k + 1], axis=1)[there]
        assert np.all(off < 1e-4)
        compared += len(off)
    assert compared > 1000


def test_before_time_0_things_are_there_and_frames_count_on():
    sampled = sampled_of(
        scene(throw(9.0, 30.0, 40.0, POINT), air=None), from_s=-0.5, first_frame=-10, fps=Fraction(24).numerator
    )
    assert (sampled.frame[0], sampled.time_s[0]) == (-22, -0.5)
    ball = sampled.balls[0]
    assert np.all(ball.alive)
    assert np.all(ball.position_m[:12] == ball.position_m[12])
    assert not np.any(ball.velocity_m_s[:12])
