"""Work in processes beside the server: whoever leaves stops it, what dies is replaced, what is too much is refused in time.

A worker that heeds nothing, and one that is busy for as long as a test wants, is one that the system has stopped (SIGSTOP).
"""

import asyncio
import json
import multiprocessing.forkserver
import os
import queue
import signal
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest

from rimfall.scene import examples
from rimfall.web import answering, pool, work, worker
from rimfall.web.app import make_app
from rimfall.web.work import Answer, Asked
from tests.apart import run_apart
from tests.heavy import HEAVY
from tests.serving import ROOT
from tests.tables import each_row

pytestmark = pytest.mark.skipif(os.name == "nt", reason="signals of POSIX")

SCENE = examples.example("same-lob").encode()
EXPORT = json.dumps({"scene": json.loads(SCENE), "export": {}}).encode()
WISHES = json.dumps({"wishes": [{"kind": "figure", "quantity": "gravity", "bound": "exactly", "value": 0.9}]}).encode()
ROUTES = {
    "/api/trace": SCENE,
    "/api/trace?stream=1": SCENE,
    "/api/feel": SCENE,
    "/api/mesh": SCENE,
    "/api/map?width=600": SCENE,
    "/api/plot?width=600": EXPORT,
    "/api/size": WISHES,
    "/api/export/usda": EXPORT,
    "/api/export/usda?stream=1": EXPORT,
}


@pytest.fixture(scope="module")
def app():
    """The app, with one worker; work may take long where what else runs has the processors."""
    app = make_app(workers=1, max_seconds=120)
    yield app
    app.state.pool.close()
    app.state.pool.join()


class Asking:
    """One request to the app, by a client who may leave."""

    def __init__(self, app, path="/api/trace", body=SCENE, kind=b"application/json", method="POST"):
        self.messages, self._body, self._leaves = [], body, asyncio.Event()
        route, _, query = path.partition("?")
        headers = [(b"host", b"127.0.0.1"), (b"content-type", kind)]
        scope = {"type": "http", "method": method, "path": route, "query_string": query.encode(), "headers": headers,
                 "raw_path": route.encode(), "root_path": "", "scheme": "http", "http_version": "1.1",
                 "server": ("127.0.0.1", 80), "client": ("127.0.0.1", 1), "asgi": {"version": "3.0"}}  # fmt: skip
        self._task = asyncio.ensure_future(app(scope, self._receive, self._send))

    async def _receive(self):
        if self._body is not None:
            body, self._body = self._body, None
            return {"type": "http.request", "body": body}
        await self._leaves.wait()
        return {"type": "http.disconnect"}

    async def _send(self, message):
        self.messages.append(message)

    async def leave(self):
        self._leaves.set()
        await self._task

    async def answered(self):
        """(status, headers, body)."""
        await self._task
        start, *rest = self.messages
        headers = {name.decode(): value.decode() for name, value in start["headers"]}
        return start["status"], headers, b"".join(part["body"] for part in rest)


async def until(what):
    async with asyncio.timeout(60):
        while not what():
            await asyncio.sleep(0.002)


def runs(coroutine, *arguments):
    return run_apart(asyncio.wait_for(coroutine(*arguments), 120))


def as_if_begun(monkeypatch):
    """A halted process has begun nothing; its end is heard as that of one which has."""
    monkeypatch.setattr(pool, "NotTaken", ())


async def halted(app):
    """The id of the app's one worker, which is there and heeds nothing any more."""
    app.state.pool.warm()
    await until(app.state.pool.pids)
    (pid,) = app.state.pool.pids()
    os.kill(pid, signal.SIGSTOP)
    return pid


def is_dead(pid):
    """Whether a process has ended, whether or not anybody has taken note of it."""
    try:
        return Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[0] in "ZX"
    except (FileNotFoundError, ProcessLookupError):  # the second where it ends between being opened and being read
        return True


def refused(answer, status):
    assert answer[0] == status
    (one,) = json.loads(answer[2])["refused"]
    assert set(one) == {"field", "was", "may_be", "say"}
    return one


async def assert_serves(app):
    """Nothing is at work any more, and what is asked next is answered."""
    await until(lambda: app.state.pool.counts() == (0, 0))
    status, _, body = await Asking(app).answered()
    assert status == 200, body[:500]


