"""Tracks out of files: tables in several writings, Rimfall's own exports and what another program might write; each is matched, and its
nearest free path goes out again. Commands over them."""

import json
import re

import numpy as np
import pytest

from rimfall import export, match, open_scene, trace
from rimfall.errors import Refused
from rimfall.exports.brought.tracks import About, tracks_in
from tests.commands import rimfall
from tests.shots.match_paths import POINT, flown, rows
from tests.tables import each_row

HABITAT = {"shape": "cylinder", "radius_m": 56.0, "spin_rpm": 3.0}
LOB = {
    "kind": "throw",
    "name": "Lob",
    "place": {"along_m": 1.0, "height_m": 1.5},
    "speed_m_s": 6.0,
    "elevation_deg": 35.0,
    "body": POINT,
}
SCENE = {"rimfall": 1, "habitat": HABITAT, "air": None, "motions": [LOB]}


def table(time_s, places, mark=",", decimal=".", names=("time_s", "along_m", "height_m", "axial_m")):
    lines = [mark.join(names)]
    lines += [mark.join(f"{v:.6f}".replace(".", decimal) for v in (t, *p)) for t, p in zip(time_s, places, strict=True)]
    return "\n".join(lines).encode() + b"\n"


@each_row(("mark", "decimal"), [(",", "."), (";", ","), (";", "."), ("\t", ".")])
def test_a_table_is_read_with_commas_semicolons_or_tabs(mark, decimal):
    time_s, places = flown(12)
    (track,) = tracks_in(table(time_s, places, mark, decimal), About())["tracks"]
    read = np.array([[row["time_s"], row["along_m"], row["height_m"], row["axial_m"]] for row in track["track"]])
    assert np.abs(read - np.column_stack([time_s, places])).max() < 1e-6


def test_a_table_may_have_frames_centimetres_no_axial_place_or_pixels():
    time_s, places = flown(12)
    rest = [[10 + 25.0 * t, 100 * p[0], 100 * p[1]] for t, p in zip(time_s, places, strict=True)]
    content = b"frame,along_cm,height_cm\n" + "\n".join(",".join(f"{v:.6f}" for v in row) for row in rest).encode()
    (track,) = tracks_in(content, About(fps=25))["tracks"]
    assert track["track"][5] == pytest.approx(
        {"time_s": 0.4 + time_s[5], "along_m": places[5, 0], "height_m": places[5, 1]}, abs=1e-6
    )  # of frames, 0 is at time 0
    ends = (
        b"# from the set\r\ntime_s,along_m,height_m\r0,1,1\r1,1,2\r\n",
        "\ufefftime_s;along_m;height_m;\n0;1,0;1\n\n1;1;2;\n".encode(),
    )
    assert all([row["height_m"] for row in tracks_in(one, About())["tracks"][0]["track"]] == [1.0, 2.0] for one in ends)
    (seen,) = tracks_in(b"x_px,y_px\n1,2\n3,4\n", About())["tracks"]
    assert seen["points"] == [{"frame": 0.0, "x_px": 1.0, "y_px": 2.0}, {"frame": 1.0, "x_px": 3.0, "y_px": 4.0}]


def test_a_table_of_several_things_has_a_track_each_and_its_points_may_have_z_up():
    content = b"id,time_s,x_m,y_m,z_m,alive\n1,0,5,0,2,1\n2,0,6,0,3,1\n1,1,5.5,1,2.5,1\n2,1,6.5,1,3.5,1\n1,2,9,9,9,0\n"
    one, two = tracks_in(content, About(up="Z", view="inertial", origin="deck"))["tracks"]
    assert (one["name"], two["name"]) == ("id 1", "id 2")
    first, last = {"time_s": 0, "x_m": 5, "y_m": 2, "z_m": 0}, {"time_s": 1, "x_m": 5.5, "y_m": 2.5, "z_m": -1}
    assert one["keys"] == {
        "rows": [first, last],
        "view": "inertial",
        "origin": "deck",
    }  # what is not alive has no place
    assert [row["y_m"] for row in two["keys"]["rows"]] == [3.0, 3.5]


