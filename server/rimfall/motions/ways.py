"""How far a moment is from another along the ground, where the thing then is: what people mean by a distance aboard.

Round ground: the nearest way about the axis at the thing's own radius, and the whole turns apart from it; along the axis straight,
but along the surface where the thing lies on one that bends that way. A thing on the ground is measured where it touches it. Flat
floors and a turntable: straight, along the directions of the place counted from. A coordinate (`along_m`) is no distance: it is
counted at the deck's radius (design, section 1).
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property

import numpy as np

from ..physics.constants import TURN_RAD
from ..shapes import Shape
from .apexes import AXIS_SHARE
from .plan import Plan

_TOUCH = 1e-6  # gap, metres and share of the radius, at which a thing lies on a surface


@dataclass(frozen=True)
class Way:
    """From one place to another. turns: whole turns, spinward above 0; spinward_m: what is left of it, the nearest way; axial_m: across
    that, as the third figure of a place; round_m: once round there, None where the ground does not go round."""

    turns: int
    spinward_m: float
    axial_m: float
    round_m: float | None = None

    @property
    def of_turn(self) -> float | None:
        """spinward_m as a part of once round, None where the ground does not go round."""
        if self.round_m is None:
            return None
        return self.spinward_m / self.round_m if self.round_m else 0.0

    @property
    def in_all_m(self) -> float:
        """All the way along the ground, whole turns included."""
        return self.spinward_m + (self.turns * self.round_m if self.turns else 0.0)

    def as_data(self) -> dict:
        """As it stands in an answer."""
        return {
            "turns": self.turns,
            "spinward_m": self.spinward_m,
            "axial_m": self.axial_m,
            "of_turn": self.of_turn,
        }


@dataclass(frozen=True)
class Ways:
    """The ways of one motion in a habitat."""

    habitat: Shape
    plan: Plan
    _known: dict = field(default_factory=dict, init=False, repr=False, compare=False)

    @cached_property
    def _chart(self):
        return self.habitat.chart(self.plan.floor)

    def of(self, moments: Sequence) -> list[Way]:
        """From the release to Moments."""
        return self.between(self.plan.place, moments)

    def to(self, moments: Sequence) -> list[Way]:
        """The same, of each Moment worked out once, as drift, words, prose and the answer all tell it."""
        new = [one for one in moments if id(one) not in self._known]
        for one, way in zip(new, self.of(new), strict=True):
            self._known[id(one)] = one, way
        return [self._known[id(one)][1] for one in moments]

    def between(self, place: Sequence, moments: Sequence) -> list[Way]:
        """From a place (along, height, axial) to Moments."""
        if not moments:
            return []
        along_m = np.array([m.along_m for m in moments]) - place[0]
        return self.at(place, along_m, np.array([m.rotating_m for m in moments]))

    def at(
        self, place: Sequence, along_m: np.ndarray, positions: np.ndarray, radius_m: float | None = None
    ) -> list[Way]:
        """From a place to positions (n, 3) in the turning frame that are along_m (n,) on from it, as places count it; radius_m: that of
        the body, if not the motion's own."""
        turns, near, axial, round_m = self.figures(place, along_m, positions, radius_m)
        if round_m is None:
            return [Way(0, float(x), float(z)) for x, z in zip(near, axial, strict=True)]
        columns = zip(turns, near, axial, round_m, strict=True)
        return [Way(int(n), float(x), float(z), float(once)) for n, x, z, once in columns]

    def figures(
        self, place: Sequence, along_m: np.ndarray, positions: np.ndarray, radius_m: float | None = None
    ) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray | None]:
        """The same as arrays (n,): whole turns, the nearest way, across that, and once round, None where the ground does not go round."""
        chart = self._chart
        if not chart.bends:
            straight = (positions - chart.position(place)) @ chart.axes_at(place).T
            return np.zeros(len(straight)), straight[:, 0], straight[:, 2], None
        body_m = self.plan.body.radius_m if radius_m is None else radius_m
        spot, axial = self._where_it_is(place, positions, body_m)
        turned = along_m / chart.radius_m
        turns = np.where(spot > AXIS_SHARE * chart.radius_m, np.rint(turned / TURN_RAD), 0.0)
        return turns, spot * (turned - TURN_RAD * turns), axial, TURN_RAD * spot

    def _where_it_is(self, place, positions, body_m):
        """Distance from the axis (n,) at which a thing is measured, and how far it is along the axis (n,) from a place."""
        rho, axial = np.hypot(positions[:, 0], positions[:, 1]), positions[:, 2] - place[2]
        free, least_m = np.ones(len(rho), dtype=bool), _TOUCH * (1.0 + self._chart.radius_m)
        for surface in self.habitat.surfaces(self.plan.floor):
            touches = None if surface.edge else free & (np.abs(surface.gap(positions.T, body_m)) <= least_m)
            if touches is None or not touches.any():
                continue
            free &= ~touches
            spot = positions[touches] - body_m * surface.normal(positions[touches].T).T
            rho[touches] = np.hypot(spot[:, 0], spot[:, 1])
            if self.habitat.section_radius_m is not None and surface == self.habitat.ground(self.plan.floor):
                axial[touches] = self._along_the_section(place, positions[touches], body_m)
        return rho, axial

    def _along_the_section(self, place, positions, body_m):
        """Across (n,) along the circle in which a plane through the axis cuts the ground, from where such a thing would lie under a place;
        straight on what of it hangs overhead."""
        section_m = self.habitat.section_radius_m
        out = np.hypot(positions[:, 0], positions[:, 1]) - (self.habitat.radius_m - section_m)
        under = np.arcsin(np.clip(place[2] / (section_m - body_m), -1.0, 1.0))
        arc = section_m * (np.arctan2(positions[:, 2], out) - under)
        return np.where(out >= 0, arc, positions[:, 2] - place[2])
