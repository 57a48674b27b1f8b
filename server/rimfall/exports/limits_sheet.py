"""The map of limits to print: the map itself, each limit lettered, this habitat as a ring; a key, the sources and the caution below.

Ink on paper, figures in SI.
"""

import string
from math import log10

import numpy as np

from ..comfort.chart import chart
from ..comfort.limits import no_name
from ..comfort.published import ROWS, STUDIES
from ..comfort.quantities import QUANTITIES
from ..language import tr, tr_later, written
from ..phrases import caution_about_people
from ..scene.size.wish_words import as_given
from . import limits_map
from .drawing import Drawing, Stroke, Text, moved, svg
from .labels import Label, fitted, on_paper, wide_mm, wrapped
from .limits_map import DOTS_MM, GRAVITY_MM, ShownLimit
from .palette import INK, PAPER, SOFT
from .pdf import pdf
from .plot_frame import TEXT_MM

WIDTH_MM = 180.0  # between the margins
_MARGIN_MM = 5.0
_BOX = (12.0, 15.0, 174.5, 107.0)
_LETTERS = string.ascii_lowercase + string.ascii_uppercase
_LETTER_MM, _KEY_MM, _SOURCE_MM, _TITLE_MM = 2.9, 2.5, 2.3, 4.2
_RING_MM = 1.8
_KEY_GAP_MM, _KEY_INDENT_MM = 4.0, 4.5
_STAR = "*"
_STARRED = tr_later("* From memory: look it up before you cite it.")
_HOW = tr_later(
    "Ticks point to what a limit forbids. Italic figures: equal gravity, dotted where no limit runs. Dashed: limits of your own."
)


def map_svg(trace, options):
    """The map as an SVG file; the same whatever the options."""
    return svg(sheet(trace.scene))


def map_pdf(trace, options):
    """The map as a PDF file, one page of its own size, which A4 holds."""
    drawing = sheet(trace.scene)
    return pdf([drawing], drawing.width_mm, drawing.height_mm)


def sheet(scene):
    """The Drawing for a Scene: its habitat at time 0, its person, the limits of its own."""
    drawn = chart(scene.person, scene.own_limits)
    here = _here(scene.habitat)
    title, note = tr("Spin and radius against the limits"), _note(scene.person)
    body, foot_mm = _below(drawn)
    items = (*_head(scene, title, note), *_map(drawn, scene, here), *body)
    width_mm, height_mm = WIDTH_MM + 2 * _MARGIN_MM, foot_mm + 2 * _MARGIN_MM
    said = f"{title}. {note} {tr(_HOW)} {tr('This habitat: {figures}.', figures=here[2])}"
    return Drawing(width_mm, height_mm, said, moved(items, _MARGIN_MM, _MARGIN_MM), scene.model_dump_json())


def _here(habitat):
    """Radius, spin at time 0, and both in words; the first of flat floors is at the habitat's radius."""
    spin = f"{as_given(habitat.spin_rpm)}\u00a0rpm" if habitat.spin_rpm else tr("not turning")
    return habitat.radius_m, habitat.spin_rpm, f"{written(habitat.radius_m, ',.7g')}\u00a0m, {spin}"


def _note(person):
    return tr(
        "Equal ratios take equal room. For somebody {height} tall who walks at {pace} and turns the head at {turn}. The lines take the pull "
        "of spin alone: no thrust.",
        height=f"{as_given(person.height_m)}\u00a0m",
        pace=f"{as_given(person.walk_m_s)}\u00a0m/s",
        turn=f"{as_given(person.head_turn_deg_s)}\u00a0°/s",
    )


def _head(scene, title, note):
    room = WIDTH_MM - wide_mm(title, _TITLE_MM, 600) - 8.0
    named = fitted(scene.title or tr("Untitled scene"), room, TEXT_MM)
    return [
        Text(0.0, 4.0, title, _TITLE_MM, weight=600),
        Text(WIDTH_MM, 4.0, named, TEXT_MM, "end", colour=SOFT),
        *[
            Text(0.0, 8.6 + 3.2 * k, line, _KEY_MM, colour=SOFT)
            for k, line in enumerate(wrapped(note, WIDTH_MM - 6.0, _KEY_MM))
        ],
    ]


