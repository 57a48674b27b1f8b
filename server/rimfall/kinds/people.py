"""What motions of people on their feet share: their fields, the body they are taken for, and where they may begin.

A person is a point `centre_m` above the feet; what it may meet is met by a ball of that radius about it, so that the feet meet
the ground when the ball does, and the head, twice as high, the ceiling.
"""

from ..fields import linear, number
from ..language import tr, tr_later, written
from ..physics.bodies import Body
from .motion import Motion, Place
from .places import TOUCH_M, between, over_its_floor

GIVEN = "given"  # why a motion whose path is stated has none under plain gravity beside it
GROUP = tr_later("People")
AS_A_BALL = tr_later("What a person meets is met by a ball round the centre that reaches from the feet to the head.")
SELF = {"mass_kg": tr_later("Mass"), "centre_m": tr_later("Centre")}  # rows of the page
WEIGHT_TERM = tr_later("weight at the feet")
RUNS_M_S = 2.5  # who is faster runs


class FeetPlace(Place):
    """Where the feet are."""

    height_m: float = number(tr_later("Feet at height"), "m", 0, 100_000, 0.0, shown=linear(0, 10))


def mass_field():
    """The mass of a person."""
    return number(tr_later("Mass"), "kg", 1, 1_000, 75.0, shown=linear(20, 150))


class Person(Motion):
    """The fields they share: the place is that of the feet, the path that of the centre."""

    place: FeetPlace = FeetPlace()
    mass_kg: float = mass_field()
    centre_m: float = number(tr_later("Centre over the feet"), "m", 0.1, 3, 1.0, shown=linear(0.5, 1.5))


def person(motion, drag_area_m2=0.0):
    """The Body of a motion with mass_kg and centre_m; drag_area_m2: its drag coefficient times its area, at any speed.

    A person's drag hardly depends on the Reynolds number, so coefficient times area is one constant; it is not that of the ball
    about the centre, which is only what meets surfaces. Without restitution: feet do not rebound.
    """
    return Body(motion.mass_kg, 2 * motion.centre_m, 0.0, restitution=0.0, drag_area_m2=drag_area_m2)


def over_the_feet(motion):
    """A motion's place, which is that of the feet, raised to the centre: (along, height, axial), metres."""
    return motion.place.along_m, motion.place.height_m + motion.centre_m, motion.place.axial_m


def stands(habitat, motion):
    """Refusals of somebody who does not stand in the room: feet on or over the ground, head (two centres up) and sides clear of
    everything."""
    place, half = motion.place, motion.centre_m
    if not half < habitat.radius_m / 4:
        radius = written(habitat.radius_m / 4, "g")
        yield "centre_m", half, tr("below a quarter of the radius, {length} m", length=radius)
        return
    yield from over_its_floor(habitat, place)
    least, side, span = habitat.sides(place.floor, half)
    low, high = span(min(abs(place.axial_m), side)) if side >= 0 else (1.0, 0.0)
    low, high = low - half, high - half
    if high < low - TOUCH_M:
        yield "centre_m", half, tr("small enough that a person of twice that height fits into the room")
        return
    if not least <= place.axial_m <= side:
        yield "place.axial_m", place.axial_m, tr("{least} to {most} m, clear of what is beside", **between(least, side))
    elif not low - TOUCH_M <= place.height_m <= high:
        may_be = tr(
            "{least} to {most} m: feet on or over the ground, head below what is above", **between(max(low, 0.0), high)
        )
        yield "place.height_m", place.height_m, may_be
