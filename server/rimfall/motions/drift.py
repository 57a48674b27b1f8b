"""Why a landing is where it is: the drift of what flew, with the causes switched on one after another.

First the centrifugal force alone, with the pull of the room (a ship's thrust, the gravity round a turntable), since without
any a thing would not come down: in the turning frame x'' = w^2 x, so that x = x0 cosh wt + u0/w sinh wt. Its part holds the
throw's own way too: it is the whole drift of that stage. Then Coriolis as well: the straight line of the room that does not
turn. Then the drag of the air. What is left is other: lift, buoyancy, and a spin that changes (the stages take that of the
release). Each part is the drift with its cause less the drift before. Drifts are ways along the ground, whole turns included
(`ways.py`); they are not taken apart where one cause alone carries a thing more than a quarter turn about the axis.
"""

from collections.abc import Callable, Sequence
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
_EVEN, _ODD = (
    1.0 / (k * (k - 1.0))[:, None] for k in (np.arange(2, _POWERS, 2), np.arange(3, _POWERS, 2))
)  # of those of cosh and sinh
WHOLE = "whole"  # a stage of a drift that is the motion itself
_READ_AT = 129  # times besides the steps' own at which a flight's azimuth is followed


def parts(setting: Setting, plan: Plan, track: Track, ways: Ways) -> tuple[dict | None, str | None]:
    """drift_parts_m of a motion's landing as a dict, and None; or None, and why there are none: "not_flown", "no_spin",
    "tumbles" (the axis moves), "starts_there", "met_something_first", "spin_changes" (a pour's), "no_landing_without_coriolis",
    "no_landing_without_air", "no_landing_without_the_rest", "far_round" (a cause of more than a quarter turn)."""
    return parts_of_all(setting, [(plan, track, ways)])[0]


def parts_of_all(
    setting: Setting, cases: Sequence[tuple[Plan, Track, Ways]], flies: Callable = fly
) -> list[tuple[dict | None, str | None]]:
    """`parts` of many motions, in order, worked out together; flies: `fly`, or what is the same. Raises TooMuchWork with the `index` of
    one."""
    whys = [_why_none(setting, plan, track) for plan, track, _ in cases]
    numbers = [k for k, why in enumerate(whys) if why is None]
    with passing():
        flights = [_flight(setting, *cases[k][:2]) for k in numbers]
        try:
            ends = (
                list(zip(_without_coriolis(flights), *_flown(setting, flights, flies), strict=True)) if flights else []
            )
        except TooMuchWork as exceeded:
            exceeded.index = numbers[exceeded.index or 0]
            raise
        out = [(None, why) for why in whys]
        for k, flight, own in zip(numbers, flights, ends, strict=True):
            out[k] = _parts(flight, own, *cases[k][1:])
    return out


def _parts(flight, ends, track, ways):
    """Those of a flight; ends: where it comes down without Coriolis, without air, without the rest: (position, azimuth from the release),
    None where it does not come down on the ground first, WHOLE where it is the motion itself."""
    for without, end in zip(("coriolis", "air", "the_rest"), ends, strict=True):
        if end is None:
            return None, f"no_landing_without_{without}"
    ways.to(track.moments)  # all at once: the answer will ask for them
    (way,) = ways.to([track.landing])
    others = flight.drifts_m(ways, [end for end in ends if end is not WHOLE])
    so_far, causes = 0.0, {}
    for cause, end in zip(ORDER, ends, strict=False):
        stage_m = way.in_all_m if end is WHOLE else next(others)
        causes[cause], so_far = stage_m - so_far, stage_m
    causes["other"] = way.in_all_m - so_far
    if way.round_m is not None and max(map(abs, causes.values())) > _QUARTER * way.round_m:
        return None, FAR_ROUND
    return {"order": list(ORDER), **causes}, None


def _flown(setting, flights, flies):
    """Where _Flights come down without air and with it, as `_parts` has it: two lists, one a flight; those that share a spin and the air
    fly together."""
    bare, aired, together = [WHOLE] * len(flights), [WHOLE] * len(flights), {}
    for k, flight in enumerate(flights):
        is_plain = _is_plain(setting, flight.release)
        if not is_plain or setting.air is not None:
            together.setdefault((flight.omega_rad_s, False), []).append(k)
        if not is_plain and setting.air is not None:
            together.setdefault((flight.omega_rad_s, True), []).append(k)
    for (omega, in_air), numbers in together.items():
        spin = steady(omega)
        medium = Medium(spin, setting.air if in_air else None, setting.medium.deck_radius_m)
        releases = [flights[k].plain_release() for k in numbers]
        for k, result in zip(numbers, _fly(flies, medium, releases, numbers), strict=True):
            (aired if in_air else bare)[k] = result and flights[k].landed(spin, result, in_air)
    return bare, bare if setting.air is None else aired


