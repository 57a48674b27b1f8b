"""What the page needs to put a craft together: every solid as a part ready to add, every question as a block ready to ask.

The figures of what is new are our own, of the size of a courier station's; everything else is read off the document.
"""

from dataclasses import dataclass, field
from typing import Literal, get_args, get_origin

from ...language import tr, tr_later, tr_later_as
from ...language.documents import translated
from ..choices import solid_words
from .document import BY, GROUPS, SOLIDS, Ballast, Craft, Deployed, Dissipation, Load, Spot, Wheel


@dataclass(frozen=True)
class Items:
    """A list inside a block: where in it, what each thing in it may have, one that is new, and what a button says that adds it.
    least: how many stay. of_parts: each is named after a part of the craft. at_rim: as of a Block."""

    path: str
    model: type
    new: dict
    adds: str
    least: int = 0
    of_parts: bool = False
    at_rim: tuple[str, ...] = ()


@dataclass(frozen=True)
class Inside:
    """A block inside a block that may be absent: its name in the document, its model, what a switch says, and its value when switched on."""

    name: str
    model: type
    asks: str
    new: dict


@dataclass(frozen=True)
class Block:
    """name: of the craft's document. findings: those of the answer that it brings. asks: what a button says that adds it. new: its value
    then, in which a part's name that is "" is that of a part of the craft. variants: values of the same block of another model. beside:
    blocks of the craft's that are asked with it. one_of: fields of which one is given, each with its value when it is chosen. at_rim: where
    in a new value there is the radius of the floor."""

    name: str
    findings: tuple[str, ...]
    asks: str
    new: dict | list
    items: Items | None = None
    inside: tuple[Inside, ...] = ()
    variants: dict = field(default_factory=dict)
    beside: tuple[Inside, ...] = ()
    one_of: dict = field(default_factory=dict)
    at_rim: tuple[str, ...] = ()


_MOTOR = {"by": "motor", "torque_n_m": 5_000.0}
_THRUSTERS = {"by": "thrusters", "thrust_n": 400.0, "arm_m": 20.0, "exhaust_m_s": 3_000.0}
_WHEEL = Inside("wheel", Wheel, tr_later("A wheel that holds the rest still"), {"mass_kg": 2_000.0, "radius_m": 3.0})
_LOSS = Inside("dissipation", Dissipation, tr_later("Energy lost inside"), {"time_s": 3_600.0})
_WEIGHTS = Inside("ballast", Ballast, tr_later("Weights that balance it"), {"planes_m": [-3.0, 3.0]})
_LOAD = {"name": tr_later_as("a name in a scene", "crew"), "mass_kg": 800.0, "place_m": [20.0, 0.0, 0.0]}

# in the order of the page
BLOCKS = (
    Block(
        "spin_up",
        ("spin_up", "spin_down"),
        tr_later("Spinning it up"),
        _MOTOR,
        inside=(_WHEEL,),
        variants={"motor": _MOTOR, "thrusters": _THRUSTERS},
        at_rim=("arm_m",),
    ),
    Block(
        "joint",
        ("joint",),
        tr_later("The joint"),
        {"radius_m": 1.2, "load_n": 20_000.0, "friction_coefficient": 0.002, "passages": 6},
    ),
    Block(
        "slew",
        ("slew",),
        tr_later("Turning the ship"),
        {"rate_deg_s": 0.1, "angle_deg": 90.0, "torque_n_m": None},
        one_of={"rate_deg_s": 0.1, "time_s": 900.0, "torque_n_m": 5_000.0},
    ),
    Block(
        "loads",
        ("balance",),
        tr_later("Its balance"),
        [_LOAD],
        Items("", Load, _LOAD, tr_later("Add a load"), least=1, at_rim=("place_m.0",)),
        beside=(_WEIGHTS,),
        at_rim=("0.place_m.0",),
    ),
    Block(
        "tumble",
        ("tumble",),
        tr_later("Letting it tumble"),
        {"rates_rpm": [0.0, 0.05, 3.0], "dissipation": _LOSS.new, "duration_s": 3_600.0},
        Items(
            ".places",
            Spot,
            {"name": tr_later_as("a name in a scene", "cabin"), "place_m": [0.0, 0.0, 10.0]},
            tr_later("Name a place"),
        ),
        (_LOSS,),
    ),
    Block(
        "move",
        ("move",),
        tr_later("Moving a mass"),
        {"mass_kg": 500.0, "from_radius_m": 0.0, "to_radius_m": 20.0, "speed_m_s": 1.0, "holds": "momentum"},
        at_rim=("to_radius_m",),
    ),
    Block(
        "deploy",
        ("deploy",),
        tr_later("Folding a part"),
        {"parts": [{"name": "", "place_m": [0.0, 0.0, 0.0]}]},
        Items(
            ".parts",
            Deployed,
            {"name": "", "place_m": [0.0, 0.0, 0.0]},
            tr_later("Fold another part"),
            1,
            of_parts=True,
        ),
    ),
    Block(
        "tether",
        ("tether",),
        tr_later("A tether"),
        {
            "length_m": 200.0,
            "masses_kg": [40_000.0, 15_000.0],
            "material": "aramid",
            "safety": 4.0,
            "to_length_m": 100.0,
        },
    ),
    Block("dock", ("dock",), tr_later("A visitor"), {"at": "rim", "mass_kg": 8_000.0, "exhaust_m_s": 3_000.0}),
    Block(
        "hull",
        ("hull",),
        tr_later("The ring's strength"),
        {
            "material": "aluminium 6061-T6",
            "safety": 3.0,
            "thickness_m": 0.05,
            "load_kg_m2": 300.0,
            "pressure_kpa": 101.3,
        },
    ),
    Block("rock", ("rock",), tr_later("A spun rock"), {"density_kg_m3": 2_600.0, "radius_m": 500.0, "gravity_g": 0.3}),
)

