"""The track of one motion: its samples on the scene's grid, its events with exact states, where it lands, how high it goes.

Nothing here computes motion: the flown path is read, in both frames, at the times wanted. Arrays are (n,) or (n, 3), SI.
"""

from dataclasses import dataclass, field
from math import ceil, floor

import numpy as np

from ..physics import frames
from ..physics.crossings import nearest_axis
from .flight import Path

AXIS_SHARE = 1e-9  # nearer to the axis than this share of the radius is through it
_ENDS = {"deck": "landed", "floor": "landed"}
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

    def only(self, which):
        """The same at the times the index or slice picks."""
        return States(*(getattr(self, name)[which] for name in self.__dataclass_fields__))


@dataclass(frozen=True)
class Event:
    """Something that happens at one time: kind (design, section 3), its state (States of one time), the surface's name, and
    the angle from the surface's normal, None where there is no surface or no motion."""

    kind: str
    state: States
    surface: str | None = None
    incidence_deg: float | None = None


@dataclass(frozen=True)
class Track:
    """first: grid number of the first of `samples`; end: how it ended; ends_s: when; landing: the event, or None and
    no_landing says why; apex: the state at the greatest height; broke: the state where
    a pour's stream breaks."""

    first: int
    samples: States
    end: str
    ends_s: float
    events: list = field(default_factory=list)
    landing: Event | None = None
    no_landing: str | None = None
    apex: States | None = None
    broke: States | None = None
    path: Path | None = None


def grid_span(rate, begin_s, end_s):
    """First grid number and count of the samples in [begin_s, end_s] at `rate` (a Fraction) a second."""
    first = ceil(float(rate) * begin_s - _GRID_SLACK)
    return first, max(floor(float(rate) * end_s + _GRID_SLACK) - first + 1, 0)


def grid_times(rate, first, count):
    """Times (count,) of grid numbers from first: k/rate, each rounded once."""
    return np.arange(first, first + count) * float(rate.denominator) / float(rate.numerator)


def of_flight(setting, plan, flown):
    """The track of a motion whose course has been flown (Flown)."""
    path = flown.path
    marks = _marks(setting, path)
    surface = flown.surface
    end = _end(setting, surface, path.end_s)
    if setting.duration_s is not None and plan.start_s >= setting.duration_s:
        return Track(0, states(setting, path, plan, np.empty(0)), "duration", setting.duration_s, no_landing="duration")
    first, count = grid_span(setting.rate, plan.start_s, path.end_s)
    grid = np.clip(grid_times(setting.rate, first, count), path.begin_s, path.end_s)
    broke_s = [] if plan.stream is None or plan.stream.breakup_s is None else [plan.stream.breakup_s]
    times = np.array([path.begin_s, *(t for t, _ in marks), path.end_s, *broke_s])
    both = states(setting, path, plan, np.concatenate([grid, times]), axis_s=[t for t, kind in marks if kind == "axis"])
    samples, moments = both.only(slice(0, count)), both.only(slice(count, count + len(marks) + 2))
    events = _events(marks, moments, surface, end)
    landing = events[-1] if end == "landed" else None
    highest = int(np.argmax(moments.height_m))
    return Track(
        first,
        samples,
        end,
        path.end_s,
        events,
        landing,
        _why_not(setting, surface, end),
        moments.only(slice(highest, highest + 1)),
        both.only(slice(-1, None)) if broke_s else None,
        path,
    )


def _end(setting, surface, ends_s):
    if surface is not None:
        return _ENDS.get(surface.name, "met a surface")
    return "duration" if setting.duration_s is not None and ends_s >= setting.duration_s else "time limit"


def _why_not(setting, surface, end):
    if end == "landed":
        return None
    if surface is not None:
        return f"met_{surface.name}"
    return "never_meets" if end == "time limit" else "duration"


def _marks(setting, path):
    """(time, kind) of the turning points of the height inside a path: "apex", or "axis" where it passes through."""
    s = nearest_axis(path.position_m, path.path_m)
    turning = np.isfinite(s)
    times = path.start_s[turning] + s[turning] * path.length_s[turning]
    # A piece's polynomial runs on past where the next piece begins; what it does there never happened.
    until_s = np.append(path.start_s[1:], path.end_s)[turning]
    times = times[(times > path.begin_s) & (times < np.minimum(until_s, path.end_s))]
    position, _ = path.at(times)
    through = np.hypot(position[:, 0], position[:, 1]) <= AXIS_SHARE * setting.habitat.radius_m
    return [
        (t, kind) for t, axis in zip(times, through, strict=True) for kind in (("axis", "apex") if axis else ("apex",))
    ]


