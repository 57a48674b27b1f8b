"""`POST /api/match` and `/api/match/tracks`: a table in, its tracks out, one of them matched; answers are what their description says."""

import json

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
    assert "ft" in answer["says"]


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
