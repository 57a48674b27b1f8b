"""Places on each kind of ground: (along, height, axial) to the rotating frame and back, and the directions there.

A place's meaning follows the shape (design, section 1): round ground measures `along` as an arc about the axis, flat floors
as a straight length, a turntable as an arc at its edge. Every chart gives the same: `position`, `axes`, `height`, `axial`, `level`,
`winds` (along goes round the axis), `bends` (and up turns with it), and `along` where it does not wind about the axis. Positions
are (..., 3) in the rotating frame, metres.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from . import frames
from .surfaces import Drum, Plane


@dataclass(frozen=True)
class RoundChart:
    """Ground round the axis: height is counted from radius_m toward the axis."""

    radius_m: float
    winds = True
    bends = True

    def position(self, place):
        """Places (..., 3) -> positions (..., 3)."""
        return frames.place_to_rotating(self.radius_m, place)

    def axes(self, position):
        """Rows spinward, up, axial (..., 3, 3) at positions (..., 3)."""
        return frames.local_axes(position)

    def axes_at(self, place):
        """The same at one place (3,), also on the axis, where only the place tells which way is up."""
        return frames.axes_at(np.asarray(place[0] / self.radius_m))

    def height(self, position):
        """Height (...) of positions (..., 3)."""
        return frames.height_of(self.radius_m, position)

    def axial(self, position):
        """The third figure (...) of the place of positions (..., 3)."""
        return position[..., 2]

    def level(self, height_m):
        """The surface of all places at a height."""
        return Drum("level", self.radius_m - height_m, hollow=True)

    def flat(self, _start, places):
        """Positions (n, 3) of places over flat ground (n, 3), rolled onto this ground: their arcs are those lengths."""
        return self.position(places)


@dataclass(frozen=True)
class FloorChart:
    """A flat floor at radius_m from the axis along its own normal, which points from azimuth_rad to the axis."""

    radius_m: float
    azimuth_rad: float
    winds = False
    bends = False

    @cached_property
    def _rows(self):
        rows = frames.axes_at(np.asarray(self.azimuth_rad))
        rows.flags.writeable = False
        return rows

    def position(self, place):
        """Places (..., 3) -> positions (..., 3)."""
        spinward, up, axial = self._rows
        place = np.asarray(place, dtype=float)
        along, height, across = place[..., :1], place[..., 1:2], place[..., 2:]
        return along * spinward - (self.radius_m - height) * up + across * axial

    def axes(self, position):
        """Rows spinward, up, axial (..., 3, 3): the same everywhere on the floor."""
        return np.broadcast_to(self._rows, (*position.shape[:-1], 3, 3))

    def axes_at(self, _place):
        """The same at a place."""
        return self._rows

    def along(self, position):
        """Length along the floor (...) of positions (..., 3)."""
        return position @ self._rows[0]

    def height(self, position):
        """Height (...) of positions (..., 3)."""
        return self.radius_m + position @ self._rows[1]

    def axial(self, position):
        """Length across the floor (...), along the axis of spin."""
        return position[..., 2]

    def level(self, height_m):
        """The surface of all places at a height."""
        return Plane("level", tuple(self._rows[1].tolist()), height_m - self.radius_m)

    def flat(self, _start, places):
        """Positions (n, 3) of places over flat ground (n, 3): this ground is flat."""
        return self.position(places)


@dataclass(frozen=True)
class BenchChart:
    """A turntable: height is along the axis of spin, axial the distance from it, along the arc at the edge, radius_m."""

    radius_m: float
    winds = True
    bends = False

    def position(self, place):
        """Places (..., 3) -> positions (..., 3)."""
        place = np.asarray(place, dtype=float)
        azimuth = place[..., 0] / self.radius_m
        return np.stack([place[..., 2] * np.cos(azimuth), place[..., 2] * np.sin(azimuth), place[..., 1]], axis=-1)

    def axes(self, position):
        """Rows spinward, up, outward (..., 3, 3) at positions (..., 3)."""
        return _bench_rows(frames.local_axes(position))

    def axes_at(self, place):
        """The same at one place (3,), also on the axis, where only the place tells which way is outward."""
        return _bench_rows(frames.axes_at(np.asarray(place[0] / self.radius_m)))

    def height(self, position):
        """Height (...) of positions (..., 3)."""
        return position[..., 2]

    def axial(self, position):
        """Distance from the axis (...)."""
        return np.hypot(position[..., 0], position[..., 1])

    def level(self, height_m):
        """The surface of all places at a height."""
        return Plane("level", (0.0, 0.0, 1.0), height_m)

    def flat(self, start, places):
        """Positions (n, 3) of places over flat ground (n, 3), laid on the table from the place `start` (3,) on."""
        return self.position(start) + (places - np.asarray(start)) @ self.axes_at(start)


def _bench_rows(rows):
    """(spinward, toward the axis, along it) -> (spinward, along it, from the axis)."""
    return np.stack([rows[..., 0, :], rows[..., 2, :], -rows[..., 1, :]], axis=-2)


@dataclass(frozen=True)
class FlatChart:
    """Ordinary flat ground, whose coordinates are (along, height, axial) themselves: a place is its own position."""

    winds = False
    bends = False

    def position(self, place):
        """Places (..., 3) -> positions (..., 3)."""
        return np.asarray(place, dtype=float)

    def axes_at(self, _place):
        """Rows spinward, up, axial (3, 3)."""
        return np.eye(3)
