"""The verdict on a path: possible, possible if something is otherwise, impossible, or undecided; with the trials that show it.

A path is impossible only where the best habitat within the ranges would be that far off less than once in a thousand times, and no
single change of what is known mends it; it is possible only above one in a hundred, and where its mirror, in a habitat that turns the
other way, does not do as well.
"""

from dataclasses import dataclass, field, replace

from . import signs
from .ends import FREE_ABOVE, NOT_FREE_BELOW, End, first_flight
from .sights import part
from .trials import intervals, tried

IMPOSSIBLE_BELOW, POSSIBLE_ABOVE = NOT_FREE_BELOW, FREE_ABOVE
ALIKE = 6.635  # of chi squared with one degree of freedom, at 99 %: less tells a habitat from its mirror too poorly
PARABOLA = 10.828  # the same at 99.9 %: as much better than a planet's parabola must a habitat be that is not known
_OF_HABITAT = {"radius_m": None, "omega_rad_s": None, "gravity_m_s2": None}
MOST_CHANGES = 3
_TOGETHER = ("radius_and_spin", "habitat_and_speed")  # told only where no one thing does


@dataclass(frozen=True)
class Change:
    """Something known that would have to be otherwise: its kind, the Trial then, and its Figures."""

    kind: str
    trial: object
    figures: dict


@dataclass(frozen=True)
class Judged:
    """verdict; the Trial of the best within range, its Figures, the track beside it; mirror: the Trial of the mirror; changes: what would
    make it possible, the simplest first; signs: what shows it; end: where the free flight ends that all this is of, None where it is
    that of all rows."""

    verdict: str
    trial: object
    figures: dict
    beside: object
    mirror: object
    changes: list = field(default_factory=list)
    signs: list = field(default_factory=list)
    end: End | None = None


def judged(sight, known, resistance, reference=None) -> Judged:
    """The Judged of what was seen. resistance: how air holds the body, None in a vacuum that is known; reference: the same for air that
    is tried where a vacuum does not do. Where the thing has landed by its last rows, is held, or bounces, it is that of the rows before."""
    trial, end = tried(sight, known, resistance), None
    if trial.problem.freedom > 0 and trial.p_value < IMPOSSIBLE_BELOW:
        end = first_flight(sight, known, resistance)
    if end is not None:
        sight = part(sight, 0, end.rows)
        trial = tried(sight, known, resistance)
    return replace(_judged(sight, known, resistance, reference, trial), end=end)


def _judged(sight, known, resistance, reference, trial):
    """The Judged of all rows, of which the Trial is."""
    mirror = tried(sight, known, resistance, mirrored=True)
    figures, off = intervals(trial), signs.beside(trial)
    if trial.problem.freedom <= 0:
        count = len(sight.time_s)
        shown = [signs.Sign("too_short", 0, count - 1, count - 1, float(trial.problem.freedom))]
        return Judged("undecided", trial, figures, off, mirror, [], shown)
    if trial.p_value < IMPOSSIBLE_BELOW:
        changes = _changes(sight, known, resistance, reference, mirror)
        verdict = "possible_if" if changes else "impossible"
        return Judged(verdict, trial, figures, off, mirror, changes, _against(trial, mirror, off))
    shown = _undecided(trial, mirror, figures, off)
    return Judged("undecided" if shown else "possible", trial, figures, off, mirror, [], shown)


def _undecided(trial, mirror, figures, off):
    """Signs of why a path that fits is not said to be possible; none where it is."""
    count = len(off.time_s)
    if trial.p_value <= POSSIBLE_ABOVE:
        worst = signs.off_the_path(trial, off)
        return [signs.Sign("on_the_edge", worst.first, worst.last, worst.at, worst.figure)]
    shown = []
    if trial.problem.unknowns.known.omega_rad_s != 0.0 and mirror.chi2 - trial.chi2 < ALIKE:
        seen = [one.problem.sight.expected(one.flown)[0] for one in (trial, mirror)]
        far = (((seen[0] - seen[1]) / trial.problem.sight.sd) ** 2).sum(axis=1) ** 0.5 * off.sd_m
        shown.append(signs.Sign("mirror_fits", 0, count - 1, int(far.argmax()), float(far.max())))
    habitat = [figures[name] for name in ("radius_m", "spin_rpm", "gravity_g")]
    if not any(one.decided for one in habitat):
        shown.append(signs.Sign("too_coarse", 0, count - 1, count - 1, float(off.sd_m.mean())))
    known = trial.problem.unknowns.known
    sought = known.omega_rad_s is None and (known.radius_m is None or known.gravity_m_s2 is None)
    parabola = (
        signs.ordinary_parabola(trial, off) if shown else signs.as_a_parabola(trial, off, PARABOLA) if sought else None
    )
    return shown + ([parabola] if parabola else [])


def _against(trial, mirror, off):
    """Signs of what speaks against every free path, that in which all of it shows last."""
    found = []
    worst = signs.off_the_path(trial, off)
    if mirror.p_value > POSSIBLE_ABOVE:
        return [signs.Sign("bends_wrong_way", worst.first, worst.last, worst.at, worst.figure), worst]
    found += [
        signs.along_the_axis(off, trial.problem.sight.has_axial and not hasattr(trial.problem.sight, "rays")),
        signs.straight_fall(trial, off),
        signs.ordinary_parabola(trial, off),
        signs.bends(trial, off),
        signs.energy(trial, off),
        worst,
    ]
    return [one for one in found if one is not None]


def _changes(sight, known, resistance, reference, mirror):
    """Changes that make it possible, the simplest first, or else those that let go of all that is known of the habitat."""
    found = []
    for kind, other, medium in _otherwise(known, resistance, reference):
        if found and kind in _TOGETHER:
            continue
        trial = tried(sight, other, medium)
        if trial.p_value > POSSIBLE_ABOVE:
            found.append(Change(kind, trial, intervals(trial)))
        if len(found) == MOST_CHANGES:
            return found
    if mirror.p_value > POSSIBLE_ABOVE:
        found.append(Change("mirror", mirror, intervals(mirror)))
    return found or _with_mirror(sight, known, resistance, mirror)


def _otherwise(known, resistance, reference):
    """(kind, Known, Resistance) of each thing known that could be otherwise, and last of some together."""
    of_habitat = [name for name in _OF_HABITAT if getattr(known, name) is not None]
    names = {"radius_m": "radius_m", "omega_rad_s": "spin_rpm", "gravity_m_s2": "gravity_g"}
    for name in of_habitat:
        yield names[name], known.but(**{name: None}), resistance
    if known.speed_m_s is not None:
        yield "speed", known.but(speed_m_s=None), resistance
    if known.start is not None:
        yield "start", known.but(start=None), resistance
    if known.pace is not None and (known.omega_rad_s is not None or known.gravity_m_s2 is not None):
        yield "frame_rate", known.but(pace=None), resistance
    if known.medium is not None and reference is not None:
        yield "air", known.but(medium=None), reference
    if len(of_habitat) > 1:
        yield "radius_and_spin", known.but(**_OF_HABITAT), resistance
    if known.speed_m_s is not None and of_habitat:
        yield "habitat_and_speed", known.but(**_OF_HABITAT, speed_m_s=None), resistance


def _with_mirror(sight, known, resistance, mirror):
    """The mirror of another habitat, where nothing less will do."""
    if not any(getattr(known, name) is not None for name in _OF_HABITAT):
        return []
    trial = tried(sight, known.but(**_OF_HABITAT), resistance, mirrored=True)
    return [Change("mirror", trial, intervals(trial))] if trial.p_value > POSSIBLE_ABOVE else []
