"""Where in a track its first free flight ends, because the thing has landed, bounces, or is held from there on.

What is known of the habitat does not tell that, and is let go of: the rows before are of a free flight, those after are at rest, go along
at one height, or are of another free flight, and no free flight goes through both. A change of velocity with which it goes on faster than
it came is none: nothing at rest aboard gives speed.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from .chances import p_value
from .sights import part
from .trials import tried

FREE_ABOVE, NOT_FREE_BELOW = 1e-2, 1e-3  # chances of a misfit
_LEAST_ROWS = _LEAST_AFTER = 6  # of the first flight, and of one after it, for that they tell something
_MOST_OF_IT = 2 / 3  # of the rows after a bounce, which must be of free flights, or along
_AT_REST, _NEVER = 3.0, 1e-9  # standard deviations, and the chance of a misfit, from which on it moves
_CLEAR = 4.5  # the same: a change of velocity, or rows off the flight before them
_WINDOWS = (5, 8, 12)  # rows to either side that a change of velocity is looked for through
_MOST_CHANGES = 8
_LAST = 3  # rows at the end that are too few to tell what they are of


@dataclass(frozen=True)
class End:
    """How many rows are of the first free flight, and what comes then: "rest", "along" (at one height), "bounce", or "off" (rows too few to
    tell). change_m_s: of a bounce, how much its velocity changes; None through a camera."""

    rows: int
    kind: str
    change_m_s: float | None = None


def first_flight(sight, known, resistance) -> End | None:
    """The End of the first free flight of a track that as a whole is of none; None where nothing shows that it is met or held."""
    loose = known.but(radius_m=None, omega_rad_s=None, gravity_m_s2=None, start=None, speed_m_s=None)

    def flies(first, last):
        """The Trial of rows first to last - 1, where they are of a free flight; else None."""
        trial = tried(part(sight, first, last), loose, resistance)
        return trial if trial.problem.freedom > 0 and trial.p_value > FREE_ABOVE else None

    count = len(sight.time_s)
    resting = _resting(sight)
    begins_rest = count - resting if resting > 1 else count
    if resting > 1:
        for rows in (begins_rest + 1, begins_rest):
            if rows >= _LEAST_ROWS and (trial := flies(0, rows)) and _off(sight, trial, count - 1):
                return End(rows, "rest")
    changes = [one for one in _changes(sight) if one[0] <= begins_rest]
    for n, (rows, change_m_s, slower) in enumerate(changes):
        if rows < _LEAST_ROWS:
            continue
        if flies(0, rows) is None:
            return None
        edges = [one[0] for one in changes[n:]] + [begins_rest]
        if _along(sight, rows, edges[1]):
            return End(rows, "along")
        if not slower or edges[1] - rows < _LEAST_AFTER or _one_flight(sight, loose, resistance, edges[1]):
            continue
        told = sum(b - a for a, b in pairwise(edges) if b - a >= _LEAST_AFTER and (flies(a, b) or _along(sight, a, b)))
        if flies(rows, edges[1]) and told >= _MOST_OF_IT * (begins_rest - rows):
            return End(rows, "bounce", change_m_s)
    return _last_rows(sight, count, flies)


def _one_flight(sight, known, resistance, last):
    """Whether one free flight may go through the rows to last - 1."""
    return tried(part(sight, 0, last), known, resistance).p_value >= NOT_FREE_BELOW


def _last_rows(sight, count, flies):
    """The End before at most three last rows, each of which is clearly off the flight before."""
    for rows in range(count - _LAST, count):
        trial = flies(0, rows) if rows >= _LEAST_ROWS else None
        if trial is None:
            return None
        if _off(sight, trial, rows):
            return End(rows, "off")
    return None


def _off(sight, trial, row):
    """Whether a row is clearly off where a Trial's flight would be."""
    one = part(sight, row, row + 1)
    flown = trial.problem.flown(trial.theta[None], sight.time_s[row : row + 1])
    return bool(np.max(np.abs(one.seen - one.expected(flown)[0]) / one.sd) > _CLEAR)


def _resting(sight):
    """How many rows at the end are in one place: the most that lie about their own mean as their accuracy lets them."""
    off = ((sight.seen - sight.seen[-1]) / sight.sd)[::-1]
    rows = np.arange(1, len(off) + 1)
    about = np.cumsum(off**2, axis=0) - np.cumsum(off, axis=0) ** 2 / rows[:, None]
    resting = 1
    for n in range(2, len(off) + 1):
        chance = p_value(float(about[n - 1].sum()), (n - 1) * off.shape[1])
        if chance > NOT_FREE_BELOW:
            resting = n
        elif chance < _NEVER:
            break
    return resting


def _along(sight, first, last):
    """Whether rows of a track aboard keep to one height, where those before did not."""
    if sight.names[:2] != ("along_m", "height_m") or last - first < _LEAST_AFTER:
        return False
    height, sd = sight.seen[:, 1], sight.sd[1]
    level = np.median(height[first:last])
    return bool(
        np.all(np.abs(height[first:last] - level) <= _AT_REST * sd) and np.ptp(height[:first]) > 2 * _CLEAR * sd
    )


def _changes(sight):
    """Sudden changes of velocity, in order of time: (rows before it, how much in m/s or None, whether it is slower after it). One that is
    seen through rows of which a clearer one is in the midst is that one."""
    found = [(half, *one) for half in _WINDOWS for one in _through(sight, half)]
    found.sort(key=lambda one: -one[2])
    kept = []
    for half, rows, *rest in found:
        if len(kept) < _MOST_CHANGES and all(abs(rows - other) > half for other, *_ in kept):
            kept.append((rows, *rest))
    return [(rows, change, slower) for rows, _, change, slower in sorted(kept)]


def _through(sight, half):
    """The same through so many rows to either side, each with how clear it is, (rows before, clear, change, slower)."""
    count = len(sight.time_s)
    if count < 2 * half:
        return
    edges = np.arange(half, count - half + 1)  # rows before the change
    middle = 0.5 * (sight.time_s[edges - 1] + sight.time_s[edges])
    before, sd_before = _velocity(sight, edges[:, None] + np.arange(-half, 0), middle)
    after, sd_after = _velocity(sight, edges[:, None] + np.arange(half), middle)
    jump, sd = (after - before) / sight.sd, np.hypot(sd_before, sd_after)[:, None]
    clear = np.linalg.norm(jump / sd, axis=1)
    metres = _metres(sight)
    for k in np.flatnonzero(clear > _CLEAR):
        if metres is None:
            yield int(edges[k]), float(clear[k]), None, True
            continue
        came, goes = (float(np.linalg.norm(v[k])) * metres for v in (before, after))
        slack = _CLEAR * float(np.max(sight.sd)) * float(sd[k, 0]) * metres
        yield int(edges[k]), float(clear[k]), float(np.linalg.norm(after[k] - before[k])) * metres, goes <= came + slack


def _velocity(sight, rows, at_s):
    """Slopes (B, D) at times (B,) of parabolas through rows (B, M), and their standard deviations over those of the rows (B,)."""
    since = sight.time_s[rows] - at_s[:, None]
    design = np.stack([np.ones_like(since), since, since**2], axis=-1)
    inverse = np.linalg.inv(design.transpose(0, 2, 1) @ design)
    slopes = (inverse @ design.transpose(0, 2, 1) @ sight.seen[rows])[:, 1]
    return slopes, np.sqrt(inverse[:, 1, 1])


def _metres(sight):
    """Metres in a unit of what is seen; None through a camera, where that is different everywhere."""
    return getattr(sight, "metres_a_pixel", None if sight.in_pixels else 1.0)
