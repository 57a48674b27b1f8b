"""Two runs never share a folder: the second is refused by name, and one that was killed stands in nobody's way."""

import subprocess
import sys

import pytest

from rimfall.errors import BadInput
from rimfall.sweep import lock
from tests.sweep import runs

HOLDS = """
import sys, pathlib
from rimfall.sweep.lock import only_run_in
with only_run_in(pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[1])):
    print("held", flush=True)
    sys.stdin.read()
"""


@pytest.fixture
def holder(tmp_path):
    """Another process that has the lock of tmp_path."""
    command = [sys.executable, "-c", HOLDS, str(tmp_path)]
    with subprocess.Popen(command, cwd=runs.ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE) as process:
        assert process.stdout.readline().strip() == b"held"
        yield process
        process.kill()


def test_the_lock_of_a_process_that_was_killed_is_free(tmp_path, holder):
    with pytest.raises(BadInput) as caught, lock.only_run_in(tmp_path, tmp_path):
        pass
    (refused,) = caught.value.refusals
    assert (refused.field, refused.was) == ("out", str(tmp_path)[:80])
    assert f"process {holder.pid} on " in refused.say
    holder.kill()
    holder.wait()
    assert (tmp_path / lock.NAME).read_text()  # it could not tidy up
    with lock.only_run_in(tmp_path, tmp_path):
        pass
    assert (tmp_path / lock.NAME).read_bytes() == b""


def test_a_second_run_in_a_folder_is_refused_and_touches_nothing(tmp_path):
    file, out = runs.saved(tmp_path, runs.scene()), tmp_path / "out"
    over = ("--workers", 1, "--over", "habitat.spin_rpm=1,2")
    (out / ".rimfall").mkdir(parents=True)
    half = out / ".1-0.part"
    half.write_bytes(b"of the first run")
    with lock.only_run_in(out, out / ".rimfall"):
        done = runs.vary(file, out, *over)
    assert done.returncode == 2
    assert f"Another run is at work in {out}: process " in done.stderr
    assert half.exists()
    assert runs.vary(file, out, *over).returncode == 0


def test_where_a_file_system_knows_no_locks_a_run_goes_on(tmp_path, monkeypatch):
    def unknown(*_):
        raise OSError(95, "Operation not supported")

    monkeypatch.setattr(lock.fcntl, "flock", unknown)
    with lock.only_run_in(tmp_path, tmp_path):
        assert (tmp_path / lock.NAME).read_text().startswith("process ")


def test_windows_lock_is_taken_beyond_the_text(tmp_path, monkeypatch):
    """Its own lock, as its documentation has it: mandatory, on bytes, PermissionError where another has them."""
    held = {}

    class Msvcrt:
        LK_NBLCK = 2

        @staticmethod
        def locking(handle, _, count):
            place = lock.os.lseek(handle, 0, lock.os.SEEK_CUR)
            assert (place, count) == (1 << 30, 1)
            if held.setdefault(place, handle) != handle:
                raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(lock, "fcntl", None)
    monkeypatch.setattr(lock, "msvcrt", Msvcrt, raising=False)
    with lock.only_run_in(tmp_path, tmp_path):
        with pytest.raises(BadInput, match="Another run is at work"), lock.only_run_in(tmp_path, tmp_path):
            pass
        assert (tmp_path / lock.NAME).read_text().startswith("process ")
