"""The answers about people: what they feel (`/api/feel`), and how large a habitat they need (`/api/size`)."""

from typing import Annotated, Literal

from pydantic import Field, create_model

from ...comfort.figures import FIGURES
from ...comfort.published import BOUNDS
from ...comfort.quantities import QUANTITIES
from ...comfort.without_weight import POINTS, STAYS, TOPICS
from ...scene.document import AirPart, HabitatPart
from ...scene.feel.person_part import OwnLimit, PersonPart
from ...scene.feel.tales import TALES
from ...scene.feel.why_spin import SPEAKS
from ...scene.size.request import Wish
from .parts import Closed, Count, Pair, Program, Version, rows_of, said

Quantity = Literal[tuple(QUANTITIES)]
Turn = Literal["pitch", "roll", "yaw"]
Known = Literal["read", "memory", ""]


def _named(name, doc, rows):
    """A model of figures by name, each a number or null; rows: name -> (label, unit)."""
    fields = {figure: (float | None, said(f"{label}{unit and f', {unit}'}.")) for figure, (label, unit) in rows.items()}
    return create_model(name, __base__=Closed, __doc__=doc, **fields)


Figures = _named(
    "Figures",
    "What a person feels, at the spin the scene begins with; null where a figure has no meaning.",
    {name: (row.label.format(ground="deck"), row.unit) for name, row in FIGURES.items()},
)
SizedFigures = _named(
    "SizedFigures",
    "The quantities of the smallest habitat; null where they hang on a spin that nothing sets.",
    {name: (one.label, one.unit) for name, one in QUANTITIES.items()},
)


class FigureLabel(Closed):
    """How a figure is labelled."""

    name: Literal[tuple(FIGURES)] = said("Its name in `figures`.")
    label: str = said("Its label.")
    unit: str = said("Its unit; empty for a ratio.")
    group: str = said("The group it is shown in.")


class Level(Closed):
    """A floor, a storey over it, or a named deck."""

    name: str = said("Its name, or how high it is.")
    radius_m: float = said("Distance from the axis, m.")
    height_m: float = said("Over the ground stood on, m.")
    gravity_g: float = said("What is felt there, g.")
    rim_speed_m_s: float = said("Speed at which it moves, m/s.")


class HeadTurn(Closed):
    """A quick turn of the head."""

    turn: Turn = said("The turn made.")
    facing: Literal["spinward", "axial", "outward"] = said("Where the face looks.")
    deg_s2: float = said("Angular acceleration across the turn, degrees/s².")
    felt_as: Turn | None = said("The turn it is felt as; null where none is felt.")


class Limit(Closed):
    """A published figure, or a limit of your own, beside the value here."""

    id: str = said("Its id.")
    study: str = said("Who says it.")
    year: int | None = said("When; null where the source gives no year.")
    quantity: Quantity = said("What it is on.")
    bound: Literal[BOUNDS] = said("What it says of it; only `at_least` and `at_most` are limits.")
    limit: float = said("The figure, in `unit`.")
    unit: str = said("Its unit; empty for a ratio.")
    value: float | None = said("The value here, in `unit`; null where there is none.")
    state: Literal["inside", "at the limit", "beyond", "below", "equal", "above", "none"] = said(
        "How the value stands to it."
    )
    inside: bool | None = said("Whether the limit is kept; null for what is no limit, or without a value.")
    margin: float | None = said("Room left, in `unit`, below 0 beyond the limit; null as `inside` is.")
    times: float | None = said("How many times past the limit; null where it is kept or that is no number.")
    letter: str = said("Its letter among those on the same quantity.")
    who: str = said("For whom.")
    source: str = said("The citation.")
    via: str = said("Through which other work it is known; empty where it is not.")
    note: str = said("What else is to be known of it.")
    known_by: Known = said("Whether the source was read or is given from memory; empty for your own.")
    mine: bool = said("Whether it is your own.")


class QuantityHere(Closed):
    """What the limits on a quantity come to."""

    name: Quantity = said("Its name.")
    label: str = said("Its label.")
    in_text: str = said("The same inside a sentence.")
    unit: str = said("Its unit; empty for a ratio.")
    value: float | None = said("Its value here, in `unit`; null where there is none.")
    says: str = said("What its limits come to in a sentence.")
    printed: str = said("The same for a printed page.")


