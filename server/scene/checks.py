"""What no field of a document shows alone: fields against one another, and places against the habitat's surfaces."""

import math

from ..errors import BadInput
from ..motions.throw import body_of
from ..physics.constants import RPM_RAD_S
from .refusals import wrong

GREATEST_RIM_SPEED_M_S = 5_000.0
LEAST_DIAMETER_IN_AIR_M = 1e-4


def check(scene):
    """Raise BadInput with every clash found in a Scene; return it otherwise."""
    clashes = [*_habitat(scene.habitat), *_names(scene.motions)]
    if not clashes:  # places are only told from a habitat that stands
        clashes = [c for i, m in enumerate(scene.motions) for c in _motion(scene, i, m)]
    if clashes:
        raise BadInput(*clashes[:20])
    return scene


def _habitat(habitat):
    radius = habitat.radius_m
    fastest = GREATEST_RIM_SPEED_M_S / radius / RPM_RAD_S
    spins = [("habitat.spin_rpm", habitat.spin_rpm)]
    spins += [(f"habitat.spin_ramp.{i}.spin_rpm", p.spin_rpm) for i, p in enumerate(habitat.spin_ramp)]
    for field, spin in spins:
        if spin > fastest:
            yield wrong(
                field, spin, f"0 to {fastest:.6g} rpm at a radius of {radius:g} m (rim speed at most 5,000 m/s)"
            )
    before = 0.0
    for i, point in enumerate(habitat.spin_ramp):
        if not point.time_s > before:
            yield wrong(
                f"habitat.spin_ramp.{i}.time_s", point.time_s, f"later than the point before it, above {before:g} s"
            )
        before = point.time_s
    hub = habitat.hub_radius_m or 0.0
    if hub >= radius:
        yield wrong("habitat.hub_radius_m", hub, f"0.01 to below the radius, {radius:g} m")
    if habitat.ceiling_m is not None and hub < radius and habitat.ceiling_m + hub >= radius:
        yield wrong(
            "habitat.ceiling_m",
            habitat.ceiling_m,
            f"above 0, below {radius - hub:g} m, so that ceiling and hub fit inside the radius",
        )


def _names(motions):
    seen = {}
    for i, motion in enumerate(motions):
        if motion.name in seen:
            yield wrong(
                f"motions.{i}.name",
                motion.name,
                f"a name that no other motion has (motions.{seen[motion.name]} has it)",
            )
        seen.setdefault(motion.name, i)


def _motion(scene, i, motion):
    if motion.kind == "pour":
        yield from _place(
            scene.habitat, i, motion, motion.lip_diameter_mm * 1e-3, "lip_diameter_mm", motion.lip_diameter_mm
        )
        return
    diameter = body_of(motion.body).diameter_m
    if scene.air is not None and diameter < LEAST_DIAMETER_IN_AIR_M:
        yield wrong(
            f"motions.{i}.body.diameter_m", diameter, "0.0001 to 10 m in air; 0 (a point) in vacuum only, with air null"
        )
    elif 0 < diameter < LEAST_DIAMETER_IN_AIR_M:
        yield wrong(f"motions.{i}.body.diameter_m", diameter, "0 (a point), or 0.0001 to 10 m")
    else:
        yield from _place(scene.habitat, i, motion, diameter, "body.diameter_m", diameter)


def _place(habitat, i, motion, diameter, size_field, size):
    """A body's centre is outside every surface by its own radius."""
    half = diameter / 2
    if not diameter < habitat.radius_m / 2:
        yield wrong(f"motions.{i}.{size_field}", size, f"below half the radius, {habitat.radius_m / 2:g} m")
        return
    top = habitat.radius_m
    if habitat.ceiling_m is not None:
        top = habitat.ceiling_m - half
    elif habitat.hub_radius_m is not None:
        top = habitat.radius_m - habitat.hub_radius_m - half
    side = math.inf if habitat.width_m is None else habitat.width_m / 2 - half
    if top < half or side < 0:
        yield wrong(f"motions.{i}.{size_field}", size, "small enough to fit between deck, ceiling, hub and walls")
        return
    if not half <= motion.place.height_m <= top:
        yield wrong(
            f"motions.{i}.place.height_m",
            motion.place.height_m,
            f"{half:.9g} to {top:.9g} m, outside every surface by half its diameter",
        )
    if not abs(motion.place.axial_m) <= side:
        yield wrong(
            f"motions.{i}.place.axial_m", motion.place.axial_m, f"-{side:.9g} to {side:.9g} m, between the walls"
        )
