"""The answers that are the same for the program's whole life: fields, examples, health."""

from typing import Any, Literal

from ...exports.formats import FORMATS
from ...scene.document import MOTIONS, Scene
from ...scene.examples import BY_QUESTION, SAY
from .drawings import Mesh
from .parts import Closed, Program, said
from .traces import Trace

Kinds = Literal[tuple(MOTIONS)]


class Health(Closed):
    """That the server answers."""

    ok: Literal[True] = said("True.")
    program: Program


class SmallPath(Closed):
    """A path of a small drawing."""

    look: int = said("The number of its style, from 1.")
    points: list[int] = said("x, y of its points in turn.")
    end: list[int] | None = said("x, y of its first landing; null where there is none.")


class SmallDrawing(Closed):
    """A scene on a sheet of 320 by 200, y downward."""

    circles: list[list[int]] = said("Round ground: x, y and radius.")
    lines: list[list[int]] = said("Flat ground: x, y at one end and at the other.")
    hung: list[list[int]] = said("What hangs, on its line: x, y of the pivot and of the body.")
    people: list[list[int]] = said("Those who stand there: x, y of the feet and of the head.")
    paths: list[SmallPath] = said("What moves.")


class Example(Closed):
    """A scene to start from."""

    id: Literal[tuple(SAY)] = said("Its name in the address of its document.")
    title: str = said("Its title.")
    say: str = said("What it shows, in a sentence.")
    question: Literal[tuple(BY_QUESTION)] = said("The question it belongs to.")
    drawing: SmallDrawing = said("Its small drawing.")


class Examples(Closed):
    """Scenes to start from."""

    examples: list[Example] = said("All of them, in the order in which they are offered.")


class Opened(Closed):
    """A scene to start from with all that is needed to show it."""

    document: Scene = said("Its document.")
    trace: Trace = said("Where everything goes, arrays packed.")
    mesh: Mesh = said("What its habitats are drawn from.")


class Shown(Closed):
    """What a slider shows of a number."""

    min: float = said("Its lower end, in the field's unit.")
    max: float = said("Its upper end.")
    scale: Literal["linear", "log", "fine_low"] = said("How values lie along it.")


class Field(Closed):
    """A field of a document."""

    label: str = said("Its label.")
    unit: str = said("Its unit; empty where it has none.")
    kind: str = said("What kind of value it has.")
    min: float | None = said("Its least value, in its unit; null where there is none.")
    max: float | None = said("Its greatest value.")
    above_min: bool = said("Whether it must lie above the least.")
    whole: bool = said("Whether it is a whole number.")
    default: Any = said("Its default; null where there is none.")
    required: bool = said("Whether it must be given.")
    nullable: bool = said("Whether it may be null.")
    choices: list[str | int] | None = said("What it may be one of; null where it is no choice.")
    shown: Shown | None = said("What a slider shows of it; null without one.")
    may_be: str = said("What it may be, in words.")


class Finding(Closed):
    """A figure that a kind of motion tells beside its path."""

    name: str = said("Its name in `findings`.")
    say: str = said("The words before it.")
    unit: str = said("Its unit.")
    term: str = said("Its entry in the glossary.")
    sided: bool = said("Whether it is along the ground, spinward above 0.")


class Stage(Closed):
    """How a kind of motion is drawn."""

    mover: str = said("What moves.")
    beside: str | None = said("What is drawn with it.")
    attended_m: float | None = said("How far off stands somebody who lets it go, m; null where nobody does.")
    winds: bool = said("Whether its path goes to and fro or round and round.")
    outside: bool = said("Whether it goes on outside the hull.")
    aimed: bool = said("Whether its speed has a handle on the stage.")
    no_arrows: list[Literal["velocity", "centrifugal", "coriolis"]] = said("Arrows that would tell nothing of it.")
    weight: str | None = said("The finding that is the weight of who moves.")