def _is_plain(setting, release):
    """Whether nothing but drag bends a flight, at a steady spin."""
    return setting.habitat.spin.steady and not release.lifts and not release.body.buoyant


def _fly(flies, medium, releases, numbers):
    """The FlightResult of each, None of what would take too many steps."""
    try:
        return flies(medium, releases)
    except StepLimitExceeded:
        if len(releases) == 1:
            return [None]
        return [_fly(flies, medium, [one], [k])[0] for one, k in zip(releases, numbers, strict=True)]
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
    """A release, its state (3,) in the turning frame, the rate there, and how long it might fly."""

    release: Release
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    omega_rad_s: float
    limit_s: float

    def plain_release(self):
        """The release at a steady spin from its own time on, without lift and buoyancy."""
        state = frames.rotating_to_inertial(self.position_m, self.velocity_m_s, 0.0, self.omega_rad_s)
        body = replace(self.release.body, buoyant=False) if self.release.body.buoyant else self.release.body
        return Release(self.release.room, body, 0.0, *state, self.limit_s, self.release.spin_rad_s)

    def landed(self, spin, flight, in_air):
        """Where such a flight comes down, and how far round from the release; None where it does not come down on the ground first."""
        path = flight.path
        times = np.append(path.start_s[path.start_s < path.end_s], path.end_s)
        if in_air:
            times = np.unique(np.concatenate([times, np.linspace(0.0, path.end_s, _READ_AT)]))
        positions, turned_rad = path.at(times)[0], float(spin.angle_rad(path.end_s))
        end = frames.turn(positions[-1], -turned_rad)
        if flight.surface is None or not _is_ground(flight.surface, end):
            return None
        return end, float(np.add.reduce(frames.azimuth_steps(positions))) - turned_rad

    def landed_at(self, surface, end):
        """The same of what comes to a surface at a position (3,) of the turning frame."""
        if not _is_ground(surface, end):
            return None
        return end, float(frames.azimuth_steps(np.array([self.position_m, end]))[0])

    def drifts_m(self, ways, ends):
        """How far along the ground from the release such ends are, one after another."""
        positions, swept_rad = (np.array(column) for column in zip(*ends, strict=True))
        along_m = ways.habitat.radius_m * swept_rad
        return (way.in_all_m for way in ways.at(ways.plan.place, along_m, positions, self.release.body.radius_m))


def _without_coriolis(flights):
    """Where _Flights come down under the centrifugal force and the pull alone, x'' = w^2 x, as `_parts` has it; those in one room
    together. Raises TooMuchWork with the `index` of one."""
    out, rooms = [None] * len(flights), {}
    for k, flight in enumerate(flights):
        rooms.setdefault(id(flight.release.room), []).append(k)
    for numbers in rooms.values():
        flown = _CarriedOut([flights[k] for k in numbers])
        try:
            for k, end in zip(numbers, flown.ends(), strict=True):
                out[k] = end
        except TooMuchWork as exceeded:
            exceeded.index = numbers[exceeded.index or 0]
            raise
    return out


