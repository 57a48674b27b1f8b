"""Colours and materials: UsdPreviewSurface, one material a colour, made as prims ask for them."""

import numpy as np

from ..palette import PATHS, WATER, linear, style_of
from .layer import Attribute, Prim


class Looks:
    """The materials of a layer, under the scope at `path`."""

    def __init__(self, path):
        self.path, self.materials = path, {}

    def of_motion(self, number):
        """What binds a prim to the colour of a motion of the scene."""
        return self.worn(f"motion_{number % len(PATHS) + 1}", linear(style_of(number).stage), 0.5)

    def water(self):
        """What binds a prim to the colour of drops and streams."""
        return self.worn("water", linear(WATER), 0.1)

    def of_hull(self, colour):
        """What binds a prim to a linear colour (3,) of the habitat's."""
        name = "hull_" + "_".join(f"{round(255 * float(part)):03d}" for part in colour)
        return self.worn(name, np.asarray(colour), 0.8)

    def worn(self, name, colour, roughness):
        """What a prim with this material has: the attributes, relations and schemas that say so."""
        self.materials[name] = colour, roughness
        shown = Attribute("primvars:displayColor", "color3f[]", np.array([colour]), interpolation="constant")
        return [shown], {"material:binding": f"{self.path}/{name}"}, ("MaterialBindingAPI",)

    def prim(self):
        """The scope of all materials asked for so far."""
        made = [self._material(name, *self.materials[name]) for name in sorted(self.materials)]
        return Prim("Scope", self.path.rpartition("/")[2], children=made)

    def _material(self, name, colour, roughness):
        surface = [
            Attribute("info:id", "token", "UsdPreviewSurface", uniform=True),
            Attribute("inputs:diffuseColor", "color3f", colour),
            Attribute("inputs:metallic", "float", 0.0),
            Attribute("inputs:roughness", "float", roughness),
            Attribute("outputs:surface", "token"),
        ]
        feeds = Attribute("outputs:surface", "token", connect=f"{self.path}/{name}/Surface.outputs:surface")
        return Prim("Material", name, [feeds], [Prim("Shader", "Surface", surface)])
