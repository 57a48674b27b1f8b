"""What a scene can be taken away as. FORMATS: name -> Format."""

import json
from collections.abc import Callable
from dataclasses import dataclass, fields, replace

from ..errors import BadInput, refusal
from ..language import tr, tr_later
from ..physics.budget import TooMuchWork, passing, spend
from . import csv, forces, gltf, limits_sheet, plain, plots, usd
from .notes import as_json
from .one_file import scene_file
from .options import Options
from .scene_sampling import most_sampled, sample_scene

_WHICH = ("motions", "from_s", "to_s")
_FRAMES = (*_WHICH, "fps", "first_frame", "samples_per_frame", "retime")
_SPACE = ("unit", "up", "origin")
_TABLE, _HTML, _JSON, _ZIP, _SVG, _PDF = (
    "text/csv; charset=utf-8",
    "text/html; charset=utf-8",
    "application/json",
    "application/zip",
    "image/svg+xml",
    "application/pdf",
)


@dataclass(frozen=True)
class Format:
    """say: what it is, for people. ending: of its file's name. make(Trace, Options) -> bytes. uses: the choices that change it."""

    name: str
    say: str
    media_type: str
    ending: str
    make: Callable
    uses: tuple

    def write(self, trace, options):
        """The file as bytes. Raises TooMuch, naming the motion that is most of it, where the file or the work is too much."""
        try:
            with passing():
                file = self.make(trace, self._heard(options))
            spend(bytes=len(file))
        except TooMuchWork as exceeded:
            raise _in_words(exceeded, trace, options) from None
        return file

    def _heard(self, options):
        """The Options with those choices as they are by default that are not among `uses`: also in its notes it is the same without them."""
        left = {f.name: f.default for f in fields(Options) if f.name not in self.uses and f.name != "motions"}
        if "shown_fps" in left:
            left["shown_fps"] = left.get("fps", options.fps)
        return replace(options, **left)


def _in_words(exceeded, trace, options):
    """The same, naming the motion that has most samples in the file, and what would fit."""
    used, most = (amount.told(exceeded.what) for amount in (exceeded.used, exceeded.most))
    name = most_sampled(trace, options)
    says = [
        tr("The file is more work than {most}: it was given up after {used}.", most=most, used=used),
        tr("Most of it is of motion {name}.", name=name) if name else "",
        tr(
            "What would fit: fewer frames per second (fps), a shorter part of the scene (from_s, to_s) or fewer motions."
        ),
    ]
    say = " ".join(filter(None, says)) + exceeded.busy
    return exceeded.of(refusal("export", used, tr("within {most}", most=most), say))


def _notes(trace, options):
    """The notes alone: the companion of a table, and what a page tells before it saves."""
    return as_json(sample_scene(trace, options, flying=True).notes)


def _glb(trace, options):
    """glTF is always metres and Y up, as its standard says: it is asked for no other."""
    return gltf.glb(sample_scene(trace, options, scenery=True))


def _of_samples(write):
    return lambda trace, options: write(sample_scene(trace, options, scenery=True))


