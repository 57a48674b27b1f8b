"""What every file holds: rates of change that are rates of change, views that agree, axes, origin, frames, names, limits."""

import json
import math
from fractions import Fraction

import numpy as np
import pytest

from rimfall.errors import BadInput, TooMuch
from rimfall.exports.names import element_names
from rimfall.exports.options import read_options
from rimfall.exports.scene_sampling import sample_scene
from rimfall.physics import frames
from rimfall.scene import examples
from rimfall.scene.reading import read
from tests.scene.documents import POINT, drop, pour, scene, throw, trace_of
from tests.tables import each_row


def sampled_of(document, scenery=True, **choices):
    found = read(json.dumps(document))
    return sample_scene(trace_of(found), read_options(choices, found), scenery=scenery)


VIEWS = ("rotating", "inertial", "inertial_flat")


@each_row("view", VIEWS)
@each_row("name", ["same-lob", "spin-up", "down-the-deck", "on-the-bench", "three-pods", "under-thrust"])
def test_velocities_and_accelerations_are_the_rates_of_change_of_the_places(name, view):
    """Central differences over a thousandth of a second, away from contacts and from what changes at once."""
    document = json.loads(examples.example(name))
    sampled = sampled_of(document, False, view=view, fps=240, samples_per_frame=8, to_s=3.0)
    step = sampled.time_s[1] - sampled.time_s[0]
    for ball in sampled.balls:
        for values, rates, within in (
            (ball.position_m, ball.velocity_m_s, 2e-4),
            (ball.velocity_m_s, ball.acceleration_m_s2, 2e-3),
        ):
            differences = (values[2:] - values[:-2]) / (2 * step)
            off = np.max(np.abs(differences - rates[1:-1]), axis=1)
            assert np.mean(off <= within) > 0.97, (ball.name, np.sort(off)[-20:])
            assert np.median(off) < within / 20


@each_row("name", examples.SAY)
def test_both_inertial_views_say_the_same(name):
    """The flat view is the other one turned by the habitat's angle about its axis through the pivot (Rodrigues' formula)."""
    document = json.loads(examples.example(name))
    origin = "release" if document["motions"] else "axis"
    aboard, flat = (sampled_of(document, False, view=view, origin=origin) for view in ("inertial", "inertial_flat"))
    axis = aboard.axis
    assert np.sort(np.abs(axis)).tolist() == [0, 0, 1]
    for one, other in zip(aboard.balls, flat.balls, strict=True):
        from_pivot = one.position_m - aboard.pivot_m
        cos, sin = np.cos(aboard.angle_rad)[:, None], np.sin(aboard.angle_rad)[:, None]
        along = (from_pivot @ axis)[:, None] * axis
        turned = along + cos * (from_pivot - along) + sin * np.cross(axis, from_pivot)
        assert other.position_m == pytest.approx(turned + aboard.pivot_m, abs=1e-9)


@each_row("name", examples.SAY)
def test_everything_is_finite_and_named_once(name):
    document = json.loads(examples.example(name))
    sampled = sampled_of(document, fps=12)
    arrays = [a for b in sampled.balls for a in (b.position_m, b.velocity_m_s, b.acceleration_m_s2)]
    arrays += [s.position_m for s in sampled.streams] + [line.position_m for line in sampled.lines]
    arrays += [m.position_m for m in sampled.meshes] + [c.position_m for c in sampled.cameras]
    if sampled.drops is not None:
        arrays += [sampled.drops.position_m, sampled.drops.velocity_m_s, sampled.drops.acceleration_m_s2]
    assert all(np.all(np.isfinite(a)) for a in arrays)
    names = [
        x.name
        for part in (sampled.balls, sampled.streams, sampled.lines, sampled.meshes, sampled.cameras)
        for x in part
    ]
    assert len(set(names)) == len(names)
    flying = 0 if sampled.drops is None else np.sum(sampled.drops.alive)
    assert sampled.notes["counts"]["csv_rows"] == flying + sum(np.sum(b.alive) for b in sampled.balls)
    assert read(json.dumps(sampled.notes["scene"])) == read(json.dumps(document))