def _map(drawn, scene, here):
    """The axes, all lines, the ring, and last the labels on paper of their own."""
    frame = limits_map.frame_of(_BOX, drawn)
    limits = [ShownLimit(one, letter, 600) for letter, one in zip(_LETTERS, drawn.limits, strict=False) if one.line]
    point, off = _ring_at(frame, drawn, here)
    room = limits_map.room_of(frame, drawn.gravity, limits)
    room.take((*(point - _RING_MM), *(point + _RING_MM)))
    figures = tr("{figures}, off this map", figures=here[2]) if off else here[2]
    name = Label(
        (fitted(scene.title or tr("This habitat"), 60.0, _LETTER_MM, 600), figures),
        _LETTER_MM,
        600,
    )
    labels = on_paper(name, room.beside(name, point, _RING_MM + 0.6))
    for label, rectangle in limits_map.placed(room, frame, drawn.gravity, limits, _LETTER_MM):
        labels += on_paper(label, rectangle)
    lines = limits_map.lines(frame, drawn.gravity, limits)
    return [*limits_map.axes(frame, drawn, WIDTH_MM - _BOX[2]), *lines, *_guides(point), *labels, *_ring(point)]


def _ring_at(frame, drawn, here):
    """The ring's place on the page, and whether the habitat lies off the map; it sits at the side then."""
    radius, spin, _ = here
    kept = [float(np.clip(value, *ends)) for value, ends in ((radius, drawn.radius_m), (spin, drawn.spin_rpm))]
    return frame.at(*map(log10, kept)), kept != [radius, spin]


def _guides(point):
    """Dots from the ring to both axes."""
    left, _, _, bottom = _BOX
    x, y = point
    return [Stroke(np.array([point, side]), GRAVITY_MM, INK, DOTS_MM) for side in ([left, y], [x, bottom])]


def _ring(point):
    turn = np.arange(36) * np.pi / 18
    circle = point + _RING_MM * np.stack([np.cos(turn), np.sin(turn)], axis=1)
    return [Stroke(circle, 0.7, INK, closed=True, fill=PAPER)]


def _below(drawn):
    """Key, sources and caution, and how far down the page they reach."""
    y = _BOX[3] + 13.2
    items = [Text(0.0, y, tr(_HOW), _KEY_MM, italic=True)]
    keyed, y = _key(drawn, y + 4.6)
    items += keyed
    for paragraph in _sources(drawn):
        said, y = _paragraph(paragraph, y, _SOURCE_MM)
        items += said
    said, y = _paragraph(caution_about_people(), y + 1.4, _KEY_MM, italic=True)
    return [*items, *said], y - 1.3 * _KEY_MM


def _paragraph(text, y_mm, size_mm, italic=False):
    lines = wrapped(text, 0.93 * WIDTH_MM, size_mm)
    items = [
        Text(0.0, y_mm + 1.3 * size_mm * k, line, size_mm, italic=italic, colour=SOFT) for k, line in enumerate(lines)
    ]
    return items, y_mm + 1.3 * size_mm * len(lines)


def _key(drawn, y_mm):
    """Every limit's letter and words, in two columns, and where the next line stands."""
    wide = (WIDTH_MM - _KEY_GAP_MM) / 2
    entries = [
        (letter, wrapped(_entry(one), 0.95 * wide - _KEY_INDENT_MM, _KEY_MM))
        for letter, one in zip(_LETTERS, drawn.limits, strict=False)
    ]
    half = sum(len(lines) for _, lines in entries) / 2
    items, step, deepest, column, k, past = [], 1.3 * _KEY_MM, 0, 0, 0, 0
    for letter, lines in entries:
        if column == 0 and past >= half:
            column, k = 1, 0
        x = column * (wide + _KEY_GAP_MM)
        items.append(Text(x, y_mm + k * step, letter, _KEY_MM, weight=600))
        items += [Text(x + _KEY_INDENT_MM, y_mm + (k + n) * step, line, _KEY_MM) for n, line in enumerate(lines)]
        k, past = k + len(lines), past + len(lines)
        deepest = max(deepest, k)
    return items, y_mm + deepest * step + 1.0


def _entry(one):
    entry = f"{tr(QUANTITIES[one.quantity].label)}, {one.label}"
    if one.mine and not one.label.endswith(f": {no_name()}"):
        entry = tr("{limit} (yours)", limit=entry)
    if one.line:
        return entry
    if one.forbids:
        return tr("{limit}; all of this map is beyond it", limit=entry)
    return tr("{limit}; outside this map", limit=entry)


def _sources(drawn):
    """Every citation in use, those that were quoted by the same survey together; starred where it was not read for its figures."""
    used, found = {i for one in drawn.limits for i in one.ids}, {}
    rows = [row for row in ROWS if row.id in used]
    recalled = {row.study for row in rows if row.known_by != "read"}
    for row in rows:
        citation = STUDIES[row.study].citation
        how = row.source.removeprefix(citation).lstrip("; ")
        found.setdefault(how, {})[f"{citation}{_STAR if row.study in recalled else ''}"] = None
    return [*(_quoted(how, "; ".join(citations)) for how, citations in found.items()), tr(_STARRED)]


def _quoted(how, citations):
    """Citations, and how they are known where that is through another work."""
    if how:
        return tr("Sources, {how}: {citations}.", how=how, citations=citations)
    return tr("Sources: {citations}.", citations=citations)