_SCENE = (*_FRAMES, "shown_fps", "view", *_SPACE)
_STAGED = (*_SCENE, "stage_cameras", "cameras")
_ALL = (
    Format(
        "csv",
        tr_later("Paths, one row per frame and body"),
        _TABLE,
        "csv",
        csv.table,
        (*_FRAMES, "view", *_SPACE, "rows", "turning"),
    ),
    Format(
        "csv-frames",
        tr_later("Paths, one table per frame"),
        _ZIP,
        "frames.zip",
        csv.a_file_a_frame,
        (*_STAGED, "rows", "turning"),
    ),
    Format(
        "notes",
        tr_later("Notes to the paths: names, axes, the scene"),
        _JSON,
        "notes.json",
        _notes,
        (*_STAGED, "rows", "turning", "hull"),
    ),
    Format(
        "json",
        tr_later("Every array, in the design's own axes and metres"),
        _JSON,
        "json",
        plain.document,
        (*_FRAMES, "view"),
    ),
    Format(
        "glb",
        tr_later("glTF 2.0, an animated scene in one file"),
        "model/gltf-binary",
        "glb",
        _glb,
        (*_FRAMES, "shown_fps", "view", "origin", "stage_cameras", "cameras"),
    ),
    Format("usda", tr_later("OpenUSD as text"), "model/vnd.usda", "usda", _of_samples(usd.usda), (*_STAGED, "hull")),
    Format(
        "usdc",
        tr_later("OpenUSD, compact, for thousands of drops"),
        "model/vnd.usd",
        "usdc",
        _of_samples(usd.usdc),
        (*_STAGED, "hull"),
    ),
    Format(
        "usdz",
        tr_later("OpenUSD in one package"),
        "model/vnd.usdz+zip",
        "usdz",
        _of_samples(usd.usdz),
        (*_STAGED, "hull"),
    ),
    Format(
        "forces-csv",
        tr_later("The frame's turning, one row per frame"),
        _TABLE,
        "forces.csv",
        forces.table,
        (*_FRAMES, "up"),
    ),
    Format(
        "forces-notes",
        tr_later("The formula, the centre and a worked number"),
        _JSON,
        "forces.json",
        forces.notes,
        _STAGED,
    ),
    Format(
        "html",
        tr_later("The scene as one file that plays by itself, in any browser and without a network"),
        _HTML,
        "html",
        scene_file,
        ("motions",),
    ),
    Format("plot-path-svg", tr_later("Plot of the paths"), _SVG, "path.svg", plots.path_svg, _WHICH),
    Format("plot-path-pdf", tr_later("Plot of the paths, for print"), _PDF, "path.pdf", plots.path_pdf, _WHICH),
    Format("plot-true-svg", tr_later("Plot of the paths at true scale"), _SVG, "true.svg", plots.true_svg, _WHICH),
    Format(
        "plot-true-pdf",
        tr_later("Plot of the paths at true scale, for print"),
        _PDF,
        "true.pdf",
        plots.true_pdf,
        _WHICH,
    ),
    Format("plot-height-svg", tr_later("Plot of height against time"), _SVG, "height.svg", plots.height_svg, _WHICH),
    Format(
        "plot-height-pdf",
        tr_later("Plot of height against time, for print"),
        _PDF,
        "height.pdf",
        plots.height_pdf,
        _WHICH,
    ),
    Format("plot-felt-svg", tr_later("Plot of apparent acceleration"), _SVG, "felt.svg", plots.felt_svg, _WHICH),
    Format(
        "plot-felt-pdf", tr_later("Plot of apparent acceleration, for print"), _PDF, "felt.pdf", plots.felt_pdf, _WHICH
    ),
    Format("plots-pdf", tr_later("All three plots on one page"), _PDF, "plots.pdf", plots.plots_pdf, _WHICH),
    Format("map-svg", tr_later("Map of published limits"), _SVG, "map.svg", limits_sheet.map_svg, ()),
    Format("map-pdf", tr_later("Map of published limits, for print"), _PDF, "map.pdf", limits_sheet.map_pdf, ()),
)
FORMATS = {one.name: one for one in _ALL}
_NOTES = {"csv": "notes", "csv-frames": "notes", "forces-csv": "forces-notes"}  # tables say nothing of themselves


def listed():
    """The formats as data, for a page to offer."""
    return [
        {"name": f.name, "say": tr(f.say), "ending": f.ending, "media_type": f.media_type, "uses": list(f.uses)}
        for f in _ALL
    ]


def format_of(path):
    """The Format a file's name asks for, by the longest ending that fits. Raises BadInput, listing what there is."""
    name = path.name.lower()
    fitting = [f for f in FORMATS.values() if name.endswith("." + f.ending)]
    if not fitting:
        endings = ", ".join(sorted(f".{f.ending}" for f in FORMATS.values()))
        say = tr("No format goes by the name {name}; a file may end in {endings}.", name=path.name, endings=endings)
        raise BadInput(refusal("export", path.name, tr("a name that ends in {endings}", endings=endings), say))
    return max(fitting, key=lambda f: len(f.ending))


def files_of(trace, options, path, file_format):
    """The files of one export, path -> bytes: itself, and beside a table the notes that say what it means. A table's notes
    have a name of their own: `lob.csv` must not take the place of `lob.json`."""
    files = {path: file_format.write(trace, options)}
    if file_format.name in _NOTES:
        beside = FORMATS[_NOTES[file_format.name]]
        stem = path.name[: -len(file_format.ending) - 1]
        files[path.parent / f"{stem}.{beside.ending}"] = beside.write(trace, options)
    return files


def without_rows(files):
    """A sentence for each table among the files of `files_of` that has no rows, and why."""
    for path, content in files.items():
        if path.name.endswith(f".{FORMATS['csv'].ending}") and content.count(b"\n") == 1:
            notes = files.get(path.with_name(f"{path.name[:-4]}.{FORMATS['notes'].ending}"))
            if notes is not None:
                yield f"{path}: {json.loads(notes)['empty']}"
