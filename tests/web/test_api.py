"""The API through the app itself: every route, every refusal's shape, the guards, the files."""

import asyncio
import base64
import errno
import gzip
import hashlib
import json
import re
import struct
from pathlib import Path

import httpx
import pytest

from rimfall.errors import Refused
from rimfall.exports import pdf
from rimfall.exports.drawing import Drawing, Text
from rimfall.scene import examples
from rimfall.web import page, work
from rimfall.web.app import make_app
from rimfall.web.guards import host_allowed
from rimfall.web.static import PageFiles
from tests.apart import run_apart
from tests.tables import each_row

SCENE = examples.example("same-lob")
ROOT = Path(__file__).resolve().parent.parent.parent
JSON = {"content-type": "application/json"}


def call(method, path, **options):
    async def once():
        transport = httpx.ASGITransport(app=make_app())
        async with httpx.AsyncClient(transport=transport, base_url="http://127.0.0.1") as client:
            return await client.request(method, path, **options)

    return run_apart(once())


def trace(document=SCENE, query=""):
    return call("POST", f"/api/trace{query}", content=document, headers=JSON)


def refused(answer, status):
    assert answer.status_code == status
    rows = answer.json()["refused"]
    assert all(set(row) == {"field", "was", "may_be", "say"} for row in rows)
    return rows


def test_health_and_version():
    assert call("GET", "/api/health").json() == {"ok": True, "program": __import__("rimfall").__version__}


def test_examples_are_listed_and_each_is_a_scene():
    listed = call("GET", "/api/examples").json()
    for one in listed["examples"]:
        document = call("GET", f"/api/examples/{one['id']}")
        assert document.json()["title"] == one["title"]


def test_lists_and_f4_carry_the_same_paths():
    lists, packed = trace().json(), trace(query="?arrays=f4").json()
    for plain, f4 in zip(lists["motions"], packed["motions"], strict=True):
        shape, data = f4["rotating_m"]["shape"], base64.b64decode(f4["rotating_m"]["f4"])
        values = struct.unpack(f"<{shape[0] * shape[1]}f", data)
        for k, row in enumerate(plain["rotating_m"]):
            assert [values[3 * k + c] + f4["anchor_m"][c] for c in range(3)] == pytest.approx(row, abs=1e-6)
    assert "time_s" in lists
    assert "time_s" not in packed


def test_lists_are_refused_where_packed_arrays_are_not(monkeypatch):
    monkeypatch.setattr(work, "GREATEST_SAMPLES_IN_LISTS", 80)  # same-lob has 51 and 123
    assert refused(trace(), 422)[0]["field"] == "motions.1"
    assert trace(query="?arrays=f4").status_code == 200


def test_held_gravity_sets_the_follower():
    answer = trace(query="?hold=gravity&held=2.763489&follower=habitat.spin_rpm").json()
    assert answer["habitat"]["deck_gravity_m_s2"] == pytest.approx(2.763489, rel=1e-12)
    answer = trace(query="?hold=rim_speed&held=30&follower=habitat.radius_m").json()
    assert answer["habitat"]["rim_speed_m_s"] == pytest.approx(30, rel=1e-12)


@each_row(
    ("query", "field"),
    [("?arrays=f8", "arrays"), ("?units=imperial", "units"), ("?hold=gravity", "held"), ("?hold=gravity&held=-1", "held"),
     ("?hold=gravity&held=nan", "held"), ("?hold=gravity&held=1e8", "habitat.spin_rpm")],
)  # fmt: skip
def test_a_wrong_question_is_refused_by_name(query, field):
    assert refused(trace(query=query), 422)[0]["field"] == field


def test_what_is_not_there_or_not_answered_is_refused_in_the_same_shape():
    refused(call("GET", "/api/nothing"), 404)
    refused(call("GET", "/api/examples/none"), 404)
    refused(call("POST", "/api/export/none", content="{}", headers=JSON), 404)
    refused(call("GET", "/api/trace"), 405)
    refused(call("POST", "/api/trace", content=SCENE, headers={"content-type": "text/plain"}), 415)
    refused(call("POST", "/api/trace", content=b"x" * 1_000_001, headers=JSON), 413)


