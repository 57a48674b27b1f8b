"""A turntable in a room: it turns under the gravity of the room, in air that stands still."""

import math
from dataclasses import dataclass
from typing import ClassVar, Literal

import numpy as np

from ..fields import linear, number
from ..language import tr_later
from ..physics.constants import G0_M_S2
from ..physics.coordinates import BenchChart
from ..physics.surfaces import Drum, Plane
from . import drawn, mesh
from .base import TURNTABLE, Ground, Turning, Words, rings
from .part import TurningPart, shape_field

# how far the floor of the room is below a table; a large one lies low, for people ride on it
BENCH_M, STEP_M = 0.8, 0.3
LARGE_M = 2.0  # from this radius on they do
_LEAST_PULL_M_S2 = 1e-100
ROOM_RADII, ROOM_M = 7.0, 9.0  # of floor about it, in radii; at least so far


@dataclass(frozen=True)
class Turntable(Turning):
    """A turntable of radius_m at z = 0 that turns under the gravity of the room; the air of the room stands still."""

    outside_gravity_m_s2: float
    still_air = True
    words_of_ground = TURNTABLE
    floats_share = None
    in_space = False

    @property
    def pull_m_s2(self):
        """The room's gravity."""
        return 0.0, 0.0, -self.outside_gravity_m_s2

    def chart(self, _floor=0):
        """What a place means."""
        return BenchChart(self.radius_m)

    def surfaces(self, _floor=0):
        """The turntable, and its edge."""
        return self.ground(), Drum("edge", self.radius_m, hollow=True, edge=True)

    def ground(self, _floor=0):
        """The turntable."""
        return Plane("floor", (0.0, 0.0, 1.0), 0.0)

    def ground_gravity_m_s2(self, _omega_rad_s, _axial_m=0.0, _floor=0):
        """The room's gravity, however fast it turns."""
        return self.outside_gravity_m_s2

    def headroom_m(self):
        """Nothing is over it; a small one is nothing to stand on."""
        return math.inf

    def sides(self, _floor, half_m):
        """From the axis to the edge, on or over the turntable."""
        return 0.0, self.radius_m, lambda _axial: (half_m, math.inf)

    def hull_half_width_m(self, _floor):
        """It has no hull."""
        return 0.0

    def outline_m(self):
        """Its rim, from below the plate to above it."""
        return rings([(1.05 * self.radius_m, -0.25 * self.radius_m), (1.05 * self.radius_m, 0.15 * self.radius_m)])

    def meshes(self):
        """A thin plate."""
        radius, facets, thick = self.radius_m, mesh.around(self.radius_m, mesh.MOST_ROUND), self._thick_m
        top = mesh.swept("turntable", mesh.DECK, facets, np.array([[radius, 0.0], [0.0, 0.0]]))
        rim = mesh.swept("rim", mesh.WALL, facets, mesh.column(radius, thick / 2) - [0, thick / 2])
        return [top, rim, mesh.mark_table(radius)]

    @property
    def _thick_m(self):
        return min(0.05, 0.06 * self.radius_m)

    def walked_half_m(self):
        """To its rim."""
        return self.radius_m

    def parts(self):
        """The plate, strokes down its rim so that one sees it turn from the side, and the room: a stand, a floor, somebody by."""
        radius, thick = self.radius_m, self._thick_m
        yield drawn.disc("turntable", radius)
        under = -thick / 2 - 1e-4 * radius
        rim = (0.0, 0.0, under + thick / 2), (0.0, 0.0, under - thick / 2)
        yield drawn.tube("rim", *rim, [radius, radius], 96, closed=False)
        strokes = [drawn.around(1.002 * radius, k * math.pi / 2) for k in range(4)]
        yield drawn.lines("mark", [[*stroke, *stroke[:2], -thick] for stroke in strokes])
        yield from self._room(radius, thick)

    def _room(self, radius, thick):
        large = radius >= LARGE_M
        high, drop = (STEP_M, STEP_M) if large else (0.4 * radius, BENCH_M)
        below = -thick - high
        post = (0.0, 0.0, -thick), (0.0, 0.0, below)
        yield drawn.tube("stand", *post, [0.14 * radius, 0.2 * radius], 32, still=True)
        if not large:
            wide, leg = 2.6 * radius + 0.3, 1.25 * radius + 0.1
            yield drawn.box("stand", (0.0, 0.0, below - 0.02), [wide, wide, 0.04], still=True)
            for x in (-leg, leg):
                for y in (-leg, leg):
                    yield drawn.box("stand", (x, y, below - 0.04 - drop / 2), [0.06, 0.06, drop], still=True)
        floor = below if large else below - 0.04 - drop
        half = max(ROOM_RADII * radius, ROOM_M)
        corners = [[y, x, floor] for x, y in ((-half, half), (half, half), (half, -half), (-half, -half))]
        yield drawn.sheet("room", corners, [half, half], half, still=True)
        if not large:
            yield drawn.figure((-3 * radius - 1.6, -1.6 * radius - 0.9, floor), still=True)


class TurntablePart(TurningPart):
    """A turntable in a room, under the gravity of the room."""

    WORDS: ClassVar[Words] = Words(
        tr_later("Turntable"),
        tr_later("A turntable of {radius} radius"),
        whole=tr_later("Whole turntable"),
        weighed=tr_later("turntable"),
        fades="",
        stands=tr_later("at the rim of the turntable"),
        passes=tr_later("it falls past the rim"),
    )
    GROUND: ClassVar[Ground] = TURNTABLE

    shape: Literal["turntable"] = shape_field("turntable")
    outside_gravity_m_s2: float = number(tr_later("Gravity of the room"), "m/s²", 0, 100, G0_M_S2, shown=linear(0, 20))

    def habitat(self):
        """The Turntable; a room with next to no gravity has none, for a fall in it would take no number of seconds."""
        pull_m_s2 = self.outside_gravity_m_s2 if self.outside_gravity_m_s2 >= _LEAST_PULL_M_S2 else 0.0
        return Turntable(self.radius_m, self.spin, pull_m_s2)
