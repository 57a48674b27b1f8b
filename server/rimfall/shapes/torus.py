"""A tube bent into a ring about the axis."""

import math
from dataclasses import dataclass
from typing import ClassVar, Literal

from ..fields import log, number
from ..language import tr, tr_later, written
from ..physics.surfaces import Tube
from . import drawn, mesh
from .base import Ship, Words, rings
from .part import ShipPart, shape_field

WALKED = 0.87  # of the tube: what of its floor can be walked on


@dataclass(frozen=True)
class Torus(Ship):
    """A tube of tube_radius_m bent into a ring; radius_m reaches its outermost inside line."""

    tube_radius_m: float = 1.0

    @property
    def section_radius_m(self):
        """The tube's."""
        return self.tube_radius_m

    def surfaces(self, _floor=0):
        """What a body inside can meet."""
        return (Tube(self.radius_m, self.tube_radius_m),)

    def ground(self, _floor=0):
        """What a ball rolls on."""
        return Tube(self.radius_m, self.tube_radius_m)

    def ground_height_m(self, axial_m):
        """Height of the tube's outer half at axial_m."""
        return self.tube_radius_m - math.sqrt(max(self.tube_radius_m**2 - axial_m**2, 0.0))

    def headroom_m(self):
        """Across the tube."""
        return 2 * self.tube_radius_m

    def sides(self, _floor, half_m):
        """Inside the tube."""
        tube, inner = self.tube_radius_m, self.tube_radius_m - half_m

        def span(axial):
            chord = math.sqrt(max(inner**2 - axial**2, 0.0))
            return tube - chord, tube + chord

        return -inner, inner, span

    def hull_half_width_m(self, _floor):
        """To the tube's sides."""
        return self.tube_radius_m

    def outline_m(self):
        """The outermost line and the tube's sides."""
        radius, half = self.radius_m, self.tube_radius_m
        return rings([(1.02 * radius, 0.0), (radius - half, half), (radius - half, -half)])

    def meshes(self):
        """The tube's outer and inner half."""
        middle, tube = self.radius_m - self.tube_radius_m, self.tube_radius_m
        facets = mesh.around(self.radius_m, mesh.SHELL_ROUND)
        across = mesh.around(tube, 2 * mesh.SHELL_ACROSS) // 2
        deck = mesh.arc(middle, tube, math.pi / 2, across)
        roof = mesh.arc(middle, tube, math.pi / 2, across) * [-1, -1] + [2 * middle, 0]
        return [
            mesh.swept("deck", mesh.DECK, facets, deck, (middle, 0.0)),
            mesh.swept("ceiling", mesh.CEILING, facets, roof, (middle, 0.0)),
            mesh.mark_round(self.radius_m, facets, deck),
        ]

    def walked_half_m(self):
        """As far up the tube's sides as one walks."""
        return WALKED * self.tube_radius_m

    def parts(self):
        """The tube's outer half, cut open on the side of the eye; its sections and its inmost line; the lamp and spokes to it."""
        radius, tube, lamp = self.radius_m, self.tube_radius_m, drawn.lamp_radius_m(self)
        yield from drawn.shell_parts(radius, tube, math.pi / 2, self.walked_half_m())
        yield drawn.sections("hoop", 12, tube, tube, math.pi)
        yield drawn.rings("hoop", [[2 * tube, 0.0]])
        yield drawn.lantern(lamp, min(2 * tube, 0.3 * radius + 2 * lamp))
        yield from drawn.spokes(radius, 2 * tube, lamp)


class TorusPart(ShipPart):
    """A tube bent into a ring; the radius is that of its outermost inside line."""

    WORDS: ClassVar[Words] = Words(
        tr_later("Torus"),
        tr_later("A ring of {radius} radius"),
        weighed=tr_later("deck"),
        fades=tr_later("Climb the side of the tube and “down” is no longer square to it."),
        stands=tr_later("on the outermost line of the deck"),
        passes=tr_later("so high is above the ceiling"),
    )
    NEW: ClassVar[dict] = {"tube_radius_m": 8.0}

    shape: Literal["torus"] = shape_field("torus")
    tube_radius_m: float = number(tr_later("Tube radius"), "m", 0.05, 50_000, shown=log(0.5, 1_000))

    def habitat(self):
        """The Torus."""
        return Torus(*self.ship, self.tube_radius_m)

    def clashes(self):
        """The tube does not reach past the axis."""
        if self.tube_radius_m > self.radius_m / 2:
            yield (
                "tube_radius_m",
                self.tube_radius_m,
                tr("0.05 to half the radius, {length}", length=f"{written(self.radius_m / 2, 'g')} m"),
            )
