"""A run from what is asked to the index and the contact sheet: goes on where it stopped, and leaves no file half written."""

import contextlib
import json
from dataclasses import dataclass
from itertools import islice

from ..errors import BadInput, refusal
from ..exports import FORMATS
from ..exports.options import read_options
from ..exports.writing import write_all
from . import cluster, contact_sheet, folder, grid, index, local, progress
from .job import Asked, Outcome

INDEX = "index.csv"


@dataclass(frozen=True)
class Done:
    """What a run came to: how many combinations there are; refused and failed, number -> sentence; files of the sum-up."""

    count: int
    refused: dict
    failed: dict
    files: tuple


def asked_of(scene, over, formats=(), options=None):
    """What a run is asked, and its Grid; all that can be refused is refused here. Raises Refused."""
    for name in formats:
        if name not in FORMATS:
            may_be = ", ".join(FORMATS)
            raise BadInput(refusal("export", name, may_be, f"--export was {name}; it may be {may_be}."))
    if not over:
        raise BadInput(
            refusal(
                "over",
                None,
                "at least one",
                "Nothing is varied; say what with --over, such as --over habitat.spin_rpm=1:6:11.",
            )
        )
    read_options(options, scene)
    made = grid.grid_of(scene, over)
    varied = tuple((o.path, o.values) for o in over)
    asked = Asked(
        json.dumps(made.document, ensure_ascii=False), varied, tuple(dict.fromkeys(formats)), json.dumps(options or {})
    )
    return asked, made


def run(asked, made, out, workers=None, scheduler=None, quiet=False):
    """Do every combination that is not done yet, into the folder `out`; returns Done. Raises Refused, and KeyboardInterrupt
    where it is stopped; what is written by then stays, and the same run goes on from there."""
    workers = local.workers_of(workers)
    grid.check(made, None if quiet else progress.teller("checked"))
    place = folder.opened(out, asked)
    numbers = [n for n in range(1, made.count + 1) if folder.record(place, n) is None]
    failed = {}
    if numbers:
        doing = local.each(asked, numbers, workers) if scheduler is None else cluster.each(asked, numbers, scheduler)
        failed = _keep_all(place, doing, made.count, len(numbers), quiet)
    return _summed_up(place, asked, made, failed)


def _keep_all(place, doing, count, left, quiet):
    """Write each Outcome as it comes; number -> sentence of those that failed by a fault of ours, which are not kept."""
    done, failed = count - left, {}
    tell = None if quiet else progress.teller("worked out", done)
    with contextlib.closing(doing):
        for number, outcome in doing:
            if isinstance(outcome, Outcome):
                folder.keep(place, outcome)
            else:
                failed[number] = f"It failed: {type(outcome).__name__}: {outcome}"
            done += 1
            if tell is not None:
                tell(done, count)
    return failed


def _summed_up(place, asked, made, failed):
    """Write the index and the contact sheet from the records; returns Done."""
    rows, refused, box = [index.header(made, asked.formats)], {}, None
    for number, record in _records(place, made, failed):
        rows.append(index.row(made, asked.formats, number, record))
        box = contact_sheet.span(box, record)
        if record["refused"] and number not in failed:
            refused[number] = " ".join(record["refused"])
    write_all({place / INDEX: index.table(rows)})
    pages = contact_sheet.names(made.count)
    numbered = _records(place, made, failed)
    for name in pages:
        write_all({place / name: contact_sheet.page(made, box, list(islice(numbered, contact_sheet.PER_PAGE)))})
    return Done(made.count, refused, failed, (INDEX, *pages))


def _records(place, made, failed):
    """(number, record) of every combination in order; one that failed has its sentence where a refusal would be."""
    for number in range(1, made.count + 1):
        if number in failed:
            yield number, {"motions": [], "files": {}, "refused": [failed[number]]}
        else:
            yield number, folder.record(place, number)
