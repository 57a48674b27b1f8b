"""The one palette: ink and paper, and how each motion's path looks. `tokens.css` and `static/state/palette.js` are made from it
(`python -m tests.palette`), and a test holds them to it.

Colours are "#rrggbb" of sRGB. Colour never goes alone: a path has a dash and a marker of its own, too.
"""

from dataclasses import dataclass

INK = "#182024"
SOFT = "#465157"  # ink of what is said beside
HAIR = "#C4C9C1"
PAPER = "#FFFFFF"  # of a sheet; the page has a paper of its own
WATER = "#B8D8F0"
DARK = "#3A3D3C"  # of every other eighth of a ball that turns


@dataclass(frozen=True)
class PathStyle:
    """stage: its colour among the stages' lights; paper: on paper; dash in line widths, () is solid; marker: its shape's name;
    open: drawn hollow, as the seventh and later are."""

    stage: str
    paper: str
    dash: tuple
    marker: str
    open: bool = False

    def dash_mm(self, width_mm):
        """The dash of a line this wide."""
        return tuple(part * width_mm for part in self.dash)


# of the motions, in the scene's order; a seventh begins anew
PATHS = (
    PathStyle("#F8B840", "#985C00", (), "disc"),
    PathStyle("#6FC6F6", "#0068A6", (3.0, 1.5), "square"),
    PathStyle("#2FC196", "#00523A", (3.0, 1.0, 0.7, 1.0), "triangle"),
    PathStyle("#F6EE86", "#3C3900", (1.2, 1.0), "diamond"),
    PathStyle("#E6A3C8", "#96396D", (5.0, 1.4), "cross"),
    PathStyle("#F98442", "#A82D00", (2.7, 0.8, 0.7, 0.8, 0.7, 0.8), "ring"),
)
# the companion's under plain gravity: round dots
PLAIN = PathStyle("#E9E4D6", SOFT, (0.0, 2.3), "")


def style_of(number):
    """The PathStyle of a motion by its number in the scene, from 0."""
    one = PATHS[number % len(PATHS)]
    return PathStyle(one.stage, one.paper, one.dash, one.marker, number >= len(PATHS))


def linear(colour):
    """ "#rrggbb" of sRGB -> linear RGB, a tuple (IEC 61966-2-1): what files of three dimensions want."""
    shares = [int(colour[k : k + 2], 16) / 255 for k in (1, 3, 5)]
    return tuple(s / 12.92 if s <= 0.04045 else ((s + 0.055) / 1.055) ** 2.4 for s in shares)


def css_names():
    """Colour -> the page's variable for it, so that a drawing on the page has the page's own light and dark."""
    paths = {style.paper: f"--p{number}" for number, style in enumerate(PATHS, start=1)}
    return {INK: "--ink", SOFT: "--ink-2", HAIR: "--hair", PAPER: "--paper", **paths}
