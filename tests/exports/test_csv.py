"""The table: frames at k/fps, rows by frame and id, places on the straight inertial line carried into the view.

Readers are the standard library's csv, json and zipfile; the straight line is written out here, by complex numbers.
"""

import csv
import io
import json
import math
import zipfile
from fractions import Fraction

import numpy as np
import pytest

from rimfall.errors import TooMuch
from rimfall.exports.formats import FORMATS
from rimfall.exports.options import read_options
from rimfall.scene import examples
from rimfall.scene.reading import read
from tests.scene.documents import BALL, POINT, drop, forget_traces, pour, scene, throw, trace_of
from tests.tables import each_row

HEADER = ["frame", "time_s", "id", "alive", "x_m", "y_m", "z_m", "vx_m_s", "vy_m_s", "vz_m_s"]
RADIUS_M, OMEGA = 56.0, 3.0 * 2 * math.pi / 60
RATES = [23.976, 24, 25, 29.97, 30, 48, 50, 59.94, 60, 12.5]
WITHIN_M = 1e-5
LONG_POUR = scene(pour(30.0, 8.0, 15.0, name="tea"))
UNBROKEN = scene(pour(100.0, 12.0, 1.0))


def written(document, **choices):
    found = read(json.dumps(document))
    trace, options = trace_of(found), read_options(choices, found)
    table, notes = (FORMATS[name].write(trace, options) for name in ("csv", "notes"))
    rows = list(csv.reader(io.StringIO(table.decode("utf-8"), newline="")))
    return rows, json.loads(notes), table


def of_body(rows, number):
    return np.array([[float(v) for v in row] for row in rows[1:] if int(row[2]) == number])


@each_row("fps", RATES)
def test_places_and_velocities_are_the_straight_line_at_every_frame_rate(fps):
    motions = [drop(1.2, POINT), throw(9.0, 30.0, 40.0, POINT, start_s=0.3), throw(6.0, 180.0, 80.0, POINT)]
    rows, notes, _ = written(scene(*motions, air=None, sampling={"fps": fps}), rows="all")
    rate = Fraction(*notes["file"]["fps"])
    assert abs(float(rate) - fps) < 1e-3
    assert rows[0] == HEADER
    assert len(rows) - 1 == notes["file"]["frame_count"] * 3
    ends = {}
    for motion in motions:
        number = next(b["id"] for b in notes["ids"] if b["motion"] == f"{motion['kind']} {1 + motions.index(motion)}")
        found = of_body(rows, number)
        times = np.array([float(k / rate) for k in range(len(found))])
        assert found[:, 0].tolist() == list(range(1001, 1001 + len(found)))
        assert found[:, 1] == pytest.approx(times, abs=5e-7)
        place, velocity, ends[number] = exact(motion, times)
        assert found[:, 4:7] == pytest.approx(place, abs=WITHIN_M)
        assert found[:, 7:] == pytest.approx(velocity, abs=WITHIN_M)
        assert found[:, 3].tolist() == [float(t >= motion.get("start_s", 0.0)) for t in times]
    last = float((len(found) - 1) / rate)
    assert last - float(1 / rate) < max(ends.values()) <= last


def exact(motion, times):
    """Places and velocities in file axes of a body in vacuum: a straight line, seen from the frame that turns; and its end."""
    start_s = motion.get("start_s", 0.0)
    speed, heading, up = (motion.get(k, 0.0) for k in ("speed_m_s", "heading_deg", "elevation_deg"))
    level = speed * math.cos(math.radians(up))
    rho = RADIUS_M - motion["place"]["height_m"]
    turn = np.exp(1j * OMEGA * start_s)
    along = turn * (-speed * math.sin(math.radians(up)) + 1j * (level * math.cos(math.radians(heading)) + OMEGA * rho))
    axial = level * math.sin(math.radians(heading))
    start = turn * rho
    a, b, c = abs(along) ** 2, (start.conjugate() * along).real, rho**2 - RADIUS_M**2
    end_s = start_s + (-b + math.sqrt(b * b - a * c)) / a
    t = np.clip(times, start_s, end_s)
    back = np.exp(-1j * OMEGA * t)
    seen = (start + along * (t - start_s)) * back
    moving = np.where((times >= start_s) & (times <= end_s), along * back - 1j * OMEGA * seen, 0)
    z = axial * (t - start_s)
    vz = np.where((times >= start_s) & (times <= end_s), axial, 0.0)
    return np.stack([seen.imag, -seen.real, z], 1), np.stack([moving.imag, -moving.real, vz], 1), end_s


