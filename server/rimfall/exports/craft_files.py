"""What a craft's answer can be taken away as: its drawing, pages to print, a table of its figures, and a table of its tumble.

The motion of a tumbling craft, with its meshes, is a scene's (`kind: tumble`), and is taken away as every motion is.
"""

import csv
from collections.abc import Callable
from dataclasses import dataclass
from io import StringIO
from pathlib import Path

from ..errors import BadInput, refusal
from ..language import tr
from ..phrases import caution
from ..scene.craft.answers import FINDINGS
from ..scene.craft.figures import numbers
from .craft_report import PAGE_MM, WIDTH_MM, sheets
from .craft_views import chart
from .drawing import Drawing, Text, svg
from .labels import wrapped
from .palette import SOFT
from .pdf import pdf

VIEWS_HEIGHT_MM = 120.0
_FOOT_MM, _SMALL_MM, _LINE_MM = 6.0, 2.7, 3.6


@dataclass(frozen=True)
class CraftFormat:
    """say: what it is, for people. ending: of its file's name. make(asked, answer, units) -> bytes. needs: the finding it is made of."""

    name: str
    say: str
    media_type: str
    ending: str
    make: Callable
    needs: str | None = None


def _svg(asked, answer, units):
    _, items, height_mm = chart(asked, WIDTH_MM, VIEWS_HEIGHT_MM, units)
    title = (
        tr("{title}, from its side and from its end", title=asked.craft.title)
        if asked.craft.title
        else tr("A craft, from its side and from its end")
    )
    foot_mm = height_mm + _FOOT_MM
    rows = [
        Text(0.0, foot_mm - 1.5 + number * _LINE_MM, row, _SMALL_MM, italic=True, colour=SOFT)
        for number, row in enumerate(wrapped(caution(), WIDTH_MM, _SMALL_MM))
    ]
    high_mm = foot_mm + (len(rows) - 1) * _LINE_MM
    return svg(Drawing(WIDTH_MM, high_mm, title, (*items, *rows), asked.craft.model_dump_json()))


def _pdf(asked, answer, units):
    return pdf(sheets(asked, answer, units), *PAGE_MM)


def _table(asked, answer, units):
    """A row a figure, SI whatever the units: finding, figure, value, unit."""
    rows = [(name, *row) for name in FINDINGS if answer.get(name) is not None for row in numbers(answer[name])]
    return _csv(["finding", "figure", "value", "unit"], rows)


def _tumble(asked, answer, units):
    """A row a moment: time, attitude (body to inertial), rates about the craft's axes, energy, nutation, gravity at each named place."""
    tumble = answer["tumble"]
    names = [
        "time_s",
        "q_w",
        "q_x",
        "q_y",
        "q_z",
        "rate_x_rad_s",
        "rate_y_rad_s",
        "rate_z_rad_s",
        "energy_j",
        "nutation_deg",
    ]
    places = [f"{place['name']} gravity_g" for place in tumble["places"]]
    columns = zip(
        tumble["time_s"],
        tumble["quaternion_wxyz"],
        tumble["rates_rad_s"],
        tumble["energy_j"],
        tumble["nutation_deg"],
        *[place["gravity_g"] for place in tumble["places"]],
        strict=True,
    )
    rows = ([time, *attitude, *rates, *rest] for time, attitude, rates, *rest in columns)
    return _csv([*names, *places], rows)


def _csv(heading, rows):
    out = StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(heading)
    writer.writerows([[f"{one:.9g}" if isinstance(one, float) else one for one in row] for row in rows])
    return out.getvalue().encode()


FORMATS = {
    one.name: one
    for one in (
        CraftFormat("svg", "The craft from its side and its end", "image/svg+xml", "svg", _svg),
        CraftFormat("pdf", "Every question with its answer, for print", "application/pdf", "pdf", _pdf),
        CraftFormat(
            "tumble", "The tumble, one row per moment", "text/csv; charset=utf-8", "tumble.csv", _tumble, "tumble"
        ),
        CraftFormat("csv", "The figures, one row each", "text/csv; charset=utf-8", "csv", _table),
    )
}


def made(name, asked, answer, units="si"):
    """A file of an answer as bytes, by the name of its format. Raises BadInput where the answer has not what it is made of."""
    kind = FORMATS[name]
    if kind.needs is not None and answer.get(kind.needs) is None:
        say = tr(
            "There is no table of the {finding}: the craft's document has no {finding}; give it one.",
            finding=kind.needs,
        )
        raise BadInput(refusal(kind.needs, None, tr("given, for this file"), say))
    return kind.make(asked, answer, units)


def file_of(path, asked, answer, units="si"):
    """The bytes of a file by the ending of its name. Raises BadInput for another ending."""
    name = Path(path).name.lower()
    fitting = [kind for kind in FORMATS.values() if name.endswith(f".{kind.ending}")]
    if not fitting:
        endings = ", ".join(f".{kind.ending}" for kind in FORMATS.values())
        say = tr(
            "No file of a craft goes by the name {file}; it must end in {endings}.",
            file=Path(path).name,
            endings=endings,
        )
        may_be = tr("a name that ends in {endings}", endings=endings)
        raise BadInput(refusal("export", Path(path).name, may_be, say))
    return made(fitting[0].name, asked, answer, units)