class _CarriedOut:
    """F flights in one room under the centrifugal force and the pull alone: states (3, F) in the turning frame, and their rates (F,)."""

    def __init__(self, flights):
        self._flights, room = flights, flights[0].release.room
        self._surfaces, self._pull = room.surfaces, room.pull_m_s2[2]
        self._position, self._velocity = (
            np.array([getattr(each, name) for each in flights]).T for name in ("position_m", "velocity_m_s")
        )
        self._radius_m = np.array([each.release.body.radius_m for each in flights])
        self._w = np.array([abs(each.omega_rad_s) for each in flights])
        self._limit_s = np.array([each.limit_s for each in flights])
        with np.errstate(over="ignore"):  # of a spin next to none
            self._length_s = np.minimum(turned.MOST_RAD / self._w, self._limit_s)

    def ends(self):
        """Where each comes down."""
        out, touch = [None] * len(self._flights), self._touch()
        at_once = (touch < 0).any(axis=0)
        for f in at_once.nonzero()[0].tolist():
            surface = self._surfaces[int(np.argmax(touch[:, f] < 0))]
            out[f] = self._flights[f].landed_at(surface, self._position[:, f])
        up, first, last = ~at_once, 0, np.ceil(self._leaves_s() / self._length_s)
        while (up := up & (first < last)).any():
            some = up.nonzero()[0]
            try:
                spend(_STEPS_AT_ONCE * len(some))
            except TooMuchWork as exceeded:
                exceeded.index = int(some[0])
                raise
            for f, end in self._met(some, first, touch):
                out[f], up[f] = end, False
            first += _STEPS_AT_ONCE
        return out

    def _met(self, some, first, touch):
        """(number, where it comes down) of each of an index that meets something within so many steps from the one numbered `first` on."""
        step = self._steps(some, first)
        state = np.zeros((len(self._surfaces), _STEPS_AT_ONCE, len(some)), dtype=int)
        if first == 0:
            state[:, 0] = touch[:, some]
        count = _STEPS_AT_ONCE * len(some)
        radius_m = np.broadcast_to(self._radius_m[some], (_STEPS_AT_ONCE, len(some))).reshape(count)
        s, which = first_contact(step, self._surfaces, radius_m, state.reshape(-1, count))
        meets = (s <= 1.0).reshape(_STEPS_AT_ONCE, -1)
        met = meets.any(axis=0).nonzero()[0]
        k = meets.argmax(axis=0)[met] * len(some) + met
        places = (step.position_m[:, k] + bernstein.value(step.path_m[..., k], s[k])).T if len(k) else ()
        for f, number, place in zip(some[met].tolist(), k.tolist(), places, strict=True):
            in_time = step.elapsed_s[number] + s[number] * step.length_s[number] <= self._limit_s[f]
            yield f, self._flights[f].landed_at(self._surfaces[which[number]], place) if in_time else None

    def _steps(self, some, first):
        """The Step of so many steps of each of an index from its own numbered `first` on, one after another of all, in the turning frame."""
        pull, length_s, w = self._pull, self._length_s[some], self._w[some]
        since_s = (first + np.arange(_STEPS_AT_ONCE))[:, None] * length_s
        position, velocity = self._turned(some, w, since_s)
        position[2] = self._position[2, some] + since_s * (self._velocity[2, some] + 0.5 * pull * since_s)
        velocity[2] = self._velocity[2, some] + pull * since_s
        path_m = np.zeros((_POWERS, *position.shape))
        path_m[1] = length_s * velocity
        square = (w * length_s) ** 2
        path_m[2::2, :2] = np.multiply.accumulate(_EVEN * square)[:, None, None] * position[:2]
        path_m[3::2, :2] = np.multiply.accumulate(_ODD * square)[:, None, None] * path_m[1, :2]
        path_m[2, 2] = 0.5 * pull * length_s**2
        path_m = bernstein.from_powers(path_m.reshape(_POWERS, 3, -1))
        length_s = np.broadcast_to(length_s, since_s.shape).reshape(-1)
        states = (each.reshape(3, -1) for each in (position, velocity))
        return Step(since_s.reshape(-1), length_s, *states, path_m, np.zeros_like(path_m))

    def _turned(self, some, w, since_s):
        """Position and velocity (3, K, F) after times (K, F): x = p e^wt + q e^-wt, which keeps what comes to rest on the axis; before a
        radian x = a cosh wt + b t (sinh wt)/wt, which keeps its digits however slow the spin."""
        place, speed, phase = self._position[:, None, some], self._velocity[:, None, some], w * since_s
        early = phase[-1] < 1.0
        if early.any():
            cosh, sinh = np.cosh(phase), np.sinh(phase)
            along = np.divide(sinh, phase, out=np.ones_like(phase), where=phase > 0)
            soon = place * cosh + speed * since_s * along, place * w * sinh + speed * cosh
            if early.all():
                return soon
        with np.errstate(over="ignore", invalid="ignore"):  # of those before a radian, which are not taken
            outward, inward = 0.5 * (place + speed / w) * np.exp(phase), 0.5 * (place - speed / w) * np.exp(-phase)
        late = outward + inward, w * (outward - inward)
        return tuple(np.where(early, *both) for both in zip(soon, late, strict=True)) if early.any() else late

    def _touch(self):
        """How (surfaces, F) each stands to each surface as it is let go (`crossings.touching`)."""
        acceleration = self._w**2 * self._position
        acceleration[2] = self._pull
        states = self._position, self._velocity, acceleration, self._radius_m
        return np.array([touching(surface, *states) for surface in self._surfaces], dtype=int)

    def _leaves_s(self):
        """By when (F,) each has met something or never will: it flies away from the axis as e^wt, unless it comes to rest there."""
        grows = (self._w * self._position[:2] + self._velocity[:2] != 0).any(axis=0)
        with np.errstate(over="ignore"):
            return np.where(grows, np.minimum(self._limit_s, _GREATEST_EXPONENT / self._w), self._limit_s)


def _is_ground(surface, position):
    return not surface.edge and surface.name_at(position) in ON_THE_GROUND


def _flight(setting, plan, track):
    course, release = plan.course, track.events[0]
    first = course.first if course.opening is None else course.opening.release
    limit_s = max(first.end_s, track.landing.time_s) - first.time_s
    begins = release.rotating_m, release.rotating_velocity_m_s, setting.omega_rad_s(first.time_s)
    return _Flight(first, *begins, limit_s)
