"""Drawings: their SVG read by the standard library's XML reader, their PDF by pypdfium2, which draws it, too."""

import ctypes
import re
import xml.etree.ElementTree as ET

import numpy as np
import pypdfium2
import pypdfium2.raw as pdfium
import pytest

from rimfall.exports.drawing import Drawing, Stroke, Text, svg
from rimfall.exports.helvetica import FALLBACK, width_mm
from rimfall.exports.pdf import pdf
from tests.tables import each_row

SVG = "{http://www.w3.org/2000/svg}"
POINTS_A_MM = 72 / 25.4
LINE = np.array([[10.0, 20.0], [90.0, 20.0]])
# The reader draws with fonts of its own; its widths of these differ from those of the AFM files.
READERS_OWN = {400: set("€›«»\xad"), 600: set("@€\xad")}


def drawn(*items, title="A drawing"):
    return Drawing(100.0, 60.0, title, items)


def page_of(*items):
    return pypdfium2.PdfDocument(pdf([drawn(*items)], 100.0, 60.0))[0]


def ink(page, dots_a_mm=8):
    """Darkness (rows, columns), 0 to 1, at so many dots a millimetre."""
    grey = page.render(scale=dots_a_mm / POINTS_A_MM, grayscale=True).to_numpy()
    return 1 - grey.reshape(grey.shape[:2]) / 255


def words_of(page):
    return page.get_textpage().get_text_range().replace("\r\n", "\n")


def box_of(page):
    """left, top, right, bottom of all the ink of a page, millimetres."""
    rows, columns = np.nonzero(ink(page) > 0.5)
    return columns.min() / 8, rows.min() / 8, columns.max() / 8, rows.max() / 8


def test_svg_holds_every_item_as_it_was():
    text = Text(5.0, 6.5, 'over <1 m> & "more"', 3.2, "end", 600, True, "#0068A6")
    dashed = Stroke(LINE, 0.5, "#985C00", (1.5, 0.75))
    area = Stroke(LINE, 0.0, closed=True, fill="#EEEFE9")
    root = ET.fromstring(svg(drawn(text, dashed, area, title="Height & time")))
    assert (root.get("viewBox"), root.get("width"), root.get("height")) == ("0 0 100 60", "100mm", "60mm")
    assert root.find(f"{SVG}title").text == "Height & time"
    said = root.find(f"{SVG}text")
    assert said.text == 'over <1 m> & "more"'
    expected = {
        "x": "5",
        "y": "6.5",
        "text-anchor": "end",
        "font-weight": "600",
        "font-style": "italic",
        "fill": "#0068A6",
    }
    assert {name: said.get(name) for name in expected} == expected
    line, filled = root.findall(f"{SVG}path")
    assert (line.get("d"), line.get("stroke-dasharray"), line.get("fill")) == ("M10 20L90 20", "1.5 0.75", "none")
    assert (filled.get("d")[-1], filled.get("fill"), filled.get("stroke")) == ("Z", "#EEEFE9", None)


def test_svg_is_readable_whatever_a_name_holds():
    name = "".join(map(chr, range(0x300))) + "\ud800\ufffe"
    assert "".join(ET.fromstring(svg(drawn(Text(1.0, 1.0, name, 3.0)))).itertext())


def test_svg_needs_no_style():
    assert b"style=" not in svg(drawn(Text(1.0, 1.0, "a", 3.0), Stroke(LINE, 0.5)))


@each_row("value", [np.nan, np.inf])
def test_no_number_that_is_not_finite_is_written(value):
    with pytest.raises(ValueError, match="finite"):
        svg(drawn(Stroke(np.array([[0.0, value]]), 0.5)))


def test_the_same_drawing_gives_the_same_bytes():
    one = drawn(Text(1.0, 1.0, "a", 3.0), Stroke(LINE, 0.5, dash_mm=(0, 1)))
    assert svg(one) == svg(one)
    assert pdf([one], 100.0, 60.0) == pdf([one], 100.0, 60.0)


