"""The answer of a trace."""

from typing import Literal

from ...scene.document import MOTIONS, HabitatPart, Scene
from .drawings import Mesh
from .findings import Findings
from .parts import Closed, Corners, Count, Numbers, Packed, Program, Vector, Vectors, Version, left_out, rows_of, said
from .ways import DriftParts, NoDriftParts, Way

Kind = Literal[tuple(MOTIONS)]
Surface = Literal["deck", "floor", "ceiling", "hub", "wall", "ramp", "table", "hull", "edge"]
End = Literal["landed", "rest", "met a surface", "edge", "time limit", "duration", "arrived", "caught", "slack"]
NoLanding = Literal[
    "never_meets", "duration", "starts_there", "left_edge", "arrived", "caught", "met_ceiling", "met_hub", "met_wall",
    "met_deck", "met_floor", "met_ramp", "met_table", "met_hull", "met_edge",
]  # fmt: skip
EventKind = Literal[
    "release", "apex", "axis", "deck", "floor", "ceiling", "hub", "wall", "ramp", "hull", "target", "table", "edge", "grip", "slip", "rest",
    "slack", "taut", "arrives", "dock", "time_limit",
]  # fmt: skip
NoCompanion = Literal["no_spin", "rises", "given", "at_rest", "hangs", "outside", "tumbles", "not_started"]


def told(text):
    """A field that is there where words were asked for."""
    return left_out(f"{text} Not there with `parts=paths` or `parts=own_paths`.")


class Grid(Closed):
    """The instants that arrays have numbers for: sample k is at k / (fps * samples_per_frame) seconds."""

    fps: rows_of(int, 2) = said("Frames per second as numerator and denominator.")
    samples_per_frame: int = said("Samples per frame: the fewest that make 48 samples a second.", ge=1)
    count: Count = said("How many samples there are.")


class DeckFigures(Closed):
    """A named level of the habitat."""

    name: str = said("Its name.")
    radius_m: float = said("Its distance from the axis, m.")
    gravity_g: float = said("Gravity that the spin gives there, straight outward, g.")
    felt_g: float = said("What somebody at rest feels there, with thrust in it, g.")
    rim_speed_m_s: float = said("Speed at which it moves, m/s.")


class LevelLean(Closed):
    """A place along a flat floor."""

    along_m: float = said("From the floor's middle, spinward above 0, m.")
    lean_deg: float = said(
        "How far the spin's gravity leans from the floor's normal, toward the spinward end above 0, degrees."
    )
    gravity_g: float = said("Gravity that the spin gives there, straight outward, g.")
    felt_g: float = said("What somebody at rest feels there, with thrust in it, g.")
    felt_lean_deg: float = said("How far that leans from the floor's normal, degrees.")


class FloorFigures(Closed):
    """A flat floor of the habitat."""

    name: str = said("Its name.")
    floor: Count = said("Its number.")
    corners_m: Corners = said("Its corners in the turning frame, m.")
    ceiling_corners_m: Corners | None = said("The corners of its ceiling, m; null where it has none.")
    radius_m: float = said("Distance from the axis to its middle, m.")
    azimuth_deg: float = said("Where round the axis it lies, degrees.")
    gravity_g: float = said("Gravity that the spin gives in its middle, straight outward, g.")
    felt_g: float = said("What somebody at rest feels there, with thrust in it, g.")
    rim_speed_m_s: float = said("Speed at which its middle moves, m/s.")
    levels: list[LevelLean] = said("Lean and gravity at even places along it.")


class HabitatFigures(Closed):
    """What follows from radius and spin at time 0."""

    omega_rad_s: float = said("Rate of turning, rad/s.")
    deck_gravity_m_s2: float = said("Gravity that the spin gives at the deck, straight outward, m/s².")
    deck_gravity_g: float = said("The same, g.")
    felt_m_s2: float = said(
        "What somebody at rest on the deck feels, with thrust or the room's gravity in it, m/s²; on a turntable at its edge."
    )
    felt_g: float = said("The same, g.")
    felt_lean_deg: float | None = said(
        "How far that leans from straight onto the deck, degrees; null where nothing is felt."
    )
    rim_speed_m_s: float = said("Speed at which the deck moves, m/s.")
    period_s: float | None = said("Time of one turn, s; null where it does not turn.")
    decks: list[DeckFigures] = said("The levels that the document names.")
    floors: list[FloorFigures] = said("Its flat floors; none where the ground is round.")


