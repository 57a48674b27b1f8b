"""Pours: a liquid from a round lip, which thins, breaks into drops or drips, and may be caught in a cup."""

from typing import Literal

from ...fields import Strict, Whole, choice, linear, listed, log, number
from ...language import tr, tr_later, tr_later_as, written
from ...physics.liquids import LIQUIDS
from ..kind import Finding, Kind, Page, Stage, when
from ..motion import Motion, at_height, elevation_field, heading_field
from ..places import below_half_the_radius, between, clear_of_surfaces
from . import prose
from .batch import least_bytes
from .plan import plan
from .words import assumptions, in_short, poured

LIQUID_NAMES = tuple(x.name for x in LIQUIDS)


class TiltPoint(Strict):
    """Where the lip points, and how much flows, at a time after the pour began; straight between points, held after the last."""

    time_s: float = number(tr_later("Time of the tilt"), "s", 0, 600, above=True)
    elevation_deg: float = elevation_field(tr_later_as("how steeply", "Up"))
    flow_ml_s: float = number(tr_later("Flow"), "ml/s", 0, 1_000, shown=linear(0, 200))


class TargetPart(Strict):
    """A cup or a basin that stands there to be poured into: a round upright opening, whose rim is at height_m."""

    along_m: float = number(tr_later("Cup along the deck"), "m", -1e6, 1e6, 0.0, shown=linear(-5, 5))
    height_m: float = number(tr_later("Cup's rim"), "m", 0, 100_000, 0.1, shown=linear(0, 2))
    axial_m: float = number(tr_later("Cup along the axis"), "m", -1e6, 1e6, 0.0, shown=linear(-5, 5))
    diameter_m: float = number(tr_later("Cup's opening"), "m", 0.001, 10, 0.08, shown=log(0.02, 1))
    depth_m: float = number(tr_later("Cup's depth"), "m", 0.001, 10, 0.09, shown=log(0.01, 1))


class Pour(Motion):
    """A liquid poured from a round lip, at a steady flow or one that changes as the lip tilts."""

    kind: Literal["pour"]
    heading_deg: float = heading_field(tr_later("Toward"))
    elevation_deg: float = elevation_field(tr_later_as("how steeply", "Up"), 0.0)
    flow_ml_s: float = number(tr_later("Flow"), "ml/s", 0.1, 1_000, shown=log(1, 200))
    lip_diameter_mm: float = number(tr_later("Lip"), "mm", 1, 100, shown=log(1, 40))
    duration_s: float = number(tr_later("For"), "s", 0.05, 600, shown=log(0.1, 20))
    liquid: Literal[LIQUID_NAMES] = choice(tr_later("Liquid"))
    tilt: list[TiltPoint] = listed(tr_later("Tilt of the lip"), 100, [])
    target: TargetPart | None = None
    jitter: float = number(tr_later("Scatter of the drops"), "", 0, 1, 0.0, shown=linear(0, 1))
    seed: Whole = number(tr_later("Seed of the scatter"), "", 0, 1_000_000, 0)


def check(motion, setting, _shape):
    """The lip is in the room, the tilt's times rise, and its cup stands in the room."""
    width = motion.lip_diameter_mm
    yield from clear_of_surfaces(setting.habitat, motion.place, width * 1e-3, "lip_diameter_mm", width)
    before = 0.0
    for i, point in enumerate(motion.tilt):
        if not point.time_s > before:
            may_be = tr("later than the point before it, above {time} s", time=written(before, "g"))
            yield f"tilt.{i}.time_s", point.time_s, may_be
        before = point.time_s
    if motion.target is not None:
        yield from _cup(setting.habitat, motion.target, motion.place.floor)


def _cup(habitat, cup, floor):
    """The opening is inside the room, over the motion's own floor; the cup's foot is not below the ground."""
    if not cup.diameter_m < habitat.radius_m / 2:
        yield "target.diameter_m", cup.diameter_m, below_half_the_radius(habitat)
        return
    half = habitat.half_length_m(floor)
    if abs(cup.along_m) > half:
        yield "target.along_m", cup.along_m, tr("-{half} to {half} m, over its floor", half=written(half, "g"))
        return
    least, side, span = habitat.sides(floor, 0.0)
    if not least <= cup.axial_m <= side:
        yield "target.axial_m", cup.axial_m, tr("{least} to {most} m, in the room", **between(least, side))
        return
    low, high = span(abs(cup.axial_m))
    if not low < cup.height_m < high:
        yield "target.height_m", cup.height_m, tr("above {least}, below {most} m, in the room", **between(low, high))
    elif cup.depth_m > cup.height_m - low:
        most = written(cup.height_m - low, ".9g")
        may_be = tr("0.001 to {most} m, so that its foot is not below the ground", most=most)
        yield "target.depth_m", cup.depth_m, may_be


