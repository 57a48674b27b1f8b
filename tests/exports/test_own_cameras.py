"""Cameras of one's own: what a file's camera sees is what is read of it, and goes out again; by hand, a lens on a film back is its angle.

What a camera sees is worked out here from the standards' texts: a pinhole that looks along its own -Z with its Y up, in glTF (ISO/IEC
12113, 3.10) as in OpenUSD, whose lens and film are in tenths of a unit (UsdGeomCamera).
"""

import json
import math
import struct
from types import SimpleNamespace

import numpy as np
import pytest

from rimfall import api
from rimfall.errors import BadInput, Refused
from rimfall.exports.brought import tracks
from rimfall.exports.brought.cameras import About, cameras_in
from rimfall.exports.brought.tracks import tracks_in
from rimfall.exports.formats import FORMATS
from rimfall.exports.options import read_options
from rimfall.physics.coordinates import RoundChart
from rimfall.scene import examples, questions
from rimfall.scene.reading import read, read_camera
from rimfall.scene.shot import camera, sight
from rimfall.shots.match import sights
from tests.commands import rimfall
from tests.tables import each_row

SCENE = read(examples.example("same-lob"))
LAYER = """#usda 1.0
(
    upAxis = "Z"
    metersPerUnit = 0.01
    timeCodesPerSecond = 25
    startTimeCode = 101
    endTimeCode = 126
)
def Xform "Rig" {
    double3 xformOp:translate.timeSamples = { 101: (0, 0, 100), 126: (200, 0, 100) }
    uniform token[] xformOpOrder = ["xformOp:translate"]
    def Camera "Shot" {
        float focalLength.timeSamples = { 101: 35, 126: 70 }
        float horizontalAperture = 36
        float verticalAperture = 18
        float3 xformOp:rotateXYZ = (90, 0, 0)
        uniform token[] xformOpOrder = ["xformOp:rotateXYZ"]
    }
}
"""


RISES = (0, "translation", np.array([0, 2], "<f4"), np.array([[0, 1, 0], [0, 3, 0]], "<f4"))


def glb(turn, moves=(RISES,), rig=None, lens=None):
    """A .glb whose camera is moved by its parent, from (0, 1, 0) to (0, 3, 0) in 2 s, and turned by a quaternion, x first. moves: (node,
    path, times, values, and where there is more its way, and more of its array); rig, lens: more of the two nodes."""
    keys, accessors, views, channels, samplers = b"", [], [], [], []
    for node, path, times, values, *rest in moves:
        way, more, strided = [*rest, *[None] * 3][:3]
        for array, kind in ((times, "SCALAR"), (values, {3: "VEC3", 4: "VEC4"}[values.shape[1]])):
            held = array if array is times or not strided else np.pad(array, ((0, 0), (0, 1)), constant_values=99)
            stride = {"byteStride": held.itemsize * held.shape[1]} if held is not array else {}
            component = {"f": 5126, "i": 5122}[array.dtype.kind]
            accessors.append(
                {"bufferView": len(views), "componentType": component, "count": len(array), "type": kind}
                | ((more or {}) if array is values else {})
            )
            views.append({"buffer": 0, "byteOffset": len(keys), "byteLength": held.nbytes} | stride)
            keys += held.tobytes()
        channels.append({"sampler": len(samplers), "target": {"node": node, "path": path}})
        samplers.append({"input": len(views) - 2, "output": len(views) - 1} | ({"interpolation": way} if way else {}))
    document = {
        "asset": {"version": "2.0"},
        "nodes": [
            {"name": "rig", "children": [1]} | (rig or {}),
            {"name": "lens", "camera": 0} | (lens or {"rotation": turn, "translation": [5, 0, 0]}),
        ],
        "cameras": [{"type": "perspective", "perspective": {"yfov": 0.5, "aspectRatio": 2.0, "znear": 0.1}}],
        "animations": [{"channels": channels, "samplers": samplers}],
        "accessors": accessors,
        "bufferViews": views,
        "buffers": [{"byteLength": len(keys)}],
    }
    text = json.dumps(document).encode()
    text += b" " * (-len(text) % 4)
    whole = 12 + 8 + len(text) + 8 + len(keys)
    return (
        struct.pack("<4sII", b"glTF", 2, whole)
        + struct.pack("<I4s", len(text), b"JSON")
        + text
        + struct.pack("<I4s", len(keys), b"BIN\0")
        + keys
    )


