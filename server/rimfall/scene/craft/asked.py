"""A craft as its findings are worked out from it: its groups as rigid bodies, its spins in rad/s, its floor."""

import math
from dataclasses import dataclass

from ...shapes.part import spin_rad_s
from ...vessel.bodies import Body, about_spin_axis, joined
from ...vessel.solids import Solid, body_of, reach_m
from .called import as_group, as_part, as_still_part
from .document import GROUPS, Craft

_SIZES = ("axis", "radius_m", "length_m", "tube_radius_m", "size_m")
_LEAST_M = 1e-9  # a place nearer to an axis is on it, for the inverse of its inertia is no number


@dataclass(frozen=True)
class Asked:
    """craft: the document, every radius filled in. solids: of each part, by its name. bodies: of "turning", of "still" and "counter" where
    there are any, and of the "whole". spin_rad_s, counter_rad_s: how fast the groups turn, the second 0 where there is none.
    rim_m: how far the floor is from the axis. units: of the words, "si" or "us"."""

    craft: Craft
    solids: dict[str, Solid]
    bodies: dict[str, Body]
    spin_rad_s: float
    counter_rad_s: float
    rim_m: float
    units: str

    def inertia(self, group):
        """Inertia of a group about the spin axis, kg m^2; 0 where there is none."""
        return spin_inertia(self.bodies, group)

    def called(self, group, bent=""):
        """What people call a group: by its one part ("the ring", "the still keel"), or as a whole; bent: as in `called`."""
        names = [part.name for part in self.craft.parts if part.group == group]
        if len(names) == 1:
            return as_still_part(names[0], bent) if group == "still" else as_part(names[0], bent)
        return as_group("craft" if len(names) == len(self.craft.parts) else group, bent)

    @property
    def across(self):
        """What the joint turns against: "still", or "counter" where nothing is still, or None where all turns as one."""
        return next((group for group in ("still", "counter") if group in self.bodies), None)

    @property
    def momenta(self):
        """Angular momentum about the spin axis of each group that there is, and of the whole, kg m^2/s."""
        rates = {"turning": self.spin_rad_s, "still": 0.0, "counter": self.counter_rad_s}
        own = {group: self.inertia(group) * rates[group] for group in GROUPS if group in self.bodies}
        return own | {"whole": math.fsum(own.values())}


def asked_of(craft, units="si"):
    """The Asked of a Craft that stands (`checks.check`)."""
    solids = {part.name: solid_of(part) for part in craft.parts}
    bodies = bodies_of(craft.parts, solids)
    spin = spin_rad_s(craft.spin_rpm)
    return Asked(craft, solids, bodies, spin, _counter_rad_s(craft, bodies, spin), rim_of(craft, solids), units)


def solid_of(part):
    """The Solid of a part."""
    sizes = {name: getattr(part, name) for name in _SIZES if getattr(part, name, None) is not None}
    return Solid(part.solid, part.mass_kg, place_of(part), **sizes)


def place_of(thing):
    """Where a part, a load or a spot is (3,), m."""
    return tuple(x if abs(x) >= _LEAST_M else 0.0 for x in thing.place_m)


def bodies_of(parts, solids):
    """The Body of each group that has parts, and of the whole."""
    own = {part.name: body_of(solids[part.name]) for part in parts}
    groups = {group: [own[part.name] for part in parts if part.group == group] for group in GROUPS}
    return {group: joined(bodies) for group, bodies in groups.items() if bodies} | {"whole": joined(list(own.values()))}


def spin_inertia(bodies, group):
    """Inertia of a group about the axis that it turns about, kg m^2: the joint's, z; what turns as one has no joint, and turns about its
    centre of mass. 0 where there is no such group."""
    if group == "turning" and not {"still", "counter"} & set(bodies):
        return float(bodies["turning"].inertia_kg_m2[2, 2])
    return about_spin_axis(bodies.get(group))


def rim_of(craft, solids):
    """How far the floor is from the axis: the craft's own figure, or how far what turns reaches."""
    return reach_of(craft, solids) if craft.radius_m is None else craft.radius_m


def reach_of(craft, solids):
    """How far what turns reaches from the axis."""
    return max(reach_m(solids[part.name]) for part in craft.parts if part.group == "turning")


def _counter_rad_s(craft, bodies, spin):
    """How fast the counter group turns: as the document says, or, where it does not, as fast as leaves no momentum."""
    inertia = spin_inertia(bodies, "counter")
    if not inertia:
        return 0.0
    if craft.counter_rpm is not None:
        return spin_rad_s(craft.counter_rpm)
    return -spin_inertia(bodies, "turning") * spin / inertia
