"""Heavy scenes at a server: the opening scene asked beside one, and how soon the server ends while eight are under way."""

import contextlib
import http.client
import signal
import subprocess
import sys
import tempfile
import threading
import time
from pathlib import Path

from tests.heavy import HEAVY
from tests.serving import ROOT, free_port, serving, wait_until_healthy

from .row import Row, quantile
from .service import ask_s, opening


def measure():
    with tempfile.TemporaryDirectory() as folder, serving(Path(folder) / "log.txt") as origin:
        host = origin.removeprefix("http://")
        asked(host, 2.0)
        yield from beside_a_heavy_scene(host)
    ended_s = until_it_ends_s()
    yield Row("Ctrl+C with eight heavy scenes under way, to the end", f"{ended_s:.2f} s", "<= 2 s", ended_s <= 2)


def beside_a_heavy_scene(host):
    alone = quantile(asked(host, 5.0), 0.5)
    ended = threading.Event()

    def heavy():
        while not ended.is_set():
            one = http.client.HTTPConnection(host)
            one.request("POST", "/api/trace", HEAVY, {"content-type": "application/json"})
            one.getresponse().read()
            one.close()

    thread = threading.Thread(target=heavy)
    thread.start()
    beside = quantile(asked(host, 10.0), 0.5)
    ended.set()
    thread.join()
    note = f"{alone * 1e3:.1f} ms alone, {beside * 1e3:.1f} ms beside it"
    yield Row(
        "opening scene beside a heavy one, against alone: p50",
        f"{beside / alone:.2f}",
        "<= 1.5",
        beside <= 1.5 * alone,
        note,
    )


def asked(host, for_s):
    """Seconds of every answer to one client who asks again and again for so long."""
    ends_s = time.monotonic() + for_s
    times, one = [], http.client.HTTPConnection(host, timeout=60)
    while time.monotonic() < ends_s:
        times.append(ask_s(one, opening(len(times))))
    one.close()
    return times


def until_it_ends_s():
    """Seconds from Ctrl+C to the server's end."""
    port = free_port()
    command = [sys.executable, "-m", "rimfall", "serve", "--port", str(port), "--no-open"]
    with contextlib.ExitStack() as opened:
        folder = Path(opened.enter_context(tempfile.TemporaryDirectory()))
        log = opened.enter_context((folder / "log.txt").open("wb"))
        process = opened.enter_context(subprocess.Popen(command, cwd=ROOT, stdout=log, stderr=log))
        wait_until_healthy(f"http://127.0.0.1:{port}", process, folder / "log.txt")
        working = [http.client.HTTPConnection("127.0.0.1", port) for _ in range(8)]
        for one in working:
            one.request("POST", "/api/trace", HEAVY, {"content-type": "application/json"})
        time.sleep(2.0)
        start = time.perf_counter()
        process.send_signal(signal.SIGINT)
        process.wait()
        return time.perf_counter() - start
