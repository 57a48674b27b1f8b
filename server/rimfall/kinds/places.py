"""Where a motion may begin in a habitat, and the place of a position. A refusal is (field of the motion, what it was, what it may be)."""

import numpy as np

from ..language import tr, written
from ..physics import frames
from .motion import body_of

LEAST_DIAMETER_IN_AIR_M = 1e-4
TOUCH_M = 1e-9  # a place that is on its ground to the last digit is on it


def between(least, most):
    """The places {least} and {most} of a refusal."""
    return {"least": written(least, ".9g"), "most": written(most, ".9g")}


def over_its_floor(habitat, place):
    """Refusal of a place beyond the ends of its flat floor."""
    half = habitat.half_length_m(place.floor)
    if abs(place.along_m) > half:
        yield "place.along_m", place.along_m, tr("-{half} to {half} m, over its floor", half=written(half, "g"))


def of_a_size(setting, diameter):
    """Refusal of a body of no size, or of next to none, where the air would have to hold it."""
    if setting.air is not None and diameter < LEAST_DIAMETER_IN_AIR_M:
        yield "body.diameter_m", diameter, tr("0.0001 to 10 m in air; 0 (a point) in vacuum only, with air null")
    elif 0 < diameter < LEAST_DIAMETER_IN_AIR_M:
        yield "body.diameter_m", diameter, tr("0 (a point), or 0.0001 to 10 m")


def body_clear(motion, setting):
    """Refusals of a motion's body where it may not be in this air, or its place is not outside every surface."""
    diameter = body_of(motion.body).diameter_m
    small = list(of_a_size(setting, diameter))
    yield from small or clear_of_surfaces(setting.habitat, motion.place, diameter, "body.diameter_m", diameter)


def below_half_the_radius(habitat):
    """What the width of a body may be in a habitat."""
    return tr("below half the radius, {length} m", length=written(habitat.radius_m / 2, "g"))


def clear_of_surfaces(habitat, place, diameter_m, size_field, size):
    """A body's centre is outside every surface by its own radius, and over its floor; size: what the field of its size says, None of a
    place that no body is at."""
    half = diameter_m / 2
    if not diameter_m < habitat.radius_m / 2:
        yield size_field, size, below_half_the_radius(habitat)
        return
    yield from over_its_floor(habitat, place)
    least, side, span = habitat.sides(place.floor, half)
    low, high = span(min(abs(place.axial_m), side)) if side >= 0 else (1.0, 0.0)
    if high < low:
        yield size_field, size, tr("small enough to fit between deck, ceiling, hub and walls")
        return
    if not least <= place.axial_m <= side:
        if habitat.words_of_ground.level:
            may_be = tr("{least} to {most} m, from the axis to the edge", **between(least, side))
        else:
            may_be = tr("{least} to {most} m, inside the walls", **between(least, side))
        yield "place.axial_m", place.axial_m, may_be
    elif not low - TOUCH_M * (low > half) <= place.height_m <= high:
        # Where the ground curves up, its height has no exact figure: a place that is on it to the last digit is on it.
        may_be = tr("{least} to {most} m, outside every surface by half its diameter", **between(low, high))
        if size is None:
            may_be = tr("{least} to {most} m, outside every surface of the habitat", **between(low, high))
        yield "place.height_m", place.height_m, may_be


def place_near(chart, under, position):
    """Place (along, height, axial) of a position near the place `under`."""
    along = chart.along(position) if not chart.winds else under[0] + _arc(chart, under, position)
    return float(along), float(chart.height(position)), float(chart.axial(position))


def _arc(chart, under, position):
    """How far along the deck a position lies from the place `under`."""
    return chart.radius_m * float(frames.azimuth_steps(np.stack([chart.position(under), position]))[0])
