"""Flat floors that go round an axis: what pods on arms, cabins on a tether and a tumbling craft share."""

import math
from dataclasses import dataclass
from typing import ClassVar

import numpy as np

from ..fields import Strict, listed, log, number, text
from ..language import tr, tr_later, written
from ..physics.coordinates import FloorChart
from ..physics.surfaces import Plane
from . import drawn, mesh
from .base import FLOOR, Ground, Ship
from .part import ShipPart


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
    """Flat floors; a motion's room is the box over its own floor."""

    floors: tuple = ()
    words_of_ground = FLOOR
    floats_share = 0.5  # straight on over the middle the path does not bend with the ground: omega^2 r = 2 omega v

    def chart(self, floor=0):
        """What a place means on one of the floors."""
        return FloorChart(self.floors[floor].radius_m, self.floors[floor].azimuth_rad)

    def ground(self, floor=0):
        """The floor itself."""
        return Plane("floor", _direction(self.chart(floor), 1), -self.floors[floor].radius_m)

    def surfaces(self, floor=0):
        """Floor, ceiling, and the edges past which a motion ends."""
        own, chart = self.floors[floor], self.chart(floor)
        edges = []
        for axis, half in ((0, own.length_m / 2), (2, own.width_m / 2)):
            for side in (1.0, -1.0):
                edges.append(Plane("edge", _direction(chart, axis, side), -half, edge=True))
        return (self.ground(floor), self._top(own, chart), *edges)

    def _top(self, own, chart):
        """What bounds the room above: its ceiling, else a floor right across the axis, else an edge as high."""
        down = _direction(chart, 1, -1.0)
        if own.ceiling_m is not None:
            return Plane("ceiling", down, own.radius_m - own.ceiling_m)
        across = self._across(own)
        return (
            Plane("edge", down, -own.radius_m, edge=True) if across is None else Plane("floor", down, -across.radius_m)
        )

    def _across(self, own):
        """The floor right across the axis that roofs the whole of this one, or None."""
        for other in self.floors:
            turned = (other.azimuth_rad - own.azimuth_rad) % (2 * math.pi)
            if abs(turned - math.pi) < 1e-9 and other.length_m >= own.length_m and other.width_m >= own.width_m:
                return other
        return None

    def across_m(self, floor=0):
        """Radius of the circle that holds the room over a floor."""
        own = self.floors[floor]
        across = self._across(own)
        high = own.radius_m if own.ceiling_m is None and across is None else 0.0 if across is None else across.radius_m
        return math.hypot(max(own.radius_m, high, (own.ceiling_m or 0.0) - own.radius_m), own.length_m / 2)

    def ground_gravity_m_s2(self, omega_rad_s, axial_m=0.0, floor=0):
        """Apparent gravity in the middle of a floor."""
        return omega_rad_s**2 * self.floors[floor].radius_m

    def ground_radius_m(self, floor):
        """The floor's own."""
        return self.floors[floor].radius_m

    def headroom_m(self):
        """Over the first floor, to its ceiling or the axis."""
        first = self.floors[0]
        return first.radius_m if first.ceiling_m is None else first.ceiling_m

    def sides(self, floor, half_m):
        """Over the floor's width, to its ceiling or the axis."""
        own = self.floors[floor]
        top = own.radius_m if own.ceiling_m is None else own.ceiling_m - half_m
        return -own.width_m / 2, own.width_m / 2, lambda _axial: (half_m, top)

    def half_length_m(self, floor):
        """To its ends."""
        return self.floors[floor].length_m / 2

    def hull_half_width_m(self, floor):
        """To its sides."""
        return self.floors[floor].width_m / 2

    def walked_half_m(self):
        """To the edge of the first floor."""
        return self.hull_half_width_m(0)

    def corners(self, floor, height_m=0.0):
        """The four corners (4, 3) of a floor at a height, rotating frame, anticlockwise seen from above."""
        own = self.floors[floor]
        x, z = own.length_m / 2, own.width_m / 2
        return self.chart(floor).position(
            np.array([[-x, height_m, z], [x, height_m, z], [x, height_m, -z], [-x, height_m, -z]])
        )

    def outline_m(self):
        """A little below each floor, and its ceiling."""
        floors = enumerate(self.floors)
        return np.concatenate([self.corners(i, h) for i, f in floors for h in (-0.4, f.ceiling_m or 1.0)])

    def meshes(self):
        """Floors and ceilings."""
        out, marks = [], []
        for i, floor in enumerate(self.floors):
            out.append(mesh.quad(f"floor_{i:05d}", mesh.DECK, self.corners(i)))
            if floor.ceiling_m is not None:
                top = self.corners(i, floor.ceiling_m)[::-1]
                out.append(mesh.quad(f"ceiling_{i:05d}", mesh.CEILING, top))
            marks.append(mesh.mark_flat(f"spinward_{i:05d}", self.chart(i), floor.length_m, floor.width_m))
        return [*out, *marks]

    def parts(self):
        """Each floor with the tray under it, the edges of its room, lights along both sides, and what joins it to the others."""
        for i, floor in enumerate(self.floors):
            yield from self._floor_parts(i, floor)
        for side in drawn.SIDES:
            for i in range(len(self.floors)):
                yield from self.joints(i, side)
        radius = self.radius_m
        widest = max(floor.width_m for floor in self.floors)
        yield drawn.lantern(min(0.03 * radius, 0.4 + 0.006 * radius), min(widest, 0.4 * radius))

    def joints(self, _floor, _side):
        """Parts that join a floor to the axis, on one side of it."""
        return ()

    def at(self, floor, along_m, height_m, axial_m):
        """Where a place over a floor is, as a list."""
        return drawn.point(self.chart(floor).position((along_m, height_m, axial_m)))

    def _floor_parts(self, i, floor):
        half, side_m = floor.length_m / 2, floor.width_m / 2
        corners = [drawn.point(corner) for corner in self.corners(i)]
        yield drawn.sheet("deck", corners, [half, side_m], side_m)
        thick = min(0.5, 0.08 * min(half, side_m), 0.03 * self.radius_m + 0.02)
        tray = [floor.length_m, 0.98 * thick, floor.width_m]
        yield drawn.box("tray", self.at(i, 0.0, -0.51 * thick, 0.0), tray, floor.azimuth_rad)
        high = min(1.1, 0.16 * self.radius_m) if floor.ceiling_m is None else floor.ceiling_m
        count = max(2, min(24, _nearest(floor.length_m / 2.5)))
        places = [((n + 0.5) / count - 0.5) * floor.length_m for n in range(count)]
        for side in drawn.SIDES:
            axial = side * side_m
            edges = [[(-half, h, axial), (half, h, axial)] for h in (0.0, high)]
            edges += [[(along, 0.0, axial), (along, high, axial)] for along in (-half, half)]
            if floor.ceiling_m is not None:
                edges += [[(along, high, 0.0), (along, high, axial)] for along in (-half, half)]
            strokes = [[v for place in edge for v in self.at(i, *place)] for edge in edges]
            yield drawn.lines("edge", strokes, side=side, cut="near")
            row = [self.at(i, along, min(0.12, 0.1 * side_m), 0.97 * axial) for along in places]
            yield drawn.lights_at(row, min(0.26, 0.06 * side_m), side=side, cut="near")


