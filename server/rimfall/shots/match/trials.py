"""One trial: the free path nearest to what was seen, among all that the knowledge allows; its chance; and how far each quantity may be
moved before the track speaks against it.

The 95 % interval of a quantity is that of its profile likelihood (Venzon & Moolgavkar, Applied Statistics 37 (1988) 87-94): all values
for which the rest can be chosen so that chi squared rises by no more than 3.84 above its least, the 95 % point of chi squared with one
degree of freedom (Wilks, Annals of Mathematical Statistics 9 (1938) 60-62). The accuracy of a point is given and not estimated from
the track, so it is that and not an F or t. The track decides a quantity where both ends lie within the scene document's ranges.

Wilks's theorem wants the truth inside the ranges, and a vacuum is at the end of one: there are no densities below 0 (Self & Liang, Journal
of the American Statistical Association 82 (1987) 605-610). Where a medium is sought, chi squared is therefore profiled, and its least
taken, over densities of either sign for all other quantities. The density's own interval is of those values within the range that
rise by no more above the least there (the order of Feldman & Cousins, Physical Review D 57 (1998) 3873-3889), so that it is never empty;
where there is no medium it holds that oftener than 95 % of the time.
"""

from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from ...physics.constants import G0_M_S2, RPM_RAD_S
from .chances import p_value
from .fit import Problem, extremes, least_squares
from .flight import State
from .scan import starts
from .unknowns import GREATEST_RADIUS_M, LEAST_RADIUS_M, Unknowns

RISE_95 = 3.841459  # of chi squared with one degree of freedom, at 95 %
_STARTS, _STARTS_IN_AIR = 12, 4
_SURELY_MOVES = 0.75  # of a speed: where an interval begins there, chi squared has risen by some 16 times as much at 0
_AT_REST_RISE = {2: 5.991465, 3: 7.814728}  # the same with two and three: a speed of 0 fixes so many figures


@dataclass(frozen=True)
class Trial:
    """A Problem, the best vector (P,) within range, and its chi squared."""

    problem: Problem
    theta: np.ndarray
    chi2: float

    @cached_property
    def state(self) -> State:
        """The State of the best, of arrays (1,)."""
        return self.problem.unknowns.state(self.theta[None])

    @cached_property
    def p_value(self):
        """The chance of a misfit at least that large."""
        return p_value(self.chi2, self.problem.freedom)

    @cached_property
    def flown(self):
        """The Flown of the best at the sight's times, of arrays (1, N, ...)."""
        return self.problem.flown(self.theta[None])


def tried(sight, known, resistance, mirrored=False) -> Trial:
    """The Trial of what was seen, where so much is known."""
    least = max(sight.least_radius_m() * (1 + 1e-6), LEAST_RADIUS_M)
    nominal = float(np.clip(least, LEAST_RADIUS_M, GREATEST_RADIUS_M))
    most = 1.0 if resistance is None else resistance.most
    unknowns = Unknowns(known, sight.has_axial, sight.has_deck, nominal, min(least, GREATEST_RADIUS_M), most, mirrored)
    problem = Problem(sight, unknowns, resistance)
    found = starts(problem, _STARTS if resistance is None else _STARTS_IN_AIR)
    theta, chi2 = least_squares(problem, unknowns.theta(found))
    best = int(np.argmin(chi2))
    trial = Trial(problem, theta[best], float(chi2[best]))
    return _at_the_edge(trial, found) if known.radius_m is None and sight.has_deck else trial


def _at_the_edge(trial, found):
    """The better of a trial and one with the radius at the end of its range: where a wider habitat would do better still, a step to
    there goes through habitats that do not."""
    unknowns = trial.problem.unknowns
    if trial.state.radius_m[0] < 0.05 * GREATEST_RADIUS_M:
        return trial
    held = replace(unknowns, known=unknowns.known.but(radius_m=GREATEST_RADIUS_M))
    if unknowns.known.omega_rad_s is not None and unknowns.known.gravity_m_s2 is not None:
        return trial
    problem = replace(trial.problem, unknowns=held)
    begin = replace(found, radius_m=np.full(len(found.radius_m), GREATEST_RADIUS_M))
    theta, chi2 = least_squares(problem, held.theta(_kept_gravity(begin, found)))
    best = int(np.argmin(chi2))
    if chi2[best] >= trial.chi2:
        return trial
    state = held.state(theta[best][None])
    return Trial(trial.problem, unknowns.within(unknowns.theta(state))[0], float(chi2[best]))


def _kept_gravity(state, before):
    """A State of another radius with the gravity that it had."""
    gravity = before.omega_rad_s**2 * before.radius_m
    return replace(state, omega_rad_s=np.sign(before.omega_rad_s) * np.sqrt(gravity / state.radius_m))


QUANTITIES = (
    "radius_m",
    "spin_rpm",
    "gravity_g",
    "speed_m_s",
    "spinward_m_s",
    "up_m_s",
    "axial_m_s",
    "along_m",
    "height_m",
    "axial_m",
    "medium",
    "pace",
)
_ENDLESS = 1e12
_LOG = ("radius_m", "gravity_g", "pace")
_RANGED = ("radius_m", "spin_rpm", "medium", "pace")


def figures(state: State, mirrored=False):
    """The QUANTITIES (B, Q) of a State; the spin that of the habitat, above 0 also in the mirror."""
    omega = -state.omega_rad_s if mirrored else state.omega_rad_s
    v, place = state.velocity, state.place
    columns = [state.radius_m, omega / RPM_RAD_S, state.omega_rad_s**2 * state.radius_m / G0_M_S2]
    columns += [np.linalg.norm(v, axis=1), v[:, 0], v[:, 1], v[:, 2], place[:, 0], place[:, 1], place[:, 2]]
    return np.stack([*columns, state.medium, state.pace], axis=1)