def test_a_process_answers_as_this_one_does(app):
    async def both(path, body):
        return (await Asking(app, path, body).answered()), (await Asking(make_app(), path, body).answered())

    for path, body in ROUTES.items():
        there, here = runs(both, path, body)
        assert there[0] == 200, path
        assert there[:2] == here[:2]
        assert there[2].splitlines()[-1] == here[2].splitlines()[-1]
    assert app.state.pool.pids() not in ([], [os.getpid()])


def test_whoever_leaves_is_heeded_within_half_a_second():
    assert pool.HEEDED_WITHIN_S + 2 * pool.LOOK_EVERY_S <= 0.4


@each_row(("path", "body"), ROUTES.items())
def test_work_that_heeds_nothing_is_ended_once_nobody_waits_for_it(app, path, body):
    async def leaves():
        pid = await halted(app)
        asking = Asking(app, path, body)
        await until(lambda: app.state.pool.counts() == (1, 0))
        await asking.leave()
        await assert_serves(app)
        assert pid not in app.state.pool.pids()

    runs(leaves)


@each_row("path", ["/api/trace", "/api/trace?stream=1"])
def test_work_that_heeds_ends_by_itself_and_its_process_stays(app, path, monkeypatch):
    monkeypatch.setattr(pool, "LONG_S", 60.0)
    monkeypatch.setattr(pool, "HEEDED_WITHIN_S", 60.0)

    async def leaves():
        app.state.pool.warm()
        asking = Asking(app, path, HEAVY)
        await until(lambda: app.state.pool.counts() == (1, 0))
        if "stream" in path:
            await until(lambda: asking.messages)
        (pid,) = app.state.pool.pids()
        await asking.leave()
        await until(lambda: app.state.pool.counts() == (0, 0))
        assert app.state.pool.pids() == [pid]

    runs(leaves)


def test_whoever_leaves_is_heeded_while_a_process_does_not_read_what_it_is_sent(app):
    async def leaves():
        pid = await halted(app)
        asking = Asking(app, body=SCENE + b" " * 900_000)  # more than a pipe holds
        await until(lambda: app.state.pool.counts() == (1, 0))
        await asking.leave()
        await assert_serves(app)
        assert pid not in app.state.pool.pids()

    runs(leaves)


def test_a_process_can_be_ended_when_what_started_it_is_gone(app):
    async def leaves():
        await assert_serves(app)
        pid = await halted(app)
        starter = multiprocessing.forkserver._forkserver._forkserver_pid
        os.kill(starter, signal.SIGKILL)
        await until(lambda: is_dead(starter))
        worker.Process().close()  # started by another one
        asking = Asking(app)
        await until(lambda: app.state.pool.counts() == (1, 0))
        await asking.leave()
        await assert_serves(app)
        await until(lambda: is_dead(pid))

    runs(leaves)


def test_a_process_whose_server_is_gone_before_it_is_ready_ends_without_a_word(monkeypatch):
    monkeypatch.setattr(worker.processes, "begin", lambda: None)
    monkeypatch.setattr(worker, "_bound_memory", lambda: None)
    ours, theirs = multiprocessing.Pipe()
    ours.close()
    assert worker._work(theirs, None) is None


def test_processes_start_where_their_starter_cannot(monkeypatch):
    """Its socket needs a folder to write to, with a path that is not too long."""

    class Cannot(multiprocessing.Process):
        def start(self):
            raise OSError("AF_UNIX path too long")

    with monkeypatch.context() as changed:
        changed.setattr(worker._CONTEXT, "Process", Cannot)
        begun = worker.Process()
    begun.begin()
    assert begun.work(Asked("size", WISHES, {"units": "si"}, 60.0), None).status == 200
    begun.close()


@each_row(("where", "what"), [(worker, "STARTS_WITHIN_S"), (threading.Thread, "start")])
def test_a_worker_that_cannot_be_had_is_told_and_tried_again(where, what, monkeypatch, capsys):
    """It was not ready in time; the system gives no more threads."""
    monkeypatch.setattr(answering, "WAITS_S", 0.02)

    def fails(_):
        raise RuntimeError("can't start new thread")

    async def asks():
        app = make_app(workers=1)
        with monkeypatch.context() as changed:
            changed.setattr(where, what, fails if what == "start" else 0.0)
            assert refused(await Asking(app).answered(), 503)["was"] == "busy"
        assert "a worker could not be started" in capsys.readouterr().err
        await assert_serves(app)
        app.state.pool.close()
        app.state.pool.join()

    runs(asks)


