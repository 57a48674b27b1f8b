"""The craft as a document: its parts, and the questions asked of it as blocks, each with unit, range, label and default, once.

z is the spin axis. Lengths are metres in the craft's axes, which turn with each group; a part's place is the middle of its solid. A
radius left out is the craft's own (`radius_m`), which in a scene is the habitat's, as its spin is.
"""

from typing import Annotated, Literal, Union

from pydantic import Discriminator, Tag

from ...fields import (
    Strict,
    Vector,
    Version,
    Whole,
    at_most_listed,
    choice,
    listed,
    number,
    of_kind,
    or_null,
    several,
    text,
    vector,
)
from ...language import tr_later, tr_later_as
from ...shapes.part import GREATEST_SPIN_RPM
from ...vessel.materials import MATERIALS
from .lengths import GREATEST_M, LEAST_M

VERSION = 1
GROUPS = ("turning", "still", "counter")
MOST_PARTS = MOST_LOADS = 200
LEAST_KG, GREATEST_KG = 0.001, 1e12
GREATEST_RPM = 100_000  # of what turns against the habitat: wheels do


def _length(label, default=...):
    return number(label, "m", LEAST_M, GREATEST_M, default)


def _mass(label):
    return number(label, "kg", LEAST_KG, GREATEST_KG)


def _place():
    return vector(tr_later_as("where a part is", "Place"), "m", (0.0, 0.0, 0.0))


class Part(Strict):
    """What every part has."""

    name: str = text(tr_later("Name of the part"), 60, min_length=1, may_be=tr_later("1 to 60 characters, unique"))
    group: Literal[GROUPS] = choice(tr_later("Group"), default="turning")
    mass_kg: float = _mass(tr_later("Mass"))
    place_m: Vector = _place()


class _Aligned(Part):
    """A part with a direction: that of its axis of symmetry; a box is turned with it by the shortest way from z."""

    axis: Vector = vector(tr_later("Axis"), "", (0.0, 0.0, 1.0), tr_later("{numbers}, not all 0"))


class _Round(_Aligned):
    """A part with a radius, the craft's own where it is left out."""

    radius_m: float | None = _length(tr_later("Radius"), None)


class Point(Part):
    """All its mass in one place."""

    solid: Literal["point"] = choice(tr_later("Solid"))


class Rod(_Aligned):
    """A thin straight rod along its axis."""

    solid: Literal["rod"] = choice(tr_later("Solid"))
    length_m: float = _length(tr_later("Length"))


class Ring(_Round):
    """A thin hoop around its axis."""

    solid: Literal["ring"] = choice(tr_later("Solid"))


class Disc(_Round):
    """A thin flat disc across its axis."""

    solid: Literal["disc"] = choice(tr_later("Solid"))


class Cylinder(_Round):
    """A cylinder, full."""

    solid: Literal["cylinder"] = choice(tr_later("Solid"))
    length_m: float = _length(tr_later("Length"))


class CylinderShell(_Round):
    """The wall of a cylinder, without ends."""

    solid: Literal["cylinder_shell"] = choice(tr_later("Solid"))
    length_m: float = _length(tr_later("Length"))


class Box(_Aligned):
    """A box, full; its third size is along its axis."""

    solid: Literal["box"] = choice(tr_later("Solid"))
    size_m: Vector = vector(tr_later("Size"), "m", more=tr_later("{numbers}, each from 0.001 to 100,000 m"))


class Sphere(Part):
    """A ball, full."""

    solid: Literal["sphere"] = choice(tr_later("Solid"))
    radius_m: float | None = _length(tr_later("Radius"), None)


class SphereShell(Part):
    """The wall of a ball."""

    solid: Literal["sphere_shell"] = choice(tr_later("Solid"))
    radius_m: float | None = _length(tr_later("Radius"), None)


class Torus(_Round):
    """A ring of round section, full; its radius is to the middle of the tube. Left out, the tube reaches out to the craft's own."""

    solid: Literal["torus"] = choice(tr_later("Solid"))
    tube_radius_m: float = _length(tr_later("Radius of the tube"))


class TorusShell(_Round):
    """The wall of the same."""

    solid: Literal["torus_shell"] = choice(tr_later("Solid"))
    tube_radius_m: float = _length(tr_later("Radius of the tube"))


class Cone(_Round):
    """A cone, full; its axis points to its tip, and its place is halfway up."""

    solid: Literal["cone"] = choice(tr_later("Solid"))
    length_m: float = _length(tr_later("Length"))


_MODELS = (Point, Rod, Ring, Disc, Cylinder, CylinderShell, Box, Sphere, SphereShell, Torus, TorusShell, Cone)
SOLIDS = {model.model_fields["solid"].annotation.__args__[0]: model for model in _MODELS}  # by their names


def _tag(field):
    """What tells the tag of a union's model, which no field's name shows, by a field of it."""
    return lambda value: f"@{value.get(field) if isinstance(value, dict) else getattr(value, field, None)}"


