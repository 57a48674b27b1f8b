"""Craft to start from as a scene carries them: without radius and spin, which are the habitat's."""

import json

from pydantic import ValidationError

from ...language import tr
from . import examples
from .asked import rim_of, solid_of
from .checks import check
from .document import Craft
from .fit import fitted


def for_scenes(radius_m=None):
    """Each as data: id, title, say, the radius_m and spin_rpm of the habitat that it goes with, and its document without those; its lengths
    made to fit a habitat of radius_m, where that is given: then without those of which a length would be out of bounds."""
    listed = [_listed(name, say) for name, say in examples.SAY.items()]
    return listed if radius_m is None else [fit for one in listed if (fit := _fitting(one, radius_m))]


def _fitting(one, radius_m):
    craft = fitted(one["craft"], radius_m / one["radius_m"])
    try:
        Craft.model_validate(craft | {"radius_m": radius_m, "spin_rpm": one["spin_rpm"]})
    except ValidationError:
        return None
    return one | {"radius_m": radius_m, "craft": craft}


def _listed(name, say):
    craft = check(Craft.model_validate_json(examples.example(name)))
    document = json.loads(examples.example(name))
    radius_m = document.pop("radius_m", None) or rim_of(craft, {part.name: solid_of(part) for part in craft.parts})
    return {
        "id": name,
        "title": craft.title,
        "say": tr(say),
        "radius_m": radius_m,
        "spin_rpm": document.pop("spin_rpm"),
        "craft": document,
    }
