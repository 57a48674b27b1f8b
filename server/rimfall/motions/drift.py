"""Why a landing is where it is: the drift of what flew, with the causes switched on one after another.

First the centrifugal force alone, with the pull of the room (a ship's thrust, the gravity round a turntable), since without
any a thing would not come down: in the turning frame x'' = w^2 x, so that x = x0 cosh wt + u0/w sinh wt. Its part holds the
throw's own way too: it is the whole drift of that stage. Then Coriolis as well: the straight line of the room that does not
turn. Then the drag of the air. What is left is other: lift, buoyancy, and a spin that changes (the stages take that of the
release). Each part is the drift with its cause less the drift before. Drifts are ways along the ground, whole turns included
(`ways.py`); they are not taken apart where one cause alone carries a thing more than a quarter turn about the axis.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from ..physics import bernstein, frames, turned
from ..physics.budget import TooMuchWork, passing, spend
from ..physics.crossings import first_contact, touching
from ..physics.forces import Medium
from ..physics.integrate import Step
from ..physics.spin import steady
from .flight import Release, StepLimitExceeded, fly
from .journey import ON_THE_GROUND
from .plan import Plan
from .setting import Setting
from .track import Track
from .ways import Ways

ORDER = ("centrifugal", "coriolis", "drag", "other")
FAR_ROUND = "far_round"
_POWERS = 15  # of a step: what is left of cosh within turned.MOST_RAD is rounding
_STEPS_AT_ONCE = 8
_GREATEST_EXPONENT = 300.0  # of e: beyond it all is far past every surface
_QUARTER = 0.25  # of a turn: a part beyond it says nothing of where a thing lands
_READ_AT = 129  # times besides the steps' own at which a flight's azimuth is followed


def parts(setting: Setting, plan: Plan, track: Track, ways: Ways) -> tuple[dict | None, str | None]:
    """drift_parts_m of a motion's landing as a dict, and None; or None, and why there are none: "not_flown", "no_spin",
    "tumbles" (the axis moves), "starts_there", "met_something_first", "spin_changes" (a pour's), "no_landing_without_coriolis",
    "no_landing_without_air", "no_landing_without_the_rest", "far_round" (a cause of more than a quarter turn)."""
    return parts_of_all(setting, [(plan, track, ways)])[0]


def parts_of_all(setting: Setting, cases: Sequence[tuple[Plan, Track, Ways]]) -> list[tuple[dict | None, str | None]]:
    """`parts` of many motions, in order, flown together. Raises TooMuchWork with the `index` of one."""
    whys = [_why_none(setting, plan, track) for plan, track, _ in cases]
    flights = [None if why else _flight(setting, *case) for why, case in zip(whys, cases, strict=True)]
    with passing():
        flown = _flown(setting, flights)
        out = []
        for k, (why, flight, case) in enumerate(zip(whys, flights, cases, strict=True)):
            try:
                out.append((None, why) if why else _parts(flight, flown[k], *case[1:]))
            except TooMuchWork as exceeded:
                exceeded.index = k
                raise
    return out


def _parts(flight, flown, track, ways):
    """Those of a flight; flown: the drift without air and with it, None where it does not land, what is left out where it is the whole."""
    (way,) = ways.of([track.landing])
    drift_m = way.in_all_m
    so_far, causes = 0.0, {}
    stages = flight.without_coriolis, lambda: flown.get(False, drift_m), lambda: flown.get(True, drift_m)
    for cause, without, stage in zip(ORDER, ("coriolis", "air", "the_rest"), stages, strict=False):
        stage_m = stage()
        if stage_m is None:
            return None, f"no_landing_without_{without}"
        causes[cause], so_far = stage_m - so_far, stage_m
    causes["other"] = drift_m - so_far
    if way.round_m is not None and max(map(abs, causes.values())) > _QUARTER * way.round_m:
        return None, FAR_ROUND
    return {"order": list(ORDER), **causes}, None


def _flown(setting, flights):
    """For each _Flight (or None): {in air: drift} of what has to be flown for it, those that share a spin and the air together."""
    out, together = [{} for _ in flights], {}
    for k, flight in enumerate(flights):
        if flight is None:
            continue
        release = flight.release
        if not _is_plain(setting, release) or setting.air is not None:
            together.setdefault((flight.omega_rad_s, False), []).append(k)
        if not _is_plain(setting, release) and setting.air is not None:
            together.setdefault((flight.omega_rad_s, True), []).append(k)
    for (omega, in_air), numbers in together.items():
        spin = steady(omega)
        medium = Medium(spin, setting.air if in_air else None, setting.medium.deck_radius_m)
        for k, result in zip(
            numbers, _fly(medium, [flights[k].plain_release() for k in numbers], numbers), strict=True
        ):
            out[k][in_air] = result and flights[k].landed(spin, result, in_air)
    for drifts, flight in zip(out, flights, strict=True):
        if flight is not None and setting.air is None and drifts:
            drifts[True] = drifts[False]
    return out


def _is_plain(setting, release):
    """Whether nothing but drag bends a flight, at a steady spin."""
    return setting.habitat.spin.steady and not release.lifts and not release.body.buoyant


def _fly(medium, releases, numbers):
    """The FlightResult of each, None of what would take too many steps."""
    try:
        return fly(medium, releases)
    except StepLimitExceeded:
        if len(releases) == 1:
            return [None]
        return [_fly(medium, [one], [k])[0] for one, k in zip(releases, numbers, strict=True)]
    except TooMuchWork as exceeded:
        exceeded.index = numbers[exceeded.index or 0]
        raise


def _why_none(setting, plan, track):
    """Why a landing's drift cannot be taken apart, or None."""
    course, landing = plan.course, track.landing
    first = course.first if course.opening is None else course.opening.release
    if landing is None or not isinstance(first, Release):
        return "not_flown"
    if setting.habitat.spin.tumbles:
        return "tumbles"
    if not setting.omega_rad_s(plan.start_s):
        return "no_spin"
    if landing.time_s <= first.time_s:
        return "starts_there"
    if any(e.surface is not None and e.time_s < landing.time_s for e in track.events):
        return "met_something_first"
    return "spin_changes" if plan.stream is not None and not setting.habitat.spin.steady else None


@dataclass(frozen=True)
class _Flight:
    """A release, its state (3,) in the turning frame, the rate there, the ways of its motion, and how long it might fly."""

    release: Release
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    omega_rad_s: float
    ways: Ways
    limit_s: float

    def plain_release(self):
        """The release at a steady spin from its own time on, without lift and buoyancy."""
        state = frames.rotating_to_inertial(self.position_m, self.velocity_m_s, 0.0, self.omega_rad_s)
        body = replace(self.release.body, buoyant=False)
        release = replace(self.release, body=body, time_s=0.0, end_s=self.limit_s, lifts=False)
        return replace(release, position_m=state[0], velocity_m_s=state[1])

    def landed(self, spin, flight, in_air):
        """Drift of such a flight; None where it does not come down on the ground first."""
        path = flight.path
        times = np.unique(np.concatenate([path.start_s, np.linspace(0.0, path.end_s, _READ_AT if in_air else 2)]))
        times = times[times <= path.end_s]
        positions = path.at(times)[0]
        end = frames.turn(positions[-1], -float(spin.angle_rad(path.end_s)))
        if flight.surface is None or not _is_ground(flight.surface, end):
            return None
        swept = float(np.sum(frames.azimuth_steps(positions)) - spin.angle_rad(path.end_s))
        return self._along(end, swept)

    def without_coriolis(self):
        """Drift under the centrifugal force and the pull alone: x'' = w^2 x; None where it does not come down on the ground first."""
        length_s = min(turned.MOST_RAD / abs(self.omega_rad_s), self.limit_s)
        surfaces, touch = self.release.room.surfaces, self._touch()
        if np.any(touch < 0):
            return self._landed(surfaces[int(np.argmax(touch < 0))], self.position_m)
        for first in range(0, int(np.ceil(self._leaves_s() / length_s)), _STEPS_AT_ONCE):
            spend(_STEPS_AT_ONCE)
            step = self._steps((first + np.arange(_STEPS_AT_ONCE)) * length_s, length_s)
            state = np.zeros((len(surfaces), _STEPS_AT_ONCE), dtype=int)
            state[:, 0] = touch if first == 0 else 0
            s, which = first_contact(step, surfaces, np.full(_STEPS_AT_ONCE, self.release.body.radius_m), state)
            meets = np.flatnonzero(s <= 1.0)
            if len(meets):
                k = meets[0]
                if step.elapsed_s[k] + s[k] * length_s > self.limit_s:
                    return None
                end, _ = step.at(s[[k]], [k])
                return self._landed(surfaces[which[k]], end[:, 0])
        return None

    def _steps(self, since_s, length_s):
        """Steps of one length that begin at times (M,), in the turning frame, and powers of either's growth."""
        w, pull = abs(self.omega_rad_s), self.release.room.pull_m_s2[2]
        position, velocity = self._turned(w, since_s)
        position[2] = self.position_m[2] + since_s * (self.velocity_m_s[2] + 0.5 * pull * since_s)
        velocity[2] = self.velocity_m_s[2] + pull * since_s
        path_m = np.zeros((_POWERS, 3, len(since_s)))
        path_m[1] = length_s * velocity
        path_m[2] = 0.5 * (w * length_s) ** 2 * position
        path_m[2, 2] = 0.5 * pull * length_s**2
        for k in range(3, _POWERS):
            path_m[k, :2] = path_m[k - 2, :2] * (w * length_s) ** 2 / (k * (k - 1))
        path_m = bernstein.from_powers(path_m)
        return Step(since_s, length_s, position, velocity, path_m, np.zeros_like(path_m))

    def _turned(self, w, since_s):
        """Position and velocity (3, M) after times (M,): x = p e^wt + q e^-wt, which keeps what comes to rest on the axis; before a
        radian x = a cosh wt + b t (sinh wt)/wt, which keeps its digits however slow the spin."""
        place, speed, phase = self.position_m[:, None], self.velocity_m_s[:, None], w * since_s
        if phase[-1] < 1.0:
            along = np.divide(np.sinh(phase), phase, out=np.ones_like(phase), where=phase > 0)
            position = place * np.cosh(phase) + speed * since_s * along
            return position, place * w * np.sinh(phase) + speed * np.cosh(phase)
        outward, inward = 0.5 * (place + speed / w) * np.exp(phase), 0.5 * (place - speed / w) * np.exp(-phase)
        return outward + inward, w * (outward - inward)

    def _touch(self):
        """How it stands to each surface as it is let go (`crossings.touching`)."""
        acceleration = self.omega_rad_s**2 * self.position_m * np.array([1.0, 1.0, 0.0])
        acceleration[2] = self.release.room.pull_m_s2[2]
        state = (v[:, None] for v in (self.position_m, self.velocity_m_s, acceleration))
        position, velocity, acceleration = state
        radius = np.array([self.release.body.radius_m])
        return np.array(
            [touching(s, position, velocity, acceleration, radius)[0] for s in self.release.room.surfaces], dtype=int
        )

    def _leaves_s(self):
        """By when it has met something or never will: it flies away from the axis as e^wt, unless it comes to rest there."""
        w = abs(self.omega_rad_s)
        grows = np.any(w * self.position_m[:2] + self.velocity_m_s[:2])
        return min(self.limit_s, _GREATEST_EXPONENT / w) if grows else self.limit_s

    def _landed(self, surface, end):
        """Drift of what comes to a surface at a position (3,) of the turning frame, or None where that is not the ground."""
        if not _is_ground(surface, end):
            return None
        return self._along(end, float(frames.azimuth_steps(np.stack([self.position_m, end]))[0]))

    def _along(self, end, swept_rad):
        """How far along the ground from the release a position (3,) of the turning frame is, that azimuth away."""
        along_m = np.array([self.ways.habitat.radius_m * swept_rad])
        return self.ways.at(self.ways.plan.place, along_m, end[None], self.release.body.radius_m)[0].in_all_m


def _is_ground(surface, position):
    return not surface.edge and surface.name_at(position) in ON_THE_GROUND


def _flight(setting, plan, track, ways):
    course, release = plan.course, track.events[0]
    first = course.first if course.opening is None else course.opening.release
    limit_s = max(first.end_s, track.landing.time_s) - first.time_s
    begins = release.rotating_m, release.rotating_velocity_m_s, setting.omega_rad_s(first.time_s)
    return _Flight(first, *begins, ways, limit_s)