AnyPart = Annotated[
    Union[tuple(Annotated[model, Tag(f"@{name}")] for name, model in SOLIDS.items())],  # noqa: UP007 - made from the table
    Discriminator(_tag("solid")),
]


class Joint(Strict):
    """The bearing between what turns and what does not; passages: pipes, cables and ways that lead through it."""

    radius_m: float = _length(tr_later("Radius of the bearing"))
    load_n: float = number(tr_later("Load on it"), "N", 0, 1e12)
    friction_coefficient: float = number(tr_later("Friction coefficient"), "", 0, 2)
    passages: Whole = number(tr_later("Passages through it"), "", 0, 10_000, 0)


class Wheel(Strict):
    """A wheel that could turn the other way: all its mass in its rim."""

    mass_kg: float = _mass(tr_later("Mass"))
    radius_m: float = _length(tr_later("Radius"))


class Motor(Strict):
    """Spun up by a motor in the joint, of steady torque; wheel: one to hold the rest of the craft still, whose rate is asked for."""

    by: Literal["motor"] = choice(tr_later("Spun up by"), ("motor", "thrusters"))
    torque_n_m: float = number(tr_later("Torque"), "N m", 1e-6, 1e15)
    wheel: Wheel | None = None


class Thrusters(Strict):
    """Spun up by thrusters that push along the rim, thrust_n in all, arm_m from the axis."""

    by: Literal["thrusters"] = choice(tr_later("Spun up by"), ("motor", "thrusters"))
    thrust_n: float = number(tr_later("Thrust in all"), "N", 1e-6, 1e12)
    arm_m: float = _length(tr_later("Distance from the axis"))
    exhaust_m_s: float = number(tr_later("Exhaust speed"), "m/s", 10, 1e7)
    wheel: Wheel | None = None


BY = {"motor": Motor, "thrusters": Thrusters}
SpinUp = Annotated[Annotated[Motor, Tag("@motor")] | Annotated[Thrusters, Tag("@thrusters")], Discriminator(_tag("by"))]


class Slew(Strict):
    """The spin axis turned: at a rate, in a time, or with the torque that there is; one of them."""

    angle_deg: float = number(tr_later("Turned by"), "°", 1e-6, 360)
    rate_deg_s: float | None = number(tr_later("Turn rate"), "°/s", 1e-9, 360, None)
    time_s: float | None = number(tr_later("Turn time"), "s", 1e-3, 1e9, None)
    torque_n_m: float | None = number(tr_later("Torque"), "N m", 1e-6, 1e18, None)

    @property
    def steady_deg_s(self):
        """The turn rate that is asked for; None where the torque tells it."""
        return self.rate_deg_s if self.time_s is None else self.angle_deg / self.time_s


class Load(Strict):
    """Something aboard what turns, beside its parts."""

    name: str = text(tr_later("Name of the load"), 60, min_length=1)
    mass_kg: float = _mass(tr_later("Mass"))
    place_m: Vector = _place()


class Ballast(Strict):
    """Where weights may be put that balance what turns: at a radius, in two planes across the axis."""

    radius_m: float | None = _length(tr_later("Radius of the weights"), None)
    planes_m: several(2, -1e6, 1e6) = of_kind(
        tr_later("Planes of the weights"),
        "list",
        unit="m",
        may_be=tr_later("two places along the axis, -1,000,000 to 1,000,000 m"),
    )


class Move(Strict):
    """A mass that moves along a radius of what turns; holds: what stays the same, momentum or spin."""

    mass_kg: float = _mass(tr_later("Mass moved"))
    from_radius_m: float = number(tr_later("From radius"), "m", 0, GREATEST_M)
    to_radius_m: float = number(tr_later("To radius"), "m", 0, GREATEST_M)
    speed_m_s: float = number(tr_later("Speed"), "m/s", 0.0001, 1_000)
    holds: Literal["momentum", "spin"] = choice(tr_later("Holds"), default="momentum")


class Deployed(Strict):
    """A part as it is afterwards: those sizes or the place that change."""

    name: str = text(tr_later("Name of the part"), 60, min_length=1, may_be=tr_later("the name of a part"))
    radius_m: float | None = _length(tr_later("Radius"), None)
    tube_radius_m: float | None = _length(tr_later("Radius of the tube"), None)
    length_m: float | None = _length(tr_later("Length"), None)
    size_m: Vector | None = vector(
        tr_later("Size"), "m", None, tr_later("{numbers}, each from 0.001 to 100,000 m, or null")
    )
    place_m: Vector | None = vector(tr_later_as("where a part is", "Place"), "m", None, tr_later("{numbers}, or null"))
    axis: Vector | None = vector(tr_later("Axis"), "", None, tr_later("{numbers}, not all 0, or null"))


class Deploy(Strict):
    """The same craft with some parts of other sizes, or in other places."""

    parts: list[Deployed] = listed(tr_later("Parts that change"), MOST_PARTS, least=1)


