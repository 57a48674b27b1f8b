"""What a thing that hangs may not be: its bob inside a surface as it begins, or pushed along its own line."""

from fractions import Fraction

import numpy as np

from ..kinds.hang.plan import first_state, line_of
from ..kinds.throw.plan import body_of
from ..motions.setting import Setting
from ..physics.air import air_at
from .validation_errors import wrong

_TOUCH_M = 1e-9


def of_bob(scene, habitat, motion, at):
    """Refusals of where the bob of a `hang`, whose pivot stands, would begin."""
    air = None if scene.air is None else air_at(scene.air.pressure_kpa, scene.air.temperature_c)
    line = line_of(Setting(habitat, air, Fraction(1), None), motion)
    away, velocity = first_state(line, habitat.spin, motion)
    if velocity is None:
        yield wrong(f"{at}.heading_deg", motion.heading_deg, "a heading that is not along the line itself")
    body, first = body_of(motion.body), (line.pivot_m + away)[:, None]
    for surface in habitat.surfaces(motion.place.floor):
        if float(surface.gap(first, np.array([body.radius_m]))[0]) < -_TOUCH_M:
            name = "edge of its floor" if surface.edge else surface.name_at(first[:, 0])
            may_be = f"any length at which what hangs on it begins outside the {name}, by half its width"
            yield wrong(f"{at}.length_m", motion.length_m, may_be)
            return