@each_row(
    ("content", "says"),
    [
        (b"time_s,along_m\n0,1\n1,2\n", "no column height_m"),
        (b"a,b\n0,1\n1,2\n", "it must have time_s"),
        (b"time_s,along_m,height_m\n0,1,1\n1,x,2\n", "Line 3 of the table has x in column along_m"),
        (b"time_s,along_m,height_m\n0,1,1\n1,nan,2\n", "Line 3 of the table has nan"),
        (b"time_s,along_m,height_m\n0,1,1\n,1,2\n", "Line 3 of the table has nothing in column time_s"),
        (
            b"time_s,along_m,height_m\n0,1,1\n2,1,2\n1,1,2\n",
            "Line 4 of the table has 1 in column time_s; it must be later than the row before",
        ),
        (
            b"frame,along_m,height_m\n0,1,1\n\n1,1,2\n1,1,2\n",
            "Line 5 of the table has 1 in column frame; it must be later",
        ),
        (
            b"time_s,along_m,height_m\n0,0,1,5\n0,1,0,5,1,9\n",
            "Line 2 of the table has 4 values under 3 columns; with decimal commas, put semicolons",
        ),
        (b"0,1,1\n1,1,2\n2,1,2\n", "The first line of this table has numbers; it must name the columns"),
        (b"time_s,along_m,along_m\n0,1,1\n1,1,2\n", "two columns along_m"),
        (b"time_s,along_m,height_m\r\n", "no rows under a line of column names"),
        (b"", "no rows under a line of column names"),
        (b"time_s,along_m,height_m\n0,1," + b"1" * 200_000, "Line 2 of the table cannot be read"),
        (b"along_m,height_m\n0,1\n1,1\n1,1\n", "neither a column time_s nor a column frame"),
        (b"time_s,along_m,height_m\n" + b"0,1,1\n" * 1_000_000, "1,000,001 lines"),
        (b"time_s,along_m,height_m\n" + b"0,1,1\n" * 20_001, "20,001 rows; at most 20,000"),
        (b"time_s\talong_m\theight_m\n0\t1,5\t1\n", "Line 2 of the table has 1,5 in column along_m"),
        ("time_s,along_m,height_m,é\n".encode("latin-1"), "not in UTF-8"),
        (b"id,time_s,along_m,height_m\n" + b"".join(b"%d,0,1,1\n" % k for k in range(501)), "more than 500 things"),
        (bytes(60_000_001), "too large"),
        (b"#usda 1.0\n", "Nothing moves in this file"),
    ],
)
def test_a_bad_table_is_refused_by_its_line(content, says):
    with pytest.raises(Refused) as caught:
        tracks_in(content, About())
    assert says in caught.value.refusals[0].say


def test_a_row_of_a_path_that_is_wrong_is_named():
    rows = [{"time_s": 0.1 * k, "along_m": 0.5 * k, "height_m": 1e300 if k == 3 else 1.0} for k in range(5)]
    with pytest.raises(Refused) as caught:
        match({"track": rows, "accuracy_m": 0.01})
    (one,) = caught.value.refusals
    assert (one.field, one.say[:31]) == ("track.3.height_m", "Row 4 of the path: Height was 1")


@pytest.mark.parametrize(
    ("ending", "view"), [("csv", "rotating"), ("csv", "inertial"), ("usda", "rotating"), ("glb", "inertial")]
)
def test_what_the_program_wrote_is_read_back_and_possible(tmp_path, ending, view):
    file = export(
        open_scene(SCENE), tmp_path / f"lob.{ending}", view=view, **({"origin": "axis"} if ending == "csv" else {})
    )
    about = About(view=view if ending == "csv" else None)
    found = tracks_in(file.read_bytes(), about)
    assert found["axes"] == {"view": view, "origin": "axis"}
    track = next(one for one in found["tracks"] if ending == "csv" or one["name"] == "ball_Lob")
    known = {"radius_m": 56.0, "spin_rpm": 3.0, "air": None}
    assert found["known"] == ({} if ending == "csv" else known)
    if ending == "csv":
        notes = export(open_scene(SCENE), tmp_path / "lob.notes.json", view=view, origin="axis")
        noted = tracks_in(file.read_bytes(), About(notes=notes.read_bytes()))
        assert (noted["known"], noted["axes"]["view"]) == (known, view)
    path = trace(open_scene(SCENE)).motions["Lob"]
    flying = [row for row in track["keys"]["rows"] if row["time_s"] < path.landing.time_s - 1e-6]
    if view == "rotating":
        whole = match({"keys": track["keys"], "accuracy_m": 1e-3, "known": known})
        lasts = len(flying) + (ending != "csv")  # a scene has a key at the landing itself
        left = whole["left_out"]
        assert (whole["verdict"], left["first"]) == ("possible", lasts), whole["words"]
        assert (left["last"], left["kind"]) == (
            lasts,
            "off" if ending == "csv" else "rest",
        )  # the row after the landing
        assert whole["words"][0].startswith(f"As far as row {lasts}, this path is possible: ")
        assert whole["words"][1] == left["says"]
    answer = match({"keys": track["keys"] | {"rows": flying}, "accuracy_m": 1e-4, "known": known})
    assert answer["verdict"] == "possible", answer["words"]
    assert answer["fit"]["speed_m_s"]["value"] == pytest.approx(6.0, abs=1e-3)


