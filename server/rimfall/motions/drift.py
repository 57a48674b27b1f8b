"""Why a landing is where it is: the drift of what flew, with the causes switched on one after another.

First the centrifugal force alone, with the pull of the room (a ship's thrust, the gravity round a turntable), since without
any a thing would not come down: in the turning frame x'' = w^2 x, so that x = x0 cosh wt + u0/w sinh wt. Its part holds the
throw's own way too: it is the whole drift of that stage. Then Coriolis as well: the straight line of the room that does not
turn. Then the drag of the air. What is left is other: lift, buoyancy, and a spin that changes (the stages take that of the
release). Each part is the drift with its cause less the drift before.
"""

from dataclasses import dataclass, replace

import numpy as np

from ..physics import frames
from ..physics.forces import Medium
from ..physics.spin import steady
from .flight import Release, StepLimitExceeded, fly
from .journey import ON_THE_GROUND

ORDER = ("centrifugal", "coriolis", "drag", "other")
_POINTS = 33  # of a search for a landing
_HALVINGS = 40
_BEYOND = 1.5  # it looks as far as this many times the flight, then twice as far again, up to the limit
_GREATEST_EXPONENT = 300.0  # of cosh: beyond it all is far past every surface


def parts(setting, plan, track):
    """drift_parts_m of a motion's landing as a dict, and None; or None, and why there are none: "not_flown", "no_spin",
    "starts_there", "met_something_first", "spin_changes" (a pour's), "no_landing_without_coriolis", "no_landing_without_air",
    "no_landing_without_the_rest"."""
    why = _why_none(setting, plan, track)
    if why is not None:
        return None, why
    flight = _flight(setting, plan, track)
    drift_m = track.landing.along_m - plan.place[0]
    so_far, found = 0.0, {"order": list(ORDER)}
    for cause, without, stage in _stages(setting, plan, flight, drift_m):
        there = stage()
        if there is None:
            return None, f"no_landing_without_{without}"
        found[cause], so_far = there - so_far, there
    return found | {"other": drift_m - so_far}, None


def _why_none(setting, plan, track):
    """Why a landing's drift cannot be taken apart, or None."""
    course, landing = plan.course, track.landing
    first = course.first if course.opening is None else course.opening.release
    if landing is None or not isinstance(first, Release):
        return "not_flown"
    if not setting.omega_rad_s(plan.start_s):
        return "no_spin"
    if landing.time_s <= first.time_s:
        return "starts_there"
    if any(e.surface is not None and e.time_s < landing.time_s for e in track.events):
        return "met_something_first"
    return "spin_changes" if plan.stream is not None and not setting.habitat.spin.steady else None


def _stages(setting, plan, flight, drift_m):
    """(cause, what is not yet there, drift of the stage) in order; a stage is None where it does not land."""
    yield "centrifugal", "coriolis", lambda: flight.drift(flight.without_coriolis)
    vacuum, release = setting.air is None, flight.release
    plain = setting.habitat.spin.steady and not release.lifts and not release.body.buoyant
    if vacuum and plain:
        yield "coriolis", "air", lambda: drift_m
    else:
        yield "coriolis", "air", lambda: flight.drift(flight.without_air)
    if not vacuum:
        yield "drag", "the_rest", (lambda: drift_m) if plain else (lambda: flight.with_drag(setting))
    else:
        yield "drag", "the_rest", lambda: drift_m if plain else flight.drift(flight.without_air)


