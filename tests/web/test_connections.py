"""Connections that keep a server waiting, come in great numbers, or speak no HTTP: bounded, and refused in the one shape."""

import asyncio
import contextlib
import gc
import http.client
import json
import socket
import subprocess
import sys
import threading

import pytest
import uvicorn

from rimfall.cli import serve
from rimfall.errors import BadInput
from rimfall.scene import examples
from rimfall.web import connections, guards
from rimfall.web.app import make_app
from tests.apart import run_apart
from tests.serving import ROOT, free_port, wait_until_healthy
from tests.tables import each_row

HEAD = b"GET /api/health HTTP/1.1\r\nHost: 127.0.0.1\r\n"
POST = b"POST /api/trace HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\n"
SCENE = examples.example("same-lob").encode()


class Hurried(connections.Connection):
    """Its clocks run twenty times as fast."""

    HEAD_S, BODY_S, LEAST_BYTES_S, UNREAD_S, LINGER_S = 0.5, 1.0, 50_000, 0.5, 0.2


@contextlib.contextmanager
def served(**changed):
    """The app on a socket, in a thread of this process; yields its port and uvicorn's Server."""
    listening = socket.create_server(("127.0.0.1", 0))
    server = uvicorn.Server(uvicorn.Config(make_app(), **connections.settings() | changed))
    thread = threading.Thread(target=server.run, args=([listening],))
    thread.start()
    try:
        yield listening.getsockname()[1], server
    finally:
        server.should_exit = True
        thread.join()


@pytest.fixture(scope="module")
def hurried():
    with served(http=Hurried) as (port, server):
        yield port, server


@pytest.fixture
def port(hurried):
    return hurried[0]


@contextlib.contextmanager
def held(server):
    """Its loop stands still meanwhile: what is opened and sent has come before any clock of a connection starts."""
    wait_until(lambda: server.started)
    go_on = threading.Event()
    server.servers[0].get_loop().call_soon_threadsafe(go_on.wait)
    try:
        yield
    finally:
        go_on.set()


def wait_until(what):
    for _ in range(3000):
        if what():
            return
        threading.Event().wait(0.01)
    raise AssertionError("it did not come to that")


def connected(port):
    return socket.create_connection(("127.0.0.1", port), timeout=30)


def answer_on(one, method="GET"):
    answer = http.client.HTTPResponse(one, method=method)
    answer.begin()
    return answer, answer.read()


def refused_on(one):
    """Status, headers and the one refusal."""
    answer, body = answer_on(one)
    assert answer.headers["content-type"] == "application/json"
    (refused,) = json.loads(body)["refused"]
    assert set(refused) == {"field", "was", "may_be", "say"}
    assert len(refused["was"]) <= 80
    assert one.recv(1) == b""
    return answer.status, answer.headers, refused


def is_answered(one):
    try:
        return one.recv(1) != b""
    except ConnectionResetError:
        return False


UNFINISHED = [
    (b"G", "head"),
    (HEAD, "head"),
    (HEAD + b"\r\n" + HEAD, "head"),  # the next of a connection that is kept
    (POST + b"Content-Length: 5000\r\n\r\n{", "body"),
    (POST + b'Transfer-Encoding: chunked\r\n\r\n5\r\n{"a":\r\n', "body"),
]


def test_what_does_not_come_to_its_end_is_refused_in_time(hurried):
    port, server = hurried
    with contextlib.ExitStack() as opened:
        with held(server):  # a connection nothing was sent on is closed without a word
            waiting = [opened.enter_context(connected(port)) for _ in UNFINISHED]
            for one, (sent, _) in zip(waiting, UNFINISHED, strict=True):
                one.sendall(sent)
        for one, (sent, field) in zip(waiting, UNFINISHED, strict=True):
            if sent.startswith(HEAD + b"\r\n"):
                assert answer_on(one)[0].status == 200
            status, _, refused = refused_on(one)
            assert (status, refused["field"]) == (408, field), sent


def test_a_connection_nobody_uses_is_closed_without_a_word(port):
    with connected(port) as one, contextlib.suppress(ConnectionResetError):
        assert one.recv(1) == b""


def test_a_connection_that_is_kept_is_closed_when_it_rests():
    with served(http=Hurried, timeout_keep_alive=0.5) as (port, _), connected(port) as one:
        for _ in range(2):
            one.sendall(HEAD + b"\r\n")
            assert answer_on(one)[0].status == 200
        assert one.recv(1) == b""


def test_a_body_in_crumbs_is_refused_and_one_in_pieces_is_not(port):
    """Each piece of a body costs the loop the same, whatever is in it."""
    for piece, status in ((b" ", 400), (b" " * connections.LEAST_PIECE_BYTES, 200)):
        with connected(port) as one:
            chunk = b"%x\r\n%b\r\n" % (len(piece), piece)
            whole = b"%x\r\n%b\r\n0\r\n\r\n" % (len(SCENE), SCENE)
            one.sendall(POST + b"Transfer-Encoding: chunked\r\n\r\n" + chunk * (connections.FREE_PIECES + 1) + whole)
            if status == 200:
                assert answer_on(one)[0].status == 200
            else:
                assert refused_on(one)[0] == status