def test_whoever_leaves_while_waiting_is_never_worked_for(app):
    async def leaves():
        pid = await halted(app)
        first, second = Asking(app), Asking(app)
        await until(lambda: app.state.pool.counts() == (1, 1))
        await second.leave()
        assert app.state.pool.counts() == (1, 0)
        os.kill(pid, signal.SIGCONT)
        assert (await first.answered())[0] == 200

    runs(leaves)


@each_row("path", ROUTES)
def test_a_process_that_dies_is_replaced_and_its_request_told_so(app, path, monkeypatch):
    as_if_begun(monkeypatch)

    async def dies():
        pid = await halted(app)
        asking = Asking(app, path, ROUTES[path])
        await until(lambda: app.state.pool.counts() == (1, 0))
        os.kill(pid, signal.SIGKILL)
        answer = await asking.answered()
        assert refused(answer, 503)["field"] == "server"
        assert int(answer[1]["retry-after"]) > 0
        await assert_serves(app)

    runs(dies)


@each_row("path", ROUTES)
def test_work_that_a_dying_process_has_not_begun_is_done_by_another(app, path):
    async def dies():
        pid = await halted(app)
        asking = Asking(app, path, ROUTES[path])
        await until(lambda: app.state.pool.counts() == (1, 0))
        os.kill(pid, signal.SIGKILL)
        assert (await asking.answered())[0] == 200
        assert pid not in app.state.pool.pids()

    runs(dies)


def test_a_process_that_dies_in_the_midst_of_a_stream_ends_it_with_the_refusal(app):
    async def dies():
        asking = Asking(app, "/api/trace?stream=1", HEAVY)
        await until(lambda: len(asking.messages) > 1)
        (pid,) = app.state.pool.pids()
        os.kill(pid, signal.SIGKILL)
        status, _, body = await asking.answered()
        assert status == 200
        assert json.loads(body.splitlines()[-1])["refused"][0]["was"] == "ended"
        await assert_serves(app)

    runs(dies)


@each_row(("is_noticed",), [(True,), (False,)])
def test_a_process_that_dies_with_nothing_to_do_costs_no_request(app, is_noticed, monkeypatch):
    if not is_noticed:  # it dies between the look at it and the work
        monkeypatch.setattr(worker.Process, "alive", lambda _: True)

    async def dies():
        await assert_serves(app)
        (pid,) = app.state.pool.pids()
        os.kill(pid, signal.SIGKILL)
        await until(lambda: is_dead(pid))
        await assert_serves(app)

    runs(dies)


@each_row(("bound", "most"), [("MOST_WAITING", 2), ("MOST_WAITING_BYTES", 2 * len(SCENE))])
def test_no_more_than_so_much_waits(app, bound, most):
    async def crowd():
        pid = await halted(app)
        askings = [Asking(app)]
        await until(lambda: app.state.pool.counts() == (1, 0))
        askings += [Asking(app), Asking(app)]
        await until(lambda: app.state.pool.counts() == (1, 2))
        answer = await Asking(app).answered()
        assert refused(answer, 503)["was"] == "busy"
        assert int(answer[1]["retry-after"]) > 0
        os.kill(pid, signal.SIGCONT)
        for asking in askings:
            assert (await asking.answered())[0] == 200

    with pytest.MonkeyPatch.context() as changed:
        changed.setattr(pool, bound, most)
        runs(crowd)


def test_page_files_and_health_wait_for_no_work(app):
    async def beside():
        pid = await halted(app)
        askings = [Asking(app), Asking(app, body=b'{"a": ' + b"[" * 400_000)]
        for path in ("/", "/api/health", "/api/fields", "/api/examples/same-lob", "/static/favicon.svg"):
            assert (await Asking(app, path, b"", method="GET").answered())[0] == 200, path
        assert app.state.pool.counts() == (1, 1)
        os.kill(pid, signal.SIGCONT)
        assert [(await asking.answered())[0] for asking in askings] == [200, 422]

    runs(beside)


def test_nobody_waits_longer_than_a_few_seconds_for_work_to_begin(app, monkeypatch):
    assert answering.WAITS_S <= 4  # so that an answer of a second comes within five
    monkeypatch.setattr(answering, "WAITS_S", 0.02)

    async def waits():
        pid = await halted(app)
        first = Asking(app)
        await until(lambda: app.state.pool.counts() == (1, 0))
        assert refused(await Asking(app).answered(), 503)["was"] == "busy"
        os.kill(pid, signal.SIGCONT)
        assert (await first.answered())[0] == 200

    runs(waits)


