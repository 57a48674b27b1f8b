"""What no field of a person's or a craft's motion shows alone: places, ways and heights against the habitat."""

from fractions import Fraction

from ..kinds.approach.plan import dock_place
from ..kinds.people import person
from ..kinds.walk.plan import stop
from ..motions.course import course
from ..motions.setting import Setting
from ..physics.constants import TURN_RAD
from .validation_errors import wrong

_TOUCH_M = 1e-9
_MOST_TURNS = 1_000.0  # round the axis in one walk: seconds of work


def of_jump(_scene, _part, habitat, motion, at):
    """The feet are on or over the ground, the head under what is above."""
    yield from _stands(habitat, motion, at)


def of_walk(scene, part, habitat, motion, at):
    """As for a jump; the ground is level that way; it does not begin into the ground, nor go round too often."""
    clashes = [*_level(part, habitat, motion, at)] or [*_stands(habitat, motion, at)]
    if motion.climb_deg < 0 and motion.place.height_m == 0:
        clashes.append(
            wrong(f"{at}.climb_deg", motion.climb_deg, "0 to 90 degrees: the feet are on the ground already")
        )
    yield from clashes or _rounds(_clock(scene, habitat), motion, at)


def _clock(scene, habitat):
    return Setting(habitat, None, Fraction(1), scene.sampling.duration_s)


def _rounds(setting, motion, at):
    """Refusal of a walk that goes round the axis too often to be worked out."""
    way = course(setting.habitat, motion)
    lasts_s = min(motion.for_s, max(setting.limit_s(motion.start_s) - motion.start_s, 0.0))
    lasts_s = stop(setting, way, person(motion), motion.place.floor, lasts_s).after_s
    turns = abs(way.turned_rad(lasts_s)) / TURN_RAD
    if turns > _MOST_TURNS:
        may_be = f"0.05 to {lasts_s * _MOST_TURNS / turns:.3g} s at that speed: about a thousand times round"
        yield wrong(f"{at}.for_s", motion.for_s, may_be)


def _stands(habitat, motion, at):
    """A person stands in the room: feet on or over the ground, head (two centres up) and sides clear of everything."""
    place, half = motion.place, motion.centre_m
    if not half < habitat.radius_m / 4:
        yield wrong(f"{at}.centre_m", half, f"below a quarter of the radius, {habitat.radius_m / 4:g} m")
        return
    yield from over_its_floor(habitat, place, at)
    least, side, span = habitat.sides(place.floor, half)
    low, high = span(min(abs(place.axial_m), side)) if side >= 0 else (1.0, 0.0)
    low, high = low - half, high - half
    if high < low - _TOUCH_M:
        yield wrong(f"{at}.centre_m", half, "small enough that a person of twice that height fits into the room")
        return
    if not least <= place.axial_m <= side:
        yield wrong(f"{at}.place.axial_m", place.axial_m, f"{least:.9g} to {side:.9g} m, clear of what is beside")
    elif not low - _TOUCH_M <= place.height_m <= high:
        may_be = f"{max(low, 0.0):.9g} to {high:.9g} m: feet on or over the ground, head below what is above"
        yield wrong(f"{at}.place.height_m", place.height_m, may_be)


def over_its_floor(habitat, place, at):
    """Refusal of a place beyond the ends of its flat floor."""
    half = habitat.half_length_m(place.floor)
    if abs(place.along_m) > half:
        yield wrong(f"{at}.place.along_m", place.along_m, f"-{half:g} to {half:g} m, over its floor")


def _level(part, habitat, motion, at):
    """Where the ground bends across, it is level only along the line farthest from the axis."""
    if habitat.section_radius_m is None:
        return
    if motion.place.axial_m:
        yield wrong(f"{at}.place.axial_m", motion.place.axial_m, f"0 m: in a {part.shape} the ground slopes beside it")
    if motion.heading_deg % 180.0:
        may_be = f"0 or 180 degrees: in a {part.shape} the ground slopes every other way"
        yield wrong(f"{at}.heading_deg", motion.heading_deg, may_be)


