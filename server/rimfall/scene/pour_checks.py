"""What a pour's fields must be against one another and the habitat: the tilt's times rise, and its cup stands in the room."""

from types import SimpleNamespace

from .spans import sides
from .validation_errors import wrong


def of_pour(part, motion, at):
    """Refusals of a pour's tilt and its cup."""
    before = 0.0
    for i, point in enumerate(motion.tilt):
        if not point.time_s > before:
            yield wrong(f"{at}.tilt.{i}.time_s", point.time_s, f"later than the point before it, above {before:g} s")
        before = point.time_s
    if motion.target is not None:
        yield from _cup(part, motion, f"{at}.target")


def _cup(part, motion, at):
    """The opening is inside the room, over the motion's own floor; the cup's foot is not below the ground."""
    cup = motion.target
    if not cup.diameter_m < part.radius_m / 2:
        yield wrong(f"{at}.diameter_m", cup.diameter_m, f"below half the radius, {part.radius_m / 2:g} m")
        return
    place = SimpleNamespace(height_m=cup.height_m, axial_m=cup.axial_m, floor=motion.place.floor)
    if part.shape in ("pods", "tether", "tumbler"):
        half = part.floors[motion.place.floor].length_m / 2
        if abs(cup.along_m) > half:
            yield wrong(f"{at}.along_m", cup.along_m, f"-{half:g} to {half:g} m, over its floor")
            return
    side, span = sides(part, place, 0.0)
    least = 0.0 if part.shape == "turntable" else -side
    if not least <= cup.axial_m <= side:
        yield wrong(f"{at}.axial_m", cup.axial_m, f"{least:.9g} to {side:.9g} m, in the room")
        return
    low, high = span(abs(cup.axial_m))
    if not low < cup.height_m < high:
        yield wrong(f"{at}.height_m", cup.height_m, f"above {low:.9g}, below {high:.9g} m, in the room")
    elif cup.depth_m > cup.height_m - low:
        may_be = f"0.001 to {cup.height_m - low:.9g} m, so that its foot is not below the ground"
        yield wrong(f"{at}.depth_m", cup.depth_m, may_be)