def test_long_work_gives_way_and_takes_no_place(app, monkeypatch):
    monkeypatch.setattr(pool, "LONG_S", 0.0)

    async def beside():
        await halted(app)
        heavy = Asking(app, body=HEAVY)
        await until(lambda: app.state.pool.counts() == (1, 0))
        assert (await Asking(app).answered())[0] == 200
        assert app.state.pool.counts() == (1, 0)
        assert sorted(os.getpriority(os.PRIO_PROCESS, pid) for pid in app.state.pool.pids())[-1] > 0
        await heavy.leave()
        await assert_serves(app)
        await until(lambda: len(app.state.pool.pids()) == 1)

    runs(beside)


def test_work_that_does_not_heed_its_time_is_refused_all_the_same(monkeypatch):
    monkeypatch.setattr(pool, "LATE_S", 0.0)

    async def late():
        app = make_app(workers=1, max_seconds=0.01)
        await halted(app)
        assert refused(await Asking(app).answered(), 422)["field"] == "work"
        app.state.pool.close()
        app.state.pool.join()

    runs(late)


def test_a_page_that_asks_again_comes_to_the_worker_that_it_had():
    """That one has kept what it has asked before; the other has not."""
    at_work = []

    class Noted(worker.Here):
        def work(self, asked, tell):
            at_work.append(threading.current_thread())
            return super().work(asked, tell)

    several = pool.Pool(3)
    several._worker_of = Noted
    answers = queue.Queue()

    def ask():
        several.submit(pool.Job(Asked("mesh", SCENE, {}, 60.0), answers.put))

    for _ in range(3):
        ask()
    for _ in range(3):
        assert isinstance(answers.get(timeout=30), Answer)
    until_idle(several)
    last = several._idle[-1]
    for _ in range(8):
        until_idle(several)
        ask()
        assert isinstance(answers.get(timeout=30), Answer)
    assert at_work[3:] == [last] * 8
    several.close()
    several.join()


def until_idle(several):
    """Wait until all threads of a pool that are there wait for a job."""
    while len(several._idle) < len(several._threads):
        time.sleep(0.001)


def test_a_closed_pool_says_so_to_all_who_wait():
    async def closes():
        app = make_app(workers=1)
        await halted(app)
        askings = [Asking(app), Asking(app)]
        await until(lambda: app.state.pool.counts() == (1, 1))
        app.state.pool.close()
        askings.append(Asking(app))
        for asking in askings:
            assert refused(await asking.answered(), 503)["was"] == "stopping"
        app.state.pool.join()
        assert app.state.pool.pids() == []

    runs(closes)


def test_threads_do_the_work_where_there_are_no_processes_and_heed_too():
    async def here():
        app = make_app(workers=0)
        asking = Asking(app, body=HEAVY)
        await until(lambda: app.state.pool.counts() == (1, 0))
        await asking.leave()
        await assert_serves(app)
        await until(lambda: app.state.pool.pids() == [])

    runs(here)


@each_row(("error", "status", "field"), [(MemoryError(), 422, "work"), (ZeroDivisionError("division"), 500, "server")])
def test_what_fails_is_answered_in_the_one_shape(error, status, field):
    def fails(*_):
        raise error

    with pytest.MonkeyPatch.context() as changed:
        changed.setitem(work.WORK, "trace", fails)
        answer = work.answered(Asked("trace", b"", {}, 1.0), None, lambda: False)
    assert refused((answer.status, answer.headers, answer.body), status)["field"] == field


@pytest.mark.skipif(sys.platform != "linux", reason="the bound that Linux has")
def test_a_process_cannot_take_the_machines_memory():
    code = "from rimfall.web import worker; worker._bound_memory(); bytearray(100_000_000); bytearray(500_000_000)"
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT / "server", capture_output=True, text=True)
    assert done.stderr.strip().endswith("MemoryError")


def test_a_process_that_has_grown_is_replaced(monkeypatch):
    class Grows:
        pid, grown, count = 1, True, 0

        def __init__(self):
            Grows.count += 1

        def work(self, *_):
            return Answer(b"")

        def alive(self):
            return True

        def begin(self):
            """Nothing to prepare."""

        close = begin

    monkeypatch.setattr(pool, "Process", Grows)

    async def twice():
        app = make_app(workers=1)
        for _ in range(2):
            assert (await Asking(app).answered())[0] == 200
        app.state.pool.close()
        app.state.pool.join()

    runs(twice)
    assert Grows.count == 3
