"""The track of one motion: its samples on the scene's grid, its events with exact states, where it lands, how high it goes.

Nothing here computes motion: the journey's path is read, in both frames, at the times wanted. Arrays are (n,) or (n, 3), SI.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from math import acos, ceil, degrees, floor, sqrt

import numpy as np

from ..physics.budget import spend
from . import winding
from .apexes import marks
from .journey import ON_THE_GROUND, Journey
from .plan import Plan
from .setting import Setting
from .trajectory import Trajectory, attitudes, of_legs

_STATE_BYTES, _MOMENT_BYTES = 210, 700  # of memory: of one instant in States, with how the body has turned; of a Moment
_LEVEL_M = 1e-9  # heights no further apart are one
_GRID_SLACK = 1e-9  # in samples: a time that is on the grid but for rounding is on the grid


@dataclass(frozen=True)
class States:
    """A motion at n times. along_m does not wrap; rotating_* are in the rotating frame's axes, inertial_m in the other's;
    local_m_s is the rotating velocity as (spinward, up, axial)."""

    time_s: np.ndarray
    along_m: np.ndarray
    height_m: np.ndarray
    axial_m: np.ndarray
    rotating_m: np.ndarray
    rotating_velocity_m_s: np.ndarray
    inertial_m: np.ndarray
    local_m_s: np.ndarray
    centrifugal_m_s2: np.ndarray
    coriolis_m_s2: np.ndarray

    def only(self, which: np.ndarray | slice) -> "States":
        """The same at the times the index or slice picks."""
        return States(*(getattr(self, name)[which] for name in self.__dataclass_fields__))

    def moment(self, k: int, kind: str, release_along_m: float) -> "Moment":
        """The Moment of number k."""
        figures = [float(v[k]) for v in (self.time_s, self.along_m, self.height_m, self.axial_m)]
        vectors = (v[k] for v in (self.rotating_m, self.rotating_velocity_m_s, self.inertial_m, self.local_m_s))
        return Moment(kind, figures[1] - release_along_m, *figures, *vectors)


@dataclass(frozen=True)
class Moment:
    """A motion at one instant. kind: "release", "apex", "deck", ... (design, section 3). drift_m: along_m beyond the release's.
    Place and vectors (3,) as in States, velocities those just before. Of a contact: the surface's name, the angle of the motion
    from its normal (None for no motion), the velocity just after, along the local directions (3,), and what of it leads away from the surface."""

    kind: str
    drift_m: float
    time_s: float
    along_m: float
    height_m: float
    axial_m: float
    rotating_m: np.ndarray
    rotating_velocity_m_s: np.ndarray
    inertial_m: np.ndarray
    local_m_s: np.ndarray
    surface: str | None = None
    incidence_deg: float | None = None
    after_m_s: np.ndarray | None = None
    leaves_m_s: float | None = None

    @property
    def speed_m_s(self) -> float:
        """Speed in the turning frame, m/s."""
        return sqrt(self.local_m_s @ self.local_m_s)


@dataclass(frozen=True)
class Track:
    """first: grid number of the first of `samples`; end: how it ended; ends_s: when; events: Moments in order of
    time; landing: the first on the ground, or None and no_landing says why; apex: the greatest height; broke: where a pour's stream
    breaks; path: the whole of it, None where the scene ends before it begins; attitude_wxyz (n, 4): how the body has turned
    in the turning frame at the samples, None where it does not; last: as the path ends."""

    first: int
    samples: States
    end: str
    ends_s: float
    events: list[Moment] = field(default_factory=list)
    landing: Moment | None = None
    no_landing: str | None = None
    apex: Moment | None = None
    broke: Moment | None = None
    path: Trajectory | None = None
    attitude_wxyz: np.ndarray | None = None
    last: Moment | None = None

    @property
    def moments(self) -> list[Moment]:
        """All that is told of it: events, apex and end."""
        return self.events if self.path is None else [*self.events, self.apex, self.last]


def grid_span(rate: Fraction, begin_s: float, end_s: float) -> tuple[int, int]:
    """First grid number and count of the samples in [begin_s, end_s] at `rate` (a Fraction) a second."""
    a_second = float(rate)
    first = ceil(a_second * begin_s - _GRID_SLACK)
    return first, max(floor(a_second * end_s + _GRID_SLACK) - first + 1, 0)


def grid_spans(rate: Fraction, begin_s: np.ndarray, end_s: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """The same of n spans (n,) at once."""
    first = np.ceil(float(rate) * begin_s - _GRID_SLACK).astype(int)
    return first, np.maximum(np.floor(float(rate) * end_s + _GRID_SLACK).astype(int) - first + 1, 0)


def grid_times(rate: Fraction, first: int, count: int, beyond: np.ndarray | int = 0) -> np.ndarray:
    """Times (count,) of grid numbers from first: k/rate, each rounded once; beyond: numbers more, of each (count,) its own."""
    return (np.arange(first, first + count) + beyond) * float(rate.denominator) / float(rate.numerator)


def of_journey(setting: Setting, plan: Plan, journey: Journey) -> Track:
    """The track of a motion whose Journey is known."""
    path = of_legs(journey.legs)
    if setting.duration_s is not None and plan.start_s >= setting.duration_s:
        return Track(0, states(setting, path, plan, np.empty(0)), "duration", setting.duration_s, no_landing="duration")
    end = _end(setting, journey)
    first, count = grid_span(setting.rate, plan.start_s, path.end_s)
    grid = np.clip(grid_times(setting.rate, first, count), path.begin_s, path.end_s)
    turning = marks(setting, plan, path)
    broke_s = [] if plan.stream is None or plan.stream.breakup_s is None else [plan.stream.breakup_s]
    happen_s = [h.time_s for h in journey.events]
    times = np.array([path.begin_s, *(t for t, _ in turning), *happen_s, path.end_s, *broke_s])
    both = states(
        setting, path, plan, np.concatenate([grid, times]), axis_s=[t for t, kind in turning if kind == "axis"]
    )
    samples, moments = both.only(slice(0, count)), both.only(slice(count, count + len(times) - len(broke_s)))
    events = _events(setting, plan, turning, journey, moments, end)
    landing = next((e for e in events if e.kind in ON_THE_GROUND), None)
    highest = int((moments.height_m >= moments.height_m.max() - _LEVEL_M).argmax())
    return Track(
        first,
        samples,
        end,
        path.end_s,
        events,
        landing,
        None if landing else _why_not(plan, journey, end),
        moments.moment(highest, "apex", plan.place[0]),
        both.moment(-1, "breaks", plan.place[0]) if broke_s else None,
        path,
        _attitude(setting, plan, path, grid),
        moments.moment(-1, "end", plan.place[0]),
    )


def _end(setting, journey):
    if journey.end is not None:
        return journey.end
    return "duration" if setting.duration_s is not None and journey.ends_s >= setting.duration_s else "time limit"


def _why_not(plan, journey, end):
    """Why there is no landing."""
    if plan.surface is not None:
        return "starts_there"
    if end == "edge":
        return "left_edge"
    if end in ("arrived", "caught"):
        return end
    met = [h.kind for h in journey.events if h.surface is not None]
    if met:
        return f"met_{met[-1]}"
    return "never_meets" if end == "time limit" else "duration"


def _attitude(setting, plan, path, grid):
    """The body's turning at the samples, or None where it has none to show: a point, a liquid, what flies as it was held."""
    if plan.stream is not None or plan.body.diameter_m == 0 or len(grid) == 0:
        return None
    spin = setting.habitat.spin
    if path.turned_rad is None and spin.steady:
        as_held = np.array([0.0, 0.0, spin.rates_rad_s[0]])
        if np.all(np.abs(path.spin_rad_s - as_held) <= 1e-12 * (1.0 + abs(as_held[2]))):
            return None
    return attitudes(path, spin, grid)