def of_lift(_scene, part, habitat, motion, at):
    """A shaft goes from the ground to the hub, or to the axis; it may pass a ceiling."""
    if not habitat.in_space:
        yield wrong(f"{at}.kind", motion.kind, f"another kind of motion on a {part.shape}: no spoke leads to its axis")
        return
    place, half = motion.place, motion.centre_m
    low, top = _shaft(habitat, place, half)
    side = habitat.hull_half_width_m(place.floor)
    if abs(place.axial_m) > side:
        yield wrong(f"{at}.place.axial_m", place.axial_m, f"{-side:.9g} to {side:.9g} m, inside the hull")
        return
    yield from over_its_floor(habitat, place, at)
    if top < low:
        yield wrong(f"{at}.centre_m", half, "small enough that a person of twice that height fits below hub and axis")
        return
    may_be = f"{low:.9g} to {top:.9g} m: from the ground to a head's height below the hub or the axis"
    if not low <= place.height_m <= top:
        yield wrong(f"{at}.place.height_m", place.height_m, may_be)
    if not low <= motion.to_height_m <= top:
        yield wrong(f"{at}.to_height_m", motion.to_height_m, may_be)
    elif motion.to_height_m == place.height_m:
        yield wrong(f"{at}.to_height_m", motion.to_height_m, "another height than that where it starts")


def _shaft(habitat, place, half):
    """Least and greatest height of a cabin's floor."""
    reach = min(abs(place.axial_m), habitat.radius_m)
    return habitat.ground_height_m(reach), habitat.ground_radius_m(place.floor) - habitat.hub_m - 2 * half


def of_let_go(_scene, part, habitat, motion, at):
    """One hangs outside, under the hull; a push toward a hull is followed where that is round all the way."""
    yield from _outside(part, habitat, motion, at, "nothing hangs under its rim")
    if habitat.in_space and habitat.round_hull is None and motion.elevation_deg > 0:
        yield wrong(
            f"{at}.elevation_deg", motion.elevation_deg, f"-90 to 0 degrees: the hull of {part.shape} is not followed"
        )


def _outside(part, habitat, motion, at, why):
    if not habitat.in_space:
        yield wrong(f"{at}.kind", motion.kind, f"another kind of motion on a {part.shape}: {why}")
        return
    side = habitat.hull_half_width_m(motion.place.floor)
    if abs(motion.place.axial_m) > side:
        yield wrong(f"{at}.place.axial_m", motion.place.axial_m, f"{-side:.9g} to {side:.9g} m, under the hull")
    yield from over_its_floor(habitat, motion.place, at)


def of_approach(scene, part, habitat, motion, at):
    """A craft moves, comes from outside, and arrives before its time limit."""
    if not habitat.in_space or motion.dock == "rim":
        yield from _outside(part, habitat, motion, at, "no craft comes to it")
    if not habitat.in_space:
        return
    yield from _docks(habitat, motion, at)
    setting = Setting(habitat, None, Fraction(1), None)
    longest_s = setting.limit_s(motion.start_s) - motion.start_s
    if not motion.speed_m_s:
        yield wrong(f"{at}.speed_m_s", motion.speed_m_s, "above 0, to 3,000 m/s")
    elif motion.from_m > motion.speed_m_s * longest_s:
        may_be = f"1 to {motion.speed_m_s * longest_s:.9g} m: within its time limit of {longest_s:.3g} s at that speed"
        yield wrong(f"{at}.from_m", motion.from_m, may_be)


def _docks(habitat, motion, at):
    height, place = motion.place.height_m, motion.place
    if motion.dock == "rim":
        if height > 0:
            yield wrong(f"{at}.place.height_m", height, "-100,000 to 0 m: a rim's dock is on the hull or outside it")
        if motion.elevation_deg > 0:
            yield wrong(
                f"{at}.elevation_deg", motion.elevation_deg, "-90 to 0 degrees: to the rim a craft comes from outside"
            )
        return
    axis = dock_place(habitat, motion.model_copy(update={"place": place.model_copy(update={"height_m": 0.0})}))[1]
    if not 0 <= height <= axis:
        yield wrong(f"{at}.place.height_m", height, f"0, or up to {axis:.9g} m, the axis: 0 is taken for the axis")
