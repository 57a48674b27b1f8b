"""Streams that are closed, full or not read, and documents in whatever encoding an editor saved: words and exit codes, no traceback."""

import json
import os
import subprocess
import sys

import pytest

from rimfall import api
from rimfall.scene import examples
from tests.commands import ROOT, rimfall
from tests.sweep import runs
from tests.tables import each_row
from tests.web.test_api import call

SIZE = "size --exactly gravity=0.9 --most spin=2"
FULL = "Cannot write to standard output: No space left on device."
# what a shell is told after `rimfall`: exit code, what is said on standard error
ROWS = [
    (f"{SIZE} > /dev/full", 2, f"rimfall: {FULL}\n"),
    (f"{SIZE} --json > /dev/full", 2, f"rimfall: {FULL}\n"),
    (f"{SIZE} >&-", 0, ""),
    (f"{SIZE} --json <&- >&-", 0, ""),
    ("trace - <&-", 2, "rimfall: Cannot read -: standard input is closed.\n"),
    ("trace - </dev/null >&- 2>&-", 2, ""),
    ("trace no-such-file.json 2>/dev/full", 2, ""),
    ("--help > /dev/full", 2, f"rimfall: {FULL}\n"),
    ("--version > /dev/full", 2, f"rimfall: {FULL}\n"),
    ("--version >&-", 0, ""),
    ("nonsense 2>&-", 2, ""),
    ("nonsense 2>/dev/full", 2, ""),
]


def started(command):
    whole = ["sh", "-c", f'exec "$0" -m rimfall {command}', sys.executable]
    return subprocess.Popen(whole, cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE)


@pytest.mark.skipif(os.name == "nt", reason="a shell's redirections")
def test_streams_that_are_closed_or_full():
    """All at once, for each is mostly a start."""
    running = [started(command) for command, _, _ in ROWS]
    came = [(process.communicate(), process.returncode) for process in running]
    found = [(row[0], code, error.decode()) for row, ((_, error), code) in zip(ROWS, came, strict=True)]
    assert found == ROWS


@pytest.mark.skipif(os.name == "nt", reason="a pipe of POSIX")
def test_a_reader_that_goes_away_is_nothing_wrong():
    for command in (SIZE, "--help"):
        process = started(command)
        process.stdout.close()
        process.stdin.close()
        assert (process.stderr.read(), process.wait()) == (b"", 0)
        process.stderr.close()


@pytest.mark.skipif(os.name == "nt", reason="a shell's redirections")
def test_a_file_asked_for_is_written_though_nobody_reads_the_words(tmp_path):
    """What is opened first does not take the place of an output that was closed."""
    file, out = runs.saved(tmp_path, runs.scene()), tmp_path / "out"
    vary = started(f"vary {file} --workers 1 --over habitat.spin_rpm=1,2 --out {out} <&- >&- 2>&-")
    trace = started(f"trace {file} --export {tmp_path / 'paths.csv'} <&- >&- 2>&-")
    for process in (vary, trace):
        process.communicate()
        assert process.returncode == 0
    assert (out / "index.csv").read_text(encoding="utf-8").count("\n") == 3
    assert (tmp_path / "paths.csv").read_text(encoding="utf-8").startswith("frame,time_s,")
    assert not [path for path in tmp_path.rglob("*") if path.is_file() and b"combinations are in" in path.read_bytes()]


SCENE = json.loads(examples.example("same-lob")) | {"title": "Größe 🛰"}
ENCODINGS = ("utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "utf-32", "utf-32-le", "utf-32-be")
WISHES = {"wishes": [{"kind": "figure", "quantity": "gravity", "bound": "exactly", "value": 0.9}]}


@each_row("encoding", ENCODINGS)
def test_a_document_is_read_however_it_was_saved(encoding, tmp_path_factory):
    """RFC 8259, 8.1: a reader may take a byte-order mark; some editors save it, and UTF-16, unasked."""
    at = tmp_path_factory.mktemp("encoded")
    document = json.dumps(SCENE, ensure_ascii=False).encode(encoding)
    (at / "scene.json").write_bytes(document)
    (at / "notes.json").write_bytes(json.dumps({"scene": SCENE}, ensure_ascii=False).encode(encoding))
    (at / "wishes.json").write_bytes(json.dumps(WISHES).encode(encoding))
    assert api.open_scene(at / "scene.json").title == SCENE["title"]
    assert api.open_scene(at / "notes.json").title == SCENE["title"]
    done = rimfall("trace", at / "scene.json")
    assert (done.returncode, done.stdout.split("\n")[0]) == (0, SCENE["title"])
    done = rimfall("feel", at / "scene.json", "--height", "1.6")
    assert (done.returncode, done.stdout.split("\n")[0]) == (0, SCENE["title"])
    assert rimfall("size", at / "wishes.json", "--most", "spin=2").returncode == 0
    headers = {"content-type": "application/json"}
    answer = call("POST", "/api/feel", content=document, headers=headers)
    assert answer.status_code == 200, answer.text
    answer = call("POST", "/api/size", content=json.dumps(WISHES).encode(encoding), headers=headers)
    assert answer.status_code == 200, answer.text


@each_row(
    "document",
    [b"\xff\xfe{", b"\xfe\xff\x00", b"\xff\xfe\x00\x00", b"\xef\xbb\xbf", b"\xff\xfe{\x00\x00\xd8", b"\x00{", b"{\x00", b"\x00\x00\x00", b"\xff"],
)  # fmt: skip
def test_what_is_broken_in_its_encoding_is_refused_as_no_json(document):
    answer = call("POST", "/api/trace", content=document, headers={"content-type": "application/json"})
    assert answer.status_code == 422
    assert answer.json()["refused"][0]["field"] == "document"