def test_a_body_of_no_stated_length_is_counted():
    async def chunks():
        for _ in range(30):
            yield b" " * 100_000

    assert refused(call("POST", "/api/trace", content=chunks(), headers=JSON), 413)


def test_another_host_is_refused():
    assert refused(call("GET", "/api/health", headers={"host": "rimfall.invalid"}), 400)[0]["field"] == "host"


@each_row(
    ("host", "served_as", "may"),
    [("localhost:80", "127.0.0.1", True), ("[::1]:90", "::1", True), ("::1", "::1", True), ("", "127.0.0.1", False),
     ("10.0.0.9:8150", "0.0.0.0", True), ("10.0.0.9", "127.0.0.1", False), ("a.invalid", "0.0.0.0", False)],
)  # fmt: skip
def test_hosts(host, served_as, may):
    assert host_allowed(host, served_as) == may


def test_every_document_carries_the_policy_and_every_answer_its_kind():
    for path in ("/", "/brief", "/static/favicon.svg", "/api/health", "/static/main.js", "/nothing"):
        assert call("GET", path).headers["x-content-type-options"] == "nosniff"
    for path in ("/", "/brief", "/speaker", "/static/favicon.svg"):  # what a browser may show as a document and run
        policy = call("GET", path).headers["content-security-policy"]
        assert "script-src 'self'" in policy
        assert "unsafe" not in policy


def test_the_icon_is_where_a_browser_looks_for_it():
    answer = call("GET", "/favicon.ico")
    assert answer.is_redirect
    assert call("GET", f"/{answer.headers['location']}").headers["content-type"] == "image/svg+xml"


def test_static_files_are_compressed_and_revalidated():
    answer = call("GET", "/static/main.js", headers={"accept-encoding": "gzip"})
    assert answer.headers["content-encoding"] == "gzip"
    plain = call("GET", "/static/main.js", headers={"accept-encoding": "identity"})
    assert plain.text == answer.text
    assert len(gzip.compress(plain.content)) < len(plain.content)
    again = call("GET", "/static/main.js", headers={"if-none-match": answer.headers["etag"]})
    assert again.status_code == 304


# As IANA registers them (RFC 9239 for scripts, RFC 8081 for fonts).
KINDS = {
    "a.js": "text/javascript; charset=utf-8",
    "a.css": "text/css; charset=utf-8",
    "a.html": "text/html; charset=utf-8",
    "a.txt": "text/plain; charset=utf-8",
    "a.svg": "image/svg+xml",
    "a.js.map": "application/json",
    "a.webmanifest": "application/manifest+json",
    "a.png": "image/png",
    "a.ico": "image/vnd.microsoft.icon",
    "a.woff2": "font/woff2",
    "A.JS": "text/javascript; charset=utf-8",
}


@pytest.mark.parametrize("accepted", ["gzip", "identity"])
def test_media_types_are_not_those_of_the_system(monkeypatch, tmp_path, accepted):
    """Where the system calls a script plain text, as some do, a browser would run none."""
    monkeypatch.setattr("starlette.responses.guess_type", lambda *_, **__: ("text/plain", None))
    monkeypatch.setattr("mimetypes.guess_type", lambda *_, **__: ("text/plain", None))
    for name in KINDS:
        (tmp_path / name).write_bytes(b"x" * 100)

    async def asked():
        transport = httpx.ASGITransport(app=PageFiles(directory=tmp_path))
        async with httpx.AsyncClient(transport=transport, base_url="http://127.0.0.1") as client:
            return {name: await client.get(f"/{name}", headers={"accept-encoding": accepted}) for name in KINDS}

    answers = run_apart(asked())
    assert {name: answer.headers["content-type"] for name, answer in answers.items()} == KINDS
    assert {answer.status_code for answer in answers.values()} == {200}


