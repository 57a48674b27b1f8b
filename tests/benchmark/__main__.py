"""`python -m tests.benchmark`: prints each figure, its bar, and pass or short. No test times anything; this does."""

import argparse
import json
import os
import sys
from contextlib import nullcontext
from pathlib import Path

PINNED = ("OPENBLAS_CORETYPE", "OPENBLAS_L2_SIZE")  # they slow a current numpy; read when numpy loads, so before it
if any(name in os.environ for name in PINNED):
    os.execve(
        sys.executable,
        [sys.executable, "-m", "tests.benchmark", *sys.argv[1:]],
        {k: v for k, v in os.environ.items() if k not in PINNED},
    )

from . import bounces, craft, drops, followers, frames, heavy, many, page, service, shot, start, takeaway, traces  # noqa: E402 - numpy loads here
from .commit import of_commit  # noqa: E402

GROUPS = {
    "traces": traces.measure,
    "start": start.measure,
    "frames": frames.measure,
    "drops": drops.measure,
    "bounces": bounces.measure,
    "shot": shot.measure,
    "craft": craft.measure,
    "takeaway": takeaway.measure,
    "many": many.measure,
    "service": service.measure,
    "heavy": heavy.measure,
    "followers": followers.measure,
    "page": page.measure,
}
PAIRED = ("traces", "start", "frames", "service", "page")  # groups that can be held against another commit


def main():
    parser = argparse.ArgumentParser(prog="python -m tests.benchmark", description=__doc__)
    parser.add_argument("--json", type=Path, metavar="FILE", help="write the figures there as JSON")
    parser.add_argument(
        "--only", choices=sorted(GROUPS), action="append", help="measure this group; may be given again"
    )
    parser.add_argument(
        "--against", metavar="COMMIT", help="run that commit's program by turns with this one: " + ", ".join(PAIRED)
    )
    chosen = parser.parse_args()
    rows = []
    with of_commit(chosen.against) if chosen.against else nullcontext() as tree:
        for name in chosen.only or GROUPS:
            for row in GROUPS[name](tree) if name in PAIRED else GROUPS[name]():
                rows.append(row.as_data() | {"group": name})
                print(row.as_line(), flush=True)
    if chosen.json:
        chosen.json.write_text(json.dumps(rows, indent=1) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
