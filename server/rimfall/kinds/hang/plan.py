"""Things that hang on a line: lamps, plumb lines, pendulums. Where they lean to, how they swing, how hard they pull.

The swing is worked out in the turning frame as the plan is made (`swing.py`), and given to the journey whole.
"""

from dataclasses import dataclass
from functools import partial

import numpy as np

from ...motions.journey import Leg, Prescribed
from ...physics import frames
from ...physics.aboard import Aboard
from ...physics.bodies import as_arrays
from ...physics.forces import Medium
from ...physics.pendulum import ALONG, Hung, plumb, square_to
from ..motion import along_given, body_of, place_of
from ..places import place_near
from .swing import Swings, swing

_SHOWN_SWINGS = 4
_LEAST_SHOWN_S = 5.0
NONE_BECAUSE = "hangs"  # why it has no flat-gravity reference


@dataclass(frozen=True)
class HangingLine:
    """What a bob hangs by: pivot (3,), directions there (rows spinward, up, axial), length; law: with the air; weights: what a
    bob at rest weighs; mass_kg."""

    pivot_m: np.ndarray
    rows: np.ndarray
    length_m: float
    law: Hung
    weights: Aboard
    mass_kg: float

    def plumb(self, spin, time_s):
        """Directions (n, 3) in which it would hang at rest at times (n,); straight down where it would weigh nothing."""
        rate, change = spin.rate_rad_s(time_s), spin.change_rad_s2(time_s)
        many = self.weights.take(np.zeros(len(time_s), dtype=int))
        return plumb(many, rate, change, self.pivot_m, self.length_m, -self.rows[1]).T


def line_of(setting, motion):
    """The HangingLine of a `hang` in a setting."""
    body, floor, place = body_of(motion.body), motion.place.floor, place_of(motion)
    chart, room, medium = setting.habitat.chart(floor), setting.room(floor), setting.medium
    pivot, bodies = chart.position(place), as_arrays([body])
    forces = Aboard(medium, room, bodies)
    # What is light for its size hangs by what the air lifts it with; else a plumb line knows no air.
    weights = forces if body.buoyant else Aboard(Medium(medium.spin, None, medium.deck_radius_m), room, bodies)
    law = Hung(pivot, motion.length_m, forces)
    return HangingLine(pivot, chart.axes_at(place), motion.length_m, law, weights, body.mass_kg)


def first_state(line, spin, motion):
    """Place from the pivot and velocity (3,), (3,) of a `hang` as it begins; the push is None where it would be along the line."""
    down = line.plumb(spin, np.array([motion.start_s]))[0]
    heading = frames.aimed(1.0, motion.first_heading_deg, 0.0) @ line.rows
    angle, toward = motion.first_angle_deg, square_to(down, heading, line.rows[1])
    away = frames.cos_deg(angle) * down + frames.sin_deg(angle) * toward
    if not motion.speed_m_s:
        return line.length_m * away, np.zeros(3)
    aimed = frames.aimed(1.0, motion.heading_deg, 0.0) @ line.rows
    push = aimed - (aimed @ away) * away
    size = float(np.linalg.norm(push))
    return line.length_m * away, motion.speed_m_s * push / size if size > ALONG else None


def plan(setting, motion):
    """Plan of a `hang` of the scene document. Raises StepLimitExceeded where it swings too often to be worked out."""
    floor, start_s, spin = motion.place.floor, motion.start_s, setting.habitat.spin
    body, chart, line = body_of(motion.body), setting.habitat.chart(floor), line_of(setting, motion)
    away, velocity = first_state(line, spin, motion)
    room = setting.room(floor)
    end_s = min(setting.limit_s(start_s), start_s + _shown_s(setting, line, motion))
    swung = swing(spin, line.law, room, body.radius_m, start_s, max(end_s, start_s), away, velocity)
    first = line.pivot_m + away
    given = Prescribed((Leg(swung.path, line.law, np.zeros(3)),), tuple(swung.events), swung.end)
    place, moves = place_near(chart, place_of(motion), first), chart.axes(first[None])[0] @ velocity
    tells = partial(_findings, line, swung.slack_s)
    return along_given(motion, place, moves, body, given, NONE_BECAUSE, findings=tells)


def _shown_s(setting, line, motion):
    """How long it is followed where the scene names no end: what hangs never ends, and sixty seconds of it would drown all else."""
    if setting.duration_s is not None:
        return np.inf
    weight = setting.weight_m_s2(motion.start_s, place_of(motion), motion.place.floor)
    swings_s = _SHOWN_SWINGS * 2 * np.pi * np.sqrt(line.length_m / weight) if weight else np.inf
    changing_s = setting.habitat.spin.times_s[-1] - motion.start_s
    return max(_LEAST_SHOWN_S, swings_s, changing_s + _LEAST_SHOWN_S if changing_s > 0 else 0.0)


def _findings(line, slack_s, setting, _plan, track):
    """What a `hang` tells: how its line leans from the upright at rest, at the samples, and whether it then floats above its pivot; how
    far the line is from that, its pull, its swings."""
    samples, spin = track.samples, setting.habitat.spin
    down = _downs(line, spin, samples.time_s)
    away = (samples.rotating_m - line.pivot_m) / line.length_m
    leans = np.degrees(_angle(-down, line.rows[1]))
    floats = (leans > 90.0) & (
        line.weights is line.law.forces
    )  # only what the air bears: a heavy thing may be flung as high
    swings = Swings(line, spin, track.path, counted=not slack_s)
    return {
        "pivot_rotating_m": line.pivot_m,
        "plumb_rotating": down,
        "plumb_deg": np.where(floats, 180.0 - leans, leans),
        "floats": bool(np.any(floats)),
        "swing_deg": np.degrees(_angle(away, down)),
        "tension_n": _tension(line, slack_s, spin, samples),
        "slack": bool(slack_s),
        "period_s": swings.period_s,
        "over_the_top": swings.over_the_top,
        "always_over": swings.always_over,
        "plane_turns_deg": swings.plane_turns_deg,
        "plane_turns_deg_per_h": swings.plane_turns_deg_per_h,
    }


def _downs(line, spin, time_s):
    """Plumb directions (n, 3) at times (n,): one search where the spin is steady."""
    if spin.steady or not len(time_s):
        return np.repeat(line.plumb(spin, np.zeros(1)), len(time_s), axis=0)
    return line.plumb(spin, time_s)


def _angle(a, b):
    """Angle (n,) between vectors (n, 3) and (n, 3) or (3,), radians, exact also where it is small."""
    b = np.broadcast_to(b, a.shape)
    return np.arctan2(np.linalg.norm(np.cross(a, b), axis=1), np.einsum("ni,ni->n", a, b))


def _tension(line, slack_s, spin, samples):
    """The line's pull (n,), newtons, at States; none while it is slack."""
    law = line.law.take(np.zeros(len(samples.time_s), dtype=int))
    rate = spin.rate_rad_s(samples.time_s), spin.change_rad_s2(samples.time_s)
    place = (samples.rotating_m - line.pivot_m).T
    pull = line.mass_kg * law.forces.added_mass_factor * law.pull_m_s2(rate, place, samples.rotating_velocity_m_s.T)
    for begin_s, end_s in slack_s:
        pull[(samples.time_s >= begin_s) & (samples.time_s <= end_s)] = 0.0
    return np.maximum(pull, 0.0)
