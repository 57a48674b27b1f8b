"""What the plots draw: of each motion asked for, its place and apparent acceleration against time, contacts kept sharp. SI."""

from dataclasses import dataclass, replace

import numpy as np

from ..motions.track import States, grid_times, states

_SAMPLES = 360  # of one line, evenly spread
_MOST_CORNERS = 400  # contacts past these come closer than the paper shows


@dataclass(frozen=True)
class Flown:
    """A motion inside the file's times: its number in the scene, its Traced, its States, the last marked moment (along, height,
    time) of it, and the flat-gravity reference's along, height and time (k,), empty where there is none."""

    index: int
    traced: object
    states: States
    marked: tuple
    plain: tuple

    @property
    def landed(self):
        """Whether its landing is shown."""
        landing, shown = self.traced.track.landing, self.states.time_s
        return landing is not None and bool(shown[0] <= landing.time_s <= shown[-1])


def flown(trace, options):
    """A Flown for each motion asked for that is under way between from_s and to_s."""
    found = []
    for index, traced in enumerate(trace.motions):
        if traced.motion.name in options.motions and traced.track.path is not None:
            times = _times(traced, options)
            if len(times):
                axis_s = [e.time_s for e in traced.track.events if e.kind == "axis"]
                seen = states(trace.setting, traced.track.path, traced.plan, times, axis_s)
                one = Flown(index, traced, seen, (), _plain(trace.setting, traced, options))
                found.append(replace(one, marked=_marked(one)))
    return found


def _window(options):
    return options.from_s, np.inf if options.to_s is None else options.to_s


def _times(traced, options):
    """Times (n,) that show the motion: evenly spread, and each event with the instant after it, where velocities jump."""
    path, (from_s, to_s) = traced.track.path, _window(options)
    begin_s, end_s = max(path.begin_s, from_s), min(path.end_s, to_s)
    if end_s < begin_s:
        return np.empty(0)
    events = np.array([e.time_s for e in traced.track.events[:_MOST_CORNERS]])
    between = (events[1:] + events[:-1]) / 2
    times = np.concatenate([np.linspace(begin_s, end_s, _SAMPLES), events, np.nextafter(events, np.inf), between])
    return np.unique(times[(times >= begin_s) & (times <= end_s)])


def _marked(one):
    """Where the path's marker stands: at its first landing if that is shown, else at its end."""
    landing, seen = one.traced.track.landing, one.states
    if one.landed:
        return landing.along_m, landing.height_m, landing.time_s
    return float(seen.along_m[-1]), float(seen.height_m[-1]), float(seen.time_s[-1])


def _plain(setting, traced, options):
    """The flat-gravity reference's along, height and time (k,): to its landing, or as long as the motion itself goes on."""
    beside, nothing = traced.flat_gravity, (np.empty(0),) * 3
    if beside is None or beside.count == 0:
        return nothing
    time_s = grid_times(setting.rate, beside.first, beside.count)
    along, height = beside.places_m[:, 0], beside.places_m[:, 1]
    if beside.landing is not None:
        ground_m = setting.habitat.ground_height_m(traced.plan.place[2]) + traced.plan.body.diameter_m / 2
        time_s = np.append(time_s, beside.landing["time_s"])
        along, height = np.append(along, beside.landing["along_m"]), np.append(height, ground_m)
    from_s, to_s = _window(options)
    until_s = to_s if beside.landing is not None else min(to_s, traced.track.ends_s)
    shown = (time_s >= from_s) & (time_s <= until_s)
    return along[shown], height[shown], time_s[shown]


def apparent_m_s2(setting, seen):
    """Size (n,) of the apparent acceleration at States: the turning frame's own and the room's constant pull."""
    own = setting.habitat.spin.own(seen.time_s, seen.rotating_m, seen.rotating_velocity_m_s)
    return np.linalg.norm(own + np.array(setting.habitat.pull_m_s2), axis=1)
