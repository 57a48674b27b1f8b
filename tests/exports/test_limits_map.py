"""The map of limits on paper, read off like a reader would: places by the figures on its axes, against omega^2 r and the published
limits; where text lies by pdfium, which knows its own fonts; the SVG by the standard library's XML reader."""

import functools
import json
import math
import re
import xml.etree.ElementTree as ET
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pypdfium2
import pytest
from scipy.constants import g as G0

from rimfall.comfort.published import ROWS, STUDIES
from rimfall.exports import limits_map, limits_sheet
from rimfall.exports.drawing import Stroke, Text, svg
from rimfall.exports.labels import fitted, wide_mm, wrapped
from rimfall.exports.pdf import pdf
from rimfall.phrases import caution_about_people
from rimfall.scene.reading import read
from tests.tables import each_row

A4_MM = (210.0, 297.0)
POINTS_A_MM = 72.0 / 25.4
READ_OFF = 0.01  # relative, of a drawing in steps of 0.001 mm: 40 mm are one decade
OWN = [
    {"name": "Upper deck", "quantity": "gradient", "bound": "at_most", "value": 3},
    {"quantity": "spin", "bound": "at_most", "value": 2.2},
]


def document(habitat=None, **more):
    return {
        "rimfall": 1,
        "title": "Lantern Wheel",
        "habitat": habitat or {"radius_m": 56, "spin_rpm": 3},
        "motions": [],
    } | more


def traced(**more):
    return SimpleNamespace(scene=read(json.dumps(document(**more))))


def drawn(**more):
    return limits_sheet.sheet(traced(**more).scene)


def texts(drawing):
    return [item.text.replace("\u00a0", " ") for item in drawing.items if isinstance(item, Text)]


def axes_of(drawing):
    """(x, y) of the page -> (radius, spin), by the figures of the axes."""
    figures = [(i, float(i.text.replace(",", ""))) for i in drawing.items
               if isinstance(i, Text) and re.fullmatch(r"[\d,.]+", i.text)]  # fmt: skip
    spins = [(i.y_mm - 0.35 * i.size_mm, math.log(v)) for i, v in figures if i.anchor == "end"]
    radii = [(i.x_mm, math.log(v)) for i, v in figures if i.anchor == "middle"]
    assert len(spins) == 9
    assert len(radii) == 13
    (x1, x0), (y1, y0) = (np.polyfit(*zip(*pairs, strict=True), 1) for pairs in (radii, spins))
    return lambda x, y: (math.exp(x1 * x + x0), math.exp(y1 * y + y0))


def rings(drawing):
    return [i.points_mm for i in drawing.items if isinstance(i, Stroke) and i.closed and len(i.points_mm) > 20]


def long_lines(drawing, dash):
    """Lines of two points right across much of the map, drawn with a dash."""
    lines = [
        i.points_mm for i in drawing.items if isinstance(i, Stroke) and i.dash_mm == dash and len(i.points_mm) == 2
    ]
    return [line for line in lines if np.hypot(*(line[1] - line[0])) > 30]


def test_the_ring_stands_at_its_radius_and_spin():
    drawing = drawn()
    (ring,) = rings(drawing)
    assert axes_of(drawing)(*ring.mean(axis=0)) == pytest.approx((56.0, 3.0), rel=READ_OFF)
    assert {"Lantern Wheel", "56 m, 3 rpm"} <= set(texts(drawing))


def test_dotted_lines_are_equal_gravity():
    drawing = drawn()
    place, found = axes_of(drawing), []
    for line in long_lines(drawing, limits_map.DOTS_MM):
        (r0, s0), (r1, s1) = (place(*end) for end in line)
        found += [[r * (s * 2 * math.pi / 60) ** 2 / G0 for r, s in ((r0, s0), (r1, s1))]]
    level = [pair for pair in found if pair[0] == pytest.approx(pair[1], rel=READ_OFF)]
    for g in (0.1, 0.3, 1.0):
        assert any(pair[0] == pytest.approx(g, rel=READ_OFF) for pair in level)


def test_every_published_spin_limit_is_a_level_line_where_its_figure_says():
    drawing = drawn()
    place = axes_of(drawing)
    level = [place(*line[0])[1] for line in long_lines(drawing, ()) if line[0][1] == line[1][1]]
    for row in ROWS:
        if row.quantity == "spin" and row.bound == "at_most":
            assert any(spin == pytest.approx(row.limit, rel=READ_OFF) for spin in level), row.id


