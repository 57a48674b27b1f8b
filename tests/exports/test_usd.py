"""USD files, read back with OpenUSD itself (pxr): its own validation, then numbers, against straight lines written here.

In vacuum a body's inertial path is a straight line; file axes are X spinward, Y up, Z along the spin vector, so that what is
let go at along 0 starts at (0, -(R - h), 0) with the deck's speed along X.
"""

import json
import math
import sys
import zipfile
from fractions import Fraction

import numpy as np
import pytest
from pxr import Gf, Sdf, Usd, UsdGeom, UsdValidation
from scipy.spatial.transform import Rotation

from rimfall.errors import BadInput, TooMuch
from rimfall.exports import scene_sampling, usd
from rimfall.exports.options import read_options
from rimfall.exports.usd.text import shortest
from rimfall.scene import examples
from rimfall.scene.reading import read
from tests.scene.documents import BALL, POINT, drop, forget_traces, pour, scene, throw, trace_of
from tests.tables import each_row

VIEWS = ["rotating", "inertial", "inertial_flat"]
RADIUS_M, OMEGA = 56.0, 3.0 * 2 * math.pi / 60
# name of the rate -> what it means exactly (SMPTE ST 12-1 for the three over 1001)
RATES = {
    23.976: Fraction(24000, 1001),
    24: Fraction(24),
    25: Fraction(25),
    29.97: Fraction(30000, 1001),
    30: Fraction(30),
    48: Fraction(48),
    50: Fraction(50),
    59.94: Fraction(60000, 1001),
    60: Fraction(60),
    12.5: Fraction(25, 2),
}
THROWS = [drop(1.2, POINT), throw(9.0, 30.0, 40.0, POINT), throw(6.0, 180.0, 80.0, POINT)]
AIRLESS = scene(*THROWS, air=None)
ONE_G = {"radius_m": 20.0, "spin_rpm": math.sqrt(9.80665 / 20.0) * 30 / math.pi}
SHOWER = scene(pour(20.0, 2.0, 0.5), air=None, habitat=ONE_G)


def sampled_of(document, **asked):
    made = read(document if isinstance(document, str) else json.dumps(document))
    return scene_sampling.sample_scene(trace_of(made), read_options(asked, made), scenery=True)


@pytest.fixture
def opened(tmp_path):
    """What writes a SampledScene by usd.usda, usd.usdc or usd.usdz and opens it with OpenUSD."""

    def write_and_open(shot, write=usd.usda):
        path = tmp_path / f"{len(list(tmp_path.iterdir()))}.{write.__name__}"
        path.write_bytes(write(shot))
        return Usd.Stage.Open(str(path))

    return write_and_open


def found_wrong(stage):
    validators = UsdValidation.ValidationRegistry().GetOrLoadAllValidators()
    found = UsdValidation.ValidationContext(validators).Validate(stage)
    return [(error.GetIdentifier(), error.GetMessage()) for error in found]


def prims(stage, kind):
    if kind == "Ball":
        meshes = [p for p in stage.Traverse() if p.GetTypeName() == "Mesh"]
        return [p for p in meshes if p.GetParent().GetName() not in ("Hull", "Props")]
    return [p for p in stage.Traverse() if p.GetTypeName() == kind]


def world(prim, code):
    matrix = np.array(UsdGeom.Xformable(prim).ComputeLocalToWorldTransform(Usd.TimeCode(code)))
    return matrix[3, :3]


def codes(stage):
    return np.arange(stage.GetStartTimeCode(), stage.GetEndTimeCode() + 0.5)


def line(motion, radius_m, omega):
    """Where (3,) a motion starts and how fast (3,) it leaves, in the file's axes, at rest: both of the straight line."""
    height = motion["place"]["height_m"]
    speed, heading, rise = (motion.get(k, 0.0) for k in ("speed_m_s", "heading_deg", "elevation_deg"))
    heading, rise = math.radians(heading), math.radians(rise)
    level = speed * math.cos(rise)
    start = np.array([0.0, -(radius_m - height), 0.0])
    carried = omega * (radius_m - height)
    return start, np.array([level * math.cos(heading) + carried, speed * math.sin(rise), level * math.sin(heading)])


def turned(points, angle):
    c, s = np.cos(angle), np.sin(angle)
    return np.stack(
        [c * points[..., 0] - s * points[..., 1], s * points[..., 0] + c * points[..., 1], points[..., 2]], -1
    )