def looks(row):
    ahead = np.subtract(row["target_m"], row["position_m"])
    return ahead / np.linalg.norm(ahead)


def test_a_usd_camera_is_read_where_its_parents_put_it_in_metres_with_y_up():
    (own,) = cameras_in(LAYER.encode(), About())["cameras"]
    assert (own["name"], own["aspect"], len(own["rows"])) == ("Shot", pytest.approx(2.0), 2)
    first, last = own["rows"]
    assert (first["time_s"], last["time_s"]) == (0.0, pytest.approx(1.0))
    assert first["position_m"] == pytest.approx([0, 1, 0])  # Z up, centimetres: 100 along Z
    assert last["position_m"] == pytest.approx([2, 1, 0])
    assert looks(first) == pytest.approx(
        [0, 0, -1], abs=1e-12
    )  # turned by 90° about X it looks along the file's +Y, which is -Z here
    assert first["up"] == pytest.approx([0, 1, 0], abs=1e-12)
    assert first["vertical_fov_deg"] == pytest.approx(2 * math.degrees(math.atan(9 / 35)))
    assert last["vertical_fov_deg"] == pytest.approx(2 * math.degrees(math.atan(9 / 70)))
    (later,) = cameras_in(LAYER.encode(), About(first_frame=126, origin="deck", radius_m=56.0))["cameras"]
    assert later["rows"][0]["time_s"] == pytest.approx(-1.0)
    assert later["rows"][0]["position_m"] == pytest.approx([0, -55, 0])
    constant = LAYER.replace("focalLength.timeSamples = { 101: 35, 126: 70 }", "focalLength = 35")
    assert [row["position_m"] for row in cameras_in(constant.encode(), About())["cameras"][0]["rows"]] == [
        pytest.approx([0, 1, 0]),
        pytest.approx([2, 1, 0]),
    ]
    samples = "float3 xformOp:rotateXYZ.timeSamples = { 101: (90, 0, 0), 126: (90, 0, 0) }"
    turned = LAYER.replace("float3 xformOp:rotateXYZ = (90, 0, 0)", samples)
    (track,) = tracks_in(turned.encode(), tracks.About())["tracks"]  # what moves, cameras aside
    assert track["name"] == "Rig"
    last = {"time_s": pytest.approx(1.0), "x_m": pytest.approx(2.0), "y_m": pytest.approx(1.0), "z_m": 0.0}
    assert track["keys"]["rows"][-1] == last
    with pytest.raises(BadInput, match="asks for other files"):
        cameras_in(LAYER.replace("(\n    upAxis", "(\n    subLayers = [@other.usda@]\n    upAxis").encode(), About())


def test_a_gltf_camera_is_read_where_its_parents_put_it():
    half = math.radians(30) / 2
    (own,) = cameras_in(glb([0, math.sin(half), 0, math.cos(half)]), About(name="Mine", view="outside"))["cameras"]
    assert (own["name"], own["view"], own["aspect"]) == ("Mine", "outside", 2.0)
    first, last = own["rows"]
    assert (first["position_m"], last["position_m"], last["time_s"]) == ([5, 1, 0], [5, 3, 0], 2.0)
    assert looks(first) == pytest.approx([-0.5, 0, -math.sqrt(0.75)])  # turned by 30° to its left
    assert first["vertical_fov_deg"] == pytest.approx(math.degrees(0.5))


SPLINE = np.array([[9, 9, 9], [0, 1, 0], [9, 9, 9], [9, 9, 9], [0, 3, 0], [9, 9, 9]], "<f4")  # keys amid their tangents
SLANT = np.array([[0, 0, 0, 1], [0, -0.5, 0, -math.sqrt(0.75)]])  # of 60°, its sign turned


