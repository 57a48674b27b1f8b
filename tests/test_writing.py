"""Files are written whole or not at all: killed in the middle, with a full disk, where nothing can be written."""

import os
import resource
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from rimfall.errors import BadInput
from rimfall.exports.writing import write_all

ROOT = Path(__file__).resolve().parent.parent
KILOBYTE = 1_000


def test_all_are_written_or_none(tmp_path):
    (tmp_path / "b").mkdir()
    (tmp_path / "a").write_text("of yesterday")
    with pytest.raises(BadInput) as caught:
        write_all({tmp_path / "a": b"new", tmp_path / "b": b"new"})
    assert caught.value.refusals[0].say == f"Cannot write {tmp_path / 'b'}: Is a directory."
    assert (tmp_path / "a").read_text() == "of yesterday"
    assert {p.name for p in tmp_path.iterdir()} == {"a", "b"}
    write_all({tmp_path / "a": b"new", tmp_path / "c": b"newer"})
    assert ((tmp_path / "a").read_bytes(), (tmp_path / "c").read_bytes()) == (b"new", b"newer")


def test_long_names_that_begin_alike_are_two_files(tmp_path):
    """Cut to 200 characters they shared the file they were written in, and one ended as the other."""
    long, wide = "n" * 240, "é" * 120
    files = {
        tmp_path / f"{name}{ending}": ending.encode() for name in (long, wide) for ending in (".csv", ".notes.json")
    }
    write_all(files)
    assert {path: path.read_bytes() for path in tmp_path.iterdir()} == files


@pytest.mark.parametrize("place", ["no such folder/a.csv", "file/a.csv"])
def test_a_place_that_cannot_be_written_is_named(place, tmp_path):
    (tmp_path / "file").write_text("in the way")
    with pytest.raises(BadInput) as caught:
        write_all({tmp_path / place: b"new"})
    assert str(tmp_path / place) in caught.value.refusals[0].say
    assert {p.name for p in tmp_path.iterdir()} == {"file"}


def in_a_process(script, **more):
    return subprocess.Popen([sys.executable, "-c", script], cwd=ROOT, stderr=subprocess.PIPE, **more)


def test_a_full_disk_leaves_nothing_behind_and_is_said(tmp_path):
    """A limit on the size of files fails a write in its middle, as a full disk does."""
    script = (
        "import signal; signal.signal(signal.SIGXFSZ, signal.SIG_IGN)\n"
        "from pathlib import Path; from rimfall.exports.writing import write_all\n"
        f"write_all({{Path({str(tmp_path)!r}, 'a.csv'): bytes(10), Path({str(tmp_path)!r}, 'b.csv'): bytes(50_000)}})"
    )
    running = in_a_process(script, preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (KILOBYTE, KILOBYTE)))
    said = running.communicate(timeout=300)[1].decode()
    assert f"Cannot write {tmp_path / 'b.csv'}: " in said
    assert list(tmp_path.iterdir()) == []


def test_killed_in_the_middle_the_old_file_stays(tmp_path):
    target = tmp_path / "paths.csv"
    target.write_text("of yesterday")
    script = f"from pathlib import Path; from rimfall.exports.writing import write_all\nwrite_all({{Path({str(target)!r}): bytes(2_000_000_000)}})"
    running = in_a_process(script)
    try:
        give_up_s = time.monotonic() + 300
        while not any(p.stat().st_size > KILOBYTE for p in tmp_path.glob(".*.part")):
            assert time.monotonic() < give_up_s, running.poll()
            time.sleep(0.001)
        os.kill(running.pid, signal.SIGKILL)
    finally:
        running.kill()
        running.wait()
        running.stderr.close()
    assert target.read_text() == "of yesterday"
