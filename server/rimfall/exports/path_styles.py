"""How each motion's path looks on paper: colour, dash and marker, the same as on the page. Colour never goes alone."""

from dataclasses import dataclass

import numpy as np

from .drawing import Stroke

PLAIN_COLOUR = "#465157"
PLAIN_DASH = (0.0, 2.3)  # round dots, in line widths
_STYLES = (
    ("#985C00", (), "disc"),
    ("#0068A6", (3.0, 1.5), "square"),
    ("#00523A", (3.0, 1.0, 0.7, 1.0), "triangle"),
    ("#3C3900", (1.2, 1.0), "diamond"),
    ("#96396D", (5.0, 1.4), "cross"),
    ("#A82D00", (2.7, 0.8, 0.7, 0.8, 0.7, 0.8), "ring"),
)
_PAPER = "#FFFFFF"
_THIN = 0.4  # of its radius: the line of an open marker
_SHAPES = {
    "square": np.array([[-0.88, -0.88], [0.88, -0.88], [0.88, 0.88], [-0.88, 0.88]]),
    "triangle": np.array([[0.0, -1.1], [1.05, 0.8], [-1.05, 0.8]]),
    "diamond": np.array([[0.0, -1.2], [1.2, 0.0], [0.0, 1.2], [-1.2, 0.0]]),
}
_ROUND = np.stack([np.cos(np.arange(24) * np.pi / 12), np.sin(np.arange(24) * np.pi / 12)], axis=1)


@dataclass(frozen=True)
class PathStyle:
    """colour; dash in line widths, () is solid; marker: its shape's name; open: drawn hollow, as the seventh and later are."""

    colour: str
    dash: tuple
    marker: str
    open: bool

    def dash_mm(self, width_mm):
        """The dash of a line this wide."""
        return tuple(part * width_mm for part in self.dash)


def style_of(index):
    """The style of motion number index of the scene."""
    return PathStyle(*_STYLES[index % len(_STYLES)], index >= len(_STYLES))


def marker(style, x_mm, y_mm, radius_mm):
    """The marker as Strokes, at a point of the page."""
    at, line = np.array([x_mm, y_mm]), _THIN * radius_mm
    if style.marker == "cross":
        arms = np.array([[[-1.0, -1.0], [1.0, 1.0]], [[-1.0, 1.0], [1.0, -1.0]]])
        return [Stroke(at + radius_mm * arm, line, style.colour) for arm in arms]
    hollow = style.open or style.marker == "ring"
    outline = at + radius_mm * _SHAPES.get(style.marker, _ROUND)
    return [Stroke(outline, line, style.colour, closed=True, fill=_PAPER if hollow else style.colour)]
