"""The pool of processes: one that dies loses nothing, one that always dies is given up."""

import functools
import json
import multiprocessing
import os
import signal
import threading
import time
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool

import pytest

from rimfall import processes
from rimfall.errors import BadInput
from rimfall.scene.reading import read
from rimfall.sweep import local, parameters
from rimfall.sweep.job import Outcome
from rimfall.sweep.run import sweep_of
from tests.sweep import runs
from tests.tables import each_row


def sweep(count):
    return sweep_of(read(json.dumps(runs.scene())), [parameters.parse(f"habitat.spin_rpm=1..6/{count}")])[0]


def test_a_process_that_dies_loses_nothing():
    done = []
    for number, outcome in local.each(sweep(30), list(range(1, 31)), 2):
        done.append(number)
        assert isinstance(outcome, Outcome)
        if len(done) in (3, 12):
            multiprocessing.active_children()[0].kill()
    assert sorted(done) == list(range(1, 31))


@pytest.mark.parametrize("handed_out", [0, 3])
def test_a_process_that_dies_while_work_is_handed_out_loses_nothing(monkeypatch, handed_out):
    calls = iter([*[None] * (handed_out + 1), BrokenProcessPool("one died meanwhile")])
    submit = ProcessPoolExecutor.submit

    def sometimes_broken(pool, *job):
        error = next(calls, None)
        if error is None:
            return submit(pool, *job)
        for child in multiprocessing.active_children():
            child.kill()
        raise error

    monkeypatch.setattr(ProcessPoolExecutor, "submit", sometimes_broken)
    outcomes = list(local.each(sweep(6), list(range(1, 7)), 2))
    assert sorted(number for number, _ in outcomes) == list(range(1, 7))
    assert all(isinstance(outcome, Outcome) for _, outcome in outcomes)


def began(met, _sweep, _number):
    """In place of the work: what this process was started with, told once all three have one. met: the folder where they tell so."""
    (met / str(os.getpid())).touch()
    give_up = time.monotonic() + 300
    while len(list(met.iterdir())) < 3 and time.monotonic() < give_up:
        time.sleep(0.01)
    return (
        os.getpid(),
        os.environ["OPENBLAS_NUM_THREADS"],
        signal.SIGINT in signal.pthread_sigmask(signal.SIG_BLOCK, ()),
    )


def test_every_process_starts_on_one_thread_and_leaves_ctrl_c_alone(monkeypatch, tmp_path):
    monkeypatch.setattr(local, "work", functools.partial(began, tmp_path))
    monkeypatch.delenv("OPENBLAS_NUM_THREADS", raising=False)
    told = [outcome for _, outcome in local.each(sweep(6), list(range(1, 7)), 3)]
    assert len({process for process, _, _ in told}) == 3
    assert {(threads, held) for _, threads, held in told} == {("1", True)}
    assert "OPENBLAS_NUM_THREADS" not in os.environ
    assert signal.SIGINT not in signal.pthread_sigmask(signal.SIG_BLOCK, ())


def test_what_kills_its_process_three_times_is_given_up():
    over_with = threading.Event()

    def kill_all():
        while not over_with.wait(0.01):
            for child in multiprocessing.active_children():
                child.kill()

    killer = threading.Thread(target=kill_all)
    killer.start()
    ((number, error),) = local.each(sweep(2), [1], 1)
    over_with.set()
    killer.join()
    assert number == 1
    assert isinstance(error, BrokenProcessPool)


def test_no_process_is_left_when_the_work_is_left():
    doing = local.each(sweep(30), list(range(1, 31)), 2)
    next(doing)
    assert len(multiprocessing.active_children()) == 2
    doing.close()
    assert multiprocessing.active_children() == []


@each_row("count", [0, -1, 100_000])
def test_a_number_of_workers_out_of_range_is_refused(count):
    with pytest.raises(BadInput, match="1 to 512"):
        processes.workers_of(count)


def test_ctrl_c_while_a_process_is_started_leaves_environment_and_signals_as_they_were(monkeypatch):
    def interrupted():
        raise KeyboardInterrupt

    before = signal.pthread_sigmask(signal.SIG_BLOCK, ()), dict(os.environ)
    monkeypatch.setattr(processes.resource_tracker, "ensure_running", interrupted)
    with pytest.raises(KeyboardInterrupt), processes.started_quietly():
        pytest.fail("nothing was started")
    assert (signal.pthread_sigmask(signal.SIG_BLOCK, ()), dict(os.environ)) == before