def test_a_fault_of_ours_has_the_one_shape_and_a_lack_of_handles_passes(monkeypatch):
    for error, status in ((ZeroDivisionError("division"), 500), (OSError(errno.EMFILE, "Too many open files"), 503)):

        def fails(*_, error=error):
            raise error

        monkeypatch.setattr(examples, "example", fails)

        async def once():
            transport = httpx.ASGITransport(app=make_app(), raise_app_exceptions=False)
            async with httpx.AsyncClient(transport=transport, base_url="http://127.0.0.1") as client:
                return await client.get("/api/examples/galley")

        answer = run_apart(once())
        assert refused(answer, status)[0]["field"] == "server"
        assert (answer.headers.get("retry-after") is not None) == (status == 503)


def test_the_page_is_compressed():
    told = call("GET", "/", headers={"accept-encoding": "gzip"})
    assert told.headers["content-encoding"] == "gzip"
    assert told.text == call("GET", "/", headers={"accept-encoding": "identity"}).text


def test_answers_are_not_compressed():
    assert (
        "content-encoding"
        not in call("POST", "/api/trace", content=SCENE, headers={**JSON, "accept-encoding": "gzip"}).headers
    )


def test_nothing_outside_the_folder_is_served():
    for path in ("/static/../pyproject.toml", "/static/%2e%2e/pyproject.toml", "/static/..%2fpyproject.toml"):
        assert call("GET", path).status_code == 404


def test_a_stream_tells_how_far_it_is_and_ends_with_the_answer():
    lines = trace(query="?arrays=f4&stream=1").text.strip().split("\n")
    assert json.loads(lines[-1])["rimfall_answer"] == 1
    assert all(set(json.loads(line)) == {"done", "of"} for line in lines[:-1])


def test_the_schema_describes_bodies_and_refusals():
    answer = call("GET", "/openapi.json", headers={"accept-encoding": "gzip"})
    assert (answer.headers["content-type"], answer.headers["content-encoding"]) == ("application/json", "gzip")
    schema = answer.json()
    assert schema["openapi"].startswith("3.1")
    body = schema["paths"]["/api/trace"]["post"]["requestBody"]["content"]["application/json"]["schema"]
    assert body == {"$ref": "#/components/schemas/Scene"}
    found = json.dumps(schema)
    for name in {part.split('"')[0] for part in found.split("#/components/schemas/")[1:]}:
        assert name in schema["components"]["schemas"]
    assert "422" in schema["paths"]["/api/trace"]["post"]["responses"]


def test_there_is_no_documentation_page_that_loads_from_elsewhere():
    assert call("GET", "/docs").status_code == 404
    assert call("GET", "/redoc").status_code == 404


def test_many_at_once_are_each_answered():
    """One that waits too long, on a machine that is busy, is told to ask again, and then has its answer."""

    async def answer(client):
        while True:
            said = await client.post("/api/trace", content=SCENE, headers=JSON)
            if said.status_code != 503:
                return said
            await asyncio.sleep(float(said.headers["retry-after"]))

    async def all_at_once():
        transport = httpx.ASGITransport(app=make_app())
        async with httpx.AsyncClient(transport=transport, base_url="http://127.0.0.1") as client:
            return await asyncio.gather(*(answer(client) for _ in range(20)))

    answers = run_apart(all_at_once())
    assert {a.status_code for a in answers} == {200}
    assert len({a.content for a in answers}) == 1


def test_the_bundle_is_asked_for_at_once_but_for_what_opens_later():
    for address in ("/", "/brief", "/speaker"):
        page = call("GET", address).text
        preloaded = re.findall(r'rel="modulepreload" href="([^"]+)"', page)
        [script] = re.findall(r'type="module" src="([^"]+)"', page)
        reached, waiting = {script}, [script]
        while waiting:
            code = call("GET", f"/{waiting.pop()}").text
            new = {f"static/vendor/page/{name}" for name in re.findall(r'(?:from|import)"\./([^"]+)"', code)} - reached
            reached |= new
            waiting += new
        assert set(preloaded) == reached - {script}
        assert len(preloaded) <= 12


