"""Habitat shapes, one module each, and the one list of them; whoever adds a shape adds its line here."""

from typing import Annotated, Union

from pydantic import Discriminator, Tag

from .base import Ground, Shape
from .cylinder import Cylinder, CylinderPart
from .floors import Craft, Floor
from .pods import PodsPart
from .sphere import Sphere, SpherePart
from .tether import TetherPart
from .torus import Torus, TorusPart
from .tumbler import TumblerPart
from .turntable import Turntable, TurntablePart

__all__ = ["SHAPES", "Craft", "Cylinder", "Floor", "Ground", "HabitatPart", "Shape", "Sphere", "Torus", "Turntable"]

# a shape's name in a document → the model of its fields, in the order in which people are offered them
SHAPES = {
    "cylinder": CylinderPart,
    "torus": TorusPart,
    "sphere": SpherePart,
    "pods": PodsPart,
    "tether": TetherPart,
    "tumbler": TumblerPart,
    "turntable": TurntablePart,
}
UNNAMED = "cylinder"  # the shape of a habitat that names none


def _shape_of(value):
    """The tag of a habitat's model: its shape's name after an @, which no field of a document begins with."""
    shape = value.get("shape", UNNAMED) if isinstance(value, dict) else getattr(value, "shape", UNNAMED)
    return f"@{shape}" if isinstance(shape, str) else "@"


HabitatPart = Annotated[
    Union[tuple(Annotated[model, Tag(f"@{name}")] for name, model in SHAPES.items())],  # noqa: UP007 - made from the table
    Discriminator(_shape_of),
]