class Patient(connections.Connection):
    """It gives up nobody by the clock."""

    UNREAD_S = 600.0


def test_one_goes_where_too_much_is_unread(monkeypatch):
    """Of two who read nothing of what they have asked for, which is more than the system's own buffers take."""
    monkeypatch.setattr(connections, "MOST_UNREAD_BYTES", 0)
    with served(http=Patient) as (port, server), contextlib.ExitStack() as opened:
        for _ in range(2):
            one = opened.enter_context(connected(port))
            one.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 4096)
            one.sendall(b"GET /static/vendor/three.core.js HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n" * 40)
        wait_until(lambda: server.server_state.total_requests > 1)
        wait_until(lambda: len(server.server_state.connections) == 1)


def test_a_body_that_keeps_coming_is_waited_for(port):
    """In pieces, which take longer together than one may stand still."""
    with connected(port) as one:
        one.sendall(POST + b"Content-Length: %d\r\n\r\n" % (200_000 + len(SCENE)))
        late = threading.Event()
        for piece in (b" " * 100_000, b" " * 100_000):
            one.sendall(piece)
            late.wait(0.6)
        one.sendall(SCENE)
        assert answer_on(one)[0].status == 200


def test_an_answer_that_nobody_reads_is_given_up():
    with served(http=Hurried) as (port, server), connected(port) as one:
        one.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 4096)
        gone = threading.Event()
        for _ in range(40):  # more than the system's own buffers take
            one.sendall(b"GET /static/vendor/three.core.js HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n")
        for _ in range(200):
            if not server.server_state.connections and server.server_state.total_requests:
                break
            gone.wait(0.02)
        assert not server.server_state.connections


@each_row(
    ("sent", "status", "field"),
    [
        (b"\x16\x03\x01 nonsense\r\n\r\n", 400, "request"),
        (b"GET / HTTP/1.1\r\n\r\n", 400, "request"),
        (b"GET / HTTP/1.0\r\n\r\n", 400, "host"),
        (b"GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nHost: rimfall.invalid\r\n\r\n", 400, "request"),
        (HEAD + b"a b: c\r\n\r\n", 400, "request"),
        (b"GET /" + b"a" * 70_000, 414, "request"),
        (HEAD + b"a: " + b"b" * 70_000, 431, "request"),
        (POST + b"Content-Length: -5\r\n\r\n", 400, "request"),
        (POST + b"Content-Length: 5\r\nContent-Length: 6\r\n\r\n", 400, "request"),
        (POST + b"Transfer-Encoding: gzip\r\n\r\n", 501, "request"),
        (POST + b"Transfer-Encoding: chunked\r\n\r\nnonsense\r\n", 400, "request"),
        (POST + b"Content-Length: 99999999\r\n\r\n", 413, "document"),
        (b"BREW / HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n", 405, "request"),
        (b"BREW /static/page.css HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n", 405, "request"),
        (b"OPTIONS * HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n", 404, "request"),
        (HEAD.replace(b"GET /api/health", b"GET /api/health?arrays=%ff") + b"Connection: close\r\n\r\n", 200, None),
    ],
)
def test_whatever_is_refused_is_refused_in_the_one_shape(port, sent, status, field):
    with connected(port) as one:
        one.sendall(sent)
        if field is None:
            assert answer_on(one)[0].status == status
        else:
            answered, _, refused = refused_on(one)
            assert (answered, refused["field"]) == (status, field)


def test_a_body_must_come_uncoded(port):
    sent = POST + b"Content-Length: %d\r\nContent-Encoding: " % len(SCENE)
    for coding, status in (
        (b"br", 415),
        (b"gzip", 415),
        (b"identity, br", 415),
        (b"identity", 200),
        (b"Identity", 200),
    ):
        with connected(port) as one:
            one.sendall(sent + coding + b"\r\n\r\n" + SCENE)
            answer, body = answer_on(one, "POST")
            assert answer.status == status, coding
            if status == 415:
                (refused,) = json.loads(body)["refused"]
                assert (refused["field"], refused["was"]) == ("content-encoding", coding.decode())


