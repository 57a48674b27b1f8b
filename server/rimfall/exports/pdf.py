"""Drawings as the pages of a PDF, with nothing embedded: text is in Helvetica, one of the fonts that every reader has.

PDF 1.4, Adobe Systems 2001: file structure 3.4, line style 4.3.2, text 5, standard fonts 5.5.1, encoding D.1. No dates and no
compression, so that the same drawings give the same bytes. What becomes of characters the font lacks says
`helvetica.py`; the minus is a glyph of
the font outside its encoding and is given a code of its own.
"""

from .drawing import Stroke, figure
from .helvetica import MINUS_CODE, encoded, width_mm

POINTS_A_MM = 72.0 / 25.4
FONTS = {
    (400, False): "Helvetica",
    (400, True): "Helvetica-Oblique",
    (600, False): "Helvetica-Bold",
    (600, True): "Helvetica-BoldOblique",
}


def pdf(drawings, page_width_mm, page_height_mm):
    """A PDF as bytes, a page of that size a drawing, each from the page's upper left corner on; the first one's title and scene are the file's."""
    pages = [3 + 2 * k for k in range(len(drawings))]
    fonts_at = 3 + 2 * len(drawings)
    fonts = " ".join(f"/F{k} {fonts_at + k} 0 R" for k in range(len(FONTS)))
    box = f"0 0 {figure(page_width_mm * POINTS_A_MM)} {figure(page_height_mm * POINTS_A_MM)}"
    kids = " ".join(f"{n} 0 R" for n in pages)
    objects = [
        b"<< /Type /Catalog /Pages 2 0 R /Lang (en) >>",
        f"<< /Type /Pages /Count {len(pages)} /Kids [{kids}] /MediaBox [{box}] /Resources << /Font << {fonts} >> >> >>".encode(),
    ]
    for number, drawing in zip(pages, drawings, strict=True):
        content = _content(drawing, page_height_mm)
        objects.append(f"<< /Type /Page /Parent 2 0 R /Contents {number + 1} 0 R >>".encode())
        objects.append(b"<< /Length %d >>\nstream\n%s\nendstream" % (len(content), content))
    objects += [_font(name) for name in FONTS.values()]
    about = "" if drawings[0].scene is None else f" /Scene <{drawings[0].scene.encode().hex()}>"
    objects.append(f"<< /Title {_title(drawings[0].title)} /Producer (Rimfall){about} >>".encode())
    return _file(objects)


def _font(name):
    codes = f"<< /Type /Encoding /BaseEncoding /WinAnsiEncoding /Differences [{MINUS_CODE} /minus] >>"
    return f"<< /Type /Font /Subtype /Type1 /BaseFont /{name} /Encoding {codes} >>".encode()


def _title(text):
    return f"<FEFF{text.encode('utf-16-be', 'replace').hex().upper()}>"


def _file(objects):
    """The objects, numbered from 1, the last of them the Info; then where each of them is."""
    out, places = bytearray(b"%PDF-1.4\n%\xe2\xe3\xcf\xd3\n"), []
    for number, body in enumerate(objects, start=1):
        places.append(len(out))
        out += b"%d 0 obj\n%s\nendobj\n" % (number, body)
    count, start = len(objects) + 1, len(out)
    rows = "".join(f"{place:010d} 00000 n \n" for place in places)
    trailer = f"<< /Size {count} /Root 1 0 R /Info {len(objects)} 0 R >>"
    out += f"xref\n0 {count}\n0000000000 65535 f \n{rows}trailer\n{trailer}\nstartxref\n{start}\n%%EOF\n".encode()
    return bytes(out)


def _content(drawing, page_height_mm):
    """The page's marks, in millimetres from its upper left corner; y downward."""
    scale = f"{POINTS_A_MM:.6f}"
    lines = [f"{scale} 0 0 -{scale} 0 {figure(page_height_mm * POINTS_A_MM)} cm 1 j"]
    lines += [_stroke(item) if isinstance(item, Stroke) else _text(item) for item in drawing.items]
    return "\n".join(lines).encode()


def _colour(hex_colour):
    return " ".join(figure(int(hex_colour[k : k + 2], 16) / 255) for k in (1, 3, 5))


def _stroke(stroke):
    drawn = stroke.width_mm > 0
    (first, *rest) = [f"{figure(x)} {figure(y)}" for x, y in stroke.points_mm]
    path = " ".join([f"{first} m", *[f"{point} l" for point in rest], *(["h"] if stroke.closed else [])])
    colours = f"{_colour(stroke.colour)} RG {figure(stroke.width_mm)} w" if drawn else ""
    if stroke.fill:
        colours += f" {_colour(stroke.fill)} rg"
    cap = 1 if 0 in stroke.dash_mm[::2] else 0
    ink = {(True, True): "B", (True, False): "S", (False, True): "f", (False, False): "n"}[
        drawn, stroke.fill is not None
    ]
    return f"{colours} [{' '.join(map(figure, stroke.dash_mm))}] 0 d {cap} J {path} {ink}"


def _text(text):
    style = (text.weight, text.italic)
    wide = width_mm(text.text, text.size_mm, text.weight)
    left = text.x_mm - {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor] * wide
    place = f"1 0 0 -1 {figure(left)} {figure(text.y_mm)} Tm"
    font = f"/F{list(FONTS).index(style)} {figure(text.size_mm)} Tf"
    return f"BT {font} {_colour(text.colour)} rg {place} <{encoded(text.text).hex().upper()}> Tj ET"
