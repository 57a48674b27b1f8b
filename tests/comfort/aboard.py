"""Small habitats for tests, and what a person feels in them."""

import json

from rimfall.comfort.figures import figures_of
from rimfall.scene.document import setting_of
from rimfall.scene.reading import read
from tests.motions.scenes import LANTERN

FLOOR = {"length_m": 12.0, "width_m": 6.0, "ceiling_m": 3.0}
TORUS = {"shape": "torus", "radius_m": 56.0, "spin_rpm": 3.0, "tube_radius_m": 6.0}
SPHERE = {"shape": "sphere", "radius_m": 40.0, "spin_rpm": 4.0}
PODS = {"shape": "pods", "radius_m": 24.0, "spin_rpm": 4.0, "floors": [FLOOR, {"radius_m": 18.0}]}
TABLE = {"shape": "turntable", "radius_m": 3.0, "spin_rpm": 10.0}
SHIPS = (LANTERN, TORUS, SPHERE, PODS)


def scene(habitat, person=None):
    """A Scene of a habitat (dict) and of what differs in its person (dict)."""
    return read(json.dumps({"rimfall": 1, "habitat": habitat, "motions": [], "person": person or {}}))


def felt(habitat, person=None):
    """The Figures of a person there."""
    one = scene(habitat, person)
    return figures_of(setting_of(one)[0], one.person, getattr(one.habitat, "decks", ()))


def value(name, habitat, person=None):
    """One of those figures."""
    return felt(habitat, person).values[name]