def _events(setting, plan, turning, journey, moments, end):
    """All events in order of time; what happens at one instant stays in the order it was found."""

    def at(k, kind):
        spend(bytes=_MOMENT_BYTES)
        return moments.moment(k, kind, plan.place[0])

    chart = setting.habitat.chart(plan.floor)
    events = [at(0, "release"), *(at(k, kind) for k, (_, kind) in enumerate(turning, start=1))]
    for k, event in enumerate(journey.events, start=1 + len(turning)):
        events.append(_of_event(chart, event, at(k, event.kind)))
    events.sort(key=lambda e: e.time_s)
    return [*events, at(-1, "time_limit")] if end == "time limit" else events


def _of_event(chart, event, moment):
    """The Moment of a journey's Event. Its velocity, just before, is that of its leg's end, whatever the path does after."""
    rows = chart.axes(event.position_m[None])[0]
    own = {"rotating_velocity_m_s": event.velocity_m_s, "local_m_s": rows @ event.velocity_m_s}
    if event.surface is not None:
        normal = event.surface.normal(event.position_m)
        own |= {"surface": event.kind, "incidence_deg": _incidence_deg(event.velocity_m_s, normal)}
        if event.after_m_s is not None:
            own |= {"after_m_s": rows @ event.after_m_s, "leaves_m_s": float(normal @ event.after_m_s)}
    return replace(moment, **own)


def _incidence_deg(velocity_m_s, normal):
    """Angle between a motion and a surface's normal, degrees; None for a body at rest."""
    speed = sqrt(velocity_m_s @ velocity_m_s)
    if speed == 0.0:
        return None
    return degrees(acos(min(max(-(velocity_m_s @ normal) / speed, -1.0), 1.0)))


def states(setting: Setting, path: Trajectory, plan: Plan, time_s: np.ndarray, axis_s: Sequence[float] = ()) -> States:
    """States at times (n,) inside a path (Trajectory), in any order."""
    spend(bytes=_STATE_BYTES * len(time_s))
    spin, chart = setting.habitat.spin, setting.habitat.chart(plan.floor)
    knots_s = winding.knots_s(path) if chart.winds else np.empty(0)
    read = path.both(spin, np.concatenate([knots_s, time_s]))
    rotating, moving, inertial = (each[len(knots_s) :] for each in read)
    return States(
        time_s,
        winding.along(setting, path, plan, knots_s, time_s, read[0], read[2], axis_s)
        if chart.winds
        else chart.along(rotating),
        chart.height(rotating),
        chart.axial(rotating),
        rotating,
        moving,
        inertial,
        np.einsum("nij,nj->ni", chart.axes(rotating), moving),
        spin.centrifugal(time_s, rotating),
        spin.coriolis(time_s, moving),
    )
