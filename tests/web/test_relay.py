"""Two server processes and the Redis server between them: one show. Redis is Debian's package redis-server, which `.ci/run` installs."""

import contextlib
import http.client
import json
import re
import shutil
import subprocess
import sys
import time

import pytest

from rimfall.errors import BadInput
from rimfall.scene import examples
from rimfall.web.share import relay
from tests.apart import run_apart
from tests.serving import ROOT, free_port, wait_until_healthy

from .shows import ASK, NOW

REDIS = shutil.which("redis-server")
TO_INSTALL = "There is no redis-server: install it (Debian: apt-get install redis-server), as .ci/run does."
SCENE = json.loads(examples.example("same-lob"))


@contextlib.contextmanager
def redis_server(folder, port):
    """A Redis server on this machine alone, that keeps nothing; yields its process."""
    assert REDIS, TO_INSTALL
    told = ["--bind", "127.0.0.1", "--port", str(port), "--save", "", "--appendonly", "no", "--dir", folder]
    with subprocess.Popen([REDIS, *told], stdout=subprocess.DEVNULL) as process:
        try:
            wait_for(lambda: answers(port) or process.poll() is not None)
            assert process.poll() is None
            yield process
        finally:
            process.terminate()


def answers(port):
    with contextlib.suppress(BadInput):
        return relay.checked(f"redis://127.0.0.1:{port}/0")
    return None


def wait_for(what):
    ends_s = time.monotonic() + 60
    while not (found := what()):
        assert time.monotonic() < ends_s
        time.sleep(0.02)
    return found


class Server:
    """A server process of a show: `rimfall serve --share --relay`."""

    def __init__(self, host, log, address):
        self.host, self.port, self.log = host, free_port(), log
        command = [sys.executable, "-m", "rimfall", "serve", "--share", "--host", host, "--port", str(self.port)]
        with log.open("wb") as output:
            more = ["--no-open", "--workers", "0", "--relay", address]
            self.process = subprocess.Popen([*command, *more], cwd=ROOT, stdout=output, stderr=output)

    def ready(self):
        """Wait until it answers; the keys it printed."""
        wait_until_healthy(f"http://{self.host}:{self.port}", self.process, self.log)
        said = self.log.read_text()
        self.presenter, self.followers = re.search(r"present\?key=(\S+)", said)[1], re.search(r"follow#(\S+)", said)[1]

    def ask(self, method, path, body=None, presents=False):
        """(status, JSON) of the presenter or of a follower."""
        headers = {"content-type": "application/json", "authorization": f"Bearer {self.followers}"}
        if presents:
            headers["cookie"] = f"rimfall-presenter-{self.port}={self.presenter}"
        one = http.client.HTTPConnection("127.0.0.1" if presents else self.host, self.port, timeout=60)
        with contextlib.closing(one):
            one.request(method, path, None if body is None else json.dumps(body), headers)
            answer = one.getresponse()
            return answer.status, json.loads(answer.read())

    @contextlib.contextmanager
    def stream(self):
        """A function that gives the next event of a name that is so."""
        one = http.client.HTTPConnection(self.host, self.port, timeout=60)
        with contextlib.closing(one):
            one.request("GET", "/api/follow/now", None, {"authorization": f"Bearer {self.followers}"})
            answer = one.getresponse()
            assert answer.status == 200

            def following(name, which=lambda data: True):
                event = None
                while line := answer.readline().decode():
                    if line.startswith("event: "):
                        event = line.removeprefix("event: ").strip()
                    elif line.startswith("data: ") and event == name and which(data := json.loads(line[6:])):
                        return data
                raise AssertionError("the stream has ended")

            yield following
            answer.close()


@pytest.fixture
def two(tmp_path):
    """Two servers of one show, and how to start Redis anew."""
    port = free_port()
    with contextlib.ExitStack() as opened:
        redis = opened.enter_context(redis_server(tmp_path, port))
        address = f"redis://127.0.0.1:{port}/0"
        servers = [Server(f"127.0.0.{n}", tmp_path / f"{n}.txt", address) for n in (2, 3)]
        try:
            for server in servers:
                server.ready()
            yield (*servers, redis, lambda: opened.enter_context(redis_server(tmp_path, port)))
        finally:
            for server in servers:
                server.process.terminate()
                server.process.wait()


@pytest.mark.long
def test_two_processes_are_one_show(two):
    first, second, redis, redis_anew = two
    assert (first.presenter, first.followers) == (second.presenter, second.followers)

    status, scene = first.ask("POST", "/api/share/scenes", SCENE, presents=True)
    assert status == 200
    status, clock = first.ask("POST", "/api/share/now", NOW | scene | {"ask": ASK}, presents=True)
    assert status == 200

    with second.stream() as there, first.stream() as here:  # who comes late, to the other process, gets all
        now = there("now")
        assert (now["line"], now["clock"], now["scene"]) == (NOW["line"], clock, scene["scene"])
        assert second.ask("GET", f"/api/follow/scenes/{scene['scene']}")[1]["document"] == SCENE
        there("room", lambda room: room["followers"] == 2)
        here("room", lambda room: room["followers"] == 2)
        for server, who in ((first, "a" * 16), (second, "b" * 16), (second, "a" * 16)):
            assert server.ask("POST", "/api/follow/guess", {"ask": ASK["id"], "who": who, "along_m": 1.5})[0] == 200
        here("room", lambda room: room["count"] == 2)
        second.ask("POST", "/api/share/now", NOW | {"step": 7}, presents=True)
        assert here("now", lambda now: now["step"] == 7)["clock"]["at_ms"] > clock["at_ms"]
        times = [server.ask("GET", "/api/follow/clock")[1]["at_ms"] for server in (first, second, first)]
        assert max(times) - min(times) < 60_000  # one clock, not each process's own from its start

        redis.terminate()
        redis.wait()
        status, answer = first.ask("POST", "/api/share/now", NOW | {"step": 8}, presents=True)
        assert (status, answer["refused"][0]["field"]) == (503, "relay")
        redis_anew()
        wait_for(lambda: first.ask("POST", "/api/share/now", NOW | {"step": 9}, presents=True)[0] == 200)
        assert there("now", lambda now: now["step"] == 9)
    for server in (first, second):
        said = server.log.read_text()
        assert "Traceback" not in said
        assert said.count("\n") == 2


def test_a_relay_that_is_not_there_is_refused():
    for address in (f"redis://127.0.0.1:{free_port()}/0", "127.0.0.1:6379", "http://127.0.0.1/"):
        with pytest.raises(BadInput) as refused:
            relay.checked(address)
        assert refused.value.refusals[0].field == "relay"


def test_the_clock_is_that_of_redis_by_the_quickest_answer():
    own_ms, shared = [5_000.0], relay.ByRedis("redis://127.0.0.1:1/0")
    takes_ms = iter([900, 4, 700, 300, 8, 10, 600])

    class Redis:
        async def time(self):
            there_ms = own_ms[0] + 123_456.75  # when it was asked
            own_ms[0] += next(takes_ms)
            return divmod(round(there_ms * 1e3), 1_000_000)

    shared._client, shared._clock.now_ms = Redis(), lambda: own_ms[0]
    run_apart(shared._look_at_its_clock())
    assert shared.now_ms() - own_ms[0] == pytest.approx(123_456.75, abs=4 / 2 + 0.01)
