"""Paths as a table: a row per sample and body, by frame and then id, only while the body is there, or on request at every sample.
RFC 4180 without quotes: every column is a number.

frame, id and alive are integers (with samples between frames, frame has decimals in every row), the others have six places.
Ids are named in the companion (`notes`).
"""

import re
from dataclasses import replace
from io import BytesIO
from itertools import chain
from math import floor

import numpy as np

from ..errors import TooMuch, refusal
from ..language import tr, written
from ..physics.budget import spend
from .bounds import GREATEST_ROWS, too_long
from .notes import as_json
from .options import ALIVE, INERTIAL, INERTIAL_FLAT, TURNING
from .scene_sampling import sample_scene
from .writing import zipped

_TURNED = ["qw", "qx", "qy", "qz"]


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
        files.setdefault(floor(frame), [header.encode()]).append(text)
    stem = re.sub(r"[^a-z0-9]+", "-", trace.scene.title.lower()).strip("-")[:60] or "rimfall"
    tables = ((f"{stem}.{frame:04d}.csv", b"".join(texts)) for frame, texts in files.items())
    return zipped(chain([(f"{stem}.notes.json", as_json(notes))], tables))


def _blocks(trace, options):
    """The header, (frame, its rows as bytes) of every sample, and the notes. A table has no node that turns: of both views that do
    not, it holds the places in the room that stands still."""
    flat = replace(options, view=INERTIAL_FLAT) if options.view == INERTIAL else options
    sampled = sample_scene(trace, flat, flying=options.rows == ALIVE)
    rows = sampled.notes["counts"]["csv_rows"]
    if rows > GREATEST_ROWS:
        raise TooMuch(
            refusal(
                "export",
                tr("{rows} rows", rows=rows),
                tr("within {most} rows", most=written(GREATEST_ROWS, ",")),
                too_long(rows),
            )
        )
    unit = options.unit
    names = [f"{c}_{unit}" for c in "xyz"] + [f"v{c}_{unit}_s" for c in "xyz"]
    names += _TURNED if options.turning == TURNING else []
    return ",".join(["frame,time_s,id,alive", *names]) + "\n", _rows(sampled, options), sampled.notes


def _rows(sampled, options):
    turned = _turnings(sampled) if options.turning == TURNING else None
    row = options.frame_format + ",%.6f,%d,%d" + ",%.6f" * (6 if turned is None else 10) + "\n"
    of_sample = _whole(sampled) if options.rows != ALIVE else _alive(sampled)
    for k, (frame, time_s) in enumerate(zip(sampled.frame.tolist(), sampled.time_s.tolist(), strict=True)):
        ids, alive, figures = of_sample(k)
        figures = figures * sampled.per_unit
        if turned is not None:
            still = (1.0, 0.0, 0.0, 0.0)
            turns = [turned[number][k] if number in turned else still for number in ids]
            figures = np.concatenate([figures, np.array(turns).reshape(-1, 4)], axis=1)
        columns = (np.round(figures, 6) + 0.0).T.tolist()  # + 0.0: no zero is negative
        block = "".join([row % (frame, time_s, *one) for one in zip(ids, alive, *columns, strict=True)]).encode()
        spend(bytes=len(block))
        yield frame, block


def _turnings(sampled):
    """Id -> unit quaternions (T, 4), w first, of the bodies that turn."""
    return {b.id: b.attitude(sampled.time_s) for b in sampled.balls if b.attitude is not None}


def _whole(sampled):
    """A function of the number of a sample: ids, whether each is alive, and figures (n, 6), of all bodies."""
    placed = [(b.position_m[:, None], b.velocity_m_s[:, None], b.alive[:, None]) for b in sampled.balls]
    ids = [b.id for b in sampled.balls]
    if sampled.drops is not None:
        drops = sampled.drops
        ids += drops.ids.tolist()
        placed.append((drops.position_m, drops.velocity_m_s, drops.alive))
    order = np.argsort(ids, kind="stable")
    ids = np.array(ids, dtype=int)[order].tolist()

    def of_sample(k):
        if not placed:
            return [], [], np.empty((0, 6))
        place, velocity, alive = (np.concatenate([p[i][k] for p in placed])[order] for i in range(3))
        return ids, alive.tolist(), np.concatenate([place, velocity], axis=1)

    return of_sample


def _alive(sampled):
    """The same of those that are alive."""
    drops = sampled.drops
    first = None if drops is None else np.searchsorted(drops.sample, np.arange(len(sampled.frame) + 1))

    def of_sample(k):
        balls = [b for b in sampled.balls if b.alive[k]]
        ids = [b.id for b in balls]
        figures = [np.concatenate([b.position_m[k], b.velocity_m_s[k]])[None] for b in balls]
        if drops is not None:
            here = slice(first[k], first[k + 1])
            ids += drops.ids[drops.drop[here]].tolist()
            figures.append(np.concatenate([drops.position_m[here], drops.velocity_m_s[here]], axis=1))
        order = np.argsort(ids, kind="stable")
        return (
            np.array(ids, dtype=int)[order].tolist(),
            [1] * len(ids),
            np.concatenate([*figures, np.empty((0, 6))])[order],
        )

    return of_sample
