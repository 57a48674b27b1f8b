"""`POST /api/match` and `/api/match/tracks`: a table in, its tracks out, one of them matched; answers are what their description says."""

import json
import re

import httpx
import numpy as np

from rimfall.web.app import make_app
from tests.apart import run_apart
from tests.shots.match_paths import flown, impossible
from tests.web.test_schema import is_valid

KNOWN = {"radius_m": 56.0, "spin_rpm": 3.0, "air": None}


def asked(path, body, kind="application/json"):
    async def once():
        transport = httpx.ASGITransport(app=make_app())
        async with httpx.AsyncClient(transport=transport, base_url="http://127.0.0.1") as client:
            return await client.post(f"/api/match{path}", content=body, headers={"content-type": kind})

    return run_apart(once())


def table(time_s, places):
    lines = [",".join(f"{v:.4f}" for v in (t, *p)) for t, p in zip(time_s, places, strict=True)]
    return "\n".join(["time_s,along_m,height_m,axial_m", *lines]).encode()


def test_a_file_becomes_tracks_and_a_track_an_answer():
    found = asked("/tracks", table(*flown(20)), "application/octet-stream").json()
    is_valid("Tracks", found)
    track = found["tracks"][0]["track"]
    answer = asked("?units=us", json.dumps({"track": track, "accuracy_m": 0.001, "known": KNOWN})).json()
    is_valid("Match", answer)
    assert answer["verdict"] == "possible"
    assert re.search(r"\d\sft\b", answer["says"])


def test_a_change_and_a_refusal_are_as_described():
    time_s, places = impossible()["mirrored"]
    rows = [
        {"time_s": t, "along_m": a, "height_m": h}
        for t, (a, h, _) in zip(time_s.tolist(), places.tolist(), strict=True)
    ]
    answer = asked("", json.dumps({"track": rows, "accuracy_m": 0.01, "known": KNOWN})).json()
    is_valid("Match", answer)
    assert [change["kind"] for change in answer["changes"]] == ["mirror"]
    assert np.hypot(*(answer["residual"][name][-1] for name in ("along_m", "height_m"))) > 0.1
    refused = asked("", json.dumps({"track": rows[:2], "accuracy_m": 0.01}))
    assert refused.status_code == 422
    assert refused.json()["refused"][0]["field"] == "track"


CAMERA = {
    "field_of_view_deg": 60,
    "width_px": 1600,
    "height_px": 900,
    "position": {"along_m": 10.0, "height_m": 1.6, "axial_m": 8.0},
    "look_at": {"along_m": 10.0, "height_m": 1.6, "axial_m": 0.0},
    "roll_deg": 0.0,
}


def test_the_decks_grid_lies_where_a_pinhole_camera_puts_it():
    """Looking level along the axis, a pinhole of focal length f shows the deck under it, h below and d off, at f h / d below the middle, and
    what lies x aside by the arc, sunk upward by r (1 - cos), at f x' / d; Hartley and Zisserman, Multiple View Geometry, 6.1."""
    grid = asked("/grid", json.dumps({"radius_m": 56.0, "camera": CAMERA})).json()
    is_valid("DeckGrid", grid)
    focal = 800 / np.tan(np.radians(30))
    lines = [line for line in grid["lines"] if line["of"] == "along_m"]
    assert {line["at_m"] for line in lines} >= {5.0, 9.0, 10.0, 11.0, 15.0}
    assert all(line["strong"] == (line["at_m"] % (5 * grid["step_m"]) == 0) for line in grid["lines"])
    for line in lines:
        angle = (line["at_m"] - 10.0) / 56.0
        aside, below = 56 * np.sin(angle), 1.6 - 56 * (1 - np.cos(angle))
        for x, y in np.concatenate(line["runs"]):
            if abs(aside) > 0.1:
                assert abs((y - 450) * aside - (x - 800) * below) < 0.2 * (abs(aside) + abs(below))
            assert y - 450 < focal * 1.6 / 2  # nothing behind the camera, or under its feet
    drawn = np.concatenate([run for line in grid["lines"] for run in line["runs"]])
    over = 0.05 * np.array([1600, 900]) + 0.1  # lines go on a little beyond the edges
    assert np.all((drawn >= -over) & (drawn - over <= [1600, 900]))
    marks = np.array([line["mark"] for line in grid["lines"] if line["mark"]])
    assert len(marks) > 3
    assert np.all((marks > 0) & (marks < [1600, 900]))
    [across] = [line for line in grid["lines"] if line["of"] == "axial_m" and line["at_m"] == 0.0]
    [run] = across["runs"]
    depth = focal * (np.array(run)[:, 1] - 450) ** -1 * 1.6
    middle = np.argmin(np.abs(np.array(run)[:, 0] - 800))
    assert abs(depth[middle] - 8.0) < 0.15
    (x, foot), (_, head) = grid["upright"]
    assert (x, grid["upright_m"]) == (800.0, 1.75)
    assert abs(foot - head - focal * 1.75 / 8) < 0.11
    # past the far side of the wheel, at 56 pi m, places go on
    beyond = {name: CAMERA[name] | {"along_m": 175.0} for name in ("position", "look_at")}
    there = asked("/grid", json.dumps({"radius_m": 56.0, "camera": CAMERA | beyond})).json()["lines"]
    assert {line["at_m"] for line in there if line["of"] == "along_m"} == {line["at_m"] + 165 for line in lines}
    # a quarter turn of bank turns the picture a quarter
    banked = asked("/grid", json.dumps({"radius_m": 56.0, "camera": CAMERA | {"roll_deg": 90.0}})).json()
    (u, v), _ = banked["upright"]
    assert abs(u - 800 - (foot - 450)) < 0.11
    assert abs(v - 450) < 0.11


def test_between_rows_of_a_camera_the_grid_is_that_of_a_camera_between():
    at = CAMERA["position"]
    rows = [
        CAMERA | {"time_s": float(k), "position": at | {"along_m": 10.0 + 2 * k}, "roll_deg": 4.0 * k} for k in (0, 1)
    ]
    between = CAMERA | {"position": at | {"along_m": 10.5}, "roll_deg": 1.0}
    grids = [
        asked("/grid", json.dumps({"radius_m": 56.0} | one)).json()
        for one in ({"camera": rows, "time_s": 0.25}, {"camera": between})
    ]
    assert grids[0] == grids[1]
    for wrong, field in (
        ([], "camera"),
        ([rows[1], rows[0]], "camera.1.time_s"),
        ([CAMERA, CAMERA], "camera.0.time_s"),
    ):
        refused = asked("/grid", json.dumps({"radius_m": 56.0, "camera": wrong}))
        assert (refused.status_code, refused.json()["refused"][0]["field"]) == (422, field)


def test_a_camera_under_the_deck_has_no_grid():
    under = CAMERA | {"position": {"along_m": 0.0, "height_m": -1.0, "axial_m": 8.0}}
    refused = asked("/grid", json.dumps({"radius_m": 56.0, "camera": under}))
    assert refused.status_code == 422
    assert refused.json()["refused"][0]["field"] == "camera.position.height_m"
