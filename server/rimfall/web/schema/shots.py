"""The answers about throws and paths."""

from typing import Literal

from ...scene.document import AnyMotion, Scene
from ...scene.shot.aim_request import Catcher, FixedPart
from ...scene.shot.landings import ENDINGS, FIGURES
from .drawings import Net
from .parts import Closed, Count, Numbers, Program, Vector, Vectors, Version, said
from .traces import PlaceAboard, Surface, When
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


class Arrival(Closed):
    """How it comes in, relative to the hands."""

    speed_m_s: float = said("How fast, m/s.")
    velocity_m_s: Vector = said("Velocity: spinward, up, along the axis (on a turntable outward); m/s.")
    from_heading_deg: float = said("Heading in which the catcher sees it come, degrees.")
    from_elevation_deg: float = said("How far up the catcher sees it come from, degrees.")


class Meets(When):
    """Where the hands are as it arrives."""

    rotating_m: Vector = said("In the turning frame, m.")
    inertial_m: Vector = said("In the frame that does not turn, m.")


class BlockedBy(Meets):
    """What is in its way, and the moment at which it is met."""

    kind: Surface = said("What is met; edge where it passes one.")
    surface: Surface | None = said("The surface; null at an edge.")
    after_s: float = said("How long after the release, s.")
    velocity_m_s: Vector = said("Velocity in the turning frame: spinward, up, along the axis; m/s.")
    speed_m_s: float = said("That speed, m/s.")
    incidence_deg: float | None = said("Angle from the surface's normal, degrees; null for no motion.")
    says: str = said("The same in words.")


class Sensitivity(Closed):
    """How far errors of the throw make it miss at its nearest, with nothing in the way."""

    speed_1_percent_m: float = said("1 % too fast, m.")
    elevation_1_deg_m: float = said("A degree too high, m.")
    heading_1_deg_m: float = said("A degree to the side, m.")


class ThrowPath(Closed):
    """Where it goes, from the release to where it is caught or stopped."""

    time_s: Numbers = said("Times of the scene, s.")
    along_m: Numbers = said("Along the ground at deck radius, spinward above 0, m; it does not wrap.")
    height_m: Numbers = said("Over the ground, m.")
    axial_m: Numbers = said("Along the spin vector, m; on a turntable outward from the axis.")
    rotating_m: Vectors = said("In the turning frame, m.")
    inertial_m: Vectors = said("In the frame that does not turn, m.")


class ThrowToCatch(Closed):
    """A throw; its three figures, put into the motion, have it fly so."""

    name: str = said("A few words for a label.")
    speed_m_s: float = said("Speed of the throw, m/s.")
    heading_deg: float = said("Its heading, degrees.")
    elevation_deg: float = said("Its elevation, degrees.")
    flight_s: float = said("How long it flies, s; as if nothing were in its way.")
    misses_m: float = said("How far from the hands it is at its nearest, m; as if nothing were in its way.")
    turns: float = said("Turns about the axis as seen aboard, spinward above 0.")
    arrives: Arrival = said("How it comes in.")
    meets: Meets = said("Where the hands are then.")
    blocked_by: BlockedBy | None = said("What it meets before it arrives; null where nothing is in its way.")
    sensitivity: Sensitivity = said("How far errors make it miss.")
    says: str = said("It in words.")
    off_says: str = said("How far errors make it miss, in words.")
    path: ThrowPath = said("Where it goes.")


class AimByFlight(Closed):
    """For each flight time the throw that arrives: the curve from which the throws are read."""

    flight_s: Numbers = said("Flight times, s.")
    speed_m_s: Numbers = said("Speed of the throw that arrives then, m/s.")
    heading_deg: Numbers = said("Its heading, degrees.")
    elevation_deg: Numbers = said("Its elevation, degrees.")


class WouldDo(Closed):
    """Something that would have a throw arrive."""

    says: str = said("What to do.")
    fixed: FixedPart | None = said("What to fix instead; null where the scene is to change.")
    set: dict[str, None] | None = said("Fields of the document to set, by their paths; null where none is to change.")


class HandsPlace(PlaceAboard):
    """Where the hands are."""

    floor: Count = said("The floor.")
    rotating_m: Vector = said("In the turning frame, m.")


class _Caught(Closed):
    target: HandsPlace | None = said("Where the hands are; null where they move.")
    ways: list[ThrowToCatch] = said(
        "Throws that arrive: those that nothing is in the way of first, then by flight time."
    )
    nearest: ThrowToCatch | None = said("The throw that comes nearest; null where one arrives.")
    would_do: list[WouldDo] = said("What would do, where none arrives with nothing in its way.", max_length=3)
    by_flight: AimByFlight = said("The throw for each flight time.")
    words: list[str] = said("All of it in sentences.")
    short: str = said("How many arrive, in a few characters.")


class AimBack(_Caught):
    """The same from the catcher's hands."""

    motion: AnyMotion = said("The throw back, as a motion of a document.")


class Aim(_Caught):
    """Every throw that arrives in somebody's hands."""

    rimfall_aim: Version = said("Version of the answer.")
    program: Program
    motion: str = said("The throw.")
    to: Catcher = said("Whose hands.")
    within_m: float = said("How far they reach, m.")
    fixed: FixedPart = said("What is fixed of the throw.")
    flight_max_s: float = said("The longest flight that was looked for, s.")
    assumptions: list[str] = said("What the answer leaves out.")
    caution: str = said("What the figures are for.")
    back: AimBack | None = said("The same from the catcher's hands; null where that was not asked for.")
