"""What stands by the motions and what they look like, in files: places and sizes as the scene says, read by pxr, trimesh and the standard's
text. Volumes: of a capsule and of a ball by any table of formulas."""

import json
import math

import numpy as np
import pytest
import trimesh
from pxr import Usd, UsdGeom, UsdShade

from rimfall.exports import gltf, solids, usd
from rimfall.exports.options import read_options
from rimfall.exports.scene_sampling import sample_scene
from rimfall.scene.reading import read
from tests.exports.glb import Glb
from tests.scene.documents import drop, pour, scene, throw, trace_of
from tests.tables import each_row

RADIUS_M = 56.0
TARGET = {"along_m": -0.15, "height_m": 0.85, "axial_m": 0.02, "diameter_m": 0.3, "depth_m": 0.1}
WALK = {"kind": "walk", "name": "guard", "place": {"along_m": 14.0}, "speed_m_s": 4.0, "for_s": 3.0}
HANG = {
    "kind": "hang",
    "name": "lamp",
    "place": {"height_m": 2.4, "along_m": 5.0},
    "body": "handball",
    "length_m": 1.5,
    "first_angle_deg": 30,
}
LIFT = {"kind": "lift", "name": "up", "place": {"along_m": -5.0}, "top_speed_m_s": 2.0, "to_height_m": 6.0}


def sampled_of(*motions, **asked):
    document = read(json.dumps(scene(*motions)))
    return sample_scene(trace_of(document), read_options(asked, document), scenery=True)


def prop(sampled, name):
    return next(p for p in sampled.props if p.name == name)


@each_row(
    ("solid", "volume_m3"),
    [
        (solids.ball(0.5, True), math.pi / 6),
        (solids.capsule(1.8, 0.25), math.pi * 0.25**2 * (1.3 + 4 / 3 * 0.25)),
        (solids.disc(0.5, -0.1, 0.3), math.pi * 0.25 * 0.4),
        (solids.ring(0.1, 0.2, 0.0, 1.0), math.pi * 0.03),
        (solids.cup(0.2, 0.1, foot=1.0, wall=0.1), math.pi * (0.01 * 0.1 - 0.09**2 * 0.09)),
    ],
)
def test_solids_are_closed_and_show_their_outside(solid, volume_m3):
    mesh = trimesh.Trimesh(solid.position_m, solid.faces, process=False)
    mesh.merge_vertices(merge_tex=True, merge_norm=True)
    assert mesh.is_watertight
    assert mesh.volume == pytest.approx(volume_m3, rel=0.03)
    corners = solid.position_m[solid.faces]
    facing = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    assert np.all(np.einsum("fj,fj->f", facing, solid.normal[solid.faces].mean(axis=1)) > 0)
    assert np.linalg.norm(solid.normal, axis=1) == pytest.approx(1)
    assert (solid.uv.min(), solid.uv.max()) == (0, 1)


def test_a_cup_to_pour_into_stands_on_a_table_where_the_scene_says():
    sampled = sampled_of(pour(name="tea", target=TARGET))
    assert {p.name for p in sampled.props} == {"lip_tea", "jug_tea", "cup_tea", "table_tea"}
    at = TARGET["along_m"] / RADIUS_M
    up = np.array([-math.sin(at), math.cos(at), 0.0])
    foot = -(RADIUS_M - 0.75) * up + [0, 0, 0.02]
    cup, table = (prop(sampled, name).solid.position_m for name in ("cup_tea", "table_tea"))
    heights = (cup - foot) @ up
    assert (heights.min(), heights.max()) == pytest.approx((0.0, 0.1), abs=1e-9)
    rim = cup[np.abs(heights - 0.1) < 1e-9] - foot - 0.1 * up
    assert np.max(np.linalg.norm(rim, axis=1)) == pytest.approx(0.15)
    below = (table - foot) @ up
    assert (below.min(), below.max()) == pytest.approx((-0.75, 0.0), abs=2e-3)
    lip = prop(sampled, "lip_tea").solid.position_m
    assert np.linalg.norm(lip - [0.0, -(RADIUS_M - 1.1), 0.0], axis=1).max() < 0.01
    assert np.min(np.linalg.norm(lip[:, 1:] - [-(RADIUS_M - 1.1), 0.0], axis=1)) == pytest.approx(0.004, abs=2e-4)


