"""Files of a craft that tumbles, read back by OpenUSD and from glTF's own numbers: where everything is in the room that does not turn."""

import json

import numpy as np
import pytest
import trimesh
from pxr import Usd, UsdGeom
from scipy.spatial.transform import Rotation

from rimfall.exports import gltf, scene_sampling, usd
from rimfall.exports.axes import axes_of
from rimfall.exports.craft_solids import craft_solid
from rimfall.exports.formats import FORMATS
from rimfall.exports.options import read_options
from rimfall.scene.craft.asked import solid_of
from rimfall.scene.craft.checks import of_scene
from rimfall.scene.reading import read
from rimfall.vessel.solids import body_of
from tests.exports.glb import Glb
from tests.kinds.test_tumble import SKEW, tumble
from tests.scene.documents import POINT, drop, scene, throw, trace_of
from tests.tables import each_row

WHOLE = scene(
    tumble(0.6, -0.4, losses_s=30.0, name="craft"),
    throw(5.0, 200.0, 50.0, POINT, name="ball"),
    air=None,
    craft=SKEW,
    sampling={"duration_s": 4.0},
)


def sampled_of(document, **asked):
    made = read(json.dumps(document))
    trace, options = trace_of(made), read_options(asked, made)
    return trace, options, scene_sampling.sample_scene(trace, options, scenery=True)


def inertial(trace, options, number, time_s):
    """Where the trace has a motion in the room at a time, in the file's axes, and how the craft lies."""
    track, spin = trace.motions[number].track, trace.setting.habitat.spin
    _, _, place = track.path.both(spin, np.array([min(time_s, track.path.end_s)]))
    shown = axes_of(trace, options)
    w, *v = shown.turnings(spin.quaternion(np.array([time_s])))[0]
    return shown.points(place)[0], Rotation.from_quat([*v, w])


@pytest.mark.parametrize("view", ["inertial", "inertial_flat"])
def test_usd_has_craft_and_ball_where_they_are_in_the_room(view, tmp_path):
    trace, options, shot = sampled_of(WHOLE, view=view)
    path = tmp_path / "tumble.usda"
    path.write_bytes(usd.usda(shot))
    stage = Usd.Stage.Open(str(path))
    prims = {p.GetName(): p for p in stage.Traverse() if p.IsA(UsdGeom.Mesh)}
    for k in (0, 20, 55):
        code, time_s = Usd.TimeCode(float(shot.frame[k])), float(shot.time_s[k])
        for name, number in (("craft_craft", 0), ("ball_ball", 1)):
            if number == 1 and time_s > trace.motions[1].track.ends_s:
                continue
            world = np.array(UsdGeom.Xformable(prims[name]).ComputeLocalToWorldTransform(code))
            place, lies = inertial(trace, options, number, time_s)
            np.testing.assert_allclose(world[3, :3], place, atol=2e-5)
            if number == 0:
                np.testing.assert_allclose(world[:3, :3], lies.as_matrix().T, atol=1e-6)


@pytest.mark.parametrize("view", ["inertial", "inertial_flat"])
def test_gltf_has_craft_and_ball_where_they_are_in_the_room(view):
    trace, options, shot = sampled_of(WHOLE, view=view)
    file = Glb(gltf.glb(shot))
    for k in (0, 20, 55):
        time_s = float(shot.time_s[k])
        place, lies = inertial(trace, options, 0, time_s)
        arm = np.array([3.0, -2.0, 7.0])
        np.testing.assert_allclose(file.world("craft_craft", arm, time_s), place + lies.apply(arm), atol=2e-5)
        if time_s <= trace.motions[1].track.ends_s:
            place, _ = inertial(trace, options, 1, time_s)
            np.testing.assert_allclose(file.world("ball_ball", np.zeros(3), time_s), place, atol=2e-5)


def test_in_vacuum_nothing_bends_a_ball_in_the_room():
    trace, _, shot = sampled_of(WHOLE, view="inertial_flat")
    (ball,) = [b for b in shot.balls if b.motion == 1]
    flies = shot.time_s < trace.motions[1].track.ends_s - 0.01
    np.testing.assert_allclose(ball.acceleration_m_s2[flies], 0.0, atol=1e-9)
    (aboard,) = [b for b in sampled_of(WHOLE, view="rotating")[2].balls if b.motion == 1]
    assert np.linalg.norm(aboard.acceleration_m_s2[flies], axis=1).min() > 1.0


def test_the_craft_is_drawn_as_its_parts():
    """Its solid's corners are those of the parts: as far from the centre of mass as they reach, and about as much on either side."""
    trace, options, shot = sampled_of(WHOLE, view="rotating")
    (craft,) = [b for b in shot.balls if b.motion == 0]
    corners = axes_of(trace, options).rows.T @ craft.solid.position_m.T
    corners = corners.T + trace.setting.habitat.spin.centre_m
    assert np.hypot(corners[:, 0], corners[:, 1]).max() == pytest.approx(56.0, rel=1e-6)
    assert corners[:, 2].min() == pytest.approx(-35.0)
    assert corners[:, 2].max() == pytest.approx(55.0)
    assert craft.attitude is None  # in its own frame it stands still


@each_row("kind", ["point", "rod", "ring", "disc", "cylinder", "cylinder_shell", "box", "sphere", "torus", "cone"])
def test_every_solid_looks_outward_and_has_its_volumes_middle(kind):
    sizes = {"radius_m": 3.0, "length_m": 8.0, "tube_radius_m": 1.0, "size_m": [2.0, 3.0, 5.0]}
    part = {"name": "p", "solid": kind, "mass_kg": 1.0, "axis": [1.0, 2.0, 2.0], "place_m": [4.0, -1.0, 2.0]}
    allowed = dict.fromkeys(("sphere", "ring", "disc"), ("radius_m",))
    allowed |= {"point": (), "rod": ("length_m",), "box": ("size_m",), "torus": ("radius_m", "tube_radius_m")}
    part |= {name: sizes[name] for name in allowed.get(kind, ("radius_m", "length_m"))}
    if kind in ("point", "sphere"):
        del part["axis"]
    document = read(json.dumps(scene(craft={"rimfall_craft": 1, "parts": [part]})))
    solid = solid_of(of_scene(document).parts[0])
    shape = craft_solid([solid], np.zeros(3))
    mesh = trimesh.Trimesh(shape.position_m, shape.faces, process=True)
    mesh.merge_vertices(merge_norm=True, merge_tex=True)
    assert mesh.volume > 0
    np.testing.assert_allclose(mesh.center_mass, body_of(solid).centre_m, atol=1e-6)
    a, b, c = (shape.position_m[shape.faces[:, k]] for k in range(3))
    out = np.sum(np.cross(b - a, c - a) * shape.normal[shape.faces].mean(axis=1), axis=1)
    assert np.all(out > 0)


@pytest.mark.parametrize(
    "name", ["csv", "csv-frames", "json", "forces-csv", "forces-notes", "plot-felt-svg", "plot-true-svg", "notes"]
)
def test_every_kind_of_file_is_written(name):
    made = read(json.dumps(scene(tumble(name="craft"), drop(name="cup"), sampling={"duration_s": 1.0})))
    assert FORMATS[name].write(trace_of(made), read_options({}, made))
