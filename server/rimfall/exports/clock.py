"""When the frames of a file are: its frames, the scene's time at each, and how fast that time goes by.

Without a retime curve frame k after `first_frame` is at k/fps of the scene's time, before time 0 too. A retime curve gives the
scene's time at some frames, from the first of which to the last the file goes. Between them it is a straight line, or smooth:
the monotone cubic of Fritsch and Butland (SIAM J. Sci. Stat. Comput. 5, 1984), which never runs past a key and never back.
"""

from dataclasses import dataclass
from math import ceil

import numpy as np

from ..physics.budget import spend

_SLACK = 1e-9  # in frames: a time that is on a frame but for rounding is on it
_FRAME_BYTES = 120  # of memory: all that is kept of one frame beside what moves
_HALVINGS = 60
SMOOTH = "smooth"


@dataclass(frozen=True)
class Clock:
    """frame (T,): numbers, with decimals between frames; time_s (T,): of the scene, never falling; shown_s (T,): of the file, from 0;
    pace (T,): seconds of the scene in a second of the file, and bend_1_s (T,) the rate of change of that; steady_pace: the pace
    without a retime curve; curve: what they are read from."""

    frame: np.ndarray
    time_s: np.ndarray
    shown_s: np.ndarray
    pace: np.ndarray
    bend_1_s: np.ndarray
    steady_pace: float | None
    curve: object
    shown_fps: float

    def frames_at(self, time_s):
        """Frame numbers (n,), with decimals, of times (n,) of the scene; the nearest where the file does not come to a time."""
        return self.curve.frames_at(np.asarray(time_s, dtype=float))

    def shown_at(self, frame):
        """Seconds of the file (n,) at frame numbers (n,)."""
        return (frame - self.frame[0]) / self.shown_fps


def clock_of(options, last_s):
    """The Clock of Options; last_s: when the last event of what they take is."""
    curve = _Straight(float(options.first_frame), options.fps) if options.retime is None else _Keyed(options.retime)
    first, last = curve.span(options, last_s)
    per_frame = options.samples_per_frame
    spend(bytes=_FRAME_BYTES * ((last - first) * per_frame + 1))
    number = np.arange(first * per_frame, last * per_frame + 1)
    time_s, slope, bend = curve.times(number, per_frame)
    frame, fps = number / per_frame, float(options.shown_fps)
    steady = float(options.shown_fps / options.fps) if options.retime is None else None
    pace = slope * fps if steady is None else np.full(len(frame), steady)
    return Clock(frame, time_s, (frame - frame[0]) / fps, pace, bend * fps**2, steady, curve, fps)


@dataclass(frozen=True)
class _Straight:
    """Frame `zero` is time 0, and every other so many frames before or after it."""

    zero: float
    fps: object

    def span(self, options, last_s):
        """First and last frame: from the first at or after from_s to the first at or after the last event (or to_s)."""
        rate = float(self.fps)
        first = ceil(options.from_s * rate - _SLACK)
        last = max(ceil((last_s if options.to_s is None else options.to_s) * rate - _SLACK), first)
        return first + options.first_frame, last + options.first_frame

    def times(self, number, per_frame):
        """Scene times (T,) of frames number/per_frame, each rounded once; their rates of change by frame, of first and second order."""
        n, d = float(self.fps.numerator), float(self.fps.denominator)
        time_s = (number - int(self.zero) * per_frame) * d / (n * per_frame)
        return time_s, np.full(len(number), d / n), np.zeros(len(number))

    def frames_at(self, time_s):
        return self.zero + time_s * float(self.fps)


class _Keyed:
    """Time against frame by keys, (frame, seconds), both rising or, of time, level."""

    def __init__(self, retime):
        self.frame, self.time_s = (np.array(column, dtype=float) for column in zip(*retime.keys, strict=True))
        self.smooth = retime.between == SMOOTH
        step = np.diff(self.frame)
        self.slopes = np.diff(self.time_s) / step
        self.ends = _monotone(step, self.slopes) if self.smooth else None

    def span(self, _options, _last_s):
        """The first key's frame and the last one's."""
        return int(self.frame[0]), int(self.frame[-1])

    def times(self, number, per_frame):
        return self._at(number / per_frame)

    def _at(self, frame):
        """Times (n,) at frames (n,), and their rates of change by frame, of first and second order; at a key those after it."""
        k = np.clip(np.searchsorted(self.frame, frame, "right") - 1, 0, len(self.slopes) - 1)
        since, step = frame - self.frame[k], np.diff(self.frame)[k]
        if not self.smooth:
            return self.time_s[k] + self.slopes[k] * since, self.slopes[k], np.zeros(len(frame))
        first, last, mean = self.ends[k], self.ends[k + 1], self.slopes[k]
        square, cube = (3 * mean - 2 * first - last) / step, (first + last - 2 * mean) / step**2
        time_s = self.time_s[k] + since * (first + since * (square + since * cube))
        return time_s, first + since * (2 * square + 3 * since * cube), 2 * square + 6 * since * cube

    def frames_at(self, time_s):
        """By halving: the curve never falls."""
        low, high = np.full(len(time_s), self.frame[0]), np.full(len(time_s), self.frame[-1])
        for _ in range(_HALVINGS):
            middle = (low + high) / 2
            before = self._at(middle)[0] < time_s
            low, high = np.where(before, middle, low), np.where(before, high, middle)
        return high


def _monotone(step, slope):
    """Slopes (K,) of a monotone cubic at K keys between which the straight slopes are (K - 1,), as Fritsch and Butland weigh them; at the
    ends the three-point formula, held to the same rule."""
    if len(slope) == 1:
        return np.repeat(slope, 2)
    inner = np.zeros(len(slope) - 1)
    a, b = slope[:-1], slope[1:]
    rises = (a > 0) & (b > 0)
    w1, w2 = 2 * step[1:] + step[:-1], step[1:] + 2 * step[:-1]
    inner[rises] = ((w1 + w2)[rises]) / (w1[rises] / a[rises] + w2[rises] / b[rises])
    return np.concatenate([[_end(step, slope)], inner, [_end(step[::-1], slope[::-1])]])


def _end(step, slope):
    wanted = ((2 * step[0] + step[1]) * slope[0] - step[0] * slope[1]) / (step[0] + step[1])
    return float(np.clip(wanted, 0.0, 3 * slope[0]))