class Says(Closed):
    """The answer in sentences."""

    short: str = said("In a few words.")
    summary: str = said("In a sentence.")
    lead: str = said("What standing, walking and running feel like.")
    map: str = said("Where the map may differ from the figures, and why; empty where it does not.")


class GravityLine(Closed):
    """A line of equal gravity."""

    g: float = said("The gravity at the feet, g.")
    label: str = said("In words.")
    line: rows_of(Pair, 2) | None = said("Its two ends: radius, m, and spin, rpm; null where it runs outside the map.")


class LimitLine(Closed):
    """A limit on the map, and all who say it."""

    quantity: Quantity = said("What it is on.")
    bound: Literal["at_least", "at_most"] = said("Which way it bounds.")
    limit: float = said("The figure, in `unit`.")
    unit: str = said("Its unit; empty for a ratio.")
    ids: list[str] = said("The ids of the limits that say it.")
    label: str = said("In words.")
    short: str = said("In a few characters.")
    line: rows_of(Pair, 2) | None = said("Its two ends: radius, m, and spin, rpm; null where it runs outside the map.")
    forbids: list[Pair] | None = said("Corners of what it forbids of the map; null where that is nothing.")
    mine: bool = said("Whether it is your own.")


class LimitsMap(Closed):
    """The map of limits: radius against spin, both on log axes, on which every line is straight."""

    radius_m: Pair = said("Least and greatest radius, m.")
    spin_rpm: Pair = said("Least and greatest spin, rpm.")
    gravity: list[GravityLine] = said("Lines of equal gravity.")
    limits: list[LimitLine] = said("The limits.")


class Adaptation(Closed):
    """A published statement on what people got used to."""

    claim: str = said("What is said.")
    study: str = said("Who says it; empty for what is not published.")
    year: int | None = said("When.")
    reached_rpm: float | None = said("The spin reached, rpm.")
    source: str = said("The citation.")
    note: str = said("What else is to be known of it.")
    here: str = said("How the spin here lies to it.")
    known_by: Known = said("Whether the source was read or is given from memory.")
    who: str = said("Of whom.")


class BodyFinding(Closed):
    """A published finding of bodies without their weight, or with part of it."""

    id: str = said("Its id.")
    topic: Literal[tuple(TOPICS)] = said("What it is on.")
    points: Literal[POINTS] = said("Which way it speaks on whether a stay needs spin.")
    speaks: str = said("The same in words.")
    stays: list[Literal[STAYS]] = said("The stays that it bears on.")
    claim: str = said("What is said.")
    here: str = said("How the weight here lies to those that it speaks of; empty where it speaks of none.")
    study: str = said("Who says it.")
    year: int | None = said("When; null where the source gives no year.")
    source: str = said("The citation.")
    note: str = said("What else is to be known of it.")
    known_by: Known = said("Whether the source was read or is given from memory.")


class Topic(Closed):
    """A topic of those findings."""

    name: Literal[tuple(TOPICS)] = said("Its name.")
    title: str = said("Its title.")


Counts = create_model(
    "Counts",
    __base__=Closed,
    __doc__="How many of the studies that bear on a stay speak each way.",
    **{points: (Count, said(f"How many: {words}.")) for points, words in SPEAKS.items()},
)


class Stay(Closed):
    """What the studies come to for a stay."""

    stay: Literal[STAYS] = said("How long.")
    verdict: str = said("What they come to, in sentences.")
    counts: Counts = said("How many speak each way.")
    not_known: list[str] = said("What no study found tells.")


class WhySpin(Closed):
    """What bodies do without their weight, and what a stay makes of it. Not medical advice."""

    lead: str = said("What it is about.")
    stays: list[Stay] = said("A verdict for a stay of hours, days, months and years.")
    topics: list[Topic] = said("The topics of the findings, in order.")
    findings: list[BodyFinding] = said("What was found.")


