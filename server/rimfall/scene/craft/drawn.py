"""What a page draws of a scene's craft round its habitat: solids, and how its counter group turns."""

import math

from .asked import asked_of
from .checks import of_scene

_SIZES = ("radius_m", "tube_radius_m", "length_m", "size_m")
_LONGER = 1.3  # times as long along the axis as the habitat: more of it is seen than the habitat
_NEAR = 0.12  # of the habitat's radius: a ring of what turns that is as near to its deck is the habitat itself


def drawn(scene):
    """The craft of a Scene as data, None where it carries none: `parts`, in the craft's axes; `counter_ratio`: how fast its counter group
    turns to how fast the habitat does, 0 where that does not turn."""
    if scene.craft is None:
        return None
    asked = asked_of(of_scene(scene))
    ratio = asked.counter_rad_s / asked.spin_rad_s if asked.spin_rad_s else 0.0
    wide_m = getattr(scene.habitat, "width_m", None)
    parts = [_part(part) for part in asked.craft.parts if not _is_habitat(part, asked.rim_m, wide_m)]
    return {"parts": parts, "counter_ratio": ratio}


def _part(part):
    sizes = {name: getattr(part, name) for name in _SIZES if getattr(part, name, None) is not None}
    axis = list(getattr(part, "axis", (0.0, 0.0, 1.0)))
    return {
        "name": part.name,
        "group": part.group,
        "solid": part.solid,
        "place_m": list(part.place_m),
        "axis": axis,
        **sizes,
    }


def _is_habitat(part, rim_m, wide_m):
    """Whether a part is what the habitat, wide_m along the axis, is drawn as: a ring of what turns, near its deck, not much longer."""
    if part.group != "turning" or part.solid in ("point", "rod", "box", "cone", "sphere") or any(part.place_m[:2]):
        return False
    if wide_m is not None and getattr(part, "length_m", 0.0) > _LONGER * wide_m:
        return False
    axis = getattr(part, "axis", (0.0, 0.0, 1.0))
    reach = part.radius_m + getattr(part, "tube_radius_m", 0.0)
    return math.hypot(*axis[:2]) <= 0.05 * abs(axis[2]) and abs(reach - rim_m) <= _NEAR * rim_m
