"""The page's own cameras in a file: the ball is at the pixel of its picture where it was on the stage.

A stage is a pinhole (three.js's PerspectiveCamera: vertical field of view, -Z ahead). What it shows is worked out here, from the
straight line that a body flies in vacuum; what the file's camera shows, by OpenUSD's own frustum and from the glTF standard's text
(ISO/IEC 12113, 3.10.3).
"""

import json
import math

import numpy as np
import pytest
from pxr import Gf, Usd, UsdGeom

from rimfall.errors import BadInput
from rimfall.exports import gltf, scene_sampling, usd
from rimfall.exports.options import choices_of, read_options
from rimfall.scene import examples
from rimfall.scene.reading import read
from tests.exports.glb import Glb
from tests.scene.documents import POINT, scene, throw, trace_of
from tests.tables import each_row

RADIUS_M, OMEGA = 56.0, 3.0 * 2 * math.pi / 60
SPEED_M_S, HEIGHT_M = 6.0, 1.5
WIDE, TALL = 1280, 720
ABOARD = {
    "name": "Aboard",
    "view": "aboard",
    "position_m": [-5.0, -52.5, 14.0],
    "target_m": [1.0, -54.0, 0.0],
    "up": [0.1, 1.0, 0.0],
    "vertical_fov_deg": 34.0,
    "aspect": WIDE / TALL,
}
OUTSIDE = ABOARD | {
    "name": "Outside",
    "view": "outside",
    "position_m": [30.0, -60.0, 90.0],
    "target_m": [2.0, -50.0, 0.0],
}
BOTH = [ABOARD, OUTSIDE]


def shot(view, **asked):
    document = read(json.dumps(scene(throw(SPEED_M_S, 90.0, 40.0, POINT), air=None)))
    options = read_options({"view": view, "stage_cameras": BOTH} | asked, document)
    return scene_sampling.sample_scene(trace_of(document), options, scenery=True)


def ball_at(time_s, aboard):
    """Where the ball of the throw across the deck is on a stage, metres: on a straight line, and aboard that line turned back."""
    level, rise = SPEED_M_S * math.cos(math.radians(40.0)), SPEED_M_S * math.sin(math.radians(40.0))
    start = np.array([0.0, -(RADIUS_M - HEIGHT_M), 0.0])
    x, y, z = start + time_s * np.array([OMEGA * (RADIUS_M - HEIGHT_M), rise, level])
    c, s = math.cos(OMEGA * time_s), math.sin(OMEGA * time_s)
    return np.array([c * x + s * y, c * y - s * x, z]) if aboard else np.array([x, y, z])


def pixel(point, camera):
    """The pixel of a point on a stage of WIDE by TALL."""
    eye = np.array(camera["position_m"])
    back = eye - np.array(camera["target_m"])
    back /= np.linalg.norm(back)
    right = np.cross(camera["up"], back)
    right /= np.linalg.norm(right)
    seen = np.array([right, np.cross(back, right), back]) @ (point - eye)
    return on_picture(seen, math.tan(math.radians(camera["vertical_fov_deg"]) / 2))


def on_picture(seen, tall):
    """Of a point (right, up, back) of an eye."""
    x, y = seen[0] / (-seen[2] * tall * WIDE / TALL), seen[1] / (-seen[2] * tall)
    return np.array([(1 + x) / 2 * WIDE, (1 - y) / 2 * TALL])


def check(found, time_s, camera):
    wanted = pixel(ball_at(time_s, camera["view"] == "aboard"), camera)
    assert np.all((wanted > 0) & (wanted < [WIDE, TALL])), "in the picture, or the test says little"
    assert found == pytest.approx(wanted, abs=0.05)


@each_row(
    ("view", "more"),
    [
        ("rotating", {}),
        ("inertial", {"unit": "cm"}),
        ("inertial_flat", {"up": "Z"}),
        ("rotating", {"up": "Z", "unit": "cm", "origin": {"along_m": 20.0, "height_m": 1.0}}),
        ("inertial", {"origin": "release"}),
    ],
)
def test_the_ball_is_at_the_stages_pixel_in_usd(tmp_path, view, more):
    path = tmp_path / f"{len(list(tmp_path.iterdir()))}.usda"
    path.write_bytes(usd.usda(shot(view, **more)))
    stage = Usd.Stage.Open(str(path))
    prims = {p.GetName(): p for p in stage.Traverse()}
    (ball,) = (p for p in prims.values() if p.GetName().startswith("ball_"))
    for name, camera in (("camera_Aboard", ABOARD), ("camera_Outside", OUTSIDE)):
        for k in (0, 10, 24):
            code = Usd.TimeCode(1001 + k)
            place = UsdGeom.Xformable(ball).ComputeLocalToWorldTransform(code).ExtractTranslation()
            seen = UsdGeom.Camera(prims[name]).GetCamera(code).frustum.ComputeProjectionMatrix()
            into = UsdGeom.Camera(prims[name]).GetCamera(code).frustum.ComputeViewMatrix()
            x, y, _ = (into * seen).Transform(place)
            check(np.array([(1 + x) / 2 * WIDE, (1 - y) / 2 * TALL]), k / 24, camera)


