"""The inside of a ball that turns about a diameter."""

import math
from dataclasses import dataclass
from typing import ClassVar, Literal

from ..language import tr_later
from ..physics.surfaces import Ball, Drum
from . import drawn, mesh
from .base import RoundHull, Ship, Words, rings
from .part import ShipPart, hub_clashes, hub_field, shape_field

WALKED = 0.57  # of the radius: what of its ground can be walked on
POLE_RAD = math.radians(86.0)  # where it ends as it is drawn


@dataclass(frozen=True)
class Sphere(Ship):
    """The inside of a ball of radius_m, with a column of hub_radius_m round the axis, or None."""

    hub_radius_m: float | None = None
    round_hull = RoundHull((1.0, 1.0, 1.0))

    @property
    def section_radius_m(self):
        """The ball's."""
        return self.radius_m

    @property
    def hub_m(self):
        """Radius of the column."""
        return self.hub_radius_m or 0.0

    def surfaces(self, _floor=0):
        """What a body inside can meet."""
        hub = () if self.hub_radius_m is None else (Drum("hub", self.hub_radius_m, hollow=False),)
        return (Ball("deck", self.radius_m), *hub)

    def ground(self, _floor=0):
        """What a ball rolls on."""
        return Ball("deck", self.radius_m)

    def ground_height_m(self, axial_m):
        """Height of the ball's inside at axial_m."""
        return self.radius_m - math.sqrt(max(self.radius_m**2 - axial_m**2, 0.0))

    def headroom_m(self):
        """Up to the hub."""
        return self.radius_m - self.hub_m

    def sides(self, _floor, half_m):
        """Inside the ball, clear of the hub."""
        inner, hub = self.radius_m - half_m, 0.0 if self.hub_radius_m is None else self.hub_radius_m + half_m
        side = math.sqrt(max(inner**2 - hub**2, 0.0)) if inner >= hub else -1.0
        return (
            -side,
            side,
            lambda axial: (self.radius_m - math.sqrt(max(inner**2 - axial**2, 0.0)), self.radius_m - hub),
        )

    def hull_half_width_m(self, _floor):
        """To the poles."""
        return self.radius_m

    def outline_m(self):
        """The equator and the poles."""
        return rings([(1.02 * self.radius_m, 0.0), (0.0, self.radius_m), (0.0, -self.radius_m)])

    def meshes(self):
        """The ball from hub to hub, and the hub."""
        radius, facets = self.radius_m, mesh.around(self.radius_m, mesh.SHELL_ROUND)
        end = math.acos(self.hub_m / radius)
        deck = mesh.arc(0.0, radius, end, mesh.around(radius, 2 * mesh.SHELL_ACROSS) // 2)
        out = [mesh.swept("deck", mesh.DECK, facets, deck, (0.0, 0.0))]
        if self.hub_m:
            out.append(mesh.swept("hub", mesh.HUB, facets, mesh.column(self.hub_m, radius * math.sin(end))))
        return [*out, mesh.mark_round(radius, facets, deck)]

    def walked_half_m(self):
        """As far toward the poles as one walks."""
        return WALKED * self.radius_m

    def parts(self):
        """The ball nearly to its poles, cut open on the side of the eye; meridians and two circles of latitude; the lamp."""
        radius = self.radius_m
        yield from drawn.shell_parts(radius, radius, POLE_RAD, self.walked_half_m())
        yield drawn.sections("hoop", 12, radius, radius, POLE_RAD)
        yield drawn.rings(
            "hoop", [[radius * (1 - math.cos(a)), radius * math.sin(a)] for a in (math.pi / 3, -math.pi / 3)]
        )
        yield drawn.lantern(drawn.lamp_radius_m(self), 2 * radius * math.sin(POLE_RAD))


class SpherePart(ShipPart):
    """A ball; the radius is that of its inside at the equator."""

    WORDS: ClassVar[Words] = Words(
        tr_later("Sphere"),
        tr_later("A sphere of {radius} radius"),
        whole=tr_later("Whole sphere"),
        weighed=tr_later("deck at the equator"),
        fades=tr_later("Toward the poles it fades, and the ground grows steep."),
        stands=tr_later("on the deck at its equator"),
    )

    shape: Literal["sphere"] = shape_field("sphere")
    hub_radius_m: float | None = hub_field()

    def habitat(self):
        """The Sphere."""
        return Sphere(*self.ship, self.hub_radius_m)

    def clashes(self):
        """The hub fits inside the ball."""
        return hub_clashes(self)
