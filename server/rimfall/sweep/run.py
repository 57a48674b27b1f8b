"""A run from what is asked to the index and the contact sheet: goes on where it stopped, leaves no file half written, says how far it is."""

import contextlib
import json
import sys
import time
from dataclasses import dataclass
from itertools import islice

from ..errors import BadInput, refusal
from ..exports.formats import FORMATS
from ..exports.options import read_options
from ..exports.writing import write_all
from ..language import spoken, tr, tr_later, written
from ..processes import workers_of
from . import cluster, contact_sheet, folder, local
from .grid import check, grid_of
from .job import Outcome, Sweep

INDEX = "index.csv"
_TERMINAL_EVERY_S, _PLAIN_EVERY_S = 0.2, 10.0


@dataclass(frozen=True)
class Done:
    """What a run came to: how many combinations there are; refused and failed, number -> sentence; files of the sum-up."""

    count: int
    refused: dict
    failed: dict
    files: tuple


def sweep_of(scene, parameters, formats=(), options=None):
    """The Sweep of a Scene over Parameters, and its Grid; all that can be refused is refused here. Raises Refused."""
    for name in formats:
        if name not in FORMATS:
            may_be = ", ".join(FORMATS)
            raise BadInput(
                refusal(
                    "export",
                    name,
                    may_be,
                    tr("{field} was {value}; it must be {allowed}.", field="--export", value=name, allowed=may_be),
                )
            )
    if not parameters:
        say = tr("Nothing is varied; say what with --over, such as --over habitat.spin_rpm=1..6/11.")
        raise BadInput(refusal("over", None, tr("at least one"), say))
    read_options(options, scene)
    grid = grid_of(scene, parameters)
    varied = tuple((o.path, o.values) for o in parameters)
    sweep = Sweep(
        json.dumps(grid.document, ensure_ascii=False),
        varied,
        tuple(dict.fromkeys(formats)),
        json.dumps(options or {}),
        spoken(),
    )
    return sweep, grid


def run(sweep, grid, out, workers=None, scheduler=None, quiet=False):
    """Do every combination that is not done yet, into the folder `out`; returns Done. Raises Refused, and KeyboardInterrupt
    where it is stopped; what is written by then stays, and the same run goes on from there."""
    workers = workers_of(workers)
    check(grid, None if quiet else progress_teller(tr_later("{done} of {of} checked")))
    with folder.opened(out, sweep) as run_folder:
        numbers = [n for n in range(1, grid.count + 1) if folder.record_of(run_folder, n) is None]
        failed = {}
        if numbers:
            on_machine = scheduler is None
            doing = local.each(sweep, numbers, workers) if on_machine else cluster.each(sweep, numbers, scheduler)
            failed = _keep_all(run_folder, doing, grid.count, len(numbers), quiet)
        return _summed_up(run_folder, sweep, grid, failed)


def _keep_all(run_folder, doing, count, left, quiet):
    """Write each Outcome as it comes; number -> sentence of those that failed by a fault of ours, which are not kept."""
    done, failed = count - left, {}
    report = None if quiet else progress_teller(tr_later("{done} of {of} worked out"), done)
    with contextlib.closing(doing):
        for number, outcome in doing:
            if isinstance(outcome, Outcome):
                folder.keep(run_folder, outcome)
            else:
                failed[number] = tr("It failed: {kind}: {why}", kind=type(outcome).__name__, why=outcome)
            done += 1
            if report is not None:
                report(done, count)
    return failed


def _summed_up(run_folder, sweep, grid, failed):
    """Write the index and the contact sheet from the records; returns Done."""
    rows, refused, box = [folder.index_header(grid, sweep.formats)], {}, None
    for number, record in _records(run_folder, grid, failed):
        rows.append(folder.index_row(grid, sweep.formats, number, record))
        box = contact_sheet.span(box, record)
        if record["refused"] and number not in failed:
            refused[number] = " ".join(record["refused"])
    write_all({run_folder / INDEX: folder.index_table(rows)})
    pages = contact_sheet.names(grid.count)
    numbered = _records(run_folder, grid, failed)
    for name in pages:
        write_all({run_folder / name: contact_sheet.page(grid, box, list(islice(numbered, contact_sheet.PER_PAGE)))})
    return Done(grid.count, refused, failed, (INDEX, *pages))


def _records(run_folder, grid, failed):
    """(number, record) of every combination in order; one that failed has its sentence where a refusal would be."""
    for number in range(1, grid.count + 1):
        if number in failed:
            yield number, {"motions": [], "files": {}, "refused": [failed[number]]}
        else:
            yield number, folder.record_of(run_folder, number)


def progress_line(text, done, of, began_with, spent_s):
    """ "312 of 1,000 worked out, 12 s left". text: a message with {done} and {of}; began_with: how many were done before; spent_s: seconds
    since."""
    said = tr(text, done=written(done, ","), of=written(of, ","))
    if done in (of, began_with):
        return said
    left = _duration(spent_s / (done - began_with) * (of - done))
    return tr("{said}, {time} left", said=said, time=left)


def _duration(seconds):
    whole = round(seconds)
    if whole < 60:
        return f"{whole} s"
    if whole < 3600:
        return f"{whole // 60} min {whole % 60:02} s"
    return f"{whole // 3600} h {whole % 3600 // 60:02} min"


def progress_teller(text, began_with=0, out=None, clock=time.monotonic):
    """A function of (done, of) that says so on `out`, not more often than a reader can follow, and at the end."""
    out = out or sys.stderr
    terminal = out.isatty()
    began_s = clock()
    last = {"s": began_s, "length": 0}
    every_s = _TERMINAL_EVERY_S if terminal else _PLAIN_EVERY_S

    def say_so(done, of):
        now_s = clock()
        if done < of and now_s - last["s"] < every_s:
            return
        said = progress_line(text, done, of, began_with, now_s - began_s)
        ends = "\n" if done == of or not terminal else ""
        start = "\r" if terminal else ""
        with contextlib.suppress(OSError):  # whoever read it has gone; the work goes on
            print(start + said.ljust(last["length"]), end=ends, file=out, flush=True)
        last["s"], last["length"] = now_s, len(said) if terminal else 0

    return say_so