@each_row(
    ("moves", "more", "heights", "ahead"),
    [
        (RISES, {}, [1, 2, 3], None),
        ((*RISES, "STEP"), {}, [1, 1, 3], None),
        ((*RISES[:3], SPLINE, "CUBICSPLINE"), {}, [1, 2, 3], None),
        ((*RISES, None, None, True), {}, [1, 2, 3], None),
        (RISES, {"rig": {"scale": [2, 2, 2]}}, [1, 2, 3], None),
        (RISES, {"lens": {"matrix": [0, 0, -1, 0, 0, 1, 0, 0, 1, 0, 0, 0, 5, 0, 0, 1]}}, [1, 2, 3], [-1, 0, 0]),
        ((1, "rotation", RISES[2], SLANT.astype("<f4")), {}, [0, 0, 0], [-0.5, 0, -math.sqrt(0.75)]),
        ((1, "rotation", RISES[2], np.rint(32767 * SLANT).astype("<i2"), None, {"normalized": True}), {}, [0, 0, 0], [-0.5, 0, -math.sqrt(0.75)]),
    ],
)  # fmt: skip
def test_between_the_keys_of_a_gltf_file_it_goes_as_its_animation_says(moves, more, heights, ahead):
    """ISO/IEC 12113, 3.11 and appendix C: steps, straight lines, the nearer way round; integers of which the greatest is 1."""
    halfway = (1, "scale", np.array([0, 1, 2], "<f4"), np.ones((3, 3), "<f4"))
    (own,) = cameras_in(glb([0, 0, 0, 1], (moves, halfway), **more), About())["cameras"]
    assert [row["position_m"][1] for row in own["rows"]] == pytest.approx(heights)
    assert {row["position_m"][0] for row in own["rows"]} == {10.0 if "rig" in more else 5.0}
    middle = own["rows"][1]
    assert looks(middle) == pytest.approx(ahead or [0, 0, -1], abs=1e-4)
    assert middle["up"] == pytest.approx([0, 1, 0], abs=1e-4)
    (track,) = tracks_in(glb([0, 0, 0, 1], **more), tracks.About())["tracks"]  # the parent, which moves; no camera
    assert (track["name"], [row["y_m"] for row in track["keys"]["rows"]]) == ("rig", [1.0, 3.0])


def test_tables_say_the_same_camera_by_quaternion_aim_and_places():
    half = math.radians(30) / 2
    chart = RoundChart(56.0)
    place, aim = np.array([[4.0, 1.5, 3.0]]), np.array([[0.0, 1.0, -1.0]])
    eye, at, up = sight.placed(chart, place, aim, np.array([10.0]))
    head = "focal_length_mm,film_width_mm,film_height_mm\n"
    by_places = (
        "along_m,height_m,axial_m,aim_along_m,aim_height_m,aim_axial_m,roll_deg,"
        + head
        + "4,1.5,3,0,1,-1,10,50,36,24\n"
    )
    answer = cameras_in(by_places.encode(), About(radius_m=56.0))
    (row,) = answer["cameras"][0]["rows"]
    assert [row["position_m"], row["target_m"]] == [pytest.approx(v[0].tolist()) for v in (eye, at)]
    assert row["up"] == pytest.approx(up[0].tolist())
    assert row["vertical_fov_deg"] == pytest.approx(2 * math.degrees(math.atan(12 / 50)))
    (back,) = answer["match"]
    assert (back["position"]["along_m"], back["look_at"]["axial_m"], back["roll_deg"]) == pytest.approx(
        (4.0, -1.0, 10.0)
    )
    assert back["field_of_view_deg"] == pytest.approx(2 * math.degrees(math.atan(18 / 50)))
    turned = (
        "frame;x_m;y_m;z_m;qw;qx;qy;qz;vertical_fov_deg\n25;5;1,5;0;{};0;{};0;40\n50;6;1,5;0;{};0;{};0;40\n".format(
            *[f"{v:.9f}".replace(".", ",") for v in (math.cos(half), math.sin(half)) * 2]
        )
    )
    own = cameras_in(turned.encode(), About(first_frame=25, fps=25))["cameras"][0]
    assert [row["time_s"] for row in own["rows"]] == [0.0, 1.0]
    assert own["rows"][1]["position_m"] == [6.0, 1.5, 0.0]
    assert looks(own["rows"][0]) == pytest.approx([-0.5, 0, -math.sqrt(0.75)], abs=1e-6)
    aimed = "time_s,x_m,y_m,z_m,aim_x_m,aim_y_m,aim_z_m,vertical_fov_deg\n0,5,1.5,0,4,1.5,-1.7320508,40\n"
    (seen,) = cameras_in(aimed.encode(), About())["cameras"][0]["rows"]
    assert looks(seen) == pytest.approx(looks(own["rows"][0]), abs=1e-6)
    assert seen["up"] == pytest.approx([0, 1, 0])