_SIZES = {"length_m": 20.0, "radius_m": 5.0, "tube_radius_m": 2.0, "size_m": [8.0, 6.0, 4.0]}
_WIDE = {"radius_m": 20.0}
_SIZES_OF = {"ring": _WIDE, "torus": _WIDE, "torus_shell": _WIDE}
_NOT_ROWS = {"name", "by", "solid"}


def as_data(questions):
    """Groups, solids and blocks as data; questions: of each finding, by its name."""
    return {
        "groups": list(GROUPS),
        "solids": {name: {"fields": _own(model), "new": _new(name, model)} for name, model in SOLIDS.items()},
        "blocks": [_block(block) | {"question": questions[block.findings[0]]} for block in BLOCKS],
    }


def _block(block):
    inside = {one.name for one in block.inside} | set(block.one_of)
    items = block.items
    return {
        "name": block.name,
        "findings": block.findings,
        "asks": tr(block.asks),
        "new": translated(block.new),
        "fields": [] if (items and not items.path) or block.variants else _fields(_model(block.name), inside),
        "variants": {by: {"new": new, "fields": _fields(BY[by], inside)} for by, new in block.variants.items()} or None,
        "inside": [_inside(one) for one in block.inside],
        "beside": [_inside(one) for one in block.beside],
        "one_of": block.one_of or None,
        "at_rim": block.at_rim,
        "items": items
        and {
            "path": items.path,
            "fields": _fields(items.model),
            "new": translated(items.new),
            "adds": tr(items.adds),
            "least": items.least,
            "of_parts": items.of_parts,
            "at_rim": items.at_rim,
        },
    }


def _inside(one):
    return {"name": one.name, "asks": tr(one.asks), "new": one.new, "fields": _fields(one.model)}


def _model(name):
    """The model of a block of the craft's document."""
    annotation = Craft.model_fields[name].annotation
    return next(one for one in annotation.__args__ if isinstance(one, type) and one is not type(None))


def _fields(model, without=()):
    """The fields that have a row of their own."""
    kinds = {name: (one.json_schema_extra or {}).get("kind") for name, one in model.model_fields.items()}
    lists = ("masses_kg", "planes_m")
    return [
        name
        for name, kind in kinds.items()
        if name not in _NOT_ROWS
        and name not in without
        and (kind in ("number", "choice", "vector") or name in lists)
        and not _is_settled(model.model_fields[name])
    ]


def _is_settled(described):
    """Whether there is but one thing to choose."""
    return get_origin(described.annotation) is Literal and len(get_args(described.annotation)) == 1


def _own(model):
    """The fields of a solid beside those of every part."""
    return [name for name in model.model_fields if name in (*_SIZES, "axis")]


def _new(name, model):
    sizes = _SIZES | _SIZES_OF.get(name, {})
    return {
        "name": solid_words(name),
        "group": "still",
        "solid": name,
        "mass_kg": 5_000.0,
        **{size: value for size, value in sizes.items() if size in model.model_fields},
    }
