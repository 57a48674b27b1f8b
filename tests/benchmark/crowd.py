"""Many at one server: the opening scene asked by 1, 8, 32 and 200 clients at once, and beside a heavy scene; how soon work ends."""

import contextlib
import http.client
import signal
import subprocess
import sys
import tempfile
import threading
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from tests.heavy import HEAVY
from tests.serving import ROOT, free_port, serving, wait_until_healthy

from .row import Row, quantile
from .service import TRACE

CLIENTS, FOR_S = (1, 8, 32, 200), 60.0
MOST_S = 5.0  # within which each is answered, or told to come again


def measure():
    with tempfile.TemporaryDirectory() as folder, serving(Path(folder) / "log.txt") as origin:
        host = origin.removeprefix("http://")
        asked(host, 1, 2.0)
        for count in CLIENTS:
            times, busy = asked(host, count, FOR_S)
            figure = f"{quantile(times, 0.5) * 1e3:.0f}, {quantile(times, 0.99) * 1e3:.0f} ms"
            note = f"{(len(times) - busy) / FOR_S:.0f} answers a second, {busy} of {len(times)} told to come again"
            yield Row(
                f"{count} at once for {FOR_S:.0f} s: p50, p99",
                figure,
                f"all in {MOST_S:.0f} s",
                max(times) <= MOST_S,
                note,
            )
        yield from beside_a_heavy_scene(host)
    ended_s = until_it_ends_s()
    yield Row("Ctrl+C with eight heavy scenes under way, to the end", f"{ended_s:.2f} s", "<= 2 s", ended_s <= 2)


def beside_a_heavy_scene(host):
    alone = quantile(asked(host, 1, 5.0)[0], 0.5)
    ended = threading.Event()

    def heavy():
        while not ended.is_set():
            one = http.client.HTTPConnection(host)
            one.request("POST", "/api/trace", HEAVY, {"content-type": "application/json"})
            one.getresponse().read()
            one.close()

    thread = threading.Thread(target=heavy)
    thread.start()
    beside = quantile(asked(host, 1, 10.0)[0], 0.5)
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


def asked(host, count, for_s):
    """(seconds of every answer, how many were 503) of so many clients who ask again and again for so long. Whoever is told to come
    again waits as long as it was told to."""
    ends_s = time.monotonic() + for_s

    def client(_):
        times, busy = [], 0
        one = http.client.HTTPConnection(host, timeout=60)
        while time.monotonic() < ends_s:
            start = time.perf_counter()
            one.request("POST", *TRACE, {"content-type": "application/json"})
            answer = one.getresponse()
            answer.read()
            times.append(time.perf_counter() - start)
            if answer.status == 503:
                busy += 1
                time.sleep(int(answer.headers["retry-after"]))
        one.close()
        return times, busy

    with ThreadPoolExecutor(count) as clients:
        each = list(clients.map(client, range(count)))
    return [t for times, _ in each for t in times], sum(busy for _, busy in each)


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