@each_row("view", ["rotating", "inertial", "inertial_flat"])
def test_the_ball_is_at_the_stages_pixel_in_gltf(view):
    file = Glb(gltf.glb(shot(view)))
    (ball,) = (n for n in file.named if n.startswith("ball_"))
    for name, camera in (("camera_Aboard", ABOARD), ("camera_Outside", OUTSIDE)):
        lens = file.document["cameras"][file.nodes[file.named[name]]["camera"]]["perspective"]
        assert lens["aspectRatio"] == pytest.approx(WIDE / TALL)
        for k in (0, 10, 24):
            eye, *ends = (file.world(name, np.array(p, dtype=float), k / 24) for p in [(0, 0, 0), *np.eye(3)])
            seen = np.array([end - eye for end in ends]) @ (file.world(ball, np.zeros(3), k / 24) - eye)
            check(on_picture(seen, math.tan(lens["yfov"] / 2)), k / 24, camera)


@each_row("unit", ["m", "cm"])
def test_usd_reads_a_lens_of_36_mm_film(tmp_path, unit):
    """UsdGeomCamera, "Units of Measure for Camera Properties": apertures and focal length are tenths of a scene unit."""
    path = tmp_path / f"{unit}.usda"
    path.write_bytes(usd.usda(shot("rotating", unit=unit)))
    stage = Usd.Stage.Open(str(path))
    cameras = [UsdGeom.Camera(p) for p in stage.Traverse() if p.GetTypeName() == "Camera"]
    tenth_m = UsdGeom.GetStageMetersPerUnit(stage) / 10
    for camera in cameras:
        assert camera.GetHorizontalApertureAttr().Get() * tenth_m == pytest.approx(0.036)
        length_m = camera.GetFocalLengthAttr().Get() * tenth_m
        wide = 2 * math.degrees(math.atan(0.018 / length_m))
        assert 0.005 < length_m < 5.0
        assert camera.GetCamera(1001).GetFieldOfView(Gf.Camera.FOVHorizontal) == pytest.approx(wide, abs=1e-3)
    aboard = next(c for c in cameras if c.GetPrim().GetName() == "camera_Aboard")
    tall = aboard.GetCamera(1001).GetFieldOfView(Gf.Camera.FOVVertical)
    assert tall == pytest.approx(ABOARD["vertical_fov_deg"], abs=1e-4)


@each_row(
    ("name", "value", "said"),
    [
        ("target_m", ABOARD["position_m"], "another place"),
        ("up", [6.0, -1.5, -14.0], "across"),
        ("up", [0, 0, 0], "across"),
        ("position_m", [1, 2], "three numbers"),
        ("position_m", [1, 2, 1e7], "three numbers"),
        ("vertical_fov_deg", 180, "0.1 to 170"),
        ("view", "inside", "aboard or outside"),
    ],
)
def test_a_camera_that_shows_nothing_is_refused_by_its_field(name, value, said):
    with pytest.raises(BadInput) as refused:
        shot("rotating", stage_cameras=[ABOARD | {name: value}])
    (one,) = refused.value.refusals
    assert one.field == f"export.stage_cameras.0.{name}"
    assert said in one.say


def test_stages_come_first_beside_the_files_own_and_names_stay_apart():
    names = [
        c.name for c in shot("rotating", stage_cameras=[ABOARD | {"name": "hub"}, OUTSIDE | {"name": "hub"}]).cameras
    ]
    assert names[:2] == ["camera_hub_", "camera_hub__"]
    assert len(set(names)) == len(names) == 8


def test_the_choice_goes_into_the_notes_and_comes_back():
    sampled = shot("rotating")
    document = read(json.dumps(sampled.notes["scene"]))
    assert read_options(choices_of(sampled.options), document) == sampled.options


@each_row("name", ["galley", "same-lob", "three-pods"])
def test_no_wall_stands_between_a_camera_and_what_moves(name):
    """Straight from eye to ball: where a wall is crossed (a 3 by 3 system for each of its triangles), the near plane lies past it."""
    document = read(examples.example(name))
    found = scene_sampling.sample_scene(trace_of(document), read_options({}, document), scenery=True)
    cut = 0
    for camera in found.cameras:
        if len(camera.position_m) > 1:
            continue
        eye, ahead = camera.position_m[0], -camera.axes[0, 2]
        for ball in found.balls:
            to = ball.position_m[len(ball.position_m) // 3]
            for mesh in found.meshes:
                a, b, c = (mesh.position_m[mesh.faces[:, k]] for k in range(3))
                systems = np.stack([b - a, c - a, np.broadcast_to(eye - to, a.shape)], -1)
                good = np.abs(np.linalg.det(systems)) > 1e-9
                u, v, share = np.linalg.solve(systems[good], (eye - a[good])[..., None])[..., 0].T
                hits = share[(u >= 0) & (v >= 0) & (u + v <= 1) & (share > 0) & (share < 0.98)]
                hidden = [h for h in hits if h * ((to - eye) @ ahead) > (camera.near_m or 0.0)]
                assert hidden == [], (camera.name, mesh.name)
                cut += len(hits)
        assert camera.near_m is None or camera.near_m < (found.balls[0].position_m[0] - eye) @ ahead
    assert cut > 0, "some walls are cut off"
