"""What a pour's fields must be against one another and the habitat: the tilt's times rise, and its cup stands in the room."""

from .validation_errors import wrong


def of_pour(habitat, motion, at):
    """Refusals of a pour's tilt and its cup."""
    before = 0.0
    for i, point in enumerate(motion.tilt):
        if not point.time_s > before:
            yield wrong(f"{at}.tilt.{i}.time_s", point.time_s, f"later than the point before it, above {before:g} s")
        before = point.time_s
    if motion.target is not None:
        yield from _cup(habitat, motion, f"{at}.target")


def _cup(habitat, motion, at):
    """The opening is inside the room, over the motion's own floor; the cup's foot is not below the ground."""
    cup = motion.target
    if not cup.diameter_m < habitat.radius_m / 2:
        yield wrong(f"{at}.diameter_m", cup.diameter_m, f"below half the radius, {habitat.radius_m / 2:g} m")
        return
    half = habitat.half_length_m(motion.place.floor)
    if abs(cup.along_m) > half:
        yield wrong(f"{at}.along_m", cup.along_m, f"-{half:g} to {half:g} m, over its floor")
        return
    least, side, span = habitat.sides(motion.place.floor, 0.0)
    if not least <= cup.axial_m <= side:
        yield wrong(f"{at}.axial_m", cup.axial_m, f"{least:.9g} to {side:.9g} m, in the room")
        return
    low, high = span(abs(cup.axial_m))
    if not low < cup.height_m < high:
        yield wrong(f"{at}.height_m", cup.height_m, f"above {low:.9g}, below {high:.9g} m, in the room")
    elif cup.depth_m > cup.height_m - low:
        may_be = f"0.001 to {cup.height_m - low:.9g} m, so that its foot is not below the ground"
        yield wrong(f"{at}.depth_m", cup.depth_m, may_be)