def test_rows_are_by_frame_then_id_and_ids_by_birth():
    rows, notes, _ = written(
        scene(throw(start_s=0.5, name="late"), drop(name="early"), pour(duration_s=0.2, name="tea")), rows="all"
    )
    assert [(int(r[0]), int(r[2])) for r in rows[1:]] == sorted((int(r[0]), int(r[2])) for r in rows[1:])
    assert [b["id"] for b in notes["ids"]] == list(range(len(notes["ids"])))
    born = [b["born_s"] for b in notes["ids"]]
    assert born == sorted(born)
    assert notes["ids"][0]["name"] == "early"
    assert len(rows) - 1 == notes["file"]["frame_count"] * len(notes["ids"])


def test_it_is_plain_text_of_numbers():
    _, _, table = written(scene(drop(), pour(duration_s=0.3)))
    assert table.isascii()
    assert not table.startswith(b"\xef\xbb\xbf")
    assert b"\r" not in table
    assert b'"' not in table
    assert b"nan" not in table.lower()
    assert b"-0.000000" not in table
    assert table.endswith(b"\n")
    for line in table.split(b"\n")[1:-1]:
        frame, time_s, number, alive, *figures = line.split(b",")
        assert frame.isdigit()
        assert number.isdigit()
        assert alive in (b"0", b"1")
        assert all(len(v.split(b".")[1]) == 6 for v in (time_s, *figures))


def test_drops_of_a_pour_live_one_after_the_other():
    rows, notes, _ = written(scene(pour(duration_s=0.5, name="tea"), sampling={"fps": 240}), rows="all")
    assert len(notes["ids"]) > 50
    lived = []
    for body in notes["ids"]:
        found = of_body(rows, body["id"])
        alive = found[found[:, 3] == 1]
        assert found[0, 4:7] == pytest.approx(found[found[:, 1] < body["born_s"]][-1, 4:7], abs=1e-9), (
            "it waits where it is born"
        )
        assert alive[0, 1] >= body["born_s"] - 1e-6
        lived.append(alive[-1, 1] - alive[0, 1])
        assert found[-1, 3] == 0
        assert found[-1, 4:7] == pytest.approx(of_body(rows, 0)[-1, 4:7], abs=1e-5), "all land at the same place"
    assert max(lived) - min(lived) <= 2 / 240


def test_the_notes_carry_the_scene_and_what_the_numbers_mean():
    document = scene(throw(name="serve"), title="Läuft 🚀", sampling={"fps": 29.97})
    _, notes, table = written(document)
    file = notes["file"]
    assert file["fps"] == [30000, 1001]
    assert (file["first_frame"], file["unit"], file["up"], file["view"]) == (1001, "m", "Y", "rotating")
    assert read(json.dumps(notes["scene"])) == read(json.dumps(document))
    assert written(notes["scene"])[2] == table
    assert "caution" in notes


@each_row("up", ["Y", "Z"])
@each_row("view", ["rotating", "inertial", "inertial_flat"])
def test_every_view_up_axis_and_unit_is_the_same_straight_line(view, up):
    motion = throw(9.0, 30.0, 40.0, POINT, start_s=0.3)
    rows, notes, _ = written(scene(motion, air=None), view=view, up=up, unit="cm", samples_per_frame=4, rows="all")
    assert rows[0] == [*HEADER[:4], "x_cm", "y_cm", "z_cm", "vx_cm_s", "vy_cm_s", "vz_cm_s"]
    found = of_body(rows, 0)
    times = np.array([float(Fraction(k, 96)) for k in range(len(found))])
    assert [row[0] for row in rows[1:6]] == ["1001.000", "1001.250", "1001.500", "1001.750", "1002.000"]
    place, velocity, _ = exact(motion, times)
    if view != "rotating":
        place, velocity = outside(place, velocity, times)
    if up == "Z":
        place, velocity = (np.stack([v[:, 0], -v[:, 2], v[:, 1]], axis=1) for v in (place, velocity))
    assert found[:, 4:7] / 100 == pytest.approx(place, abs=WITHIN_M)
    assert found[:, 7:] / 100 == pytest.approx(velocity, abs=WITHIN_M)
    assert (notes["file"]["unit"], notes["file"]["up"], notes["file"]["view"]) == ("cm", up, view)