class Dissipation(Strict):
    """How energy goes while it tumbles, and how fast."""

    model: Literal["double_bracket"] = choice(tr_later("Model"), default="double_bracket")
    time_s: float = number(tr_later("Wobble changes by e in"), "s", 1e-3, 1e9)


class Spot(Strict):
    """A place in the craft that has a name."""

    name: str = text(tr_later("Name of the place"), 60, min_length=1)
    place_m: Vector = _place()


class Tumble(Strict):
    """The whole craft let go as one body: its rates about the craft's axes at the start."""

    rates_rpm: Vector = vector(tr_later("Rates"), "rpm")
    dissipation: Dissipation | None = None
    duration_s: float = number(tr_later("Duration"), "s", 0.1, 1e7, 3_600.0)
    places: list[Spot] = listed(tr_later("Places"), 20, [])


class Tether(Strict):
    """Two masses that turn about each other on a line."""

    length_m: float = _length(tr_later("Length"))
    masses_kg: several(2, LEAST_KG, GREATEST_KG) = of_kind(
        tr_later("Masses at its ends"), "list", unit="kg", may_be=tr_later("two masses, each 0.001 to 1e12 kg")
    )
    material: Literal[tuple(MATERIALS)] | None = choice(tr_later("Material"), (*MATERIALS, "null"), None)
    safety: float = number(tr_later("Safety factor"), "", 1, 1_000, 4.0)
    to_length_m: float | None = _length(tr_later("Reeled to"), None)


class Dock(Strict):
    """A craft that comes to the rim or the hub: a full cylinder about the axis it comes along, with thrusters on its side."""

    at: Literal["rim", "hub"] = choice(tr_later("Docks at"), default="hub")
    mass_kg: float = _mass(tr_later("Mass of what docks"))
    exhaust_m_s: float = number(tr_later("Exhaust speed"), "m/s", 10, 1e7)
    radius_m: float = _length(tr_later("Radius of what docks"), 2.0)
    thrust_n: float = number(tr_later("Thrust that turns it, in all"), "N", 1e-6, 1e12, 200.0)
    leaves_toward_deg: float = number(tr_later("Leaves toward"), "°", -360, 360, 0.0)


class Hull(Strict):
    """The turning ring as a structure; the tube that holds its air is the torus of its parts at the rim, where it is left out."""

    material: Literal[tuple(MATERIALS)] = choice(tr_later("Material"), MATERIALS)
    safety: float = number(tr_later("Safety factor"), "", 1, 1_000, 3.0)
    load_kg_m2: float = number(tr_later("Load on the floor"), "kg/m²", 0, 1e9, 0.0)
    thickness_m: float = number(tr_later("Thickness"), "m", 1e-6, GREATEST_M)
    pressure_kpa: float = number(tr_later("Pressure inside"), "kPa", 0, 100_000, 0.0)
    tube_radius_m: float | None = _length(tr_later("Radius of the tube"), None)
    spokes: Whole = number(tr_later("Spokes"), "", 0, 1_000, 0)


class Rock(Strict):
    """An asteroid that is spun up."""

    density_kg_m3: float = number(tr_later("Density"), "kg/m³", 1, 100_000)
    radius_m: float = number(tr_later("Radius"), "m", 0.1, 10_000_000)
    gravity_g: float = number(tr_later("Gravity at its equator"), "g", 1e-6, 100)


def _block(label):
    """A question that is asked where its block is there."""
    return of_kind(label, "part", None)


class Craft(Strict):
    """A whole craft. In a scene its radius and spin are the habitat's, and left out here; so may the version be."""

    rimfall_craft: Version = of_kind(tr_later("Document version"), "version", VERSION)
    title: str = text(tr_later("Title"), 200, "")
    radius_m: float | None = _length(tr_later("Radius of the floor"), None)
    spin_rpm: float | None = number(tr_later("Spin"), "rpm", 0, GREATEST_SPIN_RPM, None)
    counter_rpm: float | None = number(tr_later("Spin of the counter group"), "rpm", -GREATEST_RPM, GREATEST_RPM, None)
    parts: list[AnyPart] = listed(tr_later("Parts"), MOST_PARTS, least=1)
    joint: Joint | None = _block(tr_later("Joint"))
    spin_up: SpinUp | None = _block(tr_later("Spin-up"))
    slew: Slew | None = _block(tr_later("Turning the axis"))
    loads: list[Load] | None = of_kind(
        tr_later("Loads"), "list", None, may_be=or_null(at_most_listed(MOST_LOADS)), max_length=MOST_LOADS
    )
    ballast: Ballast | None = _block(tr_later("Ballast"))
    move: Move | None = _block(tr_later_as("a question about a craft", "Move"))
    deploy: Deploy | None = _block(tr_later("Unfolding"))
    tumble: Tumble | None = _block(tr_later("Tumbling"))
    tether: Tether | None = _block(tr_later("Tether"))
    dock: Dock | None = _block(tr_later("Docking"))
    hull: Hull | None = _block(tr_later("Hull"))
    rock: Rock | None = _block(tr_later("Rock"))
