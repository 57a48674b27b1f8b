"""The answer to whether a craft would cope (`/api/craft`), one model a finding. Craft axes: z is the spin axis; kg, m, s, N, J, W."""

from typing import Literal

from ...scene.craft.document import BY, Craft
from ...scene.craft.examples import SAY
from .craft_ends import Dock, Hull, Rock, Tether
from .craft_finding import Finding
from .drawings import CraftViews
from .parts import Closed, Program, Vector, Version, left_out, rows_of, said


class GroupMass(Closed):
    """A group of parts as one rigid body."""

    mass_kg: float = said("Its mass.")
    centre_of_mass_m: Vector = said("Where its centre of mass is.")
    inertia_kg_m2: rows_of(Vector, 3) = said("Its inertia about that centre, products with the minus sign.")
    principal_kg_m2: Vector = said("Its principal moments of inertia, the least first.")
    principal_axes: rows_of(Vector, 3) = said("Their axes, one a row, right-handed.")


class GroupMomenta(Closed):
    """Angular momentum about the spin axis by group, kg m²/s."""

    turning: float = said("Of what turns.")
    still: float | None = said("Of what is still: 0; null where nothing is.")
    counter: float | None = said("Of what turns the other way; null where nothing does.")
    whole: float = said("Of all together.")


class SpinRatios(Closed):
    """Inertia about the spin axis over the greater one across it; null of a body without any."""

    turning: float | None = said("Of what turns.")
    whole: float | None = said("Of the whole craft.")


class CraftMass(Finding):
    """Masses, centres and inertia."""

    turning: GroupMass = said("What turns.")
    still: GroupMass | None = said("What is still; null where nothing is.")
    counter: GroupMass | None = said("What turns the other way; null where nothing does.")
    whole: GroupMass = said("All together.")
    angular_momentum_kg_m2_s: GroupMomenta = said("What momentum they hold.")
    spin_to_transverse: SpinRatios = said("How the inertia about the spin axis compares.")
    overlaps: list[rows_of(str, 2)] = said("Parts that fill the same space, in pairs of names; found by sampling.")


class CounterWheel(Closed):
    """A wheel, all its mass in its rim, that holds the momentum of what turns."""

    mass_kg: float = said("Its mass.")
    radius_m: float = said("Its radius.")
    rate_rpm: float = said("How fast it must turn.")
    rim_speed_m_s: float = said("How fast its rim moves then.")


class Cancel(Closed):
    """What leaves no angular momentum."""

    rate_rpm: float | None = said(
        "The rate of the counter group that does; null where there is none, or it is on the axis."
    )
    inertia_kg_m2: float | None = said(
        "The inertia it needs at counter_rpm; null where that does not turn against the spin."
    )
    wheel: CounterWheel | None = said("A wheel that does, where nothing turns the other way; else null.")
    left_kg_m2_s: float = said("What the craft holds as it is.")


class _Spun(Finding):
    torque_n_m: float = said("The torque.")
    time_s: float = said("How long it takes.")
    turns: float = said("How many turns it makes meanwhile.")
    energy_j: float = said("The energy of what turns.")
    angular_momentum_kg_m2_s: float = said("Its angular momentum.")
    propellant_kg: float | None = said("What the thrusters burn; null of a motor.")
    propellant_rough_kg: float | None = said("The same as if the propellant had no mass of its own; null of a motor.")


class SpinUp(_Spun):
    """Spinning up from rest."""

    by: Literal[tuple(BY)] = said("What spins it up.")
    still_rate_rpm: float | None = said(
        "What a motor does to the still part with nothing to hold it; null where there is none."
    )
    power_w: float | None = said("The motor's greatest power, against a still part that is held; null of thrusters.")
    cancel: Cancel = said("What leaves nothing to hold.")


class LeftTurning(Closed):
    """Two parts that turn as one."""

    rate_rpm: float = said("How fast.")
    heat_j: float = said("The energy that has become heat.")


class SpinDown(_Spun):
    """Stopping it again."""

    left: LeftTurning | None = said("What is left where the joint alone stops it; null where all turns as one.")


class JointFinding(Finding):
    """The bearing. Its figures are null where there is nothing for it to run against."""

    relative_rpm: float | None = said("How fast one side turns against the other.")
    surface_speed_m_s: float | None = said("The same at the bearing.")
    friction_torque_n_m: float | None = said("What friction takes.")
    heat_w: float | None = said("What it warms.")
    turns_a_year: float | None = said("Turns in 365.25 days.")
    drag_along_s: float | None = said(
        "How long until the other side is dragged along, with nothing to hold it; null without friction."
    )
    seized: LeftTurning | None = said("What is left if it seizes; null where neither side has inertia.")


