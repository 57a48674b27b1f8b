"""How a craft's axes go round its angular momentum while it tumbles: their ways over a sphere, seen with the momentum upright, and the
cones that hold them.

Made from the finding `tumble` of an answer alone. Millimetres, y downward; for the page and for print.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from ..language import tr, tr_later
from ..physics.quaternions import matrices, slerp
from ..scene.craft.words import duration, figure
from .drawing import Stroke, Text
from .palette import INK, PATHS, SOFT
from .plot_frame import HAIR_MM, TEXT_MM

_UP_RAD = np.radians(24.0)  # how far from above the sphere is seen
_RADIUS = 0.155  # of the drawing's width
_MOST_MM = 20.0
_LEFT = 0.42  # of its share of the width: a sphere's middle, for its angles stand beside it
_WAY_MM, _THIN_MM, _BACK = 0.35, 0.08, 0.4
_FULL = 10  # times round up to which a way is drawn at its full width: of more it would be one blot
_ENOUGH = 6  # samples a turn below which a way would show another motion
_BETWEEN = 4  # points of a way to a sample
_MOST = 1_200  # samples of a way that are drawn: of more, nothing is to be seen
_SAME = np.radians(2.0)  # two axes, or cones, nearer than that are drawn as one
_ROUND = np.linspace(0.0, 2 * np.pi, 73)
_ARROW = 1.28  # of the radius


@dataclass(frozen=True)
class Way:
    """name: in English. points (n, 3), of length 1: where an axis points, sample by sample: right, toward the eye's side and up along the
    momentum. line (m, 3): the same as a line of the first _MOST, or None where they are too far apart for one."""

    name: str
    points: np.ndarray
    line: np.ndarray | None

    @property
    def angles_rad(self):
        """How far from the momentum (n,)."""
        return np.arccos(np.clip(self.points[:, 2], -1.0, 1.0))


def ways(finding):
    """The Ways of a finding's axes: z, and the axis of greatest inertia where that is another; none of a craft that stands."""
    momentum = np.array(finding["angular_momentum_kg_m2_s"])
    size = np.linalg.norm(momentum)
    if not size:
        return ()
    samples = np.array(finding["quaternion_wxyz"])
    turns, (between, step_rad) = matrices(samples), _between(samples[:_MOST])
    up = turns[0] @ momentum / size
    rows = np.stack([*_level(up), up])
    named = [("z", np.array([0.0, 0.0, 1.0])), (tr_later("greatest inertia"), np.array(finding["final_axis"]))]
    if abs(named[0][1] @ named[1][1]) > np.cos(_SAME):
        named = [(tr_later("z, greatest inertia"), named[0][1])]
    line = matrices(between) if step_rad * _ENOUGH <= 2 * np.pi else None
    return tuple(
        Way(name, (turns @ axis) @ rows.T, None if line is None else (line @ axis) @ rows.T) for name, axis in named
    )


def _between(turns):
    """Quaternions (n, 4) with some between each two, turned evenly from one to the next, and the greatest angle between two of them."""
    before, after = (np.repeat(ends, _BETWEEN, axis=0) for ends in (turns[:-1], turns[1:]))
    shares = np.tile(np.arange(_BETWEEN) / _BETWEEN, len(turns) - 1)[:, None]
    alike = np.abs(np.sum(turns[:-1] * turns[1:], axis=1)).min()
    return np.concatenate([slerp(before, after, shares), turns[-1:]]), float(2 * np.arccos(min(alike, 1.0)))


def _level(up):
    """Two ways square to up and to each other, (right, toward the eye)."""
    first = np.array([0.0, 1.0, 0.0]) if abs(up[1]) < 0.9 else np.array([1.0, 0.0, 0.0])
    right = np.cross(first, up)
    right /= np.linalg.norm(right)
    return right, np.cross(right, up)


def seen(points):
    """Points (n, 3) of the sphere as they are seen: right and down of its middle (n, 2), in radii; and which of them are on this side (n,)."""
    right, toward, up = points.T
    down = toward * np.sin(_UP_RAD) - up * np.cos(_UP_RAD)
    return np.stack([right, down], axis=1), toward * np.cos(_UP_RAD) + up * np.sin(_UP_RAD) >= 0


