"""The answers that are drawings: what a habitat is made from (`/api/mesh`), the map of limits, the plot of paths."""

from typing import Annotated, Literal

from pydantic import Field

from .parts import Closed, Corners, Pair, Vector, left_out, rows_of, said

Profile = Annotated[list[Pair], Field(min_length=1)]
Arc = Annotated[
    list[float],
    Field(min_length=4, max_length=4, description="Height of its middle, m; its radius, m; from and to which angle, rad, 0 straight down."),
]  # fmt: skip


class _Part(Closed):
    side: Literal[1, -1] = left_out("The side of the axis it is on, where it is on one.")
    cut: Literal["near", "open", "section"] = left_out(
        "When it is hidden from an eye on a side; left out where it never is."
    )
    from_afar: bool = left_out("True where it shows only when the whole habitat is seen.")
    still: bool = left_out("True where it does not turn with the habitat.")


class Band(_Part):
    """A straight profile swept round the axis."""

    form: Literal["band"]
    material: str = said("What it is made of.")
    profile: Profile = said("Its ends: height and axial, m.")


class Shell(_Part):
    """An arc swept round the axis."""

    form: Literal["shell"]
    material: str = said("What it is made of.")
    arc: Arc


class Rings(_Part):
    """Lines round the axis."""

    form: Literal["rings"]
    look: str = said("How it is drawn.")
    profile: Profile = said("Where each lies: height and axial, m.")
    diameter_m: float = said("How thick they are, m; 0 for thin lines.")


class Lines(_Part):
    """Lines through points."""

    form: Literal["lines"]
    look: str = said("How they are drawn.")
    points: list[list[Vector] | list[float]] = said("Points of each line in the turning frame, m.")
    diameter_m: float = said("How thick they are, m; 0 for thin lines.")


class Posts(_Part):
    """A short line again and again round the axis."""

    form: Literal["posts"]
    look: str = said("How they are drawn.")
    every_m: float = said("How far apart, m.")
    profile: Profile = said("Its ends: height and axial, m.")
    diameter_m: float = said("How thick they are, m.")


class LightsRound(_Part):
    """Lights round the axis."""

    form: Literal["lights"]
    every_m: float = said("How far apart, m.")
    profile: Profile = said("Where they lie: height and axial, m.")
    diameter_m: float = said("How wide they are, m.")
    alpha: float = said("How bright they are, 0 to 1.", ge=0, le=1)


class LightsAt(_Part):
    """Lights at points."""

    form: Literal["lights"]
    points: list[Vector] = said("Where they are in the turning frame, m.")
    diameter_m: float = said("How wide they are, m.")
    alpha: float = said("How bright they are, 0 to 1.", ge=0, le=1)


class Tube(_Part):
    """A round bar."""

    form: Literal["tube"]
    material: str = said("What it is made of.")
    ends: rows_of(Vector, 2) = said("Its ends in the turning frame, m.")
    radii_m: Pair = said("Its radius at both, m.")
    sides: int = said("How many sides it is drawn with.", ge=3)
    closed: bool = said("Whether its ends are closed.")


class Box(_Part):
    """A box."""

    form: Literal["box"]
    material: str = said("What it is made of.")
    middle: Vector = said("Its middle in the turning frame, m.")
    size_m: Vector = said("Its size spinward, up and along the axis, m.")
    azimuth_rad: float = said("Where round the axis those directions are taken, rad.")


class Sheet(_Part):
    """A rectangle."""

    form: Literal["sheet"]
    material: str = said("What it is made of.")
    corners: Corners = said("Its corners in the turning frame, m.")
    half_m: Pair = said("Half its length and width, m.")
    edge_m: float = said("Where its border is painted, m.")


class Disc(_Part):
    """A round plate across the axis."""

    form: Literal["disc"]
    material: str = said("What it is made of.")
    radius_m: float = said("Its radius, m.")


class Lantern(_Part):
    """The lamp on the axis."""

    form: Literal["lantern"]
    radius_m: float = said("Its radius, m.")
    length_m: float | None = said("Its length, m; null where the habitat is open to both sides.")


class Figure(_Part):
    """Somebody who stands by."""

    form: Literal["figure"]
    at: Vector = said("Where the feet are, m.")


class Sections(_Part):
    """Lines across a shell, evenly round the axis."""

    form: Literal["sections"]
    look: str = said("How they are drawn.")
    count: int = said("How many.", ge=1)
    arc: Arc


AnyPart = (
    Band | Shell | Rings | Lines | Posts | LightsRound | LightsAt | Tube | Box | Sheet | Disc | Lantern | Figure | Sections
)  # fmt: skip


