"""1,000 varied throws to CSV by the command, start-up, index and contact sheet counted, and 2,000 against them."""

import json
import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from tests.serving import ROOT

from .row import Row

SCENE = {
    "rimfall": 1,
    "title": "A serve",
    "habitat": {"radius_m": 56.0, "spin_rpm": 3.0, "width_m": 14.0},
    "motions": [
        {
            "kind": "throw",
            "name": "serve",
            "place": {"height_m": 1.5},
            "speed_m_s": 6.0,
            "elevation_deg": 35.0,
            "body": "handball",
        }
    ],
}


def vary_s(speeds):
    """Seconds of 100 spins times so many speeds, with two processes."""
    with tempfile.TemporaryDirectory() as folder:
        scene = Path(folder) / "scene.json"
        scene.write_text(json.dumps(SCENE), encoding="utf-8")
        over = ["--over", "habitat.spin_rpm=1..6/100", "--over", f"motions.serve.speed_m_s=4..8/{speeds}"]
        command = [sys.executable, "-m", "rimfall", "vary", scene, *over, "--export", "csv", "--workers", "2", "--json"]
        start = time.perf_counter()
        subprocess.run([*command, "--out", Path(folder) / "out"], cwd=ROOT, stdout=subprocess.DEVNULL, check=True)
        return time.perf_counter() - start


def measure():
    before = os.times()
    thousand = vary_s(10)
    worked = os.times().children_user + os.times().children_system - before.children_user - before.children_system
    yield Row("1,000 varied throws in air to CSV, two processes", f"{thousand:.1f} s", "<= 20 s", thousand <= 20,
              f"start, index and contact sheet counted; {worked:.1f} s of processor time")  # fmt: skip
    growth = vary_s(20) / thousand
    yield Row("the same, 2,000 against 1,000", f"{growth:.2f}", "<= 2.2", growth <= 2.2)
