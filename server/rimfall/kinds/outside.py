"""What goes outside the hull, where there is no air: a straight line of the room that does not turn, or under thrust a parabola.

The habitat turns past it. Distances and a line paid out are measured to a point that goes on turning with it.
"""

from itertools import pairwise

import numpy as np

from ..fields import linear, number
from ..language import tr, tr_later
from ..motions.journey import Leg
from ..motions.path import Path
from ..physics import frames
from ..physics.brackets import narrowed
from ..physics.constants import TURN_RAD
from ..physics.turned import longest_s
from .motion import Place
from .places import between, over_its_floor

NONE_BECAUSE = "outside"  # why there is nothing under plain gravity beside it
WEIGHTLESS = ("centrifugal", "coriolis")  # arrows that tell nothing of who is weightless
_LOOK_RAD = 0.05  # of the turning, from look to look for where the structure is nearest
_MOST_SWEEPS = 3


class OutsidePlace(Place):
    """A place that may lie outside: below the ground is beyond the hull."""

    height_m: float = number(tr_later("At height"), "m", -100_000, 100_000, 0.0, shown=linear(-20, 0))


def under_the_hull(habitat, shape, motion, why):
    """Refusals of a place that is not beside the hull; why: what is said, not yet translated, as there is no outside of a habitat on the
    ground of that name of a {shape}."""
    if not habitat.in_space:
        yield "kind", motion.kind, tr(why, shape=shape)
        return
    side = habitat.hull_half_width_m(motion.place.floor)
    if abs(motion.place.axial_m) > side:
        yield "place.axial_m", motion.place.axial_m, tr("{least} to {most} m, under the hull", **between(-side, side))
    yield from over_its_floor(habitat, motion.place)


def line(setting, position, velocity, begin_s, end_s, floor=0):
    """The Leg of a body at an inertial state (3,), (3,) at begin_s that nothing but the ship's own push moves, to end_s.

    In one piece where the ground is round; else in pieces within which the frame turns little, at one rate of change, as
    what reads heights over flat floors needs them.
    """
    spin, pull = setting.habitat.spin, np.array(setting.habitat.pull_m_s2)
    edges = np.array([begin_s, max(end_s, begin_s + 1e-3)])
    if not setting.habitat.chart(floor).bends:
        edges = _cut(spin, *edges)
    since, length = edges[:-1, None] - begin_s, np.diff(edges)[:, None]
    at, moving = position + since * (velocity + 0.5 * since * pull), velocity + since * pull
    none, moved, faster = np.zeros_like(at), length * moving, length * pull
    path = np.stack([none, 0.5 * moved, moved + 0.5 * length * faster], axis=1)
    rates = np.stack([none, faster], axis=1)
    own_spin = np.array([0.0, 0.0, float(spin.rate_rad_s(begin_s))])
    return Leg(Path(edges[:-1], length[:, 0], at, moving, path, rates, begin_s, max(end_s, begin_s)), None, own_spin)


def _cut(spin, begin_s, end_s):
    """Times (S + 1,) from begin_s to end_s, the spin's knots among them, none further apart than `turned.longest_s`."""
    knots = spin.times_s[(spin.times_s > begin_s) & (spin.times_s < end_s)]
    edges = [begin_s, *knots, end_s]
    parts = [np.linspace(a, b, int((b - a) / longest_s(spin)) + 2)[:-1] for a, b in pairwise(edges)]
    return np.append(np.concatenate(parts), end_s)


def state(leg, time_s):
    """Inertial position and velocity (n, 3) of a line at times (n,)."""
    return leg.path.at(np.atleast_1d(time_s))


def seen(setting, leg, time_s):
    """Position and velocity (3,), (3,) in the turning frame at one time."""
    spin = setting.habitat.spin
    angle, omega = spin.angle_rad(time_s), spin.rate_rad_s(time_s)
    position, velocity = (v[0] for v in state(leg, time_s))
    return frames.inertial_to_rotating(position, velocity, angle, omega)


def sweeps(setting, leg, point):
    """When a point (3,) of the turning frame comes round abreast of the body again, the first three times: time and distance each.

    Abreast is at the same azimuth. Nearest it is then or about then; but from a body that was only let go the point that goes round
    never comes nearer at all: the squared distance grows by 2 s (1 - cos s) R^2 for each radian s of the turning.
    """
    spin, begin_s, end_s = setting.habitat.spin, leg.path.begin_s, leg.path.end_s
    fastest = float(np.max(np.abs(spin.rates_rad_s)))
    looks = np.linspace(begin_s, end_s, int((end_s - begin_s) * fastest / _LOOK_RAD) + 64)
    ahead = _ahead_rad(spin, leg, looks)
    passes = []
    for full in TURN_RAD * np.arange(1, _MOST_SWEEPS + 1):
        if ahead.max() < full:
            break
        k = int(np.argmax(ahead >= full))
        _, time_s = narrowed(looks[k - 1], looks[k], lambda at, full=full: _ahead_rad(spin, leg, at) >= full)
        there = frames.turn(point, float(spin.angle_rad(time_s)))
        passes.append({"time_s": time_s, "distance_m": float(np.linalg.norm(state(leg, time_s)[0][0] - there))})
    return passes


def _ahead_rad(spin, leg, time_s):
    """How far (n,) the frame has turned by times (n,) beyond what the body has gone round, which is less than half a turn."""
    begin_s, x = leg.path.begin_s, leg.path.position_m[0]
    y = state(leg, time_s)[0]
    gone = np.arctan2(x[0] * y[:, 1] - x[1] * y[:, 0], x[0] * y[:, 0] + x[1] * y[:, 1])
    return spin.angle_rad(time_s) - spin.angle_rad(begin_s) - gone


def paid_out(radius_m, point_m, samples, wound_m):
    """Length (n,) of a taut line from a point that turns with a round hull to a body, laid round the hull where that is in the way.

    point_m (3,): the point, at the hull's radius or beyond; wound_m (n,): how far the body has gone along the rim, as seen from
    there. Round a cylinder the shortest way is straight once it is unrolled: two tangents and an arc, and the length along the axis.
    """
    straight = np.linalg.norm(samples.rotating_m - point_m, axis=1)
    far = np.maximum(np.hypot(samples.rotating_m[:, 0], samples.rotating_m[:, 1]), radius_m)
    near = max(float(np.hypot(point_m[0], point_m[1])), radius_m)
    arc = np.abs(wound_m) / radius_m - np.arccos(radius_m / near) - np.arccos(radius_m / far)
    around = np.sqrt(near**2 - radius_m**2) + np.sqrt(far**2 - radius_m**2) + radius_m * arc
    return np.where(arc > 0, np.hypot(around, samples.rotating_m[:, 2] - point_m[2]), straight)


def turns_between(setting, begin_s, end_s):
    """How often the habitat turns from one time to another."""
    spin = setting.habitat.spin
    return float(spin.angle_rad(end_s) - spin.angle_rad(begin_s)) / TURN_RAD
