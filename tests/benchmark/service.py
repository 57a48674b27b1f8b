"""The server as a client sees it: one scene over and over, the first byte of the page, memory."""

import contextlib
import http.client
import json
import subprocess
import sys
import tempfile
import time
from itertools import count
from pathlib import Path

import psutil

from rimfall.scene import examples
from tests.serving import ROOT, free_port, serving

from .commit import HERE
from .row import Row, in_turn, quantile

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


def measure(against=None):
    yield _asked_by_turns(against)
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


def _asked_by_turns(against):
    """The opening scene's median, by turns with the other commit's server: both ask while the same else goes on."""
    with contextlib.ExitStack() as opened:
        asks = [_median_ms(tree, opened) for tree in (HERE, against) if tree]
        value, note, ratio = quantile([asks[0]() for _ in range(3)], 0.5), "", None
        if against:
            value, there, ratio = in_turn(*asks, for_s=10.0, most=40)
            note = f"{there:.1f} ms there"
    what, bar = "opening scene, f4, keep-alive: median of 50 calls", "<= 4 ms on a quiet machine"
    return Row(what, f"{value:.1f} ms", bar, True if value <= 4 else None, note, value, ratio=ratio)


def _median_ms(tree, opened):
    """A function that asks a server of that tree 50 times and gives the median, ms, each time another scene; a worker is warm by then."""
    folder = Path(opened.enter_context(tempfile.TemporaryDirectory()))
    origin = opened.enter_context(serving(folder / "log.txt", tree.folder, tree.environment))
    connection = http.client.HTTPConnection(origin.removeprefix("http://"))
    opened.callback(connection.close)
    numbers = count()

    def median_ms(calls=50):
        return quantile([ask_s(connection, opening(next(numbers))) for _ in range(calls)], 0.5) * 1e3

    median_ms()
    return median_ms


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
