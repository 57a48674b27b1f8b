"""A camera's sight: from a place aboard, what it looks at and its bank, to position, target and up; and back.

Position, target and up are as the stages have them: X spinward, Y up, Z along the spin vector at the reference line, the origin on the
axis. Arrays (T, 3), metres. Bank (roll) above 0 leans the camera to its own right: clockwise as seen from behind it.
"""

import numpy as np

OF_DESIGN = np.array([[0.0, 1.0, 0.0], [-1.0, 0.0, 0.0], [0.0, 0.0, 1.0]])  # rows: X, Y and Z in the frames' axes
_STRAIGHT = 1e-9


def placed(chart, position, look_at, roll_deg):
    """Places (T, 3) of a chart, of the camera and of what it looks at, and bank (T,) -> position, target, up (T, 3)."""
    eye, aim = chart.position(position), chart.position(look_at)
    _, right, up = _upright(chart, eye, aim)
    roll = np.radians(roll_deg)[:, None]
    return tuple(v @ OF_DESIGN.T for v in (eye, aim, np.cos(roll) * up + np.sin(roll) * right))


def places_of(chart, position, target, up):
    """The inverse for round ground: places of camera and target (T, 3), and bank (T,), degrees."""
    eye, aim, up = (np.asarray(v) @ OF_DESIGN for v in (position, target, up))
    ahead, right, level = _upright(chart, eye, aim)
    up = up - np.sum(up * ahead, axis=1, keepdims=True) * ahead
    roll = np.degrees(np.arctan2(np.sum(up * right, axis=1), np.sum(up * level, axis=1)))
    return _places(chart, eye), _places(chart, aim), roll


def _places(chart, position):
    along = chart.radius_m * np.unwrap(np.arctan2(position[:, 1], position[:, 0]))
    return np.stack([along, chart.height(position), chart.axial(position)], axis=1)


def _upright(chart, eye, aim):
    """Ahead, right and up (T, 3) of a camera without bank: its up leans as little as can be from that where it stands."""
    ahead = _unit(aim - eye)
    local = chart.axes(eye)
    right = np.cross(ahead, local[:, 1])
    steep = np.linalg.norm(right, axis=1, keepdims=True) < _STRAIGHT
    right = _unit(np.where(steep, local[:, 0], right))
    return ahead, right, np.cross(right, ahead)


def _unit(vectors):
    return vectors / np.maximum(np.linalg.norm(vectors, axis=1, keepdims=True), 1e-300)