class Kind(Closed):
    """A kind of motion, and what a page needs of it."""

    label: str = said("Its label.")
    fields: list[str] = said("Its fields.")
    required: list[str] = said("Those that must be given.")
    own: dict[str, Field] = said("Fields that it describes otherwise than other kinds, by path.")
    new: dict[str, Any] = said("One ready to add.")
    group: str = said("The heading under which it may be added.")
    sentence: Any = said("The sentence of its inputs: a text, a list of parts, or a part that depends on a field.")
    rows: dict[str, str | None] = said("Its figures in order, each with a short label or null for the field's own.")
    add: str = said("What is added.")
    many: str = said("How several are counted.")
    short: str = said("The button's word.")
    title: str = said("The title of a new one.")
    one: str = said("How one is counted.")
    more: list[str | dict[str, str | None]] | None = said("A heading and rows that are folded away; null without.")
    carried: list[str] = said(
        "What the motion added to it is called, and what it is at rest.", min_length=2, max_length=2
    )
    mirrored: bool = said("Whether it has a mirror image across the deck.")
    events: dict[str, str] = said("Words for its events that differ from those of others.")
    stays: str | None = said("Its end in a word where nothing happens to it.")
    findings: list[Finding] = said("The figures it tells beside its path.")
    terms: dict[str, str] = said("Entries of the glossary that are its own.")
    stage: Stage = said("How it is drawn.")


class Ground(Closed):
    """What is stood on."""

    name: str = said("Its name for people.")
    surface: str = said("Its name as a surface.")
    along: str = said("Along what a distance is measured.")
    across: list[str] = said("The two ways across it, above and below 0.", min_length=2, max_length=2)
    side: str = said("Which way the first of them points.")
    level: bool = said("Whether it lies across the axis.")


class Shape(Closed):
    """A shape of habitat, and its words."""

    label: str = said("Its label.")
    thing: str = said("What it is; {radius} stands for its radius.")
    whole: str = said("The name of a picture of all of it.")
    weighed: str = said("Where its weight is told.")
    fades: str = said("How weight changes away from there.")
    stands: str = said("Where somebody stands.")
    passes: str = said("Why what is let go may not land.")
    fields: list[str] = said("Its fields.")
    required: list[str] = said("Those that must be given.")
    new: dict[str, Any] = said("Its own fields where one is made afresh.")
    ground: Ground = said("What is stood on.")


class Body(Closed):
    """A named body."""

    name: str = said("Its name.")
    mass_kg: float = said("Its mass, kg.")
    diameter_m: float = said("Its diameter, m.")
    drag: float | Literal["sphere"] = said("Its drag coefficient, or that of a sphere.")
    shell: Literal["solid", "hollow"] = said("How its mass is spread.")
    restitution: float = said("Restitution at a contact, 0 to 1.")
    friction: float = said("Coefficient of friction.")
    rolling_resistance: float = said("Coefficient of rolling resistance.")
    drag_area_m2: float | None = said("Drag coefficient times area, m²; null where `drag` says it.")
    buoyant: bool = said("Whether the air it displaces bears it up.")
    source: str = said("Where its figures are from.")


class Liquid(Closed):
    """A liquid that can be poured."""

    name: str = said("Its name.")
    density_kg_m3: float = said("Density, kg/m³.")
    viscosity_pa_s: float = said("Dynamic viscosity, Pa s.")
    surface_tension_n_m: float = said("Surface tension, N/m.")
    source: str = said("Where its figures are from.")


class Hold(Closed):
    """What can be held while a dial moves: factor * radius_m ** radius_power * spin_rpm ** spin_power, in m/s² or m/s."""

    factor: float = said("The factor.")
    radius_power: int = said("The power of the radius.")
    spin_power: int = said("The power of the spin.")


class Holds(Closed):
    """What can be held."""

    gravity: Hold = said("The spin's own gravity at the deck, straight outward, m/s².")
    rim_speed: Hold = said("Rim speed, m/s.")


class Format(Closed):
    """A file that a scene can be taken away as."""

    name: Literal[tuple(FORMATS)] = said("Its name in the address of an export.")
    say: str = said("What it is.")
    ending: str = said("The ending of its file's name.")
    media_type: str = said("Its media type.")
    uses: list[str] = said("The choices that change it.")


class Export(Closed):
    """What can be taken away, and with which choices."""

    formats: list[Format] = said("The formats.")
    fields: dict[str, Field] = said("The choices, by path.")


