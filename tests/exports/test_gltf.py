"""The glTF file against its makers' validator and two independent readers: trimesh, and glb.py beside this."""

import functools
import io
import json
import math
from dataclasses import replace

import numpy as np
import pytest
import trimesh
from scipy.spatial.transform import Rotation

from rimfall.exports import gltf
from rimfall.exports.formats import FORMATS
from rimfall.exports.options import read_options
from rimfall.exports.sampled_scene import ColouredMesh
from rimfall.scene import examples, questions
from rimfall.scene.reading import read
from tests import validator
from tests.exports.free_bodies import (
    MANY,
    MOTIONS,
    VIEWS,
    sampled_of,
)
from tests.exports.glb import Glb
from tests.scene.documents import BALL, POINT, drop, scene, throw, trace_of

VIEW_OF = {name: VIEWS[number % 3] for number, name in enumerate(examples.SAY)}


@functools.cache
def written(name, view):
    """An example's file, bytes."""
    found = read(examples.example(name))
    return FORMATS["glb"].write(trace_of(found), read_options({"view": view}, found))


@pytest.fixture(scope="module")
def files(tmp_path_factory):
    """File's name -> bytes: every example in one of the views, and what no example has; and the folder they are in."""
    folder, made = tmp_path_factory.mktemp("glb"), {}
    for name, view in VIEW_OF.items():
        made[f"{name}.{view}.glb"] = written(name, view)
    nothing = scene(habitat={"ceiling_m": 3.0, "hub_radius_m": 5.0})
    far = {"radius_m": 4000.0, "spin_rpm": 0.5}
    spun = {"ball_spin_rpm": 2_000, "ball_spin_axis": [1, 2, 2], "bounces": 3}
    for name, document, choices in (
        ("nothing", nothing, {}),
        ("nothing-turning", nothing, {"view": "inertial"}),
        ("one-frame", MANY, {"from_s": 2.0, "to_s": 2.0, "view": "inertial"}),
        ("many-drops", MANY, {"origin": "release", "view": "inertial"}),
        ("far", scene(*MOTIONS, habitat=far, air=None), {"view": "inertial_flat", "samples_per_frame": 8}),
        ("spun", scene(throw(body="tennis ball", **spun)), {"view": "inertial", "shown_fps": 12.5}),
        ("same-names", scene(drop(name="deck"), drop(name="Deck"), drop(name="ball deck")), {}),
    ):
        made[f"{name}.glb"] = gltf.glb(sampled_of(document, **choices))
    for name, data in made.items():
        (folder / name).write_bytes(data)
    return made, folder


def test_the_validator_finds_nothing(files):
    made, folder = files
    said = validator.said_of([folder / name for name in made])
    assert set(said) == set(made)
    for name, one in said.items():
        assert one["issues"]["messages"] == [], name
        assert (one["issues"]["numErrors"], one["issues"]["numWarnings"]) == (0, 0)
        assert one["info"]["version"] == "2.0"
        assert one["info"].get("resources", [{}])[0].get("storage", "glb") == "glb", "nothing external"


def test_the_validator_would_say_so(tmp_path):
    data = bytearray(written("same-lob", "rotating"))
    at = data.index(b'"NORMAL"')
    data[at : at + 8] = b'"NORMAN"'
    (tmp_path / "broken.glb").write_bytes(data)
    assert validator.said_of([tmp_path / "broken.glb"])["broken.glb"]["issues"]["numErrors"] > 0


def test_trimesh_reads_every_file_and_every_path_as_a_path(files):
    for name, data in files[0].items():
        read_back = trimesh.load(io.BytesIO(data), file_type="glb")
        document = Glb(data).document
        paths = [n["name"] for n in document["nodes"] if n["name"].startswith("path_")]
        assert [k for k in read_back.geometry if k.startswith("path_")] == paths
        for path in paths:
            assert isinstance(read_back.geometry[path], trimesh.path.Path3D), (name, path)
            assert np.all(np.isfinite(read_back.geometry[path].vertices))
        assert np.all(np.isfinite(read_back.bounds))


def test_names_are_unique_and_there_is_one_animation(files):
    for name, data in files[0].items():
        document = Glb(data).document  # reading refuses a name that is there twice
        animations = document.get("animations", [])
        assert len(animations) == (0 if name in ("nothing.glb", "empty.rotating.glb") else 1), name
        for kind in ("meshes", "cameras"):
            named = [one["name"] for one in document.get(kind, [])]
            assert len(set(named)) == len(named), (name, kind)


def test_the_scene_can_be_opened_again(files):
    for name, view in VIEW_OF.items():
        document = Glb(files[0][f"{name}.{view}.glb"]).document
        extras = document["asset"]["extras"]
        assert read(json.dumps(extras["scene"])) == read(examples.example(name))
        assert document["asset"]["generator"] == extras["program"]
        assert extras["file"]["view"] == view


def test_the_same_request_gives_the_same_bytes():
    for name in ("galley", "down-the-ramp"):
        found = read(examples.example(name))
        again = FORMATS["glb"].write(questions.trace(found), read_options({"view": "inertial"}, found))
        assert again == written(name, "inertial")