def spheres(finding, width_mm):
    """What is drawn (words), items and height, millimetres; None of a craft that stands."""
    drawn = ways(finding)
    if not drawn:
        return None
    radius = min(_RADIUS * width_mm, _MOST_MM)
    middle_mm = _ARROW * radius + TEXT_MM
    items = []
    for number, way in enumerate(drawn):
        middle = np.array([width_mm * (number + _LEFT) / len(drawn), middle_mm])
        items += _sphere(way, middle, radius, PATHS[1 if number == 0 else 5].paper)
    return _said(drawn, finding), tuple(items), middle_mm + radius + 1.8 * TEXT_MM


def _said(drawn, finding):
    said = (
        tr(
            "With the momentum upright, where z points, and where its axis of greatest inertia does; dashed, the cones that hold it, °."
        )
        if len(drawn) > 1
        else tr("With the momentum upright, where z points; dashed, the cones that hold it, °.")
    )
    if drawn[0].line is None:
        return f"{said} {tr('Its samples are too far apart for a line.')}"
    if len(drawn[0].points) > _MOST:
        time = duration(finding["time_s"][_MOST - 1])
        return f"{said} {tr('The line is of its first {time}.', time=time)}"
    return said


def _sphere(way, middle, radius, colour):
    def on_paper(points):
        flat, near = seen(points)
        return middle + radius * flat, near

    edge = np.stack([np.cos(_ROUND), np.sin(_ROUND)], axis=1)
    items = [Stroke(middle + radius * edge, HAIR_MM, SOFT, closed=True)]
    top = middle - [0.0, radius * np.cos(_UP_RAD)]
    tip = middle - [0.0, radius * _ARROW]
    head = tip + np.array([[-0.9, 1.6], [0.0, 0.0], [0.9, 1.6]])
    items += [Stroke(np.stack([top, tip]), _WAY_MM, INK), Stroke(head, _WAY_MM, INK)]
    if way.line is not None:
        items += _runs(*on_paper(way.line), colour, _width_mm(way.line))
    cones = _cones(way.angles_rad)
    for angle in cones:
        runs = _split(*on_paper(_circle(angle)))
        items += [Stroke(run, HAIR_MM, SOFT, (0.9, 0.7), opacity=1.0 if front else _BACK) for run, front in runs]
    items += _labels(cones, middle, radius)
    items.append(Text(middle[0], middle[1] + radius + 1.5 * TEXT_MM, tr(way.name), TEXT_MM, "middle", 600))
    return items


def _width_mm(line):
    times_round = np.linalg.norm(np.diff(line, axis=0), axis=1).sum() / (2 * np.pi)
    return float(max(_THIN_MM, _WAY_MM * min(1.0, _FULL / times_round))) if times_round else _WAY_MM


def _runs(flat, near, colour, width_mm):
    return [
        Stroke(run, width_mm, colour, opacity=1.0 if front else _BACK, role="way") for run, front in _split(flat, near)
    ]


def _split(flat, near):
    """Points (n, 2) as runs on this side and on the other; each begins where the one before ends."""
    ends = [0, *(np.flatnonzero(np.diff(near.astype(int))) + 1), len(flat)]
    runs = [(flat[max(a - 1, 0) : b], bool(near[a])) for a, b in pairwise(ends)]
    return [(run, front) for run, front in runs if len(run) > 1]


def _cones(angles_rad):
    least, most = float(angles_rad.min()), float(angles_rad.max())
    return (most,) if most - least < _SAME else (least, most)


def _circle(angle_rad):
    return np.stack(
        [
            np.sin(angle_rad) * np.cos(_ROUND),
            np.sin(angle_rad) * np.sin(_ROUND),
            np.full_like(_ROUND, np.cos(angle_rad)),
        ],
        axis=1,
    )


def _labels(cones, middle, radius):
    """The cones' angles, beside the sphere at the heights of their circles and clear of each other."""
    down = [middle[1] - radius * np.cos(_UP_RAD) * np.cos(angle) + 0.35 * TEXT_MM for angle in cones]
    short = 1.1 * TEXT_MM - (down[-1] - down[0]) if len(down) > 1 else 0.0
    if short > 0:
        down = [down[0] - short / 2, down[1] + short / 2]
    right = middle[0] + radius + 1.0
    said = [f"{figure(round(float(np.degrees(angle)), 1))}°" for angle in cones]
    return [Text(right, float(at), text, TEXT_MM, role="cone") for at, text in zip(down, said, strict=True)]
