"""`POST /api/recover`: a file in, the scene in it out; a refusal of the field "file"; nothing of it stays on disk."""

import json
import os
import signal
import tempfile
from pathlib import Path

import pytest

from rimfall.scene.reading import read
from rimfall.web.app import make_app
from tests.exports.files_of_ours import TITLE, kind_of, scene, written
from tests.tables import each_row
from tests.web.test_api import call, refused
from tests.web.test_pool import Asking, as_if_begun, halted, runs, until

FILE = {"content-type": "application/octet-stream"}


def recover(content):
    return call("POST", "/api/recover", content=content, headers=FILE)


def kept(folder):
    """The files that the server keeps; Python's own processes have some there, too."""
    return list(folder.glob("rimfall-*"))


@pytest.fixture(autouse=True)
def temporary(tmp_path, monkeypatch):
    """The folder in which files are kept meanwhile."""
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    return tmp_path


@each_row("name", ["usdz", "usdc", "plot-path-pdf", "csv-frames", "notes"])
def test_a_file_is_answered_by_its_scene(temporary, name):
    answer = recover(written(name))
    assert answer.status_code == 200
    assert set(answer.json()) == {"scene", "export", "from"}
    assert read(json.dumps(answer.json()["scene"])) == scene()
    assert answer.json()["from"] == kind_of(name)
    assert (answer.json()["export"] or {}).get("fps") in ("24000/1001", None)
    assert kept(temporary) == []


@each_row("content", [b"", b"GIF89a", b"glTF", b"PK\3\4", b'{"a": 1}', TITLE.encode()])
def test_what_is_no_such_file_is_refused_by_its_field(temporary, content):
    assert refused(recover(content), 422)[0]["field"] == "file"
    assert kept(temporary) == []


def test_a_server_without_room_says_so(monkeypatch):
    monkeypatch.setattr(tempfile, "tempdir", str(Path("no such folder")))
    assert "cannot keep the file" in refused(recover(written("glb")), 422)[0]["say"]


def test_a_file_that_is_too_large_is_refused_by_its_field():
    stated = FILE | {"content-length": "60000001"}
    assert refused(call("POST", "/api/recover", content=b"", headers=stated), 413)[0]["field"] == "file"


def test_other_media_types_are_not_taken():
    assert refused(call("POST", "/api/recover", content=b"{}", headers={"content-type": "application/json"}), 415)
    assert refused(call("POST", "/api/trace", content=written("glb"), headers=FILE), 415)


@pytest.mark.parametrize("ends", ["its worker dies", "whoever asked leaves"])
def test_nothing_stays_on_disk_where_it_does_not_come_to_an_answer(temporary, ends, monkeypatch):
    as_if_begun(monkeypatch)
    app = make_app(workers=1)

    async def ended():
        pid = await halted(app)
        asking = Asking(app, "/api/recover", written("glb"), FILE["content-type"].encode())
        await until(lambda: app.state.pool.counts() == (1, 0))
        assert len(kept(temporary)) == 1
        if ends == "its worker dies":
            os.kill(pid, signal.SIGKILL)
            assert (await asking.answered())[0] == 503
        else:
            await asking.leave()
        await until(lambda: app.state.pool.counts() == (0, 0))
        assert kept(temporary) == []
        again = await Asking(app, "/api/recover", written("glb"), FILE["content-type"].encode()).answered()
        assert again[0] == 200, again[2]
        assert json.loads(again[2])["from"] == "glb"

    try:
        runs(ended)
    finally:
        app.state.pool.close()
        app.state.pool.join()
