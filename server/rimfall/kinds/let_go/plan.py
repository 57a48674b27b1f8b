"""Letting go outside, under the rim: a straight line away, while the place one hung from goes on round.

There is no air outside. What is followed is the centre; the round hull of a drum or a sphere stops it if it is pushed that way.
"""

from functools import partial

import numpy as np

from ...motions.journey import Event, Prescribed, Start
from ...motions.plan import Plan
from ...physics import frames
from ...physics.bodies import Body
from ...physics.crossings import TOUCH_M
from ..motion import place_of
from ..outside import NONE_BECAUSE, line, paid_out, seen, state, sweeps

SHOULDERS_M = 0.5  # what a person is drawn as outside: common practice, no source


class _Hull:
    """The outside of a round hull: its normal points away from it."""

    edge = False

    def __init__(self, counts):
        self._counts = np.array(counts)

    def part(self, position):
        """What of positions (..., 3) counts for the distance from it."""
        return position * self._counts

    def normal(self, position):
        """Unit normal (3,) at a position (3,)."""
        out = self.part(position)
        return out / np.linalg.norm(out)


def plan(setting, motion):
    """Plan of a `let_go` of the scene document (attributes as its fields are named)."""
    place, floor, start_s = place_of(motion), motion.place.floor, motion.start_s
    velocity = frames.aimed(motion.speed_m_s, motion.heading_deg, motion.elevation_deg)
    position, moving = setting.start(start_s, place, velocity, floor)
    spin = setting.habitat.spin
    angle, omega = float(spin.angle_rad(start_s)), setting.omega_rad_s(start_s)
    at, leaves = frames.rotating_to_inertial(position, moving, angle, omega)
    end_s = max(setting.limit_s(start_s), start_s)
    hull, met_s = _met(setting.habitat, at, leaves, start_s, end_s)
    leg = line(setting, at, leaves, start_s, min(met_s, end_s), floor)
    given = Prescribed((leg,))
    if met_s <= end_s:
        there, speed = seen(setting, leg, met_s)
        given = Prescribed((leg,), (Event("hull", met_s, there, speed, np.zeros(3), hull),), "met a surface")
    body = Body(motion.mass_kg, SHOULDERS_M, 0.0)
    told = partial(findings, leg)
    return Plan(
        start_s,
        place,
        tuple(velocity),
        body,
        Start(None, prescribed=given),
        None,
        NONE_BECAUSE,
        floor=floor,
        findings=told,
    )


def _met(habitat, position, velocity, start_s, end_s):
    """The hull, and when the body's centre comes to it from outside; infinity for never.

    Without thrust in the way: the hull's radius is met where |x + v t| = R, the earlier root; the ship's push is along the axis, so that
    of a drum it changes only where along the axis that is.
    """
    if habitat.round_hull is None:
        return None, np.inf
    hull = _Hull(habitat.round_hull.counts)
    x, v, pull = hull.part(position), hull.part(velocity), hull.part(np.array(habitat.pull_m_s2))
    radius = habitat.radius_m
    # |x + v t + a t^2/2|^2 = R^2, a polynomial of the time
    powers = [
        0.25 * pull @ pull,
        v @ pull,
        v @ v + x @ pull,
        2 * x @ v,
        (np.linalg.norm(x) - radius) * (np.linalg.norm(x) + radius),
    ]
    roots = np.roots(np.trim_zeros(powers, "f"))
    times = roots.real[(np.abs(roots.imag) <= 1e-9 * (1 + np.abs(roots))) & (roots.real >= 0)]
    for t in np.sort(times):
        at = position + t * (velocity + 0.5 * t * np.array(habitat.pull_m_s2))
        closing = hull.part(at) @ (v + t * pull)
        if closing < -TOUCH_M * radius and abs(at[2]) <= habitat.round_hull.half_width_m:
            return hull, start_s + float(t)
    return hull, np.inf


def findings(leg, setting, plan, track):
    """From the place where it hung, which goes on turning: the distance and the length of a taut line to it at the samples (n,), both
    metres, and when it sweeps by again, how far off; and the speed at which it leaves, in the room that does not turn."""
    samples = track.samples
    point = setting.habitat.chart(plan.floor).position(plan.place)
    distance = np.linalg.norm(samples.rotating_m - point, axis=1)
    out = distance.copy()
    if not setting.habitat.floors:
        out = paid_out(setting.habitat.radius_m, point, samples, samples.along_m - plan.place[0])
    return {
        "distance_m": distance,
        "line_m": out,
        "sweeps_by": sweeps(setting, leg, point),
        "leaves_m_s": float(np.linalg.norm(state(leg, plan.start_s)[1])),
    }