def test_a_table_may_be_in_centimetres_with_z_up_and_a_camera_banked():
    names = "time_s,x_cm,y_cm,z_cm,aim_x_cm,aim_y_cm,aim_z_cm,roll_deg,horizontal_fov_deg,film_width_mm,film_height_mm"
    (row,) = cameras_in(f"{names}\n0,500,0,150,400,173.20508,150,90,60,36,18\n".encode(), About(up="Z"))["cameras"][0][
        "rows"
    ]
    assert row["position_m"] == [5.0, 1.5, 0.0]
    assert looks(row) == pytest.approx([-0.5, 0, -math.sqrt(0.75)], abs=1e-6)
    assert row["up"] == pytest.approx(
        [math.sqrt(0.75), 0, -0.5], abs=1e-6
    )  # banked by 90°, its up is what was its right
    assert row["vertical_fov_deg"] == pytest.approx(2 * math.degrees(math.atan(math.tan(math.radians(30)) / 2)))
    turned = "x_m,y_m,z_m,qw,qx,qy,qz,vertical_fov_deg\n1,2,3,1,0,0,0,40\n"
    (down,) = cameras_in(turned.encode(), About(up="Z"))["cameras"][0]["rows"]
    assert down["position_m"] == [1.0, 3.0, -2.0]
    assert [*looks(down), *down["up"]] == pytest.approx([0, -1, 0, 0, 0, -1])


def test_a_camera_may_look_straight_down_and_go_round_the_wheel():
    names = "time_s,along_m,height_m,axial_m,aim_along_m,aim_height_m,aim_axial_m,roll_deg,vertical_fov_deg\n"
    answer = cameras_in(
        (names + "0,0,2,1,0,0,1,0,40\n1,170,2,1,170,0,1,30,40\n2,180,2,1,180,0,1,30,40\n").encode(),
        About(radius_m=56.0),
    )
    first = answer["cameras"][0]["rows"][0]
    assert [*looks(first), *first["up"]] == pytest.approx([0, -1, 0, 0, 0, -1])  # to its right is spinward
    back = [(row["position"]["along_m"], row["look_at"]["along_m"], row["roll_deg"]) for row in answer["match"]]
    assert np.array(back) == pytest.approx(np.array([[0, 0, 0], [170, 170, 30], [180, 180, 30]]), abs=1e-9)
    assert cameras_in((names + "0,0,2,1,0,0,1,0,40\n").encode(), About(radius_m=56.0, view="outside"))["match"] is None


KEYS = [np.array([1, 0], "<f4"), RISES[3]]
QUATERNION = "x_m,y_m,z_m,qw,qx,qy,qz,vertical_fov_deg\n1,2,3,0,0,0,0,40\n"
AIMED = "time_s,x_m,y_m,z_m,aim_x_m,aim_y_m,aim_z_m,vertical_fov_deg,film_width_mm,film_height_mm\n"
MANY = "".join(f"{k},1,2,3,0,0,0,40,3,2\n" for k in range(5_001))