@each_row("fps", ["24000/1001", 24, 25, "30000/1001", 30, 48, 50, "60000/1001", 60, 12.5])
def test_frames_are_at_k_over_fps_and_end_at_the_first_after_the_last_event(fps):
    sampled = sampled_of(scene(throw()), fps=fps)
    rate = Fraction(str(fps)) if isinstance(fps, str) else Fraction(fps)
    assert sampled.time_s.tolist() == pytest.approx([float(k / rate) for k in range(len(sampled.time_s))], abs=1e-12)
    assert sampled.frame.tolist() == list(range(1001, 1001 + len(sampled.frame)))
    end_s = trace_of(read(json.dumps(scene(throw())))).motions[0].track.ends_s
    assert sampled.time_s[-2] < end_s <= sampled.time_s[-1]


def test_slow_motion_has_a_clock_of_its_own():
    sampled = sampled_of(scene(throw()), fps=96, shown_fps=24, from_s=0.5)
    assert sampled.clock.steady_pace == 0.25
    assert np.all(sampled.pace == 0.25)
    assert sampled.shown_s[:3].tolist() == pytest.approx([0, 1 / 24, 2 / 24])
    assert sampled.time_s[0] == 0.5
    assert any("4 times slower" in said for said in sampled.notes["says"])


def test_the_origin_may_be_the_ground_under_the_release():
    """A body let go at rest h above the ground is at (0, h, 0), whatever the place; and so is a stated place."""
    document = scene(drop(1.2, POINT, place={"along_m": 30.0, "height_m": 1.2, "axial_m": -3.0}), air=None)
    place = {"along_m": 30.0, "height_m": 0.2, "axial_m": -3.0}
    assert sampled_of(document, origin="release").balls[0].position_m[0] == pytest.approx([0, 1.2, 0], abs=1e-12)
    assert sampled_of(document, origin="release", up="Z").balls[0].position_m[0] == pytest.approx(
        [0, 0, 1.2], abs=1e-12
    )
    sampled = sampled_of(document, origin=place)
    assert sampled.balls[0].position_m[0] == pytest.approx([0, 1.0, 0], abs=1e-12)
    assert sampled.pivot_m == pytest.approx([0, 55.8, 3.0], abs=1e-12)


def test_on_a_turntable_up_is_up():
    sampled = sampled_of(json.loads(examples.example("on-the-bench")))
    assert sampled.axis.tolist() == [0, 1, 0]
    assert sampled.notes["file"]["spin_axis"] == "+Y"


def test_a_ball_turns_in_every_view_as_its_spin_says():
    """A spin of 60 rpm axial against the frame's 3: a quarter of a second turns it by a quarter less what the frame turns."""
    ball = throw(1.0, 0.0, 0.0, ball_spin_rpm=60, ball_spin_axis=[0, 0, 1])
    for view, rpm in (("rotating", 60.0), ("inertial_flat", 63.0)):
        sampled = sampled_of(scene(ball, air=None), view=view)
        w, x, y, z = sampled.balls[0].attitude(np.array([0.0, 0.25]))[1]
        assert (w, z) == pytest.approx((math.cos(rpm * math.pi / 240), math.sin(rpm * math.pi / 240)), abs=1e-9)
        assert (x, y) == pytest.approx((0, 0), abs=1e-12)


def test_what_stands_far_out_hangs_under_an_anchor():
    sampled = sampled_of(scene(throw(), habitat={"radius_m": 4_000.0, "spin_rpm": 0.4}))
    assert sampled.anchor_m.tolist() == [0.0, -3999.0, 0.0] or sampled.anchor_m.tolist() == [0.0, -3998.0, 0.0]
    near = sampled_of(scene(throw(), habitat={"radius_m": 4_000.0, "spin_rpm": 0.4}), origin="release")
    assert not np.any(near.anchor_m)


def test_a_stream_grows_from_the_lip_and_leaves_with_its_last_parcel():
    sampled = sampled_of(scene(pour(duration_s=0.5)), fps=48)
    stream, times = sampled.streams[0], sampled.time_s
    assert np.all(stream.width_m[times < 1e-9] == 0)
    flows = (times > 0.05) & (times < 0.5)
    assert np.all(stream.width_m[flows][:, 0] == pytest.approx(0.008, rel=1e-6))
    assert np.all(np.diff(stream.width_m[flows], axis=1) <= 1e-12)
    assert np.all(stream.width_m[times > 1.5] == 0)
    assert stream.position_m[0, 0] == pytest.approx([0, -54.9, 0], abs=1e-9)


