"""The answers about throws and paths."""

from typing import Literal

from ...scene.document import Scene
from ...scene.shot.landings import ENDINGS, FIGURES
from .drawings import Net
from .parts import Closed, Count, Numbers, Program, Version, said
from .ways import Way

Figure = Literal[FIGURES]
Ending = Literal[ENDINGS]


class VariedFigure(Closed):
    """A figure of the throw that varies, and its values."""

    field: Figure = said("Its name.")
    label: str = said("What it is called.")
    unit: str = said("Its unit.")
    first: float = said("Its first value.")
    last: float = said("Its last value.")
    count: int = said("How many values it has.", ge=2)
    values: list[float] = said("Those values.")


class OneThrow(Closed):
    """One of the throws."""

    number: Count = said("Its number: where it stands in the arrays.")
    row: Count = said("The number of its first figure.")
    column: Count = said("The number of its second figure.")
    speed_m_s: float = said("Speed of the throw, m/s.")
    heading_deg: float = said("Its heading, degrees.")
    elevation_deg: float = said("Its elevation, degrees.")
    flight_s: float = said("How long it flies, s.")
    way: Way = said("How far from the release it comes down.")
    says: str = said("The figures that vary in words.")


class Farthest(Closed):
    """The throws that come down farthest each way; null where none goes that way."""

    spinward: OneThrow | None = said("Farthest spinward.")
    antispinward: OneThrow | None = said("Farthest antispinward.")
    across: OneThrow | None = said("Farthest along the spin vector; on a turntable outward.")
    back: OneThrow | None = said("Farthest the other way.")


class Run(Closed):
    """Landings that are joined."""

    first: Count = said("Number of the first along the line.")
    last: Count = said("Number of the last.")
    before: Ending | None = said("How the throw before it ends; null at the end of the range.")
    after: Ending | None = said("How the throw after it ends; null at the end of the range.")


class NetLine(Closed):
    """A line through the throws of one equal figure."""

    of: Figure = said(
        "The figure that is equal: the first that varies (a row of the arrays), or the second (a column)."
    )
    at: Count = said("The number of its value.")
    value: float = said("That value.")
    label: str = said("The value in words.")
    runs: list[Run] = said("Where it is drawn.", min_length=1)


class LandingsNet(Closed):
    """The lines that are drawn; what goes up on their plan."""

    up: Literal["axial_m", *FIGURES] = said(  # type: ignore[valid-type]
        "The place across the deck; or a figure of the throw, where all come down on one line along it."
    )
    lines: list[NetLine] = said("The lines.")


class Landings(Closed):
    """Where a throw can come down. Arrays have a number a throw, the second figure changing fastest; places are those of the body's centre
    as it first meets anything."""

    rimfall_landings: Version = said("Version of the answer.")
    program: Program
    scene: Scene = said("The document with every default filled in.")
    motion: str = said("The throw.")
    over: list[VariedFigure] = said("The two figures that vary.", min_length=2, max_length=2)
    own: dict[Figure, float] = said("The third figure, the motion's own.")
    start_s: float = said("When it is thrown, s.")
    endings: list[Ending] = said("How a throw can end.", min_length=len(ENDINGS))
    ended: Numbers = said("How each ends: its number in `endings`.")
    time_s: Numbers = said("When it does, time of the scene, s.")
    along_m: Numbers = said("Where then: along the ground at deck radius, spinward above 0, m; it does not wrap.")
    height_m: Numbers = said("Over the ground, m.")
    axial_m: Numbers = said("Along the spin vector, m; on a turntable outward from the axis.")
    turns: Numbers = said("Whole turns about the axis from the release, spinward above 0.")
    spinward_m: Numbers = said("The nearest way beyond those turns along the ground where it then is, m.")
    across_m: Numbers = said("How far across that, m.")
    speed_m_s: Numbers = said("Speed aboard then, m/s.")
    incidence_deg: Numbers = said("Angle from the normal of what it meets, degrees; 0 where it meets nothing.")
    counts: dict[Ending, Count] = said("How many end each way.")
    farthest: Farthest = said("Which go farthest.")
    net: LandingsNet = said("The net that they make.")
    drawing: Net | None = said("The net drawn; null where no `width` was asked for.")
    short: str = said("How far they reach, in a few characters.")
    words: list[str] = said("All of it in sentences.")
    assumptions: list[str] = said("What the answer leaves out.")
    caution: str = said("What the figures are for.")
