"""Landings over HTTP: the answer is what its description says, in lists and packed, as a stream that tells how far it is; and the files."""

import base64
import csv
import functools
import io
import json
import re

import httpx
import numpy as np
import pypdfium2

from rimfall.exports.landings import FORMATS
from rimfall.scene import examples
from rimfall.web.app import make_app
from tests.apart import run_apart
from tests.tables import each_row
from tests.web.test_schema import is_valid

OVER = [
    {"field": "heading_deg", "first": -90, "last": 90, "count": 25},
    {"field": "speed_m_s", "first": 2, "last": 14, "count": 25},
]
BODY = {"scene": json.loads(examples.example("galley")), "motion": "serve", "over": OVER}
ASKED = json.dumps(BODY)


@functools.cache
def asked(path, body=ASKED):
    async def once():
        transport = httpx.ASGITransport(app=make_app())
        async with httpx.AsyncClient(transport=transport, base_url="http://127.0.0.1") as client:
            return await client.post(f"/api/landings{path}", content=body, headers={"content-type": "application/json"})

    return run_apart(once())


def test_lists_and_packed_arrays_are_one_answer_as_described():
    packed, lists = asked("?width=500&units=us").json(), asked("?arrays=lists").json()
    for answer in (packed, lists):
        is_valid("Landings", answer)
    for name in ("ended", "time_s", "along_m", "axial_m", "spinward_m", "speed_m_s"):
        assert packed[name]["shape"] == [625]
        array = np.frombuffer(base64.b64decode(packed[name]["f4"]), "<f4")
        np.testing.assert_allclose(array, lists[name], rtol=2e-7)
    assert re.search(r"\d\sft\b", packed["words"][0])
    assert re.search(r"\d\sm\b", lists["words"][0])
    assert lists["drawing"] is None
    drawing = packed["drawing"]
    left, top, right, bottom = drawing["box_px"]
    assert 0 <= left < right <= drawing["size_px"][0] == 500
    assert 0 <= top < bottom <= drawing["size_px"][1]
    landed = np.array(lists["ended"]) == 0
    drift = np.array(lists["along_m"])[landed] - 0.0
    assert drawing["along_m"][0] < drift.min() < drift.max() < drawing["along_m"][1]
    assert drawing["svg"].count('class="net"') >= len(lists["net"]["lines"])


def test_a_stream_tells_how_far_it_is_and_a_refusal_has_its_field():
    *told, last = map(json.loads, asked("?stream=1").text.splitlines())
    done = [line["done"] for line in told]
    assert done == sorted(done)
    assert 0 <= done[-1] <= 625
    assert {line["of"] for line in told} == {625}
    assert last["rimfall_landings"] == 1
    refused = asked("", json.dumps(BODY | {"motion": "tea"}))
    assert (refused.status_code, refused.json()["refused"][0]["field"]) == (422, "motion")
    assert asked("/png").status_code == 404


@each_row("name", FORMATS)
def test_each_file_is_what_it_says(name):
    answer = asked(f"/{name}")
    assert answer.headers["content-type"] == FORMATS[name].media_type
    assert answer.headers["content-disposition"] == f'attachment; filename="landings.{FORMATS[name].ending}"'
    assert answer.content == base64.b64decode(json.loads(asked(f"/{name}?stream=1").text.splitlines()[-1])["file"])
    begins = {"csv": b"speed_m_s,heading_deg,", "notes": b"{\n", "svg": b"<svg ", "pdf": b"%PDF-"}
    assert answer.content.startswith(begins[name])
    recovered = httpx_recover(answer.content) if name != "csv" else None
    if recovered is not None:
        assert recovered["scene"]["title"] == BODY["scene"]["title"]


def httpx_recover(content):
    async def once():
        transport = httpx.ASGITransport(app=make_app())
        async with httpx.AsyncClient(transport=transport, base_url="http://127.0.0.1") as client:
            return await client.post(
                "/api/recover", content=content, headers={"content-type": "application/octet-stream"}
            )

    return run_apart(once()).json()


def test_the_table_has_a_row_a_throw_and_the_net_a_page():
    rows = list(csv.DictReader(io.StringIO(asked("/csv").text)))
    answer = asked("?arrays=lists").json()
    assert len(rows) == 625
    assert len(set(rows[0])) == len(rows[0])
    for k in (0, 100, 312, 624):
        assert rows[k]["ended"] == answer["endings"][int(answer["ended"][k])]
        assert abs(float(rows[k]["along_m"]) - answer["along_m"][k]) < 1e-6
        assert abs(float(rows[k]["arrival_speed_m_s"]) - answer["speed_m_s"][k]) < 1e-6
        assert float(rows[k]["heading_deg"]) == OVER[0]["first"] + 7.5 * (k // 25)
        assert float(rows[k]["speed_m_s"]) == OVER[1]["first"] + 0.5 * (k % 25)
        assert float(rows[k]["elevation_deg"]) == answer["own"]["elevation_deg"]
    text = pypdfium2.PdfDocument(asked("/pdf").content)[0].get_textpage().get_text_range()
    assert "Where it comes down" in text
    assert "12 m/s" in text.replace("\u00a0", " ")