def test_a_habitat_that_spins_up_is_not_known(tmp_path):
    ramp = {"habitat": HABITAT | {"spin_ramp": [{"time_s": 1.0, "spin_rpm": 3.0}, {"time_s": 5.0, "spin_rpm": 1.0}]}}
    file = export(open_scene(SCENE | ramp), tmp_path / "lob.glb")
    assert tracks_in(file.read_bytes(), About())["known"] == {}


def test_an_artists_path_is_refuted_and_the_nearest_goes_out_again(tmp_path):
    file = export(open_scene(SCENE), tmp_path / "lob.usda")
    rows_of = next(o for o in tracks_in(file.read_bytes(), About())["tracks"] if o["name"] == "ball_Lob")["keys"][
        "rows"
    ][:24]
    drawn = [row | {"z_m": row["z_m"] + 0.3 * row["time_s"] ** 2} for row in rows_of]
    known = {"radius_m": 56.0, "spin_rpm": 3.0, "air": None}
    answer = match({"keys": {"rows": drawn, "origin": "axis"}, "accuracy_m": 0.002, "known": known})
    assert answer["verdict"] == "impossible"
    assert answer["reasons"][0]["kind"] == "speeds_up_along_axis"
    assert np.median(answer["extra_acceleration_g"]) == pytest.approx(0.6 / 9.80665, rel=0.1)
    back = export(open_scene(answer["motion"]), tmp_path / "nearest.usda")
    assert any("Matched" in one["name"] for one in tracks_in(back.read_bytes(), About())["tracks"])


def test_the_command_says_it_in_words_and_writes_the_scene(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    time_s, places = flown()
    noisy = places + np.random.default_rng(5).normal(0.0, 0.01, places.shape)
    (tmp_path / "track.csv").write_bytes(table(time_s, noisy, ";", ","))
    done = rimfall(
        "match",
        "track.csv",
        "--accuracy",
        "0.01",
        "--known",
        "radius_m=56",
        "--known",
        "air=none",
        "--save",
        "lob.json",
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.startswith("This path is possible: a habitat of 56.00 m in radius")
    assert "Spin" in done.stdout
    lasts = 0.1 * np.arange(12)
    planet = np.stack([5 * lasts, 1.5 + 5 * lasts - 4.9 * lasts**2, 0 * lasts], axis=1)
    (tmp_path / "planet.csv").write_bytes(table(lasts, planet, ",", "."))
    planet = rimfall("match", "planet.csv", "--accuracy", "0.01").stdout
    assert re.search(r"^  Radius +– +m +[\d,]+ +–$", planet, re.M), planet
    assert re.search(r"^  Along the deck at the first row +-?0\.00\d\d +m +-0\.0\d+ +0\.0\d+$", planet, re.M), planet
    assert trace(open_scene("lob.json")).motions["Matched path"].landing is not None
    told = json.loads(
        rimfall(
            "match", "track.csv", "--accuracy", "0.01", "--known", "radius_m=56", "--known", "air=none", "--json"
        ).stdout
    )
    asked = {"track": rows(time_s, np.round(noisy, 6)), "accuracy_m": 0.01, "known": {"radius_m": 56.0, "air": None}}
    assert told["fit"]["spin_rpm"]["value"] == pytest.approx(match(asked)["fit"]["spin_rpm"]["value"], rel=1e-4)
    for wrong, says in (("radius", "it must be NAME=VALUE"), ("air=thin", "known.air"), ("start=1", "ALONG,HEIGHT")):
        refused = rimfall("match", "track.csv", "--accuracy", "0.01", "--known", wrong)
        assert refused.returncode == 2
        assert says in refused.stderr
