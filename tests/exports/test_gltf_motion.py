"""What a player of the glTF file sees, against straight lines of free bodies and against scipy's turnings."""

import io
import math
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import numpy as np
import pytest
import trimesh
from scipy.spatial.transform import Rotation

from rimfall.errors import TooMuch
from rimfall.exports import gltf, gltf_shapes
from tests.exports.free_bodies import (
    MOTIONS,
    NAMES,
    OMEGA,
    RADIUS_M,
    VIEWS,
    WITHIN_M,
    exact,
    glb_of,
    in_file,
    sampled_of,
)
from tests.scene.documents import BALL, POINT, drop, scene, throw
from tests.tables import each_row

RATES = [23.976, 24, 25, 29.97, 30, 48, 50, 59.94, 60, 12.5]
WITHIN_FAR_M = 2 * float(np.spacing(np.float32(4000)))


@each_row("view", VIEWS)
@each_row("fps", RATES)
def test_bodies_are_on_their_straight_lines_at_every_key(fps, view):
    file = glb_of(scene(*MOTIONS, air=None, sampling={"fps": fps}), view=view)
    noted = file.document["asset"]["extras"]["file"]
    rate = Fraction(*noted["fps"])
    assert float(rate) == pytest.approx(fps, abs=1e-3)
    assert rate in (Fraction(fps).limit_denominator(2), Fraction(round(fps * 1001 / 1000) * 1000, 1001))
    ends = []
    for name, motion in zip(NAMES, MOTIONS, strict=True):
        way, times, _ = file.sampler(name, "translation")
        assert way == "LINEAR"
        at_frames = np.array([float(k / rate) for k in range(noted["frame_count"])])
        place, axial, end_s = exact(motion, times.astype(float))
        happens = [t for t in (motion.get("start_s", 0.0), end_s) if np.min(np.abs(at_frames - t)) > 1e-4 / rate]
        assert times == pytest.approx(np.sort([*at_frames, *happens]), rel=1e-6), (
            "every frame, and what happens between two"
        )
        ends.append(end_s)
        for k in (0, len(times) // 4, len(times) // 2, len(times) - 1, np.argmin(np.abs(times - end_s))):
            seen = place[k] * (np.exp(-1j * OMEGA * times[k]) if view == "rotating" else 1)
            assert file.world(name, np.zeros(3), times[k]) == pytest.approx(
                in_file(np.array([seen]), axial[k : k + 1])[0], abs=WITHIN_M
            )
    assert times[-1] - float(1 / rate) < max(ends) <= times[-1] + 1e-6
    assert (noted["start_frame"], noted["end_frame"]) == (1001, 1000 + len(at_frames))


@each_row("view", ["inertial", "inertial_flat"])
@each_row("samples", [1, 4])
def test_between_keys_a_player_stays_within_rule_7(view, samples):
    """A straight line between keys errs by a dt^2 / 8; in the flat view there is no acceleration to err by."""
    file = glb_of(scene(*MOTIONS, air=None), view=view, samples_per_frame=samples)
    dt = 1 / (24 * samples)
    worst = 0.0
    for name, motion in zip(NAMES, MOTIONS, strict=True):
        *_, end_s = exact(motion, np.zeros(1))
        start_s = motion.get("start_s", 0.0)
        for t in np.arange(start_s + 1.5 * dt, end_s - 1.5 * dt, 7.5 * dt):
            place, axial, _ = exact(motion, np.array([t]))
            worst = max(worst, np.max(np.abs(file.world(name, np.zeros(3), t) - in_file(place, axial)[0])))
    pull = OMEGA**2 * RADIUS_M + 2 * OMEGA * 15.0  # the fastest of them moves at less than 15 m/s over the deck
    assert worst <= (pull * dt**2 / 8 if view == "inertial" else 0.0) + WITHIN_M
    if view == "inertial":
        assert worst > 0.1 * pull * dt**2 / 8, "the bound is near enough to mean something"


@each_row("view", ["inertial", "inertial_flat"])
def test_the_views_coincide_at_time_0_and_lines_are_straight_about_any_origin(view):
    file = glb_of(scene(*MOTIONS, air=None), view=view, origin="release")
    for name, motion in zip(NAMES, MOTIONS, strict=True):
        for t in file.sampler(name, "translation")[1][::10].astype(float):
            place, axial, _ = exact(motion, np.array([t]))
            assert file.world(name, np.zeros(3), t) == pytest.approx(in_file(place - RADIUS_M, axial)[0], abs=WITHIN_M)


@each_row("view", VIEWS)
def test_at_4_km_the_anchor_keeps_the_digits(view):
    motions = [throw(40.0, 0.0, 60.0, POINT), throw(30.0, 90.0, 20.0, POINT)]
    omega = 0.5 * 2 * math.pi / 60
    file = glb_of(scene(*motions, air=None, habitat={"radius_m": 4000.0, "spin_rpm": 0.5}), view=view)
    anchor = file.nodes[file.named["anchor"]]
    assert [file.nodes[k]["name"] for k in anchor["children"]][:2] == ["ball_throw_1", "ball_throw_2"]
    for name, motion in zip(("ball_throw_1", "ball_throw_2"), motions, strict=True):
        times = file.sampler(name, "translation")[1].astype(float)
        place, axial, _ = exact(motion, times, 4000.0, omega)
        if view == "rotating":
            place = place * np.exp(-1j * omega * times)
        found = np.array([file.world(name, np.zeros(3), t) for t in times])
        off = np.max(np.abs(found - in_file(place, axial)))
        # with the anchor at rest the offsets alone are rounded; a node that turns rounds its own numbers too
        assert off < {"rotating": 2e-5, "inertial": WITHIN_FAR_M, "inertial_flat": WITHIN_FAR_M}[view]
    path = file.array(file.primitive("path_throw_1")["attributes"]["POSITION"])
    assert np.max(np.abs(path[0])) < 1.0, "a path begins at the anchor"


def test_a_body_that_is_not_there_yet_has_no_size():
    file = glb_of(scene(*MOTIONS, air=None))
    way, times, sizes = file.sampler("ball_throw_2", "scale")
    assert way == "STEP"
    assert times == pytest.approx([0.0, 0.3], abs=1e-7), "thrown at 0.3 s, between frames 7 and 8"
    assert sizes.tolist() == [[0, 0, 0], [1, 1, 1]]
    assert file.sampler("ball_drop_1", "scale") is None


def test_slow_motion_stretches_the_times():
    file = glb_of(scene(*MOTIONS, air=None), fps=96, shown_fps=24)
    times = file.sampler(NAMES[0], "translation")[1]
    assert np.median(np.diff(times)) == pytest.approx(1 / 24, rel=1e-4)
    place, axial, _ = exact(MOTIONS[2], np.array([0.5]))
    found = file.world(NAMES[2], np.zeros(3), 48 / 24)
    assert found == pytest.approx(in_file(place * np.exp(-0.5j * OMEGA), axial)[0], abs=WITHIN_M)


@each_row("fps", [1, 24])
def test_the_habitat_turns_by_small_steps_and_as_far_as_it_should(fps):
    file = glb_of(
        scene(drop(), habitat={"radius_m": 20.0, "spin_rpm": 150.0}, sampling={"fps": fps, "duration_s": 3}),
        view="inertial",
    )
    way, times, keys = file.sampler("habitat", "rotation")
    assert way == "LINEAR"
    assert np.linalg.norm(keys, axis=1) == pytest.approx(1.0, abs=1e-6)
    turned = [np.degrees((Rotation.from_quat(b) * Rotation.from_quat(a).inv()).magnitude()) for a, b in pairwise(keys)]
    assert max(turned) < 90.0
    assert math.fsum(turned) == pytest.approx(times[-1] * 900.0, rel=1e-5)
    for t in (0.0, float(times[-1]) / 3, float(times[-1])):
        turn = OMEGA * 50 * t
        corner = 20.0 * np.array([math.sin(turn), -math.cos(turn), 0.0])
        assert file.world("deck", np.array([0.0, -20.0, 0.0]), t) == pytest.approx(corner, abs=1e-4)


def test_a_habitat_that_spins_up_is_turned_by_half_the_change_times_the_time_squared():
    rate = 3.0 * 2 * math.pi / 60
    document = scene(
        drop(), habitat={"spin_rpm": 0.0, "spin_ramp": [{"time_s": 10.0, "spin_rpm": 3.0}]}, sampling={"duration_s": 10}
    )
    file = glb_of(document, view="inertial")
    for t in file.sampler("habitat", "rotation")[1][::20].astype(float):
        turn = 0.5 * rate / 10 * t**2
        corner = [RADIUS_M * math.sin(turn), -RADIUS_M * math.cos(turn), 0.0]
        assert file.world("deck", np.array([0.0, -RADIUS_M, 0.0]), t) == pytest.approx(corner, abs=WITHIN_M)


@each_row("rpm", [40.0, 3_000.0, 100_000.0])
def test_a_fast_ball_turns_by_small_steps_and_all_its_turns(rpm):
    """In vacuum a ball spins on for ever: at its own rate, and the habitat's, about the axis."""
    spun = throw(body=BALL, ball_spin_rpm=rpm, ball_spin_axis=[0, 0, 1])
    file = glb_of(scene(spun, air=None), view="inertial_flat")
    _, times, keys = file.sampler("ball_throw_1", "rotation")
    *_, end_s = exact(spun | {"place": {"height_m": 1.5 - 0.09}}, np.zeros(1), RADIUS_M - 0.09)
    keys, flying = keys.astype(float), times <= end_s - 0.01
    half = np.arctan2(keys[:, 2], keys[:, 3])
    steps = np.degrees(2 * np.abs(np.angle(np.exp(2j * np.diff(half))) / 2))
    assert steps.max() < 90.0
    whole = 2 * np.unwrap(2 * half) / 2
    rate = (rpm + 3.0) * 2 * math.pi / 60
    assert whole[flying] == pytest.approx(rate * times[flying], abs=2e-3 + rate * 1e-6)
    assert np.max(np.abs(keys[:, :2])) < 1e-6


def test_keys_keep_the_sign_of_the_one_before():
    """A turn and its quaternion's negative are the same; a reader that does not know goes the long way round."""
    turn = np.linspace(0.0, 9.0, 50)

    def canonical(times):
        return np.roll(Rotation.from_rotvec(np.outer(times, [0.0, 0.6, 0.8])).as_quat(canonical=True), 1, axis=1)

    assert np.min(np.sum(canonical(turn)[1:] * canonical(turn)[:-1], axis=1)) < 0, "scipy keeps w above 0"
    keys = gltf_shapes.attitude_keys(turn, canonical)
    assert np.sum(keys[1:] * keys[:-1], axis=1).min() > 0.9
    assert (
        Rotation.from_quat(keys) * Rotation.from_rotvec(np.outer(-turn, [0.0, 0.6, 0.8]))
    ).magnitude() == pytest.approx(0, abs=1e-7)


def test_a_ball_that_turns_too_often_is_refused_by_its_name():
    document = scene(throw(body=BALL, ball_spin_rpm=1e5, ball_spin_axis=[0, 0, 1], name="humming"), air=None)
    sampled = sampled_of(document)
    balls = [replace(b, attitude=hummed, keys=replace(b.keys, time_s=b.keys.time_s * 100)) for b in sampled.balls]
    stretched = replace(sampled, balls=balls)
    with pytest.raises(TooMuch) as caught:
        gltf.glb(stretched)
    assert caught.value.refusals[0].was == "humming"


def hummed(times):
    half = 1e5 * math.pi / 60 * times
    return np.stack([np.cos(half), np.sin(half), 0 * half, 0 * half], 1)


@each_row("view", ["rotating", "inertial_flat"])
def test_a_path_is_the_line_its_body_flies(view):
    data = gltf.glb(sampled_of(scene(*MOTIONS, air=None), view=view))
    found = trimesh.load(io.BytesIO(data), file_type="glb")
    for name, motion in zip(NAMES, MOTIONS, strict=True):
        points = np.asarray(found.geometry[name.replace("ball", "path")].vertices)
        _, _, end_s = exact(motion, np.zeros(1))
        place, axial, _ = exact(motion, np.array([motion.get("start_s", 0.0), end_s]))
        if view == "rotating":
            place = place * np.exp(-1j * OMEGA * np.array([motion.get("start_s", 0.0), end_s]))
        ends = in_file(place, axial)
        for end in ends:
            assert np.linalg.norm(points - end, axis=1).min() < WITHIN_M
        if view == "inertial_flat":
            along = (ends[1] - ends[0]) / np.linalg.norm(ends[1] - ends[0])
            assert np.linalg.norm(np.cross(points - ends[0], along), axis=1).max() < WITHIN_M


def test_axes_become_quaternions_as_scipy_has_them():
    turns = Rotation.random(200, rng=np.random.default_rng(4))
    halves = Rotation.from_rotvec(np.pi * np.eye(3))  # where the trace of the matrix is of no use
    for wanted in (turns, halves):
        found = gltf_shapes.of_axes(np.swapaxes(wanted.as_matrix(), 1, 2))
        assert (Rotation.from_quat(found) * wanted.inv()).magnitude() == pytest.approx(0.0, abs=1e-7)
