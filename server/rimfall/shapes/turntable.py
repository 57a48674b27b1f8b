"""A platform on a bench: it turns under the gravity of the room, in air that stands still."""

import math
from dataclasses import dataclass
from typing import ClassVar, Literal

import numpy as np

from ..fields import number
from ..physics.constants import G0_M_S2
from ..physics.coordinates import BenchChart
from ..physics.spin import Spin
from ..physics.surfaces import Drum, Plane
from . import mesh
from .base import PLATFORM, Ground, TurningPart, Words, rings, shape_field


@dataclass(frozen=True)
class Turntable:
    """A platform of radius_m at z = 0 that turns under the gravity of the room; the air of the room stands still."""

    radius_m: float
    spin: Spin
    outside_gravity_m_s2: float
    still_air = True
    floors = ()
    words_of_ground = PLATFORM
    section_radius_m = None
    floats_share = None
    in_space = False
    hub_m = 0.0
    round_hull = None

    @property
    def pull_m_s2(self):
        """The room's gravity."""
        return 0.0, 0.0, -self.outside_gravity_m_s2

    def across_m(self, _floor=0):
        """Radius of the platform."""
        return self.radius_m

    def chart(self, _floor=0):
        """What a place means."""
        return BenchChart(self.radius_m)

    def surfaces(self, _floor=0):
        """The platform, and its edge."""
        return self.ground(), Drum("edge", self.radius_m, hollow=True, edge=True)

    def ground(self, _floor=0):
        """The platform."""
        return Plane("floor", (0.0, 0.0, 1.0), 0.0)

    def ground_height_m(self, _axial_m):
        """The platform is flat."""
        return 0.0

    def ground_gravity_m_s2(self, _omega_rad_s, _axial_m=0.0, _floor=0):
        """The room's gravity, however fast it turns."""
        return self.outside_gravity_m_s2

    def ground_radius_m(self, _floor):
        """To its rim."""
        return self.radius_m

    def headroom_m(self):
        """Nothing is over it."""
        return math.inf

    def sides(self, _floor, half_m):
        """From the axis to the edge, on or over the platform."""
        return 0.0, self.radius_m, lambda _axial: (half_m, math.inf)

    def half_length_m(self, _floor):
        """It goes round."""
        return math.inf

    def hull_half_width_m(self, _floor):
        """It has no hull."""
        return 0.0

    def outline_m(self):
        """Its rim, from below the plate to above it."""
        return rings([(1.05 * self.radius_m, -0.25 * self.radius_m), (1.05 * self.radius_m, 0.15 * self.radius_m)])

    def meshes(self):
        """A thin plate."""
        radius, facets = self.radius_m, mesh.around(self.radius_m, mesh.MOST_ROUND)
        thick = min(0.05, 0.06 * radius)
        top = mesh.swept("platform", mesh.DECK, facets, np.array([[radius, 0.0], [0.0, 0.0]]))
        rim = mesh.swept("rim", mesh.WALL, facets, mesh.column(radius, thick / 2) - [0, thick / 2])
        return [top, rim, mesh.mark_table(radius)]


class TurntablePart(TurningPart):
    """A platform on a bench, under the gravity of the room."""

    WORDS: ClassVar[Words] = Words(
        "Turntable",
        "A turntable of {radius} radius",
        whole="Whole platform",
        weighed="platform",
        fades="",
        stands="at the rim of the platform",
        passes="it falls past the rim",
    )
    GROUND: ClassVar[Ground] = PLATFORM

    shape: Literal["turntable"] = shape_field("turntable")
    outside_gravity_m_s2: float = number(
        "Gravity of the room", "m/s²", 0, 100, G0_M_S2, shown={"min": 0, "max": 20, "scale": "linear"}
    )

    def habitat(self):
        """The Turntable."""
        return Turntable(self.radius_m, self.spin, self.outside_gravity_m_s2)