@each_row(
    ("content", "about", "says"),
    [
        (AIMED.encode(), {"origin": "deck"}, "needs the habitat's radius"),
        (bytes(60_000_001), {}, "has 60,000,001 bytes; at most 60,000,000"),
        (glb([0, 0, 0, 1], lens={"camera": None}), {}, "no perspective camera"),
        (glb([0, 0, 0, 1]).replace(b"glTF\2", b"glTF\1"), {}, "no glTF 2.0 file"),
        (glb([0, 0, 0, 1], [(0, "translation", *KEYS)]), {}, "keys out of order"),
        (glb([0, 0, 0, 1])[:-4], {}, "an array lies outside the file"),
        (glb([0, 0, 0, 1], lens={"camera": 0, "children": [0]}), {}, "hold one another in a ring"),
        (QUATERNION.encode(), {}, "quaternion of 0, 0, 0, 0"),
        ((AIMED + MANY).encode(), {}, "has 5,001 rows; it must be at most 5,000"),
        ((AIMED + "0,1,2,3,0,0,0,40,30,1\n").encode(), {}, "30 times as wide as high; it must be 0.05 to 20"),
        ((AIMED + "0,1,2,2e6,0,0,0,40,3,2\n").encode(), {}, "is too far away"),
        ((AIMED + "5000,1,2,3,0,0,0,40,3,2\n").encode(), {}, "Row 1 of the camera Camera is at 5000 s"),
    ],
)
def test_a_file_that_holds_no_camera_that_can_be_is_refused_in_words(content, about, says):
    with pytest.raises(Refused) as refused:
        cameras_in(content, About(**about))
    assert says in refused.value.refusals[0].say


@each_row(
    ("table", "says"),
    [
        ("x_m,y_m\n", "no rows"),
        ("time_s,x_m,y_m,z_m\n0,1,2,3\n", "no lens"),
        ("time_s,x_m,y_m,z_m,vertical_fov_deg\n0,1,2,3,40\n", "no column aim_x_m"),
        (
            "time_s,x_m,y_m,z_m,aim_x_m,aim_y_m,aim_z_m,vertical_fov_deg\n0,1,2,3,0,0,0,40\n0,1,2,3,0,0,0,40\n",
            "Line 3 of the table has 0 in column time_s; it must be later",
        ),
        ("time_s,x_m,y_m,z_m,aim_x_m,aim_y_m,aim_z_m,vertical_fov_deg\n0,1,two,3,0,0,0,40\n", "has two in column y_m"),
        (
            "time_s,x_m,y_m,z_m,aim_x_m,aim_y_m,aim_z_m,vertical_fov_deg\n0,1,2,3,1,2,3,40\n",
            "looks at where it stands; it must be a place to look at",
        ),
        ("time_s,x_m,y_m,z_m,aim_x_m,aim_y_m,aim_z_m,vertical_fov_deg\n0,1,2,3,0,0,0,190\n", "field of view of 190°"),
        (
            "along_m,height_m,axial_m,aim_along_m,aim_height_m,aim_axial_m,vertical_fov_deg\n0,1,2,3,1,0,40\n",
            "need the habitat's radius",
        ),
        ("glTFxxxx", "cannot be read"),
        ("#usda 1.0\n(", "no whole OpenUSD file"),
    ],
)
def test_what_is_no_camera_is_refused_in_words(table, says):
    with pytest.raises(Refused) as refused:
        cameras_in(table.encode(), About())
    assert says in refused.value.refusals[0].say