def outside(place, velocity, times):
    """Places and velocities in file axes of the view that turns, seen from the one that does not: turned about Z."""
    turn = np.exp(1j * OMEGA * times)
    at, moving = ((v[:, 0] + 1j * v[:, 1]) for v in (place, velocity))
    moving = (moving + 1j * OMEGA * at) * turn
    at = at * turn
    return np.stack([at.real, at.imag, place[:, 2]], 1), np.stack([moving.real, moving.imag, velocity[:, 2]], 1)


def test_a_file_a_frame_is_the_table_cut_at_its_frames():
    found = read(json.dumps(scene(throw(), drop(), title="Läuft, twice")))
    trace, options = trace_of(found), read_options({"samples_per_frame": 2, "first_frame": 9}, found)
    whole = FORMATS["csv"].write(trace, options).decode().splitlines(keepends=True)
    with zipfile.ZipFile(io.BytesIO(FORMATS["csv-frames"].write(trace, options))) as packed:
        notes, *names = packed.namelist()
        assert json.loads(packed.read(notes))["scene"] == found.model_dump(mode="json")
        parts = [packed.read(name).decode().splitlines(keepends=True) for name in names]
        assert {info.date_time for info in packed.infolist()} == {(1980, 1, 1, 0, 0, 0)}
    assert names[:2] == ["l-uft-twice.0009.csv", "l-uft-twice.0010.csv"]
    assert all(part[0] == whole[0] for part in parts)
    assert [line for part in parts for line in part[1:]] == whole[1:]
    assert all(int(line.split(".")[0]) == 9 + k for k, part in enumerate(parts) for line in part[1:])


def test_a_cut_keeps_the_frames_their_numbers():
    whole = written(scene(throw(), air=None))[0]
    part, notes, _ = written(scene(throw(), air=None), from_s=0.25, to_s=0.5)
    assert part[1:] == [row for row in whole if row[0] in {str(n) for n in range(1007, 1014)}]
    assert (notes["file"]["start_frame"], notes["file"]["end_frame"], notes["file"]["frame_count"]) == (1007, 1013, 7)


def test_only_the_motions_asked_for():
    _, notes, _ = written(scene(throw(name="serve"), drop(name="cup")), motions=["cup"])
    assert [b["name"] for b in notes["ids"]] == ["cup"]


def test_the_same_twice_is_the_same_bytes():
    document = scene(throw(), pour())
    once = written(document)[1:]
    forget_traces()
    assert written(document)[1:] == once


def test_a_table_without_rows_says_why():
    for document, choices, why in (
        (scene(), {}, "nothing that was taken moves"),
        (scene(pour(30, 8, 1.0)), {"motions": []}, "nothing that was taken moves"),
        (UNBROKEN, {}, "unbroken stream"),
        (
            scene(drop(), throw(start_s=2.0, name="serve")),
            {"motions": ["serve"], "to_s": 1.0},
            "between its first and its last frame",
        ),
    ):
        rows, notes, _ = written(document, **choices)
        assert rows == [HEADER]
        assert why in notes["empty"]
    assert written(scene(drop()))[1]["empty"] is None


def test_rows_are_there_only_while_the_body_is():
    """The same rows as those of every frame, without those where `alive` is 0; the others are counted before."""
    document = scene(throw(start_s=0.5), pour(duration_s=0.6, name="tea"), pour(20, 2, 0.6, start_s=0.1, name="milk"))
    for choices in (
        {},
        {"view": "inertial", "samples_per_frame": 2},
        {"unit": "cm", "up": "Z", "from_s": 0.2, "to_s": 0.7},
    ):
        alive, notes, _ = written(document, **choices)
        whole, every, _ = written(document, **choices, rows="all")
        assert alive == [header_of(choices), *(row for row in whole[1:] if row[3] == "1")]
        assert 0 < len(alive) - 1 == notes["counts"]["csv_rows"] < len(whole) - 1 == every["counts"]["csv_rows"]


def header_of(choices):
    return HEADER if choices.get("unit") != "cm" else [name.replace("_m", "_cm") for name in HEADER]