class View(Closed):
    """A direction of view and a field of view."""

    yaw_deg: float = said("Degrees about up.")
    tilt_deg: float = said("Degrees from level.")
    fov_deg: float = said("Field of view from top to bottom, degrees.")


class Seat(Closed):
    """A camera: where it looks from on a broad and on a square stage."""

    broad: View = said("On a broad stage.")
    square: View = said("On a square one.")


class Cameras(Closed):
    """The camera presets."""

    margin: float = said("Share of the picture left free on each side.")
    broad: float = said("Width to height from which on a stage is broad.")
    square: float = said("Width to height up to which it is square.")
    level_over_deg: float = said("How much higher up the camera is over a turntable, degrees.")
    section_over_deg: float = said("How much higher up it is over ground that bends across, degrees.")
    level_whole_deg: float = said("Tilt at which a whole turntable is seen, degrees.")
    seats: dict[str, Seat] = said("The cameras, by the page's letters.")


class SolidPart(Closed):
    """A solid that a part of a craft can be."""

    fields: list[str] = said("Its own fields, beside those of every part.")
    new: dict[str, Any] = said("One ready to add.")


class BlockVariant(Closed):
    """Another form of a block."""

    fields: list[str] = said("Its fields.")
    new: dict[str, Any] = said("One ready to ask.")


class InnerBlock(Closed):
    """A block inside a block, that may be absent."""

    name: str = said("Its name in the document.")
    asks: str = said("What a switch says.")
    fields: list[str] = said("Its fields.")
    new: dict[str, Any] = said("Its value when it is switched on.")


class BlockItems(Closed):
    """A list inside a block."""

    path: str = said("Where in the block it is; empty where the block is the list.")
    fields: list[str] = said("The fields of each thing in it.")
    new: dict[str, Any] = said("One ready to add.")
    adds: str = said("What a button says that adds one.")
    least: int = said("How many stay at least.")
    of_parts: bool = said("Whether each is named after a part of the craft.")
    at_rim: list[str] = said("Where in a new one there is the radius of the floor.")


class Block(Closed):
    """A question about a craft, as a block of its document."""

    name: str = said("Its name in the document.")
    findings: list[str] = said("The findings of the answer that it brings.")
    question: str = said("Its heading.")
    asks: str = said("What a button says that adds it.")
    fields: list[str] = said("Its fields.")
    new: dict[str, Any] | list[dict[str, Any]] = said("One ready to ask.")
    variants: dict[str, BlockVariant] | None = said("Its forms, by `by`; null where it has but one.")
    inside: list[InnerBlock] = said("Blocks inside it.")
    beside: list[InnerBlock] = said("Blocks of the craft that are asked with it.")
    one_of: dict[str, float] | None = said(
        "Fields of which one is given, each with its value when it is chosen; null where there are none."
    )
    at_rim: list[str] = said("Where in a new value there is the radius of the floor.")
    items: BlockItems | None = said("The list inside it; null where there is none.")


class CraftParts(Closed):
    """What a craft is put together from."""

    groups: list[str] = said("The groups of parts.")
    solids: dict[str, SolidPart] = said("The solids.")
    blocks: list[Block] = said("The questions, in the order of the page.")


class Fields(Closed):
    """Everything a page needs of the documents: fields, kinds of motion, shapes, bodies, liquids, files."""

    program: Program
    fields: dict[str, Field] = said(
        "Every field of a scene document, by path; `*` stands for a number in a list. Figures and choices of questions about throws and "
        "paths are under aim., landings.over. and the figure that varies, camera. and match."
    )
    kinds: dict[Kinds, Kind] = said("The kinds of motion.")
    shapes: dict[str, Shape] = said("The shapes of habitat.")
    bodies: list[Body] = said("The named bodies.")
    liquids: list[Liquid] = said("The liquids.")
    person_height_m: float = said("Height of a person where none is given, m.")
    greatest_rim_speed_m_s: float = said("The greatest rim speed of a habitat, m/s.")
    holds: Holds = said("What can be held while a dial moves.")
    craft: CraftParts = said("What a craft is put together from.")
    caution: str = said("What to bear in mind.")
    export: Export = said("What can be taken away.")
    cameras: Cameras = said("The camera presets.")