def test_drops_keep_their_number_and_wait_where_they_are_born():
    sampled = sampled_of(scene(pour(duration_s=0.5, name="tea"), pour(duration_s=0.3, name="milk", start_s=0.1)))
    drops = sampled.drops
    assert drops.position_m.shape == (len(sampled.time_s), len(drops.ids), 3)
    assert drops.ids.tolist() == list(range(len(drops.ids)))
    born = [one["born_s"] for one in sampled.notes["ids"]]
    assert born == sorted(born)
    for n in (0, len(born) // 2, len(born) - 1):
        waits = sampled.time_s < born[n] - 1e-9
        assert np.ptp(drops.position_m[waits, n], axis=0).max() == 0
        assert not np.any(drops.alive[waits, n])
        assert np.all(drops.velocity_m_s[waits, n] == 0)
    assert {one["motion"] for one in sampled.notes["ids"]} == {"tea", "milk"}


def test_names_are_letters_and_digits_and_each_once():
    named = [("ball", "lob out"), ("ball", "lob-out"), ("ball", "日本"), ("lift", "ok")]
    assert element_names(named) == [
        "ball_lob_out",
        "ball_lob_out_",
        "ball_00002",
        "lift_ok",
    ]


def test_the_stars_drift_by_the_spin():
    """A frame is as long as it was shot, however fast it is shown."""
    for shown in ({}, {"shown_fps": 48}):
        file = sampled_of(scene(throw()), **shown).notes["file"]
        assert file["star_drift_deg_per_frame"] == pytest.approx(3 * 360 / 60 / 24)


@each_row(
    ("choices", "field"),
    [
        ({"fps": 0}, "export.fps"),
        ({"fps": "1/0"}, "export.fps"),
        ({"shown_fps": 1e9}, "export.shown_fps"),
        ({"samples_per_frame": 3}, "export.samples_per_frame"),
        ({"first_frame": -1_000_001}, "export.first_frame"),
        ({"first_frame": 1.5}, "export.first_frame"),
        ({"view": "sideways"}, "export.view"),
        ({"unit": "ft"}, "export.unit"),
        ({"up": "X"}, "export.up"),
        ({"origin": "hub"}, "export.origin"),
        ({"origin": {"along_m": 1e9}}, "export.origin.along_m"),
        ({"origin": {"floor": 1}}, "export.origin.floor"),
        ({"motions": ["nobody"]}, "export.motions"),
        ({"motions": [], "origin": "release"}, "export.origin"),
        ({"from_s": 2.0, "to_s": 1.0}, "export.to_s"),
        ({"from_s": float("nan")}, "export"),
        ({"colour": "blue"}, "export.colour"),
    ],
)
def test_a_choice_out_of_range_is_refused_by_name(choices, field):
    with pytest.raises(BadInput) as caught:
        sampled_of(scene(throw()), **choices)
    assert caught.value.refusals[0].field.startswith(field)
    assert "must be" in caught.value.refusals[0].say or "unknown" in caught.value.refusals[0].say


def test_too_many_samples_are_refused_by_the_motion_that_has_most():
    with pytest.raises(TooMuch) as caught:
        sampled_of(scene(drop(), pour(30, 8, 600.0, name="hose")))
    assert caught.value.refusals[0].was == "hose"


@each_row("view", VIEWS)
def test_without_spin_in_vacuum_a_thing_goes_straight_on(view):
    document = scene(throw(3.0, 90.0, 0.0, POINT), habitat={"spin_rpm": 0.0}, air=None, sampling={"duration_s": 2.0})
    ball = sampled_of(document, view=view).balls[0]
    assert ball.position_m[:, 2] == pytest.approx(3.0 * np.arange(len(ball.position_m)) / 24, abs=1e-12)
    assert np.all(ball.acceleration_m_s2 == 0)


def test_a_scene_where_nothing_moves_still_turns():
    sampled = sampled_of(scene(), view="inertial")
    assert sampled.time_s[-1] == pytest.approx(20.0)
    assert sampled.angle_rad[-1] == pytest.approx(2 * math.pi)
    assert frames.turn(np.eye(3)[0], sampled.angle_rad[-1]) == pytest.approx([1, 0, 0], abs=1e-9)