def test_a_long_pour_is_as_long_as_what_flies():
    """Some 3,000 drops over 350 frames are a million rows of every body at every frame: refused; of those in the air a few thousand."""
    rows, notes, _ = written(LONG_POUR)
    drops, frames = notes["counts"]["drops"], notes["counts"]["samples"]
    assert drops * frames > 1_000_000
    assert 2_000 < len(rows) < 100_000
    assert notes["refused"] == {}
    for body in (notes["ids"][0], notes["ids"][drops // 2], notes["ids"][-1]):
        found = of_body(rows, body["id"])
        assert np.all((found[:, 1] >= body["born_s"] - 1e-6) & (found[:, 1] <= body["ends_s"] + 1e-6))
        assert len(found) in {math.floor((body["ends_s"] - body["born_s"]) * 24) + k for k in (0, 1)}
    with pytest.raises(TooMuch):
        written(LONG_POUR, rows="all")


def test_the_notes_tell_before_which_files_would_be_refused():
    _, notes = notes_of(LONG_POUR, rows="all")
    assert set(notes["refused"]) == {"csv", "csv-frames"}
    assert "500,000" in notes["refused"]["csv"]
    trace, notes = notes_of(LONG_POUR, samples_per_frame=8)
    assert set(notes["refused"]) == {"json", "glb", "usda", "usdc", "usdz"}
    for name in ("glb", "json"):
        with pytest.raises(TooMuch) as caught:
            FORMATS[name].write(trace, read_options({"samples_per_frame": 8}, trace.scene))
        assert "2,000,000" in caught.value.refusals[0].say


def notes_of(document, **choices):
    trace = trace_of(read(json.dumps(document)))
    return trace, json.loads(FORMATS["notes"].write(trace, read_options(choices, trace.scene)))


def test_before_time_0_a_ball_rests_in_the_hand():
    """Pre-roll: where it will be let go, without motion aboard; outside it is carried round. Frames count down past 0."""
    document = scene(throw(9.0, 30.0, 40.0, POINT), throw(start_s=0.4, name="late"), air=None)
    rows, notes, _ = written(document, from_s=-0.5, first_frame=-10)
    first = of_body(rows, 0)
    assert first[:, 0].tolist()[:13] == list(range(-22, -9))
    before = first[first[:, 1] < -1e-9]
    assert len(before) == 12
    assert before[:, 4:7] == pytest.approx(np.tile(first[12, 4:7], (12, 1)), abs=1e-9)
    assert np.all(before[:, 7:] == 0)
    assert of_body(rows, 1)[0, 0] == -10 + math.ceil(0.4 * 24)
    assert any("at rest aboard" in said for said in notes["says"])
    flat = of_body(written(document, from_s=-0.5, view="inertial_flat")[0], 0)[:12]
    assert np.hypot(flat[:, 4], flat[:, 5]) == pytest.approx(np.full(12, RADIUS_M - 1.5), abs=1e-5)
    assert np.hypot(flat[:, 7], flat[:, 8]) == pytest.approx(np.full(12, OMEGA * (RADIUS_M - 1.5)), abs=1e-5)
    assert np.degrees(np.arctan2(flat[:, 4], -flat[:, 5])) == pytest.approx(np.degrees(OMEGA * flat[:, 1]), abs=1e-4)


def test_bodies_and_events_are_listed_in_seconds_and_frames():
    document = scene(
        throw(9.0, 30.0, 40.0, BALL, name="serve"), drop(body="handball"), pour(duration_s=0.3, name="tea")
    )
    rows, notes, _ = written(document, fps=25, first_frame=100)
    serve = next(b for b in notes["ids"] if b["name"] == "serve")
    trace = trace_of(read(json.dumps(document)))
    track = trace.motions[0].track
    assert (serve["mass_kg"], serve["diameter_m"], serve["end"]) == (0.45, 0.18, track.end)
    assert serve["ends_frame"] == pytest.approx(100 + 25 * track.ends_s, abs=1e-3)
    ball = next(b for b in notes["ids"] if b["motion"].startswith("drop "))
    assert (ball["diameter_m"], ball["drag"]) == (0.18, "sphere")
    drops = [b for b in notes["ids"] if b["motion"] == "tea"]
    assert sum(b["mass_kg"] for b in drops) == pytest.approx(0.3 * 30e-6 * 998.2, rel=0.05)
    contact = next(e for e in notes["events"] if e["motion"] == "serve" and e["kind"] == "deck")
    landing = track.landing
    assert (contact["id"], contact["surface"]) == (serve["id"], "deck")
    assert contact["time_s"] == landing.time_s
    assert contact["frame"] == pytest.approx(100 + 25 * landing.time_s, abs=1e-3)
    found = of_body(rows, serve["id"])
    near = found[np.searchsorted(found[:, 0], contact["frame"])]
    assert np.linalg.norm(near[4:7] - contact["position_m"]) < 0.1
    assert [e["time_s"] for e in notes["events"]] == sorted(e["time_s"] for e in notes["events"])


def test_what_starts_after_the_end_is_no_body():
    rows, notes, _ = written(scene(drop(start_s=5.0), throw(name="serve"), sampling={"duration_s": 1.0}))
    assert [b["name"] for b in notes["ids"]] == ["serve"]
    assert float(rows[-1][1]) == pytest.approx(1.0)


def test_a_table_too_long_is_refused_by_the_motion_that_makes_it():
    with pytest.raises(TooMuch) as caught:
        written(scene(drop(), pour(30, 8, 600.0, name="hose"), sampling={"duration_s": 600.0}), rows="all")
    assert caught.value.refusals[0].was == "hose"
    assert "2,000,000" in caught.value.refusals[0].say
    with pytest.raises(TooMuch) as caught:
        written(scene(pour(30, 8, 12.0, name="hose")), rows="all")
    assert "500,000" in caught.value.refusals[0].say


@each_row("name", examples.SAY)
def test_every_kind_and_shape_has_its_rows(name):
    """A row a frame and body; places are those of the answer at the same times, and after its end a body stays."""
    document = json.loads(examples.example(name))
    rows, notes, _ = written(document, rows="all")
    assert rows[0] == HEADER
    table = np.array([[float(v) for v in row] for row in rows[1:]])
    assert np.all(np.isfinite(table))
    assert len(table) == notes["file"]["frame_count"] * len(notes["ids"])
    trace = trace_of(read(json.dumps(document)))
    for one in trace.motions:
        if one.plan.stream is not None:
            continue
        found = of_body(rows, next(b["id"] for b in notes["ids"] if b["name"] == one.motion.name))
        samples = one.track.samples.only(slice(0, None, trace.samples_per_frame))
        here = found[one.track.first // trace.samples_per_frame :][: len(samples.time_s)]
        if one.track.first % trace.samples_per_frame == 0:
            x, y, z = samples.rotating_m.T
            seen = [y, z, x] if document["habitat"].get("shape") == "turntable" else [y, -x, z]
            assert here[:, 4:7] == pytest.approx(np.stack(seen, axis=1), abs=WITHIN_M)
        after = found[found[:, 1] > one.track.ends_s + 1e-9]
        assert np.ptp(after[:, 4:7], axis=0) == pytest.approx([0, 0, 0], abs=1e-9) if len(after) else True


def test_a_table_may_tell_how_bodies_have_turned():
    """A ball spun about Z at 60 rpm in the room that stands still, seen from it: by 2 pi t."""
    document = scene(
        throw(body=BALL, ball_spin_rpm=60, ball_spin_axis=[0, 0, 1], name="spun"), pour(duration_s=0.3), air=None
    )
    rows, notes, _ = written(document, turning="quaternion", view="inertial_flat")
    assert rows[0] == [*HEADER, "qw", "qx", "qy", "qz"]
    number = next(b["id"] for b in notes["ids"] if b["motion"] == "spun")
    found, drop_of_tea = (
        of_body(rows, number),
        of_body(rows, next(b["id"] for b in notes["ids"] if b["motion"] != "spun")),
    )
    flies = found[:, 1] < next(e["time_s"] for e in notes["events"] if e["kind"] == "deck")
    half = (2 * math.pi + OMEGA) * found[flies, 1] / 2
    wanted = np.stack([np.cos(half), np.sin(half)], axis=1)
    sign = np.sign(np.sum(wanted * found[flies][:, [10, 13]], axis=1))
    assert found[flies][:, [10, 13]] == pytest.approx(sign[:, None] * wanted, abs=2e-6)
    assert np.all(drop_of_tea[:, 10:] == [1, 0, 0, 0])