class AxisTurn(Closed):
    """A steady turn of the spin axis."""

    torque_n_m: float = said("The torque across the turn.")
    rate_deg_s: float | None = said("The rate; null where there is no momentum and torque does not set one.")
    time_s: float | None = said("How long the angle takes; null likewise.")


class RestToRest(Closed):
    """An ordinary turn, speeding up over its first half and slowing down over the second."""

    torque_n_m: float = said("The torque along the turn.")
    time_s: float = said("How long it takes.")
    greatest_rate_deg_s: float = said("The rate in the middle.")


class Precession(Closed):
    """What a steady torque across the axis does if it goes on."""

    torque_n_m: float = said("The torque.")
    rate_deg_s: float = said("How fast it leads the axis round.")
    once_round_s: float = said("How long once round takes.")


class Slew(Finding):
    """Turning the spin axis."""

    angle_deg: float = said("By how much.")
    wheel: AxisTurn = said("Of what turns, alone.")
    whole: AxisTurn = said("Of the whole, with what turns the other way.")
    turn_axis: Vector = said("About which axis of the craft the spin axis is turned, as an example.")
    torque_axis: Vector = said("Along which axis the torque then acts; the ship is pushed the other way.")
    rest_to_rest: RestToRest | None = said(
        "The torque besides, to start and stop the turn; null of a craft that is a point."
    )
    precession: Precession | None = said("Precession of what turns; null without momentum.")


class RimGravity(Closed):
    """Gravity round the rim, m/s²."""

    held_m_s2: float = said("Everywhere, while the joint holds the axis.")
    least_m_s2: float = said("The least, left free.")
    least_azimuth_deg: float = said("Where: from x toward y.")
    greatest_m_s2: float = said("The greatest, left free.")
    greatest_azimuth_deg: float = said("Where.")
    azimuth_deg: list[float] = said("Azimuths round the rim.")
    round_m_s2: list[float] = said("Gravity there, left free.")


class Weight(Closed):
    """A weight that balances."""

    plane_m: float = said("Its place along the axis.")
    mass_kg: float = said("Its mass.")
    azimuth_deg: float = said("Its azimuth, from x toward y.")


class Ballast(Closed):
    """Weights that leave what turns in balance."""

    radius_m: float = said("How far from the axis they are.")
    weights: rows_of(Weight, 2) = said("One in each plane.")


class Balance(Finding):
    """Whether what turns, with its loads, stays on its axis."""

    mass_kg: float = said("Its mass with the loads.")
    offset_m: float = said("How far its centre of mass is from the axis.")
    offset_azimuth_deg: float = said("On which side, from x toward y.")
    bearing_force_n: float = said("The force on a joint that holds the axis, which goes round with it.")
    bearing_force_free_n: float = said("The same where the rest of the craft is free to give way.")
    bearing_moment_n_m: float = said("What being skew twists the joint with.")
    axis_moves_m: float = said("How far from the axis it turns about, left free.")
    gravity: RimGravity = said("Gravity round the rim.")
    tilt_deg: float = said("How far its principal axis leans from the axis.")
    tilt_azimuth_deg: float = said("To which side.")
    lean_deg: float = said("How far the floor leans then, at most, left free.")
    ballast: Ballast | None = said("Weights against both; null where no planes are told, or they cannot do it.")


class SpinState(Closed):
    """Spin and gravity at the rim."""

    spin_rpm: float = said("The spin.")
    gravity_m_s2: float = said("Gravity at the rim.")


class Move(Finding):
    """A mass that moves along a radius."""

    holds: Literal["momentum", "spin"] = said("What stays the same.")
    before: SpinState = said("Before.")
    after: SpinState = said("Afterwards.")
    duration_s: float = said("How long it takes.")
    sideways_n: float = said("The greatest sideways push, 2 m ω v.")
    work_j: float = said("The work of whoever moves it; below 0 it must be braked.")
    motor_j: float | None = said("The work of the motor that keeps the spin; null where momentum is kept.")
    torque_n_m: float | None = said("Its greatest torque; null likewise.")
    power_w: float | None = said("Its greatest power; null likewise.")
    time_s: list[float] = said("Times on the way.")
    radius_m: list[float] = said("Where the mass is then.")
    spin_rpm: list[float] = said("The spin then.")
    push_n: list[float] = said("The push that keeps it on its radius, spinward above 0.")


class DeployState(Closed):
    """What turns in one shape; null where no spin holds its momentum."""

    inertia_kg_m2: float = said("Its inertia about the axis.")
    rim_radius_m: float = said("How far it reaches.")
    spin_rpm: float | None = said("Its spin.")
    gravity_m_s2: float | None = said("Gravity there.")
    energy_j: float | None = said("Its energy.")


class Deploy(Finding):
    """The same craft in another shape, at equal angular momentum."""

    before: DeployState = said("Before.")
    after: DeployState = said("Afterwards.")


