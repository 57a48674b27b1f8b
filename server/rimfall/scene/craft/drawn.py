"""What a page draws of a scene's craft round its habitat: solids, and how its counter group turns."""

import math

from .asked import asked_of
from .checks import of_scene

_SIZES = ("radius_m", "tube_radius_m", "length_m", "size_m")
_NEAR = 0.12  # of the habitat's radius: a ring of what turns that is as near to its deck is the habitat itself


def drawn(scene):
    """The craft of a Scene as data, None where it carries none: `parts`, in the craft's axes; `counter_ratio`: how fast its counter group
    turns to how fast the habitat does, 0 where that does not turn."""
    if scene.craft is None:
        return None
    asked = asked_of(of_scene(scene))
    ratio = asked.counter_rad_s / asked.spin_rad_s if asked.spin_rad_s else 0.0
    parts = [_part(part, asked.rim_m) for part in asked.craft.parts]
    return {"parts": parts, "counter_ratio": ratio}


def _part(part, rim_m):
    sizes = {name: getattr(part, name) for name in _SIZES if getattr(part, name, None) is not None}
    axis = list(getattr(part, "axis", (0.0, 0.0, 1.0)))
    return {
        "name": part.name,
        "group": part.group,
        "solid": part.solid,
        "place_m": list(part.place_m),
        "axis": axis,
        "is_habitat": _is_habitat(part, rim_m),
        **sizes,
    }


def _is_habitat(part, rim_m):
    """Whether a part is what the habitat, wide_m along the axis, is drawn as: a ring of what turns, near its deck."""
    if part.group != "turning" or part.solid in ("point", "rod", "box", "cone", "sphere") or any(part.place_m[:2]):
        return False
    axis = getattr(part, "axis", (0.0, 0.0, 1.0))
    reach = part.radius_m + getattr(part, "tube_radius_m", 0.0)
    return math.hypot(*axis[:2]) <= 0.05 * abs(axis[2]) and abs(reach - rim_m) <= _NEAR * rim_m
