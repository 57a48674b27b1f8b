"""A real scheduler and two real workers in processes of their own; one worker is killed midway."""

import builtins
import contextlib
import os
import re
import subprocess
import sys
import time

import pytest

from rimfall.errors import BadInput
from rimfall.scene.reading import read
from rimfall.sweep import cluster, folder, local, parameters
from rimfall.sweep.run import sweep_of
from tests.serving import free_port
from tests.sweep import runs

OVER = ("--over", "habitat.spin_rpm=1..6/20", "--over", "motions.serve.speed_m_s=4,6", "--export", "csv")
COUNT = 40
JOINS_WITHIN_S = 300
ALLOWED = "DASK_DISTRIBUTED__SCHEDULER__ALLOWED_FAILURES"


@contextlib.contextmanager
def started(at, what, *arguments, **environment):
    """A process of the cluster, ended at the end; what it prints goes to a file in the folder `at`."""
    command = [sys.executable, "-m", f"distributed.cli.{what}", *arguments, "--no-dashboard"]
    log = at / f"{what}-{time.monotonic_ns()}.txt"
    paths = os.pathsep.join(map(str, (runs.ROOT / "server", runs.ROOT)))
    environment = os.environ | {"PYTHONPATH": paths, "OMP_NUM_THREADS": "1"} | environment
    with log.open("wb") as output, subprocess.Popen(
        command, cwd=at, env=environment, stdout=output, stderr=output
    ) as process:  # fmt: skip
        try:
            yield process, log
        finally:
            process.kill()


def until(true, process, log):
    give_up = time.monotonic() + JOINS_WITHIN_S
    while not true():
        assert process.poll() is None, log.read_text()
        assert time.monotonic() < give_up, log.read_text()
        time.sleep(0.05)


@contextlib.contextmanager
def a_cluster(at, workers=2, allowed_failures=3):
    """The scheduler's address and the processes of its workers, all joined. allowed_failures: workers a task may lose before the
    scheduler gives it up (3 is its own default)."""
    address = f"tcp://127.0.0.1:{free_port()}"
    with contextlib.ExitStack() as stack:
        scheduler, log = stack.enter_context(
            started(at, "dask_scheduler", "--host", address, **{ALLOWED: str(allowed_failures)})
        )
        until(lambda: "Scheduler at" in log.read_text(), scheduler, log)
        yield address, with_workers(stack, at, address, workers)


def with_workers(stack, at, address, count):
    """The processes of so many more workers, all joined. Without a nanny there is no process that would start another in its place."""
    starting = [
        stack.enter_context(started(at, "dask_worker", address, "--no-nanny", "--nthreads", "1")) for _ in range(count)
    ]
    for process, said in starting:
        until(lambda said=said: re.search(r"Registered to", said.read_text()), process, said)
    return [process for process, _ in starting]


@pytest.fixture(scope="module")
def here(tmp_path_factory):
    """The scene file, and everything in the folder of a run on this machine."""
    at = tmp_path_factory.mktemp("here")
    file = runs.saved(at, runs.scene(runs.AIR, "handball"))
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(local, "each", runs.one_after_another)
        assert runs.vary(file, at / "out", *OVER).returncode == 0
    return file, runs.contents(at / "out")


def vary_and_lose_one(here, out, address, worker):
    """A run on the cluster whose worker is killed midway makes all files, each once, as this machine does."""
    file, wanted = here
    numbers, each = [], cluster.each

    def watched(*arguments):
        for number, outcome in each(*arguments):
            numbers.append(number)
            if len(numbers) == 8:
                worker.kill()
            yield number, outcome

    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(cluster, "each", watched)
        done = runs.vary(file, out, *OVER, "--scheduler", address)
    assert done.returncode == 0, done.stderr
    assert worker.wait() == -9
    assert sorted(numbers) == list(range(1, COUNT + 1))
    assert runs.contents(out) == wanted


def test_a_scheduler_without_workers_and_a_worker_with_another_version_are_refused_and_what_is_given_up_is_asked_again(
    tmp_path, here, monkeypatch
):
    """On one cluster, whose start is most of it: first it is looked at, then it loses a worker and gives up what that one had."""
    document = read(runs.saved(tmp_path, runs.scene()).read_bytes())
    sweep, _ = sweep_of(document, [parameters.parse("habitat.spin_rpm=1,2")])
    with contextlib.ExitStack() as stack:
        address, _ = stack.enter_context(a_cluster(tmp_path, 0, allowed_failures=0))
        with monkeypatch.context() as patched:
            patched.setattr(cluster, "_JOINS_WITHIN_S", 2)
            with pytest.raises(BadInput, match="has no worker"):
                next(cluster.each(None, [1], address))
        lost, _ = with_workers(stack, tmp_path, address, 2)
        with monkeypatch.context() as patched:
            patched.setattr(cluster, "__version__", "0.0.0")
            with pytest.raises(BadInput, match=r"This is Rimfall 0\.0\.0, but a worker has"):
                next(cluster.each(sweep, [1], address))
        vary_and_lose_one(here, tmp_path / "out", address, lost)


def test_a_cluster_that_loses_a_worker_makes_all_files_and_a_scheduler_that_goes_away_is_said(
    tmp_path, here, monkeypatch
):
    """The worker that is left does the second run, till the scheduler goes away; then the same command goes on here."""
    file, wanted = here
    with contextlib.ExitStack() as stack:
        address, workers = stack.enter_context(a_cluster(tmp_path, 2))
        vary_and_lose_one(here, tmp_path / "whole", address, workers[0])
        monkeypatch.setattr(cluster, "_JOINS_WITHIN_S", 5)
        keep, kept = folder.keep, []

        def leaving(place, outcome):
            keep(place, outcome)
            kept.append(outcome.number)
            if len(kept) == 3:
                stack.close()

        monkeypatch.setattr(folder, "keep", leaving)
        done = runs.vary(file, tmp_path / "out", *OVER, "--scheduler", address)
    assert done.returncode == 2
    assert f"The scheduler at {address} went away" in done.stderr
    assert 3 <= len(runs.records(tmp_path / "out")) < COUNT
    monkeypatch.setattr(local, "each", runs.one_after_another)
    assert runs.vary(file, tmp_path / "out", *OVER).returncode == 0
    assert runs.contents(tmp_path / "out") == wanted


def test_an_address_where_no_scheduler_is_is_refused(monkeypatch):
    monkeypatch.setattr(cluster, "_JOINS_WITHIN_S", 1)
    address = f"tcp://127.0.0.1:{free_port()}"
    with pytest.raises(BadInput, match=re.escape(f"No scheduler answers at {address}")):
        next(cluster.each(None, [1], address))
    with pytest.raises(BadInput, match="No scheduler answers at nowhere://x"):
        next(cluster.each(None, [1], "nowhere://x"))


def test_without_the_package_the_extra_to_install_is_named(monkeypatch):
    real = builtins.__import__

    def missing(name, *rest):
        if name == "distributed":
            raise ImportError(name)
        return real(name, *rest)

    monkeypatch.setattr(builtins, "__import__", missing)
    with pytest.raises(BadInput, match=re.escape("pip install 'rimfall[cluster]'")):
        next(cluster.each(None, [1], "tcp://127.0.0.1:8786"))
