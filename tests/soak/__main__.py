"""`python -m tests.soak --minutes 8`: mixed clients against one server, then a table of latencies, errors, memory, handles and threads.

`python -m tests.soak --crowd 1 8 32 200 --seconds 60`: that many clients, each asking for the opening scene again and again.
Ends with 1 where an answer is wrong, where one came later than it may, or where memory grows from the third minute on.
"""

import argparse
import contextlib
import subprocess
import sys
import tempfile
import threading
import time
from collections import defaultdict
from pathlib import Path

from tests.benchmark.row import quantile
from tests.serving import ROOT, free_port, wait_until_healthy

from .clients import ACTIONS, Client, Tally
from .processes import held, slope_mb_per_min

SETTLED_S = 120  # memory is to be flat from the third minute on
MOST_MB_PER_MIN = 1.0
LONGEST_S = 5.0
# how many clients do what, over and over; each has a pause of its own between two askings
MIX = {
    "trace": 4,
    "trace, streamed": 2,
    "feel": 1,
    "map": 1,
    "page": 2,
    "health": 1,
    "export": 1,
    "recover": 1,
    "leave": 2,
    "hostile": 2,
}


def main():
    parser = argparse.ArgumentParser(prog="python -m tests.soak", description=__doc__.split("\n")[0])
    parser.add_argument(
        "--minutes", type=float, default=8, help="how long the mixed clients ask (default: %(default)s)"
    )
    parser.add_argument("--crowd", type=int, nargs="+", metavar="N", help="tables of so many clients instead")
    parser.add_argument("--seconds", type=float, default=60, help="how long each crowd asks (default: %(default)s)")
    parser.add_argument("serve", nargs="*", help="more options of `rimfall serve`, after --")
    chosen = parser.parse_args()
    with _server(chosen.serve) as (host, process_id):
        if chosen.crowd:
            sys.exit(_crowds(host, process_id, chosen.crowd, chosen.seconds))
        sys.exit(_soak(host, process_id, chosen.minutes * 60))


@contextlib.contextmanager
def _server(more):
    """(host, process id) of `rimfall serve`; what it prints on stderr is told at the end."""
    port = free_port()
    with tempfile.TemporaryDirectory() as folder:
        log = Path(folder) / "log.txt"
        command = [sys.executable, "-m", "rimfall", "serve", "--no-open", "--port", str(port), *more]
        with log.open("wb") as output, subprocess.Popen(command, cwd=ROOT, stdout=output, stderr=output) as process:
            try:
                wait_until_healthy(f"http://127.0.0.1:{port}", process, log)
                yield f"127.0.0.1:{port}", process.pid
            finally:
                process.terminate()
                try:
                    process.wait(LONGEST_S)
                except subprocess.TimeoutExpired:
                    process.kill()
                    print(f"the server did not end within {LONGEST_S:g} s of SIGTERM")
        print(f"printed by the server: {max(log.read_text(errors='replace').count(chr(10)) - 1, 0)} lines")


def _soak(host, process_id, for_s):
    """Mixed clients; returns the exit code."""
    names = [name for name, count in MIX.items() for _ in range(count)]
    samples = []

    def sample(passed_s):
        samples.append(held(process_id, passed_s))
        if len(samples) % 12 == 1:
            one = samples[-1]
            print(
                f"{passed_s / 60:5.1f} min  {one.memory_mb:6.1f} MB  {one.handles:4} handles  {one.threads:3} threads  "
                f"{one.workers} workers",
                flush=True,
            )

    tallies = _run(host, names, for_s, sample, most_pause_s=0.3)
    _table(tallies)
    slope = slope_mb_per_min(samples, SETTLED_S)
    print(f"memory from minute {SETTLED_S // 60} on: {slope:+.2f} MB/min (bar: at most {MOST_MB_PER_MIN:g})")
    print(f"most: {max(s.memory_mb for s in samples):.0f} MB, {max(s.handles for s in samples)} handles, "
          f"{max(s.threads for s in samples)} threads")  # fmt: skip
    return 1 if slope > MOST_MB_PER_MIN or any(tally.failures for tally in tallies.values()) else 0


def _crowds(host, process_id, counts, for_s):
    """The opening scene for several numbers of clients; returns the exit code."""
    print("clients  answers/s     p50     p99  longest   503s  failed   health p99       MB")
    code = 0
    for count in counts:
        memory = []
        tallies = _run(
            host, ["opening"] * count + ["health"], for_s, lambda s, m=memory: m.append(held(process_id, s).memory_mb)
        )
        crowd, health = tallies["opening"], tallies["health"]
        seconds, busy = crowd.seconds or [0], crowd.statuses.get(503, 0)
        print(
            f"{count:7}  {crowd.statuses.get(200, 0) / for_s:9.1f}  {quantile(seconds, 0.5):5.3f} s {quantile(seconds, 0.99):5.3f} s "
            f"{max(seconds):6.2f} s {busy:6} {len(crowd.failures):7}   {quantile(health.seconds, 0.99):8.3f} s {max(memory):8.0f}",
            flush=True,
        )
        if crowd.failures or health.failures or max(seconds) > LONGEST_S:
            code = 1
            print("         ", (crowd.failures + health.failures)[:2])
    return code


def _run(host, names, for_s, sample, most_pause_s=0.0):
    """Run a client for each name until for_s have passed, calling sample(seconds) every five; returns the tallies by name."""
    tallies, over = defaultdict(Tally), threading.Event()
    for name in ACTIONS:
        tallies[name] = Tally()

    def live(name, seed):
        client = Client(host, tallies, seed)
        while not over.is_set():
            wait_s = client.do(name)
            over.wait(wait_s or client.random.uniform(0, most_pause_s))

    threads = [threading.Thread(target=live, args=(name, seed), daemon=True) for seed, name in enumerate(names)]
    start = time.monotonic()
    for thread in threads:
        thread.start()
    while (passed_s := time.monotonic() - start) < for_s:
        sample(passed_s)
        over.wait(min(5.0, max(for_s - passed_s, 0)))
    over.set()
    for thread in threads:
        thread.join(2 * LONGEST_S)
    return tallies


def _table(tallies):
    print("\nwhat was asked       answers      p50      p99  longest  statuses")
    for name, tally in tallies.items():
        if tally.seconds or tally.failures:
            seconds = tally.seconds or [0]
            statuses = " ".join(f"{status}:{count}" for status, count in sorted(tally.statuses.items()) if status)
            print(
                f"{name:18} {len(tally.seconds):9}  {quantile(seconds, 0.5):5.3f} s  {quantile(seconds, 0.99):5.3f} s "
                f"{max(seconds):6.2f} s  {statuses}"
            )
            for failure in sorted(set(tally.failures)):
                print(f"    failed {tally.failures.count(failure)} times: {failure}")
    print()


if __name__ == "__main__":
    main()
