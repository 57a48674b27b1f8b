"""What each kind of motion tells beside its path: `findings` of a motion of a trace's answer. Arrays have a number a sample."""

from typing import Literal

from .parts import Closed, Count, Numbers, Packed, Pair, Vector, Vectors, rows_of, said
from .ways import DriftParts, NoDriftParts, Way


class NoFindings(Closed):
    """A kind that tells nothing more, or a motion that has not begun when the scene ends."""


class Drops(Closed):
    """The drops of a pour in order of birth."""

    dripped_first: Count = said("How many dripped before there was a stream.")
    of_stream: Count = said("How many a stream broke into.")
    dripped_later: Count = said("How many dripped once there had been one.")
    leaves_s: Numbers = said("When the liquid of each left the lip, s.")
    dripped: Numbers = said("1 where it dripped from the lip, 0 where a stream broke into it.")
    born_s: Numbers = said("When each is born, s.")
    ends_s: Numbers = said("When each ends, s.")
    diameter_m: Numbers = said("Diameter of each, m.")
    caught: Numbers = said("1 where it is caught in the cup, else 0.")
    first: list[Count] | Packed = said("Number on the scene's grid of the first sample of each.")
    count: list[Count] | Packed = said("How many samples each has.")
    rotating_m: Vectors = said("Positions of all in the turning frame, m, one drop after another.")


class Thread(Closed):
    """The unbroken stream of a pour, by parcels that left one after another (K), each at even ages (A) up to where it breaks."""

    leaves_s: Numbers = said("When each parcel leaves the lip, s.")
    whole_s: Numbers = said("How long the stream stays whole behind each, s.")
    flows: Numbers = said("1 where a stream left then, 0 where the lip dripped.")
    rotating_m: list[list[Vector]] | Packed = said("Positions in the turning frame (K, A, 3), m.")
    diameter_m: list[list[float]] | Packed = said("Diameter of the stream (K, A), m.")


class LandsOff(Closed):
    """How far from the lip a pour lands by the nearest way, as in `way`: spinward, across; m."""

    first: Pair = said("The first of it.")
    last: Pair = said("The last of it.")
    middle: Pair = said("Its middle, by volume.")


class Table(Closed):
    """A square table under the middle of a cup."""

    height_m: float = said("Height of its top over the ground, m.")
    half_m: float = said("Half its side, m.")


class ComesDown(Closed):
    """Where the first of a pour comes down at its cup's rim or on the table that it stands on, taken as a landing there."""

    on: Literal["target", "table"] = said("Whether in the cup or on its table.")
    time_s: float = said("When, s.")
    height_m: float = said("How high over the ground, m.")
    way: Way = said("How far from the lip.")
    drift_parts_m: DriftParts | None = said("The drift by cause; null where it cannot be taken apart.")
    drift_parts_none: NoDriftParts | None = said("Why it cannot.")


class _Pour(Closed):
    caught: float | None = said(
        "Share of all that is poured that stays in the cup, 0 to 1; null without a cup, as all of these."
    )
    caught_ml: float | None = said("What stays in the cup, ml.")
    spilled_ml: float | None = said("What does not, ml.")
    overflows_ml: float | None = said("Of what is spilled, what had reached the cup, ml.")
    first_caught_s: float | None = said("When the first of it is caught, s; null where nothing is.")
    move_m: Pair | None = said(
        "From the cup to where the middle of the pour comes down at its rim, as places count it: along, across; m."
    )
    off_m: Pair | None = said("The same as a distance there: spinward, across; m.")
    level_m: float | None = said("How high what is caught stands at the cup's axis, m.")
    level_tilt_deg: float | None = said("Tilt of its surface, degrees.")
    comes_down: ComesDown | None = said(
        "Where the first of it comes down, at the cup's rim or on its table; null elsewhere."
    )
    table: Table | None = said("The table that the cup stands on; null where it stands on none.")
    lands_m: LandsOff | None = said(
        "Where it lands; null where every parcel follows the path of the first, or none lands."
    )
    drops: Drops | None = said("Drops one by one; null where every parcel follows the path of the first.")
    thread: Thread | None = said("The stream; null where every parcel follows the path of the first.")


class PourFindings(_Pour):
    """Of a pour without a cup."""


class CupFindings(_Pour):
    """Of a pour into a cup."""

    poured_ml: float | None = said("All that is poured, ml.")


class HangFindings(Closed):
    """Of what hangs on a line."""

    pivot_rotating_m: list[float] | Packed = said("Where the line is tied, in the turning frame, m (3).")
    plumb_rotating: Vectors = said("Unit vectors along which a plumb line hangs, turning frame.")
    plumb_deg: Numbers = said("Lean of the line at rest from the upright, degrees.")
    floats: bool = said("Whether what hangs is lighter than air and at rest stands above its pivot.")
    swing_deg: Numbers = said("Angle of the line from the plumb line, degrees.")
    tension_n: Numbers = said("Pull of the line, N.")
    slack: bool = said("Whether the line goes slack.")
    period_s: float | None = said("Period of its swing, s; null where it does not swing to and fro.")
    over_the_top: Count = said("How often it goes over the top.")
    always_over: bool = said("Whether it does so each time; the period is then that of once round.")
    plane_turns_deg: float | None = said("How far the plane of its swing turns as seen from aboard, degrees.")
    plane_turns_deg_per_h: float | None = said("The same per hour, degrees.")


