"""Drawings as the pages of a PDF, with Source Sans 3 embedded, the page's own face, as far as its letters are used.

No dates and no identifier, so that the same drawings give the same bytes. What the face lacks (it has Latin, Greek and Cyrillic
letters) loses its accent where that helps, and is FALLBACK where nothing does.
"""

from unicodedata import normalize

from ..errors import Refused, refusal
from ..folders import folder
from ..language import spoken, tr
from ..phrases import NOT_MADE
from .drawing import Stroke, Text

FALLBACK = "?"
POINTS_A_MM = 72.0 / 25.4
_FACES = {(400, False): "Regular", (400, True): "It", (600, False): "Semibold", (600, True): "SemiboldIt"}
_OF_SHAPING = (
    "GDEF",
    "GPOS",
    "GSUB",
)  # letters are set one by one; to take a face apart by these takes longer than all else
_SHARE_BEFORE = {"start": 0.0, "middle": 0.5, "end": 1.0}  # of a text's width, left of its place


def pdf(drawings, page_width_mm, page_height_mm):
    """A PDF as bytes, a page of that size a drawing, each from the page's upper left corner on; the first one's title and scene are
    the file's."""
    from fpdf import FPDF  # here, for it takes longer to load than most answers to make
    from fpdf.output import OutputProducer
    from fpdf.syntax import Raw

    class File(FPDF):
        def file_id(self):
            return None

    class Producer(OutputProducer):
        def _add_info(self):
            info = super()._add_info()
            info.creation_date = None
            if drawings[0].scene is not None:
                info.scene = Raw(f"<{drawings[0].scene.encode().hex()}>")
            return info

    file = File(unit="mm", format=(page_width_mm, page_height_mm))
    file.set_title(drawings[0].title)
    file.set_producer("Rimfall")
    file.set_lang(spoken())
    for face in dict.fromkeys(_face(item) for drawing in drawings for item in drawing.items if isinstance(item, Text)):
        font = folder("static") / "vendor" / f"SourceSans3-{face}.ttf"
        if not font.is_file():
            say = tr("PDF cannot be written without the page's fonts.")
            raise Refused(refusal("export", "PDF", "SVG", f"{say} {tr(NOT_MADE)}"))
        file.add_font(face, fname=font)
        for table in _OF_SHAPING:
            del file.fonts[face.lower()].ttfont[table]
    for drawing in drawings:
        file.add_page()
        for item in drawing.items:
            (_stroke if isinstance(item, Stroke) else _text)(file, item)
    return bytes(file.output(output_producer_class=Producer))


def _face(text):
    return _FACES[text.weight, text.italic]


def _stroke(file, stroke):
    from fpdf.drawing import PaintedPath

    (first, *rest) = stroke.points_mm
    path = PaintedPath(*map(float, first))
    for point in rest:
        path.line_to(*map(float, point))
    if stroke.closed:
        path.close()
    drawn, style = stroke.width_mm > 0, path.style
    style.paint_rule = {(True, True): "B", (True, False): "S", (False, True): "f", (False, False): "n"}[
        drawn, stroke.fill is not None
    ]
    style.auto_close = False
    style.stroke_join_style = "round"
    style.stroke_cap_style = "round" if 0 in stroke.dash_mm[::2] else "butt"
    if drawn:
        style.stroke_color, style.stroke_width = stroke.colour, stroke.width_mm
        style.stroke_dash_pattern = list(stroke.dash_mm) or None
    if stroke.fill:
        style.fill_color, style.fill_opacity = stroke.fill, stroke.opacity
    file.draw_path(path, copy=False)  # nobody else has it, and a copy costs about as much as writing it


def _text(file, text):
    file.set_font(_face(text), size=text.size_mm * POINTS_A_MM)
    file.set_text_color(text.colour)
    shown = "".join(_shown(letter, file.current_font.cmap) for letter in text.text if letter >= " ")
    left = text.x_mm - _SHARE_BEFORE[text.anchor] * file.get_string_width(shown)
    file.text(left, text.y_mm, shown)


def _shown(letter, has):
    """A letter as the face can write it."""
    return next((one for one in (letter, normalize("NFKD", letter)[:1]) if ord(one) in has), FALLBACK)
