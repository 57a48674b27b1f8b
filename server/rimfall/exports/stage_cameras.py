"""The cameras of the page's stages in a file, and those of one's own: what was seen of the stage is seen in the file.

Aboard is a camera that rides in the habitat. Outside stands still while the habitat turns; in a file of the turning view, where
the habitat's node does not turn, it goes round the other way.
"""

from dataclasses import dataclass

import numpy as np

from .options import ROTATING
from .sampled_scene import Camera

_OF_DESIGN = np.array(
    [[0.0, 1.0, 0.0], [-1.0, 0.0, 0.0], [0.0, 0.0, 1.0]]
)  # rows: the stages' X, Y and Z in the frames' axes


def stage_cameras(options, spin, time_s):
    """Cameras of the Options' stage cameras and of its own ones, in the frames' own axes, metres, at the scene's times time_s (T,); spin: how
    the habitat turns."""
    turned = (lambda vectors: spin.turn_back(vectors, time_s)) if options.view == ROTATING else None
    still = [_camera(one, one, one.vertical_fov_deg, turned) for one in options.stage_cameras]
    return still + [_own(one, turned, time_s) for one in options.cameras]


def _own(one, turned, time_s):
    """A camera with rows: still with one, else at every time."""
    row = one.rows[0]
    if len(one.rows) == 1:
        return _camera(one, row, row.vertical_fov_deg, turned)
    times = [row.time_s for row in one.rows]

    def between(name):
        columns = np.array([getattr(row, name) for row in one.rows], dtype=float).reshape(len(times), -1).T
        return np.stack([np.interp(time_s, times, column) for column in columns], axis=-1)

    names = ("position_m", "target_m", "up")
    at = Seen(*(between(name) for name in names))
    return _camera(one, at, between("vertical_fov_deg")[:, 0], turned)


@dataclass(frozen=True)
class Seen:
    """Where a camera is and looks, (T, 3) each."""

    position_m: np.ndarray
    target_m: np.ndarray
    up: np.ndarray


def _camera(one, at, fov_deg, turned):
    position, target, up = (np.atleast_2d(v) @ _OF_DESIGN for v in (at.position_m, at.target_m, at.up))
    back = _unit(position - target)
    right = _unit(np.cross(up, back))
    axes, places = np.stack([right, np.cross(back, right), back], axis=1), position
    rides = one.view == "aboard"
    if not rides and turned is not None:
        places, axes = turned(places), np.stack([turned(axes[:, k]) for k in range(3)], axis=1)
    return Camera(one.name, rides, places, axes, fov_deg, one.aspect)


def _unit(vectors):
    return vectors / np.linalg.norm(vectors, axis=-1, keepdims=True)
