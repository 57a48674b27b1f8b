"""What a file of 60 MB may cost to read: two seconds of processor time and 100 MB above the idle process.

The files are the worst that were found: of each format what makes its reader work longest or hold most.
"""

import json
import struct
import subprocess
import sys
from subprocess import PIPE

from rimfall.exports.recovery.terms import Limits
from tests.commands import ROOT

BYTES = Limits().file_bytes
SECONDS, MEGABYTES = 2.0, 100
MEASURE = """
import json, re, sys, time
from rimfall.errors import Refused
from rimfall.exports.recovery import recovered_from

def peak_mb():
    with open("/proc/self/status", encoding="ascii") as file:
        return int(re.search(r"VmHWM:\\s+(\\d+)", file.read())[1]) / 1e3

idle_mb = None
for line in sys.stdin:
    began_s = time.process_time()
    try:
        said = recovered_from(line.rstrip()).format
    except Refused as refused:
        said = str(refused)
    idle_mb = peak_mb() if idle_mb is None else idle_mb
    print(json.dumps([time.process_time() - began_s, peak_mb() - idle_mb, said]), flush=True)
"""


def filled(head, piece, tail=b""):
    return head + piece * ((BYTES - len(head) - len(tail)) // len(piece)) + tail


def texts_of_runs(count):
    """A crate whose texts are as many runs of LZ4 as may be, each of four bytes."""
    packed = b"\0\x10a\1\0" + b"\0\1\0" * count
    section = struct.pack("<QQQ", 1, 5 + 4 * count, len(packed)) + packed
    contents = struct.pack("<Q16sQQ", 1, b"TOKENS", 88, len(section))
    return b"PXR-USDC\0\x08" + bytes(6) + struct.pack("<Q", 88 + len(section)) + bytes(64) + section + contents


FILES = {
    "notes as long as they may be in usda": lambda: b'#usda 1.0\n string rimfall = "%s"\n}\n' % (b'\\"a' * 5_000_000),
    "metadata without an end in svg": lambda: filled(b"<svg>", b"<metadata>"),
    "empty arrays in json": lambda: filled(b'{"a":[', b"[],", b'1],"scene":{}}'),
    "spaces in json": lambda: filled(b"{", b" ", b'"scene":3}'),
    "runs in usdc": lambda: texts_of_runs(3_900_000),
}


def test_the_worst_files_cost_little(tmp_path):
    """One after another in one process, so that the memory is the worst of them all."""
    hostile, small = tmp_path / "file", tmp_path / "small.json"
    small.write_text(json.dumps({"habitat": {}}))
    costly = []
    with subprocess.Popen(
        [sys.executable, "-c", MEASURE], cwd=ROOT, stdin=PIPE, stdout=PIPE, encoding="utf-8"
    ) as process:

        def cost(path):
            process.stdin.write(f"{path}\n")
            process.stdin.flush()
            return json.loads(process.stdout.readline())

        assert cost(small)[2] == "json"
        for name, content in FILES.items():
            hostile.write_bytes(content())
            seconds, megabytes, said = cost(hostile)
            if seconds > SECONDS or megabytes > MEGABYTES or not said.endswith("."):
                costly.append((name, seconds, megabytes, said))
        process.stdin.close()
    hostile.unlink()
    assert costly == []
