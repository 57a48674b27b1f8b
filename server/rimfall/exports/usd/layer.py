"""What a USD layer holds, told once for every way of writing it: prims, attributes and their samples as numpy arrays."""

from dataclasses import dataclass, field

import numpy as np


@dataclass(frozen=True)
class Attribute:
    """kind: a USD value type, "point3f[]". value: what it is at all times; or at (S,) time codes, rising, and values, one a
    code. Numbers are arrays: (3,) a point, (n, 3) an array of points, (4,) a quaternion, w first, (4, 4) a matrix, () or a
    Python number a scalar; tokens are texts. connect: path of an output it is fed by."""

    name: str
    kind: str
    value: object = None
    at: np.ndarray | None = None
    values: object = None
    uniform: bool = False
    interpolation: str | None = None
    connect: str | None = None


@dataclass(frozen=True)
class Prim:
    """kind: of the schema ("Sphere"), "" where it has none. relations: name -> path. apis: names of applied schemas."""

    kind: str
    name: str
    attributes: list = field(default_factory=list)
    children: list = field(default_factory=list)
    relations: dict = field(default_factory=dict)
    apis: tuple = ()
    shown_name: str | None = None
    model: str | None = None


@dataclass(frozen=True)
class Layer:
    """A whole layer. settings: its own numbers and names (upAxis, metersPerUnit, ...); custom: name -> text, int, float or
    list of numbers, for people and programs that read it."""

    root: Prim
    comment: str
    settings: dict
    custom: dict


def is_array(kind):
    """Whether a value type is an array."""
    return kind.endswith("[]")


def single(kind):
    """numpy type of the numbers of a value type."""
    base = kind.removesuffix("[]")
    if base in ("int", "int64", "bool"):
        return {"int": np.int32, "int64": np.int64, "bool": np.bool_}[base]
    return np.float64 if base in ("double", "double3", "matrix4d") else np.float32


def ready(kind, value):
    """Numbers as both writers write them: of the type's own precision, without negative zeros."""
    numbers = np.asarray(value, dtype=single(kind))
    return numbers if numbers.dtype == np.bool_ else numbers + 0


def changing(name, kind, at, values, **more):
    """An Attribute sampled at (S,) time codes; where nothing changes, the one value it has."""
    values = ready(kind, values)
    if np.all(values == values[:1]):
        return Attribute(name, kind, values[0], **more)
    return Attribute(name, kind, at=at, values=values, **more)
