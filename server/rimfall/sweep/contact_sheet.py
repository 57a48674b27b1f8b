"""The contact sheet: a small plot of every combination's paths, all at one scale, 100 to a page.

Along the deck to the right (spinward), height upward, the deck a line at height 0. Colours, dashes and markers are those of the page.
"""

import json

import numpy as np

from ..exports.drawing import Drawing, Stroke, Text, svg
from ..exports.palette import SOFT, style_of
from ..exports.plot_frame import marker
from ..language import tr, written
from .parameters import as_text

PER_PAGE = 100
_COLUMNS = 10
_MARGIN, _HEAD, _GAP = 10.0, 20.0, 4.0  # mm
_LEAST_WIDE = 150.0  # mm: the head fits in
_WIDE, _HIGHEST, _LOWEST = 40.0, 32.0, 8.0  # mm, of a plot
_LINE, _SIZE = 3.2, 2.4  # mm, of the texts
_LETTERS = 33  # of a label: what fits over a plot
_MOST_LABELS = 4
_PATH_MM, _HAIR_MM, _MARK_MM = 0.35, 0.15, 0.7
_LEAST_SPAN_M = 0.5


def span(box, record):
    """The box (least along, greatest along, least height, greatest height) widened to hold a record's paths; None is an empty one."""
    points = [p for motion in record["motions"] for p in motion["path"]]
    if not points:
        return box
    low, high = np.min(points, axis=0), np.max(points, axis=0)
    mine = np.array([low[0], high[0], min(low[1], 0.0), max(high[1], 0.0)])
    return mine if box is None else np.where([True, False, True, False], np.minimum(box, mine), np.maximum(box, mine))


def names(count):
    """Files of the sheet: contact.svg, or contact-01.svg and so on past 100 combinations."""
    pages = -(-count // PER_PAGE)
    digits = max(2, len(str(pages)))
    return ["contact.svg"] if pages == 1 else [f"contact-{k:0{digits}}.svg" for k in range(1, pages + 1)]


def page(grid, box, numbered):
    """One page as SVG bytes; numbered: its (number, record) in order."""
    frame = _PlotBox(grid, box)
    columns = min(_columns(grid), len(numbered))
    rows = -(-len(numbered) // columns)
    width = 2 * _MARGIN + columns * (_WIDE + _GAP) - _GAP
    height = 2 * _MARGIN + _HEAD + rows * (frame.cell_mm + _GAP) - _GAP
    title = grid.document["title"] or tr("Untitled scene")
    items = [Text(_MARGIN, _MARGIN + 5.0, _cut(title, 50), 5.0, weight=600)]
    items += [Text(_MARGIN, _MARGIN + 10.0 + 4.0 * k, said, 2.8, italic=True) for k, said in enumerate(frame.legend())]
    for k, (number, record) in enumerate(numbered):
        at = (_MARGIN + k % columns * (_WIDE + _GAP), _MARGIN + _HEAD + k // columns * (frame.cell_mm + _GAP))
        items += frame.cell(np.array(at), number, record)
    said = tr(
        "{title}: combinations {first} to {last} of {count}",
        title=title,
        first=numbered[0][0],
        last=numbered[-1][0],
        count=grid.count,
    )
    return svg(Drawing(max(width, _LEAST_WIDE), height, said, tuple(items), json.dumps(grid.document)))


def _columns(grid):
    """As many as the last thing varied has values, where that makes a tidy row."""
    last = len(grid.parameters[-1].values)
    return last if 2 <= last <= _COLUMNS else _COLUMNS


class _PlotBox:
    """What all plots share: scale, size, labels."""

    def __init__(self, grid, box):
        self.grid = grid
        low, high, bottom, top = (0.0, 1.0, 0.0, 1.0) if box is None else map(float, box)
        self.wide_m, self.high_m = max(high - low, _LEAST_SPAN_M), max(top - bottom, _LEAST_SPAN_M)
        self.per_m = min(_WIDE / self.wide_m, _HIGHEST / self.high_m)
        self.left_m, self.top_m = (low + high - _WIDE / self.per_m) / 2, bottom + self.high_m
        self.plot_mm = max(self.high_m * self.per_m, _LOWEST)
        self.labels = min(len(grid.parameters), _MOST_LABELS)
        self.cell_mm = _LINE * (self.labels + 1) + self.plot_mm

    def legend(self):
        """Two lines that say how to read it."""
        return (
            tr(
                "{count} combinations, all at one scale: each plot is {width} m wide, spinward to the right.",
                count=written(self.grid.count, ","),
                width=written(_WIDE / self.per_m, ".3g"),
            ),
            tr("The thin line is height 0; a marker is where a motion first comes down."),
        )

    def cell(self, at, number, record):
        """Strokes and texts of one combination, its upper left corner at `at` (2,), mm."""
        lines = [
            f"{o.path.removeprefix('motions.').removeprefix('habitat.')} {as_text(v)}" for o, v in self._varied(number)
        ]
        if len(lines) > _MOST_LABELS:
            lines = [*lines[: _MOST_LABELS - 1], tr("and more: see index.csv")]
        items = [Text(at[0], at[1] + _SIZE, str(number), _SIZE, weight=600)]
        items += [Text(at[0], at[1] + _SIZE + _LINE * k, _cut(said), _SIZE) for k, said in enumerate(lines, start=1)]
        plot = at + np.array([0.0, self.cell_mm - self.plot_mm])
        ground = plot[1] + self.top_m * self.per_m
        items.append(Stroke(np.array([[plot[0], ground], [plot[0] + _WIDE, ground]]), _HAIR_MM, SOFT))
        for k, motion in enumerate(record["motions"]):
            items += self._path(plot, style_of(k), motion)
        if record["refused"]:
            items.append(Text(plot[0], ground - 1.0, tr("refused: see index.csv"), _SIZE, italic=True))
        return items

    def _varied(self, number):
        return zip(self.grid.parameters, self.grid.values(number), strict=True)

    def _path(self, plot, style, motion):
        if not motion["path"]:
            return []
        line = self._on_paper(plot, np.array(motion["path"]))
        items = [Stroke(line, _PATH_MM, style.paper, style.dash_mm(_PATH_MM))]
        if motion["landing"] is not None:
            spot = self._on_paper(plot, np.array([[motion["landing"]["along_m"], motion["landing"]["height_m"]]]))[0]
            items += marker(style, *spot, _MARK_MM)
        return items

    def _on_paper(self, plot, points_m):
        return plot + np.stack([points_m[:, 0] - self.left_m, self.top_m - points_m[:, 1]], axis=1) * self.per_m


def _cut(text, letters=_LETTERS):
    return text if len(text) <= letters else text[: letters - 1] + "…"
