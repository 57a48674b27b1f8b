"""Cameras of the seats: OpenUSD's own camera frustum (pxr) says what each has in its picture, on every shape."""

import numpy as np
import pytest
from pxr import Gf

from rimfall.exports import camera_presets
from rimfall.scene import examples
from rimfall.scene.reading import read
from tests.scene.documents import POINT, drop, scene, throw, trace_of, traced
from tests.tables import each_row

NAMES = ["over_the_shoulder", "beside", "hub", "down_the_axis", "with_the_ball", "whole_wheel"]
TIMES_S = np.arange(0.0, 3.0, 1 / 24)
SHAPES = [
    {},
    {"width_m": 14.0, "ceiling_m": 4.0, "hub_radius_m": None},
    {"width_m": 14.0, "hub_radius_m": 6.0},
    {"shape": "torus", "tube_radius_m": 6.0},
    {"shape": "sphere"},
    {"shape": "pods", "floors": [{}, {}, {}]},
    {"shape": "tumbler", "radius_m": 12.0, "floors": [{"radius_m": 12.0}, {"radius_m": 3.0, "azimuth_deg": 180.0}]},
    {"shape": "turntable", "radius_m": 0.6, "spin_rpm": 20.0},
]


def positions(trace):
    path = trace.motions[0].track.path
    return path.both(trace.setting.habitat.spin, np.clip(TIMES_S, path.begin_s, path.end_s))[0]


def seats(document):
    trace = traced(document)
    ball = positions(trace)
    return {c.name: c for c in camera_presets.cameras(trace, TIMES_S, ball)}, ball, trace


def sees(camera, point, k=0):
    """Whether a camera's picture holds a point, by OpenUSD's frustum."""
    matrix = np.eye(4)
    matrix[:3, :3], matrix[3, :3] = camera.axes[k], camera.position_m[k]
    made = Gf.Camera(transform=Gf.Matrix4d(matrix.tolist()), clippingRange=Gf.Range1f(1e-4, 1e7))
    made.SetPerspectiveFromAspectRatioAndFieldOfView(camera.aspect, camera.fov_deg, Gf.Camera.FOVVertical)
    return made.frustum.Intersects(Gf.Vec3d(*map(float, point)))


def check_finite_and_right_handed(cameras):
    for camera in cameras.values():
        assert np.all(np.isfinite(camera.position_m))
        assert 0.1 < camera.fov_deg < 120.0
        assert np.linalg.det(camera.axes) == pytest.approx(np.ones(len(camera.axes)))
        assert camera.axes @ np.swapaxes(camera.axes, 1, 2) == pytest.approx(
            np.broadcast_to(np.eye(3), camera.axes.shape), abs=1e-12
        )


@each_row("habitat", SHAPES)
def test_every_seat_of_every_shape_sees_the_ball_all_along(habitat):
    place = {"height_m": 0.2, "axial_m": 0.3} if habitat.get("shape") == "turntable" else {"height_m": 1.2}
    cameras, ball, _ = seats(scene(drop(body=POINT, place=place), air=None, habitat=habitat))
    assert list(cameras) == NAMES
    check_finite_and_right_handed(cameras)
    for name in NAMES[:4]:
        assert cameras[name].rides
        assert all(sees(cameras[name], point) for point in ball)
    followed = cameras["with_the_ball"]
    assert len(followed.position_m) == len(TIMES_S)
    assert all(sees(followed, point, k) for k, point in enumerate(ball))


@each_row("habitat", SHAPES)
def test_from_outside_the_whole_ground_stays_in_the_picture_as_it_turns(habitat):
    cameras, _, trace = seats(scene(drop(body=POINT), air=None, habitat=habitat))
    whole = cameras["whole_wheel"]
    assert not whole.rides
    size = max([trace.setting.habitat.radius_m, *(f.radius_m for f in getattr(trace.setting.habitat, "floors", ()))])
    around = np.linspace(0.0, 2 * np.pi, 36)
    for angle in around:
        assert sees(whole, (size * np.cos(angle), size * np.sin(angle), 0.0))
    assert not sees(whole, (8 * size, 0.0, 0.0))
    assert not sees(whole, (0.0, 8 * size, 0.0))


@each_row("name", examples.SAY)
def test_no_example_has_a_camera_astray(name):
    trace = trace_of(read(examples.example(name)))
    check_finite_and_right_handed({c.name: c for c in camera_presets.cameras(trace, TIMES_S)})


def test_on_the_axis_and_without_spin_every_camera_is_somewhere():
    on_axis = drop(body=POINT, place={"height_m": 56.0})
    still = scene(on_axis, air=None, habitat={"spin_rpm": 0.0}, sampling={"duration_s": 3.0})
    for document in (still, scene(on_axis, air=None, sampling={"duration_s": 3.0})):
        check_finite_and_right_handed(seats(document)[0])


def test_without_a_motion_the_seats_stand_as_ever():
    trace = traced(scene(air=None))
    found = {c.name: c for c in camera_presets.cameras(trace, TIMES_S)}
    assert list(found) == [n for n in NAMES if n != "with_the_ball"]
    check_finite_and_right_handed(found)


def test_over_the_shoulder_looks_the_way_of_the_throw():
    for heading, ahead in ((0.0, (0, 1, 0)), (90.0, (0, 0, 1)), (180.0, (0, -1, 0))):
        cameras, _, _ = seats(scene(throw(6.0, heading, 30.0, POINT), air=None))
        assert -cameras["over_the_shoulder"].axes[0, 2] @ np.array(ahead) > np.cos(np.radians(30.0))


def test_with_the_ball_up_is_to_the_axis_and_does_not_swing_round_near_it():
    cameras, ball, _ = seats(scene(throw(12.0, 0.0, 20.0, POINT), air=None))
    up = cameras["with_the_ball"].axes[:, 1, :2]
    inward = -ball[:, :2] / np.linalg.norm(ball[:, :2], axis=1)[:, None]
    assert np.sum(up * inward, axis=1) == pytest.approx(np.full(len(ball), np.cos(np.radians(14.0))), abs=1e-9)
    past, ball, _ = seats(scene(throw(26.3, 180.0, 49.4, POINT), air=None))
    assert np.min(np.hypot(ball[:, 0], ball[:, 1])) < 5.0
    turned = past["with_the_ball"].axes
    steps = np.einsum("nij,nij->n", turned[1:], turned[:-1])
    assert np.all(steps > 2.8)


def test_a_file_sees_what_a_stage_of_its_shape_sees():
    """The table that the page's stages read, at 16:9, gives the views that files have, to a third of a degree."""
    table = camera_presets.table()
    share = (table["broad"] - camera_presets.ASPECT) / (table["broad"] - table["square"])
    assert 0 < share < 1
    for preset in camera_presets.PRESETS.values():
        seat, view = table["seats"][preset.seat], preset.view
        for name in ("yaw_deg", "tilt_deg", "fov_deg"):
            between = seat["broad"][name] + share * (seat["square"][name] - seat["broad"][name])
            assert between == pytest.approx(getattr(view, name), abs=1 / 3)