def test_more_connections_than_may_be_are_told_when_to_come_again(monkeypatch):
    monkeypatch.setattr(connections, "most_connections", lambda: 4)
    monkeypatch.setattr(connections.Connection, "LINGER_S", 60.0)
    with served() as (port, server), contextlib.ExitStack() as opened:
        kept = [opened.enter_context(connected(port)) for _ in range(4)]
        for one in kept:
            one.sendall(HEAD + b"\r\n")
            assert answer_on(one)[0].status == 200
        one = opened.enter_context(connected(port))
        one.sendall(HEAD + b"\r\n")
        status, headers, refused = refused_on(one)
        assert (status, refused["field"], int(headers["retry-after"])) == (503, "server", connections.RETRY_AFTER_S)
        crowd = [opened.enter_context(connected(port)) for _ in range(20)]
        assert sum(is_answered(one) for one in crowd) == 1  # the sixth that is open; the others are cut off
        opened.close()
        while server.server_state.connections:
            threading.Event().wait(0.01)
        with connected(port) as one:
            one.sendall(HEAD + b"\r\n")
            assert answer_on(one)[0].status == 200


def test_bodies_that_never_end_take_bounded_memory():
    """300 of 900 kB, none complete, are held to the sum that may be; the others are refused at their end, a small one is answered,
    and what is held is given back."""
    held, answers = {}, {}

    async def app(scope, receive, send):
        number, pieces = scope["number"], []
        while (message := await receive())["type"] == "http.request":
            pieces.append(message["body"])
            held[number] = sum(map(len, pieces))
            if not message["more_body"]:
                await send({"type": "http.response.start", "status": 200, "headers": []})
                await send({"type": "http.response.body"})
                break
        held[number] = 0

    guarded = guards.Guards(app)

    def begun(number):
        """A request that sends what is put into the queue."""
        queue = asyncio.Queue()
        headers = [(b"host", b"127.0.0.1"), (b"content-type", b"application/json")]
        scope = {"type": "http", "method": "POST", "path": "/api/trace", "headers": headers, "number": number}

        async def send(message):
            if message["type"] == "http.response.start":
                answers[number] = message["status"], dict(message["headers"])

        return queue, asyncio.ensure_future(guarded(scope, queue.get, send))

    async def sent(queue, size, more_body):
        queue.put_nowait({"type": "http.request", "body": bytes(size), "more_body": more_body})
        while not queue.empty():
            await asyncio.sleep(0)

    async def tried():
        all_of_them = [begun(number) for number in range(300)]
        for _ in range(15):
            for queue, _ in all_of_them:
                await sent(queue, 60_000, True)
        assert sum(held.values()) <= guards._MOST_HELD
        assert answers == {}
        queue, small = begun("small")
        await sent(queue, 60_000, False)
        await small
        assert answers.pop("small")[0] == 200
        for queue, task in all_of_them:
            await sent(queue, 1, False)
            await task
        statuses = [status for status, _ in answers.values()]
        assert statuses.count(200) == guards._MOST_HELD // 900_000
        assert statuses.count(503) == 300 - guards._MOST_HELD // 900_000
        assert all(int(headers[b"retry-after"]) for status, headers in answers.values() if status == 503)
        queue, again = begun("again")
        await sent(queue, 900_000, False)
        await again
        assert answers["again"][0] == 200

    run_apart(tried())


@pytest.mark.skipif(sys.platform == "win32", reason="no limit of handles there")
def test_running_out_of_file_handles_is_told_once_and_got_over(tmp_path):
    """At a limit of 128, 300 connections of which none finishes its head: each accept that failed was a traceback, 34,777 in all."""
    port, log = free_port(), tmp_path / "log.txt"
    program = (  # the pause before accepting again, 1 s, is shortened
        "import asyncio.constants; asyncio.constants.ACCEPT_RETRY_DELAY = 0.05; "
        "import resource, sys; resource.setrlimit(resource.RLIMIT_NOFILE, (128, 128)); from rimfall.__main__ import run; "
        f"from rimfall.web.connections import Connection; Connection.HEAD_S = 0.5; "
        f"sys.argv = ['rimfall', 'serve', '--no-open', '--port', '{port}']; run()"
    )
    with log.open("wb") as output, subprocess.Popen(
        [sys.executable, "-c", program], cwd=ROOT, stdout=output, stderr=output
    ) as process:  # fmt: skip
        try:
            wait_until_healthy(f"http://127.0.0.1:{port}", process, log)
            with contextlib.ExitStack() as opened:
                for _ in range(300):
                    one = opened.enter_context(socket.socket())
                    one.setblocking(False)
                    one.connect_ex(("127.0.0.1", port))
                wait_until_healthy(f"http://127.0.0.1:{port}", process, log)
            wait_until_healthy(f"http://127.0.0.1:{port}", process, log)
        finally:
            process.terminate()
    said = log.read_text()
    assert "Traceback" not in said
    assert said.count("file handles") == 1, said


def test_a_port_that_is_taken_is_refused_and_leaves_no_socket_open():
    with socket.create_server(("127.0.0.1", 0)) as taken, pytest.raises(BadInput, match="Choose another with --port"):
        serve._listen("127.0.0.1", taken.getsockname()[1])
    gc.collect()  # a socket left open warns here, and warnings are errors