class Tale(Closed):
    """A moment of a day aboard."""

    name: Literal[tuple(TALES)] = said("Its name.")
    title: str = said("Its title.")
    text: str = said("What it is like.")
    prose: str = said("The same rounded, in words and without symbols.")


class Feel(Closed):
    """What people would feel."""

    rimfall_feel: Version = said("Version of this answer.")
    program: Program
    habitat: HabitatPart = said("The habitat as it was read, with every default filled in.")
    air: AirPart | None = said("Its air; null is vacuum.")
    person: PersonPart = said("Who is aboard.")
    own_limits: list[OwnLimit] = said("Limits of your own.")
    figures: Figures = said("What is felt, by name.")
    figure_rows: list[FigureLabel] = said("How those figures are labelled, in order.")
    levels: list[Level] = said("What is felt on other levels.")
    head_turns: list[HeadTurn] = said("What quick turns of the head feel like.")
    limits: list[Limit] = said("Every published figure beside the value here.")
    quantities: list[QuantityHere] = said("What the limits on each quantity come to.")
    says: Says = said("The answer in sentences.")
    map: LimitsMap = said("The map of limits.")
    why_spin: WhySpin = said("What bodies do without their weight, and a verdict for a stay.")
    adaptation: list[Adaptation] = said("What people got used to.")
    words: list[Tale] = said("Five moments of a day aboard.")
    assumptions: list[str] = said("What was left out, in sentences.")
    caution: str = said("What to bear in mind about people.")


class SmallestSaid(Closed):
    """The smallest habitat with the figures that the words show."""

    radius_m: float = said("Its radius, m.")
    spin_rpm: float | None = said("Its spin, rpm; null where no wish sets one.")


class Smallest(Closed):
    """The smallest habitat that meets the wishes."""

    radius_m: float = said("Its radius, m.")
    spin_rpm: float | None = said("Its spin, rpm; null where no wish sets one.")
    program_most_rpm: float = said("The greatest spin the program takes at that radius, rpm.")
    as_said: SmallestSaid = said("The same with the figures that the words show, which meet the wishes as well.")
    figures: SizedFigures = said("Its quantities.")
    bound_by: list[Count] = said("Numbers of the wishes that keep it from being smaller.")


class Family(Closed):
    """All that meet the wishes, from the smallest radius on; null at an end that no wish sets."""

    radius_m: list[float] = said("Radii, m.")
    least_spin_rpm: list[float | None] = said("The least spin at each, rpm.")
    most_spin_rpm: list[float | None] = said("The greatest spin at each, rpm.")
    least_gravity_g: list[float | None] = said("The least gravity at each, g.")
    most_gravity_g: list[float | None] = said("The greatest gravity at each, g.")


class Clash(Closed):
    """A wish that collides with others."""

    wish: Count = said("Its number.")
    label: str = said("What is wished for, in words.")
    was: float | None = said("The figure wished for, in `unit`; null for a study.")
    could_be: float | None = said("The nearest figure with which the others are met, in `unit`; null for a study.")
    could_be_says: str | None = said("The same in words.")
    could_be_said: float | None = said(
        "The figure that these words show, in `unit`, with which the others are met as well."
    )
    unit: str = said("The figure's unit; empty for a ratio or a study.")
    say: str = said("What would do, in a sentence.")


class Size(Closed):
    """The smallest habitat for some wishes, or which of them collide. Wishes are counted from 0."""

    rimfall_size: Version = said("Version of this answer.")
    program: Program
    wishes: list[Wish] = said("The wishes as they were read.")
    person: PersonPart = said("Who they are for.")
    fits: bool = said("Whether a habitat meets them all.")
    smallest: Smallest | None = said("The smallest that does; null where none does.")
    spin_range_rpm: Annotated[list[float | None], Field(min_length=2, max_length=2)] | None = said(
        "Least and greatest spin at the smallest, rpm."
    )
    family: Family | None = said("All that do, from the smallest radius on.")
    collides: list[Clash] = said("Where none does, the wishes that collide.")
    words: list[str] = said("The answer in sentences.")
    ways: str | None = said("The sentence that names the ways out of a collision; null without one.")
    assumptions: list[str] = said("What was left out, in sentences.")
    caution: str = said("What to bear in mind about people.")
