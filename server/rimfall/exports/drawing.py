"""A drawing on paper: strokes and texts in millimetres, y downward, and its SVG. What a printed plate or plot is made of.

SVG 1.1 (W3C Recommendation, 16 August 2011). Colours are "#rrggbb". The same drawing gives the same bytes; what is outside the
page is cut by it. All styling is in presentation attributes, so that a page that allows no style may hold the drawing.

The workbench shows the same drawings, in its own pixels and its own light or dark (`page_svg`): there a colour is the variable the
page has for it, and `role` and `says`, which no file has, let the page find a line and a pointer be told of it.
"""

from dataclasses import dataclass, replace

import numpy as np

from .palette import INK, PAPER, css_names

PX_A_MM = 96 / 25.4  # CSS Values and Units 3, section 5.2
FAMILY = "'Source Sans 3', sans-serif"


@dataclass(frozen=True)
class Stroke:
    """A line through points_mm (n, 2). width_mm 0 draws no line, fill alone; dash_mm: lengths on and off, () is solid.
    A dash of length 0 is a round dot. fill: the colour inside, or None; opacity: its own, 0 to 1. role, says: for the page."""

    points_mm: np.ndarray
    width_mm: float
    colour: str = INK
    dash_mm: tuple = ()
    closed: bool = False
    fill: str | None = None
    opacity: float = 1.0
    role: str = ""
    says: str = ""


@dataclass(frozen=True)
class Text:
    """One line of text, its baseline at y_mm. anchor: which part of it is at x_mm, "start", "middle" or "end". weight: 400 or 600.
    role, says: for the page."""

    x_mm: float
    y_mm: float
    text: str
    size_mm: float
    anchor: str = "start"
    weight: int = 400
    italic: bool = False
    colour: str = INK
    role: str = ""
    says: str = ""


@dataclass(frozen=True)
class Drawing:
    """items: Strokes and Texts, the later over the earlier. title: what it shows, in words, for who cannot see it.
    scene: the document it was drawn from, as JSON, or None."""

    width_mm: float
    height_mm: float
    title: str
    items: tuple
    scene: str | None = None


def moved(items, right_mm, down_mm):
    """The same Strokes and Texts, so far to the right and down."""
    by = np.array([right_mm, down_mm])
    return tuple(
        replace(one, points_mm=one.points_mm + by)
        if isinstance(one, Stroke)
        else replace(one, x_mm=one.x_mm + right_mm, y_mm=one.y_mm + down_mm)
        for one in items
    )


def svg(drawing):
    """The drawing as an SVG file, UTF-8 bytes, at its size on paper."""
    width, height = figure(drawing.width_mm), figure(drawing.height_mm)
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" width="{width}mm" height="{height}mm"'
        f' viewBox="0 0 {width} {height}" font-family="{FAMILY}">',
        f"<title>{_words(drawing.title)}</title>",
        *([] if drawing.scene is None else [f"<metadata>{_words(drawing.scene)}</metadata>"]),
        # under all of it, or ink would lie on a dark reader's black
        f'<rect width="{width}" height="{height}" fill="{PAPER}"/>',
        *[_marked(item, figure, str) for item in drawing.items],
        "</svg>",
    ]
    return ("\n".join(lines) + "\n").encode()


def page_svg(drawing):
    """The drawing as SVG text for the workbench: in CSS pixels, without paper, its colours those of the page."""
    width, height = (figure(side * PX_A_MM) for side in (drawing.width_mm, drawing.height_mm))
    names = css_names()
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{height}" viewBox="0 0 {width} {height}">',
        *[
            _for_page(item, _marked(item, lambda mm: figure(mm * PX_A_MM), lambda colour: f"var({names[colour]})"))
            for item in drawing.items
        ],
        "</svg>",
    ]
    return "\n".join(lines)


def _for_page(item, mark):
    """Its class, and in a group with what it says."""
    if item.role:
        mark = mark.replace(" ", f' class="{item.role}" ', 1)
    return f"<g><title>{_words(item.says)}</title>{mark}</g>" if item.says else mark


def figure(value):
    """A number as both formats write it: three places at most, no exponent, no minus before a zero. Raises ValueError where it is not finite."""
    if not np.isfinite(value):
        raise ValueError(f"a drawing holds finite numbers only, not {value}")
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _marked(item, length, ink):
    """An item's element; length and ink write its millimetres and its colours."""
    return (_stroke if isinstance(item, Stroke) else _text)(item, length, ink)


def _stroke(stroke, length, ink):
    points = "L".join(f"{length(x)} {length(y)}" for x, y in stroke.points_mm)
    line = f' stroke="{ink(stroke.colour)}" stroke-width="{length(stroke.width_mm)}"' if stroke.width_mm > 0 else ""
    dash = f' stroke-dasharray="{" ".join(map(length, stroke.dash_mm))}"' if stroke.dash_mm else ""
    round_ends = ' stroke-linecap="round"' if 0 in stroke.dash_mm[::2] else ""
    fill = ink(stroke.fill) if stroke.fill else "none"
    opacity = f' fill-opacity="{figure(stroke.opacity)}"' if stroke.opacity < 1 else ""
    ends = "Z" if stroke.closed else ""
    return f'<path d="M{points}{ends}" fill="{fill}"{opacity}{line}{dash}{round_ends} stroke-linejoin="round"/>'


def _text(text, length, ink):
    anchor = f' text-anchor="{text.anchor}"' if text.anchor != "start" else ""
    weight = f' font-weight="{text.weight}"' if text.weight != 400 else ""
    style = ' font-style="italic"' if text.italic else ""
    place = f'x="{length(text.x_mm)}" y="{length(text.y_mm)}" font-size="{length(text.size_mm)}"'
    return f'<text {place}{anchor}{weight}{style} fill="{ink(text.colour)}">{_words(text.text)}</text>'


def _words(text):
    """Escaped, and without the control characters that XML 1.0 has no way to write (section 2.2). By hand: what the library has for it
    loads all of HTTP and TLS, a fifteenth of the program's start."""
    kept = "".join(c for c in text if c >= " " and not "\ud800" <= c <= "\udfff" and c not in "\ufffe\uffff")
    return kept.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
