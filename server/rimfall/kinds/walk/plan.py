"""Walking, running, climbing stairs or a ladder: a person goes at a constant speed over the ground, and feels it.

The path is given, not worked out (`motions/course.py`).
"""

from dataclasses import dataclass
from functools import partial

import numpy as np

from ...motions.course import Round, course, floats_at_m_s
from ...motions.journey import Event, Prescribed, Start
from ...motions.people import felt, last_state, lean_deg, weight_g
from ...motions.plan import Plan
from ...physics.constants import PERSON_HEIGHT_M
from ...physics.crossings import TOUCH_M
from ..people import GIVEN, over_the_feet, person

_HALVINGS = 60


@dataclass(frozen=True)
class _Stop:
    """When a walk ends, seconds since its start; the surface that ends it, or None."""

    after_s: float
    surface: object | None


def stop(setting, way, body, floor, lasts_s):
    """Where a walk along a way ends within lasts_s: at the first surface its ball meets, with the head at the axis, or in time.

    Along these ways a gap grows at most as fast as before (it is a concave function of time), so that it is lost only once.
    """
    found = _Stop(_to_the_axis_s(way, body.diameter_m, lasts_s), None)
    for surface in setting.habitat.surfaces(floor):
        low, high = 0.0, found.after_s
        if _gap(way, surface, body.radius_m, high) >= -TOUCH_M:
            continue
        for _ in range(_HALVINGS):
            middle = 0.5 * (low + high)
            low, high = (middle, high) if _gap(way, surface, body.radius_m, middle) >= 0 else (low, middle)
        found = _Stop(low, surface)
    return found


def _to_the_axis_s(way, head_m, lasts_s):
    rises = isinstance(way, Round) and way.rise_m_s > 0
    return min(lasts_s, max((way.radius_m - head_m) / way.rise_m_s, 0.0)) if rises else lasts_s


def _gap(way, surface, radius_m, since_s):
    position = way.at(np.array([since_s]), radius_m)[0]
    return float(surface.gap(position.T, np.array([radius_m]))[0])


def plan(setting, motion):
    """Plan of a `walk` of the scene document (attributes as its fields are named); its path is that of the centre."""
    floor, start_s, body = motion.place.floor, motion.start_s, person(motion)
    habitat = setting.habitat
    way, ground = course(habitat, motion), habitat.ground(floor)
    lasts_s = max(setting.limit_s(start_s) - start_s, 0.0)
    ends = stop(setting, way, body, floor, min(motion.for_s, lasts_s))
    leg = way.leg(ground, start_s, start_s + ends.after_s, motion.centre_m)
    place = over_the_feet(motion)
    velocity = habitat.chart(floor).axes_at(place) @ way.at(np.zeros(1), motion.centre_m)[1][0]
    in_time = ends.surface is None and ends.after_s == lasts_s < motion.for_s
    given = Prescribed((leg,)) if in_time else _ended(leg, ends)
    return Plan(
        start_s,
        place,
        tuple(velocity),
        body,
        Start(None, prescribed=given),
        None,
        GIVEN,
        floor=floor,
        surface=ground.name_at(habitat.chart(floor).position(place)),
        findings=partial(findings, way),
    )


def _ended(leg, ends):
    """The Given of a walk that ends of itself or at a surface."""
    position, velocity = last_state(leg)
    if ends.surface is None:
        return Prescribed((leg,), (Event("arrives", leg.path.end_s, position, velocity),), "arrived")
    kind = ends.surface.name_at(position)
    if ends.surface.edge:
        return Prescribed((leg,), (Event("edge", leg.path.end_s, position, velocity),), "edge")
    met = Event(kind, leg.path.end_s, position, velocity, np.zeros(3), ends.surface)
    return Prescribed((leg,), (met,), "met a surface")


def findings(way, setting, plan, track):
    """What the walker feels at the samples (n,): at the feet and at the head, sideways there (spinward is above 0), and how far it
    leans from straight down; before the start, standing; and the speed antispinward at which the feet have no weight."""
    time_s = track.samples.time_s
    since = time_s - plan.start_s
    feet, head = (felt(setting, plan.floor, time_s, *way.at(since, up)) for up in (0.0, PERSON_HEIGHT_M))
    at = np.zeros(1)
    still = felt(setting, plan.floor, at + plan.start_s, way.at(at, 0.0)[0], np.zeros((1, 3)), np.zeros((1, 3)))
    return {
        "standing_g": float(weight_g(still)[0]),
        "feet_g": weight_g(feet),
        "head_g": weight_g(head),
        "sideways_m_s2": feet[:, 0].copy(),
        "lean_deg": lean_deg(feet),
        "floats_at_m_s": floats_at_m_s(setting.habitat, setting.omega_rad_s(plan.start_s), _ground_m(way)),
    }


def _ground_m(way):
    """How far from the axis, along what is up, the feet begin."""
    return way.radius_m if isinstance(way, Round) else float(-way.feet_m @ way.up)
