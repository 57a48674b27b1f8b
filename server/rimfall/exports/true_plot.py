"""The paths at one scale both ways, seen along the axis of spin from beside them: the ground bends as it bends.

The page's right and up are the local directions under the first motion's release, where the ground is at 0. On a turntable, whose ground
is level, that is a view from the side.
"""

import numpy as np

from .drawing import Stroke
from .palette import INK, PLAIN, style_of
from .plot_frame import BASE_MM, Frame, Line, axes, lines

_GROUND_POINTS = 721
_LEAST_M = 0.1
_MARGIN = 0.06  # of the longer side, left free round the paths
_SCALES = (1, 2, 2.5, 5)


def true_chart(trace, paths, box_mm):
    """The chart from the top of a rectangle (left, top, right, bottom) of the page, no larger: its Frame, items, and how many metres
    are one on paper."""
    at = _Section(trace, paths)
    drawn = [line for f in paths for line in at.lines_of(f)]
    spans = _spans([(line.x, line.y) for line in drawn])
    left, top, right, bottom = box_mm
    scale = _round_up(
        1e3 * max((spans[0][1] - spans[0][0]) / (right - left), (spans[1][1] - spans[1][0]) / (bottom - top))
    )
    wide, high = (1e3 * (b - a) / scale for a, b in spans)
    frame = Frame(((left + right - wide) / 2, top, (left + right + wide) / 2, top + high), *spans)
    about = max(2, min(7, int(wide / 18))), max(2, min(6, int(high / 12)))
    ground = [Stroke(part, 2 * BASE_MM, INK) for part in _inside(frame, at.ground())]
    return frame, [*axes(frame, *about, based=False), *ground, *lines(frame, drawn)], scale


class _Section:
    """What is seen: right and up (3,) of the page, and where on the ground its origin is."""

    def __init__(self, trace, paths):
        self.habitat = trace.setting.habitat
        plan = paths[0].traced.plan if paths else None
        self.floor = plan.floor if plan else 0
        self.along, self.axial = (plan.place[0], plan.place[2]) if plan else (0.0, 0.0)
        self.chart = self.habitat.chart(self.floor)
        place = np.array([self.along, self.habitat.ground_height_m(self.axial), self.axial])
        self.origin, self.rows = self.chart.position(place), self.chart.axes_at(place)

    def at(self, position):
        """Places (n, 3) of the turning frame -> right and up (n,), (n,)."""
        return tuple((position - self.origin) @ self.rows[k] for k in (0, 1))

    def lines_of(self, one):
        """A motion's line, and that of its companion under plain gravity."""
        x, y = self.at(one.states.rotating_m)
        style, name = style_of(one.index), one.traced.motion.name
        out = [Line(x, y, style, name, (float(x[-1]), float(y[-1])))]
        if len(one.plain[0]):
            start = self.at(one.states.rotating_m[:1])
            along, height, _ = one.plain
            out.insert(0, Line(along - along[0] + start[0], height - height[0] + start[1], PLAIN))
        return out

    def ground(self):
        """The line of the ground (n, 2)."""
        half = np.pi * self.habitat.radius_m if self.chart.winds else 4 * self.habitat.radius_m
        along = self.along + np.linspace(-half, half, _GROUND_POINTS)
        high, axial = self.habitat.ground_height_m(self.axial), self.axial
        x, y = self.at(
            self.chart.position(np.stack([along, np.full_like(along, high), np.full_like(along, axial)], -1))
        )
        return np.stack([x, y], axis=1)


def _spans(points):
    """Values at the chart's sides: all points and the ground under them, with some room."""
    every = [np.concatenate([*(p[k] for p in points), [0.0]]) for k in (0, 1)]
    room = max(_MARGIN * max(float(np.ptp(v)) for v in every), _LEAST_M / 4)
    return [(float(v.min()) - room, float(v.max()) + room) for v in every]


def _round_up(scale):
    """The next of 1, 2, 2.5, 5, 10, ... at or above a scale."""
    power = 10.0 ** np.floor(np.log10(scale))
    return next(s * power for s in (*_SCALES, 10, 20) if s * power >= scale * (1 - 1e-9))


def _inside(frame, points):
    """Runs of the points (n, 2) that lie in the frame, on the page."""
    (x0, x1), (y0, y1) = frame.x_span, frame.y_span
    steps = np.linspace(0.0, 1.0, 24, endpoint=False)
    fine = np.concatenate([points[:-1, None] + steps[:, None] * np.diff(points, axis=0)[:, None]]).reshape(-1, 2)
    seen = (fine[:, 0] >= x0) & (fine[:, 0] <= x1) & (fine[:, 1] >= y0) & (fine[:, 1] <= y1)
    edges = np.flatnonzero(np.diff(np.concatenate([[0], seen.astype(int), [0]])))
    return [frame.at(*fine[a:b].T) for a, b in edges.reshape(-1, 2) if b - a > 1]
