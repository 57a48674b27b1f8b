"""The server as a client sees it: one scene over and over, the first byte of the page, memory."""

import http.client
import json
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import psutil

from rimfall.scene import examples
from tests.serving import ROOT, free_port, serving

from .row import Row, quantile

CALLS = 500
OPENING = json.loads(examples.example("same-lob"))
FEEL = ("/api/feel", examples.example("same-lob"))
SIZE = (
    "/api/size",
    json.dumps(
        {
            "wishes": [
                {"kind": "figure", "quantity": "gravity", "bound": "exactly", "value": 0.9},
                {"kind": "figure", "quantity": "spin", "bound": "at_most", "value": 2},
                {"kind": "study", "study": "stone_1973"},
            ]
        }
    ),
)


def measure():
    with tempfile.TemporaryDirectory() as folder, serving(Path(folder) / "log.txt") as origin:
        host = origin.removeprefix("http://")
        connection = http.client.HTTPConnection(host)
        at_rest = memory_mb()
        traces = (opening(number) for number in range(2 * CALLS))
        times = [ask_s(connection, next(traces)) for _ in range(CALLS + 20)][20:]
        p50, p99 = quantile(times, 0.5) * 1e3, quantile(times, 0.99) * 1e3
        yield Row("opening scene, f4, keep-alive, 500 calls: p50", f"{p50:.1f} ms", "<= 12 ms", p50 <= 12)
        yield Row("the same: p99", f"{p99:.1f} ms", "<= 30 ms", p99 <= 30)
        for one in traces:
            ask_s(connection, one)
        after = memory_mb()
        for asked, what in ((FEEL, "what people would feel"), (SIZE, "a habitat for three wishes")):
            times = [ask_s(connection, asked) for _ in range(CALLS + 20)][20:]
            p50 = quantile(times, 0.5) * 1e3
            yield Row(f"{what}, 500 calls: p50", f"{p50:.1f} ms", "<= 12 ms", p50 <= 12, "a bar of our own")
        connection.close()
    starts = sorted(first_byte_s() for _ in range(5))
    yield Row("rimfall serve to first page byte, median of five", f"{starts[2]:.2f} s", "<= 1.2 s", starts[2] <= 1.2)
    if at_rest is None:
        yield Row(
            "memory of server and workers at rest; after 1,000 traces",
            "-",
            "<= 100 MB; <= 130 MB",
            None,
            "the system does not tell it",
        )
    else:
        yield Row("memory of server and workers at rest", f"{at_rest:.0f} MB", "<= 100 MB", at_rest <= 100)
        yield Row("memory of server and workers after 1,000 traces", f"{after:.0f} MB", "<= 130 MB", after <= 130)


def opening(number):
    """A trace of the opening scene with a radius of its own: of one that was asked before much would be kept."""
    habitat = OPENING["habitat"] | {"radius_m": OPENING["habitat"]["radius_m"] + 0.01 * number}
    return "/api/trace?arrays=f4", json.dumps(OPENING | {"habitat": habitat})


def ask_s(connection, asked):
    """How long an answer takes to asked (path, body), read to its end."""
    start = time.perf_counter()
    connection.request("POST", *asked, {"content-type": "application/json"})
    connection.getresponse().read()
    return time.perf_counter() - start


def memory_mb():
    """Memory that the server and its workers hold together, what they share counted once (Linux); None elsewhere."""
    try:
        return sum(one.memory_full_info().pss for one in psutil.Process().children(recursive=True)) / 1e6
    except AttributeError:
        return None


def first_byte_s():
    port = free_port()
    start = time.perf_counter()
    with subprocess.Popen(
        [sys.executable, "-m", "rimfall", "serve", "--port", str(port), "--no-open"],
        cwd=ROOT,
        stdout=subprocess.DEVNULL,
    ) as process:
        while True:
            try:
                connection = http.client.HTTPConnection("127.0.0.1", port, timeout=5)
                connection.request("GET", "/")
                connection.getresponse().read(1)
                connection.close()
                break
            except OSError:
                time.sleep(0.01)
        found = time.perf_counter() - start
        process.terminate()
    return found
