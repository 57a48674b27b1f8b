"""What a thing that stands is laid on: the ground, or a level table."""

import numpy as np

from ...motions.ground import GroundStart
from ...motions.journey import Start
from ...motions.plan import Plan
from ...physics.surfaces import Drum, Plane
from ..body import body_of
from ..motion import place_of

_ON_THE_GROUND_M = 1e-9  # a thing whose underside is that near the ground stands on it


def plan(setting, motion):
    """Plan of a `stand`: a thing that rests on a level table, or on the ground itself, and slides when pushed too hard."""
    body, floor, start_s, place = body_of(motion.body), motion.place.floor, motion.start_s, place_of(motion)
    chart = setting.habitat.chart(floor)
    surface = _table(setting.habitat, chart, floor, body, place)
    position = chart.position(place)
    at_rest = np.zeros(3), np.zeros(3), setting.limit_s(start_s), "stands"
    laid = GroundStart(setting.room(floor), surface, body, start_s, position, *at_rest)
    course = Start(laid, rolls=False)
    name = surface.name_at(position)
    return Plan(start_s, place, (0.0, 0.0, 0.0), body, course, None, "at_rest", floor=floor, surface=name)


def _table(habitat, chart, floor, body, place):
    """What it stands on: the ground if it is there, else a level table top, half the thing's width below its centre."""
    foot_m = place[1] - body.radius_m
    if abs(foot_m - habitat.ground_height_m(place[2])) <= _ON_THE_GROUND_M:
        return habitat.ground(floor)
    if habitat.ground(floor).flat:
        top = chart.position((place[0], foot_m, place[2]))
        up = habitat.ground(floor).normal(top)
        return Plane("table", tuple(float(v) for v in up), float(up @ top))
    return Drum("table", habitat.radius_m - foot_m, hollow=True)
