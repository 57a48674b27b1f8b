"""`python -m tests.benchmark`: prints each figure, its bar, and pass or short. No test times anything; this does."""

import argparse
import json
import os
import sys

PINNED = ("OPENBLAS_CORETYPE", "OPENBLAS_L2_SIZE")  # they slow a current numpy; read when numpy loads, so before it
if any(name in os.environ for name in PINNED):
    os.execve(
        sys.executable,
        [sys.executable, "-m", "tests.benchmark", *sys.argv[1:]],
        {k: v for k, v in os.environ.items() if k not in PINNED},
    )

from . import bounces, craft, drops, heavy, many, page, service, shot, takeaway  # noqa: E402 - numpy loads here

GROUPS = {
    "drops": drops.measure,
    "bounces": bounces.measure,
    "shot": shot.measure,
    "craft": craft.measure,
    "takeaway": takeaway.measure,
    "many": many.measure,
    "service": service.measure,
    "heavy": heavy.measure,
    "page": page.measure,
}


def main():
    parser = argparse.ArgumentParser(prog="python -m tests.benchmark", description=__doc__)
    parser.add_argument("--json", action="store_true", help="print the figures as JSON")
    parser.add_argument("--only", choices=sorted(GROUPS), help="measure one group")
    chosen = parser.parse_args()
    rows = []
    for name, measure in GROUPS.items():
        if chosen.only in (None, name):
            for row in measure():
                rows.append(row)
                if not chosen.json:
                    print(as_line(row), flush=True)
    if chosen.json:
        print(json.dumps([row.__dict__ | {"verdict": row.verdict} for row in rows], indent=1))


def as_line(row):
    return f"{row.verdict:5}  {row.what:62} {row.figure:>12}  bar {row.bar}" + (f"   ({row.note})" if row.note else "")


if __name__ == "__main__":
    main()
