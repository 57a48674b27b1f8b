"""Plots to print: height against place along the ground, paths at true scale, height against time, apparent acceleration against time; each alone, or
three on a page.

Ink on paper: a line a motion in its colour and dash, its name on the line, hairs at labelled values only. Figures are SI.
"""

import numpy as np

from ..comfort.grounds import on_the
from ..language import tr, tr_later, written
from ..phrases import caution, listed, where
from ..physics.constants import G0_M_S2
from .drawing import Drawing, Text, moved, svg
from .labels import fitted, wide_mm, wrapped
from .palette import PLAIN, SOFT, style_of
from .pdf import pdf
from .plot_frame import TEXT_MM, Frame, Line, axes, lines
from .plot_lines import apparent_m_s2, flown
from .true_plot import true_chart

WIDTH_MM, HEIGHT_MM, FELT_HEIGHT_MM = 180.0, 62.0, 86.0
PAGE_MM = (210.0, 297.0)
TRUE_HEIGHT_MM = 190.0
_TITLE_MM, _FOOT_MM, _SMALL_MM = 4.2, 3.0, 2.6
_SPARE = 0.85  # of the page's width: DejaVu Sans, which many readers take where a face is missing, is a seventh wider than Helvetica
_BETWEEN_MM = 6.0
_LOWER_MM = 0.5  # than one line, for two under a plot to keep clear of its figures
_LEAST_M = 0.1
_MOST_LANDINGS = 4  # told in a plot's heading
_SIDES_MM = (15.0, 17.0)  # left, for the figures; right, for those in g
_NOTHING = tr_later("Nothing moves in this time.")


def path(trace, options):
    """Height against place along the ground, with the reference under plain gravity dotted."""
    paths = flown(trace, options)
    ground, along = _words(trace)
    title = tr("Height by place {along}", along=along)
    note = f"{_of_places(trace, ground, along)}{_of_pours(paths)}{_of_landings(paths)}"
    frame, body = path_chart(paths, inside((0.0, 14.0, WIDTH_MM, HEIGHT_MM - 11.0)), (7, 4))
    return sheet(trace.scene, title, note + _of_scales(frame), body, HEIGHT_MM)


def true(trace, options):
    """The paths at one scale both ways, with the ground as it bends."""
    paths = flown(trace, options)
    frame, body, scale = true_chart(trace, paths, inside((0.0, 14.0, WIDTH_MM, TRUE_HEIGHT_MM - 11.0)))
    ground, _ = _words(trace)
    note = tr(
        "Metres from the {ground} under the first release, spinward to the right; scale 1:{scale}, both ways.",
        ground=ground,
        scale=written(scale, ",.6g"),
    )
    body = body if paths else [*body, _nothing(frame)]
    return sheet(trace.scene, tr("Paths at true scale"), note + _of_pours(paths), body, frame.box[3] + 11.0)


def path_chart(paths, box, about, per_m=1.0, plain=True):
    """The axes and lines of `path` in a rectangle of the page, and its Frame -> (Frame, items); about: so many figures across and up;
    per_m: units shown to a metre; plain: whether the companions are drawn."""
    drawn = (_plain_lines(paths, 0) if plain else []) + [_line(f, 0) for f in paths]
    drawn = [line.scaled(per_m) for line in drawn]
    frame = Frame(box, _wide(drawn), _high(drawn, _LEAST_M * per_m))
    return frame, _chart(frame, drawn, about)


def height(trace, options):
    """Height against time, with the reference under plain gravity dotted."""
    paths = flown(trace, options)
    ground, _ = _words(trace)
    drawn = _plain_lines(paths, 2) + [_line(f, 2) for f in paths]
    note = tr("Height above the {ground}, m, by time, s.", ground=ground) + _of_pours(paths)
    frame = Frame(inside((0.0, 14.0, WIDTH_MM, HEIGHT_MM - 11.0)), _long(drawn), _high(drawn, _LEAST_M))
    body = _chart(frame, drawn, (8, 4))
    return sheet(trace.scene, tr("Height by time"), note, body, HEIGHT_MM)


