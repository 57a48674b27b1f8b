"""One trace of each scene to start from, as the page gets it: processor time, against another commit's in turn, and what it calls."""

import contextlib
import json
import subprocess
from pathlib import Path

from rimfall.scene import examples
from rimfall.threads import THREADS

from .commit import HERE
from .row import Row, in_turn, quantile

A_TURN_S = 0.08  # of a light scene, so that one is long enough to be told by the clock
OPENING_CALLS, RING_CALLS = 30, 300  # of the force, of the rolling law
AGAIN = examples.OPENING, "ring"  # scenes that are asked again
MOVING = "own_paths"  # what the page asks for while a dial moves
OPENING_AGAINST, MEDIAN_AGAINST, SLOWEST_TIMES = 1 / 4, 1 / 6, 8


class Tracer:
    """A process that traces on a Tree's program, on one thread, as the server's workers do: several for linear algebra would wait for one
    another, and all their waiting is processor time."""

    def __init__(self, tree):
        command = [tree.python, Path(__file__).with_name("tracer.py")]
        environment = tree.environment | dict.fromkeys(THREADS, "1")
        self._process = subprocess.Popen(
            command, env=environment, cwd=tree.folder, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
        )

    def ask(self, *what):
        self._process.stdin.write(json.dumps(what) + "\n")
        self._process.stdin.flush()
        line = self._process.stdout.readline()
        if not line:
            raise RuntimeError(f"the process that traces has ended at {what}")
        return json.loads(line)

    def close(self):
        self._process.stdin.close()
        self._process.wait()


def measure(against=None):
    """A Row a scene, and two of all together. against: the Tree to alternate with."""
    with contextlib.ExitStack() as opened:
        tracers = [Tracer(tree) for tree in (HERE, against) if tree is not None]
        for one in tracers:
            opened.callback(one.close)
        rows, moving = [], []
        for scene in examples.SAY:
            rows.append(_scene(scene, tracers))
            yield rows[-1]
            moving.append(_scene(scene, tracers, MOVING))
            if scene == examples.OPENING:
                yield moving[-1]
        yield from _together(rows, against)
        for scene in AGAIN:
            yield from _again(scene, tracers[0])
        if against is not None:
            yield _median(f"median of {len(moving)} scenes while a dial moves", moving, against)


def _scene(scene, tracers, parts="all"):
    """The Row of a scene, or of what is asked for of it while a dial moves."""
    mine = tracers[0]
    counts = _told(mine.ask("count", scene, parts))
    times = max(1, int(A_TURN_S / max(mine.ask("time", scene, 1, parts), 1e-4)))
    title = f"trace of {scene}, processor time" if parts == "all" else f"{scene} while a dial moves, processor time"
    if len(tracers) == 1:
        value = min(mine.ask("time", scene, times, parts) for _ in range(3))
        return Row(title, _ms(value), value=value, counts=counts)
    there = _told(tracers[1].ask("count", scene, parts))
    value, peer, ratio = in_turn(*(lambda one=one: one.ask("time", scene, times, parts) for one in tracers))
    known = {"value": value, "counts": counts, "counts_there": there, "ratio": ratio, "note": f"{_ms(peer)} there"}
    if scene != examples.OPENING or parts != "all":
        return Row(title, _ms(value), **known)
    return Row(title, _ms(value), "<= 1/4 of the commit's", ratio.median <= OPENING_AGAINST, **known)


def _together(rows, against):
    """What the issue asks of all scenes at once: the median, and the slowest."""
    of_opening = next(row for row in rows if f" {examples.OPENING}," in row.what)
    slowest = max(rows, key=lambda row: row.value)
    yield _calls("opening scene: calls of the force", of_opening.counts.get("force calls", 0), OPENING_CALLS)
    ring = next(row for row in rows if " ring," in row.what)
    yield _calls("ring: calls of the rolling law", ring.counts.get("law calls", 0), RING_CALLS)
    if against is None:
        return
    yield _median(f"median of {len(rows)} scenes", rows, against, MEDIAN_AGAINST, "<= 1/6")
    opening_there = of_opening.value / of_opening.ratio.median
    times = slowest.value / opening_there
    yield Row(f"the slowest, against the opening scene at {against.name}", f"{times:.1f}", f"<= {SLOWEST_TIMES}", times <= SLOWEST_TIMES,
              slowest.what, value=times)  # fmt: skip


def _again(scene, tracer):
    """What a worker calls of a scene that it is asked again, with something else about it, as the page does."""
    first, *rest = tracer.ask("again", scene).items()
    whole = first[1]["Python calls"]
    for name, counts in rest:
        told = _told(counts) | {"bytes": counts["bytes"]}
        share = counts["Python calls"] / whole
        yield Row(
            f"{scene} again, {name}: Python calls",
            f"{100 * share:.0f} %",
            value=share,
            counts=told,
            note=f"of {whole:,} for its paths alone",
        )


def _median(what, rows, against, most=None, bar=""):
    """The Row of the median of rows' ratios to the commit's."""
    middle = quantile([row.ratio.median for row in rows], 0.5)
    reached = None if most is None else middle <= most
    return Row(f"{what} against {against.name}", f"{middle:.2f}", bar, reached, value=middle)


def _calls(what, count, most):
    return Row(what, f"{count:,}", f"<= {most}", count <= most, value=count)


def _told(counts):
    """Counts of what there is; the law's also by the second of rolling."""
    out = {name: count for name, count in counts.items() if count and name != "s of rolling"}
    if counts["s of rolling"]:
        out["law calls a s of rolling"] = round(counts["law calls"] / counts["s of rolling"])
    return out


def _ms(seconds):
    return f"{seconds * 1e3:.1f} ms"