def test_pdf_pages_title_and_words_as_another_reader_finds_them():
    two = [
        drawn(Text(10.0, 10.0, "Lob out, −5.2 m/s²", 4.0), title="Ω by time"),
        drawn(Text(9.0, 9.0, "(b\\ack)", 4.0)),
    ]
    document = pypdfium2.PdfDocument(pdf(two, 100.0, 60.0))
    assert len(document) == 2
    assert document[0].get_size() == pytest.approx((100 * POINTS_A_MM, 60 * POINTS_A_MM), abs=0.01)
    assert document.get_metadata_dict()["Title"] == "Ω by time"
    assert document.get_metadata_dict()["CreationDate"] == ""
    assert [words_of(page) for page in document] == ["Lob out, −5.2 m/s²", "(b\\ack)"]


def test_pdf_says_where_each_object_is():
    """A reader repairs a wrong table in silence, so it is read here: PDF 1.4, 3.4.3."""
    data = pdf([drawn(Stroke(LINE, 0.5))], 100.0, 60.0)
    start = int(data[data.rindex(b"startxref") :].split()[1])
    assert data[start : start + 4] == b"xref"
    rows = re.findall(rb"(\d{10}) 00000 n \n", data[start:])
    assert len(rows) == data.count(b"\nendobj")
    for number, place in enumerate(rows, start=1):
        assert data[int(place) :].startswith(b"%d 0 obj" % number)
    lengths = re.findall(rb"/Length (\d+) >>\nstream\n(.*?)\nendstream", data, re.DOTALL)
    assert all(int(length) == len(body) for length, body in lengths)


def test_a_line_is_inked_where_it_is_and_a_dash_has_gaps():
    solid = ink(page_of(Stroke(LINE, 1.0)))
    assert np.all(solid[160, 88:712] > 0.85)  # ink is #182024
    assert solid[140].max() == solid[180].max() == 0
    dashed = ink(page_of(Stroke(LINE, 1.0, dash_mm=(4.0, 2.0))))[160, 80:720]
    assert np.mean(dashed > 0.5) == pytest.approx(4 / 6, abs=0.02)
    dots = ink(page_of(Stroke(LINE, 1.0, dash_mm=(0.0, 2.0))))[160, 80:720] > 0.5
    assert np.count_nonzero(np.diff(dots.astype(int)) == 1) == pytest.approx(40, abs=2)


def test_a_filled_shape_is_filled_and_an_open_one_is_not():
    square = np.array([[20.0, 20.0], [40.0, 20.0], [40.0, 40.0], [20.0, 40.0]])
    assert ink(page_of(Stroke(square, 0.5, closed=True, fill="#182024")))[240, 240] > 0.8
    assert ink(page_of(Stroke(square, 0.5, closed=True)))[240, 240] == 0
    assert ink(page_of(Stroke(square, 0.5, closed=True)))[160:320, 160].min() > 0.8  # and its last side is drawn


@each_row("weight", [400, 600])
def test_anchored_text_ends_where_it_should(weight):
    said = "Height on a deep"
    wide = width_mm(said, 4.0, weight)
    for anchor, left in (("start", 40.0), ("middle", 40.0 - wide / 2), ("end", 40.0 - wide)):
        x0, top, x1, bottom = box_of(page_of(Text(40.0, 30.0, said, 4.0, anchor, weight)))
        assert (x0, x1) == pytest.approx((left, left + wide), abs=0.6)
        assert (top, bottom) == pytest.approx(
            (30.0 - 0.72 * 4, 30.0 + 0.21 * 4), abs=0.3
        )  # capitals and descenders of Helvetica


@each_row("weight", [400, 600])
def test_widths_are_those_another_reader_uses(weight):
    codes = bytes(range(32, 127)) + bytes(range(128, 256))
    characters = [c for c in codes.decode("cp1252", "ignore") if c not in READERS_OWN[weight]] + ["−"]
    page = page_of(Text(1.0, 1.0, "a", 3.0, weight=weight))
    font = pdfium.FPDFTextObj_GetFont(next(iter(page.get_objects())).raw)
    wide = ctypes.c_float()
    for character in characters:
        assert pdfium.FPDFFont_GetGlyphWidth(font, ord(character), 1000.0, ctypes.byref(wide))
        assert width_mm(character, 1000.0, weight) == pytest.approx(wide.value, abs=1), character


def test_what_the_font_lacks_is_replaced():
    assert words_of(page_of(Text(10.0, 30.0, "Ωx Łódź é", 5.0))) == f"{FALLBACK}x {FALLBACK}ódz é"
