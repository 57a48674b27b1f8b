"""A real server on a real socket: clients that break off, talk nonsense or all come at once; and how it stops."""

import concurrent.futures
import contextlib
import http.client
import json
import os
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import pytest

from rimfall.scene import examples
from tests.heavy import HEAVY
from tests.serving import ROOT, free_port, serving, wait_until_healthy

HEALTH = b"GET /api/health HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n"
SCENE = examples.example("same-lob").encode()
POST = b"POST /api/trace HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\n"


@pytest.fixture(scope="module")
def log(tmp_path_factory):
    return tmp_path_factory.mktemp("sockets") / "log.txt"


@pytest.fixture(scope="module")
def server(log):
    with serving(log) as origin:
        yield origin.removeprefix("http://")


def connected(server):
    host, port = server.split(":")
    return socket.create_connection((host, int(port)), timeout=30)


def said(server, request):
    """Status and body of the answer to raw bytes."""
    with connected(server) as one:
        one.sendall(request)
        answer = http.client.HTTPResponse(one, method=request.split(b" ")[0].decode("latin-1"))
        answer.begin()
        return answer.status, answer.read()


def trace(server, body=SCENE, path="/api/trace?arrays=f4"):
    one = http.client.HTTPConnection(server, timeout=60)
    try:
        one.request("POST", path, body, {"content-type": "application/json"})
        answer = one.getresponse()
        return answer.status, answer.read()
    finally:
        one.close()


@pytest.mark.parametrize(
    "half",
    [
        POST + b"Content-Length: 5000\r\n\r\n{",
        POST + b"Transfer-Encoding: chunked\r\n\r\n5\r\n{\"a\":\r\n",
        POST + b"Content-Length: %d\r\n\r\n" % len(SCENE) + SCENE,
        b"POST /api/trace?stream=1 HTTP/1.1" + POST[POST.index(b"\r") :] + b"Content-Length: %d\r\n\r\n" % len(SCENE) + SCENE,
        b"GET /static/vendor/three.core.js HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n",
    ],
    ids=["in the body", "in a chunk", "before the answer", "in a stream", "before a file"],
)  # fmt: skip
def test_a_client_that_goes_away_is_no_fault(server, log, half):
    for _ in range(5):
        with connected(server) as one:
            one.sendall(half)
            assert said(server, HEALTH)[0] == 200  # by then the half has been read
    assert trace(server)[0] == 200
    assert "Traceback" not in log.read_text()
    assert "ERROR" not in log.read_text()


@pytest.mark.parametrize(
    ("request_", "status"),
    [
        (b"GET / HTTP/1.1\r\n\r\n", 400),
        (b"GET / HTTP/1.0\r\n\r\n", 400),
        (b"GET / HTTP/1.1\r\nHost: rimfall.invalid\r\n\r\n", 400),
        (b"GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nHost: rimfall.invalid\r\n\r\n", 400),
        (b"GET / HTTP/1.1\r\nHost: \xff\xfe\r\n\r\n", 400),
        (b"\x16\x03\x01 nonsense\r\n\r\n", 400),
        (POST + b"Content-Length: -5\r\n\r\n", 400),
        (POST + b"Content-Length: 9" + b"9" * 5000 + b"\r\n\r\n", 400),
        (POST + b"Content-Length: 99999999\r\n\r\n", 413),
        (POST + b"Expect: 100-continue\r\nContent-Length: 99999999\r\n\r\n", 413),
        (POST + b"\r\n", 422),
        (b"GET /%ff%fe HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n", 404),
        (b"GET /static/%00 HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n", 404),
        (b"GET /static/../server/rimfall/cli/main.py HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n", 404),
        (b"HEAD / HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n", 200),
    ],
    ids=lambda v: repr(v)[:60],
)
def test_nonsense_is_answered_and_the_server_serves_on(server, request_, status):
    assert said(server, request_)[0] == status
    assert trace(server)[0] == 200


