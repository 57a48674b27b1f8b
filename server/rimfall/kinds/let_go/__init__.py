"""Letting go outside, under the rim, or pushing off: a straight line away, while the place one hung from goes on round.

There is no air outside. What is followed is the centre; the round hull of a cylinder or a sphere stops it if it is pushed that way.
"""

from functools import partial
from typing import Literal

import numpy as np

from ...fields import linear, number
from ...language import tr, tr_later, tr_later_as
from ...motions.journey import Event, Prescribed
from ...phrases import length, seconds, speed
from ...physics import frames
from ...physics.bodies import Body
from ...physics.crossings import TOUCH_M
from ..kind import Finding, Kind, Page, Stage, when
from ..motion import Motion, along_given, at_height, elevation_field, heading_field, place_of, speed_field
from ..outside import NONE_BECAUSE, WEIGHTLESS, OutsidePlace, line, paid_out, seen, state, sweeps, under_the_hull
from ..people import GROUP, mass_field
from . import prose

_LEFT_OUT = tr_later(
    "There is no air outside; nothing but a round hull is looked for in the way, and a line is taken to be without mass."
)


_NOTHING_HANGS = tr_later("another kind of motion on a {shape}: nothing hangs under its rim")


class HungPlace(OutsidePlace):
    """Where someone hangs outside, under the rim."""

    height_m: float = number(tr_later("Hangs at height"), "m", -100_000, 0, -1.0, shown=linear(-20, 0))


class LetGo(Motion):
    """Someone outside lets go, or pushes off."""

    kind: Literal["let_go"]
    place: HungPlace = HungPlace()
    mass_kg: float = mass_field()
    speed_m_s: float = speed_field(tr_later("Push"), 0.0)
    heading_deg: float = heading_field(tr_later("Toward"))
    elevation_deg: float = elevation_field(tr_later_as("how steeply", "Up"), 0.0)


def check(motion, setting, shape):
    """One hangs outside, under the hull; a push toward a hull is followed where that is round all the way."""
    habitat = setting.habitat
    yield from under_the_hull(habitat, shape, motion, _NOTHING_HANGS)
    if habitat.in_space and habitat.round_hull is None and motion.elevation_deg > 0:
        yield (
            "elevation_deg",
            motion.elevation_deg,
            tr("-90 to 0 degrees: the hull of {shape} is not followed", shape=shape),
        )


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
    return along_given(motion, place, velocity, body, given, NONE_BECAUSE, findings=partial(_findings, leg))


def _met(habitat, position, velocity, start_s, end_s):
    """The hull, and when the body's centre comes to it from outside; infinity for never.

    Without thrust in the way: the hull's radius is met where |x + v t| = R, the earlier root; the ship's push is along the axis, so that
    of a cylinder it changes only where along the axis that is.
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


def _findings(leg, setting, plan, track):
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


def let_go(traced, units):
    """How far one gets that lets go outside."""
    findings, track = traced.findings, traced.track
    after = seconds(track.ends_s - traced.plan.start_s)
    if track.end == "met a surface":
        return [tr("Pushed that way, one meets the hull after {time}.", time=after)]
    if not len(findings["distance_m"]) or findings["leaves_m_s"] == 0:
        return [tr("Nothing moves: one stays beside the hull.")]
    far, line = (float(findings[name][-1]) for name in ("distance_m", "line_m"))
    places = {"speed": speed(findings["leaves_m_s"], units), "time": after, "length": length(far, units)}
    if line > 1.001 * far:
        drifts = tr(
            "Whoever lets go drifts off along a straight line at {speed}, and after {time} is {length} from the place where they let go, "
            "or {line} by a line laid round the hull.",
            line=length(line, units),
            **places,
        )
    else:
        drifts = tr(
            "Whoever lets go drifts off along a straight line at {speed}, and after {time} is {length} from the place where they let go.",
            **places,
        )
    return [drifts, *_sweeps(traced, findings, units)]


def in_short(traced, units):
    """How far off one is at the end, in a phrase."""
    findings, after = traced.findings, seconds(traced.track.ends_s - traced.plan.start_s)
    if traced.track.end == "met a surface":
        return tr("meets the hull after {time}", time=after)
    if not len(findings["distance_m"]) or findings["leaves_m_s"] == 0:
        return tr("stays beside the hull")
    far = length(float(findings["distance_m"][-1]), units)
    return tr("is {length} from where it let go after {time}", length=far, time=after)


def _sweeps(traced, findings, units):
    if not findings["sweeps_by"]:
        return []
    first = findings["sweeps_by"][0]
    after, away = seconds(first["time_s"] - traced.plan.start_s), length(first["distance_m"], units)
    return [tr("That place sweeps by again after {time}, {length} away.", time=after, length=away)]


PAGE = Page(
    group=GROUP,
    add=tr_later_as("added", "someone who lets go of the rim"),
    short=tr_later("Let go"),
    title=tr_later("Let go"),
    one=tr_later_as("counted", "person letting go"),
    many=tr_later_as("counted", "people letting go"),
    sentence=(
        tr_later("Hangs {place.height_m:under} the rim and lets go"),
        when("speed_m_s", tr_later(", pushing off at {speed_m_s}, {elevation_deg}, {heading_deg}")),
        ".",
    ),
    rows={"speed_m_s": None, "elevation_deg": None, "heading_deg": None, "place.height_m": tr_later("Hangs at")},
    more=(tr_later("Person"), {"mass_kg": tr_later("Mass")}),
    findings=(
        Finding("distance_m", tr_later("from where they hung"), "m", tr_later("sweeps by")),
        Finding("line_m", tr_later("length of the line"), "m", tr_later("line length")),
        Finding("leaves_m_s", tr_later("leaves at"), "m/s", tr_later("rim speed")),
    ),
    terms={
        tr_later("Let go"): tr_later(
            "Someone hangs under the rim and lets go. They fly off straight; from aboard they curve away antispinward."
        ),
        tr_later("Line length"): tr_later(
            "How much line would have to be paid out, taut, from the place that was let go of. It is laid round the "
            "hull where that is in the way."
        ),
        tr_later("Sweeps by"): tr_later(
            "The place that was let go of comes round abreast, at the same angle about the axis, one turn after "
            "another, each time farther off."
        ),
    },
    stage=Stage(mover="person", beside="tether", attended_m=None, winds=True, outside=True, no_arrows=WEIGHTLESS),
)
KIND = Kind(
    name="let_go",
    fields=LetGo,
    new={"place": at_height(-1.0), "speed_m_s": 0.0, "heading_deg": 0.0, "elevation_deg": 0.0},
    check=check,
    plan=plan,
    outcome=let_go,
    in_short=in_short,
    assumptions=lambda _traced, _setting: [tr(_LEFT_OUT)],
    told=prose.told,
    page=PAGE,
    element="let_go",
)