def exact(motion, times, view, radius_m=RADIUS_M, omega=OMEGA):
    """Points (n, 3) of the line carried into the view, and whether (n,) the deck is not met yet."""
    start, velocity = line(motion, radius_m, omega)
    still = start + velocity * np.asarray(times)[..., None]
    flies = np.hypot(still[..., 0], still[..., 1]) < radius_m - 1e-9
    return (turned(still, -omega * np.asarray(times)) if view == "rotating" else still), flies


def within(points):
    """1e-5 m, or two steps of the 32-bit numbers, whichever is larger."""
    return max(1e-5, 2 * float(np.spacing(np.float32(np.max(np.abs(points))))))


@each_row(("number", "name"), enumerate(examples.SAY, 1))
def test_openusd_finds_nothing_wrong(opened, number, name):
    """Each example in one of the views and one of the formats: each pair of these comes with many examples."""
    shot = sampled_of(examples.example(name), view=VIEWS[number % 3])
    assert found_wrong(opened(shot, (usd.usda, usd.usdz)[number % 2])) == []


@pytest.mark.parametrize("name", ["galley", "on-the-bench", "spin-up", "ring"])
def test_text_and_binary_hold_the_same(opened, name):
    shot = sampled_of(examples.example(name), view="inertial", samples_per_frame=2, up="Z", fps=29.97)
    text, binary, packed = (opened(shot, write) for write in (usd.usda, usd.usdc, usd.usdz))
    assert found_wrong(binary) == []
    written = [stage.GetRootLayer().ExportToString() for stage in (text, binary, packed)]
    assert written[0] == written[1] == written[2]


@pytest.mark.parametrize("fps", RATES)
def test_places_are_the_straight_line_at_every_frame_rate(opened, fps):
    stage = opened(sampled_of(AIRLESS, fps=fps, view="inertial"))
    assert abs(stage.GetTimeCodesPerSecond() - float(RATES[fps])) < 1e-9
    assert stage.GetFramesPerSecond() == stage.GetTimeCodesPerSecond()
    check_lines(stage, RATES[fps], "inertial")


@pytest.mark.parametrize("view", VIEWS)
def test_places_are_the_straight_line_in_every_view_axes_and_unit(opened, view):
    for up, unit in (("Y", "m"), ("Z", "m"), ("Y", "cm"), ("Z", "cm")):
        stage = opened(sampled_of(AIRLESS, view=view, up=up, unit=unit))
        assert UsdGeom.GetStageUpAxis(stage) == up
        assert UsdGeom.GetStageMetersPerUnit(stage) == (0.01 if unit == "cm" else 1.0)
        to_file = np.eye(3) if up == "Y" else np.array([[1.0, 0.0, 0.0], [0.0, 0.0, -1.0], [0.0, 1.0, 0.0]])
        check_lines(stage, Fraction(24), view, to_file * (100.0 if unit == "cm" else 1.0))


def check_lines(stage, fps, view, to_file=None):
    """Every ball, at every frame up to its landing."""
    balls = prims(stage, "Ball")
    assert len(balls) == len(THROWS)
    for ball, motion in zip(balls, THROWS, strict=True):
        times = np.array([float(k / fps) for k in range(len(codes(stage)))])
        places, flies = exact(motion, times, view)
        assert flies[1]
        assert not flies[-1]
        wanted = places @ (np.eye(3) if to_file is None else to_file).T
        found = np.array([world(ball, code) for code in codes(stage)])
        assert found[flies] == pytest.approx(wanted[flies], abs=within(wanted))


@pytest.mark.parametrize("samples", [1, 2, 4, 8])
def test_between_keys_a_ball_errs_as_a_chord_does(opened, samples):
    """The chord of a path bent by a errs by a dt^2 / 8 in its middle."""
    stage = opened(sampled_of(AIRLESS, view="inertial", samples_per_frame=samples))
    step_s = 1 / (24 * samples)
    for ball, motion in zip(prims(stage, "Ball"), THROWS, strict=True):
        middle = 1001 + 3 + 0.5 / samples
        place, _ = exact(motion, (middle - 1001) / 24, "inertial")
        _, velocity = line(motion, RADIUS_M, OMEGA)
        seen = velocity - np.array([OMEGA * (RADIUS_M - motion["place"]["height_m"]), 0.0, 0.0])
        bend = OMEGA**2 * RADIUS_M + 2 * OMEGA * np.linalg.norm(seen) + 2 * OMEGA**2 * 3
        off = np.linalg.norm(world(ball, middle) - place)
        assert 0.05 * bend * step_s**2 / 8 < off < bend * step_s**2 / 8 + 1e-9