def felt(trace, options):
    """Size of the apparent acceleration against time: all of it, its centrifugal and its Coriolis part, on one scale."""
    paths = flown(trace, options)
    sizes = [
        (_together(trace), lambda f: apparent_m_s2(trace.setting, f.states)),
        (tr("Centrifugal part"), lambda f: np.linalg.norm(f.states.centrifugal_m_s2, axis=1)),
        (tr("Coriolis part"), lambda f: np.linalg.norm(f.states.coriolis_m_s2, axis=1)),
    ]
    panels = [(say, [_timed(f, size(f)) for f in paths]) for say, size in sizes]
    every = [line for _, drawn in panels for line in drawn]
    spans, body = (_long(every), _high(every, 0.01)), []
    tall = (FELT_HEIGHT_MM - 35.0) / len(panels)
    for k, (say, drawn) in enumerate(panels):
        top = 14.0 + k * (tall + 5.0)
        last = k == len(panels) - 1
        frame = Frame(inside((0.0, top + 4.0, WIDTH_MM, top + tall)), *spans)
        body += _chart(frame, drawn, (8, 3), beside=_in_g, figures_below=last)
        body.append(Text(_SIDES_MM[0], top - 0.2, say, TEXT_MM, italic=True, colour=SOFT))
    note = tr("Size of the apparent acceleration aboard, m/s² at the left and g at the right, by time, s.")
    title = tr("Apparent acceleration by time")
    return sheet(trace.scene, title, note + _of_pours(paths), body, FELT_HEIGHT_MM)


def path_svg(trace, options):
    """`path` as an SVG file."""
    return svg(path(trace, options))


def path_pdf(trace, options):
    """`path` as a PDF file."""
    return pdf([path(trace, options)], WIDTH_MM, HEIGHT_MM)


def true_svg(trace, options):
    """`true` as an SVG file."""
    return svg(true(trace, options))


def true_pdf(trace, options):
    """`true` as a PDF file."""
    drawing = true(trace, options)
    return pdf([drawing], WIDTH_MM, drawing.height_mm)


def height_svg(trace, options):
    """`height` as an SVG file."""
    return svg(height(trace, options))


def height_pdf(trace, options):
    """`height` as a PDF file."""
    return pdf([height(trace, options)], WIDTH_MM, HEIGHT_MM)


def felt_svg(trace, options):
    """`felt` as an SVG file."""
    return svg(felt(trace, options))


def felt_pdf(trace, options):
    """`felt` as a PDF file."""
    return pdf([felt(trace, options)], WIDTH_MM, FELT_HEIGHT_MM)


def plots_pdf(trace, options):
    """All three on one A4 page, over one caution."""
    left, down, items = (PAGE_MM[0] - WIDTH_MM) / 2, 15.0, []
    for plot in (path, height, felt):
        drawing = plot(trace, options)
        items += moved(drawing.items[: -len(_foot(0.0))], left, down)
        down += drawing.height_mm + 10.0
    items += moved(_foot(PAGE_MM[1] - 10.0), left, 0.0)
    return pdf([Drawing(*PAGE_MM, _title(trace.scene), tuple(items), _document(trace.scene))], *PAGE_MM)


def _title(scene):
    return scene.title or tr("Untitled scene")


def _words(trace):
    """What is stood on, and along what a place is counted."""
    ground = trace.setting.habitat.words_of_ground
    return on_the(ground.name), tr(ground.along)


def _of_places(trace, ground, along):
    """What the axes of `path` are; where places along round ground are measured, which the words of a turntable's say already."""
    chart = trace.setting.habitat.chart()
    if chart.winds and chart.bends:
        return tr(
            "Height above the {ground} by place {along}, measured at the {ground}, m; spinward to the right.",
            ground=ground,
            along=along,
        )
    return tr("Height above the {ground} by place {along}, m; spinward to the right.", ground=ground, along=along)


def _of_pours(paths):
    poured = any(f.traced.plan.stream is not None for f in paths)
    return f" {tr('A pour is shown by its first parcel.')}" if poured else ""


def _of_landings(paths):
    """How far each lands, along the ground where it is: its place on the axis is counted where places are, and may be far round."""
    landed = [f.traced for f in paths if f.landed]
    said = [f"{t.motion.name} {where(t.way(t.track.landing), 'si', t.across)}" for t in landed[:_MOST_LANDINGS]]
    if not said:
        return ""
    if landed[_MOST_LANDINGS:]:
        return f" {tr('Landings: {landings}; and more.', landings='; '.join(said))}"
    return f" {tr('Landings: {landings}.', landings='; '.join(said))}"


def _of_scales(frame):
    """How much larger one axis is drawn than the other."""
    left, top, right, bottom = frame.box
    up, across = (bottom - top) / np.ptp(frame.y_span), (right - left) / np.ptp(frame.x_span)
    if 0.99 < up / across < 1.01:
        return ""
    if up > across:
        times = written(up / across, ".2g")
        return f" {tr('Heights are drawn {times} times as large as distances.', times=times)}"
    times = written(across / up, ".2g")
    return f" {tr('Distances are drawn {times} times as large as heights.', times=times)}"