@each_row("view", ["rotating", "inertial", "inertial_flat"])
def test_a_walker_is_a_capsule_that_stands_up_wherever_they_are(view):
    file = Glb(gltf.glb(sampled_of(WALK, view=view)))
    omega = 3.0 * 2 * math.pi / 60
    for time_s in (0.0, 1.5, 3.0):
        centre = file.world("walk_guard", np.zeros(3), time_s)
        head = file.world("walk_guard", np.array([0.0, 1.0, 0.0]), time_s)
        axis = np.append(centre[:2], 0.0)
        assert (head - centre) == pytest.approx(-axis / np.linalg.norm(axis), abs=1e-4)
        along = 14.0 + 4.0 * time_s + (omega * RADIUS_M * time_s if view != "rotating" else 0.0)
        assert math.atan2(centre[0], -centre[1]) == pytest.approx(along / RADIUS_M, abs=1e-3)
    corners = file.array(file.primitive("walk_guard")["attributes"]["POSITION"])
    assert np.ptp(corners, axis=0)[1] == pytest.approx(2.0)
    assert np.ptp(corners, axis=0)[0] == pytest.approx(0.52, abs=0.01)


def test_a_lamp_hangs_on_its_line_and_a_lift_has_a_floor_under_the_feet():
    sampled = sampled_of(HANG, LIFT)
    file = Glb(gltf.glb(sampled))
    lamp, rider = (b.name for b in sorted(sampled.balls, key=lambda b: b.motion))
    for time_s in (0.0, 0.5, 1.25):
        end = file.world("line_lamp", np.array([0.0, -1.5, 0.0]), time_s)
        assert end == pytest.approx(file.world(lamp, np.zeros(3), time_s), abs=1e-3)
        assert file.world("line_lamp", np.zeros(3), time_s) == pytest.approx(
            file.world("line_lamp", np.zeros(3), 0.0), abs=1e-5
        )
        floor, centre = (file.world(name, np.zeros(3), time_s) for name in ("floor_up", rider))
        assert np.linalg.norm(centre - floor) == pytest.approx(1.0, abs=1e-4)


def test_a_dropped_cup_is_a_cup_upright_where_it_is_let_go():
    at = 28.0 / RADIUS_M
    sampled = sampled_of(drop(1.2, "cup", place={"height_m": 1.2, "along_m": 28.0}, name="mug"))
    (ball,) = sampled.balls
    up = np.array([-math.sin(at), math.cos(at), 0.0])
    heights = ball.solid.position_m @ up
    assert (heights.min(), heights.max()) == pytest.approx((-0.0425, 0.0425), abs=1e-9)
    across = ball.solid.position_m - heights[:, None] * up
    assert np.linalg.norm(across, axis=1).max() == pytest.approx(0.0425)


def test_in_usd_purposes_names_and_textures_are_said(tmp_path):
    lobs = throw(ball_spin_rpm=60, ball_spin_axis=[0, 0, 1], name="Lob out"), pour(name="tea", target=TARGET)
    sampled = sampled_of(*lobs)
    (tmp_path / "a.usda").write_bytes(usd.usda(sampled))
    stage = Usd.Stage.Open(str(tmp_path / "a.usda"))
    prims = {p.GetName(): p for p in stage.Traverse() if p.HasAPI(UsdShade.MaterialBindingAPI) or p.GetName() == "Hull"}
    assert UsdGeom.Imageable(prims["path_Lob_out"]).ComputePurpose() == "guide"
    assert {UsdGeom.Imageable(p).ComputePurpose() for p in prims["Hull"].GetChildren()} == {"proxy"}
    assert UsdGeom.Imageable(prims["ball_Lob_out"]).ComputePurpose() == "default"
    (tmp_path / "b.usda").write_bytes(usd.usda(sampled_of(*lobs, hull="render")))
    assert (
        Usd.Stage.Open(str(tmp_path / "b.usda")).GetPrimAtPath("/World/Habitat/Hull").GetAttribute("purpose").Get()
        == "render"
    )
    ball = prims["ball_Lob_out"]
    st = UsdGeom.PrimvarsAPI(ball).GetPrimvar("st")
    assert len(st.Get()) == len(UsdGeom.Mesh(ball).GetPointsAttr().Get())
    worn = {
        p.GetName(): UsdShade.MaterialBindingAPI(p).ComputeBoundMaterial()[0].GetPrim().GetName()
        for p in [*ball.GetChildren(), prims["cup_tea"], prims["table_tea"], prims["deck"]]
    }
    assert worn == {
        "light": "motion_Lob_out",
        "dark": "dark",
        "cup_tea": "ceramic",
        "table_tea": "wood",
        "deck": "deck",
    }
    names = {m["name"] for m in Glb(gltf.glb(sampled)).document["materials"]}
    assert {"Lob out", "dark", "ceramic", "wood", "deck", "water"} <= names