def shower_line(times):
    """The line of what is poured level from 1.1 m: the lip's mean speed is flow over area. Points and whether it flies."""
    lip = {"place": {"height_m": 1.1}, "speed_m_s": 20e-6 / (math.pi / 4 * 0.002**2)}
    omega = ONE_G["spin_rpm"] * math.pi / 30
    start, velocity = line(lip, 20.0, omega)
    still = start + velocity * times[..., None]
    return still, velocity, np.hypot(still[..., 0], still[..., 1]) < 20.0 - 0.001, omega


@pytest.mark.parametrize(("fps", "shown"), [(24, 24), (48, 24), (24, 60)])
@pytest.mark.parametrize("unit", ["m", "cm"])
def test_between_frames_drops_stay_on_their_line_in_slow_motion_too(opened, fps, shown, unit):
    """Position from velocity and acceleration half a frame on, in 1 g: below 0.1 mm."""
    shot = sampled_of(SHOWER, fps=fps, shown_fps=shown, unit=unit)
    stage = opened(shot, usd.usdc)
    (cloud,) = prims(stage, "Points")
    assert stage.GetTimeCodesPerSecond() == shown
    late = shot.notes["ids"]
    late = np.array([one["born_s"] for one in late]) - late[0]["born_s"]
    compared = 0
    for code in codes(stage)[:-1]:
        widths = np.array(UsdGeom.Points(cloud).GetWidthsAttr().Get(code))
        found = np.array(UsdGeom.PointBased(cloud).ComputePointsAtTime(code + 0.5, code + 0.5))
        times = (code + 0.5 - 1001) / fps - late
        still, _, flies, omega = shower_line(times)
        there = flies & (widths > 0)
        # Drops that leave a moving lip later start where it is by then: in the turning frame all follow the first.
        wanted = turned(still, -omega * times) * (100.0 if unit == "cm" else 1.0)
        off = np.linalg.norm(found - wanted, axis=1)[there] / (100.0 if unit == "cm" else 1.0)
        compared += len(off)
        assert np.all(off < 1e-4)
    assert compared > 500