def test_a_lens_by_hand_is_its_angle_and_a_bank_leans_to_the_right():
    row = {"place": {"height_m": 1.5}, "look_at": {"height_m": 1.5, "axial_m": -4.0}, "focal_length_mm": 35.0}
    document = {"scene": json.loads(examples.example("same-lob")), "camera": {"rows": [row]}}
    (level,) = camera.of_request(read_camera(json.dumps(document)))["cameras"][0]["rows"]
    assert level["vertical_fov_deg"] == pytest.approx(2 * math.degrees(math.atan(20.25 / 2 / 35)))
    assert level["up"] == pytest.approx([0, 1, 0])
    document["camera"]["rows"][0] |= {"roll_deg": 90.0}
    (banked,) = camera.of_request(read_camera(json.dumps(document)))["cameras"][0]["rows"]
    assert banked["up"] == pytest.approx([1, 0, 0])  # looking back along the axis, spinward is to the right
    document["camera"]["rows"] = [
        row | {"focal_length_mm": None, "field_of_view_deg": 50.0, "time_s": t} for t in (0.0, 1.0)
    ]
    (wide,) = camera.of_request(read_camera(json.dumps(document)))["cameras"][0][
        "rows"
    ]  # both rows alike: one that stands still
    assert wide["vertical_fov_deg"] == pytest.approx(
        2 * math.degrees(math.atan(math.tan(math.radians(25)) * 20.25 / 36))
    )
    rows = [row, row | {"time_s": 0.0, "place": {"height_m": 2.0}}]
    for more, field in (
        ({"rows": rows}, "rows.1.time_s"),
        ({"rows": [row], "film_back": {"width_mm": 1000.0, "height_mm": 1.0}}, "film_back.width_mm"),
        ({"rows": [row | {"focal_length_mm": 0.1}]}, "rows.0.focal_length_mm"),
    ):
        with pytest.raises(Refused) as refused:
            camera.of_request(read_camera(json.dumps(document | {"camera": more})))
        assert refused.value.refusals[0].field == f"camera.{field}"
    for change, field in (
        ({"focal_length_mm": None}, "field_of_view_deg"),
        ({"field_of_view_deg": 50.0}, "field_of_view_deg"),
        ({"look_at": {"height_m": 1.5}}, "look_at"),
        ({"place": {"height_m": 1.5, "floor": 2}}, "place.floor"),
    ):
        with pytest.raises(Refused) as refused:
            camera.of_request(read_camera(json.dumps(document | {"camera": {"rows": [row | change]}})))
        assert refused.value.refusals[0].field == f"camera.rows.0.{field}"


