"""Drawings: their SVG read by the standard library's XML reader, their PDF by pypdfium2, which draws it, too."""

import os
import subprocess
import sys
import time
import xml.etree.ElementTree as ET

import numpy as np
import pypdfium2
import pypdfium2.raw as pdfium
import pytest
from fontTools.ttLib import TTFont

from rimfall.exports.drawing import Drawing, Stroke, Text, svg
from rimfall.exports.helvetica import width_mm
from rimfall.exports.pdf import FALLBACK, pdf
from rimfall.folders import folder
from rimfall.phrases import caution
from tests.tables import each_row

SVG = "{http://www.w3.org/2000/svg}"
POINTS_A_MM = 72 / 25.4
LINE = np.array([[10.0, 20.0], [90.0, 20.0]])


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


def test_a_pdf_is_the_same_in_another_second_and_another_process():
    code = (
        "import sys; from rimfall.exports.drawing import Drawing, Text; from rimfall.exports.pdf import pdf;"
        "sys.stdout.buffer.write(pdf([Drawing(100.0, 60.0, 'A drawing', (Text(1.0, 5.0, 'Lob', 4.0),))], 100.0, 60.0))"
    )
    environment = os.environ | {"PYTHONPATH": os.pathsep.join(part for part in sys.path if part)}
    other = subprocess.run([sys.executable, "-c", code], capture_output=True, env=environment, check=True)
    time.sleep(1.1)  # dates in PDF have seconds
    assert pdf([drawn(Text(1.0, 5.0, "Lob", 4.0))], 100.0, 60.0) == other.stdout


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
    wide = own_width(said, weight) * 4.0
    for anchor, left in (("start", 40.0), ("middle", 40.0 - wide / 2), ("end", 40.0 - wide)):
        x0, top, x1, bottom = box_of(page_of(Text(40.0, 30.0, said, 4.0, anchor, weight)))
        assert (x0, x1) == pytest.approx((left, left + wide), abs=0.6)
        assert (top, bottom) == pytest.approx(
            (30.0 - 0.7 * 4, 30.0 + 0.21 * 4), abs=0.3
        )  # ascenders and descenders of the face


@each_row("weight", [400, 600])
def test_words_take_no_more_than_the_room_they_are_given(weight):
    """The face's own widths against those that drawings are laid out by."""
    for said in (
        "Lob out",
        "6\u00a0rpm",
        "0.06 rad/s²",
        "10,000",
        "−5.2 m/s²",
        "plain gravity",
        "Coriolis 0.25",
        caution(),
    ):
        assert own_width(said, weight) <= width_mm(said, 1.0, weight) * 1.001, said


def test_names_in_other_letters_are_printed_and_what_the_face_lacks_is_replaced():
    said = "Łódź Ωμέγα Жизнь é −5"
    assert words_of(page_of(Text(10.0, 30.0, said, 5.0))) == said
    assert words_of(page_of(Text(10.0, 30.0, "x 灯 ☂", 5.0))) == f"x {FALLBACK} {FALLBACK}"


def test_every_face_is_embedded():
    faces = [(weight, italic) for weight in (400, 600) for italic in (False, True)]
    page = page_of(*(Text(10.0, 9.0 + 9 * k, "a", 5.0, "start", *face) for k, face in enumerate(faces)))
    fonts = [pdfium.FPDFTextObj_GetFont(one.raw) for one in page.get_objects()]
    assert [pdfium.FPDFFont_GetIsEmbedded(font) for font in fonts] == [1] * 4


def own_width(text, weight):
    """In sizes, by the face's hmtx and cmap tables (OpenType 1.9)."""
    face = TTFont(folder("static") / "vendor" / f"SourceSans3-{'Semibold' if weight == 600 else 'Regular'}.ttf")
    return sum(face["hmtx"][face.getBestCmap()[ord(letter)]][0] for letter in text) / face["head"].unitsPerEm