def test_an_edited_module_is_served_as_it_is(monkeypatch, tmp_path):
    """And a bundle made anew again; without one, the modules are all there is."""
    (tmp_path / "vendor/page").mkdir(parents=True)
    (tmp_path / "main.js").write_text("let radius_m = 56;")
    made_from = hashlib.sha256(b"let radius_m = 56;").hexdigest()
    bundle = {"sources": {"main.js": made_from, "gone.js": made_from}, "preload": {"main.js": ["chunk.js"]}}
    monkeypatch.setattr(page, "folder", lambda name: tmp_path)
    assert page.scripts("main.js") == ("main.js", [])
    (tmp_path / "vendor/page/page.json").write_text(json.dumps(bundle))
    assert page.scripts("main.js") == ("vendor/page/main.js", ["vendor/page/chunk.js"])
    (tmp_path / "main.js").write_text("let radius_m = 57.5;")
    assert page.scripts("main.js") == ("main.js", [])
    (tmp_path / "main.js").write_text("let radius_m = 56;")
    assert page.scripts("main.js") == ("vendor/page/main.js", ["vendor/page/chunk.js"])


def test_the_page_to_print_is_served_under_the_same_guards():
    page = call("GET", "/brief")
    assert page.headers["content-type"].startswith("text/html")
    assert page.headers["content-security-policy"] == call("GET", "/").headers["content-security-policy"]
    assert not re.search(r"<style|style=|<script(?![^>]* src=)", page.text)
    assert call("HEAD", "/brief").status_code == 200
    assert call("POST", "/brief", content=b"{}", headers=JSON).status_code == 405
    for file in re.findall(r'(?:href|src)="(static/[^"]+)"', page.text):
        assert call("GET", f"/{file}").status_code == 200


def test_what_builds_the_page_is_not_served():
    for name in (
        "vendor_build.py",
        "package.json",
        "package-lock.json",
        "vendor/page/page.json",
        "vendor/bundler/node_modules/esbuild/lib/main.js",
    ):
        assert call("GET", f"/static/{name}").status_code == 404


@each_row(
    ("accepted", "sent"),
    [("gzip", "gzip"), ("br, gzip;q=0.5", "gzip"), ("gzip;q=0", None), ("gzip; q=0.0", None), ("br", None)],
)
def test_a_file_is_compressed_for_those_who_take_it(accepted, sent):
    assert call("GET", "/static/main.js", headers={"accept-encoding": accepted}).headers.get("content-encoding") == sent


@each_row(("accepted", "sent"), [("gzip", "gzip"), ("identity", None)])
def test_the_fields_are_compressed_for_those_who_take_it(accepted, sent):
    answer = call("GET", "/api/fields", headers={"accept-encoding": accepted})
    assert answer.headers.get("content-encoding") == sent
    assert answer.headers["vary"] == "accept-encoding, accept-language, cookie"
    assert set(answer.json()["kinds"]) >= {"drop", "hang", "walk"}


def test_without_what_npm_gives_the_page_says_so_and_the_rest_works(monkeypatch, tmp_path):
    """As after an editable install where npm could not be reached."""
    (tmp_path / "three.js").write_text("")
    for module in (page, pdf):
        monkeypatch.setattr(module, "folder", lambda _: tmp_path)
    for path in ("/", "/brief", "/speaker"):
        answer = call("GET", path)
        assert answer.status_code == 503
        assert "run: python static/vendor_build.py" in answer.text
    assert call("POST", "/api/feel", content=SCENE, headers=JSON).status_code == 200
    request = json.dumps({"scene": json.loads(SCENE)})
    assert call("POST", "/api/export/map-svg", content=request, headers=JSON).status_code == 200
    with pytest.raises(Refused, match=r"PDF cannot be written without the page's fonts"):
        pdf.pdf([Drawing(10.0, 10.0, "A", (Text(1.0, 1.0, "a", 4.0),))], 10.0, 10.0)