class JumpFindings(Closed):
    """Of a jump."""

    left_m: Pair = said("Where the feet leave the ground: along, axial; m.")
    lands_m: Pair | None = said("Where they land: along, axial; m. Null where they do not.")
    apart_m: float | None = said("Distance between the two on the ground, m.")
    push_g: None = said("Null: the push itself is not followed.")


class LiftFindings(Closed):
    """Of a ride in a lift."""

    takes_s: float = said("How long the whole ride takes, s.")
    sideways_m_s2: Numbers = said("Sideways push on the rider, spinward above 0, m/s².")
    most_sideways_m_s2: float = said("The greatest of it on the whole ride, either way, m/s².")
    tilt_deg: Numbers = said("How far down leans, degrees.")
    most_tilt_deg: float = said("The most of it on the whole ride, degrees.")
    apparent_g: Numbers = said("Weight at the feet, g; 0 off the floor.")
    leaves_s: float | None = said(
        "When the rider leaves the cabin's floor, s, here or later on the ride; null where that does not happen."
    )


class WalkFindings(Closed):
    """Of somebody on foot."""

    standing_g: float = said("Weight at the feet while standing there, g.")
    feet_g: Numbers = said("Weight at the feet on the way, g.")
    head_g: Numbers = said("Weight at the head on the way, g.")
    sideways_m_s2: Numbers = said("Sideways push, spinward above 0, m/s².")
    lean_deg: Numbers = said("How far down leans, degrees.")
    leaves_s: float | None = said(
        "When the walker leaves the floor, s, from when on the weights are 0; null where that does not happen."
    )
    floats_at_m_s: float | None = said(
        "Speed antispinward at which the feet leave the ground, m/s; null where there is none."
    )


class Sweep(Closed):
    """An instant at which the place that was let go of sweeps by."""

    time_s: float = said("When, s.")
    distance_m: float = said("How far off, m.")


class LetGoFindings(Closed):
    """Of somebody who lets go of the rim."""

    distance_m: Numbers = said("Distance from the place let go of, which goes on turning, m.")
    line_m: Numbers = said("Length of a taut line to it, laid round the hull where that is in the way, m.")
    sweeps_by: list[Sweep] = said("When that place comes by again.")
    leaves_m_s: float = said("Speed at which they leave, in the room that does not turn, m/s.")


class ApproachFindings(Closed):
    """Of a craft that comes in to dock."""

    distance_m: Numbers = said("Distance from the dock, m.")
    starts_off_m: float = said(
        "How far off it begins from where the dock will be at contact, in the room that does not turn, m."
    )
    starts_axial_m: float = said("Of that, along the axis, m.")
    to_cancel_m_s: Vector = said("Velocity to lose at contact: spinward, up, along the axis; m/s.")
    to_cancel_size_m_s: float = said("Its size, m/s.")
    to_cancel_n_s: float = said("The impulse that takes, N s.")
    turns_seen: float = said("How often the craft seems to go round, seen from aboard, from its start to contact.")


class TumbleFindings(Closed):
    """Of a craft that tumbles. Its axes are the turning frame's."""

    quaternion_wxyz: list[rows_of(float, 4)] | Packed = said(
        "Attitudes, w first: from the craft's axes to those that do not turn, the same at time 0."
    )
    rates_rad_s: Vectors = said("Rates about the craft's axes, rad/s.")
    nutation_deg: Numbers = said("Angle between its angular momentum and its axis of greatest inertia, degrees.")
    felt_g: Vectors = said("Apparent gravity in the middle of the floor, along the craft's axes, g.")
    centre_of_mass_m: Vector = said("What it turns about, m.")
    flips: bool = said("Whether it turns right over by turns.")
    flip_period_s: float | None = said(
        "After how long its rates are what they were without losses, two flips, s; null where it has no such period."
    )
    nutation_first_deg: float = said("The nutation at the first sample, degrees.")
    nutation_last_deg: float = said("The nutation at the last, degrees.")
    floor_least_g: float = said("The least gravity in the middle of the floor, g.")
    floor_greatest_g: float = said("The greatest, g.")
    final_rpm: float = said("How fast it turns once it is flat, rpm.")
    time_to_flat_s: float | None = said(
        "When it is within a degree of that, s; null without losses, or where all axes are alike."
    )
    mass_spread: bool = said("Whether the scene carries no craft, so that mass is spread over the habitat's surfaces.")


Findings = (
    NoFindings
    | PourFindings
    | CupFindings
    | HangFindings
    | JumpFindings
    | LiftFindings
    | WalkFindings
    | LetGoFindings
    | ApproachFindings
    | TumbleFindings
)
