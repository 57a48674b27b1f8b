"""A cylinder that turns about its axis: a round deck, with or without end walls, a ceiling, a hub."""

import math
from dataclasses import dataclass, replace
from typing import ClassVar, Literal

import numpy as np

from ..fields import log, number
from ..language import tr, tr_later, written
from ..physics.surfaces import Drum, Plane
from . import drawn, mesh
from .base import RoundHull, Ship, Words, rings
from .part import ShipPart, hub_clashes, hub_field, shape_field

ENDED_WIDE = 0.5  # of its radius: an open cylinder that is seen from outside
# an open cylinder is drawn so many times its radius wide to either side, at most so far
OPEN_HALVES, OPEN_MOST_M = 2.5, 60.0


@dataclass(frozen=True)
class Cylinder(Ship):
    """A cylinder of radius_m that turns by `spin`.

    width_m: between end walls, None for open ends. ceiling_m: height of a ceiling above the deck, or None.
    hub_radius_m: radius of a column round the axis, or None. axial_thrust_m_s2: the ship's own acceleration along +z.
    """

    width_m: float | None = None
    ceiling_m: float | None = None
    hub_radius_m: float | None = None

    @property
    def hub_m(self):
        """Radius of the column."""
        return self.hub_radius_m or 0.0

    def ground(self, _floor=0):
        """What a ball rolls on."""
        return Drum("deck", self.radius_m, hollow=True)

    def surfaces(self, _floor=0):
        """What a body inside can meet. Behind a ceiling the hub cannot be met."""
        out = [self.ground()]
        if self.ceiling_m is not None:
            out.append(Drum("ceiling", self.radius_m - self.ceiling_m, hollow=False))
        elif self.hub_radius_m is not None:
            out.append(Drum("hub", self.hub_radius_m, hollow=False))
        if self.width_m is not None:
            out += [Plane("wall", (0.0, 0.0, side), -self.width_m / 2) for side in (1.0, -1.0)]
        return tuple(out)

    def headroom_m(self):
        """Up to the ceiling, or the hub."""
        return self.radius_m - self.hub_m if self.ceiling_m is None else self.ceiling_m

    def sides(self, _floor, half_m):
        """Between the walls; from the deck to the ceiling, the hub or the axis."""
        top = self.radius_m
        if self.ceiling_m is not None:
            top = self.ceiling_m - half_m
        elif self.hub_radius_m is not None:
            top = self.radius_m - self.hub_radius_m - half_m
        side = math.inf if self.width_m is None else self.width_m / 2 - half_m
        return -side, side, lambda _axial: (half_m, top)

    def hull_half_width_m(self, _floor):
        """To the end walls."""
        return math.inf if self.width_m is None else self.width_m / 2

    @property
    def round_hull(self):
        """A cylinder's."""
        return RoundHull((1.0, 1.0, 0.0), self.hull_half_width_m(0))

    def outline_m(self):
        """Its rims; those of an open cylinder are as one."""
        half = min((self.width_m or 0.0) / 2, 4 * self.radius_m)
        return rings([(1.02 * self.radius_m, half), (1.02 * self.radius_m, -half)])

    def meshes(self):
        """Deck, ceiling, hub, walls."""
        radius, facets = self.radius_m, mesh.around(self.radius_m, mesh.MOST_ROUND)
        half = min(OPEN_HALVES * radius, OPEN_MOST_M) if self.width_m is None else self.width_m / 2
        inner = self.hub_m if self.ceiling_m is None else radius - self.ceiling_m
        deck = np.array([[radius, half], [radius, -half]])
        out = [mesh.swept("deck", mesh.DECK, facets, deck)]
        if self.ceiling_m is not None:
            out.append(mesh.swept("ceiling", mesh.CEILING, facets, mesh.column(inner, half)))
        if self.hub_radius_m is not None:
            out.append(mesh.swept("hub", mesh.HUB, facets, mesh.column(self.hub_radius_m, half)))
        if self.width_m is not None:
            fore, aft = np.array([[inner, half], [radius, half]]), np.array([[radius, -half], [inner, -half]])
            out.append(mesh.swept("wall_fore", mesh.WALL, facets, fore))
            out.append(mesh.swept("wall_aft", mesh.WALL, facets, aft))
        return [*out, mesh.mark_round(radius, facets, deck)]

    def walked_half_m(self):
        """To the walls."""
        return None if self.width_m is None else self.width_m / 2

    def ended(self):
        """An open cylinder, cut to where it hides nothing."""
        return replace(self, width_m=ENDED_WIDE * self.radius_m) if self.width_m is None else None

    def parts(self):
        """Deck, hull in section, rails and lights along both edges, ceiling, the lamp on the axis, spokes. An open cylinder has the axial
        figures 1 and -1, for as wide as can be seen, and no edges."""
        radius, open_ended, thick = self.radius_m, self.width_m is None, drawn.skin_m(self.radius_m)
        half = 1.0 if open_ended else self.width_m / 2
        yield drawn.band("deck", [[0.0, half], [0.0, -half]])
        yield drawn.band("hull", [[-thick, -half], [-thick, half]])
        if self.ceiling_m is not None:
            yield drawn.band("ceiling", [[self.ceiling_m, -half], [self.ceiling_m, half]])
            yield drawn.rings("edge", [[self.ceiling_m, half], [self.ceiling_m, -half]])
        if not open_ended:
            yield drawn.rings("edge", [[0.0, half], [0.0, -half], [-thick, half], [-thick, -half]])
            for side in drawn.SIDES:
                yield from self._edge(side, side * half, thick)
        long = None if open_ended else min(2 * half + 0.06 * radius, 2 * half + 3)
        yield drawn.lantern(drawn.lamp_radius_m(self), long)
        if 0 < self.hub_m < 0.4 * radius:
            yield from drawn.spokes(radius, self.ceiling_m or 0.0, self.hub_m)

    def _edge(self, side, axial, thick):
        radius = self.radius_m
        yield drawn.band("section", [[-thick, axial], [0.0, axial]][::side])
        high = min(1.1, 0.16 * radius, 0.5 * (1e9 if self.ceiling_m is None else self.ceiling_m))
        bar = min(0.05, 0.0025 * radius)
        yield drawn.rings("rail", [[high, axial]], bar, side=side, cut="near")
        yield drawn.posts("rail", 2.5, [[0.0, axial], [high, axial]], 0.8 * bar, side=side, cut="near")
        inward = side * min(0.2, 0.05 * abs(axial))
        lift, wide = min(0.2, 0.03 * radius), min(0.34, 0.02 * radius)
        yield drawn.lights_round(5.0, lift, axial - inward, wide, side=side, cut="near")