@dataclass(frozen=True)
class Figure:
    """A quantity's best value, and the ends of its interval, None where the ranges end first; decided: whether the track decides it;
    known: whether it was known."""

    value: float
    low: float | None
    high: float | None
    decided: bool
    known: bool


def intervals(trial: Trial) -> dict:
    """The Figure of each of QUANTITIES."""
    problem, unknowns = trial.problem, trial.problem.unknowns
    value = figures(trial.state, unknowns.mirrored)[0]
    free = _free(unknowns)
    out = {name: Figure(float(v), float(v), float(v), True, True) for name, v in zip(QUANTITIES, value, strict=True)}
    if not free or problem.freedom < 0:
        return out | {name: Figure(out[name].value, None, None, False, False) for name in free}
    out |= _profiled(trial, out, free)
    if "radius_m" in free and float(trial.state.radius_m[0]) > 0.999 * GREATEST_RADIUS_M:
        out |= _as_wide_as_can_be(trial, out)
    if "speed_m_s" in free:
        out["speed_m_s"] = _of_speed(trial, out["speed_m_s"])
    if "medium" in free:
        out["medium"] = replace(out["medium"], low=max(out["medium"].low or 0.0, 0.0))
    return out


def _profiled(trial, out, free):
    """The Figures of the free quantities, by their profiles."""
    problem, unknowns = trial.problem, trial.problem.unknowns
    columns = [QUANTITIES.index(name) for name in free]
    logs = np.array([name in _LOG for name in free])

    def quantities(theta):
        rows = figures(unknowns.state(theta), unknowns.mirrored)[:, columns]
        with np.errstate(divide="ignore", invalid="ignore"):
            return np.where(logs, np.log(np.maximum(rows, 1e-300)), rows)

    ranged = np.array([name in _RANGED for name in free])
    theta, least = _of_either_sign(trial)
    least = np.array([trial.chi2 if name == "medium" else least for name in free])
    ends = extremes(problem, quantities, ranged, theta, least + RISE_95)
    bounds = np.where(logs, np.exp(np.clip(ends.value, -700, 700)), ends.value)
    return {name: _figure(out[name].value, bounds[:, k], ends.open[:, k]) for k, name in enumerate(free)}


def _of_either_sign(trial):
    """The vector (P,) of a Trial, and its chi squared, where they would be if a medium that is sought might be of density below 0."""
    names = trial.problem.unknowns.names
    if "medium" not in names or trial.theta[names.index("medium")] > 0.0:
        return trial.theta, trial.chi2
    theta, chi2 = least_squares(trial.problem, trial.theta[None], in_air=True)
    return theta[0], float(chi2[0])


def _as_wide_as_can_be(trial, out):
    """Where the best habitat is as wide as the ranges allow, the profile of what does not depend on its width is that of this width, or
    wider."""
    unknowns = trial.problem.unknowns
    held = replace(unknowns, known=unknowns.known.but(radius_m=GREATEST_RADIUS_M))
    theta = held.theta(trial.state)[0]
    rest = [name for name in _free(held) if name not in _RANGED]
    figures = _profiled(Trial(replace(trial.problem, unknowns=held), theta, trial.chi2), out, rest)
    for name, figure in figures.items():
        ends = [(getattr(out[name], end), getattr(figure, end)) for end in ("low", "high")]
        low, high = (
            choose([e for e in end if e is not None], default=None)
            for choose, end in zip((min, max), ends, strict=True)
        )
        figures[name] = Figure(out[name].value, low, high, low is not None and high is not None, False)
    return figures


def _figure(value, bounds, opened):
    low, high = (
        None if shut or not abs(end) < _ENDLESS else float(end) for end, shut in zip(bounds, opened, strict=True)
    )
    low, high = (None if low is None else min(low, value)), (None if high is None else max(high, value))
    return Figure(value, low, high, low is not None and high is not None, False)


def _of_speed(trial, figure):
    """A speed's interval begins at 0 where a thing let go at rest would do: there its profile has a corner."""
    if figure.low is not None and figure.low > _SURELY_MOVES * figure.value:
        return figure
    unknowns = trial.problem.unknowns
    still = replace(unknowns, known=unknowns.known.but(speed_m_s=0.0))
    _, chi2 = least_squares(replace(trial.problem, unknowns=still), still.theta(trial.state))
    at_rest = chi2[0] - trial.chi2 <= _AT_REST_RISE[3 if unknowns.has_axial else 2]
    return replace(figure, low=0.0, decided=figure.high is not None) if at_rest else figure


def _free(unknowns):
    """The names of QUANTITIES that the track is asked for."""
    k, names = unknowns.known, []
    of_habitat = ("gravity" in unknowns.names, "omega" in unknowns.names, "log_radius" in unknowns.names)
    if of_habitat[0] or of_habitat[2] or (of_habitat[1] and k.gravity_m_s2 is not None):
        names.append("radius_m")
    if of_habitat[1]:
        names.append("spin_rpm")
    if any(of_habitat) and k.gravity_m_s2 is None:
        names.append("gravity_g")
    if k.speed_m_s is None:
        names += ["speed_m_s", "spinward_m_s", "up_m_s"] + (["axial_m_s"] if unknowns.has_axial else [])
    elif k.speed_m_s > 0:
        names += ["spinward_m_s", "up_m_s"] + (["axial_m_s"] if unknowns.has_axial else [])
    if k.start is None:
        names += ["along_m", "height_m"] + (["axial_m"] if unknowns.has_axial else [])
    names += ["medium"] if k.medium is None else []
    names += ["pace"] if k.pace is None else []
    return names