def test_ticks_point_to_what_is_forbidden():
    drawing = drawn(own_limits=OWN[1:])
    place = axes_of(drawing)
    ticks = [i.points_mm for i in drawing.items if isinstance(i, Stroke) and len(i.points_mm) == 2
             and 1 < np.hypot(*(i.points_mm[1] - i.points_mm[0])) < 2]  # fmt: skip
    upright = [tick for tick in ticks if abs(tick[0][0] - tick[1][0]) < 1e-9]
    assert len(upright) > 50  # spin is limited from above alone
    assert all(place(*tick[1])[1] > place(*tick[0])[1] for tick in upright)
    slanted = [tick for tick in ticks if abs(tick[0][0] - tick[1][0]) > 0.1]
    speeds = [[r * s for r, s in (place(*end) for end in tick)] for tick in slanted]
    assert {foot < tip for foot, tip in speeds} == {True, False}  # rim speed and gravity at least; gravity at most


def test_every_limit_has_a_letter_on_the_map_and_in_the_key_with_all_who_say_it():
    drawing = drawn(own_limits=OWN)
    letters = [i.text for i in drawing.items if isinstance(i, Text) and re.fullmatch("[a-zA-Z]", i.text)]
    assert len(letters) == 2 * len(set(letters))
    said = " ".join(texts(drawing))
    limits = [row for row in ROWS if row.bound in ("at_least", "at_most")]
    for row in limits:
        assert STUDIES[row.study].called in said
        words = f"{row.limit:g} {row.unit} {row.bound.replace('_', ' ')}:".replace("  ", " ")
        assert words in said, words
        assert STUDIES[row.study].citation in said
        assert all(part in said for part in row.source.split("; "))


def test_own_limits_are_dashed_and_marked():
    assert long_lines(drawn(), limits_map._DASH_MM) == []
    drawing = drawn(own_limits=OWN)
    assert len(long_lines(drawing, limits_map._DASH_MM)) == 2
    said = " ".join(texts(drawing))
    assert "Head to foot, 3 % at most: Upper deck (yours)" in said
    assert "Spin, 2.2 rpm at most: your own" in said


def test_the_scene_and_what_it_shows_are_in_the_files():
    root = ET.fromstring(limits_sheet.map_svg(traced(), None))
    assert json.loads(root.find("{*}metadata").text)["title"] == "Lantern Wheel"
    assert "56\u00a0m, 3\u00a0rpm" in root.find("{*}title").text
    page = pypdfium2.PdfDocument(limits_sheet.map_pdf(traced(), None))[0]
    words = " ".join(page.get_textpage().get_text_range().replace("\u00a0", " ").split())
    assert caution_about_people() in words
    assert [t for t in texts(drawn()) if t not in words] == []


def test_the_same_scene_gives_the_same_bytes():
    for write in (limits_sheet.map_svg, limits_sheet.map_pdf):
        assert write(traced(own_limits=OWN), None) == write(traced(own_limits=OWN), None)


FLOORS = [{"name": "Fore"}, {"name": "Aft", "radius_m": 40.0}]
MANY = [
    {"name": f"{'a rather long name of a limit ' * 2}"[:57] + f" {k}", "quantity": q, "bound": b, "value": v}
    for k, (q, b, v) in enumerate(
        (q, b, v)
        for q, v in (
            ("gravity", 0.5),
            ("spin", 2.5),
            ("gradient", 5.0),
            ("rim_speed", 30.0),
            ("head_turn", 0.3),
            ("coriolis", 0.1),
        )
        for b in ("at_least", "at_most")
    )
]
HARD = {
    "plain": {},
    "own": {"own_limits": OWN},
    "twelve of one's own": {"own_limits": MANY},
    "no spin": {"habitat": {"radius_m": 56, "spin_rpm": 0}},
    "off the map": {"habitat": {"radius_m": 0.5, "spin_rpm": 90}},
    "far": {"habitat": {"radius_m": 100000, "spin_rpm": 0.05}},
    "lower right": {"habitat": {"radius_m": 9000, "spin_rpm": 0.11}},
    "upper right": {"habitat": {"radius_m": 70, "spin_rpm": 59}, "title": "W" * 200},
    "long words": {"title": "a title of many words " * 9, "own_limits": [OWN[0] | {"name": "W" * 60}]},
    "other letters": {"title": "Łódź ☂ 灯輪", "own_limits": [OWN[0] | {"name": "灯" * 60}]},
    "nobody walks": {"person": {"walk_m_s": 0, "head_turn_deg_s": 0}},
    "outside the map": {"own_limits": [OWN[1] | {"value": 3000}, OWN[1] | {"value": 3000, "bound": "at_least"}]},
    "floors": {"habitat": {"shape": "tether", "radius_m": 90, "spin_rpm": 2, "floors": FLOORS}},
    "turntable": {"habitat": {"shape": "turntable", "radius_m": 2, "spin_rpm": 10}},
    "untitled": {"title": ""},
}


@functools.cache
def drawn_hard(name):
    return drawn(**HARD[name])