class PlaceAboard(Closed):
    """A place aboard: the centre of the body."""

    along_m: float = said("Along the ground at deck radius, spinward above 0, m; it does not wrap.")
    height_m: float = said("Over the ground, m.")
    axial_m: float = said("Along the spin vector, m; on a turntable outward from the axis.")


class When(PlaceAboard):
    """A place and when."""

    time_s: float = said("Time of the scene, s.")


class Moment(When):
    """A place, when, and how far that is from the release."""

    way: Way = said("How far from the release.")


class Last(Moment):
    """A motion as its path ends."""

    speed_m_s: float = said("Speed in the turning frame, m/s.")


class Event(Moment):
    """What happens on the way, with the exact state just before it."""

    kind: EventKind = said("What happens; of a contact, the name of the surface.")
    rotating_m: Vector = said("Position in the turning frame, m.")
    inertial_m: Vector = said("Position in the frame that does not turn, m.")
    velocity_m_s: Vector = said("Velocity in the turning frame: spinward, up, along the axis; m/s.")
    speed_m_s: float = said("Its size, m/s.")
    incidence_deg: float | None = said(
        "Angle from the surface's normal, degrees; null without a surface, or for a body at rest."
    )
    surface: Surface | None = said("The surface met; null where none is.")
    velocity_after_m_s: Vector = left_out("Of a contact: the velocity just after, along the same directions, m/s.")


class PlainLanding(Closed):
    """Where the companion under plain gravity lands."""

    time_s: float = said("When, s.")
    along_m: float = said("Where along the ground, m.")
    axial_m: float = said("Where along the axis, m.")
    drift_m: float = said("`along_m` beyond that of the release, spinward above 0, m.")
    way: Way = said("How far from the release.")
    speed_m_s: float = said("Speed at which it meets the ground, m/s.")
    incidence_deg: float | None = said("Angle from the ground's normal, degrees; null for a body at rest.")


class Landing(PlainLanding):
    """The first contact with the ground."""

    drift_parts_m: DriftParts | None = told("The drift by cause; null where it cannot be taken apart.")
    drift_parts_none: NoDriftParts | None = told("Why it cannot.")


class Companion(Closed):
    """The same release over flat ground under uniform gravity, its place read as one aboard; arrays have a number a sample."""

    first: Count = said("Number on the grid of its first sample.")
    count: Count = said("How many samples it has.")
    along_m: Numbers = said("Along the ground, m.")
    height_m: Numbers = said("Over the ground, m.")
    axial_m: Numbers = said("Along the axis, m.")
    rotating_m: Vectors = said(
        "Positions in the turning frame, m; with `arrays=f4` offsets from the motion's `anchor_m`."
    )
    landing: PlainLanding | None = said("Where it lands; null where it does not.")
    last: Moment | None = said("As its path ends; null without a companion.")
    none_because: NoCompanion | None = said("Why there is no companion; null where there is one.")


class Breakup(When):
    """Where a stream breaks into drops."""

    length_m: float = said("Length of the stream there, m.")


class Stream(Closed):
    """What is poured, as it leaves the lip and breaks."""

    speed_m_s: float = said("Speed at the lip, m/s.")
    regime: Literal["stream", "drips"] = said("Whether a stream forms at the lip.")
    weber: float = said("Weber number at the lip.")
    ohnesorge: float = said("Ohnesorge number at the lip.")
    breakup: Breakup | None = said("Where it breaks; null where it lands whole or drips.")
    drop_diameter_m: float | None = said("Diameter of a drop, m; null where none forms.")
    drop_interval_s: float | None = said("Time from drop to drop, s.")
    drop_count: Count = said("How many drops there are.")
    first_leaves_s: float = said("When the first of it leaves the lip, s.")
    last_leaves_s: float = said("When the last of it does, s.")
    diameter_m: Numbers = said("Diameter of the stream, later of the drop, of the first parcel at the samples, m.")


class Ramp(Closed):
    """The ramp that a ball rolls on."""

    corners_m: Corners = said("Its corners in the turning frame, m.")


class Prose(Closed):
    """A paragraph to copy into a text, rounded, in words and without symbols; "" where there is nothing to tell."""

    present: str = said("In the present tense.")
    past: str = said("In the past tense.")