def _nearest(value):
    """The whole number nearest to a value above 0, halves upward."""
    return math.floor(value + 0.5)


def _direction(chart, row, sign=1.0):
    """One of a floor's directions (spinward, up, axial) as a tuple, either way."""
    return tuple(float(v) for v in sign * chart.axes_at(None)[row])


class FloorPart(Strict):
    """A flat floor of a pod or a cabin. A radius or an azimuth left out is the habitat's radius, and its share of the turn."""

    name: str = text(tr_later("Floor"), 60, "")
    radius_m: float | None = number(tr_later("Floor radius"), "m", 0.1, 100_000, None)
    azimuth_deg: float | None = number(tr_later("Floor azimuth"), "°", -360, 360, None)
    length_m: float = number(tr_later("Floor length"), "m", 0.5, 100_000, 10.0, shown=log(1, 100))
    width_m: float = number(tr_later("Floor width"), "m", 0.5, 100_000, 6.0, shown=log(1, 100))
    ceiling_m: float | None = number(tr_later("Floor ceiling"), "m", 0, 100_000, None, above=True)


class FloorsPart(ShipPart):
    """Flat floors that go round the axis."""

    GROUND: ClassVar[Ground] = FLOOR
    HABITAT: ClassVar[type] = Craft

    floors: list[FloorPart] = listed(tr_later("Floors"), 12, least=1)

    @property
    def grounds(self):
        """One a floor."""
        return len(self.floors)

    @property
    def farthest_m(self):
        """That of the floor farthest out."""
        return max([self.radius_m, *(f.radius_m or 0.0 for f in self.floors)])

    def habitat(self):
        """Its Craft."""
        return self.HABITAT(*self.ship, tuple(self._floor(i) for i in range(len(self.floors))))

    def _floor(self, i):
        """Floor i: its own radius or the habitat's, its own azimuth or an even share of the turn; without a name people count
        from one."""
        floor = self.floors[i]
        azimuth_deg = 360.0 * i / len(self.floors) if floor.azimuth_deg is None else floor.azimuth_deg
        radius_m = self.radius_m if floor.radius_m is None else floor.radius_m
        name = floor.name or tr("Floor {number}", number=i + 1)
        return Floor(name, radius_m, math.radians(azimuth_deg), floor.length_m, floor.width_m, floor.ceiling_m)

    def clashes(self):
        """The first floor is where radius and azimuths are counted from; every ceiling is short of the axis."""
        first = self.floors[0]
        if first.radius_m not in (None, self.radius_m):
            yield (
                "floors.0.radius_m",
                first.radius_m,
                tr("null or the habitat's radius, {length}", length=f"{written(self.radius_m, 'g')} m"),
            )
        if first.azimuth_deg not in (None, 0.0):
            yield "floors.0.azimuth_deg", first.azimuth_deg, tr("null or 0: azimuths are counted from the first floor")
        for i, floor in enumerate(self.floors):
            radius = self.radius_m if floor.radius_m is None else floor.radius_m
            if floor.ceiling_m is not None and floor.ceiling_m >= radius:
                length = f"{written(radius, 'g')} m"
                may_be = tr("above 0, below the floor's radius, {length}, or null", length=length)
                yield f"floors.{i}.ceiling_m", floor.ceiling_m, may_be


def new_floors(*names):
    """Floors as the page makes them afresh, as data."""
    return {"floors": [{"name": name, "length_m": 10.0, "width_m": 6.0, "ceiling_m": 3.0} for name in names]}
