"""What clients do: ask as the page does, take files away, leave, and send what nobody should."""

import gzip
import http.client
import json
import random
import socket
import time
from dataclasses import dataclass, field

from rimfall.exports.formats import FORMATS
from rimfall.scene import examples
from tests.heavy import HEAVY

PATIENCE_S = 60
AS_JSON = {"content-type": "application/json"}
LIGHT = ("same-lob", "high-drop", "down-the-deck")
WRITTEN = tuple(name for name in FORMATS if name not in ("usda", "usdc", "usdz"))


@dataclass
class Tally:
    """What came of one kind of asking: seconds of the answers, answers by status, and what failed."""

    seconds: list[float] = field(default_factory=list)
    statuses: dict[int, int] = field(default_factory=dict)
    failures: list[str] = field(default_factory=list)

    def answered(self, seconds, status):
        self.seconds.append(seconds)
        self.statuses[status] = self.statuses.get(status, 0) + 1


class Client:
    """One connection kept alive. `do(action)` runs one of ACTIONS and writes what came of it into tallies[action]."""

    def __init__(self, host, tallies, seed):
        self.host, self.tallies, self.random = host, tallies, random.Random(seed)
        self.said = ""  # by the last answer, where it refused
        self.connection = http.client.HTTPConnection(host, timeout=PATIENCE_S)

    def do(self, action):
        """Runs it; returns how many seconds the server asked to be left alone."""
        wanted, work = ACTIONS[action]
        tally, start = self.tallies[action], time.perf_counter()
        try:
            status, wait_s = work(self)
        except (OSError, http.client.HTTPException) as error:
            tally.failures.append(f"{type(error).__name__}: {error}")
            self.connection.close()
            return 0
        tally.answered(time.perf_counter() - start, status)
        if status not in wanted:
            tally.failures.append(f"status {status} {self.said}")
        return wait_s

    def ask(self, method, path, body=None, headers=AS_JSON):
        """(status, seconds to wait) of one request, its answer read to the end."""
        self.connection.request(method, path, body, headers)
        answer = self.connection.getresponse()
        body = answer.read()
        self.said = "" if answer.status < 400 else body[:300].decode(errors="replace")
        return answer.status, float(answer.headers.get("retry-after") or 0)

    def scene(self):
        """An example with a spin of its own, so that no two requests are the same."""
        document = json.loads(examples.example(self.random.choice(LIGHT)))
        document["habitat"]["spin_rpm"] = round(self.random.uniform(1, 5), 4)
        return document

    def opened(self):
        """A connection of its own, for what http.client would not send."""
        host, port = self.host.split(":")
        return socket.create_connection((host, int(port)), timeout=PATIENCE_S)


def _trace(client):
    return client.ask("POST", "/api/trace?arrays=f4", json.dumps(client.scene()))


def _opening(client):
    return client.ask("POST", "/api/trace?arrays=f4", OPENING)


def _streamed(client):
    return client.ask("POST", "/api/trace?arrays=f4&stream=1", json.dumps(client.scene()))


def _feel(client):
    return client.ask("POST", "/api/feel", json.dumps(client.scene()))


def _map(client):
    return client.ask("POST", "/api/map?width=600", json.dumps(client.scene()))


def _page(client):
    for path in ("/", "/static/page.css", "/static/favicon.svg", "/api/fields", "/api/examples"):
        status, wait_s = client.ask("GET", path, headers={})
        if status != 200:
            return status, wait_s
    return 200, 0


def _health(client):
    return client.ask("GET", "/api/health", headers={})


def _export(client):
    return client.ask("POST", f"/api/export/{client.random.choice(WRITTEN)}", json.dumps({"scene": client.scene()}))


def _recover(client):
    body = client.random.choice((json.dumps(client.scene()).encode(), b"%PDF-1.7 damaged", b"PK\x03\x04" + bytes(200)))
    return client.ask("POST", "/api/recover", body, {"content-type": "application/octet-stream"})


def _leave(client):
    """Start something heavy, streamed or not, and hang up at some moment."""
    body = HEAVY
    path = client.random.choice(("/api/trace?arrays=f4", "/api/trace?stream=1", "/api/export/csv"))
    if "export" in path:
        body = b'{"scene": ' + body + b"}"
    head = f"POST {path} HTTP/1.1\r\nhost: {client.host}\r\ncontent-type: application/json\r\ncontent-length: {len(body)}\r\n\r\n"
    with client.opened() as opened:
        opened.sendall(head.encode() + body)
        time.sleep(client.random.uniform(0, 1))
    return 0, 0


def _hostile(client):
    head = f"POST /api/trace HTTP/1.1\r\nhost: {client.host}\r\ncontent-type: application/json\r\n".encode()
    sent = client.random.choice(
        (
            b"\x16\x03\x01\x02\x00\x01\x00" * 20,
            head + b"content-length: 12\r\n\r\n" + b"[" * 12,
            head + b"content-length: 3\r\n\r\n\xff\xfe\xfa",
            head + b"content-length: 99999999999\r\n\r\n",
            head + b"content-encoding: br\r\ncontent-length: 2\r\n\r\n{}",
            head + b"content-length: 8000\r\n\r\n" + b"[" * 8000,
            head + b"transfer-encoding: chunked\r\n\r\nzz\r\n",
            head + _sized(gzip.compress(bytes(10_000_000)), b"content-encoding: gzip\r\n"),
            head + _sized(json.dumps({f"k{n}": n for n in range(20_000)}).encode()),
            b"GET / HTTP/1.1\r\nhost: elsewhere.example\r\n\r\n",
        )
    )
    with client.opened() as opened:
        opened.sendall(sent)
        line = opened.recv(4096).split(b"\r\n")[0].split()
    return (int(line[1]) if len(line) > 1 else 0), 0


def _sized(body, more=b""):
    return more + b"content-length: %d\r\n\r\n" % len(body) + body


OPENING = examples.example("same-lob")
_OK = (200, 503)
_REFUSED = (400, 408, 411, 413, 415, 422, 431, 503)
# action -> (statuses that are right, what it does)
ACTIONS = {
    "opening": (_OK, _opening),
    "trace": (_OK, _trace),
    "trace, streamed": (_OK, _streamed),
    "feel": (_OK, _feel),
    "map": (_OK, _map),
    "page": (_OK, _page),
    "health": ((200,), _health),
    "export": (_OK, _export),
    "recover": ((200, 422, 503), _recover),
    "leave": ((0,), _leave),
    "hostile": (_REFUSED, _hostile),
}