PAGE = Page(
    group=tr_later("Liquids"),
    add=tr_later_as("added", "a pour"),
    short=tr_later("Pour"),
    title=tr_later("Pour"),
    one=tr_later_as("counted", "pour"),
    many=tr_later_as("counted", "pours"),
    sentence=(
        tr_later("Poured at {flow_ml_s} from "),
        when("tilt", tr_later("a tilting lip"), tr_later("a lip")),
        tr_later(" of {lip_diameter_mm}, {elevation_deg}, {heading_deg}, for {duration_s}"),
        when("target", tr_later(", toward a cup {target.diameter_m} wide")),
        ".",
    ),
    rows={
        "flow_ml_s": None,
        "lip_diameter_mm": None,
        "elevation_deg": tr_later_as("how steeply", "Up"),
        "heading_deg": None,
        "place.height_m": tr_later("From height"),
        "duration_s": None,
    },
    findings=(
        Finding("caught_ml", tr_later("caught"), "ml", tr_later("caught")),
        Finding("spilled_ml", tr_later("spilled"), "ml", tr_later("caught")),
        Finding("level_m", tr_later("stands in the cup"), "m", tr_later("free surface")),
        Finding("level_tilt_deg", tr_later("its surface tilts"), "°", tr_later("free surface")),
    ),
    terms={
        tr_later("Breakup"): tr_later(
            "Where a stream falls apart into drops, because its surface pulls it together unevenly."
        ),
        tr_later("Caught"): tr_later(
            "The share of what was poured that goes down through the opening of the cup. The rest is spilled."
        ),
        tr_later("Cup"): tr_later(
            "What is poured into: a round opening at a stated height over the ground, upright where it stands."
        ),
        tr_later("Flow"): tr_later("How much leaves the lip in a second."),
        tr_later("Free surface"): tr_later(
            "The upper side of a liquid at rest. In a turning habitat it is part of a cylinder about the axis; "
            "thrust tilts it."
        ),
        tr_later("Lip"): tr_later("The round opening a liquid is poured from."),
        tr_later("Ohnesorge number"): tr_later(
            "How much a liquid’s viscosity counts against its motion and its surface tension."
        ),
        tr_later("Pour"): tr_later("A liquid that leaves a lip at a stated flow."),
        tr_later("Scatter"): tr_later(
            "How far drops differ by chance, in size and in velocity. A seed makes the same chance again."
        ),
        tr_later("Seed"): tr_later("The number a scatter is drawn from: the same number gives the same drops."),
        tr_later("Spilled"): tr_later("What misses the cup, or runs over its rim."),
        tr_later("Surface tension"): tr_later(
            "What makes a liquid’s surface pull itself together, so that streams become drops."
        ),
        tr_later("Tilt"): tr_later(
            "How the lip’s direction and its flow change while it pours, straight between the points given."
        ),
        tr_later("Viscosity"): tr_later("How thick a liquid is: how strongly it resists being sheared."),
        tr_later("Weber number"): tr_later(
            "How hard a stream’s motion pulls against its surface tension; below 4 it drips."
        ),
    },
    stage=Stage(beside="cup"),
)
KIND = Kind(
    name="pour",
    fields=Pour,
    new={
        "place": at_height(1.1),
        "heading_deg": 180.0,
        "elevation_deg": 0.0,
        "flow_ml_s": 30.0,
        "lip_diameter_mm": 8.0,
        "duration_s": 2.0,
        "liquid": "water",
    },
    check=check,
    plan=plan,
    heavy=True,
    outcome=poured,
    in_short=in_short,
    assumptions=assumptions,
    told=prose.told,
    page=PAGE,
    element="pour",
    least_bytes=least_bytes,
    eases=(
        tr_later("a shorter pour (duration_s)"),
        tr_later("a wider lip (lip_diameter_mm)"),
        tr_later("no scatter and no tilt (jitter, tilt)"),
    ),
)
