"""Lifts: somebody rides in a spoke, toward the axis or away from it, at one speed or speeding up and slowing down evenly.

The rider stands in the cabin; heights are those of its floor, the path is that of the rider's centre. The path is given; what the rider
feels sideways is 2 omega v, and with a changing spin -omega' r (design, section 2).
"""

import math
from dataclasses import dataclass
from functools import partial
from typing import Literal

import numpy as np

from ...fields import linear, log, number
from ...language import tr, tr_as, tr_later, tr_later_as, written
from ...motions.journey import Event, Prescribed
from ...motions.people import felt, given_leg, last_state, lean_deg, on_floor, weight_g
from ...phrases import seconds
from ...physics.constants import G0_M_S2
from ..kind import Finding, Kind, Page, Stage, when
from ..motion import along_given, at_height
from ..people import GIVEN, GROUP, SELF, WEIGHT_TERM, Person, over_the_feet, person
from ..places import between, over_its_floor
from . import prose

_LEAST_PUSH = 1e-6  # of the greatest one
_FELT = 0.005  # in g; less is none worth a word
_AT_ONCE_S = 0.005
_LEFT_OUT = tr_later("The rider stands still in the cabin; the air of the shaft goes with it.")


_LEAST_WAY_M = 1e-6  # of a ride: over less its speeds would be no numbers


class Lift(Person):
    """Someone rides a lift in a spoke; heights are those of the cabin's floor."""

    kind: Literal["lift"]
    to_height_m: float = number(tr_later("To height"), "m", 0, 100_000, shown=linear(0, 100))
    top_speed_m_s: float = number(tr_later("Top speed"), "m/s", 0.01, 1_000, 2.0, shown=log(0.1, 20))
    acceleration_m_s2: float | None = number(tr_later("Speeds up by"), "m/s²", 0.001, 100, None, shown=log(0.1, 5))


def check(motion, setting, shape):
    """A shaft goes from the ground to the hub, or to the axis; it may pass a ceiling."""
    habitat, place, half = setting.habitat, motion.place, motion.centre_m
    if not habitat.in_space:
        yield "kind", motion.kind, tr("another kind of motion on a {shape}: no spoke leads to its axis", shape=shape)
        return
    low, top = _shaft(habitat, place, half)
    side = habitat.hull_half_width_m(place.floor)
    if abs(place.axial_m) > side:
        yield "place.axial_m", place.axial_m, tr("{least} to {most} m, inside the hull", **between(-side, side))
        return
    yield from over_its_floor(habitat, place)
    if top < low:
        yield "centre_m", half, tr("small enough that a person of twice that height fits below hub and axis")
        return
    may_be = tr(
        "{least} to {most} m: from the ground to a head's height below the hub or the axis", **between(low, top)
    )
    if not low <= place.height_m <= top:
        yield "place.height_m", place.height_m, may_be
    if not low <= motion.to_height_m <= top:
        yield "to_height_m", motion.to_height_m, may_be
    elif abs(motion.to_height_m - place.height_m) < _LEAST_WAY_M:
        yield "to_height_m", motion.to_height_m, tr("another height than that where it starts")


def _shaft(habitat, place, half):
    """Least and greatest height of a cabin's floor."""
    reach = min(abs(place.axial_m), habitat.radius_m)
    return habitat.ground_height_m(reach), habitat.ground_radius_m(place.floor) - habitat.hub_m - 2 * half


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


def ride_of(setting, motion):
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
    ride = ride_of(setting, motion)
    end_s = min(start_s + ride.takes_s, max(setting.limit_s(start_s), start_s))
    ground = setting.habitat.ground(floor)
    leg = given_leg(ground, start_s + ride.begin_s, ride.length_s, ride.powers(motion.centre_m), end_s)
    happens, end = (), None
    if end_s == start_s + ride.takes_s:
        happens, end = (Event("arrives", end_s, *last_state(leg)),), "arrived"
    velocity = setting.habitat.chart(floor).axes_at(place) @ leg.path.velocity_m_s[0, :3]
    given = Prescribed((leg,), happens, end)
    return along_given(motion, place, velocity, person(motion), given, GIVEN, findings=partial(_findings, ride))


def _findings(ride, setting, plan, track):
    """How long the whole ride takes; what is felt on the cabin's floor at the samples (n,): sideways (spinward is above 0), how far down
    leans, weight; and the most of the first two on the whole ride, whether or not it is shown to its end."""
    time_s = track.samples.time_s
    since = time_s - plan.start_s
    weight = felt(setting, plan.floor, time_s, *ride.at(ride.stretch(since), since, 0.0))
    since_s, whole = _whole(ride, setting, plan)
    off, off_here = ~on_floor(whole), ~on_floor(weight)
    weight[off_here] = 0.0
    most = whole[~off] if np.any(~off) else np.zeros((1, 3))
    return {
        "takes_s": ride.takes_s,
        "sideways_m_s2": weight[:, 0].copy(),
        "most_sideways_m_s2": float(np.max(np.abs(most[:, 0]))),
        "tilt_deg": lean_deg(weight),
        "most_tilt_deg": float(np.max(lean_deg(most))),
        "apparent_g": weight_g(weight),
        "leaves_s": plan.start_s + float(since_s[off][0]) if np.any(off) else None,
    }


