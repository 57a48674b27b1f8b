"""What no field of a document shows alone: fields against one another, and places against the habitat's surfaces."""

import numpy as np

from ..errors import BadInput
from ..kinds.roll import plan as roll
from ..kinds.throw.plan import body_of
from ..physics.constants import RPM_RAD_S
from . import hang_checks, people_checks, pour_checks
from .people_checks import over_its_floor
from .validation_errors import wrong

GREATEST_RIM_SPEED_M_S = 5_000.0
LEAST_DIAMETER_IN_AIR_M = 1e-4
_TOUCH_M = 1e-9


def check(scene):
    """Raise BadInput with every clash found in a Scene; return it otherwise."""
    clashes = [
        *_habitat(scene.habitat, "habitat"),
        *_names(scene.motions, "motions"),
        *_names(scene.compare, "compare"),
    ]
    for i, other in enumerate(scene.compare):
        clashes += _habitat(other.habitat, f"compare.{i}.habitat")
    if not clashes:  # places are only told from a habitat that stands
        clashes = _motions(scene, scene.habitat, "")
        for i, other in enumerate(scene.compare):
            clashes += _motions(scene, other.habitat, f"compare.{i}.")
    if clashes:
        raise BadInput(*clashes[:20])
    return scene


def _habitat(part, at):
    yield from _spins(part, at)
    yield from (wrong(f"{at}.{field}", was, may_be) for field, was, may_be in part.clashes())


def _spins(part, at):
    radius = part.farthest_m
    fastest = GREATEST_RIM_SPEED_M_S / radius / RPM_RAD_S
    spins = [(f"{at}.spin_rpm", part.spin_rpm)]
    spins += [(f"{at}.spin_ramp.{i}.spin_rpm", p.spin_rpm) for i, p in enumerate(part.spin_ramp)]
    for field, spin in spins:
        if spin > fastest:
            may_be = f"0 to {fastest:.6g} rpm at a radius of {radius:g} m (rim speed at most 5,000 m/s)"
            yield wrong(field, spin, may_be)
    before = 0.0
    for i, point in enumerate(part.spin_ramp):
        if not point.time_s > before:
            yield wrong(
                f"{at}.spin_ramp.{i}.time_s", point.time_s, f"later than the point before it, above {before:g} s"
            )
        before = point.time_s


def _names(named, at):
    seen = {}
    for i, one in enumerate(named):
        if one.name in seen:
            yield wrong(f"{at}.{i}.name", one.name, f"a name that no other has ({at}.{seen[one.name]} has it)")
        seen.setdefault(one.name, i)


def _motions(scene, part, prefix):
    habitat = part.habitat()
    return [c for i, m in enumerate(scene.motions) for c in _motion(scene, part, habitat, m, f"{prefix}motions.{i}")]


def _motion(scene, part, habitat, motion, at):
    floors = part.grounds
    if motion.place.floor >= floors:
        may_be = f"0 to {floors - 1}, one of the {floors} floors" if floors > 1 else "0: there is one ground"
        yield wrong(f"{at}.place.floor", motion.place.floor, may_be)
        return
    yield from KINDS.get(motion.kind, _of_body)(scene, part, habitat, motion, at)


def _of_pour(_scene, part, habitat, motion, at):
    width = motion.lip_diameter_mm
    yield from _place(part, habitat, motion, width * 1e-3, f"{at}.lip_diameter_mm", width, at)
    yield from pour_checks.of_pour(habitat, motion, at)


def _of_body(scene, part, habitat, motion, at):
    """A motion of a stated body: the body may be in this air, and its place is outside every surface."""
    if getattr(motion, "ball_spin_rpm", 0.0) and getattr(motion, "ball_spin_axis", True) is None:
        yield wrong(
            f"{at}.ball_spin_axis", None, "three figures [spinward, up, axial], not all 0, where ball_spin_rpm is not 0"
        )
    diameter = body_of(motion.body).diameter_m
    field = f"{at}.body.diameter_m"
    small = list(_too_small(scene, diameter, field))
    if small:
        yield from small
    elif motion.kind == "roll":
        yield from _laid(part, habitat, motion, diameter, field, at)
    else:
        yield from _place(part, habitat, motion, diameter, field, diameter, at)


