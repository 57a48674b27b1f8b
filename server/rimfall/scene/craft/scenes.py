"""Craft to start from as a scene carries them: without radius and spin, which are the habitat's."""

import json

from . import examples
from .asked import rim_of, solid_of
from .checks import check
from .document import Craft


def for_scenes():
    """Each as data: id, title, say, the radius_m and spin_rpm of the habitat that it goes with, and its document without those."""
    return [_listed(name, say) for name, say in examples.SAY.items()]


def _listed(name, say):
    craft = check(Craft.model_validate_json(examples.example(name)))
    document = json.loads(examples.example(name))
    radius_m = document.pop("radius_m", None) or rim_of(craft, {part.name: solid_of(part) for part in craft.parts})
    return {
        "id": name,
        "title": craft.title,
        "say": say,
        "radius_m": radius_m,
        "spin_rpm": document.pop("spin_rpm"),
        "craft": document,
    }
