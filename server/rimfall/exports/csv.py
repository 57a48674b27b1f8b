"""Paths as a table: a row a sample and body, by frame and then id. RFC 4180 without quotes: every column is a number.

frame, id and alive are integers (with samples between frames, frame has decimals in every row), the others have six places.
Ids are named in the companion (`notes`).
"""

import re
from dataclasses import replace
from io import BytesIO
from itertools import chain

import numpy as np

from ..errors import TooMuch, refusal
from ..physics.budget import spend
from .notes import as_json
from .options import INERTIAL, INERTIAL_FLAT
from .scene_sampling import sample_scene
from .writing import zipped

GREATEST_ROWS = 500_000


def table(trace, options):
    """The CSV file as bytes. Raises TooMuch past 500,000 rows."""
    header, blocks, _ = _blocks(trace, options)
    out = BytesIO()
    out.write(header.encode())
    for _, text in blocks:
        out.write(text)
    return out.getvalue()


def a_file_a_frame(trace, options):
    """A zip of one CSV file a frame, `name.1001.csv` on, after the notes that say what they mean."""
    header, blocks, notes = _blocks(trace, options)
    files = {}
    for frame, text in blocks:
        files.setdefault(int(frame), [header.encode()]).append(text)
    stem = re.sub(r"[^a-z0-9]+", "-", trace.scene.title.lower()).strip("-")[:60] or "rimfall"
    tables = ((f"{stem}.{frame:04d}.csv", b"".join(texts)) for frame, texts in files.items())
    return zipped(chain([(f"{stem}.notes.json", as_json(notes))], tables))


def _blocks(trace, options):
    """The header, (frame, its rows as bytes) of every sample, and the notes. A table has no node that turns: of both views that do
    not, it holds the places in the room that stands still."""
    sampled = sample_scene(trace, replace(options, view=INERTIAL_FLAT) if options.view == INERTIAL else options)
    if sampled.notes["counts"]["csv_rows"] > GREATEST_ROWS:
        _refuse(sampled.notes["counts"]["csv_rows"])
    unit = options.unit
    names = [f"{c}_{unit}" for c in "xyz"] + [f"v{c}_{unit}_s" for c in "xyz"]
    return ",".join(["frame,time_s,id,alive", *names]) + "\n", _rows(sampled, options), sampled.notes


def _rows(sampled, options):
    row = options.frame_format + ",%.6f,%d,%d" + ",%.6f" * 6 + "\n"
    ids, columns = _columns(sampled)
    for k, (frame, time_s) in enumerate(zip(sampled.frame.tolist(), sampled.time_s.tolist(), strict=True)):
        figures, alive = columns(k)
        block = "".join([row % (frame, time_s, *one) for one in zip(ids, alive, *figures, strict=True)]).encode()
        spend(bytes=len(block))
        yield frame, block


def _columns(sampled):
    """Ids in order; and a function of the number of a sample that gives its six columns of figures, rounded so that no zero is
    negative, and who is alive."""
    placed = [(b.position_m[:, None], b.velocity_m_s[:, None], b.alive[:, None]) for b in sampled.balls]
    ids = [b.id for b in sampled.balls]
    if sampled.drops is not None:
        drops = sampled.drops
        ids += drops.ids.tolist()
        placed.append((drops.position_m, drops.velocity_m_s, drops.alive))
    order = np.argsort(ids, kind="stable")

    def of_sample(k):
        if not placed:
            return [[]] * 6, []
        place, velocity, alive = (np.concatenate([p[i][k] for p in placed])[order] for i in range(3))
        figures = np.concatenate([place, velocity], axis=1) * sampled.per_unit
        return (np.round(figures, 6) + 0.0).T.tolist(), alive.tolist()

    return np.array(ids, dtype=int)[order].tolist(), of_sample


def _refuse(rows):
    say = f"The table would have {rows:,} rows; it may have {GREATEST_ROWS:,}. Take fewer frames or motions, pour for less time, or take OpenUSD."
    raise TooMuch(refusal("export", f"{rows} rows", f"within {GREATEST_ROWS:,} rows", say))
