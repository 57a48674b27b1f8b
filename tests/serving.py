"""Starts `rimfall serve` as a user does, on a free loopback port, for tests and the benchmark; or another server of the app."""

import contextlib
import os
import socket
import subprocess
import sys
import time
import urllib.request
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
STARTS_WITHIN_S = 120
SERVE = ("-m", "rimfall", "serve", "--host", "127.0.0.1", "--no-open", "--port")


@contextlib.contextmanager
def serving(log, folder=ROOT, environment=None, arguments=SERVE):
    """Yields the origin once the server is healthy; what it prints goes to the file `log`. arguments: Python's, before the port."""
    port = free_port()
    command = [sys.executable, *arguments, str(port)]
    with log.open("wb") as output, subprocess.Popen(
        command, cwd=folder, env=os.environ | (environment or {}), stdout=output, stderr=output
    ) as process:  # fmt: skip
        try:
            wait_until_healthy(f"http://127.0.0.1:{port}", process, log)
            yield f"http://127.0.0.1:{port}"
        finally:
            process.terminate()


def free_port():
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        return free.getsockname()[1]


def wait_until_healthy(origin, process, log):
    give_up = time.monotonic() + STARTS_WITHIN_S
    while time.monotonic() < give_up and process.poll() is None:
        try:
            urllib.request.urlopen(f"{origin}/api/health", timeout=5).close()
            return
        except OSError:  # refused while it is not up yet
            time.sleep(0.05)
    raise RuntimeError(f"the server did not start:\n{log.read_text(errors='replace')}")
