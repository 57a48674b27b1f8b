"""python -m tests.frozen take --out FILE | compare FILE | renew | choose: see each command's help."""

import argparse
import json
import sys
import time
from pathlib import Path

from tests import drawings


def main():
    parser = argparse.ArgumentParser(prog="python -m tests.frozen", description="What the program answers, frozen.")
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    take = commands.add_parser("take", help="write the digest of every answer and file, before a change")
    take.add_argument("--out", type=Path, required=True, metavar="FILE")
    take.set_defaults(run=_take)
    compare = commands.add_parser("compare", help="say what answers otherwise than when FILE was taken, on one machine")
    compare.add_argument("file", type=Path, metavar="FILE")
    compare.set_defaults(run=_compare)
    for command in (take, compare):
        command.add_argument("--only", default="", metavar="TEXT", help='names that hold this: "example", "random 12"')
    renew = commands.add_parser(
        "renew",
        help="write the answers that the test suite keeps, and the small drawings, after a change that is meant",
    )
    renew.set_defaults(run=_renew)
    choose = commands.add_parser("choose", help="choose the random scenes anew; take and renew follow")
    choose.set_defaults(run=_choose)
    chosen = parser.parse_args()
    began_s = time.perf_counter()
    code = chosen.run(chosen)
    print(f"{time.perf_counter() - began_s:.0f} s")
    return code


def _take(chosen):
    from .exact import taken

    answers = taken(chosen.only)
    chosen.out.write_text(json.dumps(answers, ensure_ascii=False, separators=(",", ":")), "utf-8")
    count = sum(map(len, answers.values()))
    print(f"{count} digests of {len(answers)} documents in {chosen.out}, {chosen.out.stat().st_size:,} bytes")
    return 0


def _compare(chosen):
    from .exact import changes

    lines, count = changes(json.loads(chosen.file.read_text("utf-8")), chosen.only)
    for line in lines:
        print(line)
    changed = sum(not line.startswith("    ") for line in lines)
    print(f"{changed} of {count} answers changed" if lines else f"all {count} answers are the same")
    return 1 if lines or not count else 0


def _renew(_):
    from .kept import renew

    print(f"{renew():,} bytes kept")
    drawings.FILE.write_text(drawings.written(drawings.drawn()), encoding="utf-8")
    return 0


def _choose(_):
    from .choosing import choose

    print(f"{choose()} seeds chosen")
    return 0


if __name__ == "__main__":
    sys.exit(main())
