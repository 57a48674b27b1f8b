"""Files over HTTP: each format comes as what it says it is, wrong choices are refused by name, long work tells how far it is."""

import base64
import functools
import json
import re

import httpx

from rimfall.exports.formats import FORMATS
from rimfall.exports.options import read_options
from rimfall.scene import examples
from rimfall.scene.reading import read
from rimfall.web.app import make_app
from tests.apart import run_apart
from tests.scene.documents import trace_of
from tests.tables import each_row

SCENE = json.loads(examples.example("same-lob"))
SCENE["motions"][1]["start_s"] = 0.1  # so that a table has fewer rows where only what is there has some
SIGNS = {
    "csv": b"frame,time_s,id,alive,",
    "csv-frames": b"PK\x03\x04",
    "notes": b"{",
    "json": b"{",
    "glb": b"glTF",
    "usda": b"#usda 1.0",
    "usdc": b"PXR-USDC",
    "usdz": b"PK\x03\x04",
    "forces-csv": b"frame,time_s,angle_rad,",
    "forces-notes": b"{",
}
PLOTS = ("path", "true", "height", "felt")
SIGNS |= {f"plot-{name}-{end}": sign for name in PLOTS for end, sign in (("svg", b"<svg"), ("pdf", b"%PDF-"))}
SIGNS |= {"html": b"<!doctype html>"}
SIGNS |= {"plots-pdf": b"%PDF-", "map-svg": b"<svg", "map-pdf": b"%PDF-"}
TWINS = {"usdc": "usda", "usdz": "usda", "map-pdf": "map-svg"}  # format -> what holds the same, written otherwise
TWINS |= {f"plot-{name}-pdf": f"plot-{name}-svg" for name in PLOTS}


def asked(name, body, query=""):
    async def once():
        transport = httpx.ASGITransport(app=make_app())
        async with httpx.AsyncClient(transport=transport, base_url="http://127.0.0.1") as client:
            headers = {"content-type": "application/json"}
            return await client.post(f"/api/export/{name}{query}", content=body, headers=headers)

    return run_apart(once())


def exported(name, query="", scene=SCENE, **choices):
    return asked(name, json.dumps({"scene": scene, "export": choices}), query)


@functools.cache
def with_defaults(name):
    """A file with all choices left as they are, asked for once."""
    return exported(name)


def written(name, choices):
    """The same without HTTP, of one trace of the scene."""
    trace = trace_of(read(json.dumps(SCENE)))
    return FORMATS[name].write(trace, read_options(choices, trace.scene))


def test_every_format_has_its_sign():
    assert set(SIGNS) == set(FORMATS)


@each_row("name", FORMATS)
def test_each_format_comes_as_what_it_says_it_is(name):
    answer = with_defaults(name)
    assert answer.status_code == 200
    assert answer.headers["content-type"] == FORMATS[name].media_type
    assert answer.headers["content-disposition"] == f'attachment; filename="rimfall.{FORMATS[name].ending}"'
    assert re.sub(rb"^<\?xml[^>]*\?>\s*", b"", answer.content).startswith(SIGNS[name])


@each_row("name", FORMATS)
def test_without_choices_the_defaults_hold_and_the_same_again_is_the_same_bytes(name):
    assert asked(name, json.dumps({"scene": SCENE})).content == with_defaults(name).content


@each_row("name", FORMATS)
def test_what_a_format_says_it_uses_changes_it_and_nothing_else_does(name):
    """The choices a page offers beside a format are those that matter to it; of two that write down the same, one is tried with each."""
    other = {
        "motions": ["Lob out"],
        "view": "inertial_flat",
        "fps": 30,
        "shown_fps": 12,
        "first_frame": 7,
        "samples_per_frame": 2,
        "unit": "cm",
        "up": "Z",
        "origin": "release",
        "from_s": 0.5,
        "to_s": 0.7,
        "retime": {"keys": [{"frame": 1, "time_s": 0.0}, {"frame": 9, "time_s": 0.3}]},
        "rows": "all",
        "turning": "quaternion",
        "hull": "render",
        "stage_cameras": [{"name": "Aboard", "position_m": [0, 0, 9], "target_m": [0, -56, 0], "up": [0, 1, 0]}],
        "cameras": [{"name": "Mine", "rows": [{"position_m": [0, 0, 9], "target_m": [0, -56, 0]}]}],
    }
    plain = with_defaults(name).content
    assert written(name, {}) == plain
    uses = set(FORMATS[name].uses)
    assert uses <= set(other)
    twin = TWINS.get(name)
    assert twin is None or uses == set(FORMATS[twin].uses)
    tried = sorted(uses)[: 1 if twin else None]
    assert {choice for choice in tried if written(name, {choice: other[choice]}) == plain} == set()
    curve = {"retime": other.pop("retime")}  # alone: it leaves no room for the other choices of frames
    unused = {choice: value for choice, value in other.items() if choice not in uses}
    assert written(name, unused) == plain, unused
    assert "retime" in uses or written(name, curve) == plain


@each_row(
    ("body", "field"),
    [
        ("{", "document"),
        ("{}", "scene"),
        ("[]", "document"),
        (json.dumps({"scene": SCENE, "more": 1}), "more"),
        (json.dumps({"scene": SCENE, "export": []}), "export"),
        (json.dumps({"scene": SCENE, "export": {"fps": "a"}}), "export.fps"),
        (json.dumps({"scene": SCENE, "export": {"origin": {"up": 1}}}), "export.origin.up"),
        (json.dumps({"scene": SCENE | {"habitat": {"radius_m": -1, "spin_rpm": 3}}}), "habitat.radius_m"),
        ('{"scene": ' + json.dumps(SCENE) + ', "export": {"from_s": NaN}}', "export.from_s"),
        ('{"scene": ' + json.dumps(SCENE) + ', "export": {"from_s": 1e999}}', "export.from_s"),
    ],
)
def test_what_is_wrong_is_refused_by_name(body, field):
    answer = asked("csv", body)
    assert answer.status_code == 422
    assert answer.json()["refused"][0]["field"] == field


def test_as_lines_it_tells_how_far_it_is_and_the_last_is_the_file():
    lines = exported("csv", "?stream=1").content.decode().splitlines()
    assert all(set(json.loads(line)) == {"done", "of"} for line in lines[:-1])
    assert base64.b64decode(json.loads(lines[-1])["file"]) == exported("csv").content


def test_the_page_is_told_of_every_format():
    async def once():
        transport = httpx.ASGITransport(app=make_app())
        async with httpx.AsyncClient(transport=transport, base_url="http://127.0.0.1") as client:
            return (await client.get("/api/fields")).json(), (await client.get("/openapi.json")).json()

    fields, openapi = run_apart(once())
    assert [f["name"] for f in fields["export"]["formats"]] == list(FORMATS)
    declared = openapi["paths"]["/api/export/{name}"]["post"]["responses"]["200"]["content"]
    assert set(declared) - {"application/x-ndjson"} == {f.media_type for f in FORMATS.values()}
