"""Lifts in a spoke: straight toward the axis or away from it, at one speed or speeding up and slowing down evenly.

The rider stands in the cabin; heights are those of its floor, the path is that of the rider's centre. The path is given; what the rider
feels sideways is 2 omega v, and with a changing spin -omega' r (design, section 2).
"""

import math
from dataclasses import dataclass
from functools import partial

import numpy as np

from ...motions.journey import Event, Prescribed, Start
from ...motions.people import felt, given_leg, last_state, lean_deg, weight_g
from ...motions.plan import Plan
from ..people import GIVEN, over_the_feet, person

_LOOKS = 65  # at each stretch, for the most that is felt


@dataclass(frozen=True)
class Ride:
    """Stretches of even acceleration, S of them: when each begins since the start and how long it lasts; way gone and speed at its
    begin, and acceleration (S,), upward above 0. start_m (3,): the cabin's floor at first; up (3,)."""

    begin_s: np.ndarray
    length_s: np.ndarray
    gone_m: np.ndarray
    speed_m_s: np.ndarray
    acceleration_m_s2: np.ndarray
    start_m: np.ndarray
    up: np.ndarray

    @property
    def takes_s(self):
        """How long the whole ride takes."""
        return float(self.begin_s[-1] + self.length_s[-1])

    def at(self, k, since_s, up_m):
        """Position, velocity and acceleration (n, 3) of the point up_m over the floor at times (n,) in stretches k (n,)."""
        t, a = since_s - self.begin_s[k], self.acceleration_m_s2[k]
        rise = up_m + self.gone_m[k] + t * (self.speed_m_s[k] + 0.5 * t * a)
        position = self.start_m + rise[:, None] * self.up
        return position, (self.speed_m_s[k] + t * a)[:, None] * self.up, a[:, None] * self.up

    def stretch(self, since_s):
        """Number (n,) of the stretch at times (n,)."""
        return np.clip(np.searchsorted(self.begin_s, since_s, "right") - 1, 0, None)

    def powers(self, up_m):
        """Positions (S, 3, 3) of that point as powers of the share of each stretch."""
        length = self.length_s
        rise = np.stack([up_m + self.gone_m, length * self.speed_m_s, 0.5 * length**2 * self.acceleration_m_s2], -1)
        out = rise[:, :, None] * self.up
        out[:, 0] += self.start_m
        return out


def ride(setting, motion):
    """The Ride of a `lift`."""
    place = motion.place.along_m, motion.place.height_m, motion.place.axial_m
    chart = setting.habitat.chart(motion.place.floor)
    way = motion.to_height_m - motion.place.height_m
    lengths, speeds = _profile(abs(way), motion.top_speed_m_s, motion.acceleration_m_s2)
    changes = np.diff(speeds) / lengths
    gone = np.cumsum(lengths * (speeds[:-1] + speeds[1:]) / 2)
    sign = math.copysign(1.0, way)
    begin = np.concatenate([[0.0], np.cumsum(lengths)[:-1]])
    parts = sign * np.concatenate([[0.0], gone[:-1]]), sign * speeds[:-1], sign * changes
    return Ride(begin, lengths, *parts, chart.position(place), chart.axes_at(place)[1])


def _profile(way_m, top_m_s, acceleration_m_s2):
    """Lengths (S,) of the stretches of a ride in seconds, and the speeds (S + 1,) at their ends."""
    if acceleration_m_s2 is None:
        return np.array([way_m / top_m_s]), np.array([top_m_s, top_m_s])
    peak = min(top_m_s, math.sqrt(acceleration_m_s2 * way_m))
    ramp_s, cruise_m = peak / acceleration_m_s2, way_m - peak**2 / acceleration_m_s2
    if cruise_m <= 1e-12 * way_m:
        return np.array([ramp_s, ramp_s]), np.array([0.0, peak, 0.0])
    return np.array([ramp_s, cruise_m / peak, ramp_s]), np.array([0.0, peak, peak, 0.0])


def plan(setting, motion):
    """Plan of a `lift` of the scene document (attributes as its fields are named)."""
    floor, start_s, place = motion.place.floor, motion.start_s, over_the_feet(motion)
    made = ride(setting, motion)
    end_s = min(start_s + made.takes_s, max(setting.limit_s(start_s), start_s))
    ground = setting.habitat.ground(floor)
    leg = given_leg(ground, start_s + made.begin_s, made.length_s, made.powers(motion.centre_m), end_s)
    happens, end = (), None
    if end_s == start_s + made.takes_s:
        happens, end = (Event("arrives", end_s, *last_state(leg)),), "arrived"
    velocity = setting.habitat.chart(floor).axes_at(place) @ leg.path.velocity_m_s[0, :3]
    course = Start(None, prescribed=Prescribed((leg,), happens, end))
    told = partial(findings, made)
    return Plan(start_s, place, tuple(velocity), person(motion), course, None, GIVEN, floor=floor, findings=told)


def findings(made, setting, plan, track):
    """How long the whole ride takes; what is felt on the cabin's floor at the samples (n,): sideways (spinward is above 0), how far down
    leans, weight; and the most of the first two on the whole ride, whether or not it is shown to its end."""
    time_s = track.samples.time_s
    since = time_s - plan.start_s
    weight = felt(setting, plan.floor, time_s, *made.at(made.stretch(since), since, 0.0))
    most = _whole(made, setting, plan)
    return {
        "takes_s": made.takes_s,
        "sideways_m_s2": weight[:, 0].copy(),
        "most_sideways_m_s2": float(np.max(np.abs(most[:, 0]))),
        "tilt_deg": lean_deg(weight),
        "most_tilt_deg": float(np.max(lean_deg(most))),
        "apparent_g": weight_g(weight),
    }


def _whole(made, setting, plan):
    """What is felt (n, 3) at many times of the whole ride, both ends of every stretch among them."""
    k = np.repeat(np.arange(len(made.begin_s)), _LOOKS)
    since = made.begin_s[k] + np.tile(np.linspace(0.0, 1.0, _LOOKS), len(made.begin_s)) * made.length_s[k]
    return felt(setting, plan.floor, plan.start_s + since, *made.at(k, since, 0.0))
