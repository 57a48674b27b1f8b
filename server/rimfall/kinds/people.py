"""What the motions of people share: the body they are taken for.

A person is a point `centre_m` above the feet; what it may meet is met by a ball of that radius about it, so that the feet meet
the ground when the ball does, and the head, twice as high, the ceiling.
"""

from ..physics.bodies import Body

GIVEN = "given"  # why a motion whose path is stated has none under plain gravity beside it


def person(motion, drag_area_m2=0.0):
    """The Body of a motion with mass_kg and centre_m; drag_area_m2: its drag coefficient times its area, at any speed.

    A person's drag hardly depends on the Reynolds number, so coefficient times area is one constant; it is not that of the ball
    about the centre, which is only what meets surfaces. Without restitution: feet do not rebound.
    """
    return Body(motion.mass_kg, 2 * motion.centre_m, 0.0, restitution=0.0, drag_area_m2=drag_area_m2)


def over_the_feet(motion):
    """A motion's place, which is that of the feet, raised to the centre: (along, height, axial), metres."""
    return motion.place.along_m, motion.place.height_m + motion.centre_m, motion.place.axial_m