def test_a_rolling_ball_s_keys_are_close_and_of_one_sign():
    for name in ("down-the-ramp", "along-the-axis", "down-the-deck"):
        for view in VIEWS:
            file = Glb(written(name, view))
            turning = [
                n["name"] for n in file.nodes if n["name"].startswith("ball") and file.sampler(n["name"], "rotation")
            ]
            assert turning
            for ball in turning:
                keys = file.sampler(ball, "rotation")[2].astype(float)
                assert np.linalg.norm(keys, axis=1) == pytest.approx(1.0, abs=1e-6)
                assert np.sum(keys[1:] * keys[:-1], axis=1).min() > math.cos(math.radians(45.0)), (name, ball)


def test_paths_are_strokes_of_one_index_without_light():
    file = Glb(written("galley", "rotating"))
    assert file.document["extensionsUsed"] == ["KHR_materials_unlit"]
    starts = set()
    for name in (name for name in file.named if name.startswith("path_")):
        primitive = file.primitive(name)
        assert primitive["mode"] == 1
        index = file.array(primitive["indices"])
        count = len(file.array(primitive["attributes"]["POSITION"]))
        assert index.tolist() == [n for k in range(count - 1) for n in (k, k + 1)]
        material = file.document["materials"][primitive["material"]]
        assert material["extensions"] == {"KHR_materials_unlit": {}}
        starts.add(tuple(material["pbrMetallicRoughness"]["baseColorFactor"]))
    assert len(starts) == 3, "a colour a motion"


def test_parts_of_the_habitat_turn_with_it_in_the_flat_view_and_bodies_do_not():
    file = Glb(written("same-lob", "inertial_flat"))
    root = file.nodes[file.named["rimfall"]]
    under_root = {file.nodes[k]["name"] for k in root["children"]}
    assert {"habitat", "path_Lob_out", "path_Lob_back"} < under_root
    assert file.parent[file.named["deck"]] == file.named["habitat"]
    assert file.document["scenes"] == [{"nodes": [file.named["rimfall"]]}]


def test_a_ball_is_as_large_as_it_is_and_turns_inside_out_nowhere():
    data = gltf.glb(
        sampled_of(
            scene(
                drop(body=BALL),
                throw(body=POINT),
                throw(body=BALL, name="spun", ball_spin_rpm=60, ball_spin_axis=[1, 0, 0]),
                air=None,
            )
        )
    )
    found = trimesh.load(io.BytesIO(data), file_type="glb")
    ball = found.geometry["ball_drop_1"]
    ball.merge_vertices(merge_norm=True)
    assert np.linalg.norm(ball.vertices, axis=1) == pytest.approx(0.09, rel=1e-6)
    assert ball.is_watertight
    assert ball.volume == pytest.approx(4 / 3 * math.pi * 0.09**3, rel=0.03)
    assert np.linalg.norm(found.geometry["ball_throw_2"].vertices, axis=1) == pytest.approx(0.01, rel=1e-6)
    halves = [g for name, g in found.geometry.items() if name.startswith("ball_spun")]
    assert [len(h.faces) for h in halves] == [len(ball.faces) // 2] * 2
    assert sum(h.area for h in halves) == pytest.approx(ball.area, rel=1e-6)


def test_cameras_stand_and_look_as_the_shot_says():
    sampled = sampled_of(json.loads(examples.example("same-lob")), view="inertial")
    file = Glb(gltf.glb(sampled))
    assert len(file.document["cameras"]) == len(sampled.cameras) > 3
    for camera in sampled.cameras:
        node = file.nodes[file.named[camera.name]]
        lens = file.document["cameras"][node["camera"]]["perspective"]
        assert math.degrees(lens["yfov"]) == pytest.approx(camera.fov_deg)
        assert file.nodes[file.parent[file.named[camera.name]]]["name"] == ("habitat" if camera.rides else "rimfall")
        keys = file.sampler(camera.name, "rotation")
        turned = np.array([node["rotation"]]) if keys is None else keys[2]
        assert Rotation.from_quat(turned).as_matrix() == pytest.approx(np.swapaxes(camera.axes, 1, 2), abs=1e-6)
        if keys is not None:
            assert len(turned) == len(sampled.frame)
            assert np.sum(turned[1:] * turned[:-1], axis=1).min() > math.cos(math.radians(45.0))


def test_large_meshes_take_larger_numbers():
    sampled = sampled_of(scene(drop()))
    count = 70_000
    corners = np.random.default_rng(1).normal(size=(count, 3))
    faces = np.arange(count - count % 3).reshape(-1, 3)
    large = ColouredMesh(
        "large",
        corners,
        faces,
        corners / np.linalg.norm(corners, axis=1, keepdims=True),
        False,
        (0.5, 0.5, 0.5),
        "deck",
    )
    file = Glb(gltf.glb(replace(sampled, meshes=[large])))
    primitive = file.primitive("large")
    assert file.document["accessors"][primitive["indices"]]["componentType"] == 5125
    assert np.array_equal(file.array(primitive["indices"]), faces.ravel())
    assert np.array_equal(file.array(primitive["attributes"]["POSITION"]), corners.astype(np.float32))