class CylinderPart(ShipPart):
    """A cylinder that turns about its axis."""

    WORDS: ClassVar[Words] = Words(
        tr_later("Cylinder"),
        tr_later("A cylinder of {radius} radius"),
        weighed=tr_later("deck"),
        fades=tr_later("Climb to the hub and it fades evenly to nothing."),
        stands=tr_later("on the deck"),
    )

    shape: Literal["cylinder"] = shape_field("cylinder")
    width_m: float | None = number(tr_later("Width"), "m", 0.5, 100_000, None, shown=log(0.5, 1_000))
    ceiling_m: float | None = number(tr_later("Ceiling"), "m", 0, 100_000, None, above=True, shown=log(1, 100))
    hub_radius_m: float | None = hub_field()

    def habitat(self):
        """The Cylinder."""
        return Cylinder(*self.ship, self.width_m, self.ceiling_m, self.hub_radius_m)

    def clashes(self):
        """Ceiling and hub fit inside the radius."""
        yield from hub_clashes(self)
        radius, hub = self.radius_m, self.hub_radius_m or 0.0
        if self.ceiling_m is not None and hub < radius and self.ceiling_m + hub >= radius:
            length = f"{written(radius - hub, 'g')} m"
            may_be = tr("above 0, below {length}, so that ceiling and hub fit inside the radius", length=length)
            yield "ceiling_m", self.ceiling_m, may_be