def _events(marks, moments, surface, end):
    events = [Event("release", moments.only(slice(0, 1)))]
    events += [Event(kind, moments.only(slice(i, i + 1))) for i, (_, kind) in enumerate(marks, start=1)]
    last = moments.only(slice(-1, None))
    if surface is not None:
        events.append(Event(surface.name, last, surface.name, _incidence_deg(surface, last)))
    elif end == "time limit":
        events.append(Event("time_limit", last))
    return events


def _incidence_deg(surface, state):
    """Angle between the motion and the surface's normal, degrees; None for a body at rest."""
    velocity = state.rotating_velocity_m_s[0]
    speed = float(np.linalg.norm(velocity))
    if speed == 0.0:
        return None
    into = -surface.normal(state.rotating_m[0])
    return float(np.degrees(np.arccos(np.clip(velocity @ into / speed, -1.0, 1.0))))


def states(setting, path, plan, time_s, axis_s=()):
    """States at times (n,) inside a path, in any order."""
    spin, radius = setting.habitat.spin, setting.habitat.radius_m
    position, velocity = path.at(time_s)
    angle, omega = spin.angle_rad(time_s), spin.rate_rad_s(time_s)
    rotating, moving = frames.inertial_to_rotating(position, velocity, angle, omega)
    azimuth = _azimuth(setting, path, plan, time_s, position, axis_s)
    out = np.array([1.0, 1.0, 0.0])
    return States(
        time_s,
        radius * (azimuth - angle),
        frames.height_of(radius, position),
        position[:, 2],
        rotating,
        moving,
        position,
        frames.to_local(rotating, moving),
        omega[:, None] ** 2 * rotating * out,
        -2 * frames.spin_cross(omega, moving),
    )


def _azimuth(setting, path, plan, time_s, position, axis_s):
    """Unwrapped inertial azimuth (n,) at times (n,): followed from the release along the path.

    Between neighbouring times and the path's own knots it changes by less than half a turn. Where the path passes through
    the axis it steps by +pi; at the axis itself it stays what it was.
    """
    radius = setting.habitat.radius_m
    start = plan.place[0] / radius + float(setting.habitat.spin.angle_rad(path.begin_s))
    anchors = np.concatenate([[path.begin_s], path.knots_s])
    times = np.concatenate([anchors, time_s])
    order = np.argsort(times, kind="stable")
    along = np.concatenate([path.at(anchors)[0], position])[order]
    steps = frames.azimuth_steps(along)
    on_axis = np.hypot(along[:, 0], along[:, 1]) <= AXIS_SHARE * radius
    for t in axis_s:
        _cross_axis(steps, along, on_axis, times[order], t)
    if on_axis[0]:
        _leave_axis(steps, along, on_axis, start)
    azimuth = np.empty(len(times))
    azimuth[order] = start + np.concatenate([[0.0], np.cumsum(steps)])
    return azimuth[len(anchors) :]


def _cross_axis(steps, along, on_axis, times, axis_s):
    """Make the change of azimuth through the axis upward, half a turn in all: none up to the axis, all of it after."""
    before = np.flatnonzero((times < axis_s) & ~on_axis)
    after = np.flatnonzero((times > axis_s) & ~on_axis)
    if len(before) and len(after):
        steps[before[-1] : after[0]] = 0.0
        steps[after[0] - 1] = frames.azimuth_steps(along[[before[-1], after[0]]])[0] % (2 * np.pi)
    elif len(before):
        steps[before[-1] :] = 0.0


def _leave_axis(steps, along, on_axis, start):
    """For a body released on the axis, where azimuth has no meaning: turn at once to the way it leaves."""
    away = np.flatnonzero(~on_axis)
    if len(away):
        x, y = along[away[0], :2]
        turned = (np.arctan2(y, x) - start) % (2 * np.pi)
        steps[: away[0]] = 0.0
        steps[away[0] - 1] = turned if turned <= np.pi + AXIS_SHARE else turned - 2 * np.pi