@pytest.mark.parametrize("view", ["aboard", "outside"])
def test_a_camera_goes_out_with_every_file_and_is_read_back(view):
    rows = [
        {
            "time_s": t,
            "position_m": [5.0 + t, -50.0, 9.0],
            "target_m": [1.0, -54.0, 0.5],
            "up": [0.1, 1.0, 0.0],
            "vertical_fov_deg": 30.0 + 4 * t,
        }
        for t in (0.0, 1.0)
    ]
    own = {"name": "Shot 12", "view": view, "aspect": 2.39, "rows": rows}
    traced = questions.trace(SCENE)
    for name, choices, about in (
        ("glb", {}, {}),
        ("usda", {"up": "Z", "unit": "cm"}, {"first_frame": 1001}),
        ("usdz", {"view": "inertial"}, {"first_frame": 1001}),
    ):
        options = read_options({"cameras": [own], "to_s": 1.0} | choices, SCENE)
        back = cameras_in(FORMATS[name].write(traced, options), About(**about))["cameras"]
        (mine,) = [one for one in back if "shot" in one["name"].lower()]
        assert mine["aspect"] == pytest.approx(2.39, rel=1e-6)
        for row in mine["rows"][:: max(len(mine["rows"]) // 4, 1)]:
            t = row["time_s"]
            ahead, up = np.subtract([1.0, -54.0, 0.5], [5.0 + t, -50.0, 9.0]), np.array([0.1, 1.0, 0.0])
            place = np.array([5.0 + t, -50.0, 9.0])
            turn = (
                3.0
                * math.tau
                / 60
                * t
                * {("aboard", "inertial"): 1, ("outside", "inertial"): 0}.get(
                    (view, choices.get("view")), 0 if view == "aboard" else -1
                )
            )
            c, s = math.cos(turn), math.sin(turn)
            turned = np.array([[c, -s, 0], [s, c, 0], [0, 0, 1]])
            assert row["position_m"] == pytest.approx((turned @ place).tolist(), abs=2e-4)
            assert looks(row) == pytest.approx((turned @ ahead / np.linalg.norm(ahead)).tolist(), abs=1e-5)
            assert abs(np.dot(np.cross(turned @ ahead, turned @ up), row["up"])) < 1e-3
            fov = 30.0 if name == "glb" else 30.0 + 4 * t  # core glTF animates no lens
            assert row["vertical_fov_deg"] == pytest.approx(fov, abs=1e-3)
    assert read_options({"cameras": [own]}, SCENE).cameras[0].rows[1].vertical_fov_deg == 34.0


@each_row(
    ("place", "look_at"),
    [
        (
            {"along_m": -4.0, "height_m": 1.6, "axial_m": 5.0},
            {"along_m": 2.0, "height_m": 1.2, "axial_m": 0.5},
        ),
        ({"along_m": 1.5, "height_m": 9.0}, {"along_m": 1.5, "height_m": 0.5}),  # straight down
    ],
)
def test_a_match_through_the_camera_sees_what_the_camera_sees(place, look_at):
    """A pinhole by hand, from position, target, up and the vertical angle, against the pixels that a match expects of the same camera."""
    row = {"place": place, "look_at": look_at, "roll_deg": 12.0, "field_of_view_deg": 50.0}
    document = {"scene": json.loads(examples.example("same-lob")), "camera": {"rows": [row]}}
    answer = camera.of_request(read_camera(json.dumps(document)))
    (own,), (aboard,) = answer["cameras"][0]["rows"], answer["match"]
    wide, tall = 1920, 1080
    points = RoundChart(56.0).position(np.array([[0.0, 1.0, 0.0], [1.0, 2.0, -1.0], [3.0, 0.5, 1.0]]))
    spots = (np.array([list(aboard[name].values())]) for name in ("position", "look_at"))
    focal = np.array([wide / 2 / math.tan(math.radians(aboard["field_of_view_deg"]) / 2)])
    roll, middle = np.radians([aboard["roll_deg"]]), np.array([wide, tall]) / 2
    seen = sights.CameraPixels(np.zeros(3), np.zeros((3, 2)), np.ones(2), *spots, focal, roll, middle)
    (expected,) = seen.expected(SimpleNamespace(rotating_m=points[None], radius_m=np.array([56.0])))
    eye, ahead, up = np.array(own["position_m"]), looks(own), np.array(own["up"])
    right = np.cross(ahead, up)
    off = points @ np.array([[0, 1, 0], [-1, 0, 0], [0, 0, 1]]).T - eye  # X spinward, Y up, Z along the spin vector
    half = math.tan(math.radians(own["vertical_fov_deg"]) / 2)
    across, over = (off @ right) / (off @ ahead), (off @ up) / (off @ ahead)
    pixels = np.stack([wide / 2 + across / half * tall / 2, tall / 2 - over / half * tall / 2], axis=1)
    assert pixels == pytest.approx(expected, abs=1e-6)
    before_and_behind = np.stack([eye + 2 * ahead, eye - 2 * ahead]) @ np.array([[0, 1, 0], [-1, 0, 0], [0, 0, 1]])
    flown = SimpleNamespace(rotating_m=before_and_behind[None], radius_m=np.array([56.0]))
    assert seen.behind(flown).tolist() == [[False, True]]


def test_the_command_puts_a_camera_of_a_table_into_its_files(tmp_path):
    table, file = tmp_path / "shot.csv", tmp_path / "lob.glb"
    head = "frame,along_m,height_m,axial_m,aim_along_m,aim_height_m,aim_axial_m,vertical_fov_deg\n"
    table.write_text(head + "101,4,1.5,3,0,1,-1,40\n125,5,1.5,3,0,1,-1,40\n", encoding="utf-8")
    given = examples.example("same-lob")
    done = rimfall("trace", "-", "--export", file, "--camera", table, "--to", "1", given=given)
    assert (done.returncode, done.stderr) == (0, "")
    back = {one["name"]: one for one in cameras_in(file.read_bytes(), About())["cameras"]}
    mine = next(one for name, one in back.items() if "shot" in name)
    assert mine["rows"][-1]["time_s"] == pytest.approx(1.0)
    eye, _, _ = sight.placed(RoundChart(56.0), np.array([[5.0, 1.5, 3.0]]), np.array([[0.0, 1.0, -1.0]]), np.zeros(1))
    assert mine["rows"][-1]["position_m"] == pytest.approx(eye[0].tolist(), abs=1e-4)
    assert api.cameras(table, radius_m=56.0)[0]["rows"][1]["time_s"] == 1.0
    missing = rimfall("trace", "-", "--export", file, "--camera", tmp_path / "no.csv", given=given)
    assert (missing.returncode, "Cannot read" in missing.stderr) == (2, True)