@each_row("name", HARD)
def test_every_scene_has_a_map_that_a4_holds(name):
    drawing = drawn_hard(name)
    page = (drawing.width_mm, drawing.height_mm)
    assert page <= A4_MM
    assert drawing.height_mm < A4_MM[1] - 20
    assert " ".join(texts(drawing)).endswith(caution_about_people())
    for item in drawing.items:
        at = item.points_mm if isinstance(item, Stroke) else np.array([[item.x_mm, item.y_mm]])
        assert np.all(np.isfinite(at))
        assert np.all(at >= 0)
        assert np.all(at <= page)
    ET.fromstring(svg(drawing))


@each_row("name", HARD)
def test_no_text_leaves_the_page_or_lies_on_another(name):
    """By pdfium's own boxes of every line of text, a word for word reader of the page; its lines are left out."""
    words = [item for item in drawn_hard(name).items if isinstance(item, Text)]
    drawing = replace(drawn_hard(name), items=words)
    page = pypdfium2.PdfDocument(pdf([drawing], drawing.width_mm, drawing.height_mm))[0]
    wide, high = page.get_size()
    boxes = [item.get_bounds() for item in page.get_objects() if item.type == pypdfium2.raw.FPDF_PAGEOBJ_TEXT]
    assert len(boxes) == len(words)
    boxes = np.array(boxes)
    assert np.all(boxes >= 0)
    assert np.all(boxes[:, 2] <= wide)
    assert np.all(boxes[:, 3] <= high)
    for k, (left, low, right, top) in enumerate(boxes):
        over = (boxes[:k, 0] < right) & (left < boxes[:k, 2]) & (boxes[:k, 1] < top) & (low < boxes[:k, 3])
        assert not over.any(), (boxes[k], boxes[:k][over])


def test_each_axis_is_named_at_its_end_and_the_lines_say_what_they_leave_out():
    """Where words stand by pdfium's own search of the page: (left, bottom, right, top), points, y upward."""
    page = pypdfium2.PdfDocument(limits_sheet.map_pdf(traced(), None))[0].get_textpage()

    def place(words):
        search = page.search(words, match_case=True, match_whole_word=True)
        first, count = search.get_next()
        assert search.get_next() is None, words
        sides = np.array([page.get_charbox(k) for k in range(first, first + count)])
        return (*sides[:, :2].min(axis=0), *sides[:, 2:].max(axis=0))

    spin, radius, most, ring = (place(words) for words in ("spin, rpm", "radius, m", "10,000", "56 m, 3"))
    assert spin[1] > ring[3]
    assert spin[2] < ring[0]
    assert radius[3] < most[1]
    assert radius[2] > most[0]
    assert "no thrust" in " ".join(texts(drawn()))


def test_a_ring_off_the_map_is_at_its_side_and_says_so():
    drawing = drawn(**HARD["off the map"])
    (ring,) = rings(drawing)
    assert axes_of(drawing)(*ring.mean(axis=0)) == pytest.approx((1.0, 60.0), rel=READ_OFF)
    assert "0.5 m, 90 rpm, off this map" in texts(drawing)
    assert "56 m, not turning, off this map" in texts(drawn(**HARD["no spin"]))


def test_on_flat_floors_the_ring_is_where_somebody_stands():
    drawing = drawn(**HARD["floors"])
    assert axes_of(drawing)(*rings(drawing)[0].mean(axis=0)) == pytest.approx((90.0, 2.0), rel=READ_OFF)


def test_texts_are_cut_or_wrapped_to_their_room():
    assert fitted("short", 100.0, 3.0) == "short"
    cut = fitted("W" * 60, 40.0, 3.0)
    assert cut.endswith("…")
    assert wide_mm(cut, 3.0) <= 40.0
    lines = wrapped("some words that take more than one line of this width", 30.0, 3.0)
    assert " ".join(lines) == "some words that take more than one line of this width"
    assert all(wide_mm(line, 3.0) <= 30.0 for line in lines)
    assert wide_mm("灯輪", 3.0) == 6.0


def test_a_citation_that_was_not_read_is_starred_and_no_text_touches_the_edge_of_the_page():
    one = drawn()
    said = " ".join(texts(one))
    for row in ROWS:
        if row.known_by != "read" and row.bound in ("at_least", "at_most"):
            assert f"{STUDIES[row.study].citation}*" in said, row.id
    assert "* From memory: look it up before you cite it." in said
    placed = [item for item in one.items if isinstance(item, Text)]
    assert min(item.x_mm for item in placed) >= 4.0
    assert max(item.x_mm for item in placed if item.anchor == "end") <= one.width_mm - 4.0
    assert max(item.y_mm for item in placed) <= one.height_mm - 4.0
