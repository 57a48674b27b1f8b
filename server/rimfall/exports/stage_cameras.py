"""The cameras of the page's stages in a file: what was seen of the stage is seen in the file.

Aboard is a camera that rides in the habitat. Outside stands still while the habitat turns; in a file of the turning view, where
the habitat's node does not turn, it goes round the other way.
"""

import numpy as np

from ..physics import frames
from .options import ROTATING
from .sampled_scene import Camera

_OF_DESIGN = np.array(
    [[0.0, 1.0, 0.0], [-1.0, 0.0, 0.0], [0.0, 0.0, 1.0]]
)  # rows: the stages' X, Y and Z in the frames' axes


def stage_cameras(options, angle_rad):
    """Cameras of the Options' stage cameras, in the frames' own axes, metres; angle_rad (T,): how far the habitat has turned."""
    return [_camera(one, angle_rad if options.view == ROTATING else None) for one in options.stage_cameras]


def _camera(one, angle_rad):
    position, target, up = (np.array(v) @ _OF_DESIGN for v in (one.position_m, one.target_m, one.up))
    back = _unit(position - target)
    right = _unit(np.cross(up, back))
    axes, places = np.stack([right, np.cross(back, right), back])[None], position[None]
    rides = one.view == "aboard"
    if not rides and angle_rad is not None:
        places, axes = frames.turn(places, -angle_rad), frames.turn(axes, -angle_rad[:, None])
    return Camera(one.name, rides, places, axes, one.vertical_fov_deg, one.aspect)


def _unit(vector):
    return vector / np.linalg.norm(vector)
