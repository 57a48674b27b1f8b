"""Files are written whole or not at all: killed in the middle, with a full disk, where nothing can be written."""

import ast
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


def test_a_name_that_is_too_long_leaves_the_others_unwritten_too(tmp_path):
    with pytest.raises(BadInput, match="File name too long"):
        write_all({tmp_path / ("n" * 250 + ending): b"new" for ending in (".csv", ".notes.json")})
    assert list(tmp_path.iterdir()) == []


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


KILLED_AT_EACH_STEP = """
import os, pathlib, sys
from rimfall.cli.main import main

def killed_at(step):
    left = iter(range(step))
    for name in ("write_bytes", "replace", "unlink"):
        def stepping(path, *given, do=getattr(pathlib.Path, name)):
            if next(left, None) is None:
                os._exit(0)  # as SIGKILL: nothing of the program runs any more
            return do(path, *given) if do.__name__ != "unlink" else do(path, missing_ok=True)
        setattr(pathlib.Path, name, stepping)
    main(sys.argv[1:])
    os._exit(1)

sys.stdout, said = open(os.devnull, "w"), sys.stdout
main(sys.argv[1:3])  # loads what all of them need
step, code = 0, 0
while code == 0:
    child = os.fork()
    if child == 0:
        killed_at(step)
    code = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
    names = [path for path in pathlib.Path.cwd().iterdir() if not path.name.startswith(".")]
    print(step, {path.name: path.read_bytes() for path in names}, sep="\t", file=said)
    step += 1
"""


def test_an_export_killed_at_any_step_leaves_each_file_old_or_new(tmp_path):
    """Before each of its steps on disk the command ends as by SIGKILL, over and over in one folder."""
    names, folder = ("a.json", "b.notes.json"), tmp_path / "out"
    scene = ROOT / "server/rimfall/scene/examples/off-the-rim.json"
    folder.mkdir()
    exports = [word for name in names for word in ("--export", name)]
    for name in names:
        (folder / name).write_bytes(b"of yesterday")
    done = subprocess.run(
        [sys.executable, "-c", KILLED_AT_EACH_STEP, "trace", scene, *exports],
        cwd=folder,
        capture_output=True,
        text=True,
    )
    assert done.returncode == 0, done.stderr
    seen = [ast.literal_eval(line.partition("\t")[2]) for line in done.stdout.splitlines()]
    assert len(seen) > 2 * len(names)  # each is written and each is moved
    new = seen[-1]
    assert all(len(new[name]) > KILOBYTE for name in names)
    for files in seen:
        assert all(files[name] in (b"of yesterday", new[name]) for name in names)
        assert set(files) == set(names)
    assert any(files[names[0]] != files[names[1]] for files in seen)
