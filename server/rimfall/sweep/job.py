"""One combination: its scene traced, its files made in memory, and the record of it. Nothing is written here: whoever called does.

Run by worker processes, on this machine or another; what goes in and comes out is plain data.
"""

import json
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from .. import __version__
from ..errors import Refused
from ..exports.formats import FORMATS
from ..exports.options import read_options
from ..language import ENGLISH
from ..languages import speaking
from ..scene import questions
from ..scene.reading import read
from ..scene.work import bounded_alone
from .folder import file_stem
from .grid import grid_of
from .parameters import parameter_of

_SKETCH_POINTS = 40  # of a path on the contact sheet: a plot of 3 cm shows no more


@dataclass(frozen=True)
class Sweep:
    """A whole run: scene, the document as JSON; parameters, ((path, values), …); formats, names; export, the options as JSON; language, that
    of the words in its files."""

    scene: str
    parameters: tuple
    formats: tuple
    export: str
    language: str = ENGLISH


@dataclass(frozen=True)
class Outcome:
    """What came of a combination: files, name -> bytes; record, plain data that its line of the index is made from;
    program: the version that did it."""

    number: int
    files: dict
    record: dict
    program: str = __version__


def grid_of_sweep(sweep):
    """The Grid of a run."""
    return grid_of(read(sweep.scene), [parameter_of(path, values) for path, values in sweep.parameters])


_grid_once = lru_cache(maxsize=2)(grid_of_sweep)


def work(sweep, number):
    """The Outcome of one combination. What is refused in it is in its record; the rest of it is done. Raises BadInput where this process has
    no catalogue of the run's language, as one of another machine."""
    with speaking(sweep.language):
        return bounded_alone(_worked, sweep, number)


def _worked(sweep, number):
    grid = _grid_once(sweep)
    files, motions, refused = {}, [], []
    try:
        trace = questions.trace(grid.scene(number))
        motions = [_motion(traced) for traced in trace.motions]
        options = read_options(json.loads(sweep.export), trace.scene)
    except Refused as error:
        refused = [r.say for r in error.refusals]
    else:
        for name in sweep.formats:
            file_format = FORMATS[name]
            try:
                files[f"{file_stem(grid, number)}.{file_format.ending}"] = file_format.write(trace, options)
            except Refused as error:
                refused += [f"{name}: {r.say}" for r in error.refusals]
    return Outcome(number, files, {"motions": motions, "refused": refused})


def _motion(traced):
    """What the index and the contact sheet show of a motion: where it first comes down, how it ends, its path."""
    landing = traced.track.landing
    out = {"name": traced.motion.name, "end": traced.track.end, "landing": None, "path": _sketch(traced.track)}
    if landing is not None:
        names = ("time_s", "along_m", "height_m", "drift_m", "speed_m_s")
        way = traced.way(landing)
        out["landing"] = {name: getattr(landing, name) for name in names} | {
            "turns": way.turns,
            "spinward_m": way.spinward_m,
            "axial_m": way.axial_m,
        }
    return out


def _sketch(track):
    """Along and height, metres to the millimetre, of a path's samples thinned and of its events, in order of time."""
    count = len(track.samples.time_s)
    kept = np.unique(np.linspace(0, count - 1, min(count, _SKETCH_POINTS)).round().astype(int))
    time_s, along, height = (
        np.append(getattr(track.samples, f)[kept], [getattr(e, f) for e in track.events])
        for f in ("time_s", "along_m", "height_m")
    )
    order = np.argsort(time_s, kind="stable")
    return (np.round(np.stack([along[order], height[order]], axis=1), 3) + 0.0).tolist()
