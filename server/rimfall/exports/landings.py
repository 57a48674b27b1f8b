"""What a map of landings can be taken away as: a table with notes beside it, and its net over the unrolled deck, for print."""

import json
from collections.abc import Callable
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from typing import Any

import numpy as np

from .. import __version__
from ..errors import BadInput, refusal
from ..language import tr, tr_later
from ..phrases import caution
from ..physics.budget import spend
from ..shots.landings import ENDINGS, FIGURES
from .drawing import svg
from .landings_plan import axes_said, chart
from .pdf import pdf
from .plots import WIDTH_MM, inside, sheet

HEIGHT_MM = 120.0
_TITLE = tr_later("Where it comes down")
_COLUMNS = {
    "ended": tr_later("how the throw ends: {endings}"),
    "time_s": tr_later("scene time at which it does"),
    "along_m": tr_later(
        "place of its centre then: along the ground at deck radius, spinward above 0; it does not wrap"
    ),
    "height_m": tr_later("over the ground"),
    "axial_m": tr_later("along the spin vector; on a turntable outward from the axis"),
    "turns": tr_later("whole turns about the axis from the release, spinward above 0"),
    "spinward_m": tr_later("the nearest way beyond those turns along the ground where it then is"),
    "across_m": tr_later("how far across that"),
    "arrival_speed_m_s": tr_later("speed aboard as it meets that"),
    "incidence_deg": tr_later("angle from the normal of what it meets; 0 is straight in, and where it meets nothing"),
}
_AT_ONCE = 2_000  # rows that are text at one time


@dataclass(frozen=True)
class LandingsFormat:
    """say: what it is, for people. ending: of its file's name. make(Found, units) -> bytes."""

    name: str
    say: str
    media_type: str
    ending: str
    make: Callable[[Any, str], bytes]


def table(found, units="si"):
    """A row a throw, SI whatever the units: its figures, how it ends, when, where, how fast."""
    landings = found.landings
    figures = [landings.figures[name] for name in FIGURES]
    along_m, height_m, axial_m = landings.place_m.T
    after = (landings.spinward_m, landings.across_m, landings.speed_m_s, landings.incidence_deg)
    numbers = np.stack([*figures, landings.time_s, along_m, height_m, axial_m, *after], axis=1)
    numbers = np.round(numbers, 6) + 0.0  # no zero is negative
    out = BytesIO()
    out.write(",".join([*FIGURES, *_COLUMNS]).encode() + b"\n")
    row = ",".join(["%.6f"] * 3 + ["%s"] + ["%.6f"] * 4 + ["%d"] + ["%.6f"] * 4) + "\n"
    names, turns = np.array(ENDINGS)[landings.ended].tolist(), landings.turns.astype(int).tolist()
    for first in range(0, len(numbers), _AT_ONCE):
        part = slice(first, first + _AT_ONCE)
        rows = zip(numbers[part].tolist(), names[part], turns[part], strict=True)
        text = "".join([row % (*n[:3], name, *n[3:7], turned, *n[7:]) for n, name, turned in rows]).encode()
        spend(bytes=len(text))
        out.write(text)
    return out.getvalue()


def notes(found, units="si"):
    """What the table holds, and the scene."""
    request = found.request
    content = {
        "program": f"Rimfall {__version__}",
        "title": request.scene.title,
        "landings": {
            "motion": request.motion,
            "over": [one.model_dump() for one in request.over],
            "columns": {
                **dict.fromkeys(FIGURES, tr("of the throw")),
                **{name: tr(say, endings=", ".join(ENDINGS)) for name, say in _COLUMNS.items()},
            },
        },
        "scene": request.scene.model_dump(mode="json"),
        "caution": caution(),
    }
    return json.dumps(content, indent=1, ensure_ascii=False).encode()


def drawing(found, units="si"):
    """The net to print."""
    box = inside((0.0, 16.0, WIDTH_MM, HEIGHT_MM - 11.0))
    _, items = chart(found, box, (7, 5), units)
    return sheet(found.request.scene, tr(_TITLE), note(found, units), items, HEIGHT_MM)


def note(found, units="si"):
    """What the net is of, in a few sentences."""
    return f"{tr('Throw {name}.', name=found.motion.name)} {axes_said(found, units)}"


def _svg(found, units):
    return svg(drawing(found, units))


def _pdf(found, units):
    return pdf([drawing(found, units)], WIDTH_MM, HEIGHT_MM)


FORMATS = {
    one.name: one
    for one in (
        LandingsFormat("csv", tr_later("Landings, one row per throw"), "text/csv; charset=utf-8", "csv", table),
        LandingsFormat(
            "notes", tr_later("Notes to the table: columns, the scene"), "application/json", "notes.json", notes
        ),
        LandingsFormat("svg", tr_later("Net of the landings"), "image/svg+xml", "svg", _svg),
        LandingsFormat("pdf", tr_later("Net of the landings, for print"), "application/pdf", "pdf", _pdf),
    )
}


def files_of(found, path, units="si"):
    """The files of one name, path -> bytes: itself, and beside a table its notes. Raises BadInput for another ending."""
    path = Path(path)
    fitting = [one for one in FORMATS.values() if path.name.lower().endswith(f".{one.ending}")]
    if not fitting:
        endings = ", ".join(f".{one.ending}" for one in FORMATS.values())
        say = tr(
            "No file of landings goes by the name {name}; it may end in {endings}.", name=path.name, endings=endings
        )
        raise BadInput(refusal("export", path.name, tr("a name that ends in {endings}", endings=endings), say))
    files = {path: fitting[0].make(found, units)}
    if fitting[0].name == "csv":
        files[path.with_suffix(".notes.json")] = notes(found, units)
    return files
