"""Scenes to start from, opened at once: their answers are made once for each program, kept on disk, and never another's or a broken one."""

import asyncio
import gzip
import json

import httpx
import pytest

from rimfall.language import TRIED_OUT
from rimfall.scene import examples
from rimfall.web import ready, work
from rimfall.web.app import make_app
from tests.apart import run_apart

OPENED = "/api/examples/galley/opened"


@pytest.fixture(autouse=True)
def caches(tmp_path, monkeypatch):
    monkeypatch.setattr(ready, "_caches", lambda: tmp_path)
    return tmp_path


@pytest.fixture
def made(monkeypatch):
    """The ids that were worked out, in order."""
    names, make = [], work.WORK["example"]

    def noted(body, watch, units):
        names.append(f"{body.decode()} {units}")
        return make(body, watch, units)

    monkeypatch.setitem(work.WORK, "example", noted)
    return names


def ask(*paths, app=None, headers=None):
    """The answers to GET of these, all at once."""

    async def all_of_them():
        transport = httpx.ASGITransport(app=app or make_app())
        async with httpx.AsyncClient(transport=transport, base_url="http://127.0.0.1", headers=headers) as client:
            return await asyncio.gather(*(client.get(path) for path in paths))

    return run_apart(all_of_them())


def test_it_is_what_asking_for_its_parts_gives(made):
    (opened,) = ask(OPENED)
    parts = opened.json()
    document = json.dumps(parts["document"]).encode()
    options = {"arrays": "f4", "units": "si", "hold": None, "held": None, "follower": None}
    assert parts["trace"] == json.loads(work.WORK["trace"](document, None, **options).body)
    assert parts["mesh"] == json.loads(work.WORK["mesh"](document, None).body)


def test_it_is_worked_out_once_for_all_who_ask_and_by_one_server_for_the_next(made):
    first = ask(OPENED, OPENED, f"{OPENED}?units=us")
    again = ask(OPENED)
    assert sorted(made) == ["galley si", "galley us"]
    assert {answer.status_code for answer in (*first, *again)} == {200}
    assert again[0].content == first[0].content == first[1].content != first[2].content


def test_another_program_makes_its_own_and_a_damaged_file_is_made_anew(made, monkeypatch, caches):
    whole = ask(OPENED)[0].content
    monkeypatch.setattr(ready, "program", lambda: "another")
    ask(OPENED)
    assert made == ["galley si"] * 2
    (file,) = caches.glob("rimfall/scenes-another/*")
    file.write_bytes(file.read_bytes()[:-20])
    assert ask(OPENED)[0].content == whole
    assert made == ["galley si"] * 3
    assert gzip.decompress(file.read_bytes()) == whole


def test_of_other_programs_only_the_last_few_stay(monkeypatch, caches):
    for name in "abcd":
        monkeypatch.setattr(ready, "program", lambda name=name: name)
        ask(OPENED)
    assert len(list(caches.glob("rimfall/scenes-*"))) == 3


def test_nothing_can_be_kept_and_it_opens_all_the_same(made, caches):
    (caches / "rimfall").write_text("in the way")
    app = make_app()
    assert [answer.status_code for _ in range(2) for answer in ask(OPENED, app=app)] == [200, 200]
    assert made == ["galley si"]


def test_whoever_takes_no_gzip_has_it_plain():
    plain, packed = ask(OPENED, headers={"accept-encoding": "identity"})[0], ask(OPENED)[0]
    assert "content-encoding" not in plain.headers
    assert packed.headers["content-encoding"] == "gzip"
    assert plain.json() == packed.json()


def test_what_is_missing_is_made_once_the_list_was_asked_for(made, monkeypatch):
    monkeypatch.setattr(ready.examples, "SAY", {"empty": "", "steep-lob": ""})

    async def listed():
        app = make_app()
        transport = httpx.ASGITransport(app=app)
        async with httpx.AsyncClient(transport=transport, base_url="http://127.0.0.1") as client:
            await client.get("/api/examples?units=us")
            await app.state.ready._filling

    run_apart(listed())
    assert made == ["empty us", "steep-lob us"]


def test_none_of_that_name():
    assert ask("/api/examples/nothing/opened")[0].status_code == 404


def test_the_program_s_digest_is_of_every_file_that_answers_depend_on(monkeypatch, tmp_path):
    """The same package with one byte more in one module is another program."""
    package = tmp_path / "rimfall/web"
    package.mkdir(parents=True)
    (package / "ready.py").write_text("")
    (package.parent / "physics.py").write_text("g = 9.8\n")
    monkeypatch.setattr(ready, "__file__", str(package / "ready.py"))
    before = ready.program.__wrapped__()
    assert ready.program.__wrapped__() == before
    (package.parent / "physics.py").write_text("g = 9.81\n")
    assert ready.program.__wrapped__() != before


def test_catalogues_that_are_tried_out_make_another_program(monkeypatch, tmp_path):
    monkeypatch.setenv(TRIED_OUT, str(tmp_path))
    digests = [ready.program.__wrapped__()]
    for text in ("{", '{"language": "xw"}'):
        (tmp_path / "xw.json").write_text(text)
        digests.append(ready.program.__wrapped__())
    assert len(set(digests)) == 3


def test_an_answer_in_one_language_is_never_anothers(caches):
    """From memory and from the cache folder, whichever was made first."""

    app = make_app()

    def title(language, app=app):
        (answer,) = ask(OPENED, app=app, headers={"accept-language": language})
        return answer.json()["document"]["title"]

    german = title("de")
    english = title("en")
    assert german != english == json.loads(examples.example("galley"))["title"]
    assert [title("de"), title("en")] == [german, english]  # from memory
    assert [title("en", None), title("de", None)] == [english, german]  # from the folder
    assert {path.name.split(".")[3] for path in next(caches.rglob("scenes-*")).iterdir()} == {"de", "en"}