def _too_small(scene, diameter, field):
    """A body of no size, or of next to none, where the air would have to hold it."""
    if scene.air is not None and diameter < LEAST_DIAMETER_IN_AIR_M:
        yield wrong(field, diameter, "0.0001 to 10 m in air; 0 (a point) in vacuum only, with air null")
    elif 0 < diameter < LEAST_DIAMETER_IN_AIR_M:
        yield wrong(field, diameter, "0 (a point), or 0.0001 to 10 m")


def _of_hang(scene, part, habitat, motion, at):
    """A thing that hangs: its pivot is in the room, and what hangs there begins outside every surface."""
    field = f"{at}.body.diameter_m"
    diameter = body_of(motion.body).diameter_m
    clashes = [*_too_small(scene, diameter, field), *_place(part, habitat, motion, 0.0, field, diameter, at)]
    yield from clashes or hang_checks.of_bob(scene, habitat, motion, at)


def _place(part, habitat, motion, diameter, size_field, size, at):
    """A body's centre is outside every surface by its own radius, and over its floor."""
    half, place = diameter / 2, motion.place
    if not diameter < part.radius_m / 2:
        yield wrong(size_field, size, f"below half the radius, {part.radius_m / 2:g} m")
        return
    yield from over_its_floor(habitat, place, at)
    least, side, span = habitat.sides(place.floor, half)
    low, high = span(min(abs(place.axial_m), side)) if side >= 0 else (1.0, 0.0)
    if high < low:
        yield wrong(size_field, size, "small enough to fit between deck, ceiling, hub and walls")
        return
    if not least <= place.axial_m <= side:
        what = "from the axis to the edge" if habitat.words_of_ground.level else "inside the walls"
        yield wrong(f"{at}.place.axial_m", place.axial_m, f"{least:.9g} to {side:.9g} m, {what}")
    elif not low - _TOUCH_M * (low > half) <= place.height_m <= high:
        # Where the ground curves up, its height has no exact figure: a place that is on it to the last digit is on it.
        may_be = f"{low:.9g} to {high:.9g} m, outside every surface by half its diameter"
        yield wrong(f"{at}.place.height_m", place.height_m, may_be)


def _laid(part, habitat, motion, diameter, size_field, at):
    """A ball that rolls lies on its ground: its height follows, and it fits there."""
    place, half = motion.place, diameter / 2
    if not diameter < part.radius_m / 2:
        yield wrong(size_field, diameter, f"below half the radius, {part.radius_m / 2:g} m")
        return
    yield from over_its_floor(habitat, place, at)
    least, side, _ = habitat.sides(place.floor, half)
    if not least <= place.axial_m <= side:
        yield wrong(f"{at}.place.axial_m", place.axial_m, f"{least:.9g} to {side:.9g} m, on the ground")
        return
    seat = roll.seat(habitat, motion, half)
    height = float(habitat.chart(place.floor).height(seat.position_m[None])[0])
    if place.height_m and abs(place.height_m - height) > 1e-6:
        yield wrong(
            f"{at}.place.height_m", place.height_m, f"0, or {height:.9g} m: a ball that rolls lies on its surface"
        )
    for surface in habitat.surfaces(place.floor):
        if float(surface.gap(seat.position_m[:, None], np.array([half]))[0]) < -_TOUCH_M:
            name = surface.name_at(seat.position_m)
            field = size_field if motion.ramp is None else f"{at}.ramp.length_m"
            was = diameter if motion.ramp is None else motion.ramp.length_m
            yield wrong(field, was, f"small enough that the ball does not start inside the {name}")
            return


KINDS = {
    "pour": _of_pour,
    "hang": _of_hang,
    "jump": people_checks.of_jump,
    "walk": people_checks.of_walk,
    "lift": people_checks.of_lift,
    "let_go": people_checks.of_let_go,
    "approach": people_checks.of_approach,
}  # kind -> its own check; the others are of a body at a place