def test_a_flat_file_moves_drops_straight_and_evenly(opened):
    shot = sampled_of(SHOWER, view="inertial_flat")
    stage = opened(shot)
    (cloud,) = prims(stage, "Points")
    assert str(cloud.GetPath()) == "/World/Droplets"
    late = np.array([one["born_s"] for one in shot.notes["ids"]])
    late -= late[0]
    code = float(codes(stage)[len(codes(stage)) // 2])
    there = np.array(cloud.GetAttribute("widths").Get(code)) > 0
    times = (code - 1001) / 24
    still, velocity, flies, omega = shower_line(times - late)
    there &= flies
    assert np.sum(there) > 100
    points, velocities, bends = (
        np.array(cloud.GetAttribute(n).Get(code)) for n in ("points", "velocities", "accelerations")
    )
    assert points[there] == pytest.approx(turned(still, omega * late)[there], abs=within(still))
    assert velocities[there] == pytest.approx(
        turned(np.broadcast_to(velocity, still.shape), omega * late)[there], abs=1e-5
    )
    assert np.max(np.abs(bends[there])) < 1e-6


@pytest.mark.parametrize("view", VIEWS)
def test_what_no_validator_sees(opened, view):
    shot = sampled_of(examples.example("galley"), view=view, first_frame=101, samples_per_frame=2)
    stage = opened(shot)
    file = shot.notes["file"]
    assert (stage.GetStartTimeCode(), stage.GetEndTimeCode()) == (file["start_frame"], file["end_frame"])
    assert file["start_frame"] == 101
    assert file["end_frame"] == 100 + file["frame_count"]
    (cloud,) = prims(stage, "Points")
    sampled = [
        cloud.GetAttribute(n).GetTimeSamples() for n in ("points", "velocities", "accelerations", "widths", "extent")
    ]
    assert sampled[0] == [101 + k / 2 for k in range(2 * file["frame_count"] - 1)]
    assert all(times == sampled[0] for times in sampled)
    ids = np.array(cloud.GetAttribute("ids").Get())
    balls = len(prims(stage, "Ball"))
    assert len(ids) + balls == shot.notes["counts"]["bodies"] + shot.notes["counts"]["drops"]
    assert sorted(n["id"] for n in shot.notes["ids"]) == list(range(len(ids) + balls))
    assert np.array(cloud.GetAttribute("primvars:id").Get()).tolist() == ids.tolist()
    for prim in [cloud, *prims(stage, "BasisCurves"), *prims(stage, "Mesh")]:
        check_numbers(prim, ids if prim == cloud else None)


def check_numbers(prim, ids):
    """Finite at every sample, as many as there should be, and inside the extent."""
    boundable = UsdGeom.Boundable(prim)
    for code in prim.GetAttribute("points").GetTimeSamples() or [Usd.TimeCode.Default()]:
        points = np.array(prim.GetAttribute("points").Get(code))
        low, high = np.array(boundable.GetExtentAttr().Get(code))
        assert np.all(np.isfinite(points))
        assert np.all(points >= low)
        assert np.all(points <= high)
        if ids is not None:
            others = [np.array(prim.GetAttribute(n).Get(code)) for n in ("velocities", "accelerations", "widths")]
            assert [len(v) for v in (points, *others)] == [len(ids)] * 4
            assert all(np.all(np.isfinite(v)) for v in others)


def test_a_stream_grows_tapers_and_leaves_with_as_many_points_all_along(opened):
    stage = opened(sampled_of(SHOWER))
    (stream,) = [p for p in prims(stage, "BasisCurves") if p.GetParent().GetName() == "Streams"]
    (count,) = stream.GetAttribute("curveVertexCounts").Get()
    widths = [np.array(stream.GetAttribute("widths").Get(code)) for code in codes(stage)]
    points = [np.array(stream.GetAttribute("points").Get(code)) for code in codes(stage)]
    lengths = [np.sum(np.linalg.norm(np.diff(p, axis=0), axis=1)) for p in points]
    assert {len(v) for v in (*points, *widths)} == {count}
    assert lengths[0] < 1e-6
    assert np.all(widths[0] == 0)
    assert np.all(widths[-1] == 0)
    assert lengths[1] == pytest.approx(lengths[3] / 3, rel=0.05)
    full = widths[4]
    assert full[0] == pytest.approx(0.002, rel=1e-6)
    assert UsdGeom.BasisCurves(stream).GetWidthsInterpolation() == "vertex"


def test_a_body_is_seen_from_its_release_and_a_drop_between_birth_and_landing(opened):
    late = scene(drop(1.2, POINT, start_s=0.3), drop(2.0, BALL), air=None)
    shot = sampled_of(late)
    stage = opened(shot)
    for ball, seen in zip(prims(stage, "Ball"), ([True] * 4, [False] * 2), strict=True):
        shown = [UsdGeom.Imageable(ball).ComputeVisibility(float(code)) == "inherited" for code in codes(stage)]
        first = 0 if seen[0] else 8
        assert shown == [k >= first for k in range(len(shown))]
    radii = [UsdGeom.Mesh(ball).GetExtentAttr().Get()[1][0] for ball in prims(stage, "Ball")]
    assert radii == pytest.approx([0.09, 0.01])


def test_the_scene_comes_back_from_the_file(opened):
    for write in (usd.usda, usd.usdc, usd.usdz):
        title = 'A "quoted" \\ title\twith é and 水'
        document = AIRLESS | {"title": title}
        shot = sampled_of(document, fps=29.97)
        stage = opened(shot, write)
        custom = stage.GetRootLayer().customLayerData
        notes = json.loads(custom["rimfall"])
        assert read(json.dumps(notes["scene"])) == read(json.dumps(document))
        assert notes == json.loads(json.dumps(shot.notes))
        assert notes["title"] == title
        assert list(custom["fps"]) == [30000, 1001]
        assert custom["first_frame"] == 1001
        assert custom["view"] == "rotating"


def test_in_a_wheel_of_4_km_an_anchor_keeps_the_digits(opened):
    habitat = {"radius_m": 4000.0, "spin_rpm": 0.47}
    omega = 0.47 * math.pi / 30
    start = drop(1.2, POINT)
    for view in VIEWS:
        stage = opened(sampled_of(scene(start, pour(20.0, 2.0, 0.2), air=None, habitat=habitat), view=view))
        (ball,), (cloud,) = prims(stage, "Ball"), prims(stage, "Points")
        assert cloud.GetParent().GetName() == ball.GetParent().GetName() == "Anchor"
        low, high = np.array(cloud.GetAttribute("extent").Get(codes(stage)[-1]))
        assert np.max(np.abs([low, high])) < 1000.0
        place, flies = exact(start, (codes(stage) - 1001) / 24, view, 4000.0, omega)
        found = np.array([world(ball, code) for code in codes(stage)])
        assert found[flies] == pytest.approx(place[flies], abs=1e-5)
        matrix = np.array(UsdGeom.Xformable(cloud).ComputeLocalToWorldTransform(Usd.TimeCode(1001.0)))
        first = np.array(cloud.GetAttribute("points").Get(1001.0))[0] @ matrix[:3, :3] + matrix[3, :3]
        lip = {"place": {"height_m": 1.1}, "speed_m_s": 20e-6 / (math.pi / 4 * 0.002**2)}
        born_s = json.loads(stage.GetRootLayer().customLayerData["rimfall"])["ids"][1]["born_s"]
        wanted, _ = exact(lip, born_s, "rotating", 4000.0, omega)
        assert first == pytest.approx(wanted, abs=1e-5)


@pytest.mark.parametrize("rpm", [30.0, 3000.0])
def test_a_spinning_ball_turns_as_fast_as_it_was_spun(opened, rpm):
    """Against its own spin and the deck's, about parallel axes: between samples too, which are a quarter turn apart at most."""
    document = scene(throw(6.0, 90.0, 60.0, BALL, ball_spin_rpm=rpm, ball_spin_axis=[0.0, 0.0, 1.0]), air=None)
    stage = opened(sampled_of(document, view="inertial_flat"))
    (ball,) = prims(stage, "Ball")
    orient = ball.GetAttribute("xformOp:orient")
    kept = np.array([[q.GetReal(), *q.GetImaginary()] for q in map(orient.Get, orient.GetTimeSamples())])
    assert np.min(np.sum(kept[1:] * kept[:-1], axis=1)) > math.cos(math.pi / 4) - 1e-6
    rate = rpm * math.pi / 30 + OMEGA
    for code in (1001.3, 1005.0, 1010.5, 1017.77):
        turn = UsdGeom.Xformable(ball).ComputeLocalToWorldTransform(Usd.TimeCode(code)).ExtractRotationMatrix()
        angle = rate * (code - 1001) / 24
        assert np.array(turn)[0] == pytest.approx([math.cos(angle), math.sin(angle), 0.0], abs=2e-3)


def test_orientations_are_never_sent_the_long_way_round():
    """scipy's rotations about one axis, each with either of its two signs."""
    turns = Rotation.from_rotvec(np.linspace(0.0, 20.0, 60)[:, None] * [0.0, 0.6, 0.8]).as_quat(scalar_first=True)
    mixed = turns * np.random.default_rng(4).choice([-1.0, 1.0], 60)[:, None]
    made = usd.orientation.continuous(mixed)
    assert np.all(np.sum(made[1:] * made[:-1], axis=1) > 0.9)
    assert np.abs(np.sum(made * turns, axis=1)) == pytest.approx(np.ones(60))


def test_a_ball_spun_beyond_what_a_file_may_hold_is_refused(monkeypatch):
    monkeypatch.setattr(usd.orientation, "GREATEST_TURNS", 100)
    document = scene(throw(6.0, 90.0, 60.0, BALL, ball_spin_rpm=1e4, ball_spin_axis=[0.0, 0.0, 1.0]), air=None)
    with pytest.raises(TooMuch, match="may hold 100"):
        usd.usda(sampled_of(document))


def test_the_habitat_turns_past_360_under_the_inertial_view_alone(opened):
    document = scene(drop(1.2, POINT), air=None, habitat={"spin_rpm": 60.0}, sampling={"duration_s": 3.0})
    asked = {"to_s": 3.0}
    for view, turn in zip(VIEWS, (None, 1080.0, 1080.0), strict=True):
        stage = opened(sampled_of(document, view=view, **asked))
        op = stage.GetPrimAtPath("/World/Habitat").GetAttribute("xformOp:rotateZ")
        assert (op.Get(1001 + 72) if op else None) == (turn and pytest.approx(turn))
        assert len(prims(stage, "Mesh")) > 0
    stage = opened(sampled_of(document, view="inertial", up="Z", **asked))
    assert stage.GetPrimAtPath("/World/Habitat").GetAttribute("xformOp:rotateY").Get(1001 + 72) == pytest.approx(
        -1080.0
    )


def test_about_an_origin_on_the_deck_the_habitat_turns_round_its_axis(opened):
    stage = opened(sampled_of(AIRLESS, view="inertial", origin="release"))
    ball = prims(stage, "Ball")[0]
    place, flies = exact(THROWS[0], (codes(stage) - 1001) / 24, "inertial")
    found = np.array([world(ball, code) for code in codes(stage)])
    assert found[flies] == pytest.approx(place[flies] + [0.0, RADIUS_M, 0.0], abs=1e-5)


def test_cameras_see_the_body_they_are_for(opened):
    for view in VIEWS:
        stage = opened(sampled_of(AIRLESS, view=view))
        cameras = {p.GetName().removeprefix("camera_"): p for p in prims(stage, "Camera")}
        assert len(cameras) == 6
        assert cameras["whole_wheel"].GetParent().GetName() == "World"
        ball = prims(stage, "Ball")[0]
        for name in ("over_the_shoulder", "beside", "hub", "down_the_axis", "with_the_ball"):
            assert cameras[name].GetParent().GetName() == "Habitat"
            for code in codes(stage)[:12]:
                frustum = UsdGeom.Camera(cameras[name]).GetCamera(Usd.TimeCode(code)).frustum
                assert frustum.Intersects(Gf.Vec3d(*world(ball, code)))


def test_the_package_is_stored_in_steps_of_64_bytes(tmp_path):
    path = tmp_path / "a.usdz"
    path.write_bytes(usd.usdz(sampled_of(AIRLESS)))
    with zipfile.ZipFile(path) as package:
        (member,) = package.infolist()
        assert member.filename.endswith(".usda")
        assert member.date_time == (1980, 1, 1, 0, 0, 0)
        assert member.compress_type == zipfile.ZIP_STORED
    header = path.read_bytes()[:30]
    assert (30 + int.from_bytes(header[26:28], "little") + int.from_bytes(header[28:30], "little")) % 64 == 0


def test_the_same_again_is_the_same_bytes():
    once = sampled_of(SHOWER, view="inertial")
    forget_traces()
    again = sampled_of(SHOWER, view="inertial")
    for write in (usd.usda, usd.usdc, usd.usdz):
        assert write(again) == write(once)


def test_without_openusd_its_binary_format_is_refused_and_text_is_not(monkeypatch):
    shot = sampled_of(AIRLESS)
    monkeypatch.setitem(sys.modules, "pxr", None)
    assert usd.usda(shot).startswith(b"#usda 1.0")
    with pytest.raises(BadInput, match=r"install rimfall\[usd\], or take usda"):
        usd.usdc(shot)


def test_names_are_identifiers_each_once(opened):
    names = ["Droplets", "Habitat", "1st", "a b", "a-b", "水"]
    stage = opened(sampled_of(scene(*(drop(1.2, POINT, name=n) for n in names), air=None)))
    balls = prims(stage, "Ball")
    assert len({p.GetName() for p in balls}) == len(names)
    assert all(Sdf.Path.IsValidIdentifier(p.GetName()) for p in balls)
    assert sorted(p.GetDisplayName() for p in balls) == sorted(names)


def test_decimals_are_the_shortest_of_their_32_bit_number():
    """numpy's own printing of float32 is the shortest that reads back."""
    rng = np.random.default_rng(4)
    numbers = np.concatenate([rng.normal(size=4000) * 10.0 ** rng.integers(-7, 6, 4000), [0.0, 1.0, -0.1, 999999.94]])
    numbers = numbers.astype(np.float32)
    assert shortest(numbers).tolist() == [float(str(v)) for v in numbers]


@pytest.mark.parametrize("document", [scene(air=None), AIRLESS, SHOWER, examples.example("on-the-bench")])
def test_a_file_of_one_frame_or_of_no_motion_is_whole_too(opened, document):
    for view in VIEWS:
        stage = opened(sampled_of(document, view=view, to_s=0.0))
        assert found_wrong(stage) == []
        assert stage.GetStartTimeCode() == stage.GetEndTimeCode() == 1001