def _together(trace):
    """What the first panel adds up."""
    setting = trace.setting
    parts = [tr("centrifugal"), tr("Coriolis")]
    parts += [] if setting.habitat.spin.steady else [tr("the part of the changing spin")]
    parts += [tr("the steady pull")] if any(setting.habitat.pull_m_s2) else []
    return tr("Together: {parts}, as one arrow", parts=listed(parts))


def _line(flown_one, of):
    """A motion's height by place (0) or time (2)."""
    x = flown_one.states.along_m if of == 0 else flown_one.states.time_s
    spot = flown_one.marked[of], flown_one.marked[1]
    return Line(x, flown_one.states.height_m, style_of(flown_one.index), flown_one.traced.motion.name, spot)


def _timed(flown_one, y):
    time_s = flown_one.states.time_s
    spot = float(time_s[-1]), float(y[-1])
    return Line(time_s, y, style_of(flown_one.index), flown_one.traced.motion.name, spot)


def _plain_lines(paths, of):
    """The references' heights by place (0) or time (2); the longest is named for all."""
    plain = [f.plain for f in paths if len(f.plain[0])]
    longest = max(range(len(plain)), key=lambda k: np.ptp(plain[k][of]) + np.ptp(plain[k][1]), default=None)
    return [Line(p[of], p[1], PLAIN, tr("plain gravity") if k == longest else "") for k, p in enumerate(plain)]


def _wide(drawn):
    """Distances from end to end, zero among them, no narrower than half as wide as high."""
    left, right = _span([line.x for line in drawn])
    _, top = _span([line.y for line in drawn])
    half = 0.53 * max(right - left, 0.5 * top, _LEAST_M)
    return (left + right) / 2 - half, (left + right) / 2 + half


def _high(drawn, least):
    low, high = _span([line.y for line in drawn])
    return low, low + max(high - low, least) * 1.12


def _long(drawn):
    times = np.concatenate([line.x for line in drawn]) if drawn else np.zeros(1)
    first, last = float(times.min()), float(times.max())
    return first, first + max(last - first, 0.1) * 1.02


def _span(values):
    """Least and greatest of lists of values and zero."""
    every = np.concatenate([*values, np.zeros(1)])
    return float(every.min()), float(every.max())


def inside(area):
    """What of an area of the page is left for a chart beside its figures."""
    left, top, right, bottom = area
    return left + _SIDES_MM[0], top, right - _SIDES_MM[1], bottom


def _chart(frame, drawn, about, beside=None, figures_below=True):
    items = axes(frame, *about, beside, figures_below) + lines(frame, drawn)
    return items if drawn else [*items, _nothing(frame)]


def _nothing(frame):
    left, top, right, bottom = frame.box
    middle = ((left + right + _SIDES_MM[1] - _SIDES_MM[0]) / 2, (top + bottom) / 2)
    return Text(*middle, tr(_NOTHING), TEXT_MM, "middle", italic=True, colour=SOFT)


def _in_g(value):
    return f"{written(value / G0_M_S2, '.2f')}\u00a0g"


def sheet(scene, title, note, body, height_mm):
    """A plot of a Scene under its title, over the caution. Words have room to spare, for a reader's own face may be wider than ours."""
    room = _SPARE * WIDTH_MM - wide_mm(title, _TITLE_MM, 600) - _BETWEEN_MM
    said = wrapped(note, _SPARE * WIDTH_MM, TEXT_MM)
    size = TEXT_MM if len(said) == 1 else _SMALL_MM
    said = wrapped(note, _SPARE * WIDTH_MM, size)
    head = [
        Text(0.0, 4.0, title, _TITLE_MM, weight=600),
        Text(WIDTH_MM, 4.0, fitted(_title(scene), room, TEXT_MM), TEXT_MM, "end", colour=SOFT),
        *[Text(0.0, 8.8 + 1.2 * size * k, line, size, colour=SOFT) for k, line in enumerate(said)],
    ]
    items = (*head, *body, *_foot(height_mm - 1.2))
    return Drawing(WIDTH_MM, height_mm, f"{title}. {note}", items, _document(scene))


def _document(scene):
    """The document, so that it comes back from the file."""
    return scene.model_dump_json()


def _foot(y_mm):
    """The caution, the last items of every plot: in one line where it has room, else in smaller ones over it."""
    said, size = [caution()], _FOOT_MM
    if wide_mm(said[0], size) > WIDTH_MM:
        said, size, y_mm = wrapped(said[0], _SPARE * WIDTH_MM, _SMALL_MM), _SMALL_MM, y_mm + _LOWER_MM
    ups = range(len(said) - 1, -1, -1)
    return [
        Text(0.0, y_mm - 1.2 * size * up, line, size, italic=True, colour=SOFT)
        for up, line in zip(ups, said, strict=True)
    ]
