"""A small scene to vary, and the command run on it as a user types it."""

import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

from rimfall.sweep.job import work
from tests.commands import rimfall

ROOT = Path(__file__).resolve().parent.parent.parent
AIR = {"pressure_kpa": 101.325, "temperature_c": 20.0}
POINT = {"mass_kg": 0.1, "diameter_m": 0.0}  # no size: it comes down where its centre does


def scene(air=None, body=POINT):
    """A throw in the Lantern Wheel, in vacuum unless said otherwise, and a drop beside it."""
    place = {"along_m": 0.0, "height_m": 1.5, "axial_m": 0.0}
    return {
        "rimfall": 1,
        "title": "A serve, many times",
        "habitat": {"radius_m": 56.0, "spin_rpm": 3.0},
        "air": air,
        "motions": [
            {"kind": "throw", "name": "serve", "place": place, "speed_m_s": 6.0, "elevation_deg": 35.0, "body": body},
            {"kind": "drop", "name": "let go", "place": place, "body": body},
        ],
    }


def saved(folder, document):
    """The document as a file; returns its path."""
    path = folder / "scene.json"
    path.write_text(json.dumps(document), encoding="utf-8")
    return path


def command(scene_file, out, *arguments):
    return [sys.executable, "-m", "rimfall", "vary", str(scene_file), "--out", str(out), *map(str, arguments)]


def vary(scene_file, out, *arguments):
    """The command run to its end, in this process: returncode, stdout and stderr."""
    return rimfall(*command(scene_file, out, *arguments)[3:])


def one_after_another(sweep, numbers, workers):
    """In place of `local.each`, for what does not turn on its processes, which each take a second to start."""
    for number in numbers:
        try:
            yield number, work(sweep, number)
        except Exception as error:  # noqa: BLE001 - whatever it ends in is told, as by a process
            yield number, error


def stopped(sign, scene_file, out, *arguments, after=5):
    """The command sent a signal once `after` combinations are done; its exit code, how many were done then, and with SIGKILL
    the group of its processes, else what it said."""
    process = subprocess.Popen(
        command(scene_file, out, *arguments), cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE, encoding="utf-8",
        start_new_session=True,
    )  # fmt: skip
    give_up = time.monotonic() + 300
    while len(records(out)) < after and process.poll() is None and time.monotonic() < give_up:
        time.sleep(0.01)
    if sign == signal.SIGKILL:
        process.kill()
        process.stdout.close()
        process.stderr.close()
        return process.wait(), process.pid, len(records(out))
    os.killpg(process.pid, sign)  # as the keyboard does: to all processes of the command
    _, said = process.communicate(timeout=300)
    return process.returncode, said, len(records(out))


def records(out):
    return sorted((Path(out) / ".rimfall").glob("*.json"))


def contents(out):
    """Every file of a run's folder and its bytes, records too; not the lock, which says who is at work."""
    files = [path for path in sorted(Path(out).rglob("*")) if path.is_file() and path.name != "lock"]
    return {str(path.relative_to(out)): path.read_bytes() for path in files}