class Reached(Closed):
    """Somebody who can catch it, and when it is nearest to their body."""

    motion: str = said("Name of their motion.")
    time_s: float = said("When, s.")
    off_m: float = said("How far it then is from the line between feet and head, m.")
    height_m: float = said("How high over the ground, m.")
    closing_m_s: float = said("How fast it and they near each other, m/s.")


class Motion(Closed):
    """What a motion does. Arrays hold samples `first` to `first + count - 1`, from release to end."""

    name: str = said("Its name.")
    kind: Kind = said("Its kind.")
    first: Count = said("Number on the grid of its first sample.")
    count: Count = said("How many samples it has.")
    end: End = said("How it ends.")
    anchor_m: Vector = left_out(
        "With `arrays=f4`: its release in the turning frame, m, from which `rotating_m` is counted."
    )
    along_m: Numbers = said("Along the ground, m.")
    height_m: Numbers = said("Over the ground, m.")
    axial_m: Numbers = said("Along the axis, m.")
    rotating_m: Vectors = said("Positions in the turning frame, m; with `arrays=f4` offsets from `anchor_m`.")
    rotating_velocity_m_s: Vectors = said("Velocities in the turning frame, m/s.")
    inertial_m: Vectors = said("Positions in the frame that does not turn, m.")
    centrifugal_m_s2: Vectors = said("Centrifugal acceleration in the turning frame, m/s².")
    coriolis_m_s2: Vectors = said("Coriolis acceleration in the turning frame, m/s².")
    attitude_wxyz: list[rows_of(float, 4)] | Numbers | None = said(
        "Attitude as unit quaternions; null where none is to be shown."
    )
    surface: Surface | None = said("What it lies on from the start; null where it lies on nothing.")
    ramp: Ramp | None = said("The ramp it rolls on; null without one.")
    events: list[Event] = said("What happens, in order of time.")
    landing: Landing | None = said("Its first contact with the ground; null where there is none.")
    no_landing: NoLanding | None = said("Why there is no landing; null where there is one.")
    apex: Moment | None = said("The highest it goes; null where it does not move in the scene.")
    last: Last | None = said("As its path ends; null where it does not move in the scene.")
    within_reach: list[Reached] = told("Those within whose reach it comes before it lands, in order of time.")
    in_short: str = told('What comes of it, said of its name: "lands 5.21 m spinward after 1.06 s".')
    prose: Prose = told("What comes of it as prose, told to somebody at the release who faces spinward.")
    words: list[str] = told("What comes of it in sentences, in the units asked for.")
    assumptions: list[str] = told("What was left out, in sentences.")
    pieces: list[str] = told("The same as `words` as one text in pieces: before, how far, and after.")
    findings: Findings = said("What its kind tells beside its path.")
    companion: Companion = said("The same under plain gravity.")
    stream: Stream | None = said("Of a pour, the stream; null for all else.")


class Tumbling(Closed):
    """A habitat whose axis moves. `angle_rad` and `spin_rad_s` are then those about its own z alone."""

    quaternion_wxyz: list[rows_of(float, 4)] | Packed = said(
        "Attitudes, w first: from the habitat's axes to those that do not turn."
    )
    centre_m: Vector = said("What it turns about, which stays where it is; m.")


class InHabitat(Closed):
    """All motions in one habitat."""

    grid: Grid = said("When its samples are.")
    time_s: list[float] = left_out("With `arrays=lists`: times of the samples, s.")
    angle_rad: Numbers = said("How far the habitat has turned at the samples, rad.")
    spin_rad_s: Numbers = said("How fast it turns at the samples, rad/s.")
    tumbling: Tumbling | None = said(
        "How the habitat lies at the samples where it tumbles with its craft; null where its axis stands still."
    )
    habitat: HabitatFigures = said("What follows from its radius and spin.")
    motions: list[Motion] = said("What each motion does.")
    prose: Prose = told("The habitat and everything that moves in it as prose.")


class Compared(InHabitat):
    """The same motions in another habitat."""

    name: str = said("Its name in the document.")
    habitat_part: HabitatPart = said("That habitat, with every default filled in.")


class Trace(InHabitat):
    """Where everything goes. All numbers are finite."""

    rimfall_answer: Version = said("Version of this answer.")
    program: Program
    scene: Scene = said("The document as it was read, with every default filled in.")
    compare: list[Compared] = left_out("The same in the habitats set beside it; not there with `parts=own_paths`.")
    drawn: Mesh = left_out("With `drawn=1`: what a picture of its habitats is made from.")