@dataclass(frozen=True)
class _Flight:
    """A release, its state (3,) in the turning frame, the rate there, the chart, how long it flew and how long it might."""

    release: Release
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    omega_rad_s: float
    chart: object
    lasts_s: float
    limit_s: float

    def without_coriolis(self, since_s):
        """Positions (n, 3) in the turning frame, and their azimuth since the release less what is added: none."""
        turned = np.minimum(abs(self.omega_rad_s) * since_s, _GREATEST_EXPONENT)[:, None]
        out = np.cosh(turned) * self.position_m + np.sinh(turned) / abs(self.omega_rad_s) * self.velocity_m_s
        out[:, 2] = self._across(since_s)
        return out, np.zeros_like(since_s)

    def without_air(self, since_s):
        """The same on the straight line of the room that does not turn, as it lies before it is turned back by the second."""
        carried = self.velocity_m_s + frames.spin_cross(self.omega_rad_s, self.position_m)
        out = self.position_m + since_s[:, None] * carried
        out[:, 2] = self._across(since_s)
        return out, self.omega_rad_s * since_s

    def _across(self, since_s):
        pull = self.release.room.pull_m_s2[2]
        return self.position_m[2] + since_s * (self.velocity_m_s[2] + 0.5 * pull * since_s)

    def drift(self, stage):
        """Drift along the ground of a stage, or None where it does not come down on it first."""
        landed_s = self._landed_s(stage)
        if landed_s is None:
            return None
        line, turned = stage(np.array([landed_s[0]]))
        surface = self.release.room.surfaces[landed_s[1]]
        there = frames.turn(line, -turned) if surface.turned else line
        if surface.edge or surface.name_at(there[0]) not in ON_THE_GROUND:
            return None
        if not self.chart.winds:
            ends = frames.turn(line, -turned)
            return float(self.chart.along(ends)[0] - self.chart.along(self.position_m))
        azimuth = frames.azimuth_steps(np.stack([self.position_m, line[0]]))[0]
        return self.chart.radius_m * float(azimuth - turned[0])

    def _landed_s(self, stage):
        """When a stage meets its first surface, and the number of that; or None."""
        begin_s, end_s = 0.0, min(_BEYOND * self.lasts_s, self.limit_s)
        while True:
            times = np.linspace(begin_s, end_s, _POINTS)
            gaps = self._gaps(stage, times, not begin_s)
            k = _first_below(gaps)
            if k is not None:
                return self._closer(stage, times, gaps, k)
            if end_s >= self.limit_s:
                return None
            begin_s, end_s = end_s, min(3.0 * end_s, self.limit_s)

    def _closer(self, stage, times, gaps, k):
        """The same in the interval before times[k], from as many points there."""
        at_begin = times[k - 1] == 0.0
        times = np.linspace(times[k - 1], times[k], _POINTS)
        gaps = self._gaps(stage, times, at_begin)
        k = _first_below(gaps) or _POINTS - 1
        first = min(max(k - 1, 0), _POINTS - 3)
        found = [(_root(gaps[i, first : first + 3], k - 1 - first), i) for i in np.flatnonzero(gaps[:, k] < 0).tolist()]
        share, which = min(found) if found else (k - first, 0)
        return float(times[first] + share * (times[1] - times[0])), which

    def _gaps(self, stage, since_s, at_begin):
        """Gaps (surfaces, n) of a stage at times (n,), rising; a body that touches as it is let go is not in contact."""
        line, turned = stage(since_s)
        radius, surfaces = np.full(len(since_s), self.release.body.radius_m), self.release.room.surfaces
        # What looks the same in both frames need not be turned to.
        there = frames.turn(line, -turned).T if any(s.turned for s in surfaces) else line.T
        gaps = np.stack([s.gap(there, radius) for s in surfaces])
        if at_begin:
            gaps[:, 0] = np.maximum(gaps[:, 0], 0.0)
        return gaps

    def with_drag(self, setting):
        """Drift of the flight with drag, but no lift nor buoyancy, at the spin of the release; None where it does not land."""
        spin = steady(self.omega_rad_s)
        state = frames.rotating_to_inertial(self.position_m, self.velocity_m_s, 0.0, self.omega_rad_s)
        body = replace(self.release.body, buoyant=False)
        release = replace(self.release, body=body, time_s=0.0, end_s=self.limit_s, lifts=False)
        release = replace(release, position_m=state[0], velocity_m_s=state[1])
        try:
            (flown,) = fly(Medium(spin, setting.air, setting.medium.deck_radius_m), [release])
        except StepLimitExceeded:
            return None
        times = np.unique(np.concatenate([flown.path.start_s, np.linspace(0.0, flown.path.end_s, 4 * _POINTS)]))
        times = times[times <= flown.path.end_s]
        positions = flown.path.at(times)[0]
        turning = frames.turn(positions, -spin.angle_rad(times))
        if flown.surface is None or flown.surface.name_at(turning[-1]) not in ON_THE_GROUND:
            return None
        if not self.chart.winds:
            return float(self.chart.along(turning[-1]) - self.chart.along(turning[0]))
        azimuth = float(np.sum(frames.azimuth_steps(positions)))
        return self.chart.radius_m * (azimuth - float(spin.angle_rad(flown.path.end_s)))


def _first_below(gaps):
    """Number of the first time at which any of gaps (surfaces, n) is below 0, or None."""
    below = (gaps < 0).any(axis=0)
    k = int(below.argmax())
    return k if below[k] else None


def _root(values, low):
    """Where between low and low + 1 the parabola through three values at 0, 1, 2 falls through 0, by halving."""
    a, b, c = values.tolist()
    low, high = float(low), low + 1.0
    for _ in range(_HALVINGS):
        x = 0.5 * (low + high)
        if a + x * (b - a + 0.5 * (x - 1) * (c - 2 * b + a)) > 0:
            low = x
        else:
            high = x
    return 0.5 * (low + high)


def _flight(setting, plan, track):
    course, state = plan.course, track.events[0]
    first = course.first if course.opening is None else course.opening.release
    lasts_s = track.landing.time_s - first.time_s
    limit_s = max(first.end_s - first.time_s, lasts_s)
    begins = state.rotating_m, state.rotating_velocity_m_s, setting.omega_rad_s(first.time_s)
    return _Flight(first, *begins, setting.habitat.chart(plan.floor), lasts_s, limit_s)
