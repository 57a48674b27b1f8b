"""Habitats of other shapes than the drum: torus, sphere, flat floors that go round, and a turntable on a bench.

Each gives what `habitat.Habitat` gives: `surfaces`, `chart`, `ground`, `ground_height_m`, `ground_gravity_m_s2`, `across_m`,
`pull_m_s2`, `still_air`. Which surface a place is measured from, and what ends a motion, is in the design, section 1.
"""

import math
from dataclasses import dataclass

import numpy as np

from .coordinates import BenchChart, FloorChart, RoundChart
from .spin import Spin
from .surfaces import Ball, Drum, Plane, Tube


@dataclass(frozen=True)
class Ship:
    """A habitat in space. radius_m; how it turns; axial_thrust_m_s2: its own acceleration along +z."""

    radius_m: float
    spin: Spin
    axial_thrust_m_s2: float = 0.0
    still_air = False

    @property
    def pull_m_s2(self):
        """What pulls at everything aboard, in the turning frame: the thrust, felt backward."""
        return 0.0, 0.0, -self.axial_thrust_m_s2

    def across_m(self, _floor=0):
        """Radius of the circle that holds the room."""
        return self.radius_m

    def chart(self, _floor=0):
        """What a place means."""
        return RoundChart(self.radius_m)

    def ground_gravity_m_s2(self, omega_rad_s, axial_m=0.0, _floor=0):
        """Apparent gravity on the ground at axial_m, away from the axis."""
        return omega_rad_s**2 * (self.radius_m - self.ground_height_m(axial_m))


@dataclass(frozen=True)
class Torus(Ship):
    """A tube of tube_radius_m bent into a ring; radius_m reaches its outermost inside line."""

    tube_radius_m: float = 1.0

    def surfaces(self, _floor=0):
        """What a body inside can meet."""
        return (Tube(self.radius_m, self.tube_radius_m),)

    def ground(self, _floor=0):
        """What a ball rolls on."""
        return Tube(self.radius_m, self.tube_radius_m)

    def ground_height_m(self, axial_m):
        """Height of the tube's outer half at axial_m."""
        return self.tube_radius_m - math.sqrt(max(self.tube_radius_m**2 - axial_m**2, 0.0))


@dataclass(frozen=True)
class Sphere(Ship):
    """The inside of a ball of radius_m, with a column of hub_radius_m round the axis, or None."""

    hub_radius_m: float | None = None

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


@dataclass(frozen=True)
class Floor:
    """A flat floor: radius_m from the axis along its normal, at azimuth_rad; its rectangle; a ceiling, or None."""

    name: str
    radius_m: float
    azimuth_rad: float
    length_m: float
    width_m: float
    ceiling_m: float | None


@dataclass(frozen=True)
class Craft(Ship):
    """Flat floors (pods on arms, cabins on a tether, a tumbling craft); a motion's room is the box over its own floor."""

    floors: tuple = ()

    def chart(self, floor=0):
        """What a place means on one of the floors."""
        return FloorChart(self.floors[floor].radius_m, self.floors[floor].azimuth_rad)

    def ground(self, floor=0):
        """The floor itself."""
        here = self.floors[floor]
        return Plane("floor", _direction(self.chart(floor), 1), -here.radius_m)

    def surfaces(self, floor=0):
        """Floor, ceiling, and the edges past which a motion ends."""
        here, chart = self.floors[floor], self.chart(floor)
        edges = []
        for axis, half in ((0, here.length_m / 2), (2, here.width_m / 2)):
            for side in (1.0, -1.0):
                edges.append(Plane("edge", _direction(chart, axis, side), -half, edge=True))
        return (self.ground(floor), self._top(here, chart), *edges)

    def _top(self, here, chart):
        """What bounds the room above: its ceiling, else a floor right across the axis, else an edge as high."""
        down = _direction(chart, 1, -1.0)
        if here.ceiling_m is not None:
            return Plane("ceiling", down, here.radius_m - here.ceiling_m)
        across = self._across(here)
        return (
            Plane("edge", down, -here.radius_m, edge=True) if across is None else Plane("floor", down, -across.radius_m)
        )

    def _across(self, here):
        """The floor right across the axis that roofs the whole of this one, or None."""
        for other in self.floors:
            turned = (other.azimuth_rad - here.azimuth_rad) % (2 * math.pi)
            if abs(turned - math.pi) < 1e-9 and other.length_m >= here.length_m and other.width_m >= here.width_m:
                return other
        return None

    def across_m(self, floor=0):
        """Radius of the circle that holds the room over a floor."""
        here = self.floors[floor]
        across = self._across(here)
        high = (
            here.radius_m if here.ceiling_m is None and across is None else 0.0 if across is None else across.radius_m
        )
        return math.hypot(max(here.radius_m, high, (here.ceiling_m or 0.0) - here.radius_m), here.length_m / 2)

    def ground_height_m(self, _axial_m):
        """A floor is flat."""
        return 0.0

    def ground_gravity_m_s2(self, omega_rad_s, axial_m=0.0, floor=0):
        """Apparent gravity in the middle of a floor."""
        return omega_rad_s**2 * self.floors[floor].radius_m

    def corners(self, floor, height_m=0.0):
        """The four corners (4, 3) of a floor at a height, rotating frame, anticlockwise seen from above."""
        here = self.floors[floor]
        x, z = here.length_m / 2, here.width_m / 2
        return self.chart(floor).position(
            np.array([[-x, height_m, z], [x, height_m, z], [x, height_m, -z], [-x, height_m, -z]])
        )


def _direction(chart, row, sign=1.0):
    """One of a floor's directions (spinward, up, axial) as a tuple, either way."""
    return tuple(float(v) for v in sign * chart.axes_at(None)[row])


@dataclass(frozen=True)
class Turntable:
    """A platform of radius_m at z = 0 that turns under the gravity of the room; the air of the room stands still."""

    radius_m: float
    spin: Spin
    outside_gravity_m_s2: float
    still_air = True

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


@dataclass(frozen=True)
class Ramp:
    """A flat ramp on a ground: corners (4, 3), foot left, foot right, top right, top left; the slope itself; the edges past
    which a ball leaves it (not the foot: there the ground is)."""

    corners_m: np.ndarray
    slope: Plane
    edges: tuple


def ramp(chart, place, slope_rad, heading_rad, length_m, width_m):
    """The Ramp whose middle is over the place (along, ground height, axial), with its foot at that height; it rises toward
    the heading (0 spinward, a quarter turn axial) by slope_rad."""
    spinward, up, axial = chart.axes_at(np.asarray(place, dtype=float))
    level = math.cos(heading_rad) * spinward + math.sin(heading_rad) * axial
    rise = math.cos(slope_rad) * level + math.sin(slope_rad) * up
    normal = math.cos(slope_rad) * up - math.sin(slope_rad) * level
    left = np.cross(normal, rise)
    middle = chart.position(place) + 0.5 * length_m * math.sin(slope_rad) * up
    corners = np.array(
        [middle + a * length_m / 2 * rise + b * width_m / 2 * left for a, b in ((-1, 1), (-1, -1), (1, -1), (1, 1))]
    )
    slope = _through("ramp", normal, middle)
    ways = [(-rise, length_m / 2), (left, width_m / 2), (-left, width_m / 2)]
    edges = tuple(_through("edge", way, middle - half * way, edge=True) for way, half in ways)
    return Ramp(corners, slope, edges)


def _through(name, normal, point, edge=False):
    return Plane(name, tuple(float(v) for v in normal), float(normal @ point), edge=edge)
