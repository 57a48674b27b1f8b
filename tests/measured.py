"""`python -m tests.measured [--from FILE]`: the tables of what was measured in README.md and DEVELOPERS.md, made from the benchmark's JSON, so that
no figure is copied by hand. --from: take that JSON into the tree first."""

import argparse
import json
from pathlib import Path

from tests.serving import ROOT

FILE = Path(__file__).parent / "benchmark/measured.json"
SCENE = "trace of "
COUNTS = ("force calls", "law calls", "Python calls", "bytes", "requests")


def main():
    parser = argparse.ArgumentParser(prog="python -m tests.measured", description=__doc__)
    parser.add_argument("--from", dest="source", type=Path, metavar="FILE")
    chosen = parser.parse_args()
    if chosen.source:
        FILE.write_text(f"{chosen.source.read_text('utf-8').strip()}\n", encoding="utf-8")
    for name in TABLES:
        path = ROOT / name
        path.write_text(with_tables(name, path.read_text("utf-8")), encoding="utf-8")


def with_tables(name, text):
    """The text of a document with its table as the benchmark's JSON has it, between the two lines that say so."""
    begin, end = "<!-- measured -->\n", "<!-- measured so far -->\n"
    before, _, rest = text.partition(begin)
    _, _, after = rest.partition(end)
    return before + begin + TABLES[name](json.loads(FILE.read_text("utf-8"))) + end + after


def short(rows):
    """What somebody who uses the program may want to know."""
    return _table(
        ("what", "figure", "to version 0.10", "what does not vary"),
        [
            (row["what"], row["figure"], _ratio(row), _counts(row))
            for row in rows
            if not row["what"].startswith(SCENE) or row["what"].startswith(f"{SCENE}same-lob,")
        ],
    )


def scenes(rows):
    """One trace of every scene to start from."""
    traces = [row for row in rows if row["what"].startswith(SCENE)]
    return _table(
        ("scene", "processor time", "to version 0.10", *COUNTS[:4]),
        [
            (
                row["what"].removeprefix(SCENE).partition(",")[0],
                row["figure"],
                _ratio(row),
                *(f"{row['counts'][name]:,}" if name in row["counts"] else "" for name in COUNTS[:4]),
            )
            for row in traces
        ],
    )


def _ratio(row):
    """The median of pairs run by turns, with the quarters on either side."""
    ratio = row["ratio"]
    return "" if ratio is None else f"{ratio['median']:.2f} ({ratio['low']:.2f} to {ratio['high']:.2f})"


def _counts(row):
    return ", ".join(f"{name} {row['counts'][name]:,}" for name in COUNTS if name in row["counts"])


def _table(heads, rows):
    lines = [heads, ["---"] * len(heads), *rows]
    return "".join(f"| {' | '.join(line)} |\n" for line in lines)


TABLES = {"README.md": short, "DEVELOPERS.md": scenes}

if __name__ == "__main__":
    main()