def _whole(ride, setting, plan):
    """Many times (n,) of the whole ride, both ends of every stretch among them, and what is felt (n, 3) then."""
    k = np.repeat(np.arange(len(ride.begin_s)), _LOOKS)
    since = ride.begin_s[k] + np.tile(np.linspace(0.0, 1.0, _LOOKS), len(ride.begin_s)) * ride.length_s[k]
    return since, felt(setting, plan.floor, plan.start_s + since, *ride.at(k, since, 0.0))


def rode(traced, units):
    """What a ride in a lift does sideways."""
    findings = traced.findings
    most, tilt = findings["most_sideways_m_s2"], findings["most_tilt_deg"]
    out = [_takes(traced, findings), *_off_the_floor(traced, findings)]
    if most / G0_M_S2 < _FELT and tilt < 1:
        return [*out, tr("The sideways push is negligible.")]
    places = {"way": _way(findings), "push": _figure_g(most), "angle": written(tilt, ".0f")}
    return [*out, tr("The rider is pushed {way} by up to {push}\u00a0g, and down leans by up to {angle}°.", **places)]


def _figure_g(most_m_s2):
    return written(most_m_s2 / G0_M_S2, ".2f")


def _off_the_floor(traced, findings):
    """That the cabin falls away from under the rider, or stops faster than the rider does."""
    if findings["leaves_s"] is None:
        return []
    after_s = findings["leaves_s"] - traced.plan.start_s
    if after_s < _AT_ONCE_S:
        return [
            tr("The rider leaves the cabin’s floor at once: it slows faster than the weight there holds them down.")
        ]
    says = tr(
        "The rider leaves the cabin’s floor after {time}: it slows faster than the weight there holds them down.",
        time=seconds(after_s),
    )
    return [says]


def in_short(traced, _units):
    """How the ride pushes, in a phrase."""
    findings = traced.findings
    most = findings["most_sideways_m_s2"]
    if findings["leaves_s"] is not None:
        return tr("leaves the cabin’s floor after {time}", time=seconds(findings["leaves_s"] - traced.plan.start_s))
    takes = seconds(findings["takes_s"])
    if most / G0_M_S2 < _FELT:
        return tr("rides for {time}", time=takes)
    push = _figure_g(most)
    return tr("rides for {time}, pushed {way} by up to {push} g", time=takes, way=_way(findings), push=push)


def _way(findings):
    """The way of a push that keeps to one way."""
    least = _LEAST_PUSH * findings["most_sideways_m_s2"]  # one that begins from rest begins with rounding errors
    sideways = findings["sideways_m_s2"]
    spinward, antispinward = (sideways > least).any(), (sideways < -least).any()
    if spinward == antispinward:
        return tr_as("pushed", "sideways")
    return tr_as("pushed", "spinward") if spinward else tr_as("pushed", "antispinward")


def _takes(traced, findings):
    takes, lasts = seconds(findings["takes_s"]), seconds(traced.track.ends_s - traced.plan.start_s)
    if traced.track.end == "arrived":
        return tr("The ride takes {time}.", time=takes)
    return tr("The ride takes {time}, of which {shown} are shown.", time=takes, shown=lasts)


PAGE = Page(
    group=GROUP,
    add=tr_later_as("added", "a lift ride"),
    short=tr_later("Lift"),
    title=tr_later("Lift"),
    one=tr_later_as("counted", "lift ride"),
    many=tr_later_as("counted", "lift rides"),
    sentence=(
        tr_later("Rides a lift from {place.height_m} to {to_height_m} at "),
        when("acceleration_m_s2", tr_later("up to ")),
        "{top_speed_m_s}",
        when("acceleration_m_s2", tr_later(", gaining speed at {acceleration_m_s2}")),
        ".",
    ),
    rows={
        "place.height_m": tr_later("From height"),
        "to_height_m": tr_later("To height"),
        "top_speed_m_s": tr_later("Top speed"),
        "acceleration_m_s2": tr_later("Gains"),
    },
    more=(tr_later("Person"), SELF),
    mirrored=False,
    findings=(
        Finding("apparent_g", tr_later("weight at the feet"), "g", WEIGHT_TERM),
        Finding("sideways_m_s2", tr_later("sideways push"), "m/s²", tr_later("sideways push"), sided=True),
        Finding("tilt_deg", tr_later("floor seems to tilt"), "°", tr_later("apparent tilt")),
        Finding("takes_s", tr_later("the ride takes"), "s", tr_later("lift")),
    ),
    terms={
        tr_later("Apparent tilt"): tr_later(
            "How far the floor of a moving lift seems to slope, because the sideways push is felt together with the "
            "weight."
        ),
        tr_later("Lift"): tr_later(
            "A car that goes toward or away from the axis. Because the rim moves faster than the hub, its wall must "
            "push the rider sideways."
        ),
    },
    # a lift's push has an arrow of its own
    stage=Stage(mover="person", beside="lift", attended_m=None, no_arrows=("coriolis",), weight="apparent_g"),
)
KIND = Kind(
    name="lift",
    fields=Lift,
    new={"place": at_height(0.0), "to_height_m": 20.0, "top_speed_m_s": 2.0, "acceleration_m_s2": None},
    check=check,
    plan=plan,
    outcome=rode,
    in_short=in_short,
    assumptions=lambda _traced, _setting: [tr(_LEFT_OUT)],
    told=prose.told,
    page=PAGE,
    element="lift",
)
