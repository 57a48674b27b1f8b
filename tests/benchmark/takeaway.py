"""5,000 drops over 240 frames to a compact OpenUSD file, from the scene document on, each run in a process of its own."""

import json
import subprocess
import sys

from .row import Row

DROPS, FRAMES = 5_000, 240
_RUN = """
import json, resource, sys, time
from rimfall.scene import questions
from rimfall.scene.reading import read
from rimfall.exports.formats import FORMATS
from rimfall.exports.options import read_options
from pxr import Usd
start = time.perf_counter()
scene = read(sys.argv[1])
trace = questions.trace(scene)
options = read_options({"to_s": float(sys.argv[2])}, scene)
written = FORMATS["usdc"].write(trace, options)
took = time.perf_counter() - start
counts = json.loads(FORMATS["notes"].write(trace, options))["counts"]
# on Linux in kilobytes, on a Mac in bytes
peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * (1 if sys.platform == "darwin" else 1024)
print(json.dumps([took, peak / 1e6, counts["drops"], counts["samples"], len(written) / 1e6]))
"""


def scene(lasts_s):
    """Water that breaks into 231 drops a second, over the Lantern Wheel's deck."""
    pour = {
        "kind": "pour",
        "place": {"height_m": 1.1},
        "flow_ml_s": 20.0,
        "lip_diameter_mm": 4.0,
        "duration_s": lasts_s,
        "liquid": "water",
    }
    habitat = {"radius_m": 56.0, "spin_rpm": 3.0}
    return json.dumps({"rimfall": 1, "habitat": habitat, "motions": [pour], "sampling": {"fps": FRAMES / lasts_s}})


def run(lasts_s):
    done = subprocess.run(
        [sys.executable, "-c", _RUN, scene(lasts_s), str(lasts_s)], capture_output=True, text=True, check=True
    )
    return json.loads(done.stdout)


def measure():
    """Longer pours give more drops over as many frames."""
    lasts_s = 21.8
    runs = [run(lasts_s) for _ in range(3)]
    took, peak, drops, samples, size = min(runs)
    half = min(run(lasts_s / 2) for _ in range(3))
    enough = drops >= DROPS and samples >= FRAMES
    note = f"{drops:,} drops, {samples} frames, {size:.0f} MB"
    yield Row("5,000 drops x 240 frames to usdc, from the document on", f"{took:.2f} s", "<= 3 s", enough and took <= 3.0, note)  # fmt: skip
    yield Row("its memory at the most", f"{peak:.0f} MB", "<= 600 MB", enough and peak <= 600.0)
    growth = (took / drops) / (half[0] / half[2])
    yield Row("time a drop at 5,000 against at 2,500", f"{growth:.2f}", "<= 1.5", growth <= 1.5)