class Drawn(Closed):
    """What a habitat is drawn from. On round ground a profile is (height, axial) over `radius_m`."""

    radius_m: float = said("Distance from the axis to the ground, m.")
    section_m: float | None = said(
        "Radius of the circle that its ground bends along across, m; null where it is straight."
    )
    level: bool = said("Whether the ground lies across the axis.")
    half_m: float | None = said("How far the ground can be walked to either side, m; null without end.")
    hub_m: float = said("Radius of the column round the axis, m; 0 without one.")
    headroom_m: float | None = said("Free height over the ground, m; null without end.")
    outline_m: list[float] = said("Points that a picture of the whole must hold: x, y, z one after another, m.")
    parts: list[AnyPart] = said("Its parts.")


class DrawnWithEnds(Drawn):
    """A habitat, and the same with ends where it has none."""

    ended: Drawn | None = said("The same with ends; null where it has them.")


class DrawnPart(Closed):
    """A part of a craft: a solid in the craft's axes."""

    name: str = said("Its name.")
    group: Literal["turning", "still", "counter"] = said("Which group it turns with.")
    solid: str = said("Which solid it is.")
    place_m: Vector = said("Where its middle is, m.")
    is_habitat: bool = said("Whether it is what the habitat is drawn as: a ring of what turns, near its deck.")
    axis: Vector = said("Its axis of symmetry.")
    radius_m: float = left_out("Its radius, m.")
    tube_radius_m: float = left_out("The radius of its tube, m.")
    length_m: float = left_out("Its length, m.")
    size_m: Vector = left_out("Its size, m.")


class DrawnCraft(Closed):
    """What a craft is drawn from."""

    parts: list[DrawnPart] = said("Its parts.")
    counter_ratio: float = said("How fast its counter group turns to how fast the habitat does.")


class Mesh(Closed):
    """What pictures of habitats are made from."""

    habitats: list[DrawnWithEnds] = said("The habitat, then those set beside it.", min_length=1, max_length=4)
    craft: DrawnCraft = left_out("The craft round the first; left out where the scene carries none.")


class _Drawing(Closed):
    svg: str = said("The drawing as SVG.", pattern="^<svg ")
    size_px: Pair = said("Its width and height, CSS pixels.")
    box_px: rows_of(float, 4) = said("The rectangle of its values: left, top, right, bottom; CSS pixels.")


class MapLimit(Closed):
    """What a limit of the map says."""

    ids: list[str] = said("The ids of the limits that say it.")
    short: str = said("In a few characters.")
    says: str = said("In words.")
    who: str = said("Who says it.")
    on_map: bool = said("Whether its line runs through the map.")


class Map(_Drawing):
    """The map of limits; both axes are logarithmic."""

    radius_m: Pair = said("Radius at the left and right side of the box, m.")
    spin_rpm: Pair = said("Spin at its lower and upper side, rpm.")
    limits: list[MapLimit] = said("The limits drawn.")
    gravity: list[str] = said("Labels of the lines of equal gravity.")


class Plot(_Drawing):
    """Height by place along the ground of the motions."""

    along_m: Pair = said("Distance along the ground at the left and right side of the box, m.")
    height_m: Pair = said("Height at its lower and upper side, m.")


class Net(_Drawing):
    """The net of landings over the unrolled deck."""

    along_m: Pair = said("Along the deck beyond the release at the left and right side of the box, m.")
    up: Pair = said("Across the deck at its lower and upper side, m; or the values of the figure that goes up.")
    says: str = said("What its axes and lines are.")


class CraftView(Closed):
    """One view of a craft."""

    origin_px: Pair = said("Where the craft's axes begin.")
    px_per_m: float = said("CSS pixels a metre.")


class CraftPlace(Closed):
    """Where a part is drawn."""

    name: str = said("Its name.")
    group: str = said("Its group.")
    side_px: Pair = said("Its middle from the side.")
    end_px: Pair = said("The same from the end.")


class CraftChart(Closed):
    """A drawing of a finding."""

    svg: str = said("The drawing as SVG.", pattern="^<svg ")
    size_px: Pair = said("Its width and height.")
    says: str = said("What is drawn, with the units of its axes.")


class CraftViews(Closed):
    """A craft from its side, the spin axis to the right and x up, and from its end, x to the right and y up."""

    svg: str = said("The drawing as SVG.", pattern="^<svg ")
    size_px: Pair = said("Its width and height.")
    side: CraftView = said("The view from the side.")
    end: CraftView = said("The view from the end.")
    parts: list[CraftPlace] = said("Where each part is in both.")