def test_a_body_over_the_limit_in_chunks_is_refused_in_the_one_shape(server):
    chunk = b"10000\r\n" + b" " * 0x10000 + b"\r\n"
    status, body = said(server, POST + b"Transfer-Encoding: chunked\r\n\r\n" + chunk * 20 + b"0\r\n\r\n")
    (found,) = json.loads(body)["refused"]
    assert status == 413
    assert (found["field"], found["may_be"]) == ("document", "at most 1,000,000 bytes")


def test_many_clients_at_once_each_get_their_own_answer(server):
    def lob(speed):
        document = json.loads(SCENE)
        document["motions"][0]["speed_m_s"] = speed
        while (answer := trace(server, json.dumps(document)))[0] == 503:  # it has too much to do: some other time, then
            time.sleep(0.1)
        status, body = answer
        assert status == 200
        return json.loads(body)["scene"]["motions"][0]["speed_m_s"], body

    speeds = [1.0 + k / 8 for k in range(40)]
    with concurrent.futures.ThreadPoolExecutor(16) as pool:
        found = list(pool.map(lob, speeds))
    assert [speed for speed, _ in found] == speeds
    assert lob(speeds[7])[1] == found[7][1]


def test_bad_and_good_requests_share_a_connection(server):
    one = http.client.HTTPConnection(server, timeout=60)
    for body, status in ((SCENE, 200), (b"{", 422), (SCENE, 200), (b"[]", 422), (SCENE, 200)):
        one.request("POST", "/api/trace", body, {"content-type": "application/json"})
        answer = one.getresponse()
        assert answer.status == status
        answer.read()
    one.close()


@pytest.mark.skipif(sys.platform != "linux", reason="signals of POSIX, and /proc")
@pytest.mark.parametrize("how", [signal.SIGINT, signal.SIGTERM, signal.SIGKILL], ids=["Ctrl+C", "terminated", "killed"])
def test_it_stops_at_once_when_told_whatever_runs(tmp_path, how):
    """A page left open, a body that never comes to its end, an answer that nobody reads, and work without end."""
    port, log = free_port(), tmp_path / "log.txt"
    command = [sys.executable, "-m", "rimfall", "serve", "--port", str(port), "--no-open", "--workers", "1"]
    scratch = tempfile.mkdtemp()  # not below tmp_path: a socket's path may not be long
    environment = os.environ | {"TMPDIR": scratch}
    with (
        log.open("wb") as output,
        subprocess.Popen(command, cwd=ROOT, env=environment, stdout=output, stderr=output) as process,
    ):
        server = f"127.0.0.1:{port}"
        wait_until_healthy(f"http://{server}", process, log)
        with contextlib.ExitStack() as left_open:
            idle, unsent, unread, *working = (left_open.enter_context(connected(server)) for _ in range(6))
            unsent.sendall(POST + b"Content-Length: 5000\r\n\r\n{")
            unread.sendall(HEALTH.replace(b"/api/health", b"/static/vendor/three.core.js"))
            for one in working:
                one.sendall(POST + b"Content-Length: %d\r\n\r\n" % len(HEAVY) + HEAVY)
            (worker,) = wait_for_workers(process.pid)
            told_s = time.monotonic()
            process.send_signal(how)
            if how == signal.SIGINT:
                process.send_signal(how)
            code = process.wait(timeout=120)
            assert time.monotonic() - told_s < 2.0
            assert idle.recv(1) == b""
            if how != signal.SIGKILL:
                for one in working:
                    answer = http.client.HTTPResponse(one)
                    answer.begin()
                    assert answer.status == 503
    assert code == (130 if how == signal.SIGINT else -how)
    assert log.read_text().count("\n") == 1
    while os.path.exists(f"/proc/{worker}"):
        time.sleep(0.01)
    assert how == signal.SIGKILL or os.listdir(scratch) == []
    shutil.rmtree(scratch)


def wait_for_workers(server_pid):
    """The processes that a server has work done by, once there are some (Linux)."""
    while not (found := [pid for fork in children(server_pid) for pid in children(fork)]):
        time.sleep(0.01)
    return found


def children(pid):
    """The processes that a process started."""
    found = Path(f"/proc/{pid}/task").glob("*/children")
    return [int(child) for file in found for child in file.read_text().split()]