class FeltPlace(Closed):
    """What is felt at a named place while the craft tumbles."""

    name: str = said("The place's name.")
    place_m: Vector = said("Where it is.")
    felt_g: list[Vector] = said(
        "Apparent gravity at the times, in the craft's axes: the way that things at rest there would fall."
    )
    gravity_g: list[float] = said("Its size at the times.")
    least_g: float = said("The least of it.")
    greatest_g: float = said("The greatest of it.")


class SpinLasts(Closed):
    """Whether the craft's spin about z lasts, as one rigid body."""

    axis: Literal["greatest", "middle", "least", "across", "any"] = said(
        "The principal axis nearest to z: that of greatest, middle or least inertia, one across of two that are alike and the lesser, or any."
    )
    aligned: bool = said("Whether z is that axis, to a degree.")
    off_axis_deg: float = said("How far z is from it.")
    without_dissipation: bool = said("Whether it lasts while no energy is lost.")
    with_dissipation: bool = said("Whether it lasts whatever is lost.")
    spin_to_transverse: float | None = said("Inertia about z over the greater one across it.")
    rule: float = said("What of that designers ask for.")
    margin: float | None = said("How far the ratio is above that, as a share of it; below 0 it is less.")


class Tumble(Finding):
    """The whole craft let go as one rigid body."""

    time_s: list[float] = said("Times, evenly apart.")
    quaternion_wxyz: list[rows_of(float, 4)] = said(
        "Attitudes then, w first: from the craft's axes to axes that do not turn, the same at time 0."
    )
    rates_rad_s: list[Vector] = said("Rates then, about the craft's axes.")
    energy_j: list[float] = said("Energy of turning then.")
    nutation_deg: list[float] = said(
        "Angle then between angular momentum and the axis of greatest inertia, either way along it."
    )
    places: list[FeltPlace] = said("What is felt at the places that the document names.")
    centre_of_mass_m: Vector = said("What it turns about.")
    angular_momentum_kg_m2_s: Vector = said("Its angular momentum, which stays as it is, in the axes that do not turn.")
    flip_period_s: float | None = said(
        "After how long the rates are what they were without losses, two flips; null where they never change, or no axis is the middle one."
    )
    flips: bool = said("Whether it turns right over.")
    stable: SpinLasts = said("Whether spin about z lasts.")
    final_rpm: float = said("How fast it turns in the end where energy is lost.")
    final_axis: Vector = said("About which axis of the craft.")
    final_energy_j: float = said("Its energy then.")
    time_to_flat_s: float | None = said(
        "When it is within a degree of that; null without losses, or where all axes are alike."
    )
    wobble_begun_deg: float | None = said(
        "The first wobble that this takes for granted; null where the rates have one of their own."
    )


class Coped(Closed):
    """Whether a craft would cope: a finding for each block of its document that asks for one."""

    rimfall_craft: Version
    program: Program
    craft: Craft = said("The craft as it was read, with every default filled in.")
    rim_radius_m: float = said("How far from the axis the floor is.")
    mass: CraftMass = said("What it is made of.")
    spin_up: SpinUp | None = left_out("Spinning up; left out where the document has no spin_up.")
    spin_down: SpinDown | None = left_out("Stopping it; left out likewise.")
    joint: JointFinding | None = left_out("The joint; left out where the document has none.")
    slew: Slew | None = left_out("Turning the axis; left out where the document has no slew.")
    tumble: Tumble | None = left_out("Tumbling; left out where the document has no tumble.")
    balance: Balance | None = left_out("Balance; left out where the document has neither loads nor ballast.")
    move: Move | None = left_out("A mass that moves; left out where the document has no move.")
    deploy: Deploy | None = left_out("Unfolding; left out where the document has no deploy.")
    tether: Tether | None = left_out("The tether; left out where the document has none.")
    dock: Dock | None = left_out("A visitor; left out where the document has no dock.")
    hull: Hull | None = left_out("The ring's strength; left out where the document has no hull.")
    rock: Rock | None = left_out("A spun rock; left out where the document has none.")
    short: str = said("What to know of it in a few words.")
    drawing: CraftViews = left_out("It from its side and its end; left out without a `width`.")
    caution: str = said("The caution that goes with it.")


class CraftExample(Closed):
    """A craft to start from."""

    id: Literal[tuple(SAY)] = said("Its name.")
    title: str = said("Its title.")
    say: str = said("What it is, in a sentence.")
    radius_m: float = said("The radius of the habitat that it goes with.")
    spin_rpm: float = said("The spin of that habitat.")
    craft: Craft = said("Its document, without radius and spin, as a scene carries it.")


class CraftExamples(Closed):
    """Craft to start from."""

    crafts: list[CraftExample] = said("All of them, in the order in which they are offered.")
